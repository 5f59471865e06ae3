/* What keys mean, and when that cannot be said. A helper types texts as a scanner of a layout would. */
#include <linux/input-event-codes.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "drivers/handheld-meaning.h"

static struct keymaps maps;
static struct meant meant;

static int read_all(void **state)
{
	(void)state;
	return keymaps_load(&maps, LAYOUT_ALL, NULL);
}

static int drop_all(void **state)
{
	(void)state;
	keymaps_deinit(&maps);
	return 0;
}

static const unsigned order[] = {0, KEYMAP_SHIFT, KEYMAP_ALTGR};

/* The keys for a text; \x1d is typed as Ctrl and the key right of P. */
static size_t keys_for(enum layout layout, const char *text, struct stroke *out)
{
	size_t n = 0;
	for (const char *c = text; *c; c++) {
		struct stroke s = {.key = KEY_RIGHTBRACE, .mods = STROKE_CTRL};
		for (int m = 0; m < 3 && *c != '\x1d'; m++)
			for (unsigned key = 1; key < KEYMAP_KEYS; key++)
				if (maps.of[layout]->character[key][order[m]] == (uint32_t)*c) {
					s = (struct stroke){.key = (uint16_t)key, .mods = (uint8_t)order[m]};
					m = 3;
					break;
				}
		out[n++] = s;
	}
	return n;
}

static bool read_as(const struct profile *p, enum layout layout, const char *text)
{
	struct stroke s[256];
	return meaning_read(p, &maps, s, keys_for(layout, text, s), &meant);
}

static void a_known_layout_gives_every_sign_back(void **state)
{
	(void)state;
	for (int i = 0; i < LAYOUT_COUNT; i++) {
		struct profile p = profile_unknown(LAYOUT_BIT(i));
		assert_true(read_as(&p, (enum layout)i, "+A99912345/$$52001510X33 yzYZ-=&%"));
		assert_string_equal(meant.text, "+A99912345/$$52001510X33 yzYZ-=&%");
	}
}

static void the_identifier_is_taken_off(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_de));
	assert_true(read_as(&p, LAYOUT_de,
	                    "]C10109506000134352"
	                    "10AB\x1d"
	                    "21X"));
	assert_string_equal(meant.aim, "]C1");
	assert_string_equal(meant.text, "0109506000134352"
	                                "10AB\x1d"
	                                "21X");
	p.aim = PROFILE_AIM_OFF;
	assert_true(read_as(&p, LAYOUT_de, "]C1 is text"));
	assert_string_equal(meant.aim, "");
	assert_string_equal(meant.text, "]C1 is text");
	p.aim = PROFILE_AIM_ON;
	assert_false(read_as(&p, LAYOUT_de, "9506000134352"));
	assert_non_null(strstr(meant.why, "may be cut"));
}

static void an_unknown_layout_sends_only_what_all_layouts_share(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_ALL);
	for (int i = 0; i < LAYOUT_COUNT; i++) {
		assert_true(read_as(&p, (enum layout)i, "BTBC10104051"));
		assert_string_equal(meant.text, "BTBC10104051");
		assert_false(read_as(&p, (enum layout)i, "+A99912345/$$52001510X33"));
	}
	assert_true(read_as(&p, LAYOUT_us, "9506000134352"));
	assert_string_equal(meant.text, "9506000134352");
	assert_false(read_as(&p, LAYOUT_us, "LOT Z-1"));
	assert_null(strstr(meant.why, "LOT"));
}

static void layouts_that_differ_elsewhere_do_not_hold_a_code_up(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_us) | LAYOUT_BIT(LAYOUT_gb));
	assert_true(read_as(&p, LAYOUT_us, "YZ-/+$%"));
	assert_false(read_as(&p, LAYOUT_us, "A\"B"));
}

static void a_lost_separator_is_never_guessed(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_us));
	p.gs = PROFILE_GS_DROPPED;
	assert_false(read_as(&p, LAYOUT_us,
	                     "]C110AB12"
	                     "2134CD"));
	assert_non_null(strstr(meant.why, "separator"));
	assert_false(read_as(&p, LAYOUT_us,
	                     "0109506000134352"
	                     "10AB12"
	                     "2134CD"));
	/* Nothing behind it can be the next element: nothing can have been lost. */
	assert_true(read_as(&p, LAYOUT_us,
	                    "]C10109506000134352"
	                    "17261130"
	                    "10ABC"));
	assert_true(read_as(&p, LAYOUT_us,
	                    "]d20109506000134352"
	                    "17261130"));
	/* Two digits at the end have no value behind them: they are the lot's own. */
	assert_true(read_as(&p, LAYOUT_us, "]C110AB21"));
	assert_false(read_as(&p, LAYOUT_us, "]C110AB21C"));
	/* A separator that came says that they come. */
	p.gs = PROFILE_GS_UNKNOWN;
	assert_true(read_as(&p, LAYOUT_us,
	                    "]C110AB12\x1d"
	                    "2134CD"));
	/* An item label of this house has its own check. */
	assert_true(read_as(&p, LAYOUT_us, "]d291PBC0000001234"));
	/* What is not GS1 has no separators. */
	assert_true(read_as(&p, LAYOUT_us, "]C010AB122134CD"));
}

static void a_stand_in_is_put_back_only_in_gs1(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_us));
	p.gs = PROFILE_GS_TEXT;
	p.gs_text = '#';
	assert_true(read_as(&p, LAYOUT_us, "]C110AB12#2134CD"));
	assert_string_equal(meant.text, "10AB12\x1d"
	                                "2134CD");
	assert_true(read_as(&p, LAYOUT_us, "]Q1room #4"));
	assert_string_equal(meant.text, "room #4");
	p.gs_text = '/'; /* a lot can hold it */
	assert_false(read_as(&p, LAYOUT_us, "]C110AB12/2134CD"));
}

static void what_stands_around_must_be_there_and_is_taken_off(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_us));
	strcpy(p.prefix, "<<");
	strcpy(p.suffix, ">");
	assert_true(read_as(&p, LAYOUT_us, "<<]E09506000134352>"));
	assert_string_equal(meant.text, "9506000134352");
	assert_string_equal(meant.aim, "]E0");
	assert_false(read_as(&p, LAYOUT_us, "]E09506000134352>"));
	assert_false(read_as(&p, LAYOUT_us, "<<]E09506000134352"));
}

static void a_key_that_means_nothing_stops_the_code(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_us));
	struct stroke s[] = {{.key = KEY_1}, {.key = KEY_F8}, {.key = KEY_2}};
	assert_false(meaning_read(&p, &maps, s, 3, &meant));
	assert_non_null(strstr(meant.why, "KEY_F8"));
	p.gs = PROFILE_GS_CHORD;
	p.gs_key = KEY_F8;
	assert_true(meaning_read(&p, &maps, s, 3, &meant));
	assert_string_equal(meant.text, "1\x1d"
	                                "2");
}

static void a_dead_key_needs_its_space(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_de));
	struct stroke s[] = {{.key = KEY_1}, {.key = KEY_GRAVE}, {.key = KEY_SPACE}, {.key = KEY_A}};
	assert_true(meaning_read(&p, &maps, s, 4, &meant));
	assert_string_equal(meant.text, "1^a");
	s[2].key = KEY_A;
	assert_false(meaning_read(&p, &maps, s, 4, &meant));
}

static void caps_lock_as_it_was_learned(void **state)
{
	(void)state;
	struct profile p = profile_unknown(LAYOUT_BIT(LAYOUT_us));
	p.letters = PROFILE_CASE_SWAPPED;
	assert_true(read_as(&p, LAYOUT_us, "aB1"));
	assert_string_equal(meant.text, "Ab1");
	p.letters = PROFILE_CASE_UNKNOWN;
	assert_false(read_as(&p, LAYOUT_us, "aB1"));
	assert_true(read_as(&p, LAYOUT_us, "]C1123"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_known_layout_gives_every_sign_back),
	    cmocka_unit_test(the_identifier_is_taken_off),
	    cmocka_unit_test(an_unknown_layout_sends_only_what_all_layouts_share),
	    cmocka_unit_test(layouts_that_differ_elsewhere_do_not_hold_a_code_up),
	    cmocka_unit_test(a_lost_separator_is_never_guessed),
	    cmocka_unit_test(a_stand_in_is_put_back_only_in_gs1),
	    cmocka_unit_test(what_stands_around_must_be_there_and_is_taken_off),
	    cmocka_unit_test(a_key_that_means_nothing_stops_the_code),
	    cmocka_unit_test(a_dead_key_needs_its_space),
	    cmocka_unit_test(caps_lock_as_it_was_learned),
	};
	return cmocka_run_group_tests(tests, read_all, drop_all);
}
