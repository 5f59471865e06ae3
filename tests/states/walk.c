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
#include "walk.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "decide/next.h"
#include "decide/stored-enter.h"
#include "digest.h"
#include "ends.h"
#include "key.h"
#include "known.h"
#include "snapshot.h"

#define DIGEST_STEPS 10000 /* a room */
#define SAMPLE 10          /* every so many-th state is compared with others of its key */

/* --- the walk ----------------------------------------------------------------------------------- */

struct node {
	struct node *later;
	struct snapshot *state;
	uint32_t parent; /* in `path`, for telling how the state was reached */
};

struct path_step {
	uint32_t parent;
	uint8_t input;
};

struct walk {
	struct world world;
	struct keys visited;
	struct keys samples;
	struct snapshot **sampled;
	uint32_t n_sampled;
	uint64_t compared;
	struct node *first, *last;
	struct path_step *path;
	uint32_t n_path;
	uint64_t steps, limit;
	uint32_t broken; /* rules found broken, as bits */
	const struct saboteur *saboteur;
	struct ends *ends; /* where no dead end is looked for, NULL */
	uint64_t *digest;  /* of all that is decided, or NULL */
	int quiet;
};

static uint32_t remember(struct walk *w, uint32_t parent, int input)
{
	if ((w->n_path & (w->n_path - 1)) == 0) {
		w->path = realloc(w->path, sizeof *w->path * (w->n_path ? w->n_path * 2 : 1));
		if (!w->path)
			exit(1);
	}
	w->path[w->n_path] = (struct path_step){parent, (uint8_t)input};
	return w->n_path++;
}

static void tell_path(const struct walk *w, uint32_t at)
{
	if (w->path[at].parent != at)
		tell_path(w, w->path[at].parent);
	if (at)
		printf("    %s\n", w->world.inputs[w->path[at].input].name);
}

static void push(struct walk *w, uint32_t parent)
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

static void pop(struct walk *w)
{
	struct node *n = w->first;
	w->first = n->later;
	if (!w->first)
		w->last = NULL;
	node_free(n);
}

static void fail(struct walk *w, uint32_t broken, uint32_t parent, int input, const struct outcome *out)
{
	uint32_t fresh = broken & ~w->broken;
	w->broken |= broken;
	if (w->quiet || !fresh)
		return;
	for (int r = 1; r <= RULE_MAX; r++)
		if (fresh >> r & 1)
			printf("RULE %d IS BROKEN: %s\n", r, rule_text((enum rule)r));
	printf("  by these scans:\n");
	tell_path(w, parent);
	printf("    %s\n  the station says: %s | next: %s\n", w->world.inputs[input].name, out->reply.said,
	       out->reply.next.words);
}

static int is_same_key(struct key a, struct key b)
{
	return a.a == b.a && a.b == b.b;
}

/* --- two states of one key ---------------------------------------------------------------------- */

static void add_skeleton(char *out, size_t size, size_t *used, const char *text)
{
	for (; *text && *used + 1 < size; text++)
		out[(*used)++] = *text;
	out[*used] = 0;
}

/* Where a name begins at `text`: its length, and what stands for it. */
static size_t name_at(const char *text, const char **instead)
{
	for (int d = 1; d <= DIGITS_MAX + 1; d++) {
		size_t n = strlen(own_digit_name(d));
		if (strncasecmp(text, own_digit_name(d), n) == 0) {
			*instead = "DIGIT";
			return n;
		}
	}
	*instead = "CIRC";
	return strncmp(text, "RELIEF", 6) == 0 ? 6 : 0;
}

/* Words without names and numbers. */
static void skeleton(const char *text, char *out, size_t size)
{
	size_t used = 0;
	out[0] = 0;
	while (*text) {
		const char *instead;
		size_t n = name_at(text, &instead);
		if (!n && (n = strspn(text, "0123456789")))
			instead = "#";
		if (!n) {
			char one[2] = {*text, 0};
			add_skeleton(out, size, &used, one);
			text++;
			continue;
		}
		add_skeleton(out, size, &used, instead);
		text += n;
	}
}

static int words_differ(const char *a, const char *b)
{
	static char x[SAID_MAX * 2], y[SAID_MAX * 2];
	skeleton(a, x, sizeof x);
	skeleton(b, y, sizeof y);
	return strcmp(x, y) != 0;
}

static int outcomes_differ(const struct outcome *a, const struct outcome *b)
{
	const struct next *x = &a->reply.next, *y = &b->reply.next;
	int differ = a->reply.verdict != b->reply.verdict || a->count != b->count || x->n_deeds != y->n_deeds;
	for (int i = 0; !differ && i < a->count; i++)
		differ = a->events[i].kind != b->events[i].kind || a->events[i].what != b->events[i].what;
	for (int i = 0; !differ && i < x->n_deeds; i++)
		differ = x->deeds[i].kind != y->deeds[i].kind || x->deeds[i].truth != y->deeds[i].truth ||
		         x->deeds[i].n != y->deeds[i].n || x->deeds[i].then != y->deeds[i].then;
	return differ || words_differ(a->reply.said, b->reply.said) || words_differ(x->words, y->words);
}

static int input_answer_of(const struct input *in)
{
	return in->act == ACT_CARD || in->act == ACT_BADGE;
}

struct tried {
	struct key inputs[INPUTS_MAX];
	struct key before, after;
	struct outcome out;
};

/* Refused, or entered once already: nothing changes. */
static int is_without_effect(const struct tried *t)
{
	int effect = !is_same_key(t->before, t->after);
	for (int i = 0; i < t->out.count; i++)
		effect |= t->out.events[i].kind != EV_REFUSED;
	return !effect;
}

static void name_inputs(struct world *w, const struct snapshot *s, struct tried *t)
{
	struct names names;
	snapshot_put(s, w);
	t->before = key_of_state(w, &names);
	for (int i = 0; i < w->n_inputs; i++)
		t->inputs[i] = key_of_input(w, &names, &w->inputs[i].in);
}

static void settle_rooms(struct world *w);

static void try(struct world *w, const struct snapshot *s, int input, struct tried *t)
{
	snapshot_put(s, w);
	snapshot_scan(w, &w->inputs[input].in, &t->out);
	settle_rooms(w);
	t->after = key_of_state(w, NULL);
}

static void tell_difference(const struct walk *w, uint32_t parent, int input, const struct tried *a,
                            const struct tried *b)
{
	printf("TWO STATES OF ONE KEY DIFFER, by %s after:\n", w->world.inputs[input].name);
	tell_path(w, parent);
	printf("  one says: %s | next: %s\n  the other: %s | next: %s\n  what follows is %s\n",
	       a->out.reply.said, a->out.reply.next.words, b->out.reply.said, b->out.reply.next.words,
	       is_same_key(a->after, b->after) ? "the same" : "another state");
}

/* Two sheets that the key says are one state must be answered alike, to every input, and lead to states that are one
 * again. The second state is the one that the world is in. */
static void compare_states(struct walk *w, const struct snapshot *first, uint32_t parent)
{
	static struct tried a, b;
	struct snapshot *second = snapshot_take(&w->world);
	name_inputs(&w->world, first, &a);
	name_inputs(&w->world, second, &b);
	for (int i = 0; i < w->world.n_inputs; i++) {
		int k = 0;
		while (k < w->world.n_inputs && !is_same_key(a.inputs[i], b.inputs[k]))
			k++;
		if (k == w->world.n_inputs) {
			printf("NO INPUT OF THE OTHER STATE IS LIKE %s\n", w->world.inputs[i].name);
			w->broken |= 1;
			break;
		}
		try(&w->world, first, i, &a);
		try(&w->world, second, k, &b);
		if (!outcomes_differ(&a.out, &b.out) && is_same_key(a.after, b.after))
			continue;
		if (is_without_effect(&a) && is_without_effect(&b) && input_answer_of(&w->world.inputs[i].in))
			continue;
		if (!(w->broken & 1))
			tell_difference(w, parent, i, &a, &b);
		w->broken |= 1;
	}
	w->compared++;
	snapshot_put(second, &w->world);
	free(second);
}

/* The world is in a state that was visited already (or not: is_new). */
static void sample(struct walk *w, struct key key, int is_new, uint32_t parent)
{
	int first;
	if (key.a % SAMPLE || w->saboteur || w->digest)
		return;
	uint32_t *at = keys_at(&w->samples, key, &first);
	if (is_new && first) {
		w->sampled = realloc(w->sampled, sizeof *w->sampled * (w->n_sampled + 1));
		if (!w->sampled)
			exit(1);
		w->sampled[w->n_sampled++] = snapshot_take(&w->world);
		*at = w->n_sampled;
	} else if (*at) {
		const struct snapshot *s = w->sampled[(*at & 0xffffff) - 1];
		if (*at >> 24 < 3 && memcmp(&s->sheet, &w->world.station.sheets[0], sizeof s->sheet) != 0) {
			*at += 1 << 24;
			compare_states(w, s, parent);
		}
	}
}

/* --- one step ----------------------------------------------------------------------------------- */

/* Room 1's sheet stands first; which place the station gave it is of no interest. */
static void settle_rooms(struct world *w)
{
	struct station *st = &w->station;
	if (!w->plan->other_room)
		return;
	if (st->sheets[0].case_no && st->sheets[0].room == 2) {
		struct sheet first = st->sheets[0];
		st->sheets[0] = st->sheets[1];
		st->sheets[1] = first;
	}
}

static int sheet_of(const struct world *w, const struct input *in, const struct outcome *out)
{
	int32_t room = in->act == ACT_TICK && out->count ? out->events[0].room : in->room;
	return w->plan->other_room && room == 2;
}

/* MINUTES AGO and offcuts have no end: of one stretch it is scanned twice, and a tourniquet has three pieces. */
static int is_beyond(const struct world *w, const struct input *in)
{
	const struct sheet *s = &w->station.sheets[0];
	int ago = in->act == ACT_CARD && in->card >= CARD_1_MINUTE_AGO && in->card <= CARD_10_MINUTES_AGO;
	int offcut = in->act == ACT_CARD && in->card == CARD_OFFCUT, beyond = 0;
	for (int i = 0; i < s->n_digits; i++)
		beyond |= ago && s->digits[i].known_ms >= 10 * 60000;
	for (int i = 0; i < s->n_items; i++)
		beyond |= offcut && s->items[i].pieces >= 3;
	return beyond;
}

static int is_twice_on(const struct sheet *s)
{
	for (int i = 0; i < s->n_items; i++)
		for (int k = 0; k < i; k++)
			if (item_counts(&s->items[i]) && item_counts(&s->items[k]) &&
			    s->items[i].thing.identity[0] &&
			    strcmp(s->items[i].thing.identity, s->items[k].thing.identity) == 0)
				return 1;
	return 0;
}

/* A question of the room beside one of its case, one thing twice on a sheet, and all that the sheets break together. */
static uint32_t station_check(const struct station *st)
{
	uint32_t broken = rule_check_all(st) | (is_twice_on(&st->sheets[0]) ? 1u << RULE_ONE_SHEET : 0);
	if (st->sheets[0].case_no && !st->sheets[0].suspended && st->idle_asked[0])
		broken |= 1u << RULE_ONE_QUESTION;
	return broken;
}

/* What a reply says next is what the state itself asks for, a refusal's too. */
static uint32_t check_next(const struct world *w, const struct input *in, const struct outcome *out)
{
	static struct next again;
	const struct station *st = &w->station;
	if (in->act == ACT_TICK || out->count == 0 || st->sheets[1].case_no || st->sheets[0].suspended ||
	    st->n_held)
		return 0;
	next_step(st, &st->sheets[0], in->room, in->at, &again);
	int differ =
	    strcmp(again.words, out->reply.next.words) != 0 || again.n_deeds != out->reply.next.n_deeds;
	return differ || !again.n_deeds ? 1u << RULE_NO_DEAD_END : 0;
}

/* Rule 22: the same card or badge right after itself enters nothing; and of things alike that are asked for together
 * INTACT does not take one. */
static uint32_t check_one_read(const struct step_taken *t)
{
	const struct input *in = t->in;
	const struct sheet *s = t->before;
	int32_t answer = in->act == ACT_CARD ? in->card : in->act == ACT_BADGE ? -in->number : 0;
	int running = s->case_no && !s->suspended && !in->held, item = sheet_next_open(s);
	int together = s->final == FINAL_ASKING && s->asked.what != Q_FOUND && item &&
	               sheet_alike_open(s, item) > 1 && s->items[item - 1].pieces == 1 &&
	               s->items[item - 1].thing.role == ROLE_TOURNIQUET;
	int bad = running && answer && answer == s->last_answer && in->card_room == in->room && t->out->count;
	for (int i = 0; i < t->out->count; i++)
		bad |= together && answer == CARD_INTACT && t->out->events[i].kind == EV_ITEM_SHOWN;
	return bad ? 1u << RULE_ONE_READ : 0;
}

/* Rule 24: a scan in one room takes from the other's sheet the thing that was scanned, and closes what was looked for
 * there; nothing else. */
static uint32_t check_innocence(const struct step_taken *t)
{
	for (int i = 0; i < t->out->count; i++) {
		const struct event *e = &t->out->events[i];
		int other = e->case_no != t->before->case_no && e->case_no != t->after->case_no &&
		            station_sheet_of_case(&t->world->station, e->case_no) >= 0;
		if (other && t->world->plan->other_room && e->kind != EV_ITEM_STRUCK &&
		    e->kind != EV_DISCREPANCY && e->kind != EV_PAID)
			return 1u << RULE_INNOCENCE;
	}
	return 0;
}

static uint32_t step_all_checks(struct walk *w, const struct step_taken *taken)
{
	uint32_t broken = step_check(taken) | station_check(&w->world.station) | check_one_read(taken) |
	                  check_innocence(taken);
	if (taken->out->reply.verdict == VERDICT_REFUSED || w->steps % 16 == 0 || w->saboteur)
		broken |= check_next(&w->world, taken->in, taken->out);
	return broken;
}

/* While a case is suspended the room may open another; that one is this walk's own beginning over again. */
static int is_beside_a_suspended_case(const struct world *w)
{
	return !w->plan->other_room && w->station.sheets[1].case_no;
}

/* MISREAD takes stretches away one by one, so that their number is part of the state: two a digit are followed. */
static int is_on_too_often(const struct world *w, const struct sheet *s)
{
	int often = 0;
	for (int i = 0; i < s->n_digits; i++)
		often |= s->digits[i].stretches > 2;
	return often && world_has_card(w, CARD_MISREAD);
}

/* The room ends with its case, unless it began without one; and it holds no more things than its plan. */
static int is_followed(const struct walk *w)
{
	const struct room_plan *p = w->world.plan;
	const struct sheet *s = &w->world.station.sheets[0];
	for (int room = 0; room < 1 + p->other_room; room++, s++)
		if ((p->begin && !s->case_no) || (p->items && s->n_items > p->items) ||
		    is_on_too_often(&w->world, s))
			return 0;
	return 1;
}

/* One decision, stored and applied, held against the rules. */
static uint32_t turn(struct walk *w, const struct input *in, struct outcome *out)
{
	static struct sheet at_end, decided, before;
	struct station *st = &w->world.station;
	int ended, held = st->n_held;
	decide_known(st, in, out);
	if (w->digest)
		digest_outcome(w->digest, st, in, out);
	int at = sheet_of(&w->world, in, out);
	decided = out->sheet;
	before = st->sheets[at];
	if (w->saboteur && w->saboteur->spoil)
		w->saboteur->spoil(out, in, &before);
	uint32_t broken = snapshot_apply(&w->world, out, &at_end, &ended) < 0 ? 1u << RULE_NOTHING_EDITED : 0;
	settle_rooms(&w->world);
	if (is_beside_a_suspended_case(&w->world))
		return broken | rule_check_all(st);
	/* What decide_known() tried on its copy and what the events make of the state must be the same. */
	if (!w->saboteur && !ended && decided.case_no &&
	    !is_same_key(key_of_whole_sheet(&decided), key_of_whole_sheet(&st->sheets[at])))
		broken |= 1u << RULE_NOTHING_EDITED;
	struct step_taken taken = {.world = &w->world,
	                           .in = in,
	                           .before = &before,
	                           .after = &st->sheets[at],
	                           .out = out,
	                           .held_before = held,
	                           .held_after = st->n_held,
	                           .at_end = ended ? &at_end : NULL};
	return broken | step_all_checks(w, &taken);
}

static int step(struct walk *w, const struct node *from, int input)
{
	static struct outcome out;
	struct station *st = &w->world.station;
	struct input held;
	snapshot_put(from->state, &w->world);
	if (is_beyond(&w->world, &w->world.inputs[input].in))
		return 1;
	uint32_t broken = turn(w, &w->world.inputs[input].in, &out);
	for (int n = out.enter; n > 0 && stored_input(st, 1, w->world.inputs[0].in.at, &held); n--) {
		held.more = n > 1;
		broken |= turn(w, &held, &out);
	}
	broken |= rule_check_stored(st, 1);
	w->steps++;
	if (broken)
		fail(w, broken, from->parent, input, &out);
	if ((broken && w->saboteur) || is_beside_a_suspended_case(&w->world))
		return !broken;
	int is_new;
	struct key key = key_of_state(&w->world, NULL);
	keys_at(&w->visited, key, &is_new);
	sample(w, key, is_new, from->parent);
	if (is_new && is_followed(w))
		push(w, remember(w, from->parent, input));
	return 1;
}

/* A restart after a power cut: nothing but the clocks may change. */
static void restart(struct walk *w, const struct node *from)
{
	struct station *st = &w->world.station;
	snapshot_put(from->state, &w->world);
	struct event e = {.kind = EV_STARTED,
	                  .n = 2,
	                  .at = {.boot = 2, .boot_ms = 1000, .wall_ms = st->last.wall_ms + 60000}};
	station_apply(st, &e);
	st->boot = 1;
	st->last = w->world.inputs[0].in.at;
	struct sheet a = st->sheets[0], b = from->state->sheet;
	for (int i = 0; i < DIGITS_MAX; i++) {
		struct digit *was = &b.digits[i], *is = &a.digits[i];
		if (is->state == DIGIT_ON && (!is->gap || is->known_ms < was->known_ms))
			fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
		if (is->doubted && (!is->doubt_gap || is->doubt_known_ms < was->doubt_known_ms))
			fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
		is->since = was->since;
		is->known_ms = was->known_ms;
		is->gap = was->gap;
		is->doubt_since = was->doubt_since;
		is->doubt_known_ms = was->doubt_known_ms;
		is->doubt_gap = was->doubt_gap;
		is->by_wall = was->by_wall;
	}
	if (!is_same_key(key_of_whole_sheet(&a), key_of_whole_sheet(&b)))
		fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
}

static void walk_free(struct walk *w)
{
	keys_free(&w->visited);
	keys_free(&w->samples);
	for (uint32_t i = 0; i < w->n_sampled; i++)
		free(w->sampled[i]);
	free(w->sampled);
	while (w->first)
		pop(w);
	free(w->path);
	ends_free(w->ends);
	world_deinit(&w->world);
}

static void tell_dead_end(struct walk *w, const struct node *n)
{
	if (ends_check(w->ends, n->state)) {
		w->broken |= 1u << RULE_NO_DEAD_END;
		printf("  the state was reached by:\n");
		tell_path(w, n->parent);
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
static int run(struct walk *w, const struct room_plan *plan)
{
	int is_new;
	world_init(&w->world, plan);
	begin(&w->world);
	keys_at(&w->visited, key_of_state(&w->world, NULL), &is_new);
	push(w, remember(w, 0, 0));
	while (w->first) {
		struct node *n = w->first;
		for (int i = 0; i < w->world.n_inputs; i++) {
			step(w, n, i);
			if (w->saboteur && w->broken >> w->saboteur->rule & 1)
				return 0;
		}
		if (!w->digest)
			restart(w, n);
		if (w->ends)
			tell_dead_end(w, n);
		pop(w);
		if (w->limit && w->steps >= w->limit)
			return 0;
	}
	return 1;
}

/* --- rooms -------------------------------------------------------------------------------------- */

static int digest_rooms_of(const struct room_plan *plans, size_t count, struct buf *lines)
{
	uint32_t broken = 0;
	for (size_t i = 0; i < count; i++) {
		static struct walk w;
		uint64_t digest = DIGEST_START;
		memset(&w, 0, sizeof w);
		w.limit = DIGEST_STEPS;
		w.digest = &digest;
		w.quiet = 1; /* the walk itself tells what is broken */
		run(&w, &plans[i]);
		digest_line(lines, digest, plans[i].name);
		broken |= w.broken;
		walk_free(&w);
	}
	return broken != 0;
}

/* walk --digest FILE [--update] */
static int digest_all(const char *file, int update)
{
	struct buf lines = {0};
	int bad = digest_rooms_of(rooms, n_rooms, &lines);
	bad |= digest_rooms_of(digest_rooms, n_digest_rooms, &lines);
	bad |= digest_compare(file, update, &lines);
	buf_free(&lines);
	return bad;
}

/* --- several at once: each in a process of its own, told in order --------------------------------- */

struct tally { /* shared with the process that fills it */
	uint64_t states, steps, compared, tried;
	int bad, whole;
};

struct job {
	void (*work)(const struct job *job, struct tally *t);
	const struct room_plan *plan;
	uint64_t limit;
	const struct saboteur *saboteur;
	uint32_t cases;
	uint64_t seed;
	FILE *said;
	pid_t pid;
};

static void walk_room(const struct job *job, struct tally *t)
{
	static struct walk w;
	w.limit = job->limit;
	w.ends = ends_new(job->plan, 0, NULL);
	time_t began = time(NULL);
	t->whole = run(&w, job->plan);
	t->states = w.visited.count;
	t->steps = w.steps;
	t->compared = w.compared;
	t->tried = ends_tried(w.ends);
	t->bad = w.broken != 0;
	printf("%s: %s, %zu states, %" PRIu64 " transitions; %" PRIu64 " pairs of one key compared; %" PRIu64
	       " states with a truth, %" PRIu64 " without an end, the longest way %d scans (%d s)\n",
	       job->plan->name, t->whole ? "whole" : "NOT WHOLE: stopped at the limit", w.visited.count,
	       w.steps, w.compared, t->tried, ends_dead(w.ends), ends_longest(w.ends),
	       (int)(time(NULL) - began));
	walk_free(&w);
}

static void start(struct job *job, struct tally *t)
{
	fflush(stdout);
	job->said = tmpfile();
	job->pid = job->said ? fork() : -1;
	if (job->pid < 0) {
		perror("walk");
		exit(1);
	}
	if (job->pid)
		return;
	if (dup2(fileno(job->said), STDOUT_FILENO) < 0)
		_exit(1);
	job->work(job, t);
	fflush(stdout);
	_exit(0);
}

static void tell_job(struct job *job)
{
	int c;
	rewind(job->said);
	while ((c = getc(job->said)) != EOF)
		putchar(c);
	fclose(job->said);
	fflush(stdout);
}

/* 1 where a job failed or ended by a signal. */
static int do_jobs(struct job *jobs, struct tally *tallies, size_t n)
{
	long most = sysconf(_SC_NPROCESSORS_ONLN), running = 0;
	int bad = 0;
	for (size_t begun = 0, done = 0; done < n;) {
		if (begun < n && running < (most > 0 ? most : 1)) {
			start(&jobs[begun], &tallies[begun]);
			begun++;
			running++;
			continue;
		}
		int status;
		pid_t pid = wait(&status);
		for (size_t i = 0; i < begun; i++)
			if (jobs[i].pid == pid) {
				tell_job(&jobs[i]);
				bad |= status != 0 || tallies[i].bad;
			}
		running--;
		done++;
	}
	return bad;
}

static struct tally *tallies_new(size_t n)
{
	void *p =
	    mmap(NULL, n * sizeof(struct tally), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	if (p == MAP_FAILED)
		exit(1);
	return p;
}

static uint64_t dead_ends_in(const struct room_plan *plan, const struct saboteur *saboteur)
{
	static struct walk w;
	memset(&w, 0, sizeof w);
	w.quiet = 1;
	w.limit = 20000;
	w.ends = ends_new(plan, 1, saboteur);
	run(&w, plan);
	uint64_t dead = ends_dead(w.ends);
	walk_free(&w);
	return dead;
}

static int is_caught_in(const struct room_plan *plan, const struct saboteur *saboteur)
{
	static struct walk w;
	if (saboteur->spoil_next)
		return !dead_ends_in(plan, NULL) && dead_ends_in(plan, saboteur);
	memset(&w, 0, sizeof w);
	w.saboteur = saboteur;
	w.quiet = 1;
	w.limit = 100000;
	run(&w, plan);
	int found = w.broken >> saboteur->rule & 1;
	walk_free(&w);
	return found;
}

/* A broken variant must be caught in one of the rooms. */
static void catch_saboteur(const struct job *job, struct tally *t)
{
	for (size_t i = 0; i < n_rooms && !t->whole; i++)
		t->whole = is_caught_in(&rooms[i], job->saboteur);
	if (!t->whole)
		printf("NOT CAUGHT: rule %d, %s\n", job->saboteur->rule, job->saboteur->what);
	t->bad = !t->whole;
}

/* --- random long cases -------------------------------------------------------------------------- */

static uint64_t random_state;

static uint32_t random_number(uint32_t below)
{
	random_state = random_state * 6364136223846793005u + 1442695040888963407u;
	return (uint32_t)(random_state >> 33) % below;
}

static int plays_well(const struct room_plan *plan, const uint8_t *scans, int count, int quiet)
{
	static struct walk w;
	memset(&w, 0, sizeof w);
	w.quiet = quiet;
	world_init(&w.world, plan);
	snapshot_begin(&w.world);
	struct node n = {.state = snapshot_take(&w.world), .parent = remember(&w, 0, 0)};
	for (int i = 0; i < count && !w.broken; i++) {
		int input = scans[i] % w.world.n_inputs;
		step(&w, &n, input);
		free(n.state);
		n.state = snapshot_take(&w.world);
		n.parent = remember(&w, n.parent, input);
	}
	free(n.state);
	int good = !w.broken;
	walk_free(&w);
	return good;
}

/* Takes out scans as long as the rest still fails: what is left is what a person has to read. */
static void shrink(const struct room_plan *plan, uint8_t *scans, int count)
{
	for (int size = count / 2; size >= 1; size /= 2)
		for (int at = 0; at + size <= count;) {
			uint8_t rest[512];
			memcpy(rest, scans, (size_t)at);
			memcpy(rest + at, scans + at + size, (size_t)(count - at - size));
			if (!plays_well(plan, rest, count - size, 1)) {
				memcpy(scans, rest, (size_t)(count - size));
				count -= size;
			} else {
				at += size;
			}
		}
	printf("shrunk to %d scans\n", count);
	plays_well(plan, scans, count, 0);
}

static void play_random(const struct job *job, struct tally *t)
{
	static const struct room_plan plan = {"random",     .tourniquets = 2, .forceps = 2,
	                                      .others = 1,  .rolls_on = 1,    .no_identity = 1,
	                                      .refused = 1, .digits = 2,      .people = 4};
	uint64_t scans_made = 0;
	random_state = job->seed;
	for (uint32_t i = 0; i < job->cases && !t->bad; i++) {
		uint8_t scans[512];
		int count = 200 + (int)random_number(300);
		for (int k = 0; k < count; k++)
			scans[k] = (uint8_t)random_number(256);
		if (!plays_well(&plan, scans, count, 1)) {
			printf("random case %u of seed %" PRIu64 " breaks a rule\n", i, job->seed);
			shrink(&plan, scans, count);
			t->bad = 1;
		}
		scans_made += (uint64_t)count;
	}
	if (!t->bad)
		printf("%u random long cases, %" PRIu64 " scans, no rule broken (seed %" PRIu64 ")\n",
		       job->cases, scans_made, job->seed);
}

/* --- all of it ---------------------------------------------------------------------------------- */

#define JOBS_MAX 128

static size_t add_rooms(struct job *jobs, size_t n, const struct room_plan *plans, size_t count)
{
	for (size_t i = 0; i < count; i++)
		jobs[n++] = (struct job){.work = walk_room, .plan = &plans[i]};
	return n;
}

static void tell_rooms(const struct job *jobs, const struct tally *t, size_t n)
{
	struct tally sum = {0};
	int count = 0, caught = 0;
	for (size_t i = 0; i < n; i++) {
		caught += jobs[i].saboteur && t[i].whole;
		if (jobs[i].work != walk_room)
			continue;
		count++;
		sum.whole += t[i].whole;
		sum.bad += t[i].bad;
		sum.states += t[i].states;
		sum.steps += t[i].steps;
		sum.compared += t[i].compared;
		sum.tried += t[i].tried;
	}
	printf("in all %d of %d rooms whole, %" PRIu64 " states, %" PRIu64 " transitions, %d rules, %" PRIu64
	       " pairs of one key compared, %" PRIu64 " states with a truth followed to the end; %s\n",
	       sum.whole, count, sum.states, sum.steps, RULE_MAX, sum.compared, sum.tried,
	       sum.bad ? "SOME RULE IS BROKEN" : "no rule broken");
	if (n > (size_t)count)
		printf("%d of %d broken variants caught\n", caught, n_saboteurs);
}

static int do_all(int deep, uint64_t seed)
{
	struct job jobs[JOBS_MAX] = {0};
	struct tally *tallies = tallies_new(JOBS_MAX);
	size_t n = add_rooms(jobs, 0, rooms, n_rooms);
	for (int k = 0; k < n_saboteurs; k++)
		jobs[n++] = (struct job){.work = catch_saboteur, .saboteur = &saboteurs[k]};
	jobs[n++] = (struct job){.work = play_random, .cases = deep ? 30000 : 3000, .seed = seed};
	if (deep)
		n = add_rooms(jobs, n, deep_rooms, n_deep_rooms);
	int bad = do_jobs(jobs, tallies, n);
	tell_rooms(jobs, tallies, n);
	return bad;
}

/* walk --room N [LIMIT]: one of them, stopped after so many transitions */
static int one_room(int number, uint64_t limit)
{
	struct job job = {.work = walk_room, .plan = &rooms[number], .limit = limit};
	struct tally t = {0};
	if (number < 0 || (size_t)number >= n_rooms)
		return 2;
	walk_room(&job, &t);
	return t.bad;
}

int main(int argc, char **argv)
{
	int deep = argc > 1 && strcmp(argv[1], "--deep") == 0;
	uint64_t seed = argc > 2 ? strtoull(argv[2], NULL, 10) : deep ? (uint64_t)time(NULL) : 2026;
	if (argc > 2 && strcmp(argv[1], "--room") == 0)
		return one_room(atoi(argv[2]), argc > 3 ? strtoull(argv[3], NULL, 10) : 0);
	if (argc > 2 && strcmp(argv[1], "--digest") == 0)
		return digest_all(argv[2], argc > 3 && strcmp(argv[3], "--update") == 0);
	return do_all(deep, seed);
}
