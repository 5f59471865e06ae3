/* What the hospital says was used at other stations: kept over a start, forgotten after its time, made anew where it is damaged. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <unistd.h>

#include <cmocka.h>

#include "record/elsewhere.h"
#include "record/store.h"
#include "tests/unit/record/folder.h"

#define TODAY 20785 /* days since 1970 */

static char folder[FOLDER_MAX];

static struct elsewhere *open_on(int32_t day)
{
	struct elsewhere *w = NULL;
	struct error e = {0};
	assert_int_equal(elsewhere_open(&w, folder, day, &e), 0);
	return w;
}

static void is_of(struct elsewhere *w, const char *identity, int32_t station, int32_t case_no)
{
	struct elsewhere_use use = {0};
	assert_int_equal(elsewhere_find(w, identity, &use), RECORD_FOUND);
	assert_int_equal(use.station, station);
	assert_int_equal(use.case_no, case_no);
}

static void is_of_nobody(struct elsewhere *w, const char *identity)
{
	struct elsewhere_use use;
	assert_int_equal(elsewhere_find(w, identity, &use), RECORD_HAS_NONE);
}

static void what_was_said_is_known_after_a_start(void **state)
{
	(void)state;
	struct elsewhere *w = open_on(TODAY);
	is_of_nobody(w, "GREEN-M:1");
	assert_int_equal(elsewhere_add(w, "GREEN-M:1", (struct elsewhere_use){2, 7}, TODAY), 0);
	assert_int_equal(elsewhere_add(w, "GREEN-M:2", (struct elsewhere_use){2, 7}, TODAY), 0);
	assert_int_equal(elsewhere_add(w, "GREEN-M:2", (struct elsewhere_use){3, 9}, TODAY), 0);
	elsewhere_close(w);
	w = open_on(TODAY + 1);
	is_of(w, "GREEN-M:1", 2, 7);
	is_of(w, "GREEN-M:2", 3, 9);
	is_of_nobody(w, "");
	elsewhere_close(w);
	is_of_nobody(NULL, "GREEN-M:1");
	elsewhere_close(NULL);
}

static void it_is_forgotten_after_its_days(void **state)
{
	(void)state;
	struct elsewhere *w = open_on(TODAY);
	assert_int_equal(elsewhere_add(w, "GREEN-M:1", (struct elsewhere_use){2, 7}, TODAY), 0);
	assert_int_equal(elsewhere_add(w, "GREEN-M:3", (struct elsewhere_use){2, 8}, TODAY + 1), 0);
	elsewhere_close(w);
	w = open_on(TODAY + ELSEWHERE_DAYS);
	is_of(w, "GREEN-M:1", 2, 7);
	elsewhere_close(w);
	w = open_on(TODAY + ELSEWHERE_DAYS + 1);
	is_of_nobody(w, "GREEN-M:1");
	is_of(w, "GREEN-M:3", 2, 8);
	elsewhere_close(w);
}

static void a_damaged_file_is_made_anew(void **state)
{
	(void)state;
	char file[FOLDER_MAX + 16];
	snprintf(file, sizeof file, "%s/" ELSEWHERE_FILE, folder);
	FILE *f = fopen(file, "we");
	assert_non_null(f);
	for (int i = 0; i < 500; i++)
		fputs("this is no database ", f);
	assert_int_equal(fclose(f), 0);
	struct elsewhere *w = open_on(TODAY);
	is_of_nobody(w, "GREEN-M:1");
	assert_int_equal(elsewhere_add(w, "GREEN-M:1", (struct elsewhere_use){2, 7}, TODAY), 0);
	is_of(w, "GREEN-M:1", 2, 7);
	elsewhere_close(w);
}

static void where_there_is_no_folder_it_says_so(void **state)
{
	(void)state;
	struct elsewhere *w = NULL;
	struct error e = {0};
	assert_true(elsewhere_open(&w, "/nowhere/at/all", TODAY, &e) < 0);
	assert_null(w);
	assert_true(e.text[0] != 0);
}

static int make(void **state)
{
	(void)state;
	folder_make(folder);
	return 0;
}

static int remove_it(void **state)
{
	(void)state;
	folder_remove(folder);
	return 0;
}

int main(void)
{
#define IN_A_FOLDER(test) cmocka_unit_test_setup_teardown(test, make, remove_it)
	const struct CMUnitTest tests[] = {
	    IN_A_FOLDER(what_was_said_is_known_after_a_start),
	    IN_A_FOLDER(it_is_forgotten_after_its_days),
	    IN_A_FOLDER(a_damaged_file_is_made_anew),
	    IN_A_FOLDER(where_there_is_no_folder_it_says_so),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
