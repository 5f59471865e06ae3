#include "tell/story-event.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "count/paper-sheet.h"
#include "count/wall.h"
#include "tell/amiss.h"
#include "tell/entry.h"

static const struct moment none;

void story_say(const struct story *s, const struct say *what, char *out, size_t size)
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

void story_add_entry(struct story *s, enum story_how how, const struct event *e, const char *text)
{
	struct story_entry *x = ADD(s, entries, STORY_ENTRIES);
	if (!x)
		return;
	x->how = (uint8_t)how;
	x->after = s->ended != 0;
	x->at = e->at;
	snprintf(x->text, sizeof x->text, "%s", text);
}

void story_add_note(struct story *s, const char *text)
{
	if (s->n_notes < STORY_NOTES)
		snprintf(s->notes[s->n_notes++], sizeof s->notes[0], "%s", text);
	else
		s->left_out++;
}

struct story_digit *story_digit_of(struct story *s, int number)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].number == number)
			return &s->digits[i];
	struct story_digit *d = ADD(s, digits, DIGITS_MAX);
	if (d)
		d->number = (uint8_t)number;
	return d;
}

static void tell_person(struct story *s, const struct event *e)
{
	if (e->kind == EV_LEFT) {
		for (int i = 0; i < s->n_people; i++)
			if (s->people[i].number == e->person && !time_is_set(s->people[i].to) &&
			    (!e->what || e->what == s->people[i].place)) {
				s->people[i].to = e->at;
				if (e->n) {
					char text[80];
					story_say(s, SAY(SLIP_DID_NOT_SCAN_OUT, .person = s->people[i].name),
					          text, sizeof text);
					saying_capital(text);
					story_add_entry(s, ENTRY_OVERRIDDEN, e, text);
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
	int64_t known = moment_between_ms(x->on, x->off);
	struct moment *at = on ? &x->on : &x->off;
	if (!on && known >= 0 && ms > known)
		ms = known;
	at->wall_ms -= ms;
	at->boot_ms -= ms;
}

static void tell_minutes_ago(struct story *s, const struct event *e)
{
	char text[240];
	story_say(s,
	          e->what == STRETCH_ON ? SAY(SLIP_ON_EARLIER, .digit = e->digit, .n = e->n)
	                                : SAY(SLIP_OFF_EARLIER, .digit = e->digit, .n = e->n),
	          text, sizeof text);
	story_add_entry(s, ENTRY_CORRECTED, e, text);
}

static void tell_digit(struct story *s, const struct event *e)
{
	struct story_digit *d = story_digit_of(s, e->digit);
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
		story_say(s, SAY(SLIP_NEVER_WENT_ON, .digit = e->digit), text, sizeof text);
		story_add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_DIGIT_STILL_ON:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = none;
		d->doubted = none;
		story_say(s, SAY(SLIP_WAS_STILL_ON, .digit = e->digit), text, sizeof text);
		story_add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_DIGIT_OFF:
		if (d->n_stretches)
			d->stretches[d->n_stretches - 1].off = e->at;
		return;
	case EV_DIGIT_EARLIER:
		d->time_moved = 1;
		if (d->n_stretches)
			tell_earlier(&d->stretches[d->n_stretches - 1], e->what == STRETCH_ON,
			             (int64_t)e->n * 60000);
		tell_minutes_ago(s, e);
		return;
	case EV_DIGIT_MOVED:
		story_say(s, SAY(SLIP_MOVED, .digit = e->digit, .other_digit = e->other), text, sizeof text);
		story_add_entry(s, ENTRY_CORRECTED, e, text);
		struct story_digit *to = story_digit_of(s, e->other);
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
		d->without_sight |= e->n == SEEN_NOT_FULLY;
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
	default: /* story_add_event() */
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
		story_say(s, &remark, it->found, sizeof it->found);
	else
		snprintf(it->found, sizeof it->found, "%s", shipped_text_in(s->language, e->text));
}

static void tell_item(struct story *s, const struct event *e, const struct sheet *before)
{
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
		struct story_digit *d = story_digit_of(s, e->digit);
		const struct item *was = sheet_item_const(before, e->item);
		if (was && was->place == ITEM_ON &&
		    was->digit != e->digit) { /* it was entered for another digit */
			story_say(s, SAY(SLIP_MOVED, .digit = was->digit, .other_digit = e->digit), text,
			          sizeof text);
			story_add_entry(s, ENTRY_CORRECTED, e, text);
		}
		if (d)
			d->tourniquet = e->item;
		if (was && item_is_sought(was)) {
			it->seen_on = e->at;
			it->on = e->digit;
		}
		return;
	}
	case EV_FORCEPS_ON: {
		struct story_digit *d = story_digit_of(s, e->digit);
		if (d)
			d->forceps = e->item;
		return;
	}
	case EV_FORCEPS_MOVED: { /* away from a tourniquet that stays on */
		const int digit = before->items[e->item - 1].digit;
		struct story_digit *d = digit ? story_digit_of(s, (uint8_t)digit) : NULL;
		if (d && d->forceps == e->item && sheet_item_on(before, digit, TRAIT_TIMED))
			d->forceps = 0;
		return;
	}
	case EV_ITEM_SHOWN:
		tell_remark(s, it, e);
		return;
	case EV_ITEM_STRUCK:
		story_say(s,
		          &(const struct say){.saying = e->n ? SAY_SLIP_STRUCK_OF : SAY_SLIP_STRUCK_ITEM,
		                              .item = entry_item(s->language, e, before, before),
		                              .case_no = e->n},
		          text, sizeof text);
		story_add_entry(s, ENTRY_CORRECTED, e, text);
		return;
	case EV_ITEM_ISOLATED:
		story_say(s, SAY(SLIP_NOTE_ISOLATED, .item = entry_item(s->language, e, before, before)),
		          text, sizeof text);
		story_add_note(s, text);
		return;
	default: /* story_add_event() */
		return;
	}
}

static void tell_count(struct story *s, const struct event *e)
{
	struct story_count *x = ADD(s, counts, STORY_COUNTS);
	if (!x)
		return;
	*x = (struct story_count){
	    .kind = e->what, .at = e->at, .field = e->person, .circulating = e->other, .recorded_by = e->n};
	if (e->what == COUNT_HANDOVER)
		for (int i = 0; i < s->n_digits; i++)
			if (s->digits[i].without_sight) {
				x->unseen |= 1u << s->digits[i].number;
				s->digits[i].without_sight = 0;
			}
}

static void tell_discrepancy(struct story *s, const struct event *e, const struct sheet *after)
{
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

static void tell_debt(struct story *s, const struct event *e)
{
	struct debt debt = {.kind = e->what, .item = e->item, .digit = e->digit};
	if (e->kind == EV_OWED) {
		for (int i = 0; i < s->n_debts; i++)
			if (memcmp(&s->debts[i].debt, &debt, sizeof debt) == 0 &&
			    !time_is_set(s->debts[i].paid))
				return;
		struct story_debt *x = ADD(s, debts, STORY_DEBTS);
		if (x) {
			*x = (struct story_debt){.debt = debt, .owed = e->at};
			const struct say why = said_say(&e->said);
			if (why.saying)
				story_say(s, &why, x->why, sizeof x->why);
		}
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
	if (e->what == POINT_NO)
		p->no = e->at;
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
	x->digit = e->digit;
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

static void tell_case(struct story *s, const struct event *e)
{
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
		story_add_entry(s, ENTRY_CORRECTED, e, e->text);
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
	default: /* story_add_event() */
		return;
	}
}

/* The digits of which a clock runs. */
static void list_running(const struct story *s, char *out, size_t size)
{
	uint32_t digits = 0;
	for (int i = 0; i < s->n_digits; i++) {
		const struct story_digit *d = &s->digits[i];
		if (d->n_stretches && !time_is_set(d->stretches[d->n_stretches - 1].off))
			digits |= 1u << d->number;
	}
	out[0] = 0;
	if (digits)
		amiss_digits_words(s->language, digits, 0, out, size);
}

/* What else must be on paper: a sentence of its own. */
static void tell_note(struct story *s, const struct event *e)
{
	char running[400] = "";
	char text[STORY_NOTE_MAX];
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
		list_running(s, running, sizeof running);
		word = *running ? SAY_SLIP_NOTE_LEFT_ON : SAY_SLIP_NOTE_LEFT;
		break;
	case EV_DRESSING_ON:
		word = e->n ? SAY_SLIP_NOTE_DRESSING : SAY_SLIP_NOTE_DRESSING_DOWN;
		break;
	case EV_CLOCK_WRONG:
		word = e->n ? SAY_SLIP_NOTE_CLOCK_WRONG : SAY_SLIP_NOTE_CLOCK_RIGHT;
		break;
	case EV_RECALLED:
		word = e->thing.lot[0] ? SAY_SLIP_NOTE_RECALLED_LOT : SAY_SLIP_NOTE_RECALLED;
		break;
	default: /* story_add_event() */
		return;
	}
	story_say(s,
	          &(const struct say){.saying = word,
	                              .time = minute_of(e->at),
	                              .item = e->thing.name,
	                              .lot = e->thing.lot,
	                              .list = running,
	                              .reason = e->text},
	          text, sizeof text);
	story_add_note(s, text);
}

/* What was done while the station was away is in its record only where somebody entered it late. */
static void tell_away(struct story *s, const struct event *e)
{
	struct say say = {.time = minute_of(e->at), .from = minute_of(s->heard)};
	char text[240];
	switch ((enum away)e->what) {
	case AWAY_STOPPED:
		say.saying = SAY_SLIP_NOTE_STOPPED;
		break;
	case AWAY_FORCED:
		say.saying = SAY_SLIP_NOTE_FORCED;
		break;
	case AWAY_BACK:
		say.saying = SAY_SLIP_NOTE_BACK;
		break;
	case AWAY_UNSTOPPED:
		say.saying = SAY_SLIP_NOTE_UNSTOPPED;
		break;
	}
	story_say(s, &say, text, sizeof text);
	story_add_note(s, text);
}

/* A wall clock that was turned by less than makes it wrong (count/wall.h), from step to step: times of day before and after do
 * not fit. What was entered late has the time when it was scanned by the clock as it stands now. */
static void tell_clock(struct story *s, const struct event *e)
{
	int64_t turned = wall_turned_ms(s->clocked, e->at);
	char text[240];
	/* What the station itself does in time, round a power cut, shows a clock that was turned while nobody scanned. */
	const int of_station = (e->kind == EV_STARTED || e->kind == EV_ALIVE) && time_is_set(s->clocked);
	if (e->kind != EV_CLOCK_WRONG && !of_station && (!(e->flags & EVENT_FIRST) || e->flags & EVENT_LATE))
		return;
	if (turned && e->kind != EV_CLOCK_WRONG) {
		story_say(s,
		          &(const struct say){.saying = turned > 0 ? SAY_SLIP_NOTE_CLOCK_FORWARD
		                                                   : SAY_SLIP_NOTE_CLOCK_BACK,
		                              .n = (int32_t)(turned / (turned > 0 ? 60000 : -60000)),
		                              .from = minute_of(s->clocked),
		                              .to = minute_of(e->at)},
		          text, sizeof text);
		story_add_note(s, text);
	}
	s->clocked = e->at;
}

static void tell_flags(struct story *s, const struct event *e, const struct sheet *before,
                       const struct sheet *after)
{
	char text[240];
	struct story_steps *all = &s->scans;
	if (!(e->flags & EVENT_FIRST) || !entry_words(e, s, before, after, text, sizeof text))
		return;
	if (!all->all++)
		all->first = e->at;
	all->last = e->at;
	all->late += (e->flags & EVENT_LATE) != 0;
	all->keyed += !(e->flags & EVENT_LATE) && e->flags & EVENT_KEYED;
	if (e->flags & (EVENT_LATE | EVENT_KEYED))
		story_add_entry(s, e->flags & EVENT_LATE ? ENTRY_LATE : ENTRY_KEYED, e, text);
}

void story_add_event(struct story *s, const struct event *e, const struct sheet *before,
                     const struct sheet *after)
{
	tell_clock(s, e);
	switch (e->kind) {
	case EV_JOINED:
	case EV_LEFT:
		tell_person(s, e);
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
		tell_digit(s, e);
		break;
	case EV_COUNT_AGREED:
		tell_count(s, e);
		break;
	case EV_DISCREPANCY:
		tell_discrepancy(s, e, after);
		break;
	case EV_OWED:
	case EV_PAID:
		tell_debt(s, e);
		break;
	case EV_SEARCH_WHY:
		if (s->n_steps)
			snprintf(s->steps[s->n_steps - 1].why, EVENT_TEXT_MAX, "%s", e->text);
		break;
	case EV_SEARCH_STEP: {
		struct story_step *x = ADD(s, steps, STORY_STEPS);
		if (x) {
			*x = (struct story_step){.at = e->at, .done = e->what};
			snprintf(x->text, sizeof x->text, "%.120s", e->text);
		}
		break;
	}
	case EV_AWAY:
		tell_away(s, e);
		break;
	default: /* entry.c says of each kind whether it is a step; the rest of what a slip says is of few */
		tell_item(s, e, before);
		tell_case(s, e);
		tell_note(s, e);
		break;
	}
	tell_flags(s, e, before, after);
	if (e->kind != EV_STARTED)
		s->heard = e->at;
}
