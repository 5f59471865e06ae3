/* The answer cards of a room. A page holds two columns of six, not to be cut: the cards of one occasion in the order of use,
 * and those that end something at its foot, in heavy frames, apart. What only says a number (SHOWN 3, 5 MINUTES AGO) lies in
 * rows on a page of its own, its bars turned. For a camera, which would see several of a page at once, each card is cut out.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/cards.h"
#include "labels/sheets.h"

#define EDGE_MM 9.0
#define TOP_MM 27.0
#define ROWS 6
#define ROW_MM 41.5
#define GUTTER_MM 11.0 /* of the number, or the sign, before a card */
#define CODE_DOWN_MM 22.6
#define BAR_MM 13.7
#define WITHIN_MM (A4_WIDTH_MM - 2 * EDGE_MM)
#define COLUMN_MM (WITHIN_MM / 2)
#define WIDE_MM A4_HEIGHT_MM /* a page of rows lies */
#define WIDE_WITHIN_MM (WIDE_MM - 2 * EDGE_MM)
#define ROW_CARDS 5
#define WIDE_ROW_MM 58.0
#define TURNED_MM 12.7
#define MODULE_MM 0.34 /* as wide as the column allows: cameras read these askew */
#define TURNED_MODULE_MM 0.3

static void head(struct canvas *c, const json_t *d, const char *title, double width_mm, double height_mm)
{
	struct style room = {.size_pt = 11, .bold = true}, small = {.size_pt = 9, .align = ALIGN_RIGHT};
	struct style large = {.size_pt = 20, .bold = true};
	double within = width_mm - 2 * EDGE_MM;
	const char *of = json_text(d, "room"), *site = json_text(d, "site");
	char text[160];
	canvas_page(c, width_mm, height_mm);
	canvas_say(c, SAY(P_ROOM_ONLY, .room = of), text, sizeof text);
	canvas_text(c, &room, EDGE_MM, 6, within * 0.6, text);
	canvas_say(c, SAY(CP_HEAD, .text = site), text, sizeof text);
	canvas_text(c, &small, EDGE_MM + within * 0.6, 6.5, within * 0.4, text);
	canvas_rule(c, EDGE_MM, 12, within);
	while (canvas_text_width(c, &large, title) > within)
		large.size_pt -= 0.5;
	canvas_text(c, &large, EDGE_MM, 14.2, within, title);
	canvas_rule(c, EDGE_MM, 24.5, within);
}

static void shrink(struct canvas *c, struct style *s, double smallest, double width, double height,
                   const char *text)
{
	while (s->size_pt > smallest && canvas_text_height(c, s, width, text) > height)
		s->size_pt -= 0.5;
}

/* YES and NO are told by their signs as well, without a frame, in which each could pass for the other: a tick, a cross. */
static void answer_sign(struct canvas *c, int meaning, double x, double y)
{
	canvas_picture(c, x, 7);
	if (meaning == CARD_YES) {
		canvas_line(c, x + 0.5, y + 4.2, x + 2.8, y + 6.6, 1.4);
		canvas_line(c, x + 2.4, y + 6.8, x + 7, y + 0.6, 1.4);
	} else if (meaning == CARD_NO) {
		canvas_line(c, x + 0.6, y + 0.6, x + 6.6, y + 6.6, 1.4);
		canvas_line(c, x + 0.6, y + 6.6, x + 6.6, y + 0.6, 1.4);
	}
	canvas_picture_end(c);
}

/* A visitor's name is written where no bar is. */
static void name_line(struct canvas *c, int meaning, double x, double y, double width)
{
	if (meaning >= CARD_VISITOR_1 && meaning <= CARD_VISITOR_4)
		canvas_line(c, x, y, x + width, y, 0.25);
}

static int meaning_of(const char *code)
{
	struct own_code own;
	struct code_fault fault;
	return own_code_read(code, strlen(code), &own, &fault) == 0 ? own.meaning : 0;
}

/* Words and use above the bars, their text below, and beside them what is scanned next that is no card. */
static int draw_card(struct canvas *c, const json_t *card, double x, double y, struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	const char *words = json_text(card, "words"), *use = json_text(card, "use"),
	           *code = json_text(card, "code"), *then = json_text(card, "then");
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	struct style big = {.size_pt = 18, .bold = true, .leading = 0.9}, small = {.size_pt = 8.5},
	             mono = {.size_pt = 8, .bold = true, .mono = true}, next = {.size_pt = 8, .bold = true};
	double inner = COLUMN_MM - GUTTER_MM - 3, at = x + GUTTER_MM;
	shrink(c, &big, 12, inner, 14.5, words);
	double down = 2 + canvas_text(c, &big, at, y + 2, inner, words);
	shrink(c, &small, 7, inner, CODE_DOWN_MM - down - 0.4, use);
	canvas_text(c, &small, at, y + down + 0.2, inner, use);
	int module = canvas_dots(c, MODULE_MM);
	double quiet = canvas_mm(c, b.quiet * module);
	barcode_draw(&b, c, canvas_dots(c, at - quiet), canvas_dots(c, y + CODE_DOWN_MM), module,
	             canvas_dots(c, BAR_MM));
	char grouped[OWN_CODE_SHOWN_MAX];
	own_code_shown(code, grouped);
	canvas_text(c, &mono, at, y + CODE_DOWN_MM + BAR_MM + 0.2, inner, grouped);
	double beside = at + canvas_mm(c, barcode_width_dots(&b, module)) - quiet + 1;
	shrink(c, &next, 5.5, x + COLUMN_MM - 2 - beside, BAR_MM + 1, then);
	canvas_text(c, &next, beside, y + CODE_DOWN_MM - 0.3, x + COLUMN_MM - 2 - beside, then);
	answer_sign(c, meaning_of(code), x + 1.3, y + CODE_DOWN_MM + 3);
	name_line(c, meaning_of(code), at, y + CODE_DOWN_MM - 1.5, inner);
	return c->failed;
}

static double column_x(int column)
{
	return EDGE_MM + column * COLUMN_MM;
}

/* first: the number of its first card, 0 they have none. */
static int draw_column(struct canvas *c, const json_t *cards, int column, int first, struct error *e)
{
	struct style number = {.size_pt = 18, .align = ALIGN_CENTRE};
	size_t i;
	json_t *card;
	json_array_foreach((json_t *)cards, i, card)
	{
		double y = TOP_MM + (double)i * ROW_MM;
		char text[12];
		snprintf(text, sizeof text, "%d", (int)i + first);
		if (first)
			canvas_text(c, &number, column_x(column), y + 1.6, GUTTER_MM - 2, text);
		int r = draw_card(c, card, column_x(column), y, e);
		if (r < 0)
			return r;
		canvas_line(c, column_x(column), y + ROW_MM, column_x(column) + COLUMN_MM, y + ROW_MM, 0.2);
	}
	return 0;
}

/* What ends something stands at the foot: by accident nothing near it is scanned. One alone is at the right, where nothing that
 * answers the board stands above it. */
static int draw_ends(struct canvas *c, const json_t *ends, struct error *e)
{
	size_t i;
	json_t *card;
	double y = TOP_MM + (ROWS - 1) * ROW_MM + 4;
	json_array_foreach((json_t *)ends, i, card)
	{
		double x = column_x(json_array_size(ends) == 1 ? 1 : (int)i);
		int r = draw_card(c, card, x, y, e);
		if (r < 0)
			return r;
		canvas_frame(c, x + 1, y, COLUMN_MM - 2, ROW_MM, 1.2);
	}
	return 0;
}

int cards_page(struct canvas *c, const json_t *d, const json_t *page, struct error *e)
{
	int first = (int)json_number(page, "first", 0),
	    left = (int)json_array_size(json_object_get(page, "left"));
	const json_t *right = json_object_get(page, "right"), *ends = json_object_get(page, "ends");
	struct style small = {.size_pt = 9}, beside = {.size_pt = 13, .bold = true};
	double x = column_x(1) + GUTTER_MM;
	head(c, d, json_text(page, "title"), A4_WIDTH_MM, A4_HEIGHT_MM);
	int r = draw_column(c, json_object_get(page, "left"), 0, json_truth(page, "in_order") ? 1 : first, e);
	if (r == 0)
		r = draw_column(c, right, 1, first ? first + left : 0, e);
	if (r == 0)
		r = draw_ends(c, ends, e);
	double bottom = TOP_MM + ROW_MM * left;
	canvas_line(c, column_x(1), TOP_MM - 1, column_x(1), bottom, 0.25);
	if (json_array_size(ends) == 1)
		canvas_text(c, &beside, column_x(0), TOP_MM + (ROWS - 1) * ROW_MM + 8, COLUMN_MM - 6,
		            json_text(page, "note"));
	else if (json_array_size(right) < ROWS && !ends)
		canvas_text(c, &small, x, TOP_MM + ROW_MM * (double)json_array_size(right) + 4,
		            COLUMN_MM - GUTTER_MM - 2, json_text(page, "note"));
	else
		canvas_text(c, &small, EDGE_MM, A4_HEIGHT_MM - 13.5, WITHIN_MM, json_text(page, "note"));
	return r;
}

static int draw_turned(struct canvas *c, const json_t *card, double middle, double y, struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	const double width = WIDE_WITHIN_MM / ROW_CARDS - 3;
	struct style big = {.size_pt = 13, .bold = true, .align = ALIGN_CENTRE};
	struct style mono = {.size_pt = 8, .bold = true, .mono = true, .align = ALIGN_CENTRE};
	const char *code = json_text(card, "code"), *words = json_text(card, "words");
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	barcode_turn(&b);
	int module = canvas_dots(c, TURNED_MODULE_MM);
	shrink(c, &big, 8, width, 5.5, words);
	canvas_text(c, &big, middle - width / 2, y, width, words);
	char grouped[OWN_CODE_SHOWN_MAX];
	own_code_shown(code, grouped);
	/* The quiet zones are white anyway: the words may stand in their outer part. */
	barcode_draw(&b, c, canvas_dots(c, middle - TURNED_MM / 2), canvas_dots(c, y + 5.5), module,
	             canvas_dots(c, TURNED_MM));
	canvas_text(c, &mono, middle + TURNED_MM / 2 + 1, y + 24, width / 2 - TURNED_MM / 2, grouped);
	return c->failed;
}

/* Ends where the paper's edge begins. */
static void numbers_note(struct canvas *c, const char *note)
{
	struct style small = {.size_pt = 9};
	shrink(c, &small, 6.5, WIDE_WITHIN_MM, 5, note);
	double y = A4_WIDTH_MM - 5 - canvas_text_height(c, &small, WIDE_WITHIN_MM, note);
	canvas_text(c, &small, EDGE_MM, y, WIDE_WITHIN_MM, note);
}

static int draw_rows(struct canvas *c, const json_t *d, struct error *e)
{
	const json_t *cards = json_object_get(d, "numbers");
	size_t i;
	json_t *card;
	json_array_foreach((json_t *)cards, i, card)
	{
		int at = (int)(i % (ROW_CARDS * 3)), row = at / ROW_CARDS;
		double middle = EDGE_MM + (at % ROW_CARDS + 0.5) * WIDE_WITHIN_MM / ROW_CARDS;
		if (at == 0) {
			head(c, d, json_text(d, "numbers_title"), WIDE_MM, A4_WIDTH_MM);
			numbers_note(c, json_text(d, "numbers_note"));
		}
		canvas_picture(c, EDGE_MM, WIDE_WITHIN_MM); /* numbers grow from left to right everywhere */
		int r = draw_turned(c, card, middle, TOP_MM - 0.3 + row * WIDE_ROW_MM, e);
		canvas_picture_end(c);
		if (r < 0)
			return r;
	}
	return 0;
}

/* --- each one cut out ----------------------------------------------------------------------------- */

static void cut_frame(struct canvas *c, double x, double y)
{
	canvas_dashed(c, x, y, x + COLUMN_MM, y);
	canvas_dashed(c, x, y + ROW_MM, x + COLUMN_MM, y + ROW_MM);
	canvas_dashed(c, x, y, x, y + ROW_MM);
	canvas_dashed(c, x + COLUMN_MM, y, x + COLUMN_MM, y + ROW_MM);
}

static int draw_single(struct canvas *c, const json_t *d, const json_t *card, int *count, bool ends,
                       struct error *e)
{
	struct style room = {.size_pt = 7.5, .align = ALIGN_RIGHT};
	int at = (*count)++ % (2 * ROWS);
	double x = column_x(at % 2), y = TOP_MM + at / 2 * ROW_MM;
	if (at == 0)
		head(c, d, canvas_said(c, SAY_CP_CUT_OUT), A4_WIDTH_MM, A4_HEIGHT_MM);
	cut_frame(c, x, y);
	if (ends)
		canvas_frame(c, x + 0.3, y + 0.3, COLUMN_MM - 0.6, ROW_MM - 0.6, 1);
	canvas_text(c, &room, x + COLUMN_MM / 2 + 8, y + ROW_MM - 4.4, COLUMN_MM / 2 - 11,
	            json_text(d, "room"));
	return draw_card(c, card, x, y, e);
}

static int draw_singles(struct canvas *c, const json_t *d, struct error *e)
{
	static const char *const lists[] = {"left", "right", "ends"};
	size_t p, i;
	json_t *page, *card;
	int count = 0, r = 0;
	json_array_foreach(json_object_get(d, "pages"), p, page)
	{
		for (int l = 0; l < 3; l++)
			json_array_foreach(json_object_get(page, lists[l]), i, card)
			{
				r = draw_single(c, d, card, &count, l == 2, e);
				if (r < 0)
					return r;
			}
	}
	json_array_foreach(json_object_get(d, "numbers"), i, card)
	{
		r = draw_single(c, d, card, &count, false, e);
		if (r < 0)
			return r;
	}
	return 0;
}

static int cards_draw(struct canvas *c, const json_t *d, struct error *e)
{
	size_t i;
	json_t *page;
	if (json_truth(d, "single"))
		return draw_singles(c, d, e);
	json_array_foreach(json_object_get(d, "pages"), i, page)
	{
		int r = cards_page(c, d, page, e);
		if (r < 0)
			return r;
	}
	return draw_rows(c, d, e);
}

/* clang-format off */
static const struct field card_fields[] = {
	TEXT("words", REQUIRED, 1, 40, ""),
	TEXT("use", OPTIONAL, 1, 100, "what it is for, in one line"),
	TEXT("then", OPTIONAL, 1, 100, "what is scanned after it that is no card"),
	CODE("code", REQUIRED, OWN_CARD, ""),
	END};
static const struct field number_fields[] = {
	TEXT("words", REQUIRED, 1, 20, ""),
	TEXT("use", OPTIONAL, 1, 100, "printed where each is cut out"),
	CODE("code", REQUIRED, OWN_CARD, ""),
	END};
static const struct field page_fields[] = {
	TEXT("title", REQUIRED, 1, 60, "the occasion"),
	BOOL("in_order", OPTIONAL, "the left column is used from top to bottom, and numbered"),
	OBJECTS("left", REQUIRED, 1, 6, card_fields, ""),
	OBJECTS("right", OPTIONAL, 1, 6, card_fields, ""),
	OBJECTS("ends", OPTIONAL, 1, 2, card_fields, "framed, at the foot; the columns then hold at most 5"),
	TEXT("note", OPTIONAL, 1, 300, "what is not on this page"),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("room", REQUIRED, 1, 60, ""),
	BOOL("single", OPTIONAL, "each card to be cut out, for rooms with a camera"),
	OBJECTS("pages", REQUIRED, 1, 20, page_fields, ""),
	TEXT("numbers_title", OPTIONAL, 1, 60, "of the page of numbers"),
	TEXT("numbers_note", OPTIONAL, 1, 300, ""),
	OBJECTS("numbers", OPTIONAL, 1, 60, number_fields, "cards that say a number, in rows of five"),
	END};
/* clang-format on */

static int check_cards(const json_t *d, struct error *e)
{
	size_t i;
	json_t *page;
	json_array_foreach(json_object_get(d, "pages"), i, page)
	{
		if (json_object_get(page, "ends") &&
		    (json_array_size(json_object_get(page, "left")) >= ROWS ||
		     json_array_size(json_object_get(page, "right")) >= ROWS))
			return error_set(
			    e, -EINVAL,
			    "document field 'pages[%zu].ends': both columns leave no room for them: "
			    "give at most 5 cards to each",
			    i);
	}
	return 0;
}

const struct paper_kind paper_cards = {
    .kind = "cards",
    .what = "the answer cards of a room, a page an occasion. No two codes are nearer than 40 mm, centre to "
            "centre",
    .fields = fields,
    .check = check_cards,
    .draw = cards_draw,
    .dpi = 300,
};
