/* The profile's file, what is undecided, and that the sheet's copy here is the sheet. */
#include <errno.h>
#include <linux/input-event-codes.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "drivers/profile-learn.h"
#include "labels/paper.h"

static struct keymaps maps;

static int read_file(const char *text, struct profile *out, struct error *e)
{
	char path[] = "/tmp/profile-XXXXXX";
	int fd = mkstemp(path);
	assert_true(fd >= 0);
	assert_int_equal(write(fd, text, strlen(text)), strlen(text));
	close(fd);
	int r = profile_read(path, out, e);
	unlink(path);
	return r;
}

static void what_is_written_is_read_back(void **state)
{
	(void)state;
	static const char *const texts[] = {"[scanner]\nlayout = de\ncase = typed\ngs = ctrl "
	                                    "KEY_RIGHTBRACE\naim = on\nprefix = 02\nsuffix = \n"
	                                    "end = enter\ngap_ms = 150\n",
	                                    "[scanner]\nlayout = se no dk fi\ncase = swapped\ngs = alt "
	                                    "0029\naim = off\nprefix = \nsuffix = 7c7c\n"
	                                    "end = none\ngap_ms = 60\n",
	                                    "[scanner]\nlayout = us\ncase = unknown\ngs = text 23\naim = "
	                                    "unknown\nprefix = unknown\nsuffix = unknown\n"
	                                    "end = tab\ngap_ms = 2000\n",
	                                    "[scanner]\nlayout = fr\ncase = typed\ngs = dropped\naim = "
	                                    "off\nprefix = \nsuffix = \nend = unknown\n"
	                                    "gap_ms = 20\n"};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		struct profile p;
		struct buf out = {0};
		struct error e = {0};
		assert_int_equal(read_file(texts[i], &p, &e), 0);
		assert_int_equal(profile_write(&p, &out), 0);
		assert_string_equal(out.data, texts[i]);
		buf_free(&out);
	}
}

static void what_is_not_a_profile_is_refused_with_its_line(void **state)
{
	(void)state;
	static const char *const bad[] = {
	    "[scanner]\nlayout = nl\n", "[scanner]\nlayout =\n",    "[scanner]\ngs = ctrl\n",
	    "[scanner]\ngs = KEY_NO\n", "[scanner]\ngs = text 0\n", "[scanner]\ngs = text 20\n",
	    "[scanner]\naim = yes\n",   "[scanner]\nprefix = 0\n",  "[scanner]\nprefix = 00\n",
	    "[scanner]\nend = lf\n",    "[scanner]\ngap_ms = 5\n",  "[scanner]\ngap_ms = 1e2\n",
	    "[scanner]\nlayou = us\n",  "[camera]\nlayout = us\n",  "[scanner]\nlayout = us\nlayout = de\n"};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct profile p;
		struct error e = {0};
		assert_int_equal(read_file(bad[i], &p, &e), -EINVAL);
		assert_non_null(strstr(e.text, " line "));
	}
	struct profile p;
	struct error e = {0};
	assert_int_equal(profile_read("/nonexistent/profile.ini", &p, &e), -ENOENT);
}

static void what_is_undecided_is_said_in_words(void **state)
{
	(void)state;
	struct buf words = {0};
	struct profile p = profile_unknown(LAYOUT_ALL);
	assert_int_equal(profile_undecided(&p, &maps, &words), 4);
	assert_non_null(strstr(words.data, "layout"));
	buf_free(&words);
	p.layouts = LAYOUT_BIT(LAYOUT_se) | LAYOUT_BIT(LAYOUT_fi);
	p.gs = PROFILE_GS_CHORD;
	p.aim = PROFILE_AIM_ON;
	p.end = TYPING_END_ENTER;
	assert_int_equal(profile_undecided(&p, &maps, &words), 0);
	p.gs = PROFILE_GS_TEXT;
	p.gs_text = '%';
	assert_int_equal(profile_undecided(&p, &maps, &words), 1);
	buf_free(&words);
}

static void the_sheet_here_is_the_sheet_that_is_printed(void **state)
{
	(void)state;
#define X(name, symbol, text) #name " " #symbol " " text,
	static const char *const here[] = {LEARN_SAMPLES(X)}, *const printed[] = {PAPER_SAMPLES(X)};
#undef X
	assert_int_equal(sizeof here, sizeof printed);
	for (size_t i = 0; i < sizeof here / sizeof *here; i++)
		assert_string_equal(here[i], printed[i]);
}

/* A US scanner: the keys of its alphabet in a row of text; unknown characters are passed over by the test. */
static enum learner_heard add(struct learner *l, const char *text)
{
	struct stroke s[LEARN_STROKES_MAX];
	size_t n = 0;
	for (const char *c = text; *c; c++)
		for (unsigned key = 0; key < KEYMAP_KEYS; key++)
			for (unsigned m = 0; m < 2; m++)
				if (key < KEY_KP7 && maps.of[LAYOUT_us]->character[key][m] == (uint32_t)*c) {
					s[n++] = (struct stroke){.key = (uint16_t)key, .mods = (uint8_t)m};
					m = 2;
					key = KEYMAP_KEYS;
				}
	return learner_add(l, &maps, s, n, 4);
}

static void a_sample_that_was_passed_over_leaves_the_layout_open(void **state)
{
	(void)state;
	static struct learner l;
	struct profile p;
	struct error e = {0};
	struct buf words = {0};
	l = (struct learner){0};
	add(&l, "BTBC60191\n");
	add(&l, "0123456789\n");
	add(&l, "BTBC60288\n");
	assert_int_equal(learner_result(&l, &maps, &p, &e), 0);
	assert_int_equal(p.layouts, LAYOUT_ALL & ~LAYOUT_BIT(LAYOUT_fr));
	assert_true(profile_undecided(&p, &maps, &words) > 0);
	buf_free(&words);
}

static void without_the_start_code_nothing_is_learned(void **state)
{
	(void)state;
	static struct learner l;
	struct profile p;
	struct error e = {0};
	l = (struct learner){0};
	add(&l, "0123456789\n");
	assert_int_equal(learner_result(&l, &maps, &p, &e), -ENODATA);
	assert_non_null(strstr(e.text, "scan the sheet again"));
}

/* Capitals only: LOWER is explained by no layout. */
static void a_scanner_that_makes_all_capitals_is_not_trusted_with_letters(void **state)
{
	(void)state;
	static struct learner l;
	struct profile p;
	struct error e = {0};
	l = (struct learner){0};
	add(&l, "BTBC60191\n");
	add(&l, "ABCDEFGHIJKLMNOPQRSTUVWXYZ\n");
	add(&l, "-./+$% :*()=&#\n");
	add(&l, "ABCDEFGHIJKLMNOPQRSTUVWXYZ\n"); /* what LOWER became */
	assert_int_equal(learner_result(&l, &maps, &p, &e), 0);
	assert_int_equal(p.layouts, LAYOUT_BIT(LAYOUT_us));
	assert_int_equal(p.letters, PROFILE_CASE_UNKNOWN);
}

static void a_card_badge_or_digit_is_noticed_whatever_else_was_read(void **state)
{
	(void)state;
	static struct learner l;
	l = (struct learner){0};
	assert_int_equal(add(&l, "BTBC60191\n"), LEARNER_BEGIN);
	assert_int_equal(add(&l, "BTBC10104051\n"), LEARNER_OURS);
	assert_string_equal(l.ours, "BTBC10104051");
	assert_int_equal(add(&l, "]C0BTBC300000111\n"),
	                 LEARNER_OURS); /* a badge, with what the scanner adds */
	assert_string_equal(l.ours, "BTBC300000111");
	assert_int_equal(add(&l, "BTBC10104052\n"), LEARNER_OTHER); /* misread */
	assert_int_equal(add(&l, "BTBC1010405\n"), LEARNER_OTHER);  /* cut off */
	assert_int_equal(l.count, 3);
	while (l.count < LEARN_CODES_MAX)
		add(&l, "0123456789\n");
	assert_int_equal(add(&l, "BTBC2010767\n"), LEARNER_OURS);
	assert_int_equal(l.count, LEARN_CODES_MAX);
}

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

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_is_written_is_read_back),
	    cmocka_unit_test(what_is_not_a_profile_is_refused_with_its_line),
	    cmocka_unit_test(what_is_undecided_is_said_in_words),
	    cmocka_unit_test(the_sheet_here_is_the_sheet_that_is_printed),
	    cmocka_unit_test(a_sample_that_was_passed_over_leaves_the_layout_open),
	    cmocka_unit_test(without_the_start_code_nothing_is_learned),
	    cmocka_unit_test(a_card_badge_or_digit_is_noticed_whatever_else_was_read),
	    cmocka_unit_test(a_scanner_that_makes_all_capitals_is_not_trusted_with_letters),
	};
	return cmocka_run_group_tests(tests, read_all, drop_all);
}
