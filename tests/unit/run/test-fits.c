/* What is stored can be read back and applied: what cannot is refused in words, whole, and the station starts again
 * on what it wrote. */
#include <errno.h>
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "tests/unit/record/folder.h"

static struct core core;
static char folder[FOLDER_MAX];
static struct error e;

static void open_station(void)
{
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
}

static int setup(void **state)
{
	(void)state;
	folder_make(folder);
	open_station();
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

/* Whatever was done to it: it reads its own record from beginning to end, and starts on it. */
static void starts_again(void)
{
	struct chain chain;
	int64_t events, last = record_last(core.record, NULL);
	if (record_verify(core.record, &events, &chain, &e) < 0)
		fail_msg("%s", e.text);
	assert_int_equal(events, last);
	core_close(&core);
	open_station();
	assert_string_equal(core.distrust, "");
}

/* Nothing of it is stored, the reason names `words`, and the station is trusted as before. */
static void is_refused(struct event *events, int count, const char *words)
{
	int64_t last = record_last(core.record, NULL);
	e = (struct error){0};
	int n = core_store(&core, events, count, &e);
	if (n >= 0 || !strstr(e.text, words) || !strstr(e.text, ": "))
		fail_msg("%d, not refused for '%s': %s", n, words, e.text);
	if (!e.at.file || e.at.line < 1)
		fail_msg("nobody knows where this was found out: %s", e.text);
	assert_int_equal(record_last(core.record, NULL), last);
	for (int i = 0; i < count; i++)
		assert_int_equal(events[i].seq, 0);
	assert_string_equal(core.distrust, "");
	starts_again();
}

static void is_refused_alone(struct event event, const char *words)
{
	is_refused(&event, 1, words);
}

static const struct reply *scan_as(const char *scanner, int32_t room, const char *text)
{
	return core_scan(&core, &(struct scan){.scanner = scanner,
	                                       .room = room,
	                                       .aim = "",
	                                       .data = text,
	                                       .size = strlen(text),
	                                       .flags = EVENT_KEYED});
}

static void card(char out[OWN_CODE_MAX], int32_t room, int meaning)
{
	struct own_code code = {.kind = OWN_CARD, .meaning = meaning, .room = room};
	memcpy(code.site, core.station.site, sizeof core.station.site);
	assert_int_equal(own_code_write(&code, out), 0);
}

/* --- what could not be read back ------------------------------------------------------------------ */

static void a_number_that_the_record_cannot_hold_is_refused(void **state)
{
	(void)state;
	is_refused_alone((struct event){.kind = EV_REFUSED, .room = -5}, "'room'");
	is_refused_alone((struct event){.kind = EV_ALIVE, .case_no = -1}, "'case'");
	is_refused_alone((struct event){.kind = EV_SLIP_STATE, .n = 1, .what = SLIP_SENT, .ref = -5},
	                 "'ref'");
	is_refused_alone((struct event){.kind = EV_LABELLED, .batch = {.expiry = -7, .first = 1, .last = 2}},
	                 "'batch.expiry'");
	is_refused_alone((struct event){.kind = EV_LABELLED, .batch = {.expiry = 1215752191}},
	                 "'batch.expiry'");
	is_refused_alone((struct event){.kind = EV_STAFF_SET, .staff = {.number = 1, .name = "X", .kind = 4}},
	                 "'staff.kind'");
	is_refused_alone((struct event){.kind = EV_QUARANTINED, .thing = {.expiry = 100000000}},
	                 "'thing.expiry'");
	is_refused_alone((struct event){.kind = EV_ALIVE, .at = {.boot = 1, .boot_ms = INT64_MAX}}, "alive");
}

static void the_whole_batch_is_refused_with_the_one(void **state)
{
	(void)state;
	struct event batch[] = {{.kind = EV_STAFF_SET, .staff = {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0}},
	                        {.kind = EV_REFUSED, .room = -5, .text = "x"}};
	is_refused(batch, 2, "'room'");
	assert_int_equal(core.station.staff.count, 0);
}

static void a_scan_for_a_room_that_cannot_be_is_not_stored(void **state)
{
	(void)state;
	const struct reply *r = scan_as("keyed", -5, "A");
	assert_int_equal(r->verdict, VERDICT_REFUSED);
	assert_non_null(strstr(r->said, "NOT ENTERED"));
	starts_again();
}

static struct line tray_of(const char *first, const char *second)
{
	struct line l = {.key = "TRAY", .name = "tray", .role = ROLE_TRAY, .per_pack = 1};
	snprintf(l.contents[0].key, LINE_KEY_MAX, "%s", first);
	snprintf(l.contents[1].key, LINE_KEY_MAX, "%s", second);
	l.contents[0].count = l.contents[1].count = 2;
	return l;
}

static void a_tray_that_names_a_line_twice_is_refused(void **state)
{
	(void)state;
	is_refused_alone((struct event){.kind = EV_LINE_SET, .line = tray_of("A", "A")}, "cannot store this");
	struct event good = {.kind = EV_LINE_SET, .line = tray_of("B", "A")};
	assert_int_equal(core_store(&core, &good, 1, &e), 0);
	starts_again();
}

/* A text that was cut in the middle of a letter is stored without those bytes, and is the same before a restart as after
 * it. */
static void the_station_knows_what_a_restart_will_know(void **state)
{
	(void)state;
	struct event q = {.kind = EV_QUARANTINED, .thing = {.line = "X"}, .text = "cut \xc3"};
	assert_int_equal(core_store(&core, &q, 1, &e), 0);
	assert_string_equal(station_quarantined(&core.station, "X", ""), "cut ?");
	starts_again();
	assert_string_equal(station_quarantined(&core.station, "X", ""), "cut ?");
}

/* --- what could not be applied -------------------------------------------------------------------- */

static struct event line_with(const char *key, const char *code)
{
	struct event set = {.kind = EV_LINE_SET,
	                    .line = {.role = ROLE_TOURNIQUET, .marked = 1, .visible = 1, .per_pack = 1}};
	snprintf(set.line.key, sizeof set.line.key, "%s", key);
	snprintf(set.line.name, sizeof set.line.name, "finger tourniquet, %s", key);
	snprintf(set.line.codes[0], LINE_CODE_MAX, "%s", code);
	return set;
}

static void a_line_with_the_code_of_another_is_refused(void **state)
{
	(void)state;
	struct event first = line_with("GREEN-M", "09506000134352");
	assert_int_equal(core_store(&core, &first, 1, &e), 0);
	struct event file[] = {line_with("BLUE-S", "09506000134369"), line_with("BAND-M", "09506000134352")};
	is_refused(file, 2, "BAND-M");
	assert_int_equal(core.station.catalogue.count, 1);
	struct event unmarked = line_with("PLAIN", "09506000134376");
	unmarked.line.marked = 0;
	is_refused(&unmarked, 1, "regulator");
	struct event twice[] = {line_with("A", "09506000134383"), line_with("B", "09506000134383")};
	is_refused(twice, 2, "line 'B'");
}

static void more_lines_than_a_catalogue_holds_are_refused(void **state)
{
	(void)state;
	struct event *all = calloc(CATALOGUE_LINES_MAX + 1, sizeof *all);
	assert_non_null(all);
	for (int i = 0; i <= CATALOGUE_LINES_MAX; i++) {
		char key[16];
		snprintf(key, sizeof key, "K%d", i);
		all[i] = line_with(key, "");
	}
	is_refused(all, CATALOGUE_LINES_MAX + 1, "full");
	free(all);
}

static void a_case_for_which_there_is_no_place_is_refused(void **state)
{
	(void)state;
	for (int i = 1; i <= SHEETS_MAX; i++) {
		struct event opened = {.kind = EV_CASE_OPENED, .room = i, .case_no = i};
		assert_int_equal(core_store(&core, &opened, 1, &e), 0);
	}
	is_refused_alone((struct event){.kind = EV_CASE_OPENED, .room = 40, .case_no = 40}, "no room");
	is_refused_alone((struct event){.kind = EV_CASE_OPENED, .room = 1, .case_no = 1}, "does not fit");
	struct event turn[] = {{.kind = EV_CASE_ENDED, .case_no = 1, .room = 1, .what = END_CANCELLED},
	                       {.kind = EV_CASE_OPENED, .case_no = 40, .room = 1}};
	assert_int_equal(core_store(&core, turn, 2, &e), 0);
	starts_again();
	assert_true(station_sheet_of_case(&core.station, 40) >= 0);
}

static void what_does_not_fit_the_sheet_is_refused(void **state)
{
	static const struct event wrong[] = {
	    {.kind = EV_ITEM_ON, .item = 3, .digit = 2},
	    {.kind = EV_DIGIT_STILL_ON, .digit = 2},
	    {.kind = EV_JOINED, .person = 1, .what = 200},
	    {.kind = EV_ASKED, .what = 255},
	    {.kind = EV_UNDONE, .ref = 77},
	    {.kind = EV_UNDONE},
	};
	(void)state;
	struct event opened = {.kind = EV_CASE_OPENED, .room = 1, .case_no = 1};
	assert_int_equal(core_store(&core, &opened, 1, &e), 0);
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
		struct event batch[] = {{.kind = EV_NEXT}, wrong[i]};
		batch[0].case_no = batch[1].case_no = batch[0].room = batch[1].room = 1;
		is_refused(batch, 2, event_name(wrong[i].kind));
		if (strcmp(e.at.file, "sheet-apply.c") != 0 && strcmp(e.at.file, "station.c") != 0)
			fail_msg("found out in %s:%d", e.at.file, e.at.line);
	}
}

/* Scanners are renamed and replaced: the record of a busy site has seen more of them than the station remembers. */
static void any_number_of_scanners_may_have_been_carried(void **state)
{
	char here[OWN_CODE_MAX], spare[OWN_CODE_MAX], name[16];
	(void)state;
	card(here, 1, CARD_THIS_ROOM);
	card(spare, 1, CARD_SPARE_SCANNER);
	assert_int_equal(scan_as("spare-1", 1, spare)->verdict, VERDICT_ACCEPTED);
	for (int i = 1; i <= 2 * CARRIED_MAX; i++) {
		snprintf(name, sizeof name, "s%d", i);
		const struct reply *r = scan_as(name, 1, here);
		if (r->verdict != VERDICT_ACCEPTED)
			fail_msg("%s: %s", name, r->said);
	}
	assert_int_equal(core.station.n_carried, CARRIED_MAX);
	assert_string_equal(core.station.carried[0].scanner, "spare-1"); /* bound: it stays */
	int told = 0;
	for (int i = 0; i < RECENT_MAX; i++)
		told += strstr(core.recent[0][i].said, "works for its own room again") != NULL;
	assert_true(told > 0); /* not in silence */
	starts_again();
	assert_int_equal(core.station.n_carried, CARRIED_MAX);
	assert_string_equal(core.station.carried[0].scanner, "spare-1");
	assert_int_equal(station_scanner_room(&core.station, name, 2, core_now(&core)), 1);
}

/* --- doubt ---------------------------------------------------------------------------------------- */

static void what_it_could_not_follow_is_not_forgotten_with_the_next_event(void **state)
{
	(void)state;
	core.doubt.diverged = 9;
	core.doubt.diverged_by = EV_LINE_SET;
	struct event staff = {.kind = EV_STAFF_SET, .staff = {1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0}};
	assert_int_equal(core_store(&core, &staff, 1, &e), 0);
	assert_string_equal(core.distrust,
	                    "The station could not follow its own record at event 9 (line-set). "
	                    "Restart it when no case is open.");
}

int main(void)
{
#define STATION_TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
	    STATION_TEST(a_number_that_the_record_cannot_hold_is_refused),
	    STATION_TEST(the_whole_batch_is_refused_with_the_one),
	    STATION_TEST(a_scan_for_a_room_that_cannot_be_is_not_stored),
	    STATION_TEST(a_tray_that_names_a_line_twice_is_refused),
	    STATION_TEST(the_station_knows_what_a_restart_will_know),
	    STATION_TEST(a_line_with_the_code_of_another_is_refused),
	    STATION_TEST(more_lines_than_a_catalogue_holds_are_refused),
	    STATION_TEST(a_case_for_which_there_is_no_place_is_refused),
	    STATION_TEST(what_does_not_fit_the_sheet_is_refused),
	    STATION_TEST(any_number_of_scanners_may_have_been_carried),
	    STATION_TEST(what_it_could_not_follow_is_not_forgotten_with_the_next_event),
	};
	setenv("TZ", "UTC", 1);
	if (access("/dev/shm", W_OK) == 0)
		setenv("TMPDIR", "/dev/shm", 0); /* no disk is waited for: durability is tested elsewhere */
	return cmocka_run_group_tests(tests, NULL, NULL);
}
