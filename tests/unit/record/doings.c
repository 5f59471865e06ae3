#include "tests/unit/record/doings.h"

#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "count/stock-enums.h"
#include "record/archive.h"
#include "record/backup.h"
#include "record/head.h"
#include "record/slip-check.h"
#include "record/snapshot.h"
#include "record/summary.h"
#include "record/texts.h"
#include "record/verify.h"
#include "tests/unit/record/failing.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"
#include "tests/unit/record/sealed.h"

/* What lies in `whole` is copied anew to `folder` before each attempt. */
static char whole[FOLDER_MAX], folder[FOLDER_MAX], beside[FOLDER_MAX];
static int64_t whole_events;
static char slip_jws[SEAL_JWS_MAX];
static struct station settings, station; /* what a start begins with, and what it comes to */

static struct record *record;
static struct seal *seal;
static struct keys keys;
static struct told told;
static int64_t n_told; /* of events, by count_event() */

__attribute__((format(printf, 1, 2))) static void tell(const char *format, ...)
{
	size_t at = strlen(told.text);
	va_list words;
	va_start(words, format);
	vsnprintf(told.text + at, sizeof told.text - at, format, words);
	va_end(words);
}

static const char *in(const char *where, const char *name)
{
	static char paths[4][FOLDER_MAX + 40];
	static int next;
	char *path = paths[next++ % 4];
	snprintf(path, sizeof paths[0], "%s/%s", where, name);
	return path;
}

/* --- the record that all of it is tried on ------------------------------------------------------------ */

static int append_sealed(struct event *events, int count, struct error *e)
{
	struct event sealed = {.kind = EV_SEALED, .at = {.boot = 1, .boot_ms = 1, .wall_ms = 1795600800000}};
	for (int i = 0; i < count; i++)
		events[i].at = sealed.at;
	return record_append_sealed(record, events, count, &sealed, sealed_sign, &(struct sealer){seal, 1},
	                            e);
}

int doings_make_whole(void **state)
{
	struct error e = {0};
	struct history h;
	struct event stores[] = {
	    {.kind = EV_SETTING, .what = SETTING_KEEP, .n = 2},
	    {.kind = EV_LABELLED, .batch = {.line = "GREEN-M", .lot = "T1", .first = 1, .last = 9}},
	    {.kind = EV_LABEL_FATE, .what = LABEL_READ, .batch = {.line = "GREEN-M", .first = 5, .last = 5}},
	    {.kind = EV_LABELS_TAKEN,
	     .other = 8,
	     .batch = {.line = "GREEN-M", .lot = "E8", .first = 1, .last = 4}},
	    {.kind = EV_SETTING, .what = SETTING_FIRST_REMINDER, .n = 20},
	    {.kind = EV_QUARANTINED, .thing = {.line = "GREEN-M", .lot = "T2"}, .text = "recalled"}};
	(void)state;
	folder_make(whole);
	if (record_open(&record, whole, &e) < 0 || seal_open(&seal, whole, &e) < 0 ||
	    keys_add(&keys, seal_key(seal)) < 0 || keys_write(&keys, in(whole, KEYS_FILE)) < 0 ||
	    history_init(&h, record, 3, 0) < 0)
		return -1;
	settings = (struct station){.n_rooms = h.st.n_rooms, .policy = h.st.policy};
	memcpy(settings.site, h.st.site, sizeof settings.site);
	memcpy(settings.rooms, h.st.rooms, sizeof settings.rooms);
	struct event key = {.kind = EV_KEY, .key = *seal_key(seal)};
	int n = append_sealed(&key, 1, &e);
	if (n == 0)
		n = history_store(&h, stores, sizeof stores / sizeof *stores);
	if (n == 0)
		n = history_case(&h, 1);
	if (n == 0)
		n = history_seen(&h);
	if (n == 0)
		n = history_word(&h, 2, "c1", 0);
	if (n == 0)
		n = sealed_slip(seal, record, 1, 1, slip_jws);
	if (n == 0)
		n = append_sealed(&(struct event){.kind = EV_STOPPED}, 1, &e);
	whole_events = record_last(record, NULL);
	history_deinit(&h);
	record_close(record);
	seal_close(seal);
	return n;
}

int doings_drop_whole(void **state)
{
	(void)state;
	folder_remove(whole);
	return 0;
}

/* --- what is asked of it: 0 or a negative errno, and what was told ------------------------------------- */

static int count_event(void *context, const struct event *ev)
{
	n_told += 1 + 1000 * (ev->kind == EV_UNREADABLE) + (context != NULL);
	return 0;
}

static int open_it(struct error *e)
{
	int n = record_open(&record, folder, e);
	if (n == 0)
		tell("%d", (int)record_last(record, NULL));
	return n;
}

static int open_still(struct error *e)
{
	return record_open_still(&record, in(folder, RECORD_FILE), e);
}

static int append(struct error *e)
{
	struct event events[] = {{.kind = EV_ALIVE}, {.kind = EV_STOPPED}};
	int n = append_sealed(events, 2, e);
	tell("%d %d", (int)events[0].seq, (int)events[1].seq);
	assert_true(n == 0 || (events[0].seq == 0 && events[1].seq == 0));
	return n;
}

static int load(struct error *e)
{
	int n = 0;
	for (int from_the_first = 0; from_the_first < 2 && n == 0; from_the_first++) {
		station = settings;
		n = from_the_first ? record_load_from(record, 0, &station, e)
		                   : record_load(record, &station, e);
		tell("%d %d %d ", (int)station.last_case_no, (int)station.last_slip_no, station.n_unfollowed);
		station_deinit(&station);
	}
	return n;
}

static int each(struct error *e)
{
	int n = record_each(record, 0, count_event, NULL, e);
	if (n == 0)
		n = record_each(record, 1, count_event, NULL, e);
	if (n == 0)
		n = record_each_station(record, EV_LINE_SET, count_event, NULL, e);
	if (n == 0)
		n = record_each_key(record, count_event, NULL, e);
	if (n == 0)
		n = record_each_setting(record, count_event, NULL, e);
	if (n == 0)
		n = record_each_case_edge(record, count_event, NULL, e);
	tell("%d", (int)n_told);
	return n;
}

static int count_case(void *context, const struct case_edges *c)
{
	(void)context;
	tell("%d:%d:%d:%d ", (int)c->case_no, c->end, c->n_slips, (int)c->room);
	return 0;
}

static int cases(struct error *e)
{
	int64_t last = 0;
	return record_each_case(record, 0, 10, count_case, NULL, &last, e);
}

static int count_text(void *context, int64_t seq, const char *text, size_t size, const struct chain *hash)
{
	(void)context;
	tell("%d:%zu:%c:%d ", (int)seq, size, *text, hash->hash[0]);
	return 0;
}

static int one_event(struct error *e)
{
	struct event ev;
	struct chain chain = {0};
	(void)e;
	int64_t end = record_end(record);
	int n = end < 0 ? (int)end : record_event_at(record, end, &ev);
	if (n == 0)
		n = record_hash_at(record, end, &chain);
	if (n >= 0)
		n = record_each_text(record, 2, 6, 3, count_text, NULL);
	tell("%d %d", (int)end, chain.hash[0]);
	return n < 0 ? n : 0;
}

static int look_ups(struct error *e)
{
	int32_t case_no = 0, last = 0, of_case = 0;
	int cases = 0;
	uint8_t back = 0;
	struct event ev;
	struct batch batch = {0};
	struct slip slip = {0};
	struct paper paper = {0};
	(void)e;
	int n = record_item_used(record, "GREEN-M:1000", &case_no, &back);
	if (n >= 0)
		n = record_batch_of(record, 5, &batch);
	if (n >= 0)
		n = record_last_slip(record, &last);
	if (n >= 0)
		n = record_slip_of(record, last, 1, &slip, &paper);
	if (n >= 0)
		n = record_label_last(record, 5, &ev);
	if (n >= 0)
		n = record_batch_of_station(record, 8, 3, &batch);
	if (n >= 0)
		n = record_slip_of_case(record, 1, &of_case);
	if (n >= 0)
		n = record_left(record, &cases, &ev);
	tell("%d %d %s %d %d %d %d", (int)case_no, back, batch.lot, (int)last, paper.queued, (int)of_case,
	     cases);
	return n < 0 ? n : 0;
}

static int copy_it(struct error *e)
{
	int n = record_copy_start(record, in(beside, "copy.db"), e);
	while (n == 0 && (n = record_copy_step(record, 5, e)) == 1)
		n = 0;
	return n;
}

static void found(void *context, const char *what)
{
	(void)context;
	told.doubts++;
	tell("%s; ", what);
}

static int verify(struct error *e)
{
	const struct verify_how how = {
	    .keys = &keys, .each_seal = 1, .indexes = 1, .parts = 2, .found = found};
	struct verified v;
	int n = record_verify_all(record, &how, &v, e);
	tell("%d %d %d %d", (int)v.events, v.found, v.seals_checked, (int)v.sealed_to);
	return n;
}

static int back_up(struct error *e)
{
	struct backup b = {0};
	char aside[PATH_MAX];
	int n = backup_write(in(folder, RECORD_FILE), in(beside, "backup.db"), folder, &b, aside, e);
	tell("%d %d", (int)b.events, b.odd.code);
	return n;
}

static int restore(struct error *e)
{
	struct backup b = {0};
	char aside[PATH_MAX];
	int n = backup_restore(in(whole, RECORD_FILE), folder, &b, aside, e);
	tell("%d %d", (int)b.events, *aside != 0);
	return n;
}

static int key_of(const char *where, struct error *e)
{
	struct seal *own = NULL;
	int n = seal_open(&own, where, e);
	if (n == 0)
		tell("%u %s", seal_state(own), where == folder ? seal_key(own)->kid : "");
	seal_close(own);
	return n;
}

static int open_seal(struct error *e)
{
	return key_of(folder, e);
}

static int make_key(struct error *e)
{
	return key_of(beside, e);
}

static int check_slip(struct error *e)
{
	struct keys own;
	char words[SLIP_CHECK_WORDS] = "";
	json_t *payload = NULL;
	int n = keys_read(&own, in(folder, KEYS_FILE), e);
	if (n == 0)
		n = slip_check(record, &own, slip_jws, words, &payload, e);
	json_decref(payload);
	told.doubts = n != SLIP_HELD;
	tell("%s", words);
	return n < 0 ? n : 0;
}

static int publish(struct error *e)
{
	(void)e;
	struct keys more = keys;
	int n = keys_add(&more, &(struct public_key){.kid = "another",
	                                             .x = "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo"});
	return n < 0 ? n : keys_write(&more, in(folder, KEYS_FILE));
}

static int heads(struct error *e)
{
	struct noted head = {.incarnation = 1,
	                     .head = {.seq = whole_events, .case_no = 2, .slip = 1, .item = 9}};
	struct chain chain;
	int n = record_chain_at(record, whole_events, &chain, e);
	if (n < 0)
		return n;
	chain_hex(&chain, head.head.hash);
	n = head_write(&head, in(folder, HEAD_FILE), 1);
	if (n < 0)
		return error_set(e, n, "test: not written: try again");
	n = head_read(&head, in(folder, HEAD_FILE), e);
	if (n == 0)
		n = head_compare(record, &head.head);
	if (n < 0)
		return error_set(e, n, "test: not compared: try again");
	tell("%d", n);
	return 0;
}

/* A snapshot that could not be written, or cannot be read, is none: a start reads the record. */
static int snapshots(struct error *e)
{
	struct snapshot_writer *w = NULL;
	int64_t seq = 0;
	station = settings;
	int n = record_load(record, &station, e);
	if (n == 0 && (n = snapshot_begin(&w, record, seal, folder, &station, NULL)) == 0)
		while ((n = snapshot_step(w)) > 0)
			;
	snapshot_free(w);
	station_deinit(&station);
	if (n < 0)
		return error_set(e, n, "test: no snapshot: read the record");
	station = settings;
	int looked = snapshot_look(record, seal, folder, &station, &seq);
	station_deinit(&station);
	station = settings;
	int loaded = looked ? snapshot_load(record, seal, folder, &station, NULL, &seq) : 0;
	tell("%d", (int)station.last_case_no);
	assert_true(loaded || station.catalogue.count == 0);
	station_deinit(&station);
	return looked && loaded ? 0 : error_set(e, -EIO, "test: no snapshot: read the record");
}

static void *begin_fold(void)
{
	return malloc(1);
}

static int row_fold(void *own, const struct event *events, int count, struct moment now, int first,
                    struct case_row *row)
{
	(void)own;
	(void)now;
	*row = (struct case_row){.case_no = events[0].case_no,
	                         .first_seq = events[0].seq,
	                         .last_seq = events[count - 1].seq,
	                         .end = CASE_RECONCILED,
	                         .first_reminder_min = (int16_t)first};
	return 0;
}

static int sum_up(struct error *e)
{
	static const struct summary_fold fold = {1, begin_fold, free, row_fold};
	struct summary s = {0};
	const char *cache = in(folder, "summary");
	int n = summary_get(&s, record, in(folder, RECORD_FILE), cache, &fold, e);
	summary_deinit(&s);
	if (n >= 0)
		n = summary_get(&s, record, in(folder, RECORD_FILE), cache, &fold, e);
	if (n >= 0)
		n = summary_each_stop(&s, EV_QUARANTINED, count_event, NULL, e);
	tell("%zu %zu %d %d", s.count, s.n_stops, (int)n_told, s.count ? s.rows[0].first_reminder_min : 0);
	summary_deinit(&s);
	return n < 0 ? n : 0;
}

static int has_left(void)
{
	struct event left;
	struct error e = {0};
	assert_int_equal(record_open_copy(&record, in(folder, RECORD_FILE), &e), 0);
	int n = record_case_left(record, 1, &left);
	record_close(record);
	record = NULL;
	return n == RECORD_FOUND;
}

/* Ten years later. Where it fails there is no archive of what stayed, nor did anything leave for none, and nothing half made
 * lies about. */
static int let_leave(struct error *e)
{
	struct archive a;
	struct backup b = {0};
	int n = archive_make(&a, folder, in(beside, "archive.db"),
	                     HISTORY_BEGINS_MS + INT64_C(3660) * 86400000, &b, e);
	archive_deinit(&a);
	failing_end();
	int left = has_left();
	assert_int_equal(left, access(in(beside, "archive.db"), F_OK) == 0);
	assert_int_not_equal(access(in(beside, "archive.db.new"), F_OK), 0);
	assert_int_not_equal(access(in(folder, RECORD_FILE ".new"), F_OK), 0);
	tell("%d", left);
	return left ? 0 : n; /* it may have left, and only a folder could not be brought to disk */
}

const struct doing all_doings[] = {
    {"open", open_it, NOTHING, 0, 0},
    {"open one that is at rest", open_still, NOTHING, 0, 0},
    {"append", append, THE_RECORD, 0, 3},
    {"load", load, THE_RECORD, 0, 0},
    {"each event", each, THE_RECORD, 0, 0},
    {"each case", cases, THE_RECORD, 0, 0},
    {"one event", one_event, THE_RECORD, WORDLESS, 0},
    {"look-ups", look_ups, THE_RECORD, WORDLESS, 0},
    {"copy", copy_it, THE_RECORD, 0, 0},
    {"verify", verify, A_COPY, MAY_DOUBT, 0},
    {"back up", back_up, NOTHING, 0, 0},
    {"restore", restore, NOTHING, ONCE, 0},
    {"take the key", open_seal, NOTHING, 0, 0},
    {"make a key", make_key, NOTHING, ONCE, 0},
    {"check a slip", check_slip, A_COPY, MAY_DOUBT, 0},
    {"publish the keys", publish, NOTHING, WORDLESS, 0},
    {"note the head", heads, A_COPY, 0, 0},
    {"snapshot", snapshots, THE_RECORD, 0, 0},
    {"sum up", sum_up, A_COPY, 0, 0},
    {"let leave what is old", let_leave, NOTHING, ONCE, 2},
};
const size_t n_doings = sizeof all_doings / sizeof *all_doings;

const struct doing *doing_of(const char *what)
{
	for (size_t i = 0; i < n_doings; i++)
		if (strcmp(all_doings[i].what, what) == 0)
			return &all_doings[i];
	return NULL;
}

/* --- one attempt ---------------------------------------------------------------------------------------- */

const struct told *doing_told(void)
{
	return &told;
}

void doing_forget(void)
{
	told.text[0] = 0;
	told.doubts = 0;
	n_told = 0;
}

void doing_set_up(const struct doing *a)
{
	struct error e = {0};
	folder_make(folder);
	folder_make(beside);
	folder_copy(whole, folder);
	assert_int_equal(seal_open(&seal, folder, &e), 0);
	record = NULL;
	doing_forget();
	if (a->opened == THE_RECORD)
		assert_int_equal(record_open(&record, folder, &e), 0);
	if (a->opened == A_COPY)
		assert_int_equal(record_open_copy(&record, in(folder, RECORD_FILE), &e), 0);
}

void doing_tear_down(void)
{
	record_close(record);
	seal_close(seal);
	folder_remove(folder);
	folder_remove(beside);
}

void doing_is_whole(const struct doing *a, const char *failed, int more)
{
	struct error e = {0};
	int64_t events = 0;
	struct chain chain;
	record_close(record);
	if (record_open(&record, folder, &e) < 0 || record_verify(record, &events, &chain, &e) < 0)
		fail_msg("%s, and %s failed: afterwards %s", a->what, failed, e.text);
	assert_int_equal(events, whole_events + more);
}
