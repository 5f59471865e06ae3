/* What answers which question: cards, digits, badges, things and slips at the question that is open (rule 19). */
#ifndef BANDTALLY_DECIDE_ANSWER_H
#define BANDTALLY_DECIDE_ANSWER_H

#include "decide/turn.h"

/* Whether this card must answer that question: cards that begin something else close it. */
int answer_is_due(enum question q, int card);
/* The card at the open question of the case, which it answers or is refused. */
void answer_question(struct turn *t, int card);
/* YES or NO in a room without a case. Each: 1 where it was an answer. */
int answer_without_case(struct turn *t, int yes);
int answer_digit(struct turn *t, int digit);
int answer_badge(struct turn *t, const struct person *p, enum team_place place);
int answer_thing(struct turn *t, int item); /* `item`: where it stands on the sheet, 0 nowhere */
int answer_slip(struct turn *t);

#endif
