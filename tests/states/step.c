/* One step of the walk: a scan in a state, or a restart after a power cut, and what must hold of it. */
#include "walk-run.h"

#include <stdlib.h>
#include <string.h>

#include "decide/next.h"
#include "decide/stored-enter.h"
#include "digest.h"
#include "known.h"

/* Room 1's sheet stands first; which place the station gave it is of no interest. */
void world_settle_rooms(struct world *w)
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
	world_settle_rooms(&w->world);
	if (is_beside_a_suspended_case(&w->world))
		return broken | rule_check_all(st);
	/* What decide_known() tried on its copy and what the events make of the state must be the same. */
	if (!w->saboteur && !ended && decided.case_no &&
	    !key_is_same(key_of_whole_sheet(&decided), key_of_whole_sheet(&st->sheets[at])))
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

int walk_step(struct walk *w, const struct node *from, int input)
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
		walk_fail(w, broken, from->parent, input, &out);
	if ((broken && w->saboteur) || is_beside_a_suspended_case(&w->world))
		return !broken;
	int is_new;
	struct key key = key_of_state(&w->world, NULL);
	keys_at(&w->visited, key, &is_new);
	walk_sample(w, key, is_new, from->parent);
	if (is_new && is_followed(w))
		walk_push(w, walk_remember(w, from->parent, input));
	return 1;
}

/* A restart after a power cut: nothing but the clocks may change. */
void walk_restart(struct walk *w, const struct node *from)
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
			walk_fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
		if (is->doubted && (!is->doubt_gap || is->doubt_known_ms < was->doubt_known_ms))
			walk_fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
		is->since = was->since;
		is->known_ms = was->known_ms;
		is->gap = was->gap;
		is->doubt_since = was->doubt_since;
		is->doubt_known_ms = was->doubt_known_ms;
		is->doubt_gap = was->doubt_gap;
		is->by_wall = was->by_wall;
	}
	if (!key_is_same(key_of_whole_sheet(&a), key_of_whole_sheet(&b)))
		walk_fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
}
