/* The rules of count/rule.h about time, the end of a case, and other rooms, people and cases (14 to 24), as sentences of the
 * trade, through the real decisions. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "rule-table.h"
#include "tests/states/known.h"

RULE(rule_16_who_takes_the_patient_away_is_told_what_is_open)
{
	(void)state;
	static const char *const cards[] = {"PATIENT LEAVES", "CANCEL"};
	for (int k = 0; k < 2; k++) {
		struct table *t = table_lay(&two_people);
		SCANS(t, OFF, cards[k]);
		assert_true(
		    table_says(t, "NOT ACCOUNTED FOR: tourniquet and forceps. NOT SEEN BARE: right index "
		                  "finger."));
		SCANS(t, "YES");
		assert_true(table_says(t, "NOT SEEN BARE: right index finger."));
		assert_true(
		    table_says(t, k ? "A count is still owed" : "Tell the surgeon and the ward now."));
		assert_int_equal(table_says(t, "The patient has left, and the count is owed"), !k);
	}
}

RULE(rule_16_a_lone_operator_who_has_not_badged_in_yet_may_end_unresolved)
{
	(void)state;
	struct room_plan alone = two_people;
	alone.single = 1;
	struct table *t = table_lay(&alone);
	SCANS(t, "right index finger", "YES", "right index finger", "OFF", "PIECES MISSING", "STEP DONE",
	      "right index finger", "NO", "END UNRESOLVED");
	assert_int_equal(table_scan(t, "SURG"), VERDICT_QUESTION);
	assert_true(table_sheet(t)->team.at[PLACE_FIELD] != 0);
	assert_int_equal(table_scan(t, "typed number"), VERDICT_ACCEPTED);
	assert_int_equal(table_happened(t, EV_CASE_ENDED), 1);
}

RULE(rule_14_minutes_come_from_a_clock_that_no_one_can_set)
{
	(void)state;
	struct digit d = {.state = DIGIT_ON,
	                  .since = {.boot = 1, .boot_ms = 1000, .wall_ms = 5000000},
	                  .on_wall_ms = 5000000};
	struct moment now = {.boot = 1, .boot_ms = 1000 + 90 * 60000, .wall_ms = 0}; /* set back by years */
	char text[80];
	assert_int_equal(digit_stretch_ms(&d, now), 90 * 60000);
	now.boot_ms = 1000 + (int64_t)5760 * 60000; /* four days: Durrant 2006 */
	digit_minutes_text(&d, now, text, sizeof text);
	assert_string_equal(text, "5760 min");
	/* A power cut: known until the last mark, then from the new start; the wall clock spans the gap. */
	d = (struct digit){.state = DIGIT_ON, .since = {.boot = 1, .boot_ms = 0, .wall_ms = 0}};
	digit_cross_boot(&d, (struct moment){.boot = 1, .boot_ms = 95 * 60000, .wall_ms = 95 * 60000},
	                 (struct moment){.boot = 2, .boot_ms = 7000, .wall_ms = 140 * 60000});
	digit_minutes_text(&d, (struct moment){.boot = 2, .boot_ms = 7000, .wall_ms = 140 * 60000}, text,
	                   sizeof text);
	assert_string_equal(text, "at least 95 min; by wall clock 140 min");
}

RULE(rule_15_the_end_says_what_was_counted_and_seen_and_no_more)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, AGREED, "right index finger", "SURG");
	assert_true(table_says(
	    t,
	    "Tourniquet: 1 of 1 shown intact. Forceps: 1 of 1, mark read. Seen bare: right index finger."));
	assert_false(table_says(t, "safe") || table_says(t, "clear") || table_says(t, "OK"));
}

RULE(rule_16_a_case_ends_unresolved_only_by_the_surgeon_after_the_whole_search)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT", "INTACT", "NO");
	assert_int_equal(table_scan(t, "END UNRESOLVED"), VERDICT_REFUSED);
	SCANS(t, "STEP DONE", "NOT DONE");
	assert_int_equal(table_scan(t, "END UNRESOLVED"), VERDICT_QUESTION);
	assert_int_equal(table_scan(t, "CIRC"), VERDICT_REFUSED);
	table_scan(t, "SURG");
	assert_int_equal(table_scan(t, "NOT DONE"), VERDICT_ACCEPTED); /* number owed */
	assert_int_equal(table_happened(t, EV_CASE_ENDED), 1);
	assert_int_equal(t->w.station.n_owed, 1);
	table_scan(t, "typed number");
	assert_int_equal(t->w.station.n_owed, 0);
}

RULE(rule_17_what_cannot_be_entered_is_said_with_count_by_hand)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "pack T T:2",
	      "pack F F:1"); /* three items: this sheet is full */
	assert_int_equal(table_scan(t, "pack O "), VERDICT_REFUSED);
	assert_true(table_says(t, "NOT entered") && table_says(t, "count by hand"));
	assert_int_equal(table_sheet(t)->n_items, 3);
}

RULE(rule_18_another_rooms_card_is_announced_and_enters_nothing)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, COUNTED, "right index finger");
	assert_int_equal(table_scan(t, "OFF of room 2"), VERDICT_REFUSED);
	assert_true(table_says(t, "a card of Room 2"));
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_ON);
}

static int32_t carried_to(struct table *t, int card, int32_t room, int64_t minutes)
{
	struct input in = {.act = ACT_CARD, .card = card, .card_room = room, .room = 1};
	snprintf(in.scanner, sizeof in.scanner, "hand-1");
	in.at = (struct moment){.boot = 1, .boot_ms = 1000000, .wall_ms = 1000000};
	table_decide(t, &in);
	assert_int_equal(t->out.reply.verdict, VERDICT_ACCEPTED);
	in.at.boot_ms += minutes * 60000;
	in.at.wall_ms += minutes * 60000;
	return station_scanner_room(&t->w.station, "hand-1", 1, in.at);
}

RULE(rule_18_a_scanner_follows_a_room_card_for_a_while_and_as_a_spare_until_a_further_card)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	int32_t hold = t->w.station.policy.room_hold_min;
	assert_int_equal(carried_to(t, CARD_THIS_ROOM, 2, hold - 1), 2);
	assert_int_equal(carried_to(t, CARD_THIS_ROOM, 2, hold), 1);
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, hold), 2);
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, 100000), 2);
	assert_true(table_says(t, "spare of Room 2"));
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 1, 100000), 1);
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, 1), 2);
	assert_int_equal(carried_to(t, CARD_THIS_ROOM, 1, hold), 1);
	/* A room that the station has no more binds nobody. */
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, 1), 2);
	t->w.station.n_rooms = 1;
	assert_int_equal(station_scanner_room(&t->w.station, "hand-1", 1, t->out.events[0].at), 1);
}

RULE(rule_19_a_badge_answers_only_what_is_asked)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, COUNTED, "NEXT");
	assert_int_equal(table_scan(t, "CIRC"), VERDICT_REFUSED);
	assert_int_equal(table_scan(t, "SCRUB"), VERDICT_REFUSED);
	SCANS(t, "right index finger", "right index finger"); /* is it off? */
	assert_int_equal(table_scan(t, "CIRC"), VERDICT_REFUSED);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_ON);
}

RULE(rule_20_nothing_of_a_wristband_is_kept)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	table_scan(t, "NEW CASE");
	struct sheet before = *table_sheet(t);
	assert_int_equal(table_scan(t, "wristband"), VERDICT_REFUSED);
	assert_int_equal(t->out.count, 1);
	assert_int_equal(t->out.events[0].kind, EV_REFUSED);
	assert_memory_equal(&before, table_sheet(t), sizeof before);
}

/* The scan of a thing that an ended case used. */
static struct input used_before(const struct table *t, const char *name, int back)
{
	struct input in = {0};
	for (int i = 0; i < t->w.n_inputs; i++)
		if (strcmp(t->w.inputs[i].name, name) == 0)
			in = t->w.inputs[i].in;
	assert_int_equal(in.act, ACT_THING);
	in.known.used_in = 4;
	in.known.used_back = (uint8_t)back;
	return in;
}

RULE(rule_21_a_found_item_acts_on_the_case_that_it_came_from_whatever_is_open)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	for (int open = 0; open < 2; open++) {
		struct input forceps = used_before(t, "pack F F:1", 0);
		if (open)
			SCANS(t, "NEW CASE", "SCRUB", "CIRC");
		table_decide(t, &forceps);
		assert_int_equal(t->out.reply.verdict, VERDICT_ACCEPTED);
		assert_int_equal(table_happened(t, EV_FOUND_AFTER), 1);
		assert_int_equal(table_happened(t, EV_SLIP_QUEUED), 1); /* the addendum */
		assert_true(table_says(t, "case 4") && table_says(t, "Look at that patient's digit now"));
		assert_int_equal(table_sheet(t)->n_items, 0);
	}
	/* Accounted for there, it may be used again. */
	struct input back = used_before(t, "pack F F:1", 1);
	table_decide(t, &back);
	assert_int_equal(table_happened(t, EV_FOUND_AFTER), 0);
	assert_int_equal(table_sheet(t)->n_items, 1);
}

RULE(rule_21_a_label_of_what_is_missing_proves_only_itself)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	struct input label = used_before(t, "pack T T:8 used before", 0);
	table_scan(t, "FOUND");
	table_decide(t, &label);
	assert_int_equal(t->out.reply.verdict, VERDICT_REFUSED);
	assert_int_equal(table_happened(t, EV_FOUND_AFTER), 0);
	assert_true(table_says(t, "slip of case 4"));
}

RULE(rule_22_the_same_card_right_after_itself_is_entered_once_however_late)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT", "INTACT", "NO"); /* no forceps: a search of two steps */
	table_scan(t, "STEP DONE");
	assert_int_equal(table_sheet(t)->search_done, 1);
	assert_int_equal(table_scan(t, "STEP DONE"), VERDICT_ACCEPTED);
	assert_int_equal(t->out.count, 0);
	assert_true(table_says(t, "Entered once already: STEP DONE"));
	SCANS(t, "NEXT", "STEP DONE");
	assert_int_equal(table_sheet(t)->search_done, 2);
}

RULE(rule_22_things_alike_are_answered_by_their_number_alone)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "pack T T:2", "CIRC", "FINAL COUNT");
	assert_int_equal(table_scan(t, "INTACT"), VERDICT_REFUSED);
	assert_int_equal(table_scan(t, "YES"), VERDICT_REFUSED);
	assert_true(table_says(t, "side by side"));
	assert_int_equal(table_scan(t, "SHOWN 2"), VERDICT_ACCEPTED);
	assert_int_equal(table_happened(t, EV_ITEM_SHOWN), 2);
	assert_int_equal(sheet_open_items(table_sheet(t)), 0);
}

RULE(rule_24_nothing_of_another_case_is_entered_on_this_sheet)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "CIRC", "FINAL COUNT");
	struct input forceps = used_before(t, "pack F F:1", 0);
	table_decide(t, &forceps);
	assert_int_equal(table_sheet(t)->n_items, 1);
	assert_int_equal(table_sheet(t)->asked.what, Q_NONE);
	for (int i = 0; i < t->out.count; i++)
		assert_int_not_equal(t->out.events[i].kind, EV_EXTRA);
}

RULE(rule_4_over_all_rooms_one_identity_on_two_open_sheets_is_seen)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1");
	struct sheet *second = &t->w.station.sheets[1];
	*second = *table_sheet(t);
	second->case_no++;
	second->room = 2;
	assert_int_equal(rule_check(second), 0);
	assert_true(rule_check_all(&t->w.station) >> RULE_ONE_SHEET & 1);
	second->items[0].place = ITEM_RETURNED;
	assert_int_equal(rule_check_all(&t->w.station), 0);
}

static void scan_in(struct table *t, int32_t room, struct input in)
{
	in.room = in.card_room = room;
	in.at = t->w.inputs[0].in.at;
	table_decide(t, &in);
}

/* The table holds each decision against the rules over all rooms: UNDO in the first would put it on both sheets. */
RULE(rule_4_undo_brings_nothing_back_that_is_on_another_sheet_by_now)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1");
	struct input pack = {.act = ACT_THING, .thing = table_sheet(t)->items[0].thing};
	SCANS(t, "MISREAD", "pack T T:1");
	scan_in(t, 2, (struct input){.act = ACT_CARD, .card = CARD_NEW_CASE});
	scan_in(t, 2, (struct input){.act = ACT_BADGE, .number = 2});
	scan_in(t, 2, (struct input){.act = ACT_BADGE, .number = 3});
	scan_in(t, 2, pack);
	assert_int_equal(t->w.station.sheets[1].n_items, 1);
	assert_int_equal(table_scan(t, "UNDO"), VERDICT_REFUSED);
	assert_true(table_says(t, "has left this sheet"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(rule_16_who_takes_the_patient_away_is_told_what_is_open),
	    cmocka_unit_test(rule_16_a_lone_operator_who_has_not_badged_in_yet_may_end_unresolved),
	    cmocka_unit_test(rule_14_minutes_come_from_a_clock_that_no_one_can_set),
	    cmocka_unit_test(rule_15_the_end_says_what_was_counted_and_seen_and_no_more),
	    cmocka_unit_test(rule_16_a_case_ends_unresolved_only_by_the_surgeon_after_the_whole_search),
	    cmocka_unit_test(rule_17_what_cannot_be_entered_is_said_with_count_by_hand),
	    cmocka_unit_test(rule_18_another_rooms_card_is_announced_and_enters_nothing),
	    cmocka_unit_test(
	        rule_18_a_scanner_follows_a_room_card_for_a_while_and_as_a_spare_until_a_further_card),
	    cmocka_unit_test(rule_19_a_badge_answers_only_what_is_asked),
	    cmocka_unit_test(rule_20_nothing_of_a_wristband_is_kept),
	    cmocka_unit_test(rule_21_a_found_item_acts_on_the_case_that_it_came_from_whatever_is_open),
	    cmocka_unit_test(rule_21_a_label_of_what_is_missing_proves_only_itself),
	    cmocka_unit_test(rule_22_the_same_card_right_after_itself_is_entered_once_however_late),
	    cmocka_unit_test(rule_22_things_alike_are_answered_by_their_number_alone),
	    cmocka_unit_test(rule_24_nothing_of_another_case_is_entered_on_this_sheet),
	    cmocka_unit_test(rule_4_over_all_rooms_one_identity_on_two_open_sheets_is_seen),
	    cmocka_unit_test(rule_4_undo_brings_nothing_back_that_is_on_another_sheet_by_now),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
