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
#include "tests/unit/record/folder.h"

#define GREEN "(01)09506000134352(17)330331(10)"
#define BOX "(01)09506000134369(17)330331(10)"

static struct core core;
static char folder[FOLDER_MAX];

static void open_core(void)
{
	struct error e = {0};
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
}

/* As a power cut would: nothing is written at the end. */
static void again(void)
{
	core_close(&core);
	open_core();
}

static void write_settings(void)
{
	char path[FOLDER_MAX + 20];
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	fputs("[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n"
	      "[room 9]\nname = Stores\nkind = stores\n",
	      f);
	fclose(f);
}

static void fill(void)
{
	static const char csv[] =
	    "key,name,role,codes,marked,visible,single_use,identity,label,label_place,minimum\n"
	    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352 "
	    "09506000134369*10,yes,yes,yes,pack,no,,4\n"
	    "PLAIN-M,\"finger tourniquet, orange, M\",tourniquet,09506000134376,yes,yes,yes,none,after,film "
	    "side,\n";
	static const struct person people[] = {{1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},
	                                       {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	                                       {3, "SURG-3", STAFF_SURGEON, 1, 0}};
	struct line *lines = NULL;
	size_t count = 0;
	struct error e = {0};
	if (catalogue_read_csv(csv, sizeof csv - 1, &lines, &count, &e) < 0)
		fail_msg("%s", e.text);
	for (size_t i = 0; i < count; i++)
		assert_int_equal(
		    core_store(&core, &(struct event){.kind = EV_LINE_SET, .line = lines[i]}, 1, &e), 0);
	free(lines);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		assert_int_equal(
		    core_store(&core, &(struct event){.kind = EV_STAFF_SET, .staff = people[i]}, 1, &e), 0);
}

static int setup(void **state)
{
	(void)state;
	folder_make(folder);
	write_settings();
	open_core();
	fill();
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

/* Typed, since one who types means each code. */
static const char *scan(int32_t room, const char *text)
{
	return core_scan(&core, &(struct scan){.scanner = "hand",
	                                       .room = room,
	                                       .aim = "",
	                                       .data = text,
	                                       .size = strlen(text),
	                                       .flags = EVENT_KEYED})
	    ->said;
}

static const char *own(int32_t room, struct own_code code)
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, core.station.site, 3);
	code.room = code.kind == OWN_CARD || code.kind == OWN_DIGIT ? room : 0;
	assert_int_equal(own_code_write(&code, text), 0);
	return scan(room, text);
}

static const char *card(int32_t room, int meaning)
{
	return own(room, (struct own_code){.kind = OWN_CARD, .meaning = meaning});
}

static const char *badge(int32_t room, int number)
{
	return own(room, (struct own_code){.kind = OWN_BADGE, .number = number});
}

static const char *label_text(int number)
{
	static char text[40];
	char code[OWN_CODE_MAX];
	struct own_code own = {.kind = OWN_ITEM, .role = 'P', .number = number};
	memcpy(own.site, core.station.site, 3);
	assert_int_equal(own_code_write(&own, code), 0);
	snprintf(text, sizeof text, "(91)%s", code);
	return text;
}

static const char *label(int32_t room, int number)
{
	return scan(room, label_text(number));
}

static void must_say(const char *said, const char *words)
{
	if (!strstr(said, words))
		fail_msg("'%s' does not say '%s'", said, words);
}

static const struct stock_lot *lot(const char *line, const char *text, int32_t expiry)
{
	struct batch b = {.expiry = expiry};
	snprintf(b.line, sizeof b.line, "%s", line);
	snprintf(b.lot, sizeof b.lot, "%s", text);
	const struct stock_lot *l = stock_lot_of(&core.stock, &b);
	assert_non_null(l);
	return l;
}

static void print_labels(void)
{
	card(9, CARD_RECEIVE);
	scan(9, "PLAIN-M/A7");
	must_say(scan(9, "2033-03-31"), "How many packs came");
	must_say(scan(9, "4"), "Who typed");
	badge(9, 1);
	must_say(badge(9, 2), "Received: 4 packs of finger tourniquet, orange, M, lot A7");
	card(9, CARD_PRINT_LABELS);
	scan(9, "PLAIN-M");
	must_say(scan(9, "4"), "Labels 00000001 to 00000004");
}

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

static void an_open_question_survives_a_restart(void **state)
{
	(void)state;
	must_say(scan(9, BOX "T26"), "How many boxes came, of 10 packs in each?");
	again();
	must_say(card(9, CARD_NUMBER_2), "Received: 20 packs");
	assert_int_equal(lot("GREEN-M", "T26", 20330331)->shelf, 20);
}

/* An ordinary case with one pack. */
static void operate_in(int32_t room, const char *pack)
{
	card(room, CARD_NEW_CASE);
	badge(room, 1);
	badge(room, 2);
	must_say(scan(room, pack), "Counted in");
}

static void operate(const char *pack)
{
	operate_in(1, pack);
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

static json_t *steps(const char *list, int code)
{
	struct error e = {0};
	json_t *all = json_read(list, strlen(list), &e);
	if (!all)
		fail_msg("%s: %s", list, e.text);
	e = (struct error){0};
	json_t *o = stock_steps(&core, 9, all, &e);
	json_decref(all);
	assert_int_equal(o ? 0 : e.code, code);
	return o;
}

static void must_end(json_t *o, const char *verdict, const char *said, const char *asked)
{
	json_t *list = json_object_get(o, "said");
	assert_string_equal(json_text(o, "verdict"), verdict);
	must_say(json_string_value(json_array_get(list, json_array_size(list) - 1)), said);
	if (*asked)
		must_say(json_text(o, "asked"), asked);
	else
		assert_string_equal(json_text(o, "asked"), "");
	json_decref(o);
}

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
	               "T26\"},{\"at\":\"lot\",\"text\":\"X\"},{\"at\":"
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
#define T(test) cmocka_unit_test_setup_teardown(test, setup, teardown)
	const struct CMUnitTest tests[] = {
	    T(a_bench_works_by_the_command_as_by_its_scanner),
	    T(the_command_closes_labels_and_says_why_it_cannot_yet),
	    T(what_the_command_does_not_answer_is_left_and_told),
	    T(nobody_at_the_bench_is_interrupted),
	    T(an_open_case_keeps_the_line_that_it_began_with),
	    T(a_staff_list_withdraws_who_has_left),
	    T(the_badge_of_who_is_in_a_case_keeps_its_name),
	    T(a_power_cut_between_print_and_read_back_loses_no_label),
	    T(an_open_question_survives_a_restart),
	    T(what_a_case_opened_and_gave_back_moves_the_stock),
	    T(a_pack_with_a_wrong_number_in_it_is_told_apart_from_one_that_was_used),
	    T(a_label_that_a_case_read_is_on_its_pack_and_not_replaced),
	    T(a_label_that_a_case_read_is_not_called_spoilt_by_a_slip_of_the_keys),
	    T(what_stores_called_spoilt_is_counted_in_and_said),
	    T(what_stores_threw_away_is_counted_in_and_said),
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
