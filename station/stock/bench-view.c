#include "stock/bench-view.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/name.h"

static void put_n(json_t *o, const char *key, int64_t n)
{
	json_object_set_new(o, key, json_integer(n));
}

static void put(json_t *o, const char *key, const char *text)
{
	json_object_set_new(o, key, name_told(text, EVENT_TEXT_MAX));
}

static void put_line(json_t *o, const struct station *st, const char *key)
{
	const struct line *l = catalogue_by_key(&st->catalogue, key);
	put(o, "key", key);
	put(o, "name", l ? l->name : key);
}

/* --- the order ------------------------------------------------------------------------------------- */

struct listed {
	const struct stock_lot *lot;
};

static int by_expiry(const void *a, const void *b)
{
	const struct stock_lot *x = ((const struct listed *)a)->lot, *y = ((const struct listed *)b)->lot;
	int32_t p = x->expiry ? x->expiry : INT32_MAX, q = y->expiry ? y->expiry : INT32_MAX;
	if (p != q)
		return p < q ? -1 : 1;
	int n = strcmp(x->line, y->line);
	return n ? n : strcmp(x->lot, y->lot);
}

static int is_there(const struct stock_lot *l)
{
	return l->shelf || l->waits || l->unaccounted || l->in_rooms;
}

/* Those that lie somewhere, or all; the caller frees the list. NULL: none, or no memory. */
static struct listed *sorted(const struct stock *s, const char *line, const char *lot, size_t *n)
{
	struct listed *list = malloc((s->n_lots + 1) * sizeof *list);
	*n = 0;
	for (size_t i = 0; list && i < s->n_lots; i++) {
		const struct stock_lot *l = &s->lots[i];
		int wanted = *line || *lot ? 1 : is_there(l);
		if (wanted && (!*line || strcmp(l->line, line) == 0) && (!*lot || strcmp(l->lot, lot) == 0))
			list[(*n)++].lot = l;
	}
	if (list)
		qsort(list, *n, sizeof *list, by_expiry);
	return list;
}

/* --- one lot --------------------------------------------------------------------------------------- */

static json_t *rooms_of(const struct stock *s, const struct station *st, const struct stock_lot *lot)
{
	json_t *list = json_array();
	for (const struct stock_place *p = NULL; (p = stock_place_next(s, lot, p));) {
		if (!p->packs)
			continue;
		json_t *o = json_object();
		put_n(o, "room", p->room);
		put(o, "name", station_room_name(st, p->room));
		put_n(o, "packs", p->packs);
		json_array_append_new(list, o);
	}
	return list;
}

static const char *why_not(const struct station *st, const struct stock_lot *l, int32_t today)
{
	enum saying why = stock_withheld(st, l, today);
	return why == SAY_STOCK_EXPIRED         ? "expired"
	       : why == SAY_STOCK_IN_QUARANTINE ? "quarantine"
	       : why == SAY_STOCK_NO_LINE       ? "no-line"
	                                        : "";
}

static json_t *lot_json(const struct stock *s, const struct station *st, const struct stock_lot *l,
                        int32_t today)
{
	json_t *o = json_object();
	put_line(o, st, l->line);
	put(o, "lot", l->lot);
	put_n(o, "expiry", l->expiry);
	json_object_set_new(o, "days", l->expiry ? json_integer(stock_days(today, l->expiry)) : json_null());
	put_n(o, "shelf", l->shelf);
	put_n(o, "waits", l->waits);
	json_object_set_new(o, "rooms", rooms_of(s, st, l));
	put_n(o, "received", l->received);
	put_n(o, "issued", l->issued);
	put_n(o, "back", l->back);
	put_n(o, "opened", l->opened);
	put_n(o, "returned", l->returned);
	put_n(o, "isolated", l->isolated);
	put_n(o, "written_off", l->written_off);
	put_n(o, "unaccounted", l->unaccounted);
	put_n(o, "labelled", l->labelled);
	put_n(o, "label_open", l->printed);
	put_n(o, "label_spoilt", l->spoilt);
	put(o, "why", why_not(st, l, today));
	return o;
}

json_t *stock_list(const struct stock *s, const struct station *st, const char *line, const char *lot,
                   int32_t today)
{
	size_t n;
	json_t *list = json_array();
	struct listed *all = sorted(s, line, lot, &n);
	for (size_t i = 0; i < n; i++)
		json_array_append_new(list, lot_json(s, st, all[i].lot, today));
	free(all);
	return list;
}

/* --- sought ---------------------------------------------------------------------------------------- */

#define DUE_DAYS 90

static int is_sought(const struct station *st, const struct stock_lot *l, const char *text, const char *only,
                     int32_t today)
{
	const struct line *line = catalogue_by_key(&st->catalogue, l->line);
	if (*text && !strcasestr(l->line, text) && !strcasestr(l->lot, text) &&
	    !(line && strcasestr(line->name, text)))
		return 0;
	if (strcmp(only, "due") == 0)
		return l->expiry && stock_days(today, l->expiry) <= DUE_DAYS;
	if (strcmp(only, "waits") == 0)
		return l->waits > 0;
	if (strcmp(only, "withheld") == 0)
		return stock_withheld(st, l, today) != SAY_NONE;
	if (strcmp(only, "rooms") == 0)
		return l->in_rooms != 0;
	return strcmp(only, "unaccounted") != 0 || l->unaccounted;
}

json_t *stock_seek(const struct stock *s, const struct station *st, const char *text, const char *only,
                   int32_t today)
{
	size_t n, found = 0;
	json_t *o = json_object(), *list = json_array();
	struct listed *all = sorted(s, "", "", &n);
	for (size_t i = 0; i < n; i++) {
		if (!is_sought(st, all[i].lot, text, only, today))
			continue;
		if (found++ < STOCK_VIEW_MAX)
			json_array_append_new(list, lot_json(s, st, all[i].lot, today));
	}
	free(all);
	json_object_set_new(o, "stock", list);
	put_n(o, "more", found > STOCK_VIEW_MAX ? (int64_t)(found - STOCK_VIEW_MAX) : 0);
	return o;
}

/* --- what is to be done ---------------------------------------------------------------------------- */

static void add_task(json_t *list, const struct station *st, const char *what, const struct batch *b,
                     int32_t days, int32_t n)
{
	json_t *o = json_object();
	put(o, "what", what);
	put_line(o, st, b->line);
	put(o, "lot", b->lot);
	put_n(o, "days", days);
	put_n(o, "n", n);
	json_array_append_new(list, o);
}

/* Those that were opened since are none: no more than lie in rooms. */
static int32_t unanswered(const struct stock_lot *l)
{
	int32_t there = l->in_rooms > 0 ? l->in_rooms : 0;
	return l->unanswered < there ? l->unanswered : there;
}

static void lot_tasks(json_t *list, const struct station *st, const struct stock_lot *l, int32_t today)
{
	struct batch b = {.expiry = l->expiry};
	memcpy(b.line, l->line, sizeof b.line);
	memcpy(b.lot, l->lot, sizeof b.lot);
	int32_t days = l->expiry ? stock_days(today, l->expiry) : INT32_MAX;
	int32_t here = l->shelf + l->waits;
	if (l->waits)
		add_task(list, st, "confirm", &b, 0, l->waits);
	if (here > 0 && days < 0)
		add_task(list, st, "expired", &b, days, here);
	else if (here > 0 && days <= 30)
		add_task(list, st, "expires-30", &b, days, here);
	else if (here > 0 && days <= 90)
		add_task(list, st, "expires-90", &b, days, here);
	if (unanswered(l))
		add_task(list, st, "returned", &b, 0, unanswered(l));
	if (l->unaccounted)
		add_task(list, st, "unaccounted", &b, 0, l->unaccounted);
}

static json_t *tasks(const struct stock *s, const struct station *st, const struct listed *all, size_t n,
                     int32_t today)
{
	json_t *list = json_array();
	for (int i = 0; i < s->n_printings; i++) {
		int open = printing_open(&s->printings[i]);
		add_task(list, st, open ? "read-back" : "box-again", &s->printings[i].batch, 0, open);
	}
	for (size_t i = 0; i < n && json_array_size(list) < STOCK_VIEW_MAX; i++)
		lot_tasks(list, st, all[i].lot, today);
	return list;
}

static json_t *low(const struct stock *s, const struct station *st, int32_t today)
{
	json_t *list = json_array();
	for (size_t i = 0; i < st->catalogue.count; i++) {
		const struct line *l = &st->catalogue.lines[i];
		int32_t usable = l->minimum ? stock_usable(s, st, l->key, today) : 0;
		if (usable >= l->minimum)
			continue;
		json_t *o = json_object();
		put_line(o, st, l->key);
		put_n(o, "usable", usable);
		put_n(o, "minimum", l->minimum);
		json_array_append_new(list, o);
	}
	return list;
}

/* --- quarantine, and what is missing ------------------------------------------------------------------- */

static json_t *quarantine_json(const struct stock *s, const struct station *st, const struct quarantine *q)
{
	int64_t shelf = 0, waits = 0, opened = 0;
	json_t *o = json_object(), *rooms = json_array(), *near = json_array();
	for (size_t i = 0; i < s->n_lots; i++) {
		const struct stock_lot *l = &s->lots[i];
		if (strcmp(l->line, q->line) != 0)
			continue;
		if (q->lot[0] && lot_is_near(l->lot, q->lot))
			json_array_append_new(near, name_told(l->lot, LOT_MAX));
		if (q->lot[0] && strcmp(l->lot, q->lot) != 0)
			continue;
		shelf += l->shelf;
		waits += l->waits;
		opened += l->opened;
		json_t *in = rooms_of(s, st, l);
		json_array_extend(rooms, in);
		json_decref(in);
	}
	put_line(o, st, q->line);
	put(o, "lot", q->lot);
	put(o, "why", q->why);
	put(o, "notice", q->notice);
	put_n(o, "shelf", shelf);
	put_n(o, "waits", waits);
	put_n(o, "opened", opened);
	json_object_set_new(o, "rooms", rooms);
	json_object_set_new(o, "near", near);
	return o;
}

static json_t *quarantines(const struct stock *s, const struct station *st)
{
	json_t *list = json_array();
	for (size_t i = 0; i < st->n_quarantines && i < STOCK_VIEW_MAX; i++)
		json_array_append_new(list, quarantine_json(s, st, &st->quarantines[i]));
	return list;
}

static json_t *missing(const struct stock *s, const struct station *st, size_t most)
{
	json_t *list = json_array();
	for (size_t i = 0; i < s->n_missing && i < most; i++) {
		const struct stock_missing *m = &s->missing[i];
		json_t *o = json_object();
		put_n(o, "case", m->case_no);
		put(o, "room", station_room_name(st, m->room));
		put_line(o, st, m->line);
		put(o, "lot", m->lot);
		put_n(o, "n", m->packs);
		json_array_append_new(list, o);
	}
	return list;
}

/* --- trays and pouches ------------------------------------------------------------------------------- */

static json_t *listed(const struct station *st, const char *key, int n)
{
	json_t *o = json_object();
	put_line(o, st, key);
	put_n(o, "n", n);
	return o;
}

static json_t *trays(const struct station *st)
{
	json_t *list = json_array();
	for (size_t i = 0; i < st->catalogue.count; i++) {
		const struct line *l = &st->catalogue.lines[i];
		json_t *contents = json_array();
		for (int k = 0; k < LINE_CONTENTS_MAX && l->contents[k].key[0]; k++)
			json_array_append_new(contents, listed(st, l->contents[k].key, l->contents[k].count));
		json_t *o = json_object();
		put_line(o, st, l->key);
		json_object_set_new(o, "contents", contents);
		if (json_array_size(contents))
			json_array_append_new(list, o);
		else
			json_decref(o);
	}
	return list;
}

/* Those whose list has the line. */
static json_t *trays_with(const struct station *st, const char *key)
{
	json_t *list = json_array();
	for (size_t i = 0; i < st->catalogue.count; i++) {
		const struct line *l = &st->catalogue.lines[i];
		for (int k = 0; k < LINE_CONTENTS_MAX && l->contents[k].key[0]; k++)
			if (strcmp(l->contents[k].key, key) == 0)
				json_array_append_new(list, listed(st, l->key, l->contents[k].count));
	}
	return list;
}

static json_t *shortfalls(const struct stock *s, const struct station *st, size_t most)
{
	json_t *list = json_array();
	for (size_t i = 0; i < s->n_missing && json_array_size(list) < most; i++) {
		const struct stock_missing *m = &s->missing[i];
		const struct line *l = catalogue_by_key(&st->catalogue, m->line);
		if (!l || l->single_use)
			continue;
		json_t *o = listed(st, m->line, m->packs);
		put_n(o, "case", m->case_no);
		put(o, "room", station_room_name(st, m->room));
		json_object_set_new(o, "trays", trays_with(st, m->line));
		json_array_append_new(list, o);
	}
	return list;
}

json_t *stock_shortfalls(const struct stock *s, const struct station *st)
{
	json_t *o = json_object();
	json_object_set_new(o, "short", shortfalls(s, st, SIZE_MAX));
	json_object_set_new(o, "missing", missing(s, st, SIZE_MAX));
	return o;
}

/* --- labels ------------------------------------------------------------------------------------------ */

static json_t *open_numbers(const struct printing *p)
{
	json_t *list = json_array();
	for (int64_t i = p->batch.first; i <= p->batch.last; i++)
		if (!p->fate[i - p->batch.first])
			json_array_append_new(list, json_integer(i));
	return list;
}

static json_t *labels(const struct stock *s, const struct station *st)
{
	static const char *const when[] = {
	    [LABEL_NEVER] = "", [LABEL_BEFORE_STERILISING] = "before", [LABEL_AFTER_STERILISING] = "after"};
	json_t *list = json_array();
	for (int i = 0; i < s->n_printings; i++) {
		const struct batch *b = &s->printings[i].batch;
		const struct line *l = catalogue_by_key(&st->catalogue, b->line);
		json_t *o = json_object();
		put_line(o, st, b->line);
		put(o, "lot", b->lot);
		put_n(o, "expiry", b->expiry);
		put_n(o, "first", b->first);
		put_n(o, "last", b->last);
		put(o, "place", l ? l->label_place : "");
		put(o, "when", l ? when[l->label] : "");
		json_object_set_new(o, "open", open_numbers(&s->printings[i]));
		json_array_append_new(list, o);
	}
	return list;
}

json_t *stock_view(const struct stock *s, const struct station *st, int32_t room, int32_t today)
{
	size_t n;
	struct listed *all = sorted(s, "", "", &n);
	const struct bench *b = stock_bench(s, room);
	json_t *o = json_object(), *list = json_array();
	for (size_t i = 0; i < n && i < STOCK_VIEW_MAX; i++)
		json_array_append_new(list, lot_json(s, st, all[i].lot, today));
	put(o, "person", b->person ? staff_name(&st->staff, b->person) : "");
	json_object_set_new(o, "stock", list);
	put_n(o, "more", n > STOCK_VIEW_MAX ? (int64_t)(n - STOCK_VIEW_MAX) : 0);
	json_object_set_new(o, "low", low(s, st, today));
	json_object_set_new(o, "today", tasks(s, st, all, n, today));
	json_object_set_new(o, "quarantine", quarantines(s, st));
	json_object_set_new(o, "missing", missing(s, st, STOCK_VIEW_MAX));
	json_object_set_new(o, "short", shortfalls(s, st, STOCK_VIEW_MAX));
	json_object_set_new(o, "trays", trays(st));
	json_object_set_new(o, "labels", labels(s, st));
	free(all);
	return o;
}
