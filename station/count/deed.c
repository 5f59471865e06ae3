#include "count/deed.h"

#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "count/sheet.h"

static const struct {
	const char *name;
	enum saying saying;
} truths[TRUTH_KINDS] = {[TRUTH_NONE] = {"none", SAY_NONE},
#define X(name, text, saying) [TRUTH_##name] = {text, saying},
                         TRUTHS(X)
#undef X
};

const char *truth_name(enum truth truth)
{
	return truths[truth].name;
}

enum saying truth_saying(enum truth truth)
{
	return truths[truth].saying;
}

const char *deed_kind_name(enum deed_kind kind)
{
	static const char *const names[] = {"none", "card", "digit", "mark", "pack", "badge", "slip", "type"};
	return names[kind];
}

void next_clear(struct next *n)
{
	next_say(n, &(const struct say){0});
}

void next_say(struct next *n, const struct say *head)
{
	said_keep(&n->head, head);
	n->n_listed = n->n_deeds = 0;
	n->single = 0;
	n->words[0] = 0;
}

void next_list(struct next *n, const struct say *thing)
{
	n->n_listed = said_list_add(n->listed, n->n_listed, SAID_LISTED_MAX, thing);
}

void next_add(struct next *n, struct deed deed)
{
	if (n->n_deeds < DEEDS_MAX)
		n->deeds[n->n_deeds++] = deed;
}

static int is_some(enum truth truth)
{
	return truth == TRUTH_SOME_INTACT || truth == TRUTH_SOME_SHOWN;
}

/* --- what a deed is called ------------------------------------------------------------------------ */

static enum saying badge_saying(int place, int single)
{
	switch ((enum team_place)place) {
	case PLACE_FIELD:
		return single ? SAY_DEED_BADGE_OPERATOR : SAY_DEED_BADGE_FIELD;
	case PLACE_CIRCULATING:
		return SAY_DEED_BADGE_CIRCULATING;
	case PLACE_SURGEON:
		return SAY_DEED_BADGE_SURGEON;
	case PLACE_CHARGE:
		return SAY_DEED_BADGE_CHARGE;
	case PLACE_VISITOR:
	case TEAM_PLACES:
		break;
	}
	return SAY_DEED_BADGE_ANY;
}

int deed_card_behind(const struct deed *d)
{
	if (d->kind == DEED_DIGIT && d->truth == TRUTH_OFF)
		return CARD_OFF;
	return d->then > 0 ? d->then : 0;
}

static enum saying digit_card_saying(const struct deed *d)
{
	if (d->truth == TRUTH_OTHER_DIGIT)
		return SAY_DEED_RIGHT_CARD;
	if (deed_card_behind(d) == CARD_OFF)
		return SAY_DEED_CARD_THEN_OFF;
	if (d->truth == TRUTH_ON_A_DIGIT)
		return SAY_DEED_DIGIT_CARD;
	return d->digit || d->item ? SAY_DEED_ITS_CARD : SAY_DEED_DIGIT_CARD;
}

static enum saying card_saying(const struct deed *d)
{
	if (is_some((enum truth)d->truth))
		return SAY_DEED_SHOWN_NUMBER;
	if (d->truth == TRUTH_ROOM_OF)
		return SAY_DEED_TO_ROOM;
	if (own_card_group(d->n) == CARDS_LOOKED) /* the head says WHO LOOKED */
		return SAY_DEED_LOOKED_80 + (unsigned)(d->n - CARD_LOOKED_PATIENT);
	return saying_of_card(d->n);
}

static enum saying plain_saying(const struct deed *d, int single)
{
	switch ((enum deed_kind)d->kind) {
	case DEED_CARD:
		return card_saying(d);
	case DEED_DIGIT:
		return digit_card_saying(d);
	case DEED_MARK:
		return d->truth == TRUTH_LABEL   ? SAY_DEED_EACH_LABEL
		       : d->item                 ? SAY_DEED_ITS_MARK
		       : d->truth == TRUTH_FOUND ? SAY_DEED_MARK_ON_IT
		                                 : SAY_DEED_PACK_OR_MARK;
	case DEED_PACK:
		return d->truth == TRUTH_TO_COUNT_IN ? SAY_DEED_EACH_PACK
		       : d->truth == TRUTH_TO_ISSUE  ? SAY_DEED_PACK_OF_EACH
		       : d->item                     ? SAY_DEED_ITS_PACK
		                                     : SAY_DEED_THE_PACK;
	case DEED_BADGE:
		return badge_saying(d->n, single);
	case DEED_SLIP:
		return SAY_DEED_SLIP_CODE;
	case DEED_TYPE:
		return d->truth == TRUTH_NOT_SCANNED                               ? SAY_DEED_TYPE_KEY
		       : d->truth == TRUTH_TYPED || d->truth == TRUTH_OTHER_NUMBER ? SAY_DEED_TYPE_IT
		       : d->truth == TRUTH_REASON                                  ? SAY_DEED_TYPE_WHY
		                                                                   : SAY_DEED_TYPE_NUMBER;
	case DEED_NONE:
		break;
	}
	return SAY_NONE;
}

/* Behind a card NEXT that card or badge is called which follows it. */
static enum saying deed_saying(const struct deed *deed, int single)
{
	struct deed d = *deed;
	if (d.then) {
		d.kind = d.then < 0 ? DEED_BADGE : DEED_CARD;
		d.n = d.then < 0 ? -d.then : d.then;
	}
	return plain_saying(&d, single);
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

/* --- the sentence --------------------------------------------------------------------------------- */

#define PARTS_MAX 600

struct wording {
	const struct next *next;
	const struct language *language;
};

static void put(const struct wording *w, char out[PARTS_MAX], const struct say *say)
{
	say_part_in(w->language, say, out, PARTS_MAX);
}

/* Two deeds that read alike (the digit cards of two digits) are said once. */
static int is_said(const struct next *n, int i)
{
	const struct deed *d = &n->deeds[i];
	for (int k = 0; k < i; k++)
		if (n->deeds[k].truth == d->truth && !n->deeds[k].then == !d->then &&
		    deed_saying(&n->deeds[k], n->single) == deed_saying(d, n->single))
			return 1;
	return 0;
}

/* Which come in the row after the head (`plain`), and which with their reason behind it. */
static int list_deeds(const struct next *n, int plain, int list[DEEDS_MAX])
{
	int count = 0;
	for (int i = 0; i < n->n_deeds; i++)
		if ((truth_saying((enum truth)n->deeds[i].truth) == SAY_NONE) == plain && !is_said(n, i))
			list[count++] = i;
	return count;
}

/* "NEXT, then NO"; among others in a row "NO (NEXT first)", for a row of cards reads as one after the other. */
static void name_deed(const struct wording *w, const struct deed *d, int in_row, char out[PARTS_MAX])
{
	const char *words = saying_text_in(w->language, deed_saying(d, w->next->single));
	if (!d->then)
		snprintf(out, PARTS_MAX, "%s", words);
	else if (in_row)
		put(w, out, SAY(NEXT_FIRST, .words = words, .card = CARD_NEXT));
	else
		put(w, out, SAY(NEXT_THEN, .words = words, .card = CARD_NEXT));
}

/* "INTACT, CUT AND COMPLETE or PIECES MISSING". */
static void name_row(const struct wording *w, const int *list, int n, char out[PARTS_MAX])
{
	char name[PARTS_MAX], before[PARTS_MAX];
	name_deed(w, &w->next->deeds[list[0]], n > 1, out);
	for (int i = 1; i < n; i++) {
		name_deed(w, &w->next->deeds[list[i]], 1, name);
		memcpy(before, out, sizeof before);
		put(w, out,
		    &(const struct say){.saying = n == 2       ? SAY_OR_TWO
		                                  : i == n - 1 ? SAY_OR_LAST
		                                               : SAY_OR_MORE,
		                        .first = before,
		                        .second = name});
	}
}

/* "scan INTACT, CUT AND COMPLETE or PIECES MISSING". */
static void word_row(const struct wording *w, const int *list, int n, char out[PARTS_MAX])
{
	char row[PARTS_MAX];
	name_row(w, list, n, row);
	if (w->next->deeds[list[0]].kind == DEED_TYPE)
		put(w, out, SAY(DO_TYPE, .words = row));
	else
		put(w, out, SAY(DO_SCAN, .words = row));
}

/* "NO if it is not there"; the first of all with what is done: "scan NO if it is not there". */
static void word_reasoned(const struct wording *w, const struct deed *d, int first, char out[PARTS_MAX])
{
	char name[PARTS_MAX];
	enum saying does = d->kind == DEED_TYPE ? SAY_DO_TYPE_WHEN : first ? SAY_DO_SCAN_WHEN : SAY_DO_WHEN;
	name_deed(w, d, 0, name);
	put(w, out,
	    &(const struct say){.saying = does,
	                        .first = name,
	                        .second = saying_text_in(w->language, truth_saying((enum truth)d->truth))});
}

/* What the head says already stands in one row, what needs its reason stands behind. */
static void word_deeds(const struct wording *w, char out[PARTS_MAX])
{
	int list[DEEDS_MAX], plain = list_deeds(w->next, 1, list);
	char part[PARTS_MAX], before[PARTS_MAX];
	out[0] = 0;
	if (plain)
		word_row(w, list, plain, out);
	int more = list_deeds(w->next, 0, list);
	for (int i = 0; i < more; i++) {
		int first = !plain && !i;
		word_reasoned(w, &w->next->deeds[list[i]], first, part);
		memcpy(before, out, sizeof before);
		if (first)
			memcpy(out, part, sizeof part);
		else
			put(w, out, SAY(NEXT_MORE, .first = before, .second = part));
	}
}

/* The digits of the deeds, each once. */
static void list_digits(const struct wording *w, char out[SAID_LIST_MAX])
{
	const char *names[DEEDS_MAX];
	int n = 0;
	for (int i = 0; i < w->next->n_deeds; i++)
		if (w->next->deeds[i].digit)
			names[n++] = saying_text_in(w->language, saying_of_digit(w->next->deeds[i].digit));
	say_list(w->language, names, n, out, SAID_LIST_MAX);
}

static void word_head(const struct wording *w, char out[PARTS_MAX])
{
	char list[SAID_LIST_MAX];
	struct say head = said_say(&w->next->head);
	if (w->next->n_listed)
		said_list(w->language, w->next->listed, w->next->n_listed, list, sizeof list);
	else
		list_digits(w, list);
	head.list = list;
	say_sentence_in(w->language, &head, out, PARTS_MAX);
}

void next_words_in(const struct next *n, const struct language *language, char out[NEXT_MAX])
{
	const struct wording w = {n, language};
	char head[PARTS_MAX], deeds[PARTS_MAX];
	word_head(&w, head);
	word_deeds(&w, deeds);
	size_t length = strlen(head);
	int question = length && head[length - 1] == '?';
	if (!deeds[0] && question)
		snprintf(out, NEXT_MAX, "%.*s", NEXT_MAX - 1, head);
	else if (!deeds[0])
		say_part_in(language, SAY(NEXT_STATED, .first = head), out, NEXT_MAX);
	else if (question) {
		saying_capital(deeds);
		say_part_in(language, SAY(NEXT_ASKED_DEED, .first = head, .second = deeds), out, NEXT_MAX);
	} else
		say_part_in(language, SAY(NEXT_STATED_DEED, .first = head, .second = deeds), out, NEXT_MAX);
}

void next_word(struct next *n, const struct sheet *sheet, int32_t idle_last)
{
	n->single = sheet->single;
	put_next_between(n, sheet, sheet->case_no && !sheet->suspended ? sheet->last_answer : idle_last);
	next_words_in(n, NULL, n->words);
}
