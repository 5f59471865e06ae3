#include "labels/flow.h"

#include <stdio.h>
#include <string.h>

#define CELL_GAP_MM 2.0

#define CONDENSED(pt, ...)                                                                                   \
	{                                                                                                    \
		.size_pt = (pt), .condensed = true, __VA_ARGS__                                              \
	}
#define STYLES(first_pt, second_pt, place_pt, deed_pt, shout_pt, body_pt, small_pt)                          \
	.first = CONDENSED(first_pt, .bold = true, .leading = 0.86),                                         \
	.second = CONDENSED(second_pt, .leading = 0.92), .place = CONDENSED(place_pt, .bold = true),         \
	.deed = CONDENSED(deed_pt, .bold = true, .leading = 0.9),                                            \
	.shout = CONDENSED(shout_pt, .bold = true, .white = true, .spacing_pt = 0.6),                        \
	.body = CONDENSED(body_pt, .leading = 0.95),                                                         \
	.strong = CONDENSED(body_pt, .bold = true, .leading = 0.95),                                         \
	.small = CONDENSED(small_pt, .leading = 0.95),                                                       \
	.small_strong = CONDENSED(small_pt, .bold = true, .leading = 0.95),                                  \
	.code = {.size_pt = (body_pt), .mono = true, .bold = true}

/* 7 point DejaVu Sans has capitals of 1.8 mm, the least that anything on a slip is set in. */
static const struct look looks[] = {
    {.name = "roll80",
     .width_mm = 80,
     .height_mm = 2000,
     .roll = true,
     .margin_mm = 4,
     .label_mm = 17,
     .amiss_mm = 17,
     STYLES(16, 9.2, 11.5, 13.5, 18, 8, 7),
     .write_mm = 7.5,
     .patient_width_mm = 70,
     .patient_height_mm = 25},
    {.name = "a6",
     .width_mm = 105,
     .height_mm = 148,
     .margin_mm = 7.5,
     .label_mm = 19,
     .amiss_mm = 18,
     STYLES(16, 10, 11.5, 14, 19, 8, 7),
     .write_mm = 9,
     .patient_width_mm = 70,
     .patient_height_mm = 30},
    {.name = "a5",
     .width_mm = 148,
     .height_mm = 210,
     .wide = true,
     .margin_mm = 9,
     .label_mm = 24,
     .amiss_mm = 21,
     STYLES(21, 12, 15, 18, 23, 9, 7.5),
     .write_mm = 12,
     .patient_width_mm = 70,
     .patient_height_mm = 33},
    {.name = "a4",
     .width_mm = 210,
     .height_mm = 297,
     .wide = true,
     .margin_mm = 14,
     .label_mm = 30,
     .amiss_mm = 28,
     STYLES(27, 15, 19, 22, 30, 10.5, 8.5),
     .write_mm = 14,
     .patient_width_mm = 90,
     .patient_height_mm = 40},
};

const struct look *look_of(const char *paper)
{
	for (size_t i = 0; i < sizeof looks / sizeof *looks; i++)
		if (strcmp(looks[i].name, paper) == 0)
			return &looks[i];
	return NULL;
}

void flow_page(struct flow *f)
{
	const struct look *l = f->look;
	f->page++;
	double height = l->roll && f->page == f->pages ? f->last_mm : l->height_mm;
	canvas_page(f->c, l->width_mm, height);
	f->begin_page(f, f->context);
	if (f->running) {
		f->y += canvas_text(f->c, &l->small_strong, f->x, f->y, f->width, f->running);
		flow_line(f);
	}
}

void flow_need(struct flow *f, double mm)
{
	if (f->y + mm <= f->bottom)
		return;
	flow_page(f);
	f->over |= f->y + mm > f->bottom;
}

void flow_space(struct flow *f, double mm)
{
	f->y += mm;
}

void flow_rule(struct flow *f)
{
	f->y += f->look->wide ? 1.2 : 0.7;
	canvas_rule(f->c, f->x, f->y, f->width);
	f->y += 1.2 + (f->look->wide ? 1.6 : 1);
}

void flow_line(struct flow *f)
{
	f->y += 0.8;
	canvas_line(f->c, f->x, f->y, f->x + f->width, f->y, 0.2);
	f->y += 1;
}

void flow_section(struct flow *f, const char *title, double first_mm)
{
	f->running = NULL;
	flow_space(f, f->look->body.size_pt * 0.38);
	flow_need(f, canvas_text_height(f->c, &f->look->strong, f->width, title) + 1.8 + first_mm);
	flow_text(f, &f->look->strong, title);
	flow_line(f);
	f->running = title;
}

void flow_section_end(struct flow *f)
{
	f->running = NULL;
}

void flow_text(struct flow *f, const struct style *s, const char *text)
{
	flow_need(f, canvas_text_height(f->c, s, f->width, text));
	f->y += canvas_text(f->c, s, f->x, f->y, f->width, text);
}

/* A long label is broken, and leaves some of the line. */
static double label_width(struct flow *f, const char *label, double span)
{
	double w = *label ? canvas_text_width(f->c, &f->look->body, label) + 0.2 : 0, most = span * 0.6;
	return w < most || span <= 0 ? w : most;
}

double flow_blank_height(struct flow *f, const char *label, double span, double row)
{
	double h = canvas_text_height(f->c, &f->look->body, label_width(f, label, span), label);
	return h + 1 > row ? h + 1 : row;
}

void flow_blank(struct flow *f, const char *label, double left, double right, double base)
{
	const struct style *s = &f->look->body;
	double w = label_width(f, label, right - left), h = canvas_text_height(f->c, s, w, label);
	double line = canvas_text_height(f->c, s, -1, "x");
	canvas_text(f->c, s, left, base - h + line * 0.18, w, label);
	canvas_line(f->c, left + w + (w > 0 ? 1.5 : 0), base, right, base, 0.25);
}

double flow_cells_height(struct flow *f, const struct cell *cells, int count)
{
	double height = 0;
	for (int i = 0; i < count; i++) {
		double gap = i == count - 1 ? 0 : CELL_GAP_MM;
		double h = canvas_text_height(f->c, cells[i].style, cells[i].width_mm - gap, cells[i].text);
		height = h > height ? h : height;
	}
	return height + 0.8;
}

void flow_cells(struct flow *f, const struct cell *cells, int count)
{
	double h = flow_cells_height(f, cells, count), x = f->x;
	flow_need(f, h);
	for (int i = 0; i < count; i++) {
		double gap = i == count - 1 ? 0 : CELL_GAP_MM;
		canvas_text(f->c, cells[i].style, x, f->y, cells[i].width_mm - gap, cells[i].text);
		x += cells[i].width_mm;
	}
	f->y += h;
}
