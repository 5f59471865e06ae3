/* One run: a plan drawn from the seed, people who go by the board and by what they see, and scanners that err between
 * them and the station. Everything that happens goes through stage_do(), so that the list that is left plays the run
 * again without a seed.
 */
#ifndef BANDTALLY_TESTS_THEATRE_PLAY_H
#define BANDTALLY_TESTS_THEATRE_PLAY_H

#include "random.h"
#include "stage.h"

#define PUTS_MAX 4
#define QUEUE_MAX 64

/* What goes wrong in this run. The first are no excuse for a sheet that is not true; the last are. */
enum trouble {
	TROUBLE_TWICE = 1 << 0,   /* one scan read twice, by the camera as well */
	TROUBLE_AGAIN = 1 << 1,   /* people scan again in doubt */
	TROUBLE_LATE = 1 << 2,    /* a scanner that holds back */
	TROUBLE_BURST = 1 << 3,   /* one that stores its scans and sends them at once */
	TROUBLE_CARRIED = 1 << 4, /* one that is carried into the other room */
	TROUBLE_POWER = 1 << 5,
	TROUBLE_WALL = 1 << 6, /* the wall clock jumps */
	TROUBLE_REPLACED = 1 << 7,
	TROUBLE_MISS = 1 << 8,    /* a read that does not come, and people see that */
	TROUBLE_ORDER = 1 << 9,   /* steps in another order, things nobody asked for */
	TROUBLE_HASTE = 1 << 10,  /* answers run off the page, with a badge beside it */
	TROUBLE_RELIEF = 1 << 11, /* handover */
	TROUBLES_INNOCENT = (1 << 12) - 1,
	TROUBLE_FALSE = 1 << 12,
	TROUBLE_LEFT_OUT = 1 << 13,
	TROUBLE_MISSED = 1 << 14, /* a read that does not come, and nobody sees that */
	TROUBLE_NEIGHBOUR = 1 << 15,
};

struct put { /* a tourniquet that will go on */
	int8_t thing;
	uint8_t digit;
	uint8_t whole; /* how it will come off */
};

struct plan {
	int room; /* index */
	int n_puts, puts_done;
	struct put puts[PUTS_MAX];
	int early; /* the first goes on before anything is counted */
	int again; /* goes on again once more; at which want */
	int lose,
	    find; /* a thing gets lost, -1 none; found at this step of the search, 99 not in this case */
	int turns_up_in; /* operation in which it turns up, -1 none */
	int skip_on;     /* its card is left out */
	int relief;      /* a handover, after so many scans; 0 none */
	int64_t minutes_ms;
};

struct delivery {
	int64_t at_ms;
	struct entry entry;
};

struct actor {  /* the one who scans, in each room */
	int op; /* -1 none yet */
	int64_t wake_ms;
	int scanner;
	int awaiting; /* group that was scanned and has not been answered; -1 none */
	int tries, scans, idle, refused;
	int64_t off_ms;         /* when the tourniquet will come off */
	struct scanned pending; /* what was scanned last */
	int report_on;          /* a digit whose card is to be scanned, 0 none */
	int reports;            /* the entry that it tells of */
	int reported;           /* the digit that was told last */
	int undo;               /* contradict what the board shows */
	int next_between;       /* the same thing again is meant */
	int takes_over;         /* a place that is held by one who is not here */
	int unlisted;           /* enter what was refused and is on all the same */
	int undoing;            /* 1 a neighbour's read, 2 what the other room's scanner entered */
};

struct play {
	struct stage *stage;
	struct chance chance;
	unsigned troubles;
	struct plan plans[OPERATIONS_MAX];
	struct actor people[ROOMS];
	struct delivery queue[QUEUE_MAX];
	int n_queue;
	int64_t scanner_free_ms[SCANNERS],
	    scanner_out_ms[SCANNERS]; /* reads keep their order; out of reach until */
	int next_id;
	int next_group;            /* of reads of what is meant once */
	uint8_t heard[GROUPS_MAX]; /* by group: in which room it was answered, + 1 */
	int power_cuts, wall_jumps;
	int given_up; /* a sheet that scans of the other room have filled */
};

void plan_run(struct play *p, struct world *start); /* plan.c */
void play_run(struct play *p, struct stage *g, const struct station *built, uint64_t seed, uint64_t run,
              unsigned troubles_allowed); /* people.c */

struct intent { /* what a person means to scan */
	struct scanned code;
	const struct deed *asked; /* the deed of the board that it answers, NULL none */
	enum read_kind kind;
	int group, reports;
	int64_t at_ms;
};

/* One scan by a person, through the scanner: its reads come to the queue. (scanners.c) */
void scan_by(struct play *p, struct actor *who, const struct intent *in);
void scanner_laid_down(struct play *p, int scanner); /* what it held back is gone */
void deliver_first(struct play *p);                  /* the first of the queue reaches the station */

#endif
