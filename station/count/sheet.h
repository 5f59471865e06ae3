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

enum item_place {
	ITEM_HERE = 1, /* counted in, on the field */
	ITEM_ON,       /* tourniquet on a digit; forceps on that tourniquet */
	ITEM_OFF,      /* tourniquet off the digit, not yet accounted for (rule 2) */
	ITEM_ACCOUNTED,
	ITEM_RETURNED, /* its pack was never opened */
	ITEM_ISOLATED, /* wrong number in its pack: off the field, not in the count */
	ITEM_STRUCK,   /* a misread, counted again, or of another case */
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
	uint8_t opened; /* shown in part or looked for in a count of this case */
};

enum count_kind { COUNT_INITIAL = 1, COUNT_FINAL, COUNT_HANDOVER, COUNT_ADDED };

enum final_state { FINAL_NONE = 0, FINAL_ASKING, FINAL_AGREED };

enum case_end { END_RECONCILED = 1, END_UNRESOLVED, END_CANCELLED };

/* Answers, one event each: to a step of the search, to a point of the sign-out; and which end of a stretch was earlier. */
enum step_answer { STEP_DONE = 1, STEP_NOT_DONE };
enum seen_on {
	SEEN_NOT_FULLY = 0,
	SEEN_AT_HANDOVER,
	SEEN_SAID /* NO where it was asked whether it is off */
};
enum point_answer { POINT_YES = 1, POINT_NO };
enum stretch_end { STRETCH_ON = 1, STRETCH_OFF };

/* What was entered last for a digit: the start of its clock, its end, or neither: a second tourniquet beside the first, one of
 * two that came off, an OFF that was none. */
enum timed { TIMED_ON = 0, TIMED_OFF, TIMED_BESIDE_ON, TIMED_BESIDE_OFF, TIMED_STILL_ON };

enum who_looked { LOOKED_TEAM = 1, LOOKED_PATIENT, LOOKED_CARER, LOOKED_COLLEAGUE, LOOKED_NOBODY };

/* X(NAME, "name in the record", what it is about): SAY_ASK_NAME is how the board asks it; its deeds follow. A further pack in
 * the hand leaves nothing of a question about a pack; every other stands until it is answered. */
/* clang-format off */
#define QUESTIONS(X) \
	X(OFF, "off", CASE) \
	X(IS_ON, "is-on", CASE) \
	X(WHICH_OFF, "which-off", CASE) \
	X(ROLLS_ON, "rolls-on", PACK) \
	X(RIGHT_DIGIT, "right-digit", CASE) \
	X(MOVE_TO, "move-to", CASE) \
	X(ADD, "add", PACK) \
	X(RETURNED, "returned", PACK) \
	X(ISOLATE, "isolate", PACK) \
	X(DROPPED, "dropped", PACK) \
	X(NO_CODE, "no-code", PACK) \
	X(EXTRA, "extra", PACK) \
	X(FOUND, "found", PACK) \
	X(CANCEL, "cancel", CASE) \
	X(WHO_LOOKED, "who-looked", CASE) \
	X(POINT, "point", CASE) \
	X(HANDOVER_OUT, "handover-out", CASE) \
	X(HANDOVER_IN, "handover-in", CASE) \
	X(HANDOVER_SEEN, "handover-seen", CASE) \
	X(HANDOVER_AGREE, "handover-agree", CASE) \
	X(SURGEON_ENDS, "surgeon-ends", CASE) \
	X(INCIDENT, "incident", CASE) \
	X(VISITOR, "visitor", CASE) \
	X(LEAVES, "leaves", CASE) \
	X(FIELD_TOO, "field-too", CASE) \
	X(VISITOR_IS_SURGEON, "visitor-is-surgeon", CASE) \
	X(WITNESS, "witness", CASE) \
	X(COUNTED_IN, "counted-in", PACK) \
	X(SLIP_HERE, "slip-here", CASE) \
	X(STORED, "stored", STORED) \
	X(TWICE, "twice", STORED) \
	X(LISTED_ALREADY, "listed-already", PACK) \
	X(HERE_NOW, "here-now", PACK) \
	X(HANDOVER_STAYS, "handover-stays", CASE)
/* clang-format on */

enum question_about {
	ABOUT_CASE = 0,
	ABOUT_PACK,
	ABOUT_STORED, /* YES or NO answers for held scans */
};

enum question {
	Q_NONE = 0,
#define X(name, text, about) Q_##name,
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
	uint8_t
	    search_not_done; /* the step answered last, where it was NOT DONE and nobody has said why; 0 else */
	uint8_t dressing_on; /* before the look */
	uint8_t awake;
	uint8_t suspended;
	uint8_t cancelled;
	uint8_t patient_left;
	uint8_t
	    unfollowed; /* an event of it could not be read or applied: it does not end reconciled (rule 26) */
	uint8_t who_looked; /* enum who_looked, single operator */
	uint8_t points_yes; /* sign-out points answered yes so far, in order */
	uint8_t point_no;   /* the point that was answered no; holds until it is begun again */
	uint8_t signed_out;
	uint8_t last_timed;      /* digit whose start or end N MINUTES AGO and MISREAD act on, 0 none */
	uint8_t last_timed_what; /* enum timed */
	uint8_t beside_item;     /* TIMED_BESIDE_…: which one, and when */
	struct moment beside_at;
	uint8_t n_items, n_digits;
	int16_t size_mm; /* circumference of the digit as stated, 0 not stated */
	struct team team;
	struct asked asked;
	struct debts debts;
	int32_t
	    last_answer; /* the last scan, if it was a card (its meaning) or a badge (minus its number); else 0 */
	struct moment final_at; /* when the final count was last agreed */
	/* The lists stand last: of each only what is used is copied (sheet_copy()); what is behind it is zero. */
	struct item items[ITEMS_MAX];
	struct digit digits[DIGITS_MAX];
};

/* X(NAME, "name in the record"): why a case ended so; SAY_END_NAME is what people read. What somebody typed is kept as text
 * instead. */
#define END_WHYS(X)                                                                                          \
	X(NOTHING_OPENED, "nothing-opened")                                                                  \
	X(SHEET_EMPTY, "sheet-empty")                                                                        \
	X(NUMBER_OWED, "number-owed")                                                                        \
	X(NOT_FOLLOWED, "not-followed") /* rule 26 */

enum end_why {
	END_TYPED = 0,
#define X(name, text) END_##name,
	END_WHYS(X)
#undef X
	    END_WHY_KINDS
};

/* Changes the sheet by one event of its case. Events come from decide() or from the record; one that does not
 * fit (an item that is not there, a full sheet) gives -EINVAL or -ENOSPC, `at` where it was found out (may be NULL), and
 * changes nothing. */
int sheet_apply(struct sheet *s, const struct event *e, struct origin *at);

/* `to` becomes as `from` is, byte for byte, where it was a sheet itself (or zero). A full sheet is some 15 kB, an ordinary one
 * a few hundred bytes, and each scan copies it several times. */
void sheet_copy(struct sheet *to, const struct sheet *from);
/* Into memory that nobody set: what is behind its lists must not be read. */
void sheet_save(struct sheet *to, const struct sheet *from);
void sheet_clear(struct sheet *s); /* an empty place: all zero, where it was a sheet */

/* Looking things up. Items are numbered from 1; NULL and 0 mean none. */
struct digit *sheet_digit(struct sheet *s, int number);
const struct digit *sheet_digit_const(const struct sheet *s, int number);
struct item *sheet_item(struct sheet *s, int number);
const struct item *sheet_item_const(const struct sheet *s, int number);
int sheet_item_by_identity(const struct sheet *s, const char *identity);    /* 0 where "" or absent */
int sheet_item_on(const struct sheet *s, int digit, enum role_trait trait); /* the latest that is on it */
int sheet_item_last_on(const struct sheet *s, int digit); /* the tourniquet on it, or that came off it last */
int sheet_digits_on(const struct sheet *s);               /* how many are ON or MAYBE_ON */
int sheet_first_digit_on(const struct sheet *s);          /* number, 0 none */
int sheet_first_unseen_on(const struct sheet *s);         /* on for certain, and not seen in this handover */
int sheet_digits_had(const struct sheet *s); /* how many had a tourniquet at some time in this case */
int sheet_first_digit_doubted(
    const struct sheet *s); /* 'on?', before it was on or since it came off; number, 0 none */

/* Things that people cannot tell apart once they are out of their packs: one role, one line, no mark on the
 * thing itself, not in pieces. `item` counts itself. */
int item_is_alike(const struct item *a, const struct item *b);
int sheet_alike(const struct sheet *s, int item);       /* that are in the count */
int sheet_alike_open(const struct sheet *s, int item);  /* pieces of those still asked for in this count */
int sheet_alike_shown(const struct sheet *s, int item); /* that were shown already in this count */
int sheet_may_be_on(const struct sheet *s, int item,
                    int digit); /* 1 where it, or one that nobody told from it, was there */
int sheet_is_asked(const struct sheet *s, int item); /* 1 where the final count still asks for it */

int item_counts(const struct item *i);    /* 1 where it must be accounted for */
int item_open(const struct item *i);      /* 1 where it must be and is not yet */
int item_is_sought(const struct item *i); /* 1 where it was answered as not there, or is in pieces */
/* One that is counted in without a mark, as a tray's are, and still asked for, of which this thing's mark may be read; 0 none. */
int sheet_without_mark(const struct sheet *s, const struct thing *th);
/* Pieces of it that are accounted for: what was shown with a piece missing is not all there, however many were seen. */
int item_accounted(const struct item *i);
int sheet_open_items(const struct sheet *s);
int sheet_next_open(const struct sheet *s);   /* the item the final count asks for next; 0 none */
int sheet_missing(const struct sheet *s);     /* items answered as missing, in pieces, or extra */
int sheet_next_look(const struct sheet *s);   /* digit still to be looked at bare; 0 none */
int sheet_first_extra(const struct sheet *s); /* item, 0 none */
int sheet_is_empty(
    const struct sheet *s); /* 1: a digit card opened it by itself, and nothing else is in it */
int sheet_holds_any(const struct sheet *s); /* 1 where a pack was opened or a tourniquet was on */

int question_of_pack(enum question q);
int question_of_stored(enum question q);
enum saying end_saying(enum end_why why); /* SAY_NONE for END_TYPED, or where it is none */
const char *question_name(enum question q);
enum saying question_saying(enum question q); /* SAY_NONE of Q_NONE */
const char *question_words(enum question q);

/* Sign-out has been reached: final count agreed, each digit seen bare, no debt. */
int ready_to_sign_out(const struct sheet *s);

#endif
