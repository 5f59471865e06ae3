#include "snapshot.h"
#include "decide/stored-enter.h"
#include "known.h"

#include <stdlib.h>
#include <string.h>

struct snapshot *snapshot_take(const struct world *w)
{
	const struct station *st = &w->station;
	int before = world_has_card(w, CARD_UNDO) && st->undo[0].seq, other = w->plan->other_room;
	struct snapshot *s = malloc(sizeof *s + sizeof *s->more * (size_t)(before + other));
	if (!s)
		exit(1);
	*s = (struct snapshot){.idle_asked = st->idle_asked[0],
	                       .has_before = (uint8_t)before,
	                       .has_other = (uint8_t)other,
	                       .idle_n = st->idle_n[0],
	                       .idle_copy = st->idle_copy[0],
	                       .idle_last = st->idle_last[0],
	                       .undo = before ? st->undo[0] : (struct step){0},
	                       .n_held = st->n_held,
	                       .n_after = st->n_after,
	                       .sheet = st->sheets[0]};
	if (st->sheets[0].case_no) /* it changes nothing there, and would be as many states again */
		s->n_after = 0;
	else if (st->n_after > SNAPSHOT_AFTER_MAX)
		exit(1);
	memcpy(s->after, st->after, sizeof *s->after * (size_t)s->n_after);
	memcpy(s->held, st->held, sizeof *s->held * (size_t)st->n_held);
	if (before)
		s->more[0] = st->before[0];
	if (other)
		s->more[before] = st->sheets[1];
	return s;
}

void snapshot_begin(struct world *w)
{
	struct station *st = &w->station;
	for (int i = 0; i < SHEETS_MAX; i++)
		if (st->sheets[i].case_no)
			memset(&st->sheets[i], 0, sizeof st->sheets[i]);
	st->undo[0] = st->undo[1] = (struct step){0};
	st->idle_asked[0] = 0;
	st->idle_n[0] = st->idle_last[0] = 0;
	st->idle_copy[0] = 0;
	st->last = w->inputs[0].in.at;
	st->n_owed = st->n_held = st->n_after = 0;
	st->last_case_no = 0;
	st->n_unseen = 1;
	st->last_slip_no = 1;
	st->unseen[0] = (struct slip){.number = 1,
	                              .case_no = 90,
	                              .room = 1,
	                              .kind = SLIP_RECONCILIATION,
	                              .state = SLIP_WRITTEN,
	                              .copy = w->plan->copies ? 2 : 1};
}

void snapshot_put(const struct snapshot *s, struct world *w)
{
	struct station *st = &w->station;
	snapshot_begin(w);
	st->sheets[0] = s->sheet;
	st->last_case_no = s->sheet.case_no;
	st->idle_asked[0] = s->idle_asked;
	st->idle_n[0] = s->idle_n;
	st->idle_copy[0] = s->idle_copy;
	st->idle_last[0] = s->idle_last;
	st->undo[0] = s->undo;
	st->n_held = s->n_held;
	st->n_after = s->n_after;
	memcpy(st->after, s->after, sizeof *s->after * (size_t)s->n_after);
	memcpy(st->held, s->held, sizeof *s->held * (size_t)s->n_held);
	if (s->has_before)
		st->before[0] = s->more[0];
	if (s->has_other) {
		st->sheets[1] = s->more[s->has_before];
		if (st->sheets[1].case_no > st->last_case_no)
			st->last_case_no = st->sheets[1].case_no;
	}
}

int snapshot_apply(struct world *w, struct outcome *out, struct sheet *at_end, int *ended)
{
	struct station *st = &w->station;
	int64_t first = 100 + (st->n_held ? st->held[st->n_held - 1].seq : 0);
	int bad = 0;
	*ended = 0;
	for (int i = 0; i < out->count; i++) {
		struct event *e = &out->events[i];
		e->seq = first + i;
		if (e->kind == EV_CASE_ENDED && e->case_no == st->sheets[0].case_no) {
			*at_end = st->sheets[0];
			*ended = 1;
		}
		int r = station_apply(st, e);
		if (r < 0 && !bad)
			bad = r;
	}
	return bad;
}

void snapshot_scan(struct world *w, const struct input *in, struct outcome *out)
{
	static struct sheet at_end;
	struct input held;
	int ended;
	decide_known(&w->station, in, out);
	int enter = out->enter;
	snapshot_apply(w, out, &at_end, &ended);
	for (; enter > 0 && stored_input(&w->station, 1, w->inputs[0].in.at, &held); enter--) {
		held.more = enter > 1;
		decide_known(&w->station, &held, out);
		snapshot_apply(w, out, &at_end, &ended);
	}
}
