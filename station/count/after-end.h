/* What is owed to the patient of a case that has ended: after it ended unresolved, or when something of it was found later,
 * the digit is looked at bare, the ward is told, and a patient who has gone is called back (rules 16 and 21). It stands on
 * the boards of the room in which that was entered until somebody enters there, with no case open, that it was done.
 *
 * DEBT_CALLED, DEBT_LOOK and DEBT_WARD are owed and paid by events of the ended case.
 */
#ifndef BANDTALLY_COUNT_AFTER_END_H
#define BANDTALLY_COUNT_AFTER_END_H

#include <stdint.h>

#include "count/debt.h"
#include "count/event.h"

#define AFTER_END_MAX 128

struct station;

struct after_end {
	int32_t case_no, room;
	int64_t wall_ms; /* since when, by the wall clock */
	uint8_t what;    /* enum debt_kind */
	uint8_t digit;   /* DEBT_LOOK: which, 0 not known any more */
};

int debt_is_after_end(enum debt_kind kind); /* 1 of these three */

/* One event of a case that has ended; others change nothing. */
void after_end_apply(struct station *st, const struct event *e);

/* What is owed first in this room once `events` are entered; 0 nothing is. */
int after_end_first(const struct station *st, int32_t room, const struct event *events, int count,
                    struct after_end *out);

#endif
