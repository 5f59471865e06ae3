/* Digit cards: one hand or foot a page, and a page for what is none of the twenty.
 *
 * Each code stands under its own picture, in which that one digit is black: no line to follow, and right even where the page
 * is cut into strips. Five codes of this length, side by side and upright, would leave no room between them, and a scan line
 * could run through two. So the bars lie: 40 mm and more are clear between two codes, and no line across the page reads one.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/hands.h"
#include "labels/sheets.h"

#define PAGE_WIDTH_MM A4_HEIGHT_MM
#define PAGE_HEIGHT_MM A4_WIDTH_MM
#define EDGE_MM 9.0
#define WITHIN_MM (PAGE_WIDTH_MM - 2 * EDGE_MM)
#define DRAWING_MM 46.0
#define DRAWING_TOP_MM 43.0
#define TITLE_TOP_MM 12.5
#define NOTE_LEAST_MM 68.0 /* beside the title: from which side, which turns left and right round */
#define NOTE_HIGH_MM 26.0
#define NAME_TOP_MM 103.0
#define CODE_TOP_MM 118.0
#define BAR_MM 14.0
#define MODULE_MM 0.42 /* larger than elsewhere: cameras read these askew */
#define OTHERS 4
#define FIRST_OTHER 21

static const json_t *card_of(const json_t *d, int digit)
{
	size_t i;
	json_t *card;
	json_array_foreach(json_object_get(d, "cards"), i, card)
	{
		if (json_number(card, "digit", 0) == digit)
			return card;
	}
	return NULL;
}

static void head(struct canvas *c, const json_t *d, enum saying titled, enum saying says)
{
	struct style room = {.size_pt = 11, .bold = true}, small = {.size_pt = 9, .align = ALIGN_RIGHT};
	struct style large = {.size_pt = 78, .bold = true}, note = {.size_pt = 26, .align = ALIGN_RIGHT};
	const char *title = canvas_said(c, titled), *of = json_text(d, "room"), *site = json_text(d, "site");
	char text[160];
	canvas_page(c, PAGE_WIDTH_MM, PAGE_HEIGHT_MM);
	canvas_say(c, SAY(P_ROOM_ONLY, .room = of), text, sizeof text);
	canvas_text(c, &room, EDGE_MM, 6, WITHIN_MM * 0.6, text);
	canvas_say(c, SAY(DC_HEAD, .text = site), text, sizeof text);
	canvas_text(c, &small, EDGE_MM + WITHIN_MM * 0.6, 6.5, WITHIN_MM * 0.4, text);
	canvas_rule(c, EDGE_MM, 12, WITHIN_MM);
	while (canvas_text_width(c, &large, title) > WITHIN_MM - NOTE_LEAST_MM ||
	       canvas_text_height(c, &large, -1, title) > DRAWING_TOP_MM - TITLE_TOP_MM)
		large.size_pt -= 1;
	canvas_text(c, &large, EDGE_MM, TITLE_TOP_MM, -1, title);
	const char *words = canvas_said(c, says);
	double left = canvas_text_width(c, &large, title) + 5, width = WITHIN_MM - left;
	while (note.size_pt > 12 && canvas_text_height(c, &note, width, words) > NOTE_HIGH_MM)
		note.size_pt -= 0.5;
	double y = DRAWING_TOP_MM - 2 - canvas_text_height(c, &note, width, words);
	canvas_text(c, &note, EDGE_MM + left, y, width, words);
}

static void foot(struct canvas *c, const json_t *d)
{
	struct style small = {.size_pt = 9};
	double y = PAGE_HEIGHT_MM - 13.5;
	canvas_line(c, EDGE_MM, y, EDGE_MM + WITHIN_MM, y, 0.25);
	const char *how = canvas_said(c, SAY_DC_HOW);
	char text[600];
	canvas_say(c, json_truth(d, "single") ? SAY(DC_STRIPS, .words = how) : SAY(DC_HOW), text,
	           sizeof text);
	canvas_text(c, &small, EDGE_MM, y + 1.2, WITHIN_MM, text);
}

/* The names of a page have one size, in which the longest fits: none looks as if it mattered less. On one line where it can
 * stand there large enough, else on two. */
static double names_pt(struct canvas *c, const json_t *d, int first, int count, double width)
{
	struct style strong = {.size_pt = 16, .bold = true};
	for (int i = 0; i < count; i++) {
		const char *name = json_text(card_of(d, first + i), "name");
		while (strong.size_pt > 12.5 && canvas_text_width(c, &strong, name) > width)
			strong.size_pt -= 0.5;
		while (canvas_text_height(c, &strong, width, name) > CODE_TOP_MM - NAME_TOP_MM)
			strong.size_pt -= 0.5;
	}
	return strong.size_pt;
}

/* The name above, the text of the code below, the bars between them. */
static int draw_code(struct canvas *c, const json_t *d, const json_t *card, double name_pt, double middle,
                     double width, struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	const char *code = json_text(card, "code"), *name = json_text(card, "name");
	struct style strong = {.size_pt = name_pt, .bold = true, .align = ALIGN_CENTRE};
	struct style mono = {.size_pt = 9, .bold = true, .mono = true, .align = ALIGN_CENTRE};
	struct style room = {.size_pt = 8, .align = ALIGN_CENTRE};
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	canvas_text(c, &strong, middle - width / 2, NAME_TOP_MM, width, name);
	barcode_turn(&b);
	int module = canvas_dots(c, MODULE_MM);
	barcode_draw(&b, c, canvas_dots(c, middle - BAR_MM / 2), canvas_dots(c, CODE_TOP_MM), module,
	             canvas_dots(c, BAR_MM));
	char grouped[OWN_CODE_SHOWN_MAX];
	own_code_shown(code, grouped);
	double y = CODE_TOP_MM + canvas_mm(c, barcode_height_dots(&b, module)) + 0.3;
	y += canvas_text(c, &mono, middle - width / 2, y, width, grouped);
	if (json_truth(d, "single")) /* a strip goes about without its page's head */
		canvas_text(c, &room, middle - width / 2, y, width, json_text(d, "room"));
	return c->failed;
}

static void strip_edges(struct canvas *c, const json_t *d, int count)
{
	double width = WITHIN_MM / count;
	for (int i = 1; json_truth(d, "single") && i < count; i++)
		canvas_dashed(c, EDGE_MM + i * width, DRAWING_TOP_MM - 3, EDGE_MM + i * width,
		              PAGE_HEIGHT_MM - 14);
}

static int draw_limb(struct canvas *c, const json_t *d, enum limb limb, struct error *e)
{
	static const enum saying titles[LIMBS] = {SAY_DC_RIGHT_HAND, SAY_DC_LEFT_HAND, SAY_DC_RIGHT_FOOT,
	                                          SAY_DC_LEFT_FOOT};
	bool foot_side = limb == RIGHT_FOOT || limb == LEFT_FOOT;
	const double column = WITHIN_MM / 5, pt = names_pt(c, d, limb_digit(limb, 0), 5, column - 4);
	head(c, d, titles[limb], foot_side ? SAY_DC_FOOT : SAY_DC_HAND);
	canvas_picture(c, EDGE_MM, WITHIN_MM);
	for (int place = 0; place < 5; place++) {
		const json_t *card = card_of(d, limb_digit(limb, place));
		double middle = EDGE_MM + (limb_order(limb, place) + 0.5) * column;
		if (!card)
			continue;
		limb_draw(c, limb, place, middle - DRAWING_MM / 2, DRAWING_TOP_MM, DRAWING_MM);
		int r = draw_code(c, d, card, pt, middle, column - 4, e);
		if (r < 0)
			return r;
	}
	strip_edges(c, d, 5);
	canvas_picture_end(c);
	foot(c, d);
	return c->failed;
}

static void box_to_write(struct canvas *c, double middle, double width)
{
	struct style small = {.size_pt = 10, .align = ALIGN_CENTRE};
	double x = middle - width / 2;
	canvas_text(c, &small, x, DRAWING_TOP_MM, width, canvas_said(c, SAY_DC_WRITE));
	canvas_dotted_frame(c, x, DRAWING_TOP_MM + 18, width, 38);
}

static int draw_others(struct canvas *c, const json_t *d, struct error *e)
{
	const double column = WITHIN_MM / OTHERS, pt = names_pt(c, d, FIRST_OTHER, OTHERS, column - 9);
	head(c, d, SAY_DC_OTHER, SAY_DC_OTHER_SAY);
	canvas_picture(c, EDGE_MM, WITHIN_MM);
	for (int i = 0; i < OTHERS; i++) {
		const json_t *card = card_of(d, FIRST_OTHER + i);
		double middle = EDGE_MM + (i + 0.5) * column;
		if (!card)
			continue;
		box_to_write(c, middle, column - 12);
		int r = draw_code(c, d, card, pt, middle, column - 4, e);
		if (r < 0)
			return r;
	}
	strip_edges(c, d, OTHERS);
	canvas_picture_end(c);
	foot(c, d);
	return c->failed;
}

static bool any_of(const json_t *d, int first, int count)
{
	for (int i = 0; i < count; i++)
		if (card_of(d, first + i))
			return true;
	return false;
}

static int digit_cards_draw(struct canvas *c, const json_t *document, struct error *e)
{
	static const enum limb order[] = {LEFT_HAND, RIGHT_HAND, LEFT_FOOT, RIGHT_FOOT};
	int r = 0;
	for (size_t i = 0; i < LIMBS && r >= 0; i++)
		if (any_of(document, limb_digit(order[i], 0), 5))
			r = draw_limb(c, document, order[i], e);
	if (r >= 0 && any_of(document, FIRST_OTHER, OTHERS))
		r = draw_others(c, document, e);
	return r;
}

/* clang-format off */
static const struct field card_fields[] = {
	INT("digit", REQUIRED, 1, 24, "each once. 1-5 right hand from the thumb, 6-10 left hand, 11-15 right foot from the great toe, "
	    "16-20 left foot, 21-24 others, described"),
	TEXT("name", REQUIRED, 1, 60, ""),
	CODE("code", REQUIRED, OWN_DIGIT, ""),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("room", REQUIRED, 1, 60, ""),
	BOOL("single", OPTIONAL, "with lines to cut each page into strips of one digit, for rooms with a camera"),
	OBJECTS("cards", REQUIRED, 1, 24, card_fields, ""),
	END};
/* clang-format on */

static int check_digit_cards(const json_t *d, struct error *e)
{
	unsigned seen = 0;
	size_t i;
	json_t *card;
	json_array_foreach(json_object_get(d, "cards"), i, card)
	{
		struct own_code code;
		struct code_fault fault;
		const char *text = json_text(card, "code");
		int digit = (int)json_number(card, "digit", 0);
		if (own_code_read(text, strlen(text), &code, &fault) < 0 || code.digit != digit)
			return error_set(
			    e, -EINVAL,
			    "document field 'cards[%zu].code': it is the code of another digit: give the "
			    "code of digit %d",
			    i, digit);
		if (seen & 1u << digit)
			return error_set(
			    e, -EINVAL,
			    "document field 'cards[%zu].digit': digit %d is there twice: give each once", i,
			    digit);
		seen |= 1u << digit;
	}
	return 0;
}

const struct paper_kind paper_digit_cards = {
    .kind = "digit-cards",
    .what = "one hand or foot a page, lying, and a page of others 21 to 24. The bars lie as well: no two "
            "codes are nearer "
            "than 40 mm, edge to edge, and no line across the page runs through two of them",
    .fields = fields,
    .check = check_digit_cards,
    .draw = digit_cards_draw,
    .dpi = 300,
};
