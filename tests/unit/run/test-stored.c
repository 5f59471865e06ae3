/* Stored scans from their bytes to the record: what is held, for which room, since when, and that no end of the
 * station loses it (rules 3, 12, 17, 18, 20). */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "base/clock.h"
#include "code/own-codes.h"
#include "decide/stored-enter.h"
#include "run/core-internal.h"
#include "tests/unit/record/folder.h"

static char folder[FOLDER_MAX];
static struct core core;
static struct error e;
static char texts[STORED_MAX + 2][64];
static struct scan scans[STORED_MAX + 2];

static void open_again(void)
{
	core_close(&core);
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
}

static int setup(void **state)
{
	static const char csv[] =
	    "key,name,role,codes,marked,visible,single_use,identity\n"
	    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,yes,pack\n";
	char path[FOLDER_MAX + 16];
	struct line *lines = NULL;
	size_t count = 0;
	(void)state;
	folder_make(folder);
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "we");
	if (!f)
		return 1;
	fputs("[site]\nletters = BC\n[room 1]\nname = Room 1\n[room 2]\nname = Room 2\n", f);
	fclose(f);
	if (core_open(&core, folder, &e) < 0 ||
	    catalogue_read_csv(csv, sizeof csv - 1, &lines, &count, &e) < 0)
		return 1;
	core_store(&core, &(struct event){.kind = EV_LINE_SET, .line = lines[0]}, 1, &e);
	free(lines);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static const char *own(struct own_code c, char out[64])
{
	memcpy(c.site, "BC", 3);
	assert_int_equal(own_code_write(&c, out), 0);
	return out;
}

static const char *card(int32_t room, int meaning, char out[64])
{
	return own((struct own_code){.kind = OWN_CARD, .room = room, .meaning = meaning}, out);
}

static const char *digit_of(int32_t room, int number, char out[64])
{
	return own((struct own_code){.kind = OWN_DIGIT, .room = room, .digit = number}, out);
}

static const char *digit(int number, char out[64])
{
	return digit_of(1, number, out);
}

static const struct reply *scan(const char *text)
{
	return core_scan(
	    &core,
	    &(struct scan){.scanner = "hand-2", .room = 1, .aim = "", .data = text, .size = strlen(text)});
}

/* The i-th scan of a batch, so many seconds old. */
static void put(int i, int age_s, const char *text)
{
	snprintf(texts[i], sizeof texts[i], "%s", text);
	scans[i] = (struct scan){.scanner = "hand-1",
	                         .room = 1,
	                         .aim = "",
	                         .data = texts[i],
	                         .size = strlen(texts[i]),
	                         .made_ms = clock_now().boot_ms - age_s * 1000};
}

static int held_in(int32_t room)
{
	int n = 0;
	for (int i = 0; i < core.station.n_held; i++)
		n += core.station.held[i].room == room;
	return n;
}

static const struct sheet *sheet(void)
{
	int i = station_sheet_of_room(&core.station, 1);
	assert_true(i >= 0);
	return &core.station.sheets[i];
}

static void a_digit_card_runs_since_it_was_made_and_opens_a_case(void **state)
{
	char text[64];
	(void)state;
	put(0, 640, digit(6, text));
	core_stored(&core, scans, 1, 0);
	assert_int_equal(sheet()->digits[0].state, DIGIT_MAYBE_ON);
	assert_int_equal(digit_stretch_ms(&sheet()->digits[0], core_now(&core)) / 1000, 640);
	assert_int_equal(sheet()->asked.what, Q_STORED);
	open_again();
	assert_int_equal(digit_stretch_ms(&sheet()->digits[0], core_now(&core)) / 1000, 640);
	assert_int_equal(sheet()->asked.what, Q_STORED);
	assert_int_equal(held_in(1), 1);
}

static void a_station_that_ends_between_yes_and_the_last_entry_asks_again(void **state)
{
	char text[64];
	struct input in = {.act = ACT_CARD, .room = 1, .card_room = 1, .card = CARD_YES};
	(void)state;
	scan(card(1, CARD_NEW_CASE, text));
	put(0, 30, card(1, CARD_AWAKE_PATIENT, text));
	put(1, 20, card(1, CARD_DRESSING_ALREADY_ON, text));
	put(2, 10, card(1, CARD_FINAL_COUNT, text));
	core_stored(&core, scans, 3, 0);
	in.at = core_now(&core);
	core_carry_out(&core, &in, NULL);
	assert_int_equal(core.outcome.enter, 3);
	assert_int_equal(sheet()->asked.what, Q_NONE);
	assert_true(stored_input(&core.station, 1, core_now(&core), &in));
	in.more = 1;
	core_carry_out(&core, &in, NULL);
	open_again();
	assert_true(sheet()->awake);
	assert_int_equal(held_in(1), 2);
	assert_int_equal(sheet()->asked.what, Q_STORED);
	scan(card(1, CARD_YES, text));
	assert_int_equal(held_in(1), 0);
	assert_true(sheet()->awake);
	assert_true(sheet()->dressing_on);
}

static int count_texts(void *context, const struct event *ev)
{
	const char **what = context;
	uint32_t has = event_fields(ev->kind);
	struct say say = {0};
	char words[SAID_MAX];
	if (has & F_SAID)
		say = said_say(&ev->said);
	say_sentence(&say, words, sizeof words);
	if (strstr(ev->text, what[0]) || strstr(words, what[0]) ||
	    (has & F_THING && strstr(ev->thing.identity, what[0])))
		what[1]++;
	return 0;
}

static int texts_with(const char *word)
{
	static const char none[100000];
	const char *what[2] = {word, none};
	assert_int_equal(record_each(core.record, 0, count_texts, what, &e), 0);
	return (int)(what[1] - none);
}

static void two_symbols_of_one_pack_are_one_scan(void **state)
{
	(void)state;
	put(0, 30, "(17)280331(10)T26");
	put(1, 29, "(01)09506000134352");
	core_stored(&core, scans, 2, 0);
	assert_int_equal(held_in(1), 1);
	assert_string_equal(core.station.held[0].thing.lot, "T26");
	assert_int_equal(texts_with("NOT held"), 0);
	assert_int_equal(core.station.idle_asked[0], Q_STORED);
}

static void what_comes_behind_a_card_this_room_is_held_for_that_room(void **state)
{
	char text[64];
	(void)state;
	put(0, 30, card(1, CARD_AWAKE_PATIENT, text));
	put(1, 20, card(2, CARD_THIS_ROOM, text));
	put(2, 10, card(2, CARD_AWAKE_PATIENT, text));
	core_stored(&core, scans, 3, 0);
	assert_int_equal(held_in(1), 1);
	assert_int_equal(held_in(2), 1);
	assert_int_equal(core.station.idle_asked[0], Q_STORED);
	assert_int_equal(core.station.idle_asked[1], Q_STORED);
	assert_int_equal(station_scanner_room(&core.station, "hand-1", 1, core_now(&core)), 2);
}

static void nothing_of_a_wristband_is_kept(void **state)
{
	char text[64];
	(void)state;
	put(0, 30, "(8018)950600010000000018");
	put(1, 29, card(1, CARD_AWAKE_PATIENT, text));
	core_stored(&core, scans, 2, 0);
	assert_non_null(strstr(core.outcome.reply.said, "NOT held: a patient's code"));
	assert_int_equal(held_in(1), 1);
	assert_int_equal(texts_with("95060001"), 0);
	assert_int_equal(texts_with("NOT held: a patient's code"), 1);
}

static void what_does_not_fit_is_refused_out_loud_and_its_digit_runs(void **state)
{
	char text[64];
	(void)state;
	for (int i = 0; i < HELD_ROOM_MAX; i++)
		put(i, 100 - i, card(1, i % 2 ? CARD_AWAKE_PATIENT : CARD_ADD, text));
	core_stored(&core, scans, HELD_ROOM_MAX, 0);
	put(0, 50, digit(7, text));
	put(1, 49, card(1, CARD_OFF, text));
	core_stored(&core, scans, 2, 1);
	assert_int_equal(held_in(1), HELD_ROOM_MAX);
	assert_non_null(
	    strstr(core.outcome.reply.said, "3 NOT held, the first: left index finger: too many"));
	assert_int_equal(texts_with("NOT held: OFF: too many wait"), 1);
	assert_int_equal(texts_with("NOT held: a code that is longer"), 1);
	assert_int_equal(sheet()->digits[0].state, DIGIT_MAYBE_ON);
}

/* A refused one is said in the answer to YES, whatever came after it. */
static void what_is_not_entered_is_said(void **state)
{
	char text[64];
	(void)state;
	scan(card(1, CARD_NEW_CASE, text));
	put(0, 30, card(1, CARD_OFF, text));
	put(1, 20, card(1, CARD_AWAKE_PATIENT, text));
	core_stored(&core, scans, 2, 0);
	const struct reply *r = scan(card(1, CARD_YES, text));
	assert_int_equal(r->verdict, VERDICT_REFUSED);
	assert_non_null(
	    strstr(r->said, "1 of 2 stored scans was entered as late. NOT entered: No tourniquet is on"));
	assert_true(sheet()->awake);
}

static void the_digit_card_of_another_room_starts_no_clock_here(void **state)
{
	char text[64];
	(void)state;
	put(0, 30, digit_of(2, 6, text));
	core_stored(&core, scans, 1, 0);
	assert_int_equal(held_in(1), 1);
	assert_true(station_sheet_of_room(&core.station, 1) < 0);
	assert_true(station_sheet_of_room(&core.station, 2) < 0);
}

/* What stood between them was not held: they are two scans all the same, and no row. */
static void equal_scans_that_came_apart_are_no_row(void **state)
{
	char text[64];
	(void)state;
	scan(card(1, CARD_NEW_CASE, text));
	put(0, 30, card(1, CARD_AWAKE_PATIENT, text));
	put(1, 20, card(1, CARD_NO, text));
	put(2, 10, card(1, CARD_AWAKE_PATIENT, text));
	core_stored(&core, scans, 3, 0);
	assert_int_equal(held_in(1), 2);
	scan(card(1, CARD_YES, text));
	assert_int_not_equal(sheet()->asked.what, Q_TWICE);
	assert_int_equal(held_in(1), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup_teardown(the_digit_card_of_another_room_starts_no_clock_here, setup,
	                                    teardown),
	    cmocka_unit_test_setup_teardown(equal_scans_that_came_apart_are_no_row, setup, teardown),
	    cmocka_unit_test_setup_teardown(a_digit_card_runs_since_it_was_made_and_opens_a_case, setup,
	                                    teardown),
	    cmocka_unit_test_setup_teardown(a_station_that_ends_between_yes_and_the_last_entry_asks_again,
	                                    setup, teardown),
	    cmocka_unit_test_setup_teardown(two_symbols_of_one_pack_are_one_scan, setup, teardown),
	    cmocka_unit_test_setup_teardown(what_comes_behind_a_card_this_room_is_held_for_that_room, setup,
	                                    teardown),
	    cmocka_unit_test_setup_teardown(nothing_of_a_wristband_is_kept, setup, teardown),
	    cmocka_unit_test_setup_teardown(what_does_not_fit_is_refused_out_loud_and_its_digit_runs, setup,
	                                    teardown),
	    cmocka_unit_test_setup_teardown(what_is_not_entered_is_said, setup, teardown),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
