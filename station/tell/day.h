/* What the boards show of cases and what the state of the count does not hold: who agreed which count, which steps
 * of a search were not done, and the cases of the day. Made from events alone, one by one. */
#ifndef BANDTALLY_TELL_DAY_H
#define BANDTALLY_TELL_DAY_H

#include "count/policy.h"
#include "count/sheet.h"

#define DAY_CASES 64 /* the last ones; further ones of a day are found in the record */
#define DAY_COUNTS 8 /* of one case, the latest */
#define DAY_STEPS POLICY_LIST_MAX

struct day_count {
	int64_t seq;
	int64_t at_ms; /* wall clock */
	enum count_kind kind;
	int32_t field, circulating, recorded_by; /* badges; a lone operator's count has no circulating one */
};

struct day_step {
	int64_t seq;
	int32_t step; /* from 1 */
	int not_done;
};

struct day_case {
	int32_t case_no, room;
	int64_t opened_ms, ended_ms; /* wall clock; 0 not ended */
	int end;                     /* enum case_end, 0 open */
	int n_counts;
	struct day_count counts[DAY_COUNTS]; /* in their order; what was taken back is gone */
	int n_steps;
	struct day_step steps[DAY_STEPS]; /* answered in its last discrepancy, in their order */
};

struct day {
	int n;
	struct day_case cases[DAY_CASES]; /* oldest first */
};

/* Takes one event, in the order of the record; kinds that do not matter here are passed over. */
void day_take(struct day *d, const struct event *e);

/* A case that is kept; NULL none. */
const struct day_case *day_case(const struct day *d, int32_t case_no);

/* 1 where this step of its search was answered with NOT DONE. */
int day_not_done(const struct day_case *c, int step);

/* 1 where it was opened or ended on the civil day of `wall_ms`, `utc_min` ahead of UTC, or is open. */
int day_shows(const struct day_case *c, int64_t wall_ms, int16_t utc_min);

#endif
