/* The figures of a report, as plain functions: numbers in, numbers out; no I/O, no clock, no state.
 *
 * Each is held by tests/unit/report to values that R's packages and printed handbooks give. Where a name could mean
 * several things, the one that is meant is said here, and the report says it on paper too. A share is 0 to 1. Arrays
 * are borrowed. None of these fails: what has no value is NAN, or is said below.
 */
#ifndef BANDTALLY_REPORT_STATS_H
#define BANDTALLY_REPORT_STATS_H

#include <stdint.h>

/* How likely it is that a point of a steady process lies beyond one limit, as of three sigma of normal values. */
#define STATS_TAIL 0.00135

/* The smallest rank at which `permille` thousandths of `n` values are reached, from 1: nearest rank. n >= 1. */
int stats_rank(int n, int permille);

struct stats_time {
	double value;
	int over; /* 0: it was still running when it was read (censored) */
};

/* The value by which `permille` thousandths were over. Sorts `times`. With none censored it is the nearest rank; else the
 * first value at which the Kaplan-Meier estimate has fallen so far. NAN where that was never reached, or n is 0. */
double stats_quantile(struct stats_time *times, int n, int permille);

/* The share that ran on beyond `value`, by Kaplan-Meier. Sorts `times`. */
double stats_still(struct stats_time *times, int n, double value);

/* --- limits of charts -------------------------------------------------------------------------------- */

struct stats_limits {
	double centre, upper, lower; /* lower: NAN where a low signal cannot exist */
};

/* Single values and their moving ranges: mean and mean ± 2.66 times the mean range. n >= 2. For values that are about
 * normal, so not for minutes, cases or days between. */
struct stats_limits stats_xmr(const double *values, int n, double *mean_range);

/* Cases between events, the event's own case not counted: geometric from 0. A signal is a value above `upper` or below
 * `lower`; centre is the median. `lower` is NAN where no value is so rare (p above STATS_TAIL). n >= 1. */
struct stats_limits stats_between_cases(const double *gaps, int n);

/* Days between events: exponential. centre is the median. n >= 1. */
struct stats_limits stats_between_days(const double *days, int n);

/* How likely an interval that is still running at `days` is to be so long where nothing changed: it may say 'rarer', and
 * never 'more often'. */
double stats_running(double days, double mean);

/* Of `n` with the share `p`: a signal is a number above `upper` or below `lower`, exactly. centre is the expected number. */
struct stats_limits stats_share_limits(int n, double p);

/* --- shares and what they allow ------------------------------------------------------------------------ */

/* The exact two-sided 95 % interval of x of n (Clopper-Pearson); 0 <= x <= n, n >= 1. */
void stats_interval(int x, int n, double *low, double *high);

/* What 0 of n still allows: the exact one-sided 95 % bound, 1 - 0.05^(1/n). n >= 1. */
double stats_none_bound(int n);

/* P(X <= x) of n with the share p. */
double stats_binomial(int x, int n, double p);

/* --- run rule and false signals ------------------------------------------------------------------------- */

#define STATS_RUN 9 /* so many in a row on one side of the centre are a signal, where a chart has that rule */

/* Marks in `beyond` (1) what lies outside the limits, and, where `runs`, in it (2) the last value of each run of
 * STATS_RUN on one side of the centre and those behind it. How many were marked. */
int stats_signals(const double *values, int n, const struct stats_limits *l, int runs, uint8_t *beyond);

enum stats_kind {
	STATS_XMR = 1, /* with the run rule */
	STATS_CASES,
	STATS_DAYS,
};

/* The share of charts of `n` points of a steady process, with limits from those same points, that show at least one signal:
 * by 4,000 trials that are the same each time, so within 1.5 points. `p`: of an event, for STATS_CASES. */
double stats_false_share(enum stats_kind kind, int n, double p);

#endif
