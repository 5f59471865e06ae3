/* A label's symbol as its printer would have it: measured dot by dot on the page in each direction, with its quiet zone, and
 * read by two libraries that share no code (libdmtx, libzxing). Lawful sizes: labels/barcode.h. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <dmtx.h>

#include "documents.h"
#include "drivers/zxing.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "picture.h"

#define LOWEST_UM 254
#define HIGHEST_UM 495

static int dark(const struct picture *p, int x, int y)
{
	assert_true(x >= 0 && y >= 0 && x < p->width && y < p->height);
	return p->grey[y * p->width + x] < 128;
}

struct symbol {
	int x, y, dots, columns, rows; /* dots of a module */
};

/* Each module is one colour in all its dots. */
static void must_be_whole(const struct picture *p, const struct symbol *s)
{
	for (int y = 0; y < s->rows * s->dots; y++)
		for (int x = 0; x < s->columns * s->dots; x++) {
			int module = dark(p, s->x + x / s->dots * s->dots, s->y + y / s->dots * s->dots);
			if (dark(p, s->x + x, s->y + y) != module)
				fail_msg("dot %d,%d is not of its module of %d dots", x, y, s->dots);
		}
}

/* The finder: the left and the lower edge dark, the upper and the right one by turns. */
static void must_have_edges(const struct picture *p, const struct symbol *s)
{
	int half = s->dots / 2;
	for (int i = 0; i < s->rows; i++) {
		assert_true(dark(p, s->x + half, s->y + i * s->dots + half));
		assert_int_equal(dark(p, s->x + (s->columns - 1) * s->dots + half, s->y + i * s->dots + half),
		                 i % 2);
	}
	for (int i = 0; i < s->columns; i++) {
		assert_true(dark(p, s->x + i * s->dots + half, s->y + (s->rows - 1) * s->dots + half));
		assert_int_equal(dark(p, s->x + i * s->dots + half, s->y + half), i % 2 == 0);
	}
}

/* One module of white on each of four sides. */
static void must_be_quiet(const struct picture *p, const struct symbol *s)
{
	int wide = s->columns * s->dots, high = s->rows * s->dots;
	for (int y = -s->dots; y < high + s->dots; y++)
		for (int x = -s->dots; x < wide + s->dots; x++)
			if ((x < 0 || y < 0 || x >= wide || y >= high) && dark(p, s->x + x, s->y + y))
				fail_msg("the quiet zone is black at %d,%d", x, y);
}

static struct picture part_of(const struct picture *p, const struct symbol *s)
{
	int edge = 4 * s->dots;
	struct picture out = {.width = s->columns * s->dots + 2 * edge,
	                      .height = s->rows * s->dots + 2 * edge};
	out.grey = malloc((size_t)(out.width * out.height));
	memset(out.grey, 255, (size_t)(out.width * out.height));
	for (int y = -s->dots; y < s->rows * s->dots + s->dots; y++)
		memcpy(out.grey + (y + edge) * out.width + edge - s->dots,
		       p->grey + (s->y + y) * p->width + s->x - s->dots,
		       (size_t)((s->columns + 2) * s->dots));
	return out;
}

/* What each reads, FNC1 in front left out. */
static void read_zxing(const struct picture *p, char out[100])
{
	static struct readings seen;
	const struct plane plane = {.pixels = p->grey, .width = p->width, .height = p->height};
	seen.count = 0;
	assert_int_equal(zxing_read(&plane, SYMBOLOGY_BIT(SYMBOLOGY_DATAMATRIX), &seen), 1);
	snprintf(out, 100, "%.*s", (int)seen.item[0].size, (const char *)seen.item[0].data);
}

static void read_dmtx(const struct picture *p, char out[100])
{
	DmtxImage *image = dmtxImageCreate(p->grey, p->width, p->height, DmtxPack8bppK);
	DmtxDecode *decode = dmtxDecodeCreate(image, 1);
	DmtxTime end = dmtxTimeAdd(dmtxTimeNow(), 3000);
	out[0] = 0;
	for (DmtxRegion *r; !out[0] && (r = dmtxRegionFindNext(decode, &end));) {
		DmtxMessage *m = dmtxDecodeMatrixRegion(decode, r, DmtxUndefined);
		if (m) {
			int fnc1 = m->outputIdx && m->output[0] == 29;
			snprintf(out, 100, "%.*s", (int)m->outputIdx - fnc1, (const char *)m->output + fnc1);
			dmtxMessageDestroy(&m);
		}
		dmtxRegionDestroy(&r);
	}
	dmtxDecodeDestroy(&decode);
	dmtxImageDestroy(&image);
}

static void look_at(const struct picture *page, const struct mark *m, int dpi, int *smallest_um,
                    int *largest_um)
{
	char text[100], seen[100];
	struct symbol s = {.x = m->x_dots, .y = m->y_dots, .dots = m->module_dots};
	s.columns = (int)(m->width_mm / 25.4 * dpi / s.dots + 0.5);
	s.rows = (int)(m->height_mm / 25.4 * dpi / s.dots + 0.5);
	assert_true((s.columns == 16 && s.rows == 16) || (s.columns == 26 && s.rows == 12));
	int um = (int)(s.dots * 25400.0 / dpi + 0.5);
	assert_in_range(um, LOWEST_UM, HIGHEST_UM);
	*smallest_um = um < *smallest_um ? um : *smallest_um;
	*largest_um = um > *largest_um ? um : *largest_um;
	must_be_whole(page, &s);
	must_have_edges(page, &s);
	must_be_quiet(page, &s);
	struct picture part = part_of(page, &s);
	snprintf(text, sizeof text, "91%s", m->text + strlen("(91)"));
	read_zxing(&part, seen);
	assert_string_equal(seen, text);
	read_dmtx(&part, seen);
	assert_string_equal(seen, text);
	free(part.grey);
}

static json_t *labels(int dpi, int width_mm, int height_mm, const char *shape)
{
	json_t *d = sample("pack-labels");
	json_object_set_new(d, "dpi", json_integer(dpi));
	json_object_set_new(d, "shape", json_string(shape));
	json_object_set_new(d, "label", json_pack("{s:i,s:i}", "width_mm", width_mm, "height_mm", height_mm));
	return d;
}

/* Each symbol of the document; how many pages. */
static int look_at_all(json_t *d, int *pages)
{
	struct trace t = {0};
	struct buf pdf = {0};
	struct error e = {0};
	struct picture p = {0};
	int page = 0, seen = 0, smallest = 9999, largest = 0, dpi = (int)json_number(d, "dpi", 0);
	if (paper_pdf_traced(NULL, d, &pdf, pages, &t, &e) < 0)
		fail_msg("%s", e.text);
	for (size_t i = 0; i < t.count; i++) {
		if (t.marks[i].kind != MARK_CODE)
			continue;
		if (t.marks[i].page != page) {
			free(p.grey);
			p = picture_of_page(&pdf, page = t.marks[i].page, dpi);
		}
		look_at(&p, &t.marks[i], dpi, &smallest, &largest);
		seen++;
	}
	printf("%d dpi, %s: %d symbols on %d pages, module %d to %d um\n", dpi, json_text(d, "shape"), seen,
	       *pages, smallest, largest);
	free(p.grey);
	trace_deinit(&t);
	buf_free(&pdf);
	json_decref(d);
	return seen;
}

static void a_roll_of_each_printer_has_lawful_symbols_that_two_readers_read(void **state)
{
	static const struct {
		int dpi, width_mm, height_mm;
		const char *shape;
	} facts[] = {
	    {203, 57, 32, "square"},    {300, 57, 32, "square"},    {600, 57, 32, "square"},
	    {203, 80, 40, "square"},    {203, 57, 32, "rectangle"}, {300, 50, 30, "rectangle"},
	    {600, 57, 32, "rectangle"},
	};
	int pages;
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		assert_int_equal(
		    look_at_all(labels(facts[i].dpi, facts[i].width_mm, facts[i].height_mm, facts[i].shape),
		                &pages),
		    6);
		assert_int_equal(pages, 6);
	}
}

static void a_sheet_has_them_in_rows_each_in_its_place(void **state)
{
	int pages;
	(void)state;
	json_t *d = labels(600, 63, 33, "square");
	json_object_set_new(d, "sheet",
	                    json_pack("{s:i,s:i,s:i,s:i,s:i,s:i,s:i,s:i}", "width_um", 210000, "height_um",
	                              297000, "across", 3, "down", 1, "first_x_um", 7200, "first_y_um", 15100,
	                              "step_x_um", 66000, "step_y_um", 33900));
	struct trace t = {0};
	struct buf pdf = {0};
	struct error e = {0};
	assert_int_equal(paper_pdf_traced(NULL, d, &pdf, &pages, &t, &e), 0);
	assert_int_equal(pages, 2);
	int seen = 0;
	for (size_t i = 0; i < t.count; i++) {
		const struct mark *m = &t.marks[i];
		if (m->kind != MARK_QUIET)
			continue;
		double left = 7.2 + seen % 3 * 66.0;
		if (m->x_mm < left || m->x_mm + m->width_mm > left + 63 || m->y_mm < 15.1 ||
		    m->y_mm + m->height_mm > 15.1 + 33)
			fail_msg("symbol %d lies at %.1f, %.1f mm", seen, m->x_mm, m->y_mm);
		assert_int_equal(m->page, 1 + seen / 3);
		seen++;
	}
	trace_deinit(&t);
	buf_free(&pdf);
	assert_int_equal(look_at_all(d, &pages), 6);
}

/* The size that the refusal names is enough, and one that is a little smaller is not. */
static void a_label_that_is_too_small_is_refused_with_the_size_that_would_do(void **state)
{
	static const int dpis[] = {203, 300, 600};
	(void)state;
	for (size_t i = 0; i < 3; i++)
		for (int square = 0; square < 2; square++) {
			struct buf pdf = {0};
			struct error e = {0};
			int pages, width = 0, height = 0;
			const char *shape = square ? "square" : "rectangle";
			json_t *d = labels(dpis[i], 20, 12, shape);
			assert_int_equal(paper_pdf(NULL, d, &pdf, &pages, &e), -EMSGSIZE);
			json_decref(d);
			const char *says = strstr(e.text, "labels of at least ");
			if (!says || sscanf(says, "labels of at least %d x %d mm", &width, &height) != 2)
				fail_msg("%s", e.text);
			assert_non_null(strstr(e.text, dpis[i] == 203   ? "0.375 mm"
			                               : dpis[i] == 300 ? "0.339 mm"
			                                                : "0.381 mm"));
			assert_int_equal(look_at_all(labels(dpis[i], width, height, shape), &pages), 6);
			d = labels(dpis[i], width, height - 1, shape);
			assert_int_equal(paper_pdf(NULL, d, &pdf, &pages, &e), -EMSGSIZE);
			json_decref(d);
			d = labels(dpis[i], width - 1, height, shape);
			assert_int_equal(paper_pdf(NULL, d, &pdf, &pages, &e), -EMSGSIZE);
			json_decref(d);
			buf_free(&pdf);
		}
}

static int prepare(void **state)
{
	struct error e;
	(void)state;
	if (fonts_open(&e) < 0) {
		fprintf(stderr, "%s\n", e.text);
		return -1;
	}
	return pictures_open();
}

static int tidy(void **state)
{
	(void)state;
	pictures_close();
	return 0;
}

int main(void)
{
	if (system("command -v pdftoppm >/dev/null") != 0) {
		puts("skipped: pdftoppm is not installed (package poppler-utils)");
		return 77;
	}
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_roll_of_each_printer_has_lawful_symbols_that_two_readers_read),
	    cmocka_unit_test(a_sheet_has_them_in_rows_each_in_its_place),
	    cmocka_unit_test(a_label_that_is_too_small_is_refused_with_the_size_that_would_do),
	};
	return cmocka_run_group_tests(tests, prepare, tidy);
}
