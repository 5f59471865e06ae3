/* Who is at the table without a badge of this site. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "count/team.h"
#include "words/said.h"

/* Their names are the program's own, so every language has words for them; no two visitors share one. */
static void whoever_has_no_badge_is_called_in_each_language(void **state)
{
	const struct staff nobody = {0};
	(void)state;
	assert_int_equal(saying_of_person(staff_name(&nobody, 4711)), SAY_PERSON_UNKNOWN);
	for (int32_t n = 1; n <= VISITORS_MAX; n++)
		assert_int_equal(saying_of_person(staff_name(&nobody, -n)),
		                 SAY_PERSON_VISITOR_1 + (unsigned)n - 1);
	assert_null(staff_find(&nobody, -VISITORS_MAX - 1));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(whoever_has_no_badge_is_called_in_each_language),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
