/* A reply as sentences: what it lists, what is one too many, what does not fit. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "decide/outcome.h"

static struct reply r;

static void what_is_listed_stands_in_the_sentence_before_it(void **state)
{
	char said[SAID_MAX];
	(void)state;
	reply_say(&r, VERDICT_REFUSED, SAY(R_LEFT_AS_IT_IS));
	reply_say(&r, VERDICT_QUESTION, SAY(R_CASE, .case_no = 7));
	reply_add(&r, SAY(R_OPEN_ON));
	reply_list(&r, SAY(SCAN_OF_DIGIT, .digit = 1));
	reply_list(&r, SAY(SCAN_OF_DIGIT, .digit = 2));
	reply_add(&r, SAY(R_OPEN_ITEMS));
	reply_list(&r, SAY(R_TIMES, .n = 2, .item = "forceps"));
	assert_string_equal(r.said, "Case 7. A TOURNIQUET IS ON: right thumb and right index finger. "
	                            "NOT ACCOUNTED FOR: 2 × forceps.");
	assert_int_equal(r.verdict, VERDICT_QUESTION);
	reply_words_in(&r, NULL, said);
	assert_string_equal(said, r.said);
}

static void a_thing_too_many_is_counted_and_a_sentence_too_many_left(void **state)
{
	(void)state;
	reply_say(&r, VERDICT_ACCEPTED, SAY(R_OPEN_ON));
	for (int i = 1; i <= 10; i++)
		reply_list(&r, SAY(SCAN_OF_DIGIT, .digit = i));
	assert_int_equal(r.n_parts, 1 + SAID_LISTED_MAX);
	assert_non_null(strstr(r.said, " and 5 further."));
	for (int i = 0; i < REPLY_PARTS; i++)
		reply_add(&r, SAY(R_NEXT));
	assert_int_equal(r.n_parts, REPLY_PARTS);
	reply_list(&r, SAY(SCAN_OF_DIGIT, .digit = 1));
	assert_int_equal(r.n_parts, REPLY_PARTS);
}

static void what_does_not_fit_is_seen_to_be_cut(void **state)
{
	(void)state;
	reply_say(&r, VERDICT_ACCEPTED, SAY(R_CASE, .case_no = 7));
	for (int i = 0; i < 8; i++)
		reply_add(&r, SAY(R_NO_CODE_IN, .item = "an item whose name is long as well"));
	assert_in_range(strlen(r.said), SAID_MAX - 8, SAID_MAX - 1);
	assert_string_equal(r.said + strlen(r.said) - 3, "…");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_is_listed_stands_in_the_sentence_before_it),
	    cmocka_unit_test(a_thing_too_many_is_counted_and_a_sentence_too_many_left),
	    cmocka_unit_test(what_does_not_fit_is_seen_to_be_cut),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
