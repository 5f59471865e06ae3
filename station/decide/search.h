/* The search for what is missing, and its ends (rule 16). */
#ifndef BANDTALLY_DECIDE_SEARCH_H
#define BANDTALLY_DECIDE_SEARCH_H

#include "decide/turn.h"

int search_is_look_step(const struct turn *t);  /* it asks for the look, which a digit card answers */
void search_answered(struct turn *t, int done); /* this step, whatever answered it */
void search_step(struct turn *t, int done);     /* STEP DONE or NOT DONE */
/* Which of the missing items was found? They are asked for one by one, beginning behind number `after`; behind the last it
 * may be one of another case. */
void search_ask_found(struct turn *t, int after);
void search_found(struct turn *t);          /* FOUND */
void search_end_unresolved(struct turn *t); /* END UNRESOLVED: asks who decides, or is refused */

#endif
