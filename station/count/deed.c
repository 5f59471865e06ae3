#include "count/deed.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "count/sheet.h"

static const struct {
	const char *name, *words;
} truths[TRUTH_KINDS] = {[TRUTH_NONE] = {"none", ""},
#define X(name, text, words) [TRUTH_##name] = {text, words},
                         TRUTHS(X)
#undef X
};

const char *truth_name(enum truth truth)
{
	return truths[truth].name;
}

const char *truth_words(enum truth truth)
{
	return truths[truth].words;
}

const char *deed_kind_name(enum deed_kind kind)
{
	static const char *const names[] = {"none", "card", "digit", "mark", "pack", "badge", "slip", "type"};
	return names[kind];
}

void next_say(struct next *n, const char *format, ...)
{
	va_list args;
	memset(n, 0, sizeof *n);
	va_start(args, format);
	vsnprintf(n->head, sizeof n->head, format, args);
	va_end(args);
}

void next_add(struct next *n, struct deed deed)
{
	if (n->n_deeds < DEEDS_MAX)
		n->deeds[n->n_deeds++] = deed;
}

static const char *badge_words(int place, int single)
{
	switch ((enum team_place)place) {
	case PLACE_FIELD:
		return single ? "the operator's badge" : "the badge of the one at the field";
	case PLACE_CIRCULATING:
		return "the circulating badge";
	case PLACE_SURGEON:
		return "the surgeon's badge";
	case PLACE_CHARGE:
		return "the badge of the nurse in charge";
	case PLACE_VISITOR:
	case TEAM_PLACES:
		break;
	}
	return "a badge";
}

static const char *type_words(enum truth truth)
{
	return truth == TRUTH_REASON ? "why" : "the incident number";
}

static const char *pack_words(enum truth truth, int item)
{
	if (truth == TRUTH_TO_COUNT_IN)
		return "each pack and instrument";
	return item ? "its pack" : "the pack";
}

static int is_some(enum truth truth)
{
	return truth == TRUTH_SOME_INTACT || truth == TRUTH_SOME_SHOWN;
}

static void card_words(const struct deed *d, char *out, size_t size)
{
	if (is_some((enum truth)d->truth))
		snprintf(out, size, "SHOWN and their number");
	else if (d->n >= CARD_LOOKED_PATIENT && d->n <= CARD_LOOKED_NOBODY)
		snprintf(out, size, "%s",
		         strchr(own_card_name(d->n), ':') + 2); /* the head says WHO LOOKED */
	else
		snprintf(out, size, "%s", own_card_name(d->n));
}

static void plain_words(const struct deed *d, int single, char *out, size_t size)
{
	switch ((enum deed_kind)d->kind) {
	case DEED_CARD:
		card_words(d, out, size);
		return;
	case DEED_DIGIT:
		snprintf(out, size, "%s",
		         d->truth == TRUTH_OTHER_DIGIT  ? "the card of the digit that it is really on"
		         : d->truth == TRUTH_OFF        ? "its digit card, then OFF"
		         : d->truth == TRUTH_ON_A_DIGIT ? "the digit card"
		         : d->digit || d->item          ? "its digit card"
		                                        : "the digit card");
		return;
	case DEED_MARK:
		snprintf(out, size, "%s",
		         d->item                   ? "its mark"
		         : d->truth == TRUTH_FOUND ? "the mark on it"
		                                   : "its pack or its mark");
		return;
	case DEED_PACK:
		snprintf(out, size, "%s", pack_words((enum truth)d->truth, d->item));
		return;
	case DEED_BADGE:
		snprintf(out, size, "%s", badge_words(d->n, single));
		return;
	case DEED_SLIP:
		snprintf(out, size, "the code on the slip");
		return;
	case DEED_TYPE:
		snprintf(out, size, "%s", type_words((enum truth)d->truth));
		return;
	case DEED_NONE:
		break;
	}
	out[0] = 0;
}

/* "NEXT, then NO"; among others in a row "NO (NEXT first)", for a row of cards reads as one after the other. */
static void deed_words(const struct deed *deed, int single, int in_row, char *out, size_t size)
{
	struct deed d = *deed;
	if (!d.then) {
		plain_words(&d, single, out, size);
		return;
	}
	char words[64];
	d.kind = d.then < 0 ? DEED_BADGE : DEED_CARD;
	d.n = d.then < 0 ? -d.then : d.then;
	plain_words(&d, single, words, sizeof words);
	snprintf(out, size, in_row ? "%s (NEXT first)" : "NEXT, then %s", words);
}

/* A badge that answered something before it joined may be the one that is asked for now. */
static int badge_repeats(const struct deed *d, const struct sheet *s, int32_t last)
{
	if (last >= 0 || d->n >= TEAM_PLACES)
		return 0;
	if (!d->n)
		return d->truth == TRUTH_TOLD;
	return s->team.at[d->n] ? last == -s->team.at[d->n] : !team_place_of(&s->team, -last);
}

/* The same code after itself is not entered a second time (rule 22). */
static int repeats(const struct deed *d, const struct sheet *s, int32_t last)
{
	if (!last)
		return 0;
	if (d->kind == DEED_BADGE)
		return badge_repeats(d, s, last);
	if (d->kind != DEED_CARD)
		return 0;
	if (is_some((enum truth)d->truth))
		return own_card_group(last) == CARDS_SHOWN;
	return d->n == last;
}

static void put_next_between(struct next *n, const struct sheet *s, int32_t last)
{
	for (int i = 0; i < n->n_deeds; i++) {
		struct deed *d = &n->deeds[i];
		if (!repeats(d, s, last))
			continue;
		d->then = d->kind == DEED_BADGE ? -d->n : d->n;
		d->kind = DEED_CARD;
		d->n = CARD_NEXT;
	}
}

struct sentence {
	char *out;
	size_t used;
};

static void add(struct sentence *s, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void add(struct sentence *s, const char *format, ...)
{
	va_list args;
	if (s->used >= NEXT_MAX)
		return;
	va_start(args, format);
	int n = vsnprintf(s->out + s->used, NEXT_MAX - s->used, format, args);
	va_end(args);
	s->used += n > 0 ? (size_t)n : 0;
}

/* Two deeds that read alike (the digit cards of two digits) are said once. */
static int is_said(const struct next *n, int i, int single)
{
	char words[80], other[80];
	deed_words(&n->deeds[i], single, 0, words, sizeof words);
	for (int k = 0; k < i; k++) {
		deed_words(&n->deeds[k], single, 0, other, sizeof other);
		if (n->deeds[k].truth == n->deeds[i].truth && strcmp(words, other) == 0)
			return 1;
	}
	return 0;
}

/* Which come in the row after the head (`plain`), and which with their reason behind it. */
static int list_deeds(const struct next *n, int single, int plain, int list[DEEDS_MAX])
{
	int count = 0;
	for (int i = 0; i < n->n_deeds; i++)
		if ((truth_words((enum truth)n->deeds[i].truth)[0] == 0) == plain && !is_said(n, i, single))
			list[count++] = i;
	return count;
}

static void add_deed(struct sentence *s, const struct deed *d, int single, int in_row, const char *before,
                     int verb)
{
	char words[80];
	deed_words(d, single, in_row, words, sizeof words);
	const char *does = d->kind == DEED_TYPE ? "type " : verb ? "scan " : "";
	int capital_letter = verb == 2;
	if (capital_letter)
		add(s, "%s%c%s%s", before, does[0] - 'a' + 'A', does + 1, words);
	else
		add(s, "%s%s%s", before, does, words);
	if (truth_words((enum truth)d->truth)[0])
		add(s, " %s", truth_words((enum truth)d->truth));
}

/* "scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there": what the head says already stands
 * in one row, what needs its reason stands behind. */
void next_word(struct next *n, const struct sheet *sheet, int32_t idle_last)
{
	struct sentence s = {n->words, 0};
	int list[DEEDS_MAX], single = sheet->single;
	put_next_between(n, sheet, sheet->case_no && !sheet->suspended ? sheet->last_answer : idle_last);
	size_t length = strlen(n->head);
	int question = length && n->head[length - 1] == '?';
	int plain = list_deeds(n, single, 1, list);
	add(&s, "%s", n->head);
	for (int i = 0; i < plain; i++)
		add_deed(&s, &n->deeds[list[i]], single, plain > 1,
		         !i               ? (question ? " " : ": ")
		         : i + 1 == plain ? " or "
		                          : ", ",
		         i ? 0 : 1 + question);
	int more = list_deeds(n, single, 0, list);
	for (int i = 0; i < more; i++)
		add_deed(&s, &n->deeds[list[i]], single, 0,
		         i || plain ? "; "
		         : question ? " "
		                    : ": ",
		         i || plain ? 0 : 1 + question);
	if (plain || more || !question)
		add(&s, ".");
}
