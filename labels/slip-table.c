/* The table of what was counted in and accounted for, as on a paper count sheet: vertical rules stand round the two columns of
 * numbers only. */
#include <stdio.h>
#include <string.h>

#include "labels/slip-draw.h"

#define HEAD_CLEAR_MM 1.6 /* between a head and the rules beside it */

/* Texts one under the other in one column. */
struct lines {
	struct {
		const struct style *style;
		char text[2600];
		bool flag; /* white in a black field */
	} line[8];
	int count;
	double rest_mm;
};

static void add_line(struct lines *l, const struct style *style, const char *text, bool flag)
{
	if (l->count == (int)(sizeof l->line / sizeof *l->line) || !*text)
		return;
	l->line[l->count].style = style;
	l->line[l->count].flag = flag;
	snprintf(l->line[l->count].text, sizeof l->line[0].text, "%s", text);
	l->count++;
}

static double lines_height(struct canvas *c, const struct lines *l, double width)
{
	double h = 0;
	for (int i = 0; i < l->count; i++)
		h += canvas_text_height(c, l->line[i].style, width - (l->line[i].flag ? 3 : 0),
		                        l->line[i].text) +
		     (l->line[i].flag ? 1.2 : 0);
	return h;
}

static void draw_flag(struct canvas *c, const struct style *style, const char *text, double x, double y,
                      double width, double h)
{
	struct style white = *style;
	double w = canvas_text_width(c, style, text) + 3;
	white.white = true;
	canvas_box(c, x, y, w < width ? w : width, h + 0.6);
	canvas_text(c, &white, x + 1.5, y + 0.3, width - 3, text);
}

static void draw_lines(struct canvas *c, const struct lines *l, double x, double y, double width)
{
	for (int i = 0; i < l->count; i++) {
		double h = canvas_text_height(c, l->line[i].style, width - (l->line[i].flag ? 3 : 0),
		                              l->line[i].text);
		if (l->line[i].flag)
			draw_flag(c, l->line[i].style, l->line[i].text, x, y, width, h);
		else
			canvas_text(c, l->line[i].style, x, y, width, l->line[i].text);
		y += h + (l->line[i].flag ? 1.2 : 0);
	}
}

/* The columns, from the left edge of the flow: widths. */
struct columns {
	double number, item, in, out, evidence;
	struct style count, head;
};

/* A word of the head is not broken, in whatever language it is. */
static double at_least(struct canvas *c, const struct style *head, enum saying words, double mm)
{
	char text[80];
	snprintf(text, sizeof text, "%s", canvas_said(c, words));
	for (char *rest, *word = strtok_r(text, " ", &rest); word; word = strtok_r(NULL, " ", &rest)) {
		double w = canvas_text_width(c, head, word) + HEAD_CLEAR_MM + 0.2;
		mm = w > mm ? w : mm;
	}
	return mm;
}

static struct columns columns_of(const struct flow *f)
{
	struct columns k = {.count = f->look->place, .head = f->look->small_strong};
	double em = f->look->small.size_pt / 7.5;
	double number = canvas_text_width(f->c, &k.head, canvas_said(f->c, SAY_SLIP_P_NUMBER)) + 0.5,
	       least = f->look->wide ? 6 * em : 5;
	k.number = f->look->roll ? 0 : number > least ? number : least;
	k.in = at_least(f->c, &k.head, SAY_SLIP_P_IN, (f->look->roll ? 13 : 14.5) * em);
	k.out = at_least(f->c, &k.head, SAY_SLIP_P_OUT, (f->look->roll ? 16.5 : 17.5) * em);
	double rest = f->width - k.number - k.in - k.out;
	k.item = f->look->wide ? rest * 0.56 : rest;
	k.evidence = f->look->wide ? rest - k.item : 0;
	k.count.size_pt = f->look->body.size_pt * 1.35;
	k.count.align = k.head.align = ALIGN_CENTRE;
	return k;
}

/* A fact stays on one line: its spaces do not break. */
static void join_facts(const json_t *facts, char *out, size_t size)
{
	size_t i;
	json_t *fact;
	out[0] = 0;
	json_array_foreach((json_t *)facts, i, fact)
	{
		char one[900];
		size_t n = 0;
		bool brief = strlen(json_string_value(fact)) < 30;
		for (const char *at = json_string_value(fact); *at && n + 3 < sizeof one; at++)
			n += (size_t)snprintf(one + n, sizeof one - n, "%s",
			                      *at == ' ' && brief ? "\u00a0" : (char[]){*at, 0});
		one[n] = 0;
		said_join(out, size, " · ", one);
	}
}

/* All notes of an item in one text. */
static void join_notes(const json_t *item, char *out, size_t size)
{
	size_t i;
	json_t *note;
	out[0] = 0;
	json_array_foreach(json_object_get(item, "notes"), i, note)
	    said_join(out, size, "; ", json_string_value(note));
}

/* What is told of an item at great length (`long_told`) stands below its row over the whole width, and may run on. */
static void item_lines(const struct flow *f, const json_t *item, bool long_told, struct lines *l)
{
	char facts[2600];
	join_facts(json_object_get(item, "facts"), facts, sizeof facts);
	add_line(l, &f->look->strong, json_text(item, "line"), false);
	if (!long_told)
		add_line(l, &f->look->small, facts, false);
}

static void evidence_lines(const struct flow *f, const json_t *item, bool long_told, struct lines *l)
{
	char notes[2600];
	join_notes(item, notes, sizeof notes);
	add_line(l, &f->look->strong, json_text(item, "amiss"), true);
	add_line(l, &f->look->body, json_text(item, "evidence"), false);
	if (!long_told)
		add_line(l, &f->look->small, notes, false);
}

static void told_below(struct flow *f, const json_t *item)
{
	size_t i;
	json_t *one;
	json_array_foreach(json_object_get(item, "facts"), i, one)
	    flow_text(f, &f->look->small, json_string_value(one));
	json_array_foreach(json_object_get(item, "notes"), i, one)
	    flow_text(f, &f->look->small, json_string_value(one));
	flow_line(f);
}

static void draw_count(struct flow *f, const struct style *style, double x, double width, double row,
                       long long n, bool reversed)
{
	char text[24];
	struct style st = *style;
	snprintf(text, sizeof text, "%lld", n);
	double h = canvas_text_height(f->c, &st, width, text), y = f->y + (row > h ? (row - h) / 2 : 0);
	if (reversed) {
		canvas_box(f->c, x + 1.5, y, width - 3, h);
		st.white = true;
	}
	canvas_text(f->c, &st, x, y, width, text);
}

static void verticals(struct flow *f, const struct columns *k, double from, double to)
{
	double x = f->x + k->number + k->item;
	canvas_line(f->c, x, from, x, to, 0.25);
	canvas_line(f->c, x + k->in, from, x + k->in, to, 0.25);
	if (f->look->wide)
		canvas_line(f->c, x + k->in + k->out, from, x + k->in + k->out, to, 0.25);
}

static void row_line(struct flow *f, const struct columns *k, double from, double line_mm)
{
	verticals(f, k, from, f->y);
	canvas_line(f->c, f->x, f->y, f->x + f->width, f->y, line_mm);
}

static void draw_item(struct flow *f, const struct columns *k, size_t i, const json_t *item)
{
	struct lines left = {0}, right = {0};
	char number[24];
	bool wide = f->look->wide;
	double item_w = k->item - 2, right_w = wide ? k->evidence - 2 : item_w, h = 0;
	bool long_told = false;
	for (int tries = 0; tries < 2; tries++) {
		left.count = right.count = 0;
		item_lines(f, item, long_told, &left);
		evidence_lines(f, item, long_told, &right);
		double left_h = lines_height(f->c, &left, item_w),
		       right_h = lines_height(f->c, &right, right_w);
		h = wide ? (left_h > right_h ? left_h : right_h) : left_h + right_h;
		if (h < f->look->width_mm * 0.5)
			break;
		long_told = true;
	}
	double left_h = lines_height(f->c, &left, item_w);
	double least = canvas_text_height(f->c, &k->count, -1, "0");
	h = h > least ? h : least;
	flow_need(f, h + 2.4);
	double from = f->y;
	f->y += 1;
	snprintf(number, sizeof number, "%zu", i + 1);
	if (k->number > 0)
		canvas_text(f->c, &f->look->body, f->x, f->y, k->number - 1, number);
	draw_lines(f->c, &left, f->x + k->number, f->y, item_w);
	long long in = json_number(item, "in", 0), out = json_number(item, "out", 0);
	double x = f->x + k->number + k->item;
	draw_count(f, &k->count, x, k->in, h, in, false);
	draw_count(f, &k->count, x + k->in, k->out, h, out, in != out);
	if (wide)
		draw_lines(f->c, &right, x + k->in + k->out + 2, f->y, right_w);
	else
		draw_lines(f->c, &right, f->x + k->number, f->y + left_h, right_w);
	f->y += h + 1.2;
	row_line(f, k, from, 0.2);
	if (long_told)
		told_below(f, item);
}

static void heads(struct flow *f, const struct columns *k)
{
	double x = f->x + k->number + k->item, from = f->y;
	const char *in = canvas_said(f->c, SAY_SLIP_P_IN), *out = canvas_said(f->c, SAY_SLIP_P_OUT);
	const struct style *left = &f->look->small_strong;
	double a = canvas_text_height(f->c, &k->head, k->in - HEAD_CLEAR_MM, in),
	       b = canvas_text_height(f->c, &k->head, k->out - HEAD_CLEAR_MM, out);
	double line = canvas_text_height(f->c, left, -1, "0");
	const char *item = canvas_said(f->c, f->look->wide ? SAY_SLIP_P_ITEM : SAY_SLIP_P_ITEM_EVIDENCE);
	double of_item = canvas_text_height(f->c, left, k->item - 2, item);
	double h = a > b ? a : b;
	h = of_item > h ? of_item : h;
	if (k->number > 0)
		canvas_text(f->c, left, f->x, f->y + h - line, -1, canvas_said(f->c, SAY_SLIP_P_NUMBER));
	canvas_text(f->c, left, f->x + k->number + (f->look->wide || f->look->roll ? 0 : 2),
	            f->y + h - of_item, k->item - 2, item);
	canvas_text(f->c, &k->head, x + HEAD_CLEAR_MM / 2, f->y + h - a, k->in - HEAD_CLEAR_MM, in);
	canvas_text(f->c, &k->head, x + k->in + HEAD_CLEAR_MM / 2, f->y + h - b, k->out - HEAD_CLEAR_MM, out);
	if (f->look->wide)
		canvas_text(f->c, left, x + k->in + k->out + 2, f->y + h - line, k->evidence - 2,
		            canvas_said(f->c, SAY_SLIP_P_EVIDENCE));
	f->y += h + 0.8;
	row_line(f, k, from, 0.45);
}

static void sum(struct slip *s, const struct columns *k)
{
	struct flow *f = &s->flow;
	long long in = 0, out = 0;
	size_t i;
	json_t *item;
	json_array_foreach(json_object_get(s->document, "items"), i, item)
	{
		in += json_number(item, "in", 0);
		out += json_number(item, "out", 0);
	}
	const char *extra = json_text(s->document, "extra");
	double x = f->x + k->number + k->item, wide = k->evidence - 2;
	double h = canvas_text_height(f->c, &k->count, -1, "0");
	double text_h = canvas_text_height(f->c, &f->look->strong, -1, "0");
	double text_w = canvas_text_width(f->c, &f->look->strong, canvas_said(f->c, SAY_SLIP_ALL_ITEMS)) + 2;
	bool beside = f->look->wide || text_w + canvas_text_width(f->c, &f->look->small, extra) < k->item - 2;
	double note_h = beside ? 0 : canvas_text_height(f->c, &f->look->small, k->item - 2, extra);
	double row = h > text_h + note_h ? h : text_h + note_h;
	flow_need(f, row + 3);
	double from = f->y;
	if (*json_text(s->document, "shout")) { /* what is amiss stands above, with its numbers */
		canvas_rule(f->c, f->x, f->y, f->width);
		f->y += 1.2 + 1.2;
		return;
	}
	f->y += 0.6;
	double middle = beside ? (row - text_h) / 2 : 0;
	canvas_text(f->c, &f->look->strong, f->x + k->number, f->y + middle, k->item - 2,
	            canvas_said(f->c, SAY_SLIP_ALL_ITEMS));
	draw_count(f, &k->count, x, k->in, row, in, false);
	draw_count(f, &k->count, x + k->in, k->out, row, out, false);
	if (f->look->wide)
		canvas_text(f->c, &f->look->body, x + k->in + k->out + 2, f->y + middle, wide, extra);
	else
		canvas_text(f->c, &f->look->small, f->x + k->number + (beside ? text_w : 0),
		            f->y + (beside ? middle + 0.3 : text_h), beside ? -1 : k->item - 2, extra);
	f->y += row + 0.6;
	verticals(f, k, from, f->y);
	canvas_rule(f->c, f->x, f->y, f->width);
	f->y += 1.2 + 1.6;
}

void slip_items(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *items = json_object_get(s->document, "items");
	struct columns k = columns_of(f);
	char running[120];
	size_t i;
	json_t *item;
	if (json_array_size(items) == 0)
		return;
	flow_need(f, 24);
	heads(f, &k);
	const char *section = canvas_said(f->c, SAY_SLIP_P_ITEM);
	canvas_say(f->c, SAY(SLIP_P_CONTINUED, .words = section), running, sizeof running);
	f->running = running;
	json_array_foreach((json_t *)items, i, item) draw_item(f, &k, i, item);
	sum(s, &k);
	f->running = NULL;
}
