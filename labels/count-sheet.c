/* The paper count sheet: what the room counts on while the station is silent. In the order of the slip, so that it can be
 * entered from top to bottom afterwards: the digits and their times, the items, the counts, the search, the sign-out. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/sheets.h"

#define EDGE_MM 10.0
#define WITHIN_MM (A4_WIDTH_MM - 2 * EDGE_MM)
#define ROW_MM 9.0 /* for a hand in a hurry */
#define DIGIT_ROWS 3
#define ITEM_ROWS 6
#define COLUMNS_MAX 6
#define FOOT_MM 24.0
#define LABEL_WIDTH_MM 80.0
#define LABEL_HEIGHT_MM 34.0

static const struct style text_style = {.size_pt = 9}, strong_style = {.size_pt = 10, .bold = true},
                          small_style = {.size_pt = 8};

/* A word, and a line to write on up to `x` + `width`. */
static void blank(struct canvas *c, double x, double y, double width, const char *words)
{
	double used = canvas_text_width(c, &text_style, words) + 1.5;
	canvas_text(c, &text_style, x, y + ROW_MM - 4.6, width, words);
	canvas_line(c, x + used, y + ROW_MM - 1, x + width - 2, y + ROW_MM - 1, 0.2);
}

static double heading(struct canvas *c, double y, const char *words)
{
	canvas_rule(c, EDGE_MM, y, WITHIN_MM);
	return y + 1.6 + canvas_text(c, &strong_style, EDGE_MM, y + 1.6, WITHIN_MM, words);
}

struct column {
	const char *words;
	double width_mm;
};

/* Rows under their words, ruled; `first` stands in the first cell of each row, NULL at its end. */
static double table(struct canvas *c, double y, const struct column *columns, const char *const *first,
                    int rows)
{
	double top = y, high = 0, x = EDGE_MM;
	for (int i = 0; i < COLUMNS_MAX && columns[i].words; i++) {
		double h =
		    canvas_text(c, &small_style, x + 1, y + 0.5, columns[i].width_mm - 2, columns[i].words);
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
	char text[160];
	large.align = ALIGN_RIGHT;
	snprintf(text, sizeof text, "%s only", json_text(d, "room"));
	canvas_text(c, &room, EDGE_MM, 6, WITHIN_MM * 0.6, text);
	canvas_text(c, &right, EDGE_MM + WITHIN_MM * 0.6, 6.5, WITHIN_MM * 0.4, json_text(d, "site"));
	canvas_rule(c, EDGE_MM, 12, WITHIN_MM);
	canvas_text(c, &title, EDGE_MM, 13.8, WITHIN_MM * 0.7, "Paper count sheet");
	snprintf(text, sizeof text, "no. %d", number);
	canvas_text(c, &large, EDGE_MM + WITHIN_MM * 0.7, 13.8, WITHIN_MM * 0.3, text);
	return 23;
}

static double who_and_where(struct canvas *c, double y)
{
	double x = EDGE_MM + LABEL_WIDTH_MM + 5, width = WITHIN_MM - LABEL_WIDTH_MM - 5;
	y += canvas_text(
	         c, &text_style, EDGE_MM, y, WITHIN_MM,
	         "While the station is silent the room counts on this sheet. Copy first what the board still "
	         "shows, with "
	         "the time that stands beside it. Then write each thing when it happens, with its time.") +
	     1.5;
	canvas_dotted_frame(c, EDGE_MM, y, LABEL_WIDTH_MM, LABEL_HEIGHT_MM);
	canvas_text(c, &small_style, EDGE_MM + 1.5, y + 1, LABEL_WIDTH_MM - 3, "Patient's label");
	blank(c, x, y - 2, width, "date");
	blank(c, x, y - 2 + ROW_MM, width, "case, or its label");
	blank(c, x, y - 2 + 2 * ROW_MM, width, "from, to");
	blank(c, x, y - 2 + 3 * ROW_MM, width, "copied from the board as of");
	return y + LABEL_HEIGHT_MM + 2;
}

static double digits_and_items(struct canvas *c, double y)
{
	static const struct column digits[COLUMNS_MAX] = {{"digit, in words: left or right, which", 62},
	                                                  {"tourniquet on at", 24},
	                                                  {"off at", 24},
	                                                  {"minutes", 20},
	                                                  {"seen bare at, before the dressing", 28},
	                                                  {"by", 32}};
	static const struct column items[COLUMNS_MAX] = {
	    {"no., item, lot or mark", 74},
	    {"counted in", 19},
	    {"added", 19},
	    {"accounted for", 19},
	    {"how: its mark, or shown to both; intact, cut and complete", 59}};
	static const char *const first[] = {
	    "1  finger or toe tourniquet", "2  artery forceps", "3", "4", "5", "6", NULL};
	y = heading(c, y, "Digits");
	y = table(c, y, digits, NULL, DIGIT_ROWS);
	y = heading(c, y, "Counted in and accounted for");
	return table(c, y, items, first, ITEM_ROWS);
}

static double counts(struct canvas *c, const json_t *d, double y)
{
	static const char *const names[] = {"initial", "handover", "final"};
	bool alone = json_truth(d, "alone");
	y = heading(c, y, alone ? "Counts: single-person" : "Counts, agreed aloud by two");
	for (int i = 0; i < 3; i++, y += ROW_MM) {
		canvas_text(c, &text_style, EDGE_MM + 1, y + ROW_MM - 4.6, 20, names[i]);
		blank(c, EDGE_MM + 22, y, 30, "at");
		blank(c, EDGE_MM + 54, y, 46, "by");
		blank(c, EDGE_MM + 102, y, 44, alone ? "also looked" : "and");
		blank(c, EDGE_MM + 148, y, WITHIN_MM - 148, "written by");
	}
	return y + 1;
}

/* The steps as the site's policy has them, in two columns of boxes. */
static double search(struct canvas *c, const json_t *d, double y)
{
	const json_t *steps = json_object_get(d, "search");
	const double column = WITHIN_MM / 2;
	double lines[2] = {0};
	size_t i, half = (json_array_size(steps) + 1) / 2;
	json_t *step;
	y = heading(c, y, "DISCREPANCY: something is missing, extra or in pieces");
	json_array_foreach((json_t *)steps, i, step)
	{
		int side = i >= half;
		double x = EDGE_MM + side * column, at = y + 0.6 + lines[side];
		canvas_frame(c, x, at + 0.3, 3.4, 3.4, 0.25);
		lines[side] +=
		    0.9 + canvas_text(c, &text_style, x + 5, at, column - 8, json_string_value(step));
	}
	return y + 1.2 + (lines[0] > lines[1] ? lines[0] : lines[1]);
}

static double sign_out(struct canvas *c, double y)
{
	y = heading(c, y, "Sign-out");
	blank(c, EDGE_MM, y - 1, 58, "surgeon or operator");
	blank(c, EDGE_MM + 59, y - 1, 22, "at");
	blank(c, EDGE_MM + 82, y - 1, 38, "skin before");
	blank(c, EDGE_MM + 121, y - 1, 31, "after");
	blank(c, EDGE_MM + 153, y - 1, WITHIN_MM - 153, "colour back");
	return y + ROW_MM + 0.5;
}

static int foot(struct canvas *c, const json_t *d, const char *code, double y, struct error *e)
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
	y += 2 + canvas_text(c, &strong_style, EDGE_MM, y + 2, x - EDGE_MM - 2, json_text(d, "afterwards"));
	canvas_text(c, &small_style, EDGE_MM, y + 0.5, x - EDGE_MM - 2,
	            "A count that agrees can still be wrong: in doubt look again. This paper supports the "
	            "count that people make; "
	            "local policy and the licensed practitioner decide. It belongs into the notes.");
	return c->failed;
}

static int count_sheet_draw(struct canvas *c, const json_t *d, struct error *e)
{
	size_t i;
	json_t *sheet;
	json_array_foreach(json_object_get(d, "sheets"), i, sheet)
	{
		canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
		double y = head(c, d, (int)json_number(sheet, "number", 0));
		y = who_and_where(c, y);
		y = digits_and_items(c, y);
		y = counts(c, d, y);
		y = search(c, d, y);
		y = sign_out(c, y);
		if (y + FOOT_MM > A4_HEIGHT_MM)
			return error_set(e, -EINVAL,
			                 "document field 'search': the steps do not fit the sheet: say them "
			                 "in fewer words");
		int r = foot(c, d, json_text(sheet, "code"), y, e);
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
	TEXT("afterwards", REQUIRED, 1, 200, "how it is entered once the station is back"),
	TEXTS("search", REQUIRED, 1, 16, 120, "the steps, in the order of the policy"),
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
