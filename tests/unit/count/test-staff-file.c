/* A list of everybody who has a badge: who is new, who has left, who comes back. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/staff-file.h"

#define HEAD "number,name,kind,registered\n"

static struct staff staff;
static struct error e;

static int setup(void **state)
{
	static const struct person people[] = {{1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},
	                                       {2, "CIRC-2", STAFF_PRACTITIONER, 0, 0},
	                                       {3, "SURG-3", STAFF_SURGEON, 1, 0},
	                                       {7, "OLD-7", STAFF_CHARGE, 0, 1}};
	(void)state;
	staff_deinit(&staff);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		assert_int_equal(staff_set(&staff, &people[i]), 0);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	staff_deinit(&staff);
	return 0;
}

static int begin(struct staff_import *im, const char *csv)
{
	e = (struct error){0};
	return staff_import_init(im, &staff, csv, strlen(csv), &e);
}

static void who_is_not_in_the_list_is_withdrawn(void **state)
{
	struct staff_import im;
	(void)state;
	if (begin(&im, HEAD "1,SCRUB-1,practitioner,yes\n3,SURG-30,surgeon,yes\n,NEW-A,charge,\n"
	                    "7,OLD-7,nurse-in-charge,no\n,NEW-B,practitioner,yes\n") < 0)
		fail_msg("%s", e.text);
	static const struct {
		enum person_change_kind kind;
		int32_t number;
	} facts[] = {{PERSON_STAYS, 1},     {PERSON_CHANGED, 3}, {PERSON_ADDED, 8},
	             {PERSON_CAME_BACK, 7}, {PERSON_ADDED, 9},   {PERSON_WITHDRAWN, 2}};
	assert_int_equal(im.n_changes, sizeof facts / sizeof *facts);
	for (size_t i = 0; i < im.n_changes; i++) {
		assert_int_equal(im.changes[i].kind, facts[i].kind);
		assert_int_equal(im.changes[i].is.number, facts[i].number);
	}
	assert_int_equal(im.n_events, 5);
	assert_int_equal(im.events[4].kind, EV_STAFF_WITHDRAWN);
	assert_int_equal(im.events[4].person, 2);
	assert_string_equal(im.events[0].staff.name, "SURG-30");
	assert_int_equal(im.events[3].staff.registered, 1);
	staff_import_deinit(&im);
}

static void behind_the_highest_number_there_are_those_that_nobody_had(void **state)
{
	struct staff_import im;
	(void)state;
	assert_int_equal(
	    begin(&im, HEAD "999999,A,charge,yes\n,B,charge,yes\n5,C,charge,yes\n,D,charge,yes\n"), 0);
	assert_int_equal(im.changes[1].is.number, 4);
	assert_int_equal(im.changes[3].is.number, 6);
	staff_import_deinit(&im);
	assert_int_equal(staff_new_number(&staff), 8);
	assert_int_equal(staff_set(&staff, &(struct person){999999, "LAST", STAFF_SURGEON, 1, 1}), 0);
	assert_int_equal(staff_new_number(&staff), 4);
	for (int32_t n = 4; n < 7; n++)
		assert_int_equal(staff_set(&staff, &(struct person){n, "X", STAFF_SURGEON, 1, 0}), 0);
	assert_int_equal(staff_new_number(&staff), 8);
}

static void what_is_refused_is_refused_at_its_place(void **state)
{
	static const struct {
		const char *csv, *words;
	} facts[] = {
	    {HEAD, "everybody would be withdrawn"},
	    {"name,kind\nA,charge\n", "the column 'number' is missing"},
	    {HEAD "1,SCRUB-1,nurse,yes\n", "line 2, column C (kind) is 'nurse'"},
	    {HEAD "1x,SCRUB-1,charge,yes\n", "line 2, column A (number) is '1x'"},
	    {HEAD "0,SCRUB-1,charge,yes\n", "line 2, column A (number) is '0'"},
	    {HEAD "1000000,SCRUB-1,charge,yes\n", "1 to 999999"},
	    {HEAD "1,SCRUB-1,charge,ja\n", "line 2, column D (registered) is 'ja'"},
	    {HEAD "1,,charge,yes\n", "line 2, column B (name) is empty"},
	    {HEAD "1,a name that is longer than thirty-two bytes,charge,yes\n", "1 to 32 bytes"},
	    {HEAD "1,A,charge,yes\n1,B,charge,yes\n",
	     "line 3, column A (number): badge 000001 stands in line 2 as well, of 'A'"},
	    {HEAD ",CIRC-2,practitioner,yes\n", "'CIRC-2' has badge 000002 already"},
	};
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		struct staff_import im;
		if (begin(&im, facts[i].csv) >= 0 || !strstr(e.text, facts[i].words))
			fail_msg("%s: %s", facts[i].csv, e.text);
	}
}

static void the_list_that_is_written_changes_nothing(void **state)
{
	_cleanup_(buf_free) struct buf text = {0};
	struct staff_import im;
	(void)state;
	assert_int_equal(staff_write_csv(&staff, &text), 0);
	assert_null(strstr(text.data, "OLD-7"));
	assert_int_equal(begin(&im, text.data), 0);
	assert_int_equal(im.n_events, 0);
	assert_int_equal(staff_import_count(&im, PERSON_STAYS), 3);
	staff_import_deinit(&im);
}

int main(void)
{
#define STAFF_TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
	    STAFF_TEST(who_is_not_in_the_list_is_withdrawn),
	    STAFF_TEST(behind_the_highest_number_there_are_those_that_nobody_had),
	    STAFF_TEST(what_is_refused_is_refused_at_its_place),
	    STAFF_TEST(the_list_that_is_written_changes_nothing),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
