#include "labels/slip.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

static const json_t *list(const struct slip *s, const char *name)
{
	return json_object_get(s->document, name);
}

/* Texts one under the other in one column. */
struct lines {
	struct {
		const struct style *style;
		char text[720];
	} line[6];
	int count;
};

static void add_line(struct lines *l, const struct style *style, const char *text)
{
	l->line[l->count].style = style;
	snprintf(l->line[l->count].text, sizeof l->line[0].text, "%s", text);
	l->count++;
}

static double lines_height(struct canvas *c, const struct lines *l, double width)
{
	double h = 0;
	for (int i = 0; i < l->count; i++)
		h += canvas_text_height(c, l->line[i].style, width, l->line[i].text);
	return h;
}

static void draw_lines(struct canvas *c, const struct lines *l, double x, double y, double width)
{
	for (int i = 0; i < l->count; i++)
		y += canvas_text(c, l->line[i].style, x, y, width, l->line[i].text);
}

/* The columns of the count table, from the left edge of the flow. */
struct columns {
	double number, item, in, out, evidence; /* widths */
	struct style count, head_right;
};

static struct columns columns_of(const struct flow *f)
{
	struct columns k = {.number = f->look->wide ? 7 : 6, .in = f->look->wide ? 11 : 9};
	k.out = k.in;
	double rest = f->width - k.number - k.in - k.out;
	k.item = f->look->wide ? rest * 0.53 : rest;
	k.evidence = f->look->wide ? rest - k.item : 0;
	k.count = f->look->strong;
	k.count.size_pt += 2;
	k.count.align = ALIGN_CENTRE;
	k.head_right = f->look->small;
	k.head_right.align = ALIGN_CENTRE;
	return k;
}

/* "expiry 30 Jun 2028" stays on one line: its spaces do not break. */
static void add_part(char *out, size_t size, const char *label, const char *value)
{
	if (!*value)
		return;
	size_t n = strlen(out);
	n += (size_t)snprintf(out + n, size - n, "%s%s", *out ? "  ·  " : "", label);
	for (; *value && n + 3 < size; value++)
		n += (size_t)snprintf(out + n, size - n, *value == ' ' ? "\u00a0" : "%c", *value);
}

static void item_lines(const struct flow *f, const json_t *item, struct lines *l)
{
	char text[600] = "";
	const char *identity = json_text(item, "identity");
	add_line(l, &f->look->strong, json_text(item, "line"));
	add_line(l, &f->look->small, *identity ? identity : "no identity of its own");
	add_part(text, sizeof text, "lot\u00a0", json_text(item, "lot"));
	add_part(text, sizeof text, "expiry\u00a0", json_text(item, "expiry"));
	if (*text)
		add_line(l, &f->look->small, text);
}

static void evidence_lines(const struct flow *f, const json_t *item, struct lines *l)
{
	const struct look *k = f->look;
	const char *evidence = json_text(item, "evidence"), *condition = json_text(item, "condition");
	long long in = json_number(item, "in", 0), out = json_number(item, "out", 0);
	char text[200];
	if (in != out) {
		snprintf(text, sizeof text, "%s %lld", in > out ? "MISSING" : "EXTRA",
		         in > out ? in - out : out - in);
		add_line(l, &k->strong, text);
	}
	add_line(l, &k->body, *evidence ? evidence : "evidence: ........................");
	if (*condition)
		add_line(l, &k->body, condition);
	if (*json_text(item, "note"))
		add_line(l, &k->small, json_text(item, "note"));
}

static void draw_count(struct flow *f, const struct style *style, double x, double width, long long n,
                       bool reversed)
{
	char text[24];
	struct style st = *style;
	snprintf(text, sizeof text, "%lld", n);
	double h = canvas_text_height(f->c, &st, width, text);
	if (reversed) {
		canvas_box(f->c, x + 1, f->y - 0.2, width - 2, h + 0.4);
		st.white = true;
	}
	canvas_text(f->c, &st, x, f->y, width, text);
}

static void draw_item(struct flow *f, const struct columns *k, size_t i, const json_t *item)
{
	struct lines left = {0}, right = {0};
	char number[24];
	bool wide = f->look->wide;
	item_lines(f, item, &left);
	evidence_lines(f, item, &right);
	double item_w = k->item - 2, right_w = wide ? k->evidence - 2 : f->width - k->number;
	double left_h = lines_height(f->c, &left, item_w), right_h = lines_height(f->c, &right, right_w);
	double h = wide ? (left_h > right_h ? left_h : right_h) : left_h + right_h;
	flow_need(f, h + 2);
	snprintf(number, sizeof number, "%zu", i + 1);
	double x = f->x;
	canvas_text(f->c, &f->look->small, x, f->y + 0.3, k->number - 1, number);
	draw_lines(f->c, &left, x += k->number, f->y, item_w);
	long long in = json_number(item, "in", 0), out = json_number(item, "out", 0);
	draw_count(f, &k->count, x += k->item, k->in, in, false);
	draw_count(f, &k->count, x += k->in, k->out, out, in != out);
	if (wide)
		draw_lines(f->c, &right, x + k->out + 2, f->y, right_w);
	else
		draw_lines(f->c, &right, f->x + k->number, f->y + left_h, right_w);
	f->y += h + 0.9;
	canvas_line(f->c, f->x, f->y, f->x + f->width, f->y, 0.12);
	f->y += 0.9;
}

static void item_heads(struct flow *f, const struct columns *k)
{
	double x = f->x + k->number;
	double h = canvas_text(f->c, &f->look->small, x, f->y, k->item, "item, and its identity");
	canvas_text(f->c, &k->head_right, x += k->item, f->y, k->in, "in");
	canvas_text(f->c, &k->head_right, x += k->in, f->y, k->out, "out");
	if (f->look->wide)
		canvas_text(f->c, &f->look->small, x + k->out + 2, f->y, k->evidence - 2,
		            "evidence, and condition");
	f->y += h + 0.8;
	canvas_line(f->c, f->x, f->y, f->x + f->width, f->y, 0.12);
	f->y += 0.9;
}

void slip_items(struct slip *s)
{
	struct flow *f = &s->flow;
	struct columns k = columns_of(f);
	size_t i;
	json_t *item;
	flow_section(f, "COUNT SHEET", 16);
	item_heads(f, &k);
	json_array_foreach(list(s, "items"), i, item)
	{
		draw_item(f, &k, i, item);
	}
	if (json_array_size(list(s, "items")) == 0)
		flow_text(f, &f->look->body, "No item was counted in.");
	flow_section_end(f);
}

static void digit_times(struct slip *s, const json_t *digit)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *stretch;
	char text[300], label[40];
	json_array_foreach(json_object_get(digit, "stretches"), i, stretch)
	{
		const char *off = json_text(stretch, "off");
		snprintf(text, sizeof text, "on %s   %s%s   %s", json_text(stretch, "on"), *off ? "off " : "",
		         *off ? off : "STILL ON", json_text(stretch, "minutes"));
		snprintf(label, sizeof label, i ? "and again" : "time");
		flow_pair(f, label, &f->look->strong, text);
	}
	flow_pair(f, "longest on", &f->look->body, json_text(digit, "longest"));
	if (*json_text(digit, "total"))
		flow_pair(f, "total on", &f->look->body, json_text(digit, "total"));
	json_array_foreach(json_object_get(digit, "reminders"), i, stretch)
	    flow_pair(f, i ? "" : "reminders", &f->look->body, json_string_value(stretch));
	if (json_array_size(json_object_get(digit, "reminders")) == 0)
		flow_pair(f, "reminders", &f->look->body, "none");
}

/* The look at the digit is evidence of its own: it stands in a box, away from the count. */
static void digit_look(struct slip *s, const json_t *digit)
{
	struct flow *f = &s->flow;
	const json_t *bare = json_object_get(digit, "bare");
	char text[400];
	if (bare)
		snprintf(text, sizeof text, "Seen bare: %s, by %s%s%s", json_text(bare, "when"),
		         json_text(bare, "by"), *json_text(bare, "witness") ? "; also looked: " : "",
		         json_text(bare, "witness"));
	else
		snprintf(text, sizeof text, "NOT SEEN BARE after the final count");
	struct style st = f->look->strong;
	st.white = !bare;
	double h = canvas_text_height(f->c, &st, f->width - 4, text) + 1.8;
	flow_need(f, h + 1);
	f->y += 0.5;
	if (bare)
		canvas_frame(f->c, f->x, f->y, f->width, h, 0.25);
	else
		canvas_box(f->c, f->x, f->y, f->width, h);
	canvas_text(f->c, &st, f->x + 2, f->y + 0.9, f->width - 4, text);
	f->y += h;
}

static void digit_blanks(struct flow *f)
{
	double line = f->look->write_mm;
	if (f->look->wide) {
		flow_need(f, line);
		flow_blank(f, "skin before", 0, 0.34);
		flow_blank(f, "skin after", 0.34, 0.33);
		flow_blank(f, "colour returned", 0.67, 0.33);
		f->y += line;
		return;
	}
	flow_need(f, 3 * line);
	flow_blank(f, "skin before", 0, 1);
	f->y += line;
	flow_blank(f, "skin after", 0, 1);
	f->y += line;
	flow_blank(f, "colour returned", 0, 1);
	f->y += line;
}

void slip_digits(struct slip *s)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *digit;
	if (json_array_size(list(s, "digits")) == 0)
		return;
	flow_section(f, "DIGITS: TIME, AND THE LOOK AT THE BARE DIGIT", 30);
	json_array_foreach(list(s, "digits"), i, digit)
	{
		struct style name = f->look->strong;
		name.size_pt *= 1.3;
		flow_need(f, 26);
		if (i)
			flow_space(f, 2);
		flow_text(f, &name, json_text(digit, "name"));
		flow_space(f, 0.6);
		flow_pair(f, "tourniquet", &f->look->body, json_text(digit, "tourniquet"));
		flow_pair(f, "forceps", &f->look->body,
		          *json_text(digit, "forceps") ? json_text(digit, "forceps") : "none");
		digit_times(s, digit);
		if (*json_text(digit, "note"))
			flow_pair(f, "note", &f->look->body, json_text(digit, "note"));
		digit_look(s, digit);
		digit_blanks(f);
	}
	flow_section_end(f);
}

static void count_words(const json_t *count, char *out, size_t size)
{
	const json_t *agreed = json_object_get(count, "agreed");
	const char *a = json_string_value(json_array_get(agreed, 0)),
	           *b = json_string_value(json_array_get(agreed, 1));
	const char *note = json_text(count, "note"), *by = json_text(count, "recorded_by");
	if (b)
		snprintf(out, size, "agreed aloud by %s and %s, recorded by %s%s%s", a, b, by,
		         *note ? "; " : "", note);
	else
		snprintf(out, size, "single-person count by %s, recorded by %s%s%s", a, by, *note ? "; " : "",
		         note);
}

void slip_counts(struct slip *s)
{
	static const struct {
		const char *kind, *words;
	} names[] = {{"initial", "Initial count"},
	             {"added", "Added"},
	             {"handover", "Handover count"},
	             {"final", "Final count"}};
	struct flow *f = &s->flow;
	size_t i;
	json_t *count;
	flow_section(f, "COUNTS", 10);
	json_array_foreach(list(s, "counts"), i, count)
	{
		char title[120] = "", words[600];
		for (size_t k = 0; k < sizeof names / sizeof *names; k++)
			if (strcmp(names[k].kind, json_text(count, "kind")) == 0)
				snprintf(title, sizeof title, "%s, %s", names[k].words,
				         json_text(count, "when"));
		count_words(count, words, sizeof words);
		double rest = f->width * 0.32;
		const struct cell cells[] = {{&f->look->strong, title, rest},
		                             {&f->look->body, words, f->width - rest}};
		flow_cells(f, cells, 2);
	}
	if (json_array_size(list(s, "counts")) == 0)
		flow_text(f, &f->look->strong, "No count was agreed.");
	flow_section_end(f);
}

/* 'text ........ ANSWER', the answer in its own column at the right. */
static void answered(struct flow *f, const char *text, const struct style *style, const char *answer)
{
	double right = f->width * 0.3;
	const struct cell cells[] = {{&f->look->body, text, f->width - right}, {style, answer, right}};
	flow_cells(f, cells, 2);
}

void slip_sign_out(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *sign_out = list(s, "sign_out");
	char text[200];
	size_t i;
	json_t *point;
	if (!sign_out)
		return;
	flow_section(f, "SIGN-OUT", 10);
	snprintf(text, sizeof text, "Answered by %s, %s", json_text(sign_out, "by"),
	         json_text(sign_out, "when"));
	flow_text(f, &f->look->strong, text);
	flow_space(f, 0.5);
	json_array_foreach(json_object_get(sign_out, "points"), i, point)
	{
		const char *a = json_text(point, "answer");
		answered(f, json_text(point, "text"),
		         strcmp(a, "yes") == 0 ? &f->look->body : &f->look->strong,
		         strcmp(a, "yes") == 0  ? "yes"
		         : strcmp(a, "no") == 0 ? "NO"
		                                : "NOT ANSWERED");
	}
	flow_section_end(f);
}

/* A step that was answered, or room to answer it with a pen. */
static void search_step(struct flow *f, size_t i, const json_t *step)
{
	const struct look *l = f->look;
	const char *answer = json_text(step, "answer"), *text = json_text(step, "text");
	char number[24];
	double no = canvas_text_width(f->c, &l->body, "00") + 2.4, left = f->width * 0.5, box = 3.2;
	snprintf(number, sizeof number, "%zu", i + 1);
	if (*answer) {
		const struct cell cells[] = {{&l->body, number, no},
		                             {&l->body, text, left - no},
		                             {&l->strong, answer, f->width - left}};
		flow_cells(f, cells, 3);
		return;
	}
	double line = canvas_text_height(f->c, &l->body, -1, number);
	double h = canvas_text_height(f->c, &l->body, left - no - 2, text);
	double row = l->write_mm - line + h; /* the first line stands on the writing line */
	flow_need(f, row);
	double base = f->y + l->write_mm - 1.2, top = base - line * 0.82;
	canvas_text(f->c, &l->body, f->x, top, no, number);
	canvas_text(f->c, &l->body, f->x + no, top, left - no - 2, text);
	canvas_frame(f->c, f->x + left, base - box, box, box, 0.25);
	double w = canvas_text_width(f->c, &l->small, "done");
	canvas_text(f->c, &l->small, f->x + left + box + 1,
	            base - canvas_text_height(f->c, &l->small, -1, "done") * 0.82, -1, "done");
	canvas_line(f->c, f->x + left + box + w + 3, base, f->x + f->width, base, 0.2);
	f->y += row;
}

void slip_search(struct slip *s)
{
	struct flow *f = &s->flow;
	const json_t *search = list(s, "search"), *steps = json_object_get(search, "steps");
	size_t i;
	json_t *step;
	char text[120];
	if (!search)
		return;
	flow_section(f, "DISCREPANCY AND SEARCH", 14);
	struct style reason = f->look->strong;
	reason.size_pt *= 1.15;
	flow_text(f, &reason, json_text(search, "reason"));
	snprintf(text, sizeof text, "opened %s%s%s", json_text(search, "opened"),
	         *json_text(search, "closed") ? ", closed " : "; still open when this was printed",
	         json_text(search, "closed"));
	flow_text(f, &f->look->body, text);
	flow_space(f, 0.8);
	json_array_foreach(steps, i, step) search_step(f, i, step);
	if (*json_text(search, "incident")) {
		flow_pair(f, "incident no.", &f->look->strong, json_text(search, "incident"));
	} else {
		flow_need(f, f->look->write_mm);
		flow_blank(f, "incident number: number owed", 0, 1);
		f->y += f->look->write_mm;
	}
	flow_section_end(f);
}

void slip_debts(struct slip *s)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *debt;
	if (json_array_size(list(s, "debts")) == 0)
		return;
	flow_section(f, "OWED, AND HOW IT WAS PAID", 10);
	json_array_foreach(list(s, "debts"), i, debt)
	{
		const char *paid = json_text(debt, "paid");
		double right = f->width * 0.45;
		const struct cell cells[] = {
		    {&f->look->body, json_text(debt, "text"), f->width - right},
		    {*paid ? &f->look->body : &f->look->strong, *paid ? paid : "STILL OWED", right}};
		double h = flow_cells_height(f, cells, 2);
		flow_need(f, *paid ? h : h + f->look->write_mm);
		flow_cells(f, cells, 2);
		if (!*paid) {
			flow_blank(f, "paid by, when", 0, 1);
			f->y += f->look->write_mm;
		}
	}
	flow_section_end(f);
}

void slip_people(struct slip *s)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *person;
	if (json_array_size(list(s, "people")) == 0)
		return;
	flow_section(f, "PEOPLE, AS THEIR BADGES CLAIMED", 8);
	json_array_foreach(list(s, "people"), i, person)
	{
		char times[120];
		const char *to = json_text(person, "to");
		snprintf(times, sizeof times, "%s – %s", json_text(person, "from"), *to ? to : "end");
		const struct cell cells[] = {{&f->look->strong, json_text(person, "name"), f->width * 0.36},
		                             {&f->look->body, json_text(person, "place"), f->width * 0.34},
		                             {&f->look->body, times, f->width * 0.30}};
		flow_cells(f, cells, 3);
	}
	flow_section_end(f);
}

void slip_entries(struct slip *s)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *entry;
	if (json_array_size(list(s, "entries")) == 0)
		return;
	flow_section(f, "LATE, KEYED, OVERRIDDEN AND CORRECTED ENTRIES", 8);
	json_array_foreach(list(s, "entries"), i, entry)
	{
		char head[80];
		snprintf(head, sizeof head, "%s, %s", json_text(entry, "how"), json_text(entry, "when"));
		double left = f->width * 0.32;
		const struct cell cells[] = {{&f->look->strong, head, left},
		                             {&f->look->body, json_text(entry, "text"), f->width - left}};
		flow_cells(f, cells, 2);
	}
	flow_section_end(f);
}

static void sentences(struct slip *s, const char *name, const char *title)
{
	struct flow *f = &s->flow;
	size_t i;
	json_t *text;
	if (json_array_size(list(s, name)) == 0)
		return;
	flow_section(f, title, 8);
	json_array_foreach(list(s, name), i, text)
	{
		flow_text(f, &f->look->body, json_string_value(text));
		flow_space(f, 0.6);
	}
	flow_section_end(f);
}

void slip_gaps_and_notes(struct slip *s)
{
	sentences(s, "gaps", "GAPS IN THE CLOCK");
	sentences(s, "notes", "NOTES");
}
