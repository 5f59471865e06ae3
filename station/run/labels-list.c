#include "run/labels-list.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"
#include "code/date.h"
#include "record/keys.h"
#include "run/core-internal.h"

#define ITEM_NUMBER_MAX 99999999

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "out of memory: try again");
}

/* --- written --------------------------------------------------------------------------------------- */

static json_t *batch_told(const struct batch *b)
{
	return json_pack("{s:I,s:I,s:s,s:s,s:i}", "first", (json_int_t)b->first, "last", (json_int_t)b->last,
	                 "line", b->line, "lot", b->lot, "expiry", (int)b->expiry);
}

static int add_batch(void *context, const struct event *ev)
{
	json_t *all = context;
	if (ev->kind != EV_LABELLED)
		return 0;
	if (json_array_size(all) == LABELS_LIST_MAX)
		json_array_remove(all, 0);
	return json_array_append_new(all, batch_told(&ev->batch)) < 0 ? -ENOMEM : 0;
}

static int64_t numbers_of(const json_t *labels)
{
	int64_t n = 0;
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)labels, i, x) n +=
	    json_number(x, "last", 0) - json_number(x, "first", 0) + 1;
	return n;
}

static json_t *payload_of(const struct core *c, json_t *labels)
{
	char made[26];
	int64_t now = clock_now().wall_ms;
	clock_text_full(now, clock_utc_min(now), made);
	return json_pack("{s:i,s:s,s:i,s:s,s:O}", "v", 1, "site", c->station.site, "station",
	                 (int)c->station.number, "made", made, "labels", labels);
}

json_t *labels_list_write(struct core *c, struct error *e)
{
	static const enum event_kind labelled = EV_LABELLED;
	_cleanup_(json_drop) json_t *labels = json_array();
	_cleanup_(buf_free) struct buf jws = {0};
	int n = record_each_of_kinds(c->record, 0, &labelled, 1, add_batch, labels, e);
	if (n < 0)
		return NULL;
	if (!json_array_size(labels)) {
		error_set(e, -ENOENT, "no list was written: this station has given out no label yet");
		return NULL;
	}
	_cleanup_(json_drop) json_t *payload = payload_of(c, labels);
	const struct public_key *k = seal_key(c->seal);
	if (!payload || seal_jws(c->seal, payload, &jws) < 0) {
		no_memory(e);
		return NULL;
	}
	return json_pack("{s:{s:i,s:{s:s,s:s,s:s,s:s},s:s},s:s,s:I}", "list", "v", 1, "key", "crv", "Ed25519",
	                 "kid", k->kid, "kty", "OKP", "x", k->x, "jws", jws.data, "kid", k->kid, "labels",
	                 (json_int_t)numbers_of(labels));
}

/* --- taken ----------------------------------------------------------------------------------------- */

struct taking {
	struct core *core;
	int32_t station;
	const char *kid;
	struct batch *known; /* of that station, from lists that were taken before */
	size_t n_known, room;
	struct event *events;
	size_t n;
	int64_t numbers;
};

static int add_known(void *context, const struct event *ev)
{
	struct taking *t = context;
	if (ev->kind != EV_LABELS_TAKEN || ev->other != t->station)
		return 0;
	if (t->n_known == t->room) {
		size_t room = t->room ? 2 * t->room : 64;
		struct batch *more = realloc(t->known, room * sizeof *more);
		if (!more)
			return -ENOMEM;
		t->known = more;
		t->room = room;
	}
	t->known[t->n_known++] = ev->batch;
	return 0;
}

static int check_key(const json_t *list, const char *typed, struct keys *keys, struct error *e)
{
	struct public_key k;
	*keys = (struct keys){0};
	if (json_number(list, "v", 0) != 1 || key_make(&k, json_text(json_object_get(list, "key"), "x")) < 0)
		return error_set(e, -EINVAL,
		                 "not taken: this is no list of labels: give the file that 'bandtally stock "
		                 "labels --write' made");
	if (strlen(typed) < KEY_TYPED_MIN || strncmp(k.kid, typed, strlen(typed)) != 0)
		return error_set(
		    e, -EPERM,
		    "not taken: it is signed by the key %s, and that is not what was typed (%.60s): "
		    "ask at the station that wrote it which key it named, and type at least %d "
		    "letters of it",
		    k.kid, typed, KEY_TYPED_MIN);
	return keys_add(keys, &k);
}

static int check_signed(const struct core *c, const struct keys *keys, const json_t *list, json_t **payload,
                        struct error *e)
{
	int n = keys_check(keys, json_text(list, "jws"), payload, NULL, e);
	if (n < 0)
		return n;
	if (n == 0)
		return error_set(
		    e, -EPERM,
		    "not taken: its signature does not hold: it was changed or damaged on the way: "
		    "fetch it again");
	if (strcmp(json_text(*payload, "site"), c->station.site) != 0)
		return error_set(e, -EINVAL, "not taken: it is of another site (%.20s)",
		                 json_text(*payload, "site"));
	int64_t station = json_number(*payload, "station", -1);
	if (station < 0 || station > 99 || station == c->station.number)
		return error_set(e, -EINVAL, "not taken: it is this station's own list");
	return 0;
}

static int read_batch(const struct core *c, const json_t *x, struct batch *b, struct error *e)
{
	int64_t first = json_number(x, "first", 0), last = json_number(x, "last", 0),
	        expiry = json_number(x, "expiry", 0);
	const char *line = json_text(x, "line"), *lot = json_text(x, "lot");
	*b = (struct batch){.first = first, .last = last};
	if (first < 1 || last < first || last > ITEM_NUMBER_MAX || expiry < 0 || expiry > 99991231 ||
	    (expiry && !date_make((int)expiry / 10000, (int)expiry / 100 % 100, (int)expiry % 100)))
		return error_set(e, -EINVAL, "not taken: it holds numbers that no label has: fetch it again");
	if (*lot && name_check("not taken: a lot of it", lot, LOT_MAX - 1, e) < 0)
		return -EINVAL;
	if (!catalogue_by_key(&c->station.catalogue, line))
		return error_set(
		    e, -ENOENT,
		    "not taken: the catalogue of this station has no line %.30s: import it first, "
		    "then take the list again",
		    line);
	b->expiry = (int32_t)expiry;
	snprintf(b->line, sizeof b->line, "%s", line);
	snprintf(b->lot, sizeof b->lot, "%s", lot);
	return 0;
}

static int is_same(const struct batch *a, const struct batch *b)
{
	return a->first == b->first && a->last == b->last && a->expiry == b->expiry &&
	       strcmp(a->line, b->line) == 0 && strcmp(a->lot, b->lot) == 0;
}

/* 1 it is known so already; 0 new; -EEXIST known otherwise. */
static int known(const struct taking *t, const struct batch *b, struct error *e)
{
	for (size_t i = 0; i < t->n_known; i++) {
		const struct batch *was = &t->known[i];
		if (was->last < b->first || b->last < was->first)
			continue;
		if (is_same(was, b))
			return 1;
		return error_set(e, -EEXIST,
		                 "not taken: it says of label %08d another line, lot or expiry than a list "
		                 "that was taken before: count these packs by their maker's code, and tell "
		                 "whoever looks after the stations",
		                 (int)(was->first > b->first ? was->first : b->first));
	}
	return 0;
}

static int take_batch(struct taking *t, const json_t *x, struct error *e)
{
	struct batch b;
	int n = read_batch(t->core, x, &b, e);
	if (n == 0)
		n = known(t, &b, e);
	if (n != 0)
		return n < 0 ? n : 0;
	struct event *ev = &t->events[t->n++];
	*ev = (struct event){.kind = EV_LABELS_TAKEN, .batch = b, .other = t->station};
	snprintf(ev->text, sizeof ev->text, "%s", t->kid);
	t->numbers += b.last - b.first + 1;
	return 0;
}

static int take_all(struct taking *t, const json_t *labels, struct error *e)
{
	size_t i, many = json_array_size(labels);
	json_t *x;
	int n = 0;
	if (!many || many > LABELS_LIST_MAX)
		return error_set(e, -EINVAL, "not taken: it lists no labels, or more than %d batches",
		                 LABELS_LIST_MAX);
	static const enum event_kind taken = EV_LABELS_TAKEN;
	n = record_each_of_kinds(t->core->record, 0, &taken, 1, add_known, t, e);
	t->events = n < 0 ? NULL : calloc(many, sizeof *t->events);
	if (!t->events)
		return n < 0 ? n : no_memory(e);
	json_array_foreach((json_t *)labels, i, x) if (n == 0) n = take_batch(t, x, e);
	if (n == 0 && t->n)
		n = core_store(t->core, t->events, (int)t->n, e);
	free(t->events);
	return n;
}

json_t *labels_list_take(struct core *c, const json_t *list, const char *typed, struct error *e)
{
	struct keys keys;
	_cleanup_(json_drop) json_t *payload = NULL;
	if (check_key(list, typed, &keys, e) < 0 || check_signed(c, &keys, list, &payload, e) < 0)
		return NULL;
	struct taking t = {
	    .core = c, .station = (int32_t)json_number(payload, "station", -1), .kid = keys.list[0].kid};
	int n = take_all(&t, json_object_get(payload, "labels"), e);
	free(t.known);
	if (n < 0)
		return NULL;
	return json_pack("{s:i,s:I,s:s}", "station", (int)t.station, "labels", (json_int_t)t.numbers, "kid",
	                 t.kid);
}
