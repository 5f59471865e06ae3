#include <string.h>

#include "base/eight.h"
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
	const char *from = t->at, *end = t->end - from > 17 ? from + 17 : t->end;
	const char *at = from;
	for (; at < end && *at >= '0' && *at <= '9'; at++)
		n = n * 10 + (*at - '0');
	t->at = at;
	if (at == from || *from == '0')
		return 0; /* a zero is left out, and no number begins with one */
	n = minus ? -n : n;
	if (n < f->low || n > f->high)
		return 0;
	field_put(out, f, n);
	return 1;
}

/* Goes to the first byte that is not an ordinary letter of ASCII, or to one of the last eight. */
static void skip_ordinary(struct text *t)
{
	const uint64_t each = 0x0101010101010101;
	for (uint64_t eight, odd; t->end - t->at > (ptrdiff_t)sizeof eight; t->at += sizeof eight) {
		eight = eight_at(t->at);
		/* The highest bit of a byte: set by what is below a space, a quote, a backslash and what is no ASCII.
		 * A borrow sets that of the byte behind such a one at most. */
		odd = (eight - each * ' ') | ((eight ^ each * '"') - each) | ((eight ^ each * '\\') - each) |
		      eight;
		odd &= each << 7;
		if (odd) {
			t->at += __builtin_ctzll(odd) / 8;
			return;
		}
	}
}

/* A text without escapes; its length, or -1. */
static int read_text(struct text *t, char *out, size_t size)
{
	if (!eat(t, '"'))
		return -1;
	const char *from = t->at;
	skip_ordinary(t);
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
	int kind = read_text(t, name, sizeof name) > 0 ? event_from_name(name) : -1;
	if (kind < 0)
		return 0;
	e->kind = (enum event_kind)kind;
	return 1;
}

static int read_name(struct text *t, void *out, const struct field *f, int (*from_name)(const char *name))
{
	char name[16];
	int n = read_text(t, name, sizeof name) > 0 ? from_name(name) : -1;
	if (n < 0)
		return 0;
	field_put(out, f, n);
	return 1;
}

static int read_enum(struct text *t, void *out, const struct field *f, enum event_list list)
{
	char name[32];
	int n = list != LIST_NONE && read_text(t, name, sizeof name) > 0 ? event_list_number(list, name) : -1;
	if (list == LIST_NONE)
		return read_number(t, out, f);
	if (n < 0)
		return 0;
	field_put(out, f, n);
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

static int read_part(struct text *t, char *base, const struct field *table)
{
	struct seen seen = {0};
	return read_members(t, base, table, &seen) && is_whole(table, &seen);
}

static int read_version(struct text *t, const struct field *f)
{
	const struct field number = {.low = f->low, .high = f->low};
	return read_number(t, NULL, &number);
}

/* FORM_FLAG and FORM_KIND are of the whole event: `base` is that. */
static int read_value(struct text *t, char *base, const struct field *f)
{
	struct event *e = (void *)base;
	switch ((enum form)f->form) {
	case FORM_NUMBER:
		return read_number(t, base + f->at, f);
	case FORM_VERSION:
		return read_version(t, f);
	case FORM_TEXT:
		return read_text(t, base + f->at, f->size) > 0;
	case FORM_FLAG:
		e->flags |= (uint32_t)f->low;
		return read_word(t, "true");
	case FORM_KIND:
		return read_kind(t, e);
	case FORM_PART:
		return read_part(t, base + f->at, f->part);
	case FORM_SAID:
		return read_part(t, base + f->at, f->part) &&
		       ((const struct said *)(const void *)(base + f->at))->saying;
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

/* The entry without a name has an empty mask: the way through a table always ends there. */
static const struct field *eat_key(struct text *t, const struct field *f)
{
	size_t left = (size_t)(t->end - t->at);
	char last[sizeof f->head] = {0};
	if (left && left <= sizeof last)
		memcpy(last, t->at + 1, left - 1);
	for (uint64_t head = eight_at(left > sizeof last ? t->at + 1 : last);; f++) {
		while ((head ^ f->head) & f->mask)
			f++;
		size_t n = (size_t)f->length + 3;
		if (!f->name || !left || *t->at != '"')
			return NULL;
		if (n < left && (n <= sizeof head + 1 || memcmp(t->at, f->key, n) == 0)) {
			t->at += n;
			return f;
		}
	}
}

/* The members of an object in canonical order, each at most once. */
static int read_members(struct text *t, char *base, const struct field *table, struct seen *seen)
{
	const struct field *f = table;
	if (!eat(t, '{'))
		return 0;
	if (eat(t, '}'))
		return 1;
	do {
		f = eat_key(t, f);
		if (!f || !read_value(t, base, f))
			return 0;
		seen->forms |= 1u << f->form;
		seen->only |= f->only;
		f++;
	} while (eat(t, ','));
	return eat(t, '}');
}

static int read_as(struct event *e, int format, const char *text, size_t size)
{
	const uint32_t parts = F_LINE | F_THING | F_STAFF | F_BATCH | F_KEY | F_SEAL | F_HEAD;
	const uint32_t needed = 1u << FORM_VERSION | 1u << FORM_KIND;
	struct text t = {text, text + size};
	struct seen seen = {0};
	/* memset() of a size that is known becomes an instruction that takes three times as long. */
	explicit_bzero(e, sizeof *e);
	e->format = (uint8_t)format;
	if (!read_members(&t, (char *)e, event_table(format), &seen) || t.at != t.end)
		return 0;
	uint32_t fields = event_fields_in(format, e->kind);
	return (seen.forms & needed) == needed && !(seen.only & ~fields) && !(fields & parts & ~seen.only);
}

/* Its number stands behind most of the text, and nearly all are of the latest. */
int event_read_canonical(struct event *e, const char *text, size_t size)
{
	for (int format = FORMAT_VERSION; format; format--)
		if (read_as(e, format, text, size))
			return 1;
	return 0;
}
