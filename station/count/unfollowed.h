/* Events that a start could not follow: what becomes of them. station.h says how they are noted. */
#ifndef BANDTALLY_COUNT_UNFOLLOWED_H
#define BANDTALLY_COUNT_UNFOLLOWED_H

#include "count/station.h"

/* 1 where it is on the list, or may be one of those that are only counted. */
int unfollowed_has(const struct station *st, int64_t seq);

#endif
