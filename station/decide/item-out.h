/* What leaves the count: returned unopened, isolated for a wrong number, struck; and what was dropped, which does not.
 * Each refused where it may not. */
#ifndef BANDTALLY_DECIDE_ITEM_OUT_H
#define BANDTALLY_DECIDE_ITEM_OUT_H

#include "decide/turn.h"

void item_give_back(struct turn *t, int item); /* 0: not on the sheet, refused */
/* WRONG NUMBER IN PACK, and the pack in the hand; `item` 0 where it does not stand on the sheet. */
void item_isolate(struct turn *t, int item);
/* YES and NO where it is asked whether what was scanned to be isolated, or added, is what was counted in. */
void item_counted_in_yes(struct turn *t);
void item_counted_in_no(struct turn *t);
/* What is looked for is never struck: nothing that is missing may leave the sheet as a misread. */
void item_strike(struct turn *t, int item);
/* It was dropped, and stays to be accounted for; 0: not on the sheet, refused. */
void item_drop(struct turn *t, int item);

#endif
