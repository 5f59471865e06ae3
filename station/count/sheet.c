#include "count/sheet.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

static const struct {
	const char *name, *words;
} questions[QUESTION_KINDS] = {[Q_NONE] = {"none", ""},
#define X(name, text, words) [Q_##name] = {text, words},
                               QUESTIONS(X)
#undef X
};

const char *question_name(enum question q)
{
	return questions[q].name;
}

const char *question_words(enum question q)
{
	return questions[q].words;
}

const struct digit *sheet_digit_const(const struct sheet *s, int number)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].number == number)
			return &s->digits[i];
	return NULL;
}

struct digit *sheet_digit(struct sheet *s, int number)
{
	return (struct digit *)sheet_digit_const(s, number);
}

const struct item *sheet_item_const(const struct sheet *s, int number)
{
	return number >= 1 && number <= s->n_items ? &s->items[number - 1] : NULL;
}

struct item *sheet_item(struct sheet *s, int number)
{
	return (struct item *)sheet_item_const(s, number);
}

int sheet_item_by_identity(const struct sheet *s, const char *identity)
{
	for (int i = 0; identity[0] && i < s->n_items; i++)
		if (s->items[i].place != ITEM_STRUCK && strcmp(s->items[i].thing.identity, identity) == 0)
			return i + 1;
	return 0;
}

int sheet_item_on(const struct sheet *s, int digit, enum role role)
{
	for (int i = s->n_items; i >= 1; i--) {
		const struct item *it = &s->items[i - 1];
		if (it->place == ITEM_ON && it->digit == digit && it->thing.role == role)
			return i;
	}
	return 0;
}

static int is_on(const struct digit *d)
{
	return d->state == DIGIT_ON || d->state == DIGIT_MAYBE_ON;
}

int sheet_digits_on(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++)
		n += is_on(&s->digits[i]);
	return n;
}

int sheet_first_digit_on(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (is_on(&s->digits[i]))
			return s->digits[i].number;
	return 0;
}

int item_counts(const struct item *i)
{
	return i->place == ITEM_HERE || i->place == ITEM_ON || i->place == ITEM_OFF ||
	       i->place == ITEM_ACCOUNTED || i->place == ITEM_EXTRA;
}

int item_open(const struct item *i)
{
	return item_counts(i) && i->place != ITEM_ACCOUNTED;
}

int sheet_open_items(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++)
		n += item_open(&s->items[i]);
	return n;
}

int sheet_next_open(const struct sheet *s)
{
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (item_open(it) && it->place != ITEM_EXTRA && !it->missing &&
		    it->condition != CONDITION_PIECES_MISSING)
			return i + 1;
	}
	return 0;
}

int sheet_missing(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		n += item_open(it) &&
		     (it->missing || it->place == ITEM_EXTRA || it->condition == CONDITION_PIECES_MISSING);
	}
	return n;
}

int sheet_next_look(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].had && !s->digits[i].seen_bare)
			return s->digits[i].number;
	return 0;
}

int sheet_holds_any(const struct sheet *s)
{
	for (int i = 0; i < s->n_items; i++)
		if (item_counts(&s->items[i]) || s->items[i].place == ITEM_ISOLATED)
			return 1;
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].had || is_on(&s->digits[i]))
			return 1;
	return 0;
}

/* --- applying events ------------------------------------------------------------------------------------ */

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
}

static struct digit *digit_make(struct sheet *s, int number)
{
	struct digit *d = sheet_digit(s, number);
	if (d || s->n_digits == DIGITS_MAX || number < 1 || number > DIGIT_NUMBER_MAX)
		return d;
	d = &s->digits[s->n_digits++];
	d->number = (uint8_t)number;
	return d;
}

static void clock_start(struct sheet *s, struct digit *d, enum digit_state state, struct moment at)
{
	if (!is_on(d)) {
		d->since = at;
		d->on_wall_ms = at.wall_ms;
		d->known_ms = 0;
		d->gap = 0;
		d->reminded_min = 0;
	}
	d->state = (uint8_t)state;
	s->final = FINAL_NONE; /* a count that goes on does not hold what is on a digit again */
	s->last_timed = d->number;
	s->last_timed_off = 0;
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
	s->last_timed = d->number;
	s->last_timed_off = 1;
}

static int apply_digit(struct sheet *s, const struct event *e)
{
	struct digit *d = digit_make(s, e->digit);
	if (!d)
		return s->n_digits == DIGITS_MAX ? -ENOSPC : -EINVAL;
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
	case EV_DIGIT_NOT_ON:
		d->state = d->had ? DIGIT_OFF : DIGIT_BARE;
		d->known_ms = 0;
		return 0;
	case EV_DIGIT_OFF:
		clock_stop(s, d, e->at);
		d->state = DIGIT_OFF;
		d->reminded = 0; /* it spoke of a tourniquet that was on */
		return 0;
	case EV_DIGIT_SEEN_BARE:
		d->seen_bare = 1;
		return 0;
	case EV_DIGIT_SEEN_ON:
		d->seen_on = 1;
		return 0;
	default:
		return -EINVAL;
	}
}

static int apply_earlier(struct sheet *s, const struct event *e)
{
	struct digit *d = sheet_digit(s, e->digit);
	if (!d)
		return -EINVAL;
	int64_t ms = (int64_t)e->n * 60000;
	if (e->what == 1) { /* it went on earlier */
		d->known_ms += ms;
		d->on_wall_ms -= ms;
		return 0;
	}
	if (ms > d->known_ms) /* it cannot have come off before it went on */
		ms = d->known_ms;
	if (d->longest_ms == d->known_ms)
		d->longest_ms -= ms;
	d->total_ms -= ms;
	d->known_ms -= ms;
	return 0;
}

/* MISREAD: what was entered for one digit belongs to another, with its time. */
static int apply_moved(struct sheet *s, const struct event *e)
{
	struct digit *from = sheet_digit(s, e->digit), *to = digit_make(s, e->other);
	if (!from || !to || from == to)
		return -EINVAL;
	if (is_on(to) || to->had)
		return -EINVAL;
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

void item_last_code(const struct thing *t, char out[LAST_CODE_MAX])
{
	snprintf(out, LAST_CODE_MAX, "%s/%s/%s", t->line, t->lot, t->identity);
}

static int apply_item_in(struct sheet *s, const struct event *e)
{
	if (s->n_items == ITEMS_MAX)
		return -ENOSPC;
	struct item *it = &s->items[s->n_items++];
	it->thing = e->thing;
	it->pieces = (int16_t)(e->n > 0 ? e->n : 1);
	it->place = e->kind == EV_EXTRA ? ITEM_EXTRA : ITEM_HERE;
	it->added = s->initial_agreed;
	item_last_code(&e->thing, s->last_code);
	s->last_code_at = e->at;
	void_final(s);
	return 0;
}

static int apply_shown(struct sheet *s, struct item *it, const struct event *e)
{
	if (!item_counts(it))
		return -EINVAL;
	it->evidence = e->what;
	it->condition = (uint8_t)e->other;
	it->shown = (int16_t)e->n;
	it->missing = (int16_t)(it->pieces - it->shown);
	if (it->missing < 0)
		return -EINVAL;
	if (it->missing == 0 && it->condition != CONDITION_PIECES_MISSING) {
		struct digit *d = sheet_digit(s, it->digit);
		if (d)
			d->reminded = 0;
		it->place = ITEM_ACCOUNTED;
	} else
		it->place = it->thing.role == ROLE_TOURNIQUET && it->digit ? ITEM_OFF : ITEM_HERE;
	if (s->final == FINAL_AGREED)
		void_final(s);
	return 0;
}

static int apply_item(struct sheet *s, const struct event *e)
{
	struct item *it = sheet_item(s, e->item);
	if (!it)
		return -EINVAL;
	switch (e->kind) {
	case EV_ITEM_LISTED:
		it->thing = e->thing;
		return 0;
	case EV_ITEM_ON:
	case EV_FORCEPS_ON:
		it->place = ITEM_ON;
		it->digit = e->digit;
		it->shown = it->missing = 0;
		it->evidence = it->condition = 0;
		void_final(s);
		return 0;
	case EV_ITEM_OFF:
		it->place = ITEM_OFF;
		return 0;
	case EV_FORCEPS_MOVED:
		it->place = ITEM_HERE;
		return 0;
	case EV_ITEM_SHOWN:
		return apply_shown(s, it, e);
	case EV_ITEM_NOT_SHOWN:
		it->missing = (int16_t)e->n;
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
			it->place = it->thing.role == ROLE_TOURNIQUET ? ITEM_OFF : ITEM_HERE;
		void_final(s);
		return 0;
	default:
		return -EINVAL;
	}
}

/* Back to where it was before anyone answered for it. */
static void unaccount(struct item *it)
{
	it->missing = it->shown = 0;
	it->evidence = it->condition = 0;
	if (it->place == ITEM_ACCOUNTED)
		it->place = it->thing.role == ROLE_TOURNIQUET && it->digit ? ITEM_OFF : ITEM_HERE;
}

/* A count that begins asks for everything afresh, what was answered before included. */
static void count_begin(struct sheet *s, int kind)
{
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

static int apply_count(struct sheet *s, const struct event *e)
{
	switch (e->kind) {
	case EV_COUNT_STARTED:
		count_begin(s, e->what);
		return 0;
	case EV_COUNT_AGREED:
		if (e->what == COUNT_INITIAL)
			s->initial_agreed = 1;
		if (e->what == COUNT_FINAL)
			s->final = FINAL_AGREED;
		if (e->what == COUNT_HANDOVER)
			for (int i = 0; i < s->n_digits; i++)
				s->digits[i].seen_on = 0;
		return 0;
	case EV_COUNT_AGAIN: {
		struct item *it = sheet_item(s, e->item);
		if (!it)
			return -EINVAL;
		unaccount(it);
		return 0;
	}
	case EV_DISCREPANCY:
		s->discrepancy = (uint8_t)(e->n != 0);
		if (e->n)
			s->search_done = 0;
		return 0;
	case EV_SEARCH_STEP:
		if (e->n > s->search_done)
			s->search_done = (uint8_t)e->n;
		return 0;
	default:
		return -EINVAL;
	}
}

static int apply_people(struct sheet *s, const struct event *e)
{
	switch (e->kind) {
	case EV_JOINED:
		if (e->what >= TEAM_PLACES)
			return -EINVAL;
		s->team.at[e->what] = e->person;
		return 0;
	case EV_LEFT:
		for (int p = 0; p < TEAM_PLACES; p++)
			if (s->team.at[p] == e->person)
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
			return -EINVAL;
		d->reminded = 1;
		d->reminded_min = e->n;
		return 0;
	}
	case EV_ACKNOWLEDGED: {
		struct digit *d = sheet_digit(s, e->digit);
		if (!d)
			return -EINVAL;
		d->reminded = 0;
		return 0;
	}
	default:
		return -EINVAL;
	}
}

static int apply_case(struct sheet *s, const struct event *e)
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
		return 0;
	case EV_AWAKE:
		s->awake = (uint8_t)(e->n != 0);
		return 0;
	case EV_DRESSING_ON:
		s->dressing_on = (uint8_t)(e->n != 0);
		return 0;
	case EV_POINT:
		if (e->what == 1) {
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
	default:
		return -EINVAL;
	}
}

static int apply_ledger(struct sheet *s, const struct event *e)
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
			return -EINVAL;
		s->asked = (struct asked){e->what, e->item, e->digit, e->person, e->n, e->at};
		if (!e->what)
			s->asked = (struct asked){0};
		return 0;
	default:
		return -EINVAL;
	}
}

int sheet_apply(struct sheet *s, const struct event *e)
{
	switch (e->kind) {
	case EV_CASE_OPENED:
	case EV_CASE_ENDED:
	case EV_SUSPENDED:
	case EV_RESUMED:
	case EV_CANCELLED:
	case EV_PATIENT_LEFT:
	case EV_AWAKE:
	case EV_DRESSING_ON:
	case EV_POINT:
	case EV_SIGNED_OUT:
		return apply_case(s, e);
	case EV_JOINED:
	case EV_LEFT:
	case EV_WHO_LOOKED:
	case EV_SIZE_STATED:
	case EV_REMINDED:
	case EV_ACKNOWLEDGED:
		return apply_people(s, e);
	case EV_ITEM_IN:
	case EV_EXTRA:
		return apply_item_in(s, e);
	case EV_ITEM_LISTED:
	case EV_ITEM_ON:
	case EV_ITEM_OFF:
	case EV_ITEM_SHOWN:
	case EV_ITEM_NOT_SHOWN:
	case EV_ITEM_RETURNED:
	case EV_ITEM_ISOLATED:
	case EV_ITEM_DROPPED:
	case EV_ITEM_STRUCK:
	case EV_ITEM_MORE:
	case EV_FORCEPS_ON:
	case EV_FORCEPS_MOVED:
		return apply_item(s, e);
	case EV_DIGIT_MARKED:
	case EV_DIGIT_MAYBE_ON:
	case EV_DIGIT_NOT_ON:
	case EV_DIGIT_ON:
	case EV_DIGIT_OFF:
	case EV_DIGIT_SEEN_BARE:
	case EV_DIGIT_SEEN_ON:
		return apply_digit(s, e);
	case EV_DIGIT_EARLIER:
		return apply_earlier(s, e);
	case EV_DIGIT_MOVED:
		return apply_moved(s, e);
	case EV_COUNT_STARTED:
	case EV_COUNT_AGREED:
	case EV_COUNT_AGAIN:
	case EV_DISCREPANCY:
	case EV_SEARCH_STEP:
		return apply_count(s, e);
	case EV_OWED:
	case EV_PAID:
	case EV_ASKED:
		return apply_ledger(s, e);
	case EV_STARTED:
	case EV_STOPPED:
	case EV_ALIVE:
	case EV_LINE_SET:
	case EV_STAFF_SET:
	case EV_STAFF_WITHDRAWN:
	case EV_QUARANTINED:
	case EV_RELEASED:
	case EV_LABELLED:
	case EV_SCANNER_FAULT:
	case EV_SCANNER_ROOM:
	case EV_SLIP_QUEUED:
	case EV_SLIP_STATE:
	case EV_REFUSED:
	case EV_UNDONE:
	case EV_ITEM_USED:
	case EV_CORRECTION:
	case EV_FOUND_AFTER:
	case EV_KINDS:
		return 0;
	}
	return -EINVAL;
}
