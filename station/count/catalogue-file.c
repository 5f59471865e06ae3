/* A catalogue file, read and written. Its columns are stated in catalogue.h. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/check-digit.h"
#include "count/catalogue.h"

static const char *const column_names[LINE_COLUMNS] = {
    "key",  "name",     "role",    "codes",    "marked",  "visible", "single_use",  "identity", "rolls_on",
    "xray", "per_pack", "size_mm", "contents", "instead", "label",   "label_place", "minimum",
};
#define COLUMNS_NEEDED 3

const char *line_column_name(enum line_column column)
{
	return column_names[column];
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

static const char *const wanted[LINE_COLUMNS] = {
    [COL_KEY] = "a short name of at most 24 bytes, without '/', '*' and spaces",
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

/* Behind '/' a bench takes the lot, '*' and a space end a key in a tray's list. */
static int key_can_be_written(const char *key)
{
	for (const unsigned char *at = (const unsigned char *)key; *at; at++)
		if (*at <= ' ' || *at == 0x7f || *at == '/' || *at == '*')
			return 0;
	return 1;
}

static int read_cell(struct line *line, enum line_column column, char *cell)
{
	int r;
	long n;
	switch (column) {
	case COL_KEY:
		return key_can_be_written(cell) ? copy(line->key, sizeof line->key, cell) : -EINVAL;
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
	case LINE_COLUMNS:
		break;
	}
	return -EINVAL;
}

/* --- what a code cannot be ------------------------------------------------------------------------- */

/* As a spreadsheet writes a long number: 9.50600E+12 */
static int is_rounded(const char *code)
{
	size_t n = strspn(code, "0123456789.,");
	return n && (code[n] == 'E' || code[n] == 'e') && code[n + 1] == '+' &&
	       strspn(code + n + 2, "0123456789") == strlen(code + n + 2) && code[n + 2];
}

static int gtin_is_wrong(const char *digits)
{
	return check_mod10(digits, 13) != digits[13];
}

/* A GTIN whose zeros in front were lost: what scanners read of it has 14 digits. */
static int lost_zeros(const char *code, size_t digits)
{
	return (digits == 12 || digits == 13) && check_mod10(code, digits - 1) == code[digits - 1];
}

static int check_code(const char *code, const char *place, struct error *e)
{
	size_t base = strcspn(code, "*"), digits = strspn(code, "0123456789");
	int grai = strncmp(code, "8003:", 5) == 0 && strspn(code + 5, "0123456789") >= 14;
	if (is_rounded(code))
		return error_set(
		    e, -EINVAL,
		    "%s: '%s' is a number that the spreadsheet has rounded: give that column the "
		    "format 'text' and type the code again",
		    place, code);
	if (code[strcspn(code, ",;")])
		return error_set(e, -EINVAL, "%s: '%s' holds ',' or ';': put spaces between codes", place,
		                 code);
	if (strncmp(code, "(01)", 4) == 0)
		return error_set(e, -EINVAL, "%s: '%s': give the 14 digits behind (01) alone", place, code);
	if ((digits == base && base == 14 && gtin_is_wrong(code)) || (grai && gtin_is_wrong(code + 5)))
		return error_set(
		    e, -EINVAL,
		    "%s: '%s': its check digit is wrong, so a digit was mistyped: compare it with "
		    "the pack",
		    place, code);
	if (digits == base && lost_zeros(code, digits))
		return error_set(e, -EINVAL,
		                 "%s: '%s': a GTIN has 14 digits here, and a spreadsheet leaves out zeros in "
		                 "front: give that column the format 'text' and write %s%s",
		                 place, code, digits == 12 ? "00" : "0", code);
	return 0;
}

static int check_codes(const struct line *line, const char *place, struct error *e)
{
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_CODES_MAX && line->codes[i][0]; i++)
		r = check_code(line->codes[i], place, e);
	return r;
}

static int read_line(const struct csv *c, struct line *line, struct csv_row *row, struct error *e)
{
	*line = (struct line){.per_pack = 1};
	for (int i = 0; i < LINE_COLUMNS; i++) {
		char said[CSV_CELL_MAX], place[CSV_PLACE_MAX];
		memcpy(said, row->cell[i], sizeof said);
		csv_place(c, row->line, i, place);
		if (read_cell(line, (enum line_column)i, row->cell[i]) < 0)
			return error_set(e, -EINVAL, "%s is '%.80s': it must be %s", place, said, wanted[i]);
		if (i == COL_CODES && check_codes(line, place, e) < 0)
			return -EINVAL;
	}
	return 0;
}

/* --- a whole file ---------------------------------------------------------------------------------- */

struct taken {
	struct catalogue lines;
	int *numbers; /* on which line of the file each begins */
};

static void taken_deinit(struct taken *t)
{
	catalogue_deinit(&t->lines);
	free(t->numbers);
}

/* What one line says that another line of the file says already. */
static int check_twice(const struct csv *c, const struct taken *t, const struct line *line, int number,
                       struct error *e)
{
	char place[CSV_PLACE_MAX];
	const char *code = "";
	const struct line *same = catalogue_by_key(&t->lines, line->key);
	csv_place(c, number, same ? COL_KEY : COL_CODES, place);
	if (same)
		return error_set(e, -EINVAL,
		                 "%s: the key '%s' stands in line %d as well: give each line its own", place,
		                 line->key, t->numbers[same - t->lines.lines]);
	same = catalogue_owner(&t->lines, line, &code);
	if (!same)
		return 0;
	return error_set(e, -EINVAL,
	                 "%s: the code '%s' stands in line %d as well, of '%s': each code may stand once, "
	                 "leave it out of one of them",
	                 place, code, t->numbers[same - t->lines.lines], same->key);
}

static int check_alone(const struct csv *c, const struct line *line, int number, struct error *e)
{
	struct error why;
	enum line_column where;
	char place[CSV_PLACE_MAX];
	if (line_check(line, &where, &why) == 0)
		return 0;
	csv_place(c, number, (int)where, place);
	return error_set(e, -EINVAL, "%s: %.400s", place, why.text);
}

static int take_line(const struct csv *c, struct taken *t, const struct line *line, int number,
                     struct error *e)
{
	struct error why;
	if (check_alone(c, line, number, e) < 0 || check_twice(c, t, line, number, e) < 0)
		return -EINVAL;
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

int catalogue_read_lines(const char *text, size_t size, struct catalogue *lines, int **numbers,
                         struct csv *places, struct error *e)
{
	struct taken taken = {0};
	struct csv_row row;
	struct line line;
	int r = csv_begin(places, text, size, column_names, LINE_COLUMNS, COLUMNS_NEEDED, e);
	while (r == 0 && (r = csv_next(places, &row, e)) > 0) {
		r = read_line(places, &line, &row, e);
		if (r == 0)
			r = take_line(places, &taken, &line, row.line, e);
		if (r < 0)
			break;
	}
	*lines = (struct catalogue){0};
	*numbers = NULL;
	if (r == 0) {
		*lines = taken.lines;
		*numbers = taken.numbers;
		taken = (struct taken){0};
	}
	taken_deinit(&taken);
	return r;
}

int catalogue_read_csv(const char *text, size_t size, struct line **lines, size_t *count, struct error *e)
{
	struct catalogue all;
	struct csv places;
	int *numbers;
	int r = catalogue_read_lines(text, size, &all, &numbers, &places, e);
	if (r == 0) {
		*lines = all.lines;
		*count = all.count;
	}
	free(numbers);
	return r;
}

/* --- writing ------------------------------------------------------------------------------------ */

static int add_codes(struct buf *out, const struct line *line)
{
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_CODES_MAX && line->codes[i][0]; i++)
		r = buf_printf(out, "%s%s", i ? " " : "", line->codes[i]);
	return r;
}

static int add_contents(struct buf *out, const struct line *line)
{
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_CONTENTS_MAX && line->contents[i].count; i++)
		r = buf_printf(out, "%s%s*%d", i ? " " : "", line->contents[i].key, line->contents[i].count);
	return r;
}

int line_write_column(const struct line *line, enum line_column column, struct buf *out)
{
	switch (column) {
	case COL_KEY:
		return buf_add_text(out, line->key);
	case COL_NAME:
		return buf_add_text(out, line->name);
	case COL_ROLE:
		return buf_add_text(out, role_name(line->role));
	case COL_CODES:
		return add_codes(out, line);
	case COL_MARKED:
		return buf_add_text(out, line->marked ? "yes" : "no");
	case COL_VISIBLE:
		return buf_add_text(out, line->visible ? "yes" : "no");
	case COL_SINGLE_USE:
		return buf_add_text(out, line->single_use ? "yes" : "no");
	case COL_IDENTITY:
		return buf_add_text(out, identity_name(line->identity));
	case COL_ROLLS_ON:
		return buf_add_text(out, line->rolls_on ? "yes" : "no");
	case COL_XRAY:
		return buf_add_text(out, line->shows_on_xray ? "yes" : "no");
	case COL_PER_PACK:
		return buf_printf(out, "%d", line->per_pack);
	case COL_SIZE:
		return line->size_max_mm ? buf_printf(out, "%d-%d", line->size_min_mm, line->size_max_mm) : 0;
	case COL_CONTENTS:
		return add_contents(out, line);
	case COL_INSTEAD:
		return buf_add_text(out, line->instead);
	case COL_LABEL:
		return buf_add_text(out, label_whens[line->label]);
	case COL_LABEL_PLACE:
		return buf_add_text(out, line->label_place);
	case COL_MINIMUM:
		return line->minimum ? buf_printf(out, "%d", (int)line->minimum) : 0;
	case LINE_COLUMNS:
		break;
	}
	return -EINVAL;
}

static int add_line(struct buf *out, struct buf *cell, const struct line *line)
{
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_COLUMNS; i++) {
		buf_clear(cell);
		r = line_write_column(line, (enum line_column)i, cell);
		if (r == 0 && cell->size)
			r = csv_add(out, cell->data);
		if (r == 0)
			r = buf_add_text(out, i + 1 < LINE_COLUMNS ? "," : "\n");
	}
	return r;
}

int catalogue_write_csv(const struct catalogue *c, struct buf *out)
{
	_cleanup_(buf_free) struct buf cell = {0};
	int r = 0;
	for (int i = 0; r == 0 && i < LINE_COLUMNS; i++)
		r = buf_printf(out, "%s%s", column_names[i], i + 1 < LINE_COLUMNS ? "," : "\n");
	for (size_t k = 0; r == 0 && k < c->count; k++)
		r = add_line(out, &cell, &c->lines[k]);
	return r;
}
