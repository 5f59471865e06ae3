#include "tell/outline.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "count/paper-sheet.h"
#include "count/station.h"
#include "count/wall.h"

struct outline {
	struct station replay; /* follows the events, undo and power cuts included; one sheet at a time */
	uint8_t *undone;
	int room; /* for how many events */
	uint8_t typed[ITEMS_MAX + 1];
	/* the scans before this one, oldest first; boot 0 none */
	struct moment before[OUTLINE_EVEN];
	struct moment keyed[OUTLINE_BURST];
	struct moment agreed, badge, clocked;
	int32_t badge_of;
};

struct outline *outline_new(void)
{
	return calloc(1, sizeof(struct outline));
}

void outline_free(struct outline *o)
{
	if (!o)
		return;
	station_deinit(&o->replay);
	free(o->undone);
	free(o);
}

static int begin(struct outline *o, const struct event *events, int count)
{
	if (count > o->room) {
		uint8_t *more = realloc(o->undone, (size_t)count);
		if (!more)
			return -ENOMEM;
		o->undone = more;
		o->room = count;
	}
	memset(o->undone, 0, (size_t)count);
	memset(&o->replay.sheets[0], 0, sizeof o->replay.sheets[0]);
	memset(&o->replay.undo[0], 0, sizeof o->replay.undo[0]);
	memset(o->typed, 0, sizeof o->typed);
	memset(o->before, 0, sizeof o->before);
	memset(o->keyed, 0, sizeof o->keyed);
	o->agreed = o->badge = o->clocked = o->replay.last = (struct moment){0};
	o->replay.boot = events[0].at.boot; /* the clock begins in the boot in which the case was opened */
	return 0;
}

/* A step is the event that UNDO names and what followed it up to the next step. */
static void mark_undone(struct outline *o, const struct event *events, int undo)
{
	for (int i = undo; i-- > 0;)
		if (events[i].seq == events[undo].ref) {
			for (int k = i; k < undo && (k == i || !(events[k].flags & EVENT_FIRST)); k++)
				o->undone[k] = 1;
			return;
		}
}

static void count_up(uint8_t *n)
{
	*n = (uint8_t)(*n + (*n < UINT8_MAX));
}

static void count_up_16(uint16_t *n)
{
	*n = (uint16_t)(*n + (*n < UINT16_MAX));
}

/* --- signs of work-arounds ----------------------------------------------------------------------------- */

/* Within `ms` of a moment of the same boot; of another one nothing is known. */
static int soon_after(struct moment from, struct moment to, int64_t ms)
{
	return from.boot && from.boot == to.boot && to.boot_ms - from.boot_ms < ms;
}

static void push(struct moment *list, int n, struct moment at)
{
	memmove(list, list + 1, (size_t)(n - 1) * sizeof *list);
	list[n - 1] = at;
}

static int is_even(const struct outline *o)
{
	int64_t least = INT64_MAX, most = 0;
	for (int i = 1; i < OUTLINE_EVEN; i++) {
		if (!o->before[i - 1].boot || o->before[i - 1].boot != o->before[i].boot)
			return 0;
		int64_t ms = o->before[i].boot_ms - o->before[i - 1].boot_ms;
		least = ms < least ? ms : least;
		most = ms > most ? ms : most;
	}
	return most - least <= OUTLINE_EVEN_MS;
}

static void look_for_badges(struct outline *o, const struct event *e, struct case_row *row)
{
	if (e->answer >= 0)
		return;
	if (e->answer != o->badge_of && soon_after(o->badge, e->at, OUTLINE_BADGES_MS))
		count_up(&row->close_badges);
	o->badge = e->at;
	o->badge_of = e->answer;
}

static void look_for_bursts(struct outline *o, const struct event *e, struct case_row *row)
{
	if (!(e->flags & EVENT_KEYED))
		return;
	push(o->keyed, OUTLINE_BURST, e->at);
	if (!soon_after(o->keyed[0], e->at, OUTLINE_BURST_MS))
		return;
	count_up(&row->keyed_bursts);
	memset(o->keyed, 0, sizeof o->keyed); /* the next burst begins behind this one */
}

/* What was entered late bears the time when it was scanned, which says nothing of hands. */
static void look_for_signs(struct outline *o, const struct event *e, struct case_row *row)
{
	struct moment last = o->before[OUTLINE_EVEN - 1];
	if (!(e->flags & EVENT_FIRST) || e->flags & EVENT_LATE)
		return;
	if (e->kind == EV_ITEM_SHOWN && e->what == EVIDENCE_SHOWN &&
	    soon_after(last, e->at, OUTLINE_ANSWER_MS))
		count_up(&row->fast_answers);
	if (e->kind == EV_DIGIT_SEEN_BARE && soon_after(o->agreed, e->at, OUTLINE_LOOK_MS))
		count_up(&row->fast_looks);
	look_for_badges(o, e, row);
	look_for_bursts(o, e, row);
	push(o->before, OUTLINE_EVEN, e->at);
	if (is_even(o)) {
		count_up(&row->even_scans);
		memset(o->before, 0, sizeof o->before - sizeof *o->before); /* the last begins the next row */
	}
}

/* From step to step; what was entered late has the time when it was scanned by the clock as it stands now. */
static void look_at_clock(struct outline *o, const struct event *e, struct case_row *row)
{
	if (!(e->flags & EVENT_FIRST) || e->flags & EVENT_LATE)
		return;
	row->marks |= wall_turned_ms(o->clocked, e->at) ? CASE_CLOCK : 0;
	o->clocked = e->at;
}

/* --- what happened -------------------------------------------------------------------------------------- */

static void take_person(const struct event *e, struct case_row *row)
{
	for (int i = 0; e->person > 0 && i < CASE_PEOPLE; i++) {
		if (row->people[i] == e->person)
			return;
		if (!row->people[i]) {
			row->people[i] = e->person;
			return;
		}
	}
}

static void take_shown(struct outline *o, const struct event *e, struct case_row *row)
{
	const struct sheet *s = &o->replay.sheets[0];
	const struct item *it = sheet_item_const(s, e->item);
	if (!it)
		return;
	o->typed[e->item] = (e->flags & EVENT_KEYED) != 0;
	if (it->missing && row->n_found < CASE_FOUND)
		row->found_step[row->n_found++] = (uint8_t)(s->search_done + 1);
}

static void take_discrepancy(const struct event *e, struct case_row *row)
{
	if (!e->n) {
		row->marks |= CASE_CLOSED;
		return;
	}
	row->marks = (row->marks | CASE_DISCREPANCY) & ~(uint32_t)CASE_CLOSED;
	count_up(&row->discrepancies);
}

static void take_owed(const struct event *e, struct case_row *row)
{
	switch ((enum debt_kind)e->what) {
	case DEBT_INCIDENT:
		row->marks |= CASE_NUMBER_OWED;
		return; /* it is no debt that holds the case */
	case DEBT_CALLED:
	case DEBT_LOOK:
	case DEBT_WARD:
		return; /* of a case that has ended (count/after-end.h) */
	case DEBT_ROLLS_ON:
		return; /* each that rolls on is asked about */
	case DEBT_LISTING:
	case DEBT_REASON:
	case DEBT_SURGEON:
		row->marks |= CASE_OWED | CASE_OVERRIDDEN;
		return;
	case DEBT_NONE:
	case DEBT_COUNT:
	case DEBT_TEAM:
	case DEBT_ON:
	case DEBT_ADDED:
	case DEBT_MARKED_DIGIT:
	case DEBT_NAME:
	case DEBT_HANDOVER:
	case DEBT_EXPIRY_READ:
	case DEBT_STORES_ASKED:
	case DEBT_KINDS:
		row->marks |= CASE_OWED;
	}
}

static void take_slip(const struct event *e, struct case_row *row)
{
	if (e->kind == EV_SLIP_QUEUED && e->other <= 1) /* the first copy: a further one is the same slip */
		count_up(&row->slips);
	if (e->kind == EV_SLIP_STATE && e->what == SLIP_SEEN && row->slips_seen < row->slips)
		count_up(&row->slips_seen);
}

static void take(struct outline *o, const struct event *e, struct case_row *row)
{
	switch (e->kind) {
	case EV_CASE_OPENED:
		row->case_no = e->case_no;
		row->room = e->room;
		row->opened_ms = e->at.wall_ms;
		row->day = clock_date_number(e->at.wall_ms, e->at.utc_min);
		row->marks |= (e->n == 1 ? CASE_SINGLE : 0) | (paper_sheet_of(e->text) ? CASE_CLOCK : 0);
		return;
	case EV_JOINED:
		take_person(e, row);
		return;
	case EV_LEFT:
		row->marks |= e->n ? CASE_OVERRIDDEN : 0;
		return;
	case EV_ITEM_SHOWN:
		take_shown(o, e, row);
		return;
	case EV_ITEM_STRUCK:
		count_up_16(&row->corrected);
		return;
	case EV_COUNT_AGREED:
		if (e->what == COUNT_FINAL)
			o->agreed = e->at;
		return;
	case EV_DISCREPANCY:
		take_discrepancy(e, row);
		return;
	case EV_SEARCH_STEP:
		count_up(e->what == STEP_DONE ? &row->steps_done : &row->steps_not_done);
		return;
	case EV_OWED:
		take_owed(e, row);
		return;
	case EV_PAID:
		row->marks &= e->what == DEBT_INCIDENT ? ~(uint32_t)CASE_NUMBER_OWED : ~0u;
		return;
	case EV_SLIP_QUEUED:
	case EV_SLIP_STATE:
		take_slip(e, row);
		return;
	case EV_CLOCK_WRONG:
		row->marks |= e->n ? CASE_CLOCK : 0;
		return;
	case EV_PATIENT_LEFT:
		row->marks |= CASE_PATIENT_LEFT;
		return;
	case EV_FOUND_AFTER:
		row->marks |= CASE_FOUND_AFTER;
		return;
	case EV_REFUSED:
		count_up_16(&row->refused);
		return;
	case EV_CORRECTION:
	case EV_DIGIT_EARLIER:
	case EV_DIGIT_MOVED:
	case EV_DIGIT_NEVER_ON:
	case EV_DIGIT_STILL_ON:
		count_up_16(&row->corrected);
		return;
	default: /* a row has few columns: test-outline holds them to what is asked of a report */
		return;
	}
}

/* --- as it stood when it ended ---------------------------------------------------------------------------- */

static enum digit_part part_of(int number)
{
	return number > 20 ? PART_OTHER : number > 10 ? PART_TOE : number % 5 == 1 ? PART_THUMB : PART_FINGER;
}

static void close_digit(const struct digit *d, struct moment at, struct case_row *row)
{
	struct digit own = *d;
	own.doubted = 0; /* what is only asked about is no stretch yet */
	if (!own.had && !digit_is_on(&own))
		return;
	if (row->n_digits == CASE_DIGITS) {
		count_up(&row->digits_left_out);
		return;
	}
	int64_t ms = digit_longest_ms(&own, at), first_ms = (int64_t)row->first_reminder_min * 60000;
	int gap = own.gap || own.by_wall.gaps;
	row->digits[row->n_digits++] = (struct case_digit){
	    .seconds = (int32_t)(ms / 1000 > INT32_MAX ? INT32_MAX : ms / 1000),
	    .part = (uint8_t)part_of(own.number),
	    .over = !gap && !digit_is_on(&own),
	    .on = (uint8_t)digit_is_on(&own),
	    .past = first_ms && ms >= first_ms,
	};
	row->marks |= gap ? CASE_POWER_CUT : 0;
}

static void take_thing(const struct thing *th, struct case_row *row)
{
	if (row->n_things == CASE_THINGS) {
		row->things_left_out = 1;
		return;
	}
	row->lines[row->n_things] = case_thing_mark(th->line);
	row->identities[row->n_things] = case_thing_mark(th->identity);
	row->lots[row->n_things++] = case_thing_mark(th->lot);
}

static void close_item(const struct outline *o, const struct item *it, int number, struct case_row *row)
{
	int pack = it->thing.identity_kind == IDENTITY_PACK;
	if (it->place != ITEM_STRUCK)
		take_thing(&it->thing, row);
	switch ((enum item_place)it->place) {
	case ITEM_RETURNED:
		count_up(&row->returned);
		row->packs_returned = (uint8_t)(row->packs_returned + pack);
		return;
	case ITEM_ISOLATED:
		count_up(&row->isolated);
		break;
	case ITEM_STRUCK:
		return;
	case ITEM_ACCOUNTED:
		count_up(&row->items);
		count_up(o->typed[number]                ? &row->typed
		         : it->evidence == EVIDENCE_MARK ? &row->by_mark
		                                         : &row->by_shown);
		break;
	case ITEM_HERE:
	case ITEM_ON:
	case ITEM_OFF:
	case ITEM_EXTRA:
		break;
	}
	row->packs_opened = (uint8_t)(row->packs_opened + pack);
}

static void close_case(const struct outline *o, struct moment at, struct case_row *row)
{
	const struct sheet *s = &o->replay.sheets[0];
	for (int i = 0; i < s->n_digits; i++)
		close_digit(&s->digits[i], at, row);
	for (int i = 0; i < s->n_items; i++)
		close_item(o, &s->items[i], i + 1, row);
	row->marks |= s->unfollowed ? CASE_UNFOLLOWED : 0;
}

/* Slips change no sheet, and what the station itself does in time is of no case. */
static void follow(struct outline *o, const struct event *e, struct case_row *row)
{
	if (e->kind == EV_SLIP_QUEUED || e->kind == EV_SLIP_STATE ||
	    (e->kind == EV_UNREADABLE && !e->case_no))
		return;
	if (e->kind == EV_UNREADABLE || station_apply(&o->replay, e) < 0)
		row->marks |= CASE_UNFOLLOWED;
}

int outline_make(struct outline *o, const struct event *events, int count, struct moment now,
                 int first_reminder_min, struct case_row *row)
{
	int n = begin(o, events, count);
	if (n < 0)
		return n;
	memset(row, 0, sizeof *row);
	row->first_seq = events[0].seq;
	row->last_seq = events[count - 1].seq;
	row->case_no = events[0].case_no;
	row->first_reminder_min = (int16_t)first_reminder_min;
	for (int i = 0; i < count; i++)
		if (events[i].kind == EV_UNDONE)
			mark_undone(o, events, i);
	for (int i = 0; i < count; i++) {
		const struct event *e = &events[i];
		if (e->flags & EVENT_FIRST) {
			count_up_16(&row->steps);
			if (e->flags & EVENT_KEYED)
				count_up_16(&row->keyed);
		}
		if (e->flags & EVENT_LATE && (e->flags & EVENT_FIRST || e->kind == EV_CASE_OPENED))
			count_up_16(&row->late);
		if (!row->end) {
			look_for_signs(o, e, row);
			look_at_clock(o, e, row);
		}
		if (e->kind == EV_UNDONE)
			count_up_16(&row->corrected);
		if (!o->undone[i])
			take(o, e, row);
		if (e->kind == EV_CASE_ENDED) {
			close_case(o, e->at, row);
			row->end = e->what;
			row->ended_ms = e->at.wall_ms;
		}
		follow(o, e, row);
	}
	if (!row->end)
		close_case(o, now, row);
	return 0;
}
