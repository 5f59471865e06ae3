/* What a report asks of whoever keeps the record, and in which form it is answered. record/summary.h answers it from a
 * summary; a hospital's central store can answer the same.
 *
 * A row is one case, as tell/outline.h makes it of its events. It holds no name and no identity: people stand in it as the
 * numbers of their badges, only so that a figure of too few people can be held back.
 */
#ifndef BANDTALLY_REPORT_SOURCE_H
#define BANDTALLY_REPORT_SOURCE_H

#include <stdint.h>

#include "base/error.h"

#define CASE_DIGITS 6 /* of one case; more are counted in `digits_left_out` */
#define CASE_PEOPLE 8
#define CASE_FOUND 4
#define CASE_THINGS 8

enum case_mark {
	CASE_SINGLE = 1 << 0, /* one operator: single-person throughout */
	CASE_CLOCK =
	    1
	    << 1, /* its times are no measure: the wall clock could not be trusted, or it was entered from paper */
	CASE_DISCREPANCY = 1 << 2,  /* opened at a count */
	CASE_CLOSED = 1 << 3,       /* and closed again: what was missing was found, or counted right */
	CASE_OWED = 1 << 4,         /* something was owed before it could end */
	CASE_OVERRIDDEN = 1 << 5,   /* an item or person was taken in that the station would have refused */
	CASE_FOUND_AFTER = 1 << 6,  /* one of its things was scanned after it had ended */
	CASE_PATIENT_LEFT = 1 << 7, /* before the end */
	CASE_UNFOLLOWED =
	    1 << 8, /* an event of it could not be read or applied: its figures may lack something */
	CASE_NUMBER_OWED = 1 << 9, /* ended unresolved, its incident number still owed */
	CASE_POWER_CUT = 1 << 10,  /* its clocks have a gap */
};

enum case_end_kind { CASE_OPEN = 0, CASE_RECONCILED, CASE_UNRESOLVED, CASE_CANCELLED };

enum digit_part { PART_FINGER = 1, PART_THUMB, PART_TOE, PART_OTHER }; /* a great toe is a toe */
#define DIGIT_PARTS 5

struct case_digit {
	int32_t seconds; /* the longest stretch */
	uint8_t part;    /* enum digit_part */
	uint8_t
	    over; /* 0: at least so long: still on when this was read or when the case ended, or with a gap */
	uint8_t on;   /* 1: still on */
	uint8_t past; /* past the first local reminder of that day */
};

struct case_row {
	int64_t first_seq, last_seq; /* of its events */
	int64_t opened_ms, ended_ms; /* wall clock; ended 0: open */
	int32_t case_no, room;
	int32_t day;                 /* civil day of its opening, yyyymmdd */
	uint32_t marks;              /* enum case_mark */
	int32_t people[CASE_PEOPLE]; /* numbers of badges, 0 none further */
	struct case_digit digits[CASE_DIGITS];
	int16_t first_reminder_min; /* of its day; 0 none was set */
	uint8_t end;                /* enum case_end_kind */
	uint8_t n_digits, digits_left_out;
	uint8_t items, by_mark, by_shown,
	    typed; /* accounted for, and by what evidence; typed: that answer was keyed */
	uint8_t packs_opened, packs_returned; /* that bear a number of their own on the wrapper */
	uint8_t returned, isolated;           /* of all items */
	uint8_t discrepancies, steps_done, steps_not_done;
	uint8_t n_found, found_step[CASE_FOUND]; /* during which step of the search a thing was found */
	uint8_t slips, slips_seen;
	uint16_t steps, keyed, late, corrected, refused; /* scans and answers, and how many were so */
	uint8_t fast_answers, fast_looks, close_badges, keyed_bursts,
	    even_scans; /* signs, by tell/outline.h's limits */
	uint8_t n_things,
	    things_left_out; /* items, those returned included; left out: it may hold anything */
	/* case_thing_mark() of what each is, its lot and its identity */
	uint32_t lines[CASE_THINGS], lots[CASE_THINGS], identities[CASE_THINGS];
};

/* What a trace looks for first: few texts share one, and what is found is read in the record itself. FNV-1a. */
static inline uint32_t case_thing_mark(const char *text)
{
	uint32_t mark = 2166136261u;
	for (; *text; text++)
		mark = (mark ^ (uint8_t)*text) * 16777619u;
	return mark;
}

struct pack_batch { /* numbers that stores gave to packs of one line */
	int64_t at_ms;
	int32_t count;
};

/* Civil days, both within; yyyymmdd. */
struct source_span {
	int32_t from, to;
};

/* Each callback returns 0 to go on; whatever else it returns ends the query, and negative is passed on. */
typedef int (*source_case_fn)(void *to, const struct case_row *row);
typedef int (*source_batch_fn)(void *to, const struct pack_batch *batch);

struct source {
	void *context;
	/* The cases that were opened in the span, in the order of their opening; of one room, or of all (0). */
	int (*cases)(void *context, struct source_span span, int32_t room, source_case_fn each, void *to,
	             struct error *e);
	/* The numbers that stores gave out in the span. */
	int (*batches)(void *context, struct source_span span, source_batch_fn each, void *to,
	               struct error *e);
};

#endif
