#include "tool/report-document.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report/days.h"
#include "tell/outline.h"
#include "tool/document.h"
#include "words/report-words.h"

#define SENTENCE_MAX 600
#define DATES_MAX 40

struct writing {
	const struct report_source *from;
	const struct figures *f;
	struct document d;
};

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
	json_t *x = document_figure(&w->d, name, label, text);
	json_object_set_new(x, "x", json_integer(s->x));
	json_object_set_new(x, "n", json_integer(s->n));
}

static void cell_number(json_t *cells, int held_back, int64_t value)
{
	char text[24];
	snprintf(text, sizeof text, "%lld", (long long)value);
	document_cell(cells, held_back ? RW_HELD_BACK : text);
}

static void cell_minutes(json_t *cells, const struct minutes *m, double value, int at_least)
{
	char text[24], whole[40];
	snprintf(text, sizeof text, "%.1f", value);
	snprintf(whole, sizeof whole, at_least ? RW_AT_LEAST : "%s", text);
	document_cell(cells, m->held_back ? RW_HELD_BACK : !m->n ? "–" : isnan(value) ? RW_NOT_KNOWN : whole);
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
	w->d.chart = json_pack("{s:s,s:s,s:s,s:s,s:[],s:[]}", "name", name, "title", title, "unit", unit,
	                       "axis", axis, "points", "says");
	json_array_append_new(json_object_get(w->d.section, "charts"), w->d.chart);
	switch (c->why) {
	case CHART_NONE:
		document_chart_says(&w->d, "%s", RW_CHART_NONE);
		return 0;
	case CHART_FEW:
		document_chart_says(&w->d, "%s", RW_CHART_FEW);
		return 0;
	case CHART_RARE:
		document_chart_says(&w->d, RW_CHART_RARE, FIGURES_EXPECTED);
		return 0;
	case CHART_DRAWN:
		break;
	}
	for (int i = 0; i < c->n + has_running(c); i++)
		json_array_append_new(json_object_get(w->d.chart, "points"), point(&c->points[i], scale));
	if (c->limits)
		set_thousandths(w->d.chart, "centre", scale * c->centre);
	return 1;
}

/* What must stand under each chart. */
static void chart_end(struct writing *w, const struct chart *c)
{
	char text[16];
	if (c->left_out)
		document_chart_says(&w->d, RW_CHART_LEFT_OUT, c->left_out);
	if (!c->limits) {
		document_chart_says(&w->d, RW_CHART_NO_LIMITS, FIGURES_EVENTS);
		return;
	}
	if (c->signals)
		document_chart_says(&w->d, RW_CHART_SIGNALS, c->signals);
	else
		document_chart_says(&w->d, "%s", RW_CHART_NO_SIGNALS);
	document_chart_says(&w->d, RW_CHART_FALSE, percent(c->false_share, text));
}

/* --- the sections -------------------------------------------------------------------------------------------------- */

static void tell_cases(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "cases", RW_CASES);
	document_says(&w->d, "%s", RW_CASES_FORCED);
	document_number(&w->d, "cases", RW_CASES_ALL, f->cases);
	document_number(&w->d, "reconciled", RW_CASES_RECONCILED, f->reconciled);
	document_number(&w->d, "unresolved", RW_CASES_UNRESOLVED, f->unresolved);
	document_number(&w->d, "cancelled", RW_CASES_CANCELLED, f->cancelled);
	document_number(&w->d, "open", RW_CASES_OPEN, f->open);
	document_number(&w->d, "patient-left", RW_CASES_LEFT, f->patient_left);
	document_number(&w->d, "clock", RW_CASES_CLOCK, f->clock);
	if (f->clock)
		document_says(&w->d, "%s: %s", RW_CASES_CLOCK, RW_CASES_CLOCK_NOTE);
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
	document_chart_says(&w->d, RW_CHART_MINUTES_HOW, c->group);
	document_chart_says(&w->d, "%s", RW_CHART_MINUTES_LIMITS);
	chart_end(w, c);
}

static void tell_minutes(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "minutes", RW_MINUTES);
	document_says(&w->d, "%s", RW_MINUTES_HOW);
	if (f->minutes[0].no_reminder)
		document_says(&w->d, RW_MINUTES_NO_REMINDER, f->minutes[0].no_reminder);
	if (f->digits_left_out)
		document_says(&w->d, RW_MINUTES_LEFT_OUT, f->digits_left_out);
	json_t *rows = document_table(
	    &w->d, "minutes",
	    RW_MINUTES_PART "|" RW_MINUTES_N "|" RW_MINUTES_MEDIAN "|" RW_MINUTES_P90 "|" RW_MINUTES_LONGEST
	                    "|" RW_MINUTES_PAST "|" RW_MINUTES_ON "|" RW_MINUTES_GAP);
	for (int part = 0; part < DIGIT_PARTS; part++) {
		const struct minutes *m = &f->minutes[part];
		json_t *cells = document_row(rows);
		document_cell(cells, parts[part]);
		cell_number(cells, m->held_back, m->n);
		cell_minutes(cells, m, m->median, 0);
		cell_minutes(cells, m, m->p90, 0);
		cell_minutes(cells, m, m->longest, m->longest_at_least);
		if (m->n && m->no_reminder == m->n && !m->held_back)
			document_cell(cells, RW_NOT_KNOWN);
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
	document_section(&w->d, "discrepancies", RW_DISCREPANCIES);
	document_says(&w->d, "%s", RW_DISCREPANCIES_MIND);
	share(w, "discrepancy", RW_DISCREPANCIES_CASES, &f->discrepancy);
	document_number(&w->d, "closed", RW_DISCREPANCIES_CLOSED, f->closed);
	document_number(&w->d, "search-done", RW_SEARCH_DONE, f->steps_done);
	document_number(&w->d, "search-not-done", RW_SEARCH_NOT_DONE, f->steps_not_done);
	for (int i = 0; i < FIGURES_STEPS; i++) {
		if (!f->found.count[i])
			continue;
		rows = rows ? rows : document_table(&w->d, "found", RW_FOUND_WHERE "|" RW_FOUND_TIMES);
		json_t *cells = document_row(rows);
		document_cell(cells, step_name(w, i, text));
		cell_number(cells, 0, f->found.count[i]);
	}
	if (!chart(w, "cases-between", RW_CHART_CASES, RW_CHART_CASES_UNIT, "linear", &f->cases_chart, 1))
		return;
	document_chart_says(&w->d, "%s", RW_CHART_CASES_HOW);
	if (f->cases_chart.limits)
		document_chart_says(&w->d, RW_CHART_CASES_LIMITS);
	if (f->cases_chart.limits && isnan(f->cases_chart.lower))
		document_chart_says(&w->d, "%s", RW_CHART_CASES_NO_LOW);
	chart_end(w, &f->cases_chart);
}

static void tell_unresolved(struct writing *w)
{
	const struct figures *f = w->f;
	char dates[DATES_MAX * 12 + 1] = "", text[16];
	document_section(&w->d, "unresolved", RW_UNRESOLVED);
	share(w, "unresolved-share", RW_UNRESOLVED_SHARE, &f->unresolved_share);
	document_number(&w->d, "numbers-owed", RW_UNRESOLVED_NUMBERS, f->numbers_owed);
	if (chart(w, "days-between", RW_CHART_DAYS, RW_CHART_DAYS_UNIT, "linear", &f->days_chart, 1)) {
		document_chart_says(&w->d, "%s", RW_CHART_DAYS_HOW);
		document_chart_says(&w->d, RW_CHART_DAYS_LIMITS);
		document_chart_says(&w->d, RW_CHART_DAYS_RUNNING, percent(f->running_chance, text));
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
		document_chart_says(&w->d, RW_UNRESOLVED_DATES, FIGURES_EVENTS, dates);
}

static void tell_slips(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "slips", RW_SLIPS);
	document_says(&w->d, "%s", RW_SLIPS_MIND);
	document_number(&w->d, "slips", RW_SLIPS_QUEUED, f->slips);
	document_number(&w->d, "slips-seen", RW_SLIPS_SEEN, f->slips_seen);
	share(w, "slips-not-seen", RW_SLIPS_NOT_SEEN, &f->not_seen);
	if (!chart(w, "slips-not-seen", RW_CHART_SLIPS, RW_CHART_SLIPS_UNIT, "linear", &f->slips_chart, 100))
		return;
	document_chart_says(&w->d, "%s", RW_CHART_SLIPS_HOW);
	chart_end(w, &f->slips_chart);
}

static void tell_packs(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "packs", RW_PACKS);
	document_says(&w->d, "%s", RW_PACKS_MIND);
	document_says(&w->d, "%s", RW_PACKS_ROOMS);
	document_number(&w->d, "packs-numbered", RW_PACKS_NUMBERED, f->packs_numbered);
	document_number(&w->d, "packs-opened", RW_PACKS_OPENED, f->packs_opened);
	document_number(&w->d, "packs-returned", RW_PACKS_RETURNED, f->packs_returned);
	document_number(&w->d, "items-isolated", RW_PACKS_ISOLATED, f->isolated);
	document_figure(&w->d, "packs-other", RW_PACKS_OTHER, RW_NOT_KNOWN);
}

static void tell_evidence(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "evidence", RW_EVIDENCE);
	document_says(&w->d, "%s", RW_EVIDENCE_MIND);
	document_number(&w->d, "by-mark", RW_EVIDENCE_MARK, f->by_mark);
	document_number(&w->d, "by-shown", RW_EVIDENCE_SHOWN, f->by_shown);
	document_number(&w->d, "typed", RW_EVIDENCE_TYPED, f->typed);
}

static void tell_entry(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "entry", RW_ENTRY);
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
	document_section(&w->d, "after", RW_AFTER);
	share(w, "found-after", RW_AFTER_FOUND, &f->found_after);
	document_number(&w->d, "power-cuts", RW_AFTER_CUTS, f->power_cuts);
	document_number(&w->d, "unfollowed", RW_AFTER_UNFOLLOWED, f->unfollowed);
	if (f->unfollowed)
		document_says(&w->d, "%s: %s", RW_AFTER_UNFOLLOWED, RW_AFTER_UNFOLLOWED_NOTE);
}

/* One that was kept may end long before the report does. */
static void tell_list(struct writing *w, const struct plan *p)
{
	char first[11], last[11];
	if (!p->count)
		return;
	day_text(p->slots[0].day, first);
	day_text(p->slots[p->count - 1].day, last);
	document_says(&w->d, RW_COVERAGE_SPAN, p->count, first, last);
}

static void tell_coverage(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "coverage", RW_COVERAGE);
	if (!f->ask.plan) {
		document_says(&w->d, "%s", RW_COVERAGE_NONE);
		return;
	}
	tell_list(w, f->ask.plan);
	document_says(&w->d, "%s", RW_COVERAGE_MIND);
	json_t *rows = document_table(&w->d, "coverage",
	                              RW_COVERAGE_MONTH "|" RW_COVERAGE_PLANNED "|" RW_COVERAGE_RECORDED
	                                                "|" RW_COVERAGE_EMPTY "|" RW_COVERAGE_UNPLANNED
	                                                "|" RW_COVERAGE_UNKNOWN);
	for (int i = 0; i < f->n_coverage; i++) {
		const struct coverage *c = &f->coverage[i];
		int few = c->recorded > 0 && c->recorded < FIGURES_CASES;
		char month[11];
		day_text(c->month * 100 + 1, month);
		month[7] = 0;
		json_t *cells = document_row(rows);
		document_cell(cells, month);
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
	document_section(&w->d, "rooms", RW_ROOMS);
	document_says(&w->d, "%s", RW_ROOMS_MIND);
	json_t *rows = document_table(&w->d, "rooms",
	                              RW_ROOMS_ROOM "|" RW_ROOMS_CASES "|" RW_ROOMS_DISCREPANCIES
	                                            "|" RW_ROOMS_UNRESOLVED);
	for (int i = 0; i < f->n_rooms; i++) {
		const struct room_figures *r = &f->rooms[i];
		json_t *cells = document_row(rows);
		document_cell(cells, room_name(w, r->room, name));
		cell_number(cells, r->held_back, r->cases);
		cell_number(cells, r->held_back, r->discrepancies);
		cell_number(cells, r->held_back, r->unresolved);
	}
}

static void tell_signs(struct writing *w)
{
	const struct figures *f = w->f;
	char text[40];
	document_section(&w->d, "signs", RW_SIGNS);
	document_says(&w->d, "%s", RW_SIGNS_MIND);
	document_says(&w->d, RW_SIGNS_WHAT, OUTLINE_ANSWER_MS / 1000, OUTLINE_LOOK_MS / 1000,
	              OUTLINE_BADGES_MS / 1000, OUTLINE_BURST, OUTLINE_BURST_MS / 1000, OUTLINE_EVEN,
	              OUTLINE_EVEN_MS);
	if (f->n_signs > DOCUMENT_ROWS_MAX)
		document_says(&w->d, RW_SIGNS_LEFT_OUT, f->n_signs - DOCUMENT_ROWS_MAX);
	json_t *rows = document_table(&w->d, "signs",
	                              RW_ROOMS_ROOM "|" RW_SIGNS_WEEK "|" RW_ROOMS_CASES "|" RW_SIGNS_ANSWERS
	                                            "|" RW_SIGNS_LOOKS "|" RW_SIGNS_BADGES "|" RW_SIGNS_TYPED
	                                            "|" RW_SIGNS_EVEN);
	for (int i = 0; i < f->n_signs && i < DOCUMENT_ROWS_MAX; i++) {
		const struct signs *s = &f->signs[i];
		json_t *cells = document_row(rows);
		document_cell(cells, room_name(w, s->room, text));
		day_text(s->week, text);
		document_cell(cells, text);
		const int values[] = {s->cases,        s->fast_answers, s->fast_looks,
		                      s->close_badges, s->keyed_bursts, s->even_scans};
		for (size_t k = 0; k < sizeof values / sizeof *values; k++)
			cell_number(cells, s->held_back, values[k]);
	}
}

/* --- all of it ------------------------------------------------------------------------------------------------------- */

static void about(struct writing *w)
{
	const struct recorded *at = w->from->settings;
	char hex[2 * CHAIN_BYTES + 1];
	chain_hex(&w->from->chain, hex);
	document_about(&w->d, RW_MADE_OF, *at->site_name ? at->site_name : at->site, (long long)w->from->seq,
	               hex);
	if (w->from->archived)
		document_about_left(&w->d, w->from->left, w->from->archived);
	document_about(&w->d, "%s", RW_ABOUT_RECORDED);
	document_about(&w->d, RW_ABOUT_HELD_BACK, FIGURES_CASES, FIGURES_PEOPLE);
	document_about(&w->d, "%s", RW_ABOUT_POLICY);
}

static void period(const struct writing *w, char *out, size_t size)
{
	char from[11], to[11], name[40];
	day_text(w->f->ask.span.from, from);
	day_text(w->f->ask.span.to, to);
	if (w->f->ask.room)
		snprintf(out, size, RW_ONE_ROOM, from, to, room_name(w, w->f->ask.room, name));
	else
		snprintf(out, size, RW_ALL_ROOMS, from, to);
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
	document_section(&w->d, "cases", RW_CASES);
	if (w->f->held_back)
		document_says(&w->d, RW_ALL_HELD_BACK, FIGURES_CASES, FIGURES_PEOPLE);
	else
		document_says(&w->d, "%s", RW_NO_CASES);
}

json_t *report_document(const struct report_source *from)
{
	struct writing w = {.from = from, .f = from->figures};
	const struct recorded *at = from->settings;
	char days[120];
	period(&w, days, sizeof days);
	if (document_begin(&w.d, *at->site_name ? at->site_name : at->site, RW_TITLE, days) < 0)
		return NULL;
	about(&w);
	if (w.f->held_back || !w.f->cases) {
		tell_nothing(&w);
		if (!w.f->cases)
			tell_coverage(&w); /* what was planned, and not recorded */
	} else {
		tell_all(&w);
	}
	return w.d.whole;
}
