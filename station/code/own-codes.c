#include "code/own-codes.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/check-digit.h"

/* The payload of each kind: how many digits its numbers have, in their order. */
static const struct shape {
	uint8_t station, first, second, proof;
} shapes[] = {
    [OWN_CARD] = {0, 2, 3, 0}, [OWN_DIGIT] = {0, 2, 2, 0}, [OWN_BADGE] = {0, 6, 0, 0},
    [OWN_SLIP] = {2, 7, 2, 6}, [OWN_CASE] = {2, 7, 0, 0},  [OWN_SCANNER_CHECK] = {0, 2, 0, 0},
    [OWN_TRAY] = {0, 6, 0, 0}, [OWN_ITEM] = {2, 8, 0, 0},  [OWN_PAPER_SHEET] = {0, 2, 5, 0},
};

/* The second letter of a linear code. */
#define SET_REAL 'T'
#define SET_PRACTICE 'X'

static bool is_in_practice_set(enum own_kind kind)
{
	return kind != OWN_ITEM && kind != OWN_SCANNER_CHECK;
}

static struct shape shape_now(enum own_kind kind, bool old)
{
	struct shape s = shapes[kind];
	if (old)
		s.station = s.proof = 0;
	return s;
}

static size_t digits_of(struct shape s)
{
	return (size_t)(s.station + s.first + s.second + s.proof);
}

static const struct card {
	int meaning;
	const char *name;
	enum own_card_group group;
	int says;
	const char *use;
} cards[] = {
#define X(number, name, words, group, says, use) {number, words, CARDS_##group, says, use},
    OWN_CARDS(X) OWN_STORES_CARDS(X)
#undef X
/* A card for each number that a room can have. */
#define TO(n)                                                                                                \
	{CARD_TO_ROOM + n, "TO ROOM " #n, CARDS_TO_ROOM, n, "packs go to this room: scan each after this"},
#define TO_TEN(t)                                                                                            \
	TO(t##0)                                                                                             \
	TO(t##1) TO(t##2) TO(t##3) TO(t##4) TO(t##5) TO(t##6) TO(t##7) TO(t##8) TO(t##9)
        TO(1) TO(2) TO(3) TO(4) TO(5) TO(6) TO(7) TO(8) TO(9) TO_TEN(1) TO_TEN(2) TO_TEN(3) TO_TEN(4)
            TO_TEN(5) TO_TEN(6) TO_TEN(7) TO_TEN(8) TO_TEN(9)
#undef TO_TEN
#undef TO
};

static const struct card *card_of(int meaning)
{
	static const struct card none = {0, "", CARDS_NONE, 0, ""};
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		if (cards[i].meaning == meaning)
			return &cards[i];
	return &none;
}

const char *own_card_name(int meaning)
{
	return card_of(meaning)->name;
}

const char *own_card_use(int meaning)
{
	return card_of(meaning)->use;
}

enum own_card_group own_card_group(int meaning)
{
	return card_of(meaning)->group;
}

const char *own_card_group_title(enum own_card_group group)
{
	static const char *const titles[CARDS_ALL_GROUPS] = {[CARDS_NONE] = "",
#define X(name, title) [CARDS_##name] = title,
	                                                     OWN_CARD_GROUPS(X) OWN_STORES_CARD_GROUPS(X)
#undef X
	};
	return titles[group < CARDS_ALL_GROUPS ? group : CARDS_NONE];
}

int own_card_says(int meaning)
{
	return card_of(meaning)->says;
}

int own_card_saying(enum own_card_group group, int number)
{
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		if (cards[i].group == group && cards[i].says == number)
			return cards[i].meaning;
	return 0;
}

bool own_card_is_of_stores(int meaning)
{
	return own_card_group(meaning) >= CARDS_GROUPS;
}

static int next_card(int meaning, bool of_stores)
{
	int next = 0;
	for (size_t i = 0; i < sizeof cards / sizeof *cards; i++)
		if (cards[i].meaning > meaning && (!next || cards[i].meaning < next) &&
		    cards[i].group != CARDS_TO_ROOM && (cards[i].group >= CARDS_GROUPS) == of_stores)
			next = cards[i].meaning;
	return next;
}

int own_card_next(int meaning)
{
	return next_card(meaning, false);
}

int own_stores_card_next(int meaning)
{
	return next_card(meaning, true);
}

const char *own_digit_name(int number)
{
	static const char *const names[OWN_DIGITS + 1] = {"",
#define X(number, words) [number] = words,
	                                                  OWN_DIGIT_NAMES(X)
#undef X
	};
	return number >= 1 && number <= OWN_DIGITS ? names[number] : "";
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_capital(char c)
{
	return c >= 'A' && c <= 'Z';
}

static bool all_digits(const char *text, size_t size)
{
	for (size_t i = 0; i < size; i++)
		if (!is_digit(text[i]))
			return false;
	return true;
}

static int32_t number_of(const char *digits, int count)
{
	int32_t n = 0;
	for (int i = 0; i < count; i++)
		n = n * 10 + (digits[i] - '0');
	return n;
}

/* The two halves of ours share a tail: site, then digits only. `head` is how much stands before the digits.
 */
static enum own_kind shape_of(const char *t, size_t size, size_t *head)
{
	if (size >= 8 && t[0] == 'B' && (t[1] == SET_REAL || t[1] == SET_PRACTICE) && is_capital(t[2]) &&
	    is_capital(t[3]) && t[4] >= '1' && t[4] <= '9' && t[4] != '8' && all_digits(t + 5, size - 5)) {
		*head = 5;
		return (enum own_kind)(t[4] - '0');
	}
	if ((size == 13 || size == 15) && (t[0] == 'P' || t[0] == 'R') && is_capital(t[1]) &&
	    is_capital(t[2]) && all_digits(t + 3, size - 3)) {
		*head = 3;
		return OWN_ITEM;
	}
	return OWN_NONE;
}

static void fill(struct own_code *out, enum own_kind kind, bool old, const char *digits)
{
	struct shape s = shape_now(kind, old);
	int32_t first = number_of(digits + s.station, s.first);
	int second = (int)number_of(digits + s.station + s.first, s.second);
	out->old = old;
	out->station = (int)number_of(digits, s.station);
	out->proof = number_of(digits + s.station + s.first + s.second, s.proof);
	out->kind = kind;
	switch (kind) {
	case OWN_CARD:
		out->room = (int)first;
		out->meaning = second;
		break;
	case OWN_DIGIT:
		out->room = (int)first;
		out->digit = second;
		break;
	case OWN_SLIP:
		out->number = first;
		out->copy = second;
		break;
	case OWN_PAPER_SHEET:
		out->room = (int)first;
		out->number = second;
		break;
	case OWN_BADGE:
	case OWN_CASE:
	case OWN_SCANNER_CHECK:
	case OWN_TRAY:
	case OWN_ITEM:
		out->number = first;
		break;
	case OWN_NONE:
		break;
	}
}

static int judge(const char *t, size_t size, enum own_kind kind, bool old, size_t head,
                 struct code_fault *fault)
{
	size_t whole = head + digits_of(shape_now(kind, old)) + 2;
	if (size < whole)
		return fault_set(fault, size,
		                 "this code of ours is cut short, %zu of %zu characters: scan it again", size,
		                 whole);
	if (size > whole)
		return fault_set(fault, whole, "this code of ours has %zu characters too many: scan it again",
		                 size - whole);
	if (check_mod97(t, size) != 1)
		return fault_set(fault, size - 2,
		                 "the check digits of this code of ours are wrong, so it was misread "
		                 "or mistyped: scan it again, or print it anew");
	for (size_t i = head == 5 ? 2 : 1, end = i + 2; i < end; i++)
		if (!strchr(OWN_SITE_LETTERS, t[i]))
			return fault_set(fault, i,
			                 "a site has only letters of " OWN_SITE_LETTERS
			                 ": this code was not printed by a station, do not use it");
	if (kind == OWN_SLIP && !old && !number_of(t + head + 11, 6))
		return fault_set(fault, head + 11,
		                 "no slip has 000000 as its six digits: this code was not printed by a "
		                 "station, do not use it");
	if (kind == OWN_DIGIT && !own_digit_name((int)number_of(t + head + 2, 2))[0])
		return fault_set(fault, head + 2,
		                 "digits are numbered 1 to %d: print this room's digit cards anew",
		                 OWN_DIGITS);
	return 0;
}

int own_code_read(const char *text, size_t size, struct own_code *out, struct code_fault *fault)
{
	char t[32];
	*out = (struct own_code){0};
	if (size < 8 || size > sizeof t)
		return -ENOENT;
	for (size_t i = 0; i < size; i++)
		t[i] = text[i] >= 'a' && text[i] <= 'z' ? (char)(text[i] - 'a' + 'A') : text[i];
	size_t head = 0;
	enum own_kind kind = shape_of(t, size, &head);
	if (kind == OWN_NONE)
		return -ENOENT;
	struct shape now = shapes[kind];
	bool practice = head == 5 && t[1] == SET_PRACTICE;
	bool old = !practice && now.station && size == head + digits_of(shape_now(kind, true)) + 2;
	if (practice && !is_in_practice_set(kind))
		return fault_set(fault, 4, "the practice set has no such code: print the set anew");
	int r = judge(t, size, kind, old, head, fault);
	if (r < 0)
		return r;
	size_t site = head == 5 ? 2 : 1;
	out->site[0] = t[site];
	out->site[1] = t[site + 1];
	out->practice = practice;
	out->role = kind == OWN_ITEM ? t[0] : '\0';
	fill(out, kind, old, t + head);
	return 0;
}

static bool site_is_one(const char *site)
{
	return strlen(site) == 2 && strspn(site, OWN_SITE_LETTERS) == 2;
}

/* True where the fields of this kind fit their digits. The numbers go to first and second. */
static bool numbers_of(const struct own_code *c, int32_t *first, int32_t *second)
{
	*first = c->number;
	*second = 0;
	switch (c->kind) {
	case OWN_CARD:
		*first = c->room;
		*second = c->meaning;
		return true;
	case OWN_DIGIT:
		*first = c->room;
		*second = c->digit;
		return own_digit_name(c->digit)[0] != '\0';
	case OWN_SLIP:
		*second = c->copy;
		return true;
	case OWN_PAPER_SHEET:
		*first = c->room;
		*second = c->number;
		return true;
	case OWN_ITEM:
		return c->role == 'P' || c->role == 'R';
	case OWN_BADGE:
	case OWN_CASE:
	case OWN_SCANNER_CHECK:
	case OWN_TRAY:
		return true;
	case OWN_NONE:
		return false;
	}
	return false;
}

static bool put_number(char **p, int32_t n, int digits)
{
	for (int i = digits - 1; i >= 0; i--, n /= 10)
		(*p)[i] = (char)('0' + n % 10);
	*p += digits;
	return n == 0;
}

int own_code_write(const struct own_code *code, char out[OWN_CODE_MAX])
{
	int32_t first, second;
	struct shape s = shape_now(code->kind, code->old);
	out[0] = '\0';
	if ((code->practice && (code->old || !is_in_practice_set(code->kind))) || !site_is_one(code->site) ||
	    !numbers_of(code, &first, &second) || first < 0 || second < 0 || code->station < 0 ||
	    code->proof < 0 || (s.proof && !code->proof))
		return -EINVAL;
	char *p = out;
	if (code->kind == OWN_ITEM) {
		*p++ = code->role;
	} else {
		*p++ = 'B';
		*p++ = code->practice ? SET_PRACTICE : SET_REAL;
	}
	*p++ = code->site[0];
	*p++ = code->site[1];
	if (code->kind != OWN_ITEM)
		*p++ = (char)('0' + (int)code->kind);
	bool fits = put_number(&p, code->station, s.station);
	fits = put_number(&p, first, s.first) && fits;
	fits = put_number(&p, second, s.second) && fits;
	fits = put_number(&p, code->proof, s.proof) && fits;
	if (!fits) {
		out[0] = '\0';
		return -EINVAL;
	}
	p[0] = p[1] = '0';
	int32_t check = 98 - check_mod97(out, (size_t)(p + 2 - out));
	put_number(&p, check, 2);
	*p = '\0';
	return 0;
}

void own_code_shown(const char *text, char out[OWN_CODE_SHOWN_MAX])
{
	struct own_code code;
	size_t n = 0, letters = strspn(text, "ABCDEFGHIJKLMNOPQRSTUVWXYZ");
	*out = '\0';
	if (own_code_read(text, strlen(text), &code, NULL) < 0)
		return;
	for (size_t i = 0; text[i]; i++) {
		if (i >= letters && (i - letters) % 4 == 0)
			out[n++] = ' ';
		out[n++] = text[i];
	}
	out[n] = '\0';
}
