#include "base/csv.h"

#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"

#define SAVE_AS "save it as CSV in UTF-8, with commas between the columns"

/* --- bytes to a row -------------------------------------------------------------------------------- */

struct raw {
	char cell[CSV_COLUMNS_MAX + 1][CSV_CELL_MAX];
	int count; /* cells, of which the last may be one too many */
	int line;
};

static char letter_of(int column)
{
	return (char)('A' + column);
}

static int fault_at(struct error *e, int line, int column, const char *what)
{
	return error_set(e, -EINVAL, "line %d, column %c: %s", line, letter_of(column), what);
}

/* Of a cell that holds a line break the row takes several lines of the file. */
static int lines_in(const char *text, const char *end)
{
	int lines = 0;
	for (; text < end; text++)
		lines += *text == '\n' || (*text == '\r' && (text + 1 == end || text[1] != '\n'));
	return lines;
}

static const char *behind_break(const char *at, const char *end)
{
	if (at < end && *at == '\r')
		at++;
	if (at < end && *at == '\n')
		at++;
	return at;
}

/* 1; -EINVAL. What stands beyond CSV_COLUMNS_MAX columns goes into the last cell, so that its being there is seen. */
static int add_byte(struct raw *row, size_t *used, char byte, struct error *e)
{
	if (!byte)
		return fault_at(e, row->line, row->count, "it holds a byte of zero: " SAVE_AS);
	if (*used + 1 >= CSV_CELL_MAX)
		return fault_at(e, row->line, row->count, "its value is longer than 299 bytes: shorten it");
	row->cell[row->count][(*used)++] = byte;
	return 1;
}

/* 1; 0 at the end; -EINVAL. */
static int read_raw(struct csv *c, struct raw *row, struct error *e)
{
	memset(row, 0, sizeof *row);
	row->line = c->line;
	if (c->at == c->end)
		return 0;
	size_t used = 0;
	int quoted = 0, r = 1;
	const char *at = c->at;
	for (; at < c->end && r > 0; at++) {
		if (quoted && *at == '"' && at + 1 < c->end && at[1] == '"') {
			at++;
			r = add_byte(row, &used, '"', e);
		} else if (*at == '"') {
			quoted = !quoted;
		} else if (!quoted && (*at == '\n' || *at == '\r')) {
			break;
		} else if (!quoted && *at == ',' && row->count < CSV_COLUMNS_MAX) {
			row->count++;
			used = 0;
		} else {
			r = add_byte(row, &used, *at, e);
		}
	}
	if (r < 0)
		return r;
	if (quoted)
		return fault_at(e, row->line, row->count, "a quotation mark is not closed: close it");
	row->count++;
	at = behind_break(at, c->end);
	c->line += lines_in(c->at, at);
	c->at = at;
	return 1;
}

static int is_empty(const struct raw *row)
{
	for (int i = 0; i < row->count; i++)
		if (row->cell[i][0])
			return 0;
	return 1;
}

static int read_filled(struct csv *c, struct raw *row, struct error *e)
{
	int r;
	do
		r = read_raw(c, row, e);
	while (r > 0 && is_empty(row));
	return r;
}

/* The number of the first character that is no UTF-8, 0 all are. */
static int wrong_character(const char *text)
{
	const char *end = text + strlen(text);
	for (int place = 1; text < end; place++)
		if (name_next(&text, end) < 0)
			return place;
	return 0;
}

static int check_value(const char *place, const char *value, struct error *e)
{
	int wrong = wrong_character(value);
	if (wrong)
		return error_set(e, -EINVAL,
		                 "%s: its character %d is no UTF-8, so the file was saved in another code "
		                 "page: " SAVE_AS,
		                 place, wrong);
	return *value ? name_check(place, value, CSV_CELL_MAX, e) : 0;
}

/* --- the head line --------------------------------------------------------------------------------- */

static int is_utf_16(const char *text, size_t size)
{
	return size >= 2 && (memcmp(text, "\xff\xfe", 2) == 0 || memcmp(text, "\xfe\xff", 2) == 0);
}

static int check_separator(const struct raw *row, struct error *e)
{
	if (row->count > 1 || !row->cell[0][strcspn(row->cell[0], ";\t")])
		return 0;
	return fault_at(e, row->line, 0,
	                strchr(row->cell[0], ';')
	                    ? "semicolons stand between the columns where commas must: " SAVE_AS
	                    : "tabs stand between the columns where commas must: " SAVE_AS);
}

static int name_of(const struct csv *c, const char *text)
{
	for (int i = 0; i < c->n_names; i++)
		if (strcmp(c->names[i], text) == 0)
			return i;
	return -1;
}

static int take_name(struct csv *c, const struct raw *row, int column, struct error *e)
{
	char place[CSV_PLACE_MAX];
	const char *text = row->cell[column];
	snprintf(place, sizeof place, "line %d, column %c: its name", row->line, letter_of(column));
	if (check_value(place, text, e) < 0)
		return -EINVAL;
	int name = name_of(c, text);
	if (name < 0)
		return error_set(e, -EINVAL,
		                 "line %d, column %c: no column has the name '%.60s' here: give it one of "
		                 "those that --help lists, or leave the column out",
		                 row->line, letter_of(column), text);
	if (c->place_of[name] >= 0)
		return error_set(e, -EINVAL,
		                 "line %d, column %c: the column '%.60s' stands twice: leave one out",
		                 row->line, letter_of(column), text);
	c->place_of[name] = column;
	c->order[column] = name;
	return 0;
}

static int take_head(struct csv *c, struct raw *row, int needed, struct error *e)
{
	int r = check_separator(row, e);
	while (row->count > 1 && !row->cell[row->count - 1][0]) /* a spreadsheet's columns without anything */
		row->count--;
	if (row->count > CSV_COLUMNS_MAX)
		return fault_at(e, row->line, CSV_COLUMNS_MAX,
		                "more columns than a file may have: leave out the others");
	for (int i = 0; r == 0 && i < row->count; i++)
		r = take_name(c, row, i, e);
	for (int i = 0; r == 0 && i < needed; i++)
		if (c->place_of[i] < 0)
			r = error_set(e, -EINVAL, "line %d: the column '%s' is missing: add it", row->line,
			              c->names[i]);
	c->columns = row->count;
	return r;
}

int csv_begin(struct csv *c, const char *text, size_t size, const char *const *names, int n_names, int needed,
              struct error *e)
{
	struct raw row;
	if (size >= 3 && memcmp(text, "\xef\xbb\xbf", 3) == 0) {
		text += 3;
		size -= 3;
	}
	*c = (struct csv){.at = text, .end = text + size, .names = names, .n_names = n_names, .line = 1};
	for (int i = 0; i < CSV_COLUMNS_MAX; i++)
		c->place_of[i] = -1;
	if (is_utf_16(text, size))
		return fault_at(e, 1, 0, "the file is in UTF-16: " SAVE_AS);
	int r = read_filled(c, &row, e);
	return r > 0 ? take_head(c, &row, needed, e) : r;
}

/* --- rows ------------------------------------------------------------------------------------------ */

int csv_next(struct csv *c, struct csv_row *out, struct error *e)
{
	struct raw row;
	char place[CSV_PLACE_MAX];
	int r = read_filled(c, &row, e);
	memset(out, 0, sizeof *out);
	out->line = row.line;
	if (r <= 0)
		return r;
	for (int i = 0; i < row.count; i++) {
		if (i >= c->columns && row.cell[i][0])
			return fault_at(e, row.line, i,
			                "a value stands beyond the last column of the head line: put a value "
			                "that holds a comma between quotation marks");
		if (i >= c->columns)
			continue;
		csv_place(c, row.line, c->order[i], place);
		if (check_value(place, row.cell[i], e) < 0)
			return -EINVAL;
		memcpy(out->cell[c->order[i]], row.cell[i], CSV_CELL_MAX);
	}
	return 1;
}

void csv_place(const struct csv *c, int line, int name, char out[CSV_PLACE_MAX])
{
	int column = c->place_of[name];
	if (column < 0)
		snprintf(out, CSV_PLACE_MAX, "line %d (%s)", line, c->names[name]);
	else
		snprintf(out, CSV_PLACE_MAX, "line %d, column %c (%s)", line, letter_of(column),
		         c->names[name]);
}

int csv_add(struct buf *out, const char *value)
{
	if (!value[strcspn(value, ",\"\r\n")])
		return buf_add_text(out, value);
	int r = buf_add_text(out, "\"");
	for (; r == 0 && *value; value++)
		r = *value == '"' ? buf_add_text(out, "\"\"") : buf_add(out, value, 1);
	return r < 0 ? r : buf_add_text(out, "\"");
}
