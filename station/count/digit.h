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

#define DIGIT_NUMBER_MAX 24 /* 1-5 right hand from the thumb, 6-10 left hand, 11-20 feet, 21-24 others */

struct moment {
	int64_t boot_ms; /* CLOCK_BOOTTIME */
	int64_t wall_ms; /* CLOCK_REALTIME, for people to read; never for a duration within one boot */
	int32_t boot;    /* 1, 2, …: which of the boots that the record has seen */
};

enum digit_state {
	DIGIT_BARE = 0, /* no tourniquet was ever on, or it was looked at */
	DIGIT_MAYBE_ON, /* 'on?': asked and not answered; the clock runs (section 4) */
	DIGIT_ON,
	DIGIT_OFF, /* one was on; the digit has not been seen bare since */
};

struct digit {
	uint8_t number;       /* 1..DIGIT_NUMBER_MAX */
	uint8_t state;        /* enum digit_state */
	uint8_t marked;       /* the surgeon's marked digit */
	uint8_t had;          /* a tourniquet was on at some time */
	uint8_t seen_bare;    /* after the final count (rules 1, 9) */
	uint8_t seen_on;      /* at a handover that is going on (rule 8) */
	uint8_t gap;          /* `known_ms` leaves out time that no clock of ours saw */
	uint8_t reminded;     /* a reminder waits for a badge */
	struct moment since;  /* ON: start of what `known_ms` does not hold yet. OFF: when it came off */
	int64_t on_wall_ms;   /* wall clock of the start of this stretch */
	int64_t known_ms;     /* this stretch, before `since` */
	int64_t total_ms;     /* earlier stretches */
	int64_t longest_ms;   /* longest of the earlier stretches */
	int32_t reminded_min; /* minutes at the last reminder of this stretch, 0 none yet */
};

int digit_is_on(const struct digit *d); /* ON or MAYBE_ON: its clock runs */

int64_t moment_between_ms(struct moment from,
                          struct moment to); /* exact, or by the wall clock across boots */

/* How long the present stretch has run at `now`; 0 unless MAYBE_ON or ON. */
int64_t digit_stretch_ms(const struct digit *d, struct moment now);
int64_t digit_longest_ms(const struct digit *d, struct moment now);
int64_t digit_total_ms(const struct digit *d, struct moment now);

/* A new boot began at `started`; the last moment that the old one is known to have reached is `last`. */
void digit_cross_boot(struct digit *d, struct moment last, struct moment started);

/* The present stretch, or the last one where it is off: "32 min", "1 min", "at least 95 min; by wall clock 140 min". Whole minutes, rounded down. */
void digit_minutes_text(const struct digit *d, struct moment now, char *out, size_t size);

#endif
