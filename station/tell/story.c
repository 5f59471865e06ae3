#include "tell/story.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "count/paper-sheet.h"
#include "tell/amiss.h"
#include "tell/entry.h"

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

static void say(const struct story *s, const struct say *what, char *out, size_t size)
{
	say_part_in(s->language, what, out, size);
}

static int32_t minute_of(struct moment at)
{
	return clock_minute_of_day(at.wall_ms, at.utc_min);
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
					say(s, SAY(SLIP_DID_NOT_SCAN_OUT, .person = s->people[i].name), text,
					    sizeof text);
					saying_capital(text);
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
	char text[240];
	say(s,
	    e->what == STRETCH_ON ? SAY(SLIP_ON_EARLIER, .digit = e->digit, .n = e->n)
	                          : SAY(SLIP_OFF_EARLIER, .digit = e->digit, .n = e->n),
	    text, sizeof text);
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
		say(s, SAY(SLIP_NEVER_WENT_ON, .digit = e->digit), text, sizeof text);
		add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_DIGIT_STILL_ON:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = none;
		d->doubted = none;
		say(s, SAY(SLIP_WAS_STILL_ON, .digit = e->digit), text, sizeof text);
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
		say(s, SAY(SLIP_MOVED, .digit = e->digit, .other_digit = e->other), text, sizeof text);
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
	default: /* tell() */
		return;
	}
}

/* Earlier versions kept the remark in words. */
static void tell_remark(const struct story *s, struct story_item *it, const struct event *e)
{
	struct say remark = said_say(&e->said);
	it->shown = e->at;
	it->where = !remark.saying && e->text[0];
	if (remark.saying)
		say(s, &remark, it->found, sizeof it->found);
	else
		snprintf(it->found, sizeof it->found, "%s", shipped_text_in(s->language, e->text));
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
		tell_remark(s, it, e);
		return;
	case EV_ITEM_STRUCK:
		say(s, SAY(SLIP_STRUCK_ITEM, .item = entry_item(s->language, e, before, before)), text,
		    sizeof text);
		add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_ITEM_ISOLATED:
		say(s, SAY(SLIP_NOTE_ISOLATED, .item = entry_item(s->language, e, before, before)), text,
		    sizeof text);
		add_note(s, text);
		return;
	default: /* tell() */
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
	amiss_words(s->language, after, x->what, sizeof x->what);
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
			         e->text[0]
			             ? e->text
			             : saying_text_in(s->language, paid_saying((enum paid_how)e->other)));
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

/* Earlier versions kept why in words. */
static uint8_t end_why_of(const struct event *e)
{
	for (int why = END_TYPED + 1; why < END_WHY_KINDS && e->text[0]; why++)
		if (strcmp(e->text, saying_text(end_saying((enum end_why)why))) == 0)
			return (uint8_t)why;
	return e->text[0] ? END_TYPED : (uint8_t)e->other;
}

static void tell_end(struct story *s, const struct event *e)
{
	s->ended = e->what;
	s->ended_at = e->at;
	s->end_why = end_why_of(e);
	snprintf(s->end_text, sizeof s->end_text, "%s",
	         s->end_why ? saying_text_in(s->language, end_saying((enum end_why)s->end_why)) : e->text);
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
	default: /* tell() */
		return;
	}
}

/* What else must be on paper: a sentence of its own. */
static void tell_note(struct story *s, const struct event *e)
{
	char text[240];
	enum saying word;
	switch (e->kind) {
	case EV_SUSPENDED:
		word = SAY_SLIP_NOTE_SUSPENDED;
		break;
	case EV_RESUMED:
		word = SAY_SLIP_NOTE_RESUMED;
		break;
	case EV_CANCELLED:
		word = SAY_SLIP_NOTE_CANCELLED;
		break;
	case EV_PATIENT_LEFT:
		word = SAY_SLIP_NOTE_LEFT;
		break;
	case EV_DRESSING_ON:
		word = e->n ? SAY_SLIP_NOTE_DRESSING : SAY_SLIP_NOTE_DRESSING_DOWN;
		break;
	case EV_CLOCK_WRONG:
		word = e->n ? SAY_SLIP_NOTE_CLOCK_WRONG : SAY_SLIP_NOTE_CLOCK_RIGHT;
		break;
	default: /* tell() */
		return;
	}
	say(s, &(const struct say){.saying = word, .time = minute_of(e->at)}, text, sizeof text);
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
	default: /* entry.c says of each kind whether it is a step; the rest of what a slip says is of few */
		tell_item(t, e, before);
		tell_case(t, e);
		tell_note(t->story, e);
		break;
	}
	tell_flags(t, e, before, after);
}

static void minutes_text(const struct story *s, int64_t ms, int at_least, char *out, size_t size)
{
	say(s,
	    &(const struct say){.saying = at_least ? SAY_SLIP_AT_LEAST : SAY_SLIP_MINUTES,
	                        .n = (int32_t)(ms / 60000)},
	    out, size);
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
		minutes_text(t->story, digit_total_ms(d, now), d->gap || d->by_wall.gaps, sd->total,
		             sizeof sd->total);
		minutes_text(t->story, sd->longest_ms, d->gap || d->by_wall.gaps, sd->longest,
		             sizeof sd->longest);
		if (!sd->n_stretches)
			continue;
		struct story_stretch *x = &sd->stretches[sd->n_stretches - 1];
		struct say stretch = {0};
		stretch.saying = digit_minutes(d, now, &stretch.minutes, &stretch.most);
		say(t->story, &stretch, x->minutes, sizeof x->minutes);
	}
}

static void tell_undone(struct telling *t, const struct event *e, const struct sheet *sheet)
{
	char text[240], what[200];
	for (int i = 0; i < t->count; i++)
		if (t->events[i].seq == e->ref &&
		    entry_words(&t->events[i], t->story, sheet, sheet, what, sizeof what)) {
			say(t->story, SAY(SLIP_TAKEN_BACK, .words = what), text, sizeof text);
			add_entry(t->story, ENTRY_CORRECTED, e, text);
		}
}

/* The slip says which events are not in it (rule 26). What the station itself does in time is of no case. */
static void follow(struct telling *t, const struct event *e)
{
	char text[200];
	if (e->kind == EV_UNREADABLE && !e->case_no)
		return;
	if (e->kind == EV_UNREADABLE && !t->story->case_no)
		t->story->case_no = e->case_no;
	if (e->kind != EV_UNREADABLE && station_apply(t->replay, e) == 0)
		return;
	say(t->story, SAY(SLIP_NOTE_NOT_FOLLOWED, .n = (int32_t)e->seq), text, sizeof text);
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

int story_make(struct story **out, const struct language *language, const struct event *events, int count,
               struct moment now)
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
		t.story->language = language;
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
