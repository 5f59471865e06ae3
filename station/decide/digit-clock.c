#include "decide/digit-clock.h"

#include "decide/item-in.h"
#include "decide/phrases.h"
#include "decide/search.h"

/* Missing and dropped things do not go on by themselves. */
static int is_at_hand(const struct item *it, enum role_trait trait, int place)
{
	return role_has(it->thing.role, trait) && it->place == place && !it->missing && !it->dropped &&
	       it->condition != CONDITION_PIECES_MISSING;
}

int sheet_unused_tourniquet(const struct sheet *s)
{
	for (int i = s->n_items; i >= 1; i--)
		if (is_at_hand(&s->items[i - 1], TRAIT_TIMED, ITEM_HERE))
			return i;
	return 0;
}

/* What a count looks for and a digit card shows: the one that came off this digit before any other, the latest first. 0 none. */
static int tourniquet_sought(const struct sheet *s, int digit)
{
	for (int same = 1; same >= 0; same--)
		for (int i = s->n_items; i >= 1; i--) {
			const struct item *it = &s->items[i - 1];
			if (role_has(it->thing.role, TRAIT_TIMED) && item_is_sought(it) &&
			    it->place != ITEM_ON && !it->dropped && (!same || it->digit == digit))
				return i;
		}
	return 0;
}

/* It was on another digit when this one's clock began: one is not on two. What a power cut hides nobody knows. */
static int was_elsewhere(const struct sheet *s, const struct item *it, int digit, struct moment now)
{
	const struct digit *d = sheet_digit_const(s, digit), *other = sheet_digit_const(s, it->digit);
	if (!d || !other || other == d || other->state != DIGIT_OFF || d->gap || other->gap ||
	    sheet_item_on(s, digit, TRAIT_TIMED)) /* a second one goes on now */
		return 0;
	int64_t off_ms = other->by_wall.off_ms + moment_between_ms(other->since, now);
	return digit_stretch_ms(d, now) > off_ms + SCANNED_LATE_MS;
}

/* The tourniquet that goes on: an unused one before one that is missing before the one that came off this digit before any
 * other that came off or was accounted for, the latest first. 0 none. */
static int tourniquet_at_hand(const struct sheet *s, int digit, struct moment now)
{
	int item = sheet_unused_tourniquet(s);
	if (!item)
		item = tourniquet_sought(s, digit);
	for (int same = 1; !item && same >= 0; same--)
		for (int place = ITEM_OFF; !item && place <= ITEM_ACCOUNTED; place++)
			for (int i = s->n_items; !item && i >= 1; i--)
				if (is_at_hand(&s->items[i - 1], TRAIT_TIMED, place) &&
				    (!same || s->items[i - 1].digit == digit) &&
				    !was_elsewhere(s, &s->items[i - 1], digit, now))
					item = i;
	return item;
}

static int forceps_at_hand(const struct sheet *s)
{
	for (int i = 1; i <= s->n_items; i++)
		if (is_at_hand(&s->items[i - 1], TRAIT_CLAMPS, ITEM_HERE))
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
		turn_owe(t, DEBT_TEAM, 0, 0);
	if (!t->s->initial_agreed) {
		/* A lone operator states the count by going on to the digit (section 4). */
		if (t->s->single && team_complete(t))
			EMIT(t, .kind = EV_COUNT_AGREED, .what = COUNT_INITIAL,
			     .person = t->s->team.at[PLACE_FIELD], .n = t->s->team.at[PLACE_FIELD]);
		else
			turn_owe(t, DEBT_COUNT, 0, 0);
	}
	if (was_marked_elsewhere)
		turn_owe(t, DEBT_MARKED_DIGIT, 0, digit);
}

/* What was missing, or was shown a moment ago, is named: only a person knows whether the one on the digit is that. */
static struct say taken_for(const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	if (it && item_is_sought(it))
		return *SAY(R_TAKEN_FOR_MISSING, .item = it->thing.name);
	if (it && it->place == ITEM_ACCOUNTED)
		return *SAY(R_TAKEN_FOR_SHOWN, .item = it->thing.name);
	return (struct say){0};
}

/* The tourniquet itself, and the forceps that clamps it. */
static struct say put_on(struct turn *t, int digit)
{
	int item = tourniquet_at_hand(t->s, digit, t->in->at);
	const struct say besides = taken_for(t->s, item);
	if (!item) {
		item_add_unlisted(t, ROLE_TOURNIQUET, SAY_TOURNIQUET_NOT_LISTED_YET);
		item = t->s->n_items;
	}
	EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = (uint8_t)digit);
	int forceps = forceps_at_hand(t->s);
	if (forceps && !sheet_item_on(t->s, digit, TRAIT_CLAMPS))
		EMIT(t, .kind = EV_FORCEPS_ON, .item = (uint8_t)forceps, .digit = (uint8_t)digit);
	return besides;
}

static void say_besides(struct turn *t, const struct say *besides)
{
	if (besides->saying)
		turn_say_more(t, besides);
}

void digit_start_on(struct turn *t, int digit)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	int wrong = any_marked(t->s) && !(d && d->marked);
	int counted = t->s->final != FINAL_NONE;
	struct moment at = t->in->at;
	if (d && digit_runs(d)) /* it goes on from its own start */
		at.wall_ms = d->doubted ? d->doubt_wall_ms : d->on_wall_ms;
	EMIT(t, .kind = EV_DIGIT_ON, .digit = (uint8_t)digit);
	const struct say besides = put_on(t, digit);
	owe_what_is_missing(t, digit, wrong);
	const struct say *on = sheet_item_on(t->s, digit, TRAIT_CLAMPS)
	                           ? SAY(R_ON_FORCEPS, .digit = digit, .time = moment_minute_of_day(at))
	                           : SAY(R_ON_NO_FORCEPS, .digit = digit, .time = moment_minute_of_day(at));
	if (wrong) {
		turn_ask_saying(t, (struct asked){.what = Q_RIGHT_DIGIT, .digit = (uint8_t)digit}, on);
	} else {
		turn_close_question(t);
		turn_say(t, on);
	}
	say_besides(t, &besides);
	if (counted)
		turn_say_more(t, SAY(R_FINAL_AGAIN));
}

/* A card that cannot have been meant as a start without a doubt: the digit's clock runs at once as 'on?', and a
 * person is asked. One that had a tourniquet keeps its own clock beside it (rule 3, section 4). */
void digit_doubt_on(struct turn *t, int digit, struct moment at)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	if (d && digit_runs(d))
		return;
	EMIT(t, .kind = d && d->had ? EV_DIGIT_DOUBTED : EV_DIGIT_MAYBE_ON, .digit = (uint8_t)digit,
	     .at = at);
	turn_owe(t, DEBT_ON, 0, digit);
}

void digit_ask_is_on(struct turn *t, int digit, enum saying besides)
{
	int counted = t->s->final != FINAL_NONE;
	digit_doubt_on(t, digit, t->in->at);
	turn_ask_saying(t, (struct asked){.what = Q_IS_ON, .digit = (uint8_t)digit, .n = 1},
	                SAY(R_ON_MAYBE, .digit = digit));
	if (counted &&
	    t->s->final == FINAL_NONE) /* a digit that had none may have one: nothing of the count holds */
		turn_say_more(t, SAY(R_FINAL_AGAIN));
	if (besides)
		turn_say_more(t, &(const struct say){.saying = besides});
}

void digit_ask_off(struct turn *t, int digit)
{
	struct say say = {.saying = SAY_R_ON_FOR, .digit = digit};
	say.what = digit_minutes(sheet_digit_const(t->s, digit), t->in->at, &say.minutes, &say.most);
	turn_ask_saying(t, (struct asked){.what = Q_OFF, .digit = (uint8_t)digit}, &say);
}

void digit_second_on(struct turn *t, int digit)
{
	const struct say besides = put_on(t, digit);
	turn_close_question(t);
	turn_say(t, SAY(R_SECOND_ON, .digit = digit));
	say_besides(t, &besides);
}

/* A time of day that cannot be true is left out. */
static struct say off_says(const struct digit *d, struct moment at)
{
	struct say say = {.digit = d->number, .time = moment_minute_of_day(at)};
	say.what = digit_minutes(d, at, &say.minutes, &say.most);
	say.saying = digit_wall_holds(d, at) ? SAY_R_OFF : d->gap ? SAY_R_OFF_AFTER : SAY_R_OFF_NO_WALL;
	return say;
}

void digit_not_on(struct turn *t, int digit)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	int32_t case_no = t->s->case_no;
	int had = d && d->had;
	EMIT(t, .kind = EV_DIGIT_NOT_ON, .digit = (uint8_t)digit);
	turn_pay(t, DEBT_ON, 0, digit, PAID_NOT_ON);
	turn_close_question(t);
	if (sheet_is_empty(t->s)) {
		EMIT(t, .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = END_NOTHING_OPENED);
		turn_say(t, SAY(R_NOT_ON, .digit = digit));
		turn_say_more(t, SAY(R_ENDED_EMPTY, .case_no = case_no));
	} else if (!had && !t->s->initial_agreed) {
		EMIT(t, .kind = EV_DIGIT_MARKED, .digit = (uint8_t)digit);
		turn_say(t, SAY(R_MARKED, .digit = digit));
	} else if (had && search_is_look_step(t) && sheet_digits_had(t->s) == 1) {
		search_answered(t, 1);
	} else {
		turn_say(t, SAY(R_NOT_ON, .digit = digit));
	}
}

static void take_off(struct turn *t, int digit, struct moment at)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	const uint8_t late = moment_between_ms(at, t->in->at) > SCANNED_LATE_MS ? EVENT_LATE : 0;
	struct say besides = {0};
	if (d->state == DIGIT_MAYBE_ON) {
		EMIT(t, .kind = EV_DIGIT_ON, .digit = (uint8_t)digit, .at = at);
		besides = put_on(t, digit);
		owe_what_is_missing(t, digit, 0);
		turn_pay(t, DEBT_ON, 0, digit, PAID_WAS_ON);
	}
	const struct say off = off_says(d, at);
	int item = sheet_item_on(t->s, digit, TRAIT_TIMED);
	if (item)
		EMIT(t, .kind = EV_ITEM_OFF, .item = (uint8_t)item, .digit = (uint8_t)digit, .at = at,
		     .flags = late);
	turn_close_question(t);
	if (sheet_item_on(t->s, digit, TRAIT_TIMED)) {
		turn_say(t, SAY(R_ONE_OFF, .digit = digit));
		return;
	}
	int forceps = sheet_item_on(t->s, digit, TRAIT_CLAMPS);
	if (forceps)
		EMIT(t, .kind = EV_FORCEPS_MOVED, .item = (uint8_t)forceps);
	EMIT(t, .kind = EV_DIGIT_OFF, .digit = (uint8_t)digit, .at = at, .flags = late);
	turn_say(t, &off);
	say_besides(t, &besides);
	if (t->s->single && !sheet_digits_on(t->s))
		EMIT(t, .kind = EV_COUNT_STARTED, .what = COUNT_FINAL);
}

void digit_take_off(struct turn *t, int digit)
{
	take_off(t, digit, t->in->at);
}

void digit_take_off_as_asked(struct turn *t, int digit)
{
	const struct digit *d = sheet_digit_const(t->s, digit);
	const struct moment at = t->s->asked.at;
	/* One that was scanned just now may have been a slip of the hand: its digit's card is what says that it is off. */
	const int of_this_stretch = t->s->asked.n && at.boot == t->in->at.boot && at.boot == d->since.boot &&
	                            moment_between_ms(d->since, at) >= 0;
	take_off(t, digit, of_this_stretch ? at : t->in->at);
}

/* What was entered for one digit is really on one that had a tourniquet before: nothing was on the first, and the time is
 * kept. */
static void move_onto_used(struct turn *t, int from, int digit)
{
	struct moment at = sheet_digit_const(t->s, from)->since;
	struct say besides = {0};
	int item = sheet_item_on(t->s, from, TRAIT_TIMED), forceps = sheet_item_on(t->s, from, TRAIT_CLAMPS);
	int asked = sheet_digit_const(t->s, from)->state == DIGIT_MAYBE_ON;
	EMIT(t, .kind = EV_DIGIT_NEVER_ON, .digit = (uint8_t)from);
	turn_pay(t, DEBT_ON, 0, from, PAID_MOVED);
	turn_pay(t, DEBT_MARKED_DIGIT, 0, from, PAID_MOVED);
	if (asked) { /* nobody has said yet that one went on: it is asked of this one, from the same time */
		digit_doubt_on(t, digit, at);
		digit_ask_is_on(t, digit, SAY_NONE);
		turn_say_more(t, SAY(R_NEVER_ON, .digit = from));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_ON, .digit = (uint8_t)digit, .at = at);
	if (item)
		EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = (uint8_t)digit);
	else
		besides = put_on(t, digit);
	if (forceps)
		EMIT(t, .kind = EV_FORCEPS_ON, .item = (uint8_t)forceps, .digit = (uint8_t)digit);
	owe_what_is_missing(t, digit, 0);
	turn_close_question(t);
	turn_say(t, SAY(R_MOVED, .digit = from, .other_digit = digit));
	say_besides(t, &besides);
}

/* It was entered by the digit card and never listed: where no tourniquet went on, it was never here. */
static int is_phantom(const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	return it && it->thing.unlisted && !it->thing.line[0] &&
	       debts_owes(&s->debts, (struct debt){.kind = DEBT_LISTING, .item = (uint8_t)item});
}

void digit_never_on(struct turn *t, int digit)
{
	int item = sheet_item_last_on(t->s, digit), phantom = is_phantom(t->s, item);
	const struct item *it = sheet_item_const(t->s, item);
	if (t->s->last_timed == digit && t->s->last_timed_what == TIMED_BESIDE_ON) {
		turn_refuse(t, SAY(SECOND_STAYS, .digit = digit)); /* the first is on for certain */
		return;
	}
	if (it && it->place == ITEM_ACCOUNTED) {
		turn_refuse(t, SAY(ACCOUNTED_STAYS_ON, .digit = digit));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_NEVER_ON, .digit = (uint8_t)digit);
	if (phantom) {
		EMIT(t, .kind = EV_ITEM_STRUCK, .item = (uint8_t)item);
		turn_pay(t, DEBT_LISTING, item, 0, PAID_NEVER_HERE);
	}
	if (t->s->discrepancy && !sheet_missing(t->s))
		EMIT(t, .kind = EV_DISCREPANCY, .n = 0);
	turn_pay(t, DEBT_ON, 0, digit, PAID_NEVER_ON);
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_NEVER_ON);
	turn_close_question(t);
	turn_say(t, SAY(R_NEVER_ON, .digit = digit));
}

void digit_never_off(struct turn *t, int digit)
{
	struct say say = {.saying = SAY_R_NEVER_OFF, .digit = digit};
	int item = sheet_item_last_on(t->s, digit);
	const struct item *it = sheet_item_const(t->s, item);
	const struct say besides =
	    it && it->place == ITEM_ACCOUNTED ? taken_for(t->s, item) : (struct say){0};
	EMIT(t, .kind = EV_DIGIT_STILL_ON, .digit = (uint8_t)digit);
	if (!item) { /* what was on it was taken for the one of another digit meanwhile */
		item_add_unlisted(t, ROLE_TOURNIQUET, SAY_TOURNIQUET_NOT_LISTED_YET);
		item = t->s->n_items;
	}
	EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = (uint8_t)digit);
	turn_pay(t, DEBT_ON, 0, digit, PAID_NEVER_OFF);
	owe_what_is_missing(t, digit, 0);
	turn_close_question(t);
	say.what = digit_minutes(sheet_digit_const(t->s, digit), t->in->at, &say.minutes, &say.most);
	turn_say(t, &say);
	say_besides(t, &besides);
}

/* One was on there before the wrong card was read: a second went on, or it came off, as its own card would ask. */
static void ask_of_the_other(struct turn *t, int from, int digit)
{
	digit_never_on(t, from);
	if (t->out->reply.verdict != VERDICT_ACCEPTED)
		return;
	digit_ask_off(t, digit);
	turn_say_more(t, SAY(R_NEVER_ON, .digit = from));
}

/* The second one alone was entered for the wrong digit: it moves, from when it went on, and the first stays where it is. */
static void move_second(struct turn *t, int from, int digit)
{
	const struct digit *to = sheet_digit_const(t->s, digit);
	const int item = t->s->beside_item;
	const struct moment at = t->s->beside_at;
	if (to && (digit_runs(to) || (to->had && moment_between_ms(to->since, at) < 0))) {
		turn_refuse(t, SAY(SECOND_CANNOT_MOVE, .digit = digit));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_ON, .digit = (uint8_t)digit, .at = at);
	EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = (uint8_t)digit);
	owe_what_is_missing(t, digit, 0);
	turn_close_question(t);
	turn_say(t,
	         SAY(R_SECOND_MOVED, .digit = from, .other_digit = digit, .time = moment_minute_of_day(at)));
}

/* OFF was entered for one digit and is the other's, whose clock runs: the first has its tourniquet still. */
static void off_was_of(struct turn *t, int from, int digit)
{
	const struct digit *f = sheet_digit_const(t->s, from);
	const int beside = t->s->last_timed_what == TIMED_BESIDE_OFF;
	const int item = beside ? t->s->beside_item : sheet_item_last_on(t->s, from);
	const struct moment at = beside ? t->s->beside_at : f->since;
	if (moment_between_ms(sheet_digit_const(t->s, digit)->since, at) < 0 || !item) {
		turn_refuse(t, SAY(CANNOT_MOVE_THERE, .digit = digit));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_STILL_ON, .digit = (uint8_t)from);
	EMIT(t, .kind = EV_ITEM_ON, .item = (uint8_t)item, .digit = (uint8_t)from);
	take_off(t, digit, at);
	turn_say_more(t, SAY(R_OTHER_STILL_ON, .digit = from));
}

/* OFF, or the first of two OFF, was entered last for `f`, nothing is asked of it since, and the clock of `to` runs for certain. */
static int is_off_of_other(const struct sheet *s, const struct digit *f, const struct digit *to)
{
	const int what = s->last_timed_what;
	return f && to && f != to && s->last_timed == f->number && !f->doubted && digit_is_on(to) &&
	       ((what == TIMED_OFF && f->state == DIGIT_OFF) ||
	        (what == TIMED_BESIDE_OFF && f->state == DIGIT_ON));
}

void digit_move_to(struct turn *t, int digit)
{
	int from = t->s->asked.digit;
	const struct digit *f = sheet_digit_const(t->s, from), *to = sheet_digit_const(t->s, digit);
	int seen = f && f->seen_bare;
	if (seen && from != digit && to && to->had && !digit_runs(to)) { /* each has its own look */
		EMIT(t, .kind = EV_DIGIT_NOT_SEEN, .digit = (uint8_t)from);
		turn_close_question(t);
		turn_say(t, SAY(R_LOOK_MISREAD, .digit = from));
		return;
	}
	if (f && from != digit && t->s->last_timed == from && t->s->last_timed_what == TIMED_BESIDE_ON) {
		move_second(t, from, digit);
		return;
	}
	if (is_off_of_other(t->s, f, to)) {
		off_was_of(t, from, digit);
		return;
	}
	if (f && from != digit && digit_is_on(f) && to && to->had && !digit_runs(to)) {
		move_onto_used(t, from, digit);
		return;
	}
	if (from == digit) {
		turn_close_question(t);
		turn_say(t, SAY(R_LEFT_DIGIT, .digit = digit));
		return;
	}
	if (f && digit_is_on(f) && to && to->state == DIGIT_ON &&
	    digit_stretch_ms(to, t->in->at) > digit_stretch_ms(f, t->in->at)) {
		ask_of_the_other(t, from, digit);
		return;
	}
	if (to && digit_runs(to)) { /* its own card has started its clock: then nothing was on the other */
		digit_never_on(t, from);
		if (t->out->reply.verdict == VERDICT_ACCEPTED)
			turn_say(t, SAY(R_NEVER_ON_OTHER_RUNS, .digit = from, .other_digit = digit));
		return;
	}
	if (to && to->had) {
		turn_refuse(t, SAY(CANNOT_MOVE_THERE, .digit = digit));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_MOVED, .digit = (uint8_t)from, .other = digit);
	if (seen) /* the time moves along, and what people saw does not */
		EMIT(t, .kind = EV_DIGIT_NOT_SEEN, .digit = (uint8_t)digit);
	turn_pay(t, DEBT_MARKED_DIGIT, 0, digit, PAID_MOVED);
	turn_close_question(t);
	turn_say(t, SAY(R_MOVED, .digit = from, .other_digit = digit));
	if (seen)
		turn_say_more(t, SAY(R_LOOK_AGAIN));
}
