/* Every code of the pages that hang in a room is read by both of the camera's decoders from a picture of the page that is
 * held askew; and nothing is read there that is not printed. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "documents.h"
#include "drivers/eyes.h"
#include "drivers/witness.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "picture.h"

#define DPI 300
#define SUMMARY_FROM 63 /* a signed summary is longer than any code that is scanned */

static struct eyes *eyes;

static bool read_by(const struct readings *seen, enum witness who, const char *text)
{
	for (size_t i = 0; i < seen->count; i++) {
		const struct reading *r = &seen->item[i];
		if (r->witness == who && r->size == strlen(text) && memcmp(r->data, text, r->size) == 0)
			return true;
	}
	return false;
}

static bool all_read(const struct readings *seen, const char *const *texts, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (!read_by(seen, WITNESS_ZBAR, texts[i]) || !read_by(seen, WITNESS_ZXING, texts[i]))
			return false;
	return true;
}

/* In one view after the other, as frames follow each other, until both witnesses have read all. */
static void look(const struct picture *p, const char *const *texts, size_t count, struct readings *out)
{
	struct plane plane = {.pixels = p->grey, .width = p->width, .height = p->height};
	out->count = 0;
	for (int view = 0; view < VIEW_COUNT && !all_read(out, texts, count); view++)
		assert_int_equal(eyes_look(eyes, &plane, (enum view)view, CARE_CLOSE, out), 0);
}

static bool is_printed(const struct trace *t, int page, const struct reading *r)
{
	for (size_t i = 0; i < t->count; i++)
		if (t->marks[i].kind == MARK_CODE && t->marks[i].page == page &&
		    strlen(t->marks[i].text) == r->size && memcmp(t->marks[i].text, r->data, r->size) == 0)
			return true;
	return false;
}

/* What counts, that both read the same, is printed there. */
static void nothing_else_counts(const char *name, const struct trace *t, int page,
                                const struct readings *seen)
{
	struct codes codes;
	static const struct witness_rules rules = {{0}};
	witness_judge(seen, &rules, &codes);
	for (size_t i = 0; i < codes.count; i++)
		if (!is_printed(t, page, codes.item[i]))
			fail_msg("%s, page %d: '%s' was read and is not printed there", name, page,
			         codes.item[i]->data);
}

static int codes_of_page(const char *name, const struct trace *t, int page, const struct readings *seen,
                         double degrees)
{
	int count = 0;
	for (size_t i = 0; i < t->count; i++) {
		const struct mark *m = &t->marks[i];
		if (m->kind != MARK_CODE || m->page != page)
			continue;
		for (int who = WITNESS_ZBAR; who <= WITNESS_ZXING; who++)
			if (!read_by(seen, (enum witness)who, m->text))
				fail_msg("%s, page %d, held %.0f degrees askew: %s does not read '%s'", name,
				         page, degrees, who == WITNESS_ZBAR ? "ZBar" : "ZXing", m->text);
		count++;
	}
	return count;
}

struct printed {
	json_t *document;
	struct buf pdf;
	struct trace trace;
	int pages;
};

static struct printed print_sample(const char *name)
{
	struct printed p = {.document = sample(name)};
	struct error e = {0};
	json_object_set_new(p.document, "dpi", json_integer(DPI));
	if (paper_pdf_traced(NULL, p.document, &p.pdf, &p.pages, &p.trace, &e) < 0)
		fail_msg("%s", e.text);
	return p;
}

static void printed_free(struct printed *p)
{
	trace_deinit(&p->trace);
	buf_free(&p->pdf);
	json_decref(p->document);
}

/* A photograph of the whole page. */
static int whole_pages(const char *name, double degrees)
{
	struct printed p = print_sample(name);
	static struct readings seen;
	int count = 0;
	for (int page = 1; page <= p.pages; page++) {
		struct picture flat = picture_of_page(&p.pdf, page, DPI);
		double w = p.trace.page_width_mm[page], h = p.trace.page_height_mm[page];
		struct view_of_page view = {.x_mm = w / 2, .y_mm = h / 2, .degrees = degrees, .lean = 0.06};
		view.width_mm = w * 1.16 + 12;
		view.width = w > h ? 2592 : 1944, view.height = w > h ? 1944 : 2592;
		struct picture askew = picture_seen(&flat, DPI, &view);
		const char *texts[40];
		size_t wanted = 0;
		for (size_t i = 0; i < p.trace.count; i++)
			if (p.trace.marks[i].kind == MARK_CODE && p.trace.marks[i].page == page)
				texts[wanted++] = p.trace.marks[i].text;
		look(&askew, texts, wanted, &seen);
		count += codes_of_page(name, &p.trace, page, &seen, degrees);
		nothing_else_counts(name, &p.trace, page, &seen);
		free(flat.grey);
		free(askew.grey);
	}
	printed_free(&p);
	return count;
}

static void digit_cards_held_askew_are_read_by_both(void **state)
{
	(void)state;
	assert_int_equal(whole_pages("digit-cards", 9), 24);
}

/* Each card, and each slip's own code, as a hand shows it to the live camera. The signed summary is the auditor's, whose
 * scanner is held close to it (test-read-back). */
static void single_codes(const char *name, int *count)
{
	struct printed p = print_sample(name);
	static struct readings seen;
	struct picture flat = {0};
	int page = 0;
	for (size_t i = 0; i < p.trace.count; i++) {
		const struct mark *m = &p.trace.marks[i];
		if (m->kind != MARK_CODE || strlen(m->text) >= SUMMARY_FROM)
			continue;
		if (m->page != page) {
			free(flat.grey);
			flat = picture_of_page(&p.pdf, page = m->page, DPI);
		}
		struct view_of_page view = {.x_mm = m->x_mm + m->width_mm / 2 + 6,
		                            .y_mm = m->y_mm + m->height_mm / 2 - 4,
		                            .width_mm = 125,
		                            .degrees = i % 2 ? 9 : -7,
		                            .lean = 0.08,
		                            .width = 1280,
		                            .height = 720};
		struct picture askew = picture_seen(&flat, DPI, &view);
		look(&askew, &(const char *){m->text}, 1, &seen);
		for (int who = WITNESS_ZBAR; who <= WITNESS_ZXING; who++)
			if (!read_by(&seen, (enum witness)who, m->text))
				fail_msg("%s, page %d, held before the camera: %s does not read '%s'", name,
				         page, who == WITNESS_ZBAR ? "ZBar" : "ZXing", m->text);
		nothing_else_counts(name, &p.trace, page, &seen);
		++*count;
		free(askew.grey);
	}
	free(flat.grey);
	printed_free(&p);
}

static void each_card_before_the_camera_is_read_by_both(void **state)
{
	(void)state;
	int count = 0;
	single_codes("cards-camera", &count);
	single_codes("badges", &count);
	printf("%d cards before the camera\n", count);
	assert_true(count > 50);
}

static void the_code_of_each_slip_before_the_camera_is_read_by_both(void **state)
{
	static const char *const slips[] = {
	    "slip-a4",       "slip-a5",     "slip-a6",  "slip-roll80", "discrepancy-a5", "discrepancy-roll80",
	    "unresolved-a4", "addendum-a5", "found-a5", "late-a5",     "single-a6"};
	(void)state;
	int count = 0;
	for (size_t i = 0; i < sizeof slips / sizeof *slips; i++)
		single_codes(slips[i], &count);
	assert_int_equal(count, sizeof slips / sizeof *slips);
}

int main(void)
{
	struct error e;
	if (system("command -v pdftoppm >/dev/null") != 0) {
		puts("skipped: pdftoppm is not installed (package poppler-utils)");
		return 77;
	}
	eyes = eyes_new(SYMBOLOGIES_USUAL);
	if (!eyes || fonts_open(&e) < 0 || pictures_open() < 0)
		return 1;
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(digit_cards_held_askew_are_read_by_both),
	    cmocka_unit_test(each_card_before_the_camera_is_read_by_both),
	    cmocka_unit_test(the_code_of_each_slip_before_the_camera_is_read_by_both),
	};
	int r = cmocka_run_group_tests(tests, NULL, NULL);
	pictures_close();
	eyes_free(eyes);
	return r;
}
