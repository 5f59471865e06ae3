#include <errno.h>
#include <stdint.h>
#include <string.h>

#include "base/json.h"
#include "record/event-json.h"
#include "record/event-table.h"
#include "record/event-text.h"

/* The fullest event: every text of every part at its length, each byte of it escaped as \u00xx. */
#define EVENT_BYTES_MAX 12288

/* Written directly, key after key in canonical order: this stands between a scan and its reply. */
struct writer {
	char text[EVENT_BYTES_MAX];
	size_t size;
	int bad;     /* -EINVAL */
	char before; /* what comes before the next key */
};

size_t utf8_length(const unsigned char *at, size_t size)
{
	static const unsigned char least[] = {0, 0, 0xc2, 0xe0, 0xf0};
	unsigned char c = at[0];
	size_t n = c < 0x80 ? 1 : c >= 0xf0 ? 4 : c >= 0xe0 ? 3 : 2;
	if (n == 1)
		return size ? 1 : 0;
	if (c < least[n] || c > 0xf4 || n > size)
		return 0;
	for (size_t i = 1; i < n; i++)
		if ((at[i] & 0xc0) != 0x80)
			return 0;
	if ((c == 0xe0 && at[1] < 0xa0) || (c == 0xed && at[1] > 0x9f) || (c == 0xf0 && at[1] < 0x90) ||
	    (c == 0xf4 && at[1] > 0x8f))
		return 0;
	return n;
}

static void put(struct writer *w, const char *bytes, size_t size)
{
	if (size > sizeof w->text - w->size) {
		w->bad = -EINVAL;
		return;
	}
	memcpy(w->text + w->size, bytes, size);
	w->size += size;
}

static void put_key(struct writer *w, const struct field *f)
{
	put(w, &w->before, 1);
	put(w, f->key, (size_t)f->length + 3);
	w->before = ',';
}

static void put_digits(struct writer *w, int64_t n)
{
	char digits[24], *at = digits + sizeof digits;
	uint64_t rest = n < 0 ? 0 - (uint64_t)n : (uint64_t)n;
	if (rest > JSON_INTEGER_MAX)
		w->bad = -EINVAL;
	for (; rest; rest /= 10)
		*--at = (char)('0' + rest % 10);
	if (n < 0)
		*--at = '-';
	put(w, at, (size_t)(digits + sizeof digits - at));
}

static int64_t number_at(const void *value, const struct field *f)
{
	int16_t n2;
	int32_t n4;
	int64_t n8;
	switch (f->size) {
	case 1:
		return *(const uint8_t *)value;
	case 2:
		memcpy(&n2, value, sizeof n2);
		return n2;
	case 4:
		memcpy(&n4, value, sizeof n4);
		return n4;
	default:
		memcpy(&n8, value, sizeof n8);
		return n8;
	}
}

static void put_number(struct writer *w, const struct field *f, int64_t n)
{
	if (!n)
		return;
	put_key(w, f);
	put_digits(w, n);
}

static void put_escaped(struct writer *w, unsigned char c)
{
	static const char hex[] = "0123456789abcdef";
	static const char named[32] = {[8] = 'b', [9] = 't', [10] = 'n', [12] = 'f', [13] = 'r'};
	char text[6] = {'\\', (char)c, '0', '0', hex[c >> 4], hex[c & 15]};
	if (c < 32)
		text[1] = named[c] ? named[c] : 'u';
	put(w, text, text[1] == 'u' && c < 32 ? 6 : 2);
}

/* A text that was cut in the middle of a letter must not cost the whole of it: what is no UTF-8 becomes '?'.
 */
static void put_string(struct writer *w, const char *text)
{
	const unsigned char *s = (const unsigned char *)text;
	size_t size = strlen(text), from = 0, at = 0;
	put(w, "\"", 1);
	while (at < size) {
		size_t n = utf8_length(s + at, size - at);
		if (n && s[at] >= 32 && s[at] != '"' && s[at] != '\\') {
			at += n;
			continue;
		}
		put(w, text + from, at - from);
		if (n)
			put_escaped(w, s[at]);
		else
			put(w, "?", 1);
		from = ++at;
	}
	put(w, text + from, at - from);
	put(w, "\"", 1);
}

static void put_text(struct writer *w, const struct field *f, const char *text)
{
	if (!text[0])
		return;
	put_key(w, f);
	put_string(w, text);
}

int key_before(const char *a, const char *b)
{
	const unsigned char *x = (const unsigned char *)a, *y = (const unsigned char *)b;
	while (*x && *x == *y)
		x++, y++;
	if ((*x >= 0xf0) != (*y >= 0xf0) && *x >= 0xee && *y >= 0xee)
		return *x >= 0xf0;
	return *x < *y;
}

static void put_codes(struct writer *w, const struct field *f, const struct line *l)
{
	put_key(w, f);
	put(w, "[", 1);
	for (int i = 0; i < LINE_CODES_MAX && l->codes[i][0]; i++) {
		if (i)
			put(w, ",", 1);
		put_string(w, l->codes[i]);
	}
	put(w, "]", 1);
}

/* The next of those that are not written yet; -1 none. */
static int first_of_contents(const struct line *l, uint32_t written)
{
	int first = -1;
	for (int i = 0; i < LINE_CONTENTS_MAX && l->contents[i].key[0]; i++)
		if (!(written >> i & 1) &&
		    (first < 0 || key_before(l->contents[i].key, l->contents[first].key)))
			first = i;
	return first;
}

static void put_contents(struct writer *w, const struct field *f, const struct line *l)
{
	uint32_t written = 0;
	put_key(w, f);
	w->before = '{';
	for (int i; (i = first_of_contents(l, written)) >= 0; written |= 1u << i) {
		if (l->contents[i].count <= 0)
			continue;
		put(w, &w->before, 1);
		put_string(w, l->contents[i].key);
		put(w, ":", 1);
		put_digits(w, l->contents[i].count);
		w->before = ',';
	}
	put(w, w->before == '{' ? "{}" : "}", w->before == '{' ? 2 : 1);
	w->before = ',';
}

static void put_fields(struct writer *w, const struct field *f, const char *base, uint32_t fields);

static void put_part(struct writer *w, const struct field *f, const char *value)
{
	put_key(w, f);
	w->before = '{';
	put_fields(w, f->part, value, 0);
	put(w, w->before == '{' ? "{}" : "}", w->before == '{' ? 2 : 1);
	w->before = ',';
}

static void put_flag(struct writer *w, const struct field *f, const struct event *e)
{
	if (!(e->flags & (uint32_t)f->low))
		return;
	put_key(w, f);
	put(w, "true", 4);
}

/* What has no name stands as a number, which no reader takes: whoever reads it back is told which field it is. */
static void put_enum(struct writer *w, const struct field *f, enum event_list list, int64_t n)
{
	const char *name = event_list_name(list, n);
	if (name)
		put_text(w, f, name);
	else
		put_number(w, f, n);
}

/* FORM_FLAG and FORM_KIND are of the whole event, codes and contents of a line: `base` is that. */
static void put_field(struct writer *w, const struct field *f, const char *base, uint32_t fields)
{
	switch ((enum form)f->form) {
	case FORM_NUMBER:
		put_number(w, f, number_at(base + f->at, f));
		return;
	case FORM_TEXT:
		put_text(w, f, base + f->at);
		return;
	case FORM_FLAG:
		put_flag(w, f, (const void *)base);
		return;
	case FORM_KIND:
		put_text(w, f, event_name(((const struct event *)(const void *)base)->kind));
		return;
	case FORM_VERSION:
		put_number(w, f, f->low);
		return;
	case FORM_PART:
		put_part(w, f, base + f->at);
		return;
	case FORM_SAID:
		if (((const struct said *)(const void *)(base + f->at))->saying)
			put_part(w, f, base + f->at);
		return;
	case FORM_ROLE:
		put_text(w, f, role_name((enum role)number_at(base + f->at, f)));
		return;
	case FORM_IDENTITY:
		put_text(w, f, identity_name((enum identity_kind)number_at(base + f->at, f)));
		return;
	case FORM_CODES:
		put_codes(w, f, (const void *)base);
		return;
	case FORM_CONTENTS:
		put_contents(w, f, (const void *)base);
		return;
	case FORM_ENUM:
		put_enum(w, f, field_list(f, fields), number_at(base + f->at, f));
		return;
	}
}

static void put_fields(struct writer *w, const struct field *f, const char *base, uint32_t fields)
{
	for (; f->name; f++)
		if (field_is_of(f, fields))
			put_field(w, f, base, fields);
}

int event_write(const struct event *e, struct buf *out)
{
	struct writer w;
	w.size = 0;
	w.bad = 0;
	w.before = '{';
	int format = e->format ? e->format : FORMAT_VERSION;
	if (format > FORMAT_VERSION)
		return -EINVAL;
	put_fields(&w, event_table(format), (const char *)e, event_fields_in(format, e->kind));
	put(&w, "}", 1);
	return w.bad ? w.bad : buf_add(out, w.text, w.size);
}
