/* Lots at a bench that are no ordinary ones: that wait to be confirmed, that have several expiries or none, that outlived their
 * line in the catalogue. */
#include "tests/unit/stock/at-bench.h"

#include <stdio.h>

static void wait(const char *line_lot, const char *many)
{
	stores_badge(&s, 1);
	stores_card(&s, CARD_RECEIVE);
	stores_type(&s, line_lot);
	stores_type(&s, "2029-03-31");
	stores_type(&s, many);
	stores_card(&s, CARD_NOBODY_TO_CONFIRM);
}

static const struct stock_lot *counted(const char *line_lot, const char *many, const char *said)
{
	stores_card(&s, CARD_COUNT_SHELF);
	must_say(stores_type(&s, line_lot), "wait to be confirmed: count them too");
	must_say(stores_type(&s, many), said);
	return stores_lot(&s, "GREEN-M", "T30", FAR);
}

static void what_waits_is_counted_and_goes_on_waiting(void **state)
{
	(void)state;
	wait("GREEN-M/T30", "10");
	const struct stock_lot *l = counted("GREEN-M/T30", "10", "by the record 10");
	must_say(s.out.said, "unaccounted 0. What waited to be confirmed waits");
	assert_true(l->waits == 10 && l->shelf == 0 && l->unaccounted == 0);
	l = counted("GREEN-M/T30", "12", "unaccounted -2"); /* nobody has compared these either */
	assert_true(l->waits == 12 && l->shelf == 0);
	l = counted("GREEN-M/T30", "9", "unaccounted 1");
	assert_true(l->waits == 9 && l->shelf == 0);
	stores_card(&s, CARD_WRITE_OFF);
	stores_type(&s, "GREEN-M/T30");
	refused(stores_type(&s, "1"), "neither issued nor written off before: CONFIRM");
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_CONFIRM);
	stores_type(&s, "GREEN-M/T30");
	must_say(stores_badge(&s, 2), "packs: 9.");
	assert_true(l->waits == 0 && l->shelf == 9);
}

static void of_those_that_are_short_the_ones_that_wait_are_left(void **state)
{
	(void)state;
	receive("GREEN-M", "T30", FAR, 5);
	wait("GREEN-M/T30", "10");
	const struct stock_lot *l = counted("GREEN-M/T30", "17", "by the record 15");
	assert_true(l->waits == 12 && l->shelf == 5 && l->unaccounted == -2);
	l = counted("GREEN-M/T30", "14", "by the record 17");
	assert_true(l->waits == 12 && l->shelf == 2 && l->unaccounted == 1);
	l = counted("GREEN-M/T30", "4", "by the record 14");
	assert_true(l->waits == 4 && l->shelf == 0 && l->unaccounted == 11);
	l = counted("GREEN-M/T30", "0", "by the record 4"); /* typed wrongly: it was never there */
	assert_true(l->waits == 0 && l->shelf == 0 && l->unaccounted == 15);
}

/* As an earlier version kept it: of what did not wait. */
static void a_count_of_an_earlier_version_means_what_it_meant(void **state)
{
	struct event e = {.kind = EV_STOCK_COUNTED,
	                  .room = BENCH_ROOM,
	                  .n = 3,
	                  .batch = {.line = "GREEN-M", .lot = "T30", .expiry = FAR}};
	char why[300];
	(void)state;
	receive("GREEN-M", "T30", FAR, 5);
	wait("GREEN-M/T30", "10");
	assert_int_equal(stores_apply(&s, &e, 1, why, sizeof why), 0);
	const struct stock_lot *l = stores_lot(&s, "GREEN-M", "T30", FAR);
	assert_true(l->waits == 10 && l->shelf == 3 && l->unaccounted == 2);
}

static void shelf_of(int32_t expiry, int packs)
{
	const struct stock_lot *l = stores_lot(&s, "GREEN-M", "T26", expiry);
	assert_int_equal(l->shelf, packs);
}

static void one_lot_with_two_expiries_is_told_apart_by_the_day(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 6);
	receive("GREEN-M", "T26", FAR + 1, 6); /* typed wrongly */
	stores_card(&s, CARD_WRITE_OFF);
	refused(stores_type(&s, "GREEN-M/T26"), "with 2 expiries: scan a pack whose code says its expiry, or "
	                                        "type GREEN-M/T26/2028-03-31");
	refused(stores_pack(&s, "GREEN-M", "T26", 0, 1), "with 2 expiries");
	refused(stores_type(&s, "GREEN-M"), "with 2 expiries");
	refused(stores_type(&s, "GREEN-M/T26/2030-01-01"), "never received");
	refused(stores_type(&s, "GREEN-M/T26/none"), "never received");
	stores_type(&s, "GREEN-M/T26/2029-04-01");
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_WRITE_OFF);
	refused(stores_type(&s, "GREEN-M/T26/2029-02-30"), "never received"); /* no day: a lot of that name */
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_COUNT_SHELF);
	must_say(stores_type(&s, "GREEN-M/T26/2029-03-31"), "How many packs");
	stores_type(&s, "5");
	shelf_of(FAR, 5);
	shelf_of(FAR + 1, 6);
}

static void of_what_is_down_to_nought_nobody_is_asked(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 6);
	receive("GREEN-M", "T26", FAR - 1, 1);
	stores_card(&s, CARD_WRITE_OFF);
	stores_type(&s, "GREEN-M/T26/2029-03-30");
	stores_type(&s, "1");
	stores_type(&s, "typed wrongly");
	stores_card(&s, CARD_TO_ROOM + 1);
	must_say(stores_type(&s, "GREEN-M/T26"), "Issued to Theatre 1: 1 pack");
	shelf_of(FAR, 5);
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_COUNT_SHELF);
	must_say(stores_type(&s, "GREEN-M/T26/2029-03-30"), "How many packs"); /* one turns up */
	stores_type(&s, "1");
	stores_card(&s, CARD_COUNT_SHELF);
	refused(stores_type(&s, "GREEN-M/T26"), "with 2 expiries");
}

static void what_has_no_lot_or_no_expiry_is_named_so(void **state)
{
	(void)state;
	receive("GREEN-M", "A/7", FAR, 2);
	stores_pack(&s, "GREEN-M", "", 0, 1);
	stores_type(&s, "none");
	stores_type(&s, "none");
	stores_type(&s, "3");
	stores_badge(&s, 1);
	stores_badge(&s, 2);
	stores_card(&s, CARD_COUNT_SHELF);
	stores_type(&s, "GREEN-M/none");
	must_say(stores_type(&s, "3"), "no lot and no expiry");
	stores_card(&s, CARD_COUNT_SHELF);
	stores_type(&s, "GREEN-M/A/7"); /* a lot with a slash */
	must_say(stores_type(&s, "2"), "lot A/7");
	stores_card(&s, CARD_COUNT_SHELF);
	stores_type(&s, "GREEN-M//2029-03-31");
	must_say(stores_type(&s, "2"), "lot A/7");
}

static void leave_catalogue(const char *key)
{
	char why[300];
	struct event e = {.kind = EV_LINE_REMOVED};
	snprintf(e.batch.line, sizeof e.batch.line, "%s", key);
	assert_int_equal(stores_apply(&s, &e, 1, why, sizeof why), 0);
	assert_null(catalogue_by_key(&s.st.catalogue, key));
}

static void what_is_left_of_a_line_is_removed_by_its_key_and_not_used(void **state)
{
	(void)state;
	receive("GREEN-M", "T26", FAR, 4);
	stores_took(&s, TOOK_MISSING, 41, 1, "GREEN-M", "T26", FAR, 1);
	leave_catalogue("GREEN-M");
	assert_int_equal(stock_usable(&s.stock, &s.st, "GREEN-M", BENCH_TODAY), 0);
	assert_int_equal(stock_lying(&s.stock, "GREEN-M"), 4);
	stores_card(&s, CARD_TO_ROOM + 1);
	refused(stores_type(&s, "GREEN-M"), "its line is not in the catalogue any more");
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_RECEIVE);
	refused(stores_type(&s, "GREEN-M/T26"), "no line 'GREEN-M'");
	stores_card(&s, CARD_DONE);
	stores_card(&s, CARD_QUARANTINE);
	stores_type(&s, "GREEN-M/T26");
	stores_card(&s, CARD_YES);
	stores_type(&s, "recalled by the maker");
	must_say(stores_card(&s, CARD_NO), "In quarantine: GREEN-M, lot T26. On the shelf 4");
	stores_card(&s, CARD_COUNT_SHELF);
	stores_type(&s, "GREEN-M/T26");
	must_say(stores_type(&s, "3"), "Counted 3 of GREEN-M");
	stores_card(&s, CARD_WRITE_OFF);
	stores_type(&s, "GREEN-M");
	stores_type(&s, "3");
	must_say(stores_type(&s, "recalled by the maker"), "Written off: 3 packs of GREEN-M");
	stores_card(&s, CARD_FOUND);
	must_say(stores_type(&s, "GREEN-M"), "FOUND: GREEN-M comes from case 41");
}

int main(void)
{
#define T(test) cmocka_unit_test_setup_teardown(test, at_bench_setup, at_bench_teardown)
	const struct CMUnitTest tests[] = {
	    T(what_waits_is_counted_and_goes_on_waiting),
	    T(of_those_that_are_short_the_ones_that_wait_are_left),
	    T(a_count_of_an_earlier_version_means_what_it_meant),
	    T(one_lot_with_two_expiries_is_told_apart_by_the_day),
	    T(of_what_is_down_to_nought_nobody_is_asked),
	    T(what_has_no_lot_or_no_expiry_is_named_so),
	    T(what_is_left_of_a_line_is_removed_by_its_key_and_not_used),
	};
#undef T
	return cmocka_run_group_tests(tests, NULL, NULL);
}
