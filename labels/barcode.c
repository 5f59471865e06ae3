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
    [SYMBOL_GS1_DATAMATRIX_12X26] = {BARCODE_DATAMATRIX, 27, 0, GS1_MODE | GS1PARENS_MODE, 1, 254, 380, 495},
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
	case SYMBOL_GS1_DATAMATRIX_12X26:
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

void barcode_turn(struct barcode *b)
{
	int columns = b->columns;
	b->columns = b->rows;
	b->rows = columns;
}

int barcode_largest_dots(enum symbol_kind kind, int dpi)
{
	return (int)(facts[kind].max_um / (25400.0 / dpi));
}

int barcode_width_dots(const struct barcode *b, int module_dots)
{
	return b->columns == 1 ? 0 : (b->columns + 2 * b->quiet) * module_dots;
}

int barcode_height_dots(const struct barcode *b, int module_dots)
{
	return b->rows == 1 ? 0 : (b->rows + 2 * b->quiet) * module_dots;
}

static bool dark(const struct barcode *b, int x, int y)
{
	return x >= 0 && y >= 0 && x < b->columns && y < b->rows &&
	       b->dark[(size_t)y * (size_t)b->columns + (size_t)x];
}

/* The outline of all dark modules, walked with the dark on the right hand, so that neighbours are one shape
 * without a seam. Corner (x, y) is the top left of module (x, y). */
enum heading { EAST, SOUTH, WEST, NORTH };

struct outline {
	const struct barcode *b;
	struct canvas *c;
	int left, top, width, height; /* of a module */
	unsigned char *walked;        /* corners left eastwards */
};

/* An edge runs along a side of the dark: eastwards the dark is below it, southwards to its left, … */
static double edge_x(const struct outline *o, int x, enum heading h)
{
	int dots = o->left + x * o->width;
	return h == NORTH ? canvas_edge_low(o->c, dots) : canvas_edge_high(o->c, dots);
}

static double edge_y(const struct outline *o, int y, enum heading h)
{
	int dots = o->top + y * o->height;
	return h == EAST ? canvas_edge_low(o->c, dots) : canvas_edge_high(o->c, dots);
}

/* At a corner: turn right where the dark ends, left where it comes across, else straight on. */
static enum heading turn(const struct outline *o, int x, int y, enum heading h)
{
	static const int ahead_right[4][2] = {{0, 0}, {-1, 0}, {-1, -1}, {0, -1}};
	static const int ahead_left[4][2] = {{0, -1}, {0, 0}, {-1, 0}, {-1, -1}};
	if (!dark(o->b, x + ahead_right[h][0], y + ahead_right[h][1]))
		return (enum heading)((h + 1) % 4);
	if (dark(o->b, x + ahead_left[h][0], y + ahead_left[h][1]))
		return (enum heading)((h + 3) % 4);
	return h;
}

static void walk(struct outline *o, int x, int y)
{
	static const int step[4][2] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
	const int from_x = x, from_y = y;
	enum heading h = EAST;
	bool first = true;
	do {
		if (h == EAST)
			o->walked[(size_t)y * (size_t)o->b->columns + (size_t)x] = 1;
		x += step[h][0];
		y += step[h][1];
		enum heading next = turn(o, x, y, h);
		if (next != h) {
			bool upright = h == NORTH || h == SOUTH;
			double px = edge_x(o, x, upright ? h : next), py = edge_y(o, y, upright ? next : h);
			if (first)
				cairo_move_to(o->c->cr, px, py);
			else
				cairo_line_to(o->c->cr, px, py);
			first = false;
		}
		h = next;
	} while (x != from_x || y != from_y || h != EAST);
	cairo_close_path(o->c->cr);
}

static int draw_outline(const struct barcode *b, struct canvas *c, int left, int top, int width, int height)
{
	struct outline o = {.b = b, .c = c, .left = left, .top = top, .width = width, .height = height};
	o.walked = calloc((size_t)b->columns, (size_t)b->rows);
	if (!o.walked)
		return -ENOMEM;
	cairo_new_path(c->cr);
	for (int y = 0; y < b->rows; y++)
		for (int x = 0; x < b->columns; x++)
			if (dark(b, x, y) && !dark(b, x, y - 1) &&
			    !o.walked[(size_t)y * (size_t)b->columns + (size_t)x])
				walk(&o, x, y);
	cairo_set_fill_rule(c->cr, CAIRO_FILL_RULE_WINDING);
	cairo_fill(c->cr);
	free(o.walked);
	return 0;
}

void barcode_draw(const struct barcode *b, struct canvas *c, int x_dots, int y_dots, int module_dots,
                  int height_dots)
{
	bool bars = b->rows == 1, turned = b->columns == 1;
	int across = turned ? 0 : b->quiet * module_dots, down = bars ? 0 : b->quiet * module_dots;
	int module_w = turned ? height_dots : module_dots, module_h = bars ? height_dots : module_dots;
	if (c->dry)
		return;
	int width = b->columns * module_w, height = b->rows * module_h;
	x_dots = canvas_left_dots(c, x_dots, width + 2 * across);
	int left = x_dots + across, top = y_dots + down;
	int r = draw_outline(b, c, left, top, module_w, module_h);
	if (r < 0)
		c->failed = r;
	struct mark m = {
	    .kind = MARK_CODE, .x_dots = left, .y_dots = top, .module_dots = module_dots, .turned = turned};
	m.x_mm = canvas_mm(c, left), m.y_mm = canvas_mm(c, top);
	m.width_mm = canvas_mm(c, width), m.height_mm = canvas_mm(c, height);
	strncpy(m.text, b->text, sizeof m.text - 1);
	canvas_mark(c, &m);
	m.kind = MARK_QUIET;
	m.x_mm = canvas_mm(c, x_dots), m.y_mm = canvas_mm(c, y_dots);
	m.width_mm = canvas_mm(c, width + 2 * across);
	m.height_mm = canvas_mm(c, height + 2 * down);
	canvas_mark(c, &m);
}
