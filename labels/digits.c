/* Digit cards: one sheet a room, hands on one side, feet on the other.
 *
 * The codes stand in one staggered column: two neighbours are a pitch apart in height and a code's width
 * apart sideways. The nearest centres are then 44 mm apart, and the straight line through two codes is always
 * steeper than a code's own diagonal, so that no scan line can run through both.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/hands.h"
#include "labels/sheets.h"

#define FIRST_MM 31.0 /* centre of the first code */
#define PITCH_MM 22.0
#define BETWEEN_MM 6.0 /* more between left and right */
#define OTHER_ROWS 2   /* other digits on each side */
#define LEFT_CENTRE_MM 141.5
#define RIGHT_CENTRE_MM 182.0
#define BAR_MM 12.0
#define PICTURE_MM 12.0

struct side {
	bool feet;
	double y[HANDS_DIGITS + OTHER_ROWS]; /* centres of the codes */
};

static void place(struct side *s)
{
	for (int i = 0; i < HANDS_DIGITS + OTHER_ROWS; i++)
		s->y[i] = FIRST_MM + i * PITCH_MM + (i >= 5 ? BETWEEN_MM : 0);
}

static const json_t *card_of(const json_t *d, int digit)
{
	size_t i;
	json_t *card;
	json_array_foreach(json_object_get(d, "cards"), i,
	                   card) if (json_number(card, "digit", 0) == digit) return card;
	return NULL;
}

static double centre_x(int row)
{
	return row % 2 ? RIGHT_CENTRE_MM : LEFT_CENTRE_MM;
}

static int draw_code(struct canvas *c, const json_t *card, int row, double y, struct error *e)
{
	struct barcode b _cleanup_(barcode_deinit) = {0};
	const char *code = json_text(card, "code"), *name = json_text(card, "name");
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	int module = barcode_module_dots(b.kind, c->dpi), width = barcode_width_dots(&b, module);
	double x = centre_x(row), half = canvas_mm(c, width) / 2;
	struct style big = {.size_pt = 11, .bold = true, .align = ALIGN_CENTRE};
	struct style mono = {.size_pt = 6.5, .mono = true, .align = ALIGN_CENTRE};
	double box = 2 * half - 1;
	while (big.size_pt > 7 && canvas_text_height(c, &big, box, name) > 9.6)
		big.size_pt -= 0.25;
	double h = canvas_text_height(c, &big, box, name);
	canvas_text(c, &big, x - box / 2, y - BAR_MM / 2 - 0.8 - h, box, name);
	barcode_draw(&b, c, canvas_dots(c, x - half), canvas_dots(c, y - BAR_MM / 2), module,
	             canvas_dots(c, BAR_MM));
	canvas_text(c, &mono, x - box / 2, y + BAR_MM / 2 + 0.4, box, code);
	return c->failed;
}

/* From the tip of the digit to the quiet zone of its code. */
static void leader(struct canvas *c, double tip_x, double y, int row)
{
	double end = centre_x(row) - 20.3;
	cairo_new_path(c->cr);
	cairo_arc(c->cr, (tip_x + 1.6) * 72 / 25.4, y * 72 / 25.4, 2, 0, 6.2832);
	cairo_fill(c->cr);
	canvas_line(c, tip_x + 1.6, y, end, y, 0.3);
}

static void head(struct canvas *c, const json_t *d, const struct side *s)
{
	struct style title = {.size_pt = 19, .bold = true}, small = {.size_pt = 8.5};
	char text[200];
	double y = 7, w = 108;
	y += canvas_text(c, &title, PICTURE_MM, y, w, json_text(d, "room"));
	snprintf(text, sizeof text, "Digit cards: %s. %s",
	         s->feet ? "feet, seen from above" : "hands, seen from the back", json_text(d, "site"));
	y += canvas_text(c, &small, PICTURE_MM, y, w, text);
}

static void side_names(struct canvas *c, const struct side *s)
{
	struct style big = {.size_pt = 15, .bold = true}, small = {.size_pt = 8.5};
	canvas_text(c, &big, PICTURE_MM + 7, s->y[2] - 12, 40, s->feet ? "LEFT FOOT" : "LEFT HAND");
	canvas_text(c, &big, PICTURE_MM + 7, s->y[7] + 1, 40, s->feet ? "RIGHT FOOT" : "RIGHT HAND");
	canvas_text(c, &small, PICTURE_MM, s->y[10] - 6, 92,
	            "Another digit (a sixth finger, a stump, joined digits): scan one of these codes, and "
	            "say aloud and "
	            "write on the paper sheet which digit it is.");
	canvas_text(c, &small, PICTURE_MM, s->y[11] - 5, 92,
	            "Scan a digit's code when a tourniquet goes on: its time starts at once. Scanned while "
	            "one is on, the "
	            "code shows the minutes. Only the card OFF stops the time.");
}

static int draw_side(struct canvas *c, const json_t *d, struct side *s, struct error *e)
{
	double tips[HANDS_DIGITS];
	place(s);
	canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
	hands_draw(c, s->feet, PICTURE_MM, s->y, PITCH_MM, tips);
	head(c, d, s);
	side_names(c, s);
	for (int row = 0; row < HANDS_DIGITS + OTHER_ROWS; row++) {
		int other = row - HANDS_DIGITS;
		int digit = other < 0 ? hands_digit(s->feet, row) : 21 + other + (s->feet ? OTHER_ROWS : 0);
		const json_t *card = card_of(d, digit);
		if (!card)
			continue;
		if (other < 0)
			leader(c, tips[row], s->y[row], row);
		int r = draw_code(c, card, row, s->y[row], e);
		if (r < 0)
			return r;
	}
	return 0;
}

static int digit_cards_draw(struct canvas *c, const json_t *document, struct error *e)
{
	struct side hands = {.feet = false}, feet = {.feet = true};
	int r = draw_side(c, document, &hands, e);
	return r < 0 ? r : draw_side(c, document, &feet, e);
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
    .what = "one sheet a room: side 1 the hands and others 21, 22, side 2 the feet and others 23, 24. No two "
            "codes are nearer than 40 mm, centre to centre, and no straight line runs through two of them",
    .fields = fields,
    .check = check_digit_cards,
    .draw = digit_cards_draw,
    .dpi = 300,
};
