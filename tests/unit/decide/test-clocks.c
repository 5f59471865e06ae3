/* Two clocks and an empty room: what reminders go by after a power cut, when the wall clock cannot be right, and who is
 * told of a reminder that nobody answers. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "count/unanswered.h"
#include "count/wall.h"
#include "decide/decide.h"
#include "decide/next.h"

#define MIN 60000LL
#define TEN 1795600800000LL /* 2026-11-25, ten o'clock in the morning, UTC */

/* One room with a tourniquet on since ten o'clock, one that stands empty. */
static struct station st;
static struct moment now;
static struct outcome out;
static int64_t seq;

static void apply(struct event e)
{
	e.seq = ++seq;
	assert_int_equal(station_apply(&st, &e), 0);
}

static void take(struct input in)
{
	in.at = now;
	in.room = in.room ? in.room : 3;
	in.card_room = in.card_room ? in.card_room : in.room;
	snprintf(in.scanner, sizeof in.scanner, "hand");
	decide(&st, &in, &out);
	for (int i = 0; i < out.count; i++)
		apply(out.events[i]);
}

static int happened(enum event_kind kind)
{
	int n = 0;
	for (int i = 0; i < out.count; i++)
		n += out.events[i].kind == kind;
	return n;
}

/* Minutes of the reminder that this tick gives, -1 none. */
static int tick(void)
{
	do {
		take((struct input){.act = ACT_TICK});
		if (happened(EV_REMINDED))
			return (int)out.events[0].n;
	} while (happened(EV_CLOCK_WRONG));
	return -1;
}

static void pass(int64_t minutes)
{
	now.boot_ms += minutes * MIN;
	now.wall_ms += minutes * MIN;
}

/* The last sign of life is now; then so many minutes without power, by the wall clock. */
static void cut(int64_t minutes)
{
	apply((struct event){.kind = EV_ALIVE, .at = now});
	now = (struct moment){.boot = now.boot + 1, .boot_ms = 4000, .wall_ms = now.wall_ms + minutes * MIN};
	apply((struct event){.kind = EV_STARTED, .at = now, .n = now.boot});
}

static const struct digit *digit(void)
{
	return sheet_digit_const(&st.sheets[0], 9);
}

static const char *minutes(void)
{
	static char text[80];
	digit_minutes_text(digit(), now, text, sizeof text);
	return text;
}

static int setup(void **state)
{
	(void)state;
	memset(&st, 0, sizeof st);
	policy_default(&st.policy);
	snprintf(st.site, sizeof st.site, "BC");
	st.rooms[st.n_rooms++] = (struct room){.number = 1, .name = "Theatre 1"};
	st.rooms[st.n_rooms++] = (struct room){.number = 3, .name = "Bay 3"};
	now = (struct moment){.boot = 1, .boot_ms = 1000, .wall_ms = TEN};
	apply((struct event){.kind = EV_STARTED, .at = now, .n = 1});
	take((struct input){.act = ACT_CARD, .card = CARD_NEW_CASE});
	take((struct input){.act = ACT_DIGIT, .digit = 9});
	take((struct input){.act = ACT_CARD, .card = CARD_YES});
	assert_int_equal(digit()->state, DIGIT_ON);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	station_deinit(&st);
	return 0;
}

/* --- clocks ------------------------------------------------------------------------------------- */

static void after_a_power_cut_the_reminder_counts_the_time_without_power(void **state)
{
	(void)state;
	pass(15);
	assert_int_equal(tick(), -1);
	cut(60);
	assert_int_equal(tick(), 75);
	assert_int_equal(tick(), -1);
	pass(10);
	assert_int_equal(tick(), 85);
	assert_string_equal(minutes(), "at least 25 min; by wall clock 85 min");
}

static void a_cut_that_ends_before_the_next_reminder_brings_none(void **state)
{
	(void)state;
	pass(5);
	cut(10);
	assert_int_equal(tick(), -1);
	pass(5);
	assert_int_equal(tick(), 20);
}

static void at_least_is_what_was_known_whatever_the_wall_clock_says(void **state)
{
	(void)state;
	pass(9);
	cut(45);
	now.wall_ms += 500 * MIN; /* set ahead after the start */
	assert_string_equal(minutes(), "at least 9 min; by wall clock 554 min");
	now.wall_ms -= 1500 * MIN;
	assert_string_equal(minutes(), "at least 9 min; the wall clock cannot be trusted");
	assert_int_equal(digit_by_wall_ms(digit(), now), 0);
	assert_int_equal(digit_open_ms(digit(), now) / MIN, 54); /* the cut itself was 45 */
}

static void a_wall_clock_that_went_back_over_the_cut_reminds_at_once(void **state)
{
	(void)state;
	pass(9);
	cut(-180);
	assert_int_equal(tick(), 9);
	assert_int_equal(tick(), -1);
	assert_string_equal(minutes(), "at least 9 min; the wall clock cannot be trusted");
	assert_null(strstr(out.reply.next.words, "-"));
	take((struct input){.act = ACT_CARD, .card = CARD_OFF});
	assert_non_null(
	    strstr(out.reply.said, "Off, left ring finger, after at least 9 min; the wall clock cannot be"));
	assert_null(strstr(out.reply.said, "07:"));
	/* Told when it is put right, it spans the cut after all. */
	now.wall_ms = TEN + 100 * MIN;
	assert_int_equal(digit_open_ms(digit(), now) / MIN, 100);
}

static void within_one_boot_the_wall_clock_changes_no_minute(void **state)
{
	(void)state;
	pass(19);
	now.wall_ms += 300 * MIN;
	assert_int_equal(tick(), -1);
	now.wall_ms -= 480 * MIN;
	assert_string_equal(minutes(), "19 min");
	pass(1);
	assert_int_equal(tick(), 20);
	take((struct input){.act = ACT_CARD, .card = CARD_OFF});
	assert_non_null(
	    strstr(out.reply.said, "Off, left ring finger, after 20 min; the wall clock cannot be trusted."));
}

static void off_and_not_accounted_for_counts_through_a_cut_as_well(void **state)
{
	(void)state;
	pass(10);
	take((struct input){.act = ACT_CARD, .card = CARD_UNLISTED_TOURNIQUET});
	take((struct input){.act = ACT_CARD, .card = CARD_OFF});
	pass(2);
	cut(30);
	assert_int_equal(tick(), 42);
	assert_string_equal(minutes(), "10 min"); /* it was off when the power went */
	pass(10);
	assert_int_equal(tick(), 52);
	cut(-200);
	assert_int_equal(tick(), 52); /* at once, of what is known */
}

static void a_clock_set_ahead_and_back_holds_no_reminder_up(void **state)
{
	(void)state;
	pass(9);
	cut(20);
	now.wall_ms += 500 * MIN;
	assert_int_equal(tick(), 529);
	now.wall_ms -= 500 * MIN;
	pass(10);
	assert_int_equal(tick(), 39);
}

static void no_reminders_are_none_after_a_cut_either(void **state)
{
	(void)state;
	st.policy.first_reminder_min = 0;
	pass(9);
	cut(-60);
	assert_int_equal(tick(), -1);
}

/* --- the wall clock ----------------------------------------------------------------------------- */

static void wall_said(const struct station *of, struct moment at, char words[300])
{
	const struct say says = wall_says(of, at);
	say_sentence(&says, words, 300);
}

static void a_clock_before_the_record_is_said_until_it_has_caught_up(void **state)
{
	char words[300];
	(void)state;
	now.wall_ms -= MIN / 2;
	tick();
	assert_int_equal(st.clock_wrong, 0);
	now.wall_ms -= 180 * MIN;
	take((struct input){.act = ACT_TICK});
	assert_int_equal(happened(EV_CLOCK_WRONG), 2); /* of the station, and of its one open case */
	assert_int_equal(out.events[0].case_no, 0);
	assert_int_equal(out.events[1].case_no, 1);
	assert_int_equal(st.clock_wrong, 1);
	wall_said(&st, now, words);
	assert_non_null(strstr(
	    words,
	    "The wall clock is wrong: 25 Nov 2026 06:59, though the record reaches to 25 Nov 2026 10:00."));
	pass(10);
	take((struct input){.act = ACT_TICK});
	assert_int_equal(happened(EV_CLOCK_WRONG),
	                 0); /* the record has gone on, and the clock is as wrong as before */
	now.wall_ms = TEN - 1000;
	take((struct input){.act = ACT_TICK});
	assert_int_equal(st.clock_wrong, 1);
	now.wall_ms = TEN + 1000;
	take((struct input){.act = ACT_TICK});
	assert_int_equal(st.clock_wrong, 0);
	wall_said(&st, now, words);
	assert_string_equal(words, "");
}

static void a_clock_before_the_program_was_made_is_wrong(void **state)
{
	char words[300];
	struct station fresh = {.released = 20261125};
	struct moment at = {.boot = 1, .boot_ms = 1, .wall_ms = TEN - 5 * 24 * 60 * MIN};
	(void)state;
	assert_int_equal(wall_is_wrong(&fresh, at), 1);
	fresh.clock_wrong = 1;
	wall_said(&fresh, at, words);
	assert_non_null(strstr(words, "wrong: 20 Nov 2026 10:00, before this program was made"));
	fresh.clock_wrong = 0;
	at.wall_ms = TEN;
	assert_int_equal(wall_is_wrong(&fresh, at), 0);
	fresh.released = 0;
	at.wall_ms = 0;
	assert_int_equal(wall_is_wrong(&fresh, at), 0);
}

/* A year of two digits would be one of the next century, and a clock that is set right again would stand before the record. */
static void a_clock_decades_after_the_program_was_made_is_wrong(void **state)
{
	char words[300];
	struct station fresh = {.released = 20261125};
	struct moment at = {.boot = 1, .boot_ms = 1, .wall_ms = TEN};
	(void)state;
	struct event e = {.kind = EV_STARTED, .n = 1, .at = at};
	assert_int_equal(station_apply(&fresh, &e), 0);
	assert_int_equal(fresh.wall_ms, TEN);
	at.wall_ms = TEN + (int64_t)(30 * 365 + 7) * 24 * 60 * MIN; /* the day before */
	assert_int_equal(wall_is_wrong(&fresh, at), 0);
	assert_int_equal(wall_latest_ms(&fresh, at), at.wall_ms);
	at.wall_ms += (int64_t)24 * 60 * MIN;
	assert_int_equal(wall_is_wrong(&fresh, at), 1);
	assert_int_equal(wall_latest_ms(&fresh, at), TEN);
	e = (struct event){.kind = EV_CLOCK_WRONG, .n = 1, .at = at};
	assert_int_equal(station_apply(&fresh, &e), 0);
	assert_int_equal(fresh.wall_ms, TEN);
	wall_said(&fresh, at, words);
	assert_non_null(strstr(words, "wrong: 25 Nov 2056 10:00, decades after this program was made"));
	at.wall_ms = TEN + 60 * MIN; /* set right */
	assert_int_equal(wall_is_wrong(&fresh, at), 0);
}

static void a_carried_scanner_goes_home_where_the_clock_went_back_over_a_cut(void **state)
{
	(void)state;
	apply((struct event){.kind = EV_SCANNER_ROOM, .at = now, .room = 1, .n = 3, .text = "hand"});
	assert_int_equal(station_scanner_room(&st, "hand", 1, now), 3);
	cut(60);
	assert_int_equal(station_scanner_room(&st, "hand", 1, now), 3);
	cut(-300);
	assert_int_equal(station_scanner_room(&st, "hand", 1, now), 1);
}

/* --- nobody there ------------------------------------------------------------------------------- */

static struct unanswered list[UNANSWERED_MAX];

static const char *first_said(void)
{
	static char text[200];
	say_sentence(&list[0].say, text, sizeof text);
	return text;
}

static int stands(void)
{
	return station_unanswered(&st, now, list);
}

static void reminded(void)
{
	pass(20);
	assert_int_equal(tick(), 20);
}

static void a_reminder_that_nobody_answers_stands_after_some_minutes(void **state)
{
	(void)state;
	reminded();
	pass(4);
	assert_int_equal(stands(), 0);
	pass(1);
	assert_int_equal(stands(), 1);
	assert_int_equal(list[0].room, 3);
	assert_string_equal(first_said(), "Bay 3: left ring finger 25 min, no scan since 10:00");
	st.policy.nobody_min = 0;
	assert_int_equal(stands(), 0);
}

static void later_reminders_do_not_make_it_wait_again(void **state)
{
	(void)state;
	reminded();
	pass(9);
	assert_int_equal(stands(), 1);
	pass(1);
	assert_int_equal(tick(), 30);
	assert_int_equal(stands(), 1);
	pass(1400);
	tick();
	assert_int_equal(stands(), 1);
	assert_string_equal(first_said(),
	                    "Bay 3: left ring finger 1430 min, no scan since 25 Nov 2026 10:00");
}

static void any_scan_of_the_room_ends_it_and_no_other_does(void **state)
{
	(void)state;
	reminded();
	pass(6);
	take((struct input){.act = ACT_CARD, .card = CARD_NEW_CASE, .room = 1});
	apply((struct event){.kind = EV_SCANNER_FAULT, .at = now, .room = 3, .text = "lost"});
	apply((struct event){.kind = EV_SLIP_STATE, .at = now, .room = 3, .n = 7, .what = SLIP_DONE});
	assert_int_equal(stands(), 1);
	take((struct input){.act = ACT_UNKNOWN, .text = "a code"});
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	assert_int_equal(stands(), 0);
	assert_int_equal(digit()->reminded, 1); /* it still waits for a badge, in its own room */
	pass(4);
	assert_int_equal(tick(), 30);
	pass(4);
	assert_int_equal(stands(), 0);
	pass(1);
	assert_int_equal(stands(), 1);
	/* Who scans that room's card with a scanner of another stands in it. */
	take((struct input){.act = ACT_CARD, .card = CARD_THIS_ROOM, .room = 1, .card_room = 3});
	assert_int_equal(stands(), 0);
}

static void it_holds_no_other_case(void **state)
{
	struct next next, before;
	static struct sheet none;
	(void)state;
	next_step(&st, &none, 1, now, &before);
	reminded();
	pass(30);
	assert_int_equal(stands(), 1);
	next_step(&st, &none, 1, now, &next);
	assert_string_equal(next.words, before.words);
	take((struct input){.act = ACT_CARD, .card = CARD_NEW_CASE, .room = 1});
	assert_int_equal(out.reply.verdict, VERDICT_ACCEPTED);
	assert_int_equal(stands(), 1);
}

static void over_a_cut_of_unknown_length_it_stands_at_once(void **state)
{
	(void)state;
	reminded();
	cut(-60);
	assert_int_equal(stands(), 1);
	assert_string_equal(first_said(),
	                    "Bay 3: left ring finger at least 20 min, no scan since the reminder");
}

static void off_and_not_accounted_for_is_said_as_such(void **state)
{
	(void)state;
	take((struct input){.act = ACT_CARD, .card = CARD_UNLISTED_TOURNIQUET});
	take((struct input){.act = ACT_CARD, .card = CARD_OFF});
	pass(20);
	assert_int_equal(tick(), 20);
	pass(5);
	assert_int_equal(stands(), 1);
	assert_string_equal(
	    first_said(), "Bay 3: left ring finger, off and not accounted for, 25 min, no scan since 10:00");
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
	    TEST(after_a_power_cut_the_reminder_counts_the_time_without_power),
	    TEST(a_cut_that_ends_before_the_next_reminder_brings_none),
	    TEST(at_least_is_what_was_known_whatever_the_wall_clock_says),
	    TEST(a_wall_clock_that_went_back_over_the_cut_reminds_at_once),
	    TEST(within_one_boot_the_wall_clock_changes_no_minute),
	    TEST(off_and_not_accounted_for_counts_through_a_cut_as_well),
	    TEST(a_clock_set_ahead_and_back_holds_no_reminder_up),
	    TEST(no_reminders_are_none_after_a_cut_either),
	    TEST(a_clock_before_the_record_is_said_until_it_has_caught_up),
	    TEST(a_clock_before_the_program_was_made_is_wrong),
	    TEST(a_clock_decades_after_the_program_was_made_is_wrong),
	    TEST(a_carried_scanner_goes_home_where_the_clock_went_back_over_a_cut),
	    TEST(a_reminder_that_nobody_answers_stands_after_some_minutes),
	    TEST(later_reminders_do_not_make_it_wait_again),
	    TEST(any_scan_of_the_room_ends_it_and_no_other_does),
	    TEST(it_holds_no_other_case),
	    TEST(over_a_cut_of_unknown_length_it_stands_at_once),
	    TEST(off_and_not_accounted_for_is_said_as_such),
	};
	setenv("TZ", "UTC", 1);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
