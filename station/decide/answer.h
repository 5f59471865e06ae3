/* What answers which question (rule 19): a row a question says what it asks for, which cards, digits, badges, things, slips or texts do, and
 * what each does. One question is open at a time, of the case or of the room where none runs in it; what a scan asks anew
 * takes its place. Whoever reads a scan asks first whether it is an answer.
 *
 * A new question: its row in QUESTIONS (count/sheet.h), and its row here, without which this does not compile.
 */
#ifndef BANDTALLY_DECIDE_ANSWER_H
#define BANDTALLY_DECIDE_ANSWER_H

#include "decide/turn.h"

/* Adds what this question asks for, on the sheet that it is asked of; of a room without a case, a sheet without one. Not for
 * held scans, whose deeds go with their words (stored-list.h). */
void answer_deeds(struct next *n, const struct sheet *s, const struct asked *q);

/* The card of the input. YES and NO are answers to whatever is asked: one that says nothing there is refused. */
enum answered answer_card(struct turn *t);
enum answered answer_digit(struct turn *t);
/* `place`: where this person stands in the team, 0 nowhere yet. */
enum answered answer_badge(struct turn *t, const struct person *p, enum team_place place);
/* `item`: where the thing of the input stands on the sheet, 0 nowhere. */
enum answered answer_thing(struct turn *t, int item);
enum answered answer_slip(struct turn *t);
enum answered answer_typed(struct turn *t);

/* Whether a digit card may answer what is asked. */
int answer_is_digit(const struct turn *t);

#endif
