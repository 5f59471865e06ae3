#include "tell/story.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "code/own-codes.h"

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

static void add_entry(struct story *s, const char *how, const struct event *e, const char *text)
{
	struct story_entry *x = ADD(s, entries, STORY_ENTRIES);
	if (!x)
		return;
	x->how = how;
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

static const char *item_name(const struct telling *t, const struct sheet *s, int item)
{
	(void)t;
	const struct item *it = sheet_item_const(s, item);
	return it ? it->thing.name : "an item";
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
					snprintf(text, sizeof text, "%s did not scan out", s->people[i].name);
					add_entry(s, "overridden", e, text);
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
		snprintf(text, sizeof text, "%s: no tourniquet had gone on", own_digit_name(e->digit));
		add_entry(s, "corrected", e, text);
		return;
	case EV_DIGIT_STILL_ON:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = none;
		d->doubted = none;
		snprintf(text, sizeof text, "%s: OFF had been scanned, and it was still on",
		         own_digit_name(e->digit));
		add_entry(s, "corrected", e, text);
		return;
	case EV_DIGIT_OFF:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = e->at;
		return;
	case EV_DIGIT_EARLIER:
		if (d->n_stretches)
			tell_earlier(&d->stretches[d->n_stretches - 1], e->what == 1, (int64_t)e->n * 60000);
		snprintf(text, sizeof text, "%s: %s was %d min earlier than scanned",
		         own_digit_name(e->digit), e->what == 1 ? "on" : "off", (int)e->n);
		add_entry(s, "corrected", e, text);
		return;
	case EV_DIGIT_MOVED:
		snprintf(text, sizeof text, "entered for the %s, was the %s; the time is kept",
		         own_digit_name(e->digit), own_digit_name(e->other));
		add_entry(s, "corrected", e, text);
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
		snprintf(text, sizeof text, "struck as a misread: %s", item_name(t, before, e->item));
		add_entry(s, "corrected", e, text);
		return;
	case EV_ITEM_ISOLATED:
		snprintf(text, sizeof text,
		         "Wrong number in its pack, isolated, not in the count: %s. Tell stores.",
		         item_name(t, before, e->item));
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
				snprintf(x->note, sizeof x->note, "without full sight of the %s",
				         own_digit_name(t->story->digits[i].number));
				t->story->digits[i].without_sight = 0;
			}
}

static void tell_missing(struct story *s, const struct sheet *sheet)
{
	size_t used = 0;
	for (int i = 0; i < sheet->n_items && used + 1 < sizeof s->missing_text; i++) {
		const struct item *it = &sheet->items[i];
		const char *how = it->place == ITEM_EXTRA                     ? "extra"
		                  : it->condition == CONDITION_PIECES_MISSING ? "pieces missing"
		                                                              : "not there";
		if (!item_open(it) ||
		    (!it->missing && it->place != ITEM_EXTRA && it->condition != CONDITION_PIECES_MISSING))
			continue;
		char where[160] = "";
		if (role_has(it->thing.role, TRAIT_TIMED))
			sheet_where_words(sheet, i + 1, where, sizeof where);
		int n = snprintf(s->missing_text + used, sizeof s->missing_text - used,
		                 "%s%s: %s, %d of %d shown%s%s", used ? "; " : "", it->thing.name, how,
		                 it->shown, it->pieces, *where ? "; " : "", where);
		used += n > 0 ? (size_t)n : 0;
	}
	if (used >= sizeof s->missing_text)
		s->missing_text[sizeof s->missing_text - 1] = 0;
}

static void tell_discrepancy(struct telling *t, const struct event *e, const struct sheet *after)
{
	struct story *s = t->story;
	if (!e->n) {
		s->closed = e->at;
		return;
	}
	s->discrepancy = e->at;
	s->closed = none;
	s->n_steps = 0;
	tell_missing(s, after);
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

static void tell_case(struct telling *t, const struct event *e)
{
	struct story *s = t->story;
	char text[240], hm[6];
	clock_text_hm(e->at.wall_ms, e->at.utc_min, hm);
	switch (e->kind) {
	case EV_CASE_OPENED:
		s->case_no = e->case_no;
		s->room = e->room;
		s->single = e->n == 1;
		s->opened = e->at;
		snprintf(s->label, sizeof s->label, "%.15s", e->text);
		return;
	case EV_CASE_ENDED:
		s->ended = e->what;
		s->ended_at = e->at;
		snprintf(s->end_text, sizeof s->end_text, "%s",
		         e->text[0] ? e->text : end_words((enum end_why)e->other));
		return;
	case EV_SUSPENDED:
		snprintf(text, sizeof text, "Suspended at %s; clocks and reminders went on.", hm);
		add_note(s, text);
		return;
	case EV_RESUMED:
		snprintf(text, sizeof text, "Went on at %s.", hm);
		add_note(s, text);
		return;
	case EV_CANCELLED:
		snprintf(text, sizeof text, "Cancelled at %s; a pack had been opened, so a count was owed.",
		         hm);
		add_note(s, text);
		return;
	case EV_PATIENT_LEFT:
		snprintf(text, sizeof text, "The patient left the room at %s.", hm);
		add_note(s, text);
		return;
	case EV_DRESSING_ON:
		if (e->n)
			snprintf(text, sizeof text,
			         "At %s a dressing was on before the look at the bare digit.", hm);
		else
			snprintf(text, sizeof text, "The dressing came down for the look at %s.", hm);
		add_note(s, text);
		return;
	case EV_CLOCK_WRONG:
		if (e->n)
			snprintf(text, sizeof text,
			         "The wall clock was wrong, and said %s: times of day from here on cannot be "
			         "trusted.",
			         hm);
		else
			snprintf(text, sizeof text, "The wall clock was right again at %s.", hm);
		add_note(s, text);
		return;
	case EV_CORRECTION:
		add_entry(s, "corrected", e, e->text);
		return;
	case EV_FOUND_AFTER:
		snprintf(text, sizeof text,
		         "FOUND AFTER THE END, %s: %.100s %.60s. Look at this patient's digit now.", hm,
		         e->thing.name, e->thing.called ? saying_text(e->thing.called) : e->text);
		add_note(s, text);
		return;
	case EV_SLIP_QUEUED:
		if (e->what == SLIP_RECONCILIATION)
			s->last_slip = e->n;
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

static void tell_flags(struct telling *t, const struct event *e)
{
	char text[240];
	const char *digit = e->digit ? own_digit_name(e->digit) : "";
	if (!(e->flags & (EVENT_LATE | EVENT_KEYED)) || !(e->flags & EVENT_FIRST))
		return;
	snprintf(text, sizeof text, "%s%s%s", event_name(e->kind), *digit ? ", " : "", digit);
	add_entry(t->story, e->flags & EVENT_LATE ? "late" : "keyed", e, text);
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
		break;
	}
	tell_flags(t, e);
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
		snprintf(sd->total, sizeof sd->total, "%" PRId64 " min", digit_total_ms(d, now) / 60000);
		snprintf(sd->longest, sizeof sd->longest, "%s%" PRId64 " min", d->gap ? "at least " : "",
		         digit_longest_ms(d, now) / 60000);
		if (!sd->n_stretches)
			continue;
		struct story_stretch *x = &sd->stretches[sd->n_stretches - 1];
		digit_minutes_text(d, now, x->minutes, sizeof x->minutes);
	}
}

static void tell_undone(struct telling *t, const struct event *e)
{
	char text[120];
	const struct step *step = &t->replay->undo[0];
	snprintf(text, sizeof text, "taken back: %s%s%s", event_name((enum event_kind)step->kind),
	         step->digit ? ", " : "", step->digit ? own_digit_name(step->digit) : "");
	add_entry(t->story, "corrected", e, text);
}

/* The slip says which events are not in it (rule 26). What the station itself does in time is of no case. */
static void follow(struct telling *t, const struct event *e)
{
	char text[160];
	if (e->kind == EV_UNREADABLE && !e->case_no)
		return;
	if (e->kind == EV_UNREADABLE && !t->story->case_no)
		t->story->case_no = e->case_no;
	if (e->kind != EV_UNREADABLE && station_apply(t->replay, e) == 0)
		return;
	snprintf(text, sizeof text,
	         "EVENT %" PRId64
	         " (%s) COULD NOT BE FOLLOWED: what it changed is not on this slip. Count by hand.",
	         e->seq, event_name(e->kind));
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
			tell_undone(t, e);
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
