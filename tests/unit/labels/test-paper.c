/* Paper: what a document may say, and that all of it stands on the page, whole and where it can be read. */
#include <errno.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "drawn.h"
#include "labels/barcode.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "stand.h"

static void every_sample_is_a_document(void **state)
{
	(void)state;
	for (int i = 0; sample_names()[i]; i++) {
		struct error e = {0};
		json_t *d = sample(sample_names()[i]);
		if (paper_check(d, &e) < 0)
			fail_msg("%s: %s", sample_names()[i], e.text);
		json_decref(d);
	}
}

static void a_document_that_is_not_to_the_letter_is_refused_by_name(void **state)
{
	(void)state;
	drawn_refused(sample_with("slip-a5", "patient_name", json_string("x")),
	              "'patient_name': no such field");
	drawn_refused(sample_with("slip-a5", "kind", json_string("letter")),
	              "'letter' is no kind of document");
	drawn_refused(sample_with("slip-a5", "v", json_integer(1)), "'v'");
	drawn_refused(sample_with("slip-a5", "slip", json_string("123")), "'slip': it is no whole number");
	drawn_refused(sample_with("slip-a5", "copy", json_integer(100)), "'copy': it is out of range");
	drawn_refused(sample_with("slip-a5", "outcome", json_string("")), "'outcome': it is too short");
	drawn_refused(sample_with("slip-a5", "hours", json_null()), "'hours': it is no text");
	drawn_refused(sample_with("slip-a5", "room", json_string("Theatre\t2")),
	              "'room': it holds a control");
	drawn_refused(sample_with("slip-a5", "room",
	                          json_string("Theatre \xe2\x80\xae"
	                                      "2")),
	              "text-direction");
	drawn_refused(sample_with("slip-a5", "time", json_string("25 Nov 2026")), "'time': it is no time");
	drawn_refused(sample_with("slip-a5", "paper", json_string("a3")), "roll80 a6 a5 a4");
	drawn_refused(sample_with("slip-a5", "dpi", json_integer(204)), "203, 300 or 600");
	drawn_refused(sample_with("slip-a5", "jws", json_string("a b")), "'jws': it is no compact JWS");
	drawn_refused(sample_with("slip-a5", "adds_to", json_integer(1)), "only an addendum");
	drawn_refused(sample_without("addendum-a5", "adds_to"), "say which slip");
	drawn_refused(sample_without("slip-a5", "rows"), "'rows': it is missing");
	drawn_refused(sample_without("discrepancy-a5", "search"), "'search': it is missing");
	drawn_refused(sample_with("badges", "paper", json_string("a5")), "'paper'");
	char long_text[62];
	memset(long_text, 'x', 61);
	long_text[61] = '\0';
	drawn_refused(sample_with("slip-a5", "site", json_string(long_text)), "'site': it is too long");
	json_t *d = sample("slip-a5");
	json_object_set_new(json_array_get(json_object_get(d, "items"), 1), "in", json_integer(10000));
	drawn_refused(d, "'items[1].in'");
	drawn_refused(json_array(), "kind");
}

static void a_code_that_is_not_whole_is_never_printed(void **state)
{
	(void)state;
	drawn_refused(sample_with("slip-a5", "code", json_string("BTBC40000000010100010105")),
	              "'code': the code is not whole");
	drawn_refused(sample_with("slip-a5", "code", json_string("BTBC10104051")), "another kind");
	drawn_refused(sample_with("slip-a5", "code", json_string("HELLO")), "not one of our own codes");
	drawn_refused(sample_with("slip-a5", "copy", json_integer(2)), "another slip, copy or station");
	drawn_refused(sample_with("slip-a5", "station", json_integer(7)), "another slip, copy or station");
	json_t *d = sample("pack-labels");
	json_t *item = json_array_get(json_object_get(d, "items"), 0);
	json_object_set_new(item, "pack", json_incref(json_object_get(item, "bag")));
	drawn_refused(d, "role letter");
	d = sample("pack-labels");
	item = json_array_get(json_object_get(d, "items"), 0);
	json_object_del(item, "pack");
	json_object_del(item, "bag");
	drawn_refused(d, "it has no code");
	d = sample("digit-cards");
	json_t *cards = json_object_get(d, "cards");
	json_object_set_new(json_array_get(cards, 0), "code",
	                    json_incref(json_object_get(json_array_get(cards, 1), "code")));
	drawn_refused(d, "the code of another digit");
	struct barcode b;
	struct error e;
	/* The encoder's own warnings are refusals: a check digit that is wrong, a date that is none. */
	assert_int_equal(barcode_init(&b, SYMBOL_GS1_128, "(01)09506000134353", &e), -EINVAL);
	assert_int_equal(barcode_init(&b, SYMBOL_GS1_DATAMATRIX, "(17)201325", &e), -EINVAL);
	assert_int_equal(barcode_init(&b, SYMBOL_EAN_13, "9506000134353", &e), -EINVAL);
}

static void a_name_that_does_not_fit_its_label_refuses_the_label(void **state)
{
	(void)state;
	json_t *d = sample("pack-labels");
	struct buf pdf = {0};
	struct error e = {0};
	int pages;
	json_object_set_new(d, "label", json_pack("{s:i,s:i}", "width_mm", 20, "height_mm", 12));
	assert_int_equal(paper_pdf(NULL, d, &pdf, &pages, &e), -EMSGSIZE);
	assert_non_null(strstr(e.text, "use labels of at least"));
	assert_int_equal(pdf.size, 0);
	json_decref(d);
	buf_free(&pdf);
}

static void every_paper_stands_clear(void **state)
{
	(void)state;
	for (int i = 0; sample_names()[i]; i++) {
		struct trace t = {0};
		struct buf pdf = {0};
		int pages;
		json_t *d = sample(sample_names()[i]);
		drawn_make(d, &t, &pdf, &pages);
		drawn_stands_clear(sample_names()[i], &t, strstr(sample_names()[i], "labels") ? 1.9 : 4);
		assert_int_equal(t.unknown_glyphs, 0);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
}

/* Its words are longer: they stand clear, and on as many pages. */
static void every_paper_stands_clear_in_german(void **state)
{
	(void)state;
	assert_non_null(languages_find(&drawn_languages, "de"));
	for (int i = 0; sample_names()[i]; i++) {
		struct trace t = {0};
		struct buf pdf = {0}, other = {0};
		int pages, in_german;
		json_t *d = sample(sample_names()[i]);
		drawn_make(d, NULL, &pdf, &pages);
		json_object_set_new(d, "language", json_string("de"));
		drawn_make(d, &t, &other, &in_german);
		drawn_stands_clear_in("de", sample_names()[i], &t,
		                      strstr(sample_names()[i], "labels") ? 1.9 : 4);
		assert_int_equal(t.unknown_glyphs, 0);
		assert_int_equal(in_german, pages);
		trace_deinit(&t);
		buf_free(&pdf);
		buf_free(&other);
		json_decref(d);
	}
}

static void what_a_paper_says_itself_is_in_its_language(void **state)
{
	(void)state;
	static const struct {
		const char *name, *says;
	} papers_said[] = {
	    {"slip-a5", "Beleg 0000001"},    {"count-sheet", "Papierzählblatt"},
	    {"briefing", "Das Band zählen"}, {"leaflet", "Nach der Operation an Ihrem Finger oder Zeh"},
	    {"pack-labels", "PACKUNG"},      {"digit-cards", "RECHTE HAND"},
	    {"badges", "ZUGELASSEN"}};
	for (size_t i = 0; i < sizeof papers_said / sizeof *papers_said; i++) {
		struct trace t = {0};
		struct buf pdf = {0};
		int pages;
		json_t *d = sample(papers_said[i].name);
		json_object_set_new(d, "language", json_string("de"));
		drawn_make(d, &t, &pdf, &pages);
		if (!drawn_has(&t, papers_said[i].says))
			fail_msg("%s does not say '%s'", papers_said[i].name, papers_said[i].says);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
}

/* Else a number is read under the sign that stands above it on another page. */
static void a_table_has_its_heads_on_each_page(void **state)
{
	(void)state;
	struct trace t = {0};
	struct buf pdf = {0};
	int pages;
	json_t *rows = json_array(), *table = NULL, *section = NULL;
	for (int i = 0; i < 200; i++)
		json_array_append_new(rows, json_pack("{s:[s,s,s]}", "cells", "a week", "3", "4"));
	table = json_pack("{s:s,s:[s,s,s],s:o}", "name", "signs", "heads", "week", "first head",
	                  "second head", "rows", rows);
	section = json_pack("{s:s,s:s,s:[],s:[],s:[],s:[o]}", "name", "signs", "title", "Signs", "says",
	                    "figures", "charts", "tables", table);
	json_t *d = sample_with("report-a4", "sections", json_pack("[o]", section));
	drawn_make(d, &t, &pdf, &pages);
	assert_true(pages > 3);
	assert_int_equal(drawn_has(&t, "first head"), pages);
	assert_int_equal(drawn_has(&t, "second head"), pages);
	drawn_stands_clear("a table on several pages", &t, 5);
	trace_deinit(&t);
	buf_free(&pdf);
	json_decref(d);
}

static int has_codes(const char *sample)
{
	return strcmp(sample, "briefing") != 0 && strcmp(sample, "leaflet") != 0 &&
	       strcmp(sample, "report-a4") != 0;
}

static void every_bar_stands_on_whole_dots_with_its_quiet_zone(void **state)
{
	(void)state;
	static const int dpis[] = {203, 300, 600};
	for (int i = 0; sample_names()[i]; i++)
		for (int k = 0; k < 3; k++) {
			struct trace t = {0};
			struct buf pdf = {0};
			int pages, codes = 0;
			json_t *d = sample_with(sample_names()[i], "dpi", json_integer(dpis[k]));
			drawn_make(d, &t, &pdf, &pages);
			for (size_t m = 0; m + 1 < t.count; m++) {
				const struct mark *code = &t.marks[m], *quiet = &t.marks[m + 1];
				if (code->kind != MARK_CODE)
					continue;
				codes++;
				double dot = 25.4 / dpis[k], module = code->module_dots * dot;
				assert_true(code->module_dots >= 1);
				double long_mm = code->turned ? code->height_mm : code->width_mm;
				assert_true(fabs(code->x_mm - code->x_dots * dot) < 1e-9);
				assert_true(fabs(long_mm / module - round(long_mm / module)) < 1e-9);
				/* Quiet zone: 10 modules for bars (EAN-13 11), 4 for QR, 1 for DataMatrix. */
				double zone =
				    (code->turned ? code->y_mm - quiet->y_mm : code->x_mm - quiet->x_mm) /
				    module;
				assert_true(fabs(zone - 10) < 1e-6 || fabs(zone - 11) < 1e-6 ||
				            fabs(zone - 4) < 1e-6 || fabs(zone - 1) < 1e-6);
				/* GS1 General Specifications: DataMatrix X 0.254 to 0.495 mm in healthcare.
				 */
				if (fabs(zone - 1) < 1e-6)
					assert_true(module >= 0.2539 && module <= 0.4951);
				assert_true(quiet->y_mm >= -1e-9 && quiet->y_mm + quiet->height_mm <=
				                                        t.page_height_mm[code->page] + 1e-9);
				assert_true(quiet->x_mm >= -1e-9 && quiet->x_mm + quiet->width_mm <=
				                                        t.page_width_mm[code->page] + 1e-9);
			}
			assert_int_equal(codes > 0, has_codes(sample_names()[i]));
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
}

static void pack_labels_have_the_smallest_lawful_modules_of_a_203_dpi_printer(void **state)
{
	(void)state;
	assert_int_equal(barcode_module_dots(SYMBOL_GS1_DATAMATRIX_16X16, 203), 3); /* 0.375 mm */
	assert_int_equal(barcode_module_dots(SYMBOL_GS1_DATAMATRIX_16X16, 300), 4); /* 0.339 mm */
	assert_int_equal(barcode_module_dots(SYMBOL_GS1_DATAMATRIX_16X16, 600), 9); /* 0.381 mm */
	struct error e;
	struct barcode square, rectangle;
	assert_int_equal(barcode_init(&square, SYMBOL_GS1_DATAMATRIX_16X16, "(91)PBC990010230123", &e), 0);
	assert_int_equal(barcode_init(&rectangle, SYMBOL_GS1_DATAMATRIX_12X26, "(91)PBC990010230123", &e), 0);
	assert_int_equal(square.columns, 16);
	assert_int_equal(square.rows, 16);
	assert_int_equal(rectangle.columns, 26);
	assert_int_equal(rectangle.rows, 12);
	/* 18 modules with the quiet zone: 6.75 mm at 203 dpi. */
	assert_true(fabs(barcode_width_dots(&square, 3) * 25.4 / 203 - 6.757) < 0.01);
	barcode_deinit(&square);
	barcode_deinit(&rectangle);
}

/* A straight line that crosses both codes from their first bar to their last exists when their centres lie
 * flatter than a code's own diagonal; of bars that lie, steeper. */
static int one_line_crosses_both(const struct mark *a, const struct mark *b)
{
	double along = a->turned ? fabs(a->y_mm - b->y_mm) : fabs(a->x_mm - b->x_mm);
	double aside = a->turned ? fabs(a->x_mm - b->x_mm) : fabs(a->y_mm - b->y_mm);
	double flat_a = a->turned ? a->width_mm / a->height_mm : a->height_mm / a->width_mm;
	double flat_b = b->turned ? b->width_mm / b->height_mm : b->height_mm / b->width_mm;
	return aside <= fmax(flat_a, flat_b) * along;
}

static double apart(double a, double a_long, double b, double b_long)
{
	return fmax(fmax(b - a - a_long, a - b - b_long), 0);
}

/* White between the bars of the two that are nearest. */
static double nearest_edges(const struct trace *t)
{
	double least = 1e9;
	for (size_t i = 0; i < t->count; i++)
		for (size_t k = i + 1; k < t->count; k++) {
			const struct mark *a = &t->marks[i], *b = &t->marks[k];
			if (a->kind != MARK_CODE || b->kind != MARK_CODE || a->page != b->page)
				continue;
			least = fmin(least, hypot(apart(a->x_mm, a->width_mm, b->x_mm, b->width_mm),
			                          apart(a->y_mm, a->height_mm, b->y_mm, b->height_mm)));
		}
	return least;
}

static double nearest(const struct trace *t, int *crossed)
{
	double least = 1e9;
	*crossed = 0;
	for (size_t i = 0; i < t->count; i++)
		for (size_t k = i + 1; k < t->count; k++) {
			const struct mark *a = &t->marks[i], *b = &t->marks[k];
			if (a->kind != MARK_CODE || b->kind != MARK_CODE || a->page != b->page)
				continue;
			double dx = a->x_mm + a->width_mm / 2 - b->x_mm - b->width_mm / 2;
			double dy = a->y_mm + a->height_mm / 2 - b->y_mm - b->height_mm / 2;
			least = fmin(least, hypot(dx, dy));
			*crossed += one_line_crosses_both(a, b);
		}
	return least;
}

static void codes_on_cards_are_40_mm_apart_and_no_scan_line_takes_two_digits(void **state)
{
	(void)state;
	static const char *const names[] = {"digit-cards", "digit-cards-camera", "cards", "cards-alone"};
	for (int n = 0; n < 4; n++)
		for (int dpi = 203; dpi <= 600; dpi = dpi == 203 ? 300 : dpi * 2) {
			struct trace t = {0};
			struct buf pdf = {0};
			int pages, crossed;
			json_t *d = sample_with(names[n], "dpi", json_integer(dpi));
			drawn_make(d, &t, &pdf, &pages);
			assert_true(nearest(&t, &crossed) >= 40);
			if (n < 2) {
				assert_int_equal(crossed, 0);
				assert_true(nearest_edges(&t) >= 40);
				assert_int_equal(pages, 5);
			}
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
}

/* The sizes at which each paper is read: on a wall, in the hand, by an auditor. Points of the smallest letters. */
static void nothing_is_smaller_than_can_be_read(void **state)
{
	(void)state;
	static const struct {
		const char *name;
		double least_pt;
	} papers_hung[] = {{"digit-cards", 8},   {"digit-cards-camera", 8}, {"cards", 6.5},
	                   {"cards-alone", 6.5}, {"cards-camera", 6.5},     {"count-sheet", 8},
	                   {"briefing", 8.5},    {"leaflet", 8.5},          {"pack-labels", 6.2}};
	for (size_t i = 0; i < sizeof papers_hung / sizeof *papers_hung; i++) {
		struct trace t = drawn_sample(papers_hung[i].name);
		for (size_t k = 0; k < t.count; k++)
			if (t.marks[k].kind == MARK_TEXT &&
			    t.marks[k].size_pt < papers_hung[i].least_pt - 0.001)
				fail_msg("%s: '%s' stands in %.1f points", papers_hung[i].name,
				         t.marks[k].text, t.marks[k].size_pt);
		trace_deinit(&t);
	}
}

static void the_same_document_is_the_same_file(void **state)
{
	(void)state;
	for (int i = 0; sample_names()[i]; i++) {
		struct buf a = {0}, b = {0};
		int pages;
		json_t *d = sample(sample_names()[i]);
		drawn_make(d, NULL, &a, &pages);
		drawn_make(d, NULL, &b, &pages);
		assert_int_equal(a.size, b.size);
		assert_memory_equal(a.data, b.data, a.size);
		json_object_set_new(d, "time", json_string("2026-11-25T10:43:08+00:00"));
		struct buf c = {0};
		drawn_make(d, NULL, &c, &pages);
		assert_true(c.size != a.size || memcmp(a.data, c.data, a.size) != 0);
		buf_free(&a);
		buf_free(&b);
		buf_free(&c);
		json_decref(d);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(every_sample_is_a_document),
	    cmocka_unit_test(a_document_that_is_not_to_the_letter_is_refused_by_name),
	    cmocka_unit_test(a_code_that_is_not_whole_is_never_printed),
	    cmocka_unit_test(a_name_that_does_not_fit_its_label_refuses_the_label),
	    cmocka_unit_test(every_paper_stands_clear),
	    cmocka_unit_test(every_paper_stands_clear_in_german),
	    cmocka_unit_test(what_a_paper_says_itself_is_in_its_language),
	    cmocka_unit_test(a_table_has_its_heads_on_each_page),
	    cmocka_unit_test(every_bar_stands_on_whole_dots_with_its_quiet_zone),
	    cmocka_unit_test(pack_labels_have_the_smallest_lawful_modules_of_a_203_dpi_printer),
	    cmocka_unit_test(codes_on_cards_are_40_mm_apart_and_no_scan_line_takes_two_digits),
	    cmocka_unit_test(nothing_is_smaller_than_can_be_read),
	    cmocka_unit_test(the_same_document_is_the_same_file),
	};
	return cmocka_run_group_tests(tests, drawn_begin, drawn_end);
}
