/* What is owed to the patient of a case that has ended (count/after-end.h). */
#ifndef BANDTALLY_DECIDE_OWED_AFTER_END_H
#define BANDTALLY_DECIDE_OWED_AFTER_END_H

#include "count/after-end.h"
#include "decide/turn.h"

/* Of a case that is about to end unresolved: after_end_unresolved() owes it once it has ended. */
struct after_unresolved {
	int32_t case_no;
	int left;                           /* 1: the patient has left the room */
	uint8_t look[DIGIT_NUMBER_MAX + 1]; /* by their numbers */
};
struct after_unresolved after_of_sheet(const struct sheet *s);
void after_end_unresolved(struct turn *t, const struct after_unresolved *of);

void after_end_found(struct turn *t, int32_t case_no); /* something of that case was found */

/* STEP DONE in a room without a case: what is owed first was done, of several digits the first of them. */
enum answered after_end_done(struct turn *t);
/* NO where it is a look: a tourniquet is on that digit. It is told on paper at once, and the look is owed again. */
enum answered after_end_still_on(struct turn *t);

/* As the board asks for it. */
void after_end_ask(struct next *n, const struct after_end *a);

#endif
