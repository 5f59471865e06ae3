#include "labels/barcode.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <zint.h>

struct symbol_facts {
	int zint, option_2, option_3, input_mode;
	int quiet;
	int min_um, target_um, max_um; /* X dimension */
};

static const struct symbol_facts facts[] = {
    [SYMBOL_CODE_128] = {BARCODE_CODE128, 0, 0, DATA_MODE, 10, 170, 250, 495},
    [SYMBOL_GS1_128] = {BARCODE_GS1_128, 0, 0, GS1_MODE | GS1PARENS_MODE, 10, 170, 250, 495},
    [SYMBOL_EAN_13] = {BARCODE_EANX, 0, 0, DATA_MODE, 11, 264, 330, 660},
    [SYMBOL_GS1_DATAMATRIX] = {BARCODE_DATAMATRIX, 0, DM_SQUARE, GS1_MODE | GS1PARENS_MODE, 1, 254, 380, 495},
    [SYMBOL_GS1_DATAMATRIX_16X16] = {BARCODE_DATAMATRIX, 4, 0, GS1_MODE | GS1PARENS_MODE, 1, 254, 380, 495},
    [SYMBOL_GS1_DATAMATRIX_8X32] = {BARCODE_DATAMATRIX, 26, 0, GS1_MODE | GS1PARENS_MODE, 1, 254, 380, 495},
    [SYMBOL_QR_CODE] = {BARCODE_QRCODE, 0, 0, DATA_MODE, 4, 250, 370, 990},
};

static void zint_drop(struct zint_symbol **z)
{
	if (*z)
		ZBarcode_Delete(*z);
}

static struct zint_symbol *ask_zint(enum symbol_kind kind, const char *text, struct error *e)
{
	const struct symbol_facts *f = &facts[kind];
	struct zint_symbol *z = ZBarcode_Create();
	if (!z) {
		error_set(e, -ENOMEM, "barcode: no memory: close other programs");
		return NULL;
	}
	z->symbology = f->zint;
	z->input_mode = f->input_mode;
	z->option_1 = kind == SYMBOL_QR_CODE ? 1 : -1; /* QR: the fewest modules, so the largest ones */
	z->option_2 = f->option_2;
	z->option_3 = f->option_3;
	z->warn_level = WARN_FAIL_ALL;
	z->show_hrt = 0;
	z->guard_descent = 0;
	z->scale = 0.5f; /* a vector unit is then a module */
	if (ZBarcode_Encode_and_Buffer_Vector(z, (const unsigned char *)text, (int)strlen(text), 0) != 0 ||
	    !z->vector) {
		error_set(e, -EINVAL,
		          "barcode '%.60s': it cannot be encoded: %s: give a code that the station made",
		          text, z->errtxt);
		ZBarcode_Delete(z);
		return NULL;
	}
	return z;
}

/* Each symbol of ours begins with a dark module at the left; what zint puts before it (EAN) is not ours. */
static int fill_modules(struct barcode *b, const struct zint_vector *v)
{
	float left = v->width;
	for (const struct zint_vector_rect *r = v->rectangles; r; r = r->next)
		left = r->x < left ? r->x : left;
	for (const struct zint_vector_rect *r = v->rectangles; r; r = r->next) {
		int x1 = (int)lroundf(r->x - left), x2 = (int)lroundf(r->x - left + r->width);
		int y1 = b->rows == 1 ? 0 : (int)lroundf(r->y);
		int y2 = b->rows == 1 ? 1 : (int)lroundf(r->y + r->height);
		if (x1 < 0 || x2 > b->columns || y1 < 0 || y2 > b->rows)
			return -EINVAL;
		for (int y = y1; y < y2; y++)
			memset(b->dark + (size_t)y * (size_t)b->columns + x1, 1, (size_t)(x2 - x1));
	}
	return 0;
}

static bool is_matrix(enum symbol_kind kind)
{
	switch (kind) {
	case SYMBOL_CODE_128:
	case SYMBOL_GS1_128:
	case SYMBOL_EAN_13:
		return false;
	case SYMBOL_GS1_DATAMATRIX:
	case SYMBOL_GS1_DATAMATRIX_16X16:
	case SYMBOL_GS1_DATAMATRIX_8X32:
	case SYMBOL_QR_CODE:
		return true;
	}
	return false;
}

int barcode_init(struct barcode *b, enum symbol_kind kind, const char *text, struct error *e)
{
	memset(b, 0, sizeof *b);
	struct zint_symbol *z _cleanup_(zint_drop) = ask_zint(kind, text, e);
	if (!z)
		return -EINVAL;
	b->kind = kind;
	b->columns = z->width;
	b->rows = is_matrix(kind) ? z->rows : 1;
	b->quiet = facts[kind].quiet;
	b->dark = calloc((size_t)b->columns, (size_t)b->rows);
	if (!b->dark)
		return error_set(e, -ENOMEM, "barcode: no memory: close other programs");
	if (fill_modules(b, z->vector) < 0) {
		barcode_deinit(b);
		return error_set(e, -EINVAL,
		                 "barcode '%.60s': the encoder drew outside the symbol: report it", text);
	}
	strncpy(b->text, text, sizeof b->text - 1);
	return 0;
}

void barcode_deinit(struct barcode *b)
{
	free(b->dark);
	b->dark = NULL;
}

int barcode_module_dots(enum symbol_kind kind, int dpi)
{
	const struct symbol_facts *f = &facts[kind];
	double dot_um = 25400.0 / dpi;
	int dots = (int)lround(f->target_um / dot_um);
	if (dots * dot_um < f->min_um)
		dots++;
	if (dots > 1 && dots * dot_um > f->max_um)
		dots--;
	return dots;
}

int barcode_width_dots(const struct barcode *b, int module_dots)
{
	return (b->columns + 2 * b->quiet) * module_dots;
}

int barcode_height_dots(const struct barcode *b, int module_dots)
{
	return b->rows == 1 ? 0 : (b->rows + 2 * b->quiet) * module_dots;
}

static bool dark(const struct barcode *b, int x, int y)
{
	return b->dark[(size_t)y * (size_t)b->columns + (size_t)x];
}

/* Runs across close the hair's breadth between neighbours in a row, runs down that between rows. */
static void add_runs(const struct barcode *b, struct canvas *c, int left, int top, int module, int height)
{
	for (int y = 0; y < b->rows; y++)
		for (int x = 0, n; x < b->columns; x += n + 1) {
			for (n = 0; x + n < b->columns && dark(b, x + n, y); n++)
				;
			if (n)
				canvas_dots_add(c, left + x * module, top + y * height, n * module, height);
		}
	for (int x = 0; x < b->columns && b->rows > 1; x++)
		for (int y = 0, n; y < b->rows; y += n + 1) {
			for (n = 0; y + n < b->rows && dark(b, x, y + n); n++)
				;
			if (n > 1)
				canvas_dots_add(c, left + x * module, top + y * module, module, n * module);
		}
}

void barcode_draw(const struct barcode *b, struct canvas *c, int x_dots, int y_dots, int module_dots,
                  int height_dots)
{
	bool bars = b->rows == 1;
	int quiet = b->quiet * module_dots;
	int left = x_dots + quiet, top = y_dots + (bars ? 0 : quiet);
	add_runs(b, c, left, top, module_dots, bars ? height_dots : module_dots);
	canvas_dots_fill(c);
	int width = b->columns * module_dots, height = bars ? height_dots : b->rows * module_dots;
	struct mark m = {.kind = MARK_CODE, .x_dots = left, .y_dots = top, .module_dots = module_dots};
	m.x_mm = canvas_mm(c, left), m.y_mm = canvas_mm(c, top);
	m.width_mm = canvas_mm(c, width), m.height_mm = canvas_mm(c, height);
	strncpy(m.text, b->text, sizeof m.text - 1);
	canvas_mark(c, &m);
	m.kind = MARK_QUIET;
	m.x_mm = canvas_mm(c, x_dots), m.y_mm = canvas_mm(c, y_dots);
	m.width_mm = canvas_mm(c, width + 2 * quiet),
	m.height_mm = canvas_mm(c, height + (bars ? 0 : 2 * quiet));
	canvas_mark(c, &m);
}
