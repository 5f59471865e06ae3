/* The settings as the record has them: what is otherwise is recorded, and nothing else. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "count/recorded.h"
#include "count/station.h"

static struct station st;
static struct recorded was, is;
static struct event events[RECORDED_CHANGES_MAX];

static int setup(void **state)
{
	(void)state;
	memset(&st, 0, sizeof st);
	memset(&was, 0, sizeof was);
	snprintf(st.site, sizeof st.site, "BC");
	snprintf(st.site_name, sizeof st.site_name, "Example Hand Unit");
	policy_default(&st.policy);
	st.rooms[st.n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	st.rooms[st.n_rooms++] = (struct room){.number = 7, .name = "Minor injuries", .single = 1};
	return 0;
}

/* One start: how many events it records; afterwards the record has what the files say. */
static int start(const char *zone)
{
	recorded_now(&is, &st, zone);
	int n = recorded_changes(&was, &is, events);
	for (int i = 0; i < n; i++) {
		assert_int_equal(events[i].kind, EV_SETTING);
		recorded_apply(&was, &events[i]);
	}
	struct event again[RECORDED_CHANGES_MAX];
	assert_int_equal(recorded_changes(&was, &is, again), 0);
	return n;
}

static void the_first_start_records_all_and_the_next_nothing(void **state)
{
	(void)state;
	assert_int_equal(start("Europe/London"),
	                 SETTING_KINDS - 1 - 3 + 2 + st.policy.n_points + st.policy.n_search);
	assert_int_equal(start("Europe/London"), 0);
	assert_string_equal(was.site, "BC");
	assert_string_equal(was.site_name, "Example Hand Unit");
	assert_string_equal(was.zone, "Europe/London");
	assert_int_equal(was.n_rooms, 2);
	assert_int_equal(was.rooms[1].single, 1);
	assert_memory_equal(&was.policy, &st.policy, sizeof was.policy);
}

static void is_one(enum setting what, int32_t other, int32_t n, const char *text)
{
	assert_int_equal(start("Europe/London"), 1);
	assert_int_equal(events[0].what, what);
	assert_int_equal(events[0].other, other);
	assert_int_equal(events[0].n, n);
	assert_string_equal(events[0].text, text);
}

static void what_is_otherwise_is_recorded_alone(void **state)
{
	(void)state;
	start("Europe/London");
	st.policy.first_reminder_min = 15;
	is_one(SETTING_FIRST_REMINDER, 0, 15, "");
	st.policy.both_badges = 1;
	is_one(SETTING_BOTH_BADGES, 0, 1, "");
	st.policy.nobody_min = 0;
	is_one(SETTING_NOBODY, 0, 0, "");
	snprintf(st.rooms[0].name, ROOM_NAME_MAX, "Bay 7");
	is_one(SETTING_ROOM, 1, 1, "Bay 7");
	st.rooms[0].single = 1;
	is_one(SETTING_ROOM, 1, 2, "Bay 7");
	snprintf(st.policy.points[2], POLICY_TEXT_MAX, "The relatives were telephoned.");
	is_one(SETTING_POINT, 3, 0, "The relatives were telephoned.");
	snprintf(st.site_name, sizeof st.site_name, "Another Unit");
	is_one(SETTING_SITE_NAME, 0, 0, "Another Unit");
	assert_int_equal(start("Europe/Paris"), 1);
}

static void what_there_is_no_longer_goes(void **state)
{
	(void)state;
	start("Europe/London");
	st.n_rooms = 1;
	is_one(SETTING_ROOM, 7, 0, "");
	assert_null(recorded_room(&was, 7));
	assert_non_null(recorded_room(&was, 1));
	st.policy.n_search -= 2;
	assert_int_equal(start("Europe/London"), 2);
	assert_int_equal(was.policy.n_search, st.policy.n_search);
	st.policy.n_points = 0;
	assert_int_equal(start("Europe/London"), 5);
	assert_int_equal(was.policy.n_points, 0);
}

/* Files may say other rooms each day; the record keeps those that there are. */
static void rooms_that_come_and_go_leave_no_trace_in_the_list(void **state)
{
	(void)state;
	for (int day = 1; day < 60; day++) {
		st.n_rooms = ROOMS_MAX;
		for (int i = 0; i < ROOMS_MAX; i++)
			st.rooms[i] = (struct room){.number = 1 + (day + i * 5) % 99, .name = "Bay"};
		start("UTC");
		assert_int_equal(was.n_rooms, ROOMS_MAX);
	}
}

/* A later version's setting, or a number that is none of ours. */
static void what_has_no_place_changes_nothing(void **state)
{
	(void)state;
	start("UTC");
	is = was;
	recorded_apply(&was, &(struct event){.kind = EV_SETTING, .what = 200, .n = 3});
	recorded_apply(&was, &(struct event){.kind = EV_SETTING, .what = SETTING_POINT, .text = "x"});
	recorded_apply(&was,
	               &(struct event){.kind = EV_SETTING, .what = SETTING_POINT, .other = 99, .text = "x"});
	assert_memory_equal(&was, &is, sizeof is);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(the_first_start_records_all_and_the_next_nothing, setup),
	    cmocka_unit_test_setup(what_is_otherwise_is_recorded_alone, setup),
	    cmocka_unit_test_setup(what_there_is_no_longer_goes, setup),
	    cmocka_unit_test_setup(rooms_that_come_and_go_leave_no_trace_in_the_list, setup),
	    cmocka_unit_test_setup(what_has_no_place_changes_nothing, setup),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
