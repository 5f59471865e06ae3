/* The count sheet of one open case, and the one function that changes it.
 *
 * It holds what decisions depend on and no more; what a slip tells besides is folded from the same events
 * elsewhere. Plain values without pointers: a copy is an assignment, and an untouched byte is zero.
 */
#ifndef BANDTALLY_COUNT_SHEET_H
#define BANDTALLY_COUNT_SHEET_H

#include "count/debt.h"
#include "count/digit.h"
#include "count/event.h"
#include "count/team.h"

#ifndef ITEMS_MAX /* the walk over all states is built with a smaller sheet */
#define ITEMS_MAX 64
#define DIGITS_MAX 12
#endif

#define LAST_CODE_MAX (LINE_KEY_MAX + LOT_MAX + IDENTITY_MAX)

enum item_place {
	ITEM_HERE = 1, /* counted in, on the field */
	ITEM_ON,       /* tourniquet on a digit; forceps on that tourniquet */
	ITEM_OFF,      /* tourniquet off the digit, not yet accounted for (rule 2) */
	ITEM_ACCOUNTED,
	ITEM_RETURNED, /* its pack was never opened */
	ITEM_ISOLATED, /* wrong number in its pack: off the field, not in the count */
	ITEM_STRUCK,   /* a misread; the item was never here */
	ITEM_EXTRA,    /* turned up at a count and is not on the sheet */
};

/* Rule 11. */
enum evidence {
	EVIDENCE_NONE = 0,
	EVIDENCE_MARK,  /* the mark on the item itself was scanned */
	EVIDENCE_SHOWN, /* both people saw it shown */
};

/* Rule 10. */
enum condition {
	CONDITION_NONE = 0,
	CONDITION_INTACT,
	CONDITION_CUT_COMPLETE,
	CONDITION_PIECES_MISSING,
};

struct item {
	struct thing thing;
	int16_t pieces;  /* counted in */
	int16_t shown;   /* accounted for */
	int16_t missing; /* answered as not there in this count */
	uint8_t place;   /* enum item_place */
	uint8_t digit;   /* where it is, or was last; 0 never on one */
	uint8_t evidence, condition;
	uint8_t added; /* after the initial count was agreed */
	uint8_t dropped;
};

enum count_kind { COUNT_INITIAL = 1, COUNT_FINAL, COUNT_HANDOVER, COUNT_ADDED };

enum final_state { FINAL_NONE = 0, FINAL_ASKING, FINAL_AGREED };

enum case_end { END_RECONCILED = 1, END_UNRESOLVED, END_CANCELLED };

enum who_looked { LOOKED_TEAM = 1, LOOKED_PATIENT, LOOKED_CARER, LOOKED_COLLEAGUE, LOOKED_NOBODY };

/* X(NAME, "name in the record", "the question, as the board shows it") */
#define QUESTIONS(X)                                                                                         \
	X(OFF, "off", "Is it off? If it is, scan OFF; NO if it is still on")                                 \
	X(IS_ON, "is-on", "Is a tourniquet on it now? Scan YES or NO")                                       \
	X(WHICH_OFF, "which-off", "Which digit is it off? Scan its digit card")                              \
	X(ROLLS_ON, "rolls-on", "Open wound, flap, infection or tumour on this digit? Scan YES or NO")       \
	X(RIGHT_DIGIT, "right-digit", "Not the marked digit. Is this the right digit? Scan YES or NO")       \
	X(MOVE_TO, "move-to", "Which digit is the right one? Scan its digit card")                           \
	X(ADD, "add", "Scan the pack that is added")                                                         \
	X(RETURNED, "returned", "Scan the pack that goes back unopened")                                     \
	X(ISOLATE, "isolate",                                                                                \
	  "Take the whole pack off the field, isolate it, do not top it up. Scan that pack")                 \
	X(DROPPED, "dropped", "Scan what was dropped")                                                       \
	X(NO_CODE, "no-code", "Is it a finger or toe tourniquet? Scan YES or NO")                            \
	X(EXTRA, "extra", "Was it opened in this case? Scan YES or NO")                                      \
	X(FOUND, "found",                                                                                    \
	  "What was found? Scan its mark, or INTACT for the tourniquet, or YES for the other item")          \
	X(CANCEL, "cancel", "Cancel this case? Scan YES or NO")                                              \
	X(WHO_LOOKED, "who-looked",                                                                          \
	  "Who else looked at the bare digit? Scan PATIENT, CARER, COLLEAGUE or NOBODY")                     \
	X(POINT, "point", "Read the sign-out point aloud. Scan YES or NO")                                   \
	X(HANDOVER_OUT, "handover-out", "Who hands over? Scan the badge of the one who leaves")              \
	X(HANDOVER_IN, "handover-in", "Who takes over? Scan the badge of the one who comes")                 \
	X(HANDOVER_SEEN, "handover-seen",                                                                    \
	  "See the tourniquet on the digit: scan its digit card, or WITHOUT FULL SIGHT")                     \
	X(HANDOVER_AGREE, "handover-agree", "Count aloud what is on the sheet. Scan the circulating badge")  \
	X(SURGEON_ENDS, "surgeon-ends",                                                                      \
	  "The surgeon decides to end unresolved. Scan the surgeon's badge, or NO")                          \
	X(INCIDENT, "incident", "Type the incident number, or scan NOT DONE: number owed")                   \
	X(VISITOR, "visitor", "Write the visitor's name on the paper sheet. Scan the circulating badge")     \
	X(LEAVES, "leaves", "Does the patient leave the room now? Scan YES or NO")                           \
	X(FIELD_TOO, "field-too", "Both badges are needed here. Scan the badge of the one at the field")

enum question {
	Q_NONE = 0,
#define X(name, text, words) Q_##name,
	QUESTIONS(X)
#undef X
	    QUESTION_KINDS
};

struct asked {
	uint8_t what; /* enum question */
	uint8_t item, digit;
	int32_t person, n;
	struct moment at; /* when it was asked: a tourniquet that was on then is timed from then */
};

struct sheet {
	int32_t case_no; /* 0: this place is empty */
	int32_t room;
	uint8_t single; /* one operator: the count is 'single-person' throughout (rule 8) */
	uint8_t initial_agreed;
	uint8_t final;       /* enum final_state */
	uint8_t discrepancy; /* open */
	uint8_t search_done; /* steps answered */
	uint8_t dressing_on; /* before the look */
	uint8_t awake;
	uint8_t suspended;
	uint8_t cancelled;
	uint8_t patient_left;
	uint8_t who_looked; /* enum who_looked, single operator */
	uint8_t points_yes; /* sign-out points answered yes so far, in order */
	uint8_t point_no;   /* the point that was answered no; holds until it is begun again */
	uint8_t signed_out;
	uint8_t last_timed;     /* digit whose start or end N MINUTES AGO and MISREAD act on, 0 none */
	uint8_t last_timed_off; /* 1: its end */
	uint8_t n_items, n_digits;
	int16_t size_mm; /* circumference of the digit as stated, 0 not stated */
	struct team team;
	struct asked asked;
	struct debts debts;
	struct item items[ITEMS_MAX];
	struct digit digits[DIGITS_MAX];
	/* To know a second read of one code from a second pack (section 4). */
	char last_code[LAST_CODE_MAX];
	struct moment last_code_at;
};

/* Changes the sheet by one event of its case. Events come from decide() or from the record; one that does not
 * fit (an item that is not there, a full sheet) gives -EINVAL or -ENOSPC and changes nothing. */
int sheet_apply(struct sheet *s, const struct event *e);

/* Looking things up. Items are numbered from 1; NULL and 0 mean none. */
struct digit *sheet_digit(struct sheet *s, int number);
const struct digit *sheet_digit_const(const struct sheet *s, int number);
struct item *sheet_item(struct sheet *s, int number);
const struct item *sheet_item_const(const struct sheet *s, int number);
int sheet_item_by_identity(const struct sheet *s, const char *identity); /* 0 where "" or absent */
int sheet_item_on(const struct sheet *s, int digit, enum role role);     /* the latest that is on it */
int sheet_digits_on(const struct sheet *s);                              /* ON or MAYBE_ON */
int sheet_first_digit_on(const struct sheet *s);                         /* number, 0 none */

/* What two reads of one pack have in common, for `last_code`. */
void item_last_code(const struct thing *t, char out[LAST_CODE_MAX]);

int item_counts(const struct item *i); /* 1 where it must be accounted for */
int item_open(const struct item *i);   /* 1 where it must be and is not yet */
int sheet_open_items(const struct sheet *s);
int sheet_next_open(const struct sheet *s); /* the item the final count asks for next; 0 none */
int sheet_missing(const struct sheet *s);   /* items answered as missing, in pieces, or extra */
int sheet_next_look(const struct sheet *s); /* digit still to be looked at bare; 0 none */
int sheet_holds_any(const struct sheet *s); /* 1 where a pack was opened or a tourniquet was on */

const char *question_name(enum question q);
const char *question_words(enum question q);

#endif
