/* The kinds of item: each trait is held by the kinds that people mean by it. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/catalogue.h"

static void each_kind_is_found_by_its_name(void **state)
{
	(void)state;
	for (int r = ROLE_NONE + 1; r < ROLE_KINDS; r++)
		assert_int_equal(role_from_name(role_name((enum role)r)), r);
	assert_int_equal(role_from_name("unknown"), -EINVAL);
	assert_int_equal(role_from_name(""), -EINVAL);
	assert_string_equal(role_name(ROLE_KINDS), "unknown");
	assert_string_equal(ROLE_NAMES, " tourniquet forceps other tray refused needle blade");
}

/* "tourniquet forceps": the names of those that have one of the traits. */
static void have(uint32_t traits, const char *names)
{
	char found[200] = "";
	for (int r = ROLE_NONE; r < ROLE_KINDS + 2; r++)
		if (role_has((uint32_t)r, traits)) {
			strcat(found, *found ? " " : "");
			strcat(found, role_name((enum role)r));
		}
	assert_string_equal(found, names);
}

static void a_tourniquet_alone_has_a_clock_and_a_condition(void **state)
{
	(void)state;
	have(TRAIT_TIMED, "tourniquet");
	have(TRAIT_CONDITION, "tourniquet");
	have(TRAIT_CE, "tourniquet");
	have(TRAIT_VISIBLE, "tourniquet");
	have(TRAIT_CLAMPS, "forceps");
	have(TRAIT_ON_DIGIT, "tourniquet forceps");
}

static void sharps_are_counted_by_number_like_swabs(void **state)
{
	(void)state;
	have(TRAIT_SHARP, "needle blade");
	have(TRAIT_BY_NUMBER, "other needle blade");
	have(TRAIT_LIST, "tray");
	have(TRAIT_REFUSED, "refused");
}

/* A catalogue's line as its file has it; the sentence that refuses it, "" where it is taken. */
static void line_says(const char *row, const char *words)
{
	static const char head[] = "key,name,role,marked,visible,instead\n";
	char file[300];
	struct line *lines = NULL;
	size_t count = 0;
	struct error e = {0};
	strcpy(file, head);
	strcat(file, row);
	int r = catalogue_read_csv(file, strlen(file), &lines, &count, &e);
	assert_int_equal(r < 0, *words != 0);
	if (*words && !strstr(e.text, words))
		fail_msg("'%s' does not say '%s'", e.text, words);
	free(lines);
}

static void a_file_may_list_needles_and_blades_and_no_unmarked_tourniquet(void **state)
{
	(void)state;
	line_says("N,needle,needle,no,no,\n", "");
	line_says("B,blade,blade,no,no,\n", "");
	line_says("T,finger tourniquet,tourniquet,yes,yes,\n", "");
	line_says("T,finger tourniquet,tourniquet,no,yes,\n", "a tourniquet must bear a regulator's mark");
	line_says("T,finger tourniquet,tourniquet,yes,no,\n", "a tourniquet must be visible");
	line_says("G,glove finger,refused,no,no,\n", "must say what to use instead");
	line_says("X,scissors,scissors,no,no,\n",
	          "it must be one of tourniquet forceps other tray refused needle blade");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(each_kind_is_found_by_its_name),
	    cmocka_unit_test(a_tourniquet_alone_has_a_clock_and_a_condition),
	    cmocka_unit_test(sharps_are_counted_by_number_like_swabs),
	    cmocka_unit_test(a_file_may_list_needles_and_blades_and_no_unmarked_tourniquet),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
