/* Records that earlier versions wrote: each is loaded, verified, gone on with, and comes to the state that was noted. */
#include <ctype.h>
#include <errno.h>
#include <inttypes.h>
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "record/keys.h"
#include "run/settings.h"
#include "tests/kept/again.h"
#include "tests/kept/kept.h"
#include "tests/kept/state.h"
#include <cmocka.h>
#include <glob.h>
#include <sqlite3.h>

static struct error e;
static struct settings settings;

/* --- the record and its state -----------------------------------------------------------------------------
 */

static struct station *new_station(const char *folder)
{
	struct station *st = calloc(1, sizeof *st);
	assert_non_null(st);
	if (settings_read(&settings, st, folder, &e) < 0)
		fail_msg("%s: %s", folder, e.text);
	return st;
}

static void drop_station(struct station *st)
{
	station_deinit(st);
	free(st);
}

static void loads_and_verifies(const char *file)
{
	char kept[PATH_MAX], hex[2 * CHAIN_BYTES + 1], said[128];
	struct record *r;
	struct chain chain;
	int64_t events = 0;
	kept_folder(file, 1, kept);
	kept_copy_make(kept);
	if (record_open(&r, kept_copy, &e) < 0 || record_verify(r, &events, &chain, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	chain_hex(&chain, hex);
	snprintf(said, sizeof said, "%" PRId64 " %s\n", events, hex);
	assert_string_equal(said, kept_text(kept, "chain.txt"));
	record_close(r);
	kept_copy_drop();
}

static void each_record_loads_and_its_chain_is_the_one_that_was_noted(void **state)
{
	(void)state;
	kept_each("format-*/*/record.db", loads_and_verifies);
}

struct keys_found {
	int64_t sum; /* of their numbers */
	int count;
};

static int note_key(void *context, const struct event *ev)
{
	struct keys_found *f = context;
	if (ev->kind == EV_KEY) {
		f->count++;
		f->sum += ev->seq;
	}
	return 0;
}

static int keys_in_all;

static void finds_its_keys(const char *file)
{
	char kept[PATH_MAX];
	struct record *r;
	struct keys_found all = {0}, found = {0};
	kept_folder(file, 1, kept);
	kept_copy_make(kept);
	assert_int_equal(record_open(&r, kept_copy, &e), 0);
	assert_int_equal(record_each(r, 0, note_key, &all, &e), 0);
	assert_int_equal(record_each_key(r, note_key, &found, &e), 0);
	assert_int_equal(found.count, all.count);
	assert_int_equal(found.sum, all.sum);
	keys_in_all += all.count;
	record_close(r);
	kept_copy_drop();
}

static void each_key_stands_beside_a_start(void **state)
{
	(void)state;
	keys_in_all = 0;
	kept_each("format-*/*/record.db", finds_its_keys);
	assert_true(keys_in_all > 1);
}

static int schema_of(const char *file)
{
	sqlite3 *db;
	sqlite3_stmt *s;
	assert_int_equal(sqlite3_open_v2(file, &db, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
	assert_int_equal(sqlite3_prepare_v2(db, "PRAGMA user_version", -1, &s, NULL), SQLITE_OK);
	assert_int_equal(sqlite3_step(s), SQLITE_ROW);
	int schema = sqlite3_column_int(s, 0);
	sqlite3_finalize(s);
	sqlite3_close(db);
	return schema;
}

static int verified(struct record *r)
{
	struct chain chain;
	int64_t events = 0;
	return record_verify(r, &events, &chain, &e);
}

static int is_last_of_today(void *context, const struct event *ev)
{
	*(int *)context = ev->kind == EV_STOPPED && ev->format > 1;
	return 0;
}

/* What is only read stays as it was, so that the version that wrote it can go on with it; what is written to is refused
 * by that version, and read whole by this one. */
static void goes_on(const char *file)
{
	char kept[PATH_MAX], path[PATH_MAX];
	struct record *r;
	struct event stopped = {.kind = EV_STOPPED, .at = {.boot = 9, .utc_min = 60}};
	struct event bad = {.kind = EV_STOPPED, .at = {.boot = -1}};
	int schema = schema_of(file), last = 0;
	kept_folder(file, 1, kept);
	kept_copy_make(kept);
	kept_copy_path(RECORD_FILE, path);
	struct station *st = new_station(kept_copy);
	assert_int_equal(record_open(&r, kept_copy, &e), 0);
	assert_int_equal(record_load(r, st, &e), 0);
	drop_station(st);
	assert_int_equal(record_append(r, &bad, 1, &e), -EINVAL);
	record_close(r);
	assert_int_equal(schema_of(path), schema);
	assert_int_equal(record_open(&r, kept_copy, &e), 0);
	assert_int_equal(record_append(r, &stopped, 1, &e), 0);
	record_close(r);
	assert_int_equal(schema_of(path), RECORD_SCHEMA);
	assert_int_equal(record_open_still(&r, path, &e), 0);
	assert_int_equal(verified(r), 0);
	assert_int_equal(record_each(r, 0, is_last_of_today, &last, &e), 0);
	assert_true(last);
	record_close(r);
	kept_copy_drop();
}

static void each_record_goes_on_in_the_format_of_today(void **state)
{
	(void)state;
	kept_each("format-*/*/record.db", goes_on);
}

static int same_state(const struct station *st, const char *expected)
{
	_cleanup_(buf_free) struct buf text = {0};
	state_text(st, &text);
	return strcmp(text.data, expected) == 0;
}

/* The first line that differs is told; the rest follows from it more often than not. */
static void must_be_in_state(const struct station *st, const char *kept)
{
	_cleanup_(buf_free) struct buf text = {0};
	const char *then = kept_text(kept, "state.txt");
	if (same_state(st, then))
		return;
	state_text(st, &text);
	const char *line_now = text.data, *line_then = then;
	for (const char *now = text.data; *now && *now == *then; now++, then++)
		if (*now == '\n') {
			line_now = now + 1;
			line_then = then + 1;
		}
	fail_msg("%s: '%.*s' was noted, it is now '%.*s'", kept, (int)strcspn(line_then, "\n"), line_then,
	         (int)strcspn(line_now, "\n"), line_now);
}

struct following {
	struct station *st;
	int64_t without; /* this event is left out; 0 none */
	int64_t failed;  /* the first that did not apply */
};

static int follow(void *context, const struct event *ev)
{
	struct following *f = context;
	if (ev->seq != f->without && station_apply(f->st, ev) < 0 && !f->failed)
		f->failed = ev->seq;
	return 0;
}

static void has_its_state(const char *file)
{
	char kept[PATH_MAX];
	kept_folder(file, 1, kept);
	struct record *r = kept_record_open(kept);
	struct station *loaded = new_station(kept_copy);
	struct following f = {.st = new_station(kept_copy)};
	if (record_load(r, loaded, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	must_be_in_state(loaded, kept);
	assert_int_equal(record_each(r, 0, follow, &f, &e), 0);
	if (f.failed)
		fail_msg("%s: event %" PRId64 " does not apply any more", kept, f.failed);
	must_be_in_state(f.st, kept);
	drop_station(loaded);
	drop_station(f.st);
	record_close(r);
	kept_copy_drop();
}

/* Nothing is decided here: what today's rules would refuse is applied all the same. */
static void each_event_applies_and_gives_the_state_that_was_noted(void **state)
{
	(void)state;
	kept_each("format-*/*/record.db", has_its_state);
}

static int is_in_the_zone(void *context, const struct event *ev)
{
	if (ev->format == 1 && ev->at.utc_min != 180)
		fail_msg("event %" PRId64 " is %d min from UTC", ev->seq, ev->at.utc_min);
	*(int *)context += ev->format == 1;
	return 0;
}

static void is_told_in_this_zone(const char *file)
{
	char kept[PATH_MAX];
	int n = 0;
	kept_folder(file, 1, kept);
	struct record *r = kept_record_open(kept);
	assert_int_equal(record_each(r, 0, is_in_the_zone, &n, &e), 0);
	assert_true(n > 0);
	record_close(r);
	kept_copy_drop();
}

/* They did not say where they were: whoever read them read them in the zone of this computer. */
static void times_of_the_first_format_are_those_of_this_zone(void **state)
{
	(void)state;
	setenv("TZ", "UTC-3", 1);
	tzset();
	kept_each("format-1/*/record.db", is_told_in_this_zone);
	setenv("TZ", "UTC", 1);
	tzset();
}

/* --- every kind of event ----------------------------------------------------------------------------------
 */

static uint8_t kinds[EV_KINDS];

static int note_kind(void *context, const struct event *ev)
{
	(void)context;
	kinds[ev->kind] = 1;
	return 0;
}

static void note_kinds(const char *file)
{
	char kept[PATH_MAX];
	kept_folder(file, 1, kept);
	struct record *r = kept_record_open(kept);
	assert_int_equal(record_each(r, 0, note_kind, NULL, &e), 0);
	record_close(r);
	kept_copy_drop();
}

static void has_its_kinds(const char *file)
{
	char format[PATH_MAX], pattern[PATH_MAX], *save = NULL;
	int named = 0, kept = 0;
	kept_folder(file, 1, format);
	memset(kinds, 0, sizeof kinds);
	snprintf(pattern, sizeof pattern, "%s/*/record.db", strrchr(format, '/') + 1);
	kept_each(pattern, note_kinds);
	for (char *name = strtok_r(kept_text(format, "kinds.txt"), "\n", &save); name;
	     name = strtok_r(NULL, "\n", &save)) {
		int kind = event_from_name(name);
		if (kind < 0 || !kinds[kind])
			fail_msg("%s: no kept record has an event '%s'", format, name);
		named++;
	}
	for (int k = 0; k < EV_KINDS; k++)
		kept += kinds[k];
	assert_int_equal(kept, named);
}

static void every_kind_that_the_format_had_is_kept(void **state)
{
	(void)state;
	kept_each("format-*/kinds.txt", has_its_kinds);
}

/* --- what must be noticed ---------------------------------------------------------------------------------
 */

static void change_one_byte(const char *file)
{
	sqlite3 *db;
	assert_int_equal(sqlite3_open(file, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db,
	                              "DROP TRIGGER event_no_update;"
	                              "UPDATE event SET payload = replace(payload, '\"wall_ms\":1', "
	                              "'\"wall_ms\":2') WHERE seq = (SELECT max(seq) / 2 FROM event)",
	                              NULL, NULL, NULL),
	                 SQLITE_OK);
	assert_int_equal(sqlite3_changes(db), 1);
	sqlite3_close(db);
}

static void is_noticed_when_changed(const char *file)
{
	char kept[PATH_MAX], path[PATH_MAX];
	struct record *r = NULL;
	struct chain chain;
	int64_t events = 0;
	kept_folder(file, 1, kept);
	kept_copy_make(kept);
	kept_copy_path(RECORD_FILE, path);
	change_one_byte(path);
	int n = record_open_copy(&r, path, &e);
	if (n == 0)
		n = record_verify(r, &events, &chain, &e);
	assert_int_equal(n, -EUCLEAN);
	record_close(r);
	kept_copy_drop();
}

static void one_byte_that_was_changed_is_noticed(void **state)
{
	(void)state;
	kept_each("format-*/*/record.db", is_noticed_when_changed);
}

static int last_opening(void *context, const struct event *ev)
{
	if (ev->kind == EV_CASE_OPENED)
		*(int64_t *)context = ev->seq;
	return 0;
}

static void is_noticed_when_left_out(const char *file)
{
	char kept[PATH_MAX], *expected;
	kept_folder(file, 1, kept);
	struct record *r = kept_record_open(kept);
	struct following f = {.st = new_station(kept_copy)};
	assert_int_equal(record_each(r, 0, last_opening, &f.without, &e), 0);
	assert_int_equal(record_each(r, 0, follow, &f, &e), 0);
	assert_false(same_state(f.st, kept_text(kept, "state.txt")));
	drop_station(f.st);
	f = (struct following){.st = new_station(kept_copy)};
	assert_int_equal(record_each(r, 0, follow, &f, &e), 0);
	expected = kept_text(kept, "state.txt");
	assert_true(same_state(f.st, expected));
	char *digit = strstr(expected, "last case ") + strlen("last case ");
	*digit = *digit == '9' ? '8' : '9';
	assert_false(same_state(f.st, expected));
	drop_station(f.st);
	record_close(r);
	kept_copy_drop();
}

static void an_event_that_is_left_out_and_another_expectation_are_noticed(void **state)
{
	(void)state;
	kept_each("format-*/*/record.db", is_noticed_when_left_out);
}

/* --- keeping what this version writes ---------------------------------------------------------------------- */

static void write_text(const char *folder, const char *name, const char *text)
{
	char path[PATH_MAX + 16];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *f = fopen(path, "we");
	if (!f || fputs(text, f) < 0 || fclose(f) != 0)
		fail_msg("cannot write %s", path);
}

static const char *to_note; /* --note FOLDER */

/* A data folder that this version has just written is noted once and for all: chain.txt and state.txt, and on the
 * terminal the kinds of its events. */
static void a_folder_is_noted(void **state)
{
	char hex[2 * CHAIN_BYTES + 1], said[128];
	_cleanup_(buf_free) struct buf text = {0};
	struct chain chain;
	int64_t events = 0;
	(void)state;
	struct record *r = kept_record_open(to_note);
	struct station *st = new_station(kept_copy);
	assert_int_equal(record_verify(r, &events, &chain, &e), 0);
	assert_int_equal(record_load(r, st, &e), 0);
	chain_hex(&chain, hex);
	snprintf(said, sizeof said, "%" PRId64 " %s\n", events, hex);
	state_text(st, &text);
	write_text(to_note, "chain.txt", said);
	write_text(to_note, "state.txt", text.data);
	assert_int_equal(record_each(r, 0, note_kind, NULL, &e), 0);
	for (int k = 0; k < EV_KINDS; k++)
		if (kinds[k])
			puts(event_name((enum event_kind)k));
	drop_station(st);
	record_close(r);
	kept_copy_drop();
}

int main(int argc, char **argv)
{
	const struct CMUnitTest notes[] = {cmocka_unit_test_teardown(a_folder_is_noted, kept_teardown)};
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_teardown(each_record_loads_and_its_chain_is_the_one_that_was_noted,
	                              kept_teardown),
	    cmocka_unit_test_teardown(each_key_stands_beside_a_start, kept_teardown),
	    cmocka_unit_test_teardown(each_record_goes_on_in_the_format_of_today, kept_teardown),
	    cmocka_unit_test_teardown(each_event_applies_and_gives_the_state_that_was_noted, kept_teardown),
	    cmocka_unit_test_teardown(times_of_the_first_format_are_those_of_this_zone, kept_teardown),
	    cmocka_unit_test_teardown(every_kind_that_the_format_had_is_kept, kept_teardown),
	    cmocka_unit_test_teardown(one_byte_that_was_changed_is_noticed, kept_teardown),
	    cmocka_unit_test_teardown(an_event_that_is_left_out_and_another_expectation_are_noticed,
	                              kept_teardown),
	};
	to_note = argc == 3 && strcmp(argv[1], "--note") == 0 ? argv[2] : NULL;
	kept_begin();
	return to_note ? cmocka_run_group_tests(notes, NULL, NULL)
	               : cmocka_run_group_tests(tests, NULL, NULL);
}
