#include "labels/hands.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>

#define BOX_WIDTH 100.0
#define BOX_HEIGHT 124.0
#define BODY_LINE 4.0
#define OUTLINE 2.6   /* both edges together */
#define BLACK_AT 0.32 /* of the digit's length, where the tourniquet lies */
#define NAIL_AT 1.06

struct digit_line {
	double x1, y1, x2, y2, width; /* from root to tip */
};

/* Right side, thumb or great toe first. */
static const struct digit_line fingers[] = {{40, 98, 11, 63, 16.5},
                                            {39, 68, 30, 20, 14.5},
                                            {54.5, 64, 52.5, 9, 15},
                                            {70, 66, 75, 17, 14.5},
                                            {84, 74, 97, 39, 12.5}};
static const struct digit_line toes[] = {{31, 44, 29, 25, 23},
                                         {51, 39, 50, 21, 14.5},
                                         {65, 43, 67, 28, 13.5},
                                         {77, 50, 81, 37, 13},
                                         {87, 60, 93, 49, 12.5}};
/* clang-format off */
static const char palm[] = "M32 72C36 61 48 58 60 58C72 58 86 62 90 76C92 86 88 99 83 109C80 115 79 121 79 136L43 136C43 123 41 117 36 109C29 99 29 84 32 72Z";
static const char sole[] = "M19 48C26 38 42 38 55 40C72 42 90 52 94 66C97 78 88 92 84 104C81 114 80 122 80 134L36 134C37 118 34 106 27 92C20 78 15 60 19 48Z";
/* clang-format on */

static bool is_foot(enum limb limb)
{
	return limb == RIGHT_FOOT || limb == LEFT_FOOT;
}

static bool is_left(enum limb limb)
{
	return limb == LEFT_HAND || limb == LEFT_FOOT;
}

int limb_digit(enum limb limb, int place)
{
	return 1 + 5 * (int)limb + place;
}

int limb_order(enum limb limb, int place)
{
	return is_left(limb) ? 4 - place : place;
}

/* The path of the body: capital letters of SVG with their numbers, as it stands in the page's own drawing. */
static void trace_path(cairo_t *cr, const char *p)
{
	while (*p) {
		char what = *p++, *end;
		double n[6] = {0};
		int count = what == 'C' ? 6 : what == 'Z' ? 0 : 2;
		for (int i = 0; i < count; i++, p = end)
			n[i] = strtod(p, &end);
		if (what == 'M')
			cairo_move_to(cr, n[0], n[1]);
		else if (what == 'L')
			cairo_line_to(cr, n[0], n[1]);
		else if (what == 'C')
			cairo_curve_to(cr, n[0], n[1], n[2], n[3], n[4], n[5]);
		else
			cairo_close_path(cr);
	}
}

static void grey(cairo_t *cr, double level)
{
	cairo_set_source_rgb(cr, level, level, level);
}

static void stroke(cairo_t *cr, double x1, double y1, double x2, double y2, double width)
{
	cairo_set_line_width(cr, width);
	cairo_move_to(cr, x1, y1);
	cairo_line_to(cr, x2, y2);
	cairo_stroke(cr);
}

static double along_x(const struct digit_line *d, double part)
{
	return d->x1 + (d->x2 - d->x1) * part;
}

static double along_y(const struct digit_line *d, double part)
{
	return d->y1 + (d->y2 - d->y1) * part;
}

/* All of it in black a line wider, then all of it in white, leaves the outline of the whole. */
static void draw_whole(cairo_t *cr, const char *body, const struct digit_line *lines)
{
	for (int pass = 0; pass < 2; pass++) {
		double more = pass == 0 ? OUTLINE : 0;
		grey(cr, pass);
		trace_path(cr, body);
		cairo_set_line_width(cr, BODY_LINE + more);
		cairo_fill_preserve(cr);
		cairo_stroke(cr);
		for (int i = 0; i < 5; i++)
			stroke(cr, lines[i].x1, lines[i].y1, lines[i].x2, lines[i].y2, lines[i].width + more);
	}
}

static void draw_black(cairo_t *cr, const struct digit_line *d)
{
	double from = BLACK_AT + d->width / 2 / hypot(d->x2 - d->x1, d->y2 - d->y1);
	from = from > 0.98 ? 0.98 : from;
	grey(cr, 0);
	stroke(cr, along_x(d, from), along_y(d, from), d->x2, d->y2, d->width);
}

static void draw_nail(cairo_t *cr, const struct digit_line *d, bool on_black)
{
	grey(cr, on_black ? 1 : 0);
	cairo_set_line_width(cr, 1.2);
	cairo_new_path(cr);
	cairo_arc(cr, along_x(d, NAIL_AT), along_y(d, NAIL_AT), d->width * 0.24, 0, 2 * M_PI);
	cairo_stroke(cr);
}

double limb_draw(struct canvas *c, enum limb limb, int place, double x_mm, double y_mm, double width_mm)
{
	const struct digit_line *lines = is_foot(limb) ? toes : fingers;
	const double point = 72.0 / 25.4, scale = width_mm / BOX_WIDTH;
	if (c->dry)
		return BOX_HEIGHT * scale;
	cairo_save(c->cr);
	cairo_translate(c->cr, canvas_left(c, x_mm, width_mm) * point, y_mm * point);
	cairo_scale(c->cr, scale * point, scale * point);
	if (is_left(limb)) {
		cairo_translate(c->cr, BOX_WIDTH, 0);
		cairo_scale(c->cr, -1, 1);
	}
	/* The arm runs on beyond the picture. */
	cairo_rectangle(c->cr, -0.2 * BOX_WIDTH, -0.2 * BOX_HEIGHT, 1.4 * BOX_WIDTH, 1.2 * BOX_HEIGHT);
	cairo_clip(c->cr);
	cairo_set_line_cap(c->cr, CAIRO_LINE_CAP_ROUND);
	cairo_set_line_join(c->cr, CAIRO_LINE_JOIN_ROUND);
	draw_whole(c->cr, is_foot(limb) ? sole : palm, lines);
	if (place >= 0)
		draw_black(c->cr, &lines[place]);
	for (int i = 0; i < 5; i++)
		draw_nail(c->cr, &lines[i], i == place);
	cairo_restore(c->cr);
	return BOX_HEIGHT * scale;
}
