/* The foot of a slip: the search, what the paper is for, and the two codes. They come last on purpose: once the slip's own code
 * was read from the last page, all pages were printed. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "labels/slip-draw.h"

#define BAR_HEIGHT_MM 12.7
#define GAP_MM 4.0

/* A code as it will stand on the page, in dots. */
struct placed {
	const struct barcode *code;
	int module_dots, height_dots;
	double width_mm, height_mm;
};

static int fit(struct slip *s, const struct barcode *b, struct placed *p, struct error *e)
{
	struct canvas *c = s->flow.c;
	p->code = b;
	p->module_dots = barcode_module_dots(b->kind, c->dpi);
	/* On large paper the summary is printed larger: easier for a camera. */
	while (b->rows > 1 && s->flow.look->width_mm > 200 && canvas_mm(c, p->module_dots + 1) < 0.52)
		p->module_dots++;
	while (b->rows == 1 && s->flow.look->wide && !json_object_get(s->document, "search") &&
	       canvas_mm(c, p->module_dots + 1) <= 0.4)
		p->module_dots++;
	while (p->module_dots > 1 && canvas_mm(c, barcode_width_dots(b, p->module_dots)) > s->flow.width)
		p->module_dots--;
	p->height_dots =
	    b->rows == 1 ? canvas_dots(c, BAR_HEIGHT_MM) : barcode_height_dots(b, p->module_dots);
	p->width_mm = canvas_mm(c, barcode_width_dots(b, p->module_dots));
	p->height_mm = canvas_mm(c, p->height_dots);
	if (p->width_mm > s->flow.width || canvas_mm(c, p->module_dots) < 0.24)
		return error_set(
		    e, -EINVAL,
		    "slip: the code '%.30s' does not fit this paper with bars that can be read: use wider "
		    "paper or a shorter code",
		    b->text);
	return 0;
}

/* --- texts ---------------------------------------------------------------------------------------- */

/* What only an auditor reads: which event it tells up to, when this copy was made, and in whose words. */
static void record_words(const struct slip *s, char *out, size_t size)
{
	const char *time = json_text(s->document, "time"), *version = json_text(s->document, "version");
	int year = 0, month = 0, day = 0, hour = 0, minute = 0;
	char text[120], written[60];
	out[0] = 0;
	said_join(out, size, " · ", json_text(s->document, "record"));
	if (sscanf(time, "%4d-%2d-%2dT%2d:%2d", &year, &month, &day, &hour, &minute) == 5) {
		enum saying named = (enum saying)((int)SAY_SLIP_MONTH_1 + month - 1);
		canvas_say(s->flow.c, SAY(SLIP_DAY, .day = day, .month = named, .year = year), written,
		           sizeof written);
		canvas_say(s->flow.c, SAY(SLIP_P_WRITTEN, .words = written, .time = hour * 60 + minute), text,
		           sizeof text);
		said_join(out, size, " · ", text);
	}
	canvas_say(s->flow.c, SAY(SLIP_P_VERSION, .version = version), text, sizeof text);
	said_join(out, size, " · ", *version ? text : "");
}

static void caution_words(const struct slip *s, char *out, size_t size)
{
	size_t i;
	json_t *text;
	snprintf(out, size, "%s", canvas_said(s->flow.c, SAY_SLIP_P_CAUTION));
	json_array_foreach(json_object_get(s->document, "cautions"), i, text)
	    said_join(out, size, " ", json_string_value(text));
}

static const char *scan_words(const struct slip *s)
{
	bool brief = *json_text(s->document, "shout") || json_object_get(s->document, "search");
	return canvas_said(s->flow.c, brief ? SAY_SLIP_P_SCAN_NOW : SAY_SLIP_P_SCAN);
}

/* --- blocks --------------------------------------------------------------------------------------- */

/* Bars in the middle of that width, with what to do above and the text to type below; returns the height. */
static double own_at(struct slip *s, const struct placed *p, double x, double y, double width, bool dry)
{
	struct canvas *c = s->flow.c;
	struct style say = s->look.strong, code = s->look.code;
	say.align = code.align = ALIGN_CENTRE;
	const char *words = scan_words(s), *text = json_text(s->document, "code");
	double w = width > p->width_mm ? width : p->width_mm;
	double above = canvas_text_height(c, &say, w, words) + 0.8;
	double below = canvas_text_height(c, &code, w, text);
	if (!dry) {
		canvas_text(c, &say, x, y, w, words);
		barcode_draw(p->code, c, canvas_dots(c, x + (w - p->width_mm) / 2), canvas_dots(c, y + above),
		             p->module_dots, p->height_dots);
		canvas_text(c, &code, x, y + above + p->height_mm + 0.6, w, text);
	}
	return above + p->height_mm + 0.6 + below;
}

static double jws_at(struct slip *s, const struct placed *p, double x, double y, double width, bool dry)
{
	struct canvas *c = s->flow.c;
	struct style say = s->look.small;
	say.align = ALIGN_CENTRE;
	double w = width > p->width_mm ? width : p->width_mm;
	if (!dry) {
		barcode_draw(p->code, c, canvas_dots(c, x + (w - p->width_mm) / 2), canvas_dots(c, y),
		             p->module_dots, p->height_dots);
		canvas_text(c, &say, x, y + p->height_mm, w, canvas_said(c, SAY_SLIP_P_PROOF));
	}
	return p->height_mm + canvas_text_height(c, &say, w, canvas_said(c, SAY_SLIP_P_PROOF));
}

static double small_at(struct slip *s, const char *text, double x, double y, double width, bool dry)
{
	if (!dry)
		canvas_text(s->flow.c, &s->look.small, x, y, width, text);
	return canvas_text_height(s->flow.c, &s->look.small, width, text);
}

/* At the foot of the page; a roll is cut below it. */
static void to_the_foot(struct flow *f, double h)
{
	flow_need(f, h);
	if (!f->look->roll && f->bottom - h > f->y)
		f->y = f->bottom - h;
}

struct foot {
	struct placed own, jws;
	char caution[2400], record[400];
};

/* What it is for and what an auditor reads, in one paragraph where both codes stand above it. */
static void joined(const struct foot *t, char *out, size_t size)
{
	snprintf(out, size, "%s", t->caution);
	said_join(out, size, " ", t->record);
}

/* The search at the left of both codes, which stand one above the other; what is small below all, or below the search alone
 * where that takes less. */
static bool beside_search(struct slip *s, const struct foot *t)
{
	struct flow *f = &s->flow;
	double right = t->own.width_mm > t->jws.width_mm ? t->own.width_mm : t->jws.width_mm;
	double left = f->width - right - GAP_MM;
	char small[2900];
	if (!f->look->wide || !s->has_jws || !json_object_get(s->document, "search") ||
	    left < 45 * f->look->body.size_pt / 9)
		return false;
	joined(t, small, sizeof small);
	double search = slip_search_at(s, f->x, left, true);
	double below = small_at(s, small, 0, 0, f->width, true) + 1;
	double codes = own_at(s, &t->own, 0, 0, right, true) + 1 + jws_at(s, &t->jws, 0, 0, right, true);
	double upper = search > codes ? search : codes, h = upper + below;
	double narrow = search + 2 + small_at(s, small, 0, 0, left, true);
	narrow = narrow > codes ? narrow : codes;
	bool under = narrow < h;
	h = under ? narrow : h;
	if (f->y + h >
	    f->bottom) /* over the whole width it begins on this page, which is not left half empty */
		return false;
	to_the_foot(f, h);
	slip_search_at(s, f->x, left, false);
	double x = f->x + f->width - right, y = f->y + (under ? h : upper) - codes;
	y += own_at(s, &t->own, x, y, right, false) + 1;
	jws_at(s, &t->jws, x, y, right, false);
	if (under)
		small_at(s, small, f->x, f->y + search + 2, left, false);
	else
		small_at(s, small, f->x, f->y + upper + 1, f->width, false);
	f->y += h;
	return true;
}

/* What the paper is for at the left, above its own code; the summary at the right. */
static bool side_by_side(struct slip *s, const struct foot *t)
{
	struct flow *f = &s->flow;
	double left = f->width - t->jws.width_mm - GAP_MM;
	if (!s->has_jws || left < t->own.width_mm)
		return false;
	double small =
	    small_at(s, t->caution, 0, 0, left, true) + 0.6 + small_at(s, t->record, 0, 0, left, true);
	double own = own_at(s, &t->own, 0, 0, left, true), jws = jws_at(s, &t->jws, 0, 0, 0, true);
	double h = small + 1.5 + own > jws ? small + 1.5 + own : jws;
	to_the_foot(f, h);
	double y = f->y + small_at(s, t->caution, f->x, f->y, left, false) + 0.6;
	small_at(s, t->record, f->x, y, left, false);
	own_at(s, &t->own, f->x, f->y + h - own, left, false);
	jws_at(s, &t->jws, f->x + f->width - t->jws.width_mm, f->y + h - jws, 0, false);
	f->y += h;
	return true;
}

static void one_below_the_other(struct slip *s, const struct foot *t)
{
	struct flow *f = &s->flow;
	double own = own_at(s, &t->own, 0, 0, f->width, true);
	char small[2900];
	joined(t, small, sizeof small);
	flow_text(f, &f->look->small, small);
	flow_space(f, 1);
	if (s->has_jws) {
		double jws = jws_at(s, &t->jws, 0, 0, f->width, true);
		to_the_foot(f, own + 1.5 + jws);
		f->y += own_at(s, &t->own, f->x, f->y, f->width, false) + 1.5;
		f->y += jws_at(s, &t->jws, f->x, f->y, f->width, false);
		return;
	}
	flow_text(f, &f->look->small, canvas_said(f->c, SAY_SLIP_P_UNSIGNED));
	flow_space(f, 1);
	to_the_foot(f, own);
	f->y += own_at(s, &t->own, f->x, f->y, f->width, false);
}

void slip_foot(struct slip *s, struct error *e)
{
	struct foot t = {0};
	if (fit(s, &s->own, &t.own, e) < 0 || (s->has_jws && fit(s, &s->jws, &t.jws, e) < 0))
		return;
	caution_words(s, t.caution, sizeof t.caution);
	record_words(s, t.record, sizeof t.record);
	flow_space(&s->flow, 1.5);
	if (beside_search(s, &t))
		return;
	slip_search(s);
	if (!side_by_side(s, &t))
		one_below_the_other(s, &t);
}
