/* Each figure of a report beside what an outside program or a handbook gives: values.tsv says which. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "report/stats.h"

#define VALUES 64

struct given {
	double v[VALUES];
	struct stats_time t[VALUES];
	int n;
};

static void read_given(const char *text, struct given *g)
{
	g->n = 0;
	for (char *end; *text && g->n < VALUES; text = end + strspn(end, " +/")) {
		double v = strtod(text, &end);
		assert_ptr_not_equal(end, text);
		g->v[g->n] = v;
		g->t[g->n++] = (struct stats_time){v, *end != '+'};
	}
}

static double of_limits(const char *which, struct stats_limits l)
{
	return strcmp(which, "centre") == 0 ? l.centre : strcmp(which, "upper") == 0 ? l.upper : l.lower;
}

static double ours(const char *what, struct given *g)
{
	double low, high, range;
	const char *which = strchr(what, '-') ? strchr(what, '-') + 1 : "";
	if (strncmp(what, "quantile-", 9) == 0)
		return stats_quantile(g->t, g->n, atoi(which) * 10);
	if (strcmp(what, "still-30") == 0)
		return stats_still(g->t, g->n, 30);
	if (strncmp(what, "xmr-", 4) == 0) {
		struct stats_limits l = stats_xmr(g->v, g->n, &range);
		return strcmp(which, "range") == 0 ? range : of_limits(which, l);
	}
	if (strncmp(what, "cases-", 6) == 0)
		return of_limits(which, stats_between_cases(g->v, g->n));
	if (strncmp(what, "days-", 5) == 0)
		return of_limits(which, stats_between_days(g->v, g->n));
	if (strncmp(what, "share-", 6) == 0)
		return of_limits(which, stats_share_limits((int)g->v[0], g->v[1] / g->v[2]));
	if (strcmp(what, "running") == 0)
		return stats_running(g->v[0], g->v[1]);
	if (strcmp(what, "none-bound") == 0)
		return stats_none_bound((int)g->v[0]);
	if (strcmp(what, "false-xmr") == 0)
		return stats_false_share(STATS_XMR, (int)g->v[0], 0);
	if (strcmp(what, "false-cases") == 0)
		return stats_false_share(STATS_CASES, (int)g->v[0], g->v[1]);
	if (strcmp(what, "false-days") == 0)
		return stats_false_share(STATS_DAYS, (int)g->v[0], 0);
	stats_interval((int)g->v[0], (int)g->v[1], &low, &high);
	assert_true(strncmp(what, "interval-", 9) == 0);
	return strcmp(which, "low") == 0 ? low : high;
}

/* 1e-9 of the value; of what is found by trial, what two runs of trials may differ by. A low limit of 0 means that there is
 * none. */
static int agrees(const char *what, double want, double got)
{
	if (strncmp(what, "false-", 6) == 0)
		return fabs(want - got) <= 0.015;
	if (strstr(what, "-lower") && want == 0)
		return isnan(got);
	return fabs(want - got) <= 1e-9 * fabs(want) + 1e-12;
}

static void every_value_is_as_outside_programs_have_it(void **state)
{
	(void)state;
	char path[512], line[1024];
	int rows = 0;
	snprintf(path, sizeof path, "%s/tests/unit/report/values.tsv", getenv("BANDTALLY_SOURCE"));
	FILE *f = fopen(path, "re");
	assert_non_null(f);
	while (fgets(line, sizeof line, f)) {
		char *rest = line, *what = strsep(&rest, "\t"), *input = strsep(&rest, "\t"),
		     *value = strsep(&rest, "\t");
		struct given g;
		if (*what == '#')
			continue;
		assert_non_null(value);
		read_given(input, &g);
		double want = strtod(value, NULL), got = ours(what, &g);
		if (!agrees(what, want, got))
			fail_msg("%s of '%s' is %.12g, %s has %.12g", what, input, got, rest, want);
		rows++;
	}
	fclose(f);
	assert_true(rows > 130);
}

static void what_has_no_value_is_none(void **state)
{
	(void)state;
	struct stats_time on[] = {{30, 0}, {12, 0}}, one = {7, 1};
	assert_true(isnan(stats_quantile(NULL, 0, 500)));
	assert_true(isnan(stats_quantile(on, 2, 500))); /* all still on: nobody knows the median */
	assert_true(stats_quantile(&one, 1, 900) == 7);
	assert_true(stats_still(on, 2, 100) == 1);
	assert_int_equal(stats_rank(10, 900), 9);
	assert_int_equal(stats_rank(10, 901), 10);
	assert_int_equal(stats_rank(1, 0), 1);
}

/* One that came off after as many minutes as another had when it was read, came off first. */
static void a_tie_with_one_still_on_counts_it_as_on(void **state)
{
	(void)state;
	struct stats_time t[] = {{20, 0}, {20, 1}};
	assert_true(stats_still(t, 2, 20) == 0.5);
}

static void signals_are_beyond_a_limit_or_a_run_of_nine(void **state)
{
	(void)state;
	uint8_t beyond[12];
	double v[12] = {1, -1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 5};
	struct stats_limits l = {0, 3, NAN};
	assert_int_equal(stats_signals(v, 12, &l, 0, beyond), 1);
	assert_int_equal(beyond[11], 1);
	assert_int_equal(stats_signals(v, 12, &l, 1, beyond), 2);
	assert_int_equal(beyond[9], 0);
	assert_int_equal(beyond[10], 2); /* the ninth of them */
	for (int i = 0; i < 12; i++)
		v[i] = log(32) * (1 + 1e-15 * (i % 2)); /* as a mean of equal logarithms may come out */
	double range;
	struct stats_limits flat = stats_xmr(v, 12, &range);
	assert_int_equal(stats_signals(v, 12, &flat, 1, beyond), 0);
	memcpy(v, (double[12]){1, -1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 5}, sizeof v);
	v[5] = 0; /* on the centre is on no side */
	assert_int_equal(stats_signals(v, 12, &l, 1, beyond), 1);
}

static void an_interval_that_runs_may_only_say_rarer(void **state)
{
	(void)state;
	assert_true(stats_running(0, 10) == 1);
	assert_true(stats_running(1000, 10) < STATS_TAIL);
	assert_true(stats_binomial(-1, 5, 0.5) == 0);
	assert_true(stats_binomial(5, 5, 0.5) == 1);
	assert_true(fabs(stats_binomial(2, 5, 0.5) - 0.5) < 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(every_value_is_as_outside_programs_have_it),
	    cmocka_unit_test(what_has_no_value_is_none),
	    cmocka_unit_test(a_tie_with_one_still_on_counts_it_as_on),
	    cmocka_unit_test(signals_are_beyond_a_limit_or_a_run_of_nine),
	    cmocka_unit_test(an_interval_that_runs_may_only_say_rarer),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
