/* When a reading counts as a code, and when a code before a camera is a scan. Values in, values out. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "drivers/steady.h"
#include "drivers/witness.h"

static struct readings seen;
static struct codes codes;
static const struct witness_rules no_least;

static struct reading *read_as(enum witness w, enum symbology s, const char *aim, const char *data, int times)
{
	struct reading *r = &seen.item[seen.count++];
	*r = (struct reading){
	    .witness = w, .symbology = s, .size = strlen(data), .times = times, .box = {100, 100, 300, 160}};
	strcpy(r->aim, aim);
	memcpy(r->data, data, r->size);
	return r;
}

static size_t judged(void)
{
	witness_judge(&seen, &no_least, &codes);
	return codes.count;
}

static int nothing_seen(void **state)
{
	(void)state;
	seen.count = 0;
	return 0;
}

static void an_ean_that_only_one_witness_read_does_not_count(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_EAN, "]E0", "9506000134352", 40);
	assert_int_equal(judged(), 0);
}

static void an_ean_that_both_read_counts_once(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_EAN, "]E0", "9506000134352", 1);
	read_as(WITNESS_ZXING, SYMBOLOGY_EAN, "]E0", "9506000134352", 1);
	assert_int_equal(judged(), 1);
}

static void a_rival_that_a_witness_read_as_often_stops_it(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_EAN, "]E0", "0012546619592", 5);
	read_as(WITNESS_ZXING, SYMBOLOGY_EAN, "]E0", "0012546619592", 5);
	struct reading *rival = read_as(WITNESS_ZBAR, SYMBOLOGY_EAN, "]E0", "6087746619592", 5);
	assert_int_equal(judged(), 0);
	rival->times = 4;
	assert_int_equal(judged(), 1);
	rival->times = 5;
	rival->box = (struct box){100, 400, 300, 460}; /* another code below it is no rival */
	assert_int_equal(judged(), 1);
}

static void code_128_counts_only_with_the_same_gs1_mark(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_CODE128, "]C1", "10ABC", 3);
	struct reading *x = read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", "10ABC", 3);
	assert_int_equal(judged(), 0);
	strcpy(x->aim, "]C1");
	assert_int_equal(judged(), 1);
	assert_string_equal(codes.item[0]->aim, "]C1");
}

static void letters_beyond_ascii_come_from_the_witness_that_sees_fnc4(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_CODE128, "]C0", "sab", 3);
	assert_int_equal(judged(), 0); /* alone it would be a wrong text */
	read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", "\xf3\x61\xe2", 1);
	assert_int_equal(judged(), 1);
	assert_memory_equal(codes.item[0]->data, "\xf3\x61\xe2", 3);
}

static void qr_and_data_matrix_count_by_one_witness(void **state)
{
	(void)state;
	read_as(WITNESS_ZXING, SYMBOLOGY_DATAMATRIX, "]d2", "91P100001K", 1);
	read_as(WITNESS_ZBAR, SYMBOLOGY_QR, "]Q1", "x", 1)->box = (struct box){500, 500, 600, 600};
	assert_int_equal(judged(), 2);
}

static void a_part_of_a_larger_message_is_never_a_code(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_QR, "]Q1", "first half", 9);
	read_as(WITNESS_ZXING, SYMBOLOGY_QR, "]Q1", "first half", 1)->in_part = true;
	assert_int_equal(judged(), 0);
}

static void two_qr_texts_in_one_place_cancel_each_other(void **state)
{
	(void)state;
	read_as(WITNESS_ZBAR, SYMBOLOGY_QR, "]Q1", "one", 2);
	read_as(WITNESS_ZXING, SYMBOLOGY_QR, "]Q1", "two", 2);
	assert_int_equal(judged(), 0);
}

static void a_least_length_is_kept(void **state)
{
	(void)state;
	struct witness_rules rules = {.least = {[SYMBOLOGY_ITF] = 8}};
	read_as(WITNESS_ZBAR, SYMBOLOGY_ITF, "]I0", "123456", 2);
	read_as(WITNESS_ZXING, SYMBOLOGY_ITF, "]I0", "123456", 2);
	witness_judge(&seen, &rules, &codes);
	assert_int_equal(codes.count, 0);
	rules.least[SYMBOLOGY_ITF] = 6;
	witness_judge(&seen, &rules, &codes);
	assert_int_equal(codes.count, 1);
}

static void readings_in_one_place_are_counted_and_elsewhere_listed(void **state)
{
	(void)state;
	struct reading one = *read_as(WITNESS_ZBAR, SYMBOLOGY_EAN, "]E0", "9506000134352", 1);
	readings_add(&seen, &one);
	assert_int_equal(seen.count, 1);
	assert_int_equal(seen.item[0].times, 2);
	one.box = (struct box){100, 300, 300, 300};
	readings_add(&seen, &one);
	assert_int_equal(seen.count, 2);
	/* One scan line through a code lies in its place. */
	struct box line = {100, 150, 300, 150}, code = {110, 90, 290, 160};
	assert_true(boxes_meet(&line, &code));
}

/* A camera at 20 frames a second. */
static const struct steady_rules rules = {.frames = 3, .away_ms = 1500, .still_px = 20};
static struct steady table;

/* Two codes in one frame; how many are told. */
static size_t frame_of_two(int64_t now_ms, const char *a, const char *b)
{
	struct codes tell;
	seen.count = codes.count = 0;
	codes.item[codes.count++] = read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", a, 1);
	struct reading *r = read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", b, 1);
	r->box.left += 400;
	r->box.right += 400;
	codes.item[codes.count++] = r;
	steady_frame(&table, &rules, &codes, now_ms, &tell);
	return tell.count;
}

static size_t frame(int64_t now_ms, const char *data, int x)
{
	struct codes tell;
	seen.count = codes.count = 0;
	if (data) {
		struct reading *r = read_as(WITNESS_ZXING, SYMBOLOGY_QR, "]Q1", data, 1);
		r->box.left += x;
		r->box.right += x;
		codes.item[codes.count++] = r;
	}
	steady_frame(&table, &rules, &codes, now_ms, &tell);
	return tell.count;
}

static int empty_table(void **state)
{
	table = (struct steady){0};
	return nothing_seen(state);
}

static void a_code_is_a_scan_in_its_third_still_frame_and_then_no_more(void **state)
{
	(void)state;
	assert_int_equal(frame(0, "A", 0), 0);
	assert_int_equal(frame(50, "A", 3), 0);
	assert_int_equal(frame(100, "A", 0), 1);
	for (int i = 3; i < 2000; i++)
		assert_int_equal(frame(50 * i, "A", i % 7), 0);
}

static void a_code_in_motion_is_no_scan_until_it_stands_still(void **state)
{
	(void)state;
	for (int i = 0; i < 20; i++)
		assert_int_equal(frame(50 * i, "A", 30 * i), 0);
	assert_int_equal(frame(1000, "A", 600), 0);
	assert_int_equal(frame(1050, "A", 600), 0);
	assert_int_equal(frame(1100, "A", 600), 1);
}

static void a_short_absence_is_no_second_scan_and_a_long_one_is(void **state)
{
	(void)state;
	frame(0, "A", 0);
	frame(50, "A", 0);
	assert_int_equal(frame(100, "A", 0), 1);
	for (int t = 150; t < 1550; t += 50)
		assert_int_equal(frame(t, NULL, 0), 0);
	for (int t = 1550; t < 1800; t += 50)
		assert_int_equal(frame(t, "A", 0), 0);
	for (int t = 1800; t <= 3300; t += 50)
		frame(t, NULL, 0);
	assert_int_equal(frame(3350, "A", 0), 0);
	assert_int_equal(frame(3400, "A", 0), 0);
	assert_int_equal(frame(3450, "A", 0), 1);
}

/* Two frames without it are enough, where they are far enough apart. */
static void a_code_that_was_gone_for_two_frames_is_a_new_one(void **state)
{
	(void)state;
	for (int t = 0; t <= 100; t += 50)
		frame(t, "A", 0);
	frame(1000, NULL, 0);
	frame(2000, NULL, 0);
	assert_int_equal(frame(2050, "A", 0), 0);
	assert_int_equal(frame(2100, "A", 0), 0);
	assert_int_equal(frame(2150, "A", 0), 1);
}

#define CARD_OFF_CODE "BTBC10104051"
#define DIGIT_CODE "BTBC2010165"

static void of_two_cards_together_neither_is_a_scan(void **state)
{
	(void)state;
	for (int t = 0; t < 2000; t += 50) {
		assert_int_equal(frame_of_two(t, CARD_OFF_CODE, DIGIT_CODE), 0);
		assert_true(table.two_cards);
	}
	/* One is taken away: the other counts, but not in the blink in which a frame missed the first. */
	assert_int_equal(frame(2000, DIGIT_CODE, 0), 0);
	assert_false(table.two_cards);
	assert_int_equal(frame_of_two(2050, CARD_OFF_CODE, DIGIT_CODE), 0);
}

static void a_card_alone_is_a_scan_once_the_other_has_gone(void **state)
{
	(void)state;
	size_t told = 0;
	for (int t = 0; t < 500; t += 50)
		assert_int_equal(frame_of_two(t, CARD_OFF_CODE, "BTBC10101138"), 0);
	for (int t = 500; t < 1500; t += 50) {
		struct codes tell;
		seen.count = codes.count = 0;
		codes.item[codes.count++] =
		    read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", CARD_OFF_CODE, 1);
		steady_frame(&table, &rules, &codes, t, &tell);
		told += tell.count;
		assert_true(t >= 800 || told == 0);
	}
	assert_int_equal(told, 1);
}

/* It lies in the field and was entered: another beside it is not, and it is not entered again. */
static void a_card_that_lies_there_is_not_entered_again_for_another(void **state)
{
	(void)state;
	size_t told = 0;
	for (int t = 0; t < 4000; t += 50) {
		struct codes tell;
		seen.count = codes.count = 0;
		codes.item[codes.count++] =
		    read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", CARD_OFF_CODE, 1);
		if (t >= 1000 && t < 3000) {
			struct reading *r = read_as(WITNESS_ZXING, SYMBOLOGY_CODE128, "]C0", DIGIT_CODE, 1);
			r->box.left += 400;
			r->box.right += 400;
			codes.item[codes.count++] = r;
		}
		steady_frame(&table, &rules, &codes, t, &tell);
		told += tell.count;
	}
	assert_int_equal(told, 1);
}

static void packs_may_lie_side_by_side(void **state)
{
	(void)state;
	size_t told = 0;
	for (int t = 0; t < 500; t += 50)
		told +=
		    frame_of_two(t, "0109506000134352", "BTBC40700000410184215324"); /* a pack, and a slip */
	assert_int_equal(told, 2);
	assert_false(table.two_cards);
}

static void three_sightings_far_apart_are_no_scan(void **state)
{
	(void)state;
	for (int t = 0; t < 5000; t += 50)
		assert_int_equal(frame(t, t % 500 ? NULL : "A", 0), 0);
}

static void on_a_slow_machine_a_still_code_is_one_scan_too(void **state)
{
	(void)state;
	assert_int_equal(frame(0, "A", 0), 0);
	assert_int_equal(frame(2000, "A", 0), 0);
	assert_int_equal(frame(4000, "A", 0), 1);
	assert_int_equal(frame(6000, "A", 0), 0);
	assert_int_equal(frame(8000, NULL, 0), 0); /* not read once: no absence */
	assert_int_equal(frame(10000, "A", 0), 0);
	assert_int_equal(frame(12000, "A", 0), 0);
}

static void a_code_that_is_printed_twice_in_one_picture_counts_once(void **state)
{
	(void)state;
	read_as(WITNESS_ZXING, SYMBOLOGY_QR, "]Q1", "x", 1);
	read_as(WITNESS_ZXING, SYMBOLOGY_QR, "]Q1", "x", 1)->box = (struct box){500, 500, 600, 600};
	assert_int_equal(judged(), 1);
}

static void a_second_code_is_told_while_the_first_stays(void **state)
{
	(void)state;
	for (int t = 0; t < 300; t += 50)
		frame(t, "A", 0);
	assert_int_equal(frame(300, "B", 0), 0);
	assert_int_equal(frame(350, "B", 0), 0);
	assert_int_equal(frame(400, "B", 0), 1);
	assert_int_equal(frame(450, "A", 0), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(an_ean_that_only_one_witness_read_does_not_count, nothing_seen),
	    cmocka_unit_test_setup(an_ean_that_both_read_counts_once, nothing_seen),
	    cmocka_unit_test_setup(a_rival_that_a_witness_read_as_often_stops_it, nothing_seen),
	    cmocka_unit_test_setup(code_128_counts_only_with_the_same_gs1_mark, nothing_seen),
	    cmocka_unit_test_setup(letters_beyond_ascii_come_from_the_witness_that_sees_fnc4, nothing_seen),
	    cmocka_unit_test_setup(qr_and_data_matrix_count_by_one_witness, nothing_seen),
	    cmocka_unit_test_setup(a_part_of_a_larger_message_is_never_a_code, nothing_seen),
	    cmocka_unit_test_setup(two_qr_texts_in_one_place_cancel_each_other, nothing_seen),
	    cmocka_unit_test_setup(a_least_length_is_kept, nothing_seen),
	    cmocka_unit_test_setup(readings_in_one_place_are_counted_and_elsewhere_listed, nothing_seen),
	    cmocka_unit_test_setup(a_code_is_a_scan_in_its_third_still_frame_and_then_no_more, empty_table),
	    cmocka_unit_test_setup(a_code_in_motion_is_no_scan_until_it_stands_still, empty_table),
	    cmocka_unit_test_setup(a_short_absence_is_no_second_scan_and_a_long_one_is, empty_table),
	    cmocka_unit_test_setup(a_code_that_was_gone_for_two_frames_is_a_new_one, empty_table),
	    cmocka_unit_test_setup(of_two_cards_together_neither_is_a_scan, empty_table),
	    cmocka_unit_test_setup(a_card_alone_is_a_scan_once_the_other_has_gone, empty_table),
	    cmocka_unit_test_setup(a_card_that_lies_there_is_not_entered_again_for_another, empty_table),
	    cmocka_unit_test_setup(packs_may_lie_side_by_side, empty_table),
	    cmocka_unit_test_setup(three_sightings_far_apart_are_no_scan, empty_table),
	    cmocka_unit_test_setup(on_a_slow_machine_a_still_code_is_one_scan_too, empty_table),
	    cmocka_unit_test_setup(a_code_that_is_printed_twice_in_one_picture_counts_once, nothing_seen),
	    cmocka_unit_test_setup(a_second_code_is_told_while_the_first_stays, empty_table),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
