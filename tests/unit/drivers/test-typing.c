/* Where a code begins and ends in the keys that a scanner types. */
#include <linux/input-event-codes.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "drivers/handheld-typing.h"

static struct typing t;

static enum typing_result press(unsigned key, int64_t ms)
{
	assert_int_equal(typing_tick(&t, ms), TYPING_NOTHING);
	enum typing_result r = typing_key(&t, key, 1, ms);
	assert_int_equal(typing_key(&t, key, 0, ms), TYPING_NOTHING);
	return r;
}

static void a_code_ends_with_its_key(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	press(KEY_A, 1);
	press(KEY_TAB, 2); /* data, for this scanner */
	assert_int_equal(press(KEY_KPENTER, 3), TYPING_CODE);
	assert_int_equal(t.count, 2);
	assert_int_equal(t.last_ms, 3);
	typing_clear(&t);
	assert_int_equal(press(KEY_ENTER, 4), TYPING_NOTHING); /* a second Enter is no code */

	typing_init(&t, TYPING_END_TAB, 150, 0, false);
	press(KEY_A, 1);
	assert_int_equal(press(KEY_TAB, 2), TYPING_CODE);
}

static void a_code_whose_end_does_not_come_is_partial(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	press(KEY_A, 5);
	assert_int_equal(typing_due_ms(&t), 5 + TYPING_UNFINISHED_MS);
	assert_int_equal(typing_tick(&t, 5 + TYPING_UNFINISHED_MS - 1), TYPING_NOTHING);
	assert_int_equal(typing_tick(&t, 5 + TYPING_UNFINISHED_MS), TYPING_PARTIAL);
}

static void silence_ends_a_code_only_where_no_key_does(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_SILENCE, 80, 0, false);
	press(KEY_A, 0);
	press(KEY_B, 79);
	assert_int_equal(typing_tick(&t, 159), TYPING_CODE);
	assert_int_equal(t.count, 2);
	typing_init(&t, TYPING_END_UNKNOWN, 80, 0, false);
	press(KEY_A, 0);
	assert_int_equal(typing_tick(&t, 2000), TYPING_PARTIAL);
}

static void keys_under_way_when_the_scanner_is_opened_are_no_code(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 1000, true);
	press(KEY_3, 1010);
	press(KEY_4, 1020);
	assert_int_equal(press(KEY_ENTER, 1030), TYPING_SKIPPED);
	assert_int_equal(t.skipped, 2);
	press(KEY_5, 1040);
	assert_int_equal(press(KEY_ENTER, 1050), TYPING_CODE);

	typing_init(&t, TYPING_END_ENTER, 150, 1000, true);
	assert_int_equal(typing_tick(&t, 1000 + TYPING_SETTLE_MS), TYPING_NOTHING);
	press(KEY_5, 1300);
	assert_int_equal(press(KEY_ENTER, 1301), TYPING_CODE);
}

static void lost_keys_take_the_whole_code_with_them(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	press(KEY_1, 1);
	press(KEY_2, 2);
	typing_key(&t, KEY_LEFTSHIFT, 1, 3);
	assert_int_equal(typing_lost(&t, 4), 2);
	press(KEY_3, 5);
	assert_int_equal(press(KEY_ENTER, 6), TYPING_SKIPPED);
	press(KEY_4, 7);
	assert_int_equal(press(KEY_ENTER, 8), TYPING_CODE);
	assert_int_equal(t.count, 1);
	assert_int_equal(t.strokes[0].mods, 0); /* the Shift that was down before is forgotten */
}

static void alt_and_the_keypad_make_one_stroke(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	press(KEY_A, 1);
	typing_key(&t, KEY_LEFTALT, 1, 2);
	press(KEY_KP0, 3);
	press(KEY_KP0, 4);
	press(KEY_KP2, 5);
	press(KEY_KP9, 6);
	typing_key(&t, KEY_LEFTALT, 0, 7);
	press(KEY_KP9, 8);
	assert_int_equal(press(KEY_ENTER, 9), TYPING_CODE);
	assert_int_equal(t.count, 3);
	assert_int_equal(t.strokes[1].key, 0);
	assert_int_equal(t.strokes[1].number, 29);
	assert_int_equal(t.strokes[2].key, KEY_KP9);
}

/* A separator sent as Alt+0029 whose Alt did not come up: the code may lack it, and the next one must not begin with it. */
static void a_code_that_ends_before_alt_is_let_go_of_is_partial(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	press(KEY_A, 1);
	typing_key(&t, KEY_LEFTALT, 1, 2);
	press(KEY_KP2, 3);
	press(KEY_KP9, 4);
	assert_int_equal(press(KEY_ENTER, 5), TYPING_PARTIAL);
	typing_clear(&t);
	assert_int_equal(typing_pending(&t), 0);
	typing_key(&t, KEY_LEFTALT, 0, 6);
	press(KEY_A, 7);
	assert_int_equal(press(KEY_ENTER, 8), TYPING_CODE);
	assert_int_equal(t.count, 1);
}

static void alt_and_the_keypad_reach_the_last_letter(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	typing_key(&t, KEY_LEFTALT, 1, 2);
	press(KEY_KP2, 3);
	press(KEY_KP5, 4);
	press(KEY_KP5, 5);
	typing_key(&t, KEY_LEFTALT, 0, 7);
	assert_int_equal(press(KEY_ENTER, 9), TYPING_CODE);
	assert_int_equal(t.strokes[0].number, 255);
}

static void ctrl_and_left_alt_is_altgr(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	typing_key(&t, KEY_LEFTCTRL, 1, 1);
	typing_key(&t, KEY_LEFTALT, 1, 1);
	press(KEY_9, 1);
	typing_key(&t, KEY_LEFTALT, 0, 1);
	typing_key(&t, KEY_LEFTCTRL, 0, 1);
	assert_int_equal(t.count, 1);
	assert_int_equal(t.strokes[0].mods, STROKE_ALTGR);
}

static void a_held_key_is_one_stroke_and_caps_lock_none(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	typing_key(&t, KEY_A, 1, 1);
	typing_key(&t, KEY_A, 2, 300);
	typing_key(&t, KEY_A, 2, 333);
	typing_key(&t, KEY_A, 0, 340);
	press(KEY_CAPSLOCK, 341);
	press(KEY_B, 342);
	assert_int_equal(t.count, 2);
	assert_int_equal(t.strokes[1].mods, STROKE_CAPS);
}

static void a_code_longer_than_any_says_so(void **state)
{
	(void)state;
	typing_init(&t, TYPING_END_ENTER, 150, 0, false);
	for (int i = 0; i < TYPING_STROKES_MAX + 50; i++)
		press(KEY_1, i);
	assert_int_equal(press(KEY_ENTER, TYPING_STROKES_MAX + 51), TYPING_CODE);
	assert_true(t.count > TYPING_STROKES_MAX);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_code_ends_with_its_key),
	    cmocka_unit_test(a_code_whose_end_does_not_come_is_partial),
	    cmocka_unit_test(silence_ends_a_code_only_where_no_key_does),
	    cmocka_unit_test(keys_under_way_when_the_scanner_is_opened_are_no_code),
	    cmocka_unit_test(lost_keys_take_the_whole_code_with_them),
	    cmocka_unit_test(alt_and_the_keypad_make_one_stroke),
	    cmocka_unit_test(a_code_that_ends_before_alt_is_let_go_of_is_partial),
	    cmocka_unit_test(alt_and_the_keypad_reach_the_last_letter),
	    cmocka_unit_test(ctrl_and_left_alt_is_altgr),
	    cmocka_unit_test(a_held_key_is_one_stroke_and_caps_lock_none),
	    cmocka_unit_test(a_code_longer_than_any_says_so),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
