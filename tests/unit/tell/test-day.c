/* What boards show of the day: read from the record at a start, it is what it was before; a count that was
 * taken back is gone; a case of yesterday is shown while it is open. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/sheet.h"
#include "run/day-load.h"
#include "tell/day.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

#define DAY_MS (24 * 3600000LL)

static char folder[FOLDER_MAX];
static struct record *record;
static struct history h;
static struct day lived, loaded;
static struct error e;

static int setup(void **state)
{
	(void)state;
	folder_make(folder);
	return record_open(&record, folder, &e) < 0 || history_init(&h, record, 7, 0) < 0;
}

static int teardown(void **state)
{
	(void)state;
	history_deinit(&h);
	record_close(record);
	folder_remove(folder);
	return 0;
}

static int live(void *context, const struct event *ev)
{
	day_take(context, ev);
	return 0;
}

static void read_both(void)
{
	memset(&lived, 0, sizeof lived);
	assert_int_equal(record_each(record, 0, live, &lived, &e), 0);
	assert_int_equal(day_load(&loaded, record, h.st.last_case_no, &e), 0);
}

static void an_ordinary_case_has_two_counts_with_their_people(void **state)
{
	(void)state;
	assert_int_equal(history_case(&h, 1), 0);
	read_both();
	const struct day_case *c = day_case(&loaded, h.st.last_case_no);
	assert_non_null(c);
	assert_int_equal(c->room, 1);
	assert_int_equal(c->end, END_RECONCILED);
	assert_true(c->ended_ms > c->opened_ms);
	assert_int_equal(c->n_counts, 2);
	assert_int_equal(c->counts[0].kind, COUNT_INITIAL);
	assert_int_equal(c->counts[1].kind, COUNT_FINAL);
	for (int i = 0; i < 2; i++) {
		assert_int_equal(c->counts[i].field, 1);
		assert_int_equal(c->counts[i].circulating, 2);
		assert_int_equal(c->counts[i].recorded_by, 2);
	}
	assert_null(day_case(&loaded, h.st.last_case_no + 1));
}

static void read_from_the_record_it_is_what_was_lived(void **state)
{
	(void)state;
	int counts = 0, over = 0;
	for (int i = 0; i < 70; i++)
		assert_int_equal(history_case(&h, 2), 0);
	for (int i = 0; i < 2500; i++)
		assert_int_equal(history_step(&h), 0);
	read_both();
	assert_int_equal(loaded.n, DAY_CASES);
	assert_int_equal(lived.n, loaded.n);
	for (int i = 0; i < loaded.n; i++) {
		const struct day_case *a = &lived.cases[i], *b = &loaded.cases[i];
		assert_int_equal(a->case_no, b->case_no);
		assert_int_equal(a->room, b->room);
		assert_int_equal(a->opened_ms, b->opened_ms);
		assert_int_equal(a->ended_ms, b->ended_ms);
		assert_int_equal(a->end, b->end);
		assert_int_equal(a->n_counts, b->n_counts);
		for (int k = 0; k < a->n_counts; k++)
			assert_int_equal(a->counts[k].seq, b->counts[k].seq);
		counts += a->n_counts;
		over += a->end != 0;
	}
	assert_true(counts >= 60 && over >= 30);
}

static void a_count_that_was_taken_back_is_gone(void **state)
{
	(void)state;
	struct day d = {0};
	day_take(&d, &(struct event){.kind = EV_CASE_OPENED, .seq = 10, .case_no = 4, .room = 2});
	day_take(&d,
	         &(struct event){.kind = EV_COUNT_AGREED, .seq = 12, .case_no = 4, .what = COUNT_INITIAL});
	day_take(&d, &(struct event){.kind = EV_COUNT_AGREED, .seq = 20, .case_no = 4, .what = COUNT_FINAL});
	day_take(&d, &(struct event){.kind = EV_COUNT_AGREED, .seq = 21, .case_no = 5, .what = COUNT_FINAL});
	assert_int_equal(day_case(&d, 4)->n_counts, 2);
	day_take(&d, &(struct event){.kind = EV_UNDONE, .seq = 22, .case_no = 4, .ref = 20});
	assert_int_equal(day_case(&d, 4)->n_counts, 1);
	assert_int_equal(day_case(&d, 4)->counts[0].kind, COUNT_INITIAL);
	for (int i = 0; i < DAY_COUNTS + 3; i++)
		day_take(&d,
		         &(struct event){
		             .kind = EV_COUNT_AGREED, .seq = 30 + i, .case_no = 4, .what = COUNT_HANDOVER});
	assert_int_equal(day_case(&d, 4)->n_counts, DAY_COUNTS);
	assert_int_equal(day_case(&d, 4)->counts[DAY_COUNTS - 1].seq, 30 + DAY_COUNTS + 2);
}

static void a_step_that_was_not_done_is_told_from_one_that_was(void **state)
{
	(void)state;
	struct day d = {0};
	day_take(&d, &(struct event){.kind = EV_CASE_OPENED, .seq = 10, .case_no = 4, .room = 2});
	day_take(&d, &(struct event){.kind = EV_DISCREPANCY, .seq = 11, .case_no = 4, .n = 1});
	for (int step = 1; step <= 3; step++)
		day_take(&d, &(struct event){.kind = EV_SEARCH_STEP,
		                             .seq = 11 + step,
		                             .case_no = 4,
		                             .n = step,
		                             .what = step == 2 ? 2 : 1});
	const struct day_case *c = day_case(&d, 4);
	assert_false(day_not_done(c, 1));
	assert_true(day_not_done(c, 2));
	assert_false(day_not_done(c, 3));
	assert_false(day_not_done(c, 4));
	/* taken back, and answered again */
	day_take(&d, &(struct event){.kind = EV_UNDONE, .seq = 15, .case_no = 4, .ref = 13});
	assert_false(day_not_done(c, 2));
	day_take(&d, &(struct event){.kind = EV_SEARCH_STEP, .seq = 16, .case_no = 4, .n = 2, .what = 2});
	assert_true(day_not_done(c, 2));
	/* another discrepancy begins its own search */
	day_take(&d, &(struct event){.kind = EV_DISCREPANCY, .seq = 17, .case_no = 4, .n = 0});
	assert_true(day_not_done(c, 2));
	day_take(&d, &(struct event){.kind = EV_DISCREPANCY, .seq = 18, .case_no = 4, .n = 1});
	assert_false(day_not_done(c, 2));
}

static void a_case_of_yesterday_is_shown_while_it_is_open(void **state)
{
	(void)state;
	const int64_t noon = 1795608000000; /* 2026-11-25, twelve o'clock UTC */
	struct day_case c = {.case_no = 1, .opened_ms = noon};
	assert_true(day_shows(&c, noon + DAY_MS, 0));
	c.end = END_RECONCILED;
	c.ended_ms = noon + 3600000;
	assert_true(day_shows(&c, noon + 7200000, 0));
	assert_false(day_shows(&c, noon + DAY_MS, 0));
	c.ended_ms = noon + DAY_MS - 7200000; /* it went on over midnight */
	assert_true(day_shows(&c, noon + DAY_MS, 0));
	assert_false(day_shows(&c, noon + 2 * DAY_MS, 0));
}

int main(void)
{
	setenv("TZ", "UTC", 1);
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup_teardown(an_ordinary_case_has_two_counts_with_their_people, setup,
	                                    teardown),
	    cmocka_unit_test_setup_teardown(read_from_the_record_it_is_what_was_lived, setup, teardown),
	    cmocka_unit_test(a_count_that_was_taken_back_is_gone),
	    cmocka_unit_test(a_step_that_was_not_done_is_told_from_one_that_was),
	    cmocka_unit_test(a_case_of_yesterday_is_shown_while_it_is_open),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
