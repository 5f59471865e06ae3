/* Corrections of events that a start could not follow (count/unfollowed.h); for station_apply(). */
#ifndef BANDTALLY_COUNT_SETTLED_H
#define BANDTALLY_COUNT_SETTLED_H

#include "count/station.h"

/* The event that somebody has dealt with, 0 none: a correction of the station names it in `ref`; in format 1 its text did,
 * "event 17: the line was imported again". */
int64_t settled_event(const struct event *correction);

/* Takes it off the list. */
void unfollowed_settle(struct station *st, int64_t seq);

#endif
