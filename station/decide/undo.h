/* Taking back and setting right: UNDO, MISREAD, N MINUTES AGO (rule 13). Needs a case. */
#ifndef BANDTALLY_DECIDE_UNDO_H
#define BANDTALLY_DECIDE_UNDO_H

#include "decide/turn.h"

void card_undo(struct turn *t);
void card_misread(struct turn *t);
void card_minutes_ago(struct turn *t, int minutes);

#endif
