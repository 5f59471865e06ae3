#include "code/gs1.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/gs1-sets.h"

#define AGAIN "scan it again; if it stays so, put this pack aside"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* Judges the part that `left` characters begin with. Returns how many it takes, or -EINVAL. */
static int one_part(const struct gs1_part *part, const char *v, size_t left, int32_t today,
                    struct code_fault *f)
{
	size_t size = left < part->max ? left : part->max;
	int r = gs1_set_check(part->set, v, size, f);
	if (r < 0)
		return r;
	if (size < part->min)
		return fault_set(f, size, "it is cut short, %zu characters of %d", size, part->min);
	for (int i = 0; i < GS1_RULES_MAX && part->rules[i] != RULE_NONE; i++) {
		r = gs1_rule_check(part->rules[i], v, size, today, f);
		if (r < 0)
			return r;
	}
	return (int)size;
}

int gs1_value(const struct gs1_ai *ai, const char *value, size_t size, int32_t today,
              struct code_fault *fault)
{
	size_t at = 0, most = gs1_length_max(ai);
	for (int i = 0; i < GS1_PARTS_MAX && ai->parts[i].max; i++) {
		if (at == size && ai->parts[i].optional)
			return 0;
		int taken = one_part(&ai->parts[i], value + at, size - at, today, fault);
		if (taken < 0) {
			if (fault)
				fault->at += at;
			return taken;
		}
		at += (size_t)taken;
	}
	if (size > most)
		return fault_set(fault, most, "it has %zu characters of at most %zu", size, most);
	return 0;
}

/* A value of one element, as it goes into the list. `map` gives each character's place in the data, NULL
 * where they stand side by side from `at`. */
struct found {
	const struct gs1_ai *ai;
	const char *digits; /* of the identifier, strlen(ai->first) */
	const char *value;
	size_t size, at;
	const size_t *map;
	int32_t today;
};

/* What to do depends on the most likely cause: a value that is too long has swallowed the next one. */
static int element_fault(const struct found *e, const struct code_fault *why, struct code_fault *f)
{
	char reason[CODE_WHY_MAX];
	bool glued = e->size > gs1_length_max(e->ai) && !e->ai->predefined;
	size_t at = e->map && why->at < e->size ? e->map[why->at] : e->at + why->at;
	snprintf(reason, sizeof reason, "%s", why->why);
	return fault_set(f, at, "(%.*s) %s%s%s: %s", (int)strlen(e->ai->first), e->digits, e->ai->title,
	                 e->ai->title[0] ? ", " : "", reason,
	                 glued ? "try the scanner-check sheet, this scanner may drop separators" : AGAIN);
}

static int add(struct code *out, const struct found *e, struct code_fault *fault)
{
	struct code_fault why = {0, ""};
	if (gs1_value(e->ai, e->value, e->size, e->today, &why) < 0)
		return element_fault(e, &why, fault);
	if (out->count == CODE_ELEMENTS_MAX)
		return fault_set(fault, e->at, "it has more than %d elements: use another code on this pack",
		                 CODE_ELEMENTS_MAX);
	struct code_element *to = &out->elements[out->count++];
	*to = (struct code_element){.title = e->ai->title, .at = e->at};
	memcpy(to->ai, e->digits, strlen(e->ai->first));
	memcpy(to->value, e->value, e->size);
	to->kept = code_keep(to->ai);
	return 0;
}

static int no_identifier(const char *data, size_t at, size_t left, struct code_fault *f)
{
	int digits = 0;
	while (digits < 4 && (size_t)digits < left && is_digit(data[at + (size_t)digits]))
		digits++;
	if (left < 2)
		return fault_set(f, at, "the code ends inside an identifier: " AGAIN);
	if (digits >= 2)
		return fault_set(f, at, "no GS1 identifier begins with %.*s: " AGAIN, digits, data + at);
	return fault_set(f, at, "a GS1 identifier should begin here, in digits: " AGAIN);
}

int gs1_split(struct code *out, const char *data, size_t size, int32_t today, struct code_fault *fault)
{
	size_t at = size && data[0] == GS1_SEPARATOR; /* a decoder may send the leading FNC1 too */
	if (at == size)
		return fault_set(fault, at, "the code has no element: " AGAIN);
	while (at < size) {
		const struct gs1_ai *ai = gs1_find(data + at, size - at);
		if (!ai)
			return no_identifier(data, at, size - at, fault);
		const char *digits = data + at;
		at += strlen(ai->first);
		const char *gs = memchr(data + at, GS1_SEPARATOR, size - at);
		size_t length = gs ? (size_t)(gs - data) - at : size - at;
		if (ai->predefined && length > gs1_length_max(ai))
			length = gs1_length_max(ai);
		int r = add(out, &(struct found){ai, digits, data + at, length, at, NULL, today}, fault);
		if (r < 0)
			return r;
		at += length;
		if (at < size && data[at] == GS1_SEPARATOR)
			at++;
	}
	return 0;
}

/* "(10)" -> its length with brackets, 0 where none is here. */
static size_t bracketed(const char *text, size_t size)
{
	size_t n = 1;
	while (n < size && n <= 5 && is_digit(text[n]))
		n++;
	return size > 3 && text[0] == '(' && n >= 3 && n <= 5 && n < size && text[n] == ')' ? n + 1 : 0;
}

int gs1_split_bracketed(struct code *out, const char *text, size_t size, int32_t today,
                        struct code_fault *fault)
{
	for (size_t at = 0; at < size || at == 0;) {
		char value[CODE_VALUE_MAX + 1];
		size_t map[CODE_VALUE_MAX + 1], n = 0, head = bracketed(text + at, size - at);
		if (!head)
			return fault_set(
			    fault, at,
			    "an identifier in brackets should stand here, as in (01): write it so, and a "
			    "bracket inside a value as \\(");
		const struct gs1_ai *ai = gs1_ai(text + at + 1, head - 2);
		if (!ai)
			return fault_set(fault, at + 1,
			                 "GS1 has no identifier (%.*s): look at the label again",
			                 (int)head - 2, text + at + 1);
		const char *digits = text + at + 1;
		size_t from = at + head;
		for (at = from; at < size && text[at] != '('; at++) {
			if (text[at] == '\\' && at + 1 < size && text[at + 1] == '(')
				at++;
			if (n < sizeof value) {
				value[n] = text[at];
				map[n] = at;
			}
			n++;
		}
		if (n > sizeof value)
			n = sizeof value; /* too long for any identifier, which is all that matters then */
		int r = add(out, &(struct found){ai, digits, value, n, from, map, today}, fault);
		if (r < 0)
			return r;
	}
	return 0;
}

/* 'n' in a pattern is any digit. */
static bool fits(const char *pattern, size_t size, const char *ai)
{
	if (strlen(ai) != size)
		return false;
	for (size_t i = 0; i < size; i++)
		if (pattern[i] != ai[i] && !(pattern[i] == 'n' && is_digit(ai[i])))
			return false;
	return true;
}

/* The first element that fits and is not `except`. */
static const struct code_element *first_that_fits(const struct code *c, const char *pattern, size_t size,
                                                  const char *except)
{
	for (int i = 0; i < c->count; i++)
		if (fits(pattern, size, c->elements[i].ai) && strcmp(c->elements[i].ai, except))
			return &c->elements[i];
	return NULL;
}

static int excluded(const struct code *c, const struct code_element *e, struct code_fault *f)
{
	const struct gs1_ai *ai = gs1_ai(e->ai, strlen(e->ai));
	for (const char *p = ai ? ai->never : ""; *p; p += strcspn(p, "|"), p += *p == '|') {
		const struct code_element *other = first_that_fits(c, p, strcspn(p, "|"), e->ai);
		if (other)
			return fault_set(
			    f, other->at > e->at ? other->at : e->at,
			    "(%s) and (%s) exclude each other on one thing: scan another code of it", e->ai,
			    other->ai);
	}
	return 0;
}

static int repeated(const struct code *c, int i, struct code_fault *f)
{
	for (int k = 0; k < i; k++)
		if (!strcmp(c->elements[k].ai, c->elements[i].ai) &&
		    strcmp(c->elements[k].value, c->elements[i].value))
			return fault_set(f, c->elements[i].at,
			                 "(%s) stands there twice with different values: " AGAIN,
			                 c->elements[i].ai);
	return 0;
}

/* A signature is of one thing, so the key beside it must be of one thing too: the optional serial of a
 * document, coupon or returnable asset. */
static int signed_without_serial(const struct code *c, struct code_fault *f)
{
	static const struct {
		const char *ai;
		size_t size;
	} keys[] = {{"253", 13}, {"255", 13}, {"8003", 14}};
	if (!first_that_fits(c, "8030", 4, ""))
		return 0;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const struct code_element *e = first_that_fits(c, keys[i].ai, strlen(keys[i].ai), "");
		if (e && strlen(e->value) == keys[i].size)
			return fault_set(f, e->at,
			                 "(8030) signs one thing, so (%s) needs its serial part: " AGAIN,
			                 keys[i].ai);
	}
	return 0;
}

int gs1_pairs(const struct code *code, struct code_fault *fault)
{
	int r = 0;
	for (int i = 0; i < code->count && r == 0; i++) {
		r = repeated(code, i, fault);
		if (r == 0)
			r = excluded(code, &code->elements[i], fault);
	}
	return r < 0 ? r : signed_without_serial(code, fault);
}

static bool has_all(const struct code *c, const char *group, size_t size, const char *except)
{
	for (const char *end = group + size; group < end;) {
		size_t one = strcspn(group, "+|");
		if (!first_that_fits(c, group, one, except))
			return false;
		group += one + 1;
	}
	return true;
}

static bool satisfied(const struct code *c, const struct code_element *e, const char *needs)
{
	if (!*needs)
		return true;
	for (const char *p = needs; *p; p += strcspn(p, "|"), p += *p == '|')
		if (has_all(c, p, strcspn(p, "|"), e->ai))
			return true;
	return false;
}

/* "01+21|8006" -> "(01) with (21), or (8006)"; what does not fit is left out behind '…'. */
static void alternatives(const char *needs, char *out, size_t room)
{
	size_t n = 0;
	for (const char *p = needs; *p;) {
		size_t one = strcspn(p, "+|"), after = one + (p[one] != '\0');
		const char *between = p[one] == '|' ? ", or " : p[one] == '+' ? " with " : "";
		if (n + one + strlen(between) + 8 > room) {
			snprintf(out + n, room - n, "…");
			return;
		}
		n += (size_t)snprintf(out + n, room - n, "(%.*s)%s", (int)one, p, between);
		p += after;
	}
}

void gs1_wants(const struct code *code, char *out, size_t room)
{
	out[0] = '\0';
	for (int i = 0; i < code->count; i++) {
		const struct code_element *e = &code->elements[i];
		const struct gs1_ai *ai = gs1_ai(e->ai, strlen(e->ai));
		if (!ai || satisfied(code, e, ai->needs))
			continue;
		size_t n = (size_t)snprintf(out, room, "(%s) needs ", e->ai);
		alternatives(ai->needs, out + n, room - n);
		return;
	}
}
