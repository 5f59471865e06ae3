/* The rules of count/rule.h about what is counted, on and looked at (1 to 13), as sentences of the trade, through the real decisions. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "rule-table.h"
#include "tests/states/known.h"

RULE(rule_1_a_case_does_not_end_reconciled_while_anything_is_owed)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF);
	assert_int_equal(table_scan(t, "SURG"), VERDICT_ACCEPTED); /* joins */
	table_scan(t, "NEXT");
	assert_int_equal(table_scan(t, "SURG"), VERDICT_REFUSED);
	assert_true(table_says(t, "final count is not agreed"));
	SCANS(t, "FINAL COUNT", "INTACT", "pack F F:1", "CIRC");
	assert_int_equal(table_scan(t, "SURG"), VERDICT_REFUSED);
	assert_true(table_says(t, "has not been looked at"));
	table_scan(t, "right index finger");
	assert_int_equal(table_scan(t, "SURG"), VERDICT_ACCEPTED);
	assert_int_equal(table_happened(t, EV_CASE_ENDED), 1);
	assert_int_equal(table_sheet(t)->case_no, 0);
}

RULE(rule_2_a_tourniquet_that_is_off_is_reminded_of_until_it_is_accounted_for)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF);
	assert_true(table_says(t, "not yet accounted for"));
	table_scan(t, "half an hour passes");
	assert_int_equal(table_happened(t, EV_REMINDED), 1);
	SCANS(t, "FINAL COUNT", "INTACT");
	table_scan(t, "half an hour passes");
	assert_int_equal(table_happened(t, EV_REMINDED), 0);
}

RULE(rule_3_a_digit_card_starts_the_clock_whatever_is_missing)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	assert_int_equal(table_scan(t, "right index finger"), VERDICT_QUESTION);
	assert_int_equal(table_happened(t, EV_CASE_OPENED), 1);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_MAYBE_ON);
	assert_true(debts_has(&table_sheet(t)->debts, DEBT_ON) &&
	            debts_has(&table_sheet(t)->debts, DEBT_TEAM));
	struct moment from = sheet_digit_const(table_sheet(t), 2)->since;
	SCANS(t, "an answer later"); /* YES, three minutes on: from the card all the same */
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_ON);
	assert_memory_equal(&sheet_digit_const(table_sheet(t), 2)->since, &from, sizeof from);
	assert_true(debts_has(&table_sheet(t)->debts, DEBT_TEAM) &&
	            debts_has(&table_sheet(t)->debts, DEBT_COUNT) &&
	            debts_has(&table_sheet(t)->debts, DEBT_LISTING));
	/* An expired pack is listed as what it is, because it is on already; the reason is owed. */
	assert_int_equal(table_scan(t, "pack T T:9 expired"), VERDICT_ACCEPTED);
	assert_true(debts_has(&table_sheet(t)->debts, DEBT_REASON));
}

RULE(rule_4_an_item_is_on_one_open_sheet_and_a_single_use_item_is_used_once)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "pack T T:1");
	struct input other = t->w.inputs[0].in, pack = {0};
	for (int i = 0; i < t->w.n_inputs; i++) {
		if (strcmp(t->w.inputs[i].name, "NEW CASE") == 0)
			other = t->w.inputs[i].in;
		if (strcmp(t->w.inputs[i].name, "pack T T:1") == 0)
			pack = t->w.inputs[i].in;
	}
	other.room = other.card_room = pack.room = 2;
	table_decide(t, &other);
	table_decide(t, &pack); /* a person says where it is */
	assert_int_equal(t->out.reply.verdict, VERDICT_QUESTION);
	assert_true(table_says(t, "open sheet of case 1"));
	assert_int_equal(t->w.station.sheets[1].n_items, 0);
	assert_int_equal(table_scan(t, "pack T T:8 used before"), VERDICT_REFUSED);
	assert_true(table_says(t, "used before, in case 4"));
}

RULE(rule_5_what_is_expired_in_quarantine_unknown_or_not_a_device_is_refused_by_name)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	struct event q = {.kind = EV_QUARANTINED, .text = "recalled", .thing = {.line = "T"}};
	SCANS(t, "NEW CASE", "SCRUB", "CIRC");
	assert_int_equal(table_scan(t, "pack T T:9 expired"), VERDICT_REFUSED);
	assert_true(table_says(t, "expired on 1 Jan 2019"));
	assert_int_equal(table_scan(t, "pack G "), VERDICT_REFUSED);
	assert_true(table_says(t, "use a listed one"));
	assert_int_equal(table_scan(t, "unknown code"), VERDICT_REFUSED);
	assert_int_equal(station_apply(&t->w.station, &q), 0);
	assert_int_equal(table_scan(t, "pack T T:2"), VERDICT_REFUSED);
	assert_true(table_says(t, "in quarantine (recalled)"));
	assert_int_equal(table_sheet(t)->n_items, 0);
	struct line plain = {
	    .key = "X", .name = "plain band", .role = ROLE_TOURNIQUET, .per_pack = 1, .marked = 1};
	assert_true(catalogue_set(&t->w.station.catalogue, &plain, NULL) < 0); /* not visible */
	plain.visible = 1;
	plain.marked = 0;
	assert_true(catalogue_set(&t->w.station.catalogue, &plain, NULL) < 0); /* not marked */
}

RULE(rule_6_the_forceps_can_come_back_while_the_tourniquet_stays)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, COUNTED, "right index finger");
	assert_int_equal(table_scan(t, "FORCEPS MOVED"), VERDICT_ACCEPTED);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_ON);
	SCANS(t, "right index finger", "OFF", "FINAL COUNT");
	table_scan(t, "pack F F:1");
	assert_int_equal(sheet_item_const(table_sheet(t), 2)->place, ITEM_ACCOUNTED);
	assert_int_equal(sheet_item_const(table_sheet(t), 1)->place, ITEM_OFF);
	assert_int_equal(table_scan(t, "CIRC"), VERDICT_REFUSED);
}

RULE(rule_7_a_roll_on_tourniquet_is_asked_about_and_yes_needs_the_surgeon)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC");
	assert_int_equal(table_scan(t, "pack R R:1"), VERDICT_QUESTION);
	assert_true(table_says(t, "infection or tumour"));
	table_scan(t, "YES");
	assert_true(debts_has(&table_sheet(t)->debts, DEBT_SURGEON));
	SCANS(t, "CIRC", "SURG"); /* the count first, then what is owed */
	assert_false(debts_has(&table_sheet(t)->debts, DEBT_SURGEON));
}

RULE(rule_8_two_people_agree_one_registered_and_the_circulating_badge_records)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "CIRC", "pack T T:1");
	assert_int_equal(table_scan(t, "RELIEF"), VERDICT_REFUSED);
	assert_true(table_says(t, "Neither RELIEF nor the one who is here is registered"));
	t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1");
	assert_int_equal(table_scan(t, "SCRUB"), VERDICT_REFUSED);
	assert_int_equal(table_scan(t, "CIRC"), VERDICT_ACCEPTED);
	assert_true(table_says(t, "agreed aloud by SCRUB and CIRC, recorded by CIRC"));
}

RULE(rule_8_where_nobody_scrubs_the_operator_is_at_the_field_and_one_of_the_two_is_registered)
{
	(void)state;
	for (int registered = 1; registered >= 0; registered--) {
		struct table *t = table_lay(&two_people);
		t->w.station.staff.list[0].registered = (uint8_t)registered; /* SURG; CIRC is not */
		SCANS(t, "NEW CASE", "SURG", "CIRC");
		assert_int_equal(table_scan(t, "SURG"), registered ? VERDICT_ACCEPTED : VERDICT_REFUSED);
		assert_int_equal(table_says(t, "Neither SURG nor the one who is here is registered"),
		                 !registered);
		assert_int_equal(table_sheet(t)->team.at[PLACE_CIRCULATING], registered ? 3 : 0);
	}
}

RULE(rule_9_the_look_comes_after_the_count_and_going_on_again_voids_both)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT");
	assert_int_equal(table_scan(t, "right index finger"), VERDICT_QUESTION);
	assert_true(table_says(t, "the clock runs as 'on?'"));
	SCANS(t, "NO", "INTACT", "pack F F:1", "CIRC", "right index finger");
	assert_true(sheet_digit_const(table_sheet(t), 2)->seen_bare);
	SCANS(t, "right index finger", "YES");
	assert_int_equal(table_sheet(t)->final, FINAL_NONE);
	assert_false(sheet_digit_const(table_sheet(t), 2)->seen_bare);
}

RULE(rule_10_each_tourniquet_is_declared_intact_complete_or_in_pieces)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT");
	assert_int_equal(table_scan(t, "YES"), VERDICT_REFUSED);
	SCANS(t, "PIECES MISSING", "pack F F:1");
	assert_true(table_sheet(t)->discrepancy);
	assert_int_equal(table_scan(t, "CIRC"), VERDICT_REFUSED);
}

RULE(rule_11_a_wrapper_proves_only_that_a_pack_was_opened)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT");
	assert_int_equal(table_scan(t, "pack T T:1"), VERDICT_REFUSED);
	assert_true(table_says(t, "That is the wrapper"));
	assert_int_equal(sheet_item_const(table_sheet(t), 1)->place, ITEM_OFF);
	table_scan(t, "INTACT");
	assert_int_equal(table_scan(t, "pack F F:1"),
	                 VERDICT_ACCEPTED); /* the mark on the forceps themselves */
	assert_int_equal(sheet_item_const(table_sheet(t), 2)->evidence, EVIDENCE_MARK);
}

RULE(rule_12_whatever_is_answered_leaves_an_event_to_be_stored)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	for (int i = 0; i < t->w.n_inputs; i++)
		if (t->w.inputs[i].in.act != ACT_TICK) {
			decide_known(&t->w.station, &t->w.inputs[i].in, &t->out);
			assert_true(t->out.count > 0);
			assert_true(t->out.reply.said[0] && t->out.reply.next.words[0]);
		}
}

RULE(rule_13_taking_back_is_a_further_event_that_names_the_first)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, COUNTED, "right index finger");
	/* UNDO stops no clock, and leaves no question that a later digit card would answer. */
	assert_int_equal(table_scan(t, "UNDO"), VERDICT_REFUSED);
	assert_true(table_says(t, "scan MISREAD"));
	assert_int_equal(table_sheet(t)->asked.what, Q_NONE);
	assert_int_equal(table_scan(t, "MISREAD"), VERDICT_QUESTION);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_ON);
	assert_int_equal(table_scan(t, "YES"), VERDICT_ACCEPTED);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->had, 0);
	SCANS(t, "FINAL COUNT");
	int64_t first = t->out.events[0].seq;
	assert_int_equal(table_scan(t, "UNDO"), VERDICT_ACCEPTED);
	assert_int_equal(t->out.events[0].kind, EV_UNDONE);
	assert_int_equal(t->out.events[0].ref, first);
	assert_int_equal(table_sheet(t)->final, FINAL_NONE);
	/* MISREAD moves the entry and keeps its time. */
	SCANS(t, "right index finger", "5 MINUTES AGO", "MISREAD", "right middle finger");
	assert_int_equal(table_happened(t, EV_DIGIT_MOVED), 1);
	const struct digit *d = sheet_digit_const(table_sheet(t), 3);
	assert_int_equal(d->state, DIGIT_ON);
	assert_int_equal(digit_stretch_ms(d, d->since), 5 * 60000);
}

RULE(rule_13_a_wrong_card_is_moved_before_it_is_known_whether_one_is_on)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "right index finger");
	assert_true(table_says(t, "Case 1 is opened"));
	assert_int_equal(table_scan(t, "UNDO"), VERDICT_REFUSED);
	assert_true(table_says(t, "scan MISREAD"));
	SCANS(t, "MISREAD", "right middle finger");
	assert_int_equal(table_happened(t, EV_DIGIT_MOVED), 1);
	assert_int_equal(sheet_digit_const(table_sheet(t), 3)->state, DIGIT_MAYBE_ON);
	assert_int_equal(table_sheet(t)->asked.what, Q_IS_ON);
	assert_int_equal(table_sheet(t)->asked.digit, 3);
	SCANS(t, "YES");
	assert_int_equal(sheet_digit_const(table_sheet(t), 3)->state, DIGIT_ON);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->marked, 0);
}

RULE(rule_11_a_look_is_of_one_digit_and_does_not_move_to_another)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, AGREED, "right index finger");
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->seen_bare, 1);
	SCANS(t, "MISREAD", "right middle finger");
	assert_int_equal(sheet_digit_const(table_sheet(t), 3)->had, 1);
	assert_int_equal(sheet_digit_const(table_sheet(t), 3)->seen_bare, 0);
	assert_int_equal(sheet_next_look(table_sheet(t)), 3);
	assert_int_equal(table_scan(t, "SURG"), VERDICT_ACCEPTED); /* joins */
	table_scan(t, "NEXT");
	assert_int_equal(table_scan(t, "SURG"), VERDICT_REFUSED);
	SCANS(t, "right middle finger");
	assert_int_equal(table_scan(t, "SURG"), VERDICT_ACCEPTED);
	assert_true(table_says(t, "Seen bare: right middle finger."));
}

RULE(rule_10_a_piece_that_lacks_or_turns_up_after_the_agreement_begins_the_count_again)
{
	(void)state;
	static const char *const cards[] = {"PIECES MISSING", "OFFCUT"};
	for (int seen = 0; seen < 2; seen++)
		for (int k = 0; k < 2; k++) {
			struct table *t = table_lay(&two_people);
			SCANS(t, AGREED);
			if (seen)
				table_scan(t, "right index finger");
			assert_int_equal(table_scan(t, cards[k]), VERDICT_ACCEPTED);
			assert_int_equal(table_sheet(t)->final, FINAL_ASKING);
			assert_int_equal(sheet_digit_const(table_sheet(t), 2)->seen_bare, 0);
			assert_int_equal(sheet_item_const(table_sheet(t), 1)->place, ITEM_OFF);
			assert_int_equal(sheet_item_const(table_sheet(t), 1)->pieces, k ? 2 : 1);
			assert_int_equal(sheet_item_const(table_sheet(t), 1)->condition,
			                 k ? CONDITION_NONE : CONDITION_PIECES_MISSING);
		}
	/* In the count, of one that was shown already. */
	struct table *t = table_lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT", "INTACT", "PIECES MISSING");
	assert_int_equal(sheet_item_const(table_sheet(t), 1)->condition, CONDITION_PIECES_MISSING);
	SCANS(t, "pack F F:1");
	assert_int_equal(table_sheet(t)->discrepancy, 1);
}

RULE(rule_5_what_turns_up_and_would_have_been_refused_is_answered_for_by_the_surgeon)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "CIRC", "FINAL COUNT");
	assert_int_equal(table_scan(t, "pack T T:9 expired"), VERDICT_QUESTION);
	assert_true(table_says(t, "beyond what is on the sheet") && table_says(t, "expired on 1 Jan 2019"));
	SCANS(t, "YES");
	assert_true(table_says(t, "the surgeon answers for it"));
	assert_int_equal(debts_has(&table_sheet(t)->debts, DEBT_REASON), 1);
}

RULE(rule_3_off_goes_on_with_the_case_that_is_suspended_while_it_was_on)
{
	(void)state;
	struct table *t = table_lay(&two_people);
	SCANS(t, COUNTED, "right index finger", "SUSPEND");
	assert_true(table_says(t, "A TOURNIQUET IS ON: right index finger."));
	assert_int_equal(table_scan(t, "FINAL COUNT"), VERDICT_REFUSED);
	assert_true(table_says(t, "Case 1 is suspended"));
	assert_int_equal(table_scan(t, "OFF"), VERDICT_ACCEPTED);
	assert_int_equal(table_sheet(t)->suspended, 0);
	assert_int_equal(sheet_digit_const(table_sheet(t), 2)->state, DIGIT_OFF);
	t = table_lay(&two_people);
	SCANS(t, COUNTED, "right index finger", "SUSPEND", "NEW CASE");
	assert_int_equal(table_scan(t, "OFF"), VERDICT_REFUSED);
	assert_true(table_says(t, "Case 1, suspended, has one on the right index finger"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(rule_1_a_case_does_not_end_reconciled_while_anything_is_owed),
	    cmocka_unit_test(rule_2_a_tourniquet_that_is_off_is_reminded_of_until_it_is_accounted_for),
	    cmocka_unit_test(rule_3_a_digit_card_starts_the_clock_whatever_is_missing),
	    cmocka_unit_test(rule_4_an_item_is_on_one_open_sheet_and_a_single_use_item_is_used_once),
	    cmocka_unit_test(rule_5_what_is_expired_in_quarantine_unknown_or_not_a_device_is_refused_by_name),
	    cmocka_unit_test(rule_6_the_forceps_can_come_back_while_the_tourniquet_stays),
	    cmocka_unit_test(rule_7_a_roll_on_tourniquet_is_asked_about_and_yes_needs_the_surgeon),
	    cmocka_unit_test(rule_8_two_people_agree_one_registered_and_the_circulating_badge_records),
	    cmocka_unit_test(
	        rule_8_where_nobody_scrubs_the_operator_is_at_the_field_and_one_of_the_two_is_registered),
	    cmocka_unit_test(rule_9_the_look_comes_after_the_count_and_going_on_again_voids_both),
	    cmocka_unit_test(rule_10_each_tourniquet_is_declared_intact_complete_or_in_pieces),
	    cmocka_unit_test(rule_11_a_wrapper_proves_only_that_a_pack_was_opened),
	    cmocka_unit_test(rule_12_whatever_is_answered_leaves_an_event_to_be_stored),
	    cmocka_unit_test(rule_13_taking_back_is_a_further_event_that_names_the_first),
	    cmocka_unit_test(rule_13_a_wrong_card_is_moved_before_it_is_known_whether_one_is_on),
	    cmocka_unit_test(rule_11_a_look_is_of_one_digit_and_does_not_move_to_another),
	    cmocka_unit_test(
	        rule_10_a_piece_that_lacks_or_turns_up_after_the_agreement_begins_the_count_again),
	    cmocka_unit_test(rule_5_what_turns_up_and_would_have_been_refused_is_answered_for_by_the_surgeon),
	    cmocka_unit_test(rule_3_off_goes_on_with_the_case_that_is_suspended_while_it_was_on),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
