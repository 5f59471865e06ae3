#include "stage.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "checks.h"
#include "stage-inside.h"
#include "variants.h"

const int32_t room_numbers[ROOMS] = {1, 3};

int room_index(int32_t room)
{
	for (int i = 0; i < ROOMS; i++)
		if (room_numbers[i] == room)
			return i;
	return -1;
}
const struct sheet *stage_sheet(const struct stage *g, int32_t room)
{
	static const struct sheet none;
	int i = station_sheet_of_room(&g->st, room);
	if (i < 0)
		i = station_suspended_in(&g->st, room);
	return i < 0 ? &none : &g->st.sheets[i];
}

void stage_fail(struct stage *g, const char *check, const char *format, ...)
{
	va_list args;
	if (g->failure.check || (g->only && strcmp(g->only, check) != 0))
		return;
	g->failure.check = check;
	va_start(args, format);
	vsnprintf(g->failure.text, sizeof g->failure.text, format, args);
	va_end(args);
}

/* --- scanners ----------------------------------------------------------------------------------- */

const char *scanner_name(int scanner)
{
	static const char *const names[SCANNERS] = {"hand-1",  "camera-1", "hand-3",   "camera-3",
	                                            "spare-1", "spare-3",  "drawer-1", "drawer-3"};
	return names[scanner];
}

int32_t scanner_home(int scanner)
{
	static const int32_t rooms[SCANNERS] = {1, 1, 3, 3, 1, 3, 1, 3};
	return rooms[scanner];
}

int32_t stage_works_for(const struct stage *g, int scanner)
{
	return station_scanner_room(&g->st, scanner_name(scanner), scanner_home(scanner), g->now);
}

/* --- time --------------------------------------------------------------------------------------- */

static void tick(struct stage *g)
{
	const struct entry none = {.operation = -1};
	for (int again = 0; again < 40; again++) {
		struct input in = {.act = ACT_TICK, .at = g->now};
		static const struct sheet no_sheet;
		decide(&g->st, &in, &g->out);
		if (g->variant && g->variant->spoil)
			g->variant->spoil(&g->out, &in, &no_sheet);
		if (!g->out.count)
			break;
		check_tick(g);
		int alive = g->out.events[0].kind == EV_ALIVE;
		for (int i = 0; i < g->out.count; i++)
			stage_keep(g, &g->out.events[i], &none);
		if (alive)
			break;
	}
	g->out.count = 0;
	check_tick(g);
}

/* The daemon ticks each second; here once a minute, and at the end, is enough. */
void stage_wait(struct stage *g, int64_t until_ms)
{
	while (g->true_ms < until_ms) {
		int64_t ms = until_ms - g->true_ms < 60000 ? until_ms - g->true_ms : 60000;
		g->true_ms += ms;
		g->now.boot_ms += ms;
		g->now.wall_ms += ms;
		if (ms >= 1000)
			tick(g);
	}
}

/* Whether the clock on the wall was set since the station last kept an event: it cannot know of that. */
static int wall_was_set_unseen(const struct stage *g)
{
	int64_t boot = g->now.boot_ms - g->st.last.boot_ms, wall = g->now.wall_ms - g->st.last.wall_ms;
	return g->st.last.boot == g->now.boot && (wall - boot > 1000 || boot - wall > 1000);
}

static void power_goes(struct stage *g, int64_t off_ms)
{
	const struct entry none = {.operation = -1};
	for (int i = 0; wall_was_set_unseen(g) && i < g->world.n_operations; i++)
		g->world.operations[i].wall_set = 1;
	g->true_ms += off_ms;
	g->now.wall_ms += off_ms;
	g->now.boot++;
	g->now.boot_ms = 5000;
	memset(&g->reads, 0, sizeof g->reads);
	stage_keep(g, &(struct event){.kind = EV_STARTED, .at = g->now, .n = g->now.boot}, &none);
	for (int i = 0; i < ROOMS; i++) { /* what is held is asked about again */
		struct input in = {.act = ACT_STORED, .at = g->now, .room = room_numbers[i]};
		decide(&g->st, &in, &g->out);
		for (int k = 0; k < g->out.count; k++)
			stage_keep(g, &g->out.events[k], &none);
	}
	tick(g);
}

/* --- entries ------------------------------------------------------------------------------------ */

static void thing_moves(struct stage *g, const struct entry *e)
{
	struct real *r = &g->world.things[e->thing];
	if (e->where == ON_DIGIT && r->where != ON_DIGIT)
		world_put_on(&g->world, e->thing, e->digit, g->true_ms);
	else if (r->where == ON_DIGIT && e->where != ON_DIGIT) {
		world_take_off(&g->world, e->thing, (enum whole)e->whole, g->true_ms);
		r->where = e->where;
	} else {
		r->where = e->where;
		r->whole = e->whole;
		if (e->where == LOST)
			r->digit = e->digit; /* where it will turn up */
	}
	if (e->n)
		r->here = (int16_t)e->n;
}

static void change(struct stage *g, const struct entry *e)
{
	struct operation *o = &g->world.operations[e->operation];
	switch ((enum change)e->whole) {
	case CHANGE_MORE:
		o->more_to_come = (uint8_t)e->n;
		return;
	case CHANGE_POINTS:
		o->points_ok = (uint8_t)e->n;
		return;
	case CHANGE_RELIEVED:
		world_relieve(o, stage_sheet(g, o->room));
		return;
	case CHANGE_LEAVES:
		o->leaves = (int32_t)e->n;
		o->comes = 4;
		return;
	case CHANGE_CURRENT:
		g->current[room_index(o->room)] = (int)e->n;
		return;
	case CHANGE_CONTRADICTED:
		for (int i = 0; i < g->world.n_operations; i++)
			if (g->world.operations[i].causes[CAUSE_ELSEWHERE])
				g->world.operations[i].causes[CAUSE_ELSEWHERE]--;
		return;
	case CHANGE_DISHONEST:
		o->honest = 0;
		return;
	}
}

void stage_do(struct stage *g, const struct entry *e)
{
	if (g->n_list == ENTRIES_MAX || g->failure.check)
		return;
	struct entry *kept = &g->list[g->n_list++];
	*kept = *e;
	stage_wait(g, e->at_ms);
	if (e->cause)
		world_cause(&g->world, e->operation, (enum cause)e->cause);
	switch ((enum entry_kind)e->kind) {
	case ENTRY_READ:
		if (e->late)
			stage_store(g, e);
		else
			stage_read(g, kept);
		return;
	case ENTRY_SENT:
		stage_send(g, e);
		return;
	case ENTRY_MOVES:
		thing_moves(g, e);
		return;
	case ENTRY_POWER:
		power_goes(g, e->n);
		return;
	case ENTRY_WALL:
		g->now.wall_ms += e->n;
		for (int i = 0; i < g->world.n_operations; i++)
			g->world.operations[i].wall_set |= e->whole;
		return;
	case ENTRY_CHANGES:
		change(g, e);
		return;
	case ENTRY_SAYS: /* what people do that no scanner sees: a cause, or a thing that they believe is counted in */
		if (e->thing >= 0)
			g->world.things[e->thing].no_code = 1;
		return;
	}
}
