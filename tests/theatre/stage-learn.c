/* What the station and the world learn from an event. */
#include <stdio.h>
#include <string.h>

#include "checks.h"
#include "stage-inside.h"

static int is_entered(const struct sheet *s, const struct real *r, int before)
{
	char identity[IDENTITY_MAX];
	int n = 0;
	snprintf(identity, sizeof identity, "%.24s:%d", r->line, (int)r->number);
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (it->place == ITEM_STRUCK || it->place == ITEM_RETURNED || it->place == ITEM_EXTRA)
			continue;
		if (r->by_mark && !r->readable)
			n += it->thing.role == ROLE_FORCEPS && !it->thing.line[0];
		else if (r->number && strcmp(it->thing.identity, identity) == 0)
			return 1;
		else if (!r->number)
			n += strcmp(it->thing.line, r->line) == 0;
	}
	return n > before;
}

static int is_like(const struct real *a, const struct real *b)
{
	return a->of == b->of && !a->number == !b->number && a->readable == b->readable &&
	       strcmp(a->line, b->line) == 0 && (!a->number || (a->by_mark && !a->readable));
}

static void world_learn(struct world *w, const struct sheet *s)
{
	int op = world_of_case(w, s->case_no);
	for (int i = 0; op >= 0 && i < w->n_things; i++) {
		struct real *r = &w->things[i];
		int before = 0;
		for (int k = 0; k < i; k++)
			before += w->things[k].where != AWAY && is_like(&w->things[k], r);
		if (r->of == op && r->where != AWAY)
			r->entered = (uint8_t)is_entered(s, r, before);
	}
}

/* A case is opened for the operation that goes on in the room, by a scan that was made there. */
static void learn_case(struct stage *g, const struct event *v, const struct entry *e)
{
	int room = room_index(v->room), op = room >= 0 ? g->current[room] : -1;
	if (v->kind == EV_CASE_OPENED && op >= 0 && op == e->operation && !g->world.operations[op].case_no)
		g->world.operations[op].case_no = v->case_no;
	op = world_of_case(&g->world, v->case_no);
	if (op < 0)
		return;
	struct operation *o = &g->world.operations[op];
	if (v->kind == EV_DIGIT_OFF) {
		struct root *root = &o->roots[v->digit];
		root->station_off_ms = g->true_ms;
		root->end_slack_ms = root->bands ? 0 : g->true_ms - root->off_ms;
	}
	if (v->kind == EV_CASE_ENDED) {
		int index = station_sheet_of_case(&g->st, v->case_no);
		o->ended = v->what;
		if (index >= 0 && !g->quiet)
			check_ended(g, op, &g->st.sheets[index], (enum case_end)v->what);
	}
}

static void learn_record(struct stage *g, const struct event *v)
{
	if (v->kind == EV_ITEM_USED && g->n_used < USED_MAX) {
		snprintf(g->used[g->n_used].identity, IDENTITY_MAX, "%s", v->thing.identity);
		g->used[g->n_used].case_no = v->case_no;
		g->used[g->n_used++].back = v->n == 1;
	}
	if (v->kind == EV_SLIP_QUEUED && g->n_slips < SLIPS_MAX) {
		int op = world_of_case(&g->world, v->case_no);
		g->slips[g->n_slips].number = v->n;
		g->slips[g->n_slips].case_no = v->case_no;
		g->slips[g->n_slips].room = v->room;
		g->slips[g->n_slips].kind = v->what;
		g->slips[g->n_slips++].seen = 0;
		if (op >= 0)
			g->world.operations[op].slips++;
	}
	if (v->kind == EV_SLIP_STATE && v->what == SLIP_SEEN)
		for (int i = 0; i < g->n_slips; i++)
			if (g->slips[i].number == v->n && !g->slips[i].seen) {
				int op = world_of_case(&g->world, g->slips[i].case_no);
				g->slips[i].seen = 1;
				if (op >= 0)
					g->world.operations[op].slips--;
			}
}

void stage_keep(struct stage *g, const struct event *decided, const struct entry *e)
{
	struct event v = *decided;
	v.seq = ++g->seq;
	learn_case(g, &v, e);
	if (station_apply(&g->st, &v) < 0)
		stage_fail(g, check_name(CHECK_APPLIES), "%s does not apply", event_name(v.kind));
	learn_record(g, &v);
	if (v.kind == EV_SLIP_QUEUED) { /* and the paper comes out */
		struct event out = {.kind = EV_SLIP_STATE,
		                    .at = v.at,
		                    .room = v.room,
		                    .case_no = v.case_no,
		                    .n = v.n,
		                    .what = SLIP_DONE,
		                    .other = v.other};
		stage_keep(g, &out, e);
	}
}

void stage_learn_items(struct stage *g)
{
	for (int i = 0; i < SHEETS_MAX; i++)
		if (g->st.sheets[i].case_no)
			world_learn(&g->world, &g->st.sheets[i]);
}
