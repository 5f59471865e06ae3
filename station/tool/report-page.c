#include "tool/report-page.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/base64.h"
#include "base/file.h"
#include "tool/print.h"

/* Colours differ in lightness as well, and nothing is said by colour alone. */
static const char style[] =
    "body{font:16px/1.5 'DejaVu Sans',sans-serif;color:#111;background:#fff;max-width:62rem;margin:0 "
    "auto;padding:1rem 1.5rem}"
    "h1{font-size:1.6rem;margin:.2rem 0}h2{font-size:1.25rem;border-top:2px solid #111;padding-top:.5rem;"
    "margin-top:2rem}h3{font-size:1.05rem;margin:1.2rem 0 .3rem}"
    "table{border-collapse:collapse;margin:.6rem 0;width:100%}"
    "th,td{border-bottom:1px solid #767676;padding:.25rem 0 "
    ".25rem;padding-inline-end:.6rem;text-align:start;vertical-align:top}"
    ".wide{overflow-x:auto}th{font-weight:600}.about,.says{color:#333}"
    "figure{margin:1rem 0;break-inside:avoid}figure img{max-width:100%;height:auto;border:1px solid #bbb}"
    "summary{cursor:pointer;padding:.4rem 0}"
    "a{color:#0b3d91}a:focus-visible,summary:focus-visible,.wide:focus-visible{outline:3px solid "
    "#0b57d0;outline-offset:2px}"
    "nav a,nav span{display:inline-block;padding:.35rem 1rem .35rem 0}"
    "@media print{body{max-width:none;padding:0;font-size:10pt}details,nav{display:none}h2,h3{break-after:"
    "avoid}"
    "tr{break-inside:avoid}}";

struct page {
	struct buf *out; /* borrowed */
	const struct language *language;
	const char *folder; /* of the charts */
	int result;
};

static void add(struct page *p, const char *text)
{
	if (p->result == 0)
		p->result = buf_add_text(p->out, text);
}

static const char *word(const struct page *p, enum saying saying)
{
	return saying_text_in(p->language, saying);
}

/* As text of HTML, in or out of an attribute. */
static void add_said(struct page *p, const char *text)
{
	char one[2] = "";
	for (const char *c = text; *c && p->result == 0; c++) {
		one[0] = *c;
		add(p, *c == '&'   ? "&amp;"
		       : *c == '<' ? "&lt;"
		       : *c == '>' ? "&gt;"
		       : *c == '"' ? "&quot;"
		                   : one);
	}
}

static void add_in(struct page *p, const char *before, const char *text, const char *behind)
{
	add(p, before);
	add_said(p, text);
	add(p, behind);
}

static void add_list(struct page *p, const json_t *texts, const char *class)
{
	size_t i;
	json_t *x;
	json_array_foreach((json_t *)texts, i, x)
	{
		add_in(p, "<p class=\"", class, "\">");
		add_in(p, "", json_string_value(x), "</p>\n");
	}
}

/* --- figures and tables ---------------------------------------------------------------------------------------- */

static void add_figures(struct page *p, const json_t *figures)
{
	size_t i;
	json_t *x;
	if (!json_array_size(figures))
		return;
	add_in(p, "<table><thead><tr><th scope=\"col\">", word(p, SAY_RW_PAGE_FIGURE), "</th>");
	add_in(p, "<th scope=\"col\">", word(p, SAY_RW_PAGE_VALUE), "</th></tr></thead><tbody>\n");
	json_array_foreach((json_t *)figures, i, x)
	{
		add_in(p, "<tr><th scope=\"row\">", json_text(x, "label"), "</th>");
		add_in(p, "<td>", json_text(x, "value"), "</td></tr>\n");
	}
	add(p, "</tbody></table>\n");
}

static void add_table(struct page *p, const json_t *table)
{
	size_t i, k;
	json_t *x, *row;
	add(p, "<div class=\"wide\" tabindex=\"0\"><table><thead><tr>");
	json_array_foreach(json_object_get(table, "heads"), i, x)
	    add_in(p, "<th scope=\"col\">", json_string_value(x), "</th>");
	add(p, "</tr></thead><tbody>\n");
	json_array_foreach(json_object_get(table, "rows"), k, row)
	{
		add(p, "<tr>");
		json_array_foreach(json_object_get(row, "cells"), i, x)
		    add_in(p, "<td>", json_string_value(x), "</td>");
		add(p, "</tr>\n");
	}
	add(p, "</tbody></table></div>\n");
}

/* --- charts ---------------------------------------------------------------------------------------------------- */

/* Thousandths, as the document has all values of a chart; "–" where there is none. */
static void add_value(struct page *p, const json_t *point, const char *key)
{
	const json_t *x = json_object_get(point, key);
	char text[40] = "–";
	if (x)
		snprintf(text, sizeof text, "%.3g", (double)json_integer_value(x) / 1000);
	char *dot = strchr(text, '.');
	if (dot)
		*dot = *word(p, SAY_RW_DECIMAL);
	add_in(p, "<td>", text, "</td>");
}

static enum saying signal_word(const json_t *point)
{
	const char *signal = json_text(point, "signal");
	return strcmp(signal, "line") == 0    ? SAY_RW_PAGE_BEYOND
	       : strcmp(signal, "run") == 0   ? SAY_RW_PAGE_RUN
	       : json_truth(point, "running") ? SAY_RW_PAGE_RUNNING
	                                      : SAY_NONE;
}

static void add_points(struct page *p, const json_t *chart)
{
	static const enum saying heads[] = {SAY_RW_PAGE_AT, SAY_RW_PAGE_VALUE, SAY_RW_PAGE_LOWER,
	                                    SAY_RW_PAGE_UPPER, SAY_RW_PAGE_SIGNAL};
	size_t i;
	json_t *x;
	add_in(p, "<details><summary>", word(p, SAY_RW_PAGE_VALUES), ": ");
	add_in(p, "", json_text(chart, "title"),
	       "</summary><div class=\"wide\" tabindex=\"0\"><table><thead><tr>");
	for (i = 0; i < sizeof heads / sizeof *heads; i++)
		add_in(p, "<th scope=\"col\">", word(p, heads[i]), "</th>");
	add(p, "</tr></thead><tbody>\n");
	json_array_foreach(json_object_get(chart, "points"), i, x)
	{
		add_in(p, "<tr><th scope=\"row\">", json_text(x, "label"), "</th>");
		add_value(p, x, "value");
		add_value(p, x, "lower");
		add_value(p, x, "upper");
		add_in(p, "<td>", word(p, signal_word(x)), "</td></tr>\n");
	}
	add(p, "</tbody></table></div></details>\n");
}

/* As a picture of its own: what is drawn has names inside, which would be those of another chart too. */
static void add_picture(struct page *p, const json_t *chart)
{
	char path[600];
	_cleanup_(buf_free) struct buf svg = {0};
	snprintf(path, sizeof path, "%.400s/%.100s.svg", p->folder, json_text(chart, "name"));
	if (p->result == 0)
		p->result = file_read(path, &svg);
	add_in(p, "<img alt=\"", json_text(chart, "title"), ", ");
	add_in(p, "", json_text(chart, "unit"), "\" src=\"data:image/svg+xml;base64,");
	if (p->result == 0)
		p->result = base64_write(p->out, svg.data, svg.size);
	add(p, "\">\n");
}

static void add_chart(struct page *p, const json_t *chart)
{
	size_t drawn = json_array_size(json_object_get(chart, "points"));
	add_in(p, "<h3>", json_text(chart, "title"), "</h3>\n<figure>\n");
	if (drawn)
		add_picture(p, chart);
	add(p, "<figcaption>\n");
	add_list(p, json_object_get(chart, "says"), "says");
	add(p, "</figcaption>\n</figure>\n");
	if (drawn)
		add_points(p, chart);
}

/* --- all of it --------------------------------------------------------------------------------------------------- */

static void add_section(struct page *p, const json_t *s)
{
	size_t i;
	json_t *x;
	add_in(p, "<section aria-labelledby=\"", json_text(s, "name"), "\">\n");
	add_in(p, "<h2 id=\"", json_text(s, "name"), "\">");
	add_in(p, "", json_text(s, "title"), "</h2>\n");
	add_list(p, json_object_get(s, "says"), "says");
	add_figures(p, json_object_get(s, "figures"));
	json_array_foreach(json_object_get(s, "tables"), i, x) add_table(p, x);
	json_array_foreach(json_object_get(s, "charts"), i, x) add_chart(p, x);
	add(p, "</section>\n");
}

static void add_link(struct page *p, const struct page_link *link)
{
	if (*link->to) {
		add_in(p, "<a href=\"", link->to, "\">");
		add_in(p, "", link->said, "</a>\n");
	} else {
		add_in(p, "<span>", link->said, "</span>\n");
	}
}

static void add_head(struct page *p, const char *site, const char *title, const char *period)
{
	add_in(p, "<!doctype html>\n<html lang=\"", language_code(p->language), "\"");
	add(p, language_is_rtl(p->language) ? " dir=\"rtl\">" : ">");
	add(p, "\n<head>\n<meta charset=\"utf-8\">\n"
	       "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
	       "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; "
	       "style-src "
	       "'unsafe-inline'\">\n");
	add_in(p, "<title>", title, *period ? ", " : "");
	add_in(p, "", period, "</title>\n<style>");
	add(p, style);
	add_in(p, "</style>\n</head>\n<body>\n<header>\n<p class=\"about\">", site, "</p>\n");
	add_in(p, "<h1>", title, "</h1>\n");
	if (*period)
		add_in(p, "<p>", period, "</p>\n");
	add(p, "</header>\n");
}

static void add_document(struct page *p, const json_t *d, struct page_links links)
{
	size_t i;
	json_t *x;
	add_head(p, json_text(d, "site"), json_text(d, "title"), json_text(d, "period"));
	if (links.n)
		add_in(p, "<nav aria-label=\"", word(p, SAY_RW_PAGE_OTHERS), "\">\n");
	for (int k = 0; k < links.n; k++)
		add_link(p, &links.list[k]);
	add(p, links.n ? "</nav>\n<main>\n" : "<main>\n");
	add_list(p, json_object_get(d, "about"), "about");
	json_array_foreach(json_object_get(d, "sections"), i, x) add_section(p, x);
	add_in(p, "</main>\n<footer><p class=\"about\">", json_text(d, "time"),
	       "</p></footer>\n</body>\n</html>\n");
}

static void remove_charts(const json_t *d, const char *folder)
{
	size_t i, k;
	json_t *s, *x;
	char path[600];
	json_array_foreach(json_object_get(d, "sections"), i, s)
	    json_array_foreach(json_object_get(s, "charts"), k, x)
	{
		snprintf(path, sizeof path, "%.400s/%.100s.svg", folder, json_text(x, "name"));
		unlink(path);
	}
	rmdir(folder);
}

int report_page_text(const json_t *document, const struct language *language, struct page_links links,
                     struct buf *out, struct error *e)
{
	const char *tmp = getenv("TMPDIR");
	char folder[500];
	snprintf(folder, sizeof folder, "%.400s/bandtally-page-XXXXXX", tmp && *tmp ? tmp : "/tmp");
	if (!mkdtemp(folder))
		return error_set(e, -errno, "cannot make a folder for the charts: %s: check $TMPDIR",
		                 strerror(errno));
	struct page p = {.folder = folder, .out = out, .language = language};
	if (print_document(document, "--svg", folder) != 0)
		p.result = -EIO;
	add_document(&p, document, links);
	remove_charts(document, folder);
	return p.result < 0 ? error_set(e, p.result, "the report's page cannot be made: %s: try again",
	                                strerror(-p.result))
	                    : 0;
}

int report_page(const json_t *document, const struct language *language, const char *file, struct error *e)
{
	_cleanup_(buf_free) struct buf text = {0};
	int n = report_page_text(document, language, (struct page_links){0}, &text, e);
	if (n < 0)
		return n;
	n = file_replace_ours(file, 0600, text.data, text.size, "<!");
	return n < 0 ? error_set(e, n, "the page %.300s cannot be written: %s: check the folder", file,
	                         file_words(n))
	             : 0;
}

int report_index_text(const struct page_index *index, struct buf *out, struct error *e)
{
	struct page p = {.out = out, .language = index->language};
	add_head(&p, index->site, index->title, "");
	add(&p, "<main>\n");
	for (const char *const *about = index->about; *about; about++)
		add_in(&p, "<p class=\"about\">", *about, "</p>\n");
	for (int i = 0; i < index->n_groups; i++) {
		const struct page_group *g = &index->groups[i];
		add_in(&p, "<section>\n<h2>", g->title, "</h2>\n<ul>\n");
		for (int k = 0; k < g->links.n; k++) {
			add(&p, "<li>");
			add_link(&p, &g->links.list[k]);
			add(&p, "</li>\n");
		}
		add(&p, "</ul>\n</section>\n");
	}
	add(&p, "</main>\n</body>\n</html>\n");
	return p.result < 0 ? error_set(e, p.result, "the page of all reports cannot be made: %s: try again",
	                                strerror(-p.result))
	                    : 0;
}
