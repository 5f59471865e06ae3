#include "tool/report-document.h"

#include <errno.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report/days.h"
#include "tell/outline.h"
#include "words/report-words.h"

#define SENTENCE_MAX 600
#define ROWS_MAX 400 /* of one table on paper */
#define DATES_MAX 40

struct writing {
	const struct report_source *from;
	const struct figures *f;
	json_t *sections, *section, *chart;
};

/* --- the parts of a document ------------------------------------------------------------------------------- */

static void open_section(struct writing *w, const char *name, const char *title)
{
	w->section = json_pack("{s:s,s:s,s:[],s:[],s:[],s:[]}", "name", name, "title", title, "says",
	                       "figures", "tables", "charts");
	json_array_append_new(w->sections, w->section);
}

static void add_text(json_t *to, const char *key, const char *format, va_list more)
{
	char text[SENTENCE_MAX];
	vsnprintf(text, sizeof text, format, more);
	json_array_append_new(json_object_get(to, key), json_string(text));
}

__attribute__((format(printf, 2, 3))) static void says(struct writing *w, const char *format, ...)
{
	va_list more;
	va_start(more, format);
	add_text(w->section, "says", format, more);
	va_end(more);
}

__attribute__((format(printf, 2, 3))) static void chart_says(struct writing *w, const char *format, ...)
{
	va_list more;
	va_start(more, format);
	add_text(w->chart, "says", format, more);
	va_end(more);
}

static json_t *figure(struct writing *w, const char *name, const char *label, const char *value)
{
	json_t *x = json_pack("{s:s,s:s,s:s}", "name", name, "label", label, "value", value);
	json_array_append_new(json_object_get(w->section, "figures"), x);
	return x;
}

static void number(struct writing *w, const char *name, const char *label, int64_t value)
{
	char text[24];
	snprintf(text, sizeof text, "%lld", (long long)value);
	json_object_set_new(figure(w, name, label, text), "x", json_integer(value));
}

/* Two digits that say something, and never '0.0' for what is not 0. */
static const char *percent(double share, char out[16])
{
	double p = 100 * share;
	snprintf(out, 16, p >= 10 || p == 0 ? "%.0f" : p >= 1 ? "%.1f" : p >= 0.1 ? "%.2f" : "%.2g", p);
	return out;
}

static void share(struct writing *w, const char *name, const char *label, const struct share *s)
{
	char text[SENTENCE_MAX], here[16], low[16], high[16];
	if (!s->n)
		snprintf(text, sizeof text, "%s", RW_SHARE_OF_NOTHING);
	else if (!s->x)
		snprintf(text, sizeof text, RW_SHARE_NONE, s->n, percent(s->high, high));
	else
		snprintf(text, sizeof text, RW_SHARE, s->x, s->n, percent((double)s->x / s->n, here),
		         percent(s->low, low), percent(s->high, high));
	json_t *x = figure(w, name, label, text);
	json_object_set_new(x, "x", json_integer(s->x));
	json_object_set_new(x, "n", json_integer(s->n));
}

/* Heads as one text, parted by '|'. */
static json_t *table(struct writing *w, const char *name, const char *heads)
{
	json_t *list = json_array(), *x = json_pack("{s:s,s:o,s:[]}", "name", name, "heads", list, "rows");
	for (const char *at = heads; *at;) {
		size_t n = strcspn(at, "|");
		json_array_append_new(list, json_stringn(at, n));
		at += n + (at[n] == '|');
	}
	json_array_append_new(json_object_get(w->section, "tables"), x);
	return json_object_get(x, "rows");
}

static json_t *row(json_t *rows)
{
	json_t *cells = json_array();
	json_array_append_new(rows, json_pack("{s:o}", "cells", cells));
	return cells;
}

static void cell(json_t *cells, const char *text)
{
	json_array_append_new(cells, json_string(text));
}

static void cell_number(json_t *cells, int held_back, int64_t value)
{
	char text[24];
	snprintf(text, sizeof text, "%lld", (long long)value);
	cell(cells, held_back ? RW_HELD_BACK : text);
}

static void cell_minutes(json_t *cells, const struct minutes *m, double value, int at_least)
{
	char text[24], whole[40];
	snprintf(text, sizeof text, "%.1f", value);
	snprintf(whole, sizeof whole, at_least ? RW_AT_LEAST : "%s", text);
	cell(cells, m->held_back ? RW_HELD_BACK : !m->n ? "–" : isnan(value) ? RW_NOT_KNOWN : whole);
}

/* --- charts ----------------------------------------------------------------------------------------------------- */

static void set_thousandths(json_t *x, const char *key, double value)
{
	if (!isnan(value))
		json_object_set_new(x, key, json_integer((json_int_t)llround(1000 * value)));
}

static json_t *point(const struct point *p, double scale)
{
	static const char *const signals[] = {"none", "line", "run"};
	char day[11];
	day_text(p->day, day);
	json_t *x = json_pack("{s:s,s:s,s:b,s:i}", "label", day, "signal", signals[p->signal], "running",
	                      (int)p->running, "n", p->n);
	set_thousandths(x, "value", scale * p->value);
	set_thousandths(x, "upper", scale * p->upper);
	set_thousandths(x, "lower", scale * p->lower);
	return x;
}

static int has_running(const struct chart *c)
{
	return c->points[c->n].running;
}

/* Its points, or why there are none. 1 where it is drawn. */
static int chart(struct writing *w, const char *name, const char *title, const char *unit, const char *axis,
                 const struct chart *c, double scale)
{
	w->chart = json_pack("{s:s,s:s,s:s,s:s,s:[],s:[]}", "name", name, "title", title, "unit", unit,
	                     "axis", axis, "points", "says");
	json_array_append_new(json_object_get(w->section, "charts"), w->chart);
	switch (c->why) {
	case CHART_NONE:
		chart_says(w, "%s", RW_CHART_NONE);
		return 0;
	case CHART_FEW:
		chart_says(w, "%s", RW_CHART_FEW);
		return 0;
	case CHART_RARE:
		chart_says(w, RW_CHART_RARE, FIGURES_EXPECTED);
		return 0;
	case CHART_DRAWN:
		break;
	}
	for (int i = 0; i < c->n + has_running(c); i++)
		json_array_append_new(json_object_get(w->chart, "points"), point(&c->points[i], scale));
	if (c->limits)
		set_thousandths(w->chart, "centre", scale * c->centre);
	return 1;
}

/* What must stand under each chart. */
static void chart_end(struct writing *w, const struct chart *c)
{
	char text[16];
	if (c->left_out)
		chart_says(w, RW_CHART_LEFT_OUT, c->left_out);
	if (!c->limits) {
		chart_says(w, RW_CHART_NO_LIMITS, FIGURES_EVENTS);
		return;
	}
	if (c->signals)
		chart_says(w, RW_CHART_SIGNALS, c->signals);
	else
		chart_says(w, "%s", RW_CHART_NO_SIGNALS);
	chart_says(w, RW_CHART_FALSE, percent(c->false_share, text));
}

/* --- the sections -------------------------------------------------------------------------------------------------- */

static void tell_cases(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "cases", RW_CASES);
	says(w, "%s", RW_CASES_FORCED);
	number(w, "cases", RW_CASES_ALL, f->cases);
	number(w, "reconciled", RW_CASES_RECONCILED, f->reconciled);
	number(w, "unresolved", RW_CASES_UNRESOLVED, f->unresolved);
	number(w, "cancelled", RW_CASES_CANCELLED, f->cancelled);
	number(w, "open", RW_CASES_OPEN, f->open);
	number(w, "patient-left", RW_CASES_LEFT, f->patient_left);
	number(w, "clock", RW_CASES_CLOCK, f->clock);
	if (f->clock)
		says(w, "%s: %s", RW_CASES_CLOCK, RW_CASES_CLOCK_NOTE);
}

static const char *const parts[DIGIT_PARTS] = {RW_PART_ALL, RW_PART_FINGER, RW_PART_THUMB, RW_PART_TOE,
                                               RW_PART_OTHER};
static const char *const part_names[DIGIT_PARTS] = {"all", "finger", "thumb", "toe", "other"};

static void tell_minutes_chart(struct writing *w, int part)
{
	char title[80], name[32];
	const struct chart *c = &w->f->minutes_charts[part];
	snprintf(title, sizeof title, RW_CHART_MINUTES, parts[part]);
	snprintf(name, sizeof name, "minutes-%s", part_names[part]);
	if (!chart(w, name, title, RW_MINUTES_UNIT, "log", c, 1))
		return;
	chart_says(w, RW_CHART_MINUTES_HOW, c->group);
	chart_says(w, "%s", RW_CHART_MINUTES_LIMITS);
	chart_end(w, c);
}

static void tell_minutes(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "minutes", RW_MINUTES);
	says(w, "%s", RW_MINUTES_HOW);
	if (f->minutes[0].no_reminder)
		says(w, RW_MINUTES_NO_REMINDER, f->minutes[0].no_reminder);
	if (f->digits_left_out)
		says(w, RW_MINUTES_LEFT_OUT, f->digits_left_out);
	json_t *rows = table(w, "minutes",
	                     RW_MINUTES_PART "|" RW_MINUTES_N "|" RW_MINUTES_MEDIAN "|" RW_MINUTES_P90
	                                     "|" RW_MINUTES_LONGEST "|" RW_MINUTES_PAST "|" RW_MINUTES_ON
	                                     "|" RW_MINUTES_GAP);
	for (int part = 0; part < DIGIT_PARTS; part++) {
		const struct minutes *m = &f->minutes[part];
		json_t *cells = row(rows);
		cell(cells, parts[part]);
		cell_number(cells, m->held_back, m->n);
		cell_minutes(cells, m, m->median, 0);
		cell_minutes(cells, m, m->p90, 0);
		cell_minutes(cells, m, m->longest, m->longest_at_least);
		if (m->n && m->no_reminder == m->n && !m->held_back)
			cell(cells, RW_NOT_KNOWN);
		else
			cell_number(cells, m->held_back, m->past);
		cell_number(cells, m->held_back, m->on);
		cell_number(cells, m->held_back, m->at_least);
	}
	for (int part = PART_FINGER; part <= PART_TOE; part++)
		tell_minutes_chart(w, part);
}

static const char *step_name(const struct writing *w, int step, char out[POLICY_TEXT_MAX])
{
	const struct policy *p = &w->from->settings->policy;
	snprintf(out, POLICY_TEXT_MAX, RW_FOUND_BEFORE, step);
	return step >= 1 && step <= p->n_search ? p->search[step - 1] : out;
}

static void tell_discrepancies(struct writing *w)
{
	const struct figures *f = w->f;
	char text[POLICY_TEXT_MAX];
	json_t *rows = NULL;
	open_section(w, "discrepancies", RW_DISCREPANCIES);
	says(w, "%s", RW_DISCREPANCIES_MIND);
	share(w, "discrepancy", RW_DISCREPANCIES_CASES, &f->discrepancy);
	number(w, "closed", RW_DISCREPANCIES_CLOSED, f->closed);
	number(w, "search-done", RW_SEARCH_DONE, f->steps_done);
	number(w, "search-not-done", RW_SEARCH_NOT_DONE, f->steps_not_done);
	for (int i = 0; i < FIGURES_STEPS; i++) {
		if (!f->found.count[i])
			continue;
		rows = rows ? rows : table(w, "found", RW_FOUND_WHERE "|" RW_FOUND_TIMES);
		json_t *cells = row(rows);
		cell(cells, step_name(w, i, text));
		cell_number(cells, 0, f->found.count[i]);
	}
	if (!chart(w, "cases-between", RW_CHART_CASES, RW_CHART_CASES_UNIT, "linear", &f->cases_chart, 1))
		return;
	chart_says(w, "%s", RW_CHART_CASES_HOW);
	if (f->cases_chart.limits)
		chart_says(w, RW_CHART_CASES_LIMITS);
	if (f->cases_chart.limits && isnan(f->cases_chart.lower))
		chart_says(w, "%s", RW_CHART_CASES_NO_LOW);
	chart_end(w, &f->cases_chart);
}

static void tell_unresolved(struct writing *w)
{
	const struct figures *f = w->f;
	char dates[DATES_MAX * 12 + 1] = "", text[16];
	open_section(w, "unresolved", RW_UNRESOLVED);
	number(w, "unresolved-cases", RW_CASES_UNRESOLVED, f->unresolved);
	number(w, "numbers-owed", RW_UNRESOLVED_NUMBERS, f->numbers_owed);
	if (chart(w, "days-between", RW_CHART_DAYS, RW_CHART_DAYS_UNIT, "linear", &f->days_chart, 1)) {
		chart_says(w, "%s", RW_CHART_DAYS_HOW);
		chart_says(w, RW_CHART_DAYS_LIMITS);
		chart_says(w, RW_CHART_DAYS_RUNNING, percent(f->running_chance, text));
		chart_end(w, &f->days_chart);
		return;
	}
	for (int i = 0; i < f->n_unresolved_days && i < DATES_MAX; i++) {
		size_t used = strlen(dates);
		char day[11];
		day_text(f->unresolved_days[i], day);
		snprintf(dates + used, sizeof dates - used, "%s%s", used ? ", " : "", day);
	}
	if (*dates)
		chart_says(w, RW_UNRESOLVED_DATES, FIGURES_EVENTS, dates);
}

static void tell_slips(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "slips", RW_SLIPS);
	says(w, "%s", RW_SLIPS_MIND);
	number(w, "slips", RW_SLIPS_QUEUED, f->slips);
	number(w, "slips-seen", RW_SLIPS_SEEN, f->slips_seen);
	share(w, "slips-not-seen", RW_SLIPS_NOT_SEEN, &f->not_seen);
	if (!chart(w, "slips-not-seen", RW_CHART_SLIPS, RW_CHART_SLIPS_UNIT, "linear", &f->slips_chart, 100))
		return;
	chart_says(w, "%s", RW_CHART_SLIPS_HOW);
	chart_end(w, &f->slips_chart);
}

static void tell_packs(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "packs", RW_PACKS);
	says(w, "%s", RW_PACKS_MIND);
	says(w, "%s", RW_PACKS_ROOMS);
	number(w, "packs-numbered", RW_PACKS_NUMBERED, f->packs_numbered);
	number(w, "packs-opened", RW_PACKS_OPENED, f->packs_opened);
	number(w, "packs-returned", RW_PACKS_RETURNED, f->packs_returned);
	number(w, "items-isolated", RW_PACKS_ISOLATED, f->isolated);
	figure(w, "packs-other", RW_PACKS_OTHER, RW_NOT_KNOWN);
}

static void tell_evidence(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "evidence", RW_EVIDENCE);
	says(w, "%s", RW_EVIDENCE_MIND);
	number(w, "by-mark", RW_EVIDENCE_MARK, f->by_mark);
	number(w, "by-shown", RW_EVIDENCE_SHOWN, f->by_shown);
	number(w, "typed", RW_EVIDENCE_TYPED, f->typed);
}

static void tell_entry(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "entry", RW_ENTRY);
	share(w, "single", RW_ENTRY_SINGLE, &f->single);
	share(w, "keyed", RW_ENTRY_KEYED, &f->keyed);
	share(w, "late", RW_ENTRY_LATE, &f->late);
	share(w, "owed", RW_ENTRY_OWED, &f->owed);
	share(w, "overridden", RW_ENTRY_OVERRIDDEN, &f->overridden);
	share(w, "corrected", RW_ENTRY_CORRECTED, &f->corrected);
}

static void tell_after(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "after", RW_AFTER);
	share(w, "found-after", RW_AFTER_FOUND, &f->found_after);
	number(w, "power-cuts", RW_AFTER_CUTS, f->power_cuts);
	number(w, "unfollowed", RW_AFTER_UNFOLLOWED, f->unfollowed);
	if (f->unfollowed)
		says(w, "%s: %s", RW_AFTER_UNFOLLOWED, RW_AFTER_UNFOLLOWED_NOTE);
}

static void tell_coverage(struct writing *w)
{
	const struct figures *f = w->f;
	open_section(w, "coverage", RW_COVERAGE);
	if (!f->ask.plan) {
		says(w, "%s", RW_COVERAGE_NONE);
		return;
	}
	says(w, "%s", RW_COVERAGE_MIND);
	json_t *rows =
	    table(w, "coverage",
	          RW_COVERAGE_MONTH "|" RW_COVERAGE_PLANNED "|" RW_COVERAGE_RECORDED "|" RW_COVERAGE_EMPTY
	                            "|" RW_COVERAGE_UNPLANNED "|" RW_COVERAGE_UNKNOWN);
	for (int i = 0; i < f->n_coverage; i++) {
		const struct coverage *c = &f->coverage[i];
		int few = c->recorded > 0 && c->recorded < FIGURES_CASES;
		char month[11];
		day_text(c->month * 100 + 1, month);
		month[7] = 0;
		json_t *cells = row(rows);
		cell(cells, month);
		cell_number(cells, 0, c->planned);
		cell_number(cells, few, c->recorded);
		cell_number(cells, 0, c->empty_days);
		cell_number(cells, few, c->unplanned);
		cell_number(cells, 0, c->unknown_days);
	}
}

static const char *room_name(const struct writing *w, int32_t number_of, char out[40])
{
	const struct room *r = recorded_room(w->from->settings, number_of);
	snprintf(out, 40, "%d", (int)number_of);
	return r && *r->name ? r->name : out;
}

static void tell_rooms(struct writing *w)
{
	const struct figures *f = w->f;
	char name[40];
	open_section(w, "rooms", RW_ROOMS);
	says(w, "%s", RW_ROOMS_MIND);
	json_t *rows = table(
	    w, "rooms", RW_ROOMS_ROOM "|" RW_ROOMS_CASES "|" RW_ROOMS_DISCREPANCIES "|" RW_ROOMS_UNRESOLVED);
	for (int i = 0; i < f->n_rooms; i++) {
		const struct room_figures *r = &f->rooms[i];
		json_t *cells = row(rows);
		cell(cells, room_name(w, r->room, name));
		cell_number(cells, r->held_back, r->cases);
		cell_number(cells, r->held_back, r->discrepancies);
		cell_number(cells, r->held_back, r->unresolved);
	}
}

static void tell_signs(struct writing *w)
{
	const struct figures *f = w->f;
	char text[40];
	open_section(w, "signs", RW_SIGNS);
	says(w, "%s", RW_SIGNS_MIND);
	says(w, RW_SIGNS_WHAT, OUTLINE_ANSWER_MS / 1000, OUTLINE_LOOK_MS / 1000, OUTLINE_BADGES_MS / 1000,
	     OUTLINE_BURST, OUTLINE_BURST_MS / 1000, OUTLINE_EVEN, OUTLINE_EVEN_MS);
	if (f->n_signs > ROWS_MAX)
		says(w, RW_SIGNS_LEFT_OUT, f->n_signs - ROWS_MAX);
	json_t *rows =
	    table(w, "signs",
	          RW_ROOMS_ROOM "|" RW_SIGNS_WEEK "|" RW_ROOMS_CASES "|" RW_SIGNS_ANSWERS "|" RW_SIGNS_LOOKS
	                        "|" RW_SIGNS_BADGES "|" RW_SIGNS_TYPED "|" RW_SIGNS_EVEN);
	for (int i = 0; i < f->n_signs && i < ROWS_MAX; i++) {
		const struct signs *s = &f->signs[i];
		json_t *cells = row(rows);
		cell(cells, room_name(w, s->room, text));
		day_text(s->week, text);
		cell(cells, text);
		const int values[] = {s->cases,        s->fast_answers, s->fast_looks,
		                      s->close_badges, s->keyed_bursts, s->even_scans};
		for (size_t k = 0; k < sizeof values / sizeof *values; k++)
			cell_number(cells, s->held_back, values[k]);
	}
}

/* --- all of it ------------------------------------------------------------------------------------------------------- */

static void about(struct writing *w, json_t *doc)
{
	const struct recorded *at = w->from->settings;
	char hex[2 * CHAIN_BYTES + 1], from[11], to[11], name[40], text[SENTENCE_MAX];
	json_t *list = json_array();
	day_text(w->f->ask.span.from, from);
	day_text(w->f->ask.span.to, to);
	if (w->f->ask.room)
		snprintf(text, sizeof text, RW_ONE_ROOM, from, to, room_name(w, w->f->ask.room, name));
	else
		snprintf(text, sizeof text, RW_ALL_ROOMS, from, to);
	json_object_set_new(doc, "period", json_string(text));
	chain_hex(&w->from->chain, hex);
	snprintf(text, sizeof text, RW_MADE_OF, *at->site_name ? at->site_name : at->site,
	         (long long)w->from->seq, hex);
	json_array_append_new(list, json_string(text));
	json_array_append_new(list, json_string(RW_ABOUT_RECORDED));
	snprintf(text, sizeof text, RW_ABOUT_HELD_BACK, FIGURES_CASES, FIGURES_PEOPLE);
	json_array_append_new(list, json_string(text));
	json_array_append_new(list, json_string(RW_ABOUT_POLICY));
	json_object_set_new(doc, "about", list);
}

static void tell_all(struct writing *w)
{
	tell_cases(w);
	tell_minutes(w);
	tell_discrepancies(w);
	tell_unresolved(w);
	tell_slips(w);
	tell_packs(w);
	tell_evidence(w);
	tell_entry(w);
	tell_after(w);
	tell_coverage(w);
	tell_rooms(w);
	tell_signs(w);
}

/* Why there is nothing to show. */
static void tell_nothing(struct writing *w)
{
	open_section(w, "cases", RW_CASES);
	if (w->f->held_back)
		says(w, RW_ALL_HELD_BACK, FIGURES_CASES, FIGURES_PEOPLE);
	else
		says(w, "%s", RW_NO_CASES);
}

json_t *report_document(const struct report_source *from)
{
	struct writing w = {.from = from, .f = from->figures, .sections = json_array()};
	const struct recorded *at = from->settings;
	json_t *doc =
	    json_pack("{s:i,s:s,s:s,s:s,s:s,s:o}", "v", 1, "kind", "report", "time", from->time, "site",
	              *at->site_name ? at->site_name
	              : *at->site    ? at->site
	                             : "?",
	              "title", RW_TITLE, "sections", w.sections);
	if (!doc)
		return NULL;
	about(&w, doc);
	if (w.f->held_back || !w.f->cases) {
		tell_nothing(&w);
		if (!w.f->cases)
			tell_coverage(&w); /* what was planned, and not recorded */
	} else {
		tell_all(&w);
	}
	return doc;
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
	    json_array_foreach(json_object_get(c, "points"), k, p) n =
	        n < 0 ? n
	              : csv_line(out, (const char *const[8]){
	                                  json_text(section, "name"),
	                                  json_truth(p, "running") ? "running" : "point",
	                                  json_text(c, "name"), json_text(p, "label"),
	                                  thousandths(p, "value", value), thousandths(p, "lower", lower),
	                                  thousandths(p, "upper", upper), json_text(p, "signal")});
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

int report_csv(const json_t *document, struct buf *out)
{
	size_t i, k;
	const json_t *s, *x;
	int n = buf_add_text(out, "section,kind,name,label,value,lower,upper,signal\r\n");
	json_array_foreach(json_object_get(document, "sections"), i, s)
	{
		json_array_foreach(json_object_get(s, "figures"), k, x) n =
		    n < 0 ? n
		          : csv_line(out, (const char *const[8]){json_text(s, "name"), "figure",
		                                                 json_text(x, "name"), json_text(x, "label"),
		                                                 json_text(x, "value"), NULL, NULL, NULL});
		n = n < 0 ? n : csv_tables(out, s);
		n = n < 0 ? n : csv_charts(out, s);
	}
	return n;
}
