/* What the station acknowledged is on disk (rule 12): the machine dies at every write and every sync of a
 * case, the disk is full, fails or is made read-only at every write and sync, and afterwards every scan that was answered is in
 * the record, the chain holds, and the sheet is what the record says. A disk that lies is found out: else
 * this would prove nothing.
 */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>
#include <sqlite3.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "tests/crash/vfs.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

#define ANSWERS_MAX 64
#define TRIES_MAX 8
#define WAL_PAGE 4120 /* a frame: 24 bytes and a page of 4096 */

/* Under a sanitizer, which makes it slow, every fifth point is tried. */
#if defined(__SANITIZE_ADDRESS__)
#define EVERY 5
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define EVERY 5
#endif
#endif
#ifndef EVERY
#define EVERY 1
#endif

static struct core core;
static char folder[FOLDER_MAX];

/* What was answered as done: the number and hash of the last event then. */
static struct {
	int64_t seq;
	struct chain chain;
} answers[ANSWERS_MAX];
static int n_answers;
static int64_t written_back; /* pages, before the clean end */

static struct own_code card(int meaning)
{
	return (struct own_code){.kind = OWN_CARD, .room = 1, .meaning = meaning};
}

/* The ordinary case (DESIGN section 4), sixteen scans. */
static const char *scan_text(int i, char out[64])
{
	struct own_code c = {0};
	switch (i) {
	case 0:
		c = card(CARD_NEW_CASE);
		break;
	case 1:
		c = (struct own_code){.kind = OWN_BADGE, .number = 1};
		break;
	case 2:
	case 5:
	case 12:
		c = (struct own_code){.kind = OWN_BADGE, .number = 2};
		break;
	case 3:
		return "(01)09506000134352(17)280331(10)T26(21)S101";
	case 4:
	case 11:
		return "(8004)9506000FC7";
	case 6:
	case 7:
	case 13:
		c = (struct own_code){.kind = OWN_DIGIT, .room = 1, .digit = 2};
		break;
	case 8:
		c = card(CARD_OFF);
		break;
	case 9:
		c = card(CARD_FINAL_COUNT);
		break;
	case 10:
		c = card(CARD_INTACT);
		break;
	case 14:
		c = (struct own_code){.kind = OWN_BADGE, .number = 3};
		break;
	case 15:
		c = (struct own_code){
		    .kind = OWN_SLIP, .number = 1, .copy = 1, .proof = slip_proof(core.seal, "BC", 0, 1, 1)};
		break;
	default:
		return NULL;
	}
	memcpy(c.site, "BC", 3);
	assert_int_equal(own_code_write(&c, out), 0);
	return out;
}

static void answered(void)
{
	assert_true(n_answers < ANSWERS_MAX);
	answers[n_answers].seq = record_last(core.record, &answers[n_answers].chain);
	n_answers++;
}

static const struct reply *scan(const char *text)
{
	return core_scan(
	    &core,
	    &(struct scan){.scanner = "hand-1", .room = 1, .aim = "", .data = text, .size = strlen(text)});
}

static int entered(const struct reply *r)
{
	return strncmp(r->said, "NOT ENTERED", 11) != 0;
}

/* The catalogue and three people. 0 or the error of the first that could not be stored. */
static int set_up(struct error *e)
{
	static const struct person people[] = {{1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},
	                                       {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	                                       {3, "SURG-3", STAFF_SURGEON, 1, 0}};
	struct line *lines = NULL;
	size_t count = 0;
	static const char csv[] =
	    "key,name,role,codes,marked,visible,single_use,identity\n"
	    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,yes,pack\n"
	    "FORCEPS,\"artery forceps, curved\",forceps,8004:9506000FC*,no,no,no,mark\n";
	assert_int_equal(catalogue_read_csv(csv, sizeof csv - 1, &lines, &count, e), 0);
	int n = 0;
	for (size_t i = 0; n == 0 && i < count; i++)
		n = core_store(&core, &(struct event){.kind = EV_LINE_SET, .line = lines[i]}, 1, e);
	free(lines);
	for (size_t i = 0; n == 0 && i < sizeof people / sizeof *people; i++)
		n = core_store(&core, &(struct event){.kind = EV_STAFF_SET, .staff = people[i]}, 1, e);
	if (n == 0)
		answered();
	return n;
}

/* Opens the station and does the case, until the machine dies. 1 where it came to the end. */
static int whole_story(int with_set_up)
{
	struct error e = {0};
	char text[64];
	const char *what;
	n_answers = 0;
	if (core_open(&core, folder, &e) < 0) {
		assert_non_null(strstr(e.text, ": "));
		return 0;
	}
	answered();
	int n = with_set_up ? set_up(&e) : 0;
	for (int i = 0; n == 0 && (what = scan_text(i, text)); i++) {
		const struct reply *r = scan(what);
		if (!entered(r)) {
			assert_non_null(strstr(r->next.words, "by hand"));
			n = -EIO;
			break;
		}
		answered();
		if (i == 14 && !strstr(r->said, "ended reconciled"))
			fail_msg("the case did not end: %s", r->said);
	}
	written_back = crash.written_back;
	core_close(&core);
	return n == 0 && !crash.dead;
}

/* --- afterwards --------------------------------------------------------------------------------- */

/* How many of the answers are not in the record as they were. */
static int answers_lost(void)
{
	char path[FOLDER_MAX + 16];
	sqlite3 *db;
	sqlite3_stmt *s;
	int lost = 0;
	snprintf(path, sizeof path, "%s/" RECORD_FILE, folder);
	assert_int_equal(sqlite3_open(path, &db), SQLITE_OK);
	if (sqlite3_prepare_v2(db, "SELECT hash FROM event WHERE seq = ?", -1, &s, NULL) != SQLITE_OK) {
		sqlite3_close(db);
		return n_answers; /* not even the table */
	}
	for (int i = 0; i < n_answers; i++) {
		sqlite3_bind_int64(s, 1, answers[i].seq);
		lost += sqlite3_step(s) != SQLITE_ROW || sqlite3_column_bytes(s, 0) != CHAIN_BYTES ||
		        memcmp(sqlite3_column_blob(s, 0), answers[i].chain.hash, CHAIN_BYTES) != 0;
		sqlite3_reset(s);
	}
	sqlite3_finalize(s);
	sqlite3_close(db);
	return lost;
}

static int apply_one(void *context, const struct event *e)
{
	return station_apply(context, e);
}

/* The daemon's state must be what applying every event gives. */
static void state_is_what_the_record_says(void)
{
	static struct station again, now;
	struct error e = {0};
	memset(&again, 0, sizeof again);
	again.n_rooms = core.station.n_rooms;
	memcpy(again.rooms, core.station.rooms, sizeof again.rooms);
	again.policy = core.station.policy;
	assert_int_equal(record_each(core.record, 0, apply_one, &again, &e), 0);
	now = core.station;
	for (int i = 0; i < SHEETS_MAX; i++) {
		if (!now.sheets[i].case_no && !again.sheets[i].case_no)
			continue;
		struct sheet a = history_scrubbed(&now.sheets[i]), b = history_scrubbed(&again.sheets[i]);
		assert_memory_equal(&a, &b, sizeof a);
		assert_int_equal(now.undo[i].seq, again.undo[i].seq);
	}
	assert_int_equal(now.catalogue.count, again.catalogue.count);
	assert_int_equal(now.staff.count, again.staff.count);
	assert_int_equal(now.last_case_no, again.last_case_no);
	assert_int_equal(now.last_slip_no, again.last_slip_no);
	assert_int_equal(now.n_unseen, again.n_unseen);
	station_deinit(&again);
}

static void the_station_stands(const char *when)
{
	struct error e = {0};
	int64_t events;
	struct chain chain, last;
	char text[64];
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s: the station does not start again: %s", when, e.text);
	if (record_verify(core.record, &events, &chain, &e) < 0)
		fail_msg("%s: %s", when, e.text);
	assert_int_equal(events, record_last(core.record, &last));
	assert_memory_equal(&chain, &last, sizeof last);
	state_is_what_the_record_says();
	const struct reply *r = scan(scan_text(0, text));
	if (!entered(r))
		fail_msg("%s: it does not go on: %s", when, r->said);
	state_is_what_the_record_says();
	core_close(&core);
}

static void empty(void)
{
	folder_remove(folder);
	assert_int_equal(mkdir(folder, 0700), 0);
}

/* Where each story begins: an empty folder, or a copy of `from`. */
static void begin(const char *from)
{
	empty();
	if (from)
		folder_copy(from, folder);
	crash_fresh();
}

static int64_t points_of(const char *from)
{
	begin(from);
	assert_int_equal(whole_story(!from), 1);
	assert_int_equal(answers_lost(), 0);
	return crash.points;
}

static int64_t die_everywhere(const char *from, int64_t points, int64_t step)
{
	char when[100];
	int64_t tried = 0;
	for (int death = DEATH_KILLED; death < DEATHS; death++)
		for (int64_t at = 1; at <= points; at += death == DEATH_TORN ? 3 * step : step) {
			begin(from);
			crash.die_at = at;
			crash.random = (uint64_t)at * 0x9e3779b97f4a7c15u + (uint64_t)death;
			if (whole_story(!from))
				continue; /* a page fewer was needed this time */
			crash_after((enum death)death);
			snprintf(when, sizeof when, "death %d at point %lld of %lld", death, (long long)at,
			         (long long)points);
			int lost = answers_lost();
			if (lost)
				fail_msg("%s: %d of %d answers lost", when, lost, n_answers);
			the_station_stands(when);
			tried++;
		}
	return tried;
}

static void nothing_answered_is_lost_wherever_the_machine_dies(void **state)
{
	(void)state;
	int64_t points = points_of(NULL), tried = die_everywhere(NULL, points, EVERY);
	print_message("a case from an empty folder on: %d points, %d deaths\n", (int)points, (int)tried);
	assert_true(points > 60 && tried > 2 * points / EVERY - 10);
}

/* A record whose log is nearly full, so that it is written back into the file in the middle of the case. Made
 * once. */
static void fill_log(char from[FOLDER_MAX])
{
	char wal[FOLDER_MAX + 20];
	struct error e = {0};
	struct stat st = {0};
	begin(NULL);
	assert_int_equal(core_open(&core, folder, &e), 0);
	n_answers = 0;
	assert_int_equal(set_up(&e), 0);
	snprintf(wal, sizeof wal, "%s/" RECORD_FILE "-wal", folder);
	while (st.st_size < 970 * WAL_PAGE) {
		struct event fault = {.kind = EV_SCANNER_FAULT, .room = 1};
		memset(fault.text, 'x', sizeof fault.text - 1);
		assert_int_equal(core_store(&core, &fault, 1, &e), 0);
		assert_int_equal(stat(wal, &st), 0);
	}
	folder_make(from);
	folder_copy(folder, from); /* as it is now, without a clean end */
	core_close(&core);
}

static void nothing_is_lost_while_the_log_is_written_back(void **state)
{
	char from[FOLDER_MAX];
	(void)state;
	fill_log(from);
	int64_t points = points_of(from);
	int64_t back = written_back, tried = die_everywhere(from, points, 2 * EVERY);
	print_message(
	    "a case with a full log, written back in the middle of it (%d pages): %d points, %d deaths\n",
	    (int)back, (int)points, (int)tried);
	assert_true(back > 20);
	folder_remove(from);
}

static void a_disk_that_lies_is_found_out(void **state)
{
	(void)state;
	int64_t points = points_of(NULL);
	int lost = 0, tried = 0;
	for (int64_t at = 1; at <= points; at += EVERY) {
		begin(NULL);
		crash.die_at = at;
		crash.lies = 1;
		whole_story(1);
		crash_after(DEATH_POWER);
		lost += answers_lost() > 0;
		tried++;
	}
	print_message("a disk that lies: %d of %d deaths lost what was answered\n", lost, tried);
	assert_true(lost > tried / 2);
}

/* --- a disk that is full, or fails, for a while ------------------------------------------------- */

static int64_t case_on_a_failing_disk(void)
{
	static struct sheet before[SHEETS_MAX];
	char text[64];
	const char *what;
	int64_t refused = 0;
	for (int i = 0; (what = scan_text(i, text)); i++) {
		const struct reply *r = NULL;
		for (int attempt = 0; attempt < TRIES_MAX; attempt++) {
			int64_t last = record_last(core.record, NULL);
			memcpy(before, core.station.sheets, sizeof before);
			r = scan(what);
			if (entered(r))
				break;
			refused++;
			assert_non_null(strstr(r->next.words, "by hand"));
			assert_true(core.distrust[0]);
			assert_int_equal(record_last(core.record, NULL), last);
			assert_memory_equal(before, core.station.sheets, sizeof before);
		}
		if (!entered(r))
			fail_msg("scan %d: it never goes on: %s", i, r->said);
		assert_int_equal(core.distrust[0], 0);
		answered();
		if (i == 14 && !strstr(r->said, "ended reconciled"))
			fail_msg("the case did not end: %s", r->said);
	}
	return refused;
}

static void nothing_is_lost_on_a_disk_that_fails_for_a_while(void **state)
{
	static const struct {
		int code;
		const char *name;
	} faults[] = {{SQLITE_FULL, "full"},
	              {SQLITE_IOERR_WRITE, "failing writes"},
	              {SQLITE_IOERR_FSYNC, "failing syncs"},
	              {SQLITE_READONLY, "a forced read-only mount"}};
	struct error e = {0};
	char when[100];
	(void)state;
	for (size_t f = 0; f < sizeof faults / sizeof *faults; f++) {
		int64_t refused = 0, tried = 0;
		for (int64_t at = 1;; at += 2 * EVERY) {
			begin(NULL);
			n_answers = 0;
			assert_int_equal(core_open(&core, folder, &e), 0);
			assert_int_equal(set_up(&e), 0);
			int64_t from = crash.points;
			crash.fail_from = from + at;
			crash.fail_to = from + at + 5;
			crash.fail_code = faults[f].code;
			refused += case_on_a_failing_disk();
			int reached = crash.points >= crash.fail_from;
			core_close(&core);
			crash_after(DEATH_POWER);
			snprintf(when, sizeof when, "%s at point %lld", faults[f].name, (long long)at);
			if (answers_lost())
				fail_msg("%s: %d answers lost", when, answers_lost());
			the_station_stands(when);
			if (!reached)
				break;
			tried++;
		}
		print_message("a disk with %s: %d points, %d scans not entered, said so, and entered later\n",
		              faults[f].name, (int)tried, (int)refused);
		assert_true(refused > 0);
	}
}

/* Made read-only by force at each point, and never written again before the machine dies. */
static void what_a_read_only_disk_never_had_is_not_answered(void **state)
{
	char when[100];
	int64_t tried = 0, points = points_of(NULL);
	(void)state;
	for (int death = DEATH_KILLED; death <= DEATH_POWER; death++)
		for (int64_t at = 1; at <= points; at += EVERY) {
			begin(NULL);
			crash.fail_from = at;
			crash.fail_to = INT64_MAX;
			crash.fail_code = SQLITE_READONLY;
			whole_story(1);
			crash_after((enum death)death);
			snprintf(when, sizeof when, "read-only at point %lld, death %d", (long long)at,
			         death);
			int lost = answers_lost();
			if (lost)
				fail_msg("%s: %d of %d answers lost", when, lost, n_answers);
			the_station_stands(when);
			tried++;
		}
	print_message("a disk that was made read-only for good: %d deaths\n", (int)tried);
}

static int make_folder(void **state)
{
	(void)state;
	crash_install();
	folder_make(folder);
	return 0;
}

static int remove_folder(void **state)
{
	(void)state;
	folder_remove(folder);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(nothing_answered_is_lost_wherever_the_machine_dies),
	    cmocka_unit_test(nothing_is_lost_while_the_log_is_written_back),
	    cmocka_unit_test(a_disk_that_lies_is_found_out),
	    cmocka_unit_test(nothing_is_lost_on_a_disk_that_fails_for_a_while),
	    cmocka_unit_test(what_a_read_only_disk_never_had_is_not_answered),
	};
	return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
