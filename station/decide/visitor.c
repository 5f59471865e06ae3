#include "decide/visitor.h"

#include "decide/joining.h"

void visitor_join(struct turn *t, int32_t visitor, enum team_place place)
{
	turn_close_question(t);
	person_join(t, visitor, place);
}

/* YES: comes as the operating surgeon; NO: at the field, or to watch. */
void visitor_is(struct turn *t, int yes)
{
	int32_t visitor = t->s->asked.person;
	if (yes && t->s->team.at[PLACE_SURGEON]) {
		turn_refuse(t, SAY(IS_THE_SURGEON, .person = turn_name_of(t, t->s->team.at[PLACE_SURGEON])));
		return;
	}
	turn_ask_saying(t, (struct asked){.what = Q_VISITOR, .person = visitor, .n = yes ? PLACE_SURGEON : 0},
	                yes ? SAY(R_PERSON_SURGEON, .person = turn_name_of(t, visitor))
	                    : SAY(R_PERSON, .person = turn_name_of(t, visitor)));
}

enum answered visitor_first(struct turn *t, const struct person *p, enum team_place place)
{
	(void)place;
	turn_refuse(t, SAY(FIRST_WHETHER_SURGEON, .person = turn_name_of(t, t->s->asked.person),
	                   .other_person = p->name));
	return ANSWERED;
}

/* The circulating badge vouches; one who circulates and has not badged in does so with it. */
enum answered visitor_vouch(struct turn *t, const struct person *p, enum team_place place)
{
	struct asked q = t->s->asked;
	int to_field = q.n != PLACE_SURGEON && !t->s->team.at[PLACE_FIELD];
	if (to_field && !p->registered) {
		turn_refuse(
		    t, SAY(NEITHER_REGISTERED, .person = turn_name_of(t, q.person), .other_person = p->name));
		return ANSWERED;
	}
	const int comes = !place && p->kind == STAFF_PRACTITIONER && !t->s->team.at[PLACE_CIRCULATING];
	if (comes)
		person_join(t, p->number, PLACE_CIRCULATING);
	else if (place != PLACE_CIRCULATING) {
		turn_refuse(t, SAY(CIRCULATING_VOUCHES));
		return ANSWERED;
	}
	visitor_join(t, q.person,
	             q.n == PLACE_SURGEON         ? PLACE_SURGEON
	             : t->s->team.at[PLACE_FIELD] ? PLACE_VISITOR
	                                          : PLACE_FIELD);
	if (comes)
		turn_say_more(t, SAY(R_PLACE, .person = turn_name_of(t, p->number),
		                     .place = place_saying(PLACE_CIRCULATING)));
	return ANSWERED;
}
