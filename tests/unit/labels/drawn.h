/* What was drawn of a document, and where it lies. */
#ifndef BANDTALLY_TESTS_LABELS_DRAWN_H
#define BANDTALLY_TESTS_LABELS_DRAWN_H

#include "documents.h"
#include "labels/canvas.h"
#include "labels/paper.h"

/* Before and after all tests: the fonts, and the languages as they are built. */
int drawn_begin(void **state);
int drawn_end(void **state);

extern struct languages drawn_languages;

/* Such a document (consumed) is refused in words of which these are part, and nothing is drawn. */
void drawn_refused(json_t *d, const char *part);
/* A sample with this field otherwise (consumed), or without it. */
json_t *sample_with(const char *name, const char *field, json_t *value);
json_t *sample_without(const char *name, const char *field);
/* Draws it; fails the test where it is refused. */
void drawn_make(const json_t *d, struct trace *t, struct buf *pdf, int *pages);
/* How many texts hold, or begin with, this one. */
int drawn_has(const struct trace *t, const char *part);
/* As a document of that language: in which the space for the label is named. */
void drawn_stands_clear_in(const char *language, const char *what, const struct trace *t, double edge_mm);
/* Everything lies on its page, clear of the edge, and nothing lies on anything else; or the test fails. */
void drawn_stands_clear(const char *what, const struct trace *t, double edge_mm);
int drawn_count(const struct trace *t, const char *begin);
struct trace drawn_sample(const char *name);

#endif
