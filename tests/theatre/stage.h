/* The room itself: the real station, driven by entries. An entry is one thing that happens (a code is read, a thing
 * moves, the power goes); a run is a list of them, and played again it says the same. Whoever writes the list, people
 * with a seed or the shrinker, does so through stage_do(). Checks look on at every step.
 */
#ifndef BANDTALLY_TESTS_THEATRE_STAGE_H
#define BANDTALLY_TESTS_THEATRE_STAGE_H

#include "decide/reads.h"
#include "fits.h"

#define ROOMS 2 /* theatre 1, where two count, and room 3, where one works alone */
#define ENTRIES_MAX 900
#define GROUPS_MAX 1800
#define BATCH_MAX 20 /* scans that a scanner stores */
#define SLIPS_MAX 48
#define USED_MAX 96

enum entry_kind {
	ENTRY_READ = 1,
	ENTRY_MOVES,
	ENTRY_POWER,
	ENTRY_WALL,
	ENTRY_CHANGES,
	ENTRY_SAYS,
	ENTRY_SENT
};
/* ENTRY_SENT: the reads that were `late` come to the station at once. */

enum read_kind {
	READ_FRESH = 0, /* meant, and read once */
	READ_TWICE,     /* a second read of what was scanned once */
	READ_AGAIN,     /* scanned again in doubt */
	READ_NEIGHBOUR, /* not the card that was meant */
};

enum change {
	CHANGE_MORE = 1,
	CHANGE_POINTS,
	CHANGE_RELIEVED,
	CHANGE_LEAVES,
	CHANGE_CURRENT,
	CHANGE_DISHONEST,
	CHANGE_CONTRADICTED
};

struct entry {
	int64_t at_ms;                   /* of a clock that nobody sets and no power cut stops */
	int64_t made_ms;                 /* ENTRY_READ: when it was scanned */
	int16_t id, reports;             /* ENTRY_READ: the entry that it tells of, -1 none */
	int16_t group;                   /* reads of what was meant once; -1 none */
	uint8_t kind, read, late, asked; /* asked: 1 it answers a deed that the board showed */
	uint8_t cause;                   /* what is injected with it */
	uint8_t question;                /* enum question that stood on the board when it was scanned */
	int8_t operation, scanner;
	struct scanned code; /* ENTRY_READ */
	struct deed answers; /* where asked */
	char answers_line[LINE_KEY_MAX];
	int8_t thing; /* ENTRY_MOVES */
	uint8_t where, digit, whole;
	int64_t
	    n; /* ENTRY_MOVES: how many are at hand; ENTRY_POWER, ENTRY_WALL: ms; ENTRY_CHANGES: to what */
};

struct told { /* what the board of a room showed last */
	int entry;
	int8_t operation;
	uint8_t verdict, read, facts; /* facts: how many events were more than a question or a refusal */
	char said[SAID_MAX];
};

struct failure {
	const char *check; /* NULL none */
	char text[600];
};

struct tally { /* what was played, over many runs */
	int64_t runs, scans, repeats, walks, walk_scans, refused, given_up;
	int64_t ended[4];
	int64_t false_facts[CAUSES], clean_cases, false_cases;
	int64_t held[20]; /* by check: how often it looked */
};

struct variant;
struct chance;

struct stage {
	struct station st;
	struct outcome out;
	struct reads reads;
	struct input batch[BATCH_MAX]; /* what the scanner has stored */
	int n_batch;
	struct moment now;
	int64_t true_ms, seq;
	struct world start, world;
	int current[ROOMS]; /* the operation that goes on in the room, -1 none */
	struct told told[ROOMS];
	int32_t slip_of[GROUPS_MAX]; /* the paper that was in the hand */
	uint8_t entered[GROUPS_MAX]; /* by group: it was read before and not refused, in which room + 1 */
	struct entered {
		int64_t ms;
		int8_t scanner;
	} entered_at[GROUPS_MAX];  /* when first, and by which */
	int16_t last_group[ROOMS]; /* what was entered last */
	struct {
		char identity[IDENTITY_MAX];
		int32_t case_no;
		uint8_t back;
	} used[USED_MAX];
	int n_used;
	struct {
		int32_t number, case_no, room;
		uint8_t kind, seen;
	} slips[SLIPS_MAX];
	int n_slips;
	struct entry list[ENTRIES_MAX];
	int n_list;
	int replaying, out_of_context; /* a shrunk list asks what nobody asked */
	int clean;                     /* nothing at all was injected */
	struct failure failure;
	int failed_room;               /* no-dead-end: where the walk began */
	const char *only;              /* the one check that counts, NULL all */
	const struct variant *variant; /* NULL: the station as it is */
	struct tally *tally;
	int end_every; /* no-dead-end is looked for in one state of so many, 0 none */
	struct chance *chance;
	int quiet;       /* a walk from here: no checks, nothing is tallied */
	char path[9000]; /* of the walk that found no end */
};

extern const int32_t room_numbers[ROOMS];
int room_index(int32_t room); /* 0.. or -1 */

/* A station with rooms, catalogue and staff; once a process. 0 or negative errno. */
int stage_build(struct station *built);

/* An empty theatre. */
void stage_begin(struct stage *g, const struct station *built, const struct world *start);

/* One entry happens; it is put on the list. */
void stage_do(struct stage *g, const struct entry *e);

/* A check does not hold: the first one is kept. */
void stage_fail(struct stage *g, const char *check, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* The open sheet of the operation's room; one with case_no 0 where there is none. */
const struct sheet *stage_sheet(const struct stage *g, int32_t room);

/* How scanner i is called, and the room it belongs to. The last two stay in their rooms' drawers. */
#define SCANNERS 8
const char *scanner_name(int scanner);
int32_t scanner_home(int scanner);
int32_t stage_works_for(const struct stage *g, int scanner); /* where it works now */

/* Time passes, with its ticks, until then. */
void stage_wait(struct stage *g, int64_t until_ms);

/* One code is read, and nothing looks on. */
void stage_read_quietly(struct stage *g, const struct entry *e);

/* `to` becomes a copy of what goes on, without the list. */
void stage_copy(struct stage *to, const struct stage *from);

#endif
