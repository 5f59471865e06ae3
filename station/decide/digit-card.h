/* A digit card of this room was scanned (rules 3, 9). */
#ifndef BANDTALLY_DECIDE_DIGIT_CARD_H
#define BANDTALLY_DECIDE_DIGIT_CARD_H

#include "decide/turn.h"

void digit_card_take(struct turn *t);

#endif
