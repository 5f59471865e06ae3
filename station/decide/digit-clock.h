/* The clock of a digit, and the tourniquet on it: it starts with a fact, OFF alone stops it, MISREAD moves it (rules 2, 3,
 * 6, 13). Needs a case. Each says what it did. */
#ifndef BANDTALLY_DECIDE_DIGIT_CLOCK_H
#define BANDTALLY_DECIDE_DIGIT_CLOCK_H

#include "decide/turn.h"

#define SCANNED_LATE_MS 60000 /* one that moves is scanned on there, and off here a moment later */

int sheet_unused_tourniquet(const struct sheet *s); /* one that lies here, the latest first; 0 none */

/* The clock starts now, with a tourniquet at hand or one that is not listed yet, and what was missing for it is owed
 * (rule 3). One that runs already goes on from its own start. */
void digit_start_on(struct turn *t, int digit);
/* It runs as 'on?' from `at`, and says nothing; the second asks about that too, `besides` behind the sentence. A card that
 * cannot have been meant as a start without a doubt: one that had a tourniquet keeps its own clock beside it. */
void digit_doubt_on(struct turn *t, int digit, struct moment at);
void digit_ask_is_on(struct turn *t, int digit, enum saying besides);
void digit_ask_off(struct turn *t, int digit); /* of one that is on: OFF, still on, or a second one */
void digit_not_on(
    struct turn *t,
    int digit); /* the answer: none is on it, so that it is a marked one, or none of this case */
void digit_second_on(struct turn *t, int digit); /* a second tourniquet on a digit that has one */
void digit_take_off(struct turn *t,
                    int digit); /* the latest that is on it; the last one stops its clock (rule 2) */
/* The same, asked which digit it is of: a stored OFF keeps the time when it was scanned. */
void digit_take_off_as_asked(struct turn *t, int digit);
void digit_never_on(struct turn *t, int digit);  /* MISREAD: none went on at all */
void digit_never_off(struct turn *t, int digit); /* MISREAD: OFF was wrong, its clock has run all the time */
void digit_move_to(struct turn *t, int digit); /* MISREAD: what was entered for asked.digit is on this one */

#endif
