/* A report as one page of HTML: the sentences, figures, tables and charts of its document, the charts as bandtally-print draws them
 * for paper. Everything is in the one file: it asks for nothing from anywhere, runs no script, and prints as it stands. Each
 * chart has its values beside it as a table, for whoever cannot see it.
 */
#ifndef BANDTALLY_TOOL_REPORT_PAGE_H
#define BANDTALLY_TOOL_REPORT_PAGE_H

#include "base/buf.h"
#include "base/error.h"
#include "base/json.h"
#include "words/language.h"

struct page_link {
	char to[40];   /* an address; "" where there is nothing to go to, and only the words stand there */
	char said[80]; /* its words */
};

struct page_links { /* that stand above a report; not on paper */
	const struct page_link *list;
	int n;
};

/* Adds the page of a document (labels/report.c) to `out`. 0 or a negative errno with `e`. */
int report_page_text(const json_t *document, const struct language *language, struct page_links links,
                     struct buf *out, struct error *e);

/* Writes it to `file`, without links, mode 0600. 0 or a negative errno with `e`. */
int report_page(const json_t *document, const struct language *language, const char *file, struct error *e);

/* A page that leads to others: a heading with its links, one a line, for each group. Borrowed. */
struct page_group {
	const char *title;
	struct page_links links;
};
struct page_index {
	const struct language *language;
	const char *site, *title;
	const char *const *about; /* sentences, NULL behind the last */
	const struct page_group *groups;
	int n_groups;
};
int report_index_text(const struct page_index *index, struct buf *out, struct error *e);

#endif
