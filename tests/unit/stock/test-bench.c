/* What people do at a stores bench, and what it says. After each scan the rules of stores are looked at. */
#include "tests/unit/stock/at-bench.h"

#include <stdio.h>

#include "code/own-codes.h"

/* --- what comes in ---------------------------------------------------------------------------------- */

static void two_boxes_of_ten_are_twenty_packs(void **state)
{
	(void)state;
	must_say(stores_pack(&s, "GREEN-M", "T26", FAR, 10), "How many boxes came, of 10 packs in each?");
	must_say(stores_card(&s, CARD_NUMBER_2),
	         "Received: 20 packs of finger tourniquet, green, M, lot T26");
	assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->shelf, 20);
}

static void the_same_box_read_twice_is_no_second_box(void **state)
{
	(void)state;
	stores_pack(&s, "GREEN-M", "T26", FAR, 10);
	struct bench_input again = stores_pack_in(&s, "GREEN-M", "T26", FAR, 10);
	again.again = 1;
	must_say(stores_scan(&s, again), "Read twice, entered once.");
	refused(stores_pack(&s, "GREEN-M", "T26", FAR, 10), "How many boxes came");
	stores_card(&s, CARD_NUMBER_1);
	assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->received, 10);
}

static void what_was_typed_needs_a_second_person(void **state)
{
	(void)state;
	must_say(stores_pack(&s, "PLAIN-M", "", 0, 1), "Its code says no lot.");
	must_say(stores_type(&s, "A7"), "Its code says no expiry.");
	must_say(stores_type(&s, "2029-03-31"), "How many packs came");
	must_say(stores_card(&s, CARD_NUMBER_5), "Who typed");
	must_say(stores_badge(&s, 1), "A second person compares");
	refused(stores_badge(&s, 1), "STORES-1 began it");
	refused(stores_badge(&s, 3), "Badge 3 was withdrawn");
	refused(stores_badge(&s, 7), "Badge 7 is not known");
	must_say(stores_badge(&s, 2), "Received: 5 packs of finger tourniquet, orange, M, lot A7");
	assert_int_equal(stores_lot(&s, "PLAIN-M", "A7", FAR)->shelf, 5);
}

static void with_nobody_to_confirm_it_waits_and_is_not_issued(void **state)
{
	(void)state;
	stores_badge(&s, 1);
	stores_card(&s, CARD_RECEIVE);
	stores_type(&s, "GREEN-M/T30");
	stores_type(&s, "none");
	must_say(stores_type(&s, "3"), "A second person compares");
	must_say(stores_card(&s, CARD_NOBODY_TO_CONFIRM), "Received and not confirmed: 3 packs");
	assert_int_equal(stores_lot(&s, "GREEN-M", "T30", 0)->waits, 3);
	stores_card(&s, CARD_TO_ROOM + 1);
	refused(
	    stores_type(&s, "GREEN-M/T30"),
	    "3 packs of finger tourniquet, green, M, lot T30, without an expiry, wait for a second person");
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_CONFIRM);
	stores_type(&s, "GREEN-M");
	refused(stores_badge(&s, 1), "STORES-1 began it");
	must_say(stores_badge(&s, 2), "Confirmed by STORES-2");
	assert_int_equal(stores_lot(&s, "GREEN-M", "T30", 0)->shelf, 3);
	assert_int_equal(stores_lot(&s, "GREEN-M", "T30", 0)->waits, 0);
	stores_card(&s, CARD_CONFIRM);
	refused(stores_type(&s, "GREEN-M"), "nothing of it waits");
}

static void ten_thousand_packs_are_asked_about_and_too_many_refused(void **state)
{
	(void)state;
	stores_pack(&s, "GREEN-M", "T26", FAR, 10);
	must_say(stores_type(&s, "1000"), "10000 packs. Is that right?");
	must_say(stores_card(&s, CARD_NO), "Left: nothing was entered.");
	assert_null(stores_lot(&s, "GREEN-M", "T26", FAR));
	stores_pack(&s, "GREEN-M", "T26", FAR, 10);
	refused(stores_type(&s, "10001"), "at most 10000");
	refused(stores_type(&s, "99999999999999999999"), "is no number");
	refused(stores_type(&s, "-3"), "is no number");
	refused(stores_type(&s, "3 boxes"), "is no number");
	stores_type(&s, "1000");
	must_say(stores_card(&s, CARD_YES), "Received: 10000 packs");
}

static void a_day_that_is_none_and_a_lot_that_is_none_are_asked_again(void **state)
{
	(void)state;
	stores_pack(&s, "PLAIN-M", "", 0, 1);
	refused(stores_type(&s, "0123456789012345678901234567890"), "cannot be a lot");
	stores_type(&s, "A7");
	refused(stores_type(&s, "2029-02-30"), "is no day");
	refused(stores_type(&s, "31.3.2029"), "is no day");
	must_say(stores_type(&s, "2028-02-29"), "How many packs came?");
}

static void what_has_expired_or_is_in_quarantine_is_received_and_said(void **state)
{
	(void)state;
	stores_pack(&s, "GREEN-M", "OLD", BENCH_TODAY - 1, 1);
	must_say(stores_card(&s, CARD_NUMBER_1), "It has expired: it is not issued.");
	stores_pack(&s, "GREEN-M", "SOON", 20280331, 1);
	must_say(stores_card(&s, CARD_NUMBER_1), "It expires within 30 days.");
	stores_pack(&s, "GREEN-M", "LATER", 20280530, 1);
	must_say(stores_card(&s, CARD_NUMBER_1), "It expires within 90 days.");
	stores_pack(&s, "GREEN-M", "0T26", FAR, 1);
	stores_card(&s, CARD_NUMBER_1);
	stores_pack(&s, "GREEN-M", "t-26", FAR, 1);
	must_say(stores_card(&s, CARD_NUMBER_1), "Lot 0T26 of it reads alike");
}

/* --- the shelf -------------------------------------------------------------------------------------- */

static void what_expired_or_is_in_quarantine_is_not_issued(void **state)
{
	(void)state;
	receive("GREEN-M", "OLD", BENCH_TODAY - 1, 2);
	receive("GREEN-M", "TODAY", BENCH_TODAY, 2);
	receive("GREEN-M", "T26", FAR, 2);
	stores_card(&s, CARD_TO_ROOM + 1);
	refused(stores_pack(&s, "GREEN-M", "OLD", BENCH_TODAY - 1, 1), "it has expired");
	must_say(stores_pack(&s, "GREEN-M", "TODAY", BENCH_TODAY, 1), "Issued to Theatre 1");
	must_say(stores_pack(&s, "GREEN-M", "T26", FAR, 1), "An earlier one lies on the shelf: lot TODAY");
	refused(stores_pack(&s, "GREEN-M", "T26", FAR, 2), "only 1");
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_QUARANTINE);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	stores_card(&s, CARD_YES);
	stores_type(&s, "torn pouches");
	must_say(stores_type(&s, "FSN-2028-7"),
	         "In quarantine: finger tourniquet, green, M, lot T26. On the shelf 1, in rooms 1");
	stores_card(&s, CARD_TO_ROOM + 1);
	refused(stores_pack(&s, "GREEN-M", "T26", FAR, 1), "it is in quarantine");
}

static void a_pack_that_comes_back_is_looked_at_first(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 3);
	stores_card(&s, CARD_TO_ROOM + 1);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_RETURNED_PACK);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	refused(stores_card(&s, CARD_TO_ROOM + BENCH_ROOM), "no room of this station where operations are");
	must_say(stores_card(&s, CARD_TO_ROOM + 1), "Is it sealed, dry and clean?");
	must_say(stores_card(&s, CARD_YES), "On the shelf again");
	stores_card(&s, CARD_RETURNED_PACK);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	stores_card(&s, CARD_TO_ROOM + 1);
	must_say(stores_card(&s, CARD_NO), "Written off, not sealed, dry and clean");
	const struct stock_lot *lot = stores_lot(&s, "GREEN-M", "T26", FAR);
	assert_int_equal(lot->shelf, 2);
	assert_int_equal(lot->written_off, 1);
	assert_int_equal(lot->in_rooms, 0);
}

/* Of the day after FAR. */
static const char *card_then(int card)
{
	struct bench_input in = stores_in(&s, BENCH_CARD);
	in.card = card;
	in.today = FAR + 70;
	return stores_scan(&s, in);
}

static const char *then(struct bench_input in)
{
	in.today = FAR + 70;
	return stores_scan(&s, in);
}

static void what_comes_back_and_is_not_issued_is_laid_apart(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 2);
	stores_card(&s, CARD_TO_ROOM + 1);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_RETURNED_PACK);
	then(stores_pack_in(&s, "GREEN-M", "T26", FAR, 1));
	card_then(CARD_TO_ROOM + 1);
	must_say(card_then(CARD_YES), "Back in stores, and not issued: finger tourniquet, green, M, lot T26, "
	                              "expiry 31 Mar 2029, it has "
	                              "expired. Lay it apart, not on the shelf");
	assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->shelf, 2);
}

static void a_label_that_is_read_says_that_its_pack_has_expired(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 1);
	print(1);
	stores_label(&s, 1);
	stores_pack(&s, "PLAIN-M", "A7", FAR, 1);
	must_say(stores_label(&s, 1), "Label 00000001 is on the shelf");
	must_say(then(stores_label_in(&s, 1)), "Label 00000001 is in stores, and not issued");
}

static void one_in_each_is_asked_as_packs(void **state)
{
	(void)state;
	must_say(stores_pack(&s, "GREEN-M", "T26", FAR, 1), "How many packs came?");
	stores_card(&s, CARD_DONE);
	must_say(stores_pack(&s, "GREEN-M", "T26", FAR, 10), "How many boxes came, of 10 packs in each?");
}

static void what_a_case_returned_is_to_be_looked_at_until_the_bench_has_read_it(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 5);
	for (int room = 1; room <= 2; room++) {
		stores_card(&s, CARD_TO_ROOM + room);
		for (int i = 0; i < room; i++)
			stores_pack(&s, "GREEN-M", "T26", FAR, 1);
		stores_card(&s, CARD_DONE);
	}
	const struct stock_lot *lot = stores_lot(&s, "GREEN-M", "T26", FAR);
	assert_int_equal(stock_in_room(&s.stock, lot, 1), 1);
	assert_int_equal(stock_in_room(&s.stock, lot, 2), 2);
	stores_took(&s, TOOK_RETURNED, 41, 2, "GREEN-M", "T26", FAR, 2);
	assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->unanswered, 2);
	for (int i = 0; i < 2; i++) {
		stores_card(&s, CARD_RETURNED_PACK);
		stores_pack(&s, "GREEN-M", "T26", FAR, 1);
		stores_card(&s, CARD_TO_ROOM + 2);
		stores_card(&s, i ? CARD_NO : CARD_YES);
		assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->unanswered, 1 - i);
	}
}

static void a_labelled_pack_goes_to_another_room_only_after_the_bench_has_read_it(void **state)
{
	(void)state;
	receive("PLAIN-M", "A7", FAR, 1);
	print(1);
	stores_label(&s, 1);
	stores_pack(&s, "PLAIN-M", "A7", FAR, 1);
	stores_card(&s, CARD_TO_ROOM + 1);
	stores_label(&s, 1);
	stores_card(&s, CARD_TO_ROOM + 2);
	refused(stores_label(&s, 1), "was issued to Theatre 1");
	stores_card(&s, CARD_DONE);
	must_say(stores_label(&s, 1), "It comes back from Theatre 1. Is it sealed, dry and clean?");
	stores_card(&s, CARD_YES);
	stores_card(&s, CARD_TO_ROOM + 2);
	must_say(stores_label(&s, 1), "Issued to Theatre 2");
	stores_card(&s, CARD_DONE);
	struct bench_input used = stores_label_in(&s, 1);
	used.used_in = 41;
	refused(stores_scan(&s, used), "was opened in case 41");
}

static void counting_the_shelf_says_the_difference(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 20);
	stores_card(&s, CARD_TO_ROOM + 1);
	stores_pack(&s, "GREEN-M", "T26", FAR, 10);
	stores_card(&s, CARD_DONE);
	stores_took(&s, TOOK_OPENED, 1, 1, "GREEN-M", "T26", FAR, 2);
	stores_took(&s, TOOK_RETURNED, 1, 1, "GREEN-M", "T26", FAR, 1);
	stores_card(&s, CARD_COUNT_SHELF);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	must_say(stores_type(&s, "8"),
	         "Counted 8 of finger tourniquet, green, M, lot T26, expiry 31 Mar 2029; by the record 10. "
	         "Received "
	         "20, labelled 0, issued 10, opened 2, returned 1, written off 0, unaccounted 2.");
	stores_card(&s, CARD_COUNT_SHELF);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	must_say(stores_type(&s, "10"), "by the record 8. Received 20"); /* two were found again */
	assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->unaccounted, 0);
}

static void more_than_lies_there_is_neither_issued_nor_thrown_away(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 2);
	stores_card(&s, CARD_WRITE_OFF);
	stores_pack(&s, "GREEN-M", "T26", FAR, 1);
	refused(stores_type(&s, "3"), "only 2");
	stores_type(&s, "2");
	refused(stores_type(&s, ""), "cannot be kept");
	must_say(stores_type(&s, "wet carton"),
	         "Written off: 2 packs of finger tourniquet, green, M, lot T26");
	assert_int_equal(stores_lot(&s, "GREEN-M", "T26", FAR)->shelf, 0);
}

static void several_lots_are_told_apart_by_what_is_typed(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 2);
	receive("GREEN-M", "T27", FAR, 2);
	stores_card(&s, CARD_COUNT_SHELF);
	refused(stores_pack(&s, "GREEN-M", "", 0, 1), "Stores have 2 lots");
	refused(stores_type(&s, "GREEN-X"), "no line 'GREEN-X'");
	must_say(stores_type(&s, "GREEN-M/T27"), "How many packs lie on the shelf?");
}

static void a_room_that_opened_what_it_never_got_is_below_nothing(void **state)
{
	(void)state;
	stores_took(&s, TOOK_OPENED, 7, 2, "GREEN-M", "T99", FAR, 1);
	const struct stock_lot *lot = stores_lot(&s, "GREEN-M", "T99", FAR);
	assert_int_equal(stock_in_room(&s.stock, lot, 2), -1);
	assert_int_equal(lot->opened, 1);
	assert_int_equal(lot->received, 0);
}

/* --- quarantine ------------------------------------------------------------------------------------- */

static void a_line_or_a_lot_is_held_and_two_people_release_it(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 2);
	receive("GREEN-M", "T-26", FAR, 1);
	stores_badge(&s, 1);
	stores_card(&s, CARD_QUARANTINE);
	must_say(stores_type(&s, "GREEN-M/T26"), "Lot T26 alone?");
	stores_card(&s, CARD_YES);
	stores_type(&s, "recalled by the maker");
	must_say(stores_card(&s, CARD_NO), "Lot T-26 of it reads alike: compare the packs.");
	assert_non_null(station_quarantined(&s.st, "GREEN-M", "T26"));
	assert_null(station_quarantined(&s.st, "GREEN-M", "T-26"));
	stores_card(&s, CARD_RELEASE);
	stores_type(&s, "GREEN-M/T26");
	refused(stores_badge(&s, 1), "a second person releases it");
	assert_non_null(station_quarantined(&s.st, "GREEN-M", "T26"));
	must_say(stores_badge(&s, 2), "Released by STORES-1 and STORES-2");
	assert_null(station_quarantined(&s.st, "GREEN-M", "T26"));
	stores_card(&s, CARD_RELEASE);
	refused(stores_type(&s, "GREEN-M/T26"), "is not in quarantine");
}

static void a_whole_line_is_held_over_every_lot(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 2);
	stores_card(&s, CARD_QUARANTINE);
	stores_pack(&s, "GREEN-M", "T26", FAR, 10); /* the box will do: it is the same line */
	stores_card(&s, CARD_NO);
	stores_type(&s, "latex in the tag");
	must_say(stores_type(&s, "FSN 12/28"), "all lots");
	assert_non_null(station_quarantined(&s.st, "GREEN-M", "T27"));
	assert_string_equal(s.st.quarantines[0].notice, "FSN 12/28");
}

/* --- found ------------------------------------------------------------------------------------------ */

static void what_is_found_acts_on_the_case_that_misses_one(void **state)
{
	(void)state;
	stores_took(&s, TOOK_MISSING, 41, 1, "GREEN-M", "T26", FAR, 1);
	stores_card(&s, CARD_FOUND);
	must_say(stores_type(&s, "GREEN-M"), "FOUND: finger tourniquet, green, M comes from case 41");
	assert_int_equal(s.out.events[1].kind, EV_FOUND_AFTER);
	assert_int_equal(s.out.events[1].case_no, 41);
	assert_int_equal(s.out.events[2].kind, EV_SLIP_QUEUED);
	assert_int_equal(s.stock.n_missing, 0);
	stores_card(&s, CARD_FOUND);
	must_say(stores_type(&s, "GREEN-M"),
	         "No case misses finger tourniquet, green, M, and none is charged");
	for (int i = 0; i < s.out.count; i++)
		assert_int_equal(s.out.events[i].case_no, 0);
}

static void of_several_cases_the_slip_says_which(void **state)
{
	(void)state;
	stores_took(&s, TOOK_MISSING, 41, 1, "GREEN-M", "T26", FAR, 1);
	stores_took(&s, TOOK_MISSING, 42, 2, "GREEN-M", "T27", FAR, 1);
	stores_took(&s, TOOK_MISSING, 43, 2, "PLAIN-M", "", 0, 1);
	stores_card(&s, CARD_FOUND);
	must_say(stores_type(&s, "GREEN-M"), "2 cases miss one");
	refused(stores_slip(&s, 43), "Case 43 has not ended, or misses nothing");
	must_say(stores_slip(&s, 42), "comes from case 42");
	assert_int_equal(s.stock.n_missing, 2);
}

static void a_wrapper_that_is_found_proves_no_more(void **state)
{
	(void)state;
	stores_took(&s, TOOK_MISSING, 41, 1, "PLAIN-M", "A7", FAR, 1);
	receive("PLAIN-M", "A7", FAR, 1);
	print(1);
	stores_label(&s, 1);
	stores_pack(&s, "PLAIN-M", "A7", FAR, 1);
	stores_card(&s, CARD_FOUND);
	struct bench_input in = stores_label_in(&s, 1);
	snprintf(in.thing.identity, sizeof in.thing.identity, "item:00000001");
	in.thing.identity_kind = IDENTITY_PACK;
	in.used_in = 41;
	refused(stores_scan(&s, in), "proves only that the pack was opened");
	assert_int_equal(s.stock.n_missing, 1);
}

/* --- questions -------------------------------------------------------------------------------------- */

static void what_answers_nothing_is_refused_with_the_question(void **state)
{
	(void)state;
	stores_card(&s, CARD_RECEIVE);
	refused(stores_card(&s, CARD_YES), "What came?");
	refused(stores_badge(&s, 1), "What came?");
	refused(stores_card(&s, CARD_UNDO), "Nothing is taken back at a bench");
	must_say(stores_card(&s, CARD_DONE), "Left: nothing was entered.");
	refused(stores_card(&s, CARD_DONE), "Nothing is asked now that DONE would answer");
	refused(stores_card(&s, CARD_TO_ROOM + 9), "is no room");
	refused(stores_type(&s, "GREEN-M"), "Nothing asks for text");
}

int main(void)
{
#define T(test) cmocka_unit_test_setup_teardown(test, at_bench_setup, at_bench_teardown)
	const struct CMUnitTest tests[] = {
	    T(two_boxes_of_ten_are_twenty_packs),
	    T(the_same_box_read_twice_is_no_second_box),
	    T(what_was_typed_needs_a_second_person),
	    T(with_nobody_to_confirm_it_waits_and_is_not_issued),
	    T(ten_thousand_packs_are_asked_about_and_too_many_refused),
	    T(a_day_that_is_none_and_a_lot_that_is_none_are_asked_again),
	    T(what_has_expired_or_is_in_quarantine_is_received_and_said),
	    T(what_expired_or_is_in_quarantine_is_not_issued),
	    T(a_pack_that_comes_back_is_looked_at_first),
	    T(what_comes_back_and_is_not_issued_is_laid_apart),
	    T(a_label_that_is_read_says_that_its_pack_has_expired),
	    T(one_in_each_is_asked_as_packs),
	    T(what_a_case_returned_is_to_be_looked_at_until_the_bench_has_read_it),
	    T(a_labelled_pack_goes_to_another_room_only_after_the_bench_has_read_it),
	    T(counting_the_shelf_says_the_difference),
	    T(more_than_lies_there_is_neither_issued_nor_thrown_away),
	    T(several_lots_are_told_apart_by_what_is_typed),
	    T(a_room_that_opened_what_it_never_got_is_below_nothing),
	    T(a_line_or_a_lot_is_held_and_two_people_release_it),
	    T(a_whole_line_is_held_over_every_lot),
	    T(what_is_found_acts_on_the_case_that_misses_one),
	    T(of_several_cases_the_slip_says_which),
	    T(a_wrapper_that_is_found_proves_no_more),
	    T(what_answers_nothing_is_refused_with_the_question),
	};
#undef T
	return cmocka_run_group_tests(tests, NULL, NULL);
}
