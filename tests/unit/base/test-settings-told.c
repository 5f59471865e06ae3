/* Each setting says whether a report of a fault may show it, and what is shown has the form that was said. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "base/settings-told.h"

/* "key = value" and "#key = value", as the files that we ship have them; prose has a colon or another form. */
static int is_setting(const char *line, char key[40])
{
	line += strspn(line, "# ");
	size_t n = strspn(line, "abcdefghijklmnopqrstuvwxyz_");
	if (!n || n >= 40 || strncmp(line + n, " = ", 3) != 0)
		return 0;
	snprintf(key, 40, "%.*s", (int)n, line);
	return 1;
}

static int count_rows(const char *file)
{
	char path[500], line[300], section[60] = "", key[40];
	int count = 0;
	snprintf(path, sizeof path, "%s/config/%s.ini", getenv("BANDTALLY_SOURCE"), file);
	FILE *in = fopen(path, "re");
	assert_non_null(in);
	while (fgets(line, sizeof line, in)) {
		sscanf(line, line[0] == '#' ? "# [%50[^]]" : "[%50[^]]", section);
		sscanf(line, "#[%50[^]]", section);
		if (!is_setting(line, key))
			continue;
		count++;
		if (setting_told(file, section, key) == SETTING_UNKNOWN)
			fail_msg("%s.ini: [%s] %s has no row in settings-told.h", file, section, key);
	}
	fclose(in);
	return count;
}

static void each_setting_that_is_shipped_has_a_row(void **state)
{
	(void)state;
	assert_in_range(count_rows("station"), 35, 100);
	assert_in_range(count_rows("scanners"), 8, 100);
	assert_in_range(count_rows("labels"), 6, 100);
}

static void what_people_name_freely_is_withheld(void **state)
{
	(void)state;
	assert_int_equal(setting_told("station", "room 12", "name"), SETTING_WITHHELD);
	assert_int_equal(setting_told("station", "room 12", "kind"), SETTING_WORD);
	assert_int_equal(setting_told("station", "board elsewhere", "hosts"), SETTING_WITHHELD);
	assert_int_equal(setting_told("station", "board elsewhere", "open"), SETTING_UNKNOWN);
	assert_int_equal(setting_told("station", "boards", "open"), SETTING_UNKNOWN);
	assert_int_equal(setting_told("station", "room", "kind"), SETTING_UNKNOWN);
	assert_int_equal(setting_told("scanners", "board", "open"), SETTING_UNKNOWN);
}

static void what_has_not_its_form_is_not_told(void **state)
{
	(void)state;
	assert_true(setting_fits(SETTING_NUMBER, "22:00-07:00") && setting_fits(SETTING_NUMBER, "70 x 33"));
	assert_true(setting_fits(SETTING_WORD, "roll80") && setting_fits(SETTING_NUMBER, "no"));
	assert_false(setting_fits(SETTING_NUMBER, "M. Quux") || setting_fits(SETTING_WORD, "Quux"));
	assert_false(setting_fits(SETTING_NUMBER, "9506000134352170"));
	assert_false(setting_fits(SETTING_WORD, "quuxquuxq") || setting_fits(SETTING_WITHHELD, "no"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(each_setting_that_is_shipped_has_a_row),
	    cmocka_unit_test(what_people_name_freely_is_withheld),
	    cmocka_unit_test(what_has_not_its_form_is_not_told),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
