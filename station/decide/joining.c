#include "decide/joining.h"

#include <stdio.h>

#include "decide/final-count.h"

/* Who counts in two rooms at once cannot have seen both: an open count of another room that this one is one of the two of. */
static void say_counts_elsewhere(struct turn *t, int32_t number)
{
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *s = &t->station->sheets[i];
		if (!s->case_no || s->case_no == t->s->case_no || s->suspended || number <= 0 ||
		    (s->team.at[PLACE_FIELD] != number && s->team.at[PLACE_CIRCULATING] != number))
			continue;
		turn_say_more(t, SAY(R_COUNTS_ELSEWHERE, .person = turn_name_of(t, number),
		                     .case_no = s->case_no, .room = station_room_name(t->station, s->room)));
		return;
	}
}

void person_join(struct turn *t, int32_t number, enum team_place place)
{
	struct event e = {.kind = EV_JOINED, .person = number, .what = (uint8_t)place};
	snprintf(e.text, sizeof e.text, "%s", turn_name_of(t, number));
	turn_emit(t, &e);
	if (debts_has(&t->s->debts, DEBT_TEAM) && t->s->team.at[PLACE_FIELD] &&
	    (t->s->single || t->s->team.at[PLACE_CIRCULATING]))
		turn_pay(t, DEBT_TEAM, 0, 0, PAID_BADGED);
	turn_say(t, SAY(R_PLACE, .person = turn_name_of(t, number), .place = place_saying(place)));
	if (place == PLACE_FIELD || place == PLACE_CIRCULATING)
		say_counts_elsewhere(t, number);
}

/* One of the two who count is registered (rule 8): the second place waits for one who is. */
int person_needs_registered(const struct turn *t, const struct person *p, enum team_place place)
{
	int32_t other = t->s->team.at[place == PLACE_FIELD ? PLACE_CIRCULATING : PLACE_FIELD];
	const struct person *beside = staff_find(&t->station->staff, other);
	return !p->registered && (t->s->single || (beside && !beside->registered));
}

void person_take_place(struct turn *t, const struct person *p, enum team_place place)
{
	if (person_needs_registered(t, p, place)) {
		turn_refuse(t, t->s->single ? SAY(NOT_REGISTERED_OPERATOR, .person = p->name)
		                            : SAY(NEITHER_HERE_REGISTERED, .person = p->name));
		return;
	}
	person_join(t, p->number, place);
	if (t->s->single)
		final_state_alone(t);
}

/* Not the badge that is asked for: whose it is, and how this one takes that place. */
void person_refuse_for(struct turn *t, int32_t badge, const struct say *whose)
{
	struct say say = *whose;
	int here = team_place_of(&t->s->team, badge) != 0;
	say.what = say.saying;
	say.saying = here ? SAY_SCAN_THAT_BADGE : SAY_SCAN_THAT_OR_HANDOVER;
	say.other_person = here ? NULL : turn_name_of(t, badge);
	turn_refuse(t, &say);
}
