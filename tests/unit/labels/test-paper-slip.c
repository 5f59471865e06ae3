/* A slip on paper: what comes first, how large, on which page, and nothing cut off. */
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

#include "code/own-codes.h"
#include "drawn.h"
#include "labels/barcode.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "stand.h"

static const char *const papers[] = {"roll80", "a6", "a5", "a4"};

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
			drawn_make(d, &t, &pdf, &pages);
			drawn_stands_clear(what, &t, 3.9);
			assert_true(pages > 1);
			assert_int_equal(drawn_count(&t, "Slip 0000001"), pages);
			for (int i = 1; i <= pages; i++) {
				snprintf(line, sizeof line, "COPY 2  ·  page %d of %d", i, pages);
				assert_int_equal(drawn_count(&t, line), 1);
				snprintf(line, sizeof line, "goes on: page %d of %d", i + 1, pages);
				assert_int_equal(drawn_count(&t, line), i < pages);
			}
			assert_int_equal(drawn_count(&t, "998"), 12);
			assert_int_equal(drawn_count(&t, "all items"), k == 0); /* not on paper that shouts */
			assert_int_equal(drawn_count(&t, "surgeon told"), k == 0);
			assert_int_equal(drawn_count(&t, "A count that agrees can still be wrong"), 1);
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
}

static void count_and_look_are_printed_apart_and_nothing_is_called_safe(void **state)
{
	(void)state;
	struct trace t = drawn_sample("slip-a5");
	assert_int_equal(drawn_count(&t, "Right index finger: tourniquet 32 min"), 1);
	assert_int_equal(drawn_count(&t, "10:00 to 10:32, seen bare at 10:32 by CIRC-2"), 1);
	assert_int_equal(drawn_count(&t, "shown to both, intact"), 1);
	assert_int_equal(drawn_has(&t, "agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2"), 1);
	assert_int_equal(drawn_has(&t, "event 78, hash "), 1);
	for (int i = 0; sample_names()[i]; i++) { /* rule 15 */
		struct trace each = drawn_sample(sample_names()[i]);
		assert_int_equal(drawn_has(&each, "safe") + drawn_has(&each, "all clear"), 0);
		trace_deinit(&each);
	}
	trace_deinit(&t);
	t = drawn_sample("single-a6");
	assert_int_equal(drawn_count(&t, "Single-person count: "), 1);
	assert_int_equal(drawn_has(&t, "from gloving"), 1);
	assert_int_equal(drawn_has(&t, "single-person count by SURG-3"), 1);
	assert_int_equal(drawn_has(&t, "agreed aloud by"), 0);
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
		struct trace t = drawn_sample(papers_that_shout[i].name);
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
		struct trace t = drawn_sample(names[i]);
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
	} most[] = {{"slip-a4", 1},   {"slip-a5", 1},        {"slip-a6", 2},           {"slip-roll80", 1},
	            {"late-a5", 1},   {"discrepancy-a5", 1}, {"unresolved-a4", 1},     {"addendum-a5", 1},
	            {"single-a6", 2}, {"found-a5", 1},       {"discrepancy-two-a5", 1}};
	for (size_t i = 0; i < sizeof most / sizeof *most; i++) {
		struct trace t = drawn_sample(most[i].name);
		int pages = t.marks[t.count - 1].page;
		if (pages > most[i].pages)
			fail_msg("%s takes %d pages", most[i].name, pages);
		if (strcmp(most[i].name, "slip-roll80") == 0 && t.page_height_mm[1] > 250)
			fail_msg("%s is %.1f mm long", most[i].name, t.page_height_mm[1]);
		trace_deinit(&t);
	}
}

/* All that matters of a case that ended unresolved is on one sheet: what is missing, where, what to do, and the whole search. */
static void an_unresolved_case_takes_one_page_of_a5(void **state)
{
	(void)state;
	static const char *const says[] = {"UNRESOLVED",
	                                   "1 finger tourniquet, green, M",
	                                   "the left great (big) toe",
	                                   "Take the dressing down.",
	                                   "imaging, if the missing item",
	                                   "tell the nurse in charge",
	                                   "incident number, owed"};
	for (int dpi = 203; dpi <= 600; dpi += 397) {
		struct trace t = {0};
		struct buf pdf = {0};
		int pages;
		json_t *d = sample_with("unresolved-a4", "paper", json_string("a5"));
		json_object_set_new(d, "dpi", json_integer(dpi));
		drawn_make(d, &t, &pdf, &pages);
		drawn_stands_clear("unresolved on A5", &t, 3.9);
		assert_int_equal(pages, 1);
		for (size_t i = 0; i < sizeof says / sizeof *says; i++)
			assert_int_equal(drawn_count(&t, says[i]), 1);
		for (size_t k = 0; k < t.count; k++)
			assert_true(t.marks[k].kind != MARK_TEXT || t.marks[k].size_pt >= 7.5 - 0.01);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
}

/* A page that comes off says whose it is, where and of which day. Where the label would cost a page more, it is the day alone. */
static void a_further_page_bears_the_patients_label_and_the_day(void **state)
{
	(void)state;
	json_t *d = sample_with("unresolved-a4", "paper", json_string("a6"));
	struct trace t = {0};
	struct buf pdf = {0};
	int pages, spaces[4] = {0}, named[4] = {0};
	drawn_make(d, &t, &pdf, &pages);
	assert_int_equal(pages, 3);
	for (size_t i = 0; i < t.count; i++) {
		const struct mark *m = &t.marks[i];
		spaces[m->page] += m->kind == MARK_SPACE;
		named[m->page] += m->kind == MARK_TEXT && strstr(m->text, "Theatre 1") &&
		                  strstr(m->text, "case 1") && strstr(m->text, "25 Nov 2026");
	}
	assert_int_equal(spaces[1], 1);
	assert_int_equal(spaces[2], 0); /* it is full */
	assert_int_equal(spaces[3], 1);
	assert_true(named[2] == 1 && named[3] == 1);
	trace_deinit(&t);
	buf_free(&pdf);
	json_decref(d);
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
		struct trace t = drawn_sample(sample_names()[i]);
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
		json_t *d = sample_with(names[i], "patient_label",
		                        json_pack("{s:i,s:i}", "width_mm", 68, "height_mm", 41));
		struct trace t = {0};
		struct buf pdf = {0};
		int pages, found = 0;
		drawn_make(d, &t, &pdf, &pages);
		drawn_stands_clear(names[i], &t, 3.9);
		for (size_t k = 0; k < t.count; k++)
			found += t.marks[k].page == 1 && t.marks[k].kind == MARK_SPACE &&
			         fabs(t.marks[k].width_mm - 68) < 0.1 &&
			         fabs(t.marks[k].height_mm - 41) < 0.1;
		assert_int_equal(found, 1);
		trace_deinit(&t);
		buf_free(&pdf);
		json_decref(d);
	}
	drawn_refused(
	    sample_with("slip-a5", "patient_label", json_pack("{s:i,s:i}", "width_mm", 5, "height_mm", 41)),
	    "'patient_label.width_mm': it is out of range");
}

/* A slip is read first where it differs from the ordinary one: what is there must not look like it. */
static void what_is_not_ordinary_is_printed_so(void **state)
{
	(void)state;
	json_t *d = sample_with("slip-a5", "heading_words", json_string("Case cancelled."));
	struct trace t = {0};
	struct buf pdf = {0};
	int pages;
	drawn_make(d, &t, &pdf, &pages);
	assert_int_equal(drawn_count(&t, "Case cancelled."), 1);
	assert_int_equal(drawn_count(&t, "Reconciled"), 0);
	assert_int_equal(drawn_has(&t, "COPY"), 0); /* the first copy needs no word */
	trace_deinit(&t);
	json_decref(d);

	t = drawn_sample("found-a5");
	size_t after = place_of(&t, "After a discrepancy at ");
	assert_non_null(strstr(t.marks[after].text, "found 10:"));
	assert_int_equal(t.marks[after].page, 1);
	assert_int_equal(drawn_has(&t, "incident number"), 0); /* none is owed */
	trace_deinit(&t);
	t = drawn_sample("unresolved-a4");
	assert_int_equal(drawn_has(&t, "incident number, owed"), 1);
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
	struct trace t = drawn_sample("discrepancy-a5");
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
			json_t *d = sample_with("slip-roll80", "jws", json_string(jws));
			struct trace t = {0};
			struct buf pdf = {0};
			int pages;
			json_object_set_new(d, "paper", json_string(papers[p]));
			json_object_set_new(d, "dpi", json_integer(dpis[i]));
			drawn_make(d, &t, &pdf, &pages);
			drawn_stands_clear("the longest summary", &t, 3.9);
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
}

static json_t *second_copy(const char *name, const char *paper)
{
	char code[OWN_CODE_MAX];
	struct code_fault fault;
	struct own_code own;
	json_t *d = sample_with(name, "paper", json_string(paper));
	const char *text = json_text(d, "code");
	assert_int_equal(own_code_read(text, strlen(text), &own, &fault), 0);
	own.copy = 2;
	assert_int_equal(own_code_write(&own, code), 0);
	json_object_set_new(d, "code", json_string(code));
	json_object_set_new(d, "copy", json_integer(2));
	json_object_set_new(d, "dpi", json_integer(203));
	return d;
}

/* Who holds two papers of one number sees on each page which is the further one; else it says what the first did. */
static void a_further_copy_says_so_on_every_page_of_every_paper(void **state)
{
	(void)state;
	static const char *const names[] = {"slip-a5", "discrepancy-a5", "unresolved-a4", "addendum-a5"};
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		for (size_t p = 0; p < sizeof papers / sizeof *papers; p++) {
			struct trace t = {0};
			struct buf pdf = {0};
			int pages, copies = 0;
			json_t *d = second_copy(names[i], papers[p]);
			drawn_make(d, &t, &pdf, &pages);
			drawn_stands_clear(names[i], &t, 3.9);
			for (size_t k = 0; k < t.count; k++) {
				const struct mark *m = &t.marks[k];
				bool says = m->kind == MARK_TEXT && strncmp(m->text, "COPY 2", 6) == 0;
				copies += says;
				if (says) /* at the head, at the right */
					assert_true(m->y_mm < 20 && m->size_pt >= 8 &&
					            m->x_mm > t.page_width_mm[m->page] / 2);
			}
			assert_int_equal(copies, pages);
			trace_deinit(&t);
			buf_free(&pdf);
			json_decref(d);
		}
}

/* What lies in the tray is used from its corner: nothing stands beyond the slip's own size. */
static void other_paper_is_used_from_its_corner(void **state)
{
	(void)state;
	static const struct sheet_size letter = {215.9, 279.4}, a4 = {210, 297}, card = {76.2, 127},
	                               half = {148, 297};
	static const struct {
		const char *name;
		const struct sheet_size *sheet;
		double page_mm[2], within_mm[2];
		int cuts; /* a page */
	} all[] = {
	    {"slip-a5", &letter, {215.9, 279.4}, {148, 210}, 2},
	    {"slip-a5", &a4, {210, 297}, {148, 210}, 2},
	    {"discrepancy-a5", &a4, {210, 297}, {148, 210}, 2},
	    {"slip-a6", &letter, {215.9, 279.4}, {105, 148}, 2},
	    {"slip-a4", &letter, {215.9, 279.4}, {148, 210}, 2}, /* too small for its own: the next smaller one */
	    {"slip-a4", &a4, {210, 297}, {210, 297}, 0},
	    {"slip-a5", &half, {148, 297}, {148, 210}, 1},
	    {"slip-a5", &card, {148, 210}, {148, 210}, 0}, /* for any: as it is */
	    {"slip-roll80", &a4, {80, 0}, {80, 300}, 0}};
	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		struct trace t = {0};
		struct buf pdf = {0};
		struct error e = {0};
		int pages;
		json_t *d = sample(all[i].name);
		assert_int_equal(paper_pdf_on(NULL, d, *all[i].sheet, &pdf, &pages, &t, &e), 0);
		assert_true(fabs(t.page_width_mm[1] - all[i].page_mm[0]) < 0.2);
		assert_true(all[i].page_mm[1] <= 0 || fabs(t.page_height_mm[1] - all[i].page_mm[1]) < 0.2);
		int cuts = 0;
		for (size_t k = 0; k < t.count; k++) {
			const struct mark *m = &t.marks[k];
			cuts += m->kind == MARK_CUT;
			if (m->kind ==
			    MARK_CUT) /* along the slip's edge, from the paper's to the other cut */
				assert_true(fabs(m->x_mm + m->width_mm - all[i].within_mm[0]) < 0.2 ||
				            fabs(m->y_mm + m->height_mm - all[i].within_mm[1]) < 0.2);
			else
				assert_true(m->x_mm + m->width_mm < all[i].within_mm[0] &&
				            m->y_mm + m->height_mm < all[i].within_mm[1]);
		}
		assert_int_equal(cuts, all[i].cuts * pages);
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

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(the_fullest_slip_is_never_cut_off_on_any_paper),
	    cmocka_unit_test(count_and_look_are_printed_apart_and_nothing_is_called_safe),
	    cmocka_unit_test(what_is_missing_where_and_what_to_do_come_first),
	    cmocka_unit_test(the_digit_and_its_minutes_are_the_largest_where_nothing_is_amiss),
	    cmocka_unit_test(the_ordinary_case_takes_one_page),
	    cmocka_unit_test(an_unresolved_case_takes_one_page_of_a5),
	    cmocka_unit_test(a_further_page_bears_the_patients_label_and_the_day),
	    cmocka_unit_test(nothing_on_a_slip_is_smaller_than_its_paper_allows),
	    cmocka_unit_test(the_site_says_how_large_the_patients_label_is),
	    cmocka_unit_test(what_is_not_ordinary_is_printed_so),
	    cmocka_unit_test(a_count_that_differs_stands_in_a_black_field),
	    cmocka_unit_test(the_longest_summary_fits_every_paper),
	    cmocka_unit_test(a_further_copy_says_so_on_every_page_of_every_paper),
	    cmocka_unit_test(other_paper_is_used_from_its_corner),
	    cmocka_unit_test(the_job_is_called_after_slip_and_copy_only),
	};
	return cmocka_run_group_tests(tests, drawn_begin, drawn_end);
}
