/* From what a barcode says to what was scanned here: own codes by their kind, everything else by the
 * catalogue.
 *
 * Pure. What only the record knows is passed in (a stores' batch) or filled in by the caller afterwards
 * (used_in, used_back, slip_case, slip_room).
 */
#ifndef BANDTALLY_DECIDE_INPUT_H
#define BANDTALLY_DECIDE_INPUT_H

#include "code/code.h"
#include "count/slip-paper.h"

enum act {
	ACT_TICK = 0,    /* time has passed, nothing was scanned */
	ACT_CARD,        /* card, card_room */
	ACT_DIGIT,       /* digit, card_room */
	ACT_BADGE,       /* number */
	ACT_CASE_LABEL,  /* number */
	ACT_PAPER_SHEET, /* number: of the sheet, card_room */
	ACT_SLIP,        /* number, copy, proof; slip, paper, newer, unanswered */
	ACT_SIGNED, /* the signed summary of a slip; signature, and of one that is held slip, paper and slip_case */
	ACT_THING,   /* thing, pieces; line, parts */
	ACT_TRAY,    /* as ACT_THING; line->contents are counted in */
	ACT_UNKNOWN, /* a code that nothing here knows: what, or text is the code, shortened */
	ACT_BROKEN,  /* a code that contradicts itself: text is why */
	ACT_FOREIGN, /* a code of another site: text is its letters; or text is "": of station `number` of this one, or
	                what: SAY_SCAN_OF_PRACTICE, of the practice set */
	ACT_PATIENT, /* a wristband: nothing of it is kept (rule 20) */
	ACT_TYPED,   /* free text that answers a question (an incident number) */
	ACT_HALF,    /* a code that needs its second symbol, which has not come: text says which */
	ACT_STORED,  /* scans that a scanner had stored: stored, n_stored, lost */
};

enum repeated {
	REPEATED_NOT = 0,
	REPEATED_NOW, /* a second read of what was entered a moment ago */
	REPEATED_STILL, /* of a thing that was the last one read here, however long ago: where it is still entered */
};

/* What the record says of a slip's signed summary. */
enum signature {
	SIGNATURE_NOT_ASKED = 0, /* it is, at an auditor's desk alone */
	SIGNATURE_HELD,          /* signed by this station, and the record holds what was signed */
	SIGNATURE_OTHER,         /* signed, but the record holds something else */
	SIGNATURE_OF_NOBODY,     /* by no key of this station, or nothing that anybody signed */
};

/* What only the record knows of a code, and of the papers that bear it, and what is known beside it; all zero: nothing. */
struct known {
	int32_t used_in;   /* ended case in which this identity was used, 0 none */
	uint8_t used_back; /* 1 where nobody looks for it: accounted for there, or isolated */
	int32_t
	    elsewhere; /* case of another station in which it was used, as the hospital's store says; 0 none */
	int32_t elsewhere_station;
	int32_t slip_case; /* ACT_SLIP: the case of this slip, 0 none */
	int32_t slip_room;
	/* ACT_SLIP, and YES to Q_SLIP_HERE: that slip, number 0 not known; and the very paper */
	struct slip slip;
	struct paper paper;
	uint8_t newer; /* ACT_SLIP: the record does not know the paper, and this station's key proves it */
	uint8_t unanswered; /* ACT_SLIP: too many that are not ours were read with this scanner just now */
	uint8_t unasked;    /* 1: the record could not be asked */
	uint8_t signature;  /* ACT_SIGNED: enum signature */
	uint8_t lists_old;  /* 1: the hospital's lists of recalls are older than lists_hours, or never came */
};

struct input {
	enum act act;
	struct moment at;
	int32_t room;      /* where this scanner works */
	int32_t card_room; /* of the card, ACT_CARD and ACT_DIGIT */
	uint32_t flags;    /* EVENT_LATE, EVENT_KEYED */
	char scanner[33];
	int card;       /* enum own_card */
	int digit;      /* 1..24 */
	int32_t number; /* badge, case label or slip */
	int32_t copy;
	int32_t proof; /* of a slip; 0 on papers of record format 1 */
	struct thing thing;
	const struct line *line; /* of the thing; NULL where the catalogue has none */
	int32_t packs;           /* that its code stands for: more than 1, a box of them */
	const struct line *parts[LINE_CONTENTS_MAX]; /* ACT_TRAY: the lines of line->contents */
	struct known known;
	uint8_t repeated; /* enum repeated (decide/reads.h) */
	enum saying
	    what; /* ACT_UNKNOWN: enum saying SAY_CODE_…, of `number` or `card`; 0 `text` is the code */
	char text[EVENT_TEXT_MAX];
	const struct input *stored; /* ACT_STORED: in their order, each `at` the time at which it was made */
	int n_stored;
	int lost;     /* ACT_STORED: 1 where one came that is too long to be held */
	int64_t held; /* event of the held scan that this is, 0 it is none (stored_input) */
	int outlived; /* and the station has started again since it came */
	int more;     /* a further held scan is entered next */
};

/* Fills act and what belongs to it; room, time, flags and scanner are the caller's. `batch` is the one that
 * holds code->own.number for a stores' item label, NULL where the record has none, and is not looked at
 * otherwise. */
void input_from_code(struct input *in, const struct station *st, const struct code *code,
                     const struct batch *batch);

/* A code that code_read() refused. */
void input_from_fault(struct input *in, const struct code_fault *fault);

/* Whether two symbols may be waited for: this code is one half of a pack's data. */
int code_is_half(const struct code *code);

#endif
