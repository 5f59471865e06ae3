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

#include "documents.h"
#include "labels/barcode.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "stand.h"

static const char *const papers[] = {"roll80", "a6", "a5", "a4"};
static struct languages languages; /* as they are built */

static void refused(json_t *d, const char *part)
{
	struct error e = {0};
	struct buf pdf = {0};
	int pages;
	if (paper_check(d, &e) != -EINVAL)
		fail_msg("it is not refused where it should say '%s'", part);
	if (!strstr(e.text, part))
		fail_msg("'%s' does not say '%s'", e.text, part);
	assert_int_equal(paper_pdf(NULL, d, &pdf, &pages, &e), -EINVAL);
	assert_int_equal(pdf.size, 0);
	buf_free(&pdf);
	json_decref(d);
}

static json_t *with(const char *name, const char *field, json_t *value)
{
	json_t *d = sample(name);
	json_object_set_new(d, field, value);
	return d;
}

static json_t *without(const char *name, const char *field)
{
	json_t *d = sample(name);
	json_object_del(d, field);
	return d;
}

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
	refused(with("slip-a5", "patient_name", json_string("x")), "'patient_name': no such field");
	refused(with("slip-a5", "kind", json_string("letter")), "'letter' is no kind of document");
	refused(with("slip-a5", "v", json_integer(1)), "'v'");
	refused(with("slip-a5", "slip", json_string("123")), "'slip': it is no whole number");
	refused(with("slip-a5", "copy", json_integer(100)), "'copy': it is out of range");
	refused(with("slip-a5", "outcome", json_string("")), "'outcome': it is too short");
	refused(with("slip-a5", "hours", json_null()), "'hours': it is no text");
	refused(with("slip-a5", "room", json_string("Theatre\t2")), "'room': it holds a control");
	refused(with("slip-a5", "room",
	             json_string("Theatre \xe2\x80\xae"
	                         "2")),
	        "text-direction");
	refused(with("slip-a5", "time", json_string("25 Nov 2026")), "'time': it is no time");
	refused(with("slip-a5", "paper", json_string("a3")), "roll80 a6 a5 a4");
	refused(with("slip-a5", "dpi", json_integer(204)), "203, 300 or 600");
	refused(with("slip-a5", "jws", json_string("a b")), "'jws': it is no compact JWS");
	refused(with("slip-a5", "adds_to", json_integer(1)), "only an addendum");
	refused(without("addendum-a5", "adds_to"), "say which slip");
	refused(without("slip-a5", "rows"), "'rows': it is missing");
	refused(without("discrepancy-a5", "search"), "'search': it is missing");
	refused(with("badges", "paper", json_string("a5")), "'paper'");
	char long_text[62];
	memset(long_text, 'x', 61);
	long_text[61] = '\0';
	refused(with("slip-a5", "site", json_string(long_text)), "'site': it is too long");
	json_t *d = sample("slip-a5");
	json_object_set_new(json_array_get(json_object_get(d, "items"), 1), "in", json_integer(10000));
	refused(d, "'items[1].in'");
	refused(json_array(), "kind");
}

static void a_code_that_is_not_whole_is_never_printed(void **state)
{
	(void)state;
	refused(with("slip-a5", "code", json_string("BTBC40000000010100010105")),
	        "'code': the code is not whole");
	refused(with("slip-a5", "code", json_string("BTBC10104051")), "another kind");
	refused(with("slip-a5", "code", json_string("HELLO")), "not one of our own codes");
	refused(with("slip-a5", "copy", json_integer(2)), "another slip, copy or station");
	refused(with("slip-a5", "station", json_integer(7)), "another slip, copy or station");
	json_t *d = sample("pack-labels");
	json_t *item = json_array_get(json_object_get(d, "items"), 0);
	json_object_set_new(item, "pack", json_incref(json_object_get(item, "bag")));
	refused(d, "role letter");
	d = sample("pack-labels");
	item = json_array_get(json_object_get(d, "items"), 0);
	json_object_del(item, "pack");
	json_object_del(item, "bag");
	refused(d, "it has no code");
	d = sample("digit-cards");
	json_t *cards = json_object_get(d, "cards");
	json_object_set_new(json_array_get(cards, 0), "code",
	                    json_incref(json_object_get(json_array_get(cards, 1), "code")));
	refused(d, "the code of another digit");
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
	assert_int_equal(paper_pdf(NULL, d, &pdf, &pages, &e), -EINVAL);
	assert_non_null(strstr(e.text, "use labels of at least"));
	assert_int_equal(pdf.size, 0);
	json_decref(d);
	buf_free(&pdf);
}

static void make(const json_t *d, struct trace *t, struct buf *pdf, int *pages)
{
	struct error e = {0};
	if (paper_pdf_traced(&languages, d, pdf, pages, t, &e) < 0)
		fail_msg("%s", e.text);
}

static int has_text(const struct trace *t, const char *part)
{
	int n = 0;
	for (size_t i = 0; i < t->count; i++)
		n += t->marks[i].kind == MARK_TEXT && strstr(t->marks[i].text, part) != NULL;
	return n;
}

/* Everything lies on its page, clear of the edge by `edge_mm`, and nothing lies on anything else. */
static void stands_clear_in(const char *language, const char *what, const struct trace *t, double edge_mm)
{
	char why[STAND_MAX];
	if (stand_check(t, edge_mm, languages_find(&languages, language), why) < 0)
		fail_msg("%s, %s", what, why);
}

static void stands_clear(const char *what, const struct trace *t, double edge_mm)
{
	stands_clear_in("en", what, t, edge_mm);
}

static void every_paper_stands_clear(void **state)
{
	(void)state;
	for (int i = 0; sample_names()[i]; i++) {
		struct trace t = {0};
		struct buf pdf = {0};
		int pages;
		json_t *d = sample(sample_names()[i]);
		make(d, &t, &pdf, &pages);
		stands_clear(sample_names()[i], &t, strstr(sample_names()[i], "labels") ? 1.9 : 4);
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
	assert_non_null(languages_find(&languages, "de"));
	for (int i = 0; sample_names()[i]; i++) {
		struct trace t = {0};
		struct buf pdf = {0}, other = {0};
		int pages, in_german;
		json_t *d = sample(sample_names()[i]);
		make(d, NULL, &pdf, &pages);
		json_object_set_new(d, "language", json_string("de"));
		make(d, &t, &other, &in_german);
		stands_clear_in("de", sample_names()[i], &t, strstr(sample_names()[i], "labels") ? 1.9 : 4);
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
		make(d, &t, &pdf, &pages);
		if (!has_text(&t, papers_said[i].says))
			fail_msg("%s does not say '%s'", papers_said[i].name, papers_said[i].says);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
}

static int count_text(const struct trace *t, const char *begin)
{
	int n = 0;
	for (size_t i = 0; i < t->count; i++)
		n += t->marks[i].kind == MARK_TEXT && strncmp(t->marks[i].text, begin, strlen(begin)) == 0;
	return n;
}

static void the_fullest_slip_is_never_cut_off_on_any_paper(void **state)
{
	(void)state;
	static const char *const kinds[] = {"slip", "discrepancy"};
	for (size_t p = 0; p < sizeof papers / sizeof *papers; p++)
		for (size_t k = 0; k < 2; k++) {
			struct trace t = {0};
			struct buf pdf = {0};
			int pages;
			char what[60], line[60];
			json_t *d = fullest_slip(kinds[k], papers[p]);
			snprintf(what, sizeof what, "fullest %s on %s", kinds[k], papers[p]);
			make(d, &t, &pdf, &pages);
			stands_clear(what, &t, 3.9);
			assert_true(pages > 1);
			assert_int_equal(count_text(&t, "Slip 0000001"), pages);
			for (int i = 1; i <= pages; i++) {
				snprintf(line, sizeof line, "COPY 2  ·  page %d of %d", i, pages);
				assert_int_equal(count_text(&t, line), 1);
				snprintf(line, sizeof line, "goes on: page %d of %d", i + 1, pages);
				assert_int_equal(count_text(&t, line), i < pages);
			}
			assert_int_equal(count_text(&t, "998"), 12);
			assert_int_equal(count_text(&t, "all items"), k == 0); /* not on paper that shouts */
			assert_int_equal(count_text(&t, "surgeon told"), k == 0);
			assert_int_equal(count_text(&t, "A count that agrees can still be wrong"), 1);
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
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
			json_t *d = with(sample_names()[i], "dpi", json_integer(dpis[k]));
			make(d, &t, &pdf, &pages);
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
			json_t *d = with(names[n], "dpi", json_integer(dpi));
			make(d, &t, &pdf, &pages);
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

static struct trace trace_of(const char *name)
{
	struct trace t = {0};
	struct buf pdf = {0};
	int pages;
	json_t *d = sample(name);
	make(d, &t, &pdf, &pages);
	buf_free(&pdf);
	json_decref(d);
	return t;
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
		struct trace t = trace_of(papers_hung[i].name);
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
		make(d, NULL, &a, &pages);
		make(d, NULL, &b, &pages);
		assert_int_equal(a.size, b.size);
		assert_memory_equal(a.data, b.data, a.size);
		json_object_set_new(d, "time", json_string("2026-11-25T10:43:08+00:00"));
		struct buf c = {0};
		make(d, NULL, &c, &pages);
		assert_true(c.size != a.size || memcmp(a.data, c.data, a.size) != 0);
		buf_free(&a);
		buf_free(&b);
		buf_free(&c);
		json_decref(d);
	}
}

static void count_and_look_are_printed_apart_and_nothing_is_called_safe(void **state)
{
	(void)state;
	struct trace t = trace_of("slip-a5");
	assert_int_equal(count_text(&t, "Right index finger: 32 min"), 1);
	assert_int_equal(count_text(&t, "10:00 to 10:32, seen bare at 10:32 by CIRC-2"), 1);
	assert_int_equal(count_text(&t, "shown to both, intact"), 1);
	assert_int_equal(has_text(&t, "agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2"), 1);
	assert_int_equal(has_text(&t, "event 78, hash "), 1);
	for (int i = 0; sample_names()[i]; i++) { /* rule 15 */
		struct trace each = trace_of(sample_names()[i]);
		assert_int_equal(has_text(&each, "safe") + has_text(&each, "all clear"), 0);
		trace_deinit(&each);
	}
	trace_deinit(&t);
	t = trace_of("single-a6");
	assert_int_equal(count_text(&t, "Single-person count: "), 1);
	assert_int_equal(has_text(&t, "from gloving"), 1);
	assert_int_equal(has_text(&t, "single-person count by SURG-3"), 1);
	assert_int_equal(has_text(&t, "agreed aloud by"), 0);
	trace_deinit(&t);
}

/* The height in points of the text that begins so; 0 where there is none. */
static double size_of(const struct trace *t, const char *begin)
{
	for (size_t i = 0; i < t->count; i++)
		if (t->marks[i].kind == MARK_TEXT && strncmp(t->marks[i].text, begin, strlen(begin)) == 0)
			return t->marks[i].size_pt;
	return 0;
}

static size_t place_of(const struct trace *t, const char *begin)
{
	for (size_t i = 0; i < t->count; i++)
		if (t->marks[i].kind == MARK_TEXT && strncmp(t->marks[i].text, begin, strlen(begin)) == 0)
			return i;
	fail_msg("'%s' is not on it", begin);
	return 0;
}

/* A doctor reads from the top: what is missing, where it may be, what to do, before anything else and larger. */
static void what_is_missing_where_and_what_to_do_come_first(void **state)
{
	(void)state;
	static const struct {
		const char *name, *shout, *what, *where, *deed;
	} papers_that_shout[] = {{"discrepancy-a5", "DISCREPANCY", "1 artery forceps, curved",
	                          "the right index finger", "Say it aloud"},
	                         {"unresolved-a4", "UNRESOLVED", "1 finger tourniquet, green, M",
	                          "the left great (big) toe",
	                          "Take the dressing down. Look at and feel the left great (big) toe now."},
	                         {"addendum-a5", "FOUND LATER", "an item without a number", "the left thumb",
	                          "Look at this patient's left thumb now: take the dressing down."}};
	for (size_t i = 0; i < sizeof papers_that_shout / sizeof *papers_that_shout; i++) {
		struct trace t = trace_of(papers_that_shout[i].name);
		size_t shout = place_of(&t, papers_that_shout[i].shout),
		       what = place_of(&t, papers_that_shout[i].what);
		size_t where = place_of(&t, papers_that_shout[i].where),
		       deed = place_of(&t, papers_that_shout[i].deed);
		assert_true(t.marks[shout].white);
		assert_true(shout < what && what < where && where < deed);
		assert_true(deed < place_of(&t, "Patient's label"));
		assert_int_equal(t.marks[deed].page, 1);
		double size = size_of(&t, papers_that_shout[i].deed);
		for (size_t k = 0; k < t.count; k++)
			assert_true(k == shout || t.marks[k].kind != MARK_TEXT || t.marks[k].size_pt <= size);
		trace_deinit(&t);
	}
}

static void the_digit_and_its_minutes_are_the_largest_where_nothing_is_amiss(void **state)
{
	(void)state;
	static const char *const names[] = {"slip-a4", "slip-a5", "slip-a6", "slip-roll80", "found-a5"};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		struct trace t = trace_of(names[i]);
		double size = size_of(&t, "Right index finger: ");
		assert_true(size > 0);
		for (size_t k = 0; k < t.count; k++)
			assert_true(t.marks[k].kind != MARK_TEXT || t.marks[k].size_pt <= size);
		assert_true(size_of(&t, "Reconciled.") < size * 0.55); /* a small word */
		trace_deinit(&t);
	}
}

/* What fits on one sheet is not lost in part. */
static void the_ordinary_case_takes_one_page(void **state)
{
	(void)state;
	static const struct {
		const char *name;
		int pages;
	} most[] = {{"slip-a4", 1},   {"slip-a5", 1},        {"slip-a6", 2},       {"slip-roll80", 1},
	            {"late-a5", 1},   {"discrepancy-a5", 1}, {"unresolved-a4", 1}, {"addendum-a5", 1},
	            {"single-a6", 2}, {"found-a5", 2}};
	for (size_t i = 0; i < sizeof most / sizeof *most; i++) {
		struct trace t = trace_of(most[i].name);
		int pages = t.marks[t.count - 1].page;
		if (pages > most[i].pages)
			fail_msg("%s takes %d pages", most[i].name, pages);
		if (strcmp(most[i].name, "slip-roll80") == 0 && t.page_height_mm[1] > 250)
			fail_msg("%s is %.1f mm long", most[i].name, t.page_height_mm[1]);
		trace_deinit(&t);
	}
}

/* Smaller letters are not read at arm's length: 7 point on narrow paper, else 7.5. */
static void nothing_on_a_slip_is_smaller_than_its_paper_allows(void **state)
{
	(void)state;
	for (int i = 0; sample_names()[i]; i++) {
		json_t *d = sample(sample_names()[i]);
		const char *paper = json_text(d, "paper");
		double least = strcmp(paper, "a4") == 0 ? 8.5 : strcmp(paper, "a5") == 0 ? 7.5 : 7;
		bool is_slip = json_object_get(d, "slip") != NULL;
		struct trace t = trace_of(sample_names()[i]);
		for (size_t k = 0; is_slip && k < t.count; k++)
			if (t.marks[k].kind == MARK_TEXT && t.marks[k].size_pt < least - 0.01)
				fail_msg("%s: '%s' is set in %.1f point", sample_names()[i], t.marks[k].text,
				         t.marks[k].size_pt);
		trace_deinit(&t);
		json_decref(d);
	}
}

/* The space for the patient's label has the size that the site says, and lines are long enough to write on. */
static void the_site_says_how_large_the_patients_label_is(void **state)
{
	(void)state;
	static const char *const names[] = {"slip-a5", "slip-a6", "slip-roll80", "discrepancy-a5"};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		json_t *d =
		    with(names[i], "patient_label", json_pack("{s:i,s:i}", "width_mm", 68, "height_mm", 41));
		struct trace t = {0};
		struct buf pdf = {0};
		int pages, found = 0;
		make(d, &t, &pdf, &pages);
		stands_clear(names[i], &t, 3.9);
		for (size_t k = 0; k < t.count; k++)
			found += t.marks[k].kind == MARK_SPACE && fabs(t.marks[k].width_mm - 68) < 0.1 &&
			         fabs(t.marks[k].height_mm - 41) < 0.1;
		assert_int_equal(found, 1);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
	refused(with("slip-a5", "patient_label", json_pack("{s:i,s:i}", "width_mm", 5, "height_mm", 41)),
	        "'patient_label.width_mm': it is out of range");
}

/* A slip is read first where it differs from the ordinary one: what is there must not look like it. */
static void what_is_not_ordinary_is_printed_so(void **state)
{
	(void)state;
	json_t *d = with("slip-a5", "heading_words", json_string("Case cancelled."));
	struct trace t = {0};
	struct buf pdf = {0};
	int pages;
	make(d, &t, &pdf, &pages);
	assert_int_equal(count_text(&t, "Case cancelled."), 1);
	assert_int_equal(count_text(&t, "Reconciled"), 0);
	assert_int_equal(has_text(&t, "COPY"), 0); /* the first copy needs no word */
	trace_deinit(&t);
	json_decref(d);

	t = trace_of("found-a5");
	size_t after = place_of(&t, "After a discrepancy at ");
	assert_non_null(strstr(t.marks[after].text, "found 10:"));
	assert_int_equal(t.marks[after].page, 1);
	assert_int_equal(has_text(&t, "incident number"), 0); /* none is owed */
	trace_deinit(&t);
	t = trace_of("unresolved-a4");
	assert_int_equal(has_text(&t, "incident number, owed"), 1);
	trace_deinit(&t);
	buf_free(&pdf);
}

/* In a black field stands what came back where it is not what went in, and nothing else. */
static void a_count_that_differs_stands_in_a_black_field(void **state)
{
	(void)state;
	struct buf differ = {0}, black = {0};
	json_t *d = sample("discrepancy-a5"), *item;
	size_t i;
	json_array_foreach(json_object_get(d, "items"), i, item)
	{
		if (json_number(item, "in", 0) != json_number(item, "out", 0))
			buf_printf(&differ, "%d ", (int)json_number(item, "out", 0));
	}
	json_decref(d);
	struct trace t = trace_of("discrepancy-a5");
	for (size_t k = 0; k < t.count; k++)
		if (t.marks[k].white && strspn(t.marks[k].text, "0123456789") == strlen(t.marks[k].text))
			buf_printf(&black, "%s ", t.marks[k].text);
	assert_true(differ.size > 0 && black.size > 0);
	assert_string_equal(black.data, differ.data);
	buf_free(&differ);
	buf_free(&black);
	trace_deinit(&t);
}

/* The longest summary has a place on each paper at each printer's resolution, with smaller modules where need be. */
static void the_longest_summary_fits_every_paper(void **state)
{
	(void)state;
	static const int dpis[] = {203, 300, 600};
	char jws[1601];
	memset(jws, 'A', sizeof jws - 1);
	jws[500] = jws[1000] = '.';
	jws[1600] = 0;
	for (size_t p = 0; p < sizeof papers / sizeof *papers; p++)
		for (size_t i = 0; i < sizeof dpis / sizeof *dpis; i++) {
			json_t *d = with("slip-roll80", "jws", json_string(jws));
			struct trace t = {0};
			struct buf pdf = {0};
			int pages;
			json_object_set_new(d, "paper", json_string(papers[p]));
			json_object_set_new(d, "dpi", json_integer(dpis[i]));
			make(d, &t, &pdf, &pages);
			stands_clear("the longest summary", &t, 3.9);
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
}

/* What lies in the tray is used from its corner: nothing stands beyond the slip's own size. */
static void other_paper_is_used_from_its_corner(void **state)
{
	(void)state;
	static const struct sheet_size letter = {215.9, 279.4}, a4 = {210, 297}, card = {76.2, 127};
	static const struct {
		const char *name;
		const struct sheet_size *sheet;
		double page_mm[2], within_mm[2];
	} all[] = {
	    {"slip-a5", &letter, {215.9, 279.4}, {148, 210}},
	    {"slip-a5", &a4, {210, 297}, {148, 210}},
	    {"discrepancy-a5", &a4, {210, 297}, {148, 210}},
	    {"slip-a6", &letter, {215.9, 279.4}, {105, 148}},
	    {"slip-a4", &letter, {215.9, 279.4}, {148, 210}}, /* too small for its own: the next smaller one */
	    {"slip-a5", &card, {148, 210}, {148, 210}},       /* for any: as it is */
	    {"slip-roll80", &a4, {80, 0}, {80, 300}}};
	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		struct trace t = {0};
		struct buf pdf = {0};
		struct error e = {0};
		int pages;
		json_t *d = sample(all[i].name);
		assert_int_equal(paper_pdf_on(NULL, d, *all[i].sheet, &pdf, &pages, &t, &e), 0);
		assert_true(fabs(t.page_width_mm[1] - all[i].page_mm[0]) < 0.2);
		assert_true(all[i].page_mm[1] <= 0 || fabs(t.page_height_mm[1] - all[i].page_mm[1]) < 0.2);
		for (size_t k = 0; k < t.count; k++)
			assert_true(t.marks[k].x_mm + t.marks[k].width_mm < all[i].within_mm[0] &&
			            t.marks[k].y_mm + t.marks[k].height_mm < all[i].within_mm[1]);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
}

static void the_job_is_called_after_slip_and_copy_only(void **state)
{
	(void)state;
	char title[PAPER_TITLE_MAX];
	json_t *d = sample("slip-a5");
	paper_title(d, title);
	assert_string_equal(title, "bandtally slip 0000001 copy 1");
	json_decref(d);
}

static int open_fonts(void **state)
{
	(void)state;
	struct error e;
	if (fonts_open(&e) == 0)
		return 0;
	fprintf(stderr, "%s\n", e.text);
	return -1;
}

static int close_fonts(void **state)
{
	(void)state;
	return 0;
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
	    cmocka_unit_test(the_fullest_slip_is_never_cut_off_on_any_paper),
	    cmocka_unit_test(every_bar_stands_on_whole_dots_with_its_quiet_zone),
	    cmocka_unit_test(pack_labels_have_the_smallest_lawful_modules_of_a_203_dpi_printer),
	    cmocka_unit_test(codes_on_cards_are_40_mm_apart_and_no_scan_line_takes_two_digits),
	    cmocka_unit_test(nothing_is_smaller_than_can_be_read),
	    cmocka_unit_test(the_same_document_is_the_same_file),
	    cmocka_unit_test(count_and_look_are_printed_apart_and_nothing_is_called_safe),
	    cmocka_unit_test(what_is_missing_where_and_what_to_do_come_first),
	    cmocka_unit_test(the_digit_and_its_minutes_are_the_largest_where_nothing_is_amiss),
	    cmocka_unit_test(the_ordinary_case_takes_one_page),
	    cmocka_unit_test(nothing_on_a_slip_is_smaller_than_its_paper_allows),
	    cmocka_unit_test(the_site_says_how_large_the_patients_label_is),
	    cmocka_unit_test(what_is_not_ordinary_is_printed_so),
	    cmocka_unit_test(a_count_that_differs_stands_in_a_black_field),
	    cmocka_unit_test(the_longest_summary_fits_every_paper),
	    cmocka_unit_test(other_paper_is_used_from_its_corner),
	    cmocka_unit_test(the_job_is_called_after_slip_and_copy_only),
	};
	struct error e = {0};
	if (languages_read(&languages, languages_folder(), &e) < 0)
		fprintf(stderr, "%s\n", e.text);
	int failed = cmocka_run_group_tests(tests, open_fonts, close_fonts);
	languages_free(&languages);
	return failed;
}
