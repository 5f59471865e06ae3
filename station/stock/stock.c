#include "stock/stock.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#define TABLE_LEAST 64

void stock_deinit(struct stock *s)
{
	free(s->lots);
	free(s->places);
	free(s->missing);
	free(s->table);
	*s = (struct stock){0};
}

/* --- lists ---------------------------------------------------------------------------------------- */

static int reserve(void **list, size_t *room, size_t wanted, size_t element)
{
	if (wanted <= *room)
		return 0;
	size_t more = wanted + wanted / 2 + 8;
	void *now = realloc(*list, more * element);
	if (!now)
		return -ENOMEM;
	*list = now;
	*room = more;
	return 0;
}

static uint32_t hash_text(uint32_t h, const char *text)
{
	for (; *text; text++)
		h = (h ^ (uint8_t)*text) * 16777619u;
	return (h ^ 0xff) * 16777619u;
}

static uint32_t hash_of(const char *line, const char *lot, int32_t expiry)
{
	return hash_text(hash_text(2166136261u, line), lot) ^ (uint32_t)expiry * 2654435761u;
}

static int is_lot(const struct stock_lot *l, const struct batch *b)
{
	return l->expiry == b->expiry && strcmp(l->line, b->line) == 0 && strcmp(l->lot, b->lot) == 0;
}

/* Where the lot stands in the table, or the free place where it belongs. */
static size_t slot_of(const struct stock *s, const struct batch *b)
{
	size_t at = hash_of(b->line, b->lot, b->expiry) & (s->table_size - 1);
	while (s->table[at] && !is_lot(&s->lots[s->table[at] - 1], b))
		at = (at + 1) & (s->table_size - 1);
	return at;
}

static struct batch batch_of(const struct stock_lot *l)
{
	struct batch b = {.expiry = l->expiry};
	memcpy(b.line, l->line, sizeof b.line);
	memcpy(b.lot, l->lot, sizeof b.lot);
	return b;
}

static int make_table(struct stock *s, size_t lots)
{
	size_t size = s->table_size ? s->table_size : TABLE_LEAST;
	while (size < 2 * lots)
		size *= 2;
	if (size == s->table_size)
		return 0;
	uint32_t *table = calloc(size, sizeof *table);
	if (!table)
		return -ENOMEM;
	free(s->table);
	s->table = table;
	s->table_size = size;
	for (size_t i = 0; i < s->n_lots; i++) {
		struct batch b = batch_of(&s->lots[i]);
		s->table[slot_of(s, &b)] = (uint32_t)i + 1;
	}
	return 0;
}

/* Memory for as many further lots, places and missing ones. */
static int reserve_more(struct stock *s, size_t more)
{
	int n = reserve((void **)&s->lots, &s->lots_room, s->n_lots + more, sizeof *s->lots);
	if (n == 0)
		n = reserve((void **)&s->places, &s->places_room, s->n_places + more, sizeof *s->places);
	if (n == 0)
		n = reserve((void **)&s->missing, &s->missing_room, s->n_missing + more, sizeof *s->missing);
	return n < 0 ? n : make_table(s, s->n_lots + more);
}

const struct stock_lot *stock_lot_of(const struct stock *s, const struct batch *of)
{
	uint32_t i = s->table_size ? s->table[slot_of(s, of)] : 0;
	return i ? &s->lots[i - 1] : NULL;
}

/* There is memory for it. */
static struct stock_lot *lot_made(struct stock *s, const struct batch *b)
{
	size_t at = slot_of(s, b);
	if (!s->table[at]) {
		struct stock_lot *l = &s->lots[s->n_lots++];
		*l = (struct stock_lot){.expiry = b->expiry};
		memcpy(l->line, b->line, sizeof l->line);
		memcpy(l->lot, b->lot, sizeof l->lot);
		s->table[at] = (uint32_t)s->n_lots;
	}
	return &s->lots[s->table[at] - 1];
}

static void add_to_room(struct stock *s, struct stock_lot *l, int32_t room, int32_t packs)
{
	l->in_rooms += packs;
	for (uint32_t at = l->places; at; at = s->places[at - 1].next)
		if (s->places[at - 1].room == room) {
			s->places[at - 1].packs += packs;
			return;
		}
	s->places[s->n_places++] = (struct stock_place){
	    .lot = (uint32_t)(l - s->lots), .room = room, .packs = packs, .next = l->places};
	l->places = (uint32_t)s->n_places;
}

static void add_at(struct stock *s, struct stock_lot *l, int32_t place, int32_t packs)
{
	if (place)
		add_to_room(s, l, place, packs);
	else
		l->shelf += packs;
}

/* --- events --------------------------------------------------------------------------------------- */

static const enum event_kind kinds[] = {
    EV_LABELLED, EV_BENCH_ASKED, EV_BENCH_PERSON, EV_RECEIVED,      EV_CONFIRMED,     EV_LABEL_FATE,
    EV_ISSUED,   EV_PUT_BACK,    EV_WRITTEN_OFF,  EV_LABELS_CLOSED, EV_STOCK_COUNTED, EV_CASE_TOOK,
};
#define KINDS ((int)(sizeof kinds / sizeof *kinds))

const enum event_kind *stock_kinds(int *count)
{
	*count = KINDS;
	return kinds;
}

int stock_has(enum event_kind kind)
{
	for (int i = 0; i < KINDS; i++)
		if (kinds[i] == kind)
			return 1;
	return 0;
}

static struct bench *bench_made(struct stock *s, int32_t room)
{
	for (int i = 0; i < ROOMS_MAX; i++) {
		if (!s->benches[i].room)
			s->benches[i].room = room;
		if (s->benches[i].room == room)
			return &s->benches[i];
	}
	return NULL;
}

static int ask(struct stock *s, const struct event *e)
{
	struct bench *b = bench_made(s, e->room);
	if (!b)
		return -ENOSPC;
	b->asked = (struct bench_asked){
	    .what = e->what, .batch = e->batch, .n = e->n, .other = e->other, .person = e->person};
	memcpy(b->asked.text, e->text, sizeof b->asked.text);
	return 0;
}

static int print(struct stock *s, const struct event *e)
{
	if (e->n != 1) /* of a command, or an earlier version: nobody reads them back here */
		return 0;
	if (s->n_printings == PRINTINGS_MAX || e->batch.last - e->batch.first >= PRINT_MAX)
		return -ENOSPC;
	struct printing *p = &s->printings[s->n_printings++];
	*p = (struct printing){.batch = e->batch, .room = e->room};
	lot_made(s, &e->batch)->printed += (int32_t)(e->batch.last - e->batch.first + 1);
	return 0;
}

/* What it was stands in the event: a printing that is closed knows it no longer. */
static void put_fate(struct stock *s, const struct event *e)
{
	struct stock_lot *l = lot_made(s, &e->batch);
	struct printing *p = stock_printing_of(s, e->batch.first);
	if (p)
		p->fate[e->batch.first - p->batch.first] = e->what;
	if (label_is_on_pack((enum label_fate)e->other))
		l->labelled--;
	else if (!e->other && p)
		l->printed--;
	else if (e->other)
		l->spoilt--;
	if (label_is_on_pack((enum label_fate)e->what))
		l->labelled++;
	else
		l->spoilt++;
}

static void close_printing(struct stock *s, const struct event *e)
{
	struct printing *p = stock_printing_of(s, e->batch.first);
	if (!p)
		return;
	s->n_printings--;
	memmove(p, p + 1, sizeof *p * (size_t)(&s->printings[s->n_printings] - p));
	memset(&s->printings[s->n_printings], 0, sizeof *p);
}

static void miss(struct stock *s, const struct event *e)
{
	struct stock_missing *m = &s->missing[s->n_missing++];
	*m = (struct stock_missing){.case_no = e->other, .room = e->room, .packs = e->n};
	memcpy(m->line, e->batch.line, sizeof m->line);
	memcpy(m->lot, e->batch.lot, sizeof m->lot);
}

/* An item without a number and a name is one of what its case misses first. */
static void find(struct stock *s, const struct event *e)
{
	for (size_t i = 0; i < s->n_missing; i++) {
		struct stock_missing *m = &s->missing[i];
		if (m->case_no != e->other || (e->batch.line[0] && strcmp(m->line, e->batch.line) != 0))
			continue;
		m->packs -= e->n;
		if (m->packs <= 0) {
			s->n_missing--;
			memmove(m, m + 1, sizeof *m * (s->n_missing - i));
		}
		return;
	}
}

static void take(struct stock *s, const struct event *e)
{
	struct stock_lot *l = lot_made(s, &e->batch);
	switch ((enum case_took)e->what) {
	case TOOK_OPENED:
		l->opened += e->n;
		add_to_room(s, l, e->room, -e->n);
		return;
	case TOOK_RETURNED:
		l->returned += e->n;
		l->unanswered += e->n;
		return;
	case TOOK_ISOLATED:
		l->isolated += e->n;
		add_to_room(s, l, e->room, -e->n);
		return;
	case TOOK_MISSING:
		miss(s, e);
		return;
	case TOOK_FOUND:
		break;
	}
}

static void receive(struct stock_lot *l, const struct event *e)
{
	l->received += e->n;
	if (e->what != RECEIVED_NOT_CONFIRMED) {
		l->shelf += e->n;
		return;
	}
	l->waits += e->n;
	l->typed_by = e->person;
}

/* Which of those that lay in a room it was, nothing says: one that was returned there, as long as there are any. */
static void answer(struct stock_lot *l, int32_t packs)
{
	l->unanswered -= l->unanswered < packs ? l->unanswered : packs;
}

/* Of which a pack is that is not there, or there besides, nothing says: those that wait are the last to be issued, so that
 * nothing reaches the shelf by a count that nobody confirmed. */
static void count_all(struct stock_lot *l, int32_t n)
{
	int32_t sure = n > l->waits ? n - l->waits : 0;
	l->unaccounted += l->shelf + l->waits - n;
	if (!l->waits || sure < l->shelf)
		l->shelf = sure;
	l->waits = n - l->shelf;
}

static void move(struct stock *s, const struct event *e)
{
	struct stock_lot *l = lot_made(s, &e->batch);
	int32_t there = stock_at(s, l, e->other);
	switch (e->kind) {
	case EV_RECEIVED:
		receive(l, e);
		break;
	case EV_CONFIRMED:
		l->waits -= e->n;
		l->shelf += e->n;
		break;
	case EV_ISSUED:
		l->shelf -= e->n;
		l->issued += e->n;
		add_to_room(s, l, e->other, e->n);
		break;
	case EV_PUT_BACK:
		l->shelf += e->n;
		l->back += e->n;
		add_to_room(s, l, e->other, -e->n);
		answer(l, e->n);
		break;
	case EV_WRITTEN_OFF:
		l->written_off += e->n;
		answer(l, e->other ? e->n : 0);
		add_at(s, l, e->other, -e->n);
		break;
	case EV_STOCK_COUNTED:
		if (e->what == COUNTED_WITH_WAITING && !e->other) {
			count_all(l, e->n);
			break;
		}
		l->unaccounted += there - e->n;
		add_at(s, l, e->other, e->n - there);
		break;
	default: /* stock_apply() */
		break;
	}
}

int stock_apply(struct stock *s, const struct event *e)
{
	if (!stock_has(e->kind))
		return 0;
	int n = reserve_more(s, 1);
	if (n < 0)
		return n;
	struct bench *b;
	switch (e->kind) {
	case EV_LABELLED:
		return print(s, e);
	case EV_BENCH_ASKED:
		return ask(s, e);
	case EV_BENCH_PERSON:
		if (!(b = bench_made(s, e->room)))
			return -ENOSPC;
		b->person = e->person;
		return 0;
	case EV_LABEL_FATE:
		put_fate(s, e);
		return 0;
	case EV_LABELS_CLOSED:
		close_printing(s, e);
		return 0;
	case EV_CASE_TOOK:
		if (e->what == TOOK_FOUND)
			find(s, e);
		else
			take(s, e);
		return 0;
	default: /* stock_has() */
		move(s, e);
		return 0;
	}
}

static int count_of(const struct event *events, int count, enum event_kind kind)
{
	int n = 0;
	for (int i = 0; i < count; i++)
		n += events[i].kind == kind && (kind != EV_LABELLED || events[i].n == 1);
	return n;
}

/* Benches that the events are of, and that are not known yet. */
static int new_benches(const struct stock *s, const struct event *events, int count)
{
	int n = 0;
	for (int i = 0; i < count; i++)
		if ((events[i].kind == EV_BENCH_ASKED || events[i].kind == EV_BENCH_PERSON) &&
		    !stock_bench(s, events[i].room)->room)
			n++;
	return n;
}

int stock_fits(struct stock *s, const struct event *events, int count, struct error *e)
{
	int more = 0, free_benches = 0;
	for (int i = 0; i < count; i++)
		more += stock_has(events[i].kind);
	if (more && reserve_more(s, (size_t)more) < 0)
		return error_set(e, -ENOMEM, "cannot store this: out of memory: try again");
	for (int i = 0; i < ROOMS_MAX; i++)
		free_benches += !s->benches[i].room;
	if (s->n_printings + count_of(events, count, EV_LABELLED) > PRINTINGS_MAX)
		return error_set(
		    e, -ENOSPC,
		    "cannot store this: the labels of %d printings were not read back: read them "
		    "back, or scan SPOILT LABEL and their numbers",
		    s->n_printings);
	if (free_benches == 0 && new_benches(s, events, count))
		return error_set(e, -ENOSPC, "cannot store this: more than %d benches: use another",
		                 ROOMS_MAX);
	return 0;
}

/* --- copies --------------------------------------------------------------------------------------- */

int stock_copy(struct stock *to, const struct stock *from)
{
	*to = (struct stock){0};
	size_t most = from->n_lots > from->n_places ? from->n_lots : from->n_places;
	if (reserve_more(to, most > from->n_missing ? most : from->n_missing) < 0) {
		stock_deinit(to);
		return -ENOMEM;
	}
	for (size_t i = 0; i < from->n_lots; i++) {
		struct batch b = batch_of(&from->lots[i]);
		*lot_made(to, &b) = from->lots[i];
	}
	if (from->n_places)
		memcpy(to->places, from->places, from->n_places * sizeof *to->places);
	if (from->n_missing)
		memcpy(to->missing, from->missing, from->n_missing * sizeof *to->missing);
	to->n_places = from->n_places;
	to->n_missing = from->n_missing;
	memcpy(to->printings, from->printings, sizeof to->printings);
	to->n_printings = from->n_printings;
	memcpy(to->benches, from->benches, sizeof to->benches);
	return 0;
}

static int put_list(struct buf *out, const void *list, size_t count, size_t element)
{
	uint64_t n = count;
	int r = buf_add(out, &n, sizeof n);
	return r < 0 || !count ? r : buf_add(out, list, count * element);
}

int stock_pack(const struct stock *s, struct buf *out)
{
	int n = put_list(out, s->lots, s->n_lots, sizeof *s->lots);
	if (n == 0)
		n = put_list(out, s->places, s->n_places, sizeof *s->places);
	if (n == 0)
		n = put_list(out, s->missing, s->n_missing, sizeof *s->missing);
	if (n == 0)
		n = put_list(out, s->printings, (size_t)s->n_printings, sizeof *s->printings);
	return n < 0 ? n : put_list(out, s->benches, ROOMS_MAX, sizeof *s->benches);
}

struct in {
	const char *at, *end;
};

/* How many elements follow, which `*list` then points to. */
static int take_list(struct in *in, const char **list, size_t *count, size_t element)
{
	uint64_t n;
	if ((size_t)(in->end - in->at) < sizeof n)
		return -EINVAL;
	memcpy(&n, in->at, sizeof n);
	in->at += sizeof n;
	if (n > (uint64_t)(in->end - in->at) / element)
		return -EINVAL;
	*list = in->at;
	*count = (size_t)n;
	in->at += n * element;
	return 0;
}

int stock_unpack(struct stock *s, const void *bytes, size_t size)
{
	struct in in = {bytes, (const char *)bytes + size};
	const char *list[5];
	size_t n[5];
	static const size_t element[5] = {sizeof(struct stock_lot), sizeof(struct stock_place),
	                                  sizeof(struct stock_missing), sizeof(struct printing),
	                                  sizeof(struct bench)};
	for (int i = 0; i < 5; i++)
		if (take_list(&in, &list[i], &n[i], element[i]) < 0)
			return -EINVAL;
	if (in.at != in.end || n[3] > PRINTINGS_MAX || n[4] != ROOMS_MAX)
		return -EINVAL;
	size_t most = n[0] > n[1] ? n[0] : n[1];
	if (reserve_more(s, most > n[2] ? most : n[2]) < 0)
		return -ENOMEM;
	for (size_t i = 0; i < n[0]; i++) {
		struct stock_lot l;
		memcpy(&l, list[0] + i * sizeof l, sizeof l);
		struct batch b = batch_of(&l);
		*lot_made(s, &b) = l;
	}
	if (n[1])
		memcpy(s->places, list[1], n[1] * sizeof *s->places);
	if (n[2])
		memcpy(s->missing, list[2], n[2] * sizeof *s->missing);
	memcpy(s->printings, list[3], n[3] * sizeof *s->printings);
	memcpy(s->benches, list[4], sizeof s->benches);
	s->n_places = n[1];
	s->n_missing = n[2];
	s->n_printings = (int)n[3];
	return 0;
}
