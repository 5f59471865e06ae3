#include <errno.h>
#include <stdint.h>
#include <string.h>

#include "base/json.h"
#include "record/event-text.h"
#include "record/event.h"

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

/* A key as it is written, and its size. */
#define KEY(name) "\"" name "\":", sizeof("\"" name "\":") - 1

static void put(struct writer *w, const char *bytes, size_t size)
{
	if (size > sizeof w->text - w->size) {
		w->bad = -EINVAL;
		return;
	}
	memcpy(w->text + w->size, bytes, size);
	w->size += size;
}

static void put_key(struct writer *w, const char *key, size_t size)
{
	if (size + 1 > sizeof w->text - w->size) {
		w->bad = -EINVAL;
		return;
	}
	w->text[w->size++] = w->before;
	memcpy(w->text + w->size, key, size);
	w->size += size;
	w->before = ',';
}

static void put_number(struct writer *w, const char *key, size_t key_size, int64_t n)
{
	char digits[24], *at = digits + sizeof digits;
	uint64_t rest = n < 0 ? 0 - (uint64_t)n : (uint64_t)n;
	if (!n)
		return;
	if (rest > JSON_INTEGER_MAX)
		w->bad = -EINVAL;
	for (; rest; rest /= 10)
		*--at = (char)('0' + rest % 10);
	if (n < 0)
		*--at = '-';
	put_key(w, key, key_size);
	put(w, at, (size_t)(digits + sizeof digits - at));
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

static void put_text(struct writer *w, const char *key, size_t key_size, const char *text)
{
	if (!text[0])
		return;
	put_key(w, key, key_size);
	put_string(w, text);
}

static void put_flag(struct writer *w, const char *key, size_t key_size, uint32_t flag)
{
	if (!flag)
		return;
	put_key(w, key, key_size);
	put(w, "true", 4);
}

static void begin_part(struct writer *w, const char *key, size_t key_size)
{
	put_key(w, key, key_size);
	w->before = '{';
}

static void end_part(struct writer *w)
{
	put(w, w->before == '{' ? "{}" : "}", w->before == '{' ? 2 : 1);
	w->before = ',';
}

/* Which of two keys comes first: RFC 8785 sorts by UTF-16 units, so that U+E000 to U+FFFF come after the
 * rest. */
static int key_before(const char *a, const char *b)
{
	const unsigned char *x = (const unsigned char *)a, *y = (const unsigned char *)b;
	while (*x && *x == *y)
		x++, y++;
	if ((*x >= 0xf0) != (*y >= 0xf0) && *x >= 0xee && *y >= 0xee)
		return *x >= 0xf0;
	return *x < *y;
}

static void put_contents(struct writer *w, const struct line *l)
{
	uint32_t done = 0;
	begin_part(w, KEY("contents"));
	for (;;) {
		int first = -1;
		for (int i = 0; i < LINE_CONTENTS_MAX && l->contents[i].key[0]; i++)
			if (!(done >> i & 1) &&
			    (first < 0 || key_before(l->contents[i].key, l->contents[first].key)))
				first = i;
		if (first < 0)
			break;
		done |= 1u << first;
		if (l->contents[first].count <= 0)
			continue;
		put(w, &w->before, 1);
		put_string(w, l->contents[first].key);
		w->before = ':';
		char digits[8];
		int n = l->contents[first].count, at = sizeof digits;
		for (; n > 0; n /= 10)
			digits[--at] = (char)('0' + n % 10);
		put(w, ":", 1);
		put(w, digits + at, sizeof digits - (size_t)at);
		w->before = ',';
	}
	end_part(w);
}

static void put_line(struct writer *w, const struct line *l)
{
	begin_part(w, KEY("line"));
	put_key(w, KEY("codes"));
	put(w, "[", 1);
	for (int i = 0; i < LINE_CODES_MAX && l->codes[i][0]; i++) {
		if (i)
			put(w, ",", 1);
		put_string(w, l->codes[i]);
	}
	put(w, "]", 1);
	put_contents(w, l);
	put_text(w, KEY("identity"), identity_name(l->identity));
	put_text(w, KEY("instead"), l->instead);
	put_text(w, KEY("key"), l->key);
	put_number(w, KEY("marked"), l->marked);
	put_text(w, KEY("name"), l->name);
	put_number(w, KEY("per_pack"), l->per_pack);
	put_text(w, KEY("role"), role_name(l->role));
	put_number(w, KEY("rolls_on"), l->rolls_on);
	put_number(w, KEY("single_use"), l->single_use);
	put_number(w, KEY("size_max_mm"), l->size_max_mm);
	put_number(w, KEY("size_min_mm"), l->size_min_mm);
	put_number(w, KEY("visible"), l->visible);
	put_number(w, KEY("xray"), l->shows_on_xray);
	end_part(w);
}

static void put_thing(struct writer *w, const struct thing *t)
{
	begin_part(w, KEY("thing"));
	put_number(w, KEY("expiry"), t->expiry);
	put_text(w, KEY("identity"), t->identity);
	put_number(w, KEY("identity_kind"), t->identity_kind);
	put_text(w, KEY("line"), t->line);
	put_text(w, KEY("lot"), t->lot);
	put_text(w, KEY("name"), t->name);
	put_number(w, KEY("role"), t->role);
	put_number(w, KEY("rolls_on"), t->rolls_on);
	put_number(w, KEY("single_use"), t->single_use);
	put_number(w, KEY("unlisted"), t->unlisted);
	put_number(w, KEY("xray"), t->shows_on_xray);
	end_part(w);
}

static void put_staff(struct writer *w, const struct person *p)
{
	begin_part(w, KEY("staff"));
	put_number(w, KEY("kind"), p->kind);
	put_text(w, KEY("name"), p->name);
	put_number(w, KEY("number"), p->number);
	put_number(w, KEY("registered"), p->registered);
	end_part(w);
}

static void put_batch(struct writer *w, const struct batch *b)
{
	begin_part(w, KEY("batch"));
	put_number(w, KEY("expiry"), b->expiry);
	put_number(w, KEY("first"), b->first);
	put_number(w, KEY("last"), b->last);
	put_text(w, KEY("line"), b->line);
	put_text(w, KEY("lot"), b->lot);
	end_part(w);
}

int event_write(const struct event *e, struct buf *out)
{
	struct writer w;
	uint32_t fields = event_fields(e->kind);
	w.size = 0;
	w.bad = 0;
	w.before = '{';
	put_number(&w, KEY("answer"), e->answer);
	if (fields & F_BATCH)
		put_batch(&w, &e->batch);
	put_number(&w, KEY("boot"), e->at.boot);
	put_number(&w, KEY("boot_ms"), e->at.boot_ms);
	put_number(&w, KEY("case"), e->case_no);
	put_number(&w, KEY("digit"), fields & F_DIGIT ? e->digit : 0);
	put_flag(&w, KEY("first"), e->flags & EVENT_FIRST);
	put_number(&w, KEY("item"), fields & F_ITEM ? e->item : 0);
	put_flag(&w, KEY("keyed"), e->flags & EVENT_KEYED);
	put_text(&w, KEY("kind"), event_name(e->kind));
	put_flag(&w, KEY("late"), e->flags & EVENT_LATE);
	if (fields & F_LINE)
		put_line(&w, &e->line);
	put_number(&w, KEY("n"), fields & F_N ? e->n : 0);
	put_number(&w, KEY("other"), fields & F_OTHER ? e->other : 0);
	put_number(&w, KEY("person"), fields & F_PERSON ? e->person : 0);
	put_number(&w, KEY("ref"), fields & F_REF ? e->ref : 0);
	put_number(&w, KEY("room"), e->room);
	put_number(&w, KEY("seq"), e->seq);
	if (fields & F_STAFF)
		put_staff(&w, &e->staff);
	put_text(&w, KEY("text"), fields & F_TEXT ? e->text : "");
	if (fields & F_THING)
		put_thing(&w, &e->thing);
	put_number(&w, KEY("v"), FORMAT_VERSION);
	put_number(&w, KEY("wall_ms"), e->at.wall_ms);
	put_number(&w, KEY("what"), fields & F_WHAT ? e->what : 0);
	put(&w, "}", 1);
	return w.bad ? w.bad : buf_add(out, w.text, w.size);
}
