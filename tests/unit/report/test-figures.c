/* What a report shows of cases, and what it holds back. */
#include <errno.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "report/days.h"
#include "report/figures.h"

#define CASES_MAX 4000

static struct case_row rows[CASES_MAX];
static int n_rows;
static struct figures *f;
static int32_t last_day;

static int cases(void *context, struct source_span span, int32_t room, source_case_fn each, void *to,
                 struct error *e)
{
	int n = 0;
	(void)context;
	(void)e;
	for (int i = 0; n == 0 && i < n_rows; i++)
		if (rows[i].day >= span.from && rows[i].day <= span.to && (!room || rows[i].room == room))
			n = each(to, &rows[i]);
	return n;
}

static int batches(void *context, struct source_span span, source_batch_fn each, void *to, struct error *e)
{
	(void)context;
	(void)span;
	(void)e;
	return each(to, &(struct pack_batch){.count = 500});
}

/* One case of an hour, each with three people, 25 minutes on an index finger; a day and a room as said. */
static struct case_row *add(int32_t day, int32_t room)
{
	struct case_row *r = &rows[n_rows++];
	*r = (struct case_row){.first_seq = n_rows,
	                       .opened_ms = day_number(day) * INT64_C(86400000),
	                       .case_no = n_rows,
	                       .room = room,
	                       .day = day,
	                       .people = {1, 2, 3},
	                       .first_reminder_min = 20,
	                       .end = CASE_RECONCILED,
	                       .n_digits = 1,
	                       .items = 2,
	                       .by_mark = 1,
	                       .by_shown = 1,
	                       .slips = 1,
	                       .slips_seen = 1,
	                       .steps = 16,
	                       .packs_opened = 1};
	r->ended_ms = r->opened_ms + 3600000;
	r->digits[0] = (struct case_digit){.seconds = 1500, .part = PART_FINGER, .over = 1, .past = 1};
	return r;
}

static void make(const struct plan *plan, int32_t room)
{
	struct error e = {0};
	struct source s = {.cases = cases, .batches = batches};
	struct figures_ask ask = {
	    .span = {20260101, 20261231}, .room = room, .last_day = last_day, .plan = plan};
	figures_free(f);
	f = NULL;
	assert_int_equal(figures_make(&f, &s, &ask, &e), 0);
}

static int begin(void **state)
{
	(void)state;
	n_rows = 0;
	last_day = 20270101;
	return 0;
}

static int end(void **state)
{
	(void)state;
	figures_free(f);
	f = NULL;
	return 0;
}

static void no_case_has_no_figure(void **state)
{
	(void)state;
	make(NULL, 0);
	assert_int_equal(f->cases, 0);
	assert_int_equal(f->held_back, 0);
	assert_true(isnan(f->discrepancy.high));
	assert_true(isnan(f->minutes[0].median));
	assert_int_equal(f->cases_chart.why, CHART_NONE);
	assert_int_equal(f->days_chart.why, CHART_NONE);
	assert_int_equal(f->slips_chart.why, CHART_NONE);
	assert_int_equal(f->minutes_charts[0].why, CHART_NONE);
}

static void few_cases_or_few_people_are_held_back(void **state)
{
	(void)state;
	for (int i = 0; i < 4; i++)
		add(20260302, 1);
	make(NULL, 0);
	assert_int_equal(f->held_back, 1);
	add(20260302, 1);
	make(NULL, 0);
	assert_int_equal(f->held_back, 0);
	assert_int_equal(f->minutes[PART_FINGER].held_back, 0);
	for (int i = 0; i < 5; i++)
		rows[i].people[2] = 0;
	make(NULL, 0);
	assert_int_equal(f->held_back, 1);
	rows[4].people[0] = 9;
	rows[0].digits[0].part = PART_THUMB;
	make(NULL, 0);
	assert_int_equal(f->held_back, 0);
	assert_int_equal(f->minutes[PART_FINGER].held_back, 1);
	assert_int_equal(f->minutes[PART_THUMB].held_back, 1);
}

static void a_week_of_a_room_is_held_back_alone(void **state)
{
	(void)state;
	for (int i = 0; i < 5; i++) { /* Monday to Friday */
		struct case_row *row = add(20260302 + i, 1);
		row->fast_looks = 2;
		row->fast_answers = 3;
		row->close_badges = 4;
		row->keyed_bursts = 5;
		row->even_scans = 6;
	}
	add(20260309, 1)->fast_looks = 1; /* the Monday after */
	for (int i = 0; i < 6; i++)
		add(20260302, 2)->people[2] = 0;
	make(NULL, 0);
	assert_int_equal(f->n_signs, 3);
	assert_int_equal(f->signs[0].week, 20260302);
	assert_int_equal(f->signs[0].held_back, 0);
	assert_int_equal(f->signs[0].fast_looks, 10);
	assert_int_equal(f->signs[0].fast_answers, 15);
	assert_int_equal(f->signs[0].close_badges, 20);
	assert_int_equal(f->signs[0].keyed_bursts, 25);
	assert_int_equal(f->signs[0].even_scans, 30);
	assert_int_equal(f->signs[1].week, 20260309);
	assert_int_equal(f->signs[1].held_back, 1);
	assert_int_equal(f->signs[2].room, 2);
	assert_int_equal(f->signs[2].held_back, 1);
	assert_int_equal(f->n_rooms, 2);
	assert_int_equal(f->rooms[0].cases, 6);
	assert_int_equal(f->rooms[1].held_back, 1);
}

static void what_is_held_back_cannot_be_worked_out(void **state)
{
	(void)state;
	for (int i = 0; i < 9; i++)
		add(20260302 + i, 1);
	for (int i = 0; i < 6; i++)
		add(20260302 + i, 2);
	for (int i = 0; i < 12; i++)
		add(20260302 + i, 3);
	make(NULL, 0);
	assert_int_equal(f->rooms[0].held_back + f->rooms[1].held_back + f->rooms[2].held_back, 0);
	add(20260302, 4);
	make(NULL, 0);
	assert_int_equal(f->rooms[3].held_back, 1);
	assert_int_equal(f->rooms[1].held_back, 1); /* else all less the others would be room 4 */
	assert_int_equal(f->rooms[0].held_back, 0);
	assert_int_equal(f->rooms[2].held_back, 0);
	add(20260302, 5);
	make(NULL, 0);
	assert_int_equal(f->rooms[4].held_back, 1);
	assert_int_equal(f->rooms[1].held_back, 1); /* two rooms of one case each are two cases */
	make(NULL, 3);
	assert_int_equal(f->rooms[0].held_back, 0);
}

static void minutes_count_what_is_still_on(void **state)
{
	(void)state;
	static const int minutes[] = {12, 18, 21, 25, 30, 33, 40, 55};
	for (int i = 0; i < 8; i++) {
		struct case_digit *d = &add(20260302, 1)->digits[0];
		d->seconds = minutes[i] * 60;
		d->over = i != 2 && i != 6;
		d->on = i == 2;
		d->past = minutes[i] >= 20;
	}
	rows[7].first_reminder_min = 0;
	rows[7].digits[0].past = 0;
	make(NULL, 0);
	const struct minutes *m = &f->minutes[PART_FINGER];
	assert_int_equal(m->n, 8);
	assert_true(m->median == 30); /* and not 25 or 30 of those that are off */
	assert_true(m->p90 == 55);
	assert_int_equal(m->on, 1);
	assert_int_equal(m->at_least, 1);
	assert_int_equal(m->past, 5);
	assert_int_equal(m->no_reminder, 1);
	assert_true(m->longest == 55);
	assert_int_equal(m->longest_at_least, 0);
	rows[7].digits[0].over = 0;
	make(NULL, 0);
	assert_int_equal(f->minutes[0].longest_at_least, 1);
	assert_true(isnan(f->minutes[0].p90)); /* nobody knows it yet */
	assert_int_equal(f->minutes[PART_TOE].n, 0);
}

static void no_event_has_the_one_sided_bound_and_no_limits(void **state)
{
	(void)state;
	for (int i = 0; i < 300; i++)
		add(20260302, 1);
	make(NULL, 0);
	assert_int_equal(f->discrepancy.x, 0);
	assert_true(f->unresolved_share.n == 300 && f->unresolved_share.high == f->discrepancy.high);
	assert_true(fabs(f->discrepancy.high - 0.00993608) < 1e-7); /* 0 of 300: 0.994 % */
	assert_int_equal(f->cases_chart.why, CHART_NONE);
	assert_int_equal(f->slips_chart.why, CHART_FEW);
}

static void one_and_two_events_have_no_limits(void **state)
{
	(void)state;
	for (int i = 0; i < 60; i++)
		add(20260302, 1);
	rows[10].marks |= CASE_DISCREPANCY;
	make(NULL, 0);
	assert_int_equal(f->cases_chart.why, CHART_FEW);
	assert_int_equal(f->cases_chart.n, 0);
	rows[40].marks |= CASE_DISCREPANCY;
	make(NULL, 0);
	assert_int_equal(f->cases_chart.why, CHART_DRAWN);
	assert_int_equal(f->cases_chart.n, 1);
	assert_int_equal(f->cases_chart.limits, 0);
	assert_true(f->cases_chart.points[0].value == 29);
	assert_true(f->cases_chart.points[1].running);
	assert_true(f->cases_chart.points[1].value == 19);
	rows[30].end = CASE_CANCELLED; /* nothing was counted in it */
	make(NULL, 0);
	assert_true(f->cases_chart.points[0].value == 28);
}

static void twenty_gaps_have_limits_and_the_last_one_may_only_say_rarer(void **state)
{
	(void)state;
	for (int i = 0; i < 21 * 10; i++)
		add(20260302, 1)->marks |= i % 10 == 0 ? CASE_DISCREPANCY : 0;
	make(NULL, 0);
	const struct chart *c = &f->cases_chart;
	assert_int_equal(c->n, 20);
	assert_int_equal(c->limits, 1);
	assert_true(c->upper == 62 && isnan(c->lower)); /* qgeom(0.99865, 0.1) */
	assert_true(c->points[20].running);
	assert_int_equal(c->signals, 0);
	assert_true(c->false_share >= 0 && c->false_share < 0.05);
	for (int i = 0; i < 70; i++)
		add(20260302, 1);
	make(NULL, 0);
	assert_int_equal(f->cases_chart.points[20].signal, POINT_BEYOND);
	assert_int_equal(f->cases_chart.signals, 1);
}

static void under_twenty_unresolved_cases_have_dates(void **state)
{
	(void)state;
	for (int i = 0; i < 21; i++) {
		int32_t day = day_of_number(day_number(20260105) + 10 * i);
		add(day, 1)->end = CASE_UNRESOLVED;
		add(day, 1);
		if (i == 19) {
			make(NULL, 0);
			assert_int_equal(f->days_chart.why, CHART_FEW);
			assert_int_equal(f->n_unresolved_days, 20);
			assert_int_equal(f->unresolved_days[1], 20260115);
		}
	}
	rows[4].marks |= CASE_CLOCK; /* its day cannot be told */
	make(NULL, 0);
	assert_int_equal(f->n_unresolved_days, 20);
	assert_int_equal(f->clock, 1);
	rows[4].marks = 0;
	make(NULL, 0);
	assert_int_equal(f->days_chart.n, 20);
	assert_true(fabs(f->days_chart.centre - 6.931471805599453) < 1e-9);
	assert_true(f->days_chart.points[20].running);
	assert_true(f->running_chance > 0 && f->running_chance < 0.01); /* 156 days at a mean of 10 */
	assert_int_equal(f->days_chart.points[20].signal, POINT_BEYOND);
	last_day = 20260725; /* the record ends there: nobody knows of the days that follow */
	make(NULL, 0);
	assert_true(f->days_chart.points[20].value == 2);
}

static void slips_have_a_chart_only_where_enough_are_expected(void **state)
{
	(void)state;
	for (int month = 1; month <= 6; month++)
		for (int i = 0; i < 100; i++)
			add(20260000 + 100 * month + 1 + i % 28, 1)->slips_seen = i % 20 != 0;
	make(NULL, 0);
	assert_int_equal(f->slips_chart.why, CHART_DRAWN);
	assert_int_equal(f->slips_chart.n, 6);
	assert_int_equal(f->slips_chart.points[2].day, 20260301);
	assert_true(f->slips_chart.points[2].value == 0.05);
	assert_int_equal(f->not_seen.x, 30);
	assert_true(f->slips_chart.false_share > 0 && f->slips_chart.false_share < 6 * 2 * STATS_TAIL);
	for (int i = 500; i < 600; i++)
		rows[i].slips_seen = i % 5 != 0;
	make(NULL, 0);
	assert_int_equal(f->slips_chart.signals, 1);
	assert_int_equal(f->slips_chart.points[5].signal, POINT_BEYOND);
	rows[500].day = 20260701;
	make(NULL, 0);
	assert_int_equal(f->slips_chart.why, CHART_RARE); /* one slip in July */
}

static void minutes_are_drawn_in_groups_by_their_logarithm(void **state)
{
	(void)state;
	for (int i = 0; i < 43; i++)
		add(day_of_number(day_number(20260105) + i), 1)->digits[0].seconds = i % 2 ? 1200 : 2700;
	make(NULL, 0);
	const struct chart *c = &f->minutes_charts[PART_FINGER];
	assert_int_equal(c->group, 5);
	assert_int_equal(c->n, 8);
	assert_int_equal(c->left_out, 3);
	assert_true(fabs(c->points[0].value - exp((2 * log(45) + 3 * log(20)) / 5)) < 1e-9);
	assert_true(c->lower > 0 && c->lower < c->centre && c->centre < c->upper);
	assert_int_equal(f->minutes_charts[PART_TOE].why, CHART_NONE);
	n_rows = 39;
	make(NULL, 0);
	assert_int_equal(f->minutes_charts[PART_FINGER].why, CHART_FEW);
}

static void shares_totals_and_search_add_up(void **state)
{
	(void)state;
	for (int i = 0; i < 40; i++)
		add(20260302, 1);
	rows[0].marks = CASE_SINGLE | CASE_OWED | CASE_OVERRIDDEN | CASE_DISCREPANCY | CASE_CLOSED |
	                CASE_POWER_CUT | CASE_FOUND_AFTER;
	rows[0].keyed = 3;
	rows[0].late = 1;
	rows[0].discrepancies = 2;
	rows[0].steps_done = 4;
	rows[0].n_found = 2;
	rows[0].found_step[0] = 3;
	rows[0].found_step[1] = 3;
	rows[1].end = CASE_OPEN;
	rows[2].end = CASE_CANCELLED;
	rows[3].typed = 1;
	make(NULL, 0);
	assert_int_equal(f->single.x, 1);
	assert_int_equal(f->single.n, 40);
	assert_int_equal(f->keyed.x, 1);
	assert_int_equal(f->late.x, 1);
	assert_int_equal(f->owed.x, 1);
	assert_int_equal(f->overridden.x, 1);
	assert_int_equal(f->discrepancy.n, 38);
	assert_int_equal(f->found.count[3], 2);
	assert_int_equal(f->closed, 1);
	assert_int_equal(f->discrepancies, 2);
	assert_int_equal(f->power_cuts, 1);
	assert_int_equal(f->found_after.x, 1);
	assert_int_equal(f->found_after.n, 40);
	assert_int_equal(f->items, 80);
	assert_int_equal(f->typed, 1);
	assert_int_equal(f->packs_numbered, 500);
	assert_int_equal(f->open + f->cancelled + f->reconciled, 40);
}

static int every_room(void *context, int32_t room)
{
	(void)context;
	return room > 0;
}

static void a_theatre_list_is_set_against_the_record(void **state)
{
	(void)state;
	static const char list[] =
	    "date,room,slot,digit\n2026-03-02,1,1,yes\n2026-03-02,1,2,yes\n2026-03-03,1,1,yes\n"
	    "2026-03-04,1,1,no\n2026-04-01,2,1,yes\n2025-12-31,1,1,yes\n";
	struct plan p;
	struct error e;
	assert_int_equal(plan_read(&p, list, sizeof list - 1, every_room, NULL, &e), 0);
	for (int i = 0; i < 3; i++)
		add(20260302, 1);
	add(20260304, 1);
	add(20260305, 1);
	add(20260305, 1);
	add(20260401, 2)->end = CASE_CANCELLED;
	make(&p, 0);
	assert_int_equal(f->n_coverage, 2);
	const struct coverage *march = &f->coverage[0], *april = &f->coverage[1];
	assert_int_equal(march->month, 202603);
	assert_int_equal(march->planned, 3);
	assert_int_equal(march->recorded, 4); /* three of two planned, and one of none: never capped */
	assert_int_equal(march->empty_days, 1);
	assert_int_equal(march->unplanned, 1);
	assert_int_equal(march->unknown_days, 1); /* the fifth, once */
	assert_int_equal(april->recorded, 0);
	assert_int_equal(april->empty_days, 1);
	make(&p, 2);
	assert_int_equal(f->n_coverage, 1);
	plan_deinit(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup_teardown(no_case_has_no_figure, begin, end),
	    cmocka_unit_test_setup_teardown(few_cases_or_few_people_are_held_back, begin, end),
	    cmocka_unit_test_setup_teardown(a_week_of_a_room_is_held_back_alone, begin, end),
	    cmocka_unit_test_setup_teardown(what_is_held_back_cannot_be_worked_out, begin, end),
	    cmocka_unit_test_setup_teardown(minutes_count_what_is_still_on, begin, end),
	    cmocka_unit_test_setup_teardown(no_event_has_the_one_sided_bound_and_no_limits, begin, end),
	    cmocka_unit_test_setup_teardown(one_and_two_events_have_no_limits, begin, end),
	    cmocka_unit_test_setup_teardown(twenty_gaps_have_limits_and_the_last_one_may_only_say_rarer,
	                                    begin, end),
	    cmocka_unit_test_setup_teardown(under_twenty_unresolved_cases_have_dates, begin, end),
	    cmocka_unit_test_setup_teardown(slips_have_a_chart_only_where_enough_are_expected, begin, end),
	    cmocka_unit_test_setup_teardown(minutes_are_drawn_in_groups_by_their_logarithm, begin, end),
	    cmocka_unit_test_setup_teardown(shares_totals_and_search_add_up, begin, end),
	    cmocka_unit_test_setup_teardown(a_theatre_list_is_set_against_the_record, begin, end),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
