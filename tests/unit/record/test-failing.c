/* Whatever the record is asked to do, each call that it makes of the world fails once: a file, SQLite, memory, a thread. Then
 * it says so with a sentence and the code that belongs to it, or does without and says the same as ever; the record is as
 * whole as before, and what was asked for is to be had again. */
#include <errno.h>
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>
#include <sqlite3.h>

#include "base/json.h"
#include "tests/unit/record/doings.h"
#include "tests/unit/record/failing.h"

static void is_wrong(const struct doing *a, const char *failed, int result, const char *said)
{
	fail_msg("%s, and %s failed: %d: '%s'", a->what, failed, result, said);
}

/* What failed; NULL nothing did, since fewer calls were made. */
static const char *attempt(const struct doing *a, int after, int code, const struct told *o)
{
	struct error e = {0};
	doing_set_up(a);
	failing_begin(after, code);
	int n = a->run(&e);
	const char *failed = failing_end();
	if (n < 0 && !failed)
		fail_msg("%s: %d: %s", a->what, n, e.text);
	if (n < 0 && !(a->traits & WORDLESS) && (e.code != n || !strstr(e.text, ": ")))
		is_wrong(a, failed, n, e.text);
	if (n < 0 && !(a->traits & ONCE)) {
		doing_forget();
		n = a->run(&e);
		if (n < 0 || (o && strcmp(doing_told()->text, o->text) != 0))
			is_wrong(a, failed, n, n < 0 ? e.text : doing_told()->text);
	} else if (n >= 0 && o && strcmp(doing_told()->text, o->text) != 0 &&
	           !(a->traits & MAY_DOUBT && doing_told()->doubts > o->doubts))
		is_wrong(a, failed, n, doing_told()->text);
	doing_is_whole(a, failed, n == 0 ? a->adds : 0);
	return failed;
}

static void each_call_fails_once_and_nothing_is_lost(void **state)
{
	(void)state;
	for (size_t i = 0; i < n_doings; i++) {
		const struct doing *a = &all_doings[i];
		struct told ordinary;
		int after = 0;
		assert_null(attempt(a, INT_MAX, SQLITE_OK, NULL));
		ordinary = *doing_told();
		doing_tear_down();
		for (; attempt(a, after, SQLITE_IOERR, &ordinary); after++)
			doing_tear_down();
		doing_tear_down();
		assert_true(after > 0);
	}
}

/* What SQLite says is told as what a person can do about it. */
static void each_answer_of_sqlite_has_its_words(void **state)
{
	static const struct {
		int sqlite, code;
		const char *words;
	} answers[] = {
	    {SQLITE_FULL, -ENOSPC, "the disk is full"},
	    {SQLITE_READONLY, -EACCES, "cannot be written"},
	    {SQLITE_PERM, -EACCES, "cannot be written"},
	    {SQLITE_CANTOPEN, -EACCES, "cannot be written"},
	    {SQLITE_CORRUPT, -EUCLEAN, "the record is damaged"},
	    {SQLITE_NOTADB, -EUCLEAN, "the record is damaged"},
	    {SQLITE_NOMEM, -ENOMEM, "out of memory"},
	    {SQLITE_BUSY, -EBUSY, "another program holds the record"},
	    {SQLITE_LOCKED, -EBUSY, "another program holds the record"},
	    {SQLITE_IOERR, -EIO, "check the disk"},
	    {SQLITE_IOERR_FSYNC, -EIO, "check the disk"},
	};
	const struct doing *append = doing_of("append");
	(void)state;
	for (size_t i = 0; i < sizeof answers / sizeof *answers; i++) {
		struct error e = {0};
		doing_set_up(append);
		failing_begin(1, answers[i].sqlite); /* its second call, behind a look at the file: BEGIN */
		assert_int_equal(append->run(&e), answers[i].code);
		assert_string_equal(failing_end(), "sqlite3_step");
		if (!strstr(e.text, answers[i].words))
			fail_msg("%d: %s", answers[i].sqlite, e.text);
		doing_is_whole(append, "sqlite3_step", 0);
		doing_tear_down();
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(each_call_fails_once_and_nothing_is_lost),
	    cmocka_unit_test(each_answer_of_sqlite_has_its_words),
	};
	json_watch_memory();
	if (access("/dev/shm", W_OK) == 0)
		setenv("TMPDIR", "/dev/shm", 0); /* no disk is waited for: durability is tested elsewhere */
	return cmocka_run_group_tests(tests, doings_make_whole, doings_drop_whole);
}
