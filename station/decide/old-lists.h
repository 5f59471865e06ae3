/* What is counted in while the hospital's lists of recalls are old, where the policy wants stores to be asked about it: nobody
 * but they can say then whether it was recalled. One debt a case, paid by the badge that asked (rules 3, 5). */
#ifndef BANDTALLY_DECIDE_OLD_LISTS_H
#define BANDTALLY_DECIDE_OLD_LISTS_H

#include "decide/turn.h"

void old_lists_owe(struct turn *t); /* something was counted in */
void old_lists_asked(struct turn *t, int32_t badge);

#endif
