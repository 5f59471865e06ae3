/* The sheet that teaches a station how one scanner sends: scanned once from top to bottom. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/barcode.h"
#include "labels/paper.h"
#include "labels/sheets.h"

#define LEFT_MM 18.0
#define CODE_MM (LEFT_MM + 16)
#define WORDS_MM 132.0
#define WORDS_WIDTH_MM (A4_WIDTH_MM - LEFT_MM - WORDS_MM)
#define FIRST_MM 42.0
#define PITCH_MM 24.8
#define BAR_MM 11.0

/* A symbol's own name is the same in every language. */
struct words {
	const char *name;
	enum saying title, teaches;
};

static const struct sample {
	enum symbol_kind symbol;
	const char *text;
} samples[] = {
#define X(name, symbol, text) {SYMBOL_##symbol, text},
    PAPER_SAMPLES(X)
#undef X
};

static const struct words words[] = {
    {NULL, SAY_SC_LETTERS, SAY_SC_LETTERS_FOR},
    {NULL, SAY_SC_DIGITS, SAY_SC_DIGITS_FOR},
    {NULL, SAY_SC_SIGNS, SAY_SC_SIGNS_FOR},
    {NULL, SAY_SC_LOWER, SAY_SC_LOWER_FOR},
    {"GS1-128", SAY_NONE, SAY_SC_GS1_128_FOR},
    {"EAN-13", SAY_NONE, SAY_SC_EAN13_FOR},
    {"GS1 DataMatrix", SAY_NONE, SAY_SC_GS1_DATAMATRIX_FOR},
    {"QR Code", SAY_NONE, SAY_SC_QR_FOR},
};

/* The encoder takes identifiers in brackets, the scanner sends them without. */
static void element_string(const char *sent, char *out, size_t size)
{
	const char *gs = strchr(sent, '\x1d');
	snprintf(out, size, "(%.2s)%.*s(%.2s)%s", sent, (int)(gs - sent - 2), sent + 2, gs + 1, gs + 3);
}

static int draw_row(struct canvas *c, int row, enum symbol_kind symbol, const char *text,
                    const struct words *w, struct error *e)
{
	char element[80];
	struct barcode b _cleanup_(barcode_deinit) = {0};
	if (strchr(text, '\x1d')) {
		element_string(text, element, sizeof element);
		text = element;
	}
	int r = barcode_init(&b, symbol, text, e);
	if (r < 0)
		return r;
	struct style number = {.size_pt = 20, .bold = true}, title = {.size_pt = 11, .bold = true},
	             small = {.size_pt = 8};
	struct style mono = {.size_pt = 7, .mono = true};
	char step[12];
	double y = FIRST_MM + row * PITCH_MM;
	snprintf(step, sizeof step, "%d", row + 1);
	canvas_line(c, LEFT_MM, y - 3.4, A4_WIDTH_MM - LEFT_MM, y - 3.4, 0.12);
	canvas_text(c, &number, LEFT_MM, y, 14, step);
	int module = barcode_module_dots(symbol, c->dpi);
	barcode_draw(&b, c, canvas_dots(c, CODE_MM - canvas_mm(c, b.quiet * module)), canvas_dots(c, y),
	             module, canvas_dots(c, BAR_MM));
	double below = b.rows == 1 ? BAR_MM : canvas_mm(c, barcode_height_dots(&b, module));
	canvas_text(c, &mono, CODE_MM, y + below + 0.4, 96, text);
	double h =
	    canvas_text(c, &title, WORDS_MM, y, WORDS_WIDTH_MM, w->name ? w->name : canvas_said(c, w->title));
	canvas_text(c, &small, WORDS_MM, y + h + 0.3, WORDS_WIDTH_MM, canvas_said(c, w->teaches));
	return c->failed;
}

static void head(struct canvas *c, const json_t *d)
{
	struct style title = {.size_pt = 19, .bold = true}, body = {.size_pt = 9};
	double y = 10, w = A4_WIDTH_MM - 2 * LEFT_MM;
	y += canvas_text(c, &title, LEFT_MM, y, w, canvas_said(c, SAY_SC_TITLE));
	y += canvas_text(c, &body, LEFT_MM, y, w, json_text(d, "site"));
	canvas_text(c, &body, LEFT_MM, y + 1.5, w, canvas_said(c, SAY_SC_HOW));
}

static int scanner_check_draw(struct canvas *c, const json_t *document, struct error *e)
{
	static const struct words start = {NULL, SAY_SC_BEGIN, SAY_SC_BEGIN_FOR};
	static const struct words end = {NULL, SAY_SC_END, SAY_SC_END_FOR};
	int row = 0;
	canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
	head(c, document);
	int r = draw_row(c, row++, SYMBOL_CODE_128, json_text(document, "start"), &start, e);
	for (size_t i = 0; r == 0 && i < sizeof samples / sizeof *samples; i++)
		r = draw_row(c, row++, samples[i].symbol, samples[i].text, &words[i], e);
	return r < 0 ? r : draw_row(c, row, SYMBOL_CODE_128, json_text(document, "end"), &end, e);
}

/* clang-format off */
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	CODE("start", REQUIRED, OWN_SCANNER_CHECK, ""),
	CODE("end", REQUIRED, OWN_SCANNER_CHECK, ""),
	END};
/* clang-format on */

const struct paper_kind paper_scanner_check = {
    .kind = "scanner-check",
    .what = "one sheet: scanned once from top to bottom it teaches a station how one scanner sends. Between "
            "the two codes stand the eight samples of labels/paper.h",
    .fields = fields,
    .draw = scanner_check_draw,
    .dpi = 300,
};
