#include "decide/undo.h"

#include <stdio.h>

#include "decide/digit-clock.h"

/* The digit that was timed last; 0 where none was, or where it turned out that nothing was on it. */
static int last_timed(const struct sheet *s)
{
	const struct digit *d = sheet_digit_const(s, s->last_timed);
	return d && (d->had || digit_is_on(d)) ? d->number : 0;
}

/* What is asked about is no start and no end yet: the number would move another time than people speak of. */
static int is_asked_about(struct turn *t)
{
	const struct asked *q = &t->s->asked;
	const struct digit *d = sheet_digit_const(t->s, q->digit);
	if (q->what == Q_OFF)
		turn_refuse(t, SAY(FIRST_WHETHER_OFF, .digit = q->digit, .card = t->in->card));
	else if (q->what == Q_WHICH_OFF)
		turn_refuse(t, SAY(FIRST_WHICH_OFF, .card = t->in->card));
	else if (q->what == Q_IS_ON && d && d->state != DIGIT_MAYBE_ON)
		turn_refuse(t, SAY(FIRST_WHETHER_ON, .digit = q->digit, .card = t->in->card));
	else
		return 0;
	return 1;
}

/* People mean the scan before it. Where that was of something that starts and stops no clock, no other time moves. */
static int is_of_no_clock(struct turn *t, int digit)
{
	static const enum event_kind none[] = {EV_FORCEPS_MOVED, EV_PATIENT_LEFT,  EV_ITEM_DROPPED,
	                                       EV_DIGIT_SEEN_ON, EV_ITEM_RETURNED, EV_DRESSING_ON};
	const struct step *last = t->index >= 0 ? &t->station->undo[t->index] : NULL;
	const struct asked *was = last ? &t->station->before[t->index].asked : NULL;
	if (!last || !last->seq)
		return 0;
	if (last->kind == EV_ASKED && !t->s->asked.what && was->what == Q_OFF && was->digit != digit) {
		turn_refuse(t, SAY(MINUTES_OF_OTHER, .card = t->in->card, .digit = digit));
		return 1;
	}
	for (size_t i = 0; i < sizeof none / sizeof *none; i++)
		if (last->kind == none[i]) {
			turn_refuse(t, SAY(MINUTES_OF_NO_CLOCK, .card = t->in->card));
			return 1;
		}
	return 0;
}

static int several_on(const struct sheet *s, int digit)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++)
		n += s->items[i].place == ITEM_ON && s->items[i].digit == digit &&
		     role_has(s->items[i].thing.role, TRAIT_TIMED);
	return n > 1;
}

/* So long before now a tourniquet was on that digit, in its last stretch. Through a power cut nobody knows. */
static int was_on_then(const struct digit *d, struct moment now, int64_t ago_ms)
{
	int64_t off_ms = d->state == DIGIT_OFF ? d->by_wall.off_ms + moment_between_ms(d->since, now) : 0;
	return d->had && !d->gap && !d->by_wall.cuts && (digit_is_on(d) || d->state == DIGIT_OFF) &&
	       digit_open_ms(d, now) >= ago_ms && off_ms < ago_ms;
}

/* One is not on two digits: where each that was used was on another digit then, none can have been on this one. */
static int none_was_free(const struct turn *t, const struct digit *on, int minutes)
{
	const int64_t ago_ms = digit_stretch_ms(on, t->in->at) + (int64_t)minutes * 60000 - SCANNED_LATE_MS;
	int used = 0, elsewhere = 0;
	for (int i = 0; i < t->s->n_items; i++) {
		const struct item *it = &t->s->items[i];
		used += role_has(it->thing.role, TRAIT_TIMED) && item_counts(it) && it->digit;
	}
	for (int i = 0; i < t->s->n_digits; i++)
		elsewhere += &t->s->digits[i] != on && was_on_then(&t->s->digits[i], t->in->at, ago_ms);
	return on->state == DIGIT_ON && !on->gap && elsewhere && elsewhere >= used;
}

void card_minutes_ago(struct turn *t, int minutes)
{
	const struct digit *d = sheet_digit_const(t->s, last_timed(t->s));
	if (is_asked_about(t))
		return;
	if (!d) {
		turn_refuse(t, SAY(NOTHING_TIMED, .card = t->in->card));
		return;
	}
	if (is_of_no_clock(t, d->number))
		return;
	int off = t->s->last_timed_what == TIMED_OFF;
	int64_t wall_ms = digit_by_wall_ms(d, t->in->at); /* what a power cut hides counts as well */
	int64_t most_ms = wall_ms > d->known_ms ? wall_ms : d->known_ms;
	int most = (int)(most_ms / 60000);
	if (!off && several_on(t->s, d->number)) {
		turn_refuse(t, SAY(MORE_THAN_ONE_TIMED, .digit = d->number));
		return;
	}
	if (!off && t->s->last_timed_what != TIMED_ON) {
		turn_refuse(t, SAY(TIMED_NEITHER, .digit = d->number));
		return;
	}
	if (off && !most) {
		turn_refuse(t, SAY(ON_LESS_THAN_A_MINUTE, .digit = d->number));
		return;
	}
	if (off && minutes > most) { /* it cannot have come off before it went on */
		turn_refuse(t, SAY(ON_LESS_THAN_THAT, .digit = d->number, .most = most, .minutes = minutes));
		return;
	}
	if (off && (d->sure_ms || d->sure_cut_ms) &&
	    (int64_t)minutes * 60000 > digit_since_sure_ms(d)) { /* nor before somebody said that it is on */
		most = (int)(digit_since_sure_ms(d) / 60000);
		turn_refuse(
		    t, most ? SAY(OFF_AFTER_IT_WAS_SAID, .digit = d->number, .minutes = minutes, .most = most)
		            : SAY(OFF_AS_IT_WAS_SAID, .digit = d->number, .minutes = minutes));
		return;
	}
	if (!off && d->stretches > 1 &&
	    (int64_t)minutes * 60000 > d->bare_ms) { /* nor before the last was off */
		turn_refuse(t, SAY(ON_AFTER_THE_LAST, .digit = d->number, .minutes = minutes,
		                   .most = d->bare_ms > 0 ? (int32_t)(d->bare_ms / 60000) : 0));
		return;
	}
	if (!off && none_was_free(t, d, minutes)) {
		turn_refuse(
		    t, SAY(ON_NONE_WAS_FREE, .digit = d->number, .minutes = minutes, .card = t->in->card));
		return;
	}
	EMIT(t, .kind = EV_DIGIT_EARLIER, .digit = d->number, .n = minutes,
	     .what = (uint8_t)(off ? STRETCH_OFF : STRETCH_ON));
	turn_say(t, off ? SAY(R_OFF_EARLIER, .minutes = minutes, .digit = d->number)
	            : d->state == DIGIT_MAYBE_ON
	                ? SAY(R_MAYBE_EARLIER, .minutes = minutes, .digit = d->number)
	                : SAY(R_ON_EARLIER, .minutes = minutes, .digit = d->number));
}

/* The digit of the look that was entered just now; 0 where it was no look. */
static int just_looked_at(const struct turn *t)
{
	const struct step *last = t->index >= 0 ? &t->station->undo[t->index] : NULL;
	const struct digit *d = last && last->seq && last->kind == EV_DIGIT_SEEN_BARE
	                            ? sheet_digit_const(t->s, last->digit)
	                            : NULL;
	return d && d->seen_bare ? d->number : 0;
}

void card_misread(struct turn *t)
{
	int looked = just_looked_at(t), digit = looked ? looked : last_timed(t->s);
	turn_ask_saying(t, (struct asked){.what = Q_MOVE_TO, .digit = (uint8_t)digit},
	                digit ? SAY(R_MISREAD_DIGIT, .digit = digit) : SAY(R_MISREAD));
}

/* What a step was, as people say it; its event has a name for machines. */
static enum saying step_saying(const struct turn *t, const struct step *step)
{
	static const struct {
		enum event_kind kind;
		enum saying saying;
	} steps[] = {{EV_JOINED, SAY_R_STEP_BADGE},
	             {EV_COUNT_AGREED, SAY_R_STEP_COUNT},
	             {EV_DIGIT_DOUBTED, SAY_R_STEP_MAYBE_ON},
	             {EV_DIGIT_MAYBE_ON, SAY_R_STEP_MAYBE_ON},
	             {EV_PAID, SAY_R_STEP_PAID},
	             {EV_ITEM_SHOWN, SAY_R_STEP_SHOWN},
	             {EV_ITEM_NOT_SHOWN, SAY_R_STEP_NOT_SHOWN},
	             {EV_DIGIT_ON, SAY_R_STEP_ON},
	             {EV_ITEM_OFF, SAY_R_STEP_OFF},
	             {EV_DIGIT_OFF, SAY_R_STEP_OFF},
	             {EV_DIGIT_EARLIER, SAY_R_STEP_EARLIER},
	             {EV_FORCEPS_MOVED, SAY_R_STEP_FORCEPS_MOVED},
	             {EV_DIGIT_SEEN_BARE, SAY_R_STEP_SEEN_BARE},
	             {EV_COUNT_STARTED, SAY_R_STEP_BEGUN},
	             {EV_SEARCH_STEP, SAY_R_STEP_SEARCH}};
	if (step->kind == EV_ASKED)
		return t->station->before[t->index].asked.what ? SAY_R_STEP_ANSWER : SAY_R_STEP_QUESTION;
	if (step->kind == EV_ITEM_IN)
		return t->s->initial_agreed ? SAY_R_STEP_ADDED : SAY_R_STEP_IN;
	for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
		if ((int)steps[i].kind == step->kind)
			return steps[i].saying;
	return SAY_R_STEP_LAST;
}

static int clocks(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++)
		n += digit_runs(&s->digits[i]);
	return n;
}

/* --- what UNDO does not take back --------------------------------------------------------------- */

/* A tourniquet may be on: only a person knows whether one went on at all, and says so with MISREAD. */
static void refuse_clock(struct turn *t, const struct step *step)
{
	int digit = t->s->asked.what == Q_IS_ON ? t->s->asked.digit : step->digit;
	if (!digit)
		digit = sheet_first_digit_on(t->s);
	turn_refuse(t, SAY(UNDO_STOPS_NO_CLOCK, .digit = digit));
}

static int has(const struct sheet *s, const char *identity)
{
	const struct item *it = sheet_item_const(s, sheet_item_by_identity(s, identity));
	return it && it->place != ITEM_RETURNED;
}

/* With a number of its own on sheet `a`, and not on `b`: the latest; NULL none. */
static const struct item *is_only_on(const struct sheet *a, const struct sheet *b)
{
	for (int i = a->n_items; i > 0; i--) {
		const struct item *it = &a->items[i - 1];
		if (it->thing.identity[0] && it->place != ITEM_RETURNED && it->place != ITEM_STRUCK &&
		    !has(b, it->thing.identity))
			return it;
	}
	return NULL;
}

/* It came here from the sheet of that case: taken back here, it would be on none. */
static void refuse_taken_here(struct turn *t, int32_t other)
{
	const struct item *it = is_only_on(t->s, &t->station->before[t->index]);
	const char *item = it ? it->thing.name : saying_text(SAY_ITEM_NO_NUMBER);
	int index = station_sheet_of_case(t->station, other);
	if (index < 0) {
		turn_refuse(t, SAY(NOT_TAKEN_BACK_ENDED, .item = item, .case_no = other));
		return;
	}
	const char *room = station_room_name(t->station, t->station->sheets[index].room);
	turn_refuse(t, it && it->place == ITEM_HERE
	                   ? SAY(NOT_TAKEN_BACK_TOOK, .item = item, .case_no = other, .room = room)
	                   : SAY(NOT_TAKEN_BACK_USED, .item = item, .case_no = other, .room = room));
}

static void refuse_taken_away(struct turn *t, int32_t other)
{
	int index = station_sheet_of_case(t->station, other);
	if (index < 0)
		turn_refuse(t, SAY(NOT_TAKEN_BACK_GONE_ENDED, .case_no = other));
	else
		turn_refuse(t, SAY(NOT_TAKEN_BACK_GONE, .case_no = other,
		                   .room = station_room_name(t->station, t->station->sheets[index].room)));
}

/* Whether the copy of this sheet alone is what UNDO is to bring back (rules 1, 4, 24): else refused, with why. */
static enum answered refuse_beyond(struct turn *t, const struct step *step)
{
	const struct item *it;
	if (step->beyond == STEP_FOUND)
		turn_refuse(t, SAY(NOT_TAKEN_BACK_FOUND, .case_no = step->other_case));
	else if (step->beyond == STEP_TOOK)
		refuse_taken_here(t, step->other_case);
	else if (step->beyond == STEP_TAKEN)
		refuse_taken_away(t, step->other_case);
	else if ((it = is_only_on(&t->station->before[t->index], t->s))) /* it may be anywhere by now */
		turn_refuse(t, SAY(NOT_TAKEN_BACK_LEFT, .item = it->thing.name));
	else
		return ANSWERED_NOT;
	return ANSWERED;
}

/* The item that another room is asked about there may be another one now. */
static void close_asked_elsewhere(struct turn *t)
{
	for (int i = 0; i < SHEETS_MAX; i++) {
		const struct sheet *there = &t->station->sheets[i];
		if (there->case_no && there->asked.what == Q_HERE_NOW && there->asked.n == t->s->case_no)
			EMIT(t, .kind = EV_ASKED, .case_no = there->case_no, .what = Q_NONE);
	}
}

void card_undo(struct turn *t)
{
	struct step step = t->index >= 0 ? t->station->undo[t->index] : (struct step){0};
	int changed_over = step.kind == EV_RESUMED && station_suspended_in(t->station, t->in->room) >= 0;
	if (!step.seq || changed_over) { /* SUSPEND changes over again */
		turn_refuse(t, SAY(NOTHING_TO_TAKE_BACK));
		return;
	}
	if (clocks(t->s) > clocks(&t->station->before[t->index])) {
		refuse_clock(t, &step);
		return;
	}
	if (refuse_beyond(t, &step) == ANSWERED)
		return;
	char name[LINE_NAME_MAX] = ""; /* the sheet that it stands on is taken back as well */
	const struct item *it = sheet_item(t->s, step.item);
	if (!step.digit && it)
		snprintf(name, sizeof name, "%s", it->thing.name);
	struct say say = {.what = step_saying(t, &step), .digit = step.digit, .item = name};
	say.saying = step.digit ? SAY_R_TAKEN_BACK_DIGIT : *name ? SAY_R_TAKEN_BACK_ITEM : SAY_R_TAKEN_BACK;
	EMIT(t, .kind = EV_UNDONE, .ref = step.seq);
	close_asked_elsewhere(t);
	*t->s = t->station->before[t->index];
	turn_say(t, &say);
}

enum answered undo_after_end(struct turn *t)
{
	struct after_end owed;
	if (!after_end_first(t->station, t->in->room, NULL, 0, &owed))
		return ANSWERED_NOT;
	turn_refuse(t, SAY(NOT_TAKEN_BACK_AFTER, .case_no = owed.case_no,
	                   .room = station_room_name(t->station, t->in->room)));
	return ANSWERED;
}
