/* The record on disk is append-only and chained: what was changed, damaged or is of a later version is found and told. */
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
#include "tests/unit/record/one-case.h"

static void nothing_is_edited_or_deleted(void **state)
{
	char folder[FOLDER_MAX];
	(void)state;
	one_case_make(folder);
	assert_int_equal(one_case_sql(folder, "UPDATE event SET payload = payload"), SQLITE_CONSTRAINT);
	assert_int_equal(one_case_sql(folder, "UPDATE event SET hash = x'00' WHERE seq = 1"),
	                 SQLITE_CONSTRAINT);
	assert_int_equal(one_case_sql(folder, "DELETE FROM event WHERE seq = (SELECT max(seq) FROM event)"),
	                 SQLITE_CONSTRAINT);
	assert_int_equal(one_case_sql(folder, "DELETE FROM event"), SQLITE_CONSTRAINT);
	assert_int_equal(one_case_sql(folder, "REPLACE INTO event SELECT * FROM event WHERE seq = 3"),
	                 SQLITE_CONSTRAINT);
	assert_int_equal(one_case_sql(folder, "UPDATE OR REPLACE event SET seq = 1 WHERE seq = 2"),
	                 SQLITE_CONSTRAINT);
	struct error e = {0};
	assert_int_equal(one_case_verify(folder, &e), 0);
	folder_remove(folder);
}

/* One byte or digit changed in one column of one event, by somebody who took the triggers away first. */
static const struct {
	const char *column, *change;
} changes[] = {
    {"seq", "seq = seq + 100000"},
    {"case_no", "case_no = case_no + 1"},
    {"kind", "kind = kind || 'x'"},
    {"key", "key = key || 'x'"},
    {"payload", "payload = replace(payload, '\"v\":2', '\"v\":1')"},
    {"payload, another time", "payload = replace(payload, '\"wall_ms\":1', '\"wall_ms\":2')"},
    {"payload, a space", "payload = '{ ' || substr(payload, 2)"},
    {"hash",
     "hash = CAST(substr(hash, 1, 31) || CASE WHEN substr(hash, 32) = x'00' THEN x'01' ELSE x'00' END AS "
     "BLOB)"},
    {"hash, cut", "hash = substr(hash, 1, 31)"},
};

static void any_byte_that_is_changed_is_found_and_named(void **state)
{
	char folder[FOLDER_MAX], other[FOLDER_MAX], text[400], name[32];
	(void)state;
	int64_t events = one_case_make(folder);
	int tried = 0;
	folder_make(other);
	for (int64_t seq = 1; seq <= events; seq++)
		for (size_t i = 0; i < sizeof changes / sizeof *changes; i++) {
			struct error e = {0};
			folder_copy(folder, other);
			snprintf(
			    text, sizeof text,
			    "PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF; DROP TRIGGER event_no_update;"
			    "UPDATE event SET %s WHERE seq = %lld",
			    changes[i].change, (long long)seq);
			assert_int_equal(one_case_sql(other, text), SQLITE_OK);
			snprintf(name, sizeof name, "event %lld: ", (long long)seq);
			if (one_case_verify(other, &e) != -EUCLEAN ||
			    strncmp(e.text, name, strlen(name)) != 0)
				fail_msg("%s of event %lld was changed, and verify says: %s",
				         changes[i].column, (long long)seq, e.text);
			tried++;
		}
	print_message("%d changes tried in %d events\n", tried, (int)events);
	folder_remove(folder);
	folder_remove(other);
}

static void a_missing_an_added_and_an_exchanged_event_are_found(void **state)
{
	static const char *const done[] = {
	    "DELETE FROM event WHERE seq = 20",
	    "DELETE FROM event WHERE seq = 1",
	    ("UPDATE event SET seq = -1 WHERE seq = 20; UPDATE event SET seq = 20 WHERE seq = 21;"
	     "UPDATE event SET seq = 21 WHERE seq = -1"),
	    "INSERT INTO event SELECT max(seq) + 2, case_no, kind, key, payload, hash FROM event",
	};
	char folder[FOLDER_MAX], other[FOLDER_MAX], text[600];
	(void)state;
	one_case_make(folder);
	folder_make(other);
	for (size_t i = 0; i < sizeof done / sizeof *done; i++) {
		struct error e = {0};
		folder_copy(folder, other);
		snprintf(text, sizeof text,
		         "DROP TRIGGER event_no_update; DROP TRIGGER event_no_delete; DROP TRIGGER "
		         "event_in_order; %s",
		         done[i]);
		assert_int_equal(one_case_sql(other, text), SQLITE_OK);
		if (one_case_verify(other, &e) != -EUCLEAN)
			fail_msg("not found: %s", done[i]);
	}
	folder_remove(folder);
	folder_remove(other);
}

static void a_changed_tail_stops_the_daemon_from_adding_to_it(void **state)
{
	static const char *const tails[] = {
	    ("UPDATE event SET payload = replace(payload, '\"wall_ms\":1', '\"wall_ms\":2') WHERE seq = "
	     "(SELECT max(seq) FROM event)"),
	    "UPDATE event SET hash = zeroblob(32) WHERE seq = (SELECT max(seq) FROM event)",
	    "UPDATE event SET hash = x'' WHERE seq = (SELECT max(seq) FROM event)",
	    "UPDATE event SET hash = zeroblob(32) WHERE seq = (SELECT max(seq) - 1 FROM event)",
	    "DELETE FROM event WHERE seq = (SELECT max(seq) - 1 FROM event)",
	    "INSERT INTO event SELECT max(seq) + 2, case_no, kind, key, payload, hash FROM event",
	};
	char folder[FOLDER_MAX], other[FOLDER_MAX], text[600];
	(void)state;
	one_case_make(folder);
	folder_make(other);
	for (size_t i = 0; i < sizeof tails / sizeof *tails; i++) {
		folder_copy(folder, other);
		snprintf(text, sizeof text,
		         "DROP TRIGGER event_no_update; DROP TRIGGER event_no_delete; DROP TRIGGER "
		         "event_in_order; %s",
		         tails[i]);
		assert_int_equal(one_case_sql(other, text), SQLITE_OK);
		one_case_opening_says(other, -EUCLEAN, "restore a backup");
	}
	folder_remove(folder);
	folder_remove(other);
}

/* A text with NUL in it, put there by who can make the chain: its hash is that of all its bytes, each time it is read. */
static void a_tail_with_nul_in_it_is_read_whole(void **state)
{
	char folder[FOLDER_MAX], text[1200], sql[3000], hex[2 * CHAIN_BYTES + 1], bytes[2 * 400 + 1];
	struct record *r = NULL;
	struct error e = {0};
	struct chain chain;
	(void)state;
	one_case_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	int64_t last = record_last(r, NULL);
	assert_int_equal(record_hash_at(r, last - 1, &chain), RECORD_FOUND);
	record_close(r);
	for (size_t i = 0; i < 400; i++) {
		text[i] = (char)(i == 1 ? 0 : 'a' + i % 26);
		snprintf(bytes + 2 * i, 3, "%02x", (unsigned)text[i]);
	}
	chain_add(&chain, text, 400);
	chain_hex(&chain, hex);
	snprintf(sql, sizeof sql,
	         "DROP TRIGGER event_no_update; UPDATE event SET payload = CAST(x'%s' AS TEXT), hash = x'%s' "
	         "WHERE seq = %lld",
	         bytes, hex, (long long)last);
	assert_int_equal(one_case_sql(folder, sql), SQLITE_OK);
	for (int i = 0; i < 3; i++) {
		r = NULL;
		if (record_open(&r, folder, &e) < 0)
			fail_msg("%s", e.text);
		assert_int_equal(record_last(r, NULL), last);
		record_close(r);
	}
	folder_remove(folder);
}

/* With the first event alone there is no hash before it but zeroes. */
static void a_changed_first_event_stops_the_daemon_too(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct event first = {.kind = EV_STARTED, .n = 1, .at = {.boot = 1, .boot_ms = 5, .wall_ms = 6}};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, &first, 1, &e), 0);
	record_close(r);
	assert_int_equal(one_case_sql(folder, "DROP TRIGGER event_no_update; UPDATE event SET payload = "
	                                      "replace(payload, '\"wall_ms\":6', '\"wall_ms\":7')"),
	                 SQLITE_OK);
	one_case_opening_says(folder, -EUCLEAN, "restore a backup");
	folder_remove(folder);
}

/* Somebody who knows how the hashes are made writes one anew: the number in the text must be the event's. */
static void a_number_in_the_text_that_is_not_the_events_is_found(void **state)
{
	char folder[FOLDER_MAX], path[FOLDER_MAX + 16], hex[2 * CHAIN_BYTES + 1], change[300];
	struct buf before = {0}, text = {0};
	struct chain chain;
	struct error e = {0};
	sqlite3 *db;
	(void)state;
	long long last = one_case_make(folder);
	one_case_file(folder, path);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	one_case_column(db, "SELECT hash FROM event ORDER BY seq DESC LIMIT 1 OFFSET 1", &before);
	snprintf(
	    change, sizeof change,
	    "SELECT replace(payload, '\"seq\":%lld', '\"seq\":%lld') FROM event ORDER BY seq DESC LIMIT 1",
	    last, last + 1);
	one_case_column(db, change, &text);
	sqlite3_close(db);
	memcpy(chain.hash, before.data, CHAIN_BYTES);
	chain_add(&chain, text.data, text.size);
	chain_hex(&chain, hex);
	snprintf(change, sizeof change,
	         "DROP TRIGGER event_no_update; UPDATE event SET hash = x'%s', payload = replace(payload, "
	         "'\"seq\":%lld', '\"seq\":%lld') WHERE seq = %lld",
	         hex, last, last + 1, last);
	assert_int_equal(one_case_sql(folder, change), SQLITE_OK);
	assert_int_equal(one_case_verify(folder, &e), -EUCLEAN);
	assert_non_null(strstr(e.text, "its columns do not agree with its text"));
	buf_free(&before);
	buf_free(&text);
	folder_remove(folder);
}

static void a_record_of_a_later_version_is_left_alone(void **state)
{
	char folder[FOLDER_MAX], path[FOLDER_MAX + 16];
	struct record *r = NULL;
	struct error e = {0};
	(void)state;
	one_case_make(folder);
	for (int version = RECORD_SCHEMA + 1; version <= 1000; version += 999 - RECORD_SCHEMA) {
		char text[64];
		snprintf(text, sizeof text, "PRAGMA user_version = %d", version);
		assert_int_equal(one_case_sql(folder, text), SQLITE_OK);
		one_case_opening_says(folder, -EPROTO, "install that version");
		one_case_file(folder, path);
		assert_int_equal(record_open_copy(&r, path, &e), -EPROTO);
	}
	folder_remove(folder);
}

static void write_file(const char *folder, const char *bytes, size_t size, long at)
{
	char path[FOLDER_MAX + 16];
	one_case_file(folder, path);
	FILE *f = fopen(path, at < 0 ? "we" : "r+e");
	assert_non_null(f);
	if (at > 0)
		assert_int_equal(fseek(f, at, SEEK_SET), 0);
	assert_int_equal(fwrite(bytes, 1, size, f), size);
	assert_int_equal(fclose(f), 0);
}

static void a_damaged_file_is_told_and_kept(void **state)
{
	char folder[FOLDER_MAX], junk[4096], path[FOLDER_MAX + 16];
	struct stat before, after;
	(void)state;
	memset(junk, 0xa5, sizeof junk);
	folder_make(folder);
	write_file(folder,
	           "this is not a database, only some text that is long enough to be read as a header", 82,
	           -1);
	one_case_opening_says(folder, -EUCLEAN, "restore a backup");
	folder_remove(folder);

	/* Each page of the file in turn. Either it is found at once, or verify finds it. */
	int64_t events = one_case_make(folder), found = 0;
	one_case_file(folder, path);
	assert_int_equal(stat(path, &before), 0);
	char other[FOLDER_MAX];
	folder_make(other);
	for (long at = 0; at < before.st_size; at += 4096) {
		struct record *r = NULL;
		struct error e = {0};
		folder_copy(folder, other);
		write_file(other, junk, sizeof junk, at);
		int n = record_open(&r, other, &e);
		record_close(r);
		struct error why = {0};
		int v = one_case_verify_counting(other, &found, &why);
		if (v == 0 && found != events)
			fail_msg("page %ld: verified with %d of %d events", at / 4096, (int)found,
			         (int)events);
		/* An index may be damaged without a word of the record being lost: then both pass, or SQLite
		 * tells. */
		if (n < 0 && !strstr(e.text, ": "))
			fail_msg("page %ld: no sentence: %s", at / 4096, e.text);
		if (at == 0)
			assert_int_equal(n, -EUCLEAN);
		if (v < 0 && !strstr(why.text, ": "))
			fail_msg("page %ld: no sentence: %s", at / 4096, why.text);
	}
	one_case_file(other, path);
	assert_int_equal(stat(path, &after), 0);
	assert_int_equal(after.st_size, before.st_size);
	folder_remove(folder);
	folder_remove(other);
}

static void a_folder_that_cannot_be_one_is_told(void **state)
{
	char folder[FOLDER_MAX], inside[FOLDER_MAX + 16];
	(void)state;
	folder_make(folder);
	write_file(folder, "x", 1, -1);
	one_case_file(folder, inside);
	one_case_opening_says(inside, -ENOTDIR, "--data");
	snprintf(inside, sizeof inside, "%s/a/b/c", folder);
	one_case_opening_says(inside, -ENOENT, "--data");
	folder_remove(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(nothing_is_edited_or_deleted),
	    cmocka_unit_test(any_byte_that_is_changed_is_found_and_named),
	    cmocka_unit_test(a_missing_an_added_and_an_exchanged_event_are_found),
	    cmocka_unit_test(a_changed_tail_stops_the_daemon_from_adding_to_it),
	    cmocka_unit_test(a_tail_with_nul_in_it_is_read_whole),
	    cmocka_unit_test(a_changed_first_event_stops_the_daemon_too),
	    cmocka_unit_test(a_number_in_the_text_that_is_not_the_events_is_found),
	    cmocka_unit_test(a_record_of_a_later_version_is_left_alone),
	    cmocka_unit_test(a_damaged_file_is_told_and_kept),
	    cmocka_unit_test(a_folder_that_cannot_be_one_is_told),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
