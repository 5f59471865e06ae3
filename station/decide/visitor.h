/* Visitors: somebody without a badge, whom the circulating badge vouches for (rule 19). Needs a case. */
#ifndef BANDTALLY_DECIDE_VISITOR_H
#define BANDTALLY_DECIDE_VISITOR_H

#include "decide/turn.h"

void visitor_join(struct turn *t, int32_t visitor, enum team_place place);
void visitor_is(struct turn *t,
                int yes); /* YES: comes as the operating surgeon; NO: at the field, or to watch */
/* A badge that is read while the question stands whether the visitor is the surgeon: refused, with what comes first. */
enum answered visitor_first(struct turn *t, const struct person *p, enum team_place place);
/* The badge that vouches; one who circulates and has not badged in does so with it. */
enum answered visitor_vouch(struct turn *t, const struct person *p, enum team_place place);

#endif
