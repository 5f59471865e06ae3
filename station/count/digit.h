/* A digit on the sheet: its tourniquets and its clock.
 *
 * Times are `struct moment`s: a reading of CLOCK_BOOTTIME with the number of the boot it was taken in, and
 * the wall clock beside it. Two readings of one boot give an exact duration; across a power cut only the part
 * that is known is counted, and `gap` says that it is 'at least' (rule 14). 64 bits of milliseconds do not
 * wrap.
 */
#ifndef BANDTALLY_COUNT_DIGIT_H
#define BANDTALLY_COUNT_DIGIT_H

#include <stddef.h>
#include <stdint.h>

#include "words/said.h"

#define DIGIT_NUMBER_MAX 24 /* 1-5 right hand from the thumb, 6-10 left hand, 11-20 feet, 21-24 others */

struct moment {
	int64_t boot_ms; /* CLOCK_BOOTTIME */
	int64_t wall_ms; /* CLOCK_REALTIME, for people to read; never for a duration within one boot */
	int32_t boot;    /* 1, 2, …: which of the boots that the record has seen */
	int16_t utc_min; /* how far the civil time here was ahead of UTC then: what people read of wall_ms */
};

enum digit_state {
	DIGIT_BARE = 0, /* no tourniquet was ever on, or it was looked at */
	DIGIT_MAYBE_ON, /* 'on?': asked and not answered; the clock runs (section 4) */
	DIGIT_ON,
	DIGIT_OFF, /* one was on; the digit has not been seen bare since */
};

/* Beside the clock that no one can set: what the wall clock says of the time that it did not see. Kept from when a
 * tourniquet goes on until one goes on there again. */
struct by_wall {
	int64_t
	    cut_ms; /* of the power cuts while it was on; one over which the wall clock went back adds nothing */
	int64_t off_wall_ms;       /* wall clock when it came off, 0 not yet */
	int64_t off_ms;            /* since it came off, before `since`, power cuts included */
	struct moment reminded_at; /* the last reminder */
	uint8_t cuts;              /* 1: there was a power cut, on or off */
	uint8_t back;              /* 1: over one the wall clock went back, and no reminder has come since */
	uint8_t gaps;              /* 1: this stretch or an earlier one has a gap; never taken back */
};

struct digit {
	uint8_t number;    /* 1..DIGIT_NUMBER_MAX */
	uint8_t state;     /* enum digit_state */
	uint8_t marked;    /* the surgeon's marked digit */
	uint8_t had;       /* a tourniquet was on at some time */
	uint8_t seen_bare; /* after the final count (rules 1, 9) */
	uint8_t seen_on;   /* at a handover that is going on (rule 8) */
	uint8_t gap;       /* `known_ms` leaves out time that no clock of ours saw */
	uint8_t reminded;  /* a reminder waits for a badge */
	uint8_t doubted; /* 'on?' again after it came off: asked, and a second clock runs beside the first */
	uint8_t doubt_gap;         /* of that clock */
	uint8_t stretches;         /* how often its clock was started in this case */
	struct moment since;       /* ON: start of what `known_ms` does not hold yet. OFF: when it came off */
	int64_t on_wall_ms;        /* wall clock of the start of this stretch */
	int64_t known_ms;          /* this stretch, before `since` */
	int64_t total_ms;          /* earlier stretches */
	int64_t longest_ms;        /* longest of the earlier stretches */
	int64_t sure_ms;           /* how long this stretch had run when somebody last said that it is on, */
	int64_t sure_cut_ms;       /* and how much of power cuts besides (by_wall.cut_ms) */
	int64_t bare_ms;           /* between the last OFF and the start of this stretch */
	int32_t reminded_min;      /* minutes at the last reminder of this stretch, 0 none yet */
	struct moment doubt_since; /* as since, on_wall_ms and known_ms, of the clock of the doubt */
	int64_t doubt_wall_ms, doubt_known_ms;
	struct by_wall by_wall;
};

int digit_is_on(const struct digit *d); /* ON or MAYBE_ON: its clock runs */
int digit_runs(const struct digit *d);  /* that, or doubted: a clock runs, the present one in what follows */

int64_t moment_between_ms(struct moment from,
                          struct moment to); /* exact, or by the wall clock across boots */

/* How long the present stretch has run at `now`; 0 unless MAYBE_ON or ON. */
int64_t digit_stretch_ms(const struct digit *d, struct moment now);
/* How long ago before it came off somebody said that it is on, power cuts included; of one of whom nobody did, all of it. */
int64_t digit_since_sure_ms(const struct digit *d);
/* Somebody says that one is on, or does what is done where one is: no OFF is moved to before it. */
void digit_is_sure(struct digit *d, struct moment at);
int64_t digit_longest_ms(const struct digit *d, struct moment now);
int64_t digit_total_ms(const struct digit *d, struct moment now);

/* --- by the longer of both clocks (digit-wall.c) ------------------------------------------------- */

/* What an event changes of by_wall; the clock itself is the caller's. */
void by_wall_start(struct digit *d);                 /* a stretch begins */
void by_wall_off(struct digit *d, struct moment at); /* it ended */
void by_wall_earlier(struct digit *d, int64_t ms);   /* it had ended so much earlier */
void by_wall_reminded(struct digit *d, struct moment at);

/* A new boot began at `started`; the last moment that the old one is known to have reached is `last`. */
void digit_cross_boot(struct digit *d, struct moment last, struct moment started);

/* 0 where the wall clock says less than the clock that no one can set: then it was set back. */
int digit_wall_holds(const struct digit *d, struct moment now);

/* The stretch of digit_minutes_text() by the wall clock where a power cut lies in it; 0 where none does, or where the
 * wall clock cannot be trusted. Never less than what is known. */
int64_t digit_by_wall_ms(const struct digit *d, struct moment now);

/* Since it went on, counted on while it is off: by the longer of both clocks where a power cut lies between. Less than
 * the truth only where the wall clock was set while the power was off. */
int64_t digit_open_ms(const struct digit *d, struct moment now);

/* --- in words (digit-text.c) ---------------------------------------------------------------------- */

/* The present stretch, or the last one where it is off: "32 min", "1 min", "at least 95 min; by wall clock 140 min",
 * "at least 9 min; the wall clock cannot be trusted". Whole minutes, rounded down. */
void digit_minutes_text(const struct digit *d, struct moment now, char *out, size_t size);
/* The same as a sentence with its values {minutes} and {most}. */
enum saying digit_minutes(const struct digit *d, struct moment now, int32_t *minutes, int32_t *most);

#endif
