/* The record on disk: held by one daemon, and what stands in it is found again. */
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
	one_case_file(folder, path);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	one_case_column(db, text, &now);
	sqlite3_close(db);
	snprintf(kept, sizeof kept, "file:%s/tests/kept/format-1/station/record.db?immutable=1",
	         getenv("BANDTALLY_SOURCE"));
	assert_int_equal(sqlite3_open_v2(kept, &db, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL), SQLITE_OK);
	one_case_column(db, text, &then);
	sqlite3_close(db);
	assert_string_equal(now.data, then.data);
	buf_free(&now);
	buf_free(&then);
	folder_remove(folder);
}

/* Its writes still go somewhere, and nobody ever finds them again (rule 12). */
static void nothing_is_stored_in_a_file_that_was_deleted(void **state)
{
	static const char *const deleted[] = {RECORD_FILE, RECORD_FILE "-wal"};
	(void)state;
	for (int i = 0; i < 2; i++) {
		char folder[FOLDER_MAX], path[FOLDER_MAX + 32];
		struct record *r = NULL;
		struct error e = {0};
		struct event alive = {.kind = EV_ALIVE, .at = {.boot = 1, .boot_ms = 5, .wall_ms = 6}};
		folder_make(folder);
		assert_int_equal(record_open(&r, folder, &e), 0);
		assert_int_equal(record_append(r, &alive, 1, &e), 0);
		snprintf(path, sizeof path, "%s/%s", folder, deleted[i]);
		assert_int_equal(unlink(path), 0);
		assert_int_equal(record_append(r, &alive, 1, &e), -ENOENT);
		assert_non_null(strstr(e.text, "was deleted while the station works"));
		assert_int_equal(record_append(r, &alive, 1, &e), -ENOENT);
		record_close(r);
		folder_remove(folder);
	}
}

static void one_daemon_holds_the_folder(void **state)
{
	char folder[FOLDER_MAX];
	struct record *first = NULL;
	struct error e = {0};
	(void)state;
	folder_make(folder);
	assert_int_equal(record_open(&first, folder, &e), 0);
	one_case_opening_says(folder, -EBUSY, "end it first");
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
	one_case_make(folder);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(one_case_sql(folder, "SELECT count(*) FROM event"), SQLITE_BUSY);
	assert_int_equal(
	    one_case_sql(folder, "INSERT INTO event SELECT max(seq) + 1, 0, 'alive', '', '', x'' FROM event"),
	    SQLITE_BUSY);
	assert_int_equal(one_case_verify(folder, &e), -EBUSY);
	record_close(r);
	assert_int_equal(one_case_verify(folder, &e), 0);
	folder_remove(folder);
}

static void a_copy_is_whole_needs_no_other_file_and_is_never_written(void **state)
{
	char folder[FOLDER_MAX], copy[FOLDER_MAX + 16];
	struct record *r = NULL, *c = NULL;
	struct error e = {0};
	struct chain a, b;
	int64_t events = one_case_make(folder), found = 0;
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
	one_case_make(folder);
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
	assert_int_equal(one_case_verify(folder, &e), 0);
	folder_remove(folder);
}

/* What is damaged cannot be followed; but a number that it gave out must not be given to another thing or slip. */
static void a_damaged_event_keeps_the_numbers_that_it_gave_out(void **state)
{
	char folder[FOLDER_MAX];
	struct record *r = NULL;
	struct error e = {0};
	struct station *st = calloc(1, sizeof *st);
	(void)state;
	assert_non_null(st);
	one_case_make(folder);
	assert_int_equal(
	    one_case_sql(folder, "DROP TRIGGER event_no_update;"
	                         "UPDATE event SET payload = '{\"batch\":{\"last\":7654321},\"kind\":1}', "
	                         "key = 'slip:654321' WHERE seq = 4;"
	                         "UPDATE event SET payload = '{\"batch\":{\"last\":100000000}}', "
	                         "key = 'slip:x' WHERE seq = 5;"
	                         "UPDATE event SET payload = '{cut' WHERE seq = 6"),
	    SQLITE_OK);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_load(r, st, &e), 0);
	assert_int_equal(st->last_item_no, 7654321);
	assert_int_equal(st->last_slip_no, 654321);
	assert_int_equal(st->n_unfollowed, 3);
	for (int i = 0; i < st->n_unfollowed; i++)
		assert_int_equal(st->unfollowed[i].seq, 4 + i);
	record_close(r);
	station_deinit(st);
	free(st);
	folder_remove(folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_outlives_its_case_is_told_as_in_every_record_that_there_is),
	    cmocka_unit_test(nothing_is_stored_in_a_file_that_was_deleted),
	    cmocka_unit_test(one_daemon_holds_the_folder),
	    cmocka_unit_test(nobody_else_reads_or_writes_the_live_record),
	    cmocka_unit_test(a_copy_is_whole_needs_no_other_file_and_is_never_written),
	    cmocka_unit_test(items_slips_and_labels_are_found_again),
	    cmocka_unit_test(a_label_that_was_printed_anew_has_its_new_lot),
	    cmocka_unit_test(an_item_comes_from_the_last_case_that_used_it),
	    cmocka_unit_test(a_case_is_told_with_the_power_cuts_that_fell_into_it),
	    cmocka_unit_test(a_case_that_has_ended_stays_as_long_as_it_was),
	    cmocka_unit_test(cases_come_a_page_at_a_time),
	    cmocka_unit_test(a_damaged_event_keeps_the_numbers_that_it_gave_out),
	    cmocka_unit_test(after_what_could_not_be_stored_the_next_is),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
