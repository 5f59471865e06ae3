/* Every state that a small stores can reach: two packs of a line with a code, or two of one that is labelled, with a label
 * each; each card, two badges and one that was withdrawn, what is typed, and a case that misses one. In each state the rules
 * of stores hold, and from each the deeds that the bench asks for end in nothing asked.
 *   walk-stores [--sabotage N]     N: with a mistake that must be noticed; without: all of them, and then without one
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/own-codes.h"
#include "tests/unit/stock/bench.h"

/* What lies beyond these is not walked. */
#define PACKS_MAX 2 /* that came */
#define LABELS_MAX 2
#define HOLDS_MAX 2  /* in quarantine: the lot, and the line */
#define STEPS_MAX 40 /* from any state to nothing asked */
#define FAR 20290331

/* What a scan can change; the rest of the stores is the same in all states. */
struct state {
	struct stock stock;
	struct quarantine held[HOLDS_MAX];
	size_t n_held;
	int64_t last_item;
	struct label_known labels[LABELS_MAX + 1];
	struct batch batches[LABELS_MAX + 1];
	uint64_t key;
	struct state *next; /* of the same hash */
};

#define BUCKETS (1 << 16)

struct walk {
	struct state *buckets[BUCKETS];
	struct state **queue;
	size_t states, room, transitions, ends;
	int sabotage;
	char broken[600];
};

static struct stores s; /* in which everything is tried */
static int labelled;    /* which of the two it is */

/* --- what is the same ------------------------------------------------------------------------------- */

/* What is held twice is held. */
static int is_held(const char *line, const char *lot)
{
	for (size_t i = 0; i < s.st.n_quarantines; i++)
		if (strcmp(s.st.quarantines[i].line, line) == 0 && strcmp(s.st.quarantines[i].lot, lot) == 0)
			return 1;
	return 0;
}

static void put_batch(struct buf *k, const struct batch *b)
{
	buf_printf(k, " %s/%s/%d/%d-%d", b->line, b->lot, (int)b->expiry, (int)b->first, (int)b->last);
}

static void put_lot(struct buf *k, const struct stock_lot *l)
{
	buf_printf(k, "\n%s/%s/%d: %d by %d, %d, %d without a label", l->line, l->lot, (int)l->expiry,
	           (int)l->waits, l->waits ? (int)l->typed_by : 0, (int)l->shelf,
	           (int)(l->received - l->labelled - l->printed));
	for (int room = 1; room <= 2; room++)
		buf_printf(k, " %d", (int)stock_in_room(&s.stock, l, room));
}

static void put_printing(struct buf *k, const struct printing *p)
{
	put_batch(k, &p->batch);
	for (int64_t i = 0; i <= p->batch.last - p->batch.first; i++)
		buf_printf(k, " %d", p->fate[i]);
}

static void put_bench(struct buf *k, const struct bench *b)
{
	buf_printf(k, "\nbench %d: %d, %d %d %d %d", (int)b->room, (int)b->person, b->asked.what,
	           (int)b->asked.n, (int)b->asked.other, (int)b->asked.person);
	put_batch(k, &b->asked.batch);
}

/* What decides, and nothing else: not how many ever came, went or were thrown away (by rule 2 that follows from what is
 * there), when, or what was typed as a reason. */
static uint64_t key_now(void)
{
	_cleanup_(buf_free) struct buf k = {0};
	uint64_t h = 1469598103934665603ULL;
	for (size_t i = 0; i < s.stock.n_lots; i++)
		put_lot(&k, &s.stock.lots[i]);
	for (size_t i = 0; i < s.stock.n_missing; i++)
		buf_printf(&k, " case %d misses %d", (int)s.stock.missing[i].case_no,
		           (int)s.stock.missing[i].packs);
	for (int i = 0; i < s.stock.n_printings; i++)
		put_printing(&k, &s.stock.printings[i]);
	put_bench(&k, &s.stock.benches[0]);
	buf_printf(&k, " held %d %d", is_held("GREEN-M", ""), is_held("GREEN-M", "T26"));
	for (int64_t i = 1; i <= s.st.last_item_no; i++)
		buf_printf(&k, " %d:%d %d %d", (int)i, s.labels[i].state, s.labels[i].fate,
		           (int)s.labels[i].room);
	for (size_t i = 0; i < k.size; i++)
		h = (h ^ (unsigned char)k.data[i]) * 1099511628211ULL;
	return h;
}

static void no_memory(int n)
{
	if (n < 0) {
		fprintf(stderr, "out of memory\n");
		exit(1);
	}
}

static void keep(struct state *x)
{
	no_memory(stock_copy(&x->stock, &s.stock));
	x->n_held = s.st.n_quarantines;
	if (x->n_held)
		memcpy(x->held, s.st.quarantines, x->n_held * sizeof *x->held);
	x->last_item = s.st.last_item_no;
	memcpy(x->labels, s.labels, sizeof x->labels);
	memcpy(x->batches, s.batches, sizeof x->batches);
}

static void back_to(const struct state *x)
{
	stock_deinit(&s.stock);
	no_memory(stock_copy(&s.stock, &x->stock));
	s.st.n_quarantines = 0;
	no_memory(station_reserve_quarantines(&s.st, HOLDS_MAX + 1));
	memcpy(s.st.quarantines, x->held, x->n_held * sizeof *x->held);
	s.st.n_quarantines = x->n_held;
	s.st.last_item_no = x->last_item;
	memcpy(s.labels, x->labels, sizeof x->labels);
	memcpy(s.batches, x->batches, sizeof x->batches);
}

/* --- mistakes that must be noticed ------------------------------------------------------------------ */

enum how { ONLY_N, STAYS, SAME_PERSON, PUT_AT_ONCE, READ_TWICE, CLOSED_EARLY, NEVER_CLOSED, STILL_MISSED };

static const struct {
	const char *what;
	enum event_kind kind;
	int32_t d_n; /* how many more than were decided */
	enum how how;
} mistakes[] = {
    {"a pack is issued and stays on the shelf", EV_ISSUED, 0, STAYS},
    {"one pack more is thrown away than lies there", EV_WRITTEN_OFF, 1, ONLY_N},
    {"more is confirmed than waits", EV_CONFIRMED, 1, ONLY_N},
    {"who typed it confirms it", EV_CONFIRMED, 0, SAME_PERSON},
    {"who began it releases it", EV_RELEASED, 0, SAME_PERSON},
    {"a pack that comes back is issued without a look", EV_BENCH_ASKED, 0, PUT_AT_ONCE},
    {"a label that was not read counts as read before", EV_LABEL_FATE, 0, READ_TWICE},
    {"labels are closed that are open", EV_LABEL_FATE, 0, CLOSED_EARLY},
    {"a question is never closed", EV_BENCH_ASKED, 0, NEVER_CLOSED},
    {"a case that was found for goes on missing it", EV_CASE_TOOK, 0, STILL_MISSED},
};
#define MISTAKES ((int)(sizeof mistakes / sizeof *mistakes))

static void spoil(int sabotage)
{
	const int n = sabotage - 1;
	for (int i = 0; sabotage && i < s.out.count; i++) {
		struct event *e = &s.out.events[i];
		if (e->kind != mistakes[n].kind)
			continue;
		e->n += mistakes[n].d_n;
		if (mistakes[n].how == READ_TWICE && e->what == LABEL_READ)
			e->other = LABEL_READ;
		else if (mistakes[n].how == CLOSED_EARLY)
			e->kind = EV_LABELS_CLOSED;
		else if (mistakes[n].how == NEVER_CLOSED && !e->what)
			e->kind = EV_BENCH_PERSON;
		else if (mistakes[n].how == SAME_PERSON)
			e->other = e->person;
		else if (mistakes[n].how == PUT_AT_ONCE && e->what == BENCH_SEALED)
			e->kind = EV_PUT_BACK;
		else if (mistakes[n].how == STILL_MISSED && e->what == TOOK_FOUND)
			e->n = 0;
	}
}

/* --- one step --------------------------------------------------------------------------------------- */

/* Packs can be counted that never came, and be opened in rooms, without end. */
static int is_near(void)
{
	int32_t came = 0;
	for (size_t i = 0; i < s.stock.n_lots; i++) {
		const struct stock_lot *l = &s.stock.lots[i];
		came += l->received;
		if (l->shelf > PACKS_MAX || l->in_rooms > 1 || l->in_rooms < -1)
			return 0;
	}
	return came <= PACKS_MAX && s.st.last_item_no <= LABELS_MAX && s.st.n_quarantines <= HOLDS_MAX;
}

static void broken(struct walk *w, const char *what)
{
	if (!w->broken[0])
		snprintf(w->broken, sizeof w->broken, "%.290s, after: %.280s", what, s.out.said);
}

/* As though the shelf had not been told of what was issued. */
static void put_on_shelf_again(void)
{
	for (int i = 0; i < s.out.count; i++) {
		const struct event *e = &s.out.events[i];
		struct batch b = e->batch;
		b.first = b.last = 0;
		struct stock_lot *l =
		    e->kind == EV_ISSUED ? (struct stock_lot *)stock_lot_of(&s.stock, &b) : NULL;
		if (l)
			l->shelf += e->n;
	}
}

/* What the rules say of an event, beside the state that it makes. */
static void look_at(struct walk *w, const struct event *e)
{
	struct batch b = e->batch;
	b.first = b.last = 0;
	const struct stock_lot *lot = stock_lot_of(&s.stock, &b);
	if (e->kind == EV_ISSUED && (!lot || stock_withheld(&s.st, lot, BENCH_TODAY)))
		broken(w, "stores rule 3: what must not be used is issued");
	if ((e->kind == EV_CONFIRMED || e->kind == EV_RELEASED) && e->person == e->other)
		broken(w, "stores rule 5: one person did what two must");
	if (e->kind == EV_PUT_BACK && s.stock.benches[0].asked.what != BENCH_SEALED)
		broken(w, "stores rule 6: a pack is on the shelf that nobody looked at");
}

static int32_t missed(void)
{
	int32_t n = 0;
	for (size_t i = 0; i < s.stock.n_missing; i++)
		n += s.stock.missing[i].packs;
	return n;
}

/* Of a case: what no case misses is kept as found as well. */
static int32_t found(void)
{
	int32_t n = 0;
	for (int i = 0; i < s.out.count; i++) {
		const struct event *e = &s.out.events[i];
		n += e->kind == EV_CASE_TOOK && e->what == TOOK_FOUND && e->other;
	}
	return n;
}

/* 1 where what follows is walked; what lies beyond it is not. */
static int step(struct walk *w, const struct bench_input *in)
{
	char why[300];
	bench_decide(&s.stock, &s.st, in, &s.out);
	if (!s.out.said[0])
		broken(w, "nothing is said");
	if (s.out.verdict == BENCH_REFUSED && (s.out.count < 1 || s.out.events[0].kind != EV_REFUSED))
		broken(w, "a refusal is not kept");
	const int32_t left = missed() - found();
	spoil(w->sabotage);
	for (int i = 0; i < s.out.count; i++)
		look_at(w, &s.out.events[i]);
	if (stores_apply(&s, s.out.events, s.out.count, why, sizeof why) < 0)
		broken(w, why);
	if (missed() != left)
		broken(w, "stores rule 9: a case goes on missing what was found");
	if (w->sabotage && mistakes[w->sabotage - 1].how == STAYS) {
		struct error e = {0};
		put_on_shelf_again();
		if (rule_stock_broken(&s.stock, &e))
			broken(w, e.text);
	}
	return is_near();
}

/* --- what can be done ------------------------------------------------------------------------------- */

#define INPUTS_MAX 96

static const char *text_for(enum bench_question q)
{
	switch (q) {
	case BENCH_LOT:
		return "A7";
	case BENCH_EXPIRY:
		return "2029-03-31";
	case BENCH_HOW_MANY:
	case BENCH_PRINT_MANY:
	case BENCH_COUNT_MANY:
	case BENCH_WRITE_MANY:
		return "1";
	case BENCH_WRITE_WHY:
	case BENCH_QUARANTINE_WHY:
	case BENCH_NOTICE:
		return "as told";
	default:
		return labelled ? "PLAIN-M/A7" : "GREEN-M/T26";
	}
}

static int all_inputs(struct bench_input in[INPUTS_MAX])
{
	static const int cards[][20] = {
	    {CARD_YES, CARD_NO, CARD_DONE, CARD_RECEIVE, CARD_UNDO, CARD_RETURNED_PACK, CARD_COUNT_SHELF,
	     CARD_WRITE_OFF, CARD_QUARANTINE, CARD_RELEASE, CARD_FOUND, CARD_NUMBER_1, CARD_TO_ROOM + 1,
	     CARD_TO_ROOM + 9},
	    {CARD_YES, CARD_NO, CARD_DONE, CARD_RECEIVE, CARD_UNDO, CARD_CONFIRM, CARD_PRINT_LABELS,
	     CARD_SPOILT_LABEL, CARD_DESTROYED_LABEL, CARD_NOBODY_TO_CONFIRM, CARD_NUMBER_1, CARD_TO_ROOM + 1,
	     CARD_WRITE_OFF}};
	const enum bench_question q = (enum bench_question)s.stock.benches[0].asked.what;
	const char *const texts[] = {text_for(q), "GREEN-X", ""};
	const int n_texts = bench_wants_text(&s.stock, BENCH_ROOM) ? 3 : 1;
	int n = 0;
	for (int i = 0; i < 20 && cards[labelled][i]; i++) {
		in[n] = stores_in(&s, BENCH_CARD);
		in[n++].card = cards[labelled][i];
	}
	for (int i = 0; i < n_texts; i++) {
		if (i == 1 && (q == BENCH_LOT || q == BENCH_WRITE_WHY || q == BENCH_QUARANTINE_WHY ||
		               q == BENCH_NOTICE)) /* any text will do */
			continue;
		in[n] = stores_in(&s, BENCH_TYPED);
		in[n++].text = texts[i];
	}
	for (int i = 1; i <= 3; i++) {
		in[n] = stores_in(&s, BENCH_BADGE);
		in[n++].number = i;
	}
	in[n++] =
	    labelled ? stores_pack_in(&s, "PLAIN-M", "", 0, 1) : stores_pack_in(&s, "GREEN-M", "T26", FAR, 1);
	in[n++] = labelled ? stores_pack_in(&s, "PLAIN-M", "A7", FAR, 1)
	                   : stores_pack_in(&s, "GREEN-M", "T26", FAR, 10);
	for (int32_t i = 1; labelled && i <= LABELS_MAX; i++)
		in[n++] = stores_label_in(&s, i);
	in[n] = stores_in(&s, BENCH_SLIP);
	in[n++].number = 41;
	in[n++] = stores_in(&s, BENCH_OTHER);
	return n;
}

/* --- no dead end ------------------------------------------------------------------------------------ */

/* What somebody does who takes this deed. */
static struct bench_input deed_done(const struct deed *d)
{
	const struct bench_asked *q = &stock_bench(&s.stock, BENCH_ROOM)->asked;
	struct bench_input in = stores_in(&s, BENCH_CARD);
	in.card = d->n;
	if (d->kind == DEED_BADGE) {
		in.act = BENCH_BADGE;
		in.number = q->person == 1 ? 2 : 1;
	} else if (d->kind == DEED_TYPE) {
		in.act = BENCH_TYPED;
		in.text = text_for((enum bench_question)q->what);
	} else if (d->kind == DEED_SLIP) {
		in.act = BENCH_SLIP;
		in.number = 41;
	} else if (d->kind == DEED_PACK || d->kind == DEED_MARK) {
		const struct batch *b = &q->batch;
		in = q->what == BENCH_BOX_AGAIN ? stores_pack_in(&s, b->line, b->lot, b->expiry, 1)
		     : labelled                 ? stores_pack_in(&s, "PLAIN-M", "A7", FAR, 1)
		                                : stores_pack_in(&s, "GREEN-M", "T26", FAR, 1);
	}
	return in;
}

/* Whether the deed `first` and then, again and again, the last of those asked for (which leaves it) end in nothing asked.
 * 0 where there is no such deed. */
static int ends(struct walk *w, const struct state *from, int first)
{
	int n = 0;
	back_to(from);
	do {
		bench_next(&s.stock, &s.st, BENCH_ROOM, &s.next);
		if (s.next.n_deeds < 1 || !s.next.words[0])
			broken(w, "nothing is asked for");
		if (w->broken[0] || (n == 0 && first >= s.next.n_deeds))
			return 0;
		struct bench_input in = deed_done(&s.next.deeds[n ? s.next.n_deeds - 1 : first]);
		step(w, &in);
	} while (stock_bench(&s.stock, BENCH_ROOM)->asked.what && !w->broken[0] && ++n < STEPS_MAX);
	if (n == STEPS_MAX)
		broken(w, "no end of questions");
	w->ends++;
	return 1;
}

/* --- the walk --------------------------------------------------------------------------------------- */

static void add(struct walk *w)
{
	uint64_t key = key_now();
	struct state **at = &w->buckets[key % BUCKETS];
	for (struct state *x = *at; x; x = x->next)
		if (x->key == key)
			return;
	if (w->states == w->room) {
		w->room = w->room ? 2 * w->room : 1024;
		w->queue = realloc(w->queue, w->room * sizeof *w->queue);
	}
	struct state *x = calloc(1, sizeof *x);
	no_memory(x && w->queue ? 0 : -ENOMEM);
	keep(x);
	x->key = key;
	x->next = *at;
	*at = x;
	w->queue[w->states++] = x;
}

/* A case of theatre 1 that ended and misses one. */
static void case_misses(struct walk *w, const struct state *from)
{
	if (labelled || !from->stock.n_lots || from->stock.n_missing || from->stock.benches[0].asked.what)
		return;
	back_to(from);
	stores_took(&s, TOOK_MISSING, 41, 1, "GREEN-M", "T26", FAR, 1);
	add(w);
}

static void visit(struct walk *w, const struct state *from)
{
	static struct bench_input in[INPUTS_MAX];
	back_to(from);
	int n = all_inputs(in);
	for (int i = 0; i < n && !w->broken[0]; i++) {
		back_to(from);
		if (step(w, &in[i]) && !w->broken[0])
			add(w);
		w->transitions++;
	}
	for (int k = 0; k < DEEDS_MAX && !w->broken[0] && ends(w, from, k); k++)
		;
	if (!w->broken[0])
		case_misses(w, from);
}

static void forget(struct walk *w)
{
	for (size_t i = 0; i < w->states; i++) {
		stock_deinit(&w->queue[i]->stock);
		free(w->queue[i]);
	}
	free(w->queue);
	memset(w, 0, sizeof *w);
	stores_deinit(&s);
}

static int walk(struct walk *w, int sabotage)
{
	w->sabotage = sabotage;
	for (labelled = 0; labelled < 2 && !w->broken[0]; labelled++) {
		size_t first = w->states;
		memset(w->buckets, 0, sizeof w->buckets); /* the two have no state in common */
		stores_deinit(&s);
		stores_init(&s);
		add(w);
		for (size_t i = first; i < w->states && !w->broken[0]; i++)
			visit(w, w->queue[i]);
	}
	return w->broken[0] != 0;
}

int main(int argc, char **argv)
{
	static struct walk w;
	int failed = 0, only = argc > 2 && strcmp(argv[1], "--sabotage") == 0 ? atoi(argv[2]) : 0;
	for (int i = 1; i <= MISTAKES; i++) {
		if (only && only != i)
			continue;
		int noticed = walk(&w, i);
		printf("%s: %s%s\n", mistakes[i - 1].what, noticed ? "noticed: " : "NOT NOTICED", w.broken);
		failed |= !noticed;
		forget(&w);
	}
	if (only)
		return failed;
	int broken = walk(&w, 0);
	printf("%zu states, %zu transitions, %zu ways to an end%s%s\n", w.states, w.transitions, w.ends,
	       broken ? ": " : "", w.broken);
	for (int i = 1; i <= STOCK_RULE_MAX; i++)
		printf("  %d %s\n", i, rule_stock_text(i));
	forget(&w);
	return failed || broken;
}
