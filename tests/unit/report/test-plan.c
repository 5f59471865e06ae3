/* Days by week and month, and the theatre list: what is taken, and what refuses the whole of it. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "report/days.h"
#include "report/plan.h"

static int room_1_or_2(void *context, int32_t room)
{
	(void)context;
	return room == 1 || room == 2;
}

static int read(struct plan *p, const char *text, struct error *e)
{
	return plan_read(p, text, strlen(text), room_1_or_2, NULL, e);
}

static void days_are_those_of_the_calendar(void **state)
{
	(void)state;
	assert_int_equal(day_number(19700101), 0);
	assert_int_equal(day_number(20000229), 11016);
	assert_int_equal(day_number(20261127), 20784);
	for (int64_t n = -1000; n < 60000; n += 7) {
		assert_int_equal(day_number(day_of_number(n)), n);
		assert_true(day_exists(day_of_number(n)));
	}
	assert_int_equal(day_of_number(11015), 20000228);
	assert_int_equal(day_of_number(11017), 20000301);
	assert_int_equal(day_week(20261127), 20261123); /* a Friday */
	assert_int_equal(day_week(20261123), 20261123);
	assert_int_equal(day_week(20261129), 20261123);
	assert_int_equal(day_week(20261101), 20261026); /* over the end of summer time, a month and a week */
	assert_int_equal(day_week(19700101), 19691229);
	assert_false(day_exists(20260229));
	assert_true(day_exists(20280229));
	assert_false(day_exists(21000229));
	assert_false(day_exists(20261301));
	assert_false(day_exists(20260400));
}

static void a_list_is_taken_in_order_of_day_room_and_slot(void **state)
{
	(void)state;
	struct plan p;
	struct error e = {0};
	assert_int_equal(read(&p,
	                      "date,room,slot,digit\r\n2026-03-03,1,1,yes\r\n2026-03-02,2,1,no\r\n"
	                      "\"2026-03-02\",1,\"12\",yes\n2026-03-02,1,2,yes",
	                      &e),
	                 0);
	assert_int_equal(p.count, 4);
	assert_int_equal(p.slots[0].day, 20260302);
	assert_int_equal(p.slots[0].slot, 2);
	assert_int_equal(p.slots[1].slot, 12);
	assert_int_equal(p.slots[2].room, 2);
	assert_int_equal(p.slots[2].digit, 0);
	assert_int_equal(p.slots[3].day, 20260303);
	plan_deinit(&p);
	assert_int_equal(read(&p, "date,room,slot,digit\n", &e), 0);
	assert_int_equal(p.count, 0);
}

static void any_fault_refuses_the_whole_list(void **state)
{
	(void)state;
	static const struct {
		const char *text, *says;
	} bad[] = {
	    {"", "it is empty"},
	    {"date,room,slot,digit,patient\n2026-03-02,1,1,yes,X SECRET\n", "a column 'patient'"},
	    {"date,room,slot\n2026-03-02,1,1\n", "column digit is missing"},
	    {"2026-03-02,1,1,yes\n", "no head 'date' in place 1"},
	    {"room,date,slot,digit\n", "no head 'date' in place 1"},
	    {"date,room,slot,digit\n2026-02-30,1,1,yes\n", "line 2: no such day"},
	    {"date,room,slot,digit\n02/03/2026,1,1,yes\n", "line 2: date must be YYYY-MM-DD"},
	    {"date,room,slot,digit\n2026-03-02,9,1,yes\n", "line 2: its room is not in station.ini"},
	    {"date,room,slot,digit\n2026-03-02,1,1,yes\n2026-03-02,1,1,no\n",
	     "line 3: date, room and slot are there"},
	    {"date,room,slot,digit\n2026-03-02,1,0,yes\n", "line 2: slot is a whole number"},
	    {"date,room,slot,digit\n2026-03-02,1,100,yes\n", "line 2: slot is a whole number"},
	    {"date,room,slot,digit\n2026-03-02,1,1,maybe\n", "line 2: digit is yes or no"},
	    {"date,room,slot,digit\n2026-03-02,1,1,\n", "line 2: digit is yes or no"},
	    {"date,room,slot,digit\n2026-03-02,1,1,yes,SECRET\n", "line 2: more fields"},
	    {"date,room,slot,digit\n2026-03-02,1,1\n", "line 2: fewer fields"},
	    {"date,room,slot,digit\n\"2026-03-02,1,1,yes\n", "line 2: a quote that does not end"},
	    {"date,room,slot,digit\n\"2026-03-02\"SECRET,1,1,yes\n", "line 2: text behind a closing quote"},
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct plan p;
		struct error e = {0};
		assert_int_equal(read(&p, bad[i].text, &e), -EINVAL);
		if (!strstr(e.text, bad[i].says))
			fail_msg("'%s' says '%s'", bad[i].says, e.text);
		assert_null(
		    strstr(e.text, "SECRET")); /* the head of a column is told, never what stands in it */
		assert_null(p.slots);
		assert_int_equal(p.count, 0);
	}
}

static void a_later_list_takes_the_place_of_its_rooms_and_days(void **state)
{
	(void)state;
	struct plan p, later;
	struct error e = {0};
	_cleanup_(buf_free) struct buf text = {0};
	assert_int_equal(
	    read(&p,
	         "date,room,slot,digit\n2026-03-01,1,1,yes\n2026-03-02,1,1,yes\n2026-03-03,1,1,yes\n"
	         "2026-03-03,2,1,yes\n2026-03-04,1,1,yes\n2026-03-05,1,1,yes\n",
	         &e),
	    0);
	assert_int_equal(read(&later, "date,room,slot,digit\n2026-03-04,1,2,no\n2026-03-02,1,1,no\n", &e), 0);
	assert_int_equal(plan_lay_over(&p, &later, &e), 0);
	assert_int_equal(plan_write(&p, &text), 0);
	assert_string_equal(text.data, "date,room,slot,digit\n2026-03-01,1,1,yes\n2026-03-02,1,1,no\n"
	                               "2026-03-03,2,1,yes\n2026-03-04,1,2,no\n2026-03-05,1,1,yes\n");
	plan_deinit(&later);
	assert_int_equal(read(&later, "date,room,slot,digit\n", &e), 0);
	assert_int_equal(plan_lay_over(&p, &later, &e), 0);
	assert_int_equal(p.count, 5);
	plan_deinit(&later);
	plan_deinit(&p);
	assert_int_equal(read(&p, text.data, &e), 0); /* what is written is read again */
	assert_int_equal(p.count, 5);
	plan_deinit(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(days_are_those_of_the_calendar),
	    cmocka_unit_test(a_list_is_taken_in_order_of_day_room_and_slot),
	    cmocka_unit_test(any_fault_refuses_the_whole_list),
	    cmocka_unit_test(a_later_list_takes_the_place_of_its_rooms_and_days),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
