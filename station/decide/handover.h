/* Handover: who leaves, who comes, and what both see on the digits (rule 8). Needs a case. */
#ifndef BANDTALLY_DECIDE_HANDOVER_H
#define BANDTALLY_DECIDE_HANDOVER_H

#include "decide/turn.h"

/* 1 where this badge answered Q_HANDOVER_OUT; 0 where there is a place that nobody has to hand over: it simply joins. */
int handover_out(struct turn *t, const struct person *p, enum team_place place);
void handover_in(struct turn *t, const struct person *p, enum team_place place);
/* Of two who count, the one who stays says which place the absent one had. */
void handover_stays(struct turn *t, const struct person *p, enum team_place place);
void handover_seen_on(struct turn *t, int digit); /* a digit card, where a tourniquet is to be seen */
void handover_without_sight(struct turn *t);      /* WITHOUT FULL SIGHT, asked for or not */

#endif
