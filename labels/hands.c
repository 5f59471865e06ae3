#include "labels/hands.h"

#define POINTS_PER_MM (72.0 / 25.4)
#define OUTLINE_MM 0.7

int hands_digit(bool feet, int row)
{
	int first = feet ? 11 : 1;
	return row < 5 ? first + 9 - row : first + row - 5;
}

struct finger {
	double x1, dy1, x2, dy2,
	    width; /* root and end of its middle line; dy from the row, towards the middle finger */
	const char *name;
};

/* From the thumb or great toe outwards, for the right side; millimetres for a pitch of 22. */
static const struct finger fingers[2][5] = {
    {{30, 30, 76, 0, 17, "thumb"},
     {54, 3, 86, 0, 15.5, "index"},
     {54, 0, 91, 0, 15.5, "middle"},
     {54, -2, 86, 0, 15, "ring"},
     {52, -6, 75, 0, 14, "little"}},
    {{66, 4, 84, 0, 19, "great (big)"},
     {66, 2, 86, 0, 15, "second"},
     {64, 0, 82, 0, 14.5, "third"},
     {60, -2, 77, 0, 14, "fourth"},
     {54, -5, 71, 0, 14, "little"}},
};

/* Back of the hand and of the foot: x, and y from the middle row, towards the thumb negative. */
static const double palm[][2] = {{-14, -7}, {8, -9},  {22, -16}, {38, -26}, {50, -28}, {57, -16}, {58, 0},
                                 {57, 20},  {52, 38}, {44, 44},  {32, 41},  {20, 33},  {8, 28},   {-14, 27}};
static const double sole[][2] = {{70, -46}, {74, -36}, {72, -12}, {68, 10},  {62, 30}, {54, 43},
                                 {42, 43},  {28, 34},  {16, 29},  {8, 23},   {3, 10},  {3, -3},
                                 {9, -12},  {20, -15}, {32, -22}, {44, -36}, {56, -48}};

static void capsule(struct canvas *c, double x1, double y1, double x2, double y2, double width_mm,
                    double grey)
{
	cairo_set_source_rgb(c->cr, grey, grey, grey);
	cairo_set_line_cap(c->cr, CAIRO_LINE_CAP_ROUND);
	canvas_line(c, x1, y1, x2, y2, width_mm);
	cairo_set_line_cap(c->cr, CAIRO_LINE_CAP_BUTT);
	cairo_set_source_rgb(c->cr, 0, 0, 0);
}

/* A smooth closed line through the points (Catmull-Rom, written as cubic curves). */
static void smooth(struct canvas *c, const double (*shape)[2], size_t count, double x, double y, double sign)
{
	const double p = POINTS_PER_MM;
	for (size_t i = 0; i < count; i++) {
		const double *a = shape[(i + count - 1) % count], *b = shape[i], *d = shape[(i + 1) % count];
		const double *e = shape[(i + 2) % count];
		double bx = x + b[0], by = y + sign * b[1], dx = x + d[0], dy = y + sign * d[1];
		if (i == 0)
			cairo_move_to(c->cr, bx * p, by * p);
		cairo_curve_to(c->cr, (bx + (d[0] - a[0]) / 6) * p, (by + sign * (d[1] - a[1]) / 6) * p,
		               (dx - (e[0] - b[0]) / 6) * p, (dy - sign * (e[1] - b[1]) / 6) * p, dx * p,
		               dy * p);
	}
	cairo_close_path(c->cr);
}

static void body(struct canvas *c, const double (*shape)[2], size_t count, double x, double y, double sign,
                 double grow_mm, double grey)
{
	cairo_new_path(c->cr);
	smooth(c, shape, count, x, y, sign);
	cairo_set_source_rgb(c->cr, grey, grey, grey);
	cairo_set_line_join(c->cr, CAIRO_LINE_JOIN_ROUND);
	cairo_set_line_width(c->cr, (6 + 2 * grow_mm) * POINTS_PER_MM);
	cairo_fill_preserve(c->cr);
	cairo_stroke(c->cr);
	cairo_set_line_join(c->cr, CAIRO_LINE_JOIN_MITER);
	cairo_set_source_rgb(c->cr, 0, 0, 0);
}

/* One hand or foot. All of it in black a line wider, then all of it in white, leaves the outline of the
 * whole. */
static void one(struct canvas *c, bool feet, double x, const double *tip_y, double sign, double *tip_x)
{
	double middle = tip_y[2];
	for (int pass = 0; pass < 2; pass++) {
		double grow = pass == 0 ? OUTLINE_MM : 0, grey = pass == 0 ? 0 : 1;
		/* The arm runs on beyond the picture; the white goes further so that no edge is left. */
		cairo_save(c->cr);
		cairo_rectangle(c->cr, (x - (feet ? 20 : pass)) * POINTS_PER_MM, 0, 140 * POINTS_PER_MM,
		                c->height_mm * POINTS_PER_MM);
		cairo_clip(c->cr);
		if (feet)
			body(c, sole, sizeof sole / sizeof *sole, x, middle, sign, grow, grey);
		else
			body(c, palm, sizeof palm / sizeof *palm, x, middle, sign, grow, grey);
		for (int i = 0; i < 5; i++) {
			const struct finger *f = &fingers[feet][i];
			capsule(c, x + f->x1, tip_y[i] + sign * f->dy1, x + f->x2, tip_y[i] + sign * f->dy2,
			        f->width + 2 * grow, grey);
		}
		cairo_restore(c->cr);
	}
	for (int i = 0; i < 5; i++) {
		const struct finger *f = &fingers[feet][i];
		struct style name = {.size_pt = 8, .align = ALIGN_RIGHT};
		double end_y = tip_y[i] + sign * f->dy2, r = f->width / 2;
		tip_x[i] = x + f->x2 + r + OUTLINE_MM;
		/* The nail says that this is the back. */
		capsule(c, x + f->x2 + r * 0.35, end_y - r * 0.28, x + f->x2 + r * 0.35, end_y + r * 0.28,
		        r * 0.75, 0);
		capsule(c, x + f->x2 + r * 0.35, end_y - r * 0.28, x + f->x2 + r * 0.35, end_y + r * 0.28,
		        r * 0.75 - 0.7, 1);
		double h = canvas_text_height(c, &name, 24, f->name);
		canvas_text(c, &name, x + f->x2 - 26, end_y - h / 2, 25, f->name);
	}
}

void hands_draw(struct canvas *c, bool feet, double x_mm, const double tip_y_mm[HANDS_DIGITS],
                double pitch_mm, double tip_x_mm[HANDS_DIGITS])
{
	double left_y[5], left_x[5];
	(void)pitch_mm;
	for (int i = 0; i < 5; i++)
		left_y[i] = tip_y_mm[4 - i];
	one(c, feet, x_mm, left_y, -1, left_x);
	one(c, feet, x_mm, tip_y_mm + 5, 1, tip_x_mm + 5);
	for (int i = 0; i < 5; i++)
		tip_x_mm[4 - i] = left_x[i];
}
