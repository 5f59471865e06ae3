/* The six digits that prove a paper, and that nobody finds them by trying. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "run/slip-proof.h"
#include "tests/unit/record/folder.h"

static struct seal *seal_of_a_new_key(void)
{
	char folder[FOLDER_MAX];
	struct seal *s = NULL;
	struct error e;
	folder_make(folder);
	assert_int_equal(seal_open(&s, folder, &e), 0);
	folder_remove(folder);
	return s;
}

static void each_copy_of_each_slip_of_each_station_has_its_own_digits(void **state)
{
	(void)state;
	struct seal *s = seal_of_a_new_key(), *other = seal_of_a_new_key();
	int32_t one = slip_proof(s, "BC", 7, 41, 1);
	assert_int_equal(slip_proof(s, "BC", 7, 41, 1), one);
	int same = (slip_proof(s, "BC", 7, 41, 2) == one) + (slip_proof(s, "BC", 7, 42, 1) == one) +
	           (slip_proof(s, "BC", 8, 41, 1) == one) + (slip_proof(s, "BD", 7, 41, 1) == one) +
	           (slip_proof(other, "BC", 7, 41, 1) == one);
	assert_true(same <= 1); /* two of a million may be alike */
	seal_close(s);
	seal_close(other);
}

/* Chi-square over ten classes, 9 degrees of freedom: above 60 in fewer than one run of 100 million. */
static void the_digits_lie_everywhere_alike(void **state)
{
	(void)state;
	struct seal *s = seal_of_a_new_key();
	double square = 0;
	int classes[10] = {0}, n = 20000;
	for (int i = 1; i <= n; i++) {
		int32_t proof = slip_proof(s, "BC", 0, i, 1);
		assert_in_range(proof, 1, 999999);
		classes[proof / 100000]++;
	}
	for (int i = 0; i < 10; i++)
		square += (classes[i] - n / 10) * (classes[i] - n / 10) / (n / 10.0);
	assert_true(square < 60);
	seal_close(s);
}

static struct moment at(int64_t seconds)
{
	return (struct moment){.boot = 1, .boot_ms = 100000 + seconds * 1000, .wall_ms = seconds * 1000};
}

static void the_fifth_wrong_one_in_a_minute_silences_its_scanner_for_a_minute(void **state)
{
	(void)state;
	struct guesses g = {0};
	for (int i = 0; i < 4; i++)
		assert_int_equal(guesses_note(&g, "hand-1", at(i)), 0);
	assert_int_equal(guesses_note(&g, "hand-2", at(4)), 0);
	assert_int_equal(guesses_silent(&g, "hand-1", at(4)), 0);
	assert_int_equal(guesses_note(&g, "hand-1", at(59)), 1);
	assert_int_equal(guesses_silent(&g, "hand-1", at(59)), 1);
	assert_int_equal(guesses_silent(&g, "hand-2", at(59)), 0);
	assert_int_equal(guesses_words(&g, NULL, at(60), NULL), 1);
	assert_int_equal(guesses_silent(&g, "hand-1", at(118)), 1);
	assert_int_equal(guesses_silent(&g, "hand-1", at(119)), 0);
	assert_int_equal(guesses_words(&g, NULL, at(119), NULL), 0);
	/* Who goes on is silenced anew. */
	for (int i = 0; i < 4; i++)
		assert_int_equal(guesses_note(&g, "hand-1", at(120 + i)), 0);
	assert_int_equal(guesses_note(&g, "hand-1", at(125)), 1);
}

static void a_wrong_one_now_and_then_silences_nobody(void **state)
{
	(void)state;
	struct guesses g = {0};
	for (int i = 0; i < 50; i++)
		assert_int_equal(guesses_note(&g, "hand-1", at(i * 16)), 0);
	struct moment next_boot = {.boot = 2, .boot_ms = 1000, .wall_ms = 0};
	for (int i = 0; i < 4; i++)
		assert_int_equal(guesses_note(&g, "hand-2", at(i)), 0);
	assert_int_equal(guesses_note(&g, "hand-2", next_boot), 0);
}

static void many_scanners_push_each_other_out_and_none_is_kept_silent_by_that(void **state)
{
	(void)state;
	struct guesses g = {0};
	char name[33];
	for (int i = 0; i < 100; i++) {
		snprintf(name, sizeof name, "hand-%d", i);
		assert_int_equal(guesses_note(&g, name, at(i)), 0);
		assert_int_equal(guesses_silent(&g, name, at(i)), 0);
	}
	for (int i = 0; i < 4; i++)
		guesses_note(&g, "hand-99", at(100 + i));
	assert_int_equal(guesses_silent(&g, "hand-99", at(103)), 1);
	snprintf(name, sizeof name, "a new one");
	guesses_note(&g, name, at(104)); /* takes the place of the quietest, which that is not */
	assert_int_equal(guesses_silent(&g, "hand-99", at(104)), 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(each_copy_of_each_slip_of_each_station_has_its_own_digits),
	    cmocka_unit_test(the_digits_lie_everywhere_alike),
	    cmocka_unit_test(the_fifth_wrong_one_in_a_minute_silences_its_scanner_for_a_minute),
	    cmocka_unit_test(a_wrong_one_now_and_then_silences_nobody),
	    cmocka_unit_test(many_scanners_push_each_other_out_and_none_is_kept_silent_by_that),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
