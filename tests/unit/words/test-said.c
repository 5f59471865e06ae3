/* Sentences by name: how they are made, and what records hold of them for ever. */
#include <errno.h>
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "words/said.h"

static void says(const struct say *say, const char *sentence)
{
	char text[401];
	say_sentence(say, text, sizeof text);
	assert_string_equal(text, sentence);
}

static void a_sentence_names_its_values(void **state)
{
	(void)state;
	says(SAY(CASE_IS_OPEN, .case_no = 41, .room = "Bay 7"),
	     "Case 41 is open in Bay 7: end it, or scan SUSPEND or CANCEL.");
	says(SAY(SLIP_COPY_SEEN, .slip = 12, .copy = 3, .other_copy = 1),
	     "Slip 0000012, copy 3: copy 1 of it was seen before. Only one goes into the notes: destroy this "
	     "one.");
	says(SAY(OFF_BEFORE_ON, .time = 605, .digit = 2), "OFF was scanned at 10:05, before the tourniquet "
	                                                  "on the right index finger went on: its clock runs "
	                                                  "on. If it is off, scan OFF now.");
	says(SAY(CARD_ANSWERS_NOTHING, .card = 0), "Nothing is asked now that  would answer.");
	says(SAY(NONE), "");
}

static void a_sentence_begins_with_a_capital_and_its_part_does_not(void **state)
{
	const struct say *say = SAY(ITEM_ON_TAKE_OFF, .item = "finger tourniquet", .digit = 1);
	char text[401];
	(void)state;
	says(say, "Finger tourniquet is on the right thumb: take it off first.");
	say_part(say, text, sizeof text);
	assert_string_equal(text, "finger tourniquet is on the right thumb: take it off first.");
}

static void sayings_stand_in_each_other(void **state)
{
	(void)state;
	says(SAY(NOT_YET_SIGN_OUT, .why = SAY_OWED, .what = SAY_DEBT_HANDOVER),
	     "Not yet the sign-out: still to do: the handover count.");
	says(SAY(NOT_COUNTED_IN, .why = SAY_EXPIRED, .item = "needle", .date = 20270331,
	         .then = SAY_IF_ON_YES),
	     "Not counted in: needle expired on 31 Mar 2027. Take it off the field and use another. If it is "
	     "the "
	     "one that is on, scan YES, then this again.");
}

/* One that stands in itself would have no end: after the third it is left. */
static void a_saying_that_stands_in_itself_ends(void **state)
{
	(void)state;
	says(SAY(NOT_YET_SIGN_OUT, .why = SAY_NOT_YET_SIGN_OUT),
	     "Not yet the sign-out: Not yet the sign-out: Not yet the sign-out: ...");
}

static void what_is_not_given_leaves_no_space(void **state)
{
	(void)state;
	says(SAY(NOT_COUNTED_IN, .why = SAY_EXPIRED, .item = "needle", .date = 20270331),
	     "Not counted in: needle expired on 31 Mar 2027. Take it off the field and use another.");
}

static void one_and_many_have_their_own_forms(void **state)
{
	(void)state;
	says(SAY(THROWN_AWAY, .n = 1), "1 stored scan was thrown away");
	says(SAY(THROWN_AWAY, .n = 2), "2 stored scans were thrown away");
}

static void a_list_that_is_full_says_how_many_there_are_besides(void **state)
{
	static struct said things[SAID_LISTED_MAX];
	char list[SAID_LIST_MAX];
	int n = 0;
	(void)state;
	for (int i = 1; i <= 2; i++)
		n = said_list_add(things, n, SAID_LISTED_MAX, SAY(SCAN_OF_SLIP, .slip = i));
	said_list(NULL, things, n, list, sizeof list);
	assert_string_equal(list, "slip 0000001 and slip 0000002");
	for (int i = 3; i <= 9; i++)
		n = said_list_add(things, n, SAID_LISTED_MAX, SAY(SCAN_OF_SLIP, .slip = i));
	said_list(NULL, things, n, list, sizeof list);
	assert_string_equal(list, "slip 0000001, slip 0000002, slip 0000003, slip 0000004, slip 0000005 and "
	                          "4 further");
	n = said_list_add(things, 2, 2, SAY(SCAN_OF_SLIP, .slip = 10));
	said_list(NULL, things, n, list, sizeof list);
	assert_string_equal(list, "slip 0000001 and 2 further");
	assert_int_equal(said_list_add(things, 0, 0, SAY(SCAN_OF_SLIP, .slip = 11)), 0);
}

static void a_sentence_that_is_too_long_is_cut_behind_a_whole_letter(void **state)
{
	char text[12];
	(void)state;
	say_sentence(SAY(CODE_AS_READ, .code = "0123456789\xe2\x82\xac"), text, sizeof text);
	assert_string_equal(text, "0123456789");
	say_sentence(SAY(CASE_IS_OPEN, .case_no = 1, .room = "x"), text, sizeof text);
	assert_string_equal(text, "Case 1 is o");
	say_sentence(SAY(SEEN_ALREADY, .digit = 1), text, 1);
	assert_string_equal(text, "");
}

static void what_is_kept_says_the_same(void **state)
{
	const struct say *say = SAY(NOT_COUNTED_IN, .why = SAY_IN_QUARANTINE,
	                            .item = "n\xc3\xa4"
	                                    "del",
	                            .reason = "recall", .then = SAY_IF_ON_UNLISTED);
	struct said said;
	char now[401];
	(void)state;
	said_keep(&said, say);
	struct say kept = said_say(&said);
	say_sentence(say, now, sizeof now);
	says(&kept, now);
}

static void what_says_the_same_of_the_same_is_the_same(void **state)
{
	struct said a, b;
	(void)state;
	said_keep(&a, SAY(CASE_IS_OPEN, .case_no = 1, .room = "Bay 7"));
	said_keep(&b, SAY(CASE_IS_OPEN, .case_no = 1, .room = "Bay 7"));
	assert_true(said_same(&a, &b));
	said_keep(&b, SAY(CASE_IS_OPEN, .case_no = 2, .room = "Bay 7"));
	assert_false(said_same(&a, &b));
	said_keep(&b, SAY(CASE_IS_OPEN, .case_no = 1, .room = "Bay 8"));
	assert_false(said_same(&a, &b));
	said_keep(&b, SAY(SUSPENDED_THEN_THIS, .case_no = 1, .room = "Bay 7"));
	assert_false(said_same(&a, &b));
}

static void a_text_is_kept_up_to_a_whole_letter_and_a_fault_not_at_all(void **state)
{
	char name[80];
	struct said said;
	(void)state;
	memset(name, 'x', sizeof name);
	snprintf(name + sizeof said.item - 2, 8, "\xc3\xbc!");
	said_keep(&said, SAY(SEEN_ALREADY, .item = name, .room = NULL, .fault = "gone"));
	assert_int_equal(strlen(said.item), sizeof said.item - 2);
	assert_string_equal(said.room, "");
	assert_string_equal(said_say(&said).item, said.item);
	assert_null(said_say(&said).fault);
}

/* --- the list ------------------------------------------------------------------------------------- */

static const char *const value_names[] = {
#define X(type, member, name, size) name,
    VALUES(X)
#undef X
};
static const char *const loose_names[] = {
#define X(type, member, name, size) name,
    LOOSE_VALUES(X)
#undef X
};

static const struct {
	const char *name, *one, *many;
} list[] = {
#define X(name, key, text) {key, text, text},
#define N(name, key, one, many) {key, one, many},
    SAYINGS(X, N) SENTENCES(X, N)
#undef N
#undef X
};
#define KEPT ((size_t)SAYINGS_KEPT - 1) /* so many of them may stand in records */

#define LENGTH(array) (sizeof(array) / sizeof *(array))

/* Whether the text has the value in braces. */
static int names(const char *text, const char *value)
{
	char braces[40];
	snprintf(braces, sizeof braces, "{%s}", value);
	return strstr(text, braces) != NULL;
}

static void values_stand_in_the_order_of_a_record(void **state)
{
	(void)state;
	for (size_t i = 1; i < LENGTH(value_names); i++)
		assert_true(strcmp(value_names[i - 1], value_names[i]) < 0);
}

static int is_value(const char *name, size_t length)
{
	int found = 0;
	for (size_t k = 0; k < LENGTH(value_names); k++)
		found += strlen(value_names[k]) == length && strncmp(value_names[k], name, length) == 0;
	for (size_t k = 0; k < LENGTH(loose_names); k++)
		found += strlen(loose_names[k]) == length && strncmp(loose_names[k], name, length) == 0;
	return found;
}

static void no_two_values_have_one_name(void **state)
{
	(void)state;
	for (size_t k = 0; k < LENGTH(loose_names); k++)
		if (is_value(loose_names[k], strlen(loose_names[k])) != 1)
			fail_msg("{%s} is two values", loose_names[k]);
}

static void no_two_sentences_have_one_key(void **state)
{
	(void)state;
	for (size_t i = 0; i < LENGTH(list); i++)
		for (size_t k = 0; k < i; k++)
			if (strcmp(list[i].name, list[k].name) == 0)
				fail_msg("two sentences have the key '%s'", list[i].name);
}

/* What the station says itself of a scanner is no driver's to say. */
static void a_driver_has_its_own_words_and_no_others(void **state)
{
	static const char *const others[] = {"told", "ended",           "lost-at", "line-odd",
	                                     "",     "scanner-partial", "Partial"};
	(void)state;
	assert_int_equal(saying_of_drivers_word("partial"), SAY_SCANNER_PARTIAL);
	assert_int_equal(saying_of_drivers_word("two-cards"), SAY_SCANNER_TWO_CARDS);
	for (size_t i = 0; i < LENGTH(others); i++)
		assert_int_equal(saying_of_drivers_word(others[i]), SAY_SCANNER_OTHER);
}

/* One that it does not know has a general word: the board says that a paper does not come whatever a printer says. */
static void a_printer_has_the_words_of_its_list_and_a_general_one(void **state)
{
	static const char *const others[] = {"", "other", "printer-jam", "Jam", "out of paper"};
	(void)state;
	assert_int_equal(saying_of_printer("out-of-paper"), SAY_PRINTER_OUT_OF_PAPER);
	assert_int_equal(saying_of_printer("refuses"), SAY_PRINTER_REFUSES);
	for (size_t i = 0; i < LENGTH(others); i++)
		assert_int_equal(saying_of_printer(others[i]), SAY_PRINTER_OTHER);
}

static void every_name_is_found_again(void **state)
{
	(void)state;
	assert_int_equal(LENGTH(list), SAYING_KINDS - 1);
	for (size_t i = 0; i < LENGTH(list); i++)
		assert_string_equal(saying_key((int64_t)i + 1), list[i].name);
	for (size_t i = 0; i < KEPT; i++) {
		assert_string_equal(saying_name((int64_t)i + 1), list[i].name);
		assert_int_equal(saying_from_name(list[i].name), i + 1);
	}
	assert_null(saying_name(SAYINGS_KEPT));
	assert_int_equal(saying_from_name(saying_key(SAYINGS_KEPT)), -EINVAL);
	assert_null(saying_name(0));
	assert_null(saying_name(-1));
	assert_null(saying_name(SAYING_KINDS));
	assert_int_equal(saying_from_name(""), -EINVAL);
	assert_int_equal(saying_from_name("no-such-saying"), -EINVAL);
}

/* What stands in braces is a value, and both forms of a sentence name the same. */
static void each_text_names_only_values(void **state)
{
	(void)state;
	for (size_t i = 0; i < LENGTH(list); i++)
		for (const char *at = list[i].many; (at = strchr(at, '{')); at++) {
			size_t length = strcspn(at + 1, "}");
			char braces[40];
			if (!is_value(at + 1, length))
				fail_msg("%s: '%s' names what is no value", list[i].name, list[i].many);
			snprintf(braces, sizeof braces, "{%.*s}", (int)length, at + 1);
			if (strcmp(braces, "{n}") != 0 && !strstr(list[i].one, braces))
				fail_msg("%s: of one and of many differ in %s", list[i].name, braces);
		}
}

static int by_name(const void *a, const void *b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static void line_of(size_t i, char *line, size_t size)
{
	const char *all[LENGTH(value_names) + LENGTH(loose_names)];
	size_t used = (size_t)snprintf(line, size, "%s", list[i].name);
	memcpy(all, value_names, sizeof value_names);
	memcpy(all + LENGTH(value_names), loose_names, sizeof loose_names);
	qsort(all, LENGTH(all), sizeof *all, by_name);
	for (size_t k = 0; k < LENGTH(all); k++)
		if (names(list[i].many, all[k]))
			used += (size_t)snprintf(line + used, size - used, " %s", all[k]);
	snprintf(line + used, size - used, "\n");
}

/* A value that no record keeps is lost to whoever reads it there; {fault} is, and is known to be. */
static void what_records_may_hold_names_values_that_they_hold(void **state)
{
	(void)state;
	for (size_t i = 0; i < KEPT; i++)
		for (size_t k = 0; k < LENGTH(loose_names); k++)
			if (strcmp(loose_names[k], "fault") != 0 && names(list[i].many, loose_names[k]))
				fail_msg("%s: no record keeps {%s}", list[i].name, loose_names[k]);
}

/* Records hold these names with these values: none of them may go, and none may ask for a value that older records do
 * not have. */
static void digits_and_cards_are_called_what_their_codes_say(void **state)
{
	(void)state;
	for (int d = 1; d <= OWN_DIGITS; d++)
		assert_string_equal(saying_text(saying_of_digit(d)), own_digit_name(d));
	assert_int_equal(saying_of_digit(0), SAY_NONE);
	assert_int_equal(saying_of_digit(OWN_DIGITS + 1), SAY_NONE);
	for (int card = own_card_next(0); card; card = own_card_next(card)) {
		assert_string_equal(saying_text(saying_of_card(card)), own_card_name(card));
		assert_string_equal(saying_text(saying_of_use(card)), own_card_use(card));
	}
	assert_int_equal(saying_of_card(999), SAY_NONE);
}

static void what_records_may_hold_is_still_said(void **state)
{
	static char kept[65536];
	char path[PATH_MAX], line[400];
	size_t lines = 0;
	const char *source = getenv("BANDTALLY_SOURCE");
	(void)state;
	snprintf(path, sizeof path, "%s/tests/kept/sayings.txt", source ? source : ".");
	FILE *f = fopen(path, "re");
	if (!f)
		fail_msg("cannot read %s", path);
	kept[0] = '\n';
	kept[1 + fread(kept + 1, 1, sizeof kept - 2, f)] = 0;
	fclose(f);
	for (const char *at = kept + 1; *at; at++)
		lines += *at == '\n';
	for (size_t i = 0; i < KEPT; i++) {
		line[0] = '\n';
		line_of(i, line + 1, sizeof line - 1);
		if (!strstr(kept, line))
			fail_msg("is new, or was otherwise, in tests/kept/sayings.txt: %s", line + 1);
	}
	assert_int_equal(lines, KEPT); /* more: one is gone */
}

int main(int argc, char **argv)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_sentence_names_its_values),
	    cmocka_unit_test(a_sentence_begins_with_a_capital_and_its_part_does_not),
	    cmocka_unit_test(sayings_stand_in_each_other),
	    cmocka_unit_test(a_saying_that_stands_in_itself_ends),
	    cmocka_unit_test(what_is_not_given_leaves_no_space),
	    cmocka_unit_test(one_and_many_have_their_own_forms),
	    cmocka_unit_test(a_list_that_is_full_says_how_many_there_are_besides),
	    cmocka_unit_test(a_sentence_that_is_too_long_is_cut_behind_a_whole_letter),
	    cmocka_unit_test(what_is_kept_says_the_same),
	    cmocka_unit_test(what_says_the_same_of_the_same_is_the_same),
	    cmocka_unit_test(a_text_is_kept_up_to_a_whole_letter_and_a_fault_not_at_all),
	    cmocka_unit_test(values_stand_in_the_order_of_a_record),
	    cmocka_unit_test(no_two_values_have_one_name),
	    cmocka_unit_test(no_two_sentences_have_one_key),
	    cmocka_unit_test(digits_and_cards_are_called_what_their_codes_say),
	    cmocka_unit_test(a_driver_has_its_own_words_and_no_others),
	    cmocka_unit_test(a_printer_has_the_words_of_its_list_and_a_general_one),
	    cmocka_unit_test(every_name_is_found_again),
	    cmocka_unit_test(each_text_names_only_values),
	    cmocka_unit_test(what_records_may_hold_names_values_that_they_hold),
	    cmocka_unit_test(what_records_may_hold_is_still_said),
	};
	char line[400];
	for (size_t i = 0; argc == 2 && strcmp(argv[1], "--list") == 0 && i < KEPT; i++) {
		line_of(i, line, sizeof line);
		fputs(line, stdout);
	}
	return argc == 2 ? 0 : cmocka_run_group_tests(tests, NULL, NULL);
}
