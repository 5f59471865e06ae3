/* From a state that was visited, and for each truth that may be so: people do the first deed that fits, again and
 * again, and the case ends (rule 23). What is true stays so, but that a tourniquet comes off where nothing that the
 * station asks fits while it is on.
 */
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks.h"
#include "decide/next.h"
#include "shrink.h"

#define STEPS_MAX 240

/* --- truths ------------------------------------------------------------------------------------- */

static void all_there(struct world *w, int op)
{
	for (int i = 0; i < w->n_things; i++) {
		struct real *r = &w->things[i];
		if (r->of != op || r->where == IN_STORE || r->where == AWAY)
			continue;
		if (r->where == ON_DIGIT)
			world_take_off(w, i, WHOLE, w->operations[op].roots[r->digit].on_ms + 1);
		if (r->where == LOST)
			r->where = ON_FIELD;
		r->whole = WHOLE;
		r->here = r->pieces;
	}
	w->operations[op].more_to_come = 0;
}

static int is_in_play(const struct world *w, int op, int thing)
{
	const struct real *r = &w->things[thing];
	return r->of == op && r->where != IN_STORE && r->where != AWAY;
}

/* Truth number n of this state; 0 where there are no more. `words` says what is so. */
static int truth_number(struct world *w, int op, const struct sheet *s, int n, int64_t now, char words[80])
{
	struct operation *o = &w->operations[op];
	if (n == 0) {
		snprintf(words, 80, "as it is");
		o->more_to_come = 0;
		return 1;
	}
	if (n <= 2) {
		all_there(w, op);
		snprintf(words, 80, n == 1 ? "all is there" : "all is there, the surgeon has no badge");
		if (n == 2 && !s->single && !s->team.at[PLACE_SURGEON])
			o->surgeon = -1;
		return 1;
	}
	int thing = (n - 3) / 3, how = (n - 3) % 3;
	if (thing >= w->n_things)
		return 0;
	words[0] = 0;
	if (!is_in_play(w, op, thing) || (how && w->things[thing].role != ROLE_TOURNIQUET) ||
	    (!how && !w->things[thing].entered))
		return 1;
	all_there(w, op);
	struct real *r = &w->things[thing];
	snprintf(words, 80, "%s %d %s", r->line, (int)r->number,
	         how == 0   ? "is lost"
	         : how == 1 ? "is on the right middle finger"
	                    : "is in pieces");
	if (how == 0)
		r->where = LOST;
	else if (how == 1)
		world_put_on(w, thing, 3, now);
	else
		r->whole = IN_PIECES;
	return 1;
}

/* --- the walk ----------------------------------------------------------------------------------- */

static uint64_t mix(uint64_t h, const void *data, size_t size)
{
	const unsigned char *p = data;
	for (; size >= 8; size -= 8, p += 8) {
		uint64_t x;
		memcpy(&x, p, 8);
		h = (h ^ x) * 0x9E3779B97F4A7C15u;
		h ^= h >> 29;
	}
	for (; size; size--)
		h = (h ^ *p++) * 0x100000001B3u;
	return h;
}

/* Two sheets that differ only in times are one state. */
static uint64_t hash_of(const struct stage *w, const struct sheet *s, int bands)
{
	static struct sheet c;
	c = *s;
	c.asked.at = (struct moment){0};
	for (int i = 0; i < c.n_digits; i++) {
		struct digit *d = &c.digits[i], of = *d;
		*d = (struct digit){.number = of.number,
		                    .state = of.state,
		                    .marked = of.marked,
		                    .had = of.had,
		                    .seen_bare = of.seen_bare,
		                    .seen_on = of.seen_on,
		                    .reminded = of.reminded,
		                    .doubted = of.doubted};
	}
	size_t head = offsetof(struct sheet, items);
	uint64_t h = mix((uint64_t)bands + 1000 * (uint64_t)w->st.n_held + 1, &c, head);
	h = mix(h, c.items, sizeof *c.items * (size_t)c.n_items);
	h = mix(h, c.digits, sizeof *c.digits * (size_t)c.n_digits);
	h = mix(h, w->st.idle_last, sizeof w->st.idle_last);
	return mix(h, &c.last_answer, sizeof c.last_answer);
}

static int put_aside(const struct world *w)
{
	int n = 0;
	for (int i = 0; i < w->n_things; i++)
		n += w->things[i].where == AWAY;
	return n;
}

static int take_one_off(struct stage *w, int op)
{
	for (int i = 0; i < w->world.n_things; i++)
		if (w->world.things[i].of == op && w->world.things[i].where == ON_DIGIT) {
			world_take_off(&w->world, i, WHOLE, w->true_ms);
			return 1;
		}
	return 0;
}

static void note(struct stage *w, const char *what, const char *next)
{
	size_t used = strlen(w->path);
	if (used < sizeof w->path - 300)
		snprintf(w->path + used, sizeof w->path - used, "#     next: %s\n# > %s\n", next, what);
}

static void note_reply(struct stage *w)
{
	static const char *const verdicts[] = {"accepted", "refused", "question"};
	size_t used = strlen(w->path);
	if (used < sizeof w->path - 300)
		snprintf(w->path + used, sizeof w->path - used, "#     %s: %.200s\n",
		         verdicts[w->out.reply.verdict], w->out.reply.said);
}

/* One that works for this room; -1 where each was carried away, or has gone back to its own. */
static int scanner_here(const struct stage *w, int32_t room)
{
	for (int i = 0; i < SCANNERS; i++)
		if (stage_works_for(w, i) == room)
			return i;
	return -1;
}

static void read_here(struct stage *w, int op, const struct scanned *c, int scanner)
{
	struct entry e = {.kind = ENTRY_READ,
	                  .operation = (int8_t)op,
	                  .code = *c,
	                  .id = -1,
	                  .reports = -1,
	                  .group = -1,
	                  .scanner = (int8_t)scanner};
	stage_read_quietly(w, &e);
}

static void later(struct stage *w)
{
	w->true_ms += 3000;
	w->now.boot_ms += 3000;
	w->now.wall_ms += 3000;
}

static int took(struct stage *w, int op, const struct scanned *c)
{
	later(w); /* a carried scanner may have gone back to its own room meanwhile */
	int scanner = scanner_here(w, w->world.operations[op].room);
	if (scanner < 0) {
		struct scanned room = scan_card(&w->world, op, CARD_THIS_ROOM);
		read_here(w, op, &room, scanner = 0);
	}
	read_here(w, op, c, scanner);
	if (w->out.reply.verdict == VERDICT_REFUSED && c->act == ACT_THING &&
	    w->world.things[c->thing].where != ON_DIGIT)
		w->world.things[c->thing].where = AWAY; /* refused: put aside */
	return w->world.operations[op].ended;
}

/* Those whose badges the sheet has are there to scan them; two count, each in one place. */
static void who_is_there(struct operation *o, const struct sheet *s)
{
	int32_t field = o->field, circulating = o->circulating;
	if (s->team.at[PLACE_FIELD])
		o->field = s->team.at[PLACE_FIELD];
	if (s->team.at[PLACE_CIRCULATING])
		o->circulating = s->team.at[PLACE_CIRCULATING];
	if (o->field == o->circulating && s->team.at[PLACE_FIELD])
		o->circulating = field;
	else if (o->field == o->circulating)
		o->field = circulating;
	if (s->team.at[PLACE_SURGEON])
		o->surgeon = s->team.at[PLACE_SURGEON];
}

/* NULL, or why the case does not end. */
static const char *walk(struct stage *w, int op, int tell)
{
	static uint64_t seen[STEPS_MAX];
	char words[120];
	int32_t room = w->world.operations[op].room;
	int scans = 0;
	int facts = 0, refused = 0; /* digit cards scanned because one is on that the sheet does not have */
	w->path[0] = 0;
	for (int steps = 0; steps < STEPS_MAX; steps++) {
		const struct sheet *s = stage_sheet(w, room);
		struct next n;
		struct scanned c;
		if (s->case_no != w->world.operations[op].case_no)
			return "another case has come into the room";
		if (scans > 40 + 4 * (s->n_items + w->st.policy.n_search))
			return "the scans do not end";
		seen[steps] = hash_of(w, s, world_bands_on(&w->world, op) + 16 * put_aside(&w->world));
		for (int i = 0; i < steps; i++)
			if (seen[i] == seen[steps] && !refused)
				return "the same state comes again";
		world_relieve(&w->world.operations[op], s);
		who_is_there(&w->world.operations[op], s);
		next_step(&w->st, s, room, w->now, &n);
		int deed = first_that_fits(&w->world, op, &w->st, s, &n, &c),
		    on = untold_on(&w->world, op, s);
		if (on && facts < 4 && !refused && !s->suspended) {
			that_it_is_on(&w->world, op, &w->st, s, &n, on, &c);
			facts++;
			deed = 0;
		}
		if (deed < 0 && !take_one_off(w, op)) {
			note(w, "nothing fits", n.words);
			return "no deed fits what is so";
		}
		if (deed < 0)
			continue;
		scans++;
		if (tell) {
			scanned_words(&w->world, &c, words);
			note(w, words, n.words);
		}
		w->tally->walk_scans++;
		int over = took(w, op, &c);
		if (tell)
			note_reply(w);
		refused = on && w->out.reply.verdict == VERDICT_REFUSED;
		if (over)
			return world_bands_on(&w->world, op) ? "the case ends with it on" : NULL;
	}
	return "the steps do not end";
}

void check_dead_end(struct stage *g, int room)
{
	static struct stage *w;
	int op = g->current[room];
	const struct sheet *s = stage_sheet(g, room_numbers[room]);
	char words[80];
	if (!w && !(w = calloc(1, sizeof *w)))
		return;
	if (op < 0 || !s->case_no || s->case_no != g->world.operations[op].case_no ||
	    g->world.operations[op].no_operation)
		return;
	w->tally = g->tally;
	for (int n = 0; !g->failure.check; n++) {
		stage_copy(w, g);
		if (!truth_number(&w->world, op, s, n, g->true_ms, words))
			return;
		if (!words[0])
			continue;
		g->tally->walks++;
		g->tally->held[CHECK_NO_DEAD_END]++;
		const char *why = walk(w, op, g->replaying);
		if (why) {
			stage_fail(g, check_name(CHECK_NO_DEAD_END), "%s, and %s", words, why);
			memcpy(g->path, w->path, sizeof g->path);
			g->failed_room = room;
		}
	}
}
