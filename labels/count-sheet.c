/* The paper count sheet: what the room counts on while the station is silent. In the order of the slip, so that it can be
 * entered from top to bottom afterwards: the digits and their times, the items, the counts, the search, the sign-out, how it
 * ended. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/sheets.h"

#define EDGE_MM 10.0
#define WITHIN_MM (A4_WIDTH_MM - 2 * EDGE_MM)
#define ROW_MM 7.4 /* for a hand in a hurry */
#define DIGIT_ROWS 3
#define ITEM_ROWS 6
#define ITEM_ROWS_LEAST 3 /* in a language whose words take more lines, or with longer steps and points */
#define COLUMNS_MAX 7
#define FOOT_MM 23.0        /* its bars, with the edge below them */
#define FOOT_WORDS_MM 121.0 /* at the left of them, at least */
#define LABEL_WIDTH_MM 80.0
#define LABEL_HEIGHT_MM 30.0

static const struct style text_style = {.size_pt = 9}, strong_style = {.size_pt = 10, .bold = true},
                          small_style = {.size_pt = 8};

/* A word, and a line to write on up to `x` + `width`. */
static void blank(struct canvas *c, double x, double y, double width, enum saying says)
{
	const char *words = canvas_said(c, says);
	double used = canvas_text_width(c, &text_style, words) + 1.5;
	canvas_text(c, &text_style, x, y + ROW_MM - 4.6, width, words);
	canvas_line(c, x + used, y + ROW_MM - 1, x + width - 2, y + ROW_MM - 1, 0.2);
}

static double heading(struct canvas *c, double y, enum saying words)
{
	canvas_rule(c, EDGE_MM, y, WITHIN_MM);
	return y + 1.6 + canvas_text(c, &strong_style, EDGE_MM, y + 1.6, WITHIN_MM, canvas_said(c, words));
}

struct column {
	enum saying words;
	double width_mm;
};

/* Rows under their words, ruled; `first` stands in the first cell of each row, NULL at its end. */
static double table(struct canvas *c, double y, const struct column *columns, const char *const *first,
                    int rows)
{
	double top = y, high = 0, x = EDGE_MM;
	for (int i = 0; i < COLUMNS_MAX && columns[i].words; i++) {
		double h = canvas_text(c, &small_style, x + 1, y + 0.5, columns[i].width_mm - 2,
		                       canvas_said(c, columns[i].words));
		high = h > high ? h : high;
		x += columns[i].width_mm;
	}
	y += high + 1.2;
	for (int row = 0; row <= rows; row++)
		canvas_line(c, EDGE_MM, y + row * ROW_MM, EDGE_MM + WITHIN_MM, y + row * ROW_MM,
		            row ? 0.2 : 0.35);
	for (int row = 0; row < rows && first && first[row]; row++)
		canvas_text(c, &text_style, EDGE_MM + 1, y + row * ROW_MM + 0.8, columns[0].width_mm - 2,
		            first[row]);
	x = EDGE_MM;
	for (int i = 1; i < COLUMNS_MAX && columns[i].words; i++) {
		x += columns[i - 1].width_mm;
		canvas_line(c, x, top, x, y + rows * ROW_MM, 0.2);
	}
	return y + rows * ROW_MM + 1;
}

static double head(struct canvas *c, const json_t *d, int number)
{
	struct style room = {.size_pt = 11, .bold = true}, right = {.size_pt = 9, .align = ALIGN_RIGHT};
	struct style title = {.size_pt = 19, .bold = true}, large = title;
	const char *of = json_text(d, "room");
	char text[160];
	large.align = ALIGN_RIGHT;
	canvas_say(c, SAY(P_ROOM_ONLY, .room = of), text, sizeof text);
	canvas_text(c, &room, EDGE_MM, 6, WITHIN_MM * 0.6, text);
	canvas_text(c, &right, EDGE_MM + WITHIN_MM * 0.6, 6.5, WITHIN_MM * 0.4, json_text(d, "site"));
	canvas_rule(c, EDGE_MM, 12, WITHIN_MM);
	canvas_text(c, &title, EDGE_MM, 13.4, WITHIN_MM * 0.7, canvas_said(c, SAY_CS_TITLE));
	canvas_say(c, SAY(CS_NUMBER, .n = number), text, sizeof text);
	canvas_text(c, &large, EDGE_MM + WITHIN_MM * 0.7, 13.4, WITHIN_MM * 0.3, text);
	return 22;
}

static double who_and_where(struct canvas *c, double y)
{
	static const enum saying blanks[] = {SAY_CS_DATE, SAY_CS_CASE, SAY_CS_FROM_TO, SAY_CS_COPIED};
	double x = EDGE_MM + LABEL_WIDTH_MM + 5, width = WITHIN_MM - LABEL_WIDTH_MM - 5;
	y += canvas_text(c, &text_style, EDGE_MM, y, WITHIN_MM, canvas_said(c, SAY_CS_HOW)) + 1.5;
	canvas_dotted_frame(c, EDGE_MM, y, LABEL_WIDTH_MM, LABEL_HEIGHT_MM);
	canvas_text(c, &small_style, EDGE_MM + 1.5, y + 1, LABEL_WIDTH_MM - 3, canvas_said(c, SAY_P_PATIENT));
	for (int i = 0; i < 4; i++)
		blank(c, x, y - 1 + i * ROW_MM, width, blanks[i]);
	return y + LABEL_HEIGHT_MM + 2;
}

static double digits_and_items(struct canvas *c, double y, int item_rows)
{
	static const struct column digits[COLUMNS_MAX] = {
	    {SAY_CS_DIGIT, 48},   {SAY_CS_ON, 18},   {SAY_CS_REMINDED, 38}, {SAY_CS_OFF, 18},
	    {SAY_CS_MINUTES, 16}, {SAY_CS_BARE, 28}, {SAY_CS_BY, 24}};
	static const struct column items[COLUMNS_MAX] = {
	    {SAY_CS_ITEM, 71}, {SAY_CS_IN, 19}, {SAY_CS_ADDED, 19}, {SAY_CS_OUT, 22}, {SAY_CS_EVIDENCE, 59}};
	const char *const first[] = {
	    canvas_said(c, SAY_CS_FIRST), canvas_said(c, SAY_CS_SECOND), "3", "4", "5", "6", NULL};
	y = heading(c, y, SAY_CS_DIGITS);
	y = table(c, y, digits, NULL, DIGIT_ROWS);
	y = heading(c, y, SAY_CS_ITEMS);
	return table(c, y, items, first, item_rows);
}

static double counts(struct canvas *c, const json_t *d, double y)
{
	static const enum saying names[] = {SAY_CS_INITIAL, SAY_CS_HANDOVER, SAY_CS_FINAL};
	bool alone = json_truth(d, "alone");
	y = heading(c, y, alone ? SAY_CS_COUNTS_ALONE : SAY_CS_COUNTS);
	for (int i = 0; i < 3; i++, y += ROW_MM) {
		canvas_text(c, &text_style, EDGE_MM + 1, y + ROW_MM - 4.6, 20, canvas_said(c, names[i]));
		blank(c, EDGE_MM + 22, y, 30, SAY_CS_AT);
		blank(c, EDGE_MM + 54, y, 46, SAY_CS_BY);
		blank(c, EDGE_MM + 102, y, 44, alone ? SAY_CS_ALSO_LOOKED : SAY_CS_AND);
		blank(c, EDGE_MM + 148, y, WITHIN_MM - 148, SAY_CS_WRITTEN_BY);
	}
	return y + 1;
}

static double ticked(struct canvas *c, double x, double y, double width, const char *words)
{
	canvas_frame(c, x, y + 0.3, 3.4, 3.4, 0.25);
	return canvas_text(c, &text_style, x + 5, y, width - 8, words);
}

/* Texts with a box each, in two columns; `low` becomes where the right one ends. */
static double boxes(struct canvas *c, const json_t *texts, double y, double *low)
{
	const double column = WITHIN_MM / 2;
	double lines[2] = {0};
	size_t i, half = (json_array_size(texts) + 1) / 2;
	json_t *text;
	json_array_foreach((json_t *)texts, i, text)
	{
		int side = i >= half;
		lines[side] += 0.7 + ticked(c, EDGE_MM + side * column, y + 0.6 + lines[side], column,
		                            shipped_text_in(c->language, json_string_value(text)));
	}
	*low = y + 0.6 + lines[1];
	return y + 0.8 + (lines[0] > lines[1] ? lines[0] : lines[1]);
}

/* The steps as the site's policy has them, and below the shorter column the number of the incident report. */
static double search(struct canvas *c, const json_t *d, double y)
{
	double low, end = boxes(c, json_object_get(d, "search"), heading(c, y, SAY_CS_SEARCH), &low);
	blank(c, EDGE_MM + WITHIN_MM / 2, low - 1.5, WITHIN_MM / 2, SAY_CS_INCIDENT);
	return (end > low - 1.5 + ROW_MM ? end : low - 1.5 + ROW_MM) + 0.6;
}

static double sign_out(struct canvas *c, const json_t *d, double y)
{
	double low;
	y = boxes(c, json_object_get(d, "points"), heading(c, y, SAY_CS_SIGN_OUT), &low) - 2;
	blank(c, EDGE_MM, y, 62, SAY_CS_SURGEON);
	blank(c, EDGE_MM + 63, y, 22, SAY_CS_AT);
	blank(c, EDGE_MM + 86, y, 36, SAY_CS_SKIN_BEFORE);
	blank(c, EDGE_MM + 123, y, 29, SAY_CS_SKIN_AFTER);
	blank(c, EDGE_MM + 153, y, WITHIN_MM - 153, SAY_CS_COLOUR);
	return y + ROW_MM + 0.5;
}

static double outcome(struct canvas *c, double y)
{
	static const struct column all[] = {
	    {SAY_CS_ALL_SHOWN, 84}, {SAY_CS_UNRESOLVED, 54}, {SAY_CS_CANCELLED, 30}};
	const char *words = canvas_said(c, SAY_CS_OUTCOME);
	double x = EDGE_MM + 22, high = 0;
	canvas_rule(c, EDGE_MM, y, WITHIN_MM);
	canvas_text(c, &strong_style, EDGE_MM, y + 1.6, 21, words);
	for (size_t i = 0; i < sizeof all / sizeof *all; x += all[i++].width_mm) {
		double h = ticked(c, x, y + 1.8, all[i].width_mm, canvas_said(c, all[i].words));
		high = h > high ? h : high;
	}
	return y + 1.8 + high + 0.8;
}

static int foot(struct canvas *c, const char *code, double y, struct error *e)
{
	struct style mono = {.size_pt = 8, .bold = true, .mono = true};
	struct barcode b _cleanup_(barcode_deinit) = {0};
	char grouped[OWN_CODE_SHOWN_MAX];
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	canvas_rule(c, EDGE_MM, y, WITHIN_MM);
	int module = canvas_dots(c, 0.3);
	double wide = canvas_mm(c, barcode_width_dots(&b, module)), x = EDGE_MM + WITHIN_MM - wide;
	barcode_draw(&b, c, canvas_dots(c, x), canvas_dots(c, y + 2.2), module, canvas_dots(c, 12.7));
	own_code_shown(code, grouped);
	canvas_text(c, &mono, x + canvas_mm(c, b.quiet * module), y + 15.1, wide, grouped);
	y += 2 + canvas_text(c, &strong_style, EDGE_MM, y + 2, x - EDGE_MM - 2,
	                     canvas_said(c, SAY_CS_AFTERWARDS));
	canvas_text(c, &small_style, EDGE_MM, y + 0.5, x - EDGE_MM - 2, canvas_said(c, SAY_CS_CAUTION));
	return c->failed;
}

/* Where the foot begins. */
static double above_foot(struct canvas *c, const json_t *d, int number, int item_rows)
{
	double y = head(c, d, number);
	y = who_and_where(c, y);
	y = digits_and_items(c, y, item_rows);
	y = counts(c, d, y);
	y = search(c, d, y);
	y = sign_out(c, d, y);
	return outcome(c, y);
}

static double foot_height(struct canvas *c)
{
	double h = canvas_text_height(c, &strong_style, FOOT_WORDS_MM, canvas_said(c, SAY_CS_AFTERWARDS)) +
	           canvas_text_height(c, &small_style, FOOT_WORDS_MM, canvas_said(c, SAY_CS_CAUTION)) + 2.5 +
	           4.2;
	return h > FOOT_MM ? h : FOOT_MM;
}

/* As many rows for items as there is room for; ITEM_ROWS_LEAST - 1 where not even the least fit. */
static int item_rows(struct canvas *c, const json_t *d)
{
	int rows = ITEM_ROWS + 1, dry = c->dry;
	double y = A4_HEIGHT_MM, high = foot_height(c);
	c->dry = true;
	while (rows >= ITEM_ROWS_LEAST && y + high > A4_HEIGHT_MM)
		y = above_foot(c, d, 1, --rows);
	c->dry = dry;
	return rows;
}

static int count_sheet_draw(struct canvas *c, const json_t *d, struct error *e)
{
	size_t i;
	json_t *sheet;
	int rows = 0;
	json_array_foreach(json_object_get(d, "sheets"), i, sheet)
	{
		canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
		rows = rows ? rows : item_rows(c, d);
		if (rows < ITEM_ROWS_LEAST)
			return error_set(e, -EINVAL,
			                 "document fields 'search' and 'points': they do not fit the sheet: "
			                 "say them in fewer words");
		double y = above_foot(c, d, (int)json_number(sheet, "number", 0), rows);
		int r = foot(c, json_text(sheet, "code"), y, e);
		if (r < 0)
			return r;
	}
	return 0;
}

/* clang-format off */
static const struct field sheet_fields[] = {
	INT("number", REQUIRED, 1, 99999, "of this room"),
	CODE("code", REQUIRED, OWN_PAPER_SHEET, "FROM PAPER, with the sheet's number"),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("room", REQUIRED, 1, 60, ""),
	BOOL("alone", OPTIONAL, "a room of a single operator"),
	TEXTS("search", REQUIRED, 1, 16, 120, "the steps, in the order of the policy"),
	TEXTS("points", REQUIRED, 1, 16, 120, "of the sign-out, in the order of the policy"),
	OBJECTS("sheets", REQUIRED, 1, 100, sheet_fields, "a page each"),
	END};
/* clang-format on */

const struct paper_kind paper_count_sheet = {
    .kind = "count-sheet",
    .what = "what the room counts on while the station is silent, in the order of the slip, numbered, a page "
            "each",
    .fields = fields,
    .draw = count_sheet_draw,
    .dpi = 300,
};
