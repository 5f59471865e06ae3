/* The auditor's pages, in memory only: a member of bandtally-audit makes them of a copy of the record and hands them over
 * (tool/audit-pages.h), and whoever shows a cookie that opens reports (cookies.h) reads them at /audit.
 *
 * They come page by page, in parts, as a set: what is looked at is always one whole set, and the next takes its place when it
 * is whole. None is kept beyond this process.
 */
#ifndef BANDTALLY_BOARD_REPORTS_H
#define BANDTALLY_BOARD_REPORTS_H

#include <stdbool.h>

#include "base/buf.h"
#include "base/json.h"

#define REPORTS_PATH "/audit" /* of the page that leads to the others; each is beneath it by its name */
#define REPORTS_MAX 64
#define REPORTS_NAME_MAX 25                          /* of a page, with its end: a to z, 0 to 9 and '-' */
#define REPORTS_BYTES_MAX ((size_t)16 * 1024 * 1024) /* of a set */

struct reports;

struct reports *reports_new(void);    /* NULL: no memory */
void reports_free(struct reports *r); /* NULL is fine */

/* From the daemon: {"begin":true}, then {"page":NAME,"part":TEXT} each in order, then {"show":true}; the page that leads to
 * the others has the name "". 0, -EINVAL where that cannot be meant now, -ENOSPC or -ENOMEM: then the set that was coming is
 * given up, and the one before stays. */
int reports_take(struct reports *r, const json_t *told);

/* The page for a path of an address; NULL where there is none. Borrowed, until the next reports_take(). */
const struct buf *reports_text(const struct reports *r, const char *path);

/* Whether the path is of these pages, there or not. */
bool reports_path(const char *path);

#endif
