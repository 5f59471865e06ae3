#include "tell/story.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "tell/entry.h"
#include "tell/story-event.h"

/* The events of a case, and which of them were taken back. */
struct telling {
	struct story *story;
	struct station *replay; /* follows the events, undo and power cuts included */
	const struct event *events;
	uint8_t *undone;
	int count;
};

/* A step is the event that UNDO names and what followed it up to the next step, but for what befell the station. */
/* What came meanwhile and is of no scan is not undone with one. */
static int came_by_itself(enum event_kind kind)
{
	return kind == EV_AWAY || kind == EV_CLOCK_WRONG || kind == EV_RECALLED || kind == EV_REMINDED;
}

static void mark_undone(struct telling *t, int undo)
{
	for (int i = 0; i < undo; i++) {
		if (t->events[i].seq != t->events[undo].ref)
			continue;
		for (int k = i; k < undo && (k == i || !(t->events[k].flags & EVENT_FIRST)); k++)
			t->undone[k] = !came_by_itself(t->events[k].kind);
	}
}

static void minutes_text(const struct story *s, int64_t ms, int at_least, char *out, size_t size)
{
	story_say(s,
	          &(const struct say){.saying = at_least ? SAY_SLIP_AT_LEAST : SAY_SLIP_MINUTES,
	                              .n = (int32_t)(ms / 60000)},
	          out, size);
}

/* The minutes of a stretch come from its clock, not from the difference of two wall times (rule 14). */
static void tell_clocks(struct telling *t, const struct sheet *sheet, struct moment now)
{
	for (int i = 0; i < sheet->n_digits; i++) {
		struct digit own = sheet->digits[i], *d = &own;
		struct story_digit *sd = story_digit_of(t->story, d->number);
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
		story_say(t->story, &stretch, x->minutes, sizeof x->minutes);
	}
}

/* A slip that was printed is in somebody's hand: a later one names it. */
static void tell_withdrawn(struct telling *t, int first, const struct event *undo)
{
	char text[STORY_NOTE_MAX];
	for (const struct event *e = &t->events[first];
	     e < undo && (e == &t->events[first] || !(e->flags & EVENT_FIRST)); e++)
		if (e->kind == EV_SLIP_QUEUED && e->what == SLIP_DISCREPANCY) {
			story_say(t->story,
			          SAY(SLIP_NOTE_WITHDRAWN, .slip = e->n,
			              .time = clock_minute_of_day(e->at.wall_ms, e->at.utc_min)),
			          text, sizeof text);
			story_add_note(t->story, text);
		}
}

static void tell_undone(struct telling *t, const struct event *e, const struct sheet *sheet)
{
	char text[240], what[200];
	for (int i = 0; i < t->count; i++)
		if (t->events[i].seq == e->ref &&
		    entry_words(&t->events[i], t->story, sheet, sheet, what, sizeof what)) {
			story_say(t->story, SAY(SLIP_TAKEN_BACK, .words = what), text, sizeof text);
			story_add_entry(t->story, ENTRY_CORRECTED, e, text);
			tell_withdrawn(t, i, e);
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
	story_say(t->story, SAY(SLIP_NOTE_NOT_FOLLOWED, .n = (int32_t)e->seq), text, sizeof text);
	story_add_note(t->story, text);
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
		story_add_event(t->story, e, &before, after);
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
