/* Labels at a stores bench: numbered, read back, spoilt, replaced, closed. After each scan the rules of stores are looked at. */
#include "tests/unit/stock/at-bench.h"

#include <stdio.h>

#include "code/own-codes.h"

static void each_label_is_read_back_once_and_then_the_box(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 4);
	stores_card(&s, CARD_PRINT_LABELS);
	stores_pack(&s, "PLAIN-M", "A7", FAR, 1);
	refused(stores_type(&s, "5"), "Only 4");
	must_say(stores_type(&s, "4"), "Labels 00000001 to 00000004 for finger tourniquet, orange, M");
	must_say(s.out.said, "film side, clear of the seal. After sterilising.");
	must_say(s.next.words, "Read back: 4 labels");
	must_say(stores_label(&s, 1), "Label 00000001 read back. 3 are open.");
	refused(stores_label(&s, 1), "was read back already");
	stores_label(&s, 2);
	stores_card(&s, CARD_SPOILT_LABEL);
	must_say(stores_type(&s, "3"), "Not used any more: labels 00000003 to 00000003. Open: 1.");
	refused(stores_label(&s, 3), "spoilt or destroyed");
	must_say(stores_label(&s, 4), "each is read back, spoilt or destroyed");
	refused(stores_pack(&s, "PLAIN-M", "A8", FAR, 1), "another lot than the labels");
	refused(stores_pack(&s, "GREEN-M", "A7", FAR, 1), "another lot than the labels");
	must_say(stores_pack(&s, "PLAIN-M", "A7", FAR, 1), "Done.");
	const struct stock_lot *lot = stores_lot(&s, "PLAIN-M", "A7", FAR);
	assert_int_equal(lot->labelled, 3);
	assert_int_equal(lot->spoilt, 1);
	assert_int_equal(lot->printed, 0);
	assert_int_equal(s.stock.n_printings, 0);
}

static void the_rest_of_a_roll_that_came_out_blank_is_spoilt_by_its_numbers(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 20);
	print(20);
	for (int i = 1; i <= 12; i++)
		stores_label(&s, i);
	stores_card(&s, CARD_SPOILT_LABEL);
	refused(stores_type(&s, "13-21"), "is no label of these");
	refused(stores_type(&s, "20-13"), "names no labels");
	refused(stores_type(&s, "1-500"), "names no labels");
	must_say(stores_type(&s, "13-20"), "each is read back, spoilt or destroyed");
	stores_pack(&s, "PLAIN-M", "A7", FAR, 1);
	print(8); /* those that have no label still */
	assert_int_equal(stores_lot(&s, "PLAIN-M", "A7", FAR)->printed, 8);
	assert_int_equal(s.batches[21].first, 21); /* no number is left out or given twice */
}

static void paper_that_ran_out_is_replaced_by_other_numbers_and_the_box_is_read_once(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 20);
	print(20);
	for (int i = 1; i <= 12; i++)
		stores_label(&s, i);
	must_say(s.next.words, "PRINT LABELS if labels did not come out whole");
	must_say(stores_card(&s, CARD_PRINT_LABELS), "8 labels of finger tourniquet, orange, M, lot A7");
	refused(stores_label(&s, 13), "no answer to what is asked");
	must_say(stores_card(&s, CARD_YES), "In their place labels 00000021 to 00000028 are printed");
	assert_int_equal(s.stock.n_printings, 1);
	assert_int_equal(s.batches[28].first, 21);
	const struct stock_lot *lot = stores_lot(&s, "PLAIN-M", "A7", FAR);
	assert_int_equal(lot->labelled, 12);
	assert_int_equal(lot->spoilt, 8);
	assert_int_equal(lot->printed, 8);
	refused(stores_label(&s, 13), "spoilt or destroyed");
	for (int i = 21; i <= 28; i++)
		stores_label(&s, i);
	must_say(stores_pack(&s, "PLAIN-M", "A7", FAR, 1), "Done.");
	assert_int_equal(s.stock.n_printings, 0);
}

static void labels_that_all_came_out_are_not_replaced(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 4);
	print(2);
	stores_card(&s, CARD_PRINT_LABELS);
	must_say(stores_card(&s, CARD_NO), "Labels for what?");
	stores_card(&s, CARD_DONE);
	assert_int_equal(stores_lot(&s, "PLAIN-M", "A7", FAR)->printed, 2);
	struct bench_input other = stores_in(&s, BENCH_CARD);
	other.card = CARD_PRINT_LABELS;
	other.room = 10;
	must_say(stores_scan(&s, other), "Labels for what?"); /* those of another bench are its own */
}

static void a_label_that_was_read_may_still_be_torn_up(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 2);
	print(2);
	stores_label(&s, 1);
	stores_card(&s, CARD_DESTROYED_LABEL);
	stores_label(&s, 1);
	const struct stock_lot *lot = stores_lot(&s, "PLAIN-M", "A7", FAR);
	assert_int_equal(lot->labelled, 0);
	assert_int_equal(lot->spoilt, 1);
	assert_int_equal(lot->printed, 1);
	stores_card(&s, CARD_SPOILT_LABEL);
	refused(stores_label(&s, 1), "is no label of these");
}

static void what_is_not_read_back_is_not_issued(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 2);
	print(2);
	stores_label(&s, 1);
	stores_card(&s, CARD_TO_ROOM + 1);
	refused(stores_label(&s, 2), "was not read back");
	refused(stores_pack(&s, "PLAIN-M", "A7", FAR, 1), "is issued by its labels");
	must_say(stores_label(&s, 1), "Issued to Theatre 1: 1 pack of finger tourniquet, orange, M");
	refused(stores_label(&s, 1), "is issued to Theatre 1 already");
	stores_card(&s, CARD_TO_ROOM + 2);
	refused(stores_label(&s, 1), "was issued to Theatre 1 and is not on the shelf");
	assert_int_equal(stores_lot(&s, "PLAIN-M", "A7", FAR)->shelf, 1);
}

static void a_line_without_a_place_for_its_label_is_not_labelled(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 2);
	stores_card(&s, CARD_PRINT_LABELS);
	refused(stores_pack(&s, "GREEN-M", "T26", FAR, 1), "does not say where a label goes");
}

static void a_label_that_nobody_numbered_is_told(void **state)
{
	(void)state;
	refused(stores_label(&s, 41), "is not in this record");
}

static void two_benches_print_and_each_reads_its_own_back(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 4);
	print(2);
	struct bench_input in = stores_in(&s, BENCH_CARD);
	in.room = 10;
	in.card = CARD_PRINT_LABELS;
	stores_scan(&s, in);
	in = stores_pack_in(&s, "PLAIN-M", "A7", FAR, 1);
	in.room = 10;
	stores_scan(&s, in);
	in = stores_in(&s, BENCH_TYPED);
	in.room = 10;
	in.text = "2";
	must_say(stores_scan(&s, in), "Labels 00000003 to 00000004");
	in = stores_label_in(&s, 3);
	in.room = 10;
	must_say(stores_scan(&s, in), "Label 00000003 read back. 1 is open.");
	must_say(stores_label(&s, 4), "each is read back"); /* at the other bench: the label is what counts */
	stores_label(&s, 1);
	must_say(stores_label(&s, 2), "is no answer to what is asked");
}

/* The command numbered further ones for the bench: whoever left the box of those that were read is asked for these first. */
static void a_later_printing_is_read_back_before_the_box_of_an_earlier(void **state)
{
	(void)state;
	struct event numbered = {
	    .kind = EV_LABELLED,
	    .room = 9,
	    .n = 1,
	    .batch = {.line = "PLAIN-M", .lot = "A7", .expiry = FAR, .first = 3, .last = 4}};
	receive("PLAIN-M", "A7", FAR, 4);
	print(2);
	stores_label(&s, 1);
	must_say(stores_label(&s, 2), "each is read back");
	assert_int_equal(stock_apply(&s.stock, &numbered), 0);
	must_say(s.next.words, "box");
	stores_card(&s, CARD_DONE);
	must_say(s.next.words, "Read back: 2 labels");
}

int main(void)
{
#define T(test) cmocka_unit_test_setup_teardown(test, at_bench_setup, at_bench_teardown)
	const struct CMUnitTest tests[] = {
	    T(each_label_is_read_back_once_and_then_the_box),
	    T(the_rest_of_a_roll_that_came_out_blank_is_spoilt_by_its_numbers),
	    T(paper_that_ran_out_is_replaced_by_other_numbers_and_the_box_is_read_once),
	    T(labels_that_all_came_out_are_not_replaced),
	    T(a_label_that_was_read_may_still_be_torn_up),
	    T(what_is_not_read_back_is_not_issued),
	    T(a_line_without_a_place_for_its_label_is_not_labelled),
	    T(a_label_that_nobody_numbered_is_told),
	    T(a_later_printing_is_read_back_before_the_box_of_an_earlier),
	    T(two_benches_print_and_each_reads_its_own_back),
	};
#undef T
	return cmocka_run_group_tests(tests, NULL, NULL);
}
