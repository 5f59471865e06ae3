/* What each event changes on a sheet. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "count/event-cases.h"
#include "count/sheet.h"

/* Any change to what is counted, or to what is on a digit, after the final count voids it and every look at a
 * bare digit (rules 1 and 9); a sign-out that had begun begins again. */
static void void_final(struct sheet *s)
{
	if (s->final == FINAL_AGREED)
		s->final = FINAL_NONE;
	s->who_looked = 0;
	for (int i = 0; i < s->n_digits; i++)
		s->digits[i].seen_bare = 0;
	s->points_yes = s->point_no = s->signed_out = 0;
	if (s->asked.what == Q_WHO_LOOKED || s->asked.what == Q_POINT || s->asked.what == Q_WITNESS)
		s->asked = (struct asked){0}; /* it belonged to that count */
}

static struct digit *digit_make(struct sheet *s, int number)
{
	struct digit *d = sheet_digit(s, number);
	if (d || s->n_digits == DIGITS_MAX || number < 1 || number > DIGIT_NUMBER_MAX)
		return d;
	d = &s->digits[s->n_digits++];
	*d = (struct digit){.number = (uint8_t)number};
	return d;
}

static void doubt_over(struct digit *d)
{
	d->doubted = d->doubt_gap = 0;
	d->doubt_since = (struct moment){0};
	d->doubt_wall_ms = d->doubt_known_ms = 0;
}

/* A stretch begins at `from`, after the last OFF where there was one. */
static void bare_until(struct digit *d, struct moment from)
{
	d->bare_ms = d->state == DIGIT_OFF ? d->by_wall.off_ms + moment_between_ms(d->since, from) : 0;
}

/* The clock that ran beside is the clock of a new stretch. */
static void doubt_confirmed(struct digit *d)
{
	bare_until(d, d->doubt_since);
	d->bare_ms -= d->doubt_known_ms;
	d->since = d->doubt_since;
	d->on_wall_ms = d->doubt_wall_ms;
	d->known_ms = d->doubt_known_ms;
	d->gap = d->doubt_gap;
	by_wall_start(d);
	d->by_wall.cuts = d->by_wall.gaps = d->gap;
	d->reminded_min = 0;
	d->sure_ms = d->sure_cut_ms = 0;
	d->stretches++;
	doubt_over(d);
}

static void clock_start(struct sheet *s, struct digit *d, enum digit_state state, struct moment at)
{
	if (!digit_is_on(d) && d->doubted) {
		doubt_confirmed(d);
	} else if (!digit_is_on(d)) {
		bare_until(d, at);
		d->stretches++;
		d->since = at;
		d->on_wall_ms = at.wall_ms;
		d->known_ms = d->sure_ms = d->sure_cut_ms = 0;
		d->gap = 0;
		d->reminded_min = 0;
		by_wall_start(d);
	}
	if (d->state == DIGIT_OFF)
		d->reminded = 0; /* it spoke of a tourniquet that was off */
	d->state = (uint8_t)state;
	s->final = FINAL_NONE; /* a count that goes on does not hold what is on a digit again */
	s->last_timed = d->number;
	s->last_timed_what = TIMED_ON;
}

/* Ends the stretch into the totals. */
static void clock_stop(struct sheet *s, struct digit *d, struct moment at)
{
	int64_t stretch = digit_stretch_ms(d, at);
	d->total_ms += stretch;
	if (stretch > d->longest_ms)
		d->longest_ms = stretch;
	d->known_ms = stretch; /* kept, so that MINUTES AGO can take some of it back */
	d->since = at;
	by_wall_off(d, at);
	s->last_timed = d->number;
	s->last_timed_what = TIMED_OFF;
}

/* OFF was wrong: the stretch that it ended goes on. */
static int still_on(struct sheet *s, struct digit *d, struct moment now, struct origin *at)
{
	if (d->state != DIGIT_OFF && d->state != DIGIT_ON) /* on: one of two was said to be off */
		return ERROR_AT(at, -EINVAL);
	if (d->state == DIGIT_OFF)
		d->total_ms -= d->known_ms;
	d->state = DIGIT_ON;
	digit_is_sure(d, now);
	s->last_timed = d->number;
	s->last_timed_what = TIMED_STILL_ON;
	doubt_over(d);
	s->final = FINAL_NONE;
	void_final(s);
	return 0;
}

/* What lay on it, or had come off it, lies here as it was counted in. */
static int never_on(struct sheet *s, struct digit *d, struct origin *at)
{
	if (!digit_is_on(d) && d->state != DIGIT_OFF)
		return ERROR_AT(at, -EINVAL);
	if (d->state == DIGIT_OFF)
		d->total_ms -= d->known_ms;
	d->stretches = (uint8_t)(d->stretches ? d->stretches - 1 : 0);
	d->had = d->stretches != 0;
	d->state = d->had ? DIGIT_OFF : DIGIT_BARE;
	d->known_ms = 0;
	d->gap = d->reminded = 0;
	doubt_over(d);
	for (int i = 0; i < s->n_items; i++)
		if (s->items[i].digit == d->number &&
		    (s->items[i].place == ITEM_ON || s->items[i].place == ITEM_OFF)) {
			s->items[i].place = ITEM_HERE;
			s->items[i].digit = 0;
		}
	s->last_timed = s->last_timed_what = 0;
	s->final = FINAL_NONE; /* a lone operator's count began with its OFF */
	void_final(s);
	return 0;
}

static int apply_digit(struct sheet *s, const struct event *e, struct origin *at)
{
	struct digit *d = digit_make(s, e->digit);
	if (!d)
		return ERROR_AT(at, s->n_digits == DIGITS_MAX ? -ENOSPC : -EINVAL);
	switch (e->kind) {
	case EV_DIGIT_MARKED:
		d->marked = 1;
		return 0;
	case EV_DIGIT_MAYBE_ON:
		clock_start(s, d, DIGIT_MAYBE_ON, e->at);
		void_final(s);
		return 0;
	case EV_DIGIT_ON:
		clock_start(s, d, DIGIT_ON, e->at);
		d->had = 1;
		void_final(s);
		return 0;
	case EV_DIGIT_DOUBTED:
		if (digit_runs(d))
			return 0;
		d->doubted = 1;
		d->doubt_since = e->at;
		d->doubt_wall_ms = e->at.wall_ms;
		return 0;
	case EV_DIGIT_STILL_ON:
		return still_on(s, d, e->at, at);
	case EV_DIGIT_NEVER_ON:
		return never_on(s, d, at);
	case EV_DIGIT_NOT_ON:
		if (d->doubted) {
			doubt_over(d);
			return 0;
		}
		if (d->state == DIGIT_MAYBE_ON && d->stretches)
			d->stretches--;
		d->state = d->had ? DIGIT_OFF : DIGIT_BARE;
		d->known_ms = 0;
		d->reminded = 0;
		return 0;
	case EV_DIGIT_OFF:
		clock_stop(s, d, e->at);
		d->state = DIGIT_OFF;
		d->reminded = 0; /* it spoke of a tourniquet that was on */
		return 0;
	case EV_DIGIT_SEEN_BARE:
		d->seen_bare = 1;
		return 0;
	case EV_DIGIT_NOT_SEEN:
		d->seen_bare = 0;
		s->who_looked = 0;
		return 0;
	case EV_DIGIT_SEEN_ON:
		if (e->n != SEEN_SAID)
			d->seen_on = 1;
		if (e->n != SEEN_NOT_FULLY)
			digit_is_sure(d, e->at);
		return 0;
	case EV_DIGIT_EARLIER:
	case EV_DIGIT_MOVED: /* apply() */
		EVENTS(NOT_OF_DIGIT)
	case EV_UNREADABLE:
		break;
	}
	return ERROR_AT(at, -EINVAL);
}

static int apply_earlier(struct sheet *s, const struct event *e, struct origin *at)
{
	struct digit *d = sheet_digit(s, e->digit);
	if (!d)
		return ERROR_AT(at, -EINVAL);
	int64_t ms = (int64_t)e->n * 60000;
	if (e->what == STRETCH_ON) {
		d->known_ms += ms;
		d->sure_ms += d->sure_ms ? ms : 0;
		d->on_wall_ms -= ms;
		d->bare_ms -= ms;
		return 0;
	}
	by_wall_earlier(d, ms);
	if (ms > d->known_ms) /* it cannot have come off before it went on */
		ms = d->known_ms;
	if (d->longest_ms == d->known_ms)
		d->longest_ms -= ms;
	d->total_ms -= ms;
	d->known_ms -= ms;
	return 0;
}

/* MISREAD: what was entered for one digit belongs to another, with its time. */
static int apply_moved(struct sheet *s, const struct event *e, struct origin *at)
{
	struct digit *from = sheet_digit(s, e->digit), *to = digit_make(s, e->other);
	if (!from || !to || from == to)
		return ERROR_AT(at, -EINVAL);
	if (digit_is_on(to) || to->had)
		return ERROR_AT(at, -EINVAL);
	uint8_t number = to->number, marked = to->marked, from_number = from->number,
	        from_marked = from->marked;
	*to = *from;
	to->number = number;
	to->marked = marked;
	memset(from, 0, sizeof *from);
	from->number = from_number;
	from->marked = from_marked;
	for (int i = 0; i < s->n_items; i++)
		if (s->items[i].digit == from_number)
			s->items[i].digit = number;
	for (int i = 0; i < s->debts.count; i++)
		if (s->debts.list[i].digit == from_number)
			s->debts.list[i].digit = number;
	s->last_timed = number;
	return 0;
}

/* On the sheet each thing has a name. */
static void put_thing(struct item *it, const struct thing *thing)
{
	it->thing = *thing;
	if (!thing->name[0])
		snprintf(it->thing.name, sizeof it->thing.name, "%s", saying_text(thing->called));
}

static int apply_item_in(struct sheet *s, const struct event *e, struct origin *at)
{
	if (s->n_items == ITEMS_MAX)
		return ERROR_AT(at, -ENOSPC);
	struct item *it = &s->items[s->n_items++];
	*it = (struct item){.pieces = (int16_t)(e->n > 0 ? e->n : 1),
	                    .place = e->kind == EV_EXTRA ? ITEM_EXTRA : ITEM_HERE,
	                    .added = s->initial_agreed};
	put_thing(it, &e->thing);
	void_final(s);
	return 0;
}

static int apply_shown(struct sheet *s, struct item *it, const struct event *e, struct origin *at)
{
	if (!item_counts(it))
		return ERROR_AT(at, -EINVAL);
	it->evidence = e->what;
	it->condition = (uint8_t)e->other;
	it->shown = (int16_t)e->n;
	it->missing = (int16_t)(it->pieces - it->shown);
	if (it->missing < 0)
		return ERROR_AT(at, -EINVAL);
	if (it->missing == 0 && it->condition != CONDITION_PIECES_MISSING) {
		struct digit *d = sheet_digit(s, it->digit);
		if (d)
			d->reminded = 0;
		it->place = ITEM_ACCOUNTED;
	} else
		it->place = role_has(it->thing.role, TRAIT_TIMED) && it->digit ? ITEM_OFF : ITEM_HERE;
	it->opened |= it->place != ITEM_ACCOUNTED;
	if (s->final == FINAL_AGREED)
		void_final(s);
	return 0;
}

/* One of several on a digit goes on or comes off: the digit's clock goes on as it was, and one is on for certain. */
static void on_beside(struct sheet *s, int number, const struct event *e)
{
	struct digit *d = sheet_digit(s, e->digit);
	if (!d || !role_has(s->items[number - 1].thing.role, TRAIT_TIMED) ||
	    !sheet_item_on(s, e->digit, TRAIT_TIMED))
		return;
	s->last_timed = d->number;
	s->last_timed_what = e->kind == EV_ITEM_ON ? TIMED_BESIDE_ON : TIMED_BESIDE_OFF;
	s->beside_item = (uint8_t)number;
	s->beside_at = e->at;
	digit_is_sure(d, e->at);
}

static int apply_item(struct sheet *s, const struct event *e, struct origin *at)
{
	struct item *it = sheet_item(s, e->item);
	if (!it)
		return ERROR_AT(at, -EINVAL);
	switch (e->kind) {
	case EV_ITEM_LISTED:
		put_thing(it, &e->thing);
		return 0;
	case EV_ITEM_ON:
	case EV_FORCEPS_ON:
		if (e->kind == EV_ITEM_ON)
			on_beside(s, e->item, e);
		it->place = ITEM_ON;
		it->digit = e->digit;
		it->shown = it->missing = 0;
		it->evidence = it->condition = 0;
		void_final(s);
		return 0;
	case EV_ITEM_OFF:
		it->place = ITEM_OFF;
		on_beside(s, e->item, e);
		return 0;
	case EV_FORCEPS_MOVED:
		if (sheet_item_on(s, it->digit, TRAIT_TIMED)) /* no part of its coming off */
			digit_is_sure(sheet_digit(s, it->digit), e->at);
		it->place = ITEM_HERE;
		return 0;
	case EV_ITEM_SHOWN:
		return apply_shown(s, it, e, at);
	case EV_ITEM_NOT_SHOWN:
		it->missing = (int16_t)e->n;
		it->opened = 1;
		return 0;
	case EV_ITEM_RETURNED:
		it->place = ITEM_RETURNED;
		void_final(s);
		return 0;
	case EV_ITEM_ISOLATED:
		it->place = ITEM_ISOLATED;
		void_final(s);
		return 0;
	case EV_ITEM_STRUCK:
		it->place = ITEM_STRUCK;
		void_final(s);
		return 0;
	case EV_ITEM_DROPPED:
		it->dropped = 1;
		return 0;
	case EV_ITEM_MORE:
		it->pieces = (int16_t)(it->pieces + e->n);
		if (it->place == ITEM_ACCOUNTED)
			it->place = role_has(it->thing.role, TRAIT_TIMED) ? ITEM_OFF : ITEM_HERE;
		void_final(s);
		return 0;
		EVENTS(NOT_OF_ITEM)
	case EV_UNREADABLE:
		break;
	}
	return ERROR_AT(at, -EINVAL);
}

/* Back to where it was before anyone answered for it. */
static void unaccount(struct item *it)
{
	it->missing = it->shown = 0;
	it->evidence = it->condition = 0;
	if (it->place == ITEM_ACCOUNTED)
		it->place = role_has(it->thing.role, TRAIT_TIMED) && it->digit ? ITEM_OFF : ITEM_HERE;
}

/* A count that begins asks for everything afresh, what was answered before included. */
static void count_begin(struct sheet *s, int kind)
{
	for (int i = 0; kind == COUNT_HANDOVER && i < s->n_digits; i++)
		s->digits[i].seen_on = 0; /* another handover before the last was agreed: seen anew */
	if (kind != COUNT_FINAL)
		return;
	s->final = FINAL_ASKING;
	s->who_looked = 0;
	for (int i = 0; i < s->n_digits; i++)
		s->digits[i].seen_bare = 0; /* a look comes after the count that it belongs to (rule 9) */
	for (int i = 0; i < s->n_items; i++)
		if (item_counts(&s->items[i]))
			unaccount(&s->items[i]);
}

static int apply_count(struct sheet *s, const struct event *e, struct origin *at)
{
	switch (e->kind) {
	case EV_COUNT_STARTED:
		count_begin(s, e->what);
		return 0;
	case EV_COUNT_AGREED:
		if (e->what == COUNT_INITIAL)
			s->initial_agreed = 1;
		if (e->what == COUNT_FINAL) {
			s->final = FINAL_AGREED;
			s->final_at = e->at;
		}
		if (e->what == COUNT_HANDOVER)
			for (int i = 0; i < s->n_digits; i++)
				s->digits[i].seen_on = 0;
		return 0;
	case EV_COUNT_AGAIN: {
		struct item *it = sheet_item(s, e->item);
		if (!it)
			return ERROR_AT(at, -EINVAL);
		unaccount(it);
		return 0;
	}
	case EV_DISCREPANCY:
		s->discrepancy = (uint8_t)(e->n != 0);
		if (e->n)
			s->search_done = s->search_not_done = 0;
		return 0;
	case EV_SEARCH_STEP:
		if (e->n > s->search_done)
			s->search_done = (uint8_t)e->n;
		s->search_not_done = (uint8_t)(e->what == STEP_NOT_DONE ? e->n : 0);
		return 0;
	case EV_SEARCH_WHY:
		s->search_not_done = 0;
		return 0;
		EVENTS(NOT_OF_COUNT)
	case EV_UNREADABLE:
		break;
	}
	return ERROR_AT(at, -EINVAL);
}

static int apply_people(struct sheet *s, const struct event *e, struct origin *at)
{
	switch (e->kind) {
	case EV_JOINED:
		if (e->what >= TEAM_PLACES)
			return ERROR_AT(at, -EINVAL);
		s->team.at[e->what] = e->person;
		return 0;
	case EV_LEFT:
		for (int p = 0; p < TEAM_PLACES; p++) /* the place that it names, where it names one */
			if (s->team.at[p] == e->person && (!e->what || e->what == p))
				s->team.at[p] = 0;
		return 0;
	case EV_WHO_LOOKED:
		s->who_looked = e->what;
		return 0;
	case EV_SIZE_STATED:
		s->size_mm = (int16_t)e->n;
		return 0;
	case EV_REMINDED: {
		struct digit *d = sheet_digit(s, e->digit);
		if (!d)
			return ERROR_AT(at, -EINVAL);
		d->reminded = 1;
		d->reminded_min = e->n;
		by_wall_reminded(d, e->at);
		return 0;
	}
	case EV_ACKNOWLEDGED: {
		struct digit *d = sheet_digit(s, e->digit);
		if (!d)
			return ERROR_AT(at, -EINVAL);
		d->reminded = 0;
		return 0;
	}
		EVENTS(NOT_OF_PEOPLE)
	case EV_UNREADABLE:
		break;
	}
	return ERROR_AT(at, -EINVAL);
}

static int apply_case(struct sheet *s, const struct event *e, struct origin *at)
{
	switch (e->kind) {
	case EV_CASE_OPENED:
		memset(s, 0, sizeof *s);
		s->case_no = e->case_no;
		s->room = e->room;
		s->single = (uint8_t)(e->n == 1);
		return 0;
	case EV_CASE_ENDED:
		memset(s, 0, sizeof *s);
		return 0;
	case EV_SUSPENDED:
		s->suspended = 1;
		return 0;
	case EV_RESUMED:
		s->suspended = 0;
		return 0;
	case EV_CANCELLED:
		s->cancelled = 1;
		return 0;
	case EV_PATIENT_LEFT:
		s->patient_left = 1;
		for (int i = 0; i < s->n_digits; i++) /* it was said to go along */
			if (s->digits[i].state == DIGIT_ON)
				digit_is_sure(&s->digits[i], e->at);
		return 0;
	case EV_AWAKE:
		s->awake = (uint8_t)(e->n != 0);
		return 0;
	case EV_DRESSING_ON:
		s->dressing_on = (uint8_t)(e->n != 0);
		return 0;
	case EV_POINT:
		if (e->what == POINT_YES) {
			s->points_yes = (uint8_t)e->n;
			s->point_no = 0;
		} else {
			s->points_yes = 0;
			s->point_no = (uint8_t)e->n;
		}
		return 0;
	case EV_SIGNED_OUT:
		s->signed_out = 1;
		s->point_no = 0;
		return 0;
		EVENTS(NOT_OF_CASE)
	case EV_UNREADABLE:
		break;
	}
	return ERROR_AT(at, -EINVAL);
}

static int apply_ledger(struct sheet *s, const struct event *e, struct origin *at)
{
	struct debt debt = {.kind = e->what, .item = e->item, .digit = e->digit};
	switch (e->kind) {
	case EV_OWED:
		debts_owe(&s->debts, debt);
		return 0;
	case EV_PAID:
		debts_pay(&s->debts, debt);
		return 0;
	case EV_ASKED:
		if (e->what >= QUESTION_KINDS)
			return ERROR_AT(at, -EINVAL);
		s->asked = (struct asked){e->what, e->item, e->digit, e->person, e->n, e->at};
		if (!e->what)
			s->asked = (struct asked){0};
		return 0;
		EVENTS(NOT_OF_LEDGER)
	case EV_UNREADABLE:
		break;
	}
	return ERROR_AT(at, -EINVAL);
}

static int apply(struct sheet *s, const struct event *e, struct origin *at)
{
	switch (event_group(e->kind)) {
	case EVENTS_OF_CASE:
		return apply_case(s, e, at);
	case EVENTS_OF_PEOPLE:
		return apply_people(s, e, at);
	case EVENTS_OF_PACK:
		return apply_item_in(s, e, at);
	case EVENTS_OF_ITEM:
		return apply_item(s, e, at);
	case EVENTS_OF_DIGIT:
		return e->kind == EV_DIGIT_EARLIER ? apply_earlier(s, e, at)
		       : e->kind == EV_DIGIT_MOVED ? apply_moved(s, e, at)
		                                   : apply_digit(s, e, at);
	case EVENTS_OF_COUNT:
		return apply_count(s, e, at);
	case EVENTS_OF_LEDGER:
		return apply_ledger(s, e, at);
	case EVENTS_OF_STATION:
	case EVENTS_OF_NOTE:
		return 0;
	}
	return ERROR_AT(at, -EINVAL);
}

int sheet_apply(struct sheet *s, const struct event *e, struct origin *at)
{
	int r = apply(s, e, at);
	if (r == 0 && s->case_no && e->flags & EVENT_FIRST)
		s->last_answer = e->answer;
	else if (r == 0 && e->kind == EV_NEXT)
		s->last_answer = CARD_NEXT;
	return r;
}
