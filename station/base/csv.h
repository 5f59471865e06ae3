/* A list that people keep in a spreadsheet, as CSV: RFC 4180, UTF-8, commas between the columns, and a head line that names
 * them in any order.
 *
 * Places are told as a spreadsheet shows them: "line 3, column D (codes)". A mark of byte order before UTF-8 is passed over.
 * What a spreadsheet may make of a file instead is refused at its place, with how to save it: UTF-16, another code page,
 * semicolons or tabs between the columns, a value that holds a comma and stands without quotation marks. Each value passes
 * name_check().
 */
#ifndef BANDTALLY_BASE_CSV_H
#define BANDTALLY_BASE_CSV_H

#include <stddef.h>

#include "base/buf.h"
#include "base/error.h"

#define CSV_COLUMNS_MAX 24
#define CSV_CELL_MAX 300
#define CSV_PLACE_MAX 64

struct csv {
	const char *at, *end;          /* of the text, which is the caller's and stays */
	const char *const *names;      /* of the columns that there may be */
	int n_names;                   /* at most CSV_COLUMNS_MAX */
	int line;                      /* of the file, on which the next row begins, from 1 */
	int columns;                   /* that the head line has */
	int order[CSV_COLUMNS_MAX];    /* which name each of them bears */
	int place_of[CSV_COLUMNS_MAX]; /* in which column a name stands, -1 in none */
};

struct csv_row {
	char cell[CSV_COLUMNS_MAX][CSV_CELL_MAX]; /* by name; "" where it is empty or its column is absent */
	int line;                                 /* on which it begins */
};

/* Reads the head line; an empty text has none, and no row. The first `needed` names must stand in it. 0, or -EINVAL with `e`. */
int csv_begin(struct csv *c, const char *text, size_t size, const char *const *names, int n_names, int needed,
              struct error *e);

enum { CSV_END = 0, CSV_ROW = 1 };

/* CSV_ROW and the next row; CSV_END there is no further one; -EINVAL with `e`. Empty lines are passed over. */
int csv_next(struct csv *c, struct csv_row *row, struct error *e);

/* "line 3, column D (codes)"; "line 3 (codes)" where the file has no such column. */
void csv_place(const struct csv *c, int line, int name, char out[CSV_PLACE_MAX]);

/* Adds one value, with quotation marks where it needs them. 0 or -ENOMEM. */
int csv_add(struct buf *out, const char *value);

#endif
