/* Cards and digit cards: what a hand that reaches for one must not take for another. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "drawn.h"

static const struct mark *text_that_begins(const struct trace *t, const char *words)
{
	for (size_t i = 0; i < t->count; i++)
		if (t->marks[i].kind == MARK_TEXT && strncmp(t->marks[i].text, words, strlen(words)) == 0)
			return &t->marks[i];
	fail_msg("'%s' is not drawn", words);
	return NULL;
}

static void the_names_of_a_page_of_digits_have_one_size(void **state)
{
	(void)state;
	static const char *const names[][5] = {
	    {"left thumb", "left index finger", "left middle finger", "left ring finger",
	     "left little finger"},
	    {"left great (big) toe", "left second toe", "left third toe", "left fourth toe",
	     "left little toe"},
	    {"other digit 1", "other digit 2", "other digit 3", "other digit 4", "other digit 4"}};
	struct trace t = drawn_sample("digit-cards");
	for (size_t page = 0; page < sizeof names / sizeof *names; page++) {
		const double pt = text_that_begins(&t, names[page][0])->size_pt;
		assert_true(pt >= 12.5);
		for (int i = 1; i < 5; i++)
			assert_true(fabs(text_that_begins(&t, names[page][i])->size_pt - pt) < 0.001);
	}
	trace_deinit(&t);
}

/* From which side a hand is drawn decides which is its left: it is read from as far as the title. */
static void each_page_of_digits_says_from_which_side_in_large_letters(void **state)
{
	(void)state;
	static const char *const says[] = {"the back of the hand", "the foot from above",
	                                   "none of the twenty"};
	struct trace t = drawn_sample("digit-cards");
	for (size_t i = 0; i < sizeof says / sizeof *says; i++)
		assert_true(text_that_begins(&t, says[i])->size_pt >= 20);
	assert_true(text_that_begins(&t, "LEFT HAND")->size_pt >= 70);
	trace_deinit(&t);
}

/* Whoever reaches for the answer that stands last in a column finds nothing below it that ends the case. */
static void the_card_that_ends_a_case_unresolved_stands_under_no_answer_of_the_search(void **state)
{
	(void)state;
	struct trace t = drawn_sample("cards");
	const struct mark *ends = text_that_begins(&t, "END UNRESOLVED"),
	                  *found = text_that_begins(&t, "FOUND");
	assert_int_equal(ends->page, found->page);
	assert_true(ends->y_mm > found->y_mm);
	assert_true(ends->x_mm > found->x_mm + found->width_mm);
	assert_true(text_that_begins(&t, "The board leads through")->x_mm < ends->x_mm);
	trace_deinit(&t);
}

/* One that stood before the square codes ended the check of every scanner that was swept over the sheet. */
static void what_ends_the_scanner_check_stands_once_and_last(void **state)
{
	(void)state;
	json_t *d = sample("scanner-check");
	struct trace t = drawn_sample("scanner-check");
	const char *end = json_text(d, "end");
	double lowest = 0, at = 0;
	int ends = 0;
	for (size_t i = 0; i < t.count; i++) {
		const struct mark *m = &t.marks[i];
		if (m->kind != MARK_CODE)
			continue;
		lowest = fmax(lowest, m->y_mm);
		if (strcmp(m->text, end) == 0) {
			ends++;
			at = m->y_mm;
		}
	}
	assert_int_equal(ends, 1);
	assert_true(fabs(at - lowest) < 0.001);
	trace_deinit(&t);
	json_decref(d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(the_names_of_a_page_of_digits_have_one_size),
	    cmocka_unit_test(each_page_of_digits_says_from_which_side_in_large_letters),
	    cmocka_unit_test(the_card_that_ends_a_case_unresolved_stands_under_no_answer_of_the_search),
	    cmocka_unit_test(what_ends_the_scanner_check_stands_once_and_last),
	};
	return cmocka_run_group_tests(tests, drawn_begin, drawn_end);
}
