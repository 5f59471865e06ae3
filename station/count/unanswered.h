/* Nobody there: reminders after which nothing was scanned in their room. They are told in every other room and at the
 * desk, hold nothing there, and end with the next scan in their own room, whatever becomes of it.
 *
 * And tourniquets of suspended cases: each that is on, and each of which was reminded, is told in its own room and at the
 * desk all the time, for no sheet that is open there shows it. What is scanned for another patient answers no reminder of
 * it: that ends when its case goes on.
 */
#ifndef BANDTALLY_COUNT_UNANSWERED_H
#define BANDTALLY_COUNT_UNANSWERED_H

#include "count/station.h"

#define UNANSWERED_MAX 16

struct unanswered {
	int32_t room;
	int32_t case_no;  /* that is suspended; 0: its case runs */
	uint8_t reminded; /* a reminder of it stands */
	uint8_t nobody;   /* and nobody answers it: it is told in other rooms too */
	struct say
	    say; /* "Bay 3: left ring finger 41 min, no scan since 02:10"; its room's name is the station's */
};

/* Those that stand at `now`: what nobody answers first, then in the order of the open sheets; how many, at most
 * UNANSWERED_MAX. */
int station_unanswered(const struct station *st, struct moment now, struct unanswered out[UNANSWERED_MAX]);

/* The last scan in a room as far as the record goes; boot 0 none. */
struct moment station_last_scan(const struct station *st, int32_t room);

#endif
