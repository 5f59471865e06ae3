/* A badge was scanned, or a card that stands for one (rules 8, 19). */
#ifndef BANDTALLY_DECIDE_BADGE_H
#define BANDTALLY_DECIDE_BADGE_H

#include "decide/turn.h"

void badge_take(struct turn *t);
/* A VISITOR card that stands for somebody of the team. */
void badge_take_visitor(struct turn *t, int32_t visitor, enum team_place place);

#endif
