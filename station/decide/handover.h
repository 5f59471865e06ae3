/* Handover: who leaves, who comes, and what both see on the digits (rule 8). Needs a case. */
#ifndef BANDTALLY_DECIDE_HANDOVER_H
#define BANDTALLY_DECIDE_HANDOVER_H

#include "decide/turn.h"

/* No answer where there is a place that nobody has to hand over: the badge simply joins. */
enum answered handover_out(struct turn *t, const struct person *p, enum team_place place);
enum answered handover_in(struct turn *t, const struct person *p, enum team_place place);
/* Of two who count, the one who stays says which place the absent one had. */
enum answered handover_stays(struct turn *t, const struct person *p, enum team_place place);
/* The digit card of the input, where a tourniquet is to be seen. */
enum answered handover_seen_on(struct turn *t);
void handover_without_sight(struct turn *t); /* at Q_HANDOVER_SEEN: that digit is not seen */

#endif
