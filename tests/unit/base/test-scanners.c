/* Which device is a scanner, and whose. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/scanners.h"

static struct scanners s;
static struct scanner_found found;
static struct error e;

static int read_text(const char *text)
{
	char path[] = "/tmp/scanners-XXXXXX";
	int fd = mkstemp(path);
	assert_true(fd >= 0);
	assert_int_equal(write(fd, text, strlen(text)), strlen(text));
	close(fd);
	int r = scanners_read(path, &s, &e);
	unlink(path);
	return r;
}

static const char two_rooms[] = "[scanner hand-1]\nvendor = 1209\nproduct = B0C0\nserial = SN0001\nroom = 1\n"
                                "[scanner hand-2]\nvendor = 1209\nproduct = b0c0\nroom = 2\nlayout = de\n"
                                "port = pci-0000:00:14.0-usb-0:1.2\n"
                                "[scanner line]\nvendor = 1209\nproduct = b0c2\nroom = 3\nmode = serial\n"
                                "baud = 9600\nbits = 7\nparity = even\nstop = 1\n"
                                "prefix = 02\nsuffix = 0D0a\n";

static const struct scanner_device scanner = {.subsystem = "input",
                                              .node = "/dev/input/event7",
                                              .vendor = "1209",
                                              .product = "b0c0",
                                              .serial = "SN0001",
                                              .path = "pci-0000:00:14.0-usb-0:1.9:1.0",
                                              .has_keys = "1"};

static void a_listed_scanner_is_its_rooms(void **state)
{
	(void)state;
	assert_int_equal(read_text(two_rooms), 0);
	assert_int_equal(s.count, 3);
	assert_int_equal(scanners_decide(&s, &scanner, &found, &e), SCANNER_YES);
	assert_string_equal(found.name, "hand-1");
	assert_int_equal(found.room, 1);
	struct scanner_device other = scanner;
	other.serial = "SN0002";
	other.path = "pci-0000:00:14.0-usb-0:1.2:1.0";
	assert_int_equal(scanners_decide(&s, &other, &found, &e), SCANNER_YES);
	assert_int_equal(found.room, 2);
	assert_string_equal(found.setting->options[SCANNER_OPTION_LAYOUT], "de");
	other.path = "pci-0000:00:14.0-usb-0:1.23:1.0"; /* another port that begins alike */
	assert_int_equal(scanners_decide(&s, &other, &found, &e), SCANNER_NO);
}

static void a_keyboard_is_never_taken(void **state)
{
	(void)state;
	assert_int_equal(read_text(two_rooms), 0);
	struct scanner_device keyboard = scanner;
	keyboard.vendor = "046d";
	keyboard.product = "c31c";
	assert_int_equal(scanners_decide(&s, &keyboard, &found, &e), SCANNER_NO);
	keyboard.vendor = keyboard.product = keyboard.serial = NULL; /* the built-in one */
	assert_int_equal(scanners_decide(&s, &keyboard, &found, &e), SCANNER_NO);
	keyboard.tag = "0";
	assert_int_equal(scanners_decide(&s, &keyboard, &found, &e), SCANNER_NO);
	/* A scanner's own further nodes have no keys, or are no event nodes. */
	struct scanner_device part = scanner;
	part.has_keys = NULL;
	assert_int_equal(scanners_decide(&s, &part, &found, &e), SCANNER_NO);
	part = scanner;
	part.node = "/dev/input/mouse0";
	assert_int_equal(scanners_decide(&s, &part, &found, &e), SCANNER_NO);
}

static void a_section_that_could_take_a_keyboard_is_refused(void **state)
{
	(void)state;
	assert_int_equal(read_text("[scanner a]\nport = pci-0000:00:14.0-usb-0:1\nroom = 1\n"), -EINVAL);
	assert_non_null(strstr(e.text, "keyboard"));
	assert_int_equal(read_text("[scanner a]\nvendor = 1209\nroom = 1\n"), -EINVAL);
}

static void udev_can_say_it(void **state)
{
	(void)state;
	s = (struct scanners){0};
	struct scanner_device d = scanner;
	d.tag = "1";
	assert_int_equal(scanners_decide(&s, &d, &found, &e), SCANNER_YES);
	assert_int_equal(found.room, 1);
	assert_string_equal(found.name, "usb-1209-b0c0");
	assert_null(found.setting);
	d.room = "12";
	assert_int_equal(scanners_decide(&s, &d, &found, &e), SCANNER_YES);
	assert_int_equal(found.room, 12);
	d.room = "theatre";
	assert_int_equal(scanners_decide(&s, &d, &found, &e), SCANNER_TELL);
	assert_int_equal(found.room, 0);
}

static void two_sections_that_fit_equally_are_told(void **state)
{
	(void)state;
	assert_int_equal(read_text("[scanner a]\nvendor = 1209\nproduct = b0c0\nroom = 1\n"
	                           "[scanner b]\nvendor = 1209\nproduct = b0c0\nroom = 2\n"),
	                 0);
	assert_int_equal(scanners_decide(&s, &scanner, &found, &e), SCANNER_TELL);
	assert_non_null(strstr(e.text, "[scanner a] and [scanner b]"));
	assert_string_equal(found.name, "usb-1209-b0c0");
	assert_int_equal(found.room, 0);
}

static void a_room_that_all_of_them_name_is_known(void **state)
{
	(void)state;
	assert_int_equal(read_text("[scanner a]\nvendor = 1209\nproduct = b0c0\nroom = 3\n"
	                           "[scanner b]\nvendor = 1209\nproduct = b0c0\nroom = 3\n"),
	                 0);
	assert_int_equal(scanners_decide(&s, &scanner, &found, &e), SCANNER_TELL);
	assert_int_equal(found.room, 3);
	s.list[2] = s.list[1];
	s.list[1].room = 4;
	s.count = 3; /* rooms 3, 4, 3 */
	assert_int_equal(scanners_decide(&s, &scanner, &found, &e), SCANNER_TELL);
	assert_int_equal(found.room, 0);
	memcpy(s.list[2].serial, "SN0001", 7); /* the best fit decides, whatever the others say */
	assert_int_equal(scanners_decide(&s, &scanner, &found, &e), SCANNER_YES);
	assert_int_equal(found.room, 3);
}

static void a_serial_line_is_found_by_its_mode(void **state)
{
	(void)state;
	assert_int_equal(read_text(two_rooms), 0);
	struct scanner_device line = {
	    .subsystem = "tty", .node = "/dev/ttyACM0", .vendor = "1209", .product = "b0c2"};
	assert_int_equal(scanners_decide(&s, &line, &found, &e), SCANNER_YES);
	assert_int_equal(found.mode, SCANNER_SERIAL);
	assert_string_equal(found.setting->options[SCANNER_OPTION_PARITY], "even");
	assert_string_equal(found.setting->options[SCANNER_OPTION_PREFIX], "02");
	assert_string_equal(found.setting->options[SCANNER_OPTION_SUFFIX], "0D0a");
	line.product = "b0c0"; /* listed as a keyboard */
	assert_int_equal(scanners_decide(&s, &line, &found, &e), SCANNER_NO);
}

static void what_is_wrong_is_said_with_its_line(void **state)
{
	(void)state;
	static const char *const bad[] = {
	    "[scanner a]\nvendor = 12\n", "[scanner a]\nroom = 0\n",
	    "[scanner a]\nroom = 1x\n",   "[scanner a]\nmode = radio\n",
	    "[scanner a]\nlayout = xx\n", "[scanner A]\nroom = 1\n",
	    "[printer]\nroom = 1\n",      "[scanner a]\ncolour = red\n",
	    "[scanner a]\nbaud = 12\n",   "[scanner a]\nserial =\n",
	    "[scanner a]\nprefix = 0\n",  "[scanner a]\nprefix = none\n",
	    "[scanner a]\nsuffix = 0x\n", "[scanner a]\nsuffix = 010203040506070809\n"};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		e = (struct error){0};
		assert_int_equal(read_text(bad[i]), -EINVAL);
		assert_non_null(strstr(e.text, " line "));
	}
	assert_int_equal(read_text("[scanner a]\nvendor = 1209\nproduct = b0c0\nroom = 1\nbaud = 9600\n"),
	                 -EINVAL);
	assert_non_null(strstr(e.text, "has baud, which is for mode = serial"));
	e = (struct error){0};
	assert_int_equal(read_text("[scanner a]\nmode = radio\n"), -EINVAL);
	assert_non_null(strstr(e.text, "write keyboard or serial"));
	e = (struct error){0};
	assert_int_equal(read_text("[scanner a]\ncolour = red\n"), -EINVAL);
	assert_non_null(strstr(e.text, "room, mode, layout, baud, bits, parity, stop, prefix, suffix"));
	assert_int_equal(scanners_read("/nonexistent/scanners.ini", &s, &e), -ENOENT);
}

static void the_shipped_file_lists_nobody(void **state)
{
	(void)state;
	char path[4096];
	snprintf(path, sizeof path, "%s/config/scanners.ini", getenv("BANDTALLY_SOURCE"));
	assert_int_equal(scanners_read(path, &s, &e), 0);
	assert_int_equal(s.count, 0);
}

static void a_new_scanner_gets_its_section_and_profile_name(void **state)
{
	(void)state;
	struct buf out = {0};
	assert_int_equal(scanners_section(&scanner, "hand-3", 4, &out), 0);
	assert_int_equal(read_text(out.data), 0);
	assert_int_equal(scanners_decide(&s, &scanner, &found, &e), SCANNER_YES);
	assert_int_equal(found.room, 4);
	buf_free(&out);
	char name[SCANNER_PROFILE_NAME_MAX];
	struct scanner_device d = scanner;
	scanner_profile_name(&d, name);
	assert_string_equal(name, "1209-b0c0-SN0001.ini");
	d.serial = "../../etc/x y";
	scanner_profile_name(&d, name);
	assert_string_equal(name, "1209-b0c0-.._.._etc_x_y.ini");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_listed_scanner_is_its_rooms),
	    cmocka_unit_test(a_keyboard_is_never_taken),
	    cmocka_unit_test(a_section_that_could_take_a_keyboard_is_refused),
	    cmocka_unit_test(udev_can_say_it),
	    cmocka_unit_test(two_sections_that_fit_equally_are_told),
	    cmocka_unit_test(a_room_that_all_of_them_name_is_known),
	    cmocka_unit_test(a_serial_line_is_found_by_its_mode),
	    cmocka_unit_test(what_is_wrong_is_said_with_its_line),
	    cmocka_unit_test(the_shipped_file_lists_nobody),
	    cmocka_unit_test(a_new_scanner_gets_its_section_and_profile_name),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
