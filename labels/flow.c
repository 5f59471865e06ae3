#include "labels/flow.h"

#include <stdio.h>
#include <string.h>

#define CELL_GAP_MM 1.6

#define STYLES(b, s)                                                                                         \
	.body = {.size_pt = (b)}, .strong = {.size_pt = (b), .bold = true}, .small = {.size_pt = (s)},       \
	.small_strong = {.size_pt = (s), .bold = true}, .label = {.size_pt = (s)},                           \
	.section = {.size_pt = (s), .bold = true, .spacing_pt = 0.6},                                        \
	.code = {.size_pt = (s), .mono = true, .align = ALIGN_CENTRE}

/* 6.5 point DejaVu Sans has capitals of 1.67 mm, the least that anything on a slip is set in. */
static const struct look looks[] = {
    {.name = "roll80",
     .width_mm = 80,
     .height_mm = 2000,
     .roll = true,
     .margin_mm = 4,
     .label_mm = 19,
     STYLES(8, 7),
     .heading_pt = 17,
     .outcome_pt = 12.5,
     .write_mm = 8,
     .patient_mm = 34},
    {.name = "a6",
     .width_mm = 105,
     .height_mm = 148,
     .margin_mm = 7,
     .label_mm = 21,
     STYLES(7.5, 6.5),
     .heading_pt = 19,
     .outcome_pt = 12,
     .write_mm = 7.5,
     .patient_mm = 28},
    {.name = "a5",
     .width_mm = 148,
     .height_mm = 210,
     .wide = true,
     .margin_mm = 10,
     .label_mm = 22,
     STYLES(8.5, 7),
     .heading_pt = 25,
     .outcome_pt = 14.5,
     .write_mm = 8,
     .patient_mm = 33},
    {.name = "a4",
     .width_mm = 210,
     .height_mm = 297,
     .wide = true,
     .margin_mm = 15,
     .label_mm = 27,
     STYLES(10, 8.5),
     .heading_pt = 32,
     .outcome_pt = 18,
     .write_mm = 9,
     .patient_mm = 38},
};

const struct look *look_of(const char *paper)
{
	for (size_t i = 0; i < sizeof looks / sizeof *looks; i++)
		if (strcmp(looks[i].name, paper) == 0)
			return &looks[i];
	return NULL;
}

static void section_rule(struct flow *f, const char *title)
{
	double h = canvas_text(f->c, &f->look->section, f->x, f->y, f->width, title);
	canvas_line(f->c, f->x, f->y + h + 0.5, f->x + f->width, f->y + h + 0.5, 0.35);
	f->y += h + 1.5;
}

void flow_page(struct flow *f)
{
	const struct look *l = f->look;
	f->page++;
	double height = l->roll && f->page == f->pages ? f->last_mm : l->height_mm;
	canvas_page(f->c, l->width_mm, height);
	f->begin_page(f, f->context);
	if (f->section) {
		char again[120];
		snprintf(again, sizeof again, "%.90s, CONTINUED", f->section);
		section_rule(f, again);
	}
}

void flow_need(struct flow *f, double mm)
{
	if (f->y + mm > f->bottom)
		flow_page(f);
}

void flow_space(struct flow *f, double mm)
{
	f->y += mm;
}

void flow_section(struct flow *f, const char *title, double first_mm)
{
	f->section = NULL;
	flow_space(f, f->look->body.size_pt * 0.38);
	flow_need(f, canvas_text_height(f->c, &f->look->section, f->width, title) + 1.5 + first_mm);
	section_rule(f, title);
	f->section = title;
}

void flow_section_end(struct flow *f)
{
	f->section = NULL;
}

void flow_text(struct flow *f, const struct style *s, const char *text)
{
	flow_need(f, canvas_text_height(f->c, s, f->width, text));
	f->y += canvas_text(f->c, s, f->x, f->y, f->width, text);
}

static double value_width(const struct flow *f)
{
	return f->width - f->look->label_mm;
}

double flow_pair_height(struct flow *f, const char *label, const struct style *s, const char *value)
{
	double a = canvas_text_height(f->c, &f->look->label, f->look->label_mm - CELL_GAP_MM, label);
	double b = canvas_text_height(f->c, s, value_width(f), value);
	return (a > b ? a : b) + 0.5;
}

void flow_pair(struct flow *f, const char *label, const struct style *s, const char *value)
{
	double h = flow_pair_height(f, label, s, value);
	flow_need(f, h);
	/* The label is smaller: set it on the same baseline. */
	double drop = (s->size_pt - f->look->label.size_pt) * 0.93 * 25.4 / 72;
	canvas_text(f->c, &f->look->label, f->x, f->y + (drop > 0 ? drop : 0),
	            f->look->label_mm - CELL_GAP_MM, label);
	canvas_text(f->c, s, f->x + f->look->label_mm, f->y, value_width(f), value);
	f->y += h;
}

void flow_blank(struct flow *f, const char *label, double from, double part)
{
	const struct style *s = &f->look->label;
	double left = f->x + from * f->width,
	       right = f->x + (from + part) * f->width - (from + part < 0.99 ? 3 : 0);
	double base = f->y + f->look->write_mm - 1.2;
	double h = canvas_text_height(f->c, s, -1, label);
	canvas_text(f->c, s, left, base - h + 0.7, -1, label);
	double w = *label ? canvas_text_width(f->c, s, label) + 1.5 : 0;
	canvas_line(f->c, left + w, base, right, base, 0.2);
}

double flow_cells_height(struct flow *f, const struct cell *cells, int count)
{
	double height = 0;
	for (int i = 0; i < count; i++) {
		double gap = i == count - 1 ? 0 : CELL_GAP_MM;
		double h = canvas_text_height(f->c, cells[i].style, cells[i].width_mm - gap, cells[i].text);
		height = h > height ? h : height;
	}
	return height + 0.6;
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
