/* What is so, whether the station knows it or not: real things, who operates on whom, and which tourniquet is on
 * which digit since when. A plain value; a copy is an assignment.
 */
#ifndef BANDTALLY_TESTS_THEATRE_WORLD_H
#define BANDTALLY_TESTS_THEATRE_WORLD_H

#include "code/own-codes.h"
#include "decide/decide.h"

#define THINGS_MAX 24
#define OPERATIONS_MAX 6

enum where {
	IN_STORE = 0, /* not in the room yet */
	IN_PACK,      /* in the room, unopened */
	ON_FIELD,     /* out of its pack and at hand */
	ON_DIGIT,
	LOST, /* in the drapes, in the bin, in another case: nobody sees it */
	AWAY, /* put aside, or gone back unopened */
};

enum whole { WHOLE = 0, CUT, IN_PIECES };

struct real {
	char line[LINE_KEY_MAX];
	int32_t number;   /* identity, 0 none */
	int32_t expiry;   /* yyyymmdd, 0 none */
	uint8_t role;     /* enum role */
	uint8_t by_mark;  /* the number is on the thing itself */
	uint8_t readable; /* that mark */
	uint8_t no_code;  /* nothing on it or its pack can be scanned */
	uint8_t where, digit, whole;
	uint8_t entered;      /* the station said that it was counted in or listed */
	int16_t pieces, here; /* a pack of five swabs: how many there are, how many are at hand */
	int8_t of;            /* operation that it was brought to, -1 none */
};

/* What was done to this run that may make a sheet untrue. Nothing else may. */
enum cause {
	CAUSE_NONE = 0,
	CAUSE_FALSE,     /* a false declaration */
	CAUSE_LEFT_OUT,  /* a step left out */
	CAUSE_MISSED,    /* a read that was missed and that nobody made good */
	CAUSE_NEIGHBOUR, /* a neighbouring card was read, the reply named it, nobody contradicted */
	CAUSE_ELSEWHERE, /* a thing without a number was scanned into the other room, which the reply named */
	CAUSE_TOO_LATE,  /* a scan came when the board asked something else than when it was made */
	CAUSES,
};

struct root { /* of a digit, as it really is */
	uint8_t bands, ever;
	uint8_t told;           /* that it is on: its card was read since */
	int64_t on_ms, off_ms;  /* of this stretch */
	int64_t station_off_ms; /* when the station last entered it as off */
	int64_t slack_ms; /* by how much the scan came after what it tells, at the start and at the end */
	int64_t end_slack_ms;
};

struct operation {
	uint8_t to_contradict; /* neighbouring cards that were entered, and that no UNDO has answered */
	uint8_t unmeant,
	    unmeant_cause;     /* the question that a card opened which nobody meant, 0 none; enum cause */
	int32_t room, case_no; /* case_no 0: the station has not opened it yet */
	int32_t field, circulating, surgeon; /* badges; -1..-4 one without a badge */
	int32_t comes;                       /* who relieves, 0 nobody */
	int32_t leaves;
	uint8_t ended;     /* enum case_end, 0 not yet */
	uint8_t honest;    /* every deed was scanned, as what it is, in order, in time */
	uint8_t wall_set;  /* somebody set the wall clock while the power was off */
	uint8_t wound;     /* what a roll-on tourniquet is asked about */
	uint8_t points_ok; /* the sign-out points are so */
	uint8_t number_known;
	uint8_t looked; /* enum who_looked, a lone operator's witness */
	uint8_t no_operation;
	uint8_t more_to_come; /* a further tourniquet will go on */
	uint8_t steps_not_done;
	uint8_t causes[CAUSES];
	int8_t in_hand; /* the thing whose code was scanned last */
	int32_t slips;  /* printed and not yet seen; number of the latest */
	struct root roots[DIGIT_NUMBER_MAX + 1];
};

struct world {
	int n_things, n_operations;
	int8_t stored_by[2]; /* by room: the operation whose people made the scans that are held for it */
	struct real things[THINGS_MAX];
	struct operation operations[OPERATIONS_MAX];
};

const char *where_name(enum where w);
const char *whole_name(enum whole w);
const char *cause_name(enum cause c);

/* Index of the operation of this case, -1 none. */
int world_of_case(const struct world *t, int32_t case_no);

void world_put_on(struct world *t, int thing, int digit, int64_t now);
void world_take_off(struct world *t, int thing, enum whole whole, int64_t now);
int world_bands_on(const struct world *t, int operation); /* on all digits */
/* Who has come stands in the place of who has left, as soon as the sheet has it so. */
void world_relieve(struct operation *o, const struct sheet *s);
void world_cause(struct world *t, int operation, enum cause c);
int world_has_cause(const struct operation *o);

/* The things that an item of this operation's sheet may be: those that people cannot tell apart from it. */
int world_is(const struct world *t, int operation, const struct sheet *s, int item, int thing);

/* How many of those are at hand and not yet accounted for as such in this count. */
struct at_hand {
	int intact, cut, in_pieces; /* single things, or pieces of a pack */
	int on_digit;               /* how many, and the digit of one */
	int digit;
};
struct at_hand world_at_hand(const struct world *t, int operation, const struct sheet *s, int item);

#endif
