/* Cases that are suspended: a tourniquet that is on in one is told all the time and answered by nobody else's scan; and
 * records of earlier versions, in which a room has two of them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "count/unanswered.h"
#include "decide/decide.h"

#define MIN 60000LL
#define TEN 1795600800000LL /* 2026-11-25, ten o'clock in the morning, UTC */
#define LEFT_RING 9
#define LEFT_THUMB 6

static struct station st;
static struct moment now;
static struct outcome out;
static struct unanswered list[UNANSWERED_MAX];
static int64_t seq;

static void apply(struct event e)
{
	e.seq = ++seq;
	assert_int_equal(station_apply(&st, &e), 0);
}

static void take(struct input in)
{
	in.at = now;
	in.room = in.card_room = 3;
	snprintf(in.scanner, sizeof in.scanner, "hand");
	decide(&st, &in, &out);
	for (int i = 0; i < out.count; i++)
		apply(out.events[i]);
	now.boot_ms += 1000;
	now.wall_ms += 1000;
}

static void card(int number)
{
	take((struct input){.act = ACT_CARD, .card = number});
}

static void digit(int number)
{
	take((struct input){.act = ACT_DIGIT, .digit = number});
}

static void pass(int64_t minutes)
{
	now.boot_ms += minutes * MIN;
	now.wall_ms += minutes * MIN;
	for (int due = 1; due;) {
		take((struct input){.act = ACT_TICK});
		due = 0;
		for (int i = 0; i < out.count; i++)
			due |= out.events[i].kind == EV_REMINDED;
	}
}

static const struct sheet *sheet_of(int32_t case_no)
{
	int i = station_sheet_of_case(&st, case_no);
	assert_true(i >= 0);
	return &st.sheets[i];
}

static enum digit_state state_in(int32_t case_no, int number)
{
	return (enum digit_state)sheet_digit_const(sheet_of(case_no), number)->state;
}

static void on_in_new_case(int number)
{
	card(CARD_NEW_CASE);
	digit(number);
	card(CARD_YES);
}

static const char *first_said(void)
{
	static char text[200];
	say_sentence(&list[0].say, text, sizeof text);
	return text;
}

static int told(void)
{
	return station_unanswered(&st, now, list);
}

static int setup(void **state)
{
	(void)state;
	memset(&st, 0, sizeof st);
	policy_default(&st.policy);
	snprintf(st.site, sizeof st.site, "BC");
	st.rooms[st.n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	st.rooms[st.n_rooms++] = (struct room){.number = 3, .name = "Bay 3"};
	now = (struct moment){.boot = 1, .boot_ms = 1000, .wall_ms = TEN};
	apply((struct event){.kind = EV_STARTED, .at = now, .n = 1});
	on_in_new_case(LEFT_RING);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	station_deinit(&st);
	return 0;
}

/* --- a tourniquet that is on ---------------------------------------------------------------------- */

static void what_is_on_in_a_suspended_case_is_told_in_its_room_at_once(void **state)
{
	(void)state;
	assert_int_equal(told(), 0);
	card(CARD_SUSPEND);
	pass(2);
	assert_int_equal(told(), 1);
	assert_int_equal(list[0].room, 3);
	assert_int_equal(list[0].case_no, 1);
	assert_int_equal(list[0].reminded, 0);
	assert_int_equal(list[0].nobody, 0);
	assert_string_equal(first_said(), "Bay 3: left ring finger 2 min, TOURNIQUET ON, case 1, suspended");
	card(CARD_NEW_CASE);
	assert_int_equal(told(), 1);
	card(CARD_SUSPEND);
	assert_int_equal(told(), 0); /* it goes on, and its own sheet shows it */
}

static void no_scan_for_another_patient_answers_its_reminder(void **state)
{
	(void)state;
	card(CARD_SUSPEND);
	pass(20);
	assert_int_equal(told(), 1);
	assert_int_equal(list[0].reminded, 1);
	assert_int_equal(list[0].nobody, 0);
	card(CARD_NEW_CASE);
	pass(4);
	card(CARD_NEXT);
	assert_int_equal(told(), 1);
	assert_int_equal(list[0].nobody, 0);
	pass(1);
	card(CARD_NEXT);
	assert_int_equal(told(), 1);
	assert_int_equal(list[0].nobody, 1);
	card(CARD_SUSPEND);
	assert_int_equal(told(), 0);
	assert_int_equal(sheet_digit_const(sheet_of(1), LEFT_RING)->reminded, 1); /* it waits for a badge */
}

static void a_running_case_does_not_wait_for_the_suspended_one(void **state)
{
	(void)state;
	card(CARD_SUSPEND);
	pass(20);
	on_in_new_case(LEFT_THUMB);
	pass(20);
	pass(6);
	assert_int_equal(told(), 2);
	assert_int_equal(list[0].nobody + list[1].nobody, 2);
	card(CARD_NEXT);
	assert_int_equal(told(), 1);
	assert_int_equal(list[0].case_no, 1);
}

/* --- two of them in one room ---------------------------------------------------------------------- */

static void suspend_changes_over_and_no_third_case_is_opened(void **state)
{
	(void)state;
	card(CARD_SUSPEND);
	card(CARD_NEW_CASE);
	card(CARD_NEW_CASE);
	card(CARD_NEXT);
	card(CARD_NEW_CASE);
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	assert_non_null(strstr(out.reply.said, "case 1 is suspended there"));
	take((struct input){.act = ACT_CASE_LABEL, .number = 41});
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	take((struct input){.act = ACT_PAPER_SHEET, .number = 2});
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	card(CARD_SUSPEND);
	assert_int_equal(sheet_of(1)->suspended, 0);
	assert_int_equal(sheet_of(2)->suspended, 1);
	card(CARD_UNDO);
	assert_int_equal(sheet_of(1)->suspended, 0);
	card(CARD_NEXT);
	card(CARD_SUSPEND);
	assert_int_equal(sheet_of(1)->suspended, 1);
	assert_int_equal(sheet_of(2)->suspended, 0);
}

/* As earlier versions left it: case 2 was suspended beside case 1. */
static void two_suspended(int second)
{
	card(CARD_SUSPEND);
	on_in_new_case(second);
	apply((struct event){
	    .kind = EV_SUSPENDED, .at = now, .room = 3, .case_no = 2, .flags = EVENT_FIRST, .answer = 0});
}

static void what_fits_two_suspended_cases_is_refused(void **state)
{
	(void)state;
	two_suspended(LEFT_RING);
	digit(LEFT_RING);
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	assert_non_null(strstr(out.reply.said, "Case 1 and case 2 are both suspended in Bay 3"));
	card(CARD_OFF);
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	assert_int_equal(state_in(1, LEFT_RING), DIGIT_ON);
	assert_int_equal(state_in(2, LEFT_RING), DIGIT_ON);
	assert_int_equal(station_sheet_of_room(&st, 3), -1);
}

static void what_fits_one_of_two_suspended_cases_goes_there(void **state)
{
	(void)state;
	two_suspended(LEFT_THUMB);
	digit(LEFT_THUMB);
	assert_int_equal(sheet_of(2)->suspended, 0);
	card(CARD_OFF);
	assert_int_equal(state_in(2, LEFT_THUMB), DIGIT_OFF);
	assert_int_equal(state_in(1, LEFT_RING), DIGIT_ON);
}

static void each_of_three_is_reached_by_suspend(void **state)
{
	int was_open[4] = {0};
	(void)state;
	two_suspended(LEFT_THUMB);
	card(CARD_NEW_CASE);
	assert_int_equal(sheet_of(3)->suspended, 0);
	for (int i = 0; i < 3; i++) {
		card(CARD_NEXT);
		card(CARD_SUSPEND);
		int index = station_sheet_of_room(&st, 3);
		assert_true(index >= 0);
		was_open[st.sheets[index].case_no] = 1;
	}
	assert_int_equal(was_open[1] + was_open[2] + was_open[3], 3);
}

/* What next names is what SUSPEND goes on with. */
static void suspend_goes_on_with_the_case_that_next_names(void **state)
{
	(void)state;
	two_suspended(LEFT_THUMB);
	card(CARD_NEXT);
	assert_non_null(strstr(out.reply.next.words, "Case 1 is suspended"));
	card(CARD_SUSPEND);
	assert_int_equal(sheet_of(1)->suspended, 0);
	assert_int_equal(sheet_of(2)->suspended, 1);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
	    TEST(what_is_on_in_a_suspended_case_is_told_in_its_room_at_once),
	    TEST(no_scan_for_another_patient_answers_its_reminder),
	    TEST(a_running_case_does_not_wait_for_the_suspended_one),
	    TEST(suspend_changes_over_and_no_third_case_is_opened),
	    TEST(what_fits_two_suspended_cases_is_refused),
	    TEST(what_fits_one_of_two_suspended_cases_goes_there),
	    TEST(each_of_three_is_reached_by_suspend),
	    TEST(suspend_goes_on_with_the_case_that_next_names),
	};
	setenv("TZ", "UTC", 1);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
