/* Who is there: the last scan of each room, and the reminder that nothing was scanned since (count/unanswered.h). */
#ifndef BANDTALLY_COUNT_HEARD_H
#define BANDTALLY_COUNT_HEARD_H

#include "count/station.h"

/* What an event says of it; for station_apply(). */
void heard_apply(struct station *st, const struct event *e);

#endif
