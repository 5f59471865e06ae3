#include "words/said.h"

#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "words/language.h"

#define DEPTH_MAX 3 /* a sentence, why, and what of it */

enum type { NUMBER, DIGITS, DIGIT, CARD, DATE, TIME, SAYING, TEXT, PERSON, SHIPPED, THING, WORDS };

#define HAS_NOT (-1)

/* In the order of values.h, by which saying_value() knows them. */
static const struct value {
	uint8_t type;
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
#define KEPT_PERSON(member) KEPT_NUMBER(member)
#define KEPT_SHIPPED(member) KEPT_NUMBER(member)
#define KEPT_THING(member) KEPT_NUMBER(member)
#define X(type, member, name, size) {type, offsetof(struct say, member), KEPT_##type(member), size},
    VALUES(X)
#undef X
#define LOOSE_NUMBER(member, size) offsetof(struct said, member)
#define LOOSE_TIME(member, size) LOOSE_NUMBER(member, size)
#define LOOSE_DATE(member, size) LOOSE_NUMBER(member, size)
#define LOOSE_SAYING(member, size) LOOSE_NUMBER(member, size)
#define LOOSE_DIGIT(member, size) LOOSE_NUMBER(member, size)
#define LOOSE_TEXT(member, size) (size ? (int16_t)offsetof(struct said, member) : HAS_NOT)
#define LOOSE_PERSON(member, size) LOOSE_TEXT(member, size)
#define LOOSE_THING(member, size) LOOSE_TEXT(member, size)
#define LOOSE_WORDS(member, size) HAS_NOT
#define X(type, member, name, size) {type, offsetof(struct say, member), LOOSE_##type(member, size), size},
        LOOSE_VALUES(X)
#undef X
};

#define VALUES_COUNT (sizeof values / sizeof *values)

static int is_text(const struct value *v)
{
	return v->type == TEXT || v->type == PERSON || v->type == SHIPPED || v->type == THING;
}

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
		if (is_text(v))
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
		if (is_text(v) ? strcmp(x, y) != 0 : memcmp(x, y, sizeof(int32_t)) != 0)
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
		if (is_text(v))
			memcpy((char *)&say + v->borrowed, &text, sizeof text);
		else
			memcpy((char *)&say + v->borrowed, text, sizeof(int32_t));
	}
	return say;
}

void said_join(char *text, size_t size, const char *between, const char *more)
{
	size_t used = strlen(text);
	if (!*more)
		return;
	if (used)
		used += copy(text + used, size - used, between, strlen(between));
	copy(text + used, size - used, more, strlen(more));
}

/* --- the sentence --------------------------------------------------------------------------------- */

struct sentence {
	const struct language *language;
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

/* A value keeps its own direction, whatever stands around it (Unicode Standard Annex 9, isolates). Where all of it goes from
 * left to right anyway nothing is added, so that English reads as it was stored. */
static void put_isolated(struct sentence *s, const char *text)
{
	size_t length = strlen(text);
	int turns = length && (language_is_rtl(s->language) || text_has_rtl(text));
	if (turns && s->size - s->used <= length + 2 * ISOLATE_BYTES)
		s->size = s->used + 1; /* never an isolate without its end */
	if (turns)
		put(s, ISOLATE_BEGIN, ISOLATE_BYTES);
	put(s, text, length);
	if (turns)
		put(s, ISOLATE_END, ISOLATE_BYTES);
}

static void put_saying(struct sentence *s, int64_t saying, int depth);

/* As the language writes a day, with the month in words, so that it cannot be taken for the day. */
static void put_date(struct sentence *s, int yyyymmdd)
{
	int month = yyyymmdd / 100 % 100;
	struct sentence within = *s;
	struct say day = {.day = yyyymmdd % 100, .year = yyyymmdd / 10000};
	if (month >= 1 && month <= 12)
		day.month = SAY_SLIP_MONTH_1 + (unsigned)month - 1;
	within.say = &day;
	put_saying(&within, SAY_SLIP_DAY, 0);
	s->used = within.used;
	s->size = within.size;
}

static void put_value(struct sentence *s, const struct value *v, int depth)
{
	char made[32];
	int n = number_of(s->say, v);
	switch ((enum type)v->type) {
	case NUMBER:
		snprintf(made, sizeof made, "%d", n);
		break;
	case DIGITS:
		snprintf(made, sizeof made, "%0*d", v->size, n);
		break;
	case TIME:
		snprintf(made, sizeof made, "%02d:%02d", n / 60, n % 60);
		break;
	case DATE:
		put_date(s, n);
		return;
	case DIGIT:
		put_saying(s, saying_of_digit(n), depth + 1);
		return;
	case CARD:
		put_saying(s, saying_of_card(n), depth + 1);
		return;
	case SAYING:
		put_saying(s, n, depth + 1);
		return;
	case WORDS:
		put(s, text_of(s->say, v), strlen(text_of(s->say, v)));
		return;
	case PERSON:
		put_isolated(s, person_text_in(s->language, text_of(s->say, v)));
		return;
	case SHIPPED:
		put_isolated(s, shipped_text_in(s->language, text_of(s->say, v)));
		return;
	case THING:
		put_isolated(s, thing_text_in(s->language, text_of(s->say, v)));
		return;
	case TEXT:
		put_isolated(s, text_of(s->say, v));
		return;
	}
	put_isolated(s, made);
}

/* NULL where no value stands in braces there. */
static const struct value *value_at(const char *at, size_t *size)
{
	int value = saying_value(at, size);
	return value < 0 ? NULL : &values[value];
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
	const char *at = language_form(s->language, (enum saying)saying, s->say->n);
	while (*at) {
		size_t words = (size_t)(strchrnul(at + 1, '{') - at), size = 0;
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

void say_part_in(const struct language *language, const struct say *say, char *out, size_t size)
{
	struct sentence s = {.language = language, .say = say, .out = out, .size = size};
	out[0] = 0;
	put_saying(&s, say->saying, 0);
}

/* a to z, and the letters from U+00E0 to U+00FE but the division sign: 'ü' as well. */
void saying_capital(char *text)
{
	unsigned char *p = (unsigned char *)text;
	if (p[0] >= 'a' && p[0] <= 'z')
		p[0] = (unsigned char)(p[0] - 'a' + 'A');
	else if (p[0] == 0xc3 && p[1] >= 0xa0 && p[1] <= 0xbe && p[1] != 0xb7)
		p[1] = (unsigned char)(p[1] - 0x20);
}

void say_sentence_in(const struct language *language, const struct say *say, char *out, size_t size)
{
	say_part_in(language, say, out, size);
	saying_capital(out);
}

void say_sentence(const struct say *say, char *out, size_t size)
{
	say_sentence_in(NULL, say, out, size);
}

void say_part(const struct say *say, char *out, size_t size)
{
	say_part_in(NULL, say, out, size);
}

void say_list(const struct language *language, const char *const *parts, int n, char *out, size_t size)
{
	char before[SAID_LIST_MAX];
	int commas = 0;
	for (int i = 0; i < n; i++)
		commas += strstr(parts[i], ", ") != NULL;
	snprintf(out, size, "%s", n > 0 ? parts[0] : "");
	for (int i = 1; i < n; i++) {
		snprintf(before, sizeof before, "%s", out);
		say_part_in(language,
		            &(const struct say){.saying = commas       ? SAY_LIST_THINGS
		                                          : n == 2     ? SAY_LIST_TWO
		                                          : i == n - 1 ? SAY_LIST_LAST
		                                                       : SAY_LIST_MORE,
		                                .first = before,
		                                .second = parts[i]},
		            out, size);
	}
}

#define THING_MAX (SAID_LIST_MAX / SAID_LISTED_MAX)

void said_list(const struct language *language, const struct said *things, int n, char *out, size_t size)
{
	char words[SAID_LISTED_MAX][THING_MAX];
	const char *parts[SAID_LISTED_MAX];
	for (int i = 0; i < n; i++) {
		struct say say = said_say(&things[i]);
		say_part_in(language, &say, words[i], THING_MAX);
		parts[i] = words[i];
	}
	say_list(language, parts, n, out, size);
}

int said_list_add(struct said *things, int n, int most, const struct say *thing)
{
	if (n && n == (most < SAID_LISTED_MAX ? most : SAID_LISTED_MAX)) {
		int further = things[n - 1].saying == SAY_LIST_FURTHER ? things[n - 1].n : 1;
		said_keep(&things[n - 1], SAY(LIST_FURTHER, .n = further + 1));
		return n;
	}
	if (most > 0)
		said_keep(&things[n], thing);
	return n + (most > 0);
}

/* --- names ---------------------------------------------------------------------------------------- */

const char *saying_text_in(const struct language *language, enum saying saying)
{
	return language_form(language, saying, 0);
}

enum saying saying_of_digit(int number)
{
	return number >= 1 && number <= OWN_DIGITS ? SAY_DIGIT_1 + (unsigned)number - 1 : SAY_NONE;
}

enum saying saying_of_card(int meaning)
{
	switch (meaning) {
#define X(number, name, words, group, says, use)                                                             \
	case CARD_##name:                                                                                    \
		return SAY_CARD_##name;
		OWN_CARDS(X) OWN_STORES_CARDS(X)
#undef X
	}
	return SAY_NONE;
}

enum saying saying_of_use(int meaning)
{
	switch (meaning) {
#define X(number, name, words, group, says, use)                                                             \
	case CARD_##name:                                                                                    \
		return SAY_USE_##name;
		OWN_CARDS(X) OWN_STORES_CARDS(X)
#undef X
	}
	return SAY_NONE;
}

/* Records hold these names: they are never changed. */
static const struct {
	const char *name;
	enum saying saying;
} without_badge[] = {
    {"visitor 1", SAY_PERSON_VISITOR_1},   {"visitor 2", SAY_PERSON_VISITOR_2},
    {"visitor 3", SAY_PERSON_VISITOR_3},   {"visitor 4", SAY_PERSON_VISITOR_4},
    {"badge unknown", SAY_PERSON_UNKNOWN},
};

enum saying saying_of_person(const char *name)
{
	for (size_t i = 0; i < sizeof without_badge / sizeof *without_badge; i++)
		if (strcmp(without_badge[i].name, name) == 0)
			return without_badge[i].saying;
	return SAY_NONE;
}

const char *person_text_in(const struct language *language, const char *name)
{
	enum saying saying = saying_of_person(name);
	return saying ? saying_text_in(language, saying) : name;
}

enum saying saying_of_shipped(const char *text)
{
	static const enum saying shipped[] = {
#define X(name, key, ...) SAY_##name,
	    POLICY_WORDS(X, X)
#undef X
	};
	for (size_t i = 0; i < sizeof shipped / sizeof *shipped; i++)
		if (strcmp(saying_text(shipped[i]), text) == 0)
			return shipped[i];
	return SAY_NONE;
}

const char *shipped_text_in(const struct language *language, const char *text)
{
	enum saying saying = language ? saying_of_shipped(text) : SAY_NONE;
	return saying ? saying_text_in(language, saying) : text;
}

/* A sheet has the English of what it calls a thing, as earlier records have. */
const char *thing_text_in(const struct language *language, const char *name)
{
	static const enum saying called[] = {
#define X(name, key, text) SAY_##name,
	    SAYINGS_NAMES(X, X)
#undef X
	};
	for (size_t i = 0; language && i < sizeof called / sizeof *called; i++)
		if (strcmp(saying_text(called[i]), name) == 0)
			return saying_text_in(language, called[i]);
	return name;
}

enum saying saying_of_forward(int word)
{
	switch (word) {
#define X(name, word, text)                                                                                  \
	case FORWARD_##name:                                                                                 \
		return SAY_FORWARD_##name;
		FORWARD_WORDS(X)
#undef X
	}
	return SAY_NONE;
}

enum saying saying_of_drivers_word(const char *word)
{
	static const enum saying drivers[] = {
#define X(name, key, ...) SAY_##name,
	    SAYINGS_OF_DRIVERS(X, X)
#undef X
	};
	for (size_t i = 0; i < sizeof drivers / sizeof *drivers; i++)
		if (strcmp(saying_key(drivers[i]) + strlen("scanner-"), word) == 0)
			return drivers[i];
	return SAY_SCANNER_OTHER;
}

enum saying saying_of_printer(const char *name)
{
	static const enum saying printers[] = {
#define X(name, key, ...) SAY_##name,
	    PRINTER_WORDS(X, X)
#undef X
	};
	for (size_t i = 0; i < sizeof printers / sizeof *printers; i++)
		if (strcmp(saying_key(printers[i]) + strlen("printer-"), name) == 0)
			return printers[i];
	return SAY_PRINTER_OTHER;
}
