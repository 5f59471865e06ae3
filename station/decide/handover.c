#include "decide/handover.h"

#include "decide/digit-clock.h"
#include "decide/joining.h"

/* A place passes only to a badge that may hold it (rule 19). The circulating badge vouches for a visitor, and passes to none. */
static int may_hold(const struct person *p, enum team_place place)
{
	if (p->number < 0)
		return place == PLACE_FIELD || place == PLACE_SURGEON;
	return p->kind == (place == PLACE_SURGEON ? STAFF_SURGEON : STAFF_PRACTITIONER);
}

static int may_take(struct turn *t, const struct person *p, enum team_place place)
{
	int may = t->s->single ? p->registered && p->kind != STAFF_CHARGE : may_hold(p, place);
	int registered = place == PLACE_SURGEON || !person_needs_registered(t, p, place);
	if (may && registered)
		return 1;
	if (!may)
		turn_refuse(t, SAY(CANNOT_TAKE_PLACE, .person = p->name, .place = place_saying(place)));
	else
		turn_refuse(t, SAY(HANDOVER_UNREGISTERED, .person = p->name));
	turn_close_question(t); /* nobody who may has to be here: then there is no handover */
	return 0;
}

/* Each tourniquet that is on for certain is seen, or said not to be in full sight, before the count is agreed. */
static struct asked next_of_handover(const struct turn *t, int32_t out, int32_t comes)
{
	int on = sheet_first_unseen_on(t->s);
	return (struct asked){
	    .what = on ? Q_HANDOVER_SEEN : Q_HANDOVER_AGREE, .digit = (uint8_t)on, .person = out, .n = comes};
}

static void take_over(struct turn *t, const struct person *p, int32_t out, int unscanned)
{
	int32_t badge = p->number;
	enum team_place taken = team_place_of(&t->s->team, out);
	if (!may_take(t, p, taken))
		return;
	EMIT(t, .kind = EV_LEFT, .person = out, .what = (uint8_t)taken, .n = unscanned);
	if (team_place_of(&t->s->team, badge) == PLACE_VISITOR) /* and watches no longer */
		EMIT(t, .kind = EV_LEFT, .person = badge, .what = PLACE_VISITOR);
	person_join(t, badge, taken);
	if (taken == PLACE_SURGEON) {
		turn_close_question(t);
		turn_say(t, SAY(R_TAKES_OVER_AS, .person = p->name, .other_person = turn_name_of(t, out),
		                .place = place_saying(taken)));
		return;
	}
	EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_HANDOVER);
	turn_owe(t, DEBT_HANDOVER, 0, 0);
	turn_ask_saying(t, next_of_handover(t, out, badge),
	                SAY(R_TAKES_OVER_PLACE, .person = p->name, .other_person = turn_name_of(t, out),
	                    .place = place_saying(taken)));
}

/* The leaver is not here to scan out: who takes over scans first, and of two who count the one who stays says which place it
 * is. The record says that nobody scanned out. */
static enum answered handover_of_absent(struct turn *t, const struct person *p)
{
	const struct team *team = &t->s->team;
	enum team_place place = p->kind == STAFF_SURGEON && !t->s->single ? PLACE_SURGEON : PLACE_FIELD;
	int two = !t->s->single && place == PLACE_FIELD;
	if (!team->at[place] || (two && !team->at[PLACE_CIRCULATING])) {
		turn_close_question(t); /* there is a place that nobody has to hand over */
		return ANSWERED_NOT;
	}
	if (two)
		turn_ask_saying(t, (struct asked){.what = Q_HANDOVER_STAYS, .person = p->number},
		                SAY(R_TAKES_OVER, .person = p->name));
	else
		take_over(t, p, team->at[place], 1);
	return ANSWERED;
}

enum answered handover_stays(struct turn *t, const struct person *p, enum team_place place)
{
	const struct person *comes = staff_find(&t->station->staff, t->s->asked.person);
	if (place != PLACE_FIELD && place != PLACE_CIRCULATING) {
		turn_refuse(t, SAY(NOT_ONE_OF_TWO, .person = p->name));
		return ANSWERED;
	}
	if (comes)
		take_over(t, comes, t->s->team.at[place == PLACE_FIELD ? PLACE_CIRCULATING : PLACE_FIELD], 1);
	return ANSWERED;
}

enum answered handover_out(struct turn *t, const struct person *p, enum team_place place)
{
	int32_t badge = p->number;
	if (!place && badge > 0)
		return handover_of_absent(t, p);
	if (place != PLACE_FIELD && place != PLACE_CIRCULATING && place != PLACE_SURGEON) {
		turn_refuse(t, SAY(NO_PLACE_TO_HAND_OVER, .person = turn_name_of(t, badge)));
		return ANSWERED;
	}
	turn_ask_saying(t, (struct asked){.what = Q_HANDOVER_IN, .person = badge},
	                SAY(R_HANDS_OVER, .person = turn_name_of(t, badge), .place = place_saying(place)));
	return ANSWERED;
}

/* The two who count change places, or were taken for one another. What was agreed before they did is counted again. */
static void change_places(struct turn *t, const struct person *p, int32_t out)
{
	const enum team_place taken = team_place_of(&t->s->team, out),
	                      left = team_place_of(&t->s->team, p->number);
	EMIT(t, .kind = EV_LEFT, .person = out, .what = (uint8_t)taken);
	EMIT(t, .kind = EV_LEFT, .person = p->number, .what = (uint8_t)left);
	person_join(t, p->number, taken);
	person_join(t, out, left);
	if (t->s->initial_agreed) {
		EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_HANDOVER);
		turn_owe(t, DEBT_HANDOVER, 0, 0);
		turn_ask_saying(t, next_of_handover(t, out, p->number),
		                SAY(R_PLACE, .person = p->name, .place = place_saying(taken)));
	} else {
		turn_close_question(t);
		turn_say(t, SAY(R_PLACE, .person = p->name, .place = place_saying(taken)));
	}
	turn_say_more(t, SAY(R_PLACE, .person = turn_name_of(t, out), .place = place_saying(left)));
}

static int may_change(const struct turn *t, const struct person *p, enum team_place place)
{
	const enum team_place other = team_place_of(&t->s->team, t->s->asked.person);
	const struct person *out = staff_find(&t->station->staff, t->s->asked.person);
	return p->number > 0 && t->s->asked.person > 0 && !t->s->single &&
	       ((place == PLACE_FIELD && other == PLACE_CIRCULATING) ||
	        (place == PLACE_CIRCULATING && other == PLACE_FIELD)) &&
	       p->kind == STAFF_PRACTITIONER && out && out->kind == STAFF_PRACTITIONER;
}

/* A visitor who watches was vouched for, and may take a place. */
enum answered handover_in(struct turn *t, const struct person *p, enum team_place place)
{
	if (may_change(t, p, place))
		change_places(t, p, t->s->asked.person);
	else if (place && place != PLACE_VISITOR)
		turn_refuse(t, SAY(IN_TEAM_ALREADY, .person = p->name));
	else
		take_over(t, p, t->s->asked.person, 0);
	return ANSWERED;
}

enum answered handover_seen_on(struct turn *t)
{
	int digit = t->in->digit;
	const struct digit *d = sheet_digit_const(t->s, digit);
	struct asked q = t->s->asked;
	if (!d || !digit_runs(d)) { /* no answer, but a fact: it is asked about after the handover (rule 3) */
		digit_doubt_on(t, digit, t->in->at);
		turn_say(t, SAY(R_FINISH_HANDOVER, .digit = digit));
		return ANSWERED;
	}
	if (d->state != DIGIT_ON) {
		turn_refuse(t, SAY(ASKED_AFTER_HANDOVER, .digit = digit));
		return ANSWERED;
	}
	if (d->seen_on) {
		turn_refuse(t, SAY(SEEN_ALREADY, .digit = digit));
		return ANSWERED;
	}
	EMIT(t, .kind = EV_DIGIT_SEEN_ON, .digit = (uint8_t)digit, .n = SEEN_AT_HANDOVER);
	turn_say(t, SAY(R_SEEN_ON, .digit = digit));
	struct asked next = next_of_handover(t, q.person, q.n);
	EMIT(t, .kind = EV_ASKED, .what = next.what, .digit = next.digit, .person = next.person, .n = next.n);
	return ANSWERED;
}

void handover_without_sight(struct turn *t)
{
	struct asked q = t->s->asked;
	EMIT(t, .kind = EV_DIGIT_SEEN_ON, .digit = q.digit, .n = SEEN_NOT_FULLY);
	turn_ask_saying(t, next_of_handover(t, q.person, q.n), SAY(R_WITHOUT_SIGHT, .digit = q.digit));
}
