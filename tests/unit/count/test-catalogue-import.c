/* What a catalogue file would change, and what it is refused for, each at its place. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/code.h"
#include "count/catalogue-import.h"
#include "count/station.h"

#define HEAD "key,name,role,codes,marked,visible,contents,label,label_place,minimum\n"
#define GREEN "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,,no,,\n"
#define SWAB "SWAB,swabs,other,09506000134383,,,,,,\n"
#define TRAY "TRAY,hand tray,tray,tray:1,,,SWAB*2,,,\n"

static struct station st;
static struct error e;

static void fill(const char *csv)
{
	catalogue_deinit(&st.catalogue);
	if (catalogue_read_csv(csv, strlen(csv), &st.catalogue.lines, &st.catalogue.count, &e) < 0)
		fail_msg("%s", e.text);
	st.catalogue.room = st.catalogue.count;
}

static int setup(void **state)
{
	(void)state;
	fill(HEAD GREEN SWAB TRAY);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	catalogue_deinit(&st.catalogue);
	return 0;
}

static int begin(struct catalogue_import *im, const char *csv, int whole)
{
	e = (struct error){0};
	return catalogue_import_init(im, &st.catalogue, csv, strlen(csv), whole, &e);
}

static void store(const struct catalogue_import *im)
{
	assert_int_equal(station_fits(&st, im->events, (int)im->n_events, &e), 0);
	for (size_t i = 0; i < im->n_events; i++)
		assert_int_equal(station_apply(&st, &im->events[i]), 0);
}

static void each_line_is_told_with_what_becomes_of_it(void **state)
{
	struct catalogue_import im;
	(void)state;
	int r = begin(
	    &im,
	    HEAD SWAB
	    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,,after,film side,4\n"
	    "BLADE,blade,other,09506000134413,,,,,,\n",
	    0);
	if (r < 0)
		fail_msg("%s", e.text);
	assert_int_equal(im.n_changes, 4);
	assert_int_equal(im.changes[0].kind, LINE_STAYS);
	assert_int_equal(im.changes[1].kind, LINE_CHANGED);
	assert_int_equal(im.changes[1].number, 3);
	assert_int_equal(im.changes[1].columns, 1 << COL_LABEL | 1 << COL_LABEL_PLACE | 1 << COL_MINIMUM);
	assert_int_equal(im.changes[2].kind, LINE_ADDED);
	assert_int_equal(im.changes[3].kind, LINE_NOT_IN_FILE);
	assert_string_equal(im.changes[3].was->key, "TRAY");
	assert_int_equal(im.n_events, 2); /* what stays is no event */
	assert_int_equal(catalogue_import_count(&im, LINE_ADDED), 1);
	store(&im);
	assert_int_equal(st.catalogue.count, 4);
	assert_int_equal(catalogue_by_key(&st.catalogue, "GREEN-M")->minimum, 4);
	catalogue_import_deinit(&im);
}

static void a_whole_catalogue_removes_what_it_lacks(void **state)
{
	struct catalogue_import im;
	struct code green = {.kind = CODE_GS1, .product = "09506000134352"};
	(void)state;
	assert_int_equal(begin(&im, HEAD SWAB TRAY, 1), 0);
	assert_int_equal(im.n_changes, 3);
	assert_int_equal(im.changes[2].kind, LINE_REMOVED);
	assert_int_equal(im.n_events, 1);
	store(&im);
	catalogue_import_deinit(&im);
	assert_int_equal(st.catalogue.count, 2);
	assert_null(catalogue_by_code(&st.catalogue, &green));
	assert_string_equal(catalogue_by_key(&st.catalogue, "TRAY")->name, "hand tray");
	/* and its code is free for another */
	assert_int_equal(begin(&im, HEAD "NEW,\"band\",tourniquet,09506000134352,yes,yes,,,,\n", 0), 0);
	store(&im);
	catalogue_import_deinit(&im);
	assert_string_equal(catalogue_by_code(&st.catalogue, &green)->key, "NEW");
}

static void a_code_goes_from_a_line_that_is_removed_to_another(void **state)
{
	struct catalogue_import im;
	(void)state;
	assert_int_equal(begin(&im, HEAD SWAB TRAY "NEW,band,tourniquet,09506000134352,yes,yes,,,,\n", 1), 0);
	store(&im);
	catalogue_import_deinit(&im);
	assert_null(catalogue_by_key(&st.catalogue, "GREEN-M"));
	assert_non_null(catalogue_by_key(&st.catalogue, "NEW"));
}

static void two_lines_of_one_file_exchange_a_code(void **state)
{
	struct catalogue_import im;
	(void)state;
	assert_int_equal(
	    begin(&im,
	          HEAD "SWAB,swabs,other,09506000134352,,,,,,\n"
	               "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134383,yes,yes,,no,,\n",
	          0),
	    0);
	assert_int_equal(im.n_events, 4); /* each lets its code go first */
	store(&im);
	catalogue_import_deinit(&im);
	assert_string_equal(catalogue_by_key(&st.catalogue, "SWAB")->codes[0], "09506000134352");
}

static void what_is_refused_is_refused_at_its_place_and_changes_nothing(void **state)
{
	static const struct {
		const char *csv, *words;
		int whole;
	} facts[] = {
	    {HEAD "A,a,other,09506000134353,,,,,,\n",
	     "line 2, column D (codes): '09506000134353': its check digit is wrong", 0},
	    {HEAD "A,a,other,09506000134353*10,,,,,,\n", "its check digit is wrong", 0},
	    {HEAD "A,a,other,8003:09506000134353X1,,,,,,\n", "its check digit is wrong", 0},
	    {HEAD "A,a,other,9506000134352,,,,,,\n", "write 09506000134352", 0},
	    {HEAD "A,a,other,036000291452,,,,,,\n", "write 00036000291452", 0}, /* a UPC-A */
	    {HEAD "A,a,other,9.506E+12,,,,,,\n", "the spreadsheet has rounded", 0},
	    {HEAD "A,a,other,77;78,,,,,,\n", "put spaces between codes", 0},
	    {HEAD "A,a,other,(01)09506000134352,,,,,,\n", "give the 14 digits behind (01) alone", 0},
	    {HEAD "A,a,other,77,,,,,,\nB,b,other,78 77,,,,,,\n",
	     "line 3, column D (codes): the code '77' stands in line 2 as well, of 'A'", 0},
	    {HEAD "A,a,other,77,,,,,,\nA,b,other,78,,,,,,\n",
	     "line 3, column A (key): the key 'A' stands in line 2 as well", 0},
	    {HEAD "A,a,other,09506000134352,,,,,,\n",
	     "line 2, column D (codes): the code '09506000134352' of 'A' finds the line 'GREEN-M'", 0},
	    {HEAD "A,a,tourniquet,77,no,yes,,,,\n",
	     "line 2, column E (marked): line 'A': a tourniquet must bear a regulator's mark", 0},
	    {HEAD "A,a,tourniquet,77,yes,no,,,,\n", "line 2, column F (visible)", 0},
	    {HEAD "A,a,other,77,,,,after,,\n",
	     "line 2, column I (label_place): line 'A': it is labelled, and nothing says where", 0},
	    {HEAD GREEN TRAY, "line 3, column G (contents): 'TRAY' holds 'SWAB', which is not in this file",
	     1},
	    {HEAD, "holds no line", 0},
	};
	_cleanup_(buf_free) struct buf before = {0}, after = {0};
	(void)state;
	assert_int_equal(catalogue_write_csv(&st.catalogue, &before), 0);
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		struct catalogue_import im;
		if (begin(&im, facts[i].csv, facts[i].whole) != -EINVAL || !strstr(e.text, facts[i].words))
			fail_msg("%s: %s", facts[i].csv, e.text);
	}
	assert_int_equal(catalogue_write_csv(&st.catalogue, &after), 0);
	assert_string_equal(after.data, before.data);
}

static void numbers_of_other_kinds_are_no_product_numbers(void **state)
{
	struct catalogue_import im;
	(void)state;
	/* seven and twelve digits whose last is no check digit, an asset, a label's text with a star of its own */
	assert_int_equal(begin(&im, HEAD "A,a,other,1234567 123456789013 8004:9506000FC* AB*10,,,,,,\n", 0),
	                 0);
	catalogue_import_deinit(&im);
}

int main(void)
{
#define IMPORT_TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)
	const struct CMUnitTest tests[] = {
	    IMPORT_TEST(each_line_is_told_with_what_becomes_of_it),
	    IMPORT_TEST(a_whole_catalogue_removes_what_it_lacks),
	    IMPORT_TEST(a_code_goes_from_a_line_that_is_removed_to_another),
	    IMPORT_TEST(two_lines_of_one_file_exchange_a_code),
	    IMPORT_TEST(what_is_refused_is_refused_at_its_place_and_changes_nothing),
	    IMPORT_TEST(numbers_of_other_kinds_are_no_product_numbers),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
