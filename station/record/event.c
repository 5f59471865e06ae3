#include "record/event.h"

#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/json.h"
#include "record/event-text.h"

/* Collects whether any field was out of its range, so that one test at the end is enough. */
struct reader {
	const json_t *o;
	int bad;
};

static int64_t get(struct reader *r, const char *key, int64_t low, int64_t high)
{
	const json_t *v = json_object_get(r->o, key);
	if (!v)
		return 0;
	int64_t n = json_integer_value(v);
	if (!json_is_integer(v) || n < low || n > high) {
		r->bad = 1;
		return 0;
	}
	return n;
}

static void get_text(struct reader *r, const char *key, char *out, size_t size)
{
	const json_t *v = json_object_get(r->o, key);
	if (!v)
		return;
	size_t n = json_string_length(v);
	if (!json_is_string(v) || n >= size) {
		r->bad = 1;
		return;
	}
	memcpy(out, json_string_value(v), n + 1);
}

static void read_line(struct reader *r, struct line *l)
{
	char role[16] = "", identity[16] = "none";
	get_text(r, "key", l->key, sizeof l->key);
	get_text(r, "name", l->name, sizeof l->name);
	get_text(r, "role", role, sizeof role);
	get_text(r, "identity", identity, sizeof identity);
	int role_number = role_from_name(role), identity_number = identity_from_name(identity);
	r->bad |= role_number < 0 || identity_number < 0;
	l->role = role_number < 0 ? ROLE_OTHER : (enum role)role_number;
	l->identity = identity_number < 0 ? IDENTITY_NONE : (enum identity_kind)identity_number;
	l->marked = (int)get(r, "marked", 0, 1);
	l->visible = (int)get(r, "visible", 0, 1);
	l->single_use = (int)get(r, "single_use", 0, 1);
	l->rolls_on = (int)get(r, "rolls_on", 0, 1);
	l->shows_on_xray = (int)get(r, "xray", 0, 1);
	l->per_pack = (int16_t)get(r, "per_pack", 1, 500);
	l->size_min_mm = (int16_t)get(r, "size_min_mm", 0, 9999);
	l->size_max_mm = (int16_t)get(r, "size_max_mm", 0, 9999);
	get_text(r, "instead", l->instead, sizeof l->instead);
	const json_t *codes = json_object_get(r->o, "codes"), *contents = json_object_get(r->o, "contents");
	r->bad |= json_array_size(codes) > LINE_CODES_MAX || json_object_size(contents) > LINE_CONTENTS_MAX ||
	          (codes && !json_is_array(codes)) || (contents && !json_is_object(contents));
	for (size_t i = 0; !r->bad && i < json_array_size(codes); i++) {
		const char *text = json_string_value(json_array_get(codes, i));
		r->bad |= !text || strlen(text) >= LINE_CODE_MAX;
		if (!r->bad)
			memcpy(l->codes[i], text, strlen(text) + 1);
	}
	const char *key;
	json_t *n;
	size_t used = 0;
	json_object_foreach((json_t *)contents, key, n)
	{
		if (r->bad || strlen(key) >= LINE_KEY_MAX || used == LINE_CONTENTS_MAX ||
		    !json_is_integer(n) || json_integer_value(n) < 1 || json_integer_value(n) > 500) {
			r->bad = 1;
			break;
		}
		memcpy(l->contents[used].key, key, strlen(key) + 1);
		l->contents[used++].count = (int16_t)json_integer_value(n);
	}
}

static void read_thing(struct reader *r, struct thing *t)
{
	get_text(r, "line", t->line, sizeof t->line);
	get_text(r, "name", t->name, sizeof t->name);
	get_text(r, "identity", t->identity, sizeof t->identity);
	get_text(r, "lot", t->lot, sizeof t->lot);
	t->expiry = (int32_t)get(r, "expiry", 0, 99999999);
	t->role = (uint8_t)get(r, "role", 0, ROLE_REFUSED);
	t->identity_kind = (uint8_t)get(r, "identity_kind", 0, IDENTITY_MARK);
	t->single_use = (uint8_t)get(r, "single_use", 0, 1);
	t->rolls_on = (uint8_t)get(r, "rolls_on", 0, 1);
	t->unlisted = (uint8_t)get(r, "unlisted", 0, 1);
	t->shows_on_xray = (uint8_t)get(r, "xray", 0, 1);
}

static void read_parts(struct reader *r, struct event *e)
{
	uint32_t fields = event_fields(e->kind);
	struct reader part = {0};
	if (fields & F_LINE) {
		part.o = json_object_get(r->o, "line");
		read_line(&part, &e->line);
	} else if (fields & F_THING) {
		part.o = json_object_get(r->o, "thing");
		read_thing(&part, &e->thing);
	} else if (fields & F_STAFF) {
		part.o = json_object_get(r->o, "staff");
		e->staff.number = (int32_t)get(&part, "number", INT_MIN, INT_MAX);
		get_text(&part, "name", e->staff.name, sizeof e->staff.name);
		e->staff.kind = (uint8_t)get(&part, "kind", STAFF_PRACTITIONER, STAFF_CHARGE);
		e->staff.registered = (uint8_t)get(&part, "registered", 0, 1);
	} else if (fields & F_BATCH) {
		part.o = json_object_get(r->o, "batch");
		get_text(&part, "line", e->batch.line, sizeof e->batch.line);
		get_text(&part, "lot", e->batch.lot, sizeof e->batch.lot);
		e->batch.expiry = (int32_t)get(&part, "expiry", 0, 99999999);
		e->batch.first = get(&part, "first", 0, 99999999);
		e->batch.last = get(&part, "last", 0, 99999999);
	} else {
		return;
	}
	r->bad |= part.bad || !json_is_object(part.o);
}

static void read_common(struct reader *r, struct event *e)
{
	e->seq = get(r, "seq", 1, JSON_INTEGER_MAX);
	e->answer = (int32_t)get(r, "answer", INT_MIN, INT_MAX);
	e->at.boot = (int32_t)get(r, "boot", 0, INT_MAX);
	e->at.boot_ms = get(r, "boot_ms", -JSON_INTEGER_MAX, JSON_INTEGER_MAX);
	e->at.wall_ms = get(r, "wall_ms", -JSON_INTEGER_MAX, JSON_INTEGER_MAX);
	e->room = (int32_t)get(r, "room", 0, INT_MAX);
	e->case_no = (int32_t)get(r, "case", 0, INT_MAX);
	e->item = (uint8_t)get(r, "item", 0, 255);
	e->digit = (uint8_t)get(r, "digit", 0, DIGIT_NUMBER_MAX);
	e->person = (int32_t)get(r, "person", INT_MIN, INT_MAX);
	e->other = (int32_t)get(r, "other", INT_MIN, INT_MAX);
	e->n = (int32_t)get(r, "n", INT_MIN, INT_MAX);
	e->what = (uint8_t)get(r, "what", 0, 255);
	e->ref = get(r, "ref", 0, JSON_INTEGER_MAX);
	get_text(r, "text", e->text, sizeof e->text);
	e->flags = (json_truth(r->o, "late") ? EVENT_LATE : 0) |
	           (json_truth(r->o, "keyed") ? EVENT_KEYED : 0) |
	           (json_truth(r->o, "first") ? EVENT_FIRST : 0);
}

int event_read_strict(struct event *e, const char *text, size_t size, struct error *why)
{
	_cleanup_(json_drop) json_t *o = json_read(text, size, why);
	if (!o)
		return -EINVAL;
	memset(e, 0, sizeof *e);
	int64_t version = json_number(o, "v", 0);
	if (version != FORMAT_VERSION)
		return error_set(why, -EINVAL,
		                 "an event of format %" PRId64 ": this program reads format %d: use the "
		                 "version that wrote it, or a later one",
		                 version, FORMAT_VERSION);
	int kind = event_from_name(json_text(o, "kind"));
	if (kind < 0)
		return error_set(why, -EINVAL,
		                 "an event of unknown kind '%.40s': use a later version of the program",
		                 json_text(o, "kind"));
	e->kind = (enum event_kind)kind;
	struct reader r = {.o = o};
	read_common(&r, e);
	read_parts(&r, e);
	if (r.bad)
		return error_set(why, -EINVAL,
		                 "an event '%s' with a field out of its range: the record is damaged: "
		                 "restore a backup",
		                 event_name(e->kind));
	return 0;
}

int event_read(struct event *e, const char *text, size_t size, struct error *why)
{
	return event_read_canonical(e, text, size) ? 0 : event_read_strict(e, text, size, why);
}

const char *event_key(const struct event *e, char room[24])
{
	switch (e->kind) {
	case EV_ITEM_USED:
		return e->thing.identity;
	case EV_SLIP_QUEUED:
		snprintf(room, 24, "slip:%d", (int)e->n);
		return room;
	default:
		return "";
	}
}
