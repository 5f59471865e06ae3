/* What a case's events are made into for a report: one row. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/station.h"
#include "tell/outline.h"

#define SECOND 1000
#define TEN INT64_C(1795600800000) /* 2026-11-25, ten o'clock UTC */

static struct event events[200];
static int n_events;
static struct case_row row;

static void happened(int seconds, struct event e)
{
	e.seq = n_events + 1;
	e.case_no = e.kind == EV_STARTED ? 0 : 7;
	e.room = 2;
	int boot = e.at.boot ? e.at.boot : 1;
	e.at = (struct moment){
	    .boot = boot, .boot_ms = (int64_t)seconds * SECOND, .wall_ms = TEN + (int64_t)seconds * SECOND};
	events[n_events++] = e;
}

static struct event item_in(int item, enum role role, enum identity_kind kind)
{
	struct event e = {.kind = EV_ITEM_IN, .item = (uint8_t)item, .n = 1, .flags = EVENT_FIRST};
	e.thing = (struct thing){.line = "L",
	                         .lot = "T1",
	                         .name = "a thing",
	                         .role = (uint8_t)role,
	                         .identity_kind = (uint8_t)kind};
	if (kind)
		snprintf(e.thing.identity, sizeof e.thing.identity, "thing-%d", item);
	return e;
}

static void begin(void)
{
	n_events = 0;
	happened(0, (struct event){.kind = EV_CASE_OPENED, .flags = EVENT_FIRST});
	happened(
	    10,
	    (struct event){
	        .kind = EV_JOINED, .person = 11, .what = PLACE_FIELD, .answer = -11, .flags = EVENT_FIRST});
	happened(20, (struct event){.kind = EV_JOINED,
	                            .person = 12,
	                            .what = PLACE_CIRCULATING,
	                            .answer = -12,
	                            .flags = EVENT_FIRST});
	happened(30, item_in(1, ROLE_TOURNIQUET, IDENTITY_PACK));
	happened(37, item_in(2, ROLE_FORCEPS, IDENTITY_MARK));
	happened(50, (struct event){.kind = EV_COUNT_AGREED,
	                            .what = COUNT_INITIAL,
	                            .person = 11,
	                            .other = 12,
	                            .n = 12,
	                            .flags = EVENT_FIRST,
	                            .answer = -12});
}

static void on_and_off(int digit, int on_s, int off_s)
{
	happened(on_s, (struct event){.kind = EV_DIGIT_ON, .digit = (uint8_t)digit, .flags = EVENT_FIRST});
	happened(on_s, (struct event){.kind = EV_ITEM_ON, .digit = (uint8_t)digit, .item = 1});
	if (!off_s)
		return;
	happened(off_s, (struct event){.kind = EV_DIGIT_OFF, .digit = (uint8_t)digit, .flags = EVENT_FIRST});
	happened(off_s, (struct event){.kind = EV_ITEM_OFF, .digit = (uint8_t)digit, .item = 1});
}

static void final_count(int at_s, int apart_s)
{
	happened(at_s, (struct event){.kind = EV_COUNT_STARTED, .what = COUNT_FINAL, .flags = EVENT_FIRST});
	happened(at_s + apart_s, (struct event){.kind = EV_ITEM_SHOWN,
	                                        .item = 1,
	                                        .n = 1,
	                                        .what = EVIDENCE_SHOWN,
	                                        .other = CONDITION_INTACT,
	                                        .flags = EVENT_FIRST});
	happened(at_s + 3 * apart_s,
	         (struct event){
	             .kind = EV_ITEM_SHOWN, .item = 2, .n = 1, .what = EVIDENCE_MARK, .flags = EVENT_FIRST});
	happened(at_s + 6 * apart_s, (struct event){.kind = EV_COUNT_AGREED,
	                                            .what = COUNT_FINAL,
	                                            .person = 11,
	                                            .other = 12,
	                                            .n = 12,
	                                            .flags = EVENT_FIRST,
	                                            .answer = -12});
}

static void end(int at_s)
{
	happened(at_s, (struct event){.kind = EV_CASE_ENDED, .what = END_RECONCILED, .answer = -13});
	happened(at_s,
	         (struct event){.kind = EV_SLIP_QUEUED, .n = 4, .what = SLIP_RECONCILIATION, .other = 1});
}

static void make(int first_reminder_min)
{
	struct outline *o = outline_new();
	struct moment now = {.boot = 1, .boot_ms = 7200 * SECOND, .wall_ms = TEN + 7200 * SECOND};
	assert_non_null(o);
	assert_int_equal(outline_make(o, events, n_events, now, first_reminder_min, &row), 0);
	struct case_row first = row;
	assert_int_equal(outline_make(o, events, n_events, now, first_reminder_min, &row), 0);
	assert_memory_equal(&first, &row, sizeof row); /* nothing of a case stays for the next */
	outline_free(o);
}

static void an_ordinary_case_is_one_row(void **state)
{
	(void)state;
	begin();
	on_and_off(2, 60, 60 + 25 * 60);
	final_count(2000, 10);
	happened(2100,
	         (struct event){.kind = EV_DIGIT_SEEN_BARE, .digit = 2, .person = 11, .flags = EVENT_FIRST});
	end(2200);
	happened(2300, (struct event){.kind = EV_SLIP_STATE, .n = 4, .what = SLIP_SEEN, .other = 1});
	make(20);
	assert_int_equal(row.case_no, 7);
	assert_int_equal(row.room, 2);
	assert_int_equal(row.day, 20261125);
	assert_int_equal(row.end, CASE_RECONCILED);
	assert_int_equal(row.marks, 0);
	assert_int_equal(row.n_digits, 1);
	assert_int_equal(row.digits[0].seconds, 1500);
	assert_int_equal(row.digits[0].part, PART_FINGER);
	assert_int_equal(row.digits[0].over, 1);
	assert_int_equal(row.digits[0].past, 1);
	assert_int_equal(row.items, 2);
	assert_int_equal(row.by_shown, 1);
	assert_int_equal(row.by_mark, 1);
	assert_int_equal(row.packs_opened, 1);
	assert_int_equal(row.n_things, 2);
	assert_int_equal(row.lines[1], case_thing_mark("L"));
	assert_int_equal(row.lots[0], case_thing_mark("T1"));
	assert_int_not_equal(row.lots[0], case_thing_mark("T2"));
	assert_int_equal(row.slips, 1);
	assert_int_equal(row.slips_seen, 1);
	assert_int_equal(row.people[0], 11);
	assert_int_equal(row.people[1], 12);
	assert_int_equal(row.people[2], 0);
	assert_int_equal(
	    row.fast_answers + row.fast_looks + row.close_badges + row.keyed_bursts + row.even_scans, 0);
}

/* What stood in the policy of that day decides, and 0 is that none was set. */
static void the_reminder_of_its_day_says_what_is_past_it(void **state)
{
	(void)state;
	begin();
	on_and_off(6, 60, 60 + 25 * 60);
	make(26);
	assert_int_equal(row.digits[0].past, 0);
	assert_int_equal(row.digits[0].part, PART_THUMB);
	make(25);
	assert_int_equal(row.digits[0].past, 1);
	make(0);
	assert_int_equal(row.digits[0].past, 0);
}

static void what_is_still_on_is_at_least_so_long(void **state)
{
	(void)state;
	begin();
	on_and_off(13, 60, 0);
	make(20);
	assert_int_equal(row.end, CASE_OPEN);
	assert_int_equal(row.digits[0].seconds, 7200 - 60);
	assert_int_equal(row.digits[0].over, 0);
	assert_int_equal(row.digits[0].on, 1);
	assert_int_equal(row.digits[0].part, PART_TOE);
}

static void a_power_cut_leaves_at_least_so_long(void **state)
{
	(void)state;
	begin();
	on_and_off(2, 60, 0);
	happened(5, (struct event){.kind = EV_STARTED, .n = 2, .at.boot = 2});
	happened(65, (struct event){.kind = EV_DIGIT_OFF, .digit = 2, .flags = EVENT_FIRST, .at.boot = 2});
	make(20);
	assert_int_equal(row.digits[0].over, 0);
	assert_int_equal(row.digits[0].on, 0);
	assert_true(row.marks & CASE_POWER_CUT);
}

/* Ten o'clock is when somebody entered it, and no minutes of a finger. */
static void the_times_of_a_paper_sheet_are_no_measure(void **state)
{
	(void)state;
	begin();
	on_and_off(2, 100, 1900);
	end(2000);
	make(20);
	assert_false(row.marks & CASE_CLOCK);
	snprintf(events[0].text, sizeof events[0].text, "paper-3");
	make(20);
	assert_true(row.marks & CASE_CLOCK);
}

/* Its minutes are right, and its times of day are no measure of anything. */
static void a_wall_clock_that_was_turned_is_marked(void **state)
{
	(void)state;
	for (int turned = -1; turned <= 1; turned++) {
		begin();
		on_and_off(2, 100, 1900);
		for (int i = n_events - 2; i < n_events; i++)
			events[i].at.wall_ms += INT64_C(120000) * turned;
		end(2000);
		events[n_events - 1].at.wall_ms += INT64_C(120000) * turned;
		make(20);
		assert_int_equal(row.marks & CASE_CLOCK, turned ? CASE_CLOCK : 0);
	}
	begin();
	end(2000);
	events[n_events - 1].flags = EVENT_FIRST | EVENT_LATE;
	events[n_events - 1].at.wall_ms += 120000;
	make(20);
	assert_false(row.marks & CASE_CLOCK);
}

static void what_was_taken_back_is_not_told(void **state)
{
	(void)state;
	begin();
	happened(60, (struct event){
	                 .kind = EV_LEFT, .person = 11, .what = PLACE_FIELD, .n = 1, .flags = EVENT_FIRST});
	make(20);
	assert_true(row.marks & CASE_OVERRIDDEN);
	happened(70, (struct event){.kind = EV_UNDONE, .ref = n_events});
	make(20);
	assert_false(row.marks & CASE_OVERRIDDEN);
	assert_int_equal(row.corrected, 1);
}

static void a_discrepancy_says_when_in_the_search_it_was_found(void **state)
{
	(void)state;
	begin();
	happened(100, (struct event){.kind = EV_COUNT_STARTED, .what = COUNT_FINAL, .flags = EVENT_FIRST});
	happened(110, (struct event){.kind = EV_ITEM_NOT_SHOWN, .item = 2, .n = 1, .flags = EVENT_FIRST});
	happened(120, (struct event){.kind = EV_DISCREPANCY, .n = 1});
	happened(130, (struct event){.kind = EV_SEARCH_STEP, .n = 1, .what = 1, .flags = EVENT_FIRST});
	happened(140, (struct event){.kind = EV_SEARCH_STEP, .n = 2, .what = 2, .flags = EVENT_FIRST});
	happened(190, (struct event){.kind = EV_ITEM_SHOWN,
	                             .item = 2,
	                             .n = 1,
	                             .what = EVIDENCE_SHOWN,
	                             .flags = EVENT_FIRST | EVENT_KEYED});
	make(20);
	assert_true(row.marks & CASE_DISCREPANCY);
	assert_false(row.marks & CASE_CLOSED);
	happened(190, (struct event){.kind = EV_DISCREPANCY, .n = 0});
	make(20);
	assert_true(row.marks & CASE_CLOSED);
	assert_int_equal(row.discrepancies, 1);
	assert_int_equal(row.steps_done, 1);
	assert_int_equal(row.steps_not_done, 1);
	assert_int_equal(row.n_found, 1);
	assert_int_equal(row.found_step[0], 3);
	assert_int_equal(row.typed, 1); /* how it was answered, whatever the evidence is called */
	assert_int_equal(row.by_shown, 0);
}

static void debts_and_the_incident_number_are_apart(void **state)
{
	(void)state;
	begin();
	happened(60, (struct event){.kind = EV_OWED, .what = DEBT_TEAM});
	make(20);
	assert_int_equal(row.marks, CASE_OWED);
	happened(70, (struct event){.kind = EV_OWED, .what = DEBT_REASON, .item = 1});
	happened(80, (struct event){.kind = EV_OWED, .what = DEBT_INCIDENT});
	make(20);
	assert_int_equal(row.marks, CASE_OWED | CASE_OVERRIDDEN | CASE_NUMBER_OWED);
	happened(90, (struct event){.kind = EV_PAID, .what = DEBT_INCIDENT});
	make(20);
	assert_int_equal(row.marks, CASE_OWED | CASE_OVERRIDDEN);
}

static void hurried_hands_leave_signs(void **state)
{
	(void)state;
	begin();
	happened(
	    51,
	    (struct event){
	        .kind = EV_JOINED, .person = 13, .what = PLACE_SURGEON, .answer = -13, .flags = EVENT_FIRST});
	on_and_off(2, 60, 600);
	final_count(1000, 0);
	happened(1004,
	         (struct event){.kind = EV_DIGIT_SEEN_BARE, .digit = 2, .person = 11, .flags = EVENT_FIRST});
	make(20);
	assert_int_equal(row.close_badges, 1);
	assert_int_equal(row.fast_answers, 1); /* of what was shown; a mark can be read as fast */
	assert_int_equal(row.fast_looks, 1);
	assert_int_equal(row.even_scans, 0);
	assert_int_equal(row.keyed_bursts, 0);
	for (int i = 0; i < 5; i++)
		happened(1100 + 2 * i,
		         (struct event){.kind = EV_REFUSED, .flags = EVENT_FIRST | EVENT_KEYED});
	make(20);
	assert_int_equal(row.keyed_bursts, 1);
	assert_int_equal(row.even_scans, 1);
	assert_int_equal(row.keyed, 5);
	for (int i = 0; i < 5; i++)
		happened(1200 + i, (struct event){.kind = EV_REFUSED, .flags = EVENT_FIRST | EVENT_LATE});
	make(20);
	assert_int_equal(row.even_scans, 1); /* what is entered late says nothing of hands */
	assert_int_equal(row.late, 5);
}

static void after_the_end_things_are_still_told(void **state)
{
	(void)state;
	begin();
	end(100);
	happened(200, (struct event){.kind = EV_FOUND_AFTER});
	happened(300, (struct event){.kind = EV_CLOCK_WRONG, .n = 1});
	make(20);
	assert_int_equal(row.marks, CASE_FOUND_AFTER | CASE_CLOCK);
	assert_int_equal(row.slips_seen, 0);
	assert_int_equal(row.ended_ms, TEN + 100 * SECOND);
}

static void what_cannot_be_followed_is_marked(void **state)
{
	(void)state;
	begin();
	happened(60, (struct event){.kind = EV_ITEM_ON, .item = 9, .digit = 2});
	make(20);
	assert_true(row.marks & CASE_UNFOLLOWED);
}

static void packs_that_go_back_or_aside_are_counted_so(void **state)
{
	(void)state;
	begin();
	happened(60, (struct event){.kind = EV_ITEM_RETURNED, .item = 1, .flags = EVENT_FIRST});
	happened(70, (struct event){.kind = EV_ITEM_ISOLATED, .item = 2, .flags = EVENT_FIRST});
	happened(80, (struct event){.kind = EV_PATIENT_LEFT, .flags = EVENT_FIRST});
	make(20);
	assert_int_equal(row.returned, 1);
	assert_int_equal(row.packs_returned, 1);
	assert_int_equal(row.isolated, 1);
	assert_true(row.marks & CASE_PATIENT_LEFT);
}

/* A row has its places; what is beyond is counted, and nobody is in it twice. */
static void what_a_row_has_no_place_for_is_left_out_and_counted(void **state)
{
	(void)state;
	begin();
	for (int i = 0; i < 2 * CASE_PEOPLE; i++)
		happened(60, (struct event){.kind = EV_JOINED, .person = 12 + i / 2, .what = PLACE_SURGEON});
	for (int digit = 1; digit <= CASE_DIGITS + 2; digit++)
		happened(70 + digit, (struct event){.kind = EV_DIGIT_ON, .digit = (uint8_t)digit});
	for (int item = 3; item <= CASE_THINGS + 3; item++)
		happened(90, item_in(item, ROLE_OTHER, IDENTITY_NONE));
	make(20);
	for (int i = 0; i < CASE_PEOPLE; i++)
		assert_int_equal(row.people[i], 11 + i);
	assert_int_equal(row.n_digits, CASE_DIGITS);
	assert_int_equal(row.digits_left_out, 2);
	assert_int_equal(row.n_things, CASE_THINGS);
	assert_int_equal(row.things_left_out, 1); /* whatever their number */
}

static void what_is_of_no_mark_leaves_none(void **state)
{
	(void)state;
	begin();
	happened(60,
	         (struct event){.kind = EV_LEFT, .person = 11, .what = PLACE_FIELD, .flags = EVENT_FIRST});
	happened(70, (struct event){.kind = EV_CLOCK_WRONG, .n = 0});
	happened(80, (struct event){.kind = EV_UNREADABLE});
	events[n_events - 1].case_no = 0; /* of the station */
	happened(90, (struct event){.kind = EV_SLIP_STATE, .n = 4, .what = SLIP_SENT, .other = 1});
	happened(91, (struct event){.kind = EV_SLIP_STATE, .n = 4, .what = SLIP_SEEN, .other = 1});
	make(20);
	assert_int_equal(row.marks, 0);
	assert_int_equal(row.slips_seen, 0); /* none was queued */
	happened(95, (struct event){.kind = EV_UNREADABLE});
	make(20);
	assert_int_equal(row.marks, CASE_UNFOLLOWED);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(an_ordinary_case_is_one_row),
	    cmocka_unit_test(the_reminder_of_its_day_says_what_is_past_it),
	    cmocka_unit_test(what_is_still_on_is_at_least_so_long),
	    cmocka_unit_test(a_power_cut_leaves_at_least_so_long),
	    cmocka_unit_test(the_times_of_a_paper_sheet_are_no_measure),
	    cmocka_unit_test(a_wall_clock_that_was_turned_is_marked),
	    cmocka_unit_test(what_was_taken_back_is_not_told),
	    cmocka_unit_test(a_discrepancy_says_when_in_the_search_it_was_found),
	    cmocka_unit_test(debts_and_the_incident_number_are_apart),
	    cmocka_unit_test(hurried_hands_leave_signs),
	    cmocka_unit_test(after_the_end_things_are_still_told),
	    cmocka_unit_test(what_cannot_be_followed_is_marked),
	    cmocka_unit_test(packs_that_go_back_or_aside_are_counted_so),
	    cmocka_unit_test(what_a_row_has_no_place_for_is_left_out_and_counted),
	    cmocka_unit_test(what_is_of_no_mark_leaves_none),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
