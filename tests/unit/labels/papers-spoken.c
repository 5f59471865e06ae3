/* papers-spoken CODE FILE…: whether documents that were told in a language stand on their papers: nothing cut, nothing on anything
 * else, a glyph for each letter, no sentence in English; and where it goes from right to left, hands, feet and the order of
 * digits where they are in English. A slip is looked at on each of its papers. Each fault is a line; exit 1 where there is
 * one. With BANDTALLY_PICTURES each paper is written there as a PDF.
 */
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/file.h"
#include "labels/paper.h"
#include "stand.h"

static struct languages all;
static int faults, papers;

static void tell(const char *file, const char *paper, const char *why)
{
	printf("%s %s: %s\n", file, paper, why);
	faults++;
}

/* The English of a sentence without a value that is more than one word, if the text begins with one. Names of things and people
 * are the record's, and say what they say in every language. */
static const char *english_in(const char *text)
{
	for (int s = 1; s < SAYING_KINDS; s++) {
		const char *english = saying_text((enum saying)s);
		size_t size = strlen(english);
		if (strchr(english, ' ') && !strchr(english, '{') &&
		    (strcmp(text, english) == 0 || (size > 16 && strncmp(text, english, size) == 0)))
			return english;
	}
	return NULL;
}

static void look_for_english(const char *file, const char *paper, const struct trace *t)
{
	char why[STAND_MAX];
	for (size_t i = 0; i < t->count; i++) {
		const char *english = t->marks[i].kind == MARK_TEXT ? english_in(t->marks[i].text) : NULL;
		if (!english)
			continue;
		snprintf(why, sizeof why, "page %d: '%.200s' is said in English", t->marks[i].page, english);
		tell(file, paper, why);
	}
}

static void keep(const char *file, const char *paper, const char *code, const struct buf *pdf)
{
	char path[600];
	const char *folder = getenv("BANDTALLY_PICTURES"), *name = strrchr(file, '/');
	if (!folder)
		return;
	snprintf(path, sizeof path, "%s/%s-%s-%s.pdf", folder, name ? name + 1 : file, paper, code);
	file_replace_soon(path, 0644, pdf->data, pdf->size);
}

static int draw(const char *file, const json_t *d, struct trace *t, struct buf *pdf)
{
	struct error e = {0};
	int pages;
	*t = (struct trace){0};
	*pdf = (struct buf){0};
	int r = paper_pdf_traced(&all, d, pdf, &pages, t, &e);
	if (r < 0)
		tell(file, json_text(d, "paper"), e.text);
	return r;
}

/* Where the codes stand, for they stand beside the digits that they are of. */
static void compare_codes(const char *file, const json_t *d, const struct trace *t)
{
	json_t *english = json_deep_copy(d);
	struct trace other;
	struct buf pdf;
	json_object_del(english, "language");
	if (draw(file, english, &other, &pdf) == 0) {
		size_t k = 0;
		for (size_t i = 0; i < t->count; i++) {
			const struct mark *m = &t->marks[i];
			if (m->kind != MARK_CODE)
				continue;
			while (k < other.count && other.marks[k].kind != MARK_CODE)
				k++;
			if (k == other.count || fabs(other.marks[k].x_mm - m->x_mm) > 0.2 ||
			    fabs(other.marks[k].y_mm - m->y_mm) > 0.2)
				tell(file, "", "a digit's code stands at another place than in English");
			k++;
		}
	}
	trace_deinit(&other);
	buf_free(&pdf);
	json_decref(english);
}

static void look_at(const char *file, const json_t *d, const char *code)
{
	struct trace t;
	struct buf pdf;
	char why[STAND_MAX];
	const char *paper = json_text(d, "paper"), *kind = json_text(d, "kind");
	papers++;
	if (draw(file, d, &t, &pdf) == 0) {
		keep(file, paper, code, &pdf);
		if (stand_check(&t, strcmp(kind, "pack-labels") == 0 ? 1.9 : 3.9, languages_find(&all, code),
		                why) < 0)
			tell(file, paper, why);
		if (t.unknown_glyphs)
			tell(file, paper, "letters that the fonts do not have");
		if (strcmp(kind, "digit-cards") == 0)
			compare_codes(file, d, &t);
		look_for_english(file, paper, &t);
	}
	trace_deinit(&t);
	buf_free(&pdf);
}

static void look_at_file(const char *file, const char *code)
{
	static const char *const sizes[] = {"a5", "roll80", "a6", "a4"};
	json_error_t e;
	json_t *d = json_load_file(file, JSON_REJECT_DUPLICATES, &e);
	if (!d || strcmp(json_text(d, "language"), code) != 0) {
		tell(file, "", d ? "the document names another language" : e.text);
		json_decref(d);
		return;
	}
	for (size_t i = 0; i < sizeof sizes / sizeof *sizes && json_object_get(d, "slip"); i++) {
		json_object_set_new(d, "paper", json_string(sizes[i]));
		json_object_del(d, "dpi");
		look_at(file, d, code);
	}
	if (!json_object_get(d, "slip"))
		look_at(file, d, code);
	json_decref(d);
}

int main(int argc, char **argv)
{
	struct error e = {0};
	if (argc < 3) {
		fprintf(stderr, "papers-spoken CODE FILE…\n");
		return 2;
	}
	if (fonts_open(&e) < 0 || languages_read(&all, languages_folder(), &e) < 0 ||
	    !languages_find(&all, argv[1])) {
		fprintf(stderr, "papers-spoken: %s: %s\n", argv[1], e.text);
		return 1;
	}
	if (language_lacks(languages_find(&all, argv[1])))
		tell(argv[1], "", "sentences of it are said in English: fill them in its .po");
	for (int i = 2; i < argc; i++)
		look_at_file(argv[i], argv[1]);
	printf("%d papers in '%s', %d faults\n", papers, argv[1], faults);
	languages_free(&all);
	return faults || !papers;
}
