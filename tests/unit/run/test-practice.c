/* Practice: codes of its own, a record of its own, and nothing of either in the real one. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>

#include "base/file.h"
#include "code/own-codes.h"
#include "run/core-internal.h"
#include "run/practice.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

static struct core core;
static char folder[FOLDER_MAX];
static int stored; /* events of the real record */

static void count_stored(void *context, const struct event *events, int count)
{
	(void)context, (void)events;
	stored += count;
}

static void write_settings(void)
{
	static const char ini[] =
	    "[site]\nletters = BC\nname = Example Hospital\n[room 1]\nname = Theatre 1\n"
	    "[room 2]\nname = Theatre 2\n[room 3]\nname = Bench\nkind = stores\n";
	char path[FOLDER_MAX + 20];
	snprintf(path, sizeof path, "%s/station.ini", folder);
	assert_int_equal(file_replace(path, 0600, ini, sizeof ini - 1), 0);
}

static void open_again(void)
{
	struct error e = {0};
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
	core.stored = count_stored;
	stored = 0;
}

static int setup(void **state)
{
	(void)state;
	folder_make(folder);
	write_settings();
	open_again();
	const struct person circ = {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0};
	assert_int_equal(core_store(&core, &(struct event){.kind = EV_STAFF_SET, .staff = circ}, 1, NULL), 0);
	stored = 0;
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	practice_end_all(&core);
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static const char *scan_in(int32_t room, struct own_code code)
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, core.station.site, 3);
	if (!code.room && (code.kind == OWN_CARD || code.kind == OWN_DIGIT))
		code.room = room;
	assert_int_equal(own_code_write(&code, text), 0);
	char scanner[] = "hand-1";
	scanner[5] = (char)('0' + room);
	return core_scan(&core,
	                 &(struct scan){
	                     .scanner = scanner, .room = room, .aim = "", .data = text, .size = strlen(text)})
	    ->said;
}

static const char *card(int meaning)
{
	return scan_in(1, (struct own_code){.kind = OWN_CARD, .practice = true, .meaning = meaning});
}

static const char *digit(int number)
{
	return scan_in(1, (struct own_code){.kind = OWN_DIGIT, .practice = true, .digit = number});
}

static const char *badge(int number)
{
	return scan_in(1, (struct own_code){.kind = OWN_BADGE, .practice = true, .number = number});
}

static const char *pack(int number)
{
	return scan_in(1, (struct own_code){.kind = OWN_TRAY, .practice = true, .number = number});
}

static const char *real(int meaning)
{
	return scan_in(1, (struct own_code){.kind = OWN_CARD, .meaning = meaning});
}

static void must_say(const char *said, const char *words)
{
	if (!said || !strstr(said, words))
		fail_msg("not '%s': %s", words, said ? said : "nothing");
}

static int there(const char *name)
{
	char path[FOLDER_MAX + 60];
	struct stat file;
	snprintf(path, sizeof path, "%s/%s", folder, name);
	return stat(path, &file) == 0;
}

static int is_shown(int32_t room, const char *key)
{
	json_t *view = teller_room(&core, room);
	int is = json_is_true(json_object_get(view, key));
	json_decref(view);
	return is;
}

/* What the real record's files hold, of which nothing may change. */
static void read_record_files(struct buf *out)
{
	static const char *const names[] = {"record.db", "record.db-wal", "head/head.json"};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		char path[FOLDER_MAX + 60];
		snprintf(path, sizeof path, "%s/%s", folder, names[i]);
		if (there(names[i]))
			assert_int_equal(file_read(path, out), 0);
	}
}

static void ordinary_case(void)
{
	must_say(card(CARD_NEW_CASE), "Practice: Case 1 opened");
	must_say(badge(PRACTICE_FIELD), "at the field");
	must_say(badge(PRACTICE_CIRCULATING), "circulating");
	must_say(pack(PRACTICE_TOURNIQUET), "Counted in: 1 practice tourniquet");
	must_say(pack(PRACTICE_FORCEPS), "Counted in: 1 practice forceps");
	must_say(badge(PRACTICE_CIRCULATING), "agreed aloud");
	must_say(digit(2), "Tourniquet on, right index finger");
	digit(2);
	must_say(card(CARD_OFF), "Off, right index finger");
	must_say(card(CARD_FINAL_COUNT), "Final count");
	card(CARD_INTACT);
	card(CARD_YES);
	must_say(badge(PRACTICE_CIRCULATING), "agreed aloud");
	must_say(digit(2), "seen bare");
	must_say(badge(PRACTICE_SURGEON), "reconciled");
}

static void a_whole_case_is_practised_and_the_real_record_stays_as_it_is(void **state)
{
	(void)state;
	_cleanup_(buf_free) struct buf before = {0}, after = {0};
	int64_t last = record_last(core.record, NULL);
	read_record_files(&before);
	ordinary_case();
	struct core *p = practice_in(&core, 1);
	assert_non_null(p);
	assert_int_equal(p->station.n_unseen, 1);
	struct event written = {
	    .kind = EV_SLIP_STATE, .room = 1, .case_no = 1, .n = 1, .what = SLIP_WRITTEN, .other = 1};
	assert_int_equal(core_store(p, &written, 1, NULL), 0);
	const struct paper paper = {.proof = slip_proof(p->seal, "BC", p->station.number, 1, 1)};
	must_say(
	    scan_in(1,
	            (struct own_code){
	                .kind = OWN_SLIP, .practice = true, .number = 1, .copy = 1, .proof = paper.proof}),
	    "lip 0000001");
	assert_int_equal(p->station.n_unseen, 0);
	read_record_files(&after);
	assert_int_equal(before.size, after.size);
	assert_memory_equal(before.data, after.data, before.size);
	assert_int_equal(record_last(core.record, NULL), last);
	assert_int_equal(stored, 0);
	assert_int_equal(core.station.last_case_no, 0);
	assert_int_equal(core.station.last_slip_no, 0);
	assert_true(is_shown(1, "practice"));
	assert_false(is_shown(2, "practice"));
}

static void the_slip_of_practice_bears_a_code_of_its_set_and_no_signature(void **state)
{
	(void)state;
	struct error e = {0};
	ordinary_case();
	json_t *slip = teller_slip(practice_in(&core, 1), 1, 1, SLIP_RECONCILIATION, 1, &e);
	assert_non_null(slip);
	assert_memory_equal(json_text(slip, "code"), "BXBC4", 5);
	assert_null(json_object_get(slip, "jws"));
	assert_null(json_object_get(slip, "record"));
	json_decref(slip);
}

static void the_first_other_code_ends_practice_and_counts(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	badge(PRACTICE_FIELD);
	assert_true(there("practice/1/record.db"));
	must_say(real(CARD_NEW_CASE), "Case 1 opened in Theatre 1");
	assert_null(practice_in(&core, 1));
	assert_false(there("practice/1"));
	assert_false(is_shown(1, "practice"));
	assert_int_equal(core.station.sheets[0].case_no, 1);
	must_say(core.recent[0][1].said, "Practice is over");
	assert_null(strstr(core.recent[0][0].said, "Practice"));
	must_say(badge(PRACTICE_FIELD), "nothing of it was entered in case 1, which is real");
	must_say(digit(2), "nothing of it was entered in case 1");
	assert_null(practice_in(&core, 1));
	assert_int_equal(core.station.sheets[0].n_digits, 0);
}

/* Whatever it is: a pack that nobody knows, a wristband, a badge. */
static void a_pack_that_is_not_known_ends_it_as_well(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	const struct scan unknown = {
	    .scanner = "hand-1", .room = 1, .aim = "", .data = "(01)09506000134352", .size = 18};
	must_say(core_scan(&core, &unknown)->said, "Not in the catalogue");
	assert_null(practice_in(&core, 1));
	card(CARD_NEW_CASE);
	scan_in(1, (struct own_code){.kind = OWN_BADGE, .number = 2});
	assert_null(practice_in(&core, 1));
}

static void a_code_that_nobody_could_read_ends_nothing(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	const struct scan misread = {
	    .scanner = "hand-1", .room = 1, .aim = "", .data = "BTBC10104052", .size = 12};
	must_say(core_scan(&core, &misread)->said, "Practice: Misread");
	assert_non_null(practice_in(&core, 1));
}

static void a_digit_of_practice_is_on_no_patient(void **state)
{
	(void)state;
	must_say(digit(2), "Practice: ");
	assert_int_equal(station_sheet_of_room(&core.station, 1), -1);
	assert_int_equal(stored, 0);
	practice_in(&core, 1)->station.policy.repeat_ms = 0;
	must_say(scan_in(1, (struct own_code){.kind = OWN_DIGIT, .digit = 2}), "Right index finger");
	assert_true(station_sheet_of_room(&core.station, 1) >= 0);
}

static void one_alone_practises_in_a_room_of_two(void **state)
{
	(void)state;
	must_say(badge(PRACTICE_ALONE), "Practice: Case 1");
	must_say(pack(PRACTICE_TOURNIQUET), "Counted in");
	must_say(digit(7), "Tourniquet on, left index finger");
	digit(7);
	card(CARD_OFF);
	card(CARD_INTACT);
	digit(7);
	card(CARD_LOOKED_NOBODY);
	must_say(badge(PRACTICE_ALONE), "ended reconciled");
	assert_false(station_room(&core.station, 1)->single);
	must_say(card(CARD_NEW_CASE), "Case 2 opened");
	assert_false(station_room(&practice_in(&core, 1)->station, 1)->single);
}

static void each_room_practises_by_itself(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	must_say(scan_in(2, (struct own_code){.kind = OWN_CARD, .practice = true, .meaning = CARD_NEW_CASE}),
	         "Practice: Case 1 opened in Theatre 2");
	must_say(real(CARD_NEW_CASE), "Case 1 opened in Theatre 1");
	assert_null(practice_in(&core, 1));
	assert_non_null(practice_in(&core, 2));
	must_say(scan_in(3, (struct own_code){.kind = OWN_BADGE, .practice = true, .number = 1}),
	         "counts nothing here");
	must_say(
	    scan_in(2, (struct own_code){.kind = OWN_CARD, .practice = true, .room = 1, .meaning = CARD_YES}),
	    "Theatre 1");
	assert_int_equal(station_sheet_of_room(&core.station, 2), -1);
}

/* What waits for somebody may not be hidden behind an exercise. */
static void it_does_not_begin_where_something_of_patients_waits(void **state)
{
	(void)state;
	real(CARD_NEW_CASE);
	real(CARD_SUSPEND);
	must_say(card(CARD_NEW_CASE), "Practice begins when nothing is open, asked or owed");
	assert_null(practice_in(&core, 1));
}

static void a_reminder_of_another_room_is_shown_all_the_same(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	must_say(scan_in(2, (struct own_code){.kind = OWN_DIGIT, .digit = 2}), "Right index finger");
	for (int i = 0; i < SHEETS_MAX; i++)
		for (int d = 0; d < core.station.sheets[i].n_digits; d++)
			core.station.sheets[i].digits[d].since.boot_ms -= 90 * 60000;
	while (core_tick(&core))
		;
	for (int i = 0; i < core.station.n_rooms; i++) {
		core.station.heard[i].reminder.boot_ms -= 90 * 60000;
		core.station.heard[i].scan.boot_ms -= 180 * 60000;
	}
	json_t *view = teller_room(&core, 1);
	assert_true(json_is_true(json_object_get(view, "practice")));
	assert_int_equal(json_array_size(json_object_get(view, "elsewhere")), 1);
	json_decref(view);
}

static void half_an_hour_without_a_scan_ends_it(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	practice_tick(&core);
	assert_non_null(practice_in(&core, 1));
	core.practice[0]->last.boot_ms -= 31 * 60000;
	practice_tick(&core);
	assert_null(practice_in(&core, 1));
	must_say(core.recent[0][0].said, "Practice is over");
	assert_int_equal(stored, 0);
}

static void stored_scans_of_one_kind_are_practised_and_others_are_real(void **state)
{
	(void)state;
	struct own_code code = {
	    .kind = OWN_CARD, .practice = true, .site = "BC", .room = 1, .meaning = CARD_NEW_CASE};
	char open[OWN_CODE_MAX], finger[OWN_CODE_MAX], other[OWN_CODE_MAX];
	own_code_write(&code, open);
	code = (struct own_code){.kind = OWN_DIGIT, .practice = true, .site = "BC", .room = 1, .digit = 2};
	own_code_write(&code, finger);
	code.practice = false;
	own_code_write(&code, other);
	struct scan scans[] = {
	    {.scanner = "hand-1", .room = 1, .aim = "", .data = open, .size = strlen(open), .made_ms = 1},
	    {.scanner = "hand-1",
	     .room = 1,
	     .aim = "",
	     .data = finger,
	     .size = strlen(finger),
	     .made_ms = 2}};
	core_stored(&core, scans, 2, 0);
	assert_non_null(practice_in(&core, 1));
	assert_int_equal(core.station.n_held, 0);
	scans[1].data = other;
	core_stored(&core, scans, 2, 0);
	assert_null(practice_in(&core, 1));
	assert_int_equal(core.station.n_held, 1);
}

static void nothing_of_it_is_there_after_a_restart(void **state)
{
	(void)state;
	card(CARD_NEW_CASE);
	assert_true(there("practice/1/station.key"));
	/* as after a kill: nobody ended it, and its folder is there */
	core_close_practice(&core.practice[0]->core);
	free(core.practice[0]);
	core.practice[0] = NULL;
	core_close(&core);
	assert_true(there("practice/1/station.key"));
	open_again();
	assert_false(there("practice"));
	assert_null(practice_in(&core, 1));
	assert_false(is_shown(1, "practice"));
}

int main(void)
{
#define T(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
	    T(a_whole_case_is_practised_and_the_real_record_stays_as_it_is),
	    T(the_slip_of_practice_bears_a_code_of_its_set_and_no_signature),
	    T(the_first_other_code_ends_practice_and_counts),
	    T(a_pack_that_is_not_known_ends_it_as_well),
	    T(a_code_that_nobody_could_read_ends_nothing),
	    T(a_digit_of_practice_is_on_no_patient),
	    T(one_alone_practises_in_a_room_of_two),
	    T(each_room_practises_by_itself),
	    T(it_does_not_begin_where_something_of_patients_waits),
	    T(a_reminder_of_another_room_is_shown_all_the_same),
	    T(half_an_hour_without_a_scan_ends_it),
	    T(stored_scans_of_one_kind_are_practised_and_others_are_real),
	    T(nothing_of_it_is_there_after_a_restart),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
