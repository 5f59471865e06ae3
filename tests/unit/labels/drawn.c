#include "drawn.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "documents.h"
#include "labels/canvas.h"
#include "labels/paper.h"
#include "stand.h"

struct languages drawn_languages; /* as they are built */

void drawn_refused(json_t *d, const char *part)
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

json_t *sample_with(const char *name, const char *field, json_t *value)
{
	json_t *d = sample(name);
	json_object_set_new(d, field, value);
	return d;
}

json_t *sample_without(const char *name, const char *field)
{
	json_t *d = sample(name);
	json_object_del(d, field);
	return d;
}

void drawn_make(const json_t *d, struct trace *t, struct buf *pdf, int *pages)
{
	struct error e = {0};
	if (paper_pdf_traced(&drawn_languages, d, pdf, pages, t, &e) < 0)
		fail_msg("%s", e.text);
}

int drawn_has(const struct trace *t, const char *part)
{
	int n = 0;
	for (size_t i = 0; i < t->count; i++)
		n += t->marks[i].kind == MARK_TEXT && strstr(t->marks[i].text, part) != NULL;
	return n;
}

/* Everything lies on its page, clear of the edge by `edge_mm`, and nothing lies on anything else. */
void drawn_stands_clear_in(const char *language, const char *what, const struct trace *t, double edge_mm)
{
	char why[STAND_MAX];
	if (stand_check(t, edge_mm, languages_find(&drawn_languages, language), why) < 0)
		fail_msg("%s, %s", what, why);
}

void drawn_stands_clear(const char *what, const struct trace *t, double edge_mm)
{
	drawn_stands_clear_in("en", what, t, edge_mm);
}

int drawn_count(const struct trace *t, const char *begin)
{
	int n = 0;
	for (size_t i = 0; i < t->count; i++)
		n += t->marks[i].kind == MARK_TEXT && strncmp(t->marks[i].text, begin, strlen(begin)) == 0;
	return n;
}

struct trace drawn_sample(const char *name)
{
	struct trace t = {0};
	struct buf pdf = {0};
	int pages;
	json_t *d = sample(name);
	drawn_make(d, &t, &pdf, &pages);
	buf_free(&pdf);
	json_decref(d);
	return t;
}

int drawn_begin(void **state)
{
	(void)state;
	struct error e = {0};
	if (languages_read(&drawn_languages, languages_folder(), &e) < 0)
		fprintf(stderr, "%s\n", e.text);
	if (fonts_open(&e) == 0)
		return 0;
	fprintf(stderr, "%s\n", e.text);
	return -1;
}

int drawn_end(void **state)
{
	(void)state;
	languages_free(&drawn_languages);
	return 0;
}
