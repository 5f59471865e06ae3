/* Practice: a second core beside the real one, for one room, over a record and a key of its own that nobody keeps.
 *
 * Nobody has to remember it. A code of the practice set opens it where nothing of patients waits (station_may_practise());
 * the first other code that is scanned there ends it and is entered for real, and so does half an hour without a scan, and
 * whatever else opens, asks or owes something in that room. What happens in it is told by the same programs of the same
 * rooms: only where a scan comes in, where a room is shown, and where slips are printed does anything ask which core it is.
 *
 * Its folder is practice/ROOM in the data folder, and goes with it, and at each start. The real record has no event of it.
 */
#ifndef BANDTALLY_RUN_PRACTICE_H
#define BANDTALLY_RUN_PRACTICE_H

#include "run/core.h"

struct practice {
	struct core core;
	struct moment last; /* when something was scanned */
	int32_t printed;    /* the last slip that was handed to the printer's program */
	uint64_t changes;   /* of its core, that the real one has been told of */
};

/* The badges, and the packs, by their numbers in the set. */
enum practice_badge { PRACTICE_FIELD = 1, PRACTICE_CIRCULATING, PRACTICE_SURGEON, PRACTICE_ALONE };
enum practice_pack { PRACTICE_TOURNIQUET = 1, PRACTICE_FORCEPS };

/* What is practised in this room; NULL nothing is. */
struct core *practice_in(const struct core *c, int32_t room);

/* Which core takes these n scans of one room, scans[0].room: what is practised there, which this may open; NULL the real one,
 * and practice is over there. What nobody can read is of neither, and ends nothing. */
struct core *practice_takes(struct core *c, const struct scan *scans, int n);

void practice_tick(struct core *c);        /* time passes: reminders, and the end */
void practice_end_all(struct core *c);     /* without a word, before core_close() */
void practice_clear(const struct core *c); /* removes what a start before left */

#endif
