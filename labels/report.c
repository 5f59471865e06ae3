/* A report: sections of sentences, figures, tables and charts, on as many pages of A4 as it needs. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "labels/chart-draw.h"
#include "labels/flow.h"
#include "labels/sheets.h"

#define HEADS_MAX 10

/* clang-format off */
static const struct field figure_fields[] = {
	TEXT("name", REQUIRED, 1, 40, "for programs; the same in every report"),
	TEXT("label", REQUIRED, 1, 120, ""),
	TEXT("value", REQUIRED, 1, 300, "as people read it"),
	INT("x", OPTIONAL, 0, 2000000000, "the number, or x of n"),
	INT("n", OPTIONAL, 0, 2000000000, ""),
	END};
static const struct field row_fields[] = {
	TEXTS("cells", REQUIRED, 1, HEADS_MAX, 200, "one for each head"),
	END};
static const struct field table_fields[] = {
	TEXT("name", REQUIRED, 1, 40, ""),
	TEXTS("heads", REQUIRED, 1, HEADS_MAX, 60, ""),
	OBJECTS("rows", REQUIRED, 0, 400, row_fields, ""),
	END};
static const struct field section_fields[] = {
	TEXT("name", REQUIRED, 1, 40, ""),
	TEXT("title", REQUIRED, 1, 80, ""),
	TEXTS("says", REQUIRED, 0, 60, 600, "sentences in front of the figures"),
	OBJECTS("figures", REQUIRED, 0, 40, figure_fields, ""),
	OBJECTS("tables", REQUIRED, 0, 6, table_fields, ""),
	OBJECTS("charts", REQUIRED, 0, 6, chart_fields, ""),
	END};
static const struct field fields[] = {
	ALL_KINDS,
	WORD("paper", OPTIONAL, schema_a4_only, ""),
	TEXT("title", REQUIRED, 1, 80, ""),
	TEXT("period", REQUIRED, 1, 120, "from when to when, and of which room"),
	TEXTS("about", REQUIRED, 0, 12, 600, "what it was made of, and what it is not"),
	OBJECTS("sections", REQUIRED, 1, 20, section_fields, ""),
	END};
/* clang-format on */

#define HEADS_NEED_MM 12.0 /* and the first row below them */

struct report {
	struct flow flow;
	const json_t *document;
	const json_t *heads; /* of the table that is drawn: where it goes on, they stand again */
};

static void draw_row(struct flow *f, const struct style *s, const json_t *texts)
{
	struct cell cells[HEADS_MAX];
	int n = (int)json_array_size(texts);
	/* The first column names what the row is about. */
	double first = n > 2 ? 0.26 : 0.7, rest = n > 1 ? (1 - first) / (n - 1) : 0;
	for (int i = 0; i < n; i++)
		cells[i] = (struct cell){s, json_string_value(json_array_get(texts, (size_t)i)),
		                         f->width * (n == 1 ? 1
		                                     : i    ? rest
		                                            : first)};
	flow_cells(f, cells, n);
}

static void draw_heads(struct flow *f, const json_t *heads)
{
	draw_row(f, &f->look->small_strong, heads);
	canvas_line(f->c, f->x, f->y, f->x + f->width, f->y, 0.2);
	flow_space(f, 0.6);
}

static void begin_page(struct flow *f, void *context)
{
	const struct report *r = context;
	const struct look *l = f->look;
	double top = l->margin_mm;
	char text[80], when[20];
	struct style right = l->small, foot = l->small;
	right.align = ALIGN_RIGHT;
	foot.align = ALIGN_CENTRE;
	canvas_text(f->c, &l->small, f->x, top, f->width * 0.75, json_text(r->document, "period"));
	canvas_say(f->c, SAY(SLIP_P_PAGE, .page = f->page, .pages = f->pages ? f->pages : 99), text,
	           sizeof text);
	top += canvas_text(f->c, &right, f->x + f->width * 0.75, top, f->width * 0.25, text) + 1;
	canvas_line(f->c, f->x, top, f->x + f->width, top, 0.35);
	snprintf(when, sizeof when, "%.10s %.5s", json_text(r->document, "time"),
	         json_text(r->document, "time") + 11);
	canvas_say(f->c, SAY(RW_MADE, .words = when), text, sizeof text);
	f->bottom = f->c->height_mm - l->margin_mm - 5;
	canvas_text(f->c, &foot, f->x, f->bottom + 1.5, f->width, text);
	f->y = top + 2;
	if (r->heads)
		draw_heads(f, r->heads);
}

static void draw_texts(struct flow *f, const struct style *s, const json_t *texts)
{
	size_t i;
	const json_t *x;
	json_array_foreach(texts, i, x)
	{
		flow_text(f, s, json_string_value(x));
		flow_space(f, 0.8);
	}
}

static void draw_figures(struct flow *f, const json_t *figures)
{
	size_t i;
	const json_t *x;
	json_array_foreach(figures, i, x)
	{
		const struct cell cells[] = {
		    {&f->look->body, json_text(x, "label"), f->width * 0.5},
		    {&f->look->strong, json_text(x, "value"), f->width * 0.5},
		};
		flow_cells(f, cells, 2);
	}
	flow_space(f, json_array_size(figures) ? 1.5 : 0);
}

static void draw_table(struct report *r, const json_t *table)
{
	struct flow *f = &r->flow;
	const json_t *heads = json_object_get(table, "heads"), *x;
	size_t i;
	flow_need(f, HEADS_NEED_MM);
	draw_heads(f, heads);
	r->heads = heads;
	json_array_foreach(json_object_get(table, "rows"), i, x)
	    draw_row(f, &f->look->small, json_object_get(x, "cells"));
	r->heads = NULL;
	flow_space(f, 2);
}

/* Title, drawing and what stands under it are kept together. */
static void draw_chart(struct flow *f, const json_t *chart)
{
	int drawn = json_array_size(json_object_get(chart, "points")) > 0;
	double need = canvas_text_height(f->c, &f->look->strong, f->width, json_text(chart, "title")) + 1;
	size_t i;
	const json_t *x;
	json_array_foreach(json_object_get(chart, "says"), i, x) need +=
	    canvas_text_height(f->c, &f->look->small, f->width, json_string_value(x)) + 0.8;
	flow_need(f, need + (drawn ? CHART_HEIGHT_MM : 0));
	flow_text(f, &f->look->strong, json_text(chart, "title"));
	flow_space(f, 1);
	if (drawn) {
		canvas_picture(f->c, f->x, f->width);
		chart_draw(f->c, chart, f->x, f->y, f->width);
		canvas_picture_end(f->c);
		flow_space(f, CHART_HEIGHT_MM);
	}
	draw_texts(f, &f->look->small, json_object_get(chart, "says"));
	flow_space(f, 2);
}

static void draw_section(struct report *r, const json_t *section)
{
	struct flow *f = &r->flow;
	size_t i;
	const json_t *x;
	flow_section(f, json_text(section, "title"), 12);
	draw_texts(f, &f->look->small, json_object_get(section, "says"));
	draw_figures(f, json_object_get(section, "figures"));
	json_array_foreach(json_object_get(section, "tables"), i, x) draw_table(r, x);
	json_array_foreach(json_object_get(section, "charts"), i, x) draw_chart(f, x);
	flow_section_end(f);
	flow_space(f, 2);
}

static void draw_all(struct report *r)
{
	struct flow *f = &r->flow;
	struct style title = {.size_pt = 18, .bold = true};
	size_t i;
	const json_t *x;
	flow_page(f);
	flow_text(f, &title, json_text(r->document, "title"));
	flow_text(f, &f->look->strong, json_text(r->document, "site"));
	flow_text(f, &f->look->strong, json_text(r->document, "period"));
	flow_space(f, 2);
	draw_texts(f, &f->look->small, json_object_get(r->document, "about"));
	json_array_foreach(json_object_get(r->document, "sections"), i, x) draw_section(r, x);
}

static int report_draw(struct canvas *c, const json_t *document, struct error *e)
{
	const struct look *l = look_of("a4");
	struct report r = {.document = document};
	(void)e;
	for (int dry = 1; dry >= 0; dry--) {
		int pages = r.flow.page;
		r.flow = (struct flow){.c = c,
		                       .look = l,
		                       .x = l->margin_mm,
		                       .width = l->width_mm - 2 * l->margin_mm,
		                       .pages = pages,
		                       .begin_page = begin_page,
		                       .context = &r};
		c->dry = dry;
		c->page = 0;
		draw_all(&r);
	}
	return 0;
}

/* It becomes the name of a file. */
static int check_name(const char *name, struct error *e)
{
	if (strspn(name, "abcdefghijklmnopqrstuvwxyz-") == strlen(name))
		return 0;
	return error_set(e, -EINVAL, "document field 'charts': the name '%.40s' holds more than a-z and '-'",
	                 name);
}

static int check_charts(const json_t *section, struct error *e)
{
	size_t i;
	const json_t *c;
	int n = 0;
	json_array_foreach(json_object_get(section, "charts"), i, c) n =
	    n < 0 ? n : check_name(json_text(c, "name"), e);
	return n;
}

static int check_report(const json_t *d, struct error *e)
{
	size_t i, k, m;
	const json_t *s, *t, *r;
	json_array_foreach(json_object_get(d, "sections"), i, s)
	{
		if (check_charts(s, e) < 0)
			return -EINVAL;
		json_array_foreach(json_object_get(s, "tables"), k, t) json_array_foreach(
		    json_object_get(t, "rows"), m,
		    r) if (json_array_size(json_object_get(r, "cells")) !=
		           json_array_size(json_object_get(
		               t, "heads"))) return error_set(e, -EINVAL,
		                                              "document field "
		                                              "'sections[%zu].tables[%zu].rows[%zu]': "
		                                              "it has not as many cells as its table has "
		                                              "heads: give "
		                                              "one for each",
		                                              i, k, m);
	}
	return 0;
}

const struct paper_kind paper_report = {
    .kind = "report",
    .what = "figures, tables and charts of a span of days, on A4",
    .fields = fields,
    .check = check_report,
    .draw = report_draw,
    .dpi = 300,
};
