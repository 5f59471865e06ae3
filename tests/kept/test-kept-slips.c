/* Slips that earlier versions wrote: each is told as on the day it was kept, under other settings too, and can be printed. */
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

#include "labels/canvas.h"
#include "labels/paper.h"
#include "record/keys.h"
#include "tests/kept/again.h"
#include "tests/kept/kept.h"
#include <cmocka.h>
#include <glob.h>
#include <sqlite3.h>

static struct error e;
static int updating; /* --update */

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
		json_object_foreach((json_t *)now, key, value) if (!json_object_get(then, key) &&
		                                                   strcmp(key, "note") != 0 &&
		                                                   strcmp(key, "shout_note") != 0)
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
	kept_folder(file, 2, kept);
	_cleanup_(json_drop) json_t *document = json_load_file(file, JSON_REJECT_DUPLICATES, &why);
	if (!document)
		fail_msg("%s: %s", file, why.text);
	int64_t seq = check_summary(kept, document);
	struct record *r = kept_record_open(kept);
	kept_copy_path(RECORD_FILE, path); /* it is open, and needs its name no longer */
	assert_int_equal(unlink(path), 0);
	_cleanup_(json_drop) json_t *again = document_again(kept_copy, r, seq, document, &last, &e);
	if (!again)
		fail_msg("%s: %s", file, e.text);
	chain_is(kept, document, &last);
	blank(document);
	blank(again);
	must_be_told_as_kept(document, again, file);
	record_close(r);
	kept_copy_drop();
}

static void each_slip_is_told_again_as_it_was(void **state)
{
	(void)state;
	assert_true(kept_each("format-*/*/slips/*.json", is_told_again) >= 48);
}

/* --- under other settings ---------------------------------------------------------------------------------- */

static void put_in_copy(const char *name, const char *text)
{
	char path[PATH_MAX];
	kept_copy_path(name, path);
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
	kept_folder(file, 1, kept);
	kept_copy_make(kept);
	if (station_open(kept_copy, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	_cleanup_(json_drop) json_t *before = further_copies(kept);
	station_close();
	put_in_copy("policy.ini",
	            "[sign-out points]\n1 = The relatives were telephoned.\n[search]\n1 = look\n");
	put_in_copy("station.ini", "[site]\nletters = BC\nname = Another Unit\n[room 1]\nname = Bay 7\n");
	if (station_open(kept_copy, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	_cleanup_(json_drop) json_t *after = further_copies(kept);
	station_close();
	for (size_t i = 0; i < json_array_size(before); i++)
		must_be_same(json_array_get(before, i), json_array_get(after, i), kept);
	kept_copy_drop();
}

/* What a format did not hold is taken from the start that first recorded it, and no later one changes it. */
static void each_slip_says_the_same_under_other_settings(void **state)
{
	(void)state;
	kept_each("format-*/*/record.db", says_the_same_under_other_settings);
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
	kept_each("format-*/*/slips/*.json", is_drawn);
}

int main(int argc, char **argv)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_teardown(each_slip_is_told_again_as_it_was, kept_teardown),
	    cmocka_unit_test_teardown(each_slip_says_the_same_under_other_settings, kept_teardown),
	    cmocka_unit_test_teardown(each_slip_can_still_be_printed, kept_teardown),
	};
	updating = argc == 2 && strcmp(argv[1], "--update") == 0;
	kept_begin();
	return cmocka_run_group_tests(tests, NULL, NULL);
}
