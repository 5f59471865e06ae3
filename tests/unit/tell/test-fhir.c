/* The minutes and times of a stretch, as a hospital's systems are told them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "tell/fhir.h"

#define MIN 60000
#define TEN INT64_C(1795600800000) /* 2026-11-25, ten o'clock UTC */

static struct event events[20];
static int n_events;
static int turned_min; /* by how much the wall clock was turned until now */

static void happened(int minute, struct event e)
{
	e.seq = n_events + 1;
	e.case_no = 1;
	e.room = 1;
	e.flags = EVENT_FIRST;
	e.at = (struct moment){
	    .boot = 1, .boot_ms = (100 + minute) * MIN, .wall_ms = TEN + (minute + turned_min) * MIN};
	events[n_events++] = e;
}

static int setup(void **state)
{
	(void)state;
	memset(events, 0, sizeof events);
	n_events = turned_min = 0;
	happened(0, (struct event){.kind = EV_CASE_OPENED});
	happened(1, (struct event){.kind = EV_DIGIT_ON, .digit = 2});
	return 0;
}

/* The observation of the one stretch must say these minutes, and when it began and ended; `end` NULL: not said. */
static void observed(int minutes, const char *start, const char *end)
{
	static const struct fhir_systems none;
	struct story *s = NULL;
	assert_int_equal(story_make(&s, NULL, events, n_events, events[n_events - 1].at), 0);
	const struct fhir_source from = {.story = s,
	                                 .events = events,
	                                 .count = n_events,
	                                 .systems = &none,
	                                 .site = "BC",
	                                 .site_name = "",
	                                 .made = events[n_events - 1].at};
	json_t *bundle = fhir_bundle(&from), *entry, *seen = NULL;
	size_t i;
	json_array_foreach(json_object_get(bundle, "entry"), i, entry)
	{
		json_t *x = json_object_get(entry, "resource");
		if (strcmp(json_string_value(json_object_get(x, "resourceType")), "Observation") == 0) {
			assert_null(seen);
			seen = x;
		}
	}
	assert_non_null(seen);
	json_t *value = json_object_get(json_object_get(seen, "valueQuantity"), "value");
	assert_int_equal(10 * json_number_value(value) + 0.5, 10 * minutes);
	json_t *period = json_object_get(seen, "effectivePeriod");
	assert_string_equal(json_string_value(json_object_get(period, "start")), start);
	if (end)
		assert_string_equal(json_string_value(json_object_get(period, "end")), end);
	else
		assert_null(json_object_get(period, "end"));
	json_decref(bundle);
	free(s);
}

static void a_stretch_has_its_minutes_and_its_times(void **state)
{
	(void)state;
	happened(20, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	observed(19, "2026-11-25T10:01:00+00:00", "2026-11-25T10:20:00+00:00");
}

static void minutes_ago_moves_both(void **state)
{
	(void)state;
	happened(2, (struct event){.kind = EV_DIGIT_EARLIER, .digit = 2, .n = 5, .what = 1});
	happened(20, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	happened(21, (struct event){.kind = EV_DIGIT_EARLIER, .digit = 2, .n = 3, .what = 2});
	observed(21, "2026-11-25T09:56:00+00:00", "2026-11-25T10:17:00+00:00");
}

/* Times of day that say 139 minutes are none beside 19. */
static void a_wall_clock_that_was_turned_gives_no_period(void **state)
{
	(void)state;
	turned_min = 120;
	happened(20, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	observed(19, "2026-11-25T10:01:00+00:00", NULL);
	happened(21, (struct event){.kind = EV_DIGIT_EARLIER, .digit = 2, .n = 3, .what = 2});
	observed(16, "2026-11-25T10:01:00+00:00", NULL);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(a_stretch_has_its_minutes_and_its_times, setup),
	    cmocka_unit_test_setup(minutes_ago_moves_both, setup),
	    cmocka_unit_test_setup(a_wall_clock_that_was_turned_gives_no_period, setup),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
