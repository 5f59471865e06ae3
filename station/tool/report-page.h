/* A report as one page of HTML: the sentences, figures, tables and charts of its document, the charts as bandtally-print draws them
 * for paper. Everything is in the one file: it asks for nothing from anywhere, runs no script, and prints as it stands. Each
 * chart has its values beside it as a table, for whoever cannot see it.
 */
#ifndef BANDTALLY_TOOL_REPORT_PAGE_H
#define BANDTALLY_TOOL_REPORT_PAGE_H

#include "base/error.h"
#include "base/json.h"

/* Writes the page of a document (labels/report.c) to `file`, mode 0600. 0 or a negative errno with `e`. */
int report_page(const json_t *document, const char *file, struct error *e);

#endif
