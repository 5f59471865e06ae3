/* However a settings file is damaged, the station starts, is the same station, and says so (rule 26). */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/file.h"
#include "code/own-codes.h"
#include "run/core.h"
#include "run/media.h"
#include "run/sound.h"
#include "tests/unit/record/folder.h"

#define IDENTITY "[site]\nletters = HU\nname = Hand unit\n[station]\nnumber = 7\n[room 1]\nname = Theatre 1\n"
#define SCANNERS                                                                                             \
	"[scanner hand-1]\nvendor = 1209\nproduct = b0c0\nroom = 1\n[scanner hand-2]\nvendor = 1209\n"       \
	"product = b0c1\nserial = SN2\nroom = 1\nmode = serial\nbaud = 9600\n"

static struct core core;
static struct settings s;
static struct station st;
static struct scanners scanners;
static char folder[FOLDER_MAX];

static const char *path_of(const char *name)
{
	static char path[FOLDER_MAX + 64];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	return path;
}

static void write_bytes(const char *name, const char *bytes, size_t size)
{
	FILE *f = fopen(path_of(name), "we");
	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, size, f), size);
	assert_int_equal(fclose(f), 0);
}

static void write_text(const char *name, const char *text)
{
	write_bytes(name, text, strlen(text));
}

static void must_hold(const char *name, const char *text)
{
	_cleanup_(buf_free) struct buf is = {0};
	assert_int_equal(file_read(path_of(name), &is), 0);
	if (is.size != strlen(text) || memcmp(is.data, text, is.size) != 0)
		fail_msg("%s is not what was kept: %.*s", name, (int)is.size, is.data ? is.data : "");
}

static int setup(void **state)
{
	(void)state;
	folder_make(folder);
	alarm(60); /* a pipe that is waited for */
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	alarm(0);
	station_deinit(&st);
	memset(&st, 0, sizeof st);
	folder_remove(folder);
	return 0;
}

/* --- at every byte ------------------------------------------------------------------------------------------ */

static void shipped(const char *name, const char *more, struct buf *out)
{
	char path[600];
	snprintf(path, sizeof path, "%s/config/%s", getenv("BANDTALLY_SOURCE"), name);
	assert_int_equal(file_read(path, out), 0);
	assert_int_equal(buf_add_text(out, more), 0);
	write_bytes(name, out->data, out->size);
}

static void settings_hold(const char *name, size_t at)
{
	char fault[SOUND_FAULT_MAX];
	station_deinit(&st);
	memset(&st, 0, sizeof st);
	enum saying used = sound_read(&s, &st, folder, fault);
	if (used == SAY_FAULT_SETTINGS_NONE || !used != !fault[0] || strcmp(st.site, "HU") != 0 ||
	    st.number != 7 || !st.n_rooms)
		fail_msg("%s at byte %zu: %d, %s-%d, %d rooms, '%s'", name, at, used, st.site, st.number,
		         st.n_rooms, fault);
	if (used && (!strstr(fault, name) || !strstr(fault, ": ")))
		fail_msg("%s at byte %zu: the fault does not say file and deed: %s", name, at, fault);
}

/* `all` is cut there, and has an odd byte there. */
static void damage(const char *name, const struct buf *all, void (*hold)(const char *, size_t))
{
	static const char odd[] = {'\0', '\xff', '[', '\n', ' ', '\x1b'};
	for (size_t at = 0; at < all->size; at++) {
		write_bytes(name, all->data, at);
		hold(name, at);
		char was = all->data[at];
		all->data[at] = odd[at % sizeof odd];
		write_bytes(name, all->data, all->size);
		all->data[at] = was;
		hold(name, at);
	}
	write_bytes(name, all->data, all->size);
}

static void station_and_policy_may_be_damaged_at_every_byte(void **state)
{
	_cleanup_(buf_free) struct buf station = {0}, policy = {0};
	struct error e;
	(void)state;
	shipped("station.ini", "", &station);
	for (char *p; (p = memmem(station.data, station.size, "\nletters = BC", 13));)
		memcpy(p + 11, "HU", 2);
	for (char *p; (p = memmem(station.data, station.size, "\nnumber = 0", 11));)
		p[10] = '7';
	write_bytes("station.ini", station.data, station.size);
	shipped("policy.ini", "", &policy);
	settings_hold("station.ini", station.size);
	assert_int_equal(sound_keep(folder, &e), 0);
	damage("station.ini", &station, settings_hold);
	damage("policy.ini", &policy, settings_hold);
	settings_hold("policy.ini", policy.size);
}

static void scanners_hold(const char *name, size_t at)
{
	char fault[SOUND_FAULT_MAX];
	enum saying used = sound_scanners(&scanners, folder, fault);
	if (used == SAY_FAULT_SCANNERS_NONE || !used != !fault[0] || (used && scanners.count != 2))
		fail_msg("scanners.ini at byte %zu: %d, %d scanners, '%s'", at, used, scanners.count, fault);
	if (used && !strstr(fault, name))
		fail_msg("scanners.ini at byte %zu: %s", at, fault);
	write_text(SOUND_FOLDER "/scanners.ini", SCANNERS); /* a shorter list may be meant, and was kept */
}

static void scanners_may_be_damaged_at_every_byte(void **state)
{
	struct buf all = {0};
	char fault[SOUND_FAULT_MAX];
	(void)state;
	write_text("scanners.ini", SCANNERS);
	assert_int_equal(sound_scanners(&scanners, folder, fault), SAY_NONE);
	must_hold(SOUND_FOLDER "/scanners.ini", SCANNERS);
	assert_int_equal(buf_add_text(&all, SCANNERS), 0);
	damage("scanners.ini", &all, scanners_hold);
	buf_free(&all);
	shipped("scanners.ini", SCANNERS, &all);
	for (size_t at = 1; at < all.size; at += 97) {
		write_bytes("scanners.ini", all.data, at);
		scanners_hold("scanners.ini", at);
	}
	buf_free(&all);
}

static void labels_hold(const char *name, size_t at)
{
	struct error e = {0};
	int n = media_check(folder, &e);
	if (n < 0 && !strstr(e.text, name))
		fail_msg("labels.ini at byte %zu: %s", at, e.text);
}

static void labels_may_be_damaged_at_every_byte(void **state)
{
	_cleanup_(buf_free) struct buf all = {0};
	(void)state;
	shipped("labels.ini", "", &all);
	damage("labels.ini", &all, labels_hold);
}

/* --- another station ----------------------------------------------------------------------------------------- */

static void start(void)
{
	struct error e = {0};
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
}

static int says(const char *words)
{
	struct say what;
	char said[900];
	int n = 0, has = 0;
	for (int i = 0; (i = core_settings_say(&core, i, &what)); n++) {
		say_sentence(&what, said, sizeof said);
		has |= strstr(said, words) != NULL;
	}
	if (*words && !has)
		fail_msg("'%s' is not said, of %d", words, n);
	return n;
}

static void open_a_case(void)
{
	char text[OWN_CODE_MAX];
	struct own_code code = {.kind = OWN_CARD, .meaning = CARD_NEW_CASE, .room = 1};
	memcpy(code.site, core.station.site, sizeof core.station.site);
	assert_int_equal(own_code_write(&code, text), 0);
	const struct reply *r = core_scan(
	    &core,
	    &(struct scan){.scanner = "hand-1", .room = 1, .aim = "", .data = text, .size = strlen(text)});
	if (r->verdict == VERDICT_REFUSED)
		fail_msg("%s", r->said);
	assert_int_equal(core.station.last_case_no, 1);
}

static void work_as_hu_7(void)
{
	write_text("station.ini", IDENTITY);
	start();
	assert_int_equal(says(""), 0);
	open_a_case();
	core_close(&core);
}

static void is_still_hu_7(const char *fault)
{
	start();
	says(fault);
	assert_int_equal(core.settings_used, SAY_FAULT_SETTINGS_KEPT);
	assert_string_equal(core.station.site, "HU");
	assert_int_equal(core.station.number, 7);
	assert_true(station_sheet_of_case(&core.station, 1) >= 0);
	core_close(&core);
	must_hold(SOUND_FOLDER "/station.ini", IDENTITY);
}

static void a_station_that_lost_its_settings_is_the_same_station(void **state)
{
	(void)state;
	work_as_hu_7();
	write_text("station.ini", "");
	is_still_hu_7("station.ini is empty");
	write_text("station.ini", " \n\n");
	is_still_hu_7("station.ini is empty");
	write_text("station.ini", "[site]\n");
	is_still_hu_7("does not say [site] letters");
	write_text("station.ini", "[site]\nletters = HU\nname = Hand unit\n");
	is_still_hu_7("does not say [station] number");
	assert_int_equal(unlink(path_of("station.ini")), 0);
	is_still_hu_7("station.ini is gone");
	assert_int_equal(symlink("nowhere", path_of("station.ini")), 0);
	is_still_hu_7("station.ini is gone");
	assert_int_equal(unlink(path_of("station.ini")), 0);
	assert_int_equal(mkdir(path_of("station.ini"), 0755), 0);
	is_still_hu_7("a folder");
	assert_int_equal(rmdir(path_of("station.ini")), 0);
	assert_int_equal(mkfifo(path_of("station.ini"), 0644), 0);
	is_still_hu_7("a pipe or a device");
	assert_int_equal(unlink(path_of("station.ini")), 0);
	write_text("station.ini", IDENTITY);
	start();
	assert_int_equal(says(""), 0);
	core_close(&core);
}

static void without_a_copy_the_record_knows_the_letters(void **state)
{
	(void)state;
	work_as_hu_7();
	assert_int_equal(unlink(path_of(SOUND_FOLDER "/station.ini")), 0);
	assert_int_equal(unlink(path_of("station.ini")), 0);
	start();
	says("letters, which were HU when the record was written");
	assert_string_equal(core.station.site, "HU");
	core_close(&core);
}

static void letters_and_number_that_somebody_wrote_are_taken_and_said(void **state)
{
	(void)state;
	work_as_hu_7();
	write_text("station.ini", "[site]\nletters = BC\n[station]\nnumber = 8\n");
	start();
	assert_string_equal(core.station.site, "BC");
	assert_int_equal(core.station.number, 8);
	says("it was of site HU: every badge, card and label printed before is refused");
	says("it was station 7");
	core_close(&core);
	start();
	assert_int_equal(says(""), 0);
	core_close(&core);
}

static void where_nothing_was_given_out_letters_change_in_silence(void **state)
{
	(void)state;
	start();
	assert_int_equal(says(""), 0);
	assert_string_equal(core.station.site, "BC");
	core_close(&core);
	write_text("station.ini", IDENTITY);
	start();
	assert_int_equal(says(""), 0);
	assert_string_equal(core.station.site, "HU");
	core_close(&core);
}

static void a_policy_that_was_lost_is_the_one_before(void **state)
{
	(void)state;
	write_text("policy.ini", "[reminders]\nfirst_reminder_min = 33\n");
	work_as_hu_7();
	write_text("policy.ini", "");
	is_still_hu_7("policy.ini is empty");
	assert_int_equal(unlink(path_of("policy.ini")), 0);
	is_still_hu_7("policy.ini is gone");
	must_hold(SOUND_FOLDER "/policy.ini", "[reminders]\nfirst_reminder_min = 33\n");
	write_text("policy.ini", "# as it is shipped\n");
	start();
	assert_int_equal(says(""), 0);
	core_close(&core);
}

int main(void)
{
#define T(f) cmocka_unit_test_setup_teardown(f, setup, teardown)
	const struct CMUnitTest tests[] = {
	    T(station_and_policy_may_be_damaged_at_every_byte),
	    T(scanners_may_be_damaged_at_every_byte),
	    T(labels_may_be_damaged_at_every_byte),
	    T(a_station_that_lost_its_settings_is_the_same_station),
	    T(without_a_copy_the_record_knows_the_letters),
	    T(letters_and_number_that_somebody_wrote_are_taken_and_said),
	    T(where_nothing_was_given_out_letters_change_in_silence),
	    T(a_policy_that_was_lost_is_the_one_before),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
