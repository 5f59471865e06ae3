/* Between the core and the stores bench (station/stock): what the record knows of a label, what a case took, and who must
 * hear of a recall. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/log.h"
#include "code/own-codes.h"
#include "count/wall.h"
#include "run/core-internal.h"

int core_is_bench(const struct core *c, int32_t room)
{
	return station_room_is(&c->station, room, ROOM_OF_STORES);
}

int32_t core_bench_room(const struct core *c)
{
	for (int i = 0; i < c->station.n_rooms; i++)
		if (core_is_bench(c, c->station.rooms[i].number))
			return c->station.rooms[i].number;
	return 0;
}

/* --- at a start ------------------------------------------------------------------------------------ */

static int follow(void *context, const struct event *e)
{
	struct core *c = context;
	int n = e->kind == EV_UNREADABLE ? 0 : stock_apply(&c->stock, e);
	if (n == -ENOMEM)
		return n;
	if (n < 0) {
		struct unfollowed u = {.seq = e->seq};
		snprintf(u.kind, sizeof u.kind, "%s", event_name(e->kind));
		station_not_followed(&c->station, &u, e->room);
	}
	return 0;
}

int stock_read(struct core *c, int64_t after, struct error *e)
{
	int count;
	const enum event_kind *kinds = stock_kinds(&count);
	int n = record_each_of_kinds(c->record, after, kinds, count, follow, c, e);
	return n == -ENOMEM ? error_set(e, n, "cannot read the record: out of memory: try again") : n;
}

/* --- what was scanned ------------------------------------------------------------------------------ */

static int is_label(const struct input *in)
{
	return strncmp(in->thing.identity, "item:", 5) == 0 || in->what == SAY_CODE_OF_STORES;
}

static int is_ours(const struct input *in)
{
	return in->act == ACT_CARD || in->act == ACT_DIGIT || in->act == ACT_BADGE || in->act == ACT_SLIP ||
	       in->act == ACT_CASE_LABEL || in->act == ACT_PAPER_SHEET || is_label(in);
}

/* Whether a pack's code is no answer to what is asked, so that these characters are text. */
static int asks_words(enum bench_question q)
{
	return q == BENCH_LOT || q == BENCH_EXPIRY || q == BENCH_HOW_MANY || q == BENCH_PRINT_MANY ||
	       q == BENCH_COUNT_MANY || q == BENCH_WRITE_MANY || q == BENCH_WRITE_WHY ||
	       q == BENCH_QUARANTINE_WHY || q == BENCH_NOTICE;
}

void bench_read(const struct core *c, const struct scan *s, struct input *in)
{
	if (!core_is_bench(c, in->room)) {
		if (in->packs > 1 && (in->act == ACT_THING || in->act == ACT_TRAY)) {
			in->act = ACT_UNKNOWN; /* a box is no item: nothing of it is counted */
			in->what = SAY_CODE_OF_BOX;
		}
		return;
	}
	enum bench_question q = (enum bench_question)stock_bench(&c->stock, in->room)->asked.what;
	int pack = in->act == ACT_THING || in->act == ACT_TRAY;
	if (!(s->flags & EVENT_KEYED) || !bench_wants_text(&c->stock, in->room) || is_ours(in) ||
	    (pack && !asks_words(q)) || s->size >= sizeof in->text || memchr(s->data, 0, s->size))
		return;
	in->act = ACT_TYPED;
	memcpy(in->text, s->data, s->size);
	in->text[s->size] = 0;
}

static struct batch batch_in(const struct input *in)
{
	struct batch b = {.expiry = in->thing.expiry};
	memcpy(b.line, in->thing.line, sizeof b.line);
	memcpy(b.lot, in->thing.lot, sizeof b.lot);
	return b;
}

/* -EIO and the like where the record could not be asked. */
static int look_at_label(struct core *c, const struct input *in, struct bench_input *out)
{
	struct event last;
	out->act = BENCH_LABEL;
	out->batch.first = out->batch.last = in->number;
	if (in->what == SAY_CODE_OF_STORES)
		return 0;
	int n = record_label_last(c->record, in->number, &last);
	out->label = label_known_by(n == RECORD_FOUND ? &last : NULL);
	return n < 0 ? n : 0;
}

/* 1 where the bench has an answer to it; 0: what any room says of such a code. */
static int is_of_bench(const struct core *c, const struct input *in)
{
	enum bench_question q = (enum bench_question)stock_bench(&c->stock, in->room)->asked.what;
	if (in->known.unasked)
		return 0;
	switch (in->act) {
	case ACT_CARD:
		return in->card_room == in->room && in->card != CARD_THIS_ROOM &&
		       in->card != CARD_SPARE_SCANNER;
	case ACT_SLIP:
		return (q == BENCH_FOUND || q == BENCH_FOUND_OF) && in->known.slip_case;
	case ACT_BADGE:
	case ACT_THING:
	case ACT_TRAY:
	case ACT_TYPED:
	case ACT_DIGIT:
	case ACT_CASE_LABEL:
	case ACT_PAPER_SHEET:
		return 1;
	case ACT_UNKNOWN:
		return in->what == SAY_CODE_OF_STORES;
	case ACT_TICK:
	case ACT_SIGNED:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_HALF:
	case ACT_STORED:
		break;
	}
	return 0;
}

static enum bench_act act_of(const struct input *in)
{
	switch (in->act) {
	case ACT_CARD:
		return BENCH_CARD;
	case ACT_BADGE:
		return BENCH_BADGE;
	case ACT_SLIP:
		return BENCH_SLIP;
	case ACT_THING:
	case ACT_TRAY:
		return BENCH_PACK;
	case ACT_TYPED:
		return BENCH_TYPED;
	case ACT_TICK:
	case ACT_DIGIT:
	case ACT_CASE_LABEL:
	case ACT_PAPER_SHEET:
	case ACT_UNKNOWN:
	case ACT_SIGNED:
	case ACT_BROKEN:
	case ACT_FOREIGN:
	case ACT_PATIENT:
	case ACT_HALF:
	case ACT_STORED:
		break;
	}
	return BENCH_OTHER;
}

/* 0, or a negative errno where the record could not be asked. */
static int bench_input_of(struct core *c, const struct input *in, struct bench_input *out)
{
	*out = (struct bench_input){.act = act_of(in),
	                            .at = in->at,
	                            .today = core_today(c),
	                            .room = in->room,
	                            .flags = in->flags,
	                            .card = in->card,
	                            .number = in->act == ACT_SLIP ? in->known.slip_case : in->number,
	                            .line = in->line,
	                            .batch = batch_in(in),
	                            .packs = in->packs > 1 ? in->packs : 1,
	                            .thing = in->thing,
	                            .used_in = in->known.used_in,
	                            .used_back = in->known.used_back,
	                            .again = in->repeated == REPEATED_NOW,
	                            .text = in->text};
	return is_label(in) ? look_at_label(c, in, out) : 0;
}

void core_bench_next(const struct core *c, int32_t room, struct next *out)
{
	bench_next(&c->stock, &c->station, room, out);
}

void bench_turn(struct core *c, const struct input *in)
{
	struct bench_input bench;
	struct outcome *o = &c->outcome;
	struct input unasked = *in;
	int n = is_of_bench(c, in) ? bench_input_of(c, in, &bench) : 1;
	if (n < 0) {
		log_warn_errno(LOG_RECORD, n, "the record could not be asked about a label");
		unasked.known.unasked = 1;
	}
	if (n != 0) {
		decide(&c->station, &unasked, o);
		return;
	}
	struct bench_outcome out = {.events = o->events};
	bench_decide(&c->stock, &c->station, &bench, &out);
	o->count = out.count;
	o->enter = 0;
	o->told_room = 0;
	sheet_clear(&o->sheet);
	next_clear(&o->reply.next);
	struct say what = said_say(&out.what);
	reply_say(&o->reply, (enum verdict)out.verdict, &what);
}

/* --- what a case took ------------------------------------------------------------------------------ */

struct taken { /* of one line, lot and expiry, in one way */
	struct batch batch;
	enum case_took what;
	int32_t items;
};

struct takes {
	struct taken list[2 * ITEMS_MAX];
	int n;
};

static int is_same(const struct batch *a, const struct batch *b)
{
	return a->expiry == b->expiry && strcmp(a->line, b->line) == 0 && strcmp(a->lot, b->lot) == 0;
}

static void add(struct takes *t, const struct thing *th, enum case_took what, int32_t items)
{
	struct batch b = {.expiry = th->expiry};
	memcpy(b.line, th->line, sizeof b.line);
	memcpy(b.lot, th->lot, sizeof b.lot);
	for (int i = 0; i < t->n; i++)
		if (t->list[i].what == what && is_same(&t->list[i].batch, &b)) {
			t->list[i].items += items;
			return;
		}
	t->list[t->n++] = (struct taken){b, what, items};
}

static int is_missing(const struct item *it)
{
	return it->place != ITEM_EXTRA && (item_open(it) || it->condition == CONDITION_PIECES_MISSING);
}

static void add_item(struct takes *t, const struct item *it)
{
	int pack = it->thing.line[0] && it->thing.single_use;
	if (pack && it->place == ITEM_RETURNED)
		add(t, &it->thing, TOOK_RETURNED, 1);
	else if (pack && it->place == ITEM_ISOLATED)
		add(t, &it->thing, TOOK_ISOLATED, 1);
	else if (pack && item_counts(it) && it->place != ITEM_EXTRA)
		add(t, &it->thing, TOOK_OPENED, 1);
	if (it->thing.line[0] && is_missing(it))
		add(t, &it->thing, TOOK_MISSING, it->pieces > it->shown ? it->pieces - it->shown : 1);
}

/* Of things that are each an item of their own several come in one pack. */
static int32_t packs_of(const struct station *st, const struct taken *x)
{
	const struct line *l = catalogue_by_key(&st->catalogue, x->batch.line);
	int32_t each = l && !role_has(l->role, TRAIT_BY_NUMBER) && l->per_pack > 0 ? l->per_pack : 1;
	return x->what == TOOK_MISSING ? x->items : (x->items + each - 1) / each;
}

static void put(struct core *c, struct outcome *o, const struct taken *x, int32_t case_no, int32_t room)
{
	if (o->count == OUTCOME_EVENTS_MAX) {
		log_warn(LOG_STORE, "what case %d took of %s is not told to stores: too much at once",
		         (int)case_no, x->batch.line);
		return;
	}
	o->events[o->count++] = (struct event){.kind = EV_CASE_TOOK,
	                                       .at = o->events[0].at,
	                                       .room = room,
	                                       .batch = x->batch,
	                                       .n = packs_of(&c->station, x),
	                                       .what = (uint8_t)x->what,
	                                       .other = case_no};
}

/* The sheet as it stood when its case ended. */
static int sheet_at_end(const struct core *c, const struct outcome *o, const struct event *end,
                        struct sheet *s)
{
	int index = station_sheet_of_case(&c->station, end->case_no);
	if (index < 0)
		return 0;
	*s = c->station.sheets[index];
	for (const struct event *e = o->events; e < end; e++)
		if (e->case_no == end->case_no && event_group(e->kind) != EVENTS_OF_STATION)
			sheet_apply(s, e, NULL);
	return 1;
}

static void take_case(struct core *c, struct outcome *o, const struct event *end)
{
	static struct sheet s; /* some 20 kB; one thread */
	static struct takes t;
	int32_t room = end->room;
	if (!sheet_at_end(c, o, end, &s))
		return;
	int32_t case_no = end->case_no;
	t.n = 0;
	for (int i = 0; i < s.n_items; i++)
		add_item(&t, &s.items[i]);
	for (int i = 0; i < t.n; i++)
		put(c, o, &t.list[i], case_no, room);
}

static void take_found(struct core *c, struct outcome *o, const struct event *found)
{
	struct taken x = {.what = TOOK_FOUND, .items = 1};
	memcpy(x.batch.line, found->thing.line, sizeof x.batch.line);
	put(c, o, &x, found->case_no, found->room);
}

/* The number of the label that a thing bears, where this station printed it; 0 none. */
static int32_t label_of(const struct thing *th)
{
	int number = 0;
	return sscanf(th->identity, "item:%8d", &number) == 1 ? number : 0;
}

/* A label that no bench read back stands on a pack all the same: the case saw it there. */
static void take_label(struct core *c, struct outcome *o, const struct event *in)
{
	int32_t number = label_of(&in->thing);
	const struct printing *p = stock_printing_with(&c->stock, number);
	if (!number || !p || p->fate[number - p->batch.first] || o->count == OUTCOME_EVENTS_MAX)
		return;
	struct event read = {.kind = EV_LABEL_FATE, .at = in->at, .room = in->room, .what = LABEL_OPENED};
	read.batch = p->batch;
	read.batch.first = read.batch.last = number;
	o->events[o->count++] = read;
}

static int counts_in(const struct event *e)
{
	return e->kind == EV_ITEM_IN || e->kind == EV_ITEM_LISTED;
}

void stock_takes(struct core *c, struct outcome *o)
{
	int count = o->count;
	if (!core_bench_room(c))
		return;
	for (int i = 0; i < count; i++) {
		if (counts_in(&o->events[i]))
			take_label(c, o, &o->events[i]);
		if (o->events[i].kind == EV_CASE_ENDED)
			take_case(c, o, &o->events[i]);
		else if (o->events[i].kind == EV_FOUND_AFTER)
			take_found(c, o, &o->events[i]);
	}
}

/* --- who is told ----------------------------------------------------------------------------------- */

/* A pack was counted in that is not the next to expire: it is accepted, and said. */
static void tell_earlier(struct core *c, const struct outcome *o, const struct event *in)
{
	const struct stock_lot *lot =
	    o->reply.verdict == VERDICT_REFUSED || !in->thing.line[0] || !in->thing.expiry
	        ? NULL
	        : stock_earlier(&c->stock, &c->station, in->thing.line, in->thing.expiry, core_today(c));
	if (lot)
		reply_add(&c->outcome.reply,
		          SAY(EARLIER_IN_STORES, .other_lot = lot->lot, .other_date = lot->expiry));
}

/* What stores called spoilt or threw away has either two labels or is not what they threw away. */
static void tell_gone(struct core *c, const struct event *in)
{
	struct event last;
	int32_t number = label_of(&in->thing);
	if (!number || c->outcome.reply.verdict == VERDICT_REFUSED ||
	    record_label_last(c->record, number, &last) != RECORD_FOUND)
		return;
	enum label_state state = label_known_by(&last).state;
	if (state == LABEL_GONE || state == LABEL_THROWN)
		reply_add(&c->outcome.reply, state == LABEL_GONE
		                                 ? SAY(LABEL_CALLED_SPOILT, .item_number = number)
		                                 : SAY(LABEL_CALLED_THROWN, .item_number = number));
}

void stock_tells(struct core *c, const struct input *in)
{
	const struct outcome *o = &c->outcome;
	if (core_is_bench(c, in->room)) {
		core_bench_next(c, in->room, &c->outcome.reply.next);
		return;
	}
	for (int i = 0; i < o->count; i++) {
		if (counts_in(&o->events[i]))
			tell_gone(c, &o->events[i]);
		if (o->events[i].kind == EV_ITEM_IN && c->station.policy.earlier_first)
			tell_earlier(c, o, &o->events[i]);
	}
}
