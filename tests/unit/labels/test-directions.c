/* A paper of a language that goes from right to left is one from left to right, turned: each text and each code stands where
 * its mirror image would, and none of them is one. Bars, hands, feet, and the order of digits and numbers stay as they are. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/file.h"
#include "drawn.h"
#include "picture.h"

static struct languages turned;

/* English from right to left: a catalogue of no sentence (GNU gettext manual, 'The Format of GNU MO Files'). */
static int make_language(const char *folder)
{
	static const char head[] = "Content-Type: text/plain; charset=UTF-8\n"
	                           "Plural-Forms: nplurals=2; plural=n != 1;\nX-Direction: rtl\n";
	const uint32_t words[] = {0x950412de, 0, 1, 28, 36, 0, 0, 0, 44, sizeof head - 1, 45};
	struct buf b = {0};
	struct error e = {0};
	char path[100];
	snprintf(path, sizeof path, "%s/he.mo", folder);
	buf_add(&b, words, sizeof words);
	buf_add(&b, "", 1);
	buf_add(&b, head, sizeof head);
	int r = file_replace_soon(path, 0600, b.data, b.size);
	buf_free(&b);
	r = r < 0 ? r : languages_read(&turned, folder, &e);
	unlink(path);
	if (r < 0)
		fprintf(stderr, "%s\n", e.text);
	return r;
}

static int begin(void **state)
{
	char folder[] = "/tmp/bandtally-turned-XXXXXX";
	if (drawn_begin(state) < 0 || pictures_open() < 0 || !mkdtemp(folder))
		return -1;
	int r = make_language(folder);
	rmdir(folder);
	return r;
}

static int end(void **state)
{
	pictures_close();
	languages_free(&turned);
	return drawn_end(state);
}

/* A document in both directions. */
struct pair {
	struct trace of[2];
	struct buf pdf[2];
	int pages, dpi;
};
enum { FROM_LEFT, FROM_RIGHT };

static struct pair both(const char *name)
{
	struct pair p = {0};
	struct error e = {0};
	json_t *d = sample(name);
	for (int i = FROM_LEFT; i <= FROM_RIGHT; i++) {
		json_object_set_new(d, "language", json_string(i == FROM_RIGHT ? "he" : "en"));
		if (paper_pdf_traced(&turned, d, &p.pdf[i], &p.pages, &p.of[i], &e) < 0)
			fail_msg("%s: %s", name, e.text);
	}
	p.dpi = (int)json_number(d, "dpi", strcmp(name, "pack-labels") == 0 ? 203 : 300);
	json_decref(d);
	assert_int_equal(p.of[FROM_LEFT].count, p.of[FROM_RIGHT].count);
	return p;
}

static void forget(struct pair *p)
{
	for (int i = FROM_LEFT; i <= FROM_RIGHT; i++) {
		trace_deinit(&p->of[i]);
		buf_free(&p->pdf[i]);
	}
}

static bool near(double a, double b)
{
	return a - b < 0.13 && b - a < 0.13; /* a dot of 203 to the inch */
}

/* Whether `b` stands where a mirror would show `a`. */
static bool is_mirrored(const struct trace *t, const struct mark *a, const struct mark *b)
{
	return near(b->x_mm, t->page_width_mm[a->page] - a->x_mm - a->width_mm);
}

static bool is_same(const struct mark *a, const struct mark *b)
{
	return near(a->x_mm, b->x_mm);
}

/* A value in a text from right to left is kept apart by U+2068 and U+2069, which nobody sees. */
static void seen_text(const char *text, char out[120])
{
	size_t n = 0;
	while (*text && n < 100)
		if (strncmp(text, "\u2068", 3) == 0 || strncmp(text, "\u2069", 3) == 0)
			text += 3;
		else
			out[n++] = *text++;
	out[n] = 0;
}

static bool same_text(const struct mark *a, const struct mark *b)
{
	char one[120], other[120];
	seen_text(a->text, one);
	seen_text(b->text, other);
	return strncmp(one, other, strlen(other)) == 0;
}

static void hold(bool holds, const char *name, const struct mark *a, const struct mark *b)
{
	if (!holds || a->kind != b->kind || a->page != b->page || !same_text(a, b) ||
	    !near(a->y_mm, b->y_mm) || !near(a->width_mm, b->width_mm) || !near(a->height_mm, b->height_mm))
		fail_msg("%s, page %d: '%s' stands at %.2f and %.2f mm, '%s' from right to left at %.2f and "
		         "%.2f mm",
		         name, a->page, a->text, a->x_mm, a->y_mm, b->text, b->x_mm, b->y_mm);
}

static void texts_codes_and_spaces_are_where_a_mirror_would_show_them(void **state)
{
	static const char *const names[] = {"slip-a4",     "slip-a5",      "slip-a6",       "slip-roll80",
	                                    "single-a6",   "late-a5",      "found-a5",      "discrepancy-a5",
	                                    "count-sheet", "cards-camera", "leaflet",       "briefing",
	                                    "badges",      "pack-labels",  "scanner-check", "unresolved-a4"};
	(void)state;
	for (size_t n = 0; n < sizeof names / sizeof *names; n++) {
		struct pair p = both(names[n]);
		assert_true(p.of[0].count > 0);
		for (size_t i = 0; i < p.of[0].count; i++) {
			const struct mark *a = &p.of[0].marks[i], *b = &p.of[1].marks[i];
			hold(is_mirrored(&p.of[0], a, b), names[n], a, b);
		}
		forget(&p);
	}
}

/* Where a sheet's labels stick nobody can turn: the first lies nearer to one edge than the last to the other. */
static void a_label_of_a_sheet_is_printed_on_that_label(void **state)
{
	json_t *d = sample("pack-labels");
	struct trace t = {0};
	struct buf pdf = {0};
	struct error e = {0};
	int pages;
	(void)state;
	json_object_set_new(d, "language", json_string("he"));
	json_object_set_new(d, "sheet",
	                    json_pack("{s:i,s:i,s:i,s:i,s:i,s:i,s:i,s:i}", "width_um", 210000, "height_um",
	                              297000, "across", 3, "down", 8, "first_x_um", 6000, "first_y_um", 10000,
	                              "step_x_um", 60000, "step_y_um", 34000));
	if (paper_pdf_traced(&turned, d, &pdf, &pages, &t, &e) < 0)
		fail_msg("%s", e.text);
	assert_true(t.count > 20);
	for (size_t i = 0; i < t.count; i++) {
		double x = fmod(t.marks[i].x_mm - 6, 60);
		if (t.marks[i].x_mm < 6 || x + t.marks[i].width_mm > 57.1)
			fail_msg("'%s' is printed beside its label: %.1f mm", t.marks[i].text,
			         t.marks[i].x_mm);
	}
	trace_deinit(&t);
	buf_free(&pdf);
	json_decref(d);
}

/* The marks of a page from `top_mm` to `bottom_mm`. */
static void stays(const char *name, int page, double top_mm, double bottom_mm)
{
	struct pair p = both(name);
	int within = 0;
	for (size_t i = 0; i < p.of[0].count; i++) {
		const struct mark *a = &p.of[0].marks[i], *b = &p.of[1].marks[i];
		bool in_it = a->page == page && a->y_mm >= top_mm && a->y_mm < bottom_mm;
		if (a->page == page)
			hold(in_it ? is_same(a, b) : is_mirrored(&p.of[0], a, b), name, a, b);
		within += in_it;
	}
	assert_true(within >= 10);
	forget(&p);
}

static void digits_side_by_side_keep_their_order_under_a_head_that_is_turned(void **state)
{
	(void)state;
	for (int page = 1; page <= 5; page++)
		stays("digit-cards", page, 43, 190);
}

static void cards_of_numbers_grow_from_left_to_right(void **state)
{
	struct pair p = both("cards");
	(void)state;
	forget(&p);
	stays("cards", p.pages, 26, 196);
}

/* --- as pictures ---------------------------------------------------------------------------------- */

static struct picture page_of(const struct pair *p, int i, int page)
{
	return picture_of_page(&p->pdf[i], page, p->dpi);
}

static bool same_dots(const struct picture *a, int ax, int ay, const struct picture *b, int bx, int by,
                      int width, int height)
{
	for (int y = 0; y < height; y++)
		if (memcmp(a->grey + (size_t)(ay + y) * (size_t)a->width + (size_t)ax,
		           b->grey + (size_t)(by + y) * (size_t)b->width + (size_t)bx, (size_t)width) != 0)
			return false;
	return true;
}

static int dots(const struct pair *p, double mm)
{
	return (int)(mm / 25.4 * p->dpi + 0.5);
}

static void no_code_is_mirrored(void **state)
{
	static const char *const names[] = {"slip-a5", "count-sheet", "cards", "scanner-check",
	                                    "pack-labels"};
	int codes = 0;
	(void)state;
	for (size_t n = 0; n < sizeof names / sizeof *names; n++) {
		struct pair p = both(names[n]);
		struct picture a = page_of(&p, FROM_LEFT, 1), b = page_of(&p, FROM_RIGHT, 1);
		for (size_t i = 0; i < p.of[0].count; i++) {
			const struct mark *m = &p.of[0].marks[i], *o = &p.of[1].marks[i];
			if (m->kind != MARK_CODE || m->page != 1)
				continue;
			codes++;
			if (!same_dots(&a, m->x_dots, m->y_dots, &b, o->x_dots, o->y_dots,
			               dots(&p, m->width_mm), dots(&p, m->height_mm)))
				fail_msg("%s: the code '%s' is another picture", names[n], m->text);
		}
		free(a.grey);
		free(b.grey);
		forget(&p);
	}
	assert_true(codes >= 20);
}

static void hands_and_feet_are_the_same_picture(void **state)
{
	struct pair p = both("digit-cards");
	(void)state;
	for (int page = 1; page <= 4; page++) {
		struct picture a = page_of(&p, FROM_LEFT, page), b = page_of(&p, FROM_RIGHT, page);
		int top = dots(&p, 43), high = dots(&p, 140);
		assert_int_equal(a.width, b.width);
		if (!same_dots(&a, 0, top, &b, 0, top, a.width, high))
			fail_msg("page %d of the digit cards: it is another picture from right to left",
			         page);
		assert_false(same_dots(&a, 0, 0, &b, 0, 0, a.width, top)); /* its head is turned */
		free(a.grey);
		free(b.grey);
	}
	forget(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(texts_codes_and_spaces_are_where_a_mirror_would_show_them),
	    cmocka_unit_test(a_label_of_a_sheet_is_printed_on_that_label),
	    cmocka_unit_test(digits_side_by_side_keep_their_order_under_a_head_that_is_turned),
	    cmocka_unit_test(cards_of_numbers_grow_from_left_to_right),
	    cmocka_unit_test(no_code_is_mirrored),
	    cmocka_unit_test(hands_and_feet_are_the_same_picture),
	};
	return cmocka_run_group_tests(tests, begin, end);
}
