#include <string.h>

#include "record/event-table.h"
#include "record/event-text.h"

struct text {
	const char *at, *end;
};

struct seen {
	uint32_t forms; /* 1 << enum form */
	uint32_t only;  /* fields that not every kind has */
};

static int eat(struct text *t, char c)
{
	if (t->at == t->end || *t->at != c)
		return 0;
	t->at++;
	return 1;
}

static int read_number(struct text *t, void *out, const struct field *f)
{
	int minus = eat(t, '-');
	int64_t n = 0;
	const char *from = t->at;
	while (t->at < t->end && *t->at >= '0' && *t->at <= '9' && t->at - from < 17)
		n = n * 10 + (*t->at++ - '0');
	if (t->at == from || *from == '0')
		return 0; /* a zero is left out, and no number begins with one */
	n = minus ? -n : n;
	if (n < f->low || n > f->high)
		return 0;
	switch (f->size) {
	case 1:
		*(uint8_t *)out = (uint8_t)n;
		return 1;
	case 2: {
		int16_t small = (int16_t)n;
		memcpy(out, &small, sizeof small);
		return 1;
	}
	case 4: {
		int32_t small = (int32_t)n;
		memcpy(out, &small, sizeof small);
		return 1;
	}
	case 8:
		memcpy(out, &n, sizeof n);
		return 1;
	default:
		return 1; /* the format's version has no place */
	}
}

/* A text without escapes; its length, or -1. */
static int read_text(struct text *t, char *out, size_t size)
{
	if (!eat(t, '"'))
		return -1;
	const char *from = t->at;
	while (t->at < t->end && *t->at != '"') {
		unsigned char c = (unsigned char)*t->at;
		size_t n =
		    c >= 0x80 ? utf8_length((const unsigned char *)t->at, (size_t)(t->end - t->at)) : 1;
		if (c < 32 || c == '\\' || !n)
			return -1;
		t->at += n;
	}
	size_t n = (size_t)(t->at - from);
	if (n >= size || !eat(t, '"'))
		return -1;
	memcpy(out, from, n);
	out[n] = 0;
	return (int)n;
}

static int read_word(struct text *t, const char *word)
{
	size_t n = strlen(word);
	if ((size_t)(t->end - t->at) < n || memcmp(t->at, word, n) != 0)
		return 0;
	t->at += n;
	return 1;
}

static int read_kind(struct text *t, struct event *e)
{
	char name[32];
	int kind = read_text(t, name, sizeof name) > 0 ? 0 : EV_KINDS;
	for (const char *k; kind < EV_KINDS; kind++) {
		k = event_name((enum event_kind)kind);
		if (k[0] == name[0] && k[1] == name[1] && strcmp(k, name) == 0)
			break;
	}
	if (kind == EV_KINDS)
		return 0;
	e->kind = (enum event_kind)kind;
	return 1;
}

static int read_name(struct text *t, void *out, const struct field *f, int (*from_name)(const char *name))
{
	char name[16];
	int n = read_text(t, name, sizeof name) > 0 ? from_name(name) : -1;
	int32_t value = n;
	if (n < 0 || f->size != sizeof value)
		return 0;
	memcpy(out, &value, sizeof value);
	return 1;
}

static int read_enum(struct text *t, void *out, const struct field *f, enum event_list list)
{
	char name[32];
	int n = list != LIST_NONE && read_text(t, name, sizeof name) > 0 ? event_list_number(list, name) : -1;
	int32_t wide = n;
	if (list == LIST_NONE)
		return read_number(t, out, f);
	if (n < 0)
		return 0;
	if (f->size == 1)
		*(uint8_t *)out = (uint8_t)n;
	else
		memcpy(out, &wide, sizeof wide);
	return 1;
}

static int read_codes(struct text *t, char (*out)[LINE_CODE_MAX])
{
	int n = 0;
	if (!eat(t, '['))
		return 0;
	if (eat(t, ']'))
		return 1;
	do
		if (n == LINE_CODES_MAX || read_text(t, out[n++], LINE_CODE_MAX) <= 0)
			return 0;
	while (eat(t, ','));
	return eat(t, ']');
}

static int read_contents(struct text *t, const struct field *f, struct line_part *out)
{
	const struct field count = {.size = sizeof out->count, .low = f->low, .high = f->high};
	int n = 0;
	if (!eat(t, '{'))
		return 0;
	if (eat(t, '}'))
		return 1;
	do {
		if (n == LINE_CONTENTS_MAX || read_text(t, out[n].key, LINE_KEY_MAX) <= 0 ||
		    (n && !key_before(out[n - 1].key, out[n].key)) || !eat(t, ':') ||
		    !read_number(t, &out[n].count, &count))
			return 0;
		n++;
	} while (eat(t, ','));
	return eat(t, '}');
}

static int read_members(struct text *t, char *base, const struct field *table, struct seen *seen);

/* FORM_FLAG and FORM_KIND are of the whole event: `base` is that. */
static int read_value(struct text *t, char *base, const struct field *f)
{
	struct event *e = (void *)base;
	struct seen part = {0};
	const struct field version = {.low = f->low, .high = f->low};
	switch ((enum form)f->form) {
	case FORM_NUMBER:
		return read_number(t, base + f->at, f);
	case FORM_VERSION:
		return read_number(t, NULL, &version);
	case FORM_TEXT:
		return read_text(t, base + f->at, f->size) > 0;
	case FORM_FLAG:
		e->flags |= (uint32_t)f->low;
		return read_word(t, "true");
	case FORM_KIND:
		return read_kind(t, e);
	case FORM_PART:
		return read_members(t, base + f->at, f->part, &part);
	case FORM_ROLE:
		return read_name(t, base + f->at, f, role_from_name);
	case FORM_IDENTITY:
		return read_name(t, base + f->at, f, identity_from_name);
	case FORM_CODES:
		return read_codes(t, (void *)(base + f->at));
	case FORM_CONTENTS:
		return read_contents(t, f, (void *)(base + f->at));
	case FORM_ENUM: /* "kind" comes before those that it speaks of */
		return read_enum(t, base + f->at, f, field_list(f, f->list_at ? event_fields(e->kind) : 0));
	}
	return 0;
}

/* What a part must have is always written: an identity, codes and contents even where there are none. */
static int is_whole(const struct field *table, const struct seen *seen)
{
	const uint32_t of_line =
	    1u << FORM_ROLE | 1u << FORM_IDENTITY | 1u << FORM_CODES | 1u << FORM_CONTENTS;
	for (const struct field *f = table; f->name; f++)
		if (of_line >> f->form & 1 && !(seen->forms >> f->form & 1))
			return 0;
	return 1;
}

static int eat_key(struct text *t, const struct field *f)
{
	size_t n = (size_t)f->length + 3;
	if ((size_t)(t->end - t->at) <= n || t->at[1] != f->name[0] || memcmp(t->at, f->key, n) != 0)
		return 0;
	t->at += n;
	return 1;
}

/* The members of an object in canonical order, each at most once. */
static int read_members(struct text *t, char *base, const struct field *table, struct seen *seen)
{
	const struct field *f = table;
	if (!eat(t, '{'))
		return 0;
	if (eat(t, '}'))
		return is_whole(table, seen);
	do {
		while (f->name && !eat_key(t, f))
			f++;
		if (!f->name || !read_value(t, base, f))
			return 0;
		seen->forms |= 1u << f->form;
		seen->only |= f->only;
		f++;
	} while (eat(t, ','));
	return eat(t, '}') && is_whole(table, seen);
}

/* The number behind the key "v". No text can hold that key: its quotes would be escaped. 0 none that is known. */
static int format_of(const char *text, size_t size)
{
	static const char key[] = ",\"v\":";
	const size_t n = sizeof key - 1;
	for (size_t at = size > n ? size - n : 0; at--;) /* it is one of the last */
		if (text[at + 2] == 'v' && memcmp(text + at, key, n) == 0)
			return text[at + n] >= '1' && text[at + n] <= '0' + FORMAT_VERSION
			           ? text[at + n] - '0'
			           : 0;
	return 0;
}

int event_read_canonical(struct event *e, const char *text, size_t size)
{
	const uint32_t parts = F_LINE | F_THING | F_STAFF | F_BATCH | F_KEY | F_SEAL | F_HEAD;
	const uint32_t needed = 1u << FORM_VERSION | 1u << FORM_KIND;
	struct text t = {text, text + size};
	struct seen seen = {0};
	memset(e, 0, sizeof *e);
	int format = format_of(text, size);
	e->format = (uint8_t)format;
	if (!format || !read_members(&t, (char *)e, event_table(format), &seen) || t.at != t.end)
		return 0;
	uint32_t fields = event_fields_in(format, e->kind);
	return (seen.forms & needed) == needed && !(seen.only & ~fields) && !(fields & parts & ~seen.only);
}
