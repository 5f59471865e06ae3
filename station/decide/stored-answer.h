/* Held scans are asked about where the room looks, and entered or thrown away (rules 17 and 19). */
#ifndef BANDTALLY_DECIDE_STORED_ANSWER_H
#define BANDTALLY_DECIDE_STORED_ANSWER_H

#include "decide/turn.h"

void stored_ask(struct turn *t);   /* where scans are held for the room and nothing else is asked */
int stored_answer(struct turn *t); /* 1 where this card was an answer to the question about held scans */

#endif
