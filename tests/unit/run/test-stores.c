/* A stores bench on a real record: what survives a power cut, what the record knows of a label, what a case tells stores, and
 * who hears of a recall. */
#include "tests/unit/code/cmocka-all.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "run/file-lists.h"
#include "run/stock-lists.h"
#include "run/stock-steps.h"
#include "run/teller.h"
#include "tests/unit/run/stores-station.h"

static void an_open_question_survives_a_restart(void **state)
{
	(void)state;
	must_say(scan(9, BOX "T26"), "How many boxes came, of 10 packs in each?");
	again();
	must_say(card(9, CARD_NUMBER_2), "Received: 20 packs");
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->shelf, 20);
}

static void what_a_case_opened_and_gave_back_moves_the_stock(void **state)
{
	(void)state;
	scan(9, BOX "T26");
	card(9, CARD_NUMBER_1);
	card(9, CARD_TO_ROOM + 1);
	scan(9, GREEN "T26");
	scan(9, GREEN "T26");
	card(9, CARD_DONE);
	operate(GREEN "T26(21)S1");
	card(1, CARD_RETURNED_UNOPENED);
	scan(1, GREEN "T26(21)S1");
	card(1, CARD_CANCEL);
	card(1, CARD_YES);
	assert_int_equal(station_sheet_of_room(&core.station, 1), -1);
	const struct stock_lot *l = lot("GREEN-M", "T26", 20330331);
	assert_int_equal(l->returned, 1);
	assert_int_equal(l->opened, 0);
	assert_int_equal(stock_in_room(&core.stock, l, 1), 2); /* it lies there still */
	again();
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->returned, 1);
}

/* What lies counted in goes on, comes off and is accounted for: the case ends reconciled. */
static void end_case(int32_t room)
{
	badge(room, 2);
	own(room, (struct own_code){.kind = OWN_DIGIT, .digit = 2});
	own(room, (struct own_code){.kind = OWN_DIGIT, .digit = 2});
	card(room, CARD_OFF);
	card(room, CARD_FINAL_COUNT);
	card(room, CARD_INTACT);
	badge(room, 2);
	own(room, (struct own_code){.kind = OWN_DIGIT, .digit = 2});
	badge(room, 3);
	if (station_sheet_of_room(&core.station, room) >= 0)
		fail_msg("the case of room %d goes on: %s", (int)room, core.outcome.reply.said);
}

static void use_up(int32_t room, const char *pack)
{
	operate_in(room, pack);
	end_case(room);
}

static void a_pack_with_a_wrong_number_in_it_is_told_apart_from_one_that_was_used(void **state)
{
	(void)state;
	operate(GREEN "T26(21)S1");
	card(1, CARD_WRONG_NUMBER_IN_PACK);
	scan(1, GREEN "T26(21)S1");
	must_say(scan(1, GREEN "T26(21)S2"), "Counted in");
	end_case(1);
	const struct stock_lot *l = lot("GREEN-M", "T26", 20330331);
	assert_int_equal(l->isolated, 1);
	assert_int_equal(l->opened, 1);
}

static void a_box_is_no_item_of_a_case(void **state)
{
	(void)state;
	card(1, CARD_NEW_CASE);
	badge(1, 1);
	badge(1, 2);
	must_say(scan(1, BOX "T26"), "the code of a box of several: open it and scan the pack");
	assert_int_equal(core.station.sheets[0].n_items, 0);
}

static void a_later_pack_is_accepted_and_the_earlier_one_named(void **state)
{
	(void)state;
	scan(9, "(01)09506000134352(17)320131(10)T20");
	card(9, CARD_NUMBER_1);
	operate(GREEN "T26(21)S1");
	must_say(core.outcome.reply.said, "An earlier one lies in stores: lot T20, expiry 31 Jan 2032.");
	core.station.policy.earlier_first = 0;
	scan(1, GREEN "T26(21)S2");
	card(1, CARD_ADD);
	assert_null(strstr(scan(1, GREEN "T26(21)S3"), "An earlier one"));
}

static int keep_recalled(void *context, const struct event *e)
{
	if (e->kind == EV_RECALLED)
		*(struct event *)context = *e;
	return 0;
}

static void a_recall_is_told_at_once_in_the_room_that_has_one(void **state)
{
	(void)state;
	operate(GREEN "T26(21)S1");
	card(9, CARD_QUARANTINE);
	scan(9, GREEN "T26");
	card(9, CARD_YES);
	scan(9, "recalled by the maker");
	must_say(scan(9, "FSN-7"), "In quarantine");
	must_say(core.recent[0][0].said,
	         "RECALL: finger tourniquet, green, M, lot T26, is in quarantine since now");
	must_say(core.recent[0][0].said, "Case 1 has one on its sheet.");
	assert_string_equal(core.recent[1][0].said, ""); /* theatre 2 has none */
	struct event on_slip = {0};
	again();
	assert_int_equal(record_each(core.record, 1, keep_recalled, &on_slip, NULL), 0);
	assert_int_equal(on_slip.kind, EV_RECALLED);
	assert_string_equal(on_slip.thing.name, "finger tourniquet, green, M");
	assert_string_equal(on_slip.text, "recalled by the maker");
	must_say(scan(1, GREEN "T26(21)S2"), "in quarantine");
}

static const json_t *first_of(const json_t *o, const char *list)
{
	return json_array_get(json_object_get(o, list), 0);
}

static void a_recall_lists_the_cases_that_used_one_and_the_rooms_that_are_silent(void **state)
{
	(void)state;
	struct error e = {0};
	struct batch of = {.line = "GREEN-M", .lot = "T26"};
	use_up(1, GREEN "T26(21)S1");
	use_up(1, GREEN "T27(21)S2");
	operate_in(2, GREEN "T26(21)S3");
	scan(9, GREEN "T026");
	card(9, CARD_NUMBER_1);
	json_t *list = stock_recall_list(&core, &of, &e);
	assert_non_null(list);
	assert_false(json_truth(list, "held"));
	assert_int_equal(json_array_size(json_object_get(list, "silent")), 0); /* of no time yet */
	json_decref(list);
	sleep(1); /* the wall clock of the record tells them apart */
	assert_int_equal(core_store(&core,
	                            &(struct event){.kind = EV_QUARANTINED,
	                                            .text = "recalled",
	                                            .thing = {.line = "GREEN-M", .lot = "T26"}},
	                            1, &e),
	                 0);
	sleep(1);
	card(2, CARD_NO);
	list = stock_recall_list(&core, &of, &e);
	assert_non_null(list);
	assert_true(json_truth(list, "held"));
	assert_int_equal(json_array_size(json_object_get(list, "cases")), 1);
	assert_int_equal(json_number(first_of(list, "cases"), "case", 0), 1);
	assert_int_equal(json_number(first_of(list, "cases"), "packs", 0), 1);
	assert_int_equal(json_number(first_of(list, "cases"), "day", 0), core_today(&core));
	assert_int_equal(json_number(first_of(list, "cases"), "slip", 0), 1);
	assert_int_equal(json_number(first_of(list, "open"), "case", 0), 3);
	assert_string_equal(json_string_value(first_of(list, "near")), "T026");
	assert_int_equal(json_array_size(json_object_get(list, "silent")), 1);
	assert_int_equal(json_number(first_of(list, "silent"), "room", 0), 1);
	json_decref(list);
	of.lot[0] = 0;
	list = stock_used(&core, &of, 0, &e);
	assert_int_equal(json_array_size(json_object_get(list, "cases")), 2);
	assert_int_equal(json_number(list, "told_since", 0), core_today(&core));
	json_decref(list);
	list = stock_used(&core, &of, core_today(&core) + 1, &e);
	assert_int_equal(json_array_size(json_object_get(list, "cases")), 0);
	json_decref(list);
}

static void the_view_of_a_bench_says_what_is_to_be_done(void **state)
{
	(void)state;
	print_labels();
	json_t *view = teller_room(&core, 9), *stores = json_object_get(view, "stores");
	assert_non_null(stores);
	assert_int_equal(json_array_size(json_object_get(stores, "stock")), 1);
	assert_int_equal(
	    json_array_size(json_object_get(json_array_get(json_object_get(stores, "labels"), 0), "open")),
	    4);
	assert_string_equal(json_text(json_array_get(json_object_get(stores, "low"), 0), "key"), "GREEN-M");
	must_say(json_text(view, "next"), "Read back: 4 labels");
	json_decref(view);
	view = teller_room(&core, 1);
	assert_null(json_object_get(view, "stores"));
	json_decref(view);
}

static void cards_of_a_room_have_no_use_at_a_bench_and_the_other_way(void **state)
{
	(void)state;
	must_say(card(9, CARD_NEW_CASE), "Nothing is asked now that NEW CASE would answer");
	must_say(own(9, (struct own_code){.kind = OWN_DIGIT, .digit = 2}), "has no use at a stores bench");
	card(1, CARD_NEW_CASE);
	int events = (int)record_last(core.record, NULL);
	const char *said = card(1, CARD_RECEIVE);
	assert_int_equal(core.outcome.reply.verdict, VERDICT_REFUSED);
	assert_true(said[0] && record_last(core.record, NULL) <= events + 1);
}

/* --- by the command -------------------------------------------------------------------------------- */

static void a_bench_works_by_the_command_as_by_its_scanner(void **state)
{
	(void)state;
	must_end(
	    steps("[{\"card\":\"RECEIVE\"},{\"text\":\"PLAIN-M\"},{\"at\":\"lot\",\"text\":\"A7\"},{\"at\":"
	          "\"expiry\",\"text\":\"2033-03-31\"},{\"at\":\"how-many\",\"text\":\"4\"},{\"at\":\"so-"
	          "many\","
	          "\"card\":\"YES\"},{\"at\":\"typed-by\",\"badge\":1},{\"at\":\"second\",\"badge\":2}]",
	          0),
	    "accepted", "Received: 4 packs of finger tourniquet, orange, M, lot A7", "");
	/* one that its code says all of asks less: those steps are left out */
	must_end(steps("[{\"card\":\"RECEIVE\"},{\"text\":\"" BOX
	               "T26\"},{\"at\":\"lot\",\"text\":\"T26\"},{\"at\":"
	               "\"how-many\",\"text\":\"2\"},{\"at\":\"typed-by\",\"badge\":1}]",
	               0),
	         "accepted", "Received: 20 packs", "");
	must_end(steps("[{\"to_room\":1},{\"text\":\"GREEN-M/T26\"},{\"text\":\"GREEN-M/"
	               "T26\"},{\"card\":\"DONE\",\"at\":"
	               "\"issue\"}]",
	               0),
	         "accepted", "Done.", "");
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->issued, 2);
	must_end(steps("[{\"card\":\"RETURNED "
	               "PACK\"},{\"text\":\"GREEN-M/T26\"},{\"to_room\":1,\"at\":\"return-from\"},{"
	               "\"card\":\"YES\",\"at\":\"sealed\"}]",
	               0),
	         "accepted", "", "");
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->back, 1);
	must_end(steps("[{\"card\":\"COUNT "
	               "SHELF\"},{\"text\":\"GREEN-M/T26\"},{\"at\":\"count-many\",\"text\":\"18\"}]",
	               0),
	         "accepted", "", "");
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->unaccounted, 1);
}

#define TYPED(lot)                                                                                           \
	"{\"card\":\"RECEIVE\"},{\"text\":\"PLAIN-M/" lot "\"},{\"at\":\"expiry\",\"text\":\"2033-03-31\"}," \
	"{\"at\":\"how-many\",\"text\":\"4\"}"

static int keep_received(void *context, const struct event *e)
{
	if (e->kind == EV_RECEIVED)
		*(struct event *)context = *e;
	return 0;
}

static void the_people_of_a_receipt_are_those_that_the_command_names(void **state)
{
	struct event e = {0};
	(void)state;
	badge(9, 3); /* somebody else works here */
	must_end(steps("[{\"badge\":1}," TYPED("A7") ",{\"at\":\"second\",\"badge\":2}]", 0), "accepted",
	         "Received: 4 packs", "");
	assert_int_equal(record_each(core.record, 0, keep_received, &e, NULL), 0);
	assert_int_equal(e.person, 1);
	assert_int_equal(e.other, 2);
}

static void refuses_people(const char *list, const char *why)
{
	int64_t before = record_last(core.record, NULL);
	json_t *o = steps(list, 0);
	assert_int_equal(json_number(o, "entered", -1), 0);
	must_end(o, "refused", why, "");
	assert_int_equal(record_last(core.record, NULL), before);
}

static void nothing_is_begun_for_people_who_cannot_be_those_of_it(void **state)
{
	(void)state;
	badge(9, 3);
	refuses_people("[{\"badge\":99}," TYPED("A7") ",{\"at\":\"second\",\"badge\":2}]",
	               "Badge 99 is not known");
	refuses_people("[{\"badge\":1}," TYPED("A7") ",{\"at\":\"second\",\"badge\":99}]",
	               "Badge 99 is not known");
	refuses_people("[{\"badge\":1}," TYPED("A7") ",{\"at\":\"second\",\"badge\":1}]", "SCRUB-1 began it");
	core_store(&core, &(struct event){.kind = EV_STAFF_WITHDRAWN, .person = 2}, 1, NULL);
	refuses_people("[{\"badge\":2}," TYPED("A7") "]", "Badge 2 was withdrawn");
	assert_int_equal(core.stock.n_lots, 0);
	assert_int_equal(stock_bench(&core.stock, 9)->person, 3);
}

static void nobody_is_named_as_the_second_person_of_what_a_code_says(void **state)
{
	(void)state;
	json_t *o = steps("[{\"card\":\"RECEIVE\"},{\"text\":\"" BOX
	                  "T26\"},{\"at\":\"how-many\",\"text\":\"2\"},{\"at\":\"second\",\"badge\":2}]",
	                  0);
	assert_int_equal(json_number(o, "entered", -1), 0);
	must_end(o, "refused", "leave out --and", "How many boxes came");
	assert_int_equal(core.stock.n_lots, 0);
}

/* Given beside what the code says. */
static void refuses_beside_code(const char *code, const char *given, const char *why)
{
	char list[600];
	snprintf(list, sizeof list,
	         "[{\"card\":\"RECEIVE\"},{\"text\":\"%s\"},%s,{\"at\":\"how-many\",\"text\":\"2\"}]", code,
	         given);
	must_end(steps(list, 0), "refused", why, "came");
	assert_int_equal(core.stock.n_lots, 0);
}

static void what_contradicts_the_code_is_refused_with_both(void **state)
{
	(void)state;
	refuses_beside_code(GREEN "T26", "{\"at\":\"lot\",\"text\":\"Z9\"}",
	                    "its code says lot T26, expiry 2033-03-31, and lot Z9, expiry 2033-03-31");
	refuses_beside_code(GREEN "T26", "{\"at\":\"expiry\",\"text\":\"2026-12-01\"}",
	                    "and lot T26, expiry 2026-12-01 is given");
	refuses_beside_code(GREEN "T26", "{\"at\":\"expiry\",\"text\":\"none\"}", "expiry none is given");
	refuses_beside_code("(01)09506000134352(10)T26",
	                    "{\"at\":\"lot\",\"text\":\"none\"},{\"at\":\"expiry\",\"text\":\"none\"}",
	                    "its code says lot T26, expiry none, and lot none");
	must_end(
	    steps("[{\"card\":\"RECEIVE\"},{\"text\":\"" GREEN
	          "T26\"},{\"at\":\"expiry\",\"text\":\"2033-03-31\"},{\"at\":\"how-many\",\"text\":\"2\"}]",
	          0),
	    "accepted", "Received: 2 packs", "");
}

static void what_the_command_does_not_answer_is_left_and_told(void **state)
{
	(void)state;
	must_end(
	    steps("[{\"card\":\"RECEIVE\"},{\"text\":\"PLAIN-M/A7\"},{\"at\":\"expiry\",\"text\":\"none\"}]",
	          0),
	    "question", "How many packs came", "How many packs came");
	assert_int_equal(stock_bench(&core.stock, 9)->asked.what, BENCH_NOTHING);
	must_end(steps("[{\"card\":\"RECEIVE\"},{\"text\":\"NOTHING-M\"}]", 0), "refused", "NOTHING-M",
	         "came");
	assert_int_equal(stock_bench(&core.stock, 9)->asked.what, BENCH_NOTHING);
	/* what comes behind a step that was refused was meant for what was to be asked then */
	must_end(steps("[{\"card\":\"RECEIVE\"},{\"text\":\"NOTHING-M\"},{\"text\":\"PLAIN-M/A7\"}]", 0),
	         "refused", "NOTHING-M", "came");
	assert_int_equal(core.stock.n_lots, 0);
}

static void nobody_at_the_bench_is_interrupted(void **state)
{
	(void)state;
	int64_t before;
	scan(9, BOX "T26");
	before = record_last(core.record, NULL);
	steps("[{\"card\":\"RECEIVE\"}]", -EBUSY);
	assert_int_equal(record_last(core.record, NULL), before);
	must_say(card(9, CARD_NUMBER_1), "Received: 10 packs");
	steps("[]", -EINVAL);
	steps("[{\"card\":\"NEW CASE\"}]", -EINVAL);
	steps("[{\"card\":\"RECEIVE\",\"at\":\"no-question\"}]", -EINVAL);
	steps("[{\"badge\":1000000}]", -EINVAL);
}

/* --- lists that are taken as files ----------------------------------------------------------------- */

static json_t *import(const char *csv, int whole, int preview)
{
	struct error e = {0};
	json_t *o = import_catalogue(&core, csv, strlen(csv), whole, preview, &e);
	if (!o)
		fail_msg("%s", e.text);
	return o;
}

static void an_open_case_keeps_the_line_that_it_began_with(void **state)
{
	static const char other[] = "key,name,role,codes\nSWAB,swabs,other,09506000134383\n";
	(void)state;
	operate(GREEN "T26(21)S1");
	int64_t before = record_last(core.record, NULL);
	json_t *o = import(other, 1, 1);
	assert_int_equal(json_number(o, "removed", 0), 2);
	assert_int_equal(json_number(o, "added", 0), 1);
	json_decref(o);
	assert_int_equal(record_last(core.record, NULL), before); /* a preview stores nothing */
	assert_int_equal(core.station.catalogue.count, 2);
	json_decref(import(other, 1, 0));
	assert_int_equal(core.station.catalogue.count, 1);
	again();
	assert_int_equal(core.station.catalogue.count, 1);
	const struct thing *t = &core.station.sheets[0].items[0].thing;
	assert_string_equal(t->name, "finger tourniquet, green, M");
	assert_true(t->role == ROLE_TOURNIQUET && t->single_use);
	must_say(scan(1, GREEN "T26(21)S2"), "Not in the catalogue");
	end_case(1);
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->opened, 1);
}

static void a_staff_list_withdraws_who_has_left(void **state)
{
	static const char csv[] =
	    "number,name,kind,registered\n1,SCRUB-1,practitioner,yes\n3,SURG-3,surgeon,yes\n,"
	    "NEW-4,charge,no\n";
	struct error e = {0};
	(void)state;
	int64_t before = record_last(core.record, NULL);
	json_t *o = import_staff(&core, csv, sizeof csv - 1, 1, &e);
	assert_non_null(o);
	assert_int_equal(json_number(o, "withdrawn", 0), 1);
	assert_int_equal(record_last(core.record, NULL), before);
	json_decref(o);
	json_decref(import_staff(&core, csv, sizeof csv - 1, 0, &e));
	again();
	assert_true(staff_find(&core.station.staff, 2)->withdrawn);
	assert_string_equal(staff_name(&core.station.staff, 4), "NEW-4");
	card(1, CARD_NEW_CASE);
	must_say(badge(1, 2), "withdrawn");
}

static void the_badge_of_who_is_in_a_case_keeps_its_name(void **state)
{
	static const char csv[] =
	    "number,name,kind,registered\n1,OTHER-1,practitioner,yes\n2,CIRC-2,practitioner,yes\n"
	    "3,SURG-3,surgeon,yes\n";
	struct error e = {0};
	(void)state;
	card(1, CARD_NEW_CASE);
	badge(1, 1);
	int64_t before = record_last(core.record, NULL);
	assert_null(import_staff(&core, csv, sizeof csv - 1, 0, &e));
	must_say(e.text, "badge 000001 is of SCRUB-1, who is in case 1");
	assert_int_equal(record_last(core.record, NULL), before);
	card(1, CARD_CANCEL);
	card(1, CARD_YES);
	json_t *o = import_staff(&core, csv, sizeof csv - 1, 0, &e);
	assert_non_null(o);
	json_decref(o);
	assert_string_equal(staff_name(&core.station.staff, 1), "OTHER-1");
}

int main(void)
{
#define T(test) cmocka_unit_test_setup_teardown(test, stores_setup, stores_teardown)
	const struct CMUnitTest tests[] = {
	    T(a_bench_works_by_the_command_as_by_its_scanner),
	    T(the_people_of_a_receipt_are_those_that_the_command_names),
	    T(nothing_is_begun_for_people_who_cannot_be_those_of_it),
	    T(nobody_is_named_as_the_second_person_of_what_a_code_says),
	    T(what_contradicts_the_code_is_refused_with_both),
	    T(what_the_command_does_not_answer_is_left_and_told),
	    T(nobody_at_the_bench_is_interrupted),
	    T(an_open_case_keeps_the_line_that_it_began_with),
	    T(a_staff_list_withdraws_who_has_left),
	    T(the_badge_of_who_is_in_a_case_keeps_its_name),
	    T(an_open_question_survives_a_restart),
	    T(what_a_case_opened_and_gave_back_moves_the_stock),
	    T(a_pack_with_a_wrong_number_in_it_is_told_apart_from_one_that_was_used),
	    T(a_box_is_no_item_of_a_case),
	    T(a_later_pack_is_accepted_and_the_earlier_one_named),
	    T(a_recall_is_told_at_once_in_the_room_that_has_one),
	    T(a_recall_lists_the_cases_that_used_one_and_the_rooms_that_are_silent),
	    T(the_view_of_a_bench_says_what_is_to_be_done),
	    T(cards_of_a_room_have_no_use_at_a_bench_and_the_other_way),
	};
#undef T
	return cmocka_run_group_tests(tests, NULL, NULL);
}
