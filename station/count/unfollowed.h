/* Events that a start could not follow: what becomes of them. station.h says how they are noted. */
#ifndef BANDTALLY_COUNT_UNFOLLOWED_H
#define BANDTALLY_COUNT_UNFOLLOWED_H

#include "count/station.h"

/* What a person says who has dealt with one: a correction of the station, "event 17: the line was imported again". */
#define UNFOLLOWED_SETTLED "event %lld: %s"

/* 1 where it is on the list, or may be one of those that are only counted. */
int unfollowed_has(const struct station *st, int64_t seq);

int64_t settled_event(const char *text); /* the event that such a text names, 0 none */

/* Takes it off the list. */
void unfollowed_settle(struct station *st, int64_t seq);

#endif
