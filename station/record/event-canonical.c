#include <limits.h>
#include <string.h>

#include "base/json.h"
#include "record/event-text.h"

enum what { NUMBER, TEXT, FLAG, KIND, THING, STAFF, VERSION };

/* One key: where its value goes. `size`: bytes of a number, or of a text with its NUL. */
struct field {
	const char *name;
	size_t length;
	enum what what;
	size_t at, size;
	int64_t low, high;
	uint32_t only; /* enum event_field: kinds that do not name it do not have it; 0 all have it */
};

/* clang-format off */
#define NAMED(name) name, sizeof(name) - 1
#define AT(type, member) offsetof(struct type, member), sizeof(((struct type *)0)->member)
#define NUMBER_OF(type, name, member, low, high) {NAMED(name), NUMBER, AT(type, member), low, high, 0}
#define TEXT_OF(type, name, member) {NAMED(name), TEXT, AT(type, member), 0, 0, 0}
#define SOME_HAVE(field, name, member, low, high) {NAMED(name), NUMBER, AT(event, member), low, high, field}
/* clang-format on */

/* In the order of the canonical form. What is not here (line, batch) is rare and the strict reader's. */
static const struct field event_keys[] = {
    NUMBER_OF(event, "answer", answer, INT_MIN, INT_MAX),
    NUMBER_OF(event, "boot", at.boot, 0, INT_MAX),
    NUMBER_OF(event, "boot_ms", at.boot_ms, -JSON_INTEGER_MAX, JSON_INTEGER_MAX),
    NUMBER_OF(event, "case", case_no, 0, INT_MAX),
    SOME_HAVE(F_DIGIT, "digit", digit, 0, DIGIT_NUMBER_MAX),
    {NAMED("first"), FLAG, 0, 0, EVENT_FIRST, 0, 0},
    SOME_HAVE(F_ITEM, "item", item, 0, 255),
    {NAMED("keyed"), FLAG, 0, 0, EVENT_KEYED, 0, 0},
    {NAMED("kind"), KIND, 0, 0, 0, 0, 0},
    {NAMED("late"), FLAG, 0, 0, EVENT_LATE, 0, 0},
    SOME_HAVE(F_N, "n", n, INT_MIN, INT_MAX),
    SOME_HAVE(F_OTHER, "other", other, INT_MIN, INT_MAX),
    SOME_HAVE(F_PERSON, "person", person, INT_MIN, INT_MAX),
    SOME_HAVE(F_REF, "ref", ref, 0, JSON_INTEGER_MAX),
    NUMBER_OF(event, "room", room, 0, INT_MAX),
    NUMBER_OF(event, "seq", seq, 1, JSON_INTEGER_MAX),
    {NAMED("staff"), STAFF, offsetof(struct event, staff), 0, 0, 0, F_STAFF},
    {NAMED("text"), TEXT, AT(event, text), 0, 0, F_TEXT},
    {NAMED("thing"), THING, offsetof(struct event, thing), 0, 0, 0, F_THING},
    {NAMED("v"), VERSION, 0, 0, FORMAT_VERSION, FORMAT_VERSION, 0},
    NUMBER_OF(event, "wall_ms", at.wall_ms, -JSON_INTEGER_MAX, JSON_INTEGER_MAX),
    SOME_HAVE(F_WHAT, "what", what, 0, 255),
    {0},
};

static const struct field thing_keys[] = {
    NUMBER_OF(thing, "expiry", expiry, 0, 99999999),
    TEXT_OF(thing, "identity", identity),
    NUMBER_OF(thing, "identity_kind", identity_kind, 0, IDENTITY_MARK),
    TEXT_OF(thing, "line", line),
    TEXT_OF(thing, "lot", lot),
    TEXT_OF(thing, "name", name),
    NUMBER_OF(thing, "role", role, 0, ROLE_REFUSED),
    NUMBER_OF(thing, "rolls_on", rolls_on, 0, 1),
    NUMBER_OF(thing, "single_use", single_use, 0, 1),
    NUMBER_OF(thing, "unlisted", unlisted, 0, 1),
    NUMBER_OF(thing, "xray", shows_on_xray, 0, 1),
    {0},
};

static const struct field staff_keys[] = {
    NUMBER_OF(person, "kind", kind, STAFF_PRACTITIONER, STAFF_CHARGE),
    TEXT_OF(person, "name", name),
    NUMBER_OF(person, "number", number, INT_MIN, INT_MAX),
    NUMBER_OF(person, "registered", registered, 0, 1),
    {0},
};

struct text {
	const char *at, *end;
};

struct seen {
	uint32_t sorts; /* 1 << enum what */
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
	if (kind == EV_KINDS || event_fields((enum event_kind)kind) & (F_LINE | F_BATCH))
		return 0;
	e->kind = (enum event_kind)kind;
	return 1;
}

static int read_value(struct text *t, char *base, const struct field *f, const struct field **part);

/* The members of an object in canonical order, each at most once; `seen` has a bit for each that was there.
 */
static int read_members(struct text *t, char *base, const struct field *keys, struct seen *seen)
{
	const struct field *f = keys, *part = NULL;
	struct seen part_seen = {0};
	if (!eat(t, '{'))
		return 0;
	do {
		char name[16];
		int length = read_text(t, name, sizeof name);
		if (length <= 0 || !eat(t, ':'))
			return 0;
		while (f->name && (f->length != (size_t)length || memcmp(f->name, name, f->length) != 0))
			f++;
		if (!f->name || !read_value(t, base, f, &part))
			return 0;
		if (part && !read_members(t, base + f->at, part, &part_seen))
			return 0;
		part = NULL;
		seen->sorts |= 1u << f->what;
		seen->only |= f->only;
		f++;
	} while (eat(t, ','));
	return eat(t, '}');
}

static int read_value(struct text *t, char *base, const struct field *f, const struct field **part)
{
	struct event *e = (struct event *)base; /* for the kinds of key that only an event has */
	switch (f->what) {
	case NUMBER:
	case VERSION:
		return read_number(t, base + f->at, f);
	case TEXT:
		return read_text(t, base + f->at, f->size) > 0;
	case FLAG:
		e->flags |= (uint32_t)f->low;
		return read_word(t, "true");
	case KIND:
		return read_kind(t, e);
	case THING:
		*part = thing_keys;
		return 1;
	case STAFF:
		*part = staff_keys;
		return 1;
	}
	return 0;
}

int event_read_canonical(struct event *e, const char *text, size_t size)
{
	struct text t = {text, text + size};
	struct seen seen = {0};
	memset(e, 0, sizeof *e);
	if (!read_members(&t, (char *)e, event_keys, &seen) || t.at != t.end)
		return 0;
	uint32_t fields = event_fields(e->kind), needed = 1u << VERSION | 1u << KIND;
	needed |= fields & F_THING ? 1u << THING : 0;
	needed |= fields & F_STAFF ? 1u << STAFF : 0;
	return (seen.sorts & needed) == needed && !(seen.only & ~fields);
}
