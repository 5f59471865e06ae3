/* The count: state + what was scanned + time -> what happened, and a reply.
 *
 * Pure: the caller reads the code, looks up what the record knows of it, and passes both in. decide() changes
 * nothing; it returns events, which the caller stores and then applies with station_apply(). Every input gets
 * a reply that says what happened and what to do next.
 */
#ifndef BANDTALLY_DECIDE_DECIDE_H
#define BANDTALLY_DECIDE_DECIDE_H

#include "count/deed.h"
#include "count/paper.h"

#define OUTCOME_EVENTS_MAX 160
#define SAID_MAX 401

enum act {
	ACT_TICK = 0,   /* time has passed, nothing was scanned */
	ACT_CARD,       /* card, card_room */
	ACT_DIGIT,      /* digit, card_room */
	ACT_BADGE,      /* number */
	ACT_CASE_LABEL, /* number */
	ACT_SLIP,       /* number, copy, proof; slip, paper, newer, unanswered */
	ACT_THING,      /* thing, pieces; line, parts */
	ACT_TRAY,       /* as ACT_THING; line->contents are counted in */
	ACT_UNKNOWN,    /* a code that nothing here knows: what, or text is the code, shortened */
	ACT_BROKEN,     /* a code that contradicts itself: text is why */
	ACT_FOREIGN, /* a code of another site: text is its letters; or text is "": of station `number` of this one */
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
	const struct line *line;                     /* of the thing; NULL where the catalogue has none */
	const struct line *parts[LINE_CONTENTS_MAX]; /* ACT_TRAY: the lines of line->contents */
	int32_t used_in;                             /* ended case in which this identity was used, 0 none */
	uint8_t used_back; /* 1 where nobody looks for it: accounted for there, or isolated */
	uint8_t repeated;  /* enum repeated (decide/reads.h) */
	int32_t slip_case; /* ACT_SLIP: the case of this slip as the record knows it, 0 none */
	int32_t slip_room;
	/* ACT_SLIP, and YES to Q_SLIP_HERE: that slip as the record knows it, number 0 not known; and the very paper */
	struct slip slip;
	struct paper paper;
	uint8_t newer; /* ACT_SLIP: the record does not know the paper, and this station's key proves it */
	uint8_t unanswered; /* ACT_SLIP: too many that are not ours were read with this scanner just now */
	uint8_t unasked;    /* 1: the record could not be asked what is known of it */
	enum saying
	    what; /* ACT_UNKNOWN: enum saying SAY_CODE_…, of `number` or `card`; 0 `text` is the code */
	char text[EVENT_TEXT_MAX];
	const struct input *stored; /* ACT_STORED: in their order, each `at` the time at which it was made */
	int n_stored;
	int lost;     /* ACT_STORED: 1 where one came that is too long to be held */
	int64_t held; /* event of the held scan that this is, 0 it is none (held_input) */
	int outlived; /* and the station has started again since it came */
	int more;     /* a further held scan is entered next */
};

enum verdict { VERDICT_ACCEPTED = 0, VERDICT_REFUSED, VERDICT_QUESTION };

struct reply {
	enum verdict verdict;
	char said[SAID_MAX]; /* what happened */
	struct next next;    /* the next thing to do */
};

struct outcome {
	struct event events[OUTCOME_EVENTS_MAX];
	int count;
	struct reply reply;
	int enter; /* so many held scans of the room are to be entered now, each by held_input() and decide() */
	struct sheet sheet; /* the case's sheet as it will be; case_no 0 where there is none */
	int32_t told_room;  /* another room whose board says `told`; 0 none */
	char told[SAID_MAX];
};

/* Always fills `out`. A tick without anything due gives no events and an empty `said`. */
void decide(const struct station *st, const struct input *in, struct outcome *out);

/* The next of the scans that are held for a room, as an input of the present boot; used_in, used_back, slip_case
 * and slip_room are the caller's. 1, or 0 where none is held. */
int held_input(const struct station *st, int32_t room, struct moment now, struct input *in);

/* Whether a slip that is newer than the record has a number which that has left out: after an older record was put back,
 * numbers go on past those that may have been given out. */
int input_is_lost(const struct station *st, const struct input *in);

/* What comes next on this sheet, or in this room where it has none (case_no 0). */
void next_step(const struct station *st, const struct sheet *s, int32_t room, struct moment now,
               struct next *out);

#endif
