/* Reading a catalogue file. Its columns are stated in catalogue.h. */
#include <ctype.h>
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/name.h"
#include "count/catalogue.h"

enum column {
	COL_KEY,
	COL_NAME,
	COL_ROLE,
	COL_CODES,
	COL_MARKED,
	COL_VISIBLE,
	COL_SINGLE_USE,
	COL_IDENTITY,
	COL_ROLLS_ON,
	COL_XRAY,
	COL_PER_PACK,
	COL_SIZE,
	COL_CONTENTS,
	COL_INSTEAD,
	COL_LABEL,
	COL_LABEL_PLACE,
	COL_MINIMUM,
	COLUMNS
};

static const char *const column_names[COLUMNS] = {
    "key",  "name",     "role",    "codes",    "marked",  "visible", "single_use",  "identity", "rolls_on",
    "xray", "per_pack", "size_mm", "contents", "instead", "label",   "label_place", "minimum",
};

#define CELL_MAX 300

struct row {
	char cell[COLUMNS][CELL_MAX];
	int count;
};

/* One record of RFC 4180. Returns the bytes used, 0 at the end, or -EINVAL with `why`. */
static long read_row(const char *text, size_t size, struct row *row, const char **why)
{
	memset(row, 0, sizeof *row);
	if (!size)
		return 0;
	size_t at = 0, used = 0;
	int quoted = 0;
	for (; at < size; at++) {
		char c = text[at];
		if (!c) {
			*why = "it holds a byte of zero: save the file as CSV in UTF-8";
			return -EINVAL;
		}
		if (quoted && c == '"' && at + 1 < size && text[at + 1] == '"') {
			at++;
		} else if (c == '"') {
			quoted = !quoted;
			continue;
		} else if (!quoted && (c == '\n' || c == '\r')) {
			break;
		} else if (!quoted && c == ',') {
			if (++row->count >= COLUMNS) {
				*why = "more columns than the head line may have: remove the extra commas";
				return -EINVAL;
			}
			used = 0;
			continue;
		}
		if (used + 1 >= CELL_MAX) {
			*why = "a value is longer than 299 bytes: shorten it";
			return -EINVAL;
		}
		row->cell[row->count][used++] = c;
	}
	if (quoted) {
		*why = "a quotation mark is not closed: close it";
		return -EINVAL;
	}
	row->count++;
	if (at < size && text[at] == '\r')
		at++;
	if (at < size && text[at] == '\n')
		at++;
	return (long)at;
}

static int copy(char *out, size_t size, const char *in)
{
	size_t n = strlen(in);
	if (n >= size)
		return -EINVAL;
	memcpy(out, in, n + 1);
	return 0;
}

static int yes_no(const char *text)
{
	if (strcmp(text, "yes") == 0)
		return 1;
	return strcmp(text, "no") == 0 || !*text ? 0 : -EINVAL;
}

static long whole(const char *text, long low, long high)
{
	char *end;
	long n = strtol(text, &end, 10);
	return *text && !*end && n >= low && n <= high ? n : -EINVAL;
}

static int read_codes(struct line *line, char *text)
{
	int n = 0;
	for (char *save = NULL, *word = strtok_r(text, " ", &save); word; word = strtok_r(NULL, " ", &save))
		if (n == LINE_CODES_MAX || copy(line->codes[n++], LINE_CODE_MAX, word) < 0)
			return -EINVAL;
	return 0;
}

static int read_contents(struct line *line, char *text)
{
	int n = 0;
	for (char *save = NULL, *word = strtok_r(text, " ", &save); word; word = strtok_r(NULL, " ", &save)) {
		char *star = strchr(word, '*');
		long count = star ? whole(star + 1, 1, 500) : 1;
		if (star)
			*star = 0;
		if (n == LINE_CONTENTS_MAX || count < 0 || !*word ||
		    copy(line->contents[n].key, LINE_KEY_MAX, word) < 0)
			return -EINVAL;
		for (int i = 0; i < n; i++)
			if (strcmp(line->contents[i].key, word) == 0)
				return -EINVAL;
		line->contents[n++].count = (int16_t)count;
	}
	return 0;
}

static int read_size(struct line *line, const char *text)
{
	int low, high, used = 0;
	if (!*text)
		return 0;
	if (sscanf(text, "%4d-%4d%n", &low, &high, &used) != 2 || text[used] || low < 1 || high < low)
		return -EINVAL;
	line->size_min_mm = (int16_t)low;
	line->size_max_mm = (int16_t)high;
	return 0;
}

static const char *const wanted[COLUMNS] = {
    [COL_KEY] = "a short name of at most 24 bytes",
    [COL_NAME] = "a name of at most 56 bytes",
    [COL_ROLE] = "one of" ROLE_NAMES,
    [COL_CODES] = "at most 6 codes of at most 40 characters, separated by spaces",
    [COL_MARKED] = "yes or no",
    [COL_VISIBLE] = "yes or no",
    [COL_SINGLE_USE] = "yes or no",
    [COL_IDENTITY] = "none, pack or mark",
    [COL_ROLLS_ON] = "yes or no",
    [COL_XRAY] = "yes or no",
    [COL_PER_PACK] = "a whole number from 1 to 500",
    [COL_SIZE] = "two whole numbers of millimetres, as in 45-60, or nothing",
    [COL_CONTENTS] = "at most 12 keys, each once, as in FORCEPS-CURVED*2, separated by spaces",
    [COL_INSTEAD] = "a text of at most 80 bytes",
    [COL_LABEL] = "no, before or after (sterilising)",
    [COL_LABEL_PLACE] = "a text of at most 80 bytes",
    [COL_MINIMUM] = "a whole number from 0 to 100000, or nothing",
};

static const char *const label_whens[] = {
    [LABEL_NEVER] = "no", [LABEL_BEFORE_STERILISING] = "before", [LABEL_AFTER_STERILISING] = "after"};

static int read_label(struct line *line, const char *cell)
{
	for (int i = LABEL_NEVER; i <= LABEL_AFTER_STERILISING; i++)
		if (strcmp(*cell ? cell : "no", label_whens[i]) == 0) {
			line->label = (int16_t)i;
			return 0;
		}
	return -EINVAL;
}

static int set_flag(int *flag, const char *cell)
{
	*flag = yes_no(cell);
	return *flag < 0 ? *flag : 0;
}

static int read_cell(struct line *line, enum column column, char *cell)
{
	int r;
	long n;
	switch (column) {
	case COL_KEY:
		return copy(line->key, sizeof line->key, cell);
	case COL_NAME:
		return copy(line->name, sizeof line->name, cell);
	case COL_ROLE:
		if ((r = role_from_name(cell)) < 0)
			return r;
		line->role = (enum role)r;
		return 0;
	case COL_CODES:
		return read_codes(line, cell);
	case COL_MARKED:
		return set_flag(&line->marked, cell);
	case COL_VISIBLE:
		return set_flag(&line->visible, cell);
	case COL_SINGLE_USE:
		return set_flag(&line->single_use, cell);
	case COL_IDENTITY:
		if ((r = identity_from_name(*cell ? cell : "none")) < 0)
			return r;
		line->identity = (enum identity_kind)r;
		return 0;
	case COL_ROLLS_ON:
		return set_flag(&line->rolls_on, cell);
	case COL_XRAY:
		return set_flag(&line->shows_on_xray, cell);
	case COL_PER_PACK:
		if ((n = *cell ? whole(cell, 1, 500) : 1) < 0)
			return -EINVAL;
		line->per_pack = (int16_t)n;
		return 0;
	case COL_SIZE:
		return read_size(line, cell);
	case COL_CONTENTS:
		return read_contents(line, cell);
	case COL_INSTEAD:
		return copy(line->instead, sizeof line->instead, cell);
	case COL_LABEL:
		return read_label(line, cell);
	case COL_LABEL_PLACE:
		return copy(line->label_place, sizeof line->label_place, cell);
	case COL_MINIMUM:
		if ((n = *cell ? whole(cell, 0, LINE_MINIMUM_MAX) : 0) < 0)
			return -EINVAL;
		line->minimum = (int32_t)n;
		return 0;
	case COLUMNS:
		break;
	}
	return -EINVAL;
}

/* The head line names the columns, in any order; key, name and role must be there. */
static int read_head(const struct row *row, int order[COLUMNS], struct error *e)
{
	int seen[COLUMNS] = {0};
	for (int i = 0; i < row->count; i++) {
		char what[48];
		snprintf(what, sizeof what, "line 1: the name of column %d", i + 1);
		if (row->cell[i][0] && name_check(what, row->cell[i], CELL_MAX, e) < 0)
			return -EINVAL;
		order[i] = -1;
		for (int c = 0; c < COLUMNS; c++)
			if (strcmp(row->cell[i], column_names[c]) == 0)
				order[i] = c;
		if (order[i] < 0 || seen[order[i]]++)
			return error_set(
			    e, -EINVAL,
			    "line 1: column '%s' is unknown or stands twice: see 'bandtally catalogue "
			    "--help' for the columns",
			    row->cell[i]);
	}
	if (!seen[COL_KEY] || !seen[COL_NAME] || !seen[COL_ROLE])
		return error_set(e, -EINVAL, "line 1: the columns key, name and role are needed: add them");
	return row->count;
}

static int read_line(struct line *line, struct row *row, const int order[COLUMNS], int columns, int number,
                     struct error *e)
{
	*line = (struct line){.per_pack = 1};
	for (int i = 0; i < columns; i++) {
		char said[CELL_MAX], what[48];
		snprintf(what, sizeof what, "line %d: column %s", number, column_names[order[i]]);
		if (row->cell[i][0] && name_check(what, row->cell[i], CELL_MAX, e) < 0)
			return -EINVAL;
		memcpy(said, row->cell[i], sizeof said);
		if (read_cell(line, (enum column)order[i], row->cell[i]) < 0)
			return error_set(e, -EINVAL, "line %d: %s is '%.80s': it must be %s", number,
			                 column_names[order[i]], said, wanted[order[i]]);
	}
	return 0;
}

/* Of a cell that holds a line break the row takes several lines of the file. */
static int lines_in(const char *text, size_t size)
{
	int lines = 0;
	for (size_t i = 0; i < size; i++)
		lines += text[i] == '\n' || (text[i] == '\r' && (i + 1 == size || text[i + 1] != '\n'));
	return lines;
}

/* The lines of a file, and on which of its lines each begins. */
struct taken {
	struct catalogue lines;
	int *numbers;
};

static void taken_deinit(struct taken *t)
{
	catalogue_deinit(&t->lines);
	free(t->numbers);
}

static int take_line(struct taken *t, const struct line *line, int number, struct error *e)
{
	struct error why;
	if (catalogue_by_key(&t->lines, line->key))
		return error_set(e, -EINVAL, "line %d: key '%s' stands twice: give each its own", number,
		                 line->key);
	int r = catalogue_set(&t->lines, line, &why);
	if (r < 0)
		return error_set(e, r, "line %d: %.400s", number, why.text);
	int *numbers = realloc(t->numbers, t->lines.count * sizeof *numbers);
	if (!numbers)
		return error_set(e, -ENOMEM, "line %d: out of memory: try again", number);
	t->numbers = numbers;
	numbers[t->lines.count - 1] = number;
	return 0;
}

static int read_file(struct taken *taken, const char *text, size_t size, struct error *e)
{
	struct row *row = malloc(sizeof *row);
	int order[COLUMNS], columns = 0;
	int r = row ? 0 : error_set(e, -ENOMEM, "cannot read the file: out of memory: try again");
	if (size >= 3 && memcmp(text, "\xef\xbb\xbf", 3) == 0) {
		text += 3;
		size -= 3;
	}
	for (int number = 1, next = 1; r == 0; number = next) {
		const char *why = "";
		long used = read_row(text, size, row, &why);
		if (used == 0)
			break;
		if (used < 0) {
			r = error_set(e, -EINVAL, "line %d: %s", number, why);
			break;
		}
		next += lines_in(text, (size_t)used);
		text += used;
		size -= (size_t)used;
		if (row->count == 1 && !row->cell[0][0])
			continue;
		if (!columns) {
			columns = read_head(row, order, e);
			r = columns < 0 ? columns : 0;
			continue;
		}
		struct line line;
		r = read_line(&line, row, order, columns, number, e);
		if (r == 0)
			r = take_line(taken, &line, number, e);
	}
	free(row);
	return r;
}

int catalogue_read_csv(const char *text, size_t size, struct line **lines, size_t *count, struct error *e)
{
	struct taken taken = {0};
	int r = read_file(&taken, text, size, e);
	if (r == 0) {
		*lines = taken.lines.lines;
		*count = taken.lines.count;
		taken.lines = (struct catalogue){0};
	}
	taken_deinit(&taken);
	return r;
}

/* --- over the catalogue that is there ------------------------------------------------------------ */

/* A line of the station that the file gives anew lets its codes go first, so that the file may move a code from one of
 * its lines to another. */
static int let_codes_go(struct catalogue *now, const struct taken *file, struct line *out, size_t *n)
{
	for (size_t i = 0; i < file->lines.count; i++) {
		const struct line *old = catalogue_by_key(now, file->lines.lines[i].key);
		if (!old || memcmp(old->codes, file->lines.lines[i].codes, sizeof old->codes) == 0)
			continue;
		struct line bare = *old;
		memset(bare.codes, 0, sizeof bare.codes);
		int r = catalogue_set(now, &bare, NULL);
		if (r < 0)
			return r;
		out[(*n)++] = bare;
	}
	return 0;
}

static int set_over(struct catalogue *now, const struct taken *file, size_t i, struct error *e)
{
	const struct line *line = &file->lines.lines[i];
	struct error why;
	const struct line *owner = catalogue_owner(now, line);
	if (owner)
		return error_set(
		    e, -EINVAL,
		    "line %d: a code of '%s' finds the line '%s' of the station's catalogue: to rename "
		    "that line keep its key; to move the code give '%s' without it in the same file",
		    file->numbers[i], line->key, owner->key, owner->key);
	int r = catalogue_set(now, line, &why);
	return r < 0 ? error_set(e, r, "line %d: %.400s", file->numbers[i], why.text) : 0;
}

static int lay_over(struct catalogue *now, const struct taken *file, struct line *out, size_t *n,
                    struct error *e)
{
	int r = let_codes_go(now, file, out, n);
	if (r < 0)
		return error_set(e, r, "cannot take the file: %s: try again", strerror(-r));
	for (size_t i = 0; i < file->lines.count; i++) {
		if ((r = set_over(now, file, i, e)) < 0)
			return r;
		out[(*n)++] = file->lines.lines[i];
	}
	return 0;
}

int catalogue_read_over(const struct catalogue *there, const char *text, size_t size, struct line **lines,
                        size_t *count, size_t *in_file, struct error *e)
{
	struct taken file = {0};
	struct catalogue now = {0};
	struct line *out = NULL;
	size_t n = 0;
	int r = read_file(&file, text, size, e);
	if (r == 0 &&
	    (catalogue_copy(&now, there) < 0 || !(out = calloc(2 * file.lines.count + 1, sizeof *out))))
		r = error_set(e, -ENOMEM, "cannot take the file: out of memory: try again");
	if (r == 0)
		r = lay_over(&now, &file, out, &n, e);
	*in_file = file.lines.count;
	taken_deinit(&file);
	catalogue_deinit(&now);
	if (r < 0) {
		free(out);
		return r;
	}
	*lines = out;
	*count = n;
	return 0;
}

/* --- writing ------------------------------------------------------------------------------------ */

static int add_text(struct buf *out, const char *text)
{
	if (!text[strcspn(text, ",\"\r\n")])
		return buf_add_text(out, text);
	int r = buf_add_text(out, "\"");
	for (; r == 0 && *text; text++)
		r = *text == '"' ? buf_add_text(out, "\"\"") : buf_add(out, text, 1);
	return r < 0 ? r : buf_add_text(out, "\"");
}

static int add_codes(struct buf *out, const struct line *line)
{
	struct buf words = {0};
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_CODES_MAX && line->codes[i][0]; i++)
		r = buf_printf(&words, "%s%s", i ? " " : "", line->codes[i]);
	if (r == 0 && words.size)
		r = add_text(out, words.data);
	buf_free(&words);
	return r;
}

static int add_contents(struct buf *out, const struct line *line)
{
	struct buf words = {0};
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_CONTENTS_MAX && line->contents[i].count; i++)
		r = buf_printf(&words, "%s%s*%d", i ? " " : "", line->contents[i].key,
		               line->contents[i].count);
	if (r == 0 && words.size)
		r = add_text(out, words.data);
	buf_free(&words);
	return r;
}

static int add_cell(struct buf *out, const struct line *line, enum column column)
{
	switch (column) {
	case COL_KEY:
		return add_text(out, line->key);
	case COL_NAME:
		return add_text(out, line->name);
	case COL_ROLE:
		return add_text(out, role_name(line->role));
	case COL_CODES:
		return add_codes(out, line);
	case COL_MARKED:
		return add_text(out, line->marked ? "yes" : "no");
	case COL_VISIBLE:
		return add_text(out, line->visible ? "yes" : "no");
	case COL_SINGLE_USE:
		return add_text(out, line->single_use ? "yes" : "no");
	case COL_IDENTITY:
		return add_text(out, identity_name(line->identity));
	case COL_ROLLS_ON:
		return add_text(out, line->rolls_on ? "yes" : "no");
	case COL_XRAY:
		return add_text(out, line->shows_on_xray ? "yes" : "no");
	case COL_PER_PACK:
		return buf_printf(out, "%d", line->per_pack);
	case COL_SIZE:
		return line->size_max_mm ? buf_printf(out, "%d-%d", line->size_min_mm, line->size_max_mm) : 0;
	case COL_CONTENTS:
		return add_contents(out, line);
	case COL_INSTEAD:
		return add_text(out, line->instead);
	case COL_LABEL:
		return add_text(out, label_whens[line->label]);
	case COL_LABEL_PLACE:
		return add_text(out, line->label_place);
	case COL_MINIMUM:
		return line->minimum ? buf_printf(out, "%d", (int)line->minimum) : 0;
	case COLUMNS:
		break;
	}
	return -EINVAL;
}

int catalogue_write_csv(const struct catalogue *c, struct buf *out)
{
	int r = 0;
	for (int i = 0; r == 0 && i < COLUMNS; i++)
		r = buf_printf(out, "%s%s", column_names[i], i + 1 < COLUMNS ? "," : "\n");
	for (size_t k = 0; k < c->count; k++)
		for (int i = 0; r == 0 && i < COLUMNS; i++) {
			r = add_cell(out, &c->lines[k], (enum column)i);
			if (r == 0)
				r = buf_add_text(out, i + 1 < COLUMNS ? "," : "\n");
		}
	return r;
}
