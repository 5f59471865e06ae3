#include "report/stats.h"

#include <math.h>
#include <stdlib.h>

int stats_rank(int n, int permille)
{
	int64_t rank = ((int64_t)n * permille + 999) / 1000;
	return rank < 1 ? 1 : rank > n ? n : (int)rank;
}

/* Of equal ones what was over stands first: it had been running together with the rest. */
static int by_value(const void *a, const void *b)
{
	const struct stats_time *x = a, *y = b;
	return x->value < y->value ? -1 : x->value > y->value ? 1 : y->over - x->over;
}

static void sort(struct stats_time *times, int n)
{
	if (n)
		qsort(times, (size_t)n, sizeof *times, by_value);
}

double stats_quantile(struct stats_time *times, int n, int permille)
{
	int running = 0;
	double left = 1, until = 1 - permille / 1000.0;
	sort(times, n);
	for (int i = 0; i < n; i++)
		running += !times[i].over;
	if (n && !running)
		return times[stats_rank(n, permille) - 1].value;
	for (int i = 0; i < n; i++) {
		left *= times[i].over ? 1 - 1.0 / (n - i) : 1;
		if (times[i].over && left <= until + 1e-12)
			return times[i].value;
	}
	return NAN;
}

double stats_still(struct stats_time *times, int n, double value)
{
	double left = 1;
	sort(times, n);
	for (int i = 0; i < n && times[i].value <= value; i++)
		left *= times[i].over ? 1 - 1.0 / (n - i) : 1;
	return left;
}

static double mean_of(const double *values, int n)
{
	double sum = 0;
	for (int i = 0; i < n; i++)
		sum += values[i];
	return sum / n;
}

struct stats_limits stats_xmr(const double *values, int n, double *mean_range)
{
	double mean = mean_of(values, n), ranges = 0;
	for (int i = 1; i < n; i++)
		ranges += fabs(values[i] - values[i - 1]);
	*mean_range = ranges / (n - 1);
	return (struct stats_limits){mean, mean + 2.66 * *mean_range, mean - 2.66 * *mean_range};
}

/* The smallest k with P(X <= k) >= q, X geometric from 0. */
static double geometric(double q, double p)
{
	double k = p < 1 ? ceil(log1p(-q) / log1p(-p) - 1 - 1e-9) : 0;
	return k > 0 ? k : 0;
}

struct stats_limits stats_between_cases(const double *gaps, int n)
{
	double p = 1 / (mean_of(gaps, n) + 1), low = geometric(STATS_TAIL, p);
	return (struct stats_limits){geometric(0.5, p), geometric(1 - STATS_TAIL, p), low > 0 ? low : NAN};
}

struct stats_limits stats_between_days(const double *days, int n)
{
	double mean = mean_of(days, n);
	return (struct stats_limits){M_LN2 * mean, -log(STATS_TAIL) * mean, -log1p(-STATS_TAIL) * mean};
}

double stats_running(double days, double mean)
{
	return mean > 0 ? exp(-days / mean) : 1;
}

int stats_signals(const double *values, int n, const struct stats_limits *l, int runs, uint8_t *beyond)
{
	int run = 0, side = 0, found = 0;
	double slack =
	    1e-9 * (1 + fabs(l->centre)); /* equal values are on their centre, whatever rounding says */
	for (int i = 0; i < n; i++) {
		int here = values[i] > l->centre + slack ? 1 : values[i] < l->centre - slack ? -1 : 0;
		run = here && here == side ? run + 1 : here != 0;
		side = here;
		int out = values[i] > l->upper + slack || values[i] < l->lower - slack;
		beyond[i] = out ? 1 : runs && run >= STATS_RUN ? 2 : 0;
		found += beyond[i] != 0;
	}
	return found;
}
