/* What leaves the count: returned unopened, isolated for a wrong number, struck; and what was dropped, which does not.
 * Each refused where it may not. */
#ifndef BANDTALLY_DECIDE_ITEM_OUT_H
#define BANDTALLY_DECIDE_ITEM_OUT_H

#include "decide/turn.h"

void item_give_back(struct turn *t, int item); /* 0: not on the sheet, refused */
/* WRONG NUMBER IN PACK, and the pack in the hand; `item` 0 where it does not stand on the sheet. */
void item_isolate(struct turn *t, int item);
/* That one, without a doubt; `came_now`: it was entered with this scan, and nobody had counted it. */
void item_isolated(struct turn *t, int item, int came_now);
/* What is looked for is never struck: nothing that is missing may leave the sheet as a misread. */
void item_strike(struct turn *t, int item);
/* It was dropped, and stays to be accounted for; 0: not on the sheet, refused. */
void item_drop(struct turn *t, int item);

#endif
