/* Badges of 85.6 x 54 mm (the size of an ISO/IEC 7810 ID-1 card), ten a sheet, with cut lines. */
#include <errno.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/sheets.h"

#define BADGE_WIDTH_MM 85.6
#define BADGE_HEIGHT_MM 54.0
#define COLUMNS 2
#define ROWS 5

static void cut_lines(struct canvas *c, double left, double top)
{
	for (int i = 0; i <= COLUMNS; i++)
		canvas_dashed(c, left + i * BADGE_WIDTH_MM, top - 3, left + i * BADGE_WIDTH_MM,
		              top + ROWS * BADGE_HEIGHT_MM + 3);
	for (int i = 0; i <= ROWS; i++)
		canvas_dashed(c, left - 3, top + i * BADGE_HEIGHT_MM, left + COLUMNS * BADGE_WIDTH_MM + 3,
		              top + i * BADGE_HEIGHT_MM);
}

static int draw_badge(struct canvas *c, const json_t *badge, const char *site, double x, double y,
                      struct error *e)
{
	const char *code = json_text(badge, "code");
	struct barcode b _cleanup_(barcode_deinit) = {0};
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	bool registered = json_truth(badge, "registered");
	double inner = BADGE_WIDTH_MM - 10;
	struct style small = {.size_pt = 7.5}, role = {.size_pt = 9.5}, name = {.size_pt = 24, .bold = true};
	struct style tag = {.size_pt = 8, .bold = true, .align = ALIGN_CENTRE, .white = registered};
	struct style text = {.size_pt = 8, .mono = true, .align = ALIGN_CENTRE};
	/* Of a surgeon nobody asks it, and 'not' would be an insult. */
	const char *tag_words = !json_object_get(badge, "registered") ? ""
	                        : registered                          ? canvas_said(c, SAY_BG_REGISTERED)
	                                                              : canvas_said(c, SAY_BG_NOT_REGISTERED);
	double tag_w = canvas_text_width(c, &tag, tag_words) + 4,
	       tag_h = canvas_text_height(c, &tag, tag_w, tag_words) + 1.2;
	if (!*tag_words)
		tag_w = 0;
	else if (registered)
		canvas_box(c, x + 5 + inner - tag_w, y + 4.5, tag_w, tag_h);
	else
		canvas_frame(c, x + 5 + inner - tag_w, y + 4.5, tag_w, tag_h, 0.4);
	canvas_text(c, &tag, x + 5 + inner - tag_w, y + 5.1, tag_w, tag_words);
	canvas_text(c, &small, x + 5, y + 5, inner - tag_w - 3, site);
	while (name.size_pt > 10 && canvas_text_height(c, &name, inner, json_text(badge, "name")) > 13)
		name.size_pt -= 0.5;
	double h = canvas_text_height(c, &name, inner, json_text(badge, "name"));
	canvas_text(c, &name, x + 5, y + 17.5 - h / 2, inner, json_text(badge, "name"));
	while (role.size_pt > 6.5 && canvas_text_height(c, &role, inner, json_text(badge, "role")) > 6)
		role.size_pt -= 0.5;
	canvas_text(c, &role, x + 5, y + 24.5, inner, json_text(badge, "role"));
	int module = barcode_module_dots(b.kind, c->dpi), width = barcode_width_dots(&b, module);
	barcode_draw(&b, c, canvas_dots(c, x + (BADGE_WIDTH_MM - canvas_mm(c, width)) / 2),
	             canvas_dots(c, y + 32), module, canvas_dots(c, 12.7));
	canvas_text(c, &text, x + 5, y + 45.5, inner, code);
	return c->failed;
}

static int badges_draw(struct canvas *c, const json_t *document, struct error *e)
{
	double left = (A4_WIDTH_MM - COLUMNS * BADGE_WIDTH_MM) / 2,
	       top = (A4_HEIGHT_MM - ROWS * BADGE_HEIGHT_MM) / 2;
	size_t i;
	json_t *badge;
	json_array_foreach(json_object_get(document, "badges"), i, badge)
	{
		size_t at = i % (COLUMNS * ROWS);
		if (at == 0) {
			canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
			cut_lines(c, left, top);
		}
		double x = left + (double)(at % COLUMNS) * BADGE_WIDTH_MM;
		double y = top + (double)(at / COLUMNS) * BADGE_HEIGHT_MM;
		int r = draw_badge(c, badge, json_text(document, "site"), x, y, e);
		if (r < 0)
			return r;
	}
	return 0;
}

/* clang-format off */
static const struct field badge_fields[] = {
	TEXT("name", REQUIRED, 1, 40, ""),
	TEXT("role", REQUIRED, 1, 60, ""),
	BOOL("registered", OPTIONAL, "left out where it is not asked: no tag"),
	CODE("code", REQUIRED, OWN_BADGE, ""),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	OBJECTS("badges", REQUIRED, 1, 200, badge_fields, ""),
	END};
/* clang-format on */

const struct paper_kind paper_badges = {
    .kind = "badges",
    .what = "85.6 x 54 mm, ten a sheet, with cut lines",
    .fields = fields,
    .draw = badges_draw,
    .dpi = 300,
};
