/* Languages: catalogues as msgfmt writes them, and such as it would not; plural forms; directions. */
#include <errno.h>
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/buf.h"
#include "base/file.h"
#include "words/languages.h"
#include "words/plural.h"

#define HEAD                                                                                                 \
	"Content-Type: text/plain; charset=UTF-8\nPlural-Forms: nplurals=3; plural=n==1 ? 0 : n==2 ? 1 : "   \
	"2;\nX-Direction: rtl\nX-Read-By: nobody\n"

/* --- catalogues ----------------------------------------------------------------------------------- */

struct pair {
	const char *original, *translation;
	size_t size; /* of the translation; 0: strlen() */
};

static int by_original(const void *a, const void *b)
{
	return strcmp(((const struct pair *)a)->original, ((const struct pair *)b)->original);
}

static void put_number(struct buf *b, size_t at, uint32_t n)
{
	memcpy(b->data + at, &n, sizeof n);
}

/* GNU gettext manual, 'The Format of GNU MO Files', without its table of hashes. */
static void build(struct buf *b, struct pair *pairs, uint32_t n)
{
	const uint32_t head[7] = {0x950412de, 0, n, 28, 28 + 8 * n, 0, 0};
	qsort(pairs, n, sizeof *pairs, by_original);
	buf_add(b, head, sizeof head);
	for (uint32_t i = 0; i < 4 * n; i++)
		buf_add(b, "\0\0\0\0", 4);
	for (uint32_t i = 0; i < 2 * n; i++) {
		const struct pair *p = &pairs[i % n];
		const char *text = i < n ? p->original : p->translation;
		size_t size = i >= n && p->size ? p->size : strlen(text);
		put_number(b, 28 + 8 * (size_t)i, (uint32_t)size);
		put_number(b, 32 + 8 * (size_t)i, (uint32_t)b->size);
		buf_add(b, text, size);
		buf_add(b, "", 1);
	}
}

static char path[PATH_MAX];

static int read_bytes(const struct buf *b, struct language **l, language_refused *refused, void *context,
                      struct error *e)
{
	assert_int_equal(file_replace_soon(path, 0600, b->data, b->size), 0);
	return language_read(path, "xx", l, refused, context, e);
}

static void note(void *context, const char *key, const char *why)
{
	snprintf(context, 300, "%s: %s", key, why);
}

/* A catalogue of the head and one sentence. */
static struct language *with(enum saying s, const char *translation, size_t size, char refused[300])
{
	char key[600];
	struct language *l;
	struct error e = {0};
	struct buf b = {0};
	snprintf(key, sizeof key, "%s\4%s", saying_key(s), saying_english(s, 0));
	struct pair pairs[] = {{"", HEAD, 0}, {key, translation, size}};
	build(&b, pairs, 2);
	refused[0] = 0;
	if (read_bytes(&b, &l, note, refused, &e) < 0)
		fail_msg("%s", e.text);
	buf_free(&b);
	return l;
}

static void says(const struct language *l, const struct say *say, const char *sentence)
{
	char text[401];
	say_sentence_in(l, say, text, sizeof text);
	assert_string_equal(text, sentence);
}

static void a_sentence_is_said_in_its_language_and_others_in_english(void **state)
{
	char why[300];
	struct language *l = with(SAY_NO_FORCEPS_IS_ON, "xyz", 0, why);
	(void)state;
	says(l, SAY(NO_FORCEPS_IS_ON), "Xyz");
	says(l, SAY(YES_STOPS_NO_CLOCK), "YES does not stop the clock. If it is off, scan OFF.");
	says(NULL, SAY(NO_FORCEPS_IS_ON), "No forceps is on a tourniquet now.");
	assert_string_equal(why, "");
	assert_int_equal(language_lacks(l), SAYING_KINDS - 2);
	assert_string_equal(language_code(l), "xx");
	assert_string_equal(language_code(NULL), "en");
	assert_string_equal(language_read_by(l), "nobody");
	language_free(l);
}

static void a_value_from_left_to_right_keeps_its_direction(void **state)
{
	char why[300];
	struct language *l = with(SAY_CASE_IS_OPEN, "\xd7\x90 {case} \xd7\x91 {room}", 0, why);
	(void)state;
	assert_true(language_is_rtl(l));
	says(l, SAY(CASE_IS_OPEN, .case_no = 41, .room = "Bay 7"),
	     "\xd7\x90 " ISOLATE_BEGIN "41" ISOLATE_END " \xd7\x91 " ISOLATE_BEGIN "Bay 7" ISOLATE_END);
	says(NULL, SAY(CASE_IS_OPEN, .case_no = 41, .room = "\xd7\x90"),
	     "Case 41 is open in " ISOLATE_BEGIN "\xd7\x90" ISOLATE_END
	     ": end it, or scan SUSPEND or CANCEL.");
	language_free(l);
}

/* Card VISITOR 2 is somebody whom records call "visitor 2"; a badge that shows the same word is a name like any other. */
static void who_has_no_badge_is_called_in_the_language(void **state)
{
	char why[300];
	struct language *l = with(SAY_PERSON_VISITOR_2, "xyz", 0, why);
	(void)state;
	says(l, SAY(R_PERSON, .person = "visitor 2"), "\xe2\x81\xa8xyz\xe2\x81\xa9.");
	says(l, SAY(R_PERSON, .person = "visitor 20"), "\xe2\x81\xa8visitor 20\xe2\x81\xa9.");
	says(NULL, SAY(R_PERSON, .person = "visitor 2"), "Visitor 2.");
	assert_string_equal(person_text_in(l, "visitor 2"), "xyz");
	assert_string_equal(person_text_in(l, "SCRUB-1"), "SCRUB-1");
	language_free(l);
}

/* What a sheet calls a thing that the catalogue does not know is English in the record; whoever reads it has a language. */
static void a_thing_that_the_catalogue_does_not_know_is_called_in_the_language(void **state)
{
	char why[300];
	struct language *l = with(SAY_FORCEPS_UNREADABLE, "xyz", 0, why);
	(void)state;
	says(l, SAY(R_STRUCK, .item = "artery forceps, mark unreadable"),
	     "Struck as a misread: \xe2\x81\xa8xyz\xe2\x81\xa9. The record keeps it.");
	assert_string_equal(thing_text_in(l, "artery forceps, mark unreadable"), "xyz");
	assert_string_equal(thing_text_in(l, "artery forceps, curved"), "artery forceps, curved");
	assert_string_equal(thing_text_in(NULL, "artery forceps, mark unreadable"),
	                    "artery forceps, mark unreadable");
	language_free(l);
}

static void an_isolate_is_never_left_open_where_a_sentence_is_cut(void **state)
{
	char why[300], text[16];
	struct language *l = with(SAY_CASE_IS_OPEN, "\xd7\x90 {case} \xd7\x91 {room}", 0, why);
	(void)state;
	for (size_t size = 1; size < sizeof text; size++) {
		say_sentence_in(l, SAY(CASE_IS_OPEN, .case_no = 41, .room = "Bay 7"), text, size);
		assert_true(!strstr(text, ISOLATE_BEGIN) == !strstr(text, ISOLATE_END));
	}
	language_free(l);
}

static void each_number_has_its_form(void **state)
{
	static const char forms[] = "one of it\0two of it\0{n} of it";
	char why[300];
	struct language *l = with(SAY_THROWN_AWAY, forms, sizeof forms - 1, why);
	(void)state;
	says(l, SAY(THROWN_AWAY, .n = 1), "One of it");
	says(l, SAY(THROWN_AWAY, .n = 2), "Two of it");
	says(l, SAY(THROWN_AWAY, .n = 5), ISOLATE_BEGIN "5" ISOLATE_END " of it");
	assert_string_equal(language_form_at(l, SAY_THROWN_AWAY, 1), "two of it");
	assert_null(language_form_at(l, SAY_THROWN_AWAY, 3));
	assert_string_equal(language_form_at(NULL, SAY_THROWN_AWAY, 0), "{n} stored scan was thrown away");
	assert_null(language_form_at(NULL, SAY_THROWN_AWAY, 2));
	assert_null(language_form_at(NULL, SAY_NO_FORCEPS_IS_ON, 1));
	language_free(l);
}

static void is_refused(enum saying s, const char *translation, size_t size, const char *because)
{
	char why[300];
	struct language *l = with(s, translation, size, why);
	if (!strstr(why, because) || strncmp(why, saying_key(s), strlen(saying_key(s))) != 0)
		fail_msg("'%s' is refused for '%s', not for '%s'", translation, why, because);
	assert_string_equal(language_form(l, s, 2), saying_english(s, 1));
	language_free(l);
}

static void a_translation_with_other_values_is_refused_and_english_is_said(void **state)
{
	(void)state;
	is_refused(SAY_CASE_IS_OPEN, "only {case}", 0, "lacks a value");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} {digit}", 0, "what the English does not");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} {n}", 0, "what the English does not");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} {rooms}", 0, "no value at all");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} {", 0, "no value at all");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} \x01", 0, "control character");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} \xff", 0, "no letter of UTF-8");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room} \xe2\x80\xae", 0, "no letter of UTF-8");
	is_refused(SAY_CASE_IS_OPEN, "", 0, "empty");
	is_refused(SAY_CASE_IS_OPEN, "{case} {room}\0{case} {room}", 27, "too many forms");
	is_refused(SAY_THROWN_AWAY, "one\0two", 7, "too few forms");
	is_refused(SAY_THROWN_AWAY, "one\0two\0{n} {case}", 18, "what the English does not");
}

static void a_translation_of_other_english_is_not_said(void **state)
{
	struct language *l;
	struct error e;
	struct buf b = {0};
	struct pair pairs[] = {{"", HEAD, 0},
	                       {"no-forceps-is-on\4No forceps was on a tourniquet.", "xyz", 0}};
	(void)state;
	build(&b, pairs, 2);
	assert_int_equal(read_bytes(&b, &l, NULL, NULL, &e), 0);
	says(l, SAY(NO_FORCEPS_IS_ON), "No forceps is on a tourniquet now.");
	language_free(l);
	buf_free(&b);
}

/* Each byte cut away, and each byte changed: it is refused or says something, and reads nothing that is not its own (the
 * sanitizers look on). */
static void a_damaged_catalogue_is_refused_or_said_in_english(void **state)
{
	struct language *l;
	struct error e;
	struct buf b = {0};
	char text[401];
	struct pair pairs[] = {{"", HEAD, 0},
	                       {"thrown-away\4{n} stored scan was thrown away", "one\0two\0{n}", 11}};
	(void)state;
	build(&b, pairs, 2);
	for (size_t size = 0; size < b.size; size++) {
		struct buf cut = {0};
		buf_add(&cut, b.data, size);
		buf_add(&cut, "", 0);
		if (size && read_bytes(&cut, &l, NULL, NULL, &e) == 0) {
			say_sentence_in(l, SAY(THROWN_AWAY, .n = 2), text, sizeof text);
			language_free(l);
		}
		buf_free(&cut);
	}
	for (size_t at = 0; at < b.size; at++) {
		b.data[at] = (char)(b.data[at] ^ 0x55);
		if (read_bytes(&b, &l, NULL, NULL, &e) == 0) {
			say_sentence_in(l, SAY(THROWN_AWAY, .n = 2), text, sizeof text);
			language_free(l);
		}
		b.data[at] = (char)(b.data[at] ^ 0x55);
	}
	assert_int_equal(read_bytes(&b, &l, NULL, NULL, &e), 0);
	says(l, SAY(THROWN_AWAY, .n = 2), "Two");
	language_free(l);
	b.data[0] = 0;
	assert_int_equal(read_bytes(&b, &l, NULL, NULL, &e), -EINVAL);
	assert_non_null(strstr(e.text, path));
	buf_free(&b);
}

static void a_language_is_found_by_its_name(void **state)
{
	struct languages all;
	struct error e = {0};
	char folder[] = "/tmp/words-XXXXXX", file[64];
	struct buf b = {0};
	struct pair pairs[] = {{"", HEAD, 0}};
	(void)state;
	assert_non_null(mkdtemp(folder));
	build(&b, pairs, 1);
	snprintf(file, sizeof file, "%s/xx.mo", folder);
	assert_int_equal(file_replace_soon(file, 0600, b.data, b.size), 0);
	assert_int_equal(languages_read(&all, folder, &e), 0);
	assert_int_equal(all.n, 1);
	assert_string_equal(language_code(languages_find(&all, "xx")), "xx");
	assert_null(languages_find(&all, "en"));
	assert_null(languages_find(&all, "yy"));
	setenv("BANDTALLY_WORDS", folder, 1);
	assert_true(language_is_installed("en") && language_is_installed("xx"));
	assert_false(language_is_installed("yy") || language_is_installed("../xx") ||
	             language_is_installed(""));
	unsetenv("BANDTALLY_WORDS");
	languages_free(&all);
	assert_int_equal(file_replace_soon(file, 0600, "x", 1), 0);
	assert_int_equal(languages_read(&all, folder, &e), -EINVAL);
	assert_int_equal(all.n, 0);
	unlink(file);
	rmdir(folder);
	assert_int_equal(languages_read(&all, folder, &e), -ENOENT);
	buf_free(&b);
}

/* --- plural forms --------------------------------------------------------------------------------- */

static void forms(const char *field, const char *wanted)
{
	struct plural p;
	if (plural_read(&p, field) < 0)
		fail_msg("'%s' is not read", field);
	for (int n = 0; wanted[n]; n++)
		if (plural_of(&p, n) != wanted[n] - '0')
			fail_msg("%s: of %d is form %d, not %c", field, n, plural_of(&p, n), wanted[n]);
}

/* The fields stand in the GNU gettext manual, 'Additional functions for plural forms'; the forms of the numbers from 0 were
 * written by hand from what it says of each family. */
static void each_family_of_languages_has_its_forms(void **state)
{
	(void)state;
	forms("nplurals=1; plural=0;", "00000");
	forms("nplurals=2; plural=n != 1;", "101111");
	forms("nplurals=2; plural=n>1;", "001111");
	forms("nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n != 0 ? 1 : 2;", "2011111111111111111110");
	forms("nplurals=3; plural=n==1 ? 0 : n==2 ? 1 : 2;", "201222");
	forms("nplurals=3; plural=n==1 ? 0 : (n==0 || (n%100 > 0 && n%100 < 20)) ? 1 : 2;",
	      "101111111111111111112");
	forms("nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? "
	      "1 : 2;",
	      "2011122222222222222220111222");
	forms("nplurals=4; plural=n%100==1 ? 0 : n%100==2 ? 1 : n%100==3 || n%100==4 ? 2 : 3;", "301223");
	forms("nplurals=6; plural=n==0 ? 0 : n==1 ? 1 : n==2 ? 2 : n%100>=3 && n%100<=10 ? 3 : n%100>=11 ? 4 "
	      ": 5;",
	      "01233333333444");
	forms("nplurals=2; plural=!(n - 1) + 2 * 3 / 6 - 1;", "010000");
}

static void what_is_no_expression_is_refused(void **state)
{
	static const char *const wrong[] = {"",
	                                    "nplurals=2;",
	                                    "nplurals=0; plural=0;",
	                                    "nplurals=7; plural=0;",
	                                    "nplurals=2; plural=;",
	                                    "nplurals=2; plural=n ? 1;",
	                                    "nplurals=2; plural=(n;",
	                                    "nplurals=2; plural=n n;",
	                                    "nplurals=2; plural=m != 1;",
	                                    "nplurals=2; plural=n % 0;",
	                                    "nplurals=2; plural=system(n);"};
	char deep[PLURAL_TEXT_MAX + 40] = "nplurals=2; plural=";
	struct plural p;
	(void)state;
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
		if (plural_read(&p, wrong[i]) != -EINVAL)
			fail_msg("'%s' is taken", wrong[i]);
	memset(deep + 19, '(', 300);
	assert_int_equal(plural_read(&p, deep), -EINVAL);
	memset(deep + 19, '!', 300);
	assert_int_equal(plural_read(&p, deep), -EINVAL);
	assert_int_equal(plural_read(&p, "nplurals=2; plural=n;"), 0);
	assert_int_equal(plural_of(&p, 7), 0); /* out of range */
	assert_int_equal(plural_of(&p, -1), 1);
}

static void the_number_furthest_below_zero_has_a_form(void **state)
{
	struct plural p;
	(void)state;
	assert_int_equal(plural_read(&p, "nplurals=2; plural=n%2;"), 0);
	assert_int_equal(plural_of(&p, INT64_MIN), 0);
	assert_int_equal(plural_of(&p, INT64_MIN + 1), 1);
}

/* --- lists ---------------------------------------------------------------------------------------- */

static void a_list_ends_with_and(void **state)
{
	static const char *const digits[] = {"right thumb", "left thumb", "left index finger"};
	char text[SAID_LIST_MAX];
	(void)state;
	say_list(NULL, digits, 1, text, sizeof text);
	assert_string_equal(text, "right thumb");
	say_list(NULL, digits, 2, text, sizeof text);
	assert_string_equal(text, "right thumb and left thumb");
	say_list(NULL, digits, 3, text, sizeof text);
	assert_string_equal(text, "right thumb, left thumb and left index finger");
	say_list(NULL, digits, 0, text, sizeof text);
	assert_string_equal(text, "");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_sentence_is_said_in_its_language_and_others_in_english),
	    cmocka_unit_test(a_value_from_left_to_right_keeps_its_direction),
	    cmocka_unit_test(who_has_no_badge_is_called_in_the_language),
	    cmocka_unit_test(a_thing_that_the_catalogue_does_not_know_is_called_in_the_language),
	    cmocka_unit_test(an_isolate_is_never_left_open_where_a_sentence_is_cut),
	    cmocka_unit_test(each_number_has_its_form),
	    cmocka_unit_test(a_translation_with_other_values_is_refused_and_english_is_said),
	    cmocka_unit_test(a_translation_of_other_english_is_not_said),
	    cmocka_unit_test(a_damaged_catalogue_is_refused_or_said_in_english),
	    cmocka_unit_test(a_language_is_found_by_its_name),
	    cmocka_unit_test(each_family_of_languages_has_its_forms),
	    cmocka_unit_test(what_is_no_expression_is_refused),
	    cmocka_unit_test(the_number_furthest_below_zero_has_a_form),
	    cmocka_unit_test(a_list_ends_with_and),
	};
	char folder[] = "/tmp/language-XXXXXX";
	if (!mkdtemp(folder))
		return 1;
	snprintf(path, sizeof path, "%s/xx.mo", folder);
	int failed = cmocka_run_group_tests(tests, NULL, NULL);
	unlink(path);
	rmdir(folder);
	return failed;
}
