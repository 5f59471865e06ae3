/* A document of the auditor's, piece by piece, as bandtally-print takes it (labels/report.c has its fields): sections of
 * sentences, figures, tables and charts. A piece for which there is no memory is left out; json_memory_failed() tells.
 */
#ifndef BANDTALLY_TOOL_DOCUMENT_H
#define BANDTALLY_TOOL_DOCUMENT_H

#include "base/buf.h"
#include "base/json.h"
#include "words/language.h"

#define DOCUMENT_ROWS_MAX 400 /* of one table on paper */

struct document {
	json_t *whole;                      /* the caller's */
	const struct language *language;    /* of its words; NULL: English */
	json_t *sections, *section, *chart; /* borrowed: the ones that are being written */
};

/* Begins one: for which site, what it is, of which days or things. 0 or -ENOMEM. */
struct document_of {
	const struct language *language; /* borrowed */
	const char *site;
	enum saying title;
	const struct say *period;
};
int document_begin(struct document *d, const struct document_of *of);

void document_about(struct document *d, const struct say *say);
/* That so many cases left the record, as its event `archived` says last; nothing where none did. */
struct event;
void document_about_left(struct document *d, int cases, const struct event *archived);
void document_section(struct document *d, const char *name, const struct say *title);
void document_says(struct document *d, const struct say *say);
void document_chart_says(struct document *d, const struct say *say);
json_t *document_figure(struct document *d, const char *name, enum saying label, const char *value);
void document_number(struct document *d, const char *name, enum saying label, int64_t value);

/* Rows to be added; each head is a saying without values. */
#define HEADS(...) ((const enum saying[]){__VA_ARGS__, SAY_NONE})
json_t *document_table(struct document *d, const char *name, const enum saying *heads);
json_t *document_row(json_t *rows); /* cells to be added */
void document_cell(json_t *cells, const char *text);
void document_word(const struct document *d, json_t *cells, enum saying word); /* SAY_NONE: an empty cell */
void document_said(const struct document *d, json_t *cells, const struct say *say);

/* The point of a number of digits as the language has it, in place. */
void document_decimal(const struct document *d, char *number);

/* As lines of CSV (RFC 4180): section, kind, name, label, value, lower, upper, signal. Its sentences are values of kind `says`:
 * a figure that is held back is no empty table. 0 or -ENOMEM. */
int document_csv(const json_t *document, struct buf *out);

#endif
