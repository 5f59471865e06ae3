/* Whether a deed fits the truth, and what is scanned for it. The people of the theatre and the search for dead ends
 * both go by this: they do the first deed whose truth holds, and know nothing else of the station.
 */
#ifndef BANDTALLY_TESTS_THEATRE_FITS_H
#define BANDTALLY_TESTS_THEATRE_FITS_H

#include "world.h"

struct scanned {      /* one code, or a text that is typed */
	uint8_t act;  /* enum act; ACT_TICK: none */
	int8_t thing; /* ACT_THING, and what a card speaks of; -1 none */
	int32_t n;    /* card, digit, badge, or ACT_SLIP: the operation whose slip it is */
	int32_t room; /* of a card */
};

/* 1 where the truth that this deed answers holds; `out` is then what is scanned. `s` is the sheet of the operation's
 * room, with case_no 0 where none is open. */
int deed_fits(const struct world *t, int operation, const struct station *st, const struct sheet *s,
              const struct deed *d, struct scanned *out);

/* The first of the deeds that fits; its index, or -1. */
int first_that_fits(const struct world *t, int operation, const struct station *st, const struct sheet *s,
                    const struct next *n, struct scanned *out);

/* What tells the station that a tourniquet is on this digit: a deed of the board that says so, or its digit card (facts
 * first). The deed, or NULL. */
const struct deed *that_it_is_on(const struct world *t, int operation, const struct station *st,
                                 const struct sheet *s, const struct next *n, int digit, struct scanned *out);
int untold_on(const struct world *t, int operation, const struct sheet *s); /* a digit, 0 none */

/* What is scanned to count this thing in: its code, its card MARK UNREADABLE or UNLISTED, or ADD first. */
struct scanned to_count_in(const struct world *t, const struct sheet *s, int thing);
int first_uncounted(const struct world *t, int operation); /* that can be scanned, -1 none */

struct scanned scan_card(const struct world *t, int operation, int card);
struct scanned scan_digit(const struct world *t, int operation, int digit);
struct scanned scan_badge(int32_t badge); /* a visitor's card where the number is below 0 */

#endif
