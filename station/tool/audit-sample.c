/* audit sample: slips to be found among the papers, or planned operations to be found in the record. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/file.h"
#include "report/days.h"
#include "report/plan.h"
#include "report/sample.h"
#include "report/stats.h"
#include "tool/audit-give.h"
#include "tool/audit-language.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/document.h"
#include "tool/words.h"

#define SAMPLE_MAX DOCUMENT_ROWS_MAX
#define BOX "[   ]" /* to be ticked */

static const char options[] = "file= seed= list= language= planned json csv pdf=";
static const char usage[] =
    "usage: bandtally audit sample COUNT --seed S [--planned | --list CSV] (--json | --csv | --pdf FILE) "
    "[--file RECORD]\n"
    "Draws COUNT slips of the record, to be found among the papers. The same seed draws the same ones "
    "again. On\n"
    "paper it is a sheet to tick, and says what it would still allow if all were right.\n"
    "  --planned       COUNT planned operations, to be found in the record: of the theatre lists that "
    "'bandtally\n"
    "                  audit report --list' kept\n"
    "  --list CSV      the same of this theatre list alone, which is not kept\n"
    "  --language CODE  its words; without it those of the running station's site, else English\n"
    "Exit codes: 0 made, 1 failed, 2 wrong usage.\n";

struct drawing {
	int32_t count, population;
	int64_t seed;
	int32_t *drawn; /* from 0 */
	const struct language *language;
	struct document d;
	json_t *rows;
};

static int too_many(const struct drawing *g, const char *of, struct error *e)
{
	return error_set(e, -ERANGE, "%d cannot be drawn of %d %s: draw fewer", (int)g->count,
	                 (int)g->population, of);
}

/* The head of the sheet, once it is known of how many. */
static int begin(struct drawing *g, const char *site, enum saying title, const enum saying *heads,
                 const char *of, struct error *e)
{
	char seed[24], share[16];
	if (g->count > g->population)
		return too_many(g, of, e);
	g->drawn = calloc((size_t)g->count, sizeof *g->drawn);
	snprintf(seed, sizeof seed, "%lld", (long long)g->seed);
	const struct say *period = SAY(RW_SAMPLE_OF, .n = g->count, .all = g->population, .words = seed);
	if (!g->drawn || document_begin(&g->d, &(struct document_of){g->language, site, title, period}) < 0)
		return error_set(e, -ENOMEM, "cannot draw a sample: out of memory: close other programs");
	sample_draw((uint64_t)g->seed, g->population, g->count, g->drawn);
	snprintf(share, sizeof share, "%.1f", 100 * stats_none_bound(g->count));
	document_about(&g->d, SAY(RW_SAMPLE_AGAIN));
	document_decimal(&g->d, share);
	document_about(&g->d, SAY(RW_SAMPLE_BOUND, .n = g->count, .share = share));
	document_section(&g->d, "sample", &(struct say){.saying = title});
	document_says(&g->d, SAY(RW_SAMPLE_TICK));
	g->rows = document_table(&g->d, "sample", heads);
	return 0;
}

/* --- from slips to the record ---------------------------------------------------------------------------------- */

struct slip_day {
	int32_t number;
	char *when;
};

static int find_day(void *context, const struct event *e)
{
	struct slip_day *d = context;
	if (e->kind != EV_SLIP_QUEUED || e->n != d->number)
		return 0;
	clock_text_date(e->at.wall_ms, e->at.utc_min, d->when);
	return 1;
}

static int add_slip(const struct drawing *g, struct record *r, const struct recorded *settings,
                    int32_t number, struct error *e)
{
	struct slip slip;
	struct paper paper;
	char text[40], when[11] = "";
	int n = record_slip_of(r, number, 1, &slip, &paper);
	if (n < 0)
		return error_set(e, n,
		                 "slip %d: the record could not be asked: %s: see 'bandtally audit verify'",
		                 (int)number, strerror(-n));
	if (n == 1)
		n = record_each(r, slip.case_no, find_day, &(struct slip_day){number, when}, e) < 0 ? -EIO
		                                                                                    : 1;
	if (n < 0)
		return n;
	const struct room *room = n == 1 ? recorded_room(settings, slip.room) : NULL;
	json_t *cells = document_row(g->rows);
	snprintf(text, sizeof text, "%07d", (int)number);
	document_cell(cells, text);
	snprintf(text, sizeof text, "%d", (int)slip.case_no);
	document_cell(cells, n == 1 ? text : "");
	document_cell(cells, room ? room->name : "");
	document_cell(cells, when);
	document_word(&g->d, cells,
	              n != 1                    ? SAY_RW_SAMPLE_VOID
	              : slip.state == SLIP_SEEN ? SAY_RW_SAMPLE_SEEN
	                                        : SAY_RW_SAMPLE_NOT_SEEN);
	document_cell(cells, BOX);
	document_cell(cells, BOX);
	return 0;
}

/* Numbers are given out one after another, so that those that are no slip are drawn as well, and asked about. */
static int sample_slips(struct drawing *g, struct record *r, const struct recorded *settings,
                        const char *site, struct error *e)
{
	int32_t last = 0;
	int n = record_last_slip(r, &last);
	g->population = last;
	if (n < 0)
		return error_set(e, n, "the record's slips could not be counted: %s: try again",
		                 strerror(-n));
	n = begin(g, site, SAY_RW_SAMPLE_TITLE_SLIPS,
	          HEADS(SAY_RW_SAMPLE_SLIP, SAY_RW_SAMPLE_CASE, SAY_RW_SAMPLE_ROOM, SAY_RW_SAMPLE_DATE,
	                SAY_RW_SAMPLE_STATE, SAY_RW_SAMPLE_PAPER, SAY_RW_SAMPLE_HELD),
	          "slips", e);
	for (int32_t i = 0; n == 0 && i < g->count; i++)
		n = add_slip(g, r, settings, g->drawn[i] + 1, e);
	return n;
}

/* --- from a theatre list to the record --------------------------------------------------------------------------- */

struct drawn_slots {
	const struct plan *plan;
	const struct drawing *g;
	int recorded[SAMPLE_MAX]; /* cases of the room and day of each that was drawn */
};

static const struct plan_slot *slot_of(const struct drawn_slots *d, int i)
{
	return &d->plan->slots[d->g->drawn[i]];
}

static int count_case(void *context, const struct case_edges *c)
{
	struct drawn_slots *d = context;
	for (int i = 0; i < d->g->count; i++)
		d->recorded[i] += c->room == slot_of(d, i)->room && c->opened_day == slot_of(d, i)->day;
	return 0;
}

static int count_cases(struct drawn_slots *d, struct record *r, struct error *e)
{
	int64_t after = 0;
	int n = 0;
	do
		n = record_each_case(r, after, 100000, count_case, d, &after, e);
	while (n == 0 && after);
	return n;
}

static void add_slot(const struct drawn_slots *d, int i, const struct recorded *settings)
{
	char text[24];
	const struct plan_slot *slot = slot_of(d, i);
	const struct room *room = recorded_room(settings, slot->room);
	json_t *cells = document_row(d->g->rows);
	day_text(slot->day, text);
	document_cell(cells, text);
	document_cell(cells, room ? room->name : "");
	snprintf(text, sizeof text, "%d", slot->slot);
	document_cell(cells, text);
	snprintf(text, sizeof text, "%d", d->recorded[i]);
	document_cell(cells, text);
	document_cell(cells, BOX);
}

/* Those of a digit alone. */
static void keep_digits(struct plan *p)
{
	size_t planned = 0;
	for (size_t i = 0; i < p->count; i++)
		if (p->slots[i].digit)
			p->slots[planned++] = p->slots[i];
	p->count = planned;
}

static int draw_plan(struct drawing *g, struct plan *p, struct record *r, const struct recorded *settings,
                     const char *site, struct error *e)
{
	struct drawn_slots d = {.plan = p, .g = g};
	keep_digits(p);
	g->population = (int32_t)p->count;
	int n = begin(g, site, SAY_RW_SAMPLE_TITLE_LIST,
	              HEADS(SAY_RW_SAMPLE_DATE, SAY_RW_SAMPLE_ROOM, SAY_RW_SAMPLE_SLOT,
	                    SAY_RW_SAMPLE_RECORDED, SAY_RW_SAMPLE_FOUND),
	              "planned operations", e);
	if (n == 0)
		n = count_cases(&d, r, e);
	for (int i = 0; n == 0 && i < g->count; i++)
		add_slot(&d, i, settings);
	return n;
}

/* Of the list that is given alone, or of those that reports kept. */
static int sample_plan(struct drawing *g, struct record *r, struct recorded *settings, const char *site,
                       const char *list, struct error *e)
{
	struct plan p = {0};
	int n = list ? audit_plan_read(&p, list, settings, e) : audit_plan(&p, r, NULL, settings, e);
	if (n == 0 && !list)
		n = error_set(e, -ENOENT,
		              "no theatre list is kept of this record: give one with --list, here or to "
		              "'bandtally audit report'");
	if (n >= 0)
		n = draw_plan(g, &p, r, settings, site, e);
	plan_deinit(&p);
	return n;
}

/* --- all of it ------------------------------------------------------------------------------------------------------- */

static int draw(struct drawing *g, struct record *r, int planned, const char *list, struct error *e)
{
	struct recorded *settings = calloc(1, sizeof *settings);
	int n = settings ? audit_settings(r, settings, e)
	                 : error_set(e, -ENOMEM, "cannot draw a sample: out of memory: close other programs");
	const char *site = n < 0 ? "" : *settings->site_name ? settings->site_name : settings->site;
	if (n == 0)
		n = planned ? sample_plan(g, r, settings, site, list, e)
		            : sample_slips(g, r, settings, site, e);
	free(settings);
	free(g->drawn);
	return n;
}

int audit_sample(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct record *record = NULL;
	struct drawing g = {0};
	char path[PATH_MAX];
	int held = -1, count = 0, seed = 0, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest != 1)
		return w.n_rest ? words_beyond(w.rest[1], usage) : words_missing("COUNT, how many,", usage);
	if (words_number("COUNT", w.rest[0], 1, SAMPLE_MAX, &count, usage) < 0)
		return EXIT_USAGE;
	if (!words_given(&w, options, "seed"))
		return words_missing("--seed, a number by which anybody can draw the same again,", usage);
	if (words_number("--seed", words_value(&w, options, "seed"), 0, 999999999, &seed, usage) < 0)
		return EXIT_USAGE;
	r = audit_give_read(&w, options, usage);
	if (r)
		return r;
	const char *list = words_value(&w, options, "list");
	int planned = words_given(&w, options, "planned");
	g.count = count;
	g.seed = seed;
	struct audit_language language;
	int n = audit_language(&language, words_value(&w, options, "language"),
	                       words_value(&w, options, "file"), &e);
	g.language = language.is;
	if (n == 0)
		n = audit_record(&record, words_value(&w, options, "file"), path, &held, &e);
	if (n == 0)
		n = draw(&g, record, planned || list, list, &e);
	audit_done(record, held);
	audit_language_end(&language);
	_cleanup_(json_drop) json_t *doc = g.d.whole;
	return n < 0 ? client_fail(&e) : audit_give(doc, &w, options);
}
