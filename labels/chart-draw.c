#include "labels/chart-draw.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define LEFT_MM 14.0  /* for the numbers of the axis */
#define RIGHT_MM 17.0 /* for what the lines are */
#define TOP_MM 3.0
#define BELOW_MM 9.0 /* for the days */
#define DAY_MM 19.0  /* what a day needs */
#define TICKS_MAX 12
#define LINE_NAME_MM 2.7 /* high */
#define LEAST_FACTOR                                                                                         \
	8.0 /* from foot to head of a logarithmic axis, so that a little does not look like much */

static const char *const axis_words[] = {"linear", "log", NULL};
static const char *const signal_words[] = {"none", "line", "run", NULL};

/* clang-format off */
#define THOUSANDTHS 2000000000
static const struct field point_fields[] = {
	TEXT("label", REQUIRED, 1, 20, "the day of its last case, or where its period begins"),
	INT("value", REQUIRED, 0, THOUSANDTHS, "in thousandths of the unit, as all values here"),
	INT("upper", OPTIONAL, 0, THOUSANDTHS, "left out: it has no such limit"),
	INT("lower", OPTIONAL, 0, THOUSANDTHS, ""),
	INT("n", REQUIRED, 0, 9999999, "how many cases or things are behind it"),
	WORD("signal", REQUIRED, signal_words, "line: beyond a limit; run: nine in a row on one side of the centre"),
	BOOL("running", REQUIRED, "an interval that is not over: drawn hollow"),
	END};
const struct field chart_fields[] = {
	TEXT("name", REQUIRED, 1, 40, "of the chart, for files: a-z and '-'"),
	TEXT("title", REQUIRED, 1, 100, ""),
	TEXT("unit", REQUIRED, 1, 40, "of its values"),
	WORD("axis", REQUIRED, axis_words, ""),
	INT("centre", OPTIONAL, 0, THOUSANDTHS, "left out: there were too few for limits"),
	OBJECTS("points", REQUIRED, 0, CHART_POINTS_MAX, point_fields, "in their order; none: nothing is drawn"),
	TEXTS("says", REQUIRED, 0, 12, 600, "what stands under it"),
	END};
/* clang-format on */

struct plot {
	struct canvas *c;
	const json_t *points;
	double x, y, width, height; /* of the plane itself */
	double low, high;           /* values at its foot and head */
	int n, logarithmic;
};

static double value_of(const json_t *x, const char *key)
{
	const json_t *v = json_object_get(x, key);
	return v ? (double)json_integer_value(v) / 1000 : NAN;
}

static double x_of(const struct plot *p, int i)
{
	return p->x + p->width * (i + 0.5) / p->n;
}

static double y_of(const struct plot *p, double value)
{
	double part = p->logarithmic ? log(value / p->low) / log(p->high / p->low)
	                             : (value - p->low) / (p->high - p->low);
	return p->y + p->height * (1 - fmin(fmax(part, 0), 1));
}

/* --- the axis ---------------------------------------------------------------------------------------------- */

static void widen(double value, double *low, double *high)
{
	if (isnan(value) || value <= 0)
		return;
	*low = value < *low ? value : *low;
	*high = value > *high ? value : *high;
}

/* A chart of amounts begins at 0, so that a high point is as high as it is. */
static void scale(struct plot *p, const json_t *chart)
{
	size_t i;
	const json_t *x;
	double low = INFINITY, high = 0;
	json_array_foreach(p->points, i, x)
	{
		widen(value_of(x, "value"), &low, &high);
		widen(value_of(x, "upper"), &low, &high);
		widen(value_of(x, "lower"), &low, &high);
	}
	widen(value_of(chart, "centre"), &low, &high);
	low = isfinite(low) ? low : 1;
	high = high > 0 ? high : 1;
	p->low = 0;
	p->high = high * 1.1;
	if (!p->logarithmic)
		return;
	double least = sqrt(LEAST_FACTOR / (high / low)), more = least > 1.25 ? least : 1.25;
	p->low = low / more;
	p->high = high * more;
}

/* Round values within the plane, at most TICKS_MAX. */
static int ticks(const struct plot *p, double *out)
{
	static const double steps[] = {1, 2, 5};
	int n = 0;
	if (p->logarithmic) {
		for (int power = (int)floor(log10(p->low)); power <= (int)ceil(log10(p->high)); power++)
			for (int i = 0; i < 3 && n < TICKS_MAX; i++) {
				double v = steps[i] * pow(10, power);
				if (v >= p->low && v <= p->high)
					out[n++] = v;
			}
		return n;
	}
	double step = pow(10, floor(log10(p->high / 4)));
	for (int i = 0; p->high / step > 6 && i < 3; i++)
		step *= i == 1 ? 2.5 : 2;
	for (double v = 0; v <= p->high && n < TICKS_MAX; v += step)
		out[n++] = v;
	return n;
}

/* The point of a number as the language has it, in place. */
static void decimal(const struct plot *p, char *number)
{
	char *dot = strchr(number, '.');
	if (dot)
		*dot = *canvas_said(p->c, SAY_RW_DECIMAL);
}

static void draw_axis(const struct plot *p, const char *unit)
{
	struct style numbers = {.size_pt = 7, .align = ALIGN_RIGHT}, name = {.size_pt = 7};
	double at[TICKS_MAX];
	char text[24];
	int n = ticks(p, at);
	for (int i = 0; i < n; i++) {
		double y = y_of(p, at[i]);
		canvas_line(p->c, p->x - 1, y, p->x, y, 0.2);
		snprintf(text, sizeof text, "%g", at[i]);
		decimal(p, text);
		canvas_text(p->c, &numbers, p->x - LEFT_MM, y - 1.5, LEFT_MM - 1.6, text);
	}
	canvas_line(p->c, p->x, p->y, p->x, p->y + p->height, 0.25);
	canvas_line(p->c, p->x, p->y + p->height, p->x + p->width, p->y + p->height, 0.25);
	canvas_text(p->c, &name, p->x - LEFT_MM, p->y - TOP_MM - 1.2, 60, unit);
}

/* As many days as find room, the first and the last among them. */
static void draw_days(const struct plot *p)
{
	struct style s = {.size_pt = 6.5, .align = ALIGN_CENTRE};
	int room = (int)(p->width / DAY_MM), every = room > 0 ? (p->n + room - 1) / room : p->n;
	for (int i = 0; i < p->n; i++) {
		double x = x_of(p, i);
		int last = i == p->n - 1;
		canvas_line(p->c, x, p->y + p->height, x,
		            p->y + p->height + (last || i % every == 0 ? 1.2 : 0.6), 0.15);
		if (last || (i % every == 0 && x_of(p, p->n - 1) - x >= DAY_MM))
			canvas_text(p->c, &s, x - DAY_MM / 2, p->y + p->height + 1.6, DAY_MM,
			            json_text(json_array_get(p->points, (size_t)i), "label"));
	}
}

/* --- lines and points ------------------------------------------------------------------------------------------ */

/* A limit at each point, joined by steps where it changes. Its value at the right end. */
static double draw_limit(const struct plot *p, const char *key)
{
	double last = NAN, half = p->width / p->n / 2;
	for (int i = 0; i < p->n; i++) {
		const json_t *point = json_array_get(p->points, (size_t)i);
		double v = value_of(point, key), x = x_of(p, i);
		if (isnan(v))
			continue;
		if (!isnan(last) && last != v)
			canvas_dashed(p->c, x - half, y_of(p, last), x - half, y_of(p, v));
		canvas_dashed(p->c, x - half, y_of(p, v), x + half, y_of(p, v));
		last = v;
	}
	return last;
}

static double draw_centre(const struct plot *p, const json_t *chart)
{
	double v = value_of(chart, "centre");
	if (!isnan(v))
		canvas_line(p->c, p->x, y_of(p, v), p->x + p->width, y_of(p, v), 0.15);
	return v;
}

/* What each line is, at its right end: from below, so that none is on another or on the days under the axis. */
static void draw_lines(const struct plot *p, const json_t *chart)
{
	const struct {
		enum saying name;
		double value, above_mm;
	} lines[] = {{SAY_RW_CHART_LOWER, draw_limit(p, "lower"), -0.8},
	             {SAY_RW_CHART_CENTRE, draw_centre(p, chart), 1.4},
	             {SAY_RW_CHART_UPPER, draw_limit(p, "upper"), 3.6}};
	struct style s = {.size_pt = 6.5};
	double below = p->y + p->height;
	char text[80], number[24];
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		if (isnan(lines[i].value))
			continue;
		below = fmin(y_of(p, lines[i].value) - lines[i].above_mm, below - LINE_NAME_MM);
		snprintf(number, sizeof number, "%.3g", lines[i].value);
		decimal(p, number);
		snprintf(text, sizeof text, "%s %s", canvas_said(p->c, lines[i].name), number);
		canvas_text(p->c, &s, p->x + p->width + 1, below, RIGHT_MM - 1, text);
	}
}

static double pt(double mm)
{
	return mm * 72 / 25.4;
}

static void draw_point(const struct plot *p, int i)
{
	const json_t *point = json_array_get(p->points, (size_t)i);
	const char *signal = json_text(point, "signal");
	struct style s = {.size_pt = 8, .bold = true};
	double x = x_of(p, i), y = y_of(p, value_of(point, "value")), at = canvas_left(p->c, x, 0);
	cairo_t *cr = p->c->cr;
	if (p->c->dry)
		return;
	cairo_new_path(cr);
	cairo_arc(cr, pt(at), pt(y), pt(json_truth(point, "running") ? 1.1 : 0.8), 0, 2 * M_PI);
	if (json_truth(point, "running")) {
		cairo_set_source_rgb(cr, 1, 1, 1);
		cairo_fill_preserve(cr);
		cairo_set_source_rgb(cr, 0, 0, 0);
		cairo_set_line_width(cr, pt(0.3));
		cairo_stroke(cr);
	} else {
		cairo_fill(cr);
	}
	if (strcmp(signal, "none") == 0)
		return;
	cairo_set_line_width(cr, pt(0.3));
	cairo_arc(cr, pt(at), pt(y), pt(1.7), 0, 2 * M_PI);
	cairo_stroke(cr);
	canvas_clear(p->c, x + 1.7, y - 4.1, 2.6, 3.6); /* whatever line runs there, the rule is read */
	canvas_text(p->c, &s, x + 1.8, y - 4, 6, strcmp(signal, "line") == 0 ? "L" : "R");
}

static void draw_points(const struct plot *p)
{
	for (int i = 1; i < p->n; i++) {
		const json_t *from = json_array_get(p->points, (size_t)i - 1),
		             *to = json_array_get(p->points, (size_t)i);
		double y1 = y_of(p, value_of(from, "value")), y2 = y_of(p, value_of(to, "value"));
		if (json_truth(to, "running"))
			canvas_dashed(p->c, x_of(p, i - 1), y1, x_of(p, i), y2);
		else
			canvas_line(p->c, x_of(p, i - 1), y1, x_of(p, i), y2, 0.2);
	}
	for (int i = 0; i < p->n; i++)
		draw_point(p, i);
}

void chart_draw(struct canvas *c, const json_t *chart, double x_mm, double y_mm, double width_mm)
{
	struct plot p = {.c = c,
	                 .points = json_object_get(chart, "points"),
	                 .x = x_mm + LEFT_MM,
	                 .y = y_mm + TOP_MM + 2,
	                 .width = width_mm - LEFT_MM - RIGHT_MM,
	                 .height = CHART_HEIGHT_MM - TOP_MM - BELOW_MM - 2,
	                 .n = (int)json_array_size(json_object_get(chart, "points")),
	                 .logarithmic = strcmp(json_text(chart, "axis"), "log") == 0};
	if (!p.n)
		return;
	scale(&p, chart);
	draw_axis(&p, json_text(chart, "unit"));
	draw_days(&p);
	draw_lines(&p, chart);
	draw_points(&p);
}
