/* The policy as it is shipped: what policy.ini says is what stands without one, and a room says it in its language. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/policy.h"
#include "words/languages.h"

static void policy_ini_as_it_is_shipped_is_the_policy_without_one(void **state)
{
	struct policy shipped, none;
	struct error e = {0};
	char path[512];
	const char *source = getenv("BANDTALLY_SOURCE");
	(void)state;
	snprintf(path, sizeof path, "%s/config/policy.ini", source ? source : "../..");
	if (policy_read(&shipped, path, &e) < 0)
		fail_msg("%s", e.text);
	policy_default(&none);
#define X(number, name, text, section, key, member, form, low, high, unset)                                  \
	assert_int_equal(shipped.member, none.member);
	POLICY_NUMBERS(X)
#undef X
#define X(number, name, text, section, member)                                                               \
	assert_int_equal(shipped.n_##member, none.n_##member);                                               \
	for (int i = 0; i < none.n_##member; i++)                                                            \
		assert_string_equal(shipped.member[i], none.member[i]);
	POLICY_LISTS(X)
#undef X
}

static void is_said_otherwise(const struct language *l, const char *text)
{
	if (!saying_of_shipped(text) || strcmp(shipped_text_in(l, text), text) == 0)
		fail_msg("'%s' is not said in German", text);
	assert_string_equal(shipped_text_in(NULL, text), text);
}

static void what_is_shipped_is_said_in_the_language_and_a_sites_own_text_as_it_is(void **state)
{
	struct policy p;
	struct languages all;
	struct error e = {0};
	char text[200];
	(void)state;
	policy_default(&p);
	assert_int_equal(languages_read(&all, languages_folder(), &e), 0);
	const struct language *german = languages_find(&all, "de");
	assert_non_null(german);
	for (int i = 0; i < p.n_points; i++)
		is_said_otherwise(german, p.points[i]);
	for (int i = 0; i < p.n_search; i++)
		is_said_otherwise(german, p.search[i]);
	assert_string_equal(shipped_text_in(german, "count again and again"), "count again and again");
	say_part_in(german, SAY(SLIP_E_STEP, .step = "drapes, floor, shoes"), text, sizeof text);
	assert_string_equal(text, "Suche: Abdecktücher, Boden, Schuhe");
	say_part_in(german, SAY(SLIP_E_STEP, .step = "the corridor"), text, sizeof text);
	assert_string_equal(text, "Suche: the corridor");
	languages_free(&all);
}

/* By these records know what was put: each that was ever shipped stays. */
static void what_was_shipped_once_is_known(void **state)
{
	static const char *const texts[] = {
	    "The name of the procedure is recorded.",
	    "Tourniquets, forceps and all other items are accounted for, or not applicable.",
	    "Each specimen is labelled with the patient's name, or there is none.",
	    "Equipment problems have been reported, or there are none.",
	    "Concerns for recovery have been handed over, colour and warmth of the digit among them.",
	    "say it aloud and stop closing",
	    "count again, both together",
	    "count again",
	    "look at and feel the digit, under the dressing too",
	    "drapes, floor, shoes",
	    "bins and linen",
	    "under the patient",
	    "tell the surgeon, who looks as well",
	    "imaging, if the missing item shows on it: steel does, a tourniquet may not",
	    "tell the nurse in charge",
	    "incident report begun",
	    "patient told, or who will tell"};
	(void)state;
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
		if (!saying_of_shipped(texts[i]))
			fail_msg("'%s' is not known any more", texts[i]);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(policy_ini_as_it_is_shipped_is_the_policy_without_one),
	    cmocka_unit_test(what_is_shipped_is_said_in_the_language_and_a_sites_own_text_as_it_is),
	    cmocka_unit_test(what_was_shipped_once_is_known),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
