/* The foot of a slip: what it is for, and the two codes. They come last on purpose: once the slip's own code
 * was read from the last page, all pages were printed. */
#include "labels/slip.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#define BAR_HEIGHT_MM 12.7

void slip_cautions(struct slip *s)
{
	static const char *const usual[] = {
	    "A count that agrees can still be wrong: the look at the bare digit is a check of its own.",
	    "Off does not mean accounted for: the tourniquet itself has to be shown.",
	    "In any doubt later, take the dressing down and look at the digit.",
	    "Reminder times are set by local policy. Pressure is neither measured nor judged.",
	    "Names are those that badges claimed. Two papers with one slip number are one slip.",
	    ("Intended use: to record and support the count that people make. It does not replace that "
	     "count. Local policy and the licensed practitioner decide."),
	};
	struct flow *f = &s->flow;
	size_t i;
	json_t *text;
	flow_section(f, "CAUTIONS AND INTENDED USE", 8);
	for (i = 0; i < sizeof usual / sizeof *usual; i++) {
		flow_text(f, &f->look->small, usual[i]);
		flow_space(f, 0.5);
	}
	json_array_foreach(json_object_get(s->document, "cautions"), i, text)
	{
		flow_text(f, &f->look->small, json_string_value(text));
		flow_space(f, 0.5);
	}
	flow_section_end(f);
}

/* A code as it will stand on the page: in dots, its caption below. */
struct placed {
	const struct barcode *code;
	int module_dots, width_dots, height_dots;
	double width_mm, height_mm;
	const char *caption, *text;
};

static int fit(struct slip *s, const struct barcode *b, const char *caption, const char *text,
               struct placed *p, struct error *e)
{
	struct canvas *c = s->flow.c;
	p->code = b;
	p->caption = caption;
	p->text = text;
	p->module_dots = barcode_module_dots(b->kind, c->dpi);
	/* On large paper the summary is printed larger: easier for a camera. */
	while (b->rows > 1 && canvas_mm(c, p->module_dots + 1) < 0.62 &&
	       canvas_mm(c, barcode_width_dots(b, p->module_dots + 1)) < s->flow.width * 0.45)
		p->module_dots++;
	while (p->module_dots > 1 && canvas_mm(c, barcode_width_dots(b, p->module_dots)) > s->flow.width)
		p->module_dots--;
	p->width_dots = barcode_width_dots(b, p->module_dots);
	p->height_dots =
	    b->rows == 1 ? canvas_dots(c, BAR_HEIGHT_MM) : barcode_height_dots(b, p->module_dots);
	p->width_mm = canvas_mm(c, p->width_dots);
	p->height_mm = canvas_mm(c, p->height_dots);
	if (p->width_mm > s->flow.width || canvas_mm(c, p->module_dots) < 0.24)
		return error_set(
		    e, -EINVAL,
		    "slip: the code '%.30s' does not fit this paper with bars that can be read: use wider "
		    "paper or a shorter code",
		    b->text);
	return 0;
}

static double caption_height(struct slip *s, const struct placed *p, double width)
{
	struct canvas *c = s->flow.c;
	return canvas_text_height(c, &s->look.code, width, p->text) +
	       canvas_text_height(c, &s->look.small, width, p->caption) + 1;
}

static void draw_code(struct slip *s, const struct placed *p, double x, double y, double width)
{
	struct canvas *c = s->flow.c;
	struct style caption = s->look.small, text = s->look.code;
	caption.align = ALIGN_CENTRE;
	text.size_pt += 1;
	int left = canvas_dots(c, x + (width - p->width_mm) / 2);
	y += canvas_text(c, &caption, x, y, width, p->caption) + 0.6;
	barcode_draw(p->code, c, left, canvas_dots(c, y), p->module_dots, p->height_dots);
	canvas_text(c, &text, x, y + p->height_mm + 0.4, width, p->text);
}

void slip_codes(struct slip *s, struct error *e)
{
	struct flow *f = &s->flow;
	struct placed own, jws;
	const char *unsigned_words = "This paper carries no signed summary.",
	           *record = json_text(s->document, "record");
	char of_record[80] = "";
	if (*record)
		snprintf(of_record, sizeof of_record, "Record: %s", record);
	if (fit(s, &s->own, "When this paper is in your hand, scan this code", json_text(s->document, "code"),
	        &own, e) < 0)
		return;
	if (s->has_jws && fit(s, &s->jws, "Signed summary (JWS): check with the station's public key",
	                      of_record, &jws, e) < 0)
		return;
	flow_space(f, 3);
	double gap = 4, own_w = own.width_mm > 50 ? own.width_mm : 50;
	if (own_w > f->width)
		own_w = f->width;
	bool beside = s->has_jws && own_w + gap + jws.width_mm <= f->width;
	double own_h = own.height_mm + caption_height(s, &own, own_w) + 1.5;
	double jws_w = beside ? f->width - own_w - gap : f->width;
	double jws_h = s->has_jws ? jws.height_mm + caption_height(s, &jws, jws_w) : 0;
	flow_need(f, beside ? (own_h > jws_h ? own_h : jws_h) : own_h);
	double y = f->y;
	if (beside) {
		draw_code(s, &own, f->x, y + (jws_h > own_h ? (jws_h - own_h) / 2 : 0), own_w);
		draw_code(s, &jws, f->x + own_w + gap, y, jws_w);
		f->y += own_h > jws_h ? own_h : jws_h;
		return;
	}
	if (s->has_jws) {
		flow_need(f, jws_h + 3 + own_h);
		draw_code(s, &jws, f->x, f->y, jws_w);
		f->y += jws_h + 3;
	} else {
		flow_text(f, &f->look->small, unsigned_words);
		if (*of_record)
			flow_text(f, &f->look->small, of_record);
		flow_space(f, 2);
	}
	flow_need(f, own_h);
	draw_code(s, &own, f->x, f->y, f->width);
	f->y += own_h;
}
