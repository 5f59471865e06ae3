#include "tell/day.h"

#include <string.h>

#include "base/clock.h"

static struct day_case *find(struct day *d, int32_t case_no)
{
	for (int i = d->n; i-- > 0;)
		if (d->cases[i].case_no == case_no)
			return &d->cases[i];
	return NULL;
}

const struct day_case *day_case(const struct day *d, int32_t case_no)
{
	for (int i = d->n; i-- > 0;)
		if (d->cases[i].case_no == case_no)
			return &d->cases[i];
	return NULL;
}

static void open_case(struct day *d, const struct event *e)
{
	if (d->n == DAY_CASES)
		memmove(d->cases, d->cases + 1, (size_t)--d->n * sizeof d->cases[0]);
	d->cases[d->n++] =
	    (struct day_case){.case_no = e->case_no, .room = e->room, .opened_ms = e->at.wall_ms};
}

static void agree(struct day_case *c, const struct event *e)
{
	if (c->n_counts == DAY_COUNTS)
		memmove(c->counts, c->counts + 1, (size_t)--c->n_counts * sizeof c->counts[0]);
	c->counts[c->n_counts++] = (struct day_count){.seq = e->seq,
	                                              .at_ms = e->at.wall_ms,
	                                              .kind = (enum count_kind)e->what,
	                                              .field = e->person,
	                                              .circulating = e->other,
	                                              .recorded_by = e->n};
}

static void search_step(struct day_case *c, const struct event *e)
{
	if (c->n_steps == DAY_STEPS)
		memmove(c->steps, c->steps + 1, (size_t)--c->n_steps * sizeof c->steps[0]);
	c->steps[c->n_steps++] =
	    (struct day_step){.seq = e->seq, .step = e->n, .not_done = e->what == STEP_NOT_DONE};
}

/* UNDO takes back the last step of a case, and names its first event. */
static void take_back(struct day_case *c, int64_t from)
{
	while (c->n_counts && c->counts[c->n_counts - 1].seq >= from)
		c->n_counts--;
	while (c->n_steps && c->steps[c->n_steps - 1].seq >= from)
		c->n_steps--;
}

void day_take(struct day *d, const struct event *e)
{
	if (e->kind == EV_CASE_OPENED) {
		open_case(d, e);
		return;
	}
	struct day_case *c = e->case_no ? find(d, e->case_no) : NULL;
	if (!c)
		return;
	if (e->kind == EV_COUNT_AGREED) {
		agree(c, e);
	} else if (e->kind == EV_SEARCH_STEP) {
		search_step(c, e);
	} else if (e->kind == EV_DISCREPANCY && e->n) {
		c->n_steps = 0;
	} else if (e->kind == EV_UNDONE) {
		take_back(c, e->ref);
	} else if (e->kind == EV_CASE_ENDED) {
		c->end = e->what;
		c->ended_ms = e->at.wall_ms;
	}
}

int day_not_done(const struct day_case *c, int step)
{
	for (int i = c->n_steps; i-- > 0;)
		if (c->steps[i].step == step)
			return c->steps[i].not_done;
	return 0;
}

int day_shows(const struct day_case *c, int64_t wall_ms, int16_t utc_min)
{
	int32_t today = clock_date_number(wall_ms, utc_min);
	return !c->end || clock_date_number(c->opened_ms, utc_min) == today ||
	       clock_date_number(c->ended_ms, utc_min) == today;
}
