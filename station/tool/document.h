/* A document of the auditor's, piece by piece, as bandtally-print takes it (labels/report.c has its fields): sections of
 * sentences, figures, tables and charts. A piece for which there is no memory is left out; json_memory_failed() tells.
 */
#ifndef BANDTALLY_TOOL_DOCUMENT_H
#define BANDTALLY_TOOL_DOCUMENT_H

#include "base/buf.h"
#include "base/json.h"

#define DOCUMENT_ROWS_MAX 400 /* of one table on paper */

struct document {
	json_t *whole;                      /* the caller's */
	json_t *sections, *section, *chart; /* borrowed: the ones that are being written */
};

/* Begins one: for which site, what it is, of which days or things. 0 or -ENOMEM. */
int document_begin(struct document *d, const char *site, const char *title, const char *period);

__attribute__((format(printf, 2, 3))) void document_about(struct document *d, const char *format, ...);
/* That so many cases left the record, as its event `archived` says last; nothing where none did. */
struct event;
void document_about_left(struct document *d, int cases, const struct event *archived);
void document_section(struct document *d, const char *name, const char *title);
__attribute__((format(printf, 2, 3))) void document_says(struct document *d, const char *format, ...);
__attribute__((format(printf, 2, 3))) void document_chart_says(struct document *d, const char *format, ...);
json_t *document_figure(struct document *d, const char *name, const char *label, const char *value);
void document_number(struct document *d, const char *name, const char *label, int64_t value);

/* Rows to be added; `heads` as one text, parted by '|'. */
json_t *document_table(struct document *d, const char *name, const char *heads);
json_t *document_row(json_t *rows); /* cells to be added */
void document_cell(json_t *cells, const char *text);

/* As lines of CSV (RFC 4180): section, kind, name, label, value, lower, upper, signal. Its sentences are values of kind `says`:
 * a figure that is held back is no empty table. 0 or -ENOMEM. */
int document_csv(const json_t *document, struct buf *out);

#endif
