/* A walk through the states that a small room can reach, with the real count. A room is: things, digits, people,
 * cards (rooms.c).
 *
 * A state is what a decision can read of the room's sheets (key.h); a step is one scan, half an hour that passes, or
 * a restart. Times stand still between scans. Where UNDO is in the room, the sheet before the last step is part of
 * the state. The 26 rooms of rooms.c are walked whole: 420,000 states, 5.5 million transitions. What bounds them: a sheet holds three
 * items and two digits, or as few as the plan says (a state beyond is checked and not followed); where the plan begins in
 * the middle of a case, the walk ends with that case; MINUTES AGO is scanned at most twice for one stretch, a tourniquet has
 * three pieces at most, and where MISREAD is in the room a digit's clock is started twice; a case that is opened beside a suspended one is not followed (it is a beginning over again).
 */
#ifndef BANDTALLY_TESTS_STATES_WALK_H
#define BANDTALLY_TESTS_STATES_WALK_H

#include "code/own-codes.h"
#include "count/rule.h"
#include "decide/decide.h"
#include "keys.h"

#define INPUTS_MAX 96

/* Where the walk begins. A walk that does not begin with nothing ends with the case: what follows is walked by those
 * that do. */
enum walk_begin {
	BEGIN_NOTHING = 0, /* no case is open */
	BEGIN_TEAM,        /* scrub and circulating, or the lone operator, have badged in */
	BEGIN_COUNTED,     /* and everything is counted in, and agreed */
	BEGIN_ON,          /* and the first digit bears a tourniquet */
};

struct room_plan {
	const char *name;
	enum walk_begin begin;
	int single;
	int tourniquets, forceps, others;   /* how many things there are to scan */
	int rolls_on, no_identity, refused; /* further things: 1 has them */
	int items;                          /* a sheet of more is looked at and not followed; 0: ITEMS_MAX */
	int digits;
	int people;       /* 1: surgeon; 2: scrub and circulating; 3: all; 4: and a second scrub */
	const int *cards; /* meanings, 0-terminated; NULL: all */
	int one_by_one, both_badges;
	int stored; /* 1: scans come that a scanner had stored */
	/* Further things, for the rooms of the digest; 1 has them. */
	int thumb;         /* the first digit is the right thumb, digit 1, and not the next */
	int two_lots;      /* the tourniquet without a number comes from two lots */
	int size;          /* the tourniquet's stated size, and a digit's that is typed */
	int charge;        /* a badge of the nurse in charge */
	int withdrawn;     /* a badge that was withdrawn */
	int forceps_again; /* marked forceps that an ended case used */
	int copies;        /* the slip that waits is copy 2, and copy 1 is scanned too */
	int no_time;       /* half an hour never passes, so that no reminder comes */
	int later;         /* answers that come three minutes after the question */
	int other_room;    /* a second room with a sheet of its own, and the same packs in it */
};

struct scan_choice {
	struct input in;
	char name[64];
};

struct world {
	const struct room_plan *plan; /* of the walk, must outlive it */
	struct station station;       /* sheets[0] is room 1's, sheets[1] the other room's or a second case */
	struct scan_choice inputs[INPUTS_MAX];
	int n_inputs;
	struct input stored[2][2]; /* what ACT_STORED brings */
	uint64_t cards[4];         /* which are among the inputs, as bits */
	struct keys entered_again; /* key.c remembers here what it found out */
};

void world_init(struct world *w, const struct room_plan *plan);
void world_deinit(struct world *w);
int world_has_card(const struct world *w, int card); /* enum own_card: 1 where it is among the inputs */

extern const struct room_plan rooms[];        /* walked whole, unless its name is told with a limit */
extern const struct room_plan deep_rooms[];   /* by `walk --deep` alone */
extern const struct room_plan digest_rooms[]; /* what the rooms above do not reach, for the digest alone */
extern const size_t n_rooms, n_deep_rooms, n_digest_rooms;

/* One step, as a check sees it. */
struct step_taken {
	const struct world *world;
	const struct input *in;
	const struct sheet *before, *after;
	const struct outcome *out;
	int held_before, held_after; /* scans that wait for an answer */
	const struct sheet *at_end; /* the sheet just before the event case-ended, NULL where there is none */
};

/* The rules that this step or its new state breaks, as bits (1 << rule). */
uint32_t step_check(const struct step_taken *s);

/* Deliberately broken variants: each changes what the count decided, and the walk must notice. */
struct saboteur {
	int rule;
	const char *what;
	void (*spoil)(struct outcome *out, const struct input *in, const struct sheet *before);
	void (*spoil_next)(struct next *next); /* instead: what the station asks for; followed to the end */
};
extern const struct saboteur saboteurs[];
extern const int n_saboteurs;

#endif
