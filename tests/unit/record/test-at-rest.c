/* A record that no daemon holds: what a kill left in its log is read as well, nothing beside it is touched, and a backup or a
 * restore that cannot be done says why and leaves what was there. */
#include <errno.h>
#include <limits.h>
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

#include "record/backup.h"
#include "record/store.h"
#include "tests/unit/record/failing.h"
#include "tests/unit/record/folder.h"

#define PATH_SIZE (FOLDER_MAX + 64)

static char live[FOLDER_MAX], killed[FOLDER_MAX], beside[FOLDER_MAX];
static struct record *held; /* by the daemon of `live` */
static struct error e;

static const char *in(const char *folder, const char *name)
{
	static char paths[32][PATH_SIZE];
	static int next;
	char *path = paths[next++ % 32];
	snprintf(path, PATH_SIZE, "%s/%s", folder, name);
	return path;
}

static int is_there(const char *path)
{
	struct stat st;
	return lstat(path, &st) == 0;
}

static void write_text(const char *path, const char *text)
{
	FILE *f = fopen(path, "we");
	assert_non_null(f);
	fputs(text, f);
	assert_int_equal(fclose(f), 0);
}

/* Three events in the file and two in the log, as a kill leaves them. */
static int set_up(void **state)
{
	struct event events[] = {{.kind = EV_ALIVE, .at = {.wall_ms = 1000}},
	                         {.kind = EV_ALIVE, .at = {.wall_ms = 2000}},
	                         {.kind = EV_ALIVE, .at = {.wall_ms = 3000}}};
	(void)state;
	unsetenv("TMPDIR");
	folder_make(live);
	folder_make(killed);
	folder_make(beside);
	int n = record_open(&held, live, &e);
	if (n == 0)
		n = record_append(held, events, 3, &e);
	record_close(held);
	held = NULL;
	if (n == 0)
		n = record_open(&held, live, &e);
	if (n == 0)
		n = record_append(held, events, 2, &e);
	folder_copy(live, killed);
	return n;
}

static int tear_down(void **state)
{
	(void)state;
	record_close(held);
	held = NULL;
	folder_remove(live);
	folder_remove(killed);
	folder_remove(beside);
	return 0;
}

static int64_t events_of(const char *file)
{
	struct record *r = NULL;
	int n = record_open_still(&r, file, &e);
	int64_t events = n < 0 ? n : record_last(r, NULL);
	record_close(r);
	return events;
}

static void what_a_kill_left_in_the_log_is_read_and_stays(void **state)
{
	struct stat file, log, after;
	(void)state;
	assert_int_equal(stat(in(killed, RECORD_FILE), &file), 0);
	assert_int_equal(stat(in(killed, RECORD_FILE "-wal"), &log), 0);
	assert_true(log.st_size > 0);
	assert_int_equal(events_of(in(killed, RECORD_FILE)), 5);
	assert_int_equal(stat(in(killed, RECORD_FILE), &after), 0);
	assert_memory_equal(&file.st_mtim, &after.st_mtim, sizeof file.st_mtim);
	assert_int_equal(stat(in(killed, RECORD_FILE "-wal"), &after), 0);
	assert_int_equal(log.st_size, after.st_size);
	assert_false(is_there(in(killed, RECORD_FILE "-shm")) && after.st_size == 0);
	assert_int_equal(unlink(in(killed, RECORD_FILE "-wal")), 0);
	assert_int_equal(events_of(in(killed, RECORD_FILE)), 3);
}

/* Each call fails once: it is said, and no copy is left where the log was read. */
static void reading_the_log_leaves_nothing_behind(void **state)
{
	const char *failed = "";
	(void)state;
	setenv("TMPDIR", beside, 1);
	for (int after = 0; failed; after++) {
		struct record *r = NULL;
		e = (struct error){0};
		failing_begin(after, SQLITE_IOERR);
		int n = record_open_still(&r, in(killed, RECORD_FILE), &e);
		failed = failing_end();
		if (n < 0 && (!failed || e.code != n || !strstr(e.text, ": ")))
			fail_msg("%s failed: %d '%s'", failed ? failed : "nothing", n, e.text);
		record_close(r);
		if (failed && strcmp(failed, "unlink") == 0) /* but what could not be taken away */
			folder_remove(beside);
		else if (rmdir(beside) < 0)
			fail_msg("%s failed, and something is left", failed ? failed : "nothing");
		assert_int_equal(mkdir(beside, 0700), 0);
	}
	setenv("TMPDIR", "/nowhere", 1);
	assert_int_equal(events_of(in(killed, RECORD_FILE)), -ENOENT);
	assert_non_null(strstr(e.text, "check $TMPDIR"));
	unsetenv("TMPDIR");
}

static void a_name_with_the_signs_of_an_address_is_a_name(void **state)
{
	static const char *const names[] = {"a b.db", "50%.db", "why?.db", "no#1.db", "%41.db"};
	(void)state;
	unlink(in(killed, RECORD_FILE "-wal"));
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		assert_int_equal(link(in(killed, RECORD_FILE), in(beside, names[i])), 0);
		assert_int_equal(events_of(in(beside, names[i])), 3);
	}
	assert_int_equal(events_of(in(beside, "A.db")), -ENOENT);
}

static void change(const char *file, const char *sql)
{
	sqlite3 *db;
	assert_int_equal(sqlite3_open(file, &db), SQLITE_OK);
	if (sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(db));
	sqlite3_close(db);
}

static void what_is_no_record_is_no_backup(void **state)
{
	static const struct {
		const char *sql;
		int code;
		const char *words;
	} changes[] = {
	    {"PRAGMA user_version = 0", -EUCLEAN, "holds no record"},
	    {"PRAGMA user_version = 4", -EPROTO, "use the version that wrote it"},
	    {"DROP TRIGGER event_no_delete; DELETE FROM event", -EUCLEAN, "no event at all"},
	    {"DROP TRIGGER event_no_update; UPDATE event SET hash = zeroblob(32) WHERE seq = 2", -EUCLEAN,
	     "event 2"},
	    {"DROP TRIGGER event_no_update; UPDATE event SET payload = payload || ' ' WHERE seq = 5",
	     -EUCLEAN, "event 5"},
	    {"DROP TABLE event", -EUCLEAN, "no such table"},
	};
	struct backup b;
	(void)state;
	for (size_t i = 0; i < sizeof changes / sizeof *changes; i++) {
		folder_copy(killed, beside);
		const char *file = in(beside, RECORD_FILE);
		change(file, changes[i].sql);
		int n = backup_check(file, &b, &e);
		if (n != changes[i].code || !strstr(e.text, changes[i].words) || !strstr(e.text, file))
			fail_msg("%s: %d: %s", changes[i].sql, n, e.text);
	}
	write_text(in(beside, RECORD_FILE),
	           "these are no pages of a database, however long one reads on in it");
	assert_int_equal(backup_check(in(beside, RECORD_FILE), &b, &e), -EUCLEAN);
	folder_copy(killed, beside);
	change(in(beside, RECORD_FILE), "VACUUM"); /* the log goes into the file */
	assert_int_equal(backup_check(in(beside, RECORD_FILE), &b, &e), 0);
	assert_int_equal(b.events, 5);
	assert_int_equal(b.last_ms, 2000);
	assert_int_equal(truncate(in(beside, RECORD_FILE), 4096), 0);
	assert_int_equal(backup_check(in(beside, RECORD_FILE), &b, &e), -EUCLEAN);
}

static void a_backup_replaces_a_backup_and_nothing_else(void **state)
{
	char far[PATH_MAX + 10], aside[PATH_MAX];
	struct backup b;
	struct stat st;
	const char *from = in(killed, RECORD_FILE), *to = in(beside, "b.db");
	(void)state;
	assert_int_equal(backup_write(from, to, live, &b, aside, &e), 0);
	assert_int_equal(b.events, 5);
	assert_int_equal(events_of(to), 5);
	assert_int_equal(stat(to, &st), 0);
	assert_int_equal(st.st_mode & 0777, 0640);
	assert_int_equal(backup_write(from, to, live, &b, aside, &e), 0);

	write_text(in(beside, "letter"), "dear colleague, this is longer than fifteen letters");
	assert_int_equal(backup_write(from, in(beside, "letter"), live, &b, aside, &e), -EEXIST);
	write_text(in(beside, "short"), "x");
	assert_int_equal(backup_write(from, in(beside, "short"), live, &b, aside, &e), -EEXIST);
	assert_int_equal(symlink(to, in(beside, "link")), 0);
	assert_int_equal(backup_write(from, in(beside, "link"), live, &b, aside, &e), -EEXIST);
	assert_int_equal(backup_write(from, in(live, "b.db"), live, &b, aside, &e), -EINVAL);
	assert_int_equal(mkdir(in(live, "slips-below"), 0700), 0);
	assert_int_equal(backup_write(from, in(live, "slips-below/b.db"), live, &b, aside, &e), -EINVAL);
	assert_int_equal(rmdir(in(live, "slips-below")), 0);
	assert_non_null(strstr(e.text, "another disk"));
	assert_int_equal(backup_write(from, in(beside, "none/b.db"), live, &b, aside, &e), -ENOENT);
	assert_non_null(strstr(e.text, "make the folder"));
	assert_int_equal(backup_write(in(beside, "letter"), in(beside, "c.db"), live, &b, aside, &e),
	                 -EUCLEAN);
	memset(far, 'f', sizeof far - 1);
	far[sizeof far - 1] = 0;
	assert_int_equal(backup_write(from, far, live, &b, aside, &e), -ENAMETOOLONG);
	assert_false(is_there(in(beside, "c.db")));
	assert_false(is_there(in(beside, "b.db.new")));

	assert_int_equal(chdir(beside), 0); /* a name without a folder is of this one */
	assert_int_equal(backup_write(from, "d.db", live, &b, aside, &e), 0);
	assert_int_equal(events_of(in(beside, "d.db")), 5);
	assert_int_equal(chdir("/"), 0);
}

/* Of a station that had to begin a new record, and of another one, the earlier backup may be all that is left. */
static void a_backup_that_holds_more_is_kept_beside(void **state)
{
	struct backup b;
	char aside[PATH_MAX];
	const char *from = in(killed, RECORD_FILE), *to = in(beside, "b.db");
	(void)state;
	assert_int_equal(backup_write(from, to, live, &b, aside, &e), 0);
	assert_string_equal(aside, "");
	assert_int_equal(backup_write(in(live, RECORD_FILE), to, live, &b, aside, &e), 0);
	assert_string_equal(aside, ""); /* all of it is in this one too */
	change(to, "INSERT INTO event SELECT 6, case_no, kind, key, payload, hash FROM event WHERE seq = 5");
	assert_int_equal(backup_write(from, to, live, &b, aside, &e), 0);
	assert_non_null(strstr(aside, "b.db-other-"));
	assert_int_equal(events_of(to), 5);
	assert_int_equal(is_there(aside), 1);
}

/* An event of a version that did not read back what it wrote: the copy has it too, and says so. */
static void a_record_with_an_event_that_cannot_be_read_is_kept_with_a_word(void **state)
{
	struct backup b;
	char aside[PATH_MAX], sql[300], hex[2 * CHAIN_BYTES + 1];
	struct chain chain;
	static const char text[] = "{\"kind\":\"never-was\",\"seq\":6,\"v\":2}";
	(void)state;
	record_last(held, &chain);
	chain_add(&chain, text, sizeof text - 1);
	chain_hex(&chain, hex);
	snprintf(sql, sizeof sql, "INSERT INTO event VALUES(6, 0, 'never-was', '', '%s', x'%s')", text, hex);
	change(in(killed, RECORD_FILE), sql);
	assert_int_equal(backup_write(in(killed, RECORD_FILE), in(beside, "b.db"), live, &b, aside, &e), 0);
	assert_int_equal(b.events, 6);
	assert_int_equal(b.odd.code, -EBADMSG);
	assert_int_equal(b.last_ms, 0);
	assert_non_null(strstr(b.odd.text, "event 6"));
}

static void a_record_is_restored_where_no_station_works(void **state)
{
	struct backup b;
	char aside[PATH_MAX];
	(void)state;
	unlink(in(killed, RECORD_FILE "-wal"));
	assert_int_equal(backup_restore(in(killed, RECORD_FILE), live, &b, aside, &e), -EBUSY);
	assert_non_null(strstr(e.text, "nothing was touched"));
	record_close(held);
	held = NULL;
	assert_int_equal(backup_restore(in(killed, RECORD_FILE), in(beside, "none"), &b, aside, &e),
	                 -ENOTDIR);
	write_text(in(beside, "file"), "no folder");
	assert_int_equal(backup_restore(in(killed, RECORD_FILE), in(beside, "file"), &b, aside, &e),
	                 -ENOTDIR);
	assert_int_equal(backup_restore(in(beside, "file"), live, &b, aside, &e), -EUCLEAN);
	assert_string_equal(aside, "");
	assert_int_equal(events_of(in(live, RECORD_FILE)), 5);
	assert_int_equal(backup_restore(in(killed, RECORD_FILE), live, &b, aside, &e), 0);
	assert_int_equal(events_of(in(live, RECORD_FILE)), 3);
	assert_int_equal(events_of(aside), 5);
	assert_int_equal(backup_restore(in(killed, RECORD_FILE), beside, &b, aside, &e),
	                 0); /* none was there */
	assert_string_equal(aside, "");
	assert_int_equal(events_of(in(beside, RECORD_FILE)), 3);
}

int main(void)
{
#define AT_REST(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
	const struct CMUnitTest tests[] = {
	    AT_REST(what_a_kill_left_in_the_log_is_read_and_stays),
	    AT_REST(reading_the_log_leaves_nothing_behind),
	    AT_REST(a_name_with_the_signs_of_an_address_is_a_name),
	    AT_REST(what_is_no_record_is_no_backup),
	    AT_REST(a_backup_replaces_a_backup_and_nothing_else),
	    AT_REST(a_backup_that_holds_more_is_kept_beside),
	    AT_REST(a_record_with_an_event_that_cannot_be_read_is_kept_with_a_word),
	    AT_REST(a_record_is_restored_where_no_station_works),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
