/* What a report shows, as values: from rows of cases (source.h), a span of days and a theatre list. Pure.
 *
 * What a report must not show is not here: no success rate of counts that the station forces, no minutes in a chart made for
 * normal values, no limits from too few events, no person, no cell of too few cases or people. A figure that is held back
 * or not known is said to be so, never 0.
 */
#ifndef BANDTALLY_REPORT_FIGURES_H
#define BANDTALLY_REPORT_FIGURES_H

#include "report/plan.h"
#include "report/source.h"
#include "report/stats.h"

#define FIGURES_CASES 5    /* fewer cases, or … */
#define FIGURES_PEOPLE 3   /* … fewer people are not shown alone, nor what they could be worked out from */
#define FIGURES_POINTS 60  /* of a chart, at most */
#define FIGURES_EVENTS 20  /* fewer events between which to measure have no limits */
#define FIGURES_EXPECTED 5 /* a chart of shares expects at least so many at each point */
#define FIGURES_GROUPS 8   /* a chart of minutes has at least so many points */
#define FIGURES_STEPS 17   /* of the search, and what was found before the first */

struct figures_ask {
	struct source_span span;
	int32_t room;     /* 0 all */
	int32_t last_day; /* of the record: an interval that runs does so until then, or the span's end */
	const struct plan *plan; /* NULL: none was given */
};

/* x of n. Where n is 0 there is no share. */
struct share {
	int x, n;
	double low,
	    high; /* exact 95 % interval; where x is 0, `high` is the one-sided bound, 1 - 0.05^(1/n) */
};

struct minutes {
	int n, past, on,
	    at_least;    /* past the first local reminder; still on; with a gap, so at least so long */
	int no_reminder; /* of a day on which none was set */
	int held_back;   /* 1: too few */
	double median, p90, longest; /* minutes; NAN not reached while some are still on */
	int longest_at_least;        /* the longest is one of those */
};

enum chart_kind { CHART_MINUTES = 1, CHART_CASES, CHART_DAYS, CHART_SLIPS };
enum point_signal { POINT_NONE = 0, POINT_BEYOND, POINT_RUN };

struct point {
	int32_t day;         /* of its last case, or where its week or month begins */
	double value;        /* minutes, cases, days, or a share */
	double upper, lower; /* of this point; NAN none */
	int n;               /* cases behind it */
	uint8_t signal;      /* enum point_signal */
	uint8_t running;     /* the interval that is not over */
};

struct chart {
	int n; /* points, 0: nothing to draw, and `why` says why */
	enum chart_why { CHART_DRAWN = 0, CHART_NONE, CHART_FEW, CHART_RARE } why;
	struct point points[FIGURES_POINTS + 1];
	int limits;                  /* 1: centre, upper and lower were worked out */
	double centre, upper, lower; /* as the points; a chart of shares has them at each point */
	int group;                   /* CHART_MINUTES: so many tourniquets a point */
	int left_out;                /* older points for which there was no place */
	int signals;
	double false_share; /* how many charts of a steady one signal */
};

struct found_where {
	int count[FIGURES_STEPS]; /* by the step of the search during which it was found, from 1 */
};

/* Signs of work-arounds in one room and week. */
struct signs {
	int32_t room, week; /* its Monday */
	int cases, people, held_back;
	int fast_answers, fast_looks, close_badges, keyed_bursts, even_scans;
};

struct room_figures {
	int32_t room;
	int cases, people, held_back, discrepancies, unresolved;
};

struct coverage { /* of one month */
	int32_t month;
	int planned, recorded, empty_days, unplanned, unknown_days;
};

struct figures {
	struct figures_ask ask;
	int cases, people, held_back; /* 1: the whole has too few: nothing below is to be shown */
	int open, reconciled, unresolved, cancelled;
	int clock, power_cuts, unfollowed, patient_left, numbers_owed;
	struct share single, keyed, late, owed, overridden, corrected, discrepancy, unresolved_share,
	    not_seen, found_after;
	int slips, slips_seen;
	int discrepancies, closed, steps_done, steps_not_done;
	struct found_where found;
	int items, by_mark, by_shown, typed, isolated, returned;
	int packs_opened, packs_returned;
	int64_t packs_numbered;
	struct minutes minutes[DIGIT_PARTS]; /* [0] all, then by enum digit_part */
	int digits_left_out;
	struct chart minutes_charts[DIGIT_PARTS], cases_chart, days_chart, slips_chart;
	int32_t *unresolved_days; /* of each, in order */
	int n_unresolved_days;
	double
	    running_chance; /* that a steady one leaves so long a gap as the one that runs; NAN not known */
	struct room_figures *rooms; /* by number */
	int n_rooms;
	struct signs *signs; /* by room, then week */
	int n_signs;
	struct coverage *coverage; /* by month */
	int n_coverage;
};

/* 0; negative errno with `e`: that of the source, or -ENOMEM. The caller frees it with figures_free(). */
int figures_make(struct figures **out, const struct source *source, const struct figures_ask *ask,
                 struct error *e);
void figures_free(struct figures *f);

#endif
