#include "labels/slip.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "labels/sheets.h"

static long long number(const struct slip *s, const char *name)
{
	return (long long)json_number(s->document, name, 0);
}

/* Every page says whose it is and how many there are, so that a lost page is missed. */
static void begin_page(struct flow *f, void *context)
{
	struct slip *s = context;
	const struct look *l = f->look;
	double m = l->margin_mm, top = m;
	if (s->frame_mm > 0) {
		double inset = m - s->frame_mm - 2;
		canvas_frame(f->c, inset, inset, f->c->width_mm - 2 * inset, f->c->height_mm - 2 * inset,
		             s->frame_mm);
	}
	char text[200];
	struct style right = l->small_strong, left = l->strong;
	right.align = ALIGN_RIGHT;
	int used = snprintf(text, sizeof text, "Slip %06lld", number(s, "slip"));
	if (number(s, "station"))
		snprintf(text + used, sizeof text - (size_t)used, "  ·  station %lld", number(s, "station"));
	double h = canvas_text(f->c, &left, f->x, top, f->width * 0.5, text);
	snprintf(text, sizeof text, "copy %lld  ·  page %d of %d", number(s, "copy"), f->page,
	         f->pages ? f->pages : 99);
	canvas_text(f->c, &right, f->x + f->width * 0.4, top + 0.3, f->width * 0.6, text);
	top += h;
	snprintf(text, sizeof text, "%s  ·  %s  ·  case %lld", json_text(s->document, "site"),
	         json_text(s->document, "room"), number(s, "case_number"));
	top += canvas_text(f->c, &l->small, f->x, top, f->width, text) + 1;
	canvas_line(f->c, f->x, top, f->x + f->width, top, 0.35);
	struct style foot = l->small;
	foot.align = ALIGN_CENTRE;
	const char *words = "This paper supports the count that people make. It never replaces it.";
	double foot_h = canvas_text_height(f->c, &foot, f->width, words);
	f->bottom = f->c->height_mm - m - foot_h - 1.5;
	canvas_text(f->c, &foot, f->x, f->bottom + 1.5, f->width, words);
	f->y = top + 1.8;
}

static void banner(struct slip *s)
{
	struct flow *f = &s->flow;
	struct style st = {
	    .size_pt = 20, .bold = true, .white = true, .align = ALIGN_CENTRE, .spacing_pt = 1};
	st.size_pt *= 0.9 * f->width / canvas_text_width(f->c, &st, s->banner);
	if (st.size_pt > f->look->heading_pt * 1.6)
		st.size_pt = f->look->heading_pt * 1.6;
	double h = canvas_text_height(f->c, &st, f->width, s->banner), pad = 1.2;
	flow_need(f, h + 2 * pad);
	canvas_box(f->c, f->x, f->y, f->width, h + 2 * pad);
	canvas_text(f->c, &st, f->x, f->y + pad, f->width, s->banner);
	f->y += h + 2 * pad + 2;
}

static void plain_heading(struct slip *s)
{
	struct flow *f = &s->flow;
	const char *h = json_text(s->document, "heading");
	char text[60] = "Reconciled";
	if (strcmp(h, "cancelled") == 0)
		snprintf(text, sizeof text, "Case cancelled");
	if (strcmp(h, "addendum") == 0)
		snprintf(text, sizeof text, "Addendum to slip %06lld", number(s, "adds_to"));
	struct style st = {.size_pt = f->look->heading_pt, .bold = true};
	double width = canvas_text_width(f->c, &st, text);
	if (width > f->width)
		st.size_pt *= f->width / width;
	flow_text(f, &st, text);
	flow_space(f, 1.2);
}

static void outcome(struct slip *s)
{
	struct flow *f = &s->flow;
	const char *text = json_text(s->document, "outcome");
	struct style st = {.size_pt = f->look->outcome_pt, .bold = true};
	while (st.size_pt > 9 && canvas_text_height(f->c, &st, f->width, text) > f->look->width_mm * 0.4)
		st.size_pt -= 0.5;
	flow_text(f, &st, text);
	flow_space(f, 1.5);
	if (json_truth(s->document, "single")) {
		struct style tag = f->look->strong;
		const char *words =
		    "SINGLE-PERSON COUNT: one person counted, no second person agreed it aloud";
		double h = canvas_text_height(f->c, &tag, f->width - 4, words) + 2;
		flow_need(f, h);
		canvas_frame(f->c, f->x, f->y, f->width, h, 0.5);
		canvas_text(f->c, &tag, f->x + 2, f->y + 1, f->width - 4, words);
		f->y += h + 1.5;
	}
}

static void facts(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *d = s->document;
	char number_text[24], written[64];
	const char *version = json_text(d, "version");
	snprintf(number_text, sizeof number_text, "%lld", number(s, "case_number"));
	flow_pair(f, "case", &f->look->strong, number_text);
	if (*json_text(d, "case_label"))
		flow_pair(f, "case label", &f->look->body, json_text(d, "case_label"));
	flow_pair(f, "room", &f->look->body, json_text(d, "room"));
	flow_pair(f, "site", &f->look->body, json_text(d, "site"));
	flow_pair(f, "opened", &f->look->body, json_text(d, "opened"));
	flow_pair(f, "ended", &f->look->body,
	          *json_text(d, "ended") ? json_text(d, "ended") : "not ended yet");
	/* "2026-11-25T10:43:07+00:00": date and time as they stand, the rest is in the file's date. */
	snprintf(written, sizeof written, "%.10s %.8s%s%.20s", json_text(d, "time"),
	         json_text(d, "time") + 11, *version ? ", version " : "", version);
	flow_pair(f, "written", &f->look->body, written);
}

static void patient_space(struct flow *f, double x, double y, double width, double height)
{
	canvas_dotted_frame(f->c, x, y, width, height);
	canvas_text(f->c, &f->look->small, x + 1.5, y + 1, width - 3, "Patient's label");
}

static void case_and_patient(struct slip *s)
{
	struct flow *f = &s->flow;
	double h = f->look->patient_mm;
	flow_need(f, h);
	canvas_line(f->c, f->x, f->y, f->x + f->width, f->y, 0.35);
	f->y += 2;
	if (!f->look->wide) {
		patient_space(f, f->x, f->y, f->width, h);
		f->y += h + 2;
		facts(s);
		return;
	}
	double y = f->y, all = f->width, left = all * 0.44;
	int page = f->page;
	patient_space(f, f->x + left + 4, y, all - left - 4, h);
	f->width = left;
	facts(s);
	f->width = all;
	if (f->page == page && f->y < y + h)
		f->y = y + h;
}

static void lay_out(struct slip *s, struct error *e)
{
	struct flow *f = &s->flow;
	flow_page(f);
	if (s->banner)
		banner(s);
	else
		plain_heading(s);
	outcome(s);
	case_and_patient(s);
	/* Where something is amiss, what is being done about it comes first. */
	if (s->banner)
		slip_search(s);
	slip_items(s);
	slip_digits(s);
	slip_counts(s);
	slip_sign_out(s);
	if (!s->banner)
		slip_search(s);
	slip_debts(s);
	slip_people(s);
	slip_entries(s);
	slip_gaps_and_notes(s);
	slip_cautions(s);
	slip_codes(s, e);
}

static void prepare(struct slip *s, struct canvas *c, const json_t *d)
{
	const char *paper = json_text(d, "paper"), *heading = json_text(d, "heading");
	s->document = d;
	s->look = *look_of(*paper ? paper : "a5");
	if (strcmp(json_text(d, "kind"), "discrepancy") == 0)
		s->banner = "DISCREPANCY";
	else if (strcmp(heading, "unresolved") == 0)
		s->banner = "UNRESOLVED";
	if (s->banner) {
		/* The frame needs room of its own where the margin is only what a printer cannot reach. */
		s->frame_mm = s->look.width_mm > 140 ? 2.6 : 1.8;
		if (s->look.margin_mm < 4 + s->frame_mm + 2)
			s->look.margin_mm = 4 + s->frame_mm + 2;
	}
	s->flow = (struct flow){.c = c,
	                        .look = &s->look,
	                        .x = s->look.margin_mm,
	                        .width = s->look.width_mm - 2 * s->look.margin_mm,
	                        .begin_page = begin_page,
	                        .context = s};
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
		lay_out(&s, &ignored);
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
