#include "record/event-json.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "base/json.h"
#include "record/event-table.h"
#include "record/event-text.h"

/* Collects which field was the first that is not as it must be, so that one test at the end is enough. */
struct reader {
	uint32_t fields;     /* of the event's kind */
	const char *bad;     /* its name; NULL none */
	const char *bad_in;  /* the part that it is in */
	const char *part_of; /* the part that is being read, NULL the event itself */
};

static void is_bad(struct reader *r, const struct field *f)
{
	if (r->bad)
		return;
	r->bad = f->name;
	r->bad_in = r->part_of;
}

static void read_number(struct reader *r, const json_t *v, const struct field *f, void *out)
{
	int64_t n = json_integer_value(v);
	if (!json_is_integer(v) || n < f->low || n > f->high)
		is_bad(r, f);
	else
		field_put(out, f, n);
}

static void read_enum(struct reader *r, const json_t *v, const struct field *f, void *out)
{
	enum event_list list = field_list(f, r->fields);
	int n = json_is_string(v) ? event_list_number(list, json_string_value(v)) : -EINVAL;
	if (list == LIST_NONE)
		read_number(r, v, f, out);
	else if (n < 0)
		is_bad(r, f);
	else
		field_put(out, f, n);
}

static void read_text(struct reader *r, const json_t *v, const struct field *f, char *out)
{
	size_t n = json_string_length(v);
	if (!json_is_string(v) || n >= f->size)
		is_bad(r, f);
	else
		memcpy(out, json_string_value(v), n + 1);
}

static void read_name(struct reader *r, const json_t *v, const struct field *f, void *out,
                      int (*from_name)(const char *name))
{
	int n = json_is_string(v) ? from_name(json_string_value(v)) : -EINVAL;
	if (n < 0)
		is_bad(r, f);
	else
		field_put(out, f, n);
}

static void read_codes(struct reader *r, const json_t *v, const struct field *f, char (*out)[LINE_CODE_MAX])
{
	if (!json_is_array(v) || json_array_size(v) > LINE_CODES_MAX) {
		is_bad(r, f);
		return;
	}
	for (size_t i = 0; i < json_array_size(v); i++) {
		const char *text = json_string_value(json_array_get(v, i));
		if (text && strlen(text) < LINE_CODE_MAX)
			memcpy(out[i], text, strlen(text) + 1);
		else
			is_bad(r, f);
	}
}

static void read_contents(struct reader *r, const json_t *v, const struct field *f, struct line_part *out)
{
	const char *key;
	json_t *n;
	if (!json_is_object(v) || json_object_size(v) > LINE_CONTENTS_MAX) {
		is_bad(r, f);
		return;
	}
	json_object_foreach((json_t *)v, key, n)
	{
		int64_t count = json_integer_value(n);
		if (!json_is_integer(n) || count < f->low || count > f->high || strlen(key) >= LINE_KEY_MAX) {
			is_bad(r, f);
			return;
		}
		memcpy(out->key, key, strlen(key) + 1);
		(out++)->count = (int16_t)count;
	}
}

static void read_fields(struct reader *r, const json_t *o, const struct field *f, char *base);

static void read_part(struct reader *r, const json_t *v, const struct field *f, char *base)
{
	if (!json_is_object(v)) {
		is_bad(r, f);
		return;
	}
	r->part_of = f->name;
	read_fields(r, v, f->part, base + f->at);
	r->part_of = NULL;
}

static void read_field(struct reader *r, const json_t *v, const struct field *f, char *base)
{
	switch ((enum form)f->form) {
	case FORM_NUMBER:
		read_number(r, v, f, base + f->at);
		return;
	case FORM_TEXT:
		read_text(r, v, f, base + f->at);
		return;
	case FORM_FLAG:
		if (json_is_true(v))
			((struct event *)(void *)base)->flags |= (uint32_t)f->low;
		return;
	case FORM_KIND:
	case FORM_VERSION:
		return; /* looked at before the fields */
	case FORM_PART:
	case FORM_SAID:
		read_part(r, v, f, base);
		return;
	case FORM_ROLE:
		read_name(r, v, f, base + f->at, role_from_name);
		return;
	case FORM_IDENTITY:
		read_name(r, v, f, base + f->at, identity_from_name);
		return;
	case FORM_CODES:
		read_codes(r, v, f, (void *)(base + f->at));
		return;
	case FORM_CONTENTS:
		read_contents(r, v, f, (void *)(base + f->at));
		return;
	case FORM_ENUM:
		read_enum(r, v, f, base + f->at);
		return;
	}
}

static int must_be_there(const struct field *f)
{
	return f->form == FORM_PART || f->form == FORM_ROLE;
}

static void read_fields(struct reader *r, const json_t *o, const struct field *f, char *base)
{
	for (; f->name; f++) {
		const json_t *v = json_object_get(o, f->name);
		if (field_is_of(f, r->fields) && (v || must_be_there(f)))
			read_field(r, v, f, base);
	}
}

static int bad_field(const struct reader *r, enum event_kind kind, struct error *why)
{
	return error_set(
	    why, -EINVAL,
	    "an event '%s' with '%s%s%s' out of its range: the record is damaged: restore a backup",
	    event_name(kind), r->bad_in ? r->bad_in : "", r->bad_in ? "." : "", r->bad);
}

int event_read_strict(struct event *e, const char *text, size_t size, struct error *why)
{
	struct error own;
	uint64_t failed = json_memory_failed();
	_cleanup_(json_drop) json_t *o = json_read(text, size, &own);
	if (!o && (own.code == -ENOMEM || json_memory_failed() != failed))
		return error_set(why, -ENOMEM, "an event cannot be read: out of memory: try again");
	if (!o)
		return error_set(why, -EINVAL, "%s", own.text);
	memset(e, 0, sizeof *e);
	int64_t version = json_number(o, "v", 0);
	if (version < 1 || version > FORMAT_VERSION)
		return error_set(why, -EINVAL,
		                 "an event of format %" PRId64
		                 ": this program reads formats 1 to %d: use the "
		                 "version that wrote it, or a later one",
		                 version, FORMAT_VERSION);
	int kind = event_from_name(json_text(o, "kind"));
	if (kind < 0)
		return error_set(why, -EINVAL,
		                 "an event of unknown kind '%.40s': use a later version of the program",
		                 json_text(o, "kind"));
	e->kind = (enum event_kind)kind;
	e->format = (uint8_t)version;
	struct reader r = {.fields = event_fields_in(e->format, e->kind)};
	read_fields(&r, o, event_table(e->format), (char *)e);
	return r.bad ? bad_field(&r, e->kind, why) : 0;
}

int64_t event_format(const char *text, size_t size)
{
	_cleanup_(json_drop) json_t *o = json_read(text, size, NULL);
	return json_number(o, "v", 0);
}

int event_read_exactly(struct event *e, const char *text, size_t size, struct buf *again, struct error *why)
{
	if (event_read_canonical(e, text, size))
		return 0;
	int n = event_read_strict(e, text, size, why);
	if (n < 0)
		return n;
	buf_clear(again);
	n = event_write(e, again);
	if (n == 0 && (again->size != size || memcmp(again->data, text, size) != 0))
		return error_set(why, -EILSEQ,
		                 "an event '%s' that would be written otherwise than it stands: it is not in "
		                 "canonical form",
		                 event_name(e->kind));
	return n < 0 ? error_set(why, n, "an event '%s' that cannot be written anew: %s: try again",
	                         event_name(e->kind), strerror(-n))
	             : 0;
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
	case EV_LABEL_FATE:
	case EV_ISSUED:
	case EV_PUT_BACK:
	case EV_WRITTEN_OFF:
		if (!e->batch.first)
			return "";
		snprintf(room, 24, "label:%08d", (int)e->batch.first);
		return room;
	case EV_LABELS_TAKEN:
		snprintf(room, 24, "labels-of:%d", (int)e->other);
		return room;
	default:
		return "";
	}
}
