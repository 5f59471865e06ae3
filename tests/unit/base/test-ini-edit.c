/* One value of a settings file is changed, and what stands around it stays. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/ini-edit.h"

static void becomes(const char *text, const char *section, const char *name, const char *wanted)
{
	struct buf b = {0};
	assert_int_equal(buf_add_text(&b, text), 0);
	assert_int_equal(ini_put(&b, section, name, "new"), 0);
	assert_string_equal(b.data, wanted);
	buf_free(&b);
}

static void a_value_that_is_there_is_replaced_in_its_section_alone(void **state)
{
	(void)state;
	becomes("[site]\nname = a\n[room 1]\n# what\nname = b\n", "room 1", "name",
	        "[site]\nname = a\n[room 1]\n# what\nname = new\n");
	becomes("[room 1]\nname=b", "room 1", "name", "[room 1]\nname = new\n");
	becomes("[room 1]\nname: b\nx = 1\n", "room 1", "name", "[room 1]\nname = new\nx = 1\n");
	becomes("[room 1]\nname \r= b\n", "room 1", "name", "[room 1]\nname = new\n");
	becomes("[room 1]\nnames = b\n", "room 1", "name", "[room 1]\nnames = b\nname = new\n");
	becomes("[room 11]\nname = b\n[room 1]\n", "room 1", "name",
	        "[room 11]\nname = b\n[room 1]\nname = new\n");
	becomes("\xef\xbb\xbf[room 1]\nname = b\n", "room 1", "name", "\xef\xbb\xbf[room 1]\nname = new\n");
}

static void a_new_one_stands_below_the_line_that_shows_it_or_the_last_value(void **state)
{
	(void)state;
	becomes("[printer]\n#queue = slips\n# paper\npaper = a5\n\n# of labels\n[labels]\n#queue = x\n",
	        "printer", "queue",
	        "[printer]\n#queue = slips\nqueue = new\n# paper\npaper = a5\n\n# of "
	        "labels\n[labels]\n#queue = x\n");
	becomes("[printer]\npaper = a5\n\n# of labels\n[labels]\n", "printer", "dpi",
	        "[printer]\npaper = a5\ndpi = new\n\n# of labels\n[labels]\n");
}

static void a_new_section_stands_behind_its_kin_or_at_the_end(void **state)
{
	(void)state;
	becomes("", "site", "name", "[site]\nname = new\n");
	becomes("[site]\nname = a\n# last", "printer", "queue",
	        "[site]\nname = a\n# last\n\n[printer]\nqueue = new\n");
	becomes("[room 1]\nname = a\n\n# of printers\n[printer]\ndpi = 300\n", "room 2", "name",
	        "[room 1]\nname = a\n\n[room 2]\nname = new\n\n# of printers\n[printer]\ndpi = 300\n");
	becomes("[board]\nport = 1\n[board elsewhere]\nport = 2\n[x]\n", "hospital", "start",
	        "[board]\nport = 1\n[board elsewhere]\nport = 2\n[x]\n\n[hospital]\nstart = new\n");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_value_that_is_there_is_replaced_in_its_section_alone),
	    cmocka_unit_test(a_new_one_stands_below_the_line_that_shows_it_or_the_last_value),
	    cmocka_unit_test(a_new_section_stands_behind_its_kin_or_at_the_end),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
