/* Records that earlier versions wrote: each is loaded, verified and told as on the day it was kept. */
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

#include <cmocka.h>
#include <glob.h>
#include <sqlite3.h>

#include "labels/canvas.h"
#include "labels/paper.h"
#include "record/keys.h"
#include "run/settings.h"
#include "tests/kept/again.h"
#include "tests/kept/state.h"
#include "tests/unit/record/folder.h"

static struct error e;
static struct settings settings;
static char copy[FOLDER_MAX];
static int updating; /* --update */

/* --- folders and files ------------------------------------------------------------------------------------
 */

/* Calls `check` with every file that matches below tests/kept; at least one must. */
static int each_file(const char *pattern, void (*check)(const char *path))
{
	char whole[PATH_MAX + 64];
	const char *source = getenv("BANDTALLY_SOURCE");
	glob_t found;
	snprintf(whole, sizeof whole, "%s/tests/kept/%s", source ? source : ".", pattern);
	if (glob(whole, GLOB_ERR, NULL, &found) != 0)
		fail_msg("nothing matches %s", whole);
	int n = (int)found.gl_pathc;
	for (int i = 0; i < n; i++)
		check(found.gl_pathv[i]);
	globfree(&found);
	return n;
}

static void folder_of(const char *path, int up, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s", path);
	while (up--)
		*strrchr(out, '/') = 0;
}

static char *whole_file(const char *folder, const char *name)
{
	static char text[65536];
	char path[PATH_MAX + 64];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *f = fopen(path, "re");
	if (!f)
		fail_msg("cannot read %s", path);
	size_t n = fread(text, 1, sizeof text - 1, f);
	assert_true(feof(f));
	fclose(f);
	text[n] = 0;
	return text;
}

/* What git keeps has its own modes; a key is its owner's. */
static void copy_kept(const char *kept)
{
	char path[FOLDER_MAX + 32];
	folder_make(copy);
	folder_copy(kept, copy);
	snprintf(path, sizeof path, "%s/station.key", copy);
	assert_int_equal(chmod(path, 0600), 0);
}

static void in_copy(const char *name, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s/%s", copy, name);
}

static void drop_copy(void)
{
	folder_remove(copy);
	copy[0] = 0;
}

static int teardown(void **state) /* after a failure there is one left */
{
	(void)state;
	if (copy[0])
		drop_copy();
	return 0;
}

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
	folder_of(file, 1, kept);
	copy_kept(kept);
	if (record_open(&r, copy, &e) < 0 || record_verify(r, &events, &chain, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	chain_hex(&chain, hex);
	snprintf(said, sizeof said, "%" PRId64 " %s\n", events, hex);
	assert_string_equal(said, whole_file(kept, "chain.txt"));
	record_close(r);
	drop_copy();
}

static void each_record_loads_and_its_chain_is_the_one_that_was_noted(void **state)
{
	(void)state;
	each_file("format-*/*/record.db", loads_and_verifies);
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
	folder_of(file, 1, kept);
	copy_kept(kept);
	assert_int_equal(record_open(&r, copy, &e), 0);
	assert_int_equal(record_each(r, 0, note_key, &all, &e), 0);
	assert_int_equal(record_each_key(r, note_key, &found, &e), 0);
	assert_int_equal(found.count, all.count);
	assert_int_equal(found.sum, all.sum);
	keys_in_all += all.count;
	record_close(r);
	drop_copy();
}

static void each_key_stands_beside_a_start(void **state)
{
	(void)state;
	keys_in_all = 0;
	each_file("format-*/*/record.db", finds_its_keys);
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
	folder_of(file, 1, kept);
	copy_kept(kept);
	in_copy(RECORD_FILE, path);
	struct station *st = new_station(copy);
	assert_int_equal(record_open(&r, copy, &e), 0);
	assert_int_equal(record_load(r, st, &e), 0);
	drop_station(st);
	assert_int_equal(record_append(r, &bad, 1, &e), -EINVAL);
	record_close(r);
	assert_int_equal(schema_of(path), schema);
	assert_int_equal(record_open(&r, copy, &e), 0);
	assert_int_equal(record_append(r, &stopped, 1, &e), 0);
	record_close(r);
	assert_int_equal(schema_of(path), RECORD_SCHEMA);
	assert_int_equal(record_open_still(&r, path, &e), 0);
	assert_int_equal(verified(r), 0);
	assert_int_equal(record_each(r, 0, is_last_of_today, &last, &e), 0);
	assert_true(last);
	record_close(r);
	drop_copy();
}

static void each_record_goes_on_in_the_format_of_today(void **state)
{
	(void)state;
	each_file("format-*/*/record.db", goes_on);
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
	const char *then = whole_file(kept, "state.txt");
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

static struct record *kept_record(const char *kept)
{
	char path[PATH_MAX];
	struct record *r;
	copy_kept(kept);
	in_copy(RECORD_FILE, path);
	if (record_open_copy(&r, path, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	return r;
}

static void has_its_state(const char *file)
{
	char kept[PATH_MAX];
	folder_of(file, 1, kept);
	struct record *r = kept_record(kept);
	struct station *loaded = new_station(copy);
	struct following f = {.st = new_station(copy)};
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
	drop_copy();
}

/* Nothing is decided here: what today's rules would refuse is applied all the same. */
static void each_event_applies_and_gives_the_state_that_was_noted(void **state)
{
	(void)state;
	each_file("format-*/*/record.db", has_its_state);
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
	folder_of(file, 1, kept);
	struct record *r = kept_record(kept);
	assert_int_equal(record_each(r, 0, is_in_the_zone, &n, &e), 0);
	assert_true(n > 0);
	record_close(r);
	drop_copy();
}

/* They did not say where they were: whoever read them read them in the zone of this computer. */
static void times_of_the_first_format_are_those_of_this_zone(void **state)
{
	(void)state;
	setenv("TZ", "UTC-3", 1);
	tzset();
	each_file("format-1/*/record.db", is_told_in_this_zone);
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
	folder_of(file, 1, kept);
	struct record *r = kept_record(kept);
	assert_int_equal(record_each(r, 0, note_kind, NULL, &e), 0);
	record_close(r);
	drop_copy();
}

static void has_its_kinds(const char *file)
{
	char format[PATH_MAX], pattern[PATH_MAX], *save = NULL;
	int named = 0, kept = 0;
	folder_of(file, 1, format);
	memset(kinds, 0, sizeof kinds);
	snprintf(pattern, sizeof pattern, "%s/*/record.db", strrchr(format, '/') + 1);
	each_file(pattern, note_kinds);
	for (char *name = strtok_r(whole_file(format, "kinds.txt"), "\n", &save); name;
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
	each_file("format-*/kinds.txt", has_its_kinds);
}

/* --- slips ------------------------------------------------------------------------------------------------
 */

/* What may differ: it says when the document was made. */
static const char *const of_its_making[] = {
    "time",   /* of writing */
    "jws",    /* checked by itself */
    "record", /* in words what the summary names; of earlier versions it was not printed */
};

/* No paper is made while a tourniquet is on, so no minutes of it go on. */
static void blank(json_t *document)
{
	for (size_t k = 0; k < sizeof of_its_making / sizeof *of_its_making; k++)
		if (strcmp(of_its_making[k], "record") == 0)
			json_object_del(document, "record");
		else if (json_object_get(document, of_its_making[k]))
			json_object_set_new(document, of_its_making[k], json_string("(as it was then)"));
	json_object_del(document, "version"); /* the first said none */
}

static void must_be_same(json_t *then, json_t *now, const char *file)
{
	const char *key;
	json_t *value;
	_cleanup_(json_drop) json_t *both = json_deep_copy(now);
	json_object_update_missing(both, then);
	json_object_foreach(both, key, value)
	{
		const json_t *a = json_object_get(then, key), *b = json_object_get(now, key);
		if (a && b && json_equal(a, b))
			continue;
		char *was = a ? json_dumps(a, JSON_SORT_KEYS | JSON_ENCODE_ANY) : NULL;
		char *is = b ? json_dumps(b, JSON_SORT_KEYS | JSON_ENCODE_ANY) : NULL;
		fail_msg("%s: '%s' was %s, is now %s", file, key, was ? was : "absent", is ? is : "absent");
	}
}

static int check_by(const char *public_file, const char *jws, json_t **payload)
{
	struct keys keys;
	return keys_read(&keys, public_file, &e) < 0 ? e.code : keys_check(&keys, jws, payload, NULL, &e);
}

/* The summary on the paper names the slip and the event up to which it was made. Its number is returned. */
static int64_t check_summary(const char *kept, const json_t *document)
{
	char key[PATH_MAX + 32], wrong[4096];
	static const char *const same[][2] = {{"slip", "slip"}, {"copy", "copy"}, {"case", "case_number"}};
	_cleanup_(json_drop) json_t *payload = NULL;
	json_t *none = NULL;
	const char *jws = json_text(document, "jws");
	snprintf(key, sizeof key, "%s/station.pub.json", kept);
	if (check_by(key, jws, &payload) != 1)
		fail_msg("%s: the signature of slip %" PRId64 " does not hold", kept,
		         json_number(document, "slip", 0));
	for (size_t i = 0; i < sizeof same / sizeof *same; i++)
		assert_int_equal(json_number(payload, same[i][0], -1), json_number(document, same[i][1], -2));
	snprintf(wrong, sizeof wrong, "%s", jws);
	char *letter = strrchr(wrong, '.') + 9;
	*letter = *letter == 'A' ? 'B' : 'A';
	assert_int_not_equal(check_by(key, wrong, &none), 1);
	return json_number(payload, "seq", 0);
}

static void chain_is(const char *kept, const json_t *document, const struct chain *last)
{
	char key[PATH_MAX + 32], hex[2 * CHAIN_BYTES + 1];
	_cleanup_(json_drop) json_t *payload = NULL;
	snprintf(key, sizeof key, "%s/station.pub.json", kept);
	assert_int_equal(check_by(key, json_text(document, "jws"), &payload), 1);
	chain_hex(last, hex);
	assert_string_equal(hex, json_text(payload, "chain"));
}

/* --- words that changed since ------------------------------------------------------------------------------
 * A further copy is in the words of the version that writes it (rule 25). Where that says otherwise what was kept,
 * NAME.now.json stands beside NAME.json: the same document in today's words.
 */

static int is_of_now(const char *file)
{
	return strstr(file, ".now.json") != NULL;
}

static void now_file(const char *file, char out[PATH_MAX + 16])
{
	snprintf(out, PATH_MAX + 16, "%.*s.now.json", (int)(strlen(file) - strlen(".json")), file);
}

/* Form 1 of a document (before "v" 2) had fields for what form 2 says in sentences. Everything that a reader looks for stands
 * there still: each time of day, each person, each item by what tells it apart, and how many went in and came back. */
static int of_form_1(const json_t *document)
{
	return json_number(document, "v", 0) == 1;
}

static void must_say(const char *all, const char *what, const char *file)
{
	if (*what && !strstr(all, what))
		fail_msg("%s: '%s' stood on it, and stands there no longer", file, what);
}

static int is_time(const char *at)
{
	return isdigit(at[0]) && isdigit(at[1]) && at[2] == ':' && isdigit(at[3]) && isdigit(at[4]) &&
	       !isdigit(at[5]) && at[5] != ':';
}

static void says_each_time(const json_t *then, const char *all, const char *file)
{
	_cleanup_(json_drop) json_t *told = json_deep_copy(then);
	json_object_del(told, "time");
	char *text = json_dumps(told, JSON_COMPACT);
	for (const char *at = text; *at && strlen(at) > 5; at++)
		if (is_time(at)) {
			char hm[6];
			snprintf(hm, sizeof hm, "%.5s", at);
			must_say(all, hm, file);
		}
	free(text);
}

static json_int_t sum(const json_t *document, const char *field)
{
	json_int_t n = 0;
	size_t i;
	json_t *item;
	json_array_foreach(json_object_get(document, "items"), i, item) n += json_number(item, field, 0);
	return n;
}

static void says_each(const json_t *then, const char *list, const char *field, const char *all,
                      const char *file)
{
	size_t i;
	json_t *x;
	json_array_foreach(json_object_get(then, list), i, x) must_say(all, json_text(x, field), file);
}

static void says_the_facts(json_t *then, json_t *now, const char *file)
{
	static const char *const same[] = {"kind", "site",    "paper",   "dpi",  "slip",        "copy",
	                                   "code", "station", "heading", "room", "case_number", "adds_to"};
	for (size_t i = 0; i < sizeof same / sizeof *same; i++)
		if (!json_equal(json_object_get(then, same[i]), json_object_get(now, same[i])) &&
		    (json_object_get(then, same[i]) || json_object_get(now, same[i])))
			fail_msg("%s: '%s' is another one", file, same[i]);
	if (json_object_get(now, "elsewhere"))
		return; /* an addendum repeats nothing, and names where it stands */
	char *all = json_dumps(now, JSON_COMPACT);
	assert_int_equal(sum(then, "in"), sum(now, "in"));
	assert_int_equal(sum(then, "out"), sum(now, "out"));
	says_each(then, "items", "identity", all, file);
	says_each(then, "items", "lot", all, file);
	says_each(then, "people", "name", all, file);
	says_each(then, "digits", "name", all, file);
	says_each_time(then, all, file);
	free(all);
}

static const char *figure(const char **at, size_t *length)
{
	const char *from = *at + strcspn(*at, "0123456789");
	*length = strspn(from, "0123456789");
	*at = from + *length;
	return from;
}

static int same_figures(const char *then, const char *now)
{
	size_t a, b;
	do {
		const char *x = figure(&then, &a), *y = figure(&now, &b);
		if (a != b || memcmp(x, y, a) != 0)
			return 0;
	} while (a);
	return 1;
}

/* A text of form 2 may be in other words, or in the language that its event always held: with the same figures, in their
 * order. A remark may stand beside it that did not. */
static void says_the_same(const json_t *then, const json_t *now, const char *file)
{
	const char *key;
	json_t *value;
	if (json_is_object(then) && json_is_object(now)) {
		json_object_foreach((json_t *)now, key,
		                    value) if (!json_object_get(then, key) && strcmp(key, "note") != 0)
		    fail_msg("%s: '%s' is new", file, key);
		json_object_foreach((json_t *)then, key, value)
		    says_the_same(value, json_object_get(now, key), file);
	} else if (json_is_array(then) && json_array_size(then) == json_array_size(now)) {
		for (size_t i = 0; i < json_array_size(then); i++)
			says_the_same(json_array_get(then, i), json_array_get(now, i), file);
	} else if (!json_is_string(then) || !json_is_string(now)) {
		if (!json_equal(then, now))
			fail_msg("%s: a number, or how much it says, is otherwise", file);
	} else if (!same_figures(json_string_value(then), json_string_value(now))) {
		fail_msg("%s: '%s' became '%s'", file, json_string_value(then), json_string_value(now));
	}
}

static void differs_in_words_alone(json_t *then, json_t *now, const char *file)
{
	if (of_form_1(then))
		says_the_facts(then, now, file);
	else
		says_the_same(then, now, file);
}

static void write_now(const char *path, json_t *then, json_t *now)
{
	if (json_equal(then, now)) {
		unlink(path);
		return;
	}
	assert_int_equal(json_dump_file(now, path, JSON_INDENT(1) | JSON_SORT_KEYS), 0);
}

static void must_be_told_as_kept(json_t *then, json_t *now, const char *file)
{
	char path[PATH_MAX + 16];
	now_file(file, path);
	if (updating)
		write_now(path, then, now);
	if (access(path, R_OK) != 0) {
		must_be_same(then, now, file);
		return;
	}
	_cleanup_(json_drop) json_t *noted = json_load_file(path, JSON_REJECT_DUPLICATES, NULL);
	assert_non_null(noted);
	must_be_same(noted, now, path);
	differs_in_words_alone(then, now, file);
}

static void is_told_again(const char *file)
{
	char kept[PATH_MAX], path[PATH_MAX];
	struct chain last;
	json_error_t why;
	if (is_of_now(file))
		return;
	folder_of(file, 2, kept);
	_cleanup_(json_drop) json_t *document = json_load_file(file, JSON_REJECT_DUPLICATES, &why);
	if (!document)
		fail_msg("%s: %s", file, why.text);
	int64_t seq = check_summary(kept, document);
	struct record *r = kept_record(kept);
	in_copy(RECORD_FILE, path); /* it is open, and needs its name no longer */
	assert_int_equal(unlink(path), 0);
	_cleanup_(json_drop) json_t *again = document_again(copy, r, seq, document, &last, &e);
	if (!again)
		fail_msg("%s: %s", file, e.text);
	chain_is(kept, document, &last);
	blank(document);
	blank(again);
	must_be_told_as_kept(document, again, file);
	record_close(r);
	drop_copy();
}

static void each_slip_is_told_again_as_it_was(void **state)
{
	(void)state;
	assert_true(each_file("format-*/*/slips/*.json", is_told_again) >= 48);
}

/* --- under other settings ---------------------------------------------------------------------------------- */

static void put_in_copy(const char *name, const char *text)
{
	char path[PATH_MAX];
	in_copy(name, path);
	FILE *f = fopen(path, "we");
	assert_non_null(f);
	assert_true(fputs(text, f) >= 0);
	assert_int_equal(fclose(f), 0);
}

/* All slips of the kept folder, as a further copy would say them. */
static json_t *further_copies(const char *kept)
{
	glob_t found;
	char pattern[PATH_MAX + 32];
	json_t *all = json_array();
	snprintf(pattern, sizeof pattern, "%s/slips/*-1.json", kept);
	if (glob(pattern, 0, NULL, &found) != 0)
		return all;
	for (size_t i = 0; i < found.gl_pathc; i++) {
		_cleanup_(json_drop) json_t *then = json_load_file(found.gl_pathv[i], 0, NULL);
		json_t *copy_2 = further_copy(then, &e);
		if (!copy_2)
			fail_msg("%s: %s", found.gl_pathv[i], e.text);
		blank(copy_2);
		json_object_del(copy_2, "paper"); /* of the printer of today */
		json_object_del(copy_2, "dpi");
		json_array_append_new(all, copy_2);
	}
	globfree(&found);
	return all;
}

static void says_the_same_under_other_settings(const char *file)
{
	char kept[PATH_MAX];
	folder_of(file, 1, kept);
	copy_kept(kept);
	if (station_open(copy, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	_cleanup_(json_drop) json_t *before = further_copies(kept);
	station_close();
	put_in_copy("policy.ini",
	            "[sign-out points]\n1 = The relatives were telephoned.\n[search]\n1 = look\n");
	put_in_copy("station.ini", "[site]\nletters = BC\nname = Another Unit\n[room 1]\nname = Bay 7\n");
	if (station_open(copy, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	_cleanup_(json_drop) json_t *after = further_copies(kept);
	station_close();
	for (size_t i = 0; i < json_array_size(before); i++)
		must_be_same(json_array_get(before, i), json_array_get(after, i), kept);
	drop_copy();
}

/* What a format did not hold is taken from the start that first recorded it, and no later one changes it. */
static void each_slip_says_the_same_under_other_settings(void **state)
{
	(void)state;
	each_file("format-*/*/record.db", says_the_same_under_other_settings);
}

static void is_drawn(const char *file)
{
	char path[PATH_MAX + 16];
	_cleanup_(buf_free) struct buf pdf = {0};
	int pages = 0;
	if (is_of_now(file))
		return;
	now_file(file, path);
	/* A document of an earlier form is told again from its record before it is printed again. */
	_cleanup_(json_drop) json_t *document =
	    json_load_file(access(path, R_OK) == 0 ? path : file, JSON_REJECT_DUPLICATES, NULL);
	json_object_set_new(document, "time", json_string("2026-11-25T10:43:07+00:00"));
	json_object_set_new(document, "jws", json_string("a.b.c"));
	if (paper_pdf(NULL, document, &pdf, &pages, &e) < 0)
		fail_msg("%s: %s", file, e.text);
	assert_true(pages >= 1 && pdf.size > 5 && memcmp(pdf.data, "%PDF-", 5) == 0);
}

static void each_slip_can_still_be_printed(void **state)
{
	(void)state;
	if (fonts_open(&e) < 0)
		fail_msg("%s", e.text);
	each_file("format-*/*/slips/*.json", is_drawn);
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
	folder_of(file, 1, kept);
	copy_kept(kept);
	in_copy(RECORD_FILE, path);
	change_one_byte(path);
	int n = record_open_copy(&r, path, &e);
	if (n == 0)
		n = record_verify(r, &events, &chain, &e);
	assert_int_equal(n, -EUCLEAN);
	record_close(r);
	drop_copy();
}

static void one_byte_that_was_changed_is_noticed(void **state)
{
	(void)state;
	each_file("format-*/*/record.db", is_noticed_when_changed);
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
	folder_of(file, 1, kept);
	struct record *r = kept_record(kept);
	struct following f = {.st = new_station(copy)};
	assert_int_equal(record_each(r, 0, last_opening, &f.without, &e), 0);
	assert_int_equal(record_each(r, 0, follow, &f, &e), 0);
	assert_false(same_state(f.st, whole_file(kept, "state.txt")));
	drop_station(f.st);
	f = (struct following){.st = new_station(copy)};
	assert_int_equal(record_each(r, 0, follow, &f, &e), 0);
	expected = whole_file(kept, "state.txt");
	assert_true(same_state(f.st, expected));
	char *digit = strstr(expected, "last case ") + strlen("last case ");
	*digit = *digit == '9' ? '8' : '9';
	assert_false(same_state(f.st, expected));
	drop_station(f.st);
	record_close(r);
	drop_copy();
}

static void an_event_that_is_left_out_and_another_expectation_are_noticed(void **state)
{
	(void)state;
	each_file("format-*/*/record.db", is_noticed_when_left_out);
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
	struct record *r = kept_record(to_note);
	struct station *st = new_station(copy);
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
	drop_copy();
}

int main(int argc, char **argv)
{
	const struct CMUnitTest notes[] = {cmocka_unit_test_teardown(a_folder_is_noted, teardown)};
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_teardown(each_record_loads_and_its_chain_is_the_one_that_was_noted, teardown),
	    cmocka_unit_test_teardown(each_key_stands_beside_a_start, teardown),
	    cmocka_unit_test_teardown(each_record_goes_on_in_the_format_of_today, teardown),
	    cmocka_unit_test_teardown(each_event_applies_and_gives_the_state_that_was_noted, teardown),
	    cmocka_unit_test_teardown(times_of_the_first_format_are_those_of_this_zone, teardown),
	    cmocka_unit_test_teardown(every_kind_that_the_format_had_is_kept, teardown),
	    cmocka_unit_test_teardown(each_slip_is_told_again_as_it_was, teardown),
	    cmocka_unit_test_teardown(each_slip_says_the_same_under_other_settings, teardown),
	    cmocka_unit_test_teardown(each_slip_can_still_be_printed, teardown),
	    cmocka_unit_test_teardown(one_byte_that_was_changed_is_noticed, teardown),
	    cmocka_unit_test_teardown(an_event_that_is_left_out_and_another_expectation_are_noticed,
	                              teardown),
	};
	to_note = argc == 3 && strcmp(argv[1], "--note") == 0 ? argv[2] : NULL;
	updating = argc == 2 && strcmp(argv[1], "--update") == 0;
	setenv("TZ", "UTC", 1); /* where the records were made */
	if (access("/dev/shm", W_OK) == 0)
		setenv("TMPDIR", "/dev/shm", 0); /* no disk is waited for: durability is tested elsewhere */
	return to_note ? cmocka_run_group_tests(notes, NULL, NULL)
	               : cmocka_run_group_tests(tests, NULL, NULL);
}
