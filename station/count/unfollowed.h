/* Events that a start could not follow: what becomes of them. station.h says how they are noted. */
#ifndef BANDTALLY_COUNT_UNFOLLOWED_H
#define BANDTALLY_COUNT_UNFOLLOWED_H

#include "count/station.h"

/* 1 where it is on the list, or may be one of those that are only counted. */
int unfollowed_has(const struct station *st, int64_t seq);

/* The event that somebody has dealt with, 0 none: a correction of the station names it in `ref`; in format 1 its text did,
 * "event 17: the line was imported again". */
int64_t settled_event(const struct event *correction);

/* Takes it off the list. */
void unfollowed_settle(struct station *st, int64_t seq);

#endif
