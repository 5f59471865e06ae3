/* What the station asks for, as values, and the one function that words it in a language (rule 23).
 *
 * A `struct next` is the next thing to do: a head ("Show the finger tourniquet, green, M") and at most
 * DEEDS_MAX deeds, the ordinary one first. A deed is one thing a person can do with a scanner or a keyboard,
 * and the truth that it answers: who stands in the room and sees that truth does that deed. The sentence is
 * made from head and deeds, so the two cannot differ; the board's cards, `scan --json`, the simulated theatre
 * and the walk take the same list.
 *
 * Where the ordinary deed is the very card or badge that was the last scan, the same answer would follow
 * itself; then the deed is the card NEXT, and `then` is what follows it (rule 22).
 */
#ifndef BANDTALLY_COUNT_DEED_H
#define BANDTALLY_COUNT_DEED_H

#include <stdint.h>

#include "words/said.h"

#define DEEDS_MAX 6
#define NEXT_MAX 801 /* bytes: a letter of some languages has two */

struct sheet;

enum deed_kind {
	DEED_NONE = 0,
	DEED_CARD,  /* n: enum own_card */
	DEED_DIGIT, /* digit: its card; 0 the card of whichever digit it is */
	DEED_MARK,  /* item: the mark on the item itself; 0 the mark or code of what is in the hand */
	DEED_PACK,  /* the pack, pouch or tray list of what is at hand; item: of that item, 0 any */
	DEED_BADGE, /* n: enum team_place that the badge stands for or comes to; 0 anybody's */
	DEED_SLIP,  /* the code on a slip */
	DEED_TYPE,  /* text typed at the board or by `bandtally scan` */
};

/* X(NAME, "name for machines", words behind the deed (words/next-words.h)): what is true where the deed fits. A truth
 * without words is one that the head of the sentence says already. Items and digits that a truth speaks of are the
 * deed's. 'all', 'some', 'none' speak of the things alike that are asked for together. */
/* clang-format off */
#define TRUTHS(X) \
	X(SO, "so", SAY_NONE) /* nothing special: what the head asks for */ \
	X(INTACT, "intact", SAY_NONE) /* the asked tourniquet is here, whole and uncut */ \
	X(CUT_COMPLETE, "cut-complete", SAY_NONE) /* here, cut, every piece of it */ \
	X(PIECES_MISSING, "pieces-missing", SAY_NONE) /* here, but not all of it */ \
	X(MARK_READ, "mark-read", SAY_NONE) /* here, and the mark on it can be scanned */ \
	X(SHOWN, "shown", SAY_TRUTH_SHOWN) \
	X(SHOWN_ALONE, "shown-alone", SAY_TRUTH_SHOWN_ALONE) \
	X(ALL_INTACT, "all-intact", SAY_TRUTH_ALL_INTACT) \
	X(ALL_SHOWN, "all-shown", SAY_TRUTH_ALL_SHOWN) \
	X(SOME_INTACT, "some-intact", SAY_TRUTH_SOME_INTACT) \
	X(SOME_SHOWN, "some-shown", SAY_TRUTH_SOME_SHOWN) \
	X(ONE_CUT, "one-cut", SAY_TRUTH_ONE_CUT) \
	X(ONE_IN_PIECES, "one-in-pieces", SAY_TRUTH_ONE_IN_PIECES) \
	X(NOT_THERE, "not-there", SAY_TRUTH_NOT_THERE) \
	X(NONE_THERE, "none-there", SAY_TRUTH_NONE_THERE) \
	X(ON_A_DIGIT, "on-a-digit", SAY_TRUTH_ON_A_DIGIT) \
	X(OFF, "off", SAY_NONE) /* the tourniquet has come off that digit */ \
	X(CAME_OFF, "came-off", SAY_NONE) /* the same, where only which digit is asked */ \
	X(STILL_ON, "still-on", SAY_TRUTH_STILL_ON) \
	X(SECOND_ON, "second-on", SAY_TRUTH_SECOND_ON) \
	X(ON, "on", SAY_NONE) /* a tourniquet is on the digit now */ \
	X(ON_AGAIN, "on-again", SAY_TRUTH_ON_AGAIN) \
	X(IS_ON_NOW, "is-on-now", SAY_TRUTH_IS_ON_NOW) \
	X(NEVER_OFF, "never-off", SAY_TRUTH_NEVER_OFF) \
	X(NOT_ON, "not-on", SAY_TRUTH_NOT_ON) \
	X(NOT_ON_YET, "not-on-yet", SAY_TRUTH_NOT_ON_YET) \
	X(NEVER_ON, "never-on", SAY_TRUTH_NEVER_ON) \
	X(OTHER_DIGIT, "other-digit", SAY_NONE) /* it is on another digit than was entered */ \
	X(AS_ENTERED, "as-entered", SAY_TRUTH_AS_ENTERED) \
	X(YES, "yes", SAY_NONE) /* what the question says is so */ \
	X(NO, "no", SAY_TRUTH_NO) \
	X(TO_COUNT_IN, "to-count-in", SAY_NONE) /* a pack or instrument lies here uncounted */ \
	X(ALL_COUNTED, "all-counted", SAY_TRUTH_ALL_COUNTED) \
	X(NOTHING_USED, "nothing-used", SAY_TRUTH_NOTHING_USED) \
	X(NO_OPERATION, "no-operation", SAY_TRUTH_NO_OPERATION) \
	X(COUNTED_ALOUD, "counted-aloud", SAY_TRUTH_COUNTED_ALOUD) \
	X(WRITTEN, "written", SAY_TRUTH_WRITTEN) \
	X(NAMED_ALOUD, "named-aloud", SAY_TRUTH_NAMED_ALOUD) \
	X(READ_ALOUD, "read-aloud", SAY_TRUTH_READ_ALOUD) \
	X(STORES_ASKED, "stores-asked", SAY_TRUTH_STORES_ASKED) \
	X(SEEN_BARE, "seen-bare", SAY_NONE) /* the digit was looked at and nothing is on it */ \
	X(PATIENT, "patient-looked", SAY_NONE) \
	X(CARER, "carer-looked", SAY_NONE) \
	X(COLLEAGUE, "colleague-looked", SAY_NONE) \
	X(NOBODY, "nobody-looked", SAY_NONE) \
	X(ALL_POINTS, "all-points", SAY_TRUTH_ALL_POINTS) \
	X(NOT_ALL_POINTS, "not-all-points", SAY_TRUTH_NOT_ALL_POINTS) \
	X(NO_BADGE, "no-badge", SAY_TRUTH_NO_BADGE) \
	X(STEP_DONE, "step-done", SAY_NONE) \
	X(STEP_NOT_DONE, "step-not-done", SAY_NONE) \
	X(FOUND, "found", SAY_TRUTH_FOUND) \
	X(NO_NUMBER, "no-number", SAY_TRUTH_NO_NUMBER) \
	X(SOMETHING_ELSE, "something-else", SAY_TRUTH_SOMETHING_ELSE) \
	X(COUNT_AGAIN, "count-again", SAY_TRUTH_COUNT_AGAIN) \
	X(GIVEN_UP, "given-up", SAY_TRUTH_GIVEN_UP) \
	X(GO_ON, "go-on", SAY_TRUTH_GO_ON) \
	X(NUMBER_KNOWN, "number-known", SAY_NONE) \
	X(NUMBER_OWED, "number-owed", SAY_TRUTH_NUMBER_OWED) \
	X(REASON, "reason", SAY_NONE) \
	X(PAPER_IN_HAND, "paper-in-hand", SAY_TRUTH_PAPER_IN_HAND) \
	X(NEXT_PATIENT, "next-patient", SAY_TRUTH_NEXT_PATIENT) \
	X(RESUME, "resume", SAY_TRUTH_RESUME) \
	X(MADE_HERE, "made-here", SAY_TRUTH_MADE_HERE) \
	X(MADE_ELSEWHERE, "made-elsewhere", SAY_TRUTH_MADE_ELSEWHERE) \
	X(MEANT_ONCE, "meant-once", SAY_TRUTH_MEANT_ONCE) \
	X(CASE_FIRST, "case-first", SAY_TRUTH_CASE_FIRST) \
	X(READ_BY_MISTAKE, "read-by-mistake", SAY_TRUTH_READ_BY_MISTAKE) \
	X(CASE_KNOWN, "case-known", SAY_TRUTH_CASE_KNOWN) \
	X(TOLD, "told", SAY_NONE) \
	X(FULL_SIGHT, "full-sight", SAY_NONE) \
	X(NO_FULL_SIGHT, "no-full-sight", SAY_TRUTH_NO_FULL_SIGHT) \
	X(REGISTERED_COMES, "registered-comes", SAY_NONE) \
	X(NOBODY_SCRUBS, "nobody-scrubs", SAY_TRUTH_NOBODY_SCRUBS) \
	X(AFTER_DONE, "after-done", SAY_TRUTH_AFTER_DONE) /* what is owed after the end of a case */ \
	X(AFTER_BARE, "after-bare", SAY_TRUTH_AFTER_BARE) \
	X(AFTER_ON, "after-on", SAY_TRUTH_AFTER_ON) \
	TRUTHS_OF_STORES(X)

/* At a stores bench (station/stock), and nowhere else. */
#define TRUTHS_OF_STORES(X) \
	X(TYPED, "typed", SAY_NONE) \
	X(NOT_SCANNED, "not-scanned", SAY_TRUTH_NOT_SCANNED) \
	X(OTHER_NUMBER, "other-number", SAY_TRUTH_OTHER_NUMBER) \
	X(LEFT, "left", SAY_TRUTH_LEFT) \
	X(NOBODY_HERE, "nobody-here", SAY_TRUTH_NOBODY_HERE) \
	X(TO_ISSUE, "to-issue", SAY_NONE) \
	X(ALL_DONE, "all-done", SAY_TRUTH_ALL_DONE) \
	X(ROOM_OF, "room-of", SAY_NONE) \
	X(NO_NOTICE, "no-notice", SAY_TRUTH_NO_NOTICE) \
	X(LABEL, "label", SAY_NONE) \
	X(ONE_SPOILT, "one-spoilt", SAY_TRUTH_ONE_SPOILT) \
	X(TO_LABEL, "to-label", SAY_TRUTH_TO_LABEL) \
	X(CAME_BACK, "came-back", SAY_TRUTH_CAME_BACK) \
	X(TO_COUNT, "to-count", SAY_TRUTH_TO_COUNT) \
	X(NOT_TO_USE, "not-to-use", SAY_TRUTH_NOT_TO_USE) \
	X(FOUND_HERE, "found-here", SAY_TRUTH_FOUND_HERE) \
	X(NOT_OUT, "not-out", SAY_TRUTH_NOT_OUT)
/* clang-format on */

enum truth {
	TRUTH_NONE = 0,
#define X(name, text, saying) TRUTH_##name,
	TRUTHS(X)
#undef X
	    TRUTH_KINDS
};

struct deed {
	uint8_t kind;  /* enum deed_kind */
	uint8_t truth; /* enum truth */
	uint8_t item;  /* on the sheet, 0 none */
	uint8_t digit; /* 1..24, 0 none, or whichever it is */
	int32_t n;     /* card or place, as the kind says */
	int32_t
	    then; /* a card NEXT: the card that follows it (enum own_card), or minus the place of a badge; 0 it is no NEXT */
};

struct next {
	struct said head; /* its name and values */
	struct said listed[SAID_LISTED_MAX];
	int n_listed;         /* things in its {list}; 0: the digits of the deeds are */
	uint8_t single;       /* of a sheet that one person counts: 'the operator's badge' */
	char words[NEXT_MAX]; /* the whole sentence in English */
	int n_deeds;
	struct deed deeds[DEEDS_MAX];
};

/* Nothing comes next. What lies behind the counts of the lists is not read. */
void next_clear(struct next *n);

/* Begins: sets the head and forgets the deeds. {list} of a head are the digits of its deeds, or what next_list() adds. */
void next_say(struct next *n, const struct say *head);
void next_list(struct next *n, const struct say *thing);
/* Adds a deed; one beyond DEEDS_MAX is left out: the ordinary ones come first. */
void next_add(struct next *n, struct deed deed);
/* The deeds are there. One that would repeat the last scan becomes NEXT: the sheet's, or where it is no case's `idle_last`. */
void next_word(struct next *n, const struct sheet *s, int32_t idle_last);

/* The whole sentence in a language, as the board shows it. */
void next_words_in(const struct next *n, const struct language *language, char out[NEXT_MAX]);

int deed_card_behind(const struct deed *d); /* the card (enum own_card) that is scanned behind it; 0 none */
const char *deed_kind_name(enum deed_kind kind); /* "card", "digit", … */
const char *truth_name(enum truth truth);        /* "not-there", … */
enum saying truth_saying(enum truth truth);      /* the words behind the deed, or SAY_NONE */

#endif
