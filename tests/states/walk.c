#include "walk.h"

#include "digest.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define DIGEST_STEPS 60000 /* a room */

/* --- states that were visited: a set of 128-bit hashes, open addressing ------------------------- */

struct key {
	uint64_t a, b;
};

struct visited {
	struct key *slots;
	size_t room, count;
};

static uint64_t mix(uint64_t h, uint64_t v)
{
	h ^= v;
	h *= 0x9e3779b97f4a7c15u;
	return h ^ (h >> 29);
}

/* The bytes between members, which an assignment may leave as they are: two equal sheets may differ there. */
#define BETWEEN(p, a, b)                                                                                     \
	memset((char *)&(p)->a + sizeof(p)->a, 0, (size_t)((char *)&(p)->b - (char *)&(p)->a) - sizeof(p)->a)
#define BEHIND(p, a)                                                                                         \
	memset((char *)&(p)->a + sizeof(p)->a, 0,                                                            \
	       sizeof *(p) - (size_t)((char *)&(p)->a - (char *)(p)) - sizeof(p)->a)

static void settle(struct sheet *s)
{
	BETWEEN(s, size_mm, team);
	BETWEEN(s, team, asked);
	BETWEEN(&s->asked, digit, person);
	BETWEEN(&s->asked, n, at);
	BEHIND(&s->asked.at, boot);
	BETWEEN(s, debts, items);
	for (int i = 0; i < ITEMS_MAX; i++) {
		struct item *it = &s->items[i];
		BETWEEN(&it->thing, lot, expiry);
		BEHIND(&it->thing, shows_on_xray);
		BEHIND(it, dropped);
	}
	BETWEEN(s, items, digits);
	for (int i = 0; i < DIGITS_MAX; i++) {
		BEHIND(&s->digits[i].since, boot);
		BEHIND(&s->digits[i], reminded_min);
	}
	BETWEEN(s, last_code, last_code_at);
	BEHIND(&s->last_code_at, boot);
}

static int by_bytes(const void *a, const void *b)
{
	return memcmp(a, b, sizeof(struct debt));
}

/* What was returned or struck is out of the count for good, and the order in which debts arose decides
 * nothing but which is named first. */
static void compact(struct sheet *s)
{
	int kept = 0, to[ITEMS_MAX + 1] = {0};
	for (int i = 0; i < s->n_items; i++) {
		if (s->items[i].place == ITEM_RETURNED || s->items[i].place == ITEM_STRUCK)
			continue;
		if (kept != i)
			s->items[kept] = s->items[i];
		to[i + 1] = ++kept;
	}
	memset(&s->items[kept], 0, sizeof *s->items * (size_t)(ITEMS_MAX - kept));
	s->n_items = (uint8_t)kept;
	s->asked.item = (uint8_t)to[s->asked.item <= ITEMS_MAX ? s->asked.item : 0];
	for (int i = 0; i < s->debts.count; i++)
		s->debts.list[i].item =
		    (uint8_t)to[s->debts.list[i].item <= ITEMS_MAX ? s->debts.list[i].item : 0];
	qsort(s->debts.list, s->debts.count, sizeof *s->debts.list, by_bytes);
}

static int has_card(const struct room_plan *p, int low, int high)
{
	int found = !p->cards;
	for (const int *m = p->cards; m && *m; m++)
		found |= *m >= low && *m <= high;
	return found;
}

/* What no decision in this room looks at: what is only told on the slip, and what belongs to cards that are
 * not here. */
static void forget(struct sheet *s, const struct room_plan *p)
{
	for (int i = 0; i < s->n_items; i++) {
		s->items[i].added = s->items[i].dropped = 0;
		s->items[i].evidence = s->items[i].evidence != EVIDENCE_NONE;
	}
	s->awake = s->patient_left = 0;
	s->size_mm = 0;
	if (!p->no_identity && !p->others)
		memset(s->last_code, 0, sizeof s->last_code);
	if (!has_card(p, CARD_MISREAD, CARD_MISREAD) && !has_card(p, CARD_1_MINUTE_AGO, CARD_10_MINUTES_AGO))
		s->last_timed = s->last_timed_off = 0;
}

/* What makes two sheets one state: everything but minutes and case number. */
static struct key key_of(const struct sheet *sheet, const struct room_plan *plan, int can_undo)
{
	static struct sheet s;
	memcpy(&s, sheet, sizeof s);
	s.case_no = s.case_no != 0;
	memset(&s.last_code_at, 0, sizeof s.last_code_at);
	memset(&s.asked.at, 0, sizeof s.asked.at);
	for (int i = 0; i < DIGITS_MAX; i++) {
		struct digit *d = &s.digits[i];
		memset(&d->since, 0, sizeof d->since);
		d->on_wall_ms = d->known_ms = d->total_ms = d->longest_ms = 0;
		d->reminded_min = d->reminded_min != 0;
	}
	compact(&s);
	forget(&s, plan);
	struct key k = {0x243f6a8885a308d3u + (uint64_t)can_undo, 0x13198a2e03707344u};
	const unsigned char *p = (const unsigned char *)&s;
	for (size_t i = 0; i < sizeof s; i += 8) {
		uint64_t v = 0;
		memcpy(&v, p + i, sizeof s - i < 8 ? sizeof s - i : 8);
		if (v) {
			k.a = mix(k.a, v + i);
			k.b = mix(k.b ^ (i << 32), v);
		}
	}
	return k;
}

static int visit(struct visited *v, struct key k)
{
	if (v->count * 2 >= v->room) {
		struct visited more = {.room = v->room ? v->room * 2 : 1 << 16};
		more.slots = calloc(more.room, sizeof *more.slots);
		if (!more.slots)
			exit(1);
		for (size_t i = 0; i < v->room; i++)
			if (v->slots[i].a | v->slots[i].b)
				visit(&more, v->slots[i]);
		free(v->slots);
		*v = more;
	}
	for (size_t i = k.a & (v->room - 1);; i = (i + 1) & (v->room - 1)) {
		if (v->slots[i].a == k.a && v->slots[i].b == k.b)
			return 0;
		if (!(v->slots[i].a | v->slots[i].b)) {
			v->slots[i] = k;
			v->count++;
			return 1;
		}
	}
}

/* --- the walk ----------------------------------------------------------------------------------- */

struct node {
	struct sheet sheet, before;
	struct step undo;
	uint8_t idle_asked;
	uint32_t parent; /* in `path`, for telling how a state was reached */
};

struct path_step {
	uint32_t parent;
	uint8_t input;
};

struct walk {
	struct world world;
	struct visited visited;
	struct node *queue;
	size_t head, tail, room;
	struct path_step *path;
	uint32_t n_path;
	uint64_t steps, limit;
	uint32_t broken; /* rules found broken, as bits */
	const struct saboteur *saboteur;
	const struct room_plan *plan;
	uint64_t *digest; /* of all that is decided, or NULL */
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

static void push(struct walk *w, const struct station *st, uint32_t parent)
{
	if (w->tail == w->room) {
		if (w->head > w->room / 2) {
			memmove(w->queue, w->queue + w->head, sizeof *w->queue * (w->tail - w->head));
			w->tail -= w->head;
			w->head = 0;
		} else {
			w->room = w->room ? w->room * 2 : 1024;
			w->queue = realloc(w->queue, sizeof *w->queue * w->room);
			if (!w->queue)
				exit(1);
		}
	}
	w->queue[w->tail++] =
	    (struct node){st->sheets[0], st->before[0], st->undo[0], st->idle_asked[0], parent};
}

static void load(struct walk *w, const struct node *n)
{
	struct station *st = &w->world.station;
	for (int i = 1; i < SHEETS_MAX; i++)
		if (st->sheets[i].case_no)
			memset(&st->sheets[i], 0, sizeof st->sheets[i]);
	st->sheets[0] = n->sheet;
	st->before[0] = n->before;
	st->undo[0] = n->undo;
	st->idle_asked[0] = n->idle_asked;
	st->n_unseen = 0;
	st->n_owed = 0;
	st->last_case_no = n->sheet.case_no;
	st->last_slip_no = 0;
	/* A finished case in the same room, whose slip waits to be seen. */
	st->unseen[st->n_unseen++] =
	    (struct slip){.number = 1, .case_no = 90, .room = 1, .kind = SLIP_RECONCILIATION};
	st->unseen[0].copy = w->plan && w->plan->copies ? 2 : 0;
	st->last_slip_no = 1;
}

/* Applies what was decided, as the daemon would, and looks at every state on the way. */
static uint32_t apply(struct walk *w, struct outcome *out, struct sheet *at_end, int *ended)
{
	struct station *st = &w->world.station;
	uint32_t broken = 0;
	*ended = 0;
	for (int i = 0; i < out->count; i++) {
		struct event *e = &out->events[i];
		e->seq = 100 + i;
		if (e->kind == EV_CASE_ENDED) {
			*at_end = st->sheets[0];
			*ended = 1;
		}
		if (station_apply(st, e) < 0)
			broken |= 1u << RULE_NOTHING_EDITED;
	}
	return broken;
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
	       out->reply.next);
}

static int can_undo(const struct walk *w)
{
	return has_card(w->plan, CARD_UNDO, CARD_UNDO) && w->world.station.undo[0].seq != 0;
}

static int step(struct walk *w, const struct node *from, int input)
{
	static struct outcome out;
	static struct sheet at_end;
	struct station *st = &w->world.station;
	const struct input *in = &w->world.inputs[input].in;
	int ended;
	load(w, from);
	decide(st, in, &out);
	if (w->digest)
		digest_outcome(w->digest, st, in, &out);
	struct sheet decided = out.sheet;
	settle(&decided);
	if (w->saboteur)
		w->saboteur->spoil(&out, in, &from->sheet);
	uint32_t broken = apply(w, &out, &at_end, &ended);
	settle(&st->sheets[0]);
	/* While a case is suspended the room may open another; that one is this walk's own beginning over
	 * again. */
	if (from->sheet.suspended && st->sheets[1].case_no) {
		w->steps++;
		if (rule_check(&st->sheets[1]))
			fail(w, rule_check(&st->sheets[1]), from->parent, input, &out);
		return 1;
	}
	/* What decide() tried on its copy and what the events make of the state must be the same. */
	if (!w->saboteur && !ended && decided.case_no &&
	    memcmp(&decided, &st->sheets[0], sizeof decided) != 0)
		broken |= 1u << RULE_NOTHING_EDITED;
	struct step_taken taken = {.world = &w->world,
	                           .in = in,
	                           .before = &from->sheet,
	                           .after = &st->sheets[0],
	                           .out = &out,
	                           .at_end = ended ? &at_end : NULL};
	broken |= step_check(&taken);
	w->steps++;
	if (broken)
		fail(w, broken, from->parent, input, &out);
	if (broken)
		return 0;
	if (visit(&w->visited, key_of(&st->sheets[0], w->plan, can_undo(w) + 2 * st->idle_asked[0])))
		push(w, st, remember(w, from->parent, input));
	return 1;
}

/* A restart after a power cut: nothing but the clocks may change. */
static void restart(struct walk *w, const struct node *from)
{
	struct station *st = &w->world.station;
	load(w, from);
	struct event e = {.kind = EV_STARTED,
	                  .n = 2,
	                  .at = {.boot = 2, .boot_ms = 1000, .wall_ms = st->last.wall_ms + 60000}};
	station_apply(st, &e);
	st->boot = 1;
	st->last = w->world.inputs[0].in.at;
	struct sheet a = st->sheets[0], b = from->sheet;
	settle(&a);
	settle(&b);
	for (int i = 0; i < DIGITS_MAX; i++) {
		if (a.digits[i].state == DIGIT_ON &&
		    (!a.digits[i].gap || a.digits[i].known_ms < b.digits[i].known_ms))
			fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
		a.digits[i].since = b.digits[i].since;
		a.digits[i].known_ms = b.digits[i].known_ms;
		a.digits[i].gap = b.digits[i].gap;
	}
	if (memcmp(&a, &b, sizeof a) != 0)
		fail(w, 1u << RULE_CLOCK, from->parent, 0, &(struct outcome){0});
}

static void walk_free(struct walk *w)
{
	free(w->visited.slots);
	free(w->queue);
	free(w->path);
	world_deinit(&w->world);
}

/* Visits everything, or stops at the limit or, with a saboteur, when his rule is found broken. 1: everything.
 */
static int run(struct walk *w, const struct room_plan *plan)
{
	world_init(&w->world, plan);
	load(w, &(struct node){0});
	w->plan = plan;
	visit(&w->visited, key_of(&w->world.station.sheets[0], plan, 0));
	push(w, &w->world.station, remember(w, 0, 0));
	while (w->head < w->tail) {
		struct node n = w->queue[w->head++];
		for (int i = 0; i < w->world.n_inputs; i++) {
			step(w, &n, i);
			if (w->saboteur && w->broken >> w->saboteur->rule & 1)
				return 0;
		}
		restart(w, &n);
		if (w->limit && w->steps >= w->limit)
			return 0;
	}
	return 1;
}

/* --- rooms -------------------------------------------------------------------------------------- */

static const int cards_core[] = {CARD_NEW_CASE,    CARD_YES,    CARD_NO,   CARD_OFF,
                                 CARD_FINAL_COUNT, CARD_INTACT, CARD_UNDO, 0};
static const int cards_team[] = {CARD_NEW_CASE,
                                 CARD_HANDOVER,
                                 CARD_WITHOUT_FULL_SIGHT,
                                 CARD_VISITOR_1,
                                 CARD_OFF,
                                 CARD_FINAL_COUNT,
                                 CARD_INTACT,
                                 CARD_NO,
                                 CARD_YES,
                                 CARD_INTERRUPTED,
                                 0};
static const int cards_end[] = {CARD_NEW_CASE,
                                CARD_OFF,
                                CARD_FINAL_COUNT,
                                CARD_INTACT,
                                CARD_PIECES_MISSING,
                                CARD_CUT_AND_COMPLETE,
                                CARD_NO,
                                CARD_YES,
                                CARD_STEP_DONE,
                                CARD_NOT_DONE,
                                CARD_FOUND,
                                CARD_END_UNRESOLVED,
                                CARD_CANCEL,
                                CARD_SUSPEND,
                                CARD_UNDO,
                                CARD_PATIENT_LEAVES,
                                0};
static const int cards_moves[] = {CARD_NEW_CASE,
                                  CARD_OFF,
                                  CARD_MISREAD,
                                  CARD_5_MINUTES_AGO,
                                  CARD_FORCEPS_MOVED,
                                  CARD_YES,
                                  CARD_NO,
                                  CARD_ADD,
                                  CARD_UNLISTED_TOURNIQUET,
                                  CARD_UNDO,
                                  0};
static const int cards_alone[] = {CARD_OFF,
                                  CARD_INTACT,
                                  CARD_NO,
                                  CARD_YES,
                                  CARD_LOOKED_PATIENT,
                                  CARD_LOOKED_NOBODY,
                                  CARD_STEP_DONE,
                                  CARD_NOT_DONE,
                                  CARD_FOUND,
                                  CARD_END_UNRESOLVED,
                                  CARD_UNDO,
                                  CARD_MISREAD,
                                  CARD_FINAL_COUNT,
                                  CARD_UNLISTED_TOURNIQUET,
                                  0};
static const int cards_packs[] = {
    CARD_NEW_CASE, CARD_ADD,    CARD_RETURNED_UNOPENED, CARD_WRONG_NUMBER_IN_PACK,
    CARD_DROPPED,  CARD_OFFCUT, CARD_NO_CODE,           CARD_MARK_UNREADABLE,
    CARD_YES,      CARD_NO,     CARD_FINAL_COUNT,       CARD_SHOWN_1,
    CARD_SHOWN_3,  CARD_INTACT, CARD_CUT_AND_COMPLETE,  0};

static const int cards_least[] = {CARD_NEW_CASE, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT, CARD_NO, 0};
static const int cards_small[] = {CARD_NEW_CASE, CARD_OFF, CARD_FINAL_COUNT, CARD_INTACT,
                                  CARD_YES,      CARD_NO,  CARD_UNDO,        0};
static const int cards_least_alone[] = {CARD_OFF, CARD_INTACT, CARD_NO, CARD_LOOKED_PATIENT, 0};

static const struct room_plan rooms[] = {
    {"the least room: one tourniquet, one digit, three people", .tourniquets = 1, .digits = 1, .people = 3,
     .cards = cards_least},
    {"a small room: one tourniquet, one forceps, one digit, three people, UNDO", .tourniquets = 1,
     .forceps = 1, .digits = 1, .people = 3, .cards = cards_small},
    {"the least room of a lone operator", .single = 1, .tourniquets = 1, .digits = 1, .people = 1,
     .cards = cards_least_alone},
    {"one tourniquet, one forceps, one digit, every scan that can go wrong", .tourniquets = 1, .forceps = 1,
     .digits = 1, .people = 3, .refused = 1, .cards = cards_core},
    {"two tourniquets, two digits: marked, wrong, moved, second on one digit", .tourniquets = 1,
     .no_identity = 1, .digits = 2, .people = 2, .cards = cards_moves},
    {"team: handover, visitor, both badges", .tourniquets = 1, .digits = 1, .people = 4, .cards = cards_team,
     .both_badges = 1},
    {"ends: pieces, search, unresolved, cancelled, suspended, points one by one", .tourniquets = 1,
     .forceps = 1, .digits = 1, .people = 3, .cards = cards_end, .one_by_one = 1},
    {"one operator alone", .single = 1, .tourniquets = 1, .forceps = 1, .digits = 1, .people = 1,
     .cards = cards_alone},
    {"packs: swabs, roll-on, without number, isolated, returned", .tourniquets = 1, .others = 1,
     .rolls_on = 1, .people = 3, .cards = cards_packs},
};

static const struct room_plan deep_rooms[] = {
    {"two tourniquets, two forceps, two digits, three people, core cards", .tourniquets = 2, .forceps = 2,
     .digits = 2, .people = 3, .cards = cards_core},
    {"one tourniquet, one forceps, one digit, three people, every card", .tourniquets = 1, .forceps = 1,
     .digits = 1, .people = 3, .refused = 1},
};

/* What the rooms above do not reach: walked for the digest alone. */
static const int cards_late[] = {CARD_NEW_CASE, CARD_FINAL_COUNT, CARD_OFF, CARD_INTACT, CARD_YES, CARD_NO,
                                 CARD_MISREAD,  CARD_SUSPEND,     0};
static const int cards_numbers[] = {CARD_NEW_CASE, CARD_FINAL_COUNT,
                                    CARD_SHOWN_1,  CARD_SHOWN_3,
                                    CARD_MISREAD,  CARD_UNDO,
                                    CARD_NO,       CARD_WRONG_NUMBER_IN_PACK,
                                    CARD_YES,      0};
static const int cards_lots[] = {CARD_NEW_CASE, CARD_RETURNED_UNOPENED, CARD_MISREAD, CARD_ADD,
                                 CARD_DROPPED,  CARD_FINAL_COUNT,       CARD_INTACT,  0};
static const int cards_search[] = {CARD_FINAL_COUNT, CARD_OFF,      CARD_INTACT,         CARD_NO,
                                   CARD_STEP_DONE,   CARD_NOT_DONE, CARD_FOUND,          CARD_ADD,
                                   CARD_MISREAD,     CARD_YES,      CARD_END_UNRESOLVED, 0};

static const struct room_plan digest_rooms[] = {
    {"a lone operator, two digits", .single = 1, .tourniquets = 2, .digits = 2, .people = 1,
     .cards = cards_least_alone},
    {"a lone operator, two digits, one tourniquet not listed", .single = 1, .tourniquets = 1, .digits = 2,
     .people = 1, .cards = cards_alone},
    {"a lone operator, one forceps, no digit", .single = 1, .forceps = 1, .people = 1, .cards = cards_alone},
    {"the right thumb", .thumb = 1, .tourniquets = 1, .digits = 1, .people = 3, .cards = cards_end},
    {"two tourniquets, two forceps, two digits", .tourniquets = 2, .forceps = 2, .digits = 2, .people = 2,
     .cards = cards_moves},
    {"two lots, no number on the item", .two_lots = 1, .people = 2, .cards = cards_lots},
    {"a size that is stated", .size = 1, .tourniquets = 1, .digits = 1, .people = 2, .cards = cards_core},
    {"badges: in charge, withdrawn; both badges", .tourniquets = 1, .digits = 1, .people = 4, .charge = 1,
     .withdrawn = 1, .both_badges = 1, .cards = cards_team},
    {"badges at the end: in charge, withdrawn", .tourniquets = 1, .digits = 1, .people = 3, .charge = 1,
     .withdrawn = 1, .cards = cards_end},
    {"a lone operator who searches", .single = 1, .tourniquets = 1, .digits = 1, .people = 1,
     .cards = cards_search},
    {"answers that come later", .tourniquets = 1, .digits = 1, .people = 2, .later = 1, .cards = cards_late},
    {"forceps of an earlier case, two copies of a slip", .tourniquets = 1, .forceps_again = 1, .copies = 1,
     .digits = 1, .people = 3, .cards = cards_small},
    {"isolated and struck while it is counted", .others = 1, .tourniquets = 1, .people = 2,
     .cards = cards_numbers},
};

static int digest_rooms_of(const struct room_plan *plans, size_t count, struct buf *lines)
{
	uint32_t broken = 0;
	for (size_t i = 0; i < count; i++) {
		static struct walk w;
		uint64_t digest = DIGEST_START;
		memset(&w, 0, sizeof w);
		w.limit = DIGEST_STEPS;
		w.digest = &digest;
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
	int bad = digest_rooms_of(rooms, sizeof rooms / sizeof *rooms, &lines);
	bad |= digest_rooms_of(digest_rooms, sizeof digest_rooms / sizeof *digest_rooms, &lines);
	bad |= digest_compare(file, update, &lines);
	buf_free(&lines);
	return bad;
}

static int walk_rooms(const struct room_plan *plans, size_t count, uint64_t limit)
{
	uint64_t states = 0, steps = 0;
	uint32_t broken = 0;
	for (size_t i = 0; i < count; i++) {
		static struct walk w;
		memset(&w, 0, sizeof w);
		w.limit = limit;
		int whole = run(&w, &plans[i]);
		printf("%s: %zu states, %" PRIu64 " transitions%s\n", plans[i].name, w.visited.count, w.steps,
		       whole ? "" : ", NOT ALL: stopped at the limit");
		fflush(stdout);
		states += w.visited.count;
		steps += w.steps;
		broken |= w.broken;
		walk_free(&w);
	}
	printf("in all %" PRIu64 " states, %" PRIu64 " transitions, %d rules checked in each, %s\n", states,
	       steps, RULE_MAX, broken ? "SOME BROKEN" : "none broken");
	return broken != 0;
}

/* Each broken variant must be caught in one of the rooms. */
static int catch_saboteurs(void)
{
	int caught = 0;
	for (int k = 0; k < n_saboteurs; k++) {
		int found = 0;
		for (size_t i = 0; i < sizeof rooms / sizeof *rooms && !found; i++) {
			static struct walk w;
			memset(&w, 0, sizeof w);
			w.saboteur = &saboteurs[k];
			w.quiet = 1;
			w.limit = 400000;
			run(&w, &rooms[i]);
			found = w.broken >> saboteurs[k].rule & 1;
			walk_free(&w);
		}
		if (!found)
			printf("NOT CAUGHT: rule %d, %s\n", saboteurs[k].rule, saboteurs[k].what);
		caught += found;
	}
	printf("%d of %d broken variants caught\n", caught, n_saboteurs);
	return caught != n_saboteurs;
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
	w.plan = plan;
	world_init(&w.world, plan);
	struct node n = {0};
	remember(&w, 0, 0);
	int good = 1;
	for (int i = 0; i < count && good; i++) {
		int input = scans[i] % w.world.n_inputs;
		step(&w, &n, input);
		good = !w.broken;
		n = (struct node){w.world.station.sheets[0], w.world.station.before[0],
		                  w.world.station.undo[0], w.world.station.idle_asked[0],
		                  remember(&w, n.parent, input)};
	}
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

static int play_random(uint32_t cases, uint64_t seed)
{
	static const struct room_plan plan = {"random",     .tourniquets = 2, .forceps = 2,
	                                      .others = 1,  .rolls_on = 1,    .no_identity = 1,
	                                      .refused = 1, .digits = 2,      .people = 4};
	uint64_t scans_made = 0;
	random_state = seed;
	for (uint32_t i = 0; i < cases; i++) {
		uint8_t scans[512];
		int count = 200 + (int)random_number(300);
		for (int k = 0; k < count; k++)
			scans[k] = (uint8_t)random_number(256);
		if (!plays_well(&plan, scans, count, 1)) {
			printf("random case %u of seed %" PRIu64 " breaks a rule\n", i, seed);
			shrink(&plan, scans, count);
			return 1;
		}
		scans_made += (uint64_t)count;
	}
	printf("%u random long cases, %" PRIu64 " scans, no rule broken (seed %" PRIu64 ")\n", cases,
	       scans_made, seed);
	return 0;
}

int main(int argc, char **argv)
{
	int deep = argc > 1 && strcmp(argv[1], "--deep") == 0;
	uint64_t seed = argc > 2 ? strtoull(argv[2], NULL, 10) : deep ? (uint64_t)time(NULL) : 2026;
	if (argc > 2 && strcmp(argv[1], "--room") == 0)
		return walk_rooms(&rooms[atoi(argv[2])], 1, 0);
	if (argc > 2 && strcmp(argv[1], "--digest") == 0)
		return digest_all(argv[2], argc > 3 && strcmp(argv[3], "--update") == 0);
	int bad = walk_rooms(rooms, sizeof rooms / sizeof *rooms, deep ? 0 : 3000000);
	bad |= catch_saboteurs();
	bad |= play_random(deep ? 30000 : 3000, seed);
	if (deep)
		bad |= walk_rooms(deep_rooms, sizeof deep_rooms / sizeof *deep_rooms, 0);
	return bad;
}
