/* Held scans are asked about where the room looks, and entered or thrown away (rules 17 and 19). */
#ifndef BANDTALLY_DECIDE_STORED_ANSWER_H
#define BANDTALLY_DECIDE_STORED_ANSWER_H

#include "decide/turn.h"

void stored_ask(struct turn *t);             /* where scans are held for the room and nothing else is asked */
void stored_answer(struct turn *t, int yes); /* at Q_STORED: enters all, or throws them away */
void stored_meant(struct turn *t, int yes);  /* at Q_TWICE: what came in a row was meant so, or once */

#endif
