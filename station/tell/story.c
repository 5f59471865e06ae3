#include "tell/story.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "code/own-codes.h"
#include "count/paper-sheet.h"
#include "tell/amiss.h"
#include "tell/entry.h"
#include "words/slip-words.h"

static const struct moment none;

/* The events of a case, and which of them were taken back. */
struct telling {
	struct story *story;
	struct station *replay; /* follows the events, undo and power cuts included */
	const struct event *events;
	uint8_t *undone;
	int count;
};

/* A step is the event that UNDO names and what followed it up to the next step. */
static void mark_undone(struct telling *t, int undo)
{
	for (int i = 0; i < undo; i++) {
		if (t->events[i].seq != t->events[undo].ref)
			continue;
		for (int k = i; k < undo && (k == i || !(t->events[k].flags & EVENT_FIRST)); k++)
			t->undone[k] = 1;
	}
}

/* Nothing falls off a list in silence: what finds no place is counted. */
#define ADD(story, list, limit)                                                                              \
	((story)->n_##list < (limit) ? &(story)->list[(story)->n_##list++] : ((story)->left_out++, NULL))

static void add_entry(struct story *s, enum story_how how, const struct event *e, const char *text)
{
	struct story_entry *x = ADD(s, entries, STORY_ENTRIES);
	if (!x)
		return;
	x->how = (uint8_t)how;
	x->after = s->ended != 0;
	x->at = e->at;
	snprintf(x->text, sizeof x->text, "%s", text);
}

static void add_note(struct story *s, const char *text)
{
	if (s->n_notes < STORY_NOTES)
		snprintf(s->notes[s->n_notes++], sizeof s->notes[0], "%s", text);
	else
		s->left_out++;
}

static struct story_digit *digit_of(struct story *s, int number)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].number == number)
			return &s->digits[i];
	struct story_digit *d = ADD(s, digits, DIGITS_MAX);
	if (d)
		d->number = (uint8_t)number;
	return d;
}

static void tell_person(struct telling *t, const struct event *e)
{
	struct story *s = t->story;
	if (e->kind == EV_LEFT) {
		for (int i = 0; i < s->n_people; i++)
			if (s->people[i].number == e->person && !time_is_set(s->people[i].to)) {
				s->people[i].to = e->at;
				if (e->n) {
					char text[80];
					SLIP_SAY(text, DID_NOT_SCAN_OUT, "person", s->people[i].name);
					add_entry(s, ENTRY_OVERRIDDEN, e, text);
				}
			}
		return;
	}
	struct story_person *p = ADD(s, people, STORY_PEOPLE);
	if (!p)
		return;
	*p = (struct story_person){.number = e->person, .place = e->what, .from = e->at};
	snprintf(p->name, sizeof p->name, "%.32s", e->text);
}

/* As on the sheet: it cannot have come off before it went on. */
static void tell_earlier(struct story_stretch *x, int on, int64_t ms)
{
	int64_t known = x->off.wall_ms - x->on.wall_ms;
	if (on)
		x->on.wall_ms -= ms;
	else
		x->off.wall_ms -= known >= 0 && ms > known ? known : ms;
}

static void tell_minutes_ago(struct story *s, const struct event *e)
{
	char text[240], minutes[12];
	snprintf(minutes, sizeof minutes, "%d", (int)e->n);
	if (e->what == STRETCH_ON)
		SLIP_PART(text, ON_EARLIER, "digit", own_digit_name(e->digit), "n", minutes);
	else
		SLIP_PART(text, OFF_EARLIER, "digit", own_digit_name(e->digit), "n", minutes);
	add_entry(s, ENTRY_CORRECTED, e, text);
}

static void tell_digit(struct telling *t, const struct event *e)
{
	struct story *s = t->story;
	struct story_digit *d = digit_of(s, e->digit);
	char text[240];
	if (!d)
		return;
	switch (e->kind) {
	case EV_DIGIT_MAYBE_ON:
	case EV_DIGIT_ON:
		if (!d->n_stretches || time_is_set(d->stretches[d->n_stretches - 1].off)) {
			if (d->n_stretches == STORY_STRETCHES) {
				s->left_out++;
				return;
			}
			d->stretches[d->n_stretches++] =
			    (struct story_stretch){.on = time_is_set(d->doubted) ? d->doubted : e->at};
		}
		d->doubted = none;
		return;
	case EV_DIGIT_DOUBTED:
		d->doubted = e->at;
		return;
	case EV_DIGIT_NOT_ON:
		if (!time_is_set(d->doubted) && d->n_stretches &&
		    !time_is_set(d->stretches[d->n_stretches - 1].off))
			d->n_stretches--;
		d->doubted = none;
		return;
	case EV_DIGIT_NEVER_ON:
		if (d->n_stretches)
			d->n_stretches--;
		d->doubted = none;
		SLIP_PART(text, NEVER_WENT_ON, "digit", own_digit_name(e->digit));
		add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_DIGIT_STILL_ON:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = none;
		d->doubted = none;
		SLIP_PART(text, WAS_STILL_ON, "digit", own_digit_name(e->digit));
		add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_DIGIT_OFF:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = e->at;
		return;
	case EV_DIGIT_EARLIER:
		if (d->n_stretches)
			tell_earlier(&d->stretches[d->n_stretches - 1], e->what == STRETCH_ON,
			             (int64_t)e->n * 60000);
		tell_minutes_ago(s, e);
		return;
	case EV_DIGIT_MOVED:
		SLIP_PART(text, MOVED, "digit", own_digit_name(e->digit), "other", own_digit_name(e->other));
		add_entry(s, ENTRY_CORRECTED, e, text);
		struct story_digit *to = digit_of(s, e->other);
		if (to) {
			uint8_t number = to->number;
			*to = *d;
			to->number = number;
			memset(d, 0, sizeof *d);
			d->number = e->digit;
		}
		return;
	case EV_DIGIT_SEEN_BARE:
		d->bare = e->at;
		d->bare_by = e->person;
		return;
	case EV_DIGIT_NOT_SEEN:
		d->bare = none;
		d->bare_by = 0;
		return;
	case EV_DIGIT_SEEN_ON:
		d->without_sight |= !e->n;
		return;
	case EV_REMINDED:
		if (d->n_reminders < STORY_REMINDERS)
			d->reminders[d->n_reminders++] =
			    (struct story_reminder){.at = e->at, .minutes = e->n};
		else
			s->left_out++;
		return;
	case EV_ACKNOWLEDGED:
		if (d->n_reminders) {
			d->reminders[d->n_reminders - 1].acknowledged = e->at;
			d->reminders[d->n_reminders - 1].by = e->person;
		}
		return;
	default:
		return;
	}
}

/* Earlier versions kept the remark in words. */
static void tell_remark(struct story_item *it, const struct event *e)
{
	struct say say = said_say(&e->said);
	it->shown = e->at;
	it->where = !say.saying && e->text[0];
	if (say.saying)
		say_part(&say, it->found, sizeof it->found);
	else
		snprintf(it->found, sizeof it->found, "%s", e->text);
}

static void tell_item(struct telling *t, const struct event *e, const struct sheet *before)
{
	struct story *s = t->story;
	char text[240];
	if (!e->item || e->item > ITEMS_MAX)
		return;
	struct story_item *it = &s->items[e->item - 1];
	switch (e->kind) {
	case EV_ITEM_IN:
	case EV_EXTRA:
		*it = (struct story_item){.in = e->at, .added = before->initial_agreed};
		return;
	case EV_ITEM_ON: {
		struct story_digit *d = digit_of(s, e->digit);
		if (d)
			d->tourniquet = e->item;
		return;
	}
	case EV_FORCEPS_ON: {
		struct story_digit *d = digit_of(s, e->digit);
		if (d)
			d->forceps = e->item;
		return;
	}
	case EV_ITEM_SHOWN:
		tell_remark(it, e);
		return;
	case EV_ITEM_STRUCK:
		SLIP_PART(text, STRUCK_ITEM, "item", entry_item(e, before, before));
		add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_ITEM_ISOLATED:
		SLIP_PART(text, NOTE_ISOLATED, "item", entry_item(e, before, before));
		add_note(s, text);
		return;
	default:
		return;
	}
}

static void tell_count(struct telling *t, const struct event *e)
{
	struct story_count *x = ADD(t->story, counts, STORY_COUNTS);
	if (!x)
		return;
	*x = (struct story_count){
	    .kind = e->what, .at = e->at, .field = e->person, .circulating = e->other, .recorded_by = e->n};
	if (e->what == COUNT_HANDOVER)
		for (int i = 0; i < t->story->n_digits; i++)
			if (t->story->digits[i].without_sight) {
				x->unseen |= 1u << t->story->digits[i].number;
				t->story->digits[i].without_sight = 0;
			}
}

static void tell_discrepancy(struct telling *t, const struct event *e, const struct sheet *after)
{
	struct story *s = t->story;
	if (!e->n) {
		if (s->n_discrepancies)
			s->discrepancies[s->n_discrepancies - 1].closed = e->at;
		return;
	}
	s->n_steps = 0;
	struct story_discrepancy *x = ADD(s, discrepancies, STORY_DISCREPANCIES);
	if (!x)
		return;
	x->opened = e->at;
	amiss_words(after, x->what, sizeof x->what);
}

static void tell_debt(struct telling *t, const struct event *e)
{
	struct story *s = t->story;
	struct debt debt = {.kind = e->what, .item = e->item, .digit = e->digit};
	if (e->kind == EV_OWED) {
		for (int i = 0; i < s->n_debts; i++)
			if (memcmp(&s->debts[i].debt, &debt, sizeof debt) == 0 &&
			    !time_is_set(s->debts[i].paid))
				return;
		struct story_debt *x = ADD(s, debts, STORY_DEBTS);
		if (x)
			*x = (struct story_debt){.debt = debt, .owed = e->at};
		return;
	}
	for (int i = 0; i < s->n_debts; i++)
		if (memcmp(&s->debts[i].debt, &debt, sizeof debt) == 0 && !time_is_set(s->debts[i].paid)) {
			s->debts[i].paid = e->at;
			s->debts[i].after = s->ended != 0;
			s->debts[i].by = e->person;
			snprintf(s->debts[i].how, sizeof s->debts[i].how, "%s",
			         e->text[0] ? e->text : paid_words((enum paid_how)e->other));
		}
}

/* They are put in order, and after a NO from the first again. */
static void tell_point(struct story *s, const struct event *e)
{
	if (e->n < 1 || e->n > POLICY_LIST_MAX)
		return;
	struct story_point *p = &s->points[e->n - 1];
	s->n_points = e->n;
	p->answer = e->what;
	snprintf(p->text, sizeof p->text, "%.120s", e->text);
}

/* After the end, on the case that it came from (rule 21). */
static void tell_found(struct story *s, const struct event *e)
{
	struct story_found *x = ADD(s, found, STORY_FOUND);
	if (!x)
		return;
	x->at = e->at;
	x->thing = e->thing;
	snprintf(x->text, sizeof x->text, "%s", e->text);
}

static void tell_end(struct story *s, const struct event *e)
{
	s->ended = e->what;
	s->ended_at = e->at;
	snprintf(s->end_text, sizeof s->end_text, "%s",
	         e->text[0] ? e->text : end_words((enum end_why)e->other));
}

static void tell_slip(struct story *s, const struct event *e)
{
	if (e->what == SLIP_RECONCILIATION)
		s->last_slip = e->n;
	for (int i = 0; i < s->n_slips; i++)
		if (s->slips[i].number == e->n)
			return; /* a further copy */
	struct story_slip *x = ADD(s, slips, STORY_SLIPS);
	if (x)
		*x = (struct story_slip){.number = e->n, .kind = e->what, .at = e->at};
}

static void tell_case(struct telling *t, const struct event *e)
{
	struct story *s = t->story;
	switch (e->kind) {
	case EV_CASE_OPENED:
		s->case_no = e->case_no;
		s->room = e->room;
		s->single = e->n == 1;
		s->opened = e->at;
		snprintf(s->label, sizeof s->label, "%.15s", e->text);
		s->paper_sheet = paper_sheet_of(s->label);
		return;
	case EV_CASE_ENDED:
		tell_end(s, e);
		return;
	case EV_CORRECTION:
		add_entry(s, ENTRY_CORRECTED, e, e->text);
		return;
	case EV_FOUND_AFTER:
		tell_found(s, e);
		return;
	case EV_SLIP_QUEUED:
		tell_slip(s, e);
		return;
	case EV_POINT:
		tell_point(s, e);
		return;
	case EV_SIGNED_OUT:
		s->points_told = e->format != 1;
		s->signed_by = e->person;
		s->witness = e->other;
		s->signed_at = e->at;
		return;
	default:
		return;
	}
}

/* What else must be on paper: a sentence of its own. */
static void tell_note(struct story *s, const struct event *e)
{
	char text[240], hm[6];
	enum slip_word word;
	switch (e->kind) {
	case EV_SUSPENDED:
		word = SW_NOTE_SUSPENDED;
		break;
	case EV_RESUMED:
		word = SW_NOTE_RESUMED;
		break;
	case EV_CANCELLED:
		word = SW_NOTE_CANCELLED;
		break;
	case EV_PATIENT_LEFT:
		word = SW_NOTE_LEFT;
		break;
	case EV_DRESSING_ON:
		word = e->n ? SW_NOTE_DRESSING : SW_NOTE_DRESSING_DOWN;
		break;
	case EV_CLOCK_WRONG:
		word = e->n ? SW_NOTE_CLOCK_WRONG : SW_NOTE_CLOCK_RIGHT;
		break;
	default:
		return;
	}
	clock_text_hm(e->at.wall_ms, e->at.utc_min, hm);
	slip_part(text, sizeof text, word, (const char *const[]){"time", hm, NULL});
	add_note(s, text);
}

static void tell_flags(struct telling *t, const struct event *e, const struct sheet *before,
                       const struct sheet *after)
{
	char text[240];
	struct story_steps *all = &t->story->scans;
	if (!(e->flags & EVENT_FIRST) || !entry_words(e, t->story, before, after, text, sizeof text))
		return;
	if (!all->all++)
		all->first = e->at;
	all->last = e->at;
	all->late += (e->flags & EVENT_LATE) != 0;
	all->keyed += !(e->flags & EVENT_LATE) && e->flags & EVENT_KEYED;
	if (e->flags & (EVENT_LATE | EVENT_KEYED))
		add_entry(t->story, e->flags & EVENT_LATE ? ENTRY_LATE : ENTRY_KEYED, e, text);
}

static void tell(struct telling *t, const struct event *e, const struct sheet *before,
                 const struct sheet *after)
{
	switch (e->kind) {
	case EV_JOINED:
	case EV_LEFT:
		tell_person(t, e);
		break;
	case EV_DIGIT_MAYBE_ON:
	case EV_DIGIT_ON:
	case EV_DIGIT_DOUBTED:
	case EV_DIGIT_STILL_ON:
	case EV_DIGIT_NEVER_ON:
	case EV_DIGIT_NOT_ON:
	case EV_DIGIT_OFF:
	case EV_DIGIT_EARLIER:
	case EV_DIGIT_MOVED:
	case EV_DIGIT_SEEN_BARE:
	case EV_DIGIT_NOT_SEEN:
	case EV_DIGIT_SEEN_ON:
	case EV_REMINDED:
	case EV_ACKNOWLEDGED:
		tell_digit(t, e);
		break;
	case EV_COUNT_AGREED:
		tell_count(t, e);
		break;
	case EV_DISCREPANCY:
		tell_discrepancy(t, e, after);
		break;
	case EV_OWED:
	case EV_PAID:
		tell_debt(t, e);
		break;
	case EV_SEARCH_WHY:
		if (t->story->n_steps)
			snprintf(t->story->steps[t->story->n_steps - 1].why, EVENT_TEXT_MAX, "%s", e->text);
		break;
	case EV_SEARCH_STEP: {
		struct story_step *x = ADD(t->story, steps, STORY_STEPS);
		if (x) {
			*x = (struct story_step){.at = e->at, .done = e->what};
			snprintf(x->text, sizeof x->text, "%.120s", e->text);
		}
		break;
	}
	default:
		tell_item(t, e, before);
		tell_case(t, e);
		tell_note(t->story, e);
		break;
	}
	tell_flags(t, e, before, after);
}

static void minutes_text(int64_t ms, int at_least, char *out, size_t size)
{
	char n[24];
	snprintf(n, sizeof n, "%" PRId64, ms / 60000);
	slip_part(out, size, at_least ? SW_AT_LEAST : SW_MINUTES, (const char *const[]){"n", n, NULL});
}

/* The minutes of a stretch come from its clock, not from the difference of two wall times (rule 14). */
static void tell_clocks(struct telling *t, const struct sheet *sheet, struct moment now)
{
	for (int i = 0; i < sheet->n_digits; i++) {
		struct digit own = sheet->digits[i], *d = &own;
		struct story_digit *sd = digit_of(t->story, d->number);
		d->doubted = 0; /* what is only asked about is no stretch yet */
		if (!sd)
			continue;
		sd->longest_ms = digit_longest_ms(d, now);
		minutes_text(digit_total_ms(d, now), d->gap || d->by_wall.gaps, sd->total, sizeof sd->total);
		minutes_text(sd->longest_ms, d->gap || d->by_wall.gaps, sd->longest, sizeof sd->longest);
		if (!sd->n_stretches)
			continue;
		struct story_stretch *x = &sd->stretches[sd->n_stretches - 1];
		digit_minutes_text(d, now, x->minutes, sizeof x->minutes);
	}
}

static void tell_undone(struct telling *t, const struct event *e, const struct sheet *sheet)
{
	char text[240], what[200];
	for (int i = 0; i < t->count; i++)
		if (t->events[i].seq == e->ref &&
		    entry_words(&t->events[i], t->story, sheet, sheet, what, sizeof what)) {
			SLIP_PART(text, TAKEN_BACK, "text", what);
			add_entry(t->story, ENTRY_CORRECTED, e, text);
		}
}

/* The slip says which events are not in it (rule 26). What the station itself does in time is of no case. */
static void follow(struct telling *t, const struct event *e)
{
	char text[200], seq[24];
	if (e->kind == EV_UNREADABLE && !e->case_no)
		return;
	if (e->kind == EV_UNREADABLE && !t->story->case_no)
		t->story->case_no = e->case_no;
	if (e->kind != EV_UNREADABLE && station_apply(t->replay, e) == 0)
		return;
	snprintf(seq, sizeof seq, "%" PRId64, e->seq);
	SLIP_PART(text, NOTE_NOT_FOLLOWED, "seq", seq);
	add_note(t->story, text);
}

static void tell_all(struct telling *t)
{
	for (int i = 0; i < t->count; i++)
		if (t->events[i].kind == EV_UNDONE)
			mark_undone(t, i);
	for (int i = 0; i < t->count; i++) {
		const struct event *e = &t->events[i];
		struct sheet before = t->replay->sheets[0];
		if (e->kind == EV_UNDONE)
			tell_undone(t, e, &before);
		follow(t, e);
		const struct sheet *after = &t->replay->sheets[0];
		if (after->case_no)
			t->story->sheet = *after;
		if (t->undone[i])
			continue;
		tell(t, e, &before, after);
		if (after->case_no)
			tell_clocks(t, after, e->at);
	}
}

int story_make(struct story **out, const struct event *events, int count, struct moment now)
{
	if (count < 1)
		return -ENOENT;
	struct telling t = {.story = calloc(1, sizeof(struct story)),
	                    .replay = calloc(1, sizeof(struct station)),
	                    .events = events,
	                    .undone = calloc((size_t)count, 1),
	                    .count = count};
	int n = t.story && t.replay && t.undone ? 0 : -ENOMEM;
	if (n == 0) {
		/* The clock of the replay begins in the boot in which the case was opened. */
		t.replay->boot = events[0].at.boot;
		tell_all(&t);
		if (!t.story->ended)
			tell_clocks(&t, &t.replay->sheets[0], now);
		*out = t.story;
	} else {
		free(t.story);
	}
	if (t.replay)
		station_deinit(t.replay);
	free(t.replay);
	free(t.undone);
	return n;
}
