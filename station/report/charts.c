#include "report/charts.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "report/days.h"

int row_counted(const struct case_row *row)
{
	return row->end == CASE_RECONCILED || row->end == CASE_UNRESOLVED;
}

/* Marks the points' signals by values that may be drawn on another scale than they are judged on. */
static void judge(struct chart *c, const double *values, const struct stats_limits *l, int runs)
{
	uint8_t beyond[FIGURES_POINTS];
	c->signals = stats_signals(values, c->n, l, runs, beyond);
	for (int i = 0; i < c->n; i++)
		c->points[i].signal = beyond[i];
}

static void limit(struct chart *c, const struct stats_limits *l)
{
	c->limits = 1;
	c->centre = l->centre;
	c->upper = l->upper;
	c->lower = l->lower;
	for (int i = 0; i < c->n; i++) {
		c->points[i].upper = l->upper;
		c->points[i].lower = l->lower;
	}
}

/* --- minutes -------------------------------------------------------------------------------------------------- */

struct took {
	double log_minutes;
	int32_t day;
};

static int list_times(struct rows rows, int part, struct took **out)
{
	int n = 0;
	*out = calloc(rows.count * CASE_DIGITS + 1, sizeof **out);
	for (size_t i = 0; *out && i < rows.count; i++)
		for (int k = 0; k < rows.list[i].n_digits; k++) {
			const struct case_digit *d = &rows.list[i].digits[k];
			if (d->over && !(rows.list[i].marks & CASE_CLOCK) && (!part || d->part == part))
				(*out)[n++] = (struct took){log(fmax(d->seconds, 1) / 60), rows.list[i].day};
		}
	return *out ? n : -ENOMEM;
}

int chart_minutes(struct chart *c, struct rows rows, int part)
{
	struct took *all;
	double values[FIGURES_POINTS], range;
	int n = list_times(rows, part, &all);
	if (n < 0)
		return n;
	c->group = (n + FIGURES_POINTS - 1) / FIGURES_POINTS;
	c->group = c->group < FIGURES_CASES ? FIGURES_CASES : c->group;
	c->n = n / c->group;
	c->left_out = n - c->n * c->group; /* the oldest, which fill no group */
	if (c->n < FIGURES_GROUPS) {
		c->n = 0;
		c->why = n ? CHART_FEW : CHART_NONE;
		free(all);
		return 0;
	}
	for (int i = 0; i < c->n; i++) {
		const struct took *of = all + c->left_out + i * c->group;
		values[i] = 0;
		for (int k = 0; k < c->group; k++)
			values[i] += of[k].log_minutes / c->group;
		c->points[i] =
		    (struct point){.day = of[c->group - 1].day, .value = exp(values[i]), .n = c->group};
	}
	free(all);
	struct stats_limits l = stats_xmr(values, c->n, &range);
	judge(c, values, &l, 1);
	limit(c, &(struct stats_limits){exp(l.centre), exp(l.upper), exp(l.lower)});
	c->false_share = stats_false_share(STATS_XMR, c->n, 0);
	return 0;
}

/* --- between events --------------------------------------------------------------------------------------------- */

/* The latest gaps that find a place, with limits where they are enough. */
static void chart_gaps(struct chart *c, enum stats_kind kind, const struct point *gaps, int n)
{
	double values[FIGURES_POINTS], sum = 0;
	c->left_out = n > FIGURES_POINTS ? n - FIGURES_POINTS : 0;
	c->n = n - c->left_out;
	memcpy(c->points, gaps + c->left_out, (size_t)c->n * sizeof *gaps);
	for (int i = 0; i < c->n; i++) {
		values[i] = c->points[i].value;
		sum += values[i];
		c->points[i].upper = c->points[i].lower = NAN;
	}
	if (c->n < FIGURES_EVENTS)
		return;
	struct stats_limits l =
	    kind == STATS_CASES ? stats_between_cases(values, c->n) : stats_between_days(values, c->n);
	judge(c, values, &l, 0);
	limit(c, &l);
	c->false_share = stats_false_share(kind, c->n, 1 / (sum / c->n + 1));
}

/* The interval that is not over may say 'rarer', never 'more often'. */
static void add_running(struct chart *c, double value, int32_t day)
{
	struct point *p = &c->points[c->n];
	*p = (struct point){.day = day, .value = value, .upper = NAN, .lower = NAN, .running = 1};
	if (!c->limits)
		return;
	p->upper = c->upper;
	p->signal = value > c->upper ? POINT_BEYOND : POINT_NONE;
	c->signals += p->signal != POINT_NONE;
}

int chart_between_cases(struct chart *c, struct rows rows)
{
	struct point *gaps = calloc(rows.count + 1, sizeof *gaps);
	int n = 0, since = 0, events = 0;
	if (!gaps)
		return -ENOMEM;
	for (size_t i = 0; i < rows.count; i++) {
		const struct case_row *row = &rows.list[i];
		if (!row_counted(row))
			continue;
		if (!(row->marks & CASE_DISCREPANCY)) {
			since++;
			continue;
		}
		if (events++) { /* before the first nobody knows how long the gap was */
			gaps[n] = (struct point){.day = row->day, .value = since, .n = since};
			n++;
		}
		since = 0;
	}
	c->why = !events ? CHART_NONE : !n ? CHART_FEW : CHART_DRAWN;
	if (n) {
		chart_gaps(c, STATS_CASES, gaps, n);
		add_running(c, since, rows.list[rows.count - 1].day);
	}
	free(gaps);
	return 0;
}

int chart_between_days(struct chart *c, const double *days, int n, double end, double *chance)
{
	*chance = NAN;
	c->why = n == 0 ? CHART_NONE : n <= FIGURES_EVENTS ? CHART_FEW : CHART_DRAWN;
	if (c->why)
		return 0;
	struct point *gaps = calloc((size_t)n, sizeof *gaps);
	double sum = 0;
	if (!gaps)
		return -ENOMEM;
	for (int i = 1; i < n; i++)
		gaps[i - 1] = (struct point){.day = day_of_number((int64_t)floor(days[i])),
		                             .value = days[i] - days[i - 1]};
	chart_gaps(c, STATS_DAYS, gaps, n - 1);
	for (int i = 0; i < c->n; i++)
		sum += c->points[i].value;
	double running = fmax(end - days[n - 1], 0);
	add_running(c, running, day_of_number((int64_t)floor(end)));
	*chance = stats_running(running, sum / c->n);
	free(gaps);
	return 0;
}

/* --- shares --------------------------------------------------------------------------------------------------------- */

struct period {
	int32_t key;
	int x, n;
};

static int list_periods(struct rows rows, int by_week, struct period *list)
{
	int n = 0;
	for (size_t i = 0; i < rows.count; i++) {
		const struct case_row *row = &rows.list[i];
		if (row->marks & CASE_CLOCK || !row->slips)
			continue;
		int32_t key = by_week ? day_week(row->day) : day_month(row->day) * 100 + 1;
		if (!n || list[n - 1].key != key) {
			if (n == FIGURES_POINTS)
				memmove(list, list + 1, (size_t)--n * sizeof *list);
			list[n++] = (struct period){.key = key};
		}
		list[n - 1].n += row->slips;
		list[n - 1].x += row->slips - row->slips_seen;
	}
	return n;
}

void chart_slips(struct chart *c, struct rows rows, int by_week)
{
	struct period list[FIGURES_POINTS];
	int n = list_periods(rows, by_week, list), slips = 0, unseen = 0, fewest = 0;
	double steady = 1;
	for (int i = 0; i < n; i++) {
		slips += list[i].n;
		unseen += list[i].x;
		fewest = i == 0 || list[i].n < fewest ? list[i].n : fewest;
	}
	double p = slips ? (double)unseen / slips : 0;
	c->why = !slips                          ? CHART_NONE
	         : n < 2                         ? CHART_FEW
	         : p * fewest < FIGURES_EXPECTED ? CHART_RARE
	                                         : CHART_DRAWN;
	if (c->why)
		return;
	c->n = n;
	c->limits = 1;
	c->centre = p;
	c->upper = c->lower = NAN;
	for (int i = 0; i < n; i++) {
		struct stats_limits l = stats_share_limits(list[i].n, p);
		struct point *at = &c->points[i];
		*at = (struct point){.day = list[i].key,
		                     .value = (double)list[i].x / list[i].n,
		                     .upper = l.upper / list[i].n,
		                     .lower = l.lower / list[i].n,
		                     .n = list[i].n};
		at->signal = list[i].x > l.upper || list[i].x < l.lower ? POINT_BEYOND : POINT_NONE;
		c->signals += at->signal != POINT_NONE;
		double below = isnan(l.lower) ? 0 : stats_binomial((int)l.lower - 1, list[i].n, p);
		steady *= stats_binomial((int)l.upper, list[i].n, p) - below;
	}
	c->false_share = 1 - steady;
}
