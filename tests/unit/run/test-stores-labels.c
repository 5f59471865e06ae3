/* Labels of a stores bench on a real record: what a power cut and a case do to them, and how they are closed. */
#include "tests/unit/code/cmocka-all.h"

#include <string.h>

#include "tests/unit/run/stores-station.h"

static void a_power_cut_between_print_and_read_back_loses_no_label(void **state)
{
	(void)state;
	print_labels();
	must_say(label(9, 1), "Label 00000001 read back. 3 are open.");
	again();
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->printed, 3);
	must_say(label(9, 1), "was read back already");
	must_say(label(9, 2), "2 are open");
	core_snapshot_last(&core); /* and from a snapshot */
	again();
	assert_true(core.snapshot_seq > 0);
	must_say(label(9, 3), "1 is open");
	must_say(label(9, 4), "each is read back");
	must_say(scan(9, "PLAIN-M"), "Done.");
	again();
	assert_int_equal(core.stock.n_printings, 0);
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->labelled, 4);
	must_say(label(9, 5), "is not in this record");
}

static void a_label_that_a_case_read_is_on_its_pack_and_not_replaced(void **state)
{
	(void)state;
	print_labels();
	label(9, 1);
	operate(label_text(2));
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->labelled, 2);
	must_say(card(9, CARD_PRINT_LABELS), "2 labels of finger tourniquet, orange, M");
	must_say(card(9, CARD_YES), "00000005 to 00000006");
	const struct stock_lot *l = lot("PLAIN-M", "A7", 20330331);
	assert_int_equal(l->spoilt, 2);
	assert_int_equal(l->labelled, 2);
	assert_int_equal(l->printed, 2);
	again();
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->labelled, 2);
}

static void a_label_that_a_case_read_is_not_called_spoilt_by_a_slip_of_the_keys(void **state)
{
	(void)state;
	print_labels();
	operate(label_text(2));
	card(9, CARD_SPOILT_LABEL);
	must_say(scan(9, "1-2"), "00000002 is no label of these that could be spoilt");
	must_say(scan(9, "1"), "Not used any more");
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->spoilt, 1);
	label(1, 3); /* the case reads one more */
	label(1, 4);
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->printed, 0);
	must_say(scan(9, "GREEN-M"),
	         "That is another lot than the labels are of"); /* typed, where nobody was asked for it */
	must_say(scan(9, "PLAIN-M/A7"), "Done.");
	assert_int_equal(core.stock.n_printings, 0);
}

static void what_stores_called_spoilt_is_counted_in_and_said(void **state)
{
	(void)state;
	print_labels();
	card(9, CARD_SPOILT_LABEL);
	scan(9, "3");
	operate_in(1, label_text(3));
	must_say(core.outcome.reply.said, "Stores entered its label 00000003 as spoilt");
	assert_int_equal(lot("PLAIN-M", "A7", 20330331)->spoilt, 1);
	must_say(label(1, 2), "Counted in");
	assert_null(strstr(core.outcome.reply.said, "Stores entered"));
}

static void what_stores_threw_away_is_counted_in_and_said(void **state)
{
	(void)state;
	print_labels();
	for (int i = 1; i <= 4; i++)
		label(9, i);
	scan(9, "PLAIN-M");
	card(9, CARD_WRITE_OFF);
	label(9, 2);
	scan(9, "wet");
	operate_in(1, label_text(2));
	must_say(core.outcome.reply.said, "Stores entered the pack with label 00000002 as thrown away");
}

static void refuses_box(const char *why)
{
	struct error e = {0};
	json_t *list = json_loads("[{\"box\":\"PLAIN-M/A7\"}]", 0, NULL),
	       *o = stock_steps(&core, 9, list, &e);
	json_decref(list);
	assert_null(o);
	must_say(e.text, why);
}

static void the_command_closes_labels_and_says_why_it_cannot_yet(void **state)
{
	(void)state;
	refuses_box("no labels of this bench wait for their box");
	print_labels();
	label(9, 1);
	refuses_box("of labels 1 to 4, 3 were not read back");
	operate(label_text(2));
	label(1, 3);
	label(1, 4);
	must_end(steps("[{\"box\":\"PLAIN-M/A7\"}]", 0), "accepted", "Done.", "");
	assert_int_equal(core.stock.n_printings, 0);
}

int main(void)
{
#define T(test) cmocka_unit_test_setup_teardown(test, stores_setup, stores_teardown)
	const struct CMUnitTest tests[] = {
	    T(a_power_cut_between_print_and_read_back_loses_no_label),
	    T(a_label_that_a_case_read_is_on_its_pack_and_not_replaced),
	    T(a_label_that_a_case_read_is_not_called_spoilt_by_a_slip_of_the_keys),
	    T(what_stores_called_spoilt_is_counted_in_and_said),
	    T(what_stores_threw_away_is_counted_in_and_said),
	    T(the_command_closes_labels_and_says_why_it_cannot_yet),
	};
#undef T
	return cmocka_run_group_tests(tests, NULL, NULL);
}
