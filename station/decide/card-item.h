/* Cards that speak of an item which no code stands for (rules 3, 6, 10). Needs a case. */
#ifndef BANDTALLY_DECIDE_CARD_ITEM_H
#define BANDTALLY_DECIDE_CARD_ITEM_H

#include "decide/turn.h"

void card_unlisted(
    struct turn *t); /* the tourniquet that is on, or will go on, without being in the catalogue */
void card_unreadable(struct turn *t); /* MARK UNREADABLE: counted in, or shown while the final count asks */
void card_forceps_moved(struct turn *t);
void card_offcut(struct turn *t); /* contradicts what was accounted for before: it is counted again */

#endif
