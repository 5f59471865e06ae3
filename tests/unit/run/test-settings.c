/* station.ini: what the board is told, and what is refused with file, line and reason. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "run/settings.h"

static struct settings s;
static struct station st;
static struct error e;
static char folder[] = "/tmp/settings-XXXXXX";

static int read_text(const char *text)
{
	char path[64];
	snprintf(path, sizeof path, "%s/station.ini", folder);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	assert_true(fputs(text, f) >= 0);
	fclose(f);
	station_deinit(&st);
	memset(&st, 0, sizeof st);
	memset(&e, 0, sizeof e);
	int r = settings_read(&s, &st, folder, &e);
	unlink(path);
	return r;
}

/* The fault of the one line after the section's. */
static void refused(const char *section, const char *line, const char *words)
{
	char text[400];
	snprintf(text, sizeof text, "[%s]\n%s\n", section, line);
	if (read_text(text) != -EINVAL || !strstr(e.text, "station.ini line 2: ") || !strstr(e.text, words))
		fail_msg("'%s' gives: %s", line, e.text);
}

static void the_board_is_heard_at_60_and_never_quiet_unless_it_is_said(void **state)
{
	(void)state;
	assert_int_equal(read_text("[board]\nstart = yes\n"), 0);
	assert_int_equal(s.sound.volume, 60);
	assert_int_equal(s.sound.speech, 0);
	assert_int_equal(s.board_typing, 1);
	assert_int_equal(s.board_open, 1);
	assert_int_equal(settings_quiet(&s.sound, 1795612000000), 0);
	assert_int_equal(s.elsewhere.start, 0);
}

static void volume_quiet_hours_and_speech_are_taken_as_written(void **state)
{
	(void)state;
	assert_int_equal(read_text("[board]\nvolume = 0\nquiet = 22:00-07:30\nspeech = yes\n"), 0);
	assert_int_equal(s.sound.volume, 0);
	assert_int_equal(s.sound.quiet_from, 22 * 60);
	assert_int_equal(s.sound.quiet_to, 7 * 60 + 30);
	assert_int_equal(s.sound.speech, 1);
	assert_int_equal(read_text("[board]\nquiet = no\n"), 0);
	assert_int_equal(s.sound.quiet_from, -1);
}

static void each_station_of_a_hospital_has_a_number(void **state)
{
	(void)state;
	assert_int_equal(read_text("[site]\nletters = HU\n"), 0);
	assert_int_equal(st.number, 0);
	assert_int_equal(read_text("[station]\nnumber = 99\n"), 0);
	assert_int_equal(st.number, 99);
	refused("station", "number = 100", "from 0 to 99");
	refused("station", "number = two", "from 0 to 99");
	refused("station", "name = two", "has no setting 'name'");
}

static void the_view_is_closed_only_where_it_is_said(void **state)
{
	(void)state;
	assert_int_equal(read_text("[board]\nopen = no\n"), 0);
	assert_int_equal(s.board_open, 0);
	assert_int_equal(s.board_typing, 1);
	refused("board", "open = ticket", "open is 'ticket': it must be yes or no");
}

static void a_wrong_sound_setting_is_refused_with_its_line(void **state)
{
	(void)state;
	refused("board", "volume = 101", "volume is '101': it must be a whole number from 0 to 100");
	refused("board", "volume = loud", "volume is 'loud'");
	refused("board", "speech = on", "speech is 'on': it must be yes or no");
	refused("board", "typing = maybe", "typing is 'maybe': it must be yes or no");
	static const char *const hours[] = {"yes",          "22:00",       "22:00-24:00", "22:60-07:00",
	                                    "22-7",         "22:00-22:00", "22:00 07:00", "9:00-17:00",
	                                    "22:00-07:00x", "-1:00-07:00"};
	for (size_t i = 0; i < sizeof hours / sizeof *hours; i++) {
		char line[40];
		snprintf(line, sizeof line, "quiet = %s", hours[i]);
		refused("board", line, "it must be no, or from when to when, as 22:00-07:00");
	}
	refused("board", "loudness = 3", "[board] has no setting 'loudness'");
}

static void a_wrong_setting_of_a_room_or_a_driver_is_refused_with_its_line(void **state)
{
	(void)state;
	refused("room 1", "colour = red", "[room] has no setting 'colour'");
	refused("room 1", "single_operator = maybe", "single_operator is 'maybe': it must be yes or no");
	refused("room 100", "name = Bay", "the room's number is '100'");
	refused("driver x", "room = 0", "[driver] room = 0: command and room (1 to 99) are known");
	assert_int_equal(read_text("[room 2]\nsingle_operator = yes\nname = Bay\n"), 0);
	assert_int_equal(st.rooms[0].single, 1);
	assert_int_equal(
	    read_text("[room 02]\nname = Bay\n[room 3]\nname = Three\n[room 02]\nkind = stores\n"), 0);
	static const char *const others[] = {"02", "+2", " 2", "2"};
	for (size_t i = 0; i < 3; i++) {
		char text[100];
		snprintf(text, sizeof text, "[room %s]\nname = Bay\n[room %s]\nsingle_operator = yes\n",
		         others[i], others[i + 1]);
		assert_int_equal(read_text(text), -EINVAL);
		assert_non_null(strstr(e.text, "station.ini line 4: [room "));
		assert_non_null(strstr(e.text, "are one room, given twice: remove one"));
	}
}

static void labels_go_to_their_own_queue_and_roll(void **state)
{
	(void)state;
	assert_int_equal(read_text("[printer]\nqueue = slips\n[labels]\nqueue = labels\nmedia = roll-57\n"),
	                 0);
	assert_string_equal(s.printer, "slips");
	assert_string_equal(s.labels_printer, "labels");
	assert_string_equal(s.labels_medium, "roll-57");
	assert_int_equal(read_text("[printer]\nqueue = slips\n"), 0);
	assert_string_equal(s.labels_printer, "");
	assert_string_equal(s.labels_medium, "");
}

static void a_wrong_setting_of_labels_is_refused_with_its_line(void **state)
{
	(void)state;
	refused("labels", "printer = labels", "[labels] has no setting 'printer': queue and media are known");
	refused("labels", "queue = roll\xe2\x80\x8b", "queue holds U+200B, which cannot be seen");
	refused("labels", "media = roll\xe2\x80\x8b", "media holds U+200B, which cannot be seen");
}

static void policy_refused(const char *text, const char *words)
{
	char path[64];
	snprintf(path, sizeof path, "%s/policy.ini", folder);
	FILE *f = fopen(path, "w");
	assert_non_null(f);
	assert_true(fputs(text, f) >= 0);
	fclose(f);
	int r = read_text("");
	unlink(path);
	if (r != -EINVAL || !strstr(e.text, words))
		fail_msg("'%s' gives: %s", text, e.text);
}

static void a_name_that_cannot_be_read_as_it_stands_is_refused_with_its_line(void **state)
{
	(void)state;
	refused("site", "name = General\xe2\x80\xae",
	        "name holds U+202E, which turns the direction of text, as its character 8: leave it out");
	refused("room 2", "name = Th\xe9\xe2tre", "name is not UTF-8 at its character 3: write it as UTF-8");
	refused("room 2", "name = a\tb", "name holds U+0009, a control character");
	refused("printer", "queue = slips\xe2\x80\x8b", "queue holds U+200B, which cannot be seen");
	refused("driver x\x1b[2J", "room = 1", "the driver's name holds U+001B, a control character");
	policy_refused(
	    "[sign-out points]\n1 = The procedure\xe2\x80\xa8 is recorded.\n",
	    "policy.ini line 2: the text of 1 holds U+2028, a line break, as its character 14: leave it out");
	policy_refused("[search]\n1 = count again\n2 = \xef\xbb\xbf\n",
	               "policy.ini line 3: the text of 2 holds U+FEFF, which cannot be seen");
}

static int quiet_at(const char *local)
{
	struct tm t = {.tm_isdst = -1};
	assert_non_null(strptime(local, "%Y-%m-%d %H:%M:%S", &t));
	return settings_quiet(&s.sound, (int64_t)mktime(&t) * 1000);
}

static void quiet_hours_go_by_the_local_clock_also_over_midnight(void **state)
{
	(void)state;
	assert_int_equal(read_text("[board]\nquiet = 22:00-07:00\n"), 0);
	assert_false(quiet_at("2026-11-26 21:59:59"));
	assert_true(quiet_at("2026-11-26 22:00:00"));
	assert_true(quiet_at("2026-11-27 00:00:00"));
	assert_true(quiet_at("2026-11-27 06:59:59"));
	assert_false(quiet_at("2026-11-27 07:00:00"));
	assert_int_equal(read_text("[board]\nquiet = 12:30-13:15\n"), 0);
	assert_false(quiet_at("2026-11-26 12:29:59"));
	assert_true(quiet_at("2026-11-26 12:30:00"));
	assert_false(quiet_at("2026-11-26 13:15:00"));
	assert_false(quiet_at("2026-11-26 00:00:00"));
}

/* In London the clocks went on at 01:00 UTC on 29 March 2026 and back at 01:00 UTC on 25 October 2026. */
static void a_change_of_the_clocks_moves_quiet_hours_with_the_wall_clock(void **state)
{
	(void)state;
	assert_int_equal(read_text("[board]\nquiet = 22:00-07:00\n"), 0);
	int64_t winter_six = INT64_C(1774678500000), /* 2026-03-28 06:15 UTC, 06:15 by the wall */
	    summer_six = INT64_C(1774764900000);     /* 2026-03-29 06:15 UTC, 07:15 by the wall */
	assert_true(settings_quiet(&s.sound, winter_six));
	assert_false(settings_quiet(&s.sound, summer_six));
	int64_t last_summer = INT64_C(1792822500000), /* 2026-10-24 06:15 UTC, 07:15 by the wall */
	    first_winter = INT64_C(1792908900000);    /* 2026-10-25 06:15 UTC, 06:15 by the wall */
	assert_false(settings_quiet(&s.sound, last_summer));
	assert_true(settings_quiet(&s.sound, first_winter));
	/* The hour that there is twice is quiet twice, the one that there is not is not missed. */
	assert_int_equal(read_text("[board]\nquiet = 01:30-01:45\n"), 0);
	assert_true(settings_quiet(&s.sound, INT64_C(1792888500000)));
	assert_true(settings_quiet(&s.sound, INT64_C(1792892100000)));
	for (int64_t t = INT64_C(1774742400000); t < INT64_C(1774760400000); t += 60000)
		assert_false(settings_quiet(&s.sound, t));
}

#define ELSEWHERE                                                                                            \
	"[board]\nstart = yes\n[board elsewhere]\nstart = yes\naddress = 192.0.2.7\nport = 8443\n"           \
	"hosts = board.example.org  192.0.2.7 [2001:db8::7]\ncertificate = /etc/board.pem\nkey = "           \
	"board.key\n"

static void the_board_elsewhere_is_told_address_names_and_files(void **state)
{
	char key[64];
	(void)state;
	assert_int_equal(read_text(ELSEWHERE "clients = clients.pem\n"), 0);
	assert_string_equal(s.elsewhere.address, "192.0.2.7");
	assert_int_equal(s.elsewhere.port, 8443);
	assert_int_equal(s.elsewhere.n_hosts, 3);
	assert_string_equal(s.elsewhere.hosts[2], "[2001:db8::7]");
	assert_string_equal(s.elsewhere.certificate, "/etc/board.pem");
	snprintf(key, sizeof key, "%s/board.key", folder);
	assert_string_equal(s.elsewhere.key, key);
	assert_int_equal(s.elsewhere.typing, 0);
	assert_string_equal(s.elsewhere.revoked, "");
	assert_int_equal(read_text(ELSEWHERE "clients = clients.pem\nrevoked = revoked.pem\n"), 0);
	snprintf(key, sizeof key, "%s/revoked.pem", folder);
	assert_string_equal(s.elsewhere.revoked, key);
}

static void a_board_elsewhere_that_lacks_something_is_not_started_in_silence(void **state)
{
	(void)state;
	assert_int_equal(read_text(ELSEWHERE), -EINVAL);
	assert_non_null(strstr(e.text,
	                       "station.ini: [board elsewhere] is started but lacks clients: give it, or "
	                       "say start = no"));
	assert_int_equal(read_text("[board elsewhere]\nstart = yes\n"), -EINVAL);
	assert_non_null(strstr(e.text, "lacks [board] start = yes"));
	assert_int_equal(read_text("[board elsewhere]\nport = 9000\n"), 0);
}

static void the_hospital_is_told_by_its_machines_and_files(void **state)
{
	char key[64];
	(void)state;
	assert_int_equal(read_text("[room 1]\nname = A\n"), 0);
	assert_int_equal(s.hospital.start, 0);
	assert_int_equal(
	    read_text("[hospital]\nstart = yes\nhosts = db1.example.org [2001:db8::7]:5433\n"
	              "certificate = /etc/h.pem\nkey = h.key\nauthority = ca.pem\nlists_hours = 8\n"),
	    0);
	assert_int_equal(s.hospital.n_hosts, 2);
	assert_string_equal(s.hospital.hosts[1], "[2001:db8::7]:5433");
	assert_string_equal(s.hospital.database, "bt");
	assert_string_equal(s.hospital.certificate, "/etc/h.pem");
	snprintf(key, sizeof key, "%s/h.key", folder);
	assert_string_equal(s.hospital.key, key);
	assert_int_equal(s.hospital.lists_hours, 8);
	assert_int_equal(read_text("[hospital]\nstart = yes\nhosts = db1\ncertificate = c\nkey = k\n"),
	                 -EINVAL);
	assert_non_null(
	    strstr(e.text, "[hospital] is started but lacks authority: give it, or say start = no"));
	refused("hospital", "hosts = postgres://db1", "with or without a port");
	refused("hospital", "lists_hours = 0", "from 1 to 8760");
	refused("hospital", "password = x", "[hospital] has no setting 'password'");
}

static void a_wrong_setting_of_the_board_elsewhere_is_refused_with_its_line(void **state)
{
	(void)state;
	refused("board elsewhere", "address = board.example.org",
	        "it must be an address of this machine in numbers");
	refused("board elsewhere", "address = 192.0.2.256",
	        "it must be an address of this machine in numbers");
	refused("board elsewhere", "port = 65536", "from 0 to 65535");
	refused("board elsewhere", "hosts = https://board.example.org", "without https:// and without port");
	refused("board elsewhere", "hosts = board.example.org:8418", "without https:// and without port");
	refused("board elsewhere", "hosts = a b c d e f g h i", "1 to 8 names");
	refused("board elsewhere", "hosts = a_b", "hosts at 'a_b'");
	refused("board elsewhere", "typing = maybe", "typing is 'maybe': it must be yes or no");
	refused("board elsewhere", "ca = x", "[board elsewhere] has no setting 'ca'");
}

static int put_away(void **state)
{
	(void)state;
	station_deinit(&st);
	return rmdir(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(the_board_is_heard_at_60_and_never_quiet_unless_it_is_said),
	    cmocka_unit_test(volume_quiet_hours_and_speech_are_taken_as_written),
	    cmocka_unit_test(each_station_of_a_hospital_has_a_number),
	    cmocka_unit_test(the_view_is_closed_only_where_it_is_said),
	    cmocka_unit_test(a_wrong_sound_setting_is_refused_with_its_line),
	    cmocka_unit_test(a_wrong_setting_of_a_room_or_a_driver_is_refused_with_its_line),
	    cmocka_unit_test(labels_go_to_their_own_queue_and_roll),
	    cmocka_unit_test(a_wrong_setting_of_labels_is_refused_with_its_line),
	    cmocka_unit_test(a_name_that_cannot_be_read_as_it_stands_is_refused_with_its_line),
	    cmocka_unit_test(quiet_hours_go_by_the_local_clock_also_over_midnight),
	    cmocka_unit_test(a_change_of_the_clocks_moves_quiet_hours_with_the_wall_clock),
	    cmocka_unit_test(the_board_elsewhere_is_told_address_names_and_files),
	    cmocka_unit_test(a_board_elsewhere_that_lacks_something_is_not_started_in_silence),
	    cmocka_unit_test(the_hospital_is_told_by_its_machines_and_files),
	    cmocka_unit_test(a_wrong_setting_of_the_board_elsewhere_is_refused_with_its_line),
	};
	if (!mkdtemp(folder) || setenv("TZ", "Europe/London", 1) != 0)
		return 1;
	tzset();
	return cmocka_run_group_tests(tests, NULL, put_away);
}
