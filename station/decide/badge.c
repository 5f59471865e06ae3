/* Badges: joining, agreeing, acknowledging, handing over (rules 8, 19). */
#include <stdio.h>
#include <string.h>

#include "decide/turn.h"
#include "decide/want.h"

static const char *name_of(const struct turn *t, int32_t number)
{
	return staff_name(&t->station->staff, number);
}

static void join(struct turn *t, int32_t number, enum team_place place)
{
	struct event e = {.kind = EV_JOINED, .person = number, .what = (uint8_t)place};
	snprintf(e.text, sizeof e.text, "%s", name_of(t, number));
	turn_emit(t, &e);
	if (debts_has(&t->s->debts, DEBT_TEAM) && t->s->team.at[PLACE_FIELD] &&
	    (t->s->single || t->s->team.at[PLACE_CIRCULATING]))
		turn_pay(t, DEBT_TEAM, 0, 0, PAID_BADGED);
	turn_accept(t, "%s: %s.", name_of(t, number), place_words(place));
}

/* A lone operator's badge states the count that is owed (rule 8: 'single-person' throughout). */
static void state_single_count(struct turn *t, enum debt_kind kind)
{
	static const char *const words[] = {"the initial count", "what was added", "the handover count"};
	int32_t who = t->s->team.at[PLACE_FIELD];
	int which = kind == DEBT_ADDED ? 1 : kind == DEBT_HANDOVER ? 2 : 0;
	EMIT(t, .kind = EV_COUNT_AGREED,
	     .what = which == 1   ? COUNT_ADDED
	             : which == 2 ? COUNT_HANDOVER
	                          : COUNT_INITIAL,
	     .person = who, .n = who);
	turn_pay(t, kind, 0, 0, which ? PAID_BY_OPERATOR : PAID_BY_OPERATOR_LATE);
	turn_accept(t, "%s counted: %s, single-person count.", name_of(t, who), words[which]);
}

/* Its last line was answered in another way than by the operator's scan. */
static void state_final_aloud(struct turn *t, int32_t badge)
{
	final_state_alone(t);
	if (t->s->final == FINAL_AGREED)
		turn_accept(t, "%s counted: the final count, single-person count.", name_of(t, badge));
	else
		turn_refuse(t, SAY(FINAL_UNFINISHED));
}

/* The badge answers the reminder only where the board asks for that (rule 19). */
static void acknowledge(struct turn *t, int32_t badge, int digit)
{
	EMIT(t, .kind = EV_ACKNOWLEDGED, .digit = (uint8_t)digit, .person = badge);
	turn_accept(t, "Reminder for the %s acknowledged by %s.", own_digit_name(digit), name_of(t, badge));
}

static void surgeon_answers(struct turn *t, int32_t badge, const struct debt *d)
{
	int decides = d->kind == DEBT_SURGEON;
	turn_pay(t, (enum debt_kind)d->kind, d->item, d->digit, decides ? PAID_DECIDED : PAID_ANSWERED);
	if (decides)
		turn_accept(
		    t,
		    "%s decides: it is used although it rolls on over an open wound, flap, infection or "
		    "tumour. The slip says so.",
		    name_of(t, badge));
	else
		turn_accept(t, "%s answers for the item that the station refused. The slip says so.",
		            name_of(t, badge));
}

/* Pays the debt that the board names, which is the first one. */
static void pay_first(struct turn *t, int32_t badge, const struct debt *owed)
{
	struct debt d = *owed;
	switch ((enum debt_kind)d.kind) {
	case DEBT_REASON:
	case DEBT_SURGEON:
		surgeon_answers(t, badge, &d);
		return;
	case DEBT_LISTING:
		listing_named_aloud(t);
		return;
	case DEBT_NAME:
		turn_pay(t, DEBT_NAME, 0, 0, PAID_NAME_WRITTEN);
		turn_accept(t, "Visitor's name written, says %s.", name_of(t, badge));
		return;
	case DEBT_EXPIRY_READ:
		expiry_read(t, badge);
		return;
	case DEBT_COUNT:
	case DEBT_ADDED:
	case DEBT_HANDOVER:
		if (t->s->single)
			state_single_count(t, (enum debt_kind)d.kind);
		else
			count_agree(t, badge);
		return;
	case DEBT_NONE:
	case DEBT_TEAM:
	case DEBT_ON:
	case DEBT_MARKED_DIGIT:
	case DEBT_INCIDENT:
	case DEBT_KINDS:
		break;
	}
	turn_refuse(t, SAY(NOTHING_ASKED_OF, .person = name_of(t, badge)));
}

/* A badge answers what the board asks for, and nothing else (rule 19). */
static void known_badge(struct turn *t, int32_t badge, enum team_place place)
{
	struct want w = sheet_wants(t->station, t->s);
	enum team_place records = t->s->single ? PLACE_FIELD : PLACE_CIRCULATING;
	enum team_place signs = t->s->single ? PLACE_FIELD : PLACE_SURGEON;
	if (w.kind == WANT_REMINDER)
		acknowledge(t, badge, w.digit);
	else if (w.kind == WANT_DEBT && debt_payer(t->s, (enum debt_kind)w.debt.kind) == place)
		pay_first(t, badge, &w.debt);
	else if (w.kind == WANT_SIGN_OUT && place == signs)
		sign_out_begin(t, badge);
	else if (w.kind == WANT_FINAL_AGREED && t->s->single)
		state_final_aloud(t, badge);
	else if (((w.kind == WANT_COUNT_IN && !t->s->single) || w.kind == WANT_FINAL_AGREED) &&
	         place == records)
		count_agree(t, badge);
	else if (place == PLACE_FIELD && !t->s->single &&
	         (w.kind == WANT_COUNT_IN || w.kind == WANT_FINAL_AGREED))
		turn_refuse(t, SAY(FIELD_RECORDS_NO_COUNT, .person = name_of(t, badge)));
	else if (place == signs)
		sign_out_begin(t, badge); /* refused, with what is still owed */
	else
		turn_refuse(t, SAY(NOTHING_ASKED_OF, .person = name_of(t, badge)));
}

/* What the team owes at once is paid by the surgeon who comes. */
static void surgeon_comes(struct turn *t, int32_t badge)
{
	struct want w = sheet_wants(t->station, t->s);
	join(t, badge, PLACE_SURGEON);
	if ((w.kind == WANT_DEBT && debt_payer(t->s, (enum debt_kind)w.debt.kind) == PLACE_SURGEON) ||
	    w.kind == WANT_SIGN_OUT)
		known_badge(t, badge, PLACE_SURGEON);
}

/* One of the two who count is registered (rule 8): the second place waits for one who is. */
static int needs_registered(const struct turn *t, const struct person *p, enum team_place place)
{
	int32_t other = t->s->team.at[place == PLACE_FIELD ? PLACE_CIRCULATING : PLACE_FIELD];
	const struct person *beside = staff_find(&t->station->staff, other);
	return !p->registered && (t->s->single || (beside && !beside->registered));
}

static void place_badge(struct turn *t, const struct person *p, enum team_place place)
{
	if (needs_registered(t, p, place)) {
		turn_refuse(t, t->s->single ? SAY(NOT_REGISTERED_OPERATOR, .person = p->name)
		                            : SAY(NEITHER_HERE_REGISTERED, .person = p->name));
		return;
	}
	join(t, p->number, place);
	if (t->s->single)
		final_state_alone(t);
}

static void new_badge(struct turn *t, const struct person *p)
{
	const struct team *team = &t->s->team;
	struct want w = sheet_wants(t->station, t->s);
	if (w.kind == WANT_REMINDER && !t->s->single)
		acknowledge(t, p->number, w.digit);
	else if (t->s->single && !team->at[PLACE_FIELD])
		place_badge(t, p, PLACE_FIELD);
	else if (t->s->single)
		turn_refuse(t, SAY(SINGLE_COUNT_BY, .person = name_of(t, team->at[PLACE_FIELD]),
		                   .other_person = p->name));
	else if (p->kind == STAFF_SURGEON && !team->at[PLACE_SURGEON])
		surgeon_comes(t, p->number);
	else if (p->kind == STAFF_CHARGE && !team->at[PLACE_CHARGE])
		join(t, p->number, PLACE_CHARGE);
	else if (p->kind == STAFF_PRACTITIONER && !team->at[PLACE_FIELD])
		place_badge(t, p, PLACE_FIELD);
	else if (p->kind == STAFF_PRACTITIONER && !team->at[PLACE_CIRCULATING])
		place_badge(t, p, PLACE_CIRCULATING);
	else
		turn_refuse(t, SAY(NOT_IN_TEAM, .person = p->name));
}

/* --- visitors ----------------------------------------------------------------------------------- */

void visitor_join(struct turn *t, int32_t visitor, enum team_place place)
{
	turn_close_question(t);
	join(t, visitor, place);
}

/* YES: comes as the operating surgeon; NO: at the field, or to watch. */
void visitor_is(struct turn *t, int yes)
{
	int32_t visitor = t->s->asked.person;
	if (yes && t->s->team.at[PLACE_SURGEON]) {
		turn_refuse(t, SAY(IS_THE_SURGEON, .person = name_of(t, t->s->team.at[PLACE_SURGEON])));
		return;
	}
	turn_ask(t, (struct asked){.what = Q_VISITOR, .person = visitor, .n = yes ? PLACE_SURGEON : 0},
	         "%s%s.", name_of(t, visitor), yes ? ", operating surgeon" : "");
}

/* The circulating badge vouches; one who circulates and has not badged in does so with it. */
static void vouch(struct turn *t, const struct person *p, enum team_place place)
{
	struct asked q = t->s->asked;
	int to_field = q.n != PLACE_SURGEON && !t->s->team.at[PLACE_FIELD];
	if (to_field && !p->registered) {
		turn_refuse(t,
		            SAY(NEITHER_REGISTERED, .person = name_of(t, q.person), .other_person = p->name));
		return;
	}
	if (!place && p->kind == STAFF_PRACTITIONER && !t->s->team.at[PLACE_CIRCULATING])
		join(t, p->number, PLACE_CIRCULATING);
	else if (place != PLACE_CIRCULATING) {
		turn_refuse(t, SAY(CIRCULATING_VOUCHES));
		return;
	}
	visitor_join(t, q.person,
	             q.n == PLACE_SURGEON         ? PLACE_SURGEON
	             : t->s->team.at[PLACE_FIELD] ? PLACE_VISITOR
	                                          : PLACE_FIELD);
}

void badge_take_visitor(struct turn *t, int32_t visitor, enum team_place place)
{
	const struct person *p = staff_find(&t->station->staff, visitor);
	if (!badge_answers(t, p, place))
		known_badge(t, visitor, place);
}

/* --- handover ----------------------------------------------------------------------------------- */

static void take_over(struct turn *t, const struct person *p, int32_t out, int unscanned);

/* The leaver is not here to scan out: who takes over scans first, and of two who count the one who stays says which place it
 * is. The record says that nobody scanned out. 0 where this badge simply joins. */
static int handover_of_absent(struct turn *t, const struct person *p)
{
	const struct team *team = &t->s->team;
	enum team_place place = p->kind == STAFF_SURGEON && !t->s->single ? PLACE_SURGEON : PLACE_FIELD;
	int two = !t->s->single && place == PLACE_FIELD;
	if (!team->at[place] || (two && !team->at[PLACE_CIRCULATING])) {
		turn_close_question(t); /* there is a place that nobody has to hand over */
		return 0;
	}
	if (two)
		turn_ask(t, (struct asked){.what = Q_HANDOVER_STAYS, .person = p->number}, "%s takes over.",
		         p->name);
	else
		take_over(t, p, team->at[place], 1);
	return 1;
}

static void handover_stays(struct turn *t, const struct person *p, enum team_place place)
{
	const struct person *comes = staff_find(&t->station->staff, t->s->asked.person);
	if (place != PLACE_FIELD && place != PLACE_CIRCULATING) {
		turn_refuse(t, SAY(NOT_ONE_OF_TWO, .person = p->name));
		return;
	}
	if (comes)
		take_over(t, comes, t->s->team.at[place == PLACE_FIELD ? PLACE_CIRCULATING : PLACE_FIELD], 1);
}

static int handover_out(struct turn *t, const struct person *p, enum team_place place)
{
	int32_t badge = p->number;
	if (!place && badge > 0)
		return handover_of_absent(t, p);
	if (place != PLACE_FIELD && place != PLACE_CIRCULATING && place != PLACE_SURGEON) {
		turn_refuse(t, SAY(NO_PLACE_TO_HAND_OVER, .person = name_of(t, badge)));
		return 1;
	}
	turn_ask(t, (struct asked){.what = Q_HANDOVER_IN, .person = badge}, "%s hands over (%s).",
	         name_of(t, badge), place_words(place));
	return 1;
}

/* A place passes only to a badge that may hold it (rule 19). */
static int may_hold(const struct person *p, enum team_place place)
{
	return p->kind == (place == PLACE_SURGEON ? STAFF_SURGEON : STAFF_PRACTITIONER);
}

static int may_take(struct turn *t, const struct person *p, enum team_place place)
{
	int may = t->s->single ? p->registered && p->kind != STAFF_CHARGE : may_hold(p, place);
	int registered = place == PLACE_SURGEON || !needs_registered(t, p, place);
	if (may && registered)
		return 1;
	if (!may)
		turn_refuse(t, SAY(CANNOT_TAKE_PLACE, .person = p->name, .place = place_saying(place)));
	else
		turn_refuse(t, SAY(HANDOVER_UNREGISTERED, .person = p->name));
	turn_close_question(t); /* nobody who may has to be here: then there is no handover */
	return 0;
}

static void handover_in(struct turn *t, const struct person *p, enum team_place place)
{
	if (place)
		turn_refuse(t, SAY(IN_TEAM_ALREADY, .person = p->name));
	else
		take_over(t, p, t->s->asked.person, 0);
}

static void take_over(struct turn *t, const struct person *p, int32_t out, int unscanned)
{
	int32_t badge = p->number;
	enum team_place taken = team_place_of(&t->s->team, out);
	if (!may_take(t, p, taken))
		return;
	EMIT(t, .kind = EV_LEFT, .person = out, .what = (uint8_t)taken, .n = unscanned);
	join(t, badge, taken);
	if (taken == PLACE_SURGEON) {
		turn_close_question(t);
		turn_accept(t, "%s takes over from %s as %s.", p->name, name_of(t, out), place_words(taken));
		return;
	}
	EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_HANDOVER);
	turn_owe(t, DEBT_HANDOVER, 0, 0);
	int on = sheet_first_unseen_on(t->s);
	turn_ask(t,
	         (struct asked){.what = on ? Q_HANDOVER_SEEN : Q_HANDOVER_AGREE,
	                        .digit = (uint8_t)on,
	                        .person = out,
	                        .n = badge},
	         "%s takes over from %s, %s.", p->name, name_of(t, out), place_words(taken));
}

/* Not the badge that is asked for: whose it is, and how this one takes that place. */
static void refuse_for(struct turn *t, int32_t badge, const struct say *whose)
{
	struct say say = *whose;
	int here = team_place_of(&t->s->team, badge) != 0;
	say.what = say.saying;
	say.saying = here ? SAY_SCAN_THAT_BADGE : SAY_SCAN_THAT_OR_HANDOVER;
	say.other_person = here ? NULL : name_of(t, badge);
	turn_refuse(t, &say);
}

/* A handover count that was begun is owed until it is agreed. */
void handover_agree(struct turn *t, int32_t badge)
{
	int32_t field = t->s->team.at[PLACE_FIELD], records = t->s->team.at[PLACE_CIRCULATING];
	enum saying why = t->s->single ? SAY_NONE : team_may_not_agree(&t->s->team, &t->station->staff);
	if (why) {
		turn_refuse(t, SAY(HANDOVER_NOT_AGREED, .why = why));
		return;
	}
	if (t->s->single && badge != field) {
		refuse_for(t, badge, SAY(WORKS_ALONE_COUNTS, .person = name_of(t, field)));
		return;
	}
	if (t->s->single) {
		turn_close_question(t);
		state_single_count(t, DEBT_HANDOVER);
		return;
	}
	if (badge != records) {
		refuse_for(t, badge, SAY(RECORDS_HANDOVER, .person = name_of(t, records)));
		return;
	}
	EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_HANDOVER, .person = field, .other = badge, .n = badge);
	turn_pay(t, DEBT_HANDOVER, 0, 0, PAID_AGREED);
	turn_close_question(t);
	turn_accept(t, "Handover count agreed aloud by %s and %s, recorded by %s.", name_of(t, field),
	            name_of(t, badge), name_of(t, badge));
}

static void surgeon_ends(struct turn *t, const struct person *p, enum team_place place)
{
	/* a digit card opened it, and nobody has badged in yet */
	int nobody =
	    t->s->single && !place && !t->s->team.at[PLACE_FIELD] && p->registered && p->kind != STAFF_CHARGE;
	int alone = nobody || (t->s->single && place == PLACE_FIELD);
	int visiting = p->number < 0 && place == PLACE_SURGEON;
	int32_t field = t->s->team.at[PLACE_FIELD];
	if (p->kind != STAFF_SURGEON && t->s->single && field && !alone && !visiting) {
		refuse_for(t, p->number, SAY(ALONE_ENDS_UNRESOLVED, .person = name_of(t, field)));
		return;
	}
	if (p->kind != STAFF_SURGEON && !alone && !visiting) {
		turn_refuse(t, SAY(SURGEON_ENDS_UNRESOLVED));
		return;
	}
	if (!place)
		join(t, p->number, nobody ? PLACE_FIELD : PLACE_SURGEON);
	turn_ask(t, (struct asked){.what = Q_INCIDENT, .person = p->number},
	         "%s decides to end this case unresolved.", p->name);
}

/* Questions that a badge answers. 1 where it did. */
int badge_answers(struct turn *t, const struct person *p, enum team_place place)
{
	switch ((enum question)t->s->asked.what) {
	case Q_HANDOVER_OUT:
		return handover_out(t, p, place);
	case Q_HANDOVER_STAYS:
		handover_stays(t, p, place);
		return 1;
	case Q_HANDOVER_IN:
		handover_in(t, p, place);
		return 1;
	case Q_HANDOVER_AGREE:
		if (!place && !t->s->single && !t->s->team.at[PLACE_CIRCULATING])
			return 0; /* joins first */
		handover_agree(t, p->number);
		return 1;
	case Q_SURGEON_ENDS:
		surgeon_ends(t, p, place);
		return 1;
	case Q_FIELD_TOO:
		if (place == PLACE_FIELD)
			count_agree(t, p->number);
		else
			turn_refuse(t, SAY(BOTH_BADGES_NEEDED));
		return 1;
	case Q_VISITOR:
		vouch(t, p, place);
		return 1;
	case Q_WITNESS:
		if (place == PLACE_CIRCULATING)
			sign_out_witnessed(t, p->number);
		else
			turn_refuse(t, SAY(CIRCULATING_WITNESSES));
		return 1;
	default:
		return 0;
	}
}

void badge_take(struct turn *t)
{
	const struct person *p = staff_find(&t->station->staff, t->in->number);
	const struct room *room = station_room(t->station, t->in->room);
	if (!p || p->withdrawn) {
		turn_refuse(t, p ? SAY(BADGE_WITHDRAWN, .badge = t->in->number)
		                 : SAY(BADGE_UNKNOWN, .badge = t->in->number));
		return;
	}
	if (!turn_has_case(t) && room && room->single && !p->registered) {
		turn_refuse(t, SAY(NOT_REGISTERED_OPERATOR, .person = p->name));
		return;
	}
	if (!turn_has_case(t) && room && room->single) {
		turn_open_case(t, "");
		join(t, p->number, PLACE_FIELD);
		turn_accept(t, "Case %d opened in %s. %s works alone: single-person count.",
		            (int)t->s->case_no, room->name, p->name);
		return;
	}
	if (!turn_has_case(t)) {
		turn_refuse(t, SAY(NO_CASE_NEW_FIRST, .room = station_room_name(t->station, t->in->room)));
		return;
	}
	enum team_place place = team_place_of(&t->s->team, p->number);
	if (badge_answers(t, p, place))
		return;
	if (place)
		known_badge(t, p->number, place);
	else
		new_badge(t, p);
}
