/* A sample that anybody can draw again, and in which nobody is favoured. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "report/sample.h"

static void the_same_seed_draws_the_same(void **state)
{
	(void)state;
	int32_t a[30], b[30];
	sample_draw(7, 1000, 30, a);
	sample_draw(7, 1000, 30, b);
	assert_memory_equal(a, b, sizeof a);
	sample_draw(8, 1000, 30, b);
	assert_memory_not_equal(a, b, sizeof a);
	for (int i = 0; i < 30; i++)
		assert_true(a[i] >= 0 && a[i] < 1000 && (i == 0 || a[i] > a[i - 1]));
}

/* For ever, so that a sheet of years ago can be drawn again. */
static void a_seed_draws_what_it_always_drew(void **state)
{
	(void)state;
	static const int32_t always[] = {43, 44, 54, 72, 95};
	int32_t a[5];
	sample_draw(1, 100, 5, a);
	assert_memory_equal(a, always, sizeof a);
}

static void all_of_them_can_be_drawn(void **state)
{
	(void)state;
	int32_t a[40];
	sample_draw(3, 40, 40, a);
	for (int i = 0; i < 40; i++)
		assert_int_equal(a[i], i);
	sample_draw(3, 1, 1, a);
	assert_int_equal(a[0], 0);
}

/* 5 of 10 in 20,000 draws: each is expected 10,000 times, with a standard deviation of 71. */
static void nobody_is_favoured(void **state)
{
	(void)state;
	int times[10] = {0};
	int32_t a[5];
	for (uint64_t seed = 0; seed < 20000; seed++) {
		sample_draw(seed, 10, 5, a);
		for (int i = 0; i < 5; i++)
			times[a[i]]++;
	}
	for (int i = 0; i < 10; i++)
		if (abs(times[i] - 10000) > 5 * 71)
			fail_msg("%d was drawn %d times", i, times[i]);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(the_same_seed_draws_the_same),
	    cmocka_unit_test(a_seed_draws_what_it_always_drew),
	    cmocka_unit_test(all_of_them_can_be_drawn),
	    cmocka_unit_test(nobody_is_favoured),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
