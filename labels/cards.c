/* The answer cards of a room: large words, one code each, to cut out. */
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/sheets.h"

#define CARD_WIDTH_MM 92.0
#define CARD_HEIGHT_MM 44.0
#define COLUMNS 2
#define LEFT_MM ((A4_WIDTH_MM - COLUMNS * CARD_WIDTH_MM) / 2)
#define TOP_MM 22.0
#define BOTTOM_MM (A4_HEIGHT_MM - 8)
#define TITLE_MM 9.0

struct place {
	double y; /* top of the next row */
	int column;
	int side; /* pages so far */
};

static void begin_side(struct canvas *c, const json_t *d, struct place *p)
{
	struct style strong = {.size_pt = 15, .bold = true}, small = {.size_pt = 8};
	char text[200];
	canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
	p->side++;
	snprintf(text, sizeof text, "Answer cards  ·  %s", json_text(d, "room"));
	double h = canvas_text(c, &strong, LEFT_MM, 8, CARD_WIDTH_MM * 2, text);
	snprintf(text, sizeof text, "%s  ·  sheet %d  ·  for this room only. Scan one when the board asks.",
	         json_text(d, "site"), p->side);
	canvas_text(c, &small, LEFT_MM, 8 + h, CARD_WIDTH_MM * 2, text);
	p->y = TOP_MM;
	p->column = 0;
}

static void shrink(struct canvas *c, struct style *s, double smallest, double width, double height,
                   const char *text)
{
	while (s->size_pt > smallest && canvas_text_height(c, s, width, text) > height)
		s->size_pt -= 0.5;
}

static int draw_card(struct canvas *c, const json_t *card, double x, double y, const char *room,
                     struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	const char *words = json_text(card, "words"), *use = json_text(card, "use"),
	           *code = json_text(card, "code");
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	struct style big = {.size_pt = 21, .bold = true}, small = {.size_pt = 7.5},
	             mono = {.size_pt = 7, .mono = true};
	double inner = CARD_WIDTH_MM - 10;
	canvas_dashed(c, x, y, x + CARD_WIDTH_MM, y);
	canvas_dashed(c, x, y + CARD_HEIGHT_MM, x + CARD_WIDTH_MM, y + CARD_HEIGHT_MM);
	canvas_dashed(c, x, y, x, y + CARD_HEIGHT_MM);
	canvas_dashed(c, x + CARD_WIDTH_MM, y, x + CARD_WIDTH_MM, y + CARD_HEIGHT_MM);
	shrink(c, &big, 9, inner, 10, words);
	canvas_text(c, &big, x + 5, y + 3, inner, words);
	shrink(c, &small, 6.2, inner, 6.5, use);
	canvas_text(c, &small, x + 5, y + 14, inner, use);
	int module = barcode_module_dots(b.kind, c->dpi);
	double quiet = canvas_mm(c, b.quiet * module);
	/* The first bar stands under the first letter, the quiet zone in the margin of the card. */
	barcode_draw(&b, c, canvas_dots(c, x + 5 - quiet), canvas_dots(c, y + 22), module,
	             canvas_dots(c, 12.7));
	canvas_text(c, &mono, x + 5, y + 36, inner / 2, code);
	struct style right = small;
	right.size_pt = 7;
	right.align = ALIGN_RIGHT;
	canvas_text(c, &right, x + 5 + inner / 2, y + 36, inner / 2, room);
	return c->failed;
}

static void group_title(struct canvas *c, const json_t *group, bool again, struct place *p)
{
	struct style title = {.size_pt = 11, .bold = true};
	char text[120];
	snprintf(text, sizeof text, "%s%s", json_text(group, "title"), again ? ", continued" : "");
	canvas_text(c, &title, LEFT_MM, p->y + 2.8, CARD_WIDTH_MM * 2, text);
	p->y += TITLE_MM;
}

static int draw_group(struct canvas *c, const json_t *d, const json_t *group, struct place *p,
                      struct error *e)
{
	size_t i;
	json_t *card;
	if (p->column) {
		p->column = 0;
		p->y += CARD_HEIGHT_MM;
	}
	if (p->y + TITLE_MM + CARD_HEIGHT_MM > BOTTOM_MM)
		begin_side(c, d, p);
	group_title(c, group, false, p);
	json_array_foreach(json_object_get(group, "cards"), i, card)
	{
		if (p->y + CARD_HEIGHT_MM > BOTTOM_MM) {
			begin_side(c, d, p);
			group_title(c, group, true, p);
		}
		int r =
		    draw_card(c, card, LEFT_MM + p->column * CARD_WIDTH_MM, p->y, json_text(d, "room"), e);
		if (r < 0)
			return r;
		p->column = (p->column + 1) % COLUMNS;
		if (!p->column)
			p->y += CARD_HEIGHT_MM;
	}
	return 0;
}

static int cards_draw(struct canvas *c, const json_t *document, struct error *e)
{
	struct place p = {0};
	size_t i;
	json_t *group;
	begin_side(c, document, &p);
	json_array_foreach(json_object_get(document, "groups"), i, group)
	{
		int r = draw_group(c, document, group, &p, e);
		if (r < 0)
			return r;
	}
	return 0;
}

/* clang-format off */
static const struct field card_fields[] = {
	TEXT("words", REQUIRED, 1, 40, ""),
	TEXT("use", OPTIONAL, 1, 100, "what it is for, in one line"),
	CODE("code", REQUIRED, OWN_CARD, ""),
	END};
static const struct field group_fields[] = {
	TEXT("title", REQUIRED, 1, 60, ""),
	OBJECTS("cards", REQUIRED, 1, 60, card_fields, ""),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("room", REQUIRED, 1, 60, ""),
	OBJECTS("groups", REQUIRED, 1, 20, group_fields, ""),
	END};
/* clang-format on */

const struct paper_kind paper_cards = {
    .kind = "cards",
    .what = "the answer cards of a room, grouped, to cut out. No two codes are nearer than 40 mm, centre to "
            "centre",
    .fields = fields,
    .draw = cards_draw,
    .dpi = 300,
};
