/* The record on disk: append-only, chained, held by one daemon, and honest about what is wrong with it. */
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
static int64_t make_case(char folder[FOLDER_MAX])
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

static void file_in(const char *folder, char path[FOLDER_MAX + 16])
{
	snprintf(path, FOLDER_MAX + 16, "%s/" RECORD_FILE, folder);
}

/* What somebody with the file and any SQLite can do. Returns SQLite's code. */
static int sql(const char *folder, const char *text)
{
	char path[FOLDER_MAX + 16];
	sqlite3 *db;
	file_in(folder, path);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	int code = sqlite3_exec(db, text, NULL, NULL, NULL);
	sqlite3_close(db);
	return code;
}

static int verify_counting(const char *folder, int64_t *events, struct error *e)
{
	char path[FOLDER_MAX + 16];
	struct record *r = NULL;
	struct chain chain;
	file_in(folder, path);
	int n = record_open_copy(&r, path, e);
	if (n == 0)
		n = record_verify(r, events, &chain, e);
	record_close(r);
	return n;
}

static int verify(const char *folder, struct error *e)
{
	int64_t events;
	return verify_counting(folder, &events, e);
}

static void opening_must_say(const char *folder, int code, const char *words)
{
	struct record *r = NULL;
	struct error e = {0};
	int n = record_open(&r, folder, &e);
	if (n != code || !strstr(e.text, words) || !strstr(e.text, ": "))
		fail_msg("%d, not %d, or not '%s': %s", n, code, words, e.text);
}

static void nothing_is_edited_or_deleted(void **state)
{
	char folder[FOLDER_MAX];
	(void)state;
	make_case(folder);
	assert_int_equal(sql(folder, "UPDATE event SET payload = payload"), SQLITE_CONSTRAINT);
	assert_int_equal(sql(folder, "UPDATE event SET hash = x'00' WHERE seq = 1"), SQLITE_CONSTRAINT);
	assert_int_equal(sql(folder, "DELETE FROM event WHERE seq = (SELECT max(seq) FROM event)"),
	                 SQLITE_CONSTRAINT);
	assert_int_equal(sql(folder, "DELETE FROM event"), SQLITE_CONSTRAINT);
	assert_int_equal(sql(folder, "REPLACE INTO event SELECT * FROM event WHERE seq = 3"),
	                 SQLITE_CONSTRAINT);
	assert_int_equal(sql(folder, "UPDATE OR REPLACE event SET seq = 1 WHERE seq = 2"), SQLITE_CONSTRAINT);
	struct error e = {0};
	assert_int_equal(verify(folder, &e), 0);
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
	int64_t events = make_case(folder);
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
			assert_int_equal(sql(other, text), SQLITE_OK);
			snprintf(name, sizeof name, "event %lld: ", (long long)seq);
			if (verify(other, &e) != -EUCLEAN || strncmp(e.text, name, strlen(name)) != 0)
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
	make_case(folder);
	folder_make(other);
	for (size_t i = 0; i < sizeof done / sizeof *done; i++) {
		struct error e = {0};
		folder_copy(folder, other);
		snprintf(text, sizeof text,
		         "DROP TRIGGER event_no_update; DROP TRIGGER event_no_delete; DROP TRIGGER "
		         "event_in_order; %s",
		         done[i]);
		assert_int_equal(sql(other, text), SQLITE_OK);
		if (verify(other, &e) != -EUCLEAN)
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
	make_case(folder);
	folder_make(other);
	for (size_t i = 0; i < sizeof tails / sizeof *tails; i++) {
		folder_copy(folder, other);
		snprintf(text, sizeof text,
		         "DROP TRIGGER event_no_update; DROP TRIGGER event_no_delete; DROP TRIGGER "
		         "event_in_order; %s",
		         tails[i]);
		assert_int_equal(sql(other, text), SQLITE_OK);
		opening_must_say(other, -EUCLEAN, "restore a backup");
	}
	folder_remove(folder);
	folder_remove(other);
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
	assert_int_equal(sql(folder, "DROP TRIGGER event_no_update; UPDATE event SET payload = "
	                             "replace(payload, '\"wall_ms\":6', '\"wall_ms\":7')"),
	                 SQLITE_OK);
	opening_must_say(folder, -EUCLEAN, "restore a backup");
	folder_remove(folder);
}

static void column(sqlite3 *db, const char *text, struct buf *out)
{
	sqlite3_stmt *s = NULL;
	assert_int_equal(sqlite3_prepare_v2(db, text, -1, &s, NULL), SQLITE_OK);
	assert_int_equal(sqlite3_step(s), SQLITE_ROW);
	buf_add(out, sqlite3_column_blob(s, 0), (size_t)sqlite3_column_bytes(s, 0));
	sqlite3_finalize(s);
}

/* SQLite uses an index for a query only where both say the same, so a record that an earlier version made needs today's
 * index to be the one that it has. */
static void what_outlives_its_case_is_told_as_in_every_record_that_there_is(void **state)
{
	static const char text[] = "SELECT sql FROM sqlite_master WHERE name = 'event_lasting'";
	char folder[FOLDER_MAX], path[FOLDER_MAX + 16], kept[600];
	struct buf now = {0}, then = {0};
	struct record *r = NULL;
	struct error e = {0};
	sqlite3 *db;
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	record_close(r);
	file_in(folder, path);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	column(db, text, &now);
	sqlite3_close(db);
	snprintf(kept, sizeof kept, "file:%s/tests/kept/format-1/station/record.db?immutable=1",
	         getenv("BANDTALLY_SOURCE"));
	assert_int_equal(sqlite3_open_v2(kept, &db, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL), SQLITE_OK);
	column(db, text, &then);
	sqlite3_close(db);
	assert_string_equal(now.data, then.data);
	buf_free(&now);
	buf_free(&then);
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
	long long last = make_case(folder);
	file_in(folder, path);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	column(db, "SELECT hash FROM event ORDER BY seq DESC LIMIT 1 OFFSET 1", &before);
	snprintf(
	    change, sizeof change,
	    "SELECT replace(payload, '\"seq\":%lld', '\"seq\":%lld') FROM event ORDER BY seq DESC LIMIT 1",
	    last, last + 1);
	column(db, change, &text);
	sqlite3_close(db);
	memcpy(chain.hash, before.data, CHAIN_BYTES);
	chain_add(&chain, text.data, text.size);
	chain_hex(&chain, hex);
	snprintf(change, sizeof change,
	         "DROP TRIGGER event_no_update; UPDATE event SET hash = x'%s', payload = replace(payload, "
	         "'\"seq\":%lld', '\"seq\":%lld') WHERE seq = %lld",
	         hex, last, last + 1, last);
	assert_int_equal(sql(folder, change), SQLITE_OK);
	assert_int_equal(verify(folder, &e), -EUCLEAN);
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
	make_case(folder);
	for (int version = RECORD_SCHEMA + 1; version <= 1000; version += 999 - RECORD_SCHEMA) {
		char text[64];
		snprintf(text, sizeof text, "PRAGMA user_version = %d", version);
		assert_int_equal(sql(folder, text), SQLITE_OK);
		opening_must_say(folder, -EPROTO, "install that version");
		file_in(folder, path);
		assert_int_equal(record_open_copy(&r, path, &e), -EPROTO);
	}
	folder_remove(folder);
}

static void one_daemon_holds_the_folder(void **state)
{
	char folder[FOLDER_MAX];
	struct record *first = NULL;
	struct error e = {0};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&first, folder, &e), 0);
	opening_must_say(folder, -EBUSY, "end it first");
	record_close(first);
	assert_int_equal(record_open(&first, folder, &e), 0);
	record_close(first);
	folder_remove(folder);
}

static void nobody_else_reads_or_writes_the_live_record(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	(void)state;
	make_case(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(sql(folder, "SELECT count(*) FROM event"), SQLITE_BUSY);
	assert_int_equal(
	    sql(folder, "INSERT INTO event SELECT max(seq) + 1, 0, 'alive', '', '', x'' FROM event"),
	    SQLITE_BUSY);
	assert_int_equal(verify(folder, &e), -EBUSY);
	record_close(r);
	assert_int_equal(verify(folder, &e), 0);
	folder_remove(folder);
}

static void write_file(const char *folder, const char *bytes, size_t size, long at)
{
	char path[FOLDER_MAX + 16];
	file_in(folder, path);
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
	opening_must_say(folder, -EUCLEAN, "restore a backup");
	folder_remove(folder);

	/* Each page of the file in turn. Either it is found at once, or verify finds it. */
	int64_t events = make_case(folder), found = 0;
	file_in(folder, path);
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
		int v = verify_counting(other, &found, &why);
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
	file_in(other, path);
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
	file_in(folder, inside);
	opening_must_say(inside, -ENOTDIR, "--data");
	snprintf(inside, sizeof inside, "%s/a/b/c", folder);
	opening_must_say(inside, -ENOENT, "--data");
	folder_remove(folder);
}

static void a_copy_is_whole_needs_no_other_file_and_is_never_written(void **state)
{
	char folder[FOLDER_MAX], copy[FOLDER_MAX + 16];
	struct record *r = NULL, *c = NULL;
	struct error e = {0};
	struct chain a, b;
	int64_t events = make_case(folder), found = 0;
	(void)state;
	assert_int_equal(record_open(&r, folder, &e), 0);
	snprintf(copy, sizeof copy, "%s/copy", folder);
	assert_int_equal(record_copy_start(r, copy, &e), 0);
	assert_int_equal(record_copy_start(r, copy, &e), -EBUSY);
	int n, added = 0;
	while ((n = record_copy_step(r, 1, &e)) == 1)
		if (!added) { /* the count goes on meanwhile */
			struct event more = {.kind = EV_ALIVE, .at = {.boot = 1, .boot_ms = 9}};
			assert_int_equal(record_append(r, &more, 1, &e), 0);
			added = 1;
		}
	assert_int_equal(n, 0);
	record_close(r);
	assert_int_equal(chmod(copy, 0444), 0);
	assert_int_equal(record_open_copy(&c, copy, &e), 0);
	assert_int_equal(record_verify(c, &found, &a, &e), 0);
	assert_true(found == events + added);
	record_close(c);
	char beside[FOLDER_MAX + 32];
	snprintf(beside, sizeof beside, "%s-wal", copy);
	assert_int_equal(access(beside, F_OK), -1);
	(void)b;
	folder_remove(folder);
}

static void items_slips_and_labels_are_found_again(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	int32_t case_no = 0;
	uint8_t back = 0;
	struct batch batch;
	struct slip slip;
	struct paper paper;
	(void)state;
	make_case(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_item_used(r, "GREEN-M:1000", &case_no, &back), 1);
	assert_int_equal(case_no, 1);
	assert_int_equal(back, 1);
	assert_int_equal(record_item_used(r, "GREEN-M:1001", &case_no, &back), 0);
	assert_int_equal(record_item_used(r, "", &case_no, &back), 0);
	assert_int_equal(record_slip_of(r, 1, 1, &slip, &paper), 1);
	assert_int_equal(paper.queued, 1);
	assert_int_equal(slip.room, 1);
	assert_int_equal(slip.case_no, 1);
	assert_int_equal(record_slip_of(r, 2, 1, &slip, &paper), 0);
	struct event labels[2] = {
	    {.kind = EV_LABELLED, .batch = {.line = "GREEN-M", .lot = "T1", .first = 1, .last = 9}},
	    {.kind = EV_LABELLED, .batch = {.line = "PLAIN-M", .lot = "T2", .first = 10, .last = 10}}};
	assert_int_equal(record_append(r, labels, 2, &e), 0);
	assert_int_equal(record_batch_of(r, 10, &batch), 1);
	assert_string_equal(batch.line, "PLAIN-M");
	assert_int_equal(record_batch_of(r, 9, &batch), 1);
	assert_string_equal(batch.lot, "T1");
	assert_int_equal(record_batch_of(r, 11, &batch), 0);
	record_close(r);
	folder_remove(folder);
}

static void a_label_that_was_printed_anew_has_its_new_lot(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct batch batch;
	struct event labels[2] = {
	    {.kind = EV_LABELLED, .batch = {.line = "GREEN-M", .lot = "OLD", .first = 1, .last = 9}},
	    {.kind = EV_LABELLED, .batch = {.line = "GREEN-M", .lot = "NEW", .first = 5, .last = 9}}};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, labels, 2, &e), 0);
	assert_int_equal(record_batch_of(r, 5, &batch), 1);
	assert_string_equal(batch.lot, "NEW");
	assert_int_equal(record_batch_of(r, 4, &batch), 1);
	assert_string_equal(batch.lot, "OLD");
	record_close(r);
	folder_remove(folder);
}

/* Forceps come back to other patients: what is found belongs to the last one (rule 21). */
static void an_item_comes_from_the_last_case_that_used_it(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	int32_t case_no = 0;
	uint8_t back = 0;
	struct event used[2] = {
	    {.kind = EV_ITEM_USED, .case_no = 1, .n = 1, .thing = {.identity = "FORCEPS:7"}},
	    {.kind = EV_ITEM_USED, .case_no = 2, .thing = {.identity = "FORCEPS:7"}}};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, used, 2, &e), 0);
	assert_int_equal(record_item_used(r, "FORCEPS:7", &case_no, &back), 1);
	assert_int_equal(case_no, 2);
	assert_int_equal(back, 0);
	record_close(r);
	folder_remove(folder);
}

static int note_number(void *context, const struct event *ev)
{
	buf_printf(context, "%d ", (int)ev->seq);
	return 0;
}

/* Its clocks need the starts and marks in time that fell into it, and no others. */
static void a_case_is_told_with_the_power_cuts_that_fell_into_it(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct buf told = {0};
	struct event events[] = {
	    {.kind = EV_STARTED, .n = 1},
	    {.kind = EV_CASE_OPENED, .case_no = 1},
	    {.kind = EV_ALIVE},
	    {.kind = EV_STARTED, .n = 2},
	    {.kind = EV_CASE_OPENED, .case_no = 2},
	    {.kind = EV_AWAKE, .case_no = 1, .n = 1},
	    {.kind = EV_STARTED, .n = 3},
	    {.kind = EV_ALIVE},
	};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, events, sizeof events / sizeof *events, &e), 0);
	assert_int_equal(record_each(r, 1, note_number, &told, &e), 0);
	assert_string_equal(told.data, "2 3 4 6 ");
	record_close(r);
	buf_free(&told);
	folder_remove(folder);
}

/* What is entered for it years later does not make it years long. */
static void a_case_that_has_ended_stays_as_long_as_it_was(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct buf told = {0};
	struct event events[] = {
	    {.kind = EV_STARTED, .n = 1},
	    {.kind = EV_ALIVE},
	    {.kind = EV_CASE_OPENED, .case_no = 1},
	    {.kind = EV_STARTED, .n = 2},
	    {.kind = EV_ALIVE},
	    {.kind = EV_ALIVE},
	    {.kind = EV_STARTED, .n = 3},
	    {.kind = EV_STARTED, .n = 4},
	    {.kind = EV_ALIVE},
	    {.kind = EV_CASE_ENDED, .case_no = 1, .what = END_CANCELLED},
	    {.kind = EV_ALIVE},
	    {.kind = EV_STARTED, .n = 5},
	    {.kind = EV_CORRECTION, .case_no = 1, .text = "seen by the ward"},
	    {.kind = EV_CASE_ENDED,
	     .case_no = 1,
	     .what = END_CANCELLED}, /* which a fault of ours might write */
	};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, events, sizeof events / sizeof *events, &e), 0);
	assert_int_equal(record_each(r, 1, note_number, &told, &e), 0);
	assert_string_equal(told.data, "3 4 6 7 8 10 13 14 ");
	buf_clear(&told);
	assert_int_equal(record_each(r, 2, note_number, &told, &e), 0);
	assert_int_equal(told.size, 0);
	record_close(r);
	buf_free(&told);
	folder_remove(folder);
}

static int note_case(void *context, const struct case_edges *c)
{
	buf_printf(context, "%d/%d/%d ", (int)c->case_no, (int)c->room, c->end);
	return 0;
}

static void cases_come_a_page_at_a_time(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct buf told = {0};
	int64_t after = 0;
	struct event events[] = {
	    {.kind = EV_CASE_OPENED, .case_no = 1, .room = 1},
	    {.kind = EV_CASE_OPENED, .case_no = 2, .room = 2},
	    {.kind = EV_CASE_ENDED, .case_no = 2, .room = 2, .what = END_CANCELLED},
	    {.kind = EV_CASE_OPENED, .case_no = 3, .room = 2},
	    {.kind = EV_CASE_ENDED, .case_no = 1, .room = 1, .what = END_RECONCILED},
	    {.kind = EV_CORRECTION, .case_no = 1, .text = "seen by the ward"},
	    {.kind = EV_CASE_OPENED, .case_no = 4, .room = 1},
	};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_each_case(r, 0, 3, note_case, &told, &after, &e), 0);
	assert_int_equal(told.size, 0);
	assert_int_equal(after, 0);
	assert_int_equal(record_append(r, events, sizeof events / sizeof *events, &e), 0);
	assert_int_equal(record_each_case(r, 0, 3, note_case, &told, &after, &e), 0);
	assert_string_equal(told.data, "1/1/1 2/2/3 3/2/0 ");
	assert_int_equal(after, 4);
	buf_clear(&told);
	assert_int_equal(record_each_case(r, after, 3, note_case, &told, &after, &e), 0);
	assert_string_equal(told.data, "4/1/0 ");
	assert_int_equal(after, 0);
	record_close(r);
	buf_free(&told);
	folder_remove(folder);
}

/* Whatever the reason: the next scan must be stored. */
static void after_what_could_not_be_stored_the_next_is(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct event good = {.kind = EV_ALIVE};
	struct event bad[2] = {good, {.kind = EV_UNDONE, .ref = INT64_MAX}}; /* no JSON number holds it */
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_true(record_append(r, bad, 2, &e) < 0);
	assert_int_equal(record_last(r, NULL), 0);
	assert_int_equal(record_append(r, &good, 1, &e), 0);
	assert_int_equal(record_last(r, NULL), 1);
	record_close(r);
	assert_int_equal(verify(folder, &e), 0);
	folder_remove(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(nothing_is_edited_or_deleted),
	    cmocka_unit_test(any_byte_that_is_changed_is_found_and_named),
	    cmocka_unit_test(a_missing_an_added_and_an_exchanged_event_are_found),
	    cmocka_unit_test(a_changed_tail_stops_the_daemon_from_adding_to_it),
	    cmocka_unit_test(a_changed_first_event_stops_the_daemon_too),
	    cmocka_unit_test(a_number_in_the_text_that_is_not_the_events_is_found),
	    cmocka_unit_test(what_outlives_its_case_is_told_as_in_every_record_that_there_is),
	    cmocka_unit_test(a_record_of_a_later_version_is_left_alone),
	    cmocka_unit_test(one_daemon_holds_the_folder),
	    cmocka_unit_test(nobody_else_reads_or_writes_the_live_record),
	    cmocka_unit_test(a_damaged_file_is_told_and_kept),
	    cmocka_unit_test(a_folder_that_cannot_be_one_is_told),
	    cmocka_unit_test(a_copy_is_whole_needs_no_other_file_and_is_never_written),
	    cmocka_unit_test(items_slips_and_labels_are_found_again),
	    cmocka_unit_test(a_label_that_was_printed_anew_has_its_new_lot),
	    cmocka_unit_test(an_item_comes_from_the_last_case_that_used_it),
	    cmocka_unit_test(a_case_is_told_with_the_power_cuts_that_fell_into_it),
	    cmocka_unit_test(a_case_that_has_ended_stays_as_long_as_it_was),
	    cmocka_unit_test(cases_come_a_page_at_a_time),
	    cmocka_unit_test(after_what_could_not_be_stored_the_next_is),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
