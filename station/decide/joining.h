/* Places in the team, and who may hold them (rules 8, 19). */
#ifndef BANDTALLY_DECIDE_JOINING_H
#define BANDTALLY_DECIDE_JOINING_H

#include "decide/turn.h"

void person_join(struct turn *t, int32_t number, enum team_place place);
/* One of the two who count is registered (rule 8): 1 where this place waits for one who is, and `p` is not. */
int person_needs_registered(const struct turn *t, const struct person *p, enum team_place place);
/* Joins at the field or circulating, or is refused as not registered; alone, that states a final count that waits for it. */
void person_take_place(struct turn *t, const struct person *p, enum team_place place);
/* Not the badge that is asked for: whose it is, and how this one takes that place. */
void person_refuse_for(struct turn *t, int32_t badge, const struct say *whose);

#endif
