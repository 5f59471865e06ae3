/* Whether two stations know the same, told by cmocka where they do not. */
#ifndef BANDTALLY_TESTS_RECORD_SAME_H
#define BANDTALLY_TESTS_RECORD_SAME_H

#include "count/station.h"

/* What a start that leaves out ended cases knows as well. */
void same_station(const struct station *a, const struct station *b);

/* Besides: what only one knows that has followed every event. */
void same_to_the_last(const struct station *a, const struct station *b);

#endif
