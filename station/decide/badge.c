/* Badges, as they are scanned: joining, agreeing, acknowledging, signing out, each only where the board asks for it
 * (rules 8, 19). */
#include "decide/badge.h"

#include "decide/agree.h"
#include "decide/answer.h"
#include "decide/end.h"
#include "decide/expiry.h"
#include "decide/joining.h"
#include "decide/old-lists.h"
#include "decide/want.h"

/* The badge answers the reminder only where the board asks for that (rule 19). */
static void acknowledge(struct turn *t, int32_t badge, int digit)
{
	EMIT(t, .kind = EV_ACKNOWLEDGED, .digit = (uint8_t)digit, .person = badge);
	turn_say(t, SAY(R_TOLD, .digit = digit, .person = turn_name_of(t, badge)));
}

static void surgeon_answers(struct turn *t, int32_t badge, const struct debt *d)
{
	int decides = d->kind == DEBT_SURGEON;
	turn_pay(t, (enum debt_kind)d->kind, d->item, d->digit, decides ? PAID_DECIDED : PAID_ANSWERED);
	if (decides)
		turn_say(t, SAY(R_DECIDES, .person = turn_name_of(t, badge)));
	else
		turn_say(t, SAY(R_ANSWERS_FOR, .person = turn_name_of(t, badge)));
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
		turn_say(t, SAY(R_VISITOR_WRITTEN, .person = turn_name_of(t, badge)));
		return;
	case DEBT_EXPIRY_READ:
		expiry_read(t, badge);
		return;
	case DEBT_STORES_ASKED:
		old_lists_asked(t, badge);
		return;
	case DEBT_COUNT:
	case DEBT_ADDED:
	case DEBT_HANDOVER:
		if (t->s->single)
			count_state_alone(t, (enum debt_kind)d.kind);
		else
			count_agree(t, badge);
		return;
	case DEBT_NONE:
	case DEBT_TEAM:
	case DEBT_ON:
	case DEBT_ROLLS_ON:
	case DEBT_MARKED_DIGIT:
	case DEBT_INCIDENT:
	case DEBT_CALLED:
	case DEBT_LOOK:
	case DEBT_WARD:
	case DEBT_KINDS:
		break;
	}
	turn_refuse(t, SAY(NOTHING_ASKED_OF, .person = turn_name_of(t, badge)));
}

/* Where nobody scrubs, the operator is the one at the field of the two who count (rule 8), and who was taken for that circulates. */
static void surgeon_at_field(struct turn *t, int32_t badge)
{
	const struct person *p = staff_find(&t->station->staff, badge);
	const int32_t beside = t->s->team.at[PLACE_FIELD];
	if (person_needs_registered(t, p, beside ? PLACE_CIRCULATING : PLACE_FIELD)) {
		turn_refuse(t, SAY(NEITHER_HERE_REGISTERED, .person = p->name));
		return;
	}
	if (beside) {
		EMIT(t, .kind = EV_LEFT, .person = beside, .what = PLACE_FIELD);
		person_join(t, beside, PLACE_CIRCULATING);
	}
	person_join(t, badge, PLACE_FIELD);
	if (beside)
		turn_say_more(t, SAY(R_PLACE, .person = turn_name_of(t, beside),
		                     .place = place_saying(PLACE_CIRCULATING)));
}

/* A badge answers what the board asks for, and nothing else (rule 19). */
static void known_badge(struct turn *t, int32_t badge, enum team_place place)
{
	struct want w = sheet_wants(t->station, t->s);
	enum team_place records = t->s->single ? PLACE_FIELD : PLACE_CIRCULATING;
	const int signs = t->s->team.at[t->s->single ? PLACE_FIELD : PLACE_SURGEON] == badge;
	if (w.kind == WANT_REMINDER)
		acknowledge(t, badge, w.digit);
	else if (w.kind == WANT_DEBT && t->s->team.at[debt_payer(t->s, (enum debt_kind)w.debt.kind)] == badge)
		pay_first(t, badge, &w.debt);
	else if (w.kind == WANT_TEAM && team_surgeon_may_count(&t->s->team, w.place) && signs)
		surgeon_at_field(t, badge);
	else if (w.kind == WANT_SIGN_OUT && signs)
		sign_out_begin(t, badge);
	else if (w.kind == WANT_FINAL_AGREED && t->s->single)
		count_state_final(t, badge);
	else if (((w.kind == WANT_COUNT_IN && !t->s->single) || w.kind == WANT_FINAL_AGREED) &&
	         place == records)
		count_agree(t, badge);
	else if (place == PLACE_FIELD && !t->s->single &&
	         (w.kind == WANT_COUNT_IN || w.kind == WANT_FINAL_AGREED))
		turn_refuse(t, SAY(FIELD_RECORDS_NO_COUNT, .person = turn_name_of(t, badge)));
	else if (signs)
		sign_out_begin(t, badge); /* refused, with what is still owed */
	else
		turn_refuse(t, SAY(NOTHING_ASKED_OF, .person = turn_name_of(t, badge)));
}

/* What the team owes at once is paid by the surgeon who comes. */
static void surgeon_comes(struct turn *t, int32_t badge)
{
	struct want w = sheet_wants(t->station, t->s);
	person_join(t, badge, PLACE_SURGEON);
	if ((w.kind == WANT_DEBT && debt_payer(t->s, (enum debt_kind)w.debt.kind) == PLACE_SURGEON) ||
	    w.kind == WANT_SIGN_OUT)
		known_badge(t, badge, PLACE_SURGEON);
}

static void new_badge(struct turn *t, const struct person *p)
{
	const struct team *team = &t->s->team;
	struct want w = sheet_wants(t->station, t->s);
	if (w.kind == WANT_REMINDER && !t->s->single)
		acknowledge(t, p->number, w.digit);
	else if (t->s->single && !team->at[PLACE_FIELD])
		person_take_place(t, p, PLACE_FIELD);
	else if (t->s->single)
		turn_refuse(t, SAY(SINGLE_COUNT_BY, .person = turn_name_of(t, team->at[PLACE_FIELD]),
		                   .other_person = p->name));
	else if (p->kind == STAFF_SURGEON && !team->at[PLACE_SURGEON])
		surgeon_comes(t, p->number);
	else if (p->kind == STAFF_CHARGE && !team->at[PLACE_CHARGE])
		person_join(t, p->number, PLACE_CHARGE);
	else if (p->kind == STAFF_PRACTITIONER && !team->at[PLACE_FIELD])
		person_take_place(t, p, PLACE_FIELD);
	else if (p->kind == STAFF_PRACTITIONER && !team->at[PLACE_CIRCULATING])
		person_take_place(t, p, PLACE_CIRCULATING);
	else
		turn_refuse(t, SAY(NOT_IN_TEAM, .person = p->name));
}

void badge_take_visitor(struct turn *t, int32_t visitor, enum team_place place)
{
	const struct person *p = staff_find(&t->station->staff, visitor);
	if (answer_badge(t, p, place) == ANSWERED_NOT)
		known_badge(t, visitor, place);
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
		person_join(t, p->number, PLACE_FIELD);
		turn_say(t, SAY(R_CASE_OPENED_ALONE, .case_no = t->s->case_no, .room = room->name,
		                .person = p->name));
		return;
	}
	if (!turn_has_case(t)) {
		turn_refuse(t, SAY(NO_CASE_NEW_FIRST, .room = station_room_name(t->station, t->in->room)));
		return;
	}
	enum team_place place = team_place_of(&t->s->team, p->number);
	if (answer_badge(t, p, place) == ANSWERED)
		return;
	if (place)
		known_badge(t, p->number, place);
	else
		new_badge(t, p);
}
