#include "tests/unit/record/one-case.h"

#include <errno.h>
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
#include <sqlite3.h>

#include "record/event-json.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

/* A closed record of one ordinary case, in its own folder. */
int64_t one_case_make(char folder[FOLDER_MAX])
{
	struct error e = {0};
	struct record *r = NULL;
	struct history h;
	folder_make(folder);
	if (record_open(&r, folder, &e) < 0)
		fail_msg("%s", e.text);
	assert_int_equal(history_init(&h, r, 1, 0), 0);
	assert_int_equal(history_case(&h, 1), 0);
	int64_t events = record_last(r, NULL);
	history_deinit(&h);
	record_close(r);
	return events;
}

void one_case_file(const char *folder, char path[FOLDER_MAX + 16])
{
	snprintf(path, FOLDER_MAX + 16, "%s/" RECORD_FILE, folder);
}

/* What somebody with the file and any SQLite can do. Returns SQLite's code. */
int one_case_sql(const char *folder, const char *text)
{
	char path[FOLDER_MAX + 16];
	sqlite3 *db;
	one_case_file(folder, path);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	int code = sqlite3_exec(db, text, NULL, NULL, NULL);
	sqlite3_close(db);
	return code;
}

int one_case_verify_counting(const char *folder, int64_t *events, struct error *e)
{
	char path[FOLDER_MAX + 16];
	struct record *r = NULL;
	struct chain chain;
	one_case_file(folder, path);
	int n = record_open_copy(&r, path, e);
	if (n == 0)
		n = record_verify(r, events, &chain, e);
	record_close(r);
	return n;
}

int one_case_verify(const char *folder, struct error *e)
{
	int64_t events;
	return one_case_verify_counting(folder, &events, e);
}

void one_case_opening_says(const char *folder, int code, const char *words)
{
	struct record *r = NULL;
	struct error e = {0};
	int n = record_open(&r, folder, &e);
	if (n != code || !strstr(e.text, words) || !strstr(e.text, ": "))
		fail_msg("%d, not %d, or not '%s': %s", n, code, words, e.text);
}

void one_case_column(sqlite3 *db, const char *text, struct buf *out)
{
	sqlite3_stmt *s = NULL;
	assert_int_equal(sqlite3_prepare_v2(db, text, -1, &s, NULL), SQLITE_OK);
	assert_int_equal(sqlite3_step(s), SQLITE_ROW);
	buf_add(out, sqlite3_column_blob(s, 0), (size_t)sqlite3_column_bytes(s, 0));
	sqlite3_finalize(s);
}
