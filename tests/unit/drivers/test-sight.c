/* Whether a camera sees at all, by made frames: a scene with grain, darkness with grain, an even surface, a still picture. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

#include "drivers/sight.h"

#define WIDE 640
#define HIGH 360

static uint8_t pixels[WIDE * HIGH];
static const struct plane frame = {pixels, WIDE, HIGH};
static struct sight sight;
static uint32_t dice;

static int grain(int most)
{
	dice = dice * 1664525u + 1013904223u;
	return most ? (int)(dice >> 16) % (2 * most + 1) - most : 0;
}

static uint8_t lit(int light)
{
	return (uint8_t)(light < 0 ? 0 : light > 255 ? 255 : light);
}

/* `falls`: by how much it is darker at the right edge than at the left one. */
static void surface(int light, int falls, int noise)
{
	for (int i = 0; i < WIDE * HIGH; i++)
		pixels[i] = lit(light - i % WIDE * falls / WIDE + grain(noise));
}

/* A bright thing on a table. */
static void scene(int table, int thing, int noise)
{
	for (int i = 0; i < WIDE * HIGH; i++) {
		bool on_it = i % WIDE > 200 && i % WIDE < 420 && i / WIDE > 100 && i / WIDE < 260;
		pixels[i] = lit((on_it ? thing : table) + grain(noise));
	}
}

/* Ten frames a second, each drawn anew; the time when the last one came that changed what is told, or -1. */
static int64_t told_at(int64_t from_ms, int64_t to_ms, void (*draw)(void))
{
	int64_t last = -1;
	for (int64_t t = from_ms; t < to_ms; t += 100) {
		draw();
		if (sight_frame(&sight, &frame, t))
			last = t;
	}
	return last;
}

static void ordinary(void)
{
	scene(90, 200, 6);
}

static void still(void)
{
	dice = 5;
	scene(90, 200, 6);
}

static void night(void)
{
	surface(9, 0, 8);
}

static void cap(void)
{
	surface(3, 0, 0);
}

static int anew(void **state)
{
	(void)state;
	sight = (struct sight){0};
	dice = 1;
	return 0;
}

static void a_table_with_a_thing_on_it_is_seen(void **state)
{
	(void)state;
	scene(90, 200, 6);
	assert_int_equal(sight_of(&frame), SEES_WELL);
}

static void a_drape_under_a_lamp_is_seen_though_it_has_no_edge(void **state)
{
	(void)state;
	surface(150, 20, 3);
	assert_int_equal(sight_of(&frame), SEES_WELL);
}

static void a_room_without_light_is_dark(void **state)
{
	(void)state;
	surface(9, 0, 8);
	assert_int_equal(sight_of(&frame), SEES_DARK);
	scene(8, 40, 0); /* a lamp of another machine */
	assert_int_equal(sight_of(&frame), SEES_DARK);
}

static void a_lens_with_something_before_it_is_covered_black_or_bright(void **state)
{
	(void)state;
	surface(3, 0, 0);
	assert_int_equal(sight_of(&frame), SEES_COVERED);
	surface(120, 0, 6);
	assert_int_equal(sight_of(&frame), SEES_COVERED);
}

static void a_frame_of_one_pixel_says_nothing(void **state)
{
	(void)state;
	assert_int_equal(sight_of(&(struct plane){pixels, 1, 1}), SEES_WELL);
}

static void darkness_is_told_once_and_that_it_is_over(void **state)
{
	(void)state;
	assert_int_equal(told_at(0, 2000, ordinary), -1);
	assert_int_equal(told_at(2000, 30000, night), 2000 + SIGHT_BLIND_MS);
	assert_int_equal(sight.told, SEES_DARK);
	assert_int_equal(told_at(30000, 40000, ordinary), 30000 + SIGHT_AGAIN_MS);
	assert_int_equal(sight.told, SEES_WELL);
}

static void a_hand_before_the_lens_is_not_told(void **state)
{
	(void)state;
	told_at(0, 2000, ordinary);
	assert_int_equal(told_at(2000, 2000 + SIGHT_BLIND_MS - 200, cap), -1);
	assert_int_equal(told_at(7000, 9000, ordinary), -1);
}

static void a_cap_is_covered_and_not_frozen_though_each_frame_is_the_same(void **state)
{
	(void)state;
	assert_int_equal(told_at(0, 30000, cap), SIGHT_BLIND_MS);
	assert_int_equal(sight.told, SEES_COVERED);
}

static void the_same_frame_again_and_again_is_frozen(void **state)
{
	(void)state;
	assert_int_equal(told_at(0, 2000, ordinary), -1);
	assert_int_equal(told_at(2000, 30000, still), 2000 + SIGHT_FROZEN_MS);
	assert_int_equal(sight.told, SEES_FROZEN);
	assert_int_equal(told_at(30000, 32000, ordinary), 30000 + SIGHT_AGAIN_MS);
}

static void a_scene_in_which_nothing_moves_is_not_frozen(void **state)
{
	(void)state;
	assert_int_equal(told_at(0, 60000, ordinary), -1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(a_table_with_a_thing_on_it_is_seen, anew),
	    cmocka_unit_test_setup(a_drape_under_a_lamp_is_seen_though_it_has_no_edge, anew),
	    cmocka_unit_test_setup(a_room_without_light_is_dark, anew),
	    cmocka_unit_test_setup(a_lens_with_something_before_it_is_covered_black_or_bright, anew),
	    cmocka_unit_test_setup(a_frame_of_one_pixel_says_nothing, anew),
	    cmocka_unit_test_setup(darkness_is_told_once_and_that_it_is_over, anew),
	    cmocka_unit_test_setup(a_hand_before_the_lens_is_not_told, anew),
	    cmocka_unit_test_setup(a_cap_is_covered_and_not_frozen_though_each_frame_is_the_same, anew),
	    cmocka_unit_test_setup(the_same_frame_again_and_again_is_frozen, anew),
	    cmocka_unit_test_setup(a_scene_in_which_nothing_moves_is_not_frozen, anew),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
