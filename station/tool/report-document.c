#include "tool/report-document.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "report/days.h"
#include "tell/outline.h"
#include "tool/document.h"

#define SENTENCE_MAX 600
#define DATES_MAX 40

struct writing {
	const struct report_source *from;
	const struct figures *f;
	struct document d;
};

/* Two digits that say something, and never '0.0' for what is not 0. */
static const char *percent(const struct writing *w, double share, char out[16])
{
	double p = 100 * share;
	snprintf(out, 16, p >= 10 || p == 0 ? "%.0f" : p >= 1 ? "%.1f" : p >= 0.1 ? "%.2f" : "%.2g", p);
	document_decimal(&w->d, out);
	return out;
}

static void share(struct writing *w, const char *name, enum saying label, const struct share *s)
{
	char text[SENTENCE_MAX], here[16], low[16], high[16];
	double of_all = s->n ? (double)s->x / s->n : 0;
	say_part_in(w->d.language,
	            !s->n   ? SAY(RW_SHARE_OF_NOTHING)
	            : !s->x ? SAY(RW_SHARE_NONE, .all = s->n, .high = percent(w, s->high, high))
	                    : SAY(RW_SHARE, .n = s->x, .all = s->n, .share = percent(w, of_all, here),
	                          .low = percent(w, s->low, low), .high = percent(w, s->high, high)),
	            text, sizeof text);
	json_t *x = document_figure(&w->d, name, label, text);
	json_object_set_new(x, "x", json_integer(s->x));
	json_object_set_new(x, "n", json_integer(s->n));
}

static void cell_number(const struct writing *w, json_t *cells, int held_back, int64_t value)
{
	char text[24];
	snprintf(text, sizeof text, "%lld", (long long)value);
	if (held_back)
		document_word(&w->d, cells, SAY_RW_HELD_BACK);
	else
		document_cell(cells, text);
}

static void cell_minutes(const struct writing *w, json_t *cells, const struct minutes *m, double value,
                         int at_least)
{
	char text[24];
	snprintf(text, sizeof text, "%.1f", value);
	document_decimal(&w->d, text);
	if (m->held_back)
		document_word(&w->d, cells, SAY_RW_HELD_BACK);
	else if (m->n && isnan(value))
		document_word(&w->d, cells, SAY_RW_NOT_KNOWN);
	else if (m->n && at_least)
		document_said(&w->d, cells, SAY(RW_AT_LEAST, .words = text));
	else
		document_cell(cells, m->n ? text : "");
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
static int chart(struct writing *w, const char *name, const struct say *title, enum saying unit,
                 const char *axis, const struct chart *c, double scale)
{
	char words[SENTENCE_MAX];
	say_part_in(w->d.language, title, words, sizeof words);
	w->d.chart = json_pack("{s:s,s:s,s:s,s:s,s:[],s:[]}", "name", name, "title", words, "unit",
	                       saying_text_in(w->d.language, unit), "axis", axis, "points", "says");
	json_array_append_new(json_object_get(w->d.section, "charts"), w->d.chart);
	switch (c->why) {
	case CHART_NONE:
		document_chart_says(&w->d, SAY(RW_CHART_NONE));
		return 0;
	case CHART_FEW:
		document_chart_says(&w->d, SAY(RW_CHART_FEW));
		return 0;
	case CHART_RARE:
		document_chart_says(&w->d, SAY(RW_CHART_RARE, .n = FIGURES_EXPECTED));
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
		document_chart_says(&w->d, SAY(RW_CHART_LEFT_OUT, .n = c->left_out));
	if (!c->limits) {
		document_chart_says(&w->d, SAY(RW_CHART_NO_LIMITS, .n = FIGURES_EVENTS));
		return;
	}
	if (c->signals)
		document_chart_says(&w->d, SAY(RW_CHART_SIGNALS, .n = c->signals));
	else
		document_chart_says(&w->d, SAY(RW_CHART_NO_SIGNALS));
	document_chart_says(&w->d, SAY(RW_CHART_FALSE, .share = percent(w, c->false_share, text)));
}

/* --- the sections -------------------------------------------------------------------------------------------------- */

static void tell_cases(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "cases", SAY(RW_CASES));
	document_says(&w->d, SAY(RW_CASES_FORCED));
	document_number(&w->d, "cases", SAY_RW_CASES_ALL, f->cases);
	document_number(&w->d, "reconciled", SAY_RW_CASES_RECONCILED, f->reconciled);
	document_number(&w->d, "unresolved", SAY_RW_CASES_UNRESOLVED, f->unresolved);
	document_number(&w->d, "cancelled", SAY_RW_CASES_CANCELLED, f->cancelled);
	document_number(&w->d, "open", SAY_RW_CASES_OPEN, f->open);
	document_number(&w->d, "patient-left", SAY_RW_CASES_LEFT, f->patient_left);
	document_number(&w->d, "clock", SAY_RW_CASES_CLOCK, f->clock);
	if (f->clock)
		document_says(&w->d, SAY(RW_CASES_CLOCK_NOTE));
}

static const enum saying parts[DIGIT_PARTS] = {SAY_RW_PART_ALL, SAY_RW_PART_FINGER, SAY_RW_PART_THUMB,
                                               SAY_RW_PART_TOE, SAY_RW_PART_OTHER};
static const char *const part_names[DIGIT_PARTS] = {"all", "finger", "thumb", "toe", "other"};

static void tell_minutes_chart(struct writing *w, int part)
{
	char name[32];
	const struct chart *c = &w->f->minutes_charts[part];
	snprintf(name, sizeof name, "minutes-%s", part_names[part]);
	if (!chart(w, name, SAY(RW_CHART_MINUTES, .what = parts[part]), SAY_RW_MINUTES_UNIT, "log", c, 1))
		return;
	document_chart_says(&w->d, SAY(RW_CHART_MINUTES_HOW, .n = c->group));
	document_chart_says(&w->d, SAY(RW_CHART_MINUTES_LIMITS));
	chart_end(w, c);
}

static void tell_minutes(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "minutes", SAY(RW_MINUTES));
	document_says(&w->d, SAY(RW_MINUTES_HOW));
	if (f->minutes[0].no_reminder)
		document_says(&w->d, SAY(RW_MINUTES_NO_REMINDER, .n = f->minutes[0].no_reminder));
	if (f->digits_left_out)
		document_says(&w->d, SAY(RW_MINUTES_LEFT_OUT, .n = f->digits_left_out));
	json_t *rows = document_table(&w->d, "minutes",
	                              HEADS(SAY_RW_MINUTES_PART, SAY_RW_MINUTES_N, SAY_RW_MINUTES_MEDIAN,
	                                    SAY_RW_MINUTES_P90, SAY_RW_MINUTES_LONGEST, SAY_RW_MINUTES_PAST,
	                                    SAY_RW_MINUTES_ON, SAY_RW_MINUTES_GAP));
	for (int part = 0; part < DIGIT_PARTS; part++) {
		const struct minutes *m = &f->minutes[part];
		json_t *cells = document_row(rows);
		document_word(&w->d, cells, parts[part]);
		cell_number(w, cells, m->held_back, m->n);
		cell_minutes(w, cells, m, m->median, 0);
		cell_minutes(w, cells, m, m->p90, 0);
		cell_minutes(w, cells, m, m->longest, m->longest_at_least);
		if (m->n && m->no_reminder == m->n && !m->held_back)
			document_word(&w->d, cells, SAY_RW_NOT_KNOWN);
		else
			cell_number(w, cells, m->held_back, m->past);
		cell_number(w, cells, m->held_back, m->on);
		cell_number(w, cells, m->held_back, m->at_least);
	}
	for (int part = PART_FINGER; part <= PART_TOE; part++)
		tell_minutes_chart(w, part);
}

static const char *step_name(const struct writing *w, int step, char out[POLICY_TEXT_MAX])
{
	const struct policy *p = &w->from->settings->policy;
	say_part_in(w->d.language, SAY(RW_FOUND_BEFORE, .n = step), out, POLICY_TEXT_MAX);
	return step >= 1 && step <= p->n_search ? shipped_text_in(w->d.language, p->search[step - 1]) : out;
}

static void tell_discrepancies(struct writing *w)
{
	const struct figures *f = w->f;
	char text[POLICY_TEXT_MAX];
	json_t *rows = NULL;
	document_section(&w->d, "discrepancies", SAY(RW_DISCREPANCIES));
	document_says(&w->d, SAY(RW_DISCREPANCIES_MIND));
	share(w, "discrepancy", SAY_RW_DISCREPANCIES_CASES, &f->discrepancy);
	document_number(&w->d, "closed", SAY_RW_DISCREPANCIES_CLOSED, f->closed);
	document_number(&w->d, "search-done", SAY_RW_SEARCH_DONE, f->steps_done);
	document_number(&w->d, "search-not-done", SAY_RW_SEARCH_NOT_DONE, f->steps_not_done);
	for (int i = 0; i < FIGURES_STEPS; i++) {
		if (!f->found.count[i])
			continue;
		rows = rows ? rows
		            : document_table(&w->d, "found", HEADS(SAY_RW_FOUND_WHERE, SAY_RW_FOUND_TIMES));
		json_t *cells = document_row(rows);
		document_cell(cells, step_name(w, i, text));
		cell_number(w, cells, 0, f->found.count[i]);
	}
	if (!chart(w, "cases-between", SAY(RW_CHART_CASES), SAY_RW_CHART_CASES_UNIT, "linear",
	           &f->cases_chart, 1))
		return;
	document_chart_says(&w->d, SAY(RW_CHART_CASES_HOW));
	if (f->cases_chart.limits)
		document_chart_says(&w->d, SAY(RW_CHART_CASES_LIMITS));
	if (f->cases_chart.limits && isnan(f->cases_chart.lower))
		document_chart_says(&w->d, SAY(RW_CHART_CASES_NO_LOW));
	chart_end(w, &f->cases_chart);
}

static void tell_unresolved(struct writing *w)
{
	const struct figures *f = w->f;
	char dates[DATES_MAX * 12 + 1] = "", text[16];
	document_section(&w->d, "unresolved", SAY(RW_UNRESOLVED));
	share(w, "unresolved-share", SAY_RW_UNRESOLVED_SHARE, &f->unresolved_share);
	document_number(&w->d, "numbers-owed", SAY_RW_UNRESOLVED_NUMBERS, f->numbers_owed);
	if (chart(w, "days-between", SAY(RW_CHART_DAYS), SAY_RW_CHART_DAYS_UNIT, "linear", &f->days_chart,
	          1)) {
		document_chart_says(&w->d, SAY(RW_CHART_DAYS_HOW));
		document_chart_says(&w->d, SAY(RW_CHART_DAYS_LIMITS));
		document_chart_says(&w->d,
		                    SAY(RW_CHART_DAYS_RUNNING, .share = percent(w, f->running_chance, text)));
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
		document_chart_says(&w->d, SAY(RW_UNRESOLVED_DATES, .n = FIGURES_EVENTS, .list = dates));
}

static void tell_slips(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "slips", SAY(RW_SLIPS));
	document_says(&w->d, SAY(RW_SLIPS_MIND));
	document_number(&w->d, "slips", SAY_RW_SLIPS_QUEUED, f->slips);
	document_number(&w->d, "slips-seen", SAY_RW_SLIPS_SEEN, f->slips_seen);
	share(w, "slips-not-seen", SAY_RW_SLIPS_NOT_SEEN, &f->not_seen);
	if (!chart(w, "slips-not-seen", SAY(RW_CHART_SLIPS), SAY_RW_CHART_SLIPS_UNIT, "linear",
	           &f->slips_chart, 100))
		return;
	document_chart_says(&w->d, SAY(RW_CHART_SLIPS_HOW));
	chart_end(w, &f->slips_chart);
}

static void tell_packs(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "packs", SAY(RW_PACKS));
	document_says(&w->d, SAY(RW_PACKS_MIND));
	document_says(&w->d, SAY(RW_PACKS_ROOMS));
	document_number(&w->d, "packs-numbered", SAY_RW_PACKS_NUMBERED, f->packs_numbered);
	document_number(&w->d, "packs-opened", SAY_RW_PACKS_OPENED, f->packs_opened);
	document_number(&w->d, "packs-returned", SAY_RW_PACKS_RETURNED, f->packs_returned);
	document_number(&w->d, "items-isolated", SAY_RW_PACKS_ISOLATED, f->isolated);
	document_figure(&w->d, "packs-other", SAY_RW_PACKS_OTHER,
	                saying_text_in(w->d.language, SAY_RW_NOT_KNOWN));
}

static void tell_evidence(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "evidence", SAY(RW_EVIDENCE));
	document_says(&w->d, SAY(RW_EVIDENCE_MIND));
	document_number(&w->d, "by-mark", SAY_RW_EVIDENCE_MARK, f->by_mark);
	document_number(&w->d, "by-shown", SAY_RW_EVIDENCE_SHOWN, f->by_shown);
	document_number(&w->d, "typed", SAY_RW_EVIDENCE_TYPED, f->typed);
}

static void tell_entry(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "entry", SAY(RW_ENTRY));
	share(w, "single", SAY_RW_ENTRY_SINGLE, &f->single);
	share(w, "keyed", SAY_RW_ENTRY_KEYED, &f->keyed);
	share(w, "late", SAY_RW_ENTRY_LATE, &f->late);
	share(w, "owed", SAY_RW_ENTRY_OWED, &f->owed);
	share(w, "overridden", SAY_RW_ENTRY_OVERRIDDEN, &f->overridden);
	share(w, "corrected", SAY_RW_ENTRY_CORRECTED, &f->corrected);
}

static void tell_after(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "after", SAY(RW_AFTER));
	share(w, "found-after", SAY_RW_AFTER_FOUND, &f->found_after);
	document_number(&w->d, "power-cuts", SAY_RW_AFTER_CUTS, f->power_cuts);
	document_number(&w->d, "unfollowed", SAY_RW_AFTER_UNFOLLOWED, f->unfollowed);
	if (f->unfollowed)
		document_says(&w->d, SAY(RW_AFTER_UNFOLLOWED_NOTE));
}

/* One that was kept may end long before the report does. */
static void tell_list(struct writing *w, const struct plan *p)
{
	char first[11], last[11];
	if (!p->count)
		return;
	day_text(p->slots[0].day, first);
	day_text(p->slots[p->count - 1].day, last);
	document_says(&w->d, SAY(RW_COVERAGE_SPAN, .n = (int32_t)p->count, .first = first, .second = last));
}

static void tell_coverage(struct writing *w)
{
	const struct figures *f = w->f;
	document_section(&w->d, "coverage", SAY(RW_COVERAGE));
	if (!f->ask.plan) {
		document_says(&w->d, SAY(RW_COVERAGE_NONE));
		return;
	}
	tell_list(w, f->ask.plan);
	document_says(&w->d, SAY(RW_COVERAGE_MIND));
	json_t *rows =
	    document_table(&w->d, "coverage",
	                   HEADS(SAY_RW_COVERAGE_MONTH, SAY_RW_COVERAGE_PLANNED, SAY_RW_COVERAGE_RECORDED,
	                         SAY_RW_COVERAGE_EMPTY, SAY_RW_COVERAGE_UNPLANNED, SAY_RW_COVERAGE_UNKNOWN));
	for (int i = 0; i < f->n_coverage; i++) {
		const struct coverage *c = &f->coverage[i];
		int few = c->recorded > 0 && c->recorded < FIGURES_CASES;
		char month[11];
		day_text(c->month * 100 + 1, month);
		month[7] = 0;
		json_t *cells = document_row(rows);
		document_cell(cells, month);
		cell_number(w, cells, 0, c->planned);
		cell_number(w, cells, few, c->recorded);
		cell_number(w, cells, 0, c->empty_days);
		cell_number(w, cells, few, c->unplanned);
		cell_number(w, cells, 0, c->unknown_days);
	}
}

#define ROOM_WORDS 64

static const char *room_name(const struct writing *w, int32_t number_of, char out[ROOM_WORDS])
{
	const struct report_source *from = w->from;
	const struct report_station *of =
	    from->stations ? &from->stations[number_of / ROOMS_OF_A_STATION] : NULL;
	int32_t number = of ? number_of % ROOMS_OF_A_STATION : number_of;
	const struct room *r = recorded_room(of ? of->settings : from->settings, number);
	char digits[16];
	snprintf(digits, sizeof digits, "%d", (int)number);
	snprintf(out, ROOM_WORDS, "%s", digits);
	if (of)
		snprintf(out, ROOM_WORDS, "%.*s (%s)", ROOM_NAME_MAX - 1, r && *r->name ? r->name : digits,
		         of->name);
	else if (r && *r->name)
		snprintf(out, ROOM_WORDS, "%s", r->name);
	return out;
}

static void tell_rooms(struct writing *w)
{
	const struct figures *f = w->f;
	char name[ROOM_WORDS];
	document_section(&w->d, "rooms", SAY(RW_ROOMS));
	document_says(&w->d, SAY(RW_ROOMS_MIND));
	json_t *rows = document_table(&w->d, "rooms",
	                              HEADS(SAY_RW_ROOMS_ROOM, SAY_RW_ROOMS_CASES, SAY_RW_ROOMS_DISCREPANCIES,
	                                    SAY_RW_ROOMS_UNRESOLVED));
	for (int i = 0; i < f->n_rooms; i++) {
		const struct room_figures *r = &f->rooms[i];
		json_t *cells = document_row(rows);
		document_cell(cells, room_name(w, r->room, name));
		cell_number(w, cells, r->held_back, r->cases);
		cell_number(w, cells, r->held_back, r->discrepancies);
		cell_number(w, cells, r->held_back, r->unresolved);
	}
}

static void tell_signs(struct writing *w)
{
	const struct figures *f = w->f;
	char text[ROOM_WORDS];
	document_section(&w->d, "signs", SAY(RW_SIGNS));
	document_says(&w->d, SAY(RW_SIGNS_MIND));
	document_says(&w->d, SAY(RW_SIGNS_FAST, .limit = OUTLINE_ANSWER_MS / 1000));
	document_says(&w->d, SAY(RW_SIGNS_LOOK, .limit = OUTLINE_LOOK_MS / 1000));
	document_says(&w->d, SAY(RW_SIGNS_CLOSE, .limit = OUTLINE_BADGES_MS / 1000));
	document_says(&w->d, SAY(RW_SIGNS_BURST, .n = OUTLINE_BURST, .limit = OUTLINE_BURST_MS / 1000));
	document_says(&w->d, SAY(RW_SIGNS_ALIKE, .n = OUTLINE_EVEN, .limit = OUTLINE_EVEN_MS));
	if (f->n_signs > DOCUMENT_ROWS_MAX)
		document_says(&w->d, SAY(RW_SIGNS_LEFT_OUT, .n = f->n_signs - DOCUMENT_ROWS_MAX));
	json_t *rows = document_table(&w->d, "signs",
	                              HEADS(SAY_RW_ROOMS_ROOM, SAY_RW_SIGNS_WEEK, SAY_RW_ROOMS_CASES,
	                                    SAY_RW_SIGNS_ANSWERS, SAY_RW_SIGNS_LOOKS, SAY_RW_SIGNS_BADGES,
	                                    SAY_RW_SIGNS_TYPED, SAY_RW_SIGNS_EVEN));
	for (int i = 0; i < f->n_signs && i < DOCUMENT_ROWS_MAX; i++) {
		const struct signs *s = &f->signs[i];
		json_t *cells = document_row(rows);
		document_cell(cells, room_name(w, s->room, text));
		day_text(s->week, text);
		document_cell(cells, text);
		const int values[] = {s->cases,        s->fast_answers, s->fast_looks,
		                      s->close_badges, s->keyed_bursts, s->even_scans};
		for (size_t k = 0; k < sizeof values / sizeof *values; k++)
			cell_number(w, cells, s->held_back, values[k]);
	}
}

/* --- all of it ------------------------------------------------------------------------------------------------------- */

static void about(struct writing *w)
{
	const struct recorded *at = w->from->settings;
	char hex[2 * CHAIN_BYTES + 1], seq[24];
	chain_hex(&w->from->chain, hex);
	snprintf(seq, sizeof seq, "%lld", (long long)w->from->seq);
	hex[16] = 0;
	const char *site = *at->site_name ? at->site_name : at->site;
	document_about(&w->d, w->from->stations
	                          ? SAY(RW_MADE_OF_STATIONS, .text = site, .n = w->from->n_stations)
	                          : SAY(RW_MADE_OF, .text = site, .words = seq, .hash = hex));
	if (w->from->archived)
		document_about_left(&w->d, w->from->left, w->from->archived);
	document_about(&w->d, SAY(RW_ABOUT_RECORDED));
	document_about(&w->d, SAY(RW_ABOUT_HELD_BACK, .n = FIGURES_CASES, .people = FIGURES_PEOPLE));
	document_about(&w->d, SAY(RW_ABOUT_POLICY));
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

#define STATIONS_SHOWN 400 /* rows that a table may have */

static void tell_stations(struct writing *w)
{
	const struct report_source *from = w->from;
	char hex[2 * CHAIN_BYTES + 1], time[26];
	document_section(&w->d, "stations", SAY(RW_STATIONS));
	document_says(&w->d, SAY(RW_STATIONS_MIND));
	json_t *rows = document_table(&w->d, "stations",
	                              HEADS(SAY_RW_STATIONS_STATION, SAY_RW_STATIONS_CASES,
	                                    SAY_RW_STATIONS_SEQ, SAY_RW_STATIONS_TIME, SAY_RW_STATIONS_HASH));
	for (int i = 0; i < from->n_stations && i < STATIONS_SHOWN; i++) {
		const struct report_station *s = &from->stations[i];
		json_t *cells = document_row(rows);
		chain_hex(&s->chain, hex);
		hex[16] = 0;
		clock_text_full(s->last.wall_ms, s->last.utc_min, time);
		time[16] = 0;
		time[10] = ' ';
		document_cell(cells, s->name);
		cell_number(w, cells, 0, s->cases);
		cell_number(w, cells, 0, s->seq);
		document_cell(cells, s->seq ? time : "");
		document_cell(cells, s->seq ? hex : "");
	}
}

/* Why there is nothing to show. */
static void tell_nothing(struct writing *w)
{
	document_section(&w->d, "cases", SAY(RW_CASES));
	if (w->f->held_back)
		document_says(&w->d, SAY(RW_ALL_HELD_BACK, .n = FIGURES_CASES, .people = FIGURES_PEOPLE));
	else
		document_says(&w->d, SAY(RW_NO_CASES));
}

json_t *report_document(const struct report_source *from)
{
	struct writing w = {.from = from, .f = from->figures};
	const struct recorded *at = from->settings;
	char first[11], last[11], room[ROOM_WORDS];
	day_text(w.f->ask.span.from, first);
	day_text(w.f->ask.span.to, last);
	const struct say *period = w.f->ask.room ? SAY(RW_ONE_ROOM, .first = first, .second = last,
	                                               .room = room_name(&w, w.f->ask.room, room))
	                                         : SAY(RW_ALL_ROOMS, .first = first, .second = last);
	if (document_begin(&w.d,
	                   &(struct document_of){from->language, *at->site_name ? at->site_name : at->site,
	                                         SAY_RW_TITLE, period}) < 0)
		return NULL;
	about(&w);
	if (w.f->held_back || !w.f->cases) {
		tell_nothing(&w);
		if (!w.f->cases)
			tell_coverage(&w); /* what was planned, and not recorded */
	} else {
		tell_all(&w);
	}
	if (from->stations)
		tell_stations(&w);
	return w.d.whole;
}
