#include "labels/slip-draw.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/own-codes.h"
#include "labels/sheets.h"

#define PAGES_LABELLED 32 /* bits of label_again */

static int32_t number(const struct slip *s, const char *name)
{
	return (int32_t)json_number(s->document, name, 0);
}

static void head_left(struct slip *s, char *out, size_t size)
{
	int32_t slip = number(s, "slip"), station = number(s, "station");
	char text[60];
	canvas_say(s->flow.c, SAY(SLIP_P_SLIP, .slip = slip), out, size);
	canvas_say(s->flow.c, SAY(SLIP_P_STATION, .n = station), text, sizeof text);
	if (station)
		said_join(out, size, "  ·  ", text);
}

/* What is ordinary is not said: the first copy, and one page of one are. */
static void head_right(struct slip *s, char *out, size_t size)
{
	int32_t copy = number(s, "copy");
	int pages = s->flow.pages ? s->flow.pages : 99;
	char text[60];
	out[0] = 0;
	if (copy > 1)
		canvas_say(s->flow.c, SAY(SLIP_P_COPY, .copy = copy), out, size);
	canvas_say(s->flow.c, SAY(SLIP_P_PAGE, .page = s->flow.page, .pages = pages), text, sizeof text);
	said_join(out, size, "  ·  ", text);
}

static bool is_practice(const struct slip *s)
{
	struct own_code code;
	const char *text = json_text(s->document, "code");
	return own_code_read(text, strlen(text), &code, NULL) == 0 && code.practice;
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
		said_join(middle, sizeof middle, "  ·  ", json_text(s->document, "room"));
		said_join(middle, sizeof middle, "  ·  ", json_text(s->document, "case"));
		said_join(middle, sizeof middle, "  ·  ", json_text(s->document, "day"));
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
		canvas_say(f->c, SAY(SLIP_P_GOES_ON, .page = f->page + 1, .pages = f->pages), left,
		           sizeof left);
		canvas_text(f->c, &next, f->x, f->bottom + 0.6, f->width, left);
	}
	if (is_practice(s)) {
		canvas_across(f->c, &l->strong, canvas_said(f->c, SAY_SLIP_P_PRACTICE));
		top += canvas_text(f->c, &l->strong, f->x, top, f->width,
		                   canvas_said(f->c, SAY_SLIP_P_PRACTICE_NOTE));
	}
	f->y = top;
	if (f->page > 1 || s->frame_mm <= 0)
		flow_rule(f);
	else
		f->y += 1.2;
	if (f->page > 1 && f->page < PAGES_LABELLED && s->label_again >> f->page & 1)
		slip_place_again(s);
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

static void shrink_large(struct look *l, double by)
{
	l->first.size_pt *= by;
	l->second.size_pt *= by;
	l->place.size_pt *= by;
	l->deed.size_pt *= by;
	l->shout.size_pt *= by;
}

/* Still read at arm's length; what is small already stays as it is, or gets the least that its paper may have. */
static void tighten(struct look *l, int tight)
{
	shrink_large(l, tight < TIGHT_TEXT ? 0.86 : 0.8);
	l->write_mm *= tight < TIGHT_TEXT ? 0.8 : 0.69;
	l->patient_height_mm *= tight < TIGHT_TEXT ? 0.82 : 0.75;
	if (tight < TIGHT_TEXT)
		return;
	l->body.size_pt *= 0.9;
	l->strong.size_pt *= 0.9;
	l->code.size_pt *= 0.9;
	l->label_mm *= 0.9;
}

static void prepare(struct slip *s, struct canvas *c, const json_t *d)
{
	const char *paper = json_text(d, "paper");
	s->document = d;
	s->look = *look_of(*paper ? paper : "a5");
	if (s->tight)
		tighten(&s->look, s->tight);
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

/* How many pages it takes as it is; nothing is drawn. */
static int count_pages(struct slip *s, struct canvas *c, const json_t *document)
{
	struct error ignored;
	c->dry = true;
	c->page = 0;
	prepare(s, c, document);
	lay_out(s, &ignored);
	c->dry = false;
	c->page = 0;
	return s->flow.page;
}

/* One page where it can be; else with room on each to say that it goes on, and whose it is where that costs no page. */
static int choose(struct slip *s, struct canvas *c, const json_t *document)
{
	s->alone = true;
	if (count_pages(s, c, document) == 1)
		return 1;
	for (s->tight = TIGHT_LARGE; s->look.wide && s->tight <= TIGHT_SEARCH; s->tight++)
		if (count_pages(s, c, document) == 1)
			return 1;
	s->alone = false;
	s->tight = TIGHT_NOT;
	int pages = count_pages(s, c, document);
	for (int page = pages < PAGES_LABELLED ? pages : PAGES_LABELLED - 1; page > 1; page--) {
		s->label_again |= 1u << page;
		if (count_pages(s, c, document) != pages || s->flow.over)
			s->label_again &= ~(1u << page);
	}
	return count_pages(s, c, document);
}

int slip_draw(struct canvas *c, const json_t *document, struct error *e)
{
	struct slip s = {0};
	struct error late = {0};
	prepare(&s, c, document);
	int r = make_codes(&s, e);
	if (r == 0) {
		int pages = choose(&s, c, document);
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
