/* What a board says of the last scan: a reminder is none, and a room that nobody answers in is told elsewhere. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

#define MIN 60000

static struct core core;
static char folder[FOLDER_MAX];

static int setup(void **state)
{
	char path[FOLDER_MAX + 16];
	struct error e = {0};
	(void)state;
	folder_make(folder);
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "we");
	if (!f)
		return -1;
	fputs("[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n", f);
	fclose(f);
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static void scan(struct own_code code)
{
	char text[OWN_CODE_MAX];
	snprintf(code.site, sizeof code.site, "%s", core.station.site);
	code.room = code.room ? code.room : 1;
	assert_int_equal(own_code_write(&code, text), 0);
	core_scan(&core,
	          &(struct scan){
	              .scanner = "hand", .room = code.room, .aim = "", .data = text, .size = strlen(text)});
}

static void scan_card(enum own_card card, int room)
{
	scan((struct own_code){.kind = OWN_CARD, .meaning = (int)card, .room = room});
}

/* On for twenty minutes, and every scan before that was so many minutes ago. */
static void remind(int64_t minutes)
{
	scan_card(CARD_NEW_CASE, 1);
	scan((struct own_code){.kind = OWN_DIGIT, .digit = 9});
	scan_card(CARD_YES, 1);
	scan_card(CARD_10_MINUTES_AGO, 1);
	scan_card(CARD_NEXT, 1);
	scan_card(CARD_10_MINUTES_AGO, 1);
	core.station.heard[0].scan.boot_ms -= minutes * MIN;
	assert_int_equal(core_tick(&core), 1);
	core.station.heard[0].reminder.boot_ms -= minutes * MIN;
}

static int64_t ago(int32_t room)
{
	json_t *v = teller_room(&core, room), *ms = json_object_get(v, "last_scan_ms");
	int64_t n = json_is_null(ms) ? -1 : json_integer_value(ms);
	assert_true(json_is_null(ms) || json_is_integer(ms));
	json_decref(v);
	return n;
}

static void a_reminder_is_no_scan(void **state)
{
	(void)state;
	assert_int_equal(ago(1), -1);
	remind(7);
	assert_in_range(ago(1), 7 * MIN, 8 * MIN);
	assert_int_equal(ago(2), -1);
	json_t *v = teller_room(&core, 1);
	const char *next = json_string_value(json_object_get(v, "next"));
	const json_t *last = json_array_get(json_object_get(v, "recent"), 0);
	assert_non_null(strstr(next, "Tell the surgeon"));
	assert_null(strstr(json_string_value(json_object_get(last, "said")), "Reminder"));
	json_decref(v);
}

static void a_refused_scan_and_a_typed_one_are_scans(void **state)
{
	(void)state;
	remind(7);
	scan((struct own_code){.kind = OWN_BADGE, .number = 77});
	assert_int_equal(core.outcome.reply.verdict, VERDICT_REFUSED);
	assert_in_range(ago(1), 0, MIN);
	core.station.heard[0].scan.boot_ms -= 3 * MIN;
	core_typed(&core, 1, "a text that nothing asks for");
	assert_in_range(ago(1), 0, MIN);
}

static void the_last_scan_is_known_after_a_restart(void **state)
{
	struct error e;
	(void)state;
	scan_card(CARD_NEW_CASE, 1);
	core_close(&core);
	assert_int_equal(core_open(&core, folder, &e), 0);
	assert_in_range(ago(1), 0, MIN);
}

static size_t told(json_t *view, const char *words)
{
	const json_t *list = json_object_get(view, "elsewhere");
	size_t n = json_array_size(list);
	const char *text = json_string_value(json_object_get(json_array_get(list, 0), "text"));
	if (n && !strstr(text, words))
		fail_msg("%s", text);
	json_decref(view);
	return n;
}

static void what_nobody_answers_is_told_in_the_other_rooms_and_at_the_desk(void **state)
{
	(void)state;
	remind(2);
	assert_int_equal(told(teller_room(&core, 2), ""), 0);
	core.station.heard[0].reminder.boot_ms -= 4 * MIN;
	assert_int_equal(told(teller_room(&core, 2), "Theatre 1: left ring finger 20 min, no scan since "),
	                 1);
	assert_int_equal(told(teller_status(&core, NULL), "Theatre 1: left ring finger"), 1);
	assert_int_equal(told(teller_room(&core, 1), ""), 0);
	scan_card(CARD_NO, 1);
	assert_int_equal(told(teller_room(&core, 2), ""), 0);
}

static void quiet_hours_are_not_told_by_a_clock_that_is_wrong(void **state)
{
	(void)state;
	core.settings.sound.quiet_from = 0;
	core.settings.sound.quiet_to = 24 * 60;
	assert_int_equal(core_quiet(&core), 1);
	core.station.wall_ms += 24LL * 60 * MIN;
	core_tick(&core);
	assert_int_equal(core.station.clock_wrong, 1);
	assert_int_equal(core_quiet(&core), 0);
	json_t *v = teller_room(&core, 2), *status = teller_status(&core, NULL);
	assert_non_null(strstr(json_string_value(json_object_get(v, "clock")), "The wall clock is wrong"));
	assert_non_null(
	    strstr(json_string_value(json_object_get(status, "clock")), "The wall clock is wrong"));
	json_decref(v);
	json_decref(status);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
	    TEST(a_reminder_is_no_scan),
	    TEST(a_refused_scan_and_a_typed_one_are_scans),
	    TEST(the_last_scan_is_known_after_a_restart),
	    TEST(what_nobody_answers_is_told_in_the_other_rooms_and_at_the_desk),
	    TEST(quiet_hours_are_not_told_by_a_clock_that_is_wrong),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
