/* Nobody there: reminders after which nothing was scanned in their room. They are told in every other room and at the
 * desk, hold nothing there, and end with the next scan in their own room, whatever becomes of it.
 */
#ifndef BANDTALLY_COUNT_UNANSWERED_H
#define BANDTALLY_COUNT_UNANSWERED_H

#include "count/station.h"

#define UNANSWERED_MAX 16

struct unanswered {
	int32_t room;
	struct say
	    say; /* "Bay 3: left ring finger 41 min, no scan since 02:10"; its room's name is the station's */
};

/* Those that stand at `now`, in the order of the open sheets; how many, at most UNANSWERED_MAX. */
int station_unanswered(const struct station *st, struct moment now, struct unanswered out[UNANSWERED_MAX]);

/* The last scan in a room as far as the record goes; boot 0 none. */
struct moment station_last_scan(const struct station *st, int32_t room);

#endif
