/* Every state of a small room, once, and every step out of it.
 *
 * The walk is a search in breadth: a queue of states, each a snapshot of the station with the way that led to it. Every
 * scan of the plan is decided in each, the events applied, the rules checked, and the state that comes out is looked up in
 * a set by its key (key.h: what a decision can read, in an order that does not depend on how it came about, with times as
 * their differences). A new one goes to the end of the queue. Only the keys are remembered of states that were done, which
 * is what lets 420,000 of them fit; so a key that leaves out something that a decision reads would hide states, and of one
 * key in SAMPLE the first state is kept, with which the next three that are otherwise must agree in all that is said.
 * From each state the ends (ends.h) then follow what the station asks for, for each truth, to the end of the case. A room
 * is a process of its own; a saboteur is the same walk with a decision that was changed on its way out, and must be noticed.
 */
#include "walk-run.h"

#include <stdio.h>
#include <stdlib.h>

#include "known.h"

uint32_t walk_remember(struct walk *w, uint32_t parent, int input)
{
	if ((w->n_path & (w->n_path - 1)) == 0) {
		w->path = realloc(w->path, sizeof *w->path * (w->n_path ? w->n_path * 2 : 1));
		if (!w->path)
			exit(1);
	}
	w->path[w->n_path] = (struct path_step){parent, (uint8_t)input};
	return w->n_path++;
}

void walk_tell_path(const struct walk *w, uint32_t at)
{
	if (w->path[at].parent != at)
		walk_tell_path(w, w->path[at].parent);
	if (at)
		printf("    %s\n", w->world.inputs[w->path[at].input].name);
}

void walk_push(struct walk *w, uint32_t parent)
{
	struct node *n = malloc(sizeof *n);
	if (!n)
		exit(1);
	*n = (struct node){NULL, snapshot_take(&w->world), parent};
	if (w->last)
		w->last->later = n;
	else
		w->first = n;
	w->last = n;
}

static void node_free(struct node *n)
{
	free(n->state);
	free(n);
}

static void walk_pop(struct walk *w)
{
	struct node *n = w->first;
	w->first = n->later;
	if (!w->first)
		w->last = NULL;
	node_free(n);
}

void walk_fail(struct walk *w, uint32_t broken, uint32_t parent, int input, const struct outcome *out)
{
	uint32_t fresh = broken & ~w->broken;
	w->broken |= broken;
	if (w->quiet || !fresh)
		return;
	for (int r = 1; r <= RULE_MAX; r++)
		if (fresh >> r & 1)
			printf("RULE %d IS BROKEN: %s\n", r, rule_text((enum rule)r));
	printf("  by these scans:\n");
	walk_tell_path(w, parent);
	printf("    %s\n  the station says: %s | next: %s\n", w->world.inputs[input].name, out->reply.said,
	       out->reply.next.words);
}

int key_is_same(struct key a, struct key b)
{
	return a.a == b.a && a.b == b.b;
}

void walk_free(struct walk *w)
{
	keys_free(&w->visited);
	keys_free(&w->samples);
	for (uint32_t i = 0; i < w->n_sampled; i++)
		free(w->sampled[i]);
	free(w->sampled);
	while (w->first)
		walk_pop(w);
	free(w->path);
	ends_free(w->ends);
	world_deinit(&w->world);
}

static void tell_dead_end(struct walk *w, const struct node *n)
{
	if (ends_check(w->ends, n->state)) {
		w->broken |= 1u << RULE_NO_DEAD_END;
		printf("  the state was reached by:\n");
		walk_tell_path(w, n->parent);
	}
}

static void scan_at_the_beginning(struct world *w, int room, struct input in)
{
	static struct outcome out;
	static struct sheet at_end;
	int ended;
	in.at = w->inputs[0].in.at;
	in.room = in.card_room = room;
	decide_known(&w->station, &in, &out);
	snapshot_apply(w, &out, &at_end, &ended);
}

static void begin_team(struct world *w, int room)
{
	if (w->plan->single) {
		scan_at_the_beginning(w, room, (struct input){.act = ACT_BADGE, .number = 1});
		return;
	}
	scan_at_the_beginning(w, room, (struct input){.act = ACT_CARD, .card = CARD_NEW_CASE});
	scan_at_the_beginning(w, room, (struct input){.act = ACT_BADGE, .number = 2});
	scan_at_the_beginning(w, room, (struct input){.act = ACT_BADGE, .number = 3});
}

static void begin(struct world *w)
{
	const struct room_plan *p = w->plan;
	snapshot_begin(w);
	for (int room = 1; p->begin >= BEGIN_TEAM && room <= 1 + p->other_room; room++)
		begin_team(w, room);
	for (int i = 0; p->begin >= BEGIN_COUNTED && i < w->n_inputs; i++)
		if (w->inputs[i].in.act == ACT_THING && !w->inputs[i].in.known.used_in)
			scan_at_the_beginning(w, 1, w->inputs[i].in);
	if (p->begin >= BEGIN_COUNTED && !p->single)
		scan_at_the_beginning(w, 1, (struct input){.act = ACT_BADGE, .number = 3});
	if (p->begin >= BEGIN_ON)
		scan_at_the_beginning(w, 1, (struct input){.act = ACT_DIGIT, .digit = p->thumb ? 1 : 2});
	w->station.undo[0] = (struct step){0};
}

/* Visits everything, or stops at the limit or, with a saboteur, when his rule is found broken. 1: everything.
 */
int walk_run(struct walk *w, const struct room_plan *plan)
{
	int is_new;
	world_init(&w->world, plan);
	begin(&w->world);
	keys_at(&w->visited, key_of_state(&w->world, NULL), &is_new);
	walk_push(w, walk_remember(w, 0, 0));
	while (w->first) {
		struct node *n = w->first;
		for (int i = 0; i < w->world.n_inputs; i++) {
			walk_step(w, n, i);
			if (w->saboteur && w->broken >> w->saboteur->rule & 1)
				return 0;
		}
		if (!w->digest)
			walk_restart(w, n);
		if (w->ends)
			tell_dead_end(w, n);
		walk_pop(w);
		if (w->limit && w->steps >= w->limit)
			return 0;
	}
	return 1;
}
