#include "labels/slip-draw.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "labels/sheets.h"

static long long number(const struct slip *s, const char *name)
{
	return (long long)json_number(s->document, name, 0);
}

/* A numbers' text is as long as a number can be. */
static void numbered(char *out, size_t size, enum slip_word word, long long n, long long all)
{
	char a[24], b[24];
	snprintf(a, sizeof a, "%lld", n);
	snprintf(b, sizeof b, "%lld", all);
	slip_part(out, size, word, (const char *const[]){"n", a, "all", b, NULL});
}

static void head_left(struct slip *s, char *out, size_t size)
{
	char slip[SLIP_NUMBER_TEXT], text[60];
	slip_number(number(s, "slip"), slip);
	slip_part(out, size, SW_P_SLIP, (const char *const[]){"slip", slip, NULL});
	if (number(s, "station")) {
		numbered(text, sizeof text, SW_P_STATION, number(s, "station"), 0);
		slip_join(out, size, "  ·  ", text);
	}
}

/* What is ordinary is not said: the first copy, and one page of one are. */
static void head_right(struct slip *s, char *out, size_t size)
{
	char text[60];
	out[0] = 0;
	if (number(s, "copy") > 1)
		numbered(out, size, SW_P_COPY, number(s, "copy"), 0);
	numbered(text, sizeof text, SW_P_PAGE, s->flow.page, s->flow.pages ? s->flow.pages : 99);
	slip_join(out, size, "  ·  ", text);
}

/* Every page says whose it is, how many there are, and that it goes on, so that a lost page is missed. */
static void begin_page(struct flow *f, void *context)
{
	struct slip *s = context;
	const struct look *l = f->look;
	/* Where the margin is no more than what a printer cannot reach, 'goes on' has room of its own. */
	double m = l->margin_mm, top = m, foot = (s->frame_mm > 0 || m < 7) && !s->alone ? 4 : 0;
	if (s->frame_mm > 0) {
		double inset = m - s->frame_mm - 2;
		canvas_frame(f->c, inset, inset, f->c->width_mm - 2 * inset, f->c->height_mm - 2 * inset,
		             s->frame_mm);
	}
	char left[120], right[120], middle[200];
	struct style right_style = number(s, "copy") > 1 ? l->strong : l->body, next = l->small_strong;
	right_style.align = next.align = ALIGN_RIGHT;
	head_left(s, left, sizeof left);
	head_right(s, right, sizeof right);
	snprintf(middle, sizeof middle, "%s", json_text(s->document, "site"));
	if (f->page > 1) {
		slip_join(middle, sizeof middle, "  ·  ", json_text(s->document, "room"));
		slip_join(middle, sizeof middle, "  ·  ", json_text(s->document, "case"));
	}
	double lw = canvas_text_width(f->c, &l->strong, left) + 3,
	       rw = canvas_text_width(f->c, &right_style, right) + 3;
	double h = canvas_text(f->c, &l->strong, f->x, top, lw, left);
	canvas_text(f->c, &right_style, f->x + f->width - rw, top, rw, right);
	/* A long name of a site gets a line of its own. */
	if (canvas_text_width(f->c, &l->body, middle) < f->width - lw - rw) {
		canvas_text(f->c, &l->body, f->x + lw, top, f->width - lw - rw, middle);
		top += h;
	} else {
		top += h;
		top += canvas_text(f->c, &l->body, f->x, top, f->width, middle);
	}
	f->bottom = f->c->height_mm - m - foot;
	if (f->pages && f->page < f->pages) {
		numbered(left, sizeof left, SW_P_GOES_ON, f->page + 1, f->pages);
		canvas_text(f->c, &next, f->x, f->bottom + 0.6, f->width, left);
	}
	f->y = top;
	if (f->page > 1 || s->frame_mm <= 0)
		flow_rule(f);
	else
		f->y += 1.2;
}

static void lay_out(struct slip *s, struct error *e)
{
	flow_page(&s->flow);
	slip_lines(s);
	slip_place(s);
	slip_items(s);
	slip_shouted_digits(s);
	slip_blanks(s);
	slip_rows(s);
	slip_foot(s, e);
}

/* Labels stand on one line: the widest of them makes the column. */
static double label_width(const struct slip *s)
{
	const struct look *l = &s->look;
	double w = l->label_mm;
	size_t i;
	json_t *row;
	json_array_foreach(json_object_get(s->document, "rows"), i, row)
	{
		double one = canvas_text_width(s->flow.c, &l->strong, json_text(row, "label")) + 2.3;
		w = one > w && one < l->width_mm * 0.4 ? one : w;
	}
	return w;
}

static void prepare(struct slip *s, struct canvas *c, const json_t *d)
{
	const char *paper = json_text(d, "paper");
	s->document = d;
	s->look = *look_of(*paper ? paper : "a5");
	if (*json_text(d, "shout")) {
		/* The frame needs room of its own where the margin is only what a printer cannot reach. */
		s->frame_mm = s->look.width_mm > 140 ? 1.8 : 1.4;
		double least = 4 + s->frame_mm + 2.2;
		if (s->look.margin_mm < least || s->look.width_mm < 150)
			s->look.margin_mm = least;
	}
	s->flow = (struct flow){.c = c,
	                        .look = &s->look,
	                        .x = s->look.margin_mm,
	                        .width = s->look.width_mm - 2 * s->look.margin_mm,
	                        .begin_page = begin_page,
	                        .context = s};
	s->look.label_mm = label_width(s);
}

static int make_codes(struct slip *s, struct error *e)
{
	int r = barcode_init(&s->own, SYMBOL_CODE_128, json_text(s->document, "code"), e);
	s->has_jws = *json_text(s->document, "jws");
	if (r == 0 && s->has_jws)
		r = barcode_init(&s->jws, SYMBOL_QR_CODE, json_text(s->document, "jws"), e);
	return r;
}

int slip_draw(struct canvas *c, const json_t *document, struct error *e)
{
	struct slip s = {0};
	struct error ignored, late = {0};
	prepare(&s, c, document);
	int r = make_codes(&s, e);
	if (r == 0) {
		c->dry = true;
		s.alone = true;
		lay_out(&s, &ignored);
		s.alone = s.flow.page == 1;
		if (!s.alone) { /* with room on each page to say that it goes on */
			c->page = 0;
			prepare(&s, c, document);
			lay_out(&s, &ignored);
		}
		c->dry = false;
		c->page = 0;
		int pages = s.flow.page;
		double last = s.flow.y + c->height_mm - s.flow.bottom;
		prepare(&s, c, document);
		s.flow.pages = pages;
		s.flow.last_mm = last;
		lay_out(&s, &late);
		if (late.code < 0)
			r = error_set(e, late.code, "%s", late.text);
	}
	barcode_deinit(&s.own);
	barcode_deinit(&s.jws);
	return r;
}
