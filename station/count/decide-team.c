/* Badges: joining, agreeing, acknowledging, handing over (rules 8, 19). */
#include <stdio.h>
#include <string.h>

#include "count/turn.h"

static const char *name_of(const struct turn *t, int32_t number)
{
	return staff_name(&t->station->staff, number);
}

static void join(struct turn *t, int32_t number, enum team_place place)
{
	struct event e = {.kind = EV_JOINED, .person = number, .what = (uint8_t)place};
	snprintf(e.text, sizeof e.text, "%s", name_of(t, number));
	emit(t, &e);
	if (debts_has(&t->s->debts, DEBT_TEAM) && t->s->team.at[PLACE_FIELD] &&
	    (t->s->single || t->s->team.at[PLACE_CIRCULATING]))
		pay(t, DEBT_TEAM, 0, 0, "both have badged in");
	turn_accept(t, "%s: %s.", name_of(t, number), place_words(place));
}

/* A lone operator's badge after the tourniquet went on states the count that was owed. */
static void state_single_count(struct turn *t)
{
	int32_t who = t->s->team.at[PLACE_FIELD];
	if (!debts_has(&t->s->debts, DEBT_COUNT) || debts_has(&t->s->debts, DEBT_LISTING))
		return;
	EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_INITIAL, .person = who, .n = who);
	pay(t, DEBT_COUNT, 0, 0, "stated by the operator after the tourniquet went on");
}

/* The badge answers the reminder only where the board asks for that (rule 19). */
static int acknowledge(struct turn *t, int32_t badge)
{
	for (int i = 0; t->s->final == FINAL_NONE && i < t->s->n_digits; i++)
		if (t->s->digits[i].reminded) {
			int digit = t->s->digits[i].number;
			EMIT(t, .kind = EV_ACKNOWLEDGED, .digit = (uint8_t)digit, .person = badge);
			turn_accept(t, "Reminder for the %s acknowledged by %s.", own_digit_name(digit),
			            name_of(t, badge));
			return 1;
		}
	return 0;
}

static void surgeon_here(struct turn *t, int32_t badge)
{
	const struct debt *d;
	if ((d = debts_find(&t->s->debts, DEBT_SURGEON))) {
		pay(t, DEBT_SURGEON, d->item, d->digit, "the surgeon's decision");
		turn_accept(
		    t,
		    "%s decides: it is used although it rolls on over an open wound, flap, infection or "
		    "tumour. "
		    "The slip says so.",
		    name_of(t, badge));
	} else if ((d = debts_find(&t->s->debts, DEBT_REASON))) {
		pay(t, DEBT_REASON, d->item, d->digit, "the surgeon answers for it");
		turn_accept(t, "%s answers for the item that the station refused. The slip says so.",
		            name_of(t, badge));
	} else {
		sign_out(t, badge);
	}
}

static void known_badge(struct turn *t, int32_t badge, enum team_place place)
{
	if (acknowledge(t, badge))
		return;
	switch (place) {
	case PLACE_SURGEON:
		surgeon_here(t, badge);
		return;
	case PLACE_CIRCULATING:
		if (debts_has(&t->s->debts, DEBT_NAME)) {
			pay(t, DEBT_NAME, 0, 0, "name written by the circulating practitioner");
			turn_accept(t, "Visitor's name written, says %s.", name_of(t, badge));
			return;
		}
		agree(t, badge);
		return;
	case PLACE_FIELD:
		if (t->s->single && debts_has(&t->s->debts, DEBT_LISTING)) {
			named_aloud(t);
			state_single_count(t);
			return;
		}
		if (t->s->single) {
			state_single_count(t);
			surgeon_here(t, badge);
			return;
		}
		refuse(t, "%s is at the field: the circulating badge records a count.", name_of(t, badge));
		return;
	case PLACE_CHARGE:
	case PLACE_VISITOR:
	case TEAM_PLACES:
		break;
	}
	refuse(t, "Nothing is asked of %s now.", name_of(t, badge));
}

static void new_badge(struct turn *t, const struct person *p)
{
	const struct team *team = &t->s->team;
	if (t->s->single && !team->at[PLACE_FIELD]) {
		join(t, p->number, PLACE_FIELD);
		state_single_count(t);
		state_final(t);
	} else if (t->s->single) {
		refuse(t, "This count is single-person: the operator's badge only. WHO LOOKED names who else "
		          "looked.");
	} else if (p->kind == STAFF_SURGEON && !team->at[PLACE_SURGEON]) {
		join(t, p->number, PLACE_SURGEON);
		if (debts_has(&t->s->debts, DEBT_SURGEON) || debts_has(&t->s->debts, DEBT_REASON) ||
		    ready_to_sign_out(t->s))
			surgeon_here(t, p->number);
	} else if (p->kind == STAFF_CHARGE && !team->at[PLACE_CHARGE]) {
		join(t, p->number, PLACE_CHARGE);
	} else if (p->kind == STAFF_PRACTITIONER && !team->at[PLACE_FIELD]) {
		join(t, p->number, PLACE_FIELD);
	} else if (p->kind == STAFF_PRACTITIONER && !team->at[PLACE_CIRCULATING]) {
		join(t, p->number, PLACE_CIRCULATING);
	} else {
		refuse(t, "%s is not in this team, and the place is taken: scan HANDOVER to change over.",
		       p->name);
	}
}

/* --- handover ----------------------------------------------------------------------------------- */

static void handover_out(struct turn *t, int32_t badge, enum team_place place)
{
	if (place != PLACE_FIELD && place != PLACE_CIRCULATING && place != PLACE_SURGEON) {
		refuse(t, "%s is not at the field or circulating: scan the badge of the one who leaves.",
		       name_of(t, badge));
		return;
	}
	ask(t, (struct asked){.what = Q_HANDOVER_IN, .person = badge}, "%s hands over (%s).",
	    name_of(t, badge), place_words(place));
}

static void handover_in(struct turn *t, int32_t badge, enum team_place place)
{
	int32_t out = t->s->asked.person;
	enum team_place taken = team_place_of(&t->s->team, out);
	if (place) {
		refuse(t, "%s is in the team already: scan the badge of the one who comes.",
		       name_of(t, badge));
		return;
	}
	EMIT(t, .kind = EV_LEFT, .person = out, .what = (uint8_t)taken);
	join(t, badge, taken);
	EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_HANDOVER);
	if (taken == PLACE_SURGEON) {
		close_question(t);
		turn_accept(t, "%s takes over from %s as %s.", name_of(t, badge), name_of(t, out),
		            place_words(taken));
		return;
	}
	int on = sheet_first_digit_on(t->s);
	ask(t,
	    (struct asked){.what = on ? Q_HANDOVER_SEEN : Q_HANDOVER_AGREE,
	                   .digit = (uint8_t)on,
	                   .person = out,
	                   .n = badge},
	    "%s takes over from %s, %s.", name_of(t, badge), name_of(t, out), place_words(taken));
}

static void handover_agree(struct turn *t, int32_t badge)
{
	const char *why = team_may_not_agree(&t->s->team, &t->station->staff);
	if (badge != t->s->team.at[PLACE_CIRCULATING] || why) {
		refuse(t, "The handover count cannot be agreed: %s.",
		       why ? why : "the circulating badge records it");
		return;
	}
	int32_t field = t->s->team.at[PLACE_FIELD];
	EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_HANDOVER, .person = field, .other = badge, .n = badge);
	close_question(t);
	turn_accept(t, "Handover count agreed aloud by %s and %s, recorded by %s.", name_of(t, field),
	            name_of(t, badge), name_of(t, badge));
}

static void surgeon_ends(struct turn *t, int32_t badge, const struct person *p)
{
	int operator= t->s->single && badge == t->s->team.at[PLACE_FIELD];
	if (p->kind != STAFF_SURGEON && !operator) {
		refuse(t,
		       "Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching.");
		return;
	}
	if (!team_place_of(&t->s->team, badge))
		join(t, badge, PLACE_SURGEON);
	ask(t, (struct asked){.what = Q_INCIDENT, .person = badge}, "%s decides to end this case unresolved.",
	    p->name);
}

/* Questions that a badge answers. 1 where it did. */
static int answers(struct turn *t, const struct person *p, enum team_place place)
{
	switch ((enum question)t->s->asked.what) {
	case Q_HANDOVER_OUT:
		handover_out(t, p->number, place);
		return 1;
	case Q_HANDOVER_IN:
		handover_in(t, p->number, place);
		return 1;
	case Q_HANDOVER_AGREE:
		handover_agree(t, p->number);
		return 1;
	case Q_SURGEON_ENDS:
		surgeon_ends(t, p->number, p);
		return 1;
	case Q_FIELD_TOO:
		if (place == PLACE_FIELD)
			agree(t, p->number);
		else
			refuse(t, "Both badges are needed: scan the badge of the one at the field.");
		return 1;
	case Q_VISITOR:
		if (place != PLACE_CIRCULATING) {
			refuse(t, "The circulating badge vouches for a visitor: scan it, or NO.");
			return 1;
		}
		int32_t visitor = t->s->asked.person;
		close_question(t);
		join(t, visitor, t->s->team.at[PLACE_FIELD] ? PLACE_VISITOR : PLACE_FIELD);
		return 1;
	default:
		return 0;
	}
}

void on_badge(struct turn *t)
{
	const struct person *p = staff_find(&t->station->staff, t->in->number);
	const struct room *room = station_room(t->station, t->in->room);
	if (!p || p->withdrawn) {
		refuse(t,
		       p ? "Badge %d was withdrawn: scan a badge that is in use."
		         : "Badge %d is not known here: add it with 'bandtally staff add', or use a VISITOR "
		           "card.",
		       (int)t->in->number);
		return;
	}
	if (!has_case(t) && room && room->single) {
		open_case(t, "");
		join(t, p->number, PLACE_FIELD);
		turn_accept(t, "Case %d opened in %s. %s works alone: single-person count.",
		            (int)t->s->case_no, room->name, p->name);
		return;
	}
	if (!has_case(t)) {
		refuse(t, "No case is open in %s: scan NEW CASE first.",
		       station_room_name(t->station, t->in->room));
		return;
	}
	enum team_place place = team_place_of(&t->s->team, p->number);
	if (answers(t, p, place))
		return;
	if (place)
		known_badge(t, p->number, place);
	else
		new_badge(t, p);
}
