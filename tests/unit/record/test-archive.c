/* What was archived may leave the record: which cases do, what stays of them, and that both files prove themselves. */
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

#include "record/archive.h"
#include "record/hospital-file.h"
#include "record/texts.h"
#include "record/verify.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"
#include "tests/unit/record/same.h"

#define YEAR_MS (INT64_C(366) * 86400000)

enum { LEAVES = 1, NOT_SEEN, NAMED, LEAVES_TOO, FOUND, UNRESOLVED, NAMED_ONCE, YOUNG };

static char folder[FOLDER_MAX], shelf[FOLDER_MAX], live[FOLDER_MAX + 16], archived[FOLDER_MAX + 16];
static struct error e;
static int64_t now_ms;
static char used[IDENTITY_MAX]; /* a thing that the first case used */

/* A case; whether its slip came. */
static const char ordinary[] = "c1 b1 b2 g f b2 d2 w5 d2 c40 w6 c50 c41 f b2 d2 b3";

static void play(struct history *h, int seen)
{
	int32_t identity = h->next_identity++;
	int32_t before = h->st.last_case_no;
	for (const char *w = ordinary; w; w = strchr(w, ' ')) {
		w += *w == ' ';
		assert_true(history_word(h, 1, w, identity) >= 0);
	}
	assert_int_equal(h->st.last_case_no, before + 1);
	if (seen)
		assert_int_equal(history_seen(h), 0);
}

static void store(struct history *h, struct event ev)
{
	ev.at = h->now;
	assert_int_equal(history_store(h, &ev, 1), 0);
}

static void years_pass(struct history *h, int years)
{
	h->now.wall_ms += years * YEAR_MS;
	h->now.boot_ms += years * YEAR_MS;
}

static void keep_for(struct history *h, int32_t case_no, int on)
{
	struct event ev = {.kind = EV_KEPT_FOR, .case_no = case_no, .room = 1, .n = on};
	snprintf(ev.text, sizeof ev.text, "inquest 12");
	store(h, ev);
}

/* The surgeon ends it: the forceps are nowhere, each step of the search is done, and the number is known. */
static void end_unresolved(struct history *h)
{
	struct event ev = {.kind = EV_CASE_OPENED, .case_no = UNRESOLVED, .room = 2};
	store(h, ev);
	store(h, (struct event){
	             .kind = EV_CASE_ENDED, .case_no = UNRESOLVED, .room = 2, .what = END_UNRESOLVED});
}

static void tell_cases(struct history *h)
{
	play(h, 1);
	play(h, 0);
	play(h, 1);
	play(h, 1);
	play(h, 1);
	end_unresolved(h);
	play(h, 1);
	keep_for(h, NAMED, 1);
	keep_for(h, NAMED_ONCE, 1);
	keep_for(h, NAMED_ONCE, 0);
	store(h, (struct event){.kind = EV_FOUND_AFTER, .case_no = FOUND, .room = 1});
	years_pass(h, 3);
	play(h, 1);
	now_ms = h->now.wall_ms;
}

static int take_used(void *context, const struct event *ev)
{
	(void)context;
	if (ev->kind == EV_ITEM_USED && ev->thing.identity[0])
		snprintf(used, sizeof used, "%s", ev->thing.identity);
	return 0;
}

static int set_up(void **state)
{
	struct record *r;
	struct seal *seal;
	static struct history h;
	(void)state;
	folder_make(folder);
	folder_make(shelf);
	snprintf(live, sizeof live, "%s/" RECORD_FILE, folder);
	snprintf(archived, sizeof archived, "%s/archive.db", shelf);
	if (record_open(&r, folder, &e) < 0 || history_init(&h, r, 7, 0) < 0 ||
	    seal_open(&seal, folder, &e) < 0)
		return -1;
	store(&h, (struct event){.kind = EV_SETTING, .what = SETTING_KEEP, .n = 2});
	tell_cases(&h);
	store(&h,
	      (struct event){.kind = EV_KEY, .key = *seal_key(seal)}); /* what was before it has no seals */
	assert_int_equal(record_each(r, LEAVES, take_used, NULL, &e), 0);
	history_deinit(&h);
	seal_close(seal);
	record_close(r);
	return 0;
}

static int tear_down(void **state)
{
	(void)state;
	folder_remove(folder);
	folder_remove(shelf);
	return 0;
}

static void count_found(void *context, const char *what)
{
	(void)what;
	++*(int *)context;
}

/* How many things are wrong with it; each way to divide it gives the same. */
static int faults_of(const char *file)
{
	int first = -1;
	for (int parts = 1; parts <= 7; parts++) {
		struct record *r;
		struct verified v = {0};
		int found = 0;
		const struct verify_how how = {
		    .parts = parts, .each_seal = 1, .indexes = 1, .found = count_found, .context = &found};
		assert_int_equal(record_open_copy(&r, file, &e), 0);
		found += record_verify_all(r, &how, &v, &e) < 0;
		record_close(r);
		if (first >= 0)
			assert_int_equal(found, first);
		first = found;
	}
	return first;
}

static void is_whole(const char *file)
{
	assert_int_equal(faults_of(file), 0);
}

static void let_go(struct archive *a)
{
	struct backup b;
	int n = archive_make(a, folder, archived, now_ms, &b, &e);
	if (n < 0)
		fail_msg("%s", e.text);
}

/* As far as a hospital's store keeps it. */
static void let_go_to(struct archive *a, int64_t kept)
{
	assert_int_equal(hospital_write(&(struct hospital_noted){.kept = kept}, folder), 0);
	let_go(a);
}

static struct station *station_of(const char *file)
{
	struct record *r;
	struct station *st = calloc(1, sizeof *st);
	assert_non_null(st);
	assert_int_equal(record_open_copy(&r, file, &e), 0);
	assert_int_equal(record_load(r, st, &e), 0);
	record_close(r);
	return st;
}

static void drop_station(struct station *st)
{
	station_deinit(st);
	free(st);
}

static void only_what_is_old_and_over_leaves(void **state)
{
	(void)state;
	struct archive a;
	static const enum stays_why why[] = {
	    [LEAVES] = STAYS_NOT,     [NOT_SEEN] = STAYS_OWED, [NAMED] = STAYS_NAMED,
	    [LEAVES_TOO] = STAYS_NOT, [FOUND] = STAYS_FOUND,   [UNRESOLVED] = STAYS_UNRESOLVED,
	    [NAMED_ONCE] = STAYS_NOT, [YOUNG] = STAYS_YOUNG};
	let_go(&a);
	assert_int_equal(a.n_cases, YOUNG);
	for (int i = 0; i < a.n_cases; i++)
		assert_int_equal(a.cases[i].why, why[a.cases[i].case_no]);
	assert_int_equal(a.leave, 3);
	archive_deinit(&a);
}

static void both_files_prove_themselves(void **state)
{
	(void)state;
	struct archive a;
	struct stat before, after;
	assert_int_equal(stat(live, &before), 0);
	let_go(&a);
	archive_deinit(&a);
	is_whole(archived);
	is_whole(live);
	assert_int_equal(stat(live, &after), 0);
	assert_true(after.st_size < before.st_size);
}

static void the_station_knows_the_same_as_before(void **state)
{
	(void)state;
	struct archive a;
	let_go(&a);
	archive_deinit(&a);
	struct station *all = station_of(archived), *now = station_of(live);
	same_station(all, now);
	drop_station(all);
	drop_station(now);
}

static int count_event(void *context, const struct event *ev)
{
	*(int *)context += ev->case_no > 0;
	return 0;
}

static int events_of(struct record *r, int32_t case_no)
{
	int n = 0;
	assert_int_equal(record_each(r, case_no, count_event, &n, &e), 0);
	return n;
}

static void what_is_found_later_still_finds_its_case(void **state)
{
	(void)state;
	struct archive a;
	struct record *r;
	struct event left;
	struct slip slip;
	struct paper paper;
	int32_t case_no = 0, number = 0;
	uint8_t back;
	let_go(&a);
	archive_deinit(&a);
	assert_int_equal(record_open_copy(&r, live, &e), 0);
	assert_int_equal(record_item_used(r, used, &case_no, &back), RECORD_FOUND);
	assert_int_equal(case_no, LEAVES);
	assert_int_equal(record_slip_of_case(r, LEAVES, &number), RECORD_FOUND);
	assert_int_equal(record_slip_of(r, number, 1, &slip, &paper), RECORD_FOUND);
	assert_int_equal(slip.case_no, LEAVES);
	assert_int_equal(record_case_left(r, LEAVES, &left), RECORD_FOUND);
	assert_string_equal(left.text, "archive.db");
	assert_int_equal(left.n, 3);
	assert_int_equal(record_case_left(r, NAMED, &left), RECORD_HAS_NONE);
	assert_in_range(events_of(r, LEAVES), 4, 8);
	assert_true(events_of(r, NAMED) > 20);
	record_close(r);
}

static void what_stays_is_as_it_was(void **state)
{
	(void)state;
	struct archive a;
	struct record *was, *is;
	int stays = 0;
	let_go(&a);
	archive_deinit(&a);
	assert_int_equal(record_open_copy(&was, archived, &e), 0);
	assert_int_equal(record_open_copy(&is, live, &e), 0);
	for (int64_t seq = 1; seq <= record_end(was); seq++) {
		struct chain a_hash, b_hash;
		struct event one, other;
		if (record_event_at(is, seq, &other) == -ENOENT)
			continue;
		stays++;
		assert_int_equal(record_event_at(was, seq, &one), 0);
		assert_int_equal(record_hash_at(was, seq, &a_hash), RECORD_FOUND);
		assert_int_equal(record_hash_at(is, seq, &b_hash), RECORD_FOUND);
		assert_memory_equal(&a_hash, &b_hash, sizeof a_hash);
		assert_int_equal(one.kind, other.kind);
	}
	assert_true(stays > 100);
	record_close(was);
	record_close(is);
}

static void it_goes_on_and_lets_go_again(void **state)
{
	(void)state;
	struct archive a;
	struct record *r;
	struct event ev = {.kind = EV_STOPPED};
	let_go(&a);
	archive_deinit(&a);
	assert_int_equal(record_open(&r, folder, &e), 0);
	ev.at.wall_ms = now_ms;
	assert_int_equal(record_append(r, &ev, 1, &e), 0);
	record_close(r);
	now_ms += 3 * YEAR_MS;
	snprintf(archived, sizeof archived, "%s/second.db", shelf);
	let_go(&a);
	assert_int_equal(a.leave, 1);
	assert_int_equal(a.cases[LEAVES - 1].why, STAYS_LEFT);
	archive_deinit(&a);
	is_whole(live);
	is_whole(archived);
}

/* A command that failed behind the archive is asked once more, when the hospital's store may keep more than then. */
static void asked_again_it_is_judged_as_it_was_then(void **state)
{
	(void)state;
	struct archive a;
	struct backup b;
	struct record *r;
	struct event left;
	let_go_to(&a, 0);
	int64_t of_first = a.cases[LEAVES - 1].last_seq;
	archive_deinit(&a);
	let_go_to(&a, of_first);
	archive_deinit(&a);
	assert_int_equal(hospital_write(&(struct hospital_noted){.kept = INT32_MAX}, folder), 0);
	assert_int_equal(record_open_copy(&r, live, &e), 0);
	assert_int_equal(record_case_left(r, LEAVES, &left), RECORD_FOUND);
	assert_int_equal(archive_again(&a, r, &left, folder, archived, &b, &e), 0);
	assert_int_equal(a.leave, 1);
	assert_int_equal(a.cases[LEAVES - 1].why, STAYS_NOT);
	assert_int_equal(a.cases[LEAVES_TOO - 1].why, STAYS_UNSENT);
	assert_int_equal(a.cases[NAMED - 1].why, STAYS_NAMED);
	archive_deinit(&a);
	record_close(r);
}

static void another_file_of_that_name_is_not_the_archive(void **state)
{
	(void)state;
	struct archive a;
	struct backup b;
	struct record *r;
	struct event left;
	let_go(&a);
	archive_deinit(&a);
	assert_int_equal(record_open_copy(&r, live, &e), 0);
	assert_int_equal(record_case_left(r, LEAVES, &left), RECORD_FOUND);
	left.seq--;
	assert_int_equal(archive_again(&a, r, &left, folder, archived, &b, &e), -EUCLEAN);
	assert_non_null(strstr(e.text, "it is another file of that name"));
	archive_deinit(&a);
	record_close(r);
}

/* What follows a stretch that left is chained to the last event of it. */
static void the_hash_before_what_follows_a_stretch_is_known(void **state)
{
	(void)state;
	struct archive a;
	struct record *was, *is;
	struct chain then, now;
	int stretches = 0;
	let_go(&a);
	archive_deinit(&a);
	assert_int_equal(record_open_copy(&was, archived, &e), 0);
	assert_int_equal(record_open_copy(&is, live, &e), 0);
	for (int64_t seq = 2; seq <= record_end(was); seq++) {
		if (record_gone_before(is, seq, &now) == RECORD_HAS_NONE)
			continue;
		stretches++;
		assert_int_equal(record_hash_at(was, seq - 1, &then), RECORD_FOUND);
		assert_memory_equal(&then, &now, sizeof then);
	}
	assert_true(stretches > 0);
	record_close(was);
	record_close(is);
}

static void nothing_leaves_twice_or_for_a_place_that_is_taken(void **state)
{
	(void)state;
	struct archive a;
	struct backup b;
	struct record *r;
	struct stat before, after;
	let_go(&a);
	archive_deinit(&a);
	assert_int_equal(archive_make(&a, folder, archived, now_ms, &b, &e), -EEXIST);
	archive_deinit(&a);
	snprintf(archived, sizeof archived, "%s/other.db", shelf);
	assert_int_equal(stat(live, &before), 0);
	let_go(&a);
	assert_int_equal(a.leave, 0);
	archive_deinit(&a);
	assert_int_equal(access(archived, F_OK), -1);
	assert_int_equal(stat(live, &after), 0);
	assert_int_equal(after.st_ino, before.st_ino);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(archive_make(&a, folder, archived, now_ms, &b, &e), -EBUSY);
	archive_deinit(&a);
	record_close(r);
}

/* A store takes events without a gap: what it has not got could be had from nobody. */
static void what_the_hospital_does_not_keep_stays(void **state)
{
	(void)state;
	struct archive a;
	let_go_to(&a, 0);
	assert_int_equal(a.leave, 0);
	assert_int_equal(a.cases[LEAVES - 1].why, STAYS_UNSENT);
	int64_t of_first = a.cases[LEAVES - 1].last_seq;
	archive_deinit(&a);
	let_go_to(&a, of_first - 1);
	assert_int_equal(a.leave, 0);
	archive_deinit(&a);
	let_go_to(&a, of_first);
	assert_int_equal(a.leave, 1);
	assert_int_equal(a.cases[LEAVES_TOO - 1].why, STAYS_UNSENT);
	assert_int_equal(a.cases[NAMED - 1].why, STAYS_NAMED);
	archive_deinit(&a);
	is_whole(live);
}

static void without_a_period_or_the_key_nothing_leaves(void **state)
{
	(void)state;
	struct archive a;
	struct backup b;
	struct record *r;
	char key[FOLDER_MAX + 32];
	struct stat before, after;
	struct event ev = {.kind = EV_SETTING, .what = SETTING_KEEP, .n = 0};
	snprintf(key, sizeof key, "%s/" SEAL_FILE, folder);
	assert_int_equal(unlink(key), 0);
	assert_int_equal(stat(live, &before), 0);
	assert_int_equal(archive_make(&a, folder, archived, now_ms, &b, &e), -ENOENT);
	archive_deinit(&a);
	assert_int_equal(access(archived, F_OK), -1);
	assert_int_equal(record_open(&r, folder, &e), 0);
	assert_int_equal(record_append(r, &ev, 1, &e), 0);
	record_close(r);
	assert_int_equal(archive_make(&a, folder, archived, now_ms, &b, &e), -ENOTSUP);
	archive_deinit(&a);
	assert_int_equal(access(archived, F_OK), -1);
	assert_int_equal(stat(live, &after), 0);
	assert_int_equal(after.st_ino, before.st_ino);
}

static void change(const char *sql)
{
	sqlite3 *db;
	assert_int_equal(sqlite3_open(live, &db), SQLITE_OK);
	if (sqlite3_exec(
	        db,
	        "CREATE TEMP TABLE t AS SELECT sql FROM sqlite_master WHERE type = 'trigger';"
	        "DROP TRIGGER gone_no_UPDATE; DROP TRIGGER gone_no_DELETE; DROP TRIGGER gone_no_INSERT;"
	        "DROP TRIGGER left_case_no_DELETE; DROP TRIGGER event_no_delete; DROP TRIGGER "
	        "event_no_update;",
	        NULL, NULL, NULL) != SQLITE_OK ||
	    sqlite3_exec(db, sql, NULL, NULL, NULL) != SQLITE_OK)
		fail_msg("%s: %s", sql, sqlite3_errmsg(db));
	assert_true(sqlite3_changes(db) > 0);
	sqlite3_close(db);
}

/* One finding more than the triggers that are missing give. */
static void is_found(const char *sql)
{
	struct archive a;
	let_go(&a);
	archive_deinit(&a);
	change(sql);
	assert_true(faults_of(live) > 1);
}

static void a_case_that_is_said_to_have_stayed_is_found(void **state)
{
	(void)state;
	is_found("DELETE FROM left_case WHERE case_no = 1");
}

static void a_stretch_that_is_made_longer_is_found(void **state)
{
	(void)state;
	is_found("DELETE FROM event WHERE seq = (SELECT max(last) + 1 FROM gone);"
	         "UPDATE gone SET last = last + 1 WHERE first = (SELECT max(first) FROM gone)");
}

static void a_stretch_of_another_hash_is_found(void **state)
{
	(void)state;
	is_found("UPDATE gone SET hash = before");
}

static void an_event_before_a_stretch_that_was_made_anew_is_found(void **state)
{
	(void)state;
	is_found(
	    "UPDATE event SET payload = replace(payload, '\"room\":1', '\"room\":2'), hash = zeroblob(32)"
	    " WHERE seq = (SELECT min(first) - 1 FROM gone)");
}

int main(void)
{
#define EACH(test) cmocka_unit_test_setup_teardown(test, set_up, tear_down)
	const struct CMUnitTest tests[] = {
	    EACH(only_what_is_old_and_over_leaves),
	    EACH(both_files_prove_themselves),
	    EACH(the_station_knows_the_same_as_before),
	    EACH(what_is_found_later_still_finds_its_case),
	    EACH(what_stays_is_as_it_was),
	    EACH(it_goes_on_and_lets_go_again),
	    EACH(asked_again_it_is_judged_as_it_was_then),
	    EACH(another_file_of_that_name_is_not_the_archive),
	    EACH(the_hash_before_what_follows_a_stretch_is_known),
	    EACH(nothing_leaves_twice_or_for_a_place_that_is_taken),
	    EACH(what_the_hospital_does_not_keep_stays),
	    EACH(without_a_period_or_the_key_nothing_leaves),
	    EACH(a_case_that_is_said_to_have_stayed_is_found),
	    EACH(a_stretch_that_is_made_longer_is_found),
	    EACH(a_stretch_of_another_hash_is_found),
	    EACH(an_event_before_a_stretch_that_was_made_anew_is_found),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
