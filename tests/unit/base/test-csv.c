/* A list from a spreadsheet: what is read, and what is refused at which place. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "base/csv.h"

static const char *const names[] = {"key", "name", "codes"};
static struct csv csv;
static struct csv_row row;
static struct error e;

static int begin(const char *text)
{
	e = (struct error){0};
	return csv_begin(&csv, text, strlen(text), names, 3, 2, &e);
}

static void columns_stand_in_any_order_and_rows_on_their_lines(void **state)
{
	char place[CSV_PLACE_MAX];
	(void)state;
	assert_int_equal(begin("\xef\xbb\xbf"
	                       "name,key\r\n\r\n\"band, \"\"M\"\"\",A\n,,\n\nfingerstall\xc3\xa9,B"),
	                 0);
	assert_int_equal(csv_next(&csv, &row, &e), 1);
	assert_int_equal(row.line, 3);
	assert_string_equal(row.cell[0], "A");
	assert_string_equal(row.cell[1], "band, \"M\"");
	assert_string_equal(row.cell[2], "");
	assert_int_equal(csv_next(&csv, &row, &e), 1);
	assert_int_equal(row.line, 6);
	assert_string_equal(row.cell[1], "fingerstall\xc3\xa9");
	assert_int_equal(csv_next(&csv, &row, &e), 0);
	csv_place(&csv, 6, 0, place);
	assert_string_equal(place, "line 6, column B (key)");
	csv_place(&csv, 6, 2, place);
	assert_string_equal(place, "line 6 (codes)");
	assert_int_equal(begin(""), 0);
	assert_int_equal(csv_next(&csv, &row, &e), 0);
}

static void what_a_spreadsheet_makes_of_a_file_is_refused_at_its_place(void **state)
{
	static const struct {
		const char *text, *place, *words;
	} facts[] = {
	    {"key;name;codes\nA;band;1\n", "line 1, column A", "semicolons stand between the columns"},
	    {"key\tname\nA\tband\n", "line 1, column A", "tabs stand between the columns"},
	    {"\xff\xfek", "line 1, column A", "UTF-16"},
	    {"\xfe\xff.", "line 1, column A", "UTF-16"},
	    {"key,n\xe4me\n", "line 1, column B", "another code page"},
	    {"key,name,colour\n", "line 1, column C", "no column has the name 'colour'"},
	    {"key,name,key\n", "line 1, column C", "stands twice"},
	    {"key,codes\n", "line 1", "the column 'name' is missing"},
	    {"key,name\nA,g\xfcn\n", "line 2, column B (name)", "its character 2 is no UTF-8"},
	    {"key,name\nA,band\nB,\"two\nlines\"\n", "line 3, column B (name)", "U+000A"},
	    {"key,name\nA,band, M\n", "line 2, column C", "stands beyond the last column"},
	    {"key,name\nA,\"band\n", "line 2, column B", "quotation mark is not closed"},
	};
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		int r = begin(facts[i].text);
		while (r == 0 && (r = csv_next(&csv, &row, &e)) > 0)
			r = 0;
		if (r != -EINVAL || strncmp(e.text, facts[i].place, strlen(facts[i].place)) != 0 ||
		    !strstr(e.text, facts[i].words))
			fail_msg("%s: %d: %s", facts[i].text, r, e.text);
	}
}

static void a_zero_and_a_value_without_end_are_refused(void **state)
{
	char text[CSV_CELL_MAX + 20];
	(void)state;
	assert_int_equal(csv_begin(&csv, "key,name\nA\0,b\n", 15, names, 3, 2, &e), 0);
	assert_int_equal(csv_next(&csv, &row, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 2, column A: it holds a byte of zero"));
	int n = snprintf(text, sizeof text, "key,name\nA,%0299d\n", 7);
	assert_int_equal(csv_begin(&csv, text, (size_t)n, names, 3, 2, &e), 0);
	assert_int_equal(csv_next(&csv, &row, &e), 1);
	n = snprintf(text, sizeof text, "key,name\nA,%0300d\n", 7);
	assert_int_equal(csv_begin(&csv, text, (size_t)n, names, 3, 2, &e), 0);
	assert_int_equal(csv_next(&csv, &row, &e), -EINVAL);
	assert_non_null(strstr(e.text, "line 2, column B: its value is longer than 299 bytes"));
}

static void what_is_written_is_read_again(void **state)
{
	static const char *const values[] = {"plain", "with, comma", "with \"marks\"", ""};
	(void)state;
	for (size_t i = 0; i < sizeof values / sizeof *values; i++) {
		_cleanup_(buf_free) struct buf text = {0};
		assert_int_equal(buf_add_text(&text, "key,name\nA,"), 0);
		assert_int_equal(csv_add(&text, values[i]), 0);
		assert_int_equal(begin(text.data), 0);
		assert_int_equal(csv_next(&csv, &row, &e), 1);
		assert_string_equal(row.cell[1], values[i]);
	}
}

static void more_columns_than_there_may_be_are_refused(void **state)
{
	char text[200] = "key,name";
	(void)state;
	for (int i = 0; i < CSV_COLUMNS_MAX; i++)
		strcat(text, ",x");
	assert_int_equal(begin(text), -EINVAL);
	assert_non_null(strstr(e.text, "line 1, column"));
	strcpy(text, "key,name,,,\nA,band,,,\n"); /* columns without anything */
	assert_int_equal(begin(text), 0);
	assert_int_equal(csv_next(&csv, &row, &e), 1);
	assert_int_equal(csv_next(&csv, &row, &e), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(columns_stand_in_any_order_and_rows_on_their_lines),
	    cmocka_unit_test(what_a_spreadsheet_makes_of_a_file_is_refused_at_its_place),
	    cmocka_unit_test(a_zero_and_a_value_without_end_are_refused),
	    cmocka_unit_test(what_is_written_is_read_again),
	    cmocka_unit_test(more_columns_than_there_may_be_are_refused),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
