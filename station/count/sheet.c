#include "count/sheet.h"

#include <stddef.h>
#include <string.h>

static const struct {
	const char *name;
	enum saying saying;
	enum question_about about;
} questions[QUESTION_KINDS] = {[Q_NONE] = {"none", SAY_NONE, ABOUT_CASE},
#define X(name, text, about) [Q_##name] = {text, SAY_ASK_##name, ABOUT_##about},
                               QUESTIONS(X)
#undef X
};

const char *question_name(enum question q)
{
	return questions[q].name;
}

int question_of_pack(enum question q)
{
	return questions[q].about == ABOUT_PACK;
}

int question_of_stored(enum question q)
{
	return questions[q].about == ABOUT_STORED;
}

enum saying question_saying(enum question q)
{
	return questions[q].saying;
}

const char *question_words(enum question q)
{
	return saying_text(questions[q].saying);
}

void sheet_save(struct sheet *to, const struct sheet *from)
{
	memcpy(to, from, offsetof(struct sheet, items));
	memcpy(to->items, from->items, sizeof *to->items * from->n_items);
	memcpy(to->digits, from->digits, sizeof *to->digits * from->n_digits);
}

void sheet_copy(struct sheet *to, const struct sheet *from)
{
	int items = to->n_items, digits = to->n_digits;
	sheet_save(to, from);
	if (items > from->n_items)
		memset(&to->items[from->n_items], 0, sizeof *to->items * (size_t)(items - from->n_items));
	if (digits > from->n_digits)
		memset(&to->digits[from->n_digits], 0,
		       sizeof *to->digits * (size_t)(digits - from->n_digits));
}

void sheet_clear(struct sheet *s)
{
	static const struct sheet none;
	sheet_copy(s, &none);
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
	int returned = 0;
	for (int i = 0; identity[0] && i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		if (it->place == ITEM_STRUCK || strcmp(it->thing.identity, identity) != 0)
			continue;
		if (it->place != ITEM_RETURNED) /* what went back may have been counted in again */
			return i + 1;
		returned = i + 1;
	}
	return returned;
}

int sheet_item_on(const struct sheet *s, int digit, enum role_trait trait)
{
	for (int i = s->n_items; i >= 1; i--) {
		const struct item *it = &s->items[i - 1];
		if (it->place == ITEM_ON && it->digit == digit && role_has(it->thing.role, trait))
			return i;
	}
	return 0;
}

int sheet_item_last_on(const struct sheet *s, int digit)
{
	int on = sheet_item_on(s, digit, TRAIT_TIMED);
	for (int i = s->n_items; !on && i >= 1; i--)
		if (role_has(s->items[i - 1].thing.role, TRAIT_TIMED) && s->items[i - 1].digit == digit &&
		    (s->items[i - 1].place == ITEM_OFF || s->items[i - 1].place == ITEM_ACCOUNTED))
			on = i;
	return on;
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

int sheet_first_unseen_on(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].state == DIGIT_ON && !s->digits[i].seen_on)
			return s->digits[i].number;
	return 0;
}

int sheet_digits_had(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_digits; i++)
		n += s->digits[i].had;
	return n;
}

int sheet_first_digit_doubted(const struct sheet *s)
{
	for (int i = 0; i < s->n_digits; i++)
		if (s->digits[i].doubted || s->digits[i].state == DIGIT_MAYBE_ON)
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

int item_is_sought(const struct item *i)
{
	return item_open(i) && (i->missing || i->condition == CONDITION_PIECES_MISSING);
}

int sheet_without_mark(const struct sheet *s, const struct thing *th)
{
	for (int i = 1; i <= s->n_items; i++) {
		const struct item *it = sheet_item_const(s, i);
		if (th->identity_kind == IDENTITY_MARK && item_open(it) && it->pieces == 1 &&
		    !it->thing.identity[0] && it->place == ITEM_HERE && strcmp(it->thing.line, th->line) == 0)
			return i;
	}
	return 0;
}

int item_accounted(const struct item *i)
{
	int broken = item_open(i) && i->place != ITEM_EXTRA && i->condition == CONDITION_PIECES_MISSING;
	return broken && i->shown >= i->pieces ? i->pieces - 1 : i->shown;
}

int sheet_open_items(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++)
		n += item_open(&s->items[i]);
	return n;
}

int sheet_is_asked(const struct sheet *s, int item)
{
	const struct item *it = sheet_item_const(s, item);
	return it && item_open(it) && it->place != ITEM_EXTRA && !it->missing &&
	       it->condition != CONDITION_PIECES_MISSING;
}

int sheet_next_open(const struct sheet *s)
{
	for (int i = 1; i <= s->n_items; i++)
		if (sheet_is_asked(s, i))
			return i;
	return 0;
}

int item_is_alike(const struct item *a, const struct item *b)
{
	const struct thing *x = &a->thing, *y = &b->thing;
	return x->role == y->role && strcmp(x->line, y->line) == 0 && strcmp(x->name, y->name) == 0 &&
	       x->identity_kind != IDENTITY_MARK && y->identity_kind != IDENTITY_MARK &&
	       (!role_has(x->role, TRAIT_CONDITION) || (a->pieces == 1 && b->pieces == 1));
}

static int is_pair(const struct sheet *s, int a, int b)
{
	return a == b || item_is_alike(sheet_item_const(s, a), sheet_item_const(s, b));
}

int sheet_alike(const struct sheet *s, int item)
{
	int n = 0;
	for (int i = 1; i <= s->n_items; i++)
		n += item_counts(&s->items[i - 1]) && s->items[i - 1].place != ITEM_EXTRA &&
		     is_pair(s, item, i);
	return n;
}

int sheet_alike_open(const struct sheet *s, int item)
{
	int n = 0;
	for (int i = 1; i <= s->n_items; i++)
		if (is_pair(s, item, i) && sheet_is_asked(s, i))
			n += s->items[i - 1].pieces - s->items[i - 1].shown;
	return n;
}

int sheet_alike_shown(const struct sheet *s, int item)
{
	int n = 0;
	for (int i = 1; i <= s->n_items; i++)
		n += i != item && s->items[i - 1].place == ITEM_ACCOUNTED && is_pair(s, item, i);
	return n;
}

/* Which of those that were counted in went on which digit nobody says, unless it was entered with the digit's card. */
static int may_have_changed(const struct sheet *s, int a, int b)
{
	const struct thing *x = &sheet_item_const(s, a)->thing, *y = &sheet_item_const(s, b)->thing;
	return role_has(x->role, TRAIT_TIMED) && role_has(y->role, TRAIT_TIMED) && !x->unlisted &&
	       !y->unlisted;
}

int sheet_may_be_on(const struct sheet *s, int item, int digit)
{
	for (int i = 1; i <= s->n_items; i++)
		if (s->items[i - 1].digit == digit && s->items[i - 1].place != ITEM_STRUCK &&
		    (is_pair(s, item, i) || may_have_changed(s, item, i)))
			return 1;
	return 0;
}

int sheet_missing(const struct sheet *s)
{
	int n = 0;
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		n += item_is_sought(it) || (item_open(it) && it->place == ITEM_EXTRA);
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

int sheet_first_extra(const struct sheet *s)
{
	for (int i = 0; s->case_no && i < s->n_items; i++)
		if (s->items[i].place == ITEM_EXTRA)
			return i + 1;
	return 0;
}

int sheet_is_empty(const struct sheet *s)
{
	int people = 0;
	for (int p = PLACE_FIELD; p < TEAM_PLACES; p++)
		people += s->team.at[p] != 0;
	return debts_has(&s->debts, DEBT_TEAM) && !people && !s->n_items && !sheet_holds_any(s);
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

enum saying end_saying(enum end_why why)
{
	static const enum saying sayings[END_WHY_KINDS] = {[END_TYPED] = SAY_NONE,
#define X(name, text) [END_##name] = SAY_END_##name,
	                                                   END_WHYS(X)
#undef X
	};
	return why < END_WHY_KINDS ? sayings[why] : SAY_NONE;
}

int ready_to_sign_out(const struct sheet *s)
{
	return s->case_no && s->final == FINAL_AGREED && !s->discrepancy && !sheet_next_look(s) &&
	       !s->debts.count && (!s->single || s->who_looked || !s->n_digits);
}
