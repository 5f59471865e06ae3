#include "run/stock-lists.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"
#include "run/core-internal.h"
#include "stock/bench-view.h"

static void put_n(json_t *o, const char *key, int64_t n)
{
	json_object_set_new(o, key, json_integer(n));
}

static void put_room(json_t *o, const struct station *st, int32_t room)
{
	put_n(o, "room", room);
	json_object_set_new(o, "name", name_told(station_room_name(st, room), ROOM_NAME_MAX));
}

static int32_t day_of(const struct moment *at)
{
	return at->wall_ms ? clock_date_number(at->wall_ms, at->utc_min) : 0;
}

static json_t *done(json_t *o, int n, struct error *e)
{
	if (n >= 0)
		return o;
	json_decref(o);
	if (!e->text[0])
		error_set(e, n, "the record could not be asked: %s: try again", strerror(-n));
	return NULL;
}

/* --- cases that used one --------------------------------------------------------------------------- */

struct used {
	struct core *core;
	const struct batch *of;
	int32_t since, told_since;
	json_t *list;
};

/* The expiries of one lot in a case are one row. */
static json_t *row_of(const struct used *u, const struct event *e)
{
	for (size_t i = json_array_size(u->list); i-- > 0;) {
		json_t *o = json_array_get(u->list, i);
		if (json_number(o, "case", 0) != e->other)
			break;
		if (strcmp(json_text(o, "lot"), e->batch.lot) == 0)
			return o;
	}
	json_t *o = json_object();
	put_n(o, "case", e->other);
	put_room(o, &u->core->station, e->room);
	put_n(o, "day", day_of(&e->at));
	json_object_set_new(o, "lot", name_told(e->batch.lot, LOT_MAX));
	put_n(o, "packs", 0);
	json_array_append_new(u->list, o);
	return o;
}

static int add_used(void *context, const struct event *e)
{
	struct used *u = context;
	if (e->kind == EV_CASE_TOOK && e->other && !u->told_since)
		u->told_since = day_of(&e->at);
	if (e->kind != EV_CASE_TOOK || (e->what != TOOK_OPENED && e->what != TOOK_ISOLATED) ||
	    strcmp(e->batch.line, u->of->line) != 0 ||
	    (u->of->lot[0] && strcmp(e->batch.lot, u->of->lot) != 0) || day_of(&e->at) < u->since)
		return 0;
	json_t *o = row_of(u, e);
	put_n(o, "packs", json_number(o, "packs", 0) + e->n);
	return 0;
}

static int put_slips(struct core *c, json_t *list)
{
	size_t i;
	json_t *o;
	json_array_foreach(list, i, o)
	{
		int32_t slip = 0;
		int n = record_slip_of_case(c->record, (int32_t)json_number(o, "case", 0), &slip);
		if (n < 0)
			return n;
		put_n(o, "slip", slip);
	}
	return 0;
}

json_t *stock_used(struct core *c, const struct batch *of, int32_t since, struct error *e)
{
	static const enum event_kind took = EV_CASE_TOOK;
	struct used u = {.core = c, .of = of, .since = since, .list = json_array()};
	int n = record_each_of_kinds(c->record, 0, &took, 1, add_used, &u, e);
	if (n == 0)
		n = put_slips(c, u.list);
	json_t *o = json_object();
	json_object_set_new(o, "cases", u.list);
	put_n(o, "told_since", u.told_since);
	return done(o, n, e);
}

/* --- what was found -------------------------------------------------------------------------------- */

static int add_found(void *context, const struct event *e)
{
	struct used *u = context;
	const struct station *st = &u->core->station;
	const struct line *l = catalogue_by_key(&st->catalogue, e->batch.line);
	if (e->kind != EV_CASE_TOOK || e->what != TOOK_FOUND || day_of(&e->at) < u->since)
		return 0;
	json_t *o = json_object();
	put_n(o, "day", day_of(&e->at));
	json_object_set_new(o, "room", name_told(station_room_name(st, e->room), ROOM_NAME_MAX));
	json_object_set_new(o, "key", name_told(e->batch.line, LINE_KEY_MAX));
	json_object_set_new(o, "name", name_told(l ? l->name : e->batch.line, LINE_NAME_MAX));
	put_n(o, "case", e->other);
	json_array_insert_new(u->list, 0, o);
	return 0;
}

json_t *stock_found(struct core *c, int32_t since, struct error *e)
{
	static const enum event_kind took = EV_CASE_TOOK;
	struct used u = {.core = c, .since = since, .list = json_array()};
	int n = record_each_of_kinds(c->record, 0, &took, 1, add_found, &u, e);
	if (n == 0)
		n = put_slips(c, u.list);
	json_t *o = stock_shortfalls(&c->stock, &c->station);
	json_object_set_new(o, "found", u.list);
	return done(o, n, e);
}

/* --- a recall -------------------------------------------------------------------------------------- */

struct hold {
	const struct batch *of;
	struct moment at; /* since when, the last time; none where it is not in quarantine */
};

static int follow_held(void *context, const struct event *e)
{
	struct hold *h = context;
	if ((e->kind != EV_QUARANTINED && e->kind != EV_RELEASED) ||
	    strcmp(e->thing.line, h->of->line) != 0 ||
	    (e->thing.lot[0] && strcmp(e->thing.lot, h->of->lot) != 0))
		return 0;
	h->at = e->kind == EV_QUARANTINED ? e->at : (struct moment){0};
	return 0;
}

static json_t *silent(const struct core *c, const struct hold *h)
{
	json_t *list = json_array();
	for (int i = 0; h->at.wall_ms && i < c->station.n_rooms; i++) {
		const struct room *r = &c->station.rooms[i];
		const struct moment *heard = &c->station.heard[i].scan;
		if (!station_room_is(&c->station, r->number, ROOM_OF_CASES) || heard->wall_ms > h->at.wall_ms)
			continue;
		json_t *o = json_object();
		put_room(o, &c->station, r->number);
		put_n(o, "day", day_of(heard));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *open_cases(const struct core *c, const struct batch *of)
{
	struct event q = {.kind = EV_QUARANTINED}, has[SHEETS_MAX];
	json_t *list = json_array();
	memcpy(q.thing.line, of->line, sizeof q.thing.line);
	memcpy(q.thing.lot, of->lot, sizeof q.thing.lot);
	int n = station_recalls(&c->station, &q, has);
	for (int i = 0; i < n; i++) {
		json_t *o = json_object();
		put_n(o, "case", has[i].case_no);
		put_room(o, &c->station, has[i].room);
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *near_lots(const struct stock *s, const struct batch *of)
{
	json_t *list = json_array();
	for (size_t i = 0; of->lot[0] && i < s->n_lots; i++)
		if (strcmp(s->lots[i].line, of->line) == 0 && lot_is_near(s->lots[i].lot, of->lot))
			json_array_append_new(list, name_told(s->lots[i].lot, LOT_MAX));
	return list;
}

json_t *stock_recall_list(struct core *c, const struct batch *of, struct error *e)
{
	static const enum event_kind kinds[] = {EV_QUARANTINED, EV_RELEASED};
	struct hold h = {.of = of};
	json_t *o = stock_used(c, of, 0, e);
	if (o)
		o = done(o, record_each_of_kinds(c->record, 0, kinds, 2, follow_held, &h, e), e);
	if (!o)
		return NULL;
	json_object_set_new(o, "stock", stock_list(&c->stock, &c->station, of->line, of->lot, core_today(c)));
	json_object_set_new(o, "near", near_lots(&c->stock, of));
	json_object_set_new(o, "open", open_cases(c, of));
	json_object_set_new(o, "held", json_boolean(h.at.wall_ms != 0));
	json_object_set_new(o, "silent", silent(c, &h));
	return o;
}
