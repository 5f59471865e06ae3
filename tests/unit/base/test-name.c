/* What a name may hold, and how one is told that an earlier version let in. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "base/name.h"

static void taken(const char *text)
{
	struct error e = {0};
	if (name_check("name", text, 56, &e) < 0)
		fail_msg("'%s': %s", text, e.text);
}

static void refused(const char *text, const char *sentence)
{
	struct error e = {0};
	if (name_check("name", text, 56, &e) != -EINVAL || strcmp(e.text, sentence) != 0)
		fail_msg("not '%s': %s", sentence, e.text);
}

static void told(const char *text, size_t most, const char *expected)
{
	json_t *o = name_told(text, most);
	assert_non_null(o);
	assert_string_equal(json_string_value(o), expected);
	json_decref(o);
}

static void a_name_is_letters_that_can_be_seen_of_any_language(void **state)
{
	(void)state;
	taken("finger tourniquet, green, M");
	taken("Salle d\xe2\x80\x99op\xc3\xa9ration 2");
	taken("\xd7\x97\xd7\x93\xd7\xa8 \xd7\xa0\xd7\x99\xd7\xaa\xd7\x95\xd7\x97 2");  /* Hebrew */
	taken("\xd9\x85\xdb\x8c\xe2\x80\x8c\xd8\xae\xd9\x88\xd8\xa7\xd9\x87\xd9\x85"); /* Persian, U+200C */
	taken(
	    "\xe0\xa4\x95\xe0\xa5\x8d\xe2\x80\x8d\xe0\xa4\xb7 \xe6\x89\x8b\xe8\xa1\x93\xe5\xae\xa4"); /* U+200D */
	taken("\xf0\x9f\x9f\xa2 green");
	taken("12345678901234567890123456789012345678901234567890123456");
}

static void what_cannot_be_seen_or_turns_the_text_is_refused_by_its_number(void **state)
{
	(void)state;
	refused("band \xe2\x80\xae live",
	        "name holds U+202E, which turns the direction of text, as its character 6: "
	        "leave it out");
	refused("Nurse A\xe2\x80\x8e",
	        "name holds U+200E, which turns the direction of text, as its character 8: leave it out");
	refused("\xe2\x81\xa7x",
	        "name holds U+2067, which turns the direction of text, as its character 1: leave it out");
	refused("a\nb", "name holds U+000A, a line break, as its character 2: leave it out");
	refused("\xc3\xa9\xe2\x80\xa9", "name holds U+2029, a line break, as its character 2: leave it out");
	refused("a\tb", "name holds U+0009, a control character, as its character 2: leave it out");
	refused("a\x1b[2J", "name holds U+001B, a control character, as its character 2: leave it out");
	refused("a\x7f", "name holds U+007F, a control character, as its character 2: leave it out");
	refused("a\xc2\x9b", "name holds U+009B, a control character, as its character 2: leave it out");
	refused("a\xef\xbb\xbf", "name holds U+FEFF, which cannot be seen, as its character 2: leave it out");
	refused("a\xe2\x80\x8b", "name holds U+200B, which cannot be seen, as its character 2: leave it out");
	refused("a\xf3\xa0\x81\x81",
	        "name holds U+E0041, which cannot be seen, as its character 2: leave it out");
	refused("a\xee\x80\x80",
	        "name holds U+E000, which stands for no letter, as its character 2: leave it out");
	refused("a\xf0\x9f\xbf\xbf",
	        "name holds U+1FFFF, which stands for no letter, as its character 2: leave it out");
}

static void a_name_is_utf_8_and_has_something_to_read_and_an_end(void **state)
{
	(void)state;
	static const char *const broken[] = {
	    "a\xe9t\xe9", "a\xc0\x80",         "a\xe0\x80\xaf", "a\xed\xa0\x80",
	    "a\xf0\x9f",  "a\xf4\x90\x80\x80", "a\x80",         "a\xf8\x88\x80\x80\x80"};
	for (size_t i = 0; i < sizeof broken / sizeof *broken; i++)
		refused(broken[i], "name is not UTF-8 at its character 2: write it as UTF-8");
	refused("", "name is empty: it must have 1 to 56 bytes: give one");
	refused(" \xc2\xa0\xe2\x80\x8d\xe3\x80\x80", "name is empty: it must have 1 to 56 bytes: give one");
	refused("123456789012345678901234567890123456789012345678901234567",
	        "name has 57 bytes: it must have 1 to 56 bytes: shorten it");
}

static void what_may_not_stand_there_is_told_as_a_mark_and_the_rest_as_it_is(void **state)
{
	(void)state;
	told("finger tourniquet", 56, "finger tourniquet");
	told("", 56, "");
	told("\xe2\x80\xae", 56, "\xef\xbf\xbd");
	told("band \xe2\x80\xae live\n", 56, "band \xef\xbf\xbd live\xef\xbf\xbd");
	told("a\xe9t\xe9 x", 56, "a\xef\xbf\xbdt\xef\xbf\xbd x");
}

static void a_text_is_cut_between_two_letters(void **state)
{
	(void)state;
	told("a\xc3\xa9\xf0\x9f\x9f\xa2", 7, "a\xc3\xa9\xf0\x9f\x9f\xa2");
	told("a\xc3\xa9\xf0\x9f\x9f\xa2", 6, "a\xc3\xa9");
	told("a\xc3\xa9\xf0\x9f\x9f\xa2", 2, "a");
	told("a\xc3", 56, "a"); /* cut before */
	told("a\xc1", 56, "a\xef\xbf\xbd");
}

static void each_text_of_a_document_is_told(void **state)
{
	(void)state;
	json_t *o = json_pack("{s:s,s:[s,{s:s,s:i}]}", "a", "x\n", "b", "y\xe2\x80\xae", "c", "z\t", "d", 7);
	json_t *expected = json_pack("{s:s,s:[s,{s:s,s:i}]}", "a", "x\xef\xbf\xbd", "b", "y\xef\xbf\xbd", "c",
	                             "z\xef\xbf\xbd", "d", 7);
	name_tell_all(o);
	assert_true(json_equal(o, expected));
	json_decref(o);
	json_decref(expected);
}

static void what_a_device_says_is_mended_in_its_place(void **state)
{
	char text[] = "\x1b[2J \xc3\xa9 \xe2\x80\xae live\nbandtallyd: cut \xc3";
	(void)state;
	name_mend(text);
	assert_string_equal(text, "?[2J \xc3\xa9 ? live?bandtallyd: cut ?");
}

static void is_told_as(const char *text, const char *as)
{
	json_t *o = name_told(text, strlen(text));
	assert_string_equal(json_string_value(o), as);
	json_decref(o);
}

#define ISOLATE "\xe2\x81\xa8"
#define POP "\xe2\x81\xa9"
#define INSTEAD "\xef\xbf\xbd"

static void a_direction_that_ends_where_it_began_is_told_and_no_other(void **state)
{
	(void)state;
	is_told_as("a " ISOLATE "b" POP " c", "a " ISOLATE "b" POP " c");
	is_told_as("a " ISOLATE "b", "a " INSTEAD "b");
	is_told_as("a" POP ISOLATE "b", "a" INSTEAD INSTEAD "b");
	is_told_as("a \xe2\x80\xae" ISOLATE "b" POP, "a " INSTEAD ISOLATE "b" POP);
	assert_int_equal(name_check("name", ISOLATE "b" POP, 80, NULL), -EINVAL);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_direction_that_ends_where_it_began_is_told_and_no_other),
	    cmocka_unit_test(a_name_is_letters_that_can_be_seen_of_any_language),
	    cmocka_unit_test(what_cannot_be_seen_or_turns_the_text_is_refused_by_its_number),
	    cmocka_unit_test(a_name_is_utf_8_and_has_something_to_read_and_an_end),
	    cmocka_unit_test(what_may_not_stand_there_is_told_as_a_mark_and_the_rest_as_it_is),
	    cmocka_unit_test(a_text_is_cut_between_two_letters),
	    cmocka_unit_test(each_text_of_a_document_is_told),
	    cmocka_unit_test(what_a_device_says_is_mended_in_its_place),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
