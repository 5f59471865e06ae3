/* What a catalogue file may say, cell by cell, what a line may be, and which line a code finds. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "base/buf.h"
#include "code/code.h"
#include "count/after-end.h"
#include "count/catalogue.h"
#include "count/station.h"

#define HEAD "key,name,role,codes,per_pack,size_mm,contents,instead,marked,visible\n"
#define SEVEN_CODES "1 2 3 4 5 6 7"
#define LONG_CODE "12345678901234567890123456789012345678901"
#define THIRTEEN "A B C D E F G H I J K L M"

static struct error e;

static void a_cell_that_is_not_as_it_must_be_is_named(void **state)
{
	static const struct {
		const char *line, *words; /* words: "" it is taken */
	} facts[] = {
	    {"A,thing,other,1 2 3 4 5 6,500,45-60,,,,", ""},
	    {"A,thing,other," SEVEN_CODES ",,,,,,", "at most 6 codes"},
	    {"A,thing,other," LONG_CODE ",,,,,,", "at most 6 codes"},
	    {"A,thing,other,,0,,,,,", "from 1 to 500"},
	    {"A,thing,other,,501,,,,,", "from 1 to 500"},
	    {"A,thing,other,,1x,,,,,", "from 1 to 500"},
	    {"A,thing,other,,,60-45,,,,", "two whole numbers"},
	    {"A,thing,other,,,0-45,,,,", "two whole numbers"},
	    {"A,thing,other,,,45-60mm,,,,", "two whole numbers"},
	    {"A,thing,other,,,45,,,,", "two whole numbers"},
	    {"A,thing,tray,,,,B*2 C,,,", ""},
	    {"A,thing,tray,,,,B*2 B,,,", "each once"},
	    {"A,thing,tray,,,,B*0,,,", "each once"},
	    {"A,thing,tray,,,,*2,,,", "each once"},
	    {"A,thing,tray,,,," THIRTEEN ",,,", "at most 12 keys"},
	    {"A,thing,tray,,,,KEY-THAT-IS-LONGER-THAN-24-BYTES,,,", "at most 12 keys"},
	    {"A,thing,other,,,,,,maybe,", "yes or no"},
	    {",thing,other,,,,,,,", "key"},
	    {"A,,other,,,,,,,", "name"},
	    {"A,band,tourniquet,,,,,,no,yes", "must bear a regulator's mark"},
	    {"A,band,tourniquet,,,,,,yes,no", "must be visible"},
	    {"A,band,tourniquet,,,,,,yes,yes", ""},
	    {"A,glove finger,refused,,,,,,,", "what to use instead"},
	};
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		char text[400];
		struct line *lines = NULL;
		size_t count = 0;
		int n = snprintf(text, sizeof text, HEAD "%s\n", facts[i].line);
		int r = catalogue_read_csv(text, (size_t)n, &lines, &count, &e);
		if (r != (*facts[i].words ? -EINVAL : 0) || (r < 0 && !strstr(e.text, facts[i].words)))
			fail_msg("%s: %d: %s", facts[i].line, r, r < 0 ? e.text : "");
		assert_true(r == 0 || strstr(e.text, "line 2"));
		assert_int_equal(count, r == 0);
		free(lines);
	}
}

static struct line a_line(const char *key, const char *code)
{
	struct line l = {.role = ROLE_OTHER, .per_pack = 1};
	snprintf(l.key, sizeof l.key, "%s", key);
	snprintf(l.name, sizeof l.name, "thing %s", key);
	snprintf(l.codes[0], sizeof l.codes[0], "%s", code);
	return l;
}

static void each_kind_of_code_finds_its_line(void **state)
{
	static const struct {
		struct code code;
		const char *key; /* "" none */
	} facts[] = {
	    {{.kind = CODE_GS1, .product = "09506000134352"}, "GTIN"},
	    {{.kind = CODE_TRADE_ITEM, .product = "09506000134352"}, "GTIN"},
	    {{.kind = CODE_GS1, .product = "09506000134369"}, ""},
	    {{.kind = CODE_GS1, .giai = "9506000XYZ1"}, "GIAI"},
	    {{.kind = CODE_GS1, .giai = "9506001XYZ1"}, ""},
	    {{.kind = CODE_GS1, .grai = "09506000134376A"}, "GRAI"},
	    {{.kind = CODE_HIBC, .product = "+A9991234"}, "HIBC"},
	    {{.kind = CODE_PLAIN, .plain = "FORCEPS-7"}, "PLAIN"},
	    {{.kind = CODE_PLAIN, .plain = ""}, ""},
	    {{.kind = CODE_OWN, .product = "09506000134352", .plain = "FORCEPS-7"}, ""},
	};
	struct line lines[] = {a_line("GTIN", "09506000134352"), a_line("GIAI", "8004:9506000*"),
	                       a_line("GRAI", "8003:09506000134376A"), a_line("HIBC", "+A9991234"),
	                       a_line("PLAIN", "FORCEPS-7")};
	struct catalogue c = {0};
	(void)state;
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
		assert_int_equal(catalogue_set(&c, &lines[i], &e), 0);
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		const struct line *l = catalogue_by_code(&c, &facts[i].code);
		if (strcmp(l ? l->key : "", facts[i].key) != 0)
			fail_msg("%d finds '%s'", (int)i, l ? l->key : "");
	}
	struct line other = a_line("OTHER", "9");
	snprintf(other.codes[1], LINE_CODE_MAX, "FORCEPS-7");
	assert_int_equal(catalogue_set(&c, &other, &e), -EINVAL);
	assert_non_null(strstr(e.text, "already finds another line"));
	other.codes[1][0] = 0;
	other.per_pack = 0;
	assert_int_equal(catalogue_set(&c, &other, &e), -EINVAL);
	assert_non_null(strstr(e.text, "per_pack must be 1 or more"));
	assert_int_equal(c.count, sizeof lines / sizeof *lines);
	assert_string_equal(identity_name(IDENTITY_MARK), "mark");
	assert_string_equal(identity_name((enum identity_kind)(IDENTITY_MARK + 1)), "unknown");
	catalogue_deinit(&c);
}

static void a_file_that_is_written_is_read_again_the_same(void **state)
{
	_cleanup_(buf_free) struct buf text = {0}, again = {0};
	struct catalogue c = {0};
	struct line tray = a_line("TRAY", "77");
	tray.role = ROLE_TRAY;
	tray.size_min_mm = 45;
	tray.size_max_mm = 60;
	snprintf(tray.codes[1], LINE_CODE_MAX, "78");
	snprintf(tray.name, sizeof tray.name, "tray, \"small\"");
	snprintf(tray.contents[0].key, LINE_KEY_MAX, "BAND");
	tray.contents[0].count = 2;
	snprintf(tray.contents[1].key, LINE_KEY_MAX, "CLAMP");
	tray.contents[1].count = 1;
	(void)state;
	assert_int_equal(catalogue_set(&c, &tray, &e), 0);
	assert_int_equal(catalogue_write_csv(&c, &text), 0);
	assert_non_null(strstr(text.data, "\"tray, \"\"small\"\"\""));
	struct catalogue back = {0};
	assert_int_equal(catalogue_read_csv(text.data, text.size, &back.lines, &back.count, &e), 0);
	assert_int_equal(back.count, 1);
	assert_memory_equal(back.lines, &tray, sizeof tray);
	assert_int_equal(catalogue_write_csv(&back, &again), 0);
	assert_string_equal(again.data, text.data);
	catalogue_deinit(&back);
	catalogue_deinit(&c);
}

/* More cases than the list has places: they are counted, and paid off the count. */
static void what_is_owed_after_the_end_is_counted_beyond_its_places(void **state)
{
	static struct station st;
	struct event owed = {.kind = EV_OWED, .room = 1, .what = DEBT_LOOK, .digit = 2};
	struct event paid = {.kind = EV_PAID, .room = 1, .what = DEBT_LOOK, .digit = 2};
	(void)state;
	for (int i = 0; i <= AFTER_END_MAX; i++) {
		owed.case_no = i + 1;
		after_end_apply(&st, &owed);
		after_end_apply(&st, &owed); /* owed once */
	}
	assert_int_equal(st.n_after, AFTER_END_MAX);
	assert_int_equal(st.more_after, 2); /* of what has no place nobody knows that it is the same */
	paid.case_no = 9999;
	after_end_apply(&st, &paid);
	assert_int_equal(st.more_after, 1);
	paid.case_no = 1;
	after_end_apply(&st, &paid);
	assert_int_equal(st.n_after, AFTER_END_MAX - 1);
	assert_int_equal(st.after[0].case_no, 2);
	paid.digit = 3;
	paid.case_no = 2;
	after_end_apply(&st, &paid); /* another digit than the one that is owed */
	assert_int_equal(st.n_after, AFTER_END_MAX - 1);
	assert_int_equal(st.more_after, 0);
	after_end_apply(&st, &paid);
	assert_int_equal(st.more_after, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_cell_that_is_not_as_it_must_be_is_named),
	    cmocka_unit_test(each_kind_of_code_finds_its_line),
	    cmocka_unit_test(a_file_that_is_written_is_read_again_the_same),
	    cmocka_unit_test(what_is_owed_after_the_end_is_counted_beyond_its_places),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
