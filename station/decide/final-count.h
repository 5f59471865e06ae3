/* The final count line by line, the discrepancy, and what accounts for an item (rules 1, 10, 11, 22). Needs a case. */
#ifndef BANDTALLY_DECIDE_FINAL_COUNT_H
#define BANDTALLY_DECIDE_FINAL_COUNT_H

#include "decide/turn.h"

void final_begin(struct turn *t); /* refused while a tourniquet is on, or may be */
/* YES, NO, MISSING, INTACT … and SHOWN `number` while the final count or a search asks. */
void final_answer(struct turn *t, int card, int number);
/* The code of an item of this sheet was scanned meanwhile (rule 11). */
void final_mark(struct turn *t, int item);
/* PIECES MISSING after the count was agreed: it begins again with that (rules 1, 10). */
void final_contradicted(struct turn *t);
/* After each answer: goes on, opens or closes the discrepancy, or can be agreed. */
void final_progress(struct turn *t);
/* A lone operator's: agreed with its last answer, once it is known who that is; nothing where it cannot be yet. */
void final_state_alone(struct turn *t);

#endif
