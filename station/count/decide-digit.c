/* Digits: the clock starts with the card, OFF alone stops it, the look at the bare digit (rules 2, 3, 6, 9).
 */
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "count/turn.h"

/* The tourniquet that goes on: one that lies here before one that came off before one that was accounted for, the
 * latest first. 0 none. */
static int tourniquet_at_hand(const struct sheet *s)
{
	for (int place = ITEM_HERE; place <= ITEM_ACCOUNTED; place++)
		for (int i = s->n_items; place != ITEM_ON && i >= 1; i--)
			if (s->items[i - 1].thing.role == ROLE_TOURNIQUET && s->items[i - 1].place == place)
				return i;
	return 0;
}

static int forceps_at_hand(const struct sheet *s)
{
	for (int i = 1; i <= s->n_items; i++)
		if (s->items[i - 1].thing.role == ROLE_FORCEPS && s->items[i - 1].place == ITEM_HERE)
			return i;
	return 0;
}

static int any_marked(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].marked)
			return 1;
	return 0;
}

static int team_complete(const struct turn *t)
{
	return t->s->team.at[PLACE_FIELD] && (t->s->single || t->s->team.at[PLACE_CIRCULATING]);
}

/* What was missing when the tourniquet went on is owed; nothing of it keeps the clock from starting (rule 3).
 */
static void owe_what_is_missing(struct turn *t, int digit, int was_marked_elsewhere)
{
	if (!team_complete(t))
		owe(t, DEBT_TEAM, 0, 0);
	if (!t->s->initial_agreed) {
		/* A lone operator states the count by going on to the digit (section 4). */
		if (t->s->single && team_complete(t))
			EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_INITIAL,
			     .person = t->s->team.at[PLACE_FIELD], .n = t->s->team.at[PLACE_FIELD]);
		else
			owe(t, DEBT_COUNT, 0, 0);
	}
	if (was_marked_elsewhere)
		owe(t, DEBT_MARKED_DIGIT, 0, digit);
}

/* The tourniquet itself, and the forceps that clamps it. */
static void put_on(struct turn *t, int digit)
{
	int item = tourniquet_at_hand(t->s);
	if (!item) {
		add_unlisted(t, ROLE_TOURNIQUET, "tourniquet, not listed yet");
		item = t->s->n_items;
	}
	EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = (uint8_t)digit);
	int forceps = forceps_at_hand(t->s);
	if (forceps && !sheet_item_on(t->s, digit, ROLE_FORCEPS))
		EMIT(t, .kind = EV_FORCEPS_ON, .item = (uint8_t)forceps, .digit = (uint8_t)digit);
}

void start_on(struct turn *t, int digit, struct moment at)
{
	char time[6];
	const struct digit *d = sheet_digit_const(t->s, digit);
	int wrong = any_marked(t->s) && !(d && d->marked);
	EMIT(t, .kind = EV_DIGIT_ON, .digit = (uint8_t)digit, .at = at);
	put_on(t, digit);
	owe_what_is_missing(t, digit, wrong);
	const char *forceps = sheet_item_on(t->s, digit, ROLE_FORCEPS) ? "forceps on it" : "no forceps on it";
	if (wrong) {
		ask(t, (struct asked){.what = Q_RIGHT_DIGIT, .digit = (uint8_t)digit},
		    "Tourniquet on, %s, from %s; %s. The clock runs.", own_digit_name(digit), hm(at, time),
		    forceps);
		return;
	}
	close_question(t);
	turn_accept(t, "Tourniquet on, %s, from %s; %s. The clock runs.", own_digit_name(digit), hm(at, time),
	            forceps);
}

void second_on(struct turn *t, int digit)
{
	put_on(t, digit);
	close_question(t);
	turn_accept(t,
	            "A second tourniquet on the %s. Each needs its own OFF; the clock runs until the last.",
	            own_digit_name(digit));
}

void take_off(struct turn *t, int digit)
{
	char time[6], min[80];
	const struct digit *d = sheet_digit_const(t->s, digit);
	if (d->state == DIGIT_MAYBE_ON) {
		EMIT(t, .kind = EV_DIGIT_ON, .digit = (uint8_t)digit);
		put_on(t, digit);
		owe_what_is_missing(t, digit, 0);
		pay(t, DEBT_ON, 0, digit, "it was on");
	}
	digit_minutes_text(d, t->in->at, min, sizeof min);
	int item = sheet_item_on(t->s, digit, ROLE_TOURNIQUET);
	if (item)
		EMIT(t, .kind = EV_ITEM_OFF, .item = (uint8_t)item, .digit = (uint8_t)digit);
	close_question(t);
	if (sheet_item_on(t->s, digit, ROLE_TOURNIQUET)) {
		turn_accept(t, "One of the tourniquets is off the %s. Another is still on; the clock runs.",
		            own_digit_name(digit));
		return;
	}
	int forceps = sheet_item_on(t->s, digit, ROLE_FORCEPS);
	if (forceps)
		EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)forceps);
	EMIT(t, .kind = EV_DIGIT_OFF, .digit = (uint8_t)digit);
	turn_accept(t, "Off, %s, at %s, after %s. Off is not yet accounted for.", own_digit_name(digit),
	            hm(t->in->at, time), min);
	if (t->s->single && !sheet_digits_on(t->s))
		EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
}

void look_bare(struct turn *t, int digit)
{
	char time[6];
	int32_t who = t->s->team.at[t->s->single ? PLACE_FIELD : PLACE_CIRCULATING];
	if (t->s->dressing_on)
		EMIT(t, .kind = EV_DRESSING_ON, .n = 0);
	EMIT(t, .kind = EV_DIGIT_SEEN_BARE, .digit = (uint8_t)digit, .person = who);
	close_question(t);
	if (t->s->single && !sheet_next_look(t->s)) {
		ask(t, (struct asked){.what = Q_WHO_LOOKED}, "%s seen bare at %s.", own_digit_name(digit),
		    hm(t->in->at, time));
		return;
	}
	turn_accept(t, "%s seen bare at %s.", own_digit_name(digit), hm(t->in->at, time));
}

static void ask_off(struct turn *t, int digit)
{
	char min[80];
	digit_minutes_text(sheet_digit_const(t->s, digit), t->in->at, min, sizeof min);
	ask(t, (struct asked){.what = Q_OFF, .digit = (uint8_t)digit}, "Tourniquet on the %s for %s.",
	    own_digit_name(digit), min);
}

/* Before the initial count a digit card marks the digit or starts its clock: only a person knows which, and
 * until one says, the clock runs (section 4). */
static void ask_is_on(struct turn *t, int digit)
{
	EMIT(t, .kind = EV_DIGIT_MAYBE_ON, .digit = (uint8_t)digit);
	owe(t, DEBT_ON, 0, digit);
	ask(t, (struct asked){.what = Q_IS_ON, .digit = (uint8_t)digit, .n = 1}, "%s.",
	    own_digit_name(digit));
}

static void seen_on(struct turn *t, int digit)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	if (!d || d->state != DIGIT_ON) {
		refuse(t, "No tourniquet is on the %s: look at the digit that the board names.",
		       own_digit_name(digit));
		return;
	}
	struct asked q = t->s->asked;
	EMIT(t, .kind = EV_DIGIT_SEEN_ON, .digit = (uint8_t)digit, .n = 1);
	turn_accept(t, "Tourniquet seen on the %s.", own_digit_name(digit));
	for (int i = 0; i < t->s->n_digits; i++)
		if (t->s->digits[i].state == DIGIT_ON && !t->s->digits[i].seen_on) {
			q.digit = t->s->digits[i].number;
			EMIT(t, .kind = EV_ASKED, .what = q.what, .digit = q.digit, .person = q.person,
			     .n = q.n);
			return;
		}
	EMIT(t, .kind = EV_ASKED, .what = Q_HANDOVER_AGREE, .person = q.person, .n = q.n);
}

static void move_to(struct turn *t, int digit)
{
	int from = t->s->asked.digit;
	const struct digit *to = sheet_digit_const(t->s, digit);
	if (!from || from == digit || (to && (to->had || to->state == DIGIT_MAYBE_ON))) {
		refuse(t, "It cannot move to the %s: scan the card of the digit it is really on, or NO.",
		       own_digit_name(digit));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_MOVED, .digit = (uint8_t)from, .other = digit);
	pay(t, DEBT_MARKED_DIGIT, 0, digit, "entered for the wrong digit and moved");
	close_question(t);
	turn_accept(t, "Moved from the %s to the %s; the time is kept.", own_digit_name(from),
	            own_digit_name(digit));
}

/* Questions that a digit card answers. 1 where it did. */
static int answers(struct turn *t, int digit)
{
	switch ((enum question)t->s->asked.what) {
	case Q_WHICH_OFF: {
		const struct digit *d = sheet_digit_const(t->s, digit);
		if (!d || (d->state != DIGIT_ON && d->state != DIGIT_MAYBE_ON))
			return 0;
		take_off(t, digit);
		return 1;
	}
	case Q_MOVE_TO:
		move_to(t, digit);
		return 1;
	case Q_HANDOVER_SEEN:
		seen_on(t, digit);
		return 1;
	default:
		return 0;
	}
}

static void after_final(struct turn *t, int digit, const struct digit *d)
{
	if (d->seen_bare || t->s->final == FINAL_ASKING) {
		ask(t, (struct asked){.what = Q_IS_ON, .digit = (uint8_t)digit},
		    d->seen_bare ? "%s was seen bare."
		                 : "%s: the look at the bare digit comes after the final count is agreed.",
		    own_digit_name(digit));
		return;
	}
	look_bare(t, digit);
}

void on_digit(struct turn *t)
{
	int digit = t->in->digit;
	if (!has_case(t)) {
		open_case(t, "");
		owe(t, DEBT_TEAM, 0, 0);
		if (!t->s->case_no)
			return;
		start_on(t, digit, t->in->at);
		return;
	}
	if (answers(t, digit))
		return;
	const struct digit *d = sheet_digit_const(t->s, digit);
	if (d && d->state == DIGIT_ON)
		ask_off(t, digit);
	else if (d && d->state == DIGIT_MAYBE_ON)
		ask(t, (struct asked){.what = Q_IS_ON, .digit = (uint8_t)digit, .n = 1}, "%s.",
		    own_digit_name(digit));
	else if (d && d->had && t->s->final != FINAL_NONE)
		after_final(t, digit, d);
	else if (!t->s->initial_agreed && !(t->s->single && t->s->n_items))
		ask_is_on(t, digit);
	else
		start_on(t, digit, t->in->at);
}
