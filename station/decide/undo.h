/* Taking back and setting right: UNDO, MISREAD, N MINUTES AGO (rule 13). Needs a case.
 *
 * UNDO restores a copy of this sheet and nothing else. Where that would take back half of what happened it is refused, and says
 * what stands and what to do: where another case was changed as well, where another room has taken an item off this sheet since,
 * where an item with a number of its own would come back that may be anywhere by now, and where a clock would stop. */
#ifndef BANDTALLY_DECIDE_UNDO_H
#define BANDTALLY_DECIDE_UNDO_H

#include "decide/turn.h"

void card_undo(struct turn *t);
/* UNDO with no case open, while something is owed to the patient of an ended one. */
enum answered undo_after_end(struct turn *t);
void card_misread(struct turn *t);
void card_minutes_ago(struct turn *t, int minutes);

#endif
