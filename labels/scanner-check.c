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
#define FIRST_MM 42.0
#define PITCH_MM 22.6
#define BAR_MM 11.0

static const struct sample {
	enum symbol_kind symbol;
	const char *text;
	const char *name, *teaches;
} samples[] = {
#define X(name, symbol, text) {SYMBOL_##symbol, text, #name, NULL},
    PAPER_SAMPLES(X)
#undef X
};

struct words {
	const char *name, *title, *teaches;
};

static const struct words words[] = {
    {"LETTERS", "Letters", "keyboard layout: Y and Z, A and Q"},
    {"DIGITS", "Digits", "keyboard layout: digits or their shifted signs"},
    {"SIGNS", "Signs", "keyboard layout: signs that other makers' codes use"},
    {"LOWER", "Small letters", "whether small and capital letters stay what they are"},
    {"GS1_128", "GS1-128", "how the separator GS is sent; the identifier ]C1"},
    {"EAN13", "EAN-13", "the identifier ]E0; what stands before and after"},
    {"GS1_DATAMATRIX", "GS1 DataMatrix", "GS and ]d2 from a two-dimensional code"},
    {"QR", "QR Code", "the identifier ]Q1; mixed letters"},
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
	double h = canvas_text(c, &title, WORDS_MM, y, 64, w->title);
	canvas_text(c, &small, WORDS_MM, y + h + 0.3, 64, w->teaches);
	return c->failed;
}

static void head(struct canvas *c, const json_t *d)
{
	struct style title = {.size_pt = 19, .bold = true}, body = {.size_pt = 9};
	double y = 10, w = A4_WIDTH_MM - 2 * LEFT_MM;
	y += canvas_text(c, &title, LEFT_MM, y, w, "Scanner check");
	y += canvas_text(c, &body, LEFT_MM, y, w, json_text(d, "site"));
	canvas_text(c, &body, LEFT_MM, y + 1.5, w,
	            "Scan every code once, from 1 downwards, and wait for the board after each. The station "
	            "learns how this "
	            "scanner sends letters, signs and the separator. A code that the scanner does not read: "
	            "go on with "
	            "the next. Reading this sheet says nothing about the print quality of other codes.");
}

static int scanner_check_draw(struct canvas *c, const json_t *document, struct error *e)
{
	static const struct words start = {"", "Begin", "the station listens to this scanner"};
	static const struct words middle = {"", "End, for a scanner of bars only",
	                                    "others go on with the next"};
	static const struct words end = {"", "End", "the profile of this scanner is kept"};
	int row = 0;
	canvas_page(c, A4_WIDTH_MM, A4_HEIGHT_MM);
	head(c, document);
	int r = draw_row(c, row++, SYMBOL_CODE_128, json_text(document, "start"), &start, e);
	for (size_t i = 0; r == 0 && i < sizeof samples / sizeof *samples; i++) {
		if (samples[i].symbol == SYMBOL_GS1_DATAMATRIX)
			r = draw_row(c, row++, SYMBOL_CODE_128, json_text(document, "end"), &middle, e);
		if (r == 0)
			r = draw_row(c, row++, samples[i].symbol, samples[i].text, &words[i], e);
	}
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
