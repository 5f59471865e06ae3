/* The head of a slip: what happened to the digit, or what is missing and what to do, then whose it is and where. */
#include <stdio.h>
#include <string.h>

#include "labels/slip-draw.h"

static const json_t *list(const struct slip *s, const char *name)
{
	return json_object_get(s->document, name);
}

/* --- what is missing, where it may be, what to do ------------------------------------------------- */

static void shout(struct slip *s)
{
	struct flow *f = &s->flow;
	const char *text = json_text(s->document, "shout"), *note = json_text(s->document, "shout_note");
	struct style st = f->look->shout, small = f->look->strong;
	small.white = true;
	small.align = ALIGN_RIGHT;
	double w = canvas_text_width(f->c, &st, text), all = f->width - 6;
	if (w > all)
		st.size_pt *= all / w;
	w = canvas_text_width(f->c, &st, text);
	double h = canvas_text_height(f->c, &st, -1, text), rest = all - w - 4;
	bool below = canvas_text_width(f->c, &small, note) > rest - 0.5;
	double note_h = *note ? canvas_text_height(f->c, &small, below ? all : rest, note) : 0;
	double height = h + (below ? note_h : 0) + 1.6;
	canvas_box(f->c, f->x, f->y, f->width, height);
	canvas_text(f->c, &st, f->x + 3, f->y + 0.8, -1, text);
	if (*note)
		canvas_text(f->c, &small, f->x + 3 + (below ? 0 : w + 4),
		            f->y + 0.8 + (below ? h : h - note_h), below ? all : rest, note);
	f->y += height + 1.2;
}

/* Smaller only where it would fill half the page. */
static struct style to_fit(struct flow *f, const struct style *st, double width, const char *text)
{
	struct style fits = *st;
	while (fits.size_pt > f->look->body.size_pt &&
	       canvas_text_height(f->c, &fits, width, text) > f->look->width_mm * 0.55)
		fits.size_pt *= 0.92;
	return fits;
}

/* What is missing and where stand at the size of a name, the deed larger: the last of the lines. */
static void amiss(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *lines = list(s, "amiss");
	size_t i, n = json_array_size(lines);
	json_t *line;
	json_array_foreach((json_t *)lines, i, line)
	{
		bool deed = i + 1 == n && *json_text(s->document, "shout");
		const char *note = json_text(line, "note");
		double left = f->look->amiss_mm, w = f->width - left;
		const struct style fits =
		    to_fit(f, deed ? &f->look->deed : &f->look->place, w, json_text(line, "text"));
		const struct style *st = &fits, *small = &f->look->second;
		double text_w = canvas_text_width(f->c, st, json_text(line, "text"));
		double note_w = *note ? canvas_text_width(f->c, small, note) : 0;
		bool beside = text_w + 2.5 + note_w <= w;
		double h = canvas_text_height(f->c, st, w, json_text(line, "text"));
		double note_h = *note && !beside ? canvas_text_height(f->c, small, w, note) : 0;
		double label_h =
		    canvas_text_height(f->c, &f->look->strong, left - 1, json_text(line, "label"));
		double all = h + note_h > label_h ? h + note_h : label_h;
		flow_need(f, all + 2);
		double drop = (st->size_pt - f->look->strong.size_pt) * 0.8 * 25.4 / 72;
		canvas_text(f->c, &f->look->strong, f->x, f->y + (drop > 0 ? drop : 0), left - 1,
		            json_text(line, "label"));
		canvas_text(f->c, st, f->x + left, f->y, w, json_text(line, "text"));
		if (*note && beside)
			canvas_text(f->c, small, f->x + left + text_w + 2.5,
			            f->y + (st->size_pt - small->size_pt) * 0.9 * 25.4 / 72, -1, note);
		else if (*note)
			canvas_text(f->c, small, f->x + left, f->y + h, w, note);
		f->y += all;
		flow_line(f);
	}
}

/* --- the digits ---------------------------------------------------------------------------------- */

/* The more digits there are the smaller each line is: all of them stand on page one. */
static struct style shrunk(const struct style *st, size_t digits)
{
	struct style small = *st;
	small.size_pt *= digits < 2 ? 1 : digits == 2 ? 0.82 : digits == 3 ? 0.7 : 0.62;
	return small;
}

static void digits(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *all = list(s, "digits");
	size_t i, n = json_array_size(all);
	struct style first = shrunk(&f->look->first, n), second = shrunk(&f->look->second, n > 1 ? n - 1 : n);
	json_t *digit;
	json_array_foreach((json_t *)all, i, digit)
	{
		const char *says = json_text(digit, "says"), *detail = json_text(digit, "detail");
		struct style st = first;
		double w = canvas_text_width(f->c, &st, says);
		if (w > f->width && w * 0.9 < f->width)
			st.size_pt *= f->width / w * 0.999;
		flow_need(f, canvas_text_height(f->c, &st, f->width, says) +
		                 canvas_text_height(f->c, &second, f->width, detail));
		flow_text(f, &st, says);
		flow_text(f, &second, detail);
		flow_space(f, 0.6);
	}
}

static void single(struct slip *s)
{
	struct flow *f = &s->flow;
	const char *words = json_text(s->document, "single");
	if (!*words)
		return;
	double h = canvas_text_height(f->c, &f->look->strong, f->width - 4, words) + 1.6;
	flow_need(f, h);
	f->y += 0.6;
	canvas_frame(f->c, f->x, f->y, f->width, h, 0.4);
	canvas_text(f->c, &f->look->strong, f->x + 2, f->y + 0.8, f->width - 4, words);
	f->y += h + 1.2;
}

/* 'Reconciled' is one small word, for the auditor; what was counted and seen stands beside it (rule 15). */
static void outcome(struct slip *s)
{
	struct flow *f = &s->flow;
	const char *heading = json_text(s->document, "heading_words"),
	           *text = json_text(s->document, "outcome");
	bool alone = json_array_size(list(s, "digits")) == 0 && json_array_size(list(s, "amiss")) == 0;
	size_t i;
	json_t *after;
	if (alone && *heading) /* nothing else is to be said first */
		flow_text(f, &f->look->place, heading);
	double w = canvas_text_width(f->c, &f->look->strong, heading) + 2.2;
	bool beside = *heading && !alone && w < f->width * 0.45;
	if (!beside && !alone && *heading)
		flow_text(f, &f->look->strong, heading);
	if (!beside) {
		flow_text(f, &f->look->body, text);
	} else {
		w = w > f->look->label_mm ? w : f->look->label_mm;
		const struct cell cells[] = {{&f->look->strong, heading, w},
		                             {&f->look->body, text, f->width - w}};
		flow_space(f, 0.8);
		flow_cells(f, cells, 2);
	}
	json_array_foreach((json_t *)list(s, "after"), i, after)
	{
		flow_text(f, &f->look->strong, json_string_value(after));
		flow_space(f, 0.4);
	}
}

void slip_lines(struct slip *s)
{
	if (*json_text(s->document, "shout")) {
		shout(s);
		amiss(s);
		single(s);
		return;
	}
	digits(s);
	amiss(s);
	single(s);
	outcome(s);
	flow_rule(&s->flow);
}

/* --- whose it is, and where ----------------------------------------------------------------------- */

static double number_of(const struct slip *s, const char *name, double otherwise)
{
	json_int_t n = json_number(list(s, "patient_label"), name, 0);
	return n ? (double)n : otherwise;
}

static void patient_space(struct flow *f, double x, double y, double width, double height)
{
	canvas_dotted_frame(f->c, x, y, width, height);
	canvas_text(f->c, &f->look->small, x + 1.5, y + 1, width - 3, canvas_said(f->c, SAY_P_PATIENT));
	canvas_mark(f->c, &(const struct mark){.kind = MARK_SPACE,
	                                       .x_mm = canvas_left(f->c, x, width),
	                                       .y_mm = y,
	                                       .width_mm = width,
	                                       .height_mm = height});
}

static const char *const named[] = {"room", "case", "day", "hours", "case_label"};
#define NAMED (sizeof named / sizeof *named)

static double names_height(struct slip *s, const struct style *st, double width)
{
	double all = 0;
	for (size_t i = 0; i < NAMED; i++)
		all += canvas_text_height(s->flow.c, st, width, json_text(s->document, named[i]));
	return all;
}

/* Read at arm's length, and smaller only where names are very long. */
static struct style names_style(struct slip *s, double width)
{
	struct style st = s->look.place;
	while (st.size_pt > s->look.body.size_pt && names_height(s, &st, width) > s->look.width_mm * 0.45)
		st.size_pt *= 0.92;
	return st;
}

/* In a column that is `h` high where there is so much to fill. */
static void names(struct slip *s, const struct style *st, double x, double width, double h)
{
	double y = s->flow.y, all = names_height(s, st, width), gap = 0;
	int n = 0;
	for (size_t i = 0; i < NAMED; i++)
		n += *json_text(s->document, named[i]) != 0;
	if (n > 1 && all < h)
		gap = (h - all) / (n - 1) < 3 ? (h - all) / (n - 1) : 3;
	for (size_t i = 0; i < NAMED; i++)
		if (*json_text(s->document, named[i]))
			y += canvas_text(s->flow.c, st, x, y, width, json_text(s->document, named[i])) + gap;
}

static void place_below(struct slip *s, double w, double h)
{
	struct flow *f = &s->flow;
	char left[200], right[200];
	struct style st = f->look->place;
	snprintf(left, sizeof left, "%s", json_text(s->document, "room"));
	said_join(left, sizeof left, ", ", json_text(s->document, "case"));
	snprintf(right, sizeof right, "%s", json_text(s->document, "day"));
	said_join(right, sizeof right, ", ", json_text(s->document, "hours"));
	said_join(right, sizeof right, ", ", json_text(s->document, "case_label"));
	flow_text(f, &st, left);
	flow_text(f, &st, right);
	flow_space(f, 1);
	flow_need(f, h);
	patient_space(f, f->x, f->y, w, h);
	f->y += h;
}

static double label_width(const struct slip *s)
{
	double w = number_of(s, "width_mm", s->look.patient_width_mm);
	return w < s->flow.width ? w : s->flow.width;
}

/* Where nothing is said of it, what shouts takes some of its height. */
static double label_height(const struct slip *s)
{
	return number_of(s, "height_mm",
	                 s->look.patient_height_mm * (*json_text(s->document, "shout") ? 0.75 : 1));
}

/* A page that was torn off says whose it is; room, case and day stand above. */
void slip_place_again(struct slip *s)
{
	double h = label_height(s);
	patient_space(&s->flow, s->flow.x, s->flow.y, label_width(s), h);
	s->flow.y += h + 2;
}

void slip_place(struct slip *s)
{
	struct flow *f = &s->flow;
	double w = label_width(s), h = label_height(s), rest = f->width - w - 4;
	if (rest < 24) {
		place_below(s, w, h);
		flow_space(f, 2);
		return;
	}
	struct style st = names_style(s, rest);
	double names_h = names_height(s, &st, rest), height = names_h > h ? names_h : h;
	flow_need(f, height);
	patient_space(f, f->x, f->y, w, h);
	names(s, &st, f->x + w + 4, rest, h);
	f->y += height + 2;
}
