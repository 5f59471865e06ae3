#include "tool/document.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"
#include "count/event.h"

#define SENTENCE_MAX 600
#define CELL_MAX 199

int document_begin(struct document *d, const struct document_of *of)
{
	char when[26], period[SENTENCE_MAX];
	int64_t now = clock_now().wall_ms;
	clock_text_full(now, clock_utc_min(now), when);
	say_part_in(of->language, of->period, period, sizeof period);
	*d = (struct document){.language = of->language, .sections = json_array()};
	d->whole =
	    json_pack("{s:i,s:s,s:s,s:s,s:s,s:s,s:[],s:o}", "v", 1, "kind", "report", "time", when, "site",
	              *of->site ? of->site : "?", "title", saying_text_in(of->language, of->title), "period",
	              period, "about", "sections", d->sections);
	if (d->whole && of->language)
		json_object_set_new(d->whole, "language", json_string(language_code(of->language)));
	return d->whole ? 0 : -ENOMEM;
}

static void add_said(const struct document *d, json_t *to, const char *key, const struct say *say)
{
	char text[SENTENCE_MAX];
	say_part_in(d->language, say, text, sizeof text);
	json_array_append_new(json_object_get(to, key), json_string(text));
}

void document_about(struct document *d, const struct say *say)
{
	add_said(d, d->whole, "about", say);
}

void document_about_left(struct document *d, int cases, const struct event *archived)
{
	char day[11];
	if (!cases)
		return;
	clock_text_date(archived->at.wall_ms, archived->at.utc_min, day);
	document_about(d, SAY(RW_LEFT, .n = cases, .text = archived->text, .first = day));
}

void document_section(struct document *d, const char *name, const struct say *title)
{
	char text[SENTENCE_MAX];
	say_part_in(d->language, title, text, sizeof text);
	d->section = json_pack("{s:s,s:s,s:[],s:[],s:[],s:[]}", "name", name, "title", text, "says",
	                       "figures", "tables", "charts");
	json_array_append_new(d->sections, d->section);
}

void document_says(struct document *d, const struct say *say)
{
	add_said(d, d->section, "says", say);
}

void document_chart_says(struct document *d, const struct say *say)
{
	add_said(d, d->chart, "says", say);
}

json_t *document_figure(struct document *d, const char *name, enum saying label, const char *value)
{
	json_t *x = json_pack("{s:s,s:s,s:s}", "name", name, "label", saying_text_in(d->language, label),
	                      "value", value);
	json_array_append_new(json_object_get(d->section, "figures"), x);
	return x;
}

void document_number(struct document *d, const char *name, enum saying label, int64_t value)
{
	char text[24];
	snprintf(text, sizeof text, "%lld", (long long)value);
	json_object_set_new(document_figure(d, name, label, text), "x", json_integer(value));
}

json_t *document_table(struct document *d, const char *name, const enum saying *heads)
{
	json_t *list = json_array(), *x = json_pack("{s:s,s:o,s:[]}", "name", name, "heads", list, "rows");
	for (; *heads; heads++)
		json_array_append_new(list, json_string(saying_text_in(d->language, *heads)));
	json_array_append_new(json_object_get(d->section, "tables"), x);
	return json_object_get(x, "rows");
}

json_t *document_row(json_t *rows)
{
	json_t *cells = json_array();
	json_array_append_new(rows, json_pack("{s:o}", "cells", cells));
	return cells;
}

void document_cell(json_t *cells, const char *text)
{
	json_array_append_new(cells, *text ? name_told(text, CELL_MAX) : json_string("–"));
}

void document_word(const struct document *d, json_t *cells, enum saying word)
{
	document_cell(cells, saying_text_in(d->language, word));
}

void document_said(const struct document *d, json_t *cells, const struct say *say)
{
	char text[SENTENCE_MAX];
	say_part_in(d->language, say, text, sizeof text);
	document_cell(cells, text);
}

void document_decimal(const struct document *d, char *number)
{
	char *point = strchr(number, '.');
	if (point)
		*point = *saying_text_in(d->language, SAY_RW_DECIMAL);
}

/* --- as CSV ------------------------------------------------------------------------------------------------------------- */

static int csv_text(struct buf *out, const char *text, int last)
{
	int quoted = strpbrk(text, ",\"\r\n") != NULL, n = quoted ? buf_add_text(out, "\"") : 0;
	for (; n == 0 && *text; text++)
		n = *text == '"' ? buf_add_text(out, "\"\"") : buf_add(out, text, 1);
	if (n == 0 && quoted)
		n = buf_add_text(out, "\"");
	return n == 0 ? buf_add_text(out, last ? "\r\n" : ",") : n;
}

static int csv_line(struct buf *out, const char *const fields[8])
{
	int n = 0;
	for (int i = 0; n == 0 && i < 8; i++)
		n = csv_text(out, fields[i] ? fields[i] : "", i == 7);
	return n;
}

static int csv_says(struct buf *out, const char *section, const char *name, const json_t *sentences)
{
	size_t i;
	const json_t *x;
	int n = 0;
	json_array_foreach(sentences, i, x) n =
	    n < 0 ? n
	          : csv_line(out, (const char *const[8]){section, "says", name, NULL, json_string_value(x),
	                                                 NULL, NULL, NULL});
	return n;
}

static const char *thousandths(const json_t *x, const char *key, char out[32])
{
	const json_t *value = json_object_get(x, key);
	if (!value)
		return "";
	snprintf(out, 32, "%.3f", (double)json_integer_value(value) / 1000);
	return out;
}

static int csv_charts(struct buf *out, const json_t *section)
{
	size_t i, k;
	const json_t *c, *p;
	int n = 0;
	char value[32], lower[32], upper[32];
	json_array_foreach(json_object_get(section, "charts"), i, c)
	{
		json_array_foreach(json_object_get(c, "points"), k, p) n =
		    n < 0 ? n
		          : csv_line(out, (const char *const[8]){
		                              json_text(section, "name"),
		                              json_truth(p, "running") ? "running" : "point",
		                              json_text(c, "name"), json_text(p, "label"),
		                              thousandths(p, "value", value), thousandths(p, "lower", lower),
		                              thousandths(p, "upper", upper), json_text(p, "signal")});
		n = n < 0 ? n
		          : csv_says(out, json_text(section, "name"), json_text(c, "name"),
		                     json_object_get(c, "says"));
	}
	return n;
}

static int csv_tables(struct buf *out, const json_t *section)
{
	size_t i, k, m;
	const json_t *t, *r, *c;
	int n = 0;
	char name[100];
	json_array_foreach(json_object_get(section, "tables"), i, t)
	    json_array_foreach(json_object_get(t, "rows"), k, r)
	        json_array_foreach(json_object_get(r, "cells"), m, c)
	{
		snprintf(name, sizeof name, "%s row %d", json_text(t, "name"), (int)k + 1);
		n = n < 0
		        ? n
		        : csv_line(out, (const char *const[8]){
		                            json_text(section, "name"), "cell", name,
		                            json_string_value(json_array_get(json_object_get(t, "heads"), m)),
		                            json_string_value(c), NULL, NULL, NULL});
	}
	return n;
}

int document_csv(const json_t *document, struct buf *out)
{
	size_t i, k;
	const json_t *s, *x;
	int n = buf_add_text(out, "section,kind,name,label,value,lower,upper,signal\r\n");
	n = n < 0 ? n : csv_says(out, "about", NULL, json_object_get(document, "about"));
	json_array_foreach(json_object_get(document, "sections"), i, s)
	{
		json_array_foreach(json_object_get(s, "figures"), k, x) n =
		    n < 0 ? n
		          : csv_line(out, (const char *const[8]){json_text(s, "name"), "figure",
		                                                 json_text(x, "name"), json_text(x, "label"),
		                                                 json_text(x, "value"), NULL, NULL, NULL});
		n = n < 0 ? n : csv_says(out, json_text(s, "name"), NULL, json_object_get(s, "says"));
		n = n < 0 ? n : csv_tables(out, s);
		n = n < 0 ? n : csv_charts(out, s);
	}
	return n;
}
