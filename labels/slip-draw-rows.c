/* What stands below the table: lines to write on, a word and a line for each subject, and the search. */
#include <stdio.h>
#include <string.h>

#include "labels/slip-draw.h"

static const json_t *list(const struct slip *s, const char *name)
{
	return json_object_get(s->document, name);
}

/* --- lines to write on ---------------------------------------------------------------------------- */

/* Blanks side by side, on one line that the longest label makes as high as it needs. */
static void blanks_beside(struct flow *f, const enum saying *labels, int count, double row)
{
	double span = f->width / count, high = row;
	for (int i = 0; i < count; i++) {
		double h = flow_blank_height(f, canvas_said(f->c, labels[i]), span - 3, row);
		high = h > high ? h : high;
	}
	flow_need(f, high);
	for (int i = 0; i < count; i++)
		flow_blank(f, canvas_said(f->c, labels[i]), f->x + span * i,
		           f->x + span * (i + 1) - (i + 1 < count ? 3 : 0), f->y + high - 1);
	f->y += high;
}

/* A blank for each label over the whole width; on narrow paper the third has a line of its own. */
static void blanks(struct flow *f, const enum saying *labels, int count, double row)
{
	int beside = !f->look->wide && count > 2 ? 2 : count;
	flow_need(f, beside < count ? 2 * row : row);
	blanks_beside(f, labels, beside, row);
	if (beside < count)
		blanks_beside(f, labels + beside, count - beside, row);
}

static void skin(struct slip *s)
{
	static const enum saying labels[] = {SAY_SLIP_P_SKIN_BEFORE, SAY_SLIP_P_SKIN_AFTER,
	                                     SAY_SLIP_P_COLOUR};
	struct flow *f = &s->flow;
	const json_t *digits = list(s, "digits");
	size_t i;
	json_t *digit;
	json_array_foreach((json_t *)digits, i, digit)
	{
		if (json_array_size(digits) > 1) {
			flow_need(f, f->look->write_mm + 4);
			flow_text(f, &f->look->strong, json_text(digit, "name"));
			blanks(f, labels, 3, f->look->write_mm * 0.8);
		} else {
			blanks(f, labels, 3, f->look->write_mm);
		}
	}
	if (json_array_size(digits))
		flow_space(f, 2);
}

/* Who looks at a digit because something was found writes it here. */
static void looked(struct slip *s)
{
	static const enum saying feeling[] = {SAY_SLIP_P_FEELING},
	                         told[] = {SAY_SLIP_P_SURGEON_TOLD, SAY_SLIP_P_WARD_TOLD,
	                                   SAY_SLIP_P_PATIENT_TOLD};
	struct flow *f = &s->flow;
	const json_t *digits = list(s, "looked");
	double row = f->look->write_mm * 0.82;
	size_t i, n = json_array_size(digits);
	flow_text(f, &f->look->strong, canvas_said(f->c, SAY_SLIP_P_WRITE));
	flow_line(f);
	for (i = 0; i < (n ? n : 1); i++) {
		char label[120];
		const char *name = n ? json_string_value(json_array_get(digits, i)) : "";
		canvas_say(f->c, n ? SAY(SLIP_P_LOOKED_BY, .text = name) : SAY(SLIP_P_LOOKED_DIGITS), label,
		           sizeof label);
		saying_capital(label);
		double span = f->width * (f->look->wide ? 0.72 : 0.74), split = f->x + span;
		double h = flow_blank_height(f, label, span - 3, row);
		flow_need(f, h);
		flow_blank(f, label, f->x, split - 3, f->y + h - 1);
		flow_blank(f, canvas_said(f->c, SAY_SLIP_P_AT), split, f->x + f->width, f->y + h - 1);
		f->y += h;
	}
	blanks(f, feeling, 1, row);
	blanks(f, told, 3, row);
	flow_space(f, 1.5);
}

void slip_blanks(struct slip *s)
{
	if (list(s, "looked"))
		looked(s);
	else if (strcmp(json_text(s->document, "kind"), "discrepancy") != 0)
		skin(s);
	if (*json_text(s->document, "elsewhere")) {
		flow_text(&s->flow, &s->flow.look->body, json_text(s->document, "elsewhere"));
		flow_space(&s->flow, 1.5);
	}
}

/* --- rows ----------------------------------------------------------------------------------------- */

void slip_shouted_digits(struct slip *s)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *digit;
	double left = 0, most = f->width * 0.5;
	if (!*json_text(s->document, "shout"))
		return;
	json_array_foreach((json_t *)list(s, "digits"), i, digit)
	{
		double w = canvas_text_width(f->c, &f->look->strong, json_text(digit, "says")) + 3;
		left = w > left ? w : left;
	}
	left = left < most ? left : most;
	json_array_foreach((json_t *)list(s, "digits"), i, digit)
	{
		const struct cell cells[] = {{&f->look->strong, json_text(digit, "says"), left},
		                             {&f->look->body, json_text(digit, "detail"), f->width - left}};
		flow_cells(f, cells, 2);
	}
}

void slip_rows(struct slip *s)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *row;
	json_array_foreach((json_t *)list(s, "rows"), i, row)
	{
		const char *write = json_text(row, "write");
		double left = f->look->label_mm, span = f->width - left;
		double line = *write ? flow_blank_height(f, write, span, f->look->write_mm * 0.8) : 0;
		const struct cell cells[] = {{&f->look->strong, json_text(row, "label"), left},
		                             {&f->look->body, json_text(row, "says"), f->width - left}};
		flow_need(f, flow_cells_height(f, cells, 2) + line);
		flow_cells(f, cells, 2);
		if (*write) {
			flow_blank(f, write, f->x + left, f->x + f->width, f->y + line - 1);
			f->y += line;
		}
	}
}

/* --- the search ----------------------------------------------------------------------------------- */

/* Done, not done, open and found differ in shape as well as in words. */
static void step_mark(struct canvas *c, const char *state, double x, double y, double size)
{
	canvas_picture(c, x, size);
	canvas_frame(c, x, y, size, size, 0.25);
	if (strcmp(state, "done") == 0 || strcmp(state, "found") == 0) {
		canvas_line(c, x + size * 0.2, y + size * 0.5, x + size * 0.42, y + size * 0.78, 0.5);
		canvas_line(c, x + size * 0.42, y + size * 0.78, x + size * 0.85, y + size * 0.18, 0.5);
	} else if (strcmp(state, "not done") == 0) {
		canvas_line(c, x, y + size / 2, x + size, y + size / 2, 0.5);
	}
	canvas_picture_end(c);
}

/* One step at x, in that width; its height. */
static double step_at(struct slip *s, const json_t *step, double x, double y, double width, bool dry)
{
	const struct look *l = &s->look;
	struct canvas *c = s->flow.c;
	const char *says = json_text(step, "says"), *state = json_text(step, "state");
	double box = l->body.size_pt * 0.3, left = box + 1.6;
	double text_w = canvas_text_width(c, &l->body, json_text(step, "text"));
	double says_w = *says ? canvas_text_width(c, &l->strong, says) : 0;
	double h = canvas_text_height(c, &l->body, width - left, json_text(step, "text"));
	bool beside = !*says || text_w + says_w + 2.5 <= width - left;
	double says_h = beside ? 0 : canvas_text_height(c, &l->strong, width - left, says);
	bool write = json_truth(step, "write");
	double line = write ? l->write_mm * 0.6 : 0;
	if (!dry) {
		step_mark(c, state, x, y + canvas_text_height(c, &l->body, -1, "x") * 0.55 - box / 2, box);
		canvas_text(c, &l->body, x + left, y, width - left, json_text(step, "text"));
		if (*says)
			canvas_text(c, &l->strong, x + left + (beside ? text_w + 2.5 : 0),
			            y + (beside ? 0 : h), beside ? -1 : width - left, says);
		if (write)
			canvas_line(c, x + left, y + h + says_h + line - 0.6, x + width,
			            y + h + says_h + line - 0.6, 0.25);
	}
	return h + says_h + line + 0.45;
}

static double incident_at(struct slip *s, double x, double y, double width, bool dry)
{
	const struct look *l = &s->look;
	const json_t *search = list(s, "search");
	const char *number = json_text(search, "incident"), *write = json_text(search, "write");
	if (*number && !dry)
		canvas_text(s->flow.c, &l->strong, x, y + 0.6, width, number);
	if (*number)
		return canvas_text_height(s->flow.c, &l->strong, width, number) + 1.2;
	double h = *write ? flow_blank_height(&s->flow, write, width, l->write_mm * 0.6) : 0;
	if (*write && !dry)
		flow_blank(&s->flow, write, x, x + width, y + h - 1);
	return *write ? h + 0.4 : 0;
}

static void join_step(const json_t *step, char *out, size_t size)
{
	char one[300];
	snprintf(one, sizeof one, "%s", json_text(step, "text"));
	said_join(one, sizeof one, ", ", json_text(step, "says"));
	said_join(out, size, "; ", one);
}

/* The steps as they are, or with those that were done one after another as one; the caller's. */
static json_t *steps_of(const struct slip *s)
{
	json_t *all = json_object_get(list(s, "search"), "steps"), *some = json_array(), *step;
	char done[1200] = "";
	size_t i, n = json_array_size(all);
	if (s->tight < TIGHT_SEARCH) {
		json_decref(some);
		return json_incref(all);
	}
	json_array_foreach(all, i, step)
	{
		const json_t *after = json_array_get(all, i + 1);
		bool is_done = strcmp(json_text(step, "state"), "done") == 0;
		if (is_done)
			join_step(step, done, sizeof done);
		else
			json_array_append(some, step);
		if (is_done && (i + 1 == n || strcmp(json_text(after, "state"), "done") != 0)) {
			json_array_append_new(some, json_pack("{s:s,s:s}", "text", done, "state", "done"));
			done[0] = 0;
		}
	}
	return some;
}

double slip_search_at(struct slip *s, double x, double width, bool dry)
{
	const json_t *search = list(s, "search");
	json_t *steps = steps_of(s);
	struct canvas *c = s->flow.c;
	double y = s->flow.y;
	size_t i;
	json_t *step;
	if (!dry)
		canvas_text(c, &s->look.strong, x, y, width, json_text(search, "title"));
	y += canvas_text_height(c, &s->look.strong, width, json_text(search, "title")) + 0.6;
	if (!dry)
		canvas_line(c, x, y, x + width, y, 0.2);
	y += 1;
	json_array_foreach(steps, i, step) y += step_at(s, step, x, y, width, dry);
	json_decref(steps);
	return y + incident_at(s, x, y, width, dry) - s->flow.y;
}

void slip_search(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *search = list(s, "search");
	size_t i;
	json_t *step;
	if (!search)
		return;
	json_t *steps = steps_of(s);
	flow_section(f, json_text(search, "title"), 10);
	json_array_foreach(steps, i, step)
	{
		flow_need(f, step_at(s, step, f->x, f->y, f->width, true));
		f->y += step_at(s, step, f->x, f->y, f->width, false);
	}
	json_decref(steps);
	double h = incident_at(s, f->x, f->y, f->width, true);
	flow_need(f, h);
	incident_at(s, f->x, f->y, f->width, false);
	f->y += h;
	flow_section_end(f);
	flow_space(f, 1.5);
}
