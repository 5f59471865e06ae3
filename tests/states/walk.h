/* A walk through every state that a small room can reach, with the real count.
 *
 * A state is one sheet; a step is one scan, a second passing, or a restart. Times stand still, so that two
 * sheets that differ only in minutes are one state. UNDO is a step like any other: it leads back to a state
 * that was visited before, so what lies behind the last step is kept but does not make a state another.
 */
#ifndef BANDTALLY_TESTS_STATES_WALK_H
#define BANDTALLY_TESTS_STATES_WALK_H

#include "code/own-codes.h"
#include "count/decide.h"
#include "count/rule.h"

#define INPUTS_MAX 96

struct room_plan {
	const char *name;
	int single;
	int tourniquets, forceps, others;   /* how many things there are to scan */
	int rolls_on, no_identity, refused; /* further things: 1 has them */
	int digits;
	int people;       /* 1: surgeon; 2: scrub and circulating; 3: all; 4: and a second scrub */
	const int *cards; /* meanings, 0-terminated; NULL: all */
	int one_by_one, both_badges;
	/* Further things, for the rooms of the digest; 1 has them. */
	int thumb;         /* the first digit is the right thumb, digit 1, and not the next */
	int two_lots;      /* the tourniquet without a number comes from two lots */
	int size;          /* the tourniquet's stated size, and a digit's that is typed */
	int charge;        /* a badge of the nurse in charge */
	int withdrawn;     /* a badge that was withdrawn */
	int forceps_again; /* marked forceps that an ended case used */
	int copies;        /* the slip that waits is copy 2, and copy 1 is scanned too */
	int later;         /* answers that come three minutes after the question */
};

struct scan_choice {
	struct input in;
	char name[64];
};

struct world {                  /* what does not change during one walk */
	struct station station; /* its sheets[0] is the state under way */
	struct scan_choice inputs[INPUTS_MAX];
	int n_inputs;
};

void world_init(struct world *w, const struct room_plan *plan);
void world_deinit(struct world *w);

/* One step, as a check sees it. */
struct step_taken {
	const struct world *world;
	const struct input *in;
	const struct sheet *before, *after;
	const struct outcome *out;
	const struct sheet *at_end; /* the sheet just before the event case-ended, NULL where there is none */
};

/* The rules that this step or its new state breaks, as bits (1 << rule). */
uint32_t step_check(const struct step_taken *s);

/* Deliberately broken variants: each changes what the count decided, and the walk must notice. */
struct saboteur {
	int rule;
	const char *what;
	void (*spoil)(struct outcome *out, const struct input *in, const struct sheet *before);
};
extern const struct saboteur saboteurs[];
extern const int n_saboteurs;

#endif
