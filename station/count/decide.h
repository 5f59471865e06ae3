/* The count: state + what was scanned + time -> what happened, and a reply.
 *
 * Pure: the caller reads the code, looks up what the record knows of it, and passes both in. decide() changes
 * nothing; it returns events, which the caller stores and then applies with station_apply(). Every input gets
 * a reply that says what happened and what to do next.
 */
#ifndef BANDTALLY_COUNT_DECIDE_H
#define BANDTALLY_COUNT_DECIDE_H

#include "count/station.h"

#define OUTCOME_EVENTS_MAX 160
#define SAID_MAX 401
#define NEXT_MAX 301

enum act {
	ACT_TICK = 0,   /* time has passed, nothing was scanned */
	ACT_CARD,       /* card, card_room */
	ACT_DIGIT,      /* digit, card_room */
	ACT_BADGE,      /* number */
	ACT_CASE_LABEL, /* number */
	ACT_SLIP,       /* number, copy */
	ACT_THING,      /* thing, pieces; line, parts */
	ACT_TRAY,       /* as ACT_THING; line->contents are counted in */
	ACT_UNKNOWN,    /* a code that nothing here knows: text is the code, shortened */
	ACT_BROKEN,     /* a code that contradicts itself: text is why */
	ACT_FOREIGN,    /* a code of another site: text names it */
	ACT_PATIENT,    /* a wristband: nothing of it is kept (rule 20) */
	ACT_TYPED,      /* free text that answers a question (an incident number) */
	ACT_HALF,       /* a code that needs its second symbol, which has not come: text says which */
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
	struct thing thing;
	const struct line *line;                     /* of the thing; NULL where the catalogue has none */
	const struct line *parts[LINE_CONTENTS_MAX]; /* ACT_TRAY: the lines of line->contents */
	int32_t used_in;                             /* ended case in which this identity was used, 0 none */
	uint8_t used_back;                           /* 1 where it was accounted for there */
	int32_t slip_case; /* ACT_SLIP: the case of this slip as the record knows it, 0 none */
	int32_t slip_room;
	char text[EVENT_TEXT_MAX];
};

enum verdict { VERDICT_ACCEPTED = 0, VERDICT_REFUSED, VERDICT_QUESTION };

struct reply {
	enum verdict verdict;
	char said[SAID_MAX]; /* what happened */
	char next[NEXT_MAX]; /* the next thing to do */
};

struct outcome {
	struct event events[OUTCOME_EVENTS_MAX];
	int count;
	struct reply reply;
	struct sheet sheet; /* the case's sheet as it will be; case_no 0 where there is none */
};

/* Always fills `out`. A tick without anything due gives no events and an empty `said`. */
void decide(const struct station *st, const struct input *in, struct outcome *out);

/* What comes next on this sheet, and the cards that fit now (meanings of enum own_card, 0-terminated). */
#define FITTING_MAX 12
void next_step(const struct station *st, const struct sheet *s, struct moment now, char out[NEXT_MAX]);
int fitting_cards(const struct station *st, const struct sheet *s, int cards[FITTING_MAX]);

/* Sign-out has been reached: final count agreed, each digit seen bare, no debt. */
int ready_to_sign_out(const struct sheet *s);

#endif
