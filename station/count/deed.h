/* What the station asks for, as values, and the one function that words it (rule 23).
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

#define DEEDS_MAX 6
#define NEXT_MAX 301
#define HEAD_MAX 201

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

/* X(NAME, "name for machines", "words behind the deed"): what is true where the deed fits. A truth whose words
 * are "" is one that the head of the sentence says already. Items and digits that a truth speaks of are the
 * deed's. 'all', 'some', 'none' speak of the things alike that are asked for together. */
#define TRUTHS(X)                                                                                            \
	X(SO, "so", "")                         /* nothing special: what the head asks for */                \
	X(INTACT, "intact", "")                 /* the asked tourniquet is here, whole and uncut */          \
	X(CUT_COMPLETE, "cut-complete", "")     /* here, cut, every piece of it */                           \
	X(PIECES_MISSING, "pieces-missing", "") /* here, but not all of it */                                \
	X(MARK_READ, "mark-read", "")           /* here, and the mark on it can be scanned */                \
	X(SHOWN, "shown", "when both have seen it")                                                          \
	X(SHOWN_ALONE, "shown-alone", "when you have seen it")                                               \
	X(ALL_INTACT, "all-intact", "if all are intact")                                                     \
	X(ALL_SHOWN, "all-shown", "if all are there")                                                        \
	X(SOME_INTACT, "some-intact", "for as many as are")                                                  \
	X(SOME_SHOWN, "some-shown", "for as many as are")                                                    \
	X(ONE_CUT, "one-cut", "for one that is cut")                                                         \
	X(ONE_IN_PIECES, "one-in-pieces", "for one not whole")                                               \
	X(NOT_THERE, "not-there", "if it is not there")                                                      \
	X(NONE_THERE, "none-there", "if none is there")                                                      \
	X(ON_A_DIGIT, "on-a-digit", "if it is on a digit")                                                   \
	X(OFF, "off", "")           /* the tourniquet has come off that digit */                             \
	X(CAME_OFF, "came-off", "") /* the same, where only which digit is asked */                          \
	X(STILL_ON, "still-on", "if it is still on")                                                         \
	X(SECOND_ON, "second-on", "if a second one went on")                                                 \
	X(ON, "on", "") /* a tourniquet is on the digit now */                                               \
	X(ON_AGAIN, "on-again", "if one went on again")                                                      \
	X(IS_ON_NOW, "is-on-now", "if a tourniquet is on it")                                                \
	X(NEVER_OFF, "never-off", "if it never came off")                                                    \
	X(NOT_ON, "not-on", "if none is on it")                                                              \
	X(NOT_ON_YET, "not-on-yet", "if none is on it: then it is the marked digit")                         \
	X(NEVER_ON, "never-on", "if no tourniquet went on at all")                                           \
	X(OTHER_DIGIT, "other-digit", "") /* it is on another digit than was entered */                      \
	X(AS_ENTERED, "as-entered", "to leave it as it is")                                                  \
	X(YES, "yes", "") /* what the question says is so */                                                 \
	X(NO, "no", "if not")                                                                                \
	X(TO_COUNT_IN, "to-count-in", "") /* a pack or instrument lies here uncounted */                     \
	X(ALL_COUNTED, "all-counted", "when both have counted aloud")                                        \
	X(NOTHING_USED, "nothing-used", "if no tourniquet will go on")                                       \
	X(NO_OPERATION, "no-operation", "if there is no operation")                                          \
	X(COUNTED_ALOUD, "counted-aloud", "when it was counted aloud")                                       \
	X(WRITTEN, "written", "when it is written")                                                          \
	X(NAMED_ALOUD, "named-aloud", "when it was said aloud which it is")                                  \
	X(READ_ALOUD, "read-aloud", "when it was read aloud")                                                \
	X(SEEN_BARE, "seen-bare", "") /* the digit was looked at and nothing is on it */                     \
	X(PATIENT, "patient-looked", "")                                                                     \
	X(CARER, "carer-looked", "")                                                                         \
	X(COLLEAGUE, "colleague-looked", "")                                                                 \
	X(NOBODY, "nobody-looked", "")                                                                       \
	X(ALL_POINTS, "all-points", "if all are so")                                                         \
	X(NOT_ALL_POINTS, "not-all-points", "if one is not")                                                 \
	X(NO_BADGE, "no-badge", "for a visitor without a badge")                                             \
	X(STEP_DONE, "step-done", "")                                                                        \
	X(STEP_NOT_DONE, "step-not-done", "")                                                                \
	X(FOUND, "found", "when what is missing is in your hand")                                            \
	X(NO_NUMBER, "no-number", "of the case it comes from, if it bears no number")                        \
	X(SOMETHING_ELSE, "something-else", "if it is something else")                                       \
	X(COUNT_AGAIN, "count-again", "to count again")                                                      \
	X(GIVEN_UP, "given-up", "when the surgeon decides to end")                                           \
	X(GO_ON, "go-on", "to go on")                                                                        \
	X(NUMBER_KNOWN, "number-known", "")                                                                  \
	X(NUMBER_OWED, "number-owed", "if there is no number yet")                                           \
	X(REASON, "reason", "")                                                                              \
	X(PAPER_IN_HAND, "paper-in-hand", "when it is in your hand")                                         \
	X(NEXT_PATIENT, "next-patient", "for the next patient")                                              \
	X(RESUME, "resume", "to go on with it")                                                              \
	X(MADE_HERE, "made-here", "to enter as late")                                                        \
	X(MADE_ELSEWHERE, "made-elsewhere", "to throw away")                                                 \
	X(MEANT_ONCE, "meant-once", "for once")                                                              \
	X(CASE_FIRST, "case-first", "to open their case first")                                              \
	X(READ_BY_MISTAKE, "read-by-mistake", "if the extra item was read by mistake")                       \
	X(CASE_KNOWN, "case-known", "if it is known which case it comes from")                               \
	X(TOLD, "told", "")                                                                                  \
	X(FULL_SIGHT, "full-sight", "")                                                                      \
	X(NO_FULL_SIGHT, "no-full-sight", "if it cannot be seen")                                            \
	X(REGISTERED_COMES, "registered-comes", "")

enum truth {
	TRUTH_NONE = 0,
#define X(name, text, words) TRUTH_##name,
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
	char head[HEAD_MAX];  /* without its full stop */
	char words[NEXT_MAX]; /* the whole sentence, as the board shows it */
	int n_deeds;
	struct deed deeds[DEEDS_MAX];
};

/* Begins: sets the head (printf) and forgets the deeds. */
void next_say(struct next *n, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Adds a deed; one beyond DEEDS_MAX is left out: the ordinary ones come first. */
void next_add(struct next *n, struct deed deed);
/* Words it. A deed that would repeat the last scan becomes NEXT: the sheet's, or where it is no case's `idle_last`. */
void next_word(struct next *n, const struct sheet *s, int32_t idle_last);

const char *deed_kind_name(enum deed_kind kind); /* "card", "digit", … */
const char *truth_name(enum truth truth);        /* "not-there", … */
const char *truth_words(enum truth truth);

#endif
