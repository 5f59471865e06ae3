#include "count/sheet.h"

#include <stdio.h>
#include <string.h>

static const struct {
	const char *name, *words;
} questions[QUESTION_KINDS] = {[Q_NONE] = {"none", ""},
#define X(name, text, words) [Q_##name] = {text, words},
                               QUESTIONS(X)
#undef X
};

const char *question_name(enum question q)
{
	return questions[q].name;
}

const char *question_words(enum question q)
{
	return questions[q].words;
}

const struct digit *sheet_digit_const(const struct sheet *s, int number)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].number == number)
			return &s->digits[i];
	return NULL;
}

struct digit *sheet_digit(struct sheet *s, int number)
{
	return (struct digit *)sheet_digit_const(s, number);
}

const struct item *sheet_item_const(const struct sheet *s, int number)
{
	return number >= 1 && number <= s->n_items ? &s->items[number - 1] : NULL;
}

struct item *sheet_item(struct sheet *s, int number)
{
	return (struct item *)sheet_item_const(s, number);
}

int sheet_item_by_identity(const struct sheet *s, const char *identity)
{
	for (int i = 0; identity[0] && i < s->n_items; i++)
		if (s->items[i].place != ITEM_STRUCK && strcmp(s->items[i].thing.identity, identity) == 0)
			return i + 1;
	return 0;
}

int sheet_item_on(const struct sheet *s, int digit, enum role role)
{
	for (int i = s->n_items; i >= 1; i--) {
		const struct item *it = &s->items[i - 1];
		if (it->place == ITEM_ON && it->digit == digit && it->thing.role == role)
			return i;
	}
	return 0;
}

int sheet_digits_on(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++)
		n += digit_is_on(&s->digits[i]);
	return n;
}

int sheet_first_digit_on(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (digit_is_on(&s->digits[i]))
			return s->digits[i].number;
	return 0;
}

int item_counts(const struct item *i)
{
	return i->place == ITEM_HERE || i->place == ITEM_ON || i->place == ITEM_OFF ||
	       i->place == ITEM_ACCOUNTED || i->place == ITEM_EXTRA;
}

int item_open(const struct item *i)
{
	return item_counts(i) && i->place != ITEM_ACCOUNTED;
}

int sheet_open_items(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++)
		n += item_open(&s->items[i]);
	return n;
}

int sheet_next_open(const struct sheet *s)
{
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (item_open(it) && it->place != ITEM_EXTRA && !it->missing &&
		    it->condition != CONDITION_PIECES_MISSING)
			return i + 1;
	}
	return 0;
}

int sheet_missing(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		n += item_open(it) &&
		     (it->missing || it->place == ITEM_EXTRA || it->condition == CONDITION_PIECES_MISSING);
	}
	return n;
}

int sheet_next_look(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].had && !s->digits[i].seen_bare)
			return s->digits[i].number;
	return 0;
}

int sheet_holds_any(const struct sheet *s)
{
	for (int i = 0; i < s->n_items; i++)
		if (item_counts(&s->items[i]) || s->items[i].place == ITEM_ISOLATED)
			return 1;
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].had || digit_is_on(&s->digits[i]))
			return 1;
	return 0;
}

void item_last_code(const struct thing *t, char out[LAST_CODE_MAX])
{
	snprintf(out, LAST_CODE_MAX, "%s/%s/%s", t->line, t->lot, t->identity);
}
