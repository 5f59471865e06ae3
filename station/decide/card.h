/* A card of this room was scanned. */
#ifndef BANDTALLY_DECIDE_CARD_H
#define BANDTALLY_DECIDE_CARD_H

#include "decide/turn.h"

void card_take(struct turn *t);

#endif
