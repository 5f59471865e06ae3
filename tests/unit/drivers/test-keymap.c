/* What keys type in which layout. Measured facts: libxkbcommon 1.5 on Debian 12, asked by another program. */
#include <errno.h>
#include <linux/input-event-codes.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "drivers/keymap.h"

static struct keymap maps[LAYOUT_COUNT];

static int read_all(void **state)
{
	struct error e;
	(void)state;
	for (int i = 0; i < LAYOUT_COUNT; i++)
		if (keymap_init(&maps[i], (enum layout)i, &e) < 0)
			return -1;
	return 0;
}

static void a_us_key_types_another_sign_elsewhere(void **state)
{
	(void)state;
	assert_int_equal(maps[LAYOUT_us].character[KEY_Z][0], 'z');
	assert_int_equal(maps[LAYOUT_de].character[KEY_Z][0], 'y');
	assert_int_equal(maps[LAYOUT_ch].character[KEY_Y][KEYMAP_SHIFT], 'Z');
	assert_int_equal(maps[LAYOUT_de].character[KEY_RIGHTBRACE][0], '+');
	assert_int_equal(maps[LAYOUT_fr].character[KEY_1][0], '&');
	assert_int_equal(maps[LAYOUT_fr].character[KEY_1][KEYMAP_SHIFT], '1');
	assert_int_equal(maps[LAYOUT_fr].character[KEY_Q][0], 'a');
	assert_int_equal(maps[LAYOUT_gb].character[KEY_2][KEYMAP_SHIFT], '"');
	assert_int_equal(maps[LAYOUT_gb].character[KEY_BACKSLASH][0], '#');
	assert_int_equal(maps[LAYOUT_de].character[KEY_9][KEYMAP_ALTGR], ']');
}

static void caps_lock_turns_letters_and_not_digits(void **state)
{
	(void)state;
	for (int i = 0; i < LAYOUT_COUNT; i++) {
		assert_int_equal(maps[i].character[KEY_B][KEYMAP_CAPS], 'B');
		assert_int_equal(maps[i].character[KEY_B][KEYMAP_CAPS | KEYMAP_SHIFT], 'b');
	}
	assert_int_equal(maps[LAYOUT_us].character[KEY_4][KEYMAP_CAPS], '4');
}

static void a_dead_key_waits(void **state)
{
	(void)state;
	assert_int_equal(maps[LAYOUT_de].character[KEY_GRAVE][0], '^' | KEYMAP_DEAD);
	assert_int_equal(maps[LAYOUT_us].character[KEY_GRAVE][0], '`');
}

/* The letters that this house's codes use are on one key in every layout; digits too, but for France. */
static void the_letters_of_our_own_codes_are_on_the_same_keys(void **state)
{
	(void)state;
	static const char letters[] = "BCDEFGHIJKLNOPRSTUVX";
	for (const char *c = letters; *c; c++) {
		unsigned key = 0;
		while (maps[LAYOUT_us].character[key][KEYMAP_SHIFT] != (uint32_t)*c)
			key++;
		for (int i = 0; i < LAYOUT_COUNT; i++)
			assert_int_equal(maps[i].character[key][KEYMAP_SHIFT], *c);
	}
}

static void four_nordic_layouts_and_two_southern_ones_stand_for_each_other(void **state)
{
	(void)state;
	static const int family[LAYOUT_COUNT] = {[LAYOUT_se] = 1, [LAYOUT_no] = 1, [LAYOUT_dk] = 1,
	                                         [LAYOUT_fi] = 1, [LAYOUT_es] = 2, [LAYOUT_it] = 2};
	for (int a = 0; a < LAYOUT_COUNT; a++)
		for (int b = 0; b < LAYOUT_COUNT; b++)
			assert_int_equal(keymap_alike(&maps[a], &maps[b]),
			                 a == b || (family[a] && family[a] == family[b]));
}

static void a_layout_has_a_name(void **state)
{
	(void)state;
	assert_string_equal(layout_name(LAYOUT_pt), "pt");
	assert_int_equal(layout_find("ch"), LAYOUT_ch);
	assert_int_equal(layout_find("nl"), -ENOENT);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_us_key_types_another_sign_elsewhere),
	    cmocka_unit_test(caps_lock_turns_letters_and_not_digits),
	    cmocka_unit_test(a_dead_key_waits),
	    cmocka_unit_test(the_letters_of_our_own_codes_are_on_the_same_keys),
	    cmocka_unit_test(four_nordic_layouts_and_two_southern_ones_stand_for_each_other),
	    cmocka_unit_test(a_layout_has_a_name),
	};
	return cmocka_run_group_tests(tests, read_all, NULL);
}
