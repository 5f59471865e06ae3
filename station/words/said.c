#include "words/said.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"

#define DEPTH_MAX 3 /* a sentence, why, and what of it */

static const struct {
	const char *name, *one, *many;
} sayings[SAYING_KINDS] = {[SAY_NONE] = {"", "", ""},
#define X(name, key, text) [SAY_##name] = {key, text, text},
#define N(name, key, one, many) [SAY_##name] = {key, one, many},
                           SAYINGS(X, N)
#undef N
#undef X
};

enum type { NUMBER, DIGITS, DIGIT, CARD, DATE, TIME, SAYING, TEXT, FAULT };

#define HAS_NOT (-1)

static const struct value {
	const char *name;
	uint8_t length, type;
	uint16_t borrowed; /* in struct say */
	int16_t kept;      /* in struct said, or HAS_NOT */
	uint16_t size;     /* bytes that are kept of a text; how many digits */
} values[] = {
#define KEPT_NUMBER(member) offsetof(struct said, member)
#define KEPT_DIGITS(member) KEPT_NUMBER(member)
#define KEPT_DIGIT(member) KEPT_NUMBER(member)
#define KEPT_CARD(member) KEPT_NUMBER(member)
#define KEPT_DATE(member) KEPT_NUMBER(member)
#define KEPT_TIME(member) KEPT_NUMBER(member)
#define KEPT_SAYING(member) KEPT_NUMBER(member)
#define KEPT_TEXT(member) KEPT_NUMBER(member)
#define KEPT_FAULT(member) HAS_NOT
#define X(type, member, name, size)                                                                          \
	{name, sizeof name - 1, type, offsetof(struct say, member), KEPT_##type(member), size},
    VALUES(X)
#undef X
};

#define VALUES_COUNT (sizeof values / sizeof *values)

static int32_t number_of(const struct say *say, const struct value *v)
{
	int32_t n;
	memcpy(&n, (const char *)say + v->borrowed, sizeof n);
	return n;
}

static const char *text_of(const struct say *say, const struct value *v)
{
	const char *text;
	memcpy(&text, (const char *)say + v->borrowed, sizeof text);
	return text ? text : "";
}

/* Copies what fits. How many bytes: never a part of a letter, where the text is UTF-8. */
static size_t copy(char *out, size_t size, const char *text, size_t length)
{
	size_t n = length < size ? length : size - 1;
	while (n < length && n && ((unsigned char)text[n] & 0xc0) == 0x80)
		n--;
	memcpy(out, text, n);
	out[n] = 0;
	return n;
}

void said_keep(struct said *said, const struct say *say)
{
	memset(said, 0, sizeof *said);
	for (const struct value *v = values; v < values + VALUES_COUNT; v++) {
		int32_t n = number_of(say, v);
		if (v->kept == HAS_NOT)
			continue;
		if (v->type == TEXT)
			copy((char *)said + v->kept, v->size, text_of(say, v), strlen(text_of(say, v)));
		else
			memcpy((char *)said + v->kept, &n, sizeof n);
	}
}

int said_same(const struct said *a, const struct said *b)
{
	for (const struct value *v = values; v < values + VALUES_COUNT; v++) {
		if (v->kept == HAS_NOT)
			continue;
		const char *x = (const char *)a + v->kept, *y = (const char *)b + v->kept;
		if (v->type == TEXT ? strcmp(x, y) != 0 : memcmp(x, y, sizeof(int32_t)) != 0)
			return 0;
	}
	return 1;
}

struct say said_say(const struct said *said)
{
	struct say say = {0};
	for (const struct value *v = values; v < values + VALUES_COUNT; v++) {
		if (v->kept == HAS_NOT)
			continue;
		const char *text = (const char *)said + v->kept;
		if (v->type == TEXT)
			memcpy((char *)&say + v->borrowed, &text, sizeof text);
		else
			memcpy((char *)&say + v->borrowed, text, sizeof(int32_t));
	}
	return say;
}

/* --- the sentence --------------------------------------------------------------------------------- */

struct sentence {
	const struct say *say;
	char *out;
	size_t size, used;
};

static void put(struct sentence *s, const char *text, size_t length)
{
	size_t n = copy(s->out + s->used, s->size - s->used, text, length);
	s->used += n;
	if (n < length)
		s->size = s->used + 1; /* nothing comes behind a cut */
}

static void put_saying(struct sentence *s, int64_t saying, int depth);

static void put_value(struct sentence *s, const struct value *v, int depth)
{
	char made[32];
	const char *text = made;
	int n = number_of(s->say, v);
	switch ((enum type)v->type) {
	case NUMBER:
		snprintf(made, sizeof made, "%d", n);
		break;
	case DIGITS:
		snprintf(made, sizeof made, "%0*d", v->size, n);
		break;
	case DATE:
		snprintf(made, sizeof made, "%04d-%02d-%02d", n / 10000 % 10000, n / 100 % 100, n % 100);
		break;
	case TIME:
		snprintf(made, sizeof made, "%02d:%02d", n / 60, n % 60);
		break;
	case DIGIT:
		text = own_digit_name(n);
		break;
	case CARD:
		text = own_card_name(n);
		break;
	case SAYING:
		put_saying(s, n, depth + 1);
		return;
	case TEXT:
	case FAULT:
		text = text_of(s->say, v);
		break;
	}
	put(s, text, strlen(text));
}

/* The value that stands in braces at `at`; NULL where there is none. `*size` is the length with the braces. */
static const struct value *value_at(const char *at, size_t *size)
{
	size_t length = strcspn(at, "}");
	for (const struct value *v = values; at[0] == '{' && v < values + VALUES_COUNT; v++)
		if (v->length == length - 1 && memcmp(v->name, at + 1, v->length) == 0) {
			*size = length + 1;
			return v;
		}
	return NULL;
}

/* A saying that is not given leaves nothing, nor the space before its place. */
static int is_left_out(const struct sentence *s, const struct value *v)
{
	return v && v->type == SAYING && !number_of(s->say, v);
}

static void put_saying(struct sentence *s, int64_t saying, int depth)
{
	if (saying <= 0 || saying >= SAYING_KINDS || depth == DEPTH_MAX)
		return;
	const char *at = s->say->n == 1 ? sayings[saying].one : sayings[saying].many;
	while (*at) {
		size_t words = 1 + strcspn(at + 1, "{"), size = 0;
		const struct value *v = value_at(at, &size);
		if (v) {
			put_value(s, v, depth);
			at += size;
			continue;
		}
		put(s, at, words - (at[words - 1] == ' ' && is_left_out(s, value_at(at + words, &size))));
		at += words;
	}
}

void say_part(const struct say *say, char *out, size_t size)
{
	struct sentence s = {.say = say, .out = out, .size = size};
	out[0] = 0;
	put_saying(&s, say->saying, 0);
}

void say_sentence(const struct say *say, char *out, size_t size)
{
	say_part(say, out, size);
	if (out[0] >= 'a' && out[0] <= 'z')
		out[0] = (char)(out[0] - 'a' + 'A');
}

/* --- names ---------------------------------------------------------------------------------------- */

const char *saying_text(enum saying saying)
{
	return sayings[saying].many;
}

const char *saying_name(int64_t saying)
{
	return saying > 0 && saying < SAYING_KINDS ? sayings[saying].name : NULL;
}

int saying_from_name(const char *name)
{
	for (int i = 1; i < SAYING_KINDS; i++)
		if (strcmp(sayings[i].name, name) == 0)
			return i;
	return -EINVAL;
}
