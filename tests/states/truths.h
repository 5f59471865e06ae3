/* What is true in the room, and which deed fits it. Only ends.c and truths.c include this. */
#ifndef BANDTALLY_TESTS_STATES_TRUTHS_H
#define BANDTALLY_TESTS_STATES_TRUTHS_H

#include "snapshot.h"

#define PATH_MAX_SCANS 400
#define DIGIT_PLACES 8 /* digits 1 to 7 are enough for every room */

enum thing_truth { THERE = 0, MISSING, CUT, PIECES };

/* What is true in the room, beside what the sheet says. */
struct truths {
	uint8_t things[ITEMS_MAX]; /* enum thing_truth of each item of the sheet, by its number */
	uint8_t band
	    [DIGIT_PLACES]; /* 0: none on this digit; else 1 + the item that it is, 1: one that no sheet lists */
	uint8_t contrary; /* a handover, cancelling, 'no' … : where either can be so, the second answer is */
	uint8_t no_badge;  /* the surgeon is a visitor */
	uint8_t packs;     /* packs lie here that are not counted in yet */
	uint8_t point_bad; /* a sign-out point is not so */
	uint8_t reminders; /* time passes: a reminder comes as soon as it is due */
};

struct way {
	struct key key;
	char scanned[80];
	char next[NEXT_MAX];
};

struct ends {
	struct world world;
	struct keys known; /* by state and truth: 1 + scans to the end, NEVER, or 0 */
	struct keys told;  /* kinds of dead end */
	struct way way[PATH_MAX_SCANS];
	struct truths now;
	const struct saboteur *saboteur;
	uint64_t dead;
	int longest, quiet, fresh;
};

/* The first of these deeds that fits what is true, as a scan; a band comes off where nothing else is waited for. 0: none. */
int truths_choose(struct ends *e, const struct next *n, struct input *in);

int truths_digit_of(const struct truths *t, int item); /* on which it is; 0 none */

static inline const struct sheet *ends_sheet(const struct ends *e)
{
	return &e->world.station.sheets[0];
}

#endif
