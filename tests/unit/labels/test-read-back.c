/* Every code on every paper is read back from the rasterised page, and its modules are measured there: all of
 * one width in whole dots, as a printer that blackens every touched dot would print them. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>
#include <zbar.h>

#include "documents.h"
#include "drivers/zxing.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "picture.h"

/* Along the middle of a symbol every run of black or white is a whole number of modules. */
static void measure(const struct picture *p, const struct mark *m, int dpi)
{
	int module = m->module_dots;
	size_t step = m->turned ? (size_t)p->width : 1, aside = m->turned ? 1 : (size_t)p->width;
	int end = (int)((m->turned ? m->height_mm : m->width_mm) / 25.4 * dpi + 0.5);
	const unsigned char *at =
	    p->grey + (size_t)m->y_dots * (size_t)p->width + (size_t)m->x_dots + (size_t)(module / 2) * aside;
	for (int x = 0; x < end; x += module)
		for (int i = 1; i < module; i++)
			if (at[(size_t)(x + i) * step] != at[(size_t)x * step])
				fail_msg("page %d: a module of '%s' is not %d whole dots wide at dot %d",
				         m->page, m->text, module, x + i);
}

static int zbar_finds(const struct picture *p, const char *text)
{
	zbar_image_scanner_t *s = zbar_image_scanner_create();
	zbar_image_t *image = zbar_image_create();
	int found = 0;
	zbar_image_set_format(image, zbar_fourcc('Y', '8', '0', '0'));
	zbar_image_set_size(image, (unsigned)p->width, (unsigned)p->height);
	zbar_image_set_data(image, p->grey, (unsigned long)p->width * (unsigned long)p->height, NULL);
	zbar_scan_image(s, image);
	for (const zbar_symbol_t *z = zbar_image_first_symbol(image); z; z = zbar_symbol_next(z))
		found += strcmp(zbar_symbol_get_data(z), text) == 0;
	zbar_image_destroy(image);
	zbar_image_scanner_destroy(s);
	return found;
}

/* One code at a time, as ZXing is asked everywhere. */
static int zxing_finds(const struct picture *p, const char *text)
{
	static struct readings seen;
	const struct plane plane = {.pixels = p->grey, .width = p->width, .height = p->height};
	seen.count = 0;
	assert_true(zxing_read(&plane,
	                       SYMBOLOGY_BIT(SYMBOLOGY_CODE128) | SYMBOLOGY_BIT(SYMBOLOGY_QR) |
	                           SYMBOLOGY_BIT(SYMBOLOGY_EAN) | SYMBOLOGY_BIT(SYMBOLOGY_CODE39),
	                       &seen) >= 0);
	return seen.count == 1 && seen.item[0].size == strlen(text) &&
	       memcmp(seen.item[0].data, text, seen.item[0].size) == 0;
}

/* The part of the page that a scanner sees when it is held over one code. */
static struct picture cut_out(const struct picture *p, const struct mark *m, int dpi)
{
	int around = dpi / 12;
	int x1 = m->x_dots - around, y1 = m->y_dots - around;
	int x2 = m->x_dots + (int)(m->width_mm / 25.4 * dpi + 0.5) + around;
	int y2 = m->y_dots + (int)(m->height_mm / 25.4 * dpi + 0.5) + around;
	struct picture part = {.width = x2 - x1, .height = y2 - y1};
	part.grey = malloc((size_t)part.width * (size_t)part.height);
	memset(part.grey, 255, (size_t)part.width * (size_t)part.height);
	for (int y = y1 < 0 ? 0 : y1; y < y2 && y < p->height; y++)
		for (int x = x1 < 0 ? 0 : x1; x < x2 && x < p->width; x++)
			part.grey[(size_t)(y - y1) * (size_t)part.width + (size_t)(x - x1)] =
			    p->grey[(size_t)y * (size_t)p->width + (size_t)x];
	return part;
}

static void expected_text(const struct mark *m, const json_t *d, char *out, size_t size)
{
	snprintf(out, size, "%s", m->text);
	if (strlen(m->text) >= 63) /* only its beginning is in the trace */
		snprintf(out, size, "%s", json_text(d, "jws"));
	if (m->text[0] == '(') /* (10)AB12(21)34CD as it is sent */
		snprintf(out, size,
		         "10AB12\x1d"
		         "2134CD");
}

static bool is_datamatrix(const struct mark *code, const struct mark *quiet)
{
	return !code->turned && code->height_mm > 0 &&
	       (code->x_mm - quiet->x_mm) < 1.5 * code->module_dots * 25.4 / 203 &&
	       quiet->height_mm > code->height_mm;
}

static void read_paper(const char *name, int dpi, int *read, int *matrices)
{
	struct trace t = {0};
	struct buf pdf = {0};
	struct error e = {0};
	int pages, page = 0;
	struct picture p = {0};
	json_t *d = sample(name);
	json_object_set_new(d, "dpi", json_integer(dpi));
	if (paper_pdf_traced(NULL, d, &pdf, &pages, &t, &e) < 0)
		fail_msg("%s", e.text);
	for (size_t i = 0; i + 1 < t.count; i++) {
		const struct mark *m = &t.marks[i];
		char text[1700];
		if (m->kind != MARK_CODE)
			continue;
		if (m->page != page) {
			free(p.grey);
			p = picture_of_page(&pdf, page = m->page, dpi);
		}
		measure(&p, m, dpi);
		if (is_datamatrix(m, &t.marks[i + 1])) {
			++*matrices; /* ZBar does not read these: see read-back.mjs */
			continue;
		}
		expected_text(m, d, text, sizeof text);
		struct picture part = cut_out(&p, m, dpi);
		if (!zbar_finds(&part, text))
			fail_msg("%s at %d dpi, page %d: ZBar does not read '%.60s' back", name, dpi, m->page,
			         text);
		if (!zxing_finds(&part, text))
			fail_msg("%s at %d dpi, page %d: ZXing does not read '%.60s' back", name, dpi,
			         m->page, text);
		free(part.grey);
		++*read;
	}
	free(p.grey);
	trace_deinit(&t);
	buf_free(&pdf);
	json_decref(d);
}

static void every_code_on_every_paper_is_read_back(void **state)
{
	(void)state;
	int read = 0, matrices = 0;
	for (int i = 0; sample_names()[i]; i++) {
		read_paper(sample_names()[i], 203, &read, &matrices);
		read_paper(sample_names()[i], 300, &read, &matrices);
	}
	printf("%d codes read back by ZBar and by ZXing, %d DataMatrix measured\n", read, matrices);
	assert_true(read > 200);
	assert_true(matrices > 10);
}

static void the_largest_summary_is_read_back_from_the_smallest_paper(void **state)
{
	(void)state;
	struct trace t = {0};
	struct buf pdf = {0};
	struct error e = {0};
	int pages, seen = 0;
	json_t *d = fullest_slip("slip", "roll80"), *list = json_array();
	static const char *const many[] = {"items", "digits", "amiss", "rows", "after"};
	for (size_t i = 0; i < sizeof many / sizeof *many; i++)
		json_object_set(d, many[i], list);
	json_object_del(d, "search");
	json_decref(list);
	if (paper_pdf_traced(NULL, d, &pdf, &pages, &t, &e) < 0)
		fail_msg("%s", e.text);
	struct picture p = picture_of_page(&pdf, pages, 203);
	for (size_t i = 0; i < t.count; i++)
		if (t.marks[i].kind == MARK_CODE && strlen(t.marks[i].text) >= 63) {
			struct picture part = cut_out(&p, &t.marks[i], 203);
			seen +=
			    zbar_finds(&part, json_text(d, "jws")) && zxing_finds(&part, json_text(d, "jws"));
			free(part.grey);
		}
	assert_int_equal(seen, 1);
	free(p.grey);
	trace_deinit(&t);
	buf_free(&pdf);
	json_decref(d);
}

static int prepare(void **state)
{
	(void)state;
	struct error e;
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
	    cmocka_unit_test(every_code_on_every_paper_is_read_back),
	    cmocka_unit_test(the_largest_summary_is_read_back_from_the_smallest_paper),
	};
	return cmocka_run_group_tests(tests, prepare, tidy);
}
