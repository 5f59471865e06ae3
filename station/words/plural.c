#include "words/plural.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define DEPTH_MAX 40

/* It is read anew each time: there are few, they are short, and what is not kept cannot be wrong. */
struct reading {
	const char *at;
	uint64_t n;
	int depth;
	int wrong;
};

static uint64_t choice(struct reading *r);

static int takes(struct reading *r, const char *sign)
{
	r->at += strspn(r->at, " \t");
	size_t length = strlen(sign);
	if (strncmp(r->at, sign, length) != 0)
		return 0;
	r->at += length;
	return 1;
}

static uint64_t single(struct reading *r)
{
	uint64_t value = 0;
	if (++r->depth > DEPTH_MAX)
		r->wrong = 1;
	if (r->wrong)
		return 0;
	if (takes(r, "!")) {
		value = !single(r);
	} else if (takes(r, "(")) {
		value = choice(r);
		r->wrong |= !takes(r, ")");
	} else if (takes(r, "n")) {
		value = r->n;
	} else if (*r->at >= '0' && *r->at <= '9') {
		for (; *r->at >= '0' && *r->at <= '9' && value < UINT32_MAX; r->at++)
			value = value * 10 + (uint64_t)(*r->at - '0');
	} else {
		r->wrong = 1;
	}
	r->depth--;
	return value;
}

static uint64_t product(struct reading *r)
{
	uint64_t value = single(r);
	for (;;) {
		int divides = takes(r, "/"), rest = !divides && takes(r, "%");
		if (!divides && !rest && !takes(r, "*"))
			return value;
		uint64_t with = single(r);
		if ((divides || rest) && with == 0) {
			r->wrong = 1;
			return 0;
		}
		value = divides ? value / with : rest ? value % with : value * with;
	}
}

static uint64_t sum(struct reading *r)
{
	uint64_t value = product(r);
	for (;;) {
		if (takes(r, "+"))
			value += product(r);
		else if (takes(r, "-"))
			value -= product(r);
		else
			return value;
	}
}

static uint64_t order(struct reading *r)
{
	uint64_t value = sum(r);
	for (;;) {
		if (takes(r, "<="))
			value = value <= sum(r);
		else if (takes(r, ">="))
			value = value >= sum(r);
		else if (takes(r, "<"))
			value = value < sum(r);
		else if (takes(r, ">"))
			value = value > sum(r);
		else
			return value;
	}
}

static uint64_t equal(struct reading *r)
{
	uint64_t value = order(r);
	for (;;) {
		if (takes(r, "=="))
			value = value == order(r);
		else if (takes(r, "!="))
			value = value != order(r);
		else
			return value;
	}
}

static uint64_t both(struct reading *r)
{
	uint64_t value = equal(r);
	while (takes(r, "&&")) {
		uint64_t with = equal(r);
		value = value && with;
	}
	return value;
}

static uint64_t either(struct reading *r)
{
	uint64_t value = both(r);
	while (takes(r, "||")) {
		uint64_t with = both(r);
		value = value || with;
	}
	return value;
}

static uint64_t choice(struct reading *r)
{
	uint64_t value = either(r);
	if (r->wrong || ++r->depth > DEPTH_MAX) {
		r->wrong = 1;
		return 0;
	}
	if (takes(r, "?")) {
		uint64_t yes = choice(r);
		r->wrong |= !takes(r, ":");
		uint64_t no = choice(r);
		value = value ? yes : no;
	}
	r->depth--;
	return value;
}

static int evaluate(const struct plural *p, uint64_t n, uint64_t *value)
{
	struct reading r = {.at = p->text, .n = n};
	*value = choice(&r);
	r.at += strspn(r.at, " \t");
	return r.wrong || *r.at ? -EINVAL : 0;
}

int plural_read(struct plural *out, const char *field)
{
	const char *forms = strstr(field, "nplurals="), *text = strstr(field, "plural=");
	uint64_t value;
	if (text && forms && text == forms + 1) /* the one inside "nplurals=" */
		text = strstr(forms + 9, "plural=");
	if (!forms || !text)
		return -EINVAL;
	out->forms = atoi(forms + 9);
	text += 7;
	size_t length = strcspn(text, ";");
	if (out->forms < 1 || out->forms > PLURALS_MAX || length >= sizeof out->text)
		return -EINVAL;
	snprintf(out->text, sizeof out->text, "%.*s", (int)length, text);
	return evaluate(out, 1, &value);
}

int plural_of(const struct plural *p, int64_t n)
{
	uint64_t value;
	if (evaluate(p, n < 0 ? 0 - (uint64_t)n : (uint64_t)n, &value) < 0 || value >= (uint64_t)p->forms)
		return 0;
	return (int)value;
}
