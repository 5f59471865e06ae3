/* A record that is looked through in several parts at once gives what it gives in one, whatever is wrong with it. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <sqlite3.h>

#include "record/verify.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

static char folder[FOLDER_MAX], file[FOLDER_MAX + 16];
static struct error e;

static int set_up(void **state)
{
	struct record *r;
	struct history h;
	(void)state;
	folder_make(folder);
	snprintf(file, sizeof file, "%s/" RECORD_FILE, folder);
	if (record_open(&r, folder, &e) < 0 || history_init(&h, r, 7, 500) < 0)
		return -1;
	for (int i = 0; i < 6; i++)
		if (history_case(&h, 1) < 0)
			return -1;
	int n = history_flush(&h);
	history_deinit(&h);
	record_close(r);
	return n;
}

static int tear_down(void **state)
{
	(void)state;
	folder_remove(folder);
	return 0;
}

static void no_word(void *context, const char *what)
{
	(void)context;
	(void)what;
}

struct outcome_of {
	int result;
	struct verified v;
	char words[sizeof e.text];
};

static struct outcome_of in_parts(int parts)
{
	struct record *r;
	struct outcome_of o = {0};
	const struct verify_how how = {.parts = parts, .found = no_word};
	assert_int_equal(record_open_copy(&r, file, &e), 0);
	e.text[0] = 0;
	o.result = record_verify_all(r, &how, &o.v, &e);
	memcpy(o.words, e.text, sizeof o.words);
	record_close(r);
	return o;
}

static void is_the_same_in_parts(int result)
{
	struct outcome_of one = in_parts(1);
	assert_int_equal(one.result, result);
	for (int parts = 2; parts <= 5; parts++) {
		struct outcome_of some = in_parts(parts);
		assert_int_equal(some.result, one.result);
		assert_string_equal(some.words, one.words);
		assert_int_equal(some.v.events, one.v.events);
		if (result == 0)
			assert_memory_equal(&some.v.chain, &one.v.chain, sizeof one.v.chain);
	}
}

static void change(const char *sql, int64_t seq)
{
	sqlite3 *db;
	char text[400];
	assert_int_equal(sqlite3_open(file, &db), SQLITE_OK);
	assert_int_equal(
	    sqlite3_exec(db, "DROP TRIGGER IF EXISTS event_no_update; DROP TRIGGER IF EXISTS event_no_delete",
	                 NULL, NULL, NULL),
	    SQLITE_OK);
	snprintf(text, sizeof text, sql, (long long)seq);
	if (sqlite3_exec(db, text, NULL, NULL, NULL) != SQLITE_OK)
		fail_msg("%s: %s", text, sqlite3_errmsg(db));
	sqlite3_close(db);
}

static void a_whole_record_is_the_same(void **state)
{
	(void)state;
	is_the_same_in_parts(0);
	assert_true(in_parts(3).v.events > 300);
}

/* Two are wrong: the first is told, in whichever part it lies. */
static void the_first_fault_is_told(void **state)
{
	(void)state;
	int64_t end = in_parts(1).v.events;
	change("UPDATE event SET hash = zeroblob(32) WHERE seq = %lld", end - 1);
	is_the_same_in_parts(-EUCLEAN);
	for (int i = 4; i > 0; i--) { /* where parts meet, too */
		change("UPDATE event SET hash = zeroblob(32) WHERE seq = %lld", end * i / 5);
		is_the_same_in_parts(-EUCLEAN);
		char words[40];
		snprintf(words, sizeof words, "event %lld:", (long long)(end * i / 5));
		assert_non_null(strstr(in_parts(5).words, words));
	}
	change("DELETE FROM event WHERE seq = %lld", end / 2 / 5);
	is_the_same_in_parts(-EUCLEAN);
	change("DELETE FROM event WHERE seq <= %lld", 1);
	is_the_same_in_parts(-EUCLEAN);
}

/* A file that lets a column have no value, or another type, was made by somebody else. */
static void a_column_that_is_no_text_is_a_fault(void **state)
{
	static const char *const made[] = {"kind = NULL", "key = NULL",    "payload = NULL",
	                                   "hash = NULL", "payload = 1.5", "payload = zeroblob(0)"};
	(void)state;
	change("PRAGMA writable_schema = ON;"
	       " UPDATE sqlite_master SET sql = replace(replace(sql, 'NOT NULL', ''), 'STRICT', '')"
	       " WHERE name = 'event' AND %lld",
	       1);
	for (int i = 0; i < (int)(sizeof made / sizeof *made); i++) {
		char sql[100], words[40];
		snprintf(sql, sizeof sql, "UPDATE event SET %s WHERE seq = %%lld", made[i]);
		snprintf(words, sizeof words, "event %d:", 100 - i);
		change(sql, 100 - i);
		is_the_same_in_parts(-EUCLEAN);
		if (!strstr(in_parts(3).words, words))
			fail_msg("%s: %s", made[i], in_parts(3).words);
	}
}

/* A number that nobody reaches says nothing of how many there are. */
static void a_number_far_away_is_a_gap(void **state)
{
	(void)state;
	change("UPDATE event SET seq = 9223372036854775807 WHERE seq = %lld", in_parts(1).v.events);
	is_the_same_in_parts(-EUCLEAN);
	assert_int_equal(in_parts(0).result, -EUCLEAN);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup_teardown(a_whole_record_is_the_same, set_up, tear_down),
	    cmocka_unit_test_setup_teardown(the_first_fault_is_told, set_up, tear_down),
	    cmocka_unit_test_setup_teardown(a_column_that_is_no_text_is_a_fault, set_up, tear_down),
	    cmocka_unit_test_setup_teardown(a_number_far_away_is_a_gap, set_up, tear_down),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
