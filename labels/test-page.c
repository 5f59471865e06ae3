/* The page that shows that a printer prints, and that its bars can be read: one code, which stands on no other paper. */
#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/flow.h"
#include "labels/sheets.h"

#define BAR_MM 14.0
#define ROLL_MM 70.0

static int test_page_draw(struct canvas *c, const json_t *document, struct error *e)
{
	const char *code = json_text(document, "code"), *paper = json_text(document, "paper");
	const struct look *look = look_of(paper);
	struct barcode b _cleanup_(barcode_deinit) = {0};
	int r = barcode_init(&b, SYMBOL_CODE_128, code, e);
	if (r < 0)
		return r;
	double left = look->margin_mm, width = look->width_mm - 2 * left, y = look->margin_mm;
	char shown[OWN_CODE_SHOWN_MAX];
	own_code_shown(code, shown);
	canvas_page(c, look->width_mm, look->roll ? ROLL_MM : look->height_mm);
	y += canvas_text(c, &look->place, left, y, width, canvas_said(c, SAY_TP_TITLE));
	y += canvas_text(c, &look->body, left, y, width, json_text(document, "site")) + 4;
	int module = barcode_module_dots(b.kind, c->dpi);
	barcode_draw(&b, c, canvas_dots(c, left + canvas_mm(c, b.quiet * module)), canvas_dots(c, y), module,
	             canvas_dots(c, BAR_MM));
	y += canvas_mm(c, barcode_height_dots(&b, module)) + BAR_MM + 1;
	y += canvas_text(c, &look->code, left, y, width, shown) + 3;
	canvas_text(c, &look->body, left, y, width, canvas_said(c, SAY_TP_HOW));
	return c->failed;
}

/* clang-format off */
static const char *const papers[] = {"roll80", "a6", "a5", "a4", NULL};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", REQUIRED, papers, ""),
	CODE("code", REQUIRED, OWN_SCANNER_CHECK, "of a step that the scanner-check sheet does not have"),
	END};
/* clang-format on */

const struct paper_kind paper_test_page = {
    .kind = "test-page",
    .what = "one page with one code, on a printer's own paper: whether it prints, and whether a scanner "
            "reads that",
    .fields = fields,
    .draw = test_page_draw,
    .dpi = 300,
};
