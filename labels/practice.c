/* The practice set and its exercises: pages of cards (cards.c) of codes that count nothing, with stripes at both edges, so that
 * nobody takes a page for one that hangs in a room. */
#include <errno.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/cards.h"
#include "labels/sheets.h"

#define STRIPE_WIDTH_MM 4.0
#define STRIPE_MM 6.0
#define FROM_EDGE_MM 2.5

static void stripes(struct canvas *c)
{
	for (double y = STRIPE_MM; y < A4_HEIGHT_MM - 2 * STRIPE_MM; y += 2 * STRIPE_MM) {
		canvas_box(c, FROM_EDGE_MM, y, STRIPE_WIDTH_MM, STRIPE_MM);
		canvas_box(c, A4_WIDTH_MM - FROM_EDGE_MM - STRIPE_WIDTH_MM, y, STRIPE_WIDTH_MM, STRIPE_MM);
	}
}

static int practice_draw(struct canvas *c, const json_t *d, struct error *e)
{
	size_t i;
	json_t *page;
	json_array_foreach(json_object_get(d, "pages"), i, page)
	{
		int r = cards_page(c, d, page, e);
		if (r < 0)
			return r;
		stripes(c);
	}
	return 0;
}

static int check_codes(const json_t *cards, struct error *e)
{
	size_t i;
	json_t *card;
	struct own_code code;
	json_array_foreach((json_t *)cards, i, card)
	{
		const char *text = json_text(card, "code");
		if (own_code_read(text, strlen(text), &code, NULL) < 0 || !code.practice)
			return error_set(
			    e, -EINVAL,
			    "document field 'code': '%s' is none of the practice set: give one that "
			    "counts nothing",
			    text);
	}
	return 0;
}

static int check_practice(const json_t *d, struct error *e)
{
	size_t i;
	json_t *page;
	json_array_foreach(json_object_get(d, "pages"), i, page)
	{
		int r = check_codes(json_object_get(page, "left"), e);
		if (r == 0)
			r = check_codes(json_object_get(page, "right"), e);
		if (r < 0)
			return r;
	}
	return 0;
}

/* clang-format off */
static const struct field card_fields[] = {
	TEXT("words", REQUIRED, 1, 40, ""),
	TEXT("use", OPTIONAL, 1, 100, "what it is for, or what the step is"),
	TEXT("then", OPTIONAL, 1, 100, "beside its bars"),
	TEXT("code", REQUIRED, 9, 24, "an own code of the practice set"),
	END};
static const struct field page_fields[] = {
	TEXT("title", REQUIRED, 1, 60, ""),
	INT("first", OPTIONAL, 1, 99, "the number of the first of an exercise's steps; left out, they have none"),
	OBJECTS("left", REQUIRED, 1, 6, card_fields, ""),
	OBJECTS("right", OPTIONAL, 1, 6, card_fields, ""),
	TEXT("note", OPTIONAL, 1, 300, ""),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("room", REQUIRED, 1, 60, ""),
	OBJECTS("pages", REQUIRED, 1, 40, page_fields, ""),
	END};
/* clang-format on */

const struct paper_kind paper_practice = {
    .kind = "practice",
    .what = "the practice set of a room and its exercises, on pages of cards",
    .fields = fields,
    .check = check_practice,
    .draw = practice_draw,
    .dpi = 300,
};
