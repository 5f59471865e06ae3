#include "tool/report-central.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report/figures.h"
#include "tool/central-files.h"
#include "tool/report-document.h"

struct central {
	const struct language *language;
	struct central_files files;
	struct report_base *bases; /* of each file */
	size_t *at;                /* which of its cases is the next */
	struct report_station *stations;
	struct recorded together; /* what they have in common */
};

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "cannot make the report: out of memory: close other programs");
}

/* A search that is not the same everywhere has steps that are counted, not named. */
static void take_together(struct central *c, const struct recorded *of, int first)
{
	struct policy *p = &c->together.policy;
	if (first) {
		c->together = *of;
		return;
	}
	int same = p->n_search == of->policy.n_search;
	for (int i = 0; same && i < p->n_search; i++)
		same = strcmp(p->search[i], of->policy.search[i]) == 0;
	if (!same)
		p->n_search = 0;
}

static int open_station(struct central *c, int i, struct error *e)
{
	struct report_base *b = &c->bases[i];
	int n = report_base_open(
	    b, &(struct report_from){.language = c->language, .file = c->files.list[i].path, .list = "none"},
	    e);
	if (n < 0)
		return n;
	take_together(c, b->settings, i == 0);
	c->stations[i] = (struct report_station){.seq = b->summary.seq,
	                                         .last = b->last.at,
	                                         .chain = b->summary.chain,
	                                         .cases = (int64_t)b->summary.count,
	                                         .settings = b->settings};
	snprintf(c->stations[i].name, sizeof c->stations[i].name, "%s", c->files.list[i].name);
	return 0;
}

int central_open(struct central **out, const char *folder, const struct language *language, struct error *e)
{
	struct central *c = *out = calloc(1, sizeof *c);
	if (!c)
		return no_memory(e);
	c->language = language;
	int n = central_files_list(&c->files, folder, e);
	if (n < 0)
		return n;
	size_t room = (size_t)c->files.count;
	c->bases = calloc(room, sizeof *c->bases);
	c->at = calloc(room, sizeof *c->at);
	c->stations = calloc(room, sizeof *c->stations);
	if (!c->bases || !c->at || !c->stations)
		return no_memory(e);
	for (int i = 0; i < c->files.count; i++)
		c->bases[i].held = -1;
	for (int i = 0; i < c->files.count && n == 0; i++)
		n = open_station(c, i, e);
	return n;
}

void central_close(struct central *c)
{
	if (!c)
		return;
	for (int i = 0; c->bases && i < c->files.count; i++)
		report_base_close(&c->bases[i]);
	central_files_free(&c->files);
	free(c->bases);
	free(c->at);
	free(c->stations);
	free(c);
}

/* --- their answers, together ---------------------------------------------------------------------------------------- */

static int first_to_come(const struct central *c)
{
	int first = -1;
	int64_t least = INT64_MAX;
	for (int i = 0; i < c->files.count; i++) {
		const struct summary *s = &c->bases[i].summary;
		if (c->at[i] < s->count && s->rows[c->at[i]].opened_ms < least) {
			least = s->rows[c->at[i]].opened_ms;
			first = i;
		}
	}
	return first;
}

static int cases(void *context, struct source_span span, int32_t room, source_case_fn each, void *to,
                 struct error *e)
{
	struct central *c = context;
	int n = 0;
	(void)e;
	memset(c->at, 0, (size_t)c->files.count * sizeof *c->at);
	for (int i; n == 0 && (i = first_to_come(c)) >= 0;) {
		struct case_row row = c->bases[i].summary.rows[c->at[i]++];
		row.room += i * ROOMS_OF_A_STATION;
		if (row.day >= span.from && row.day <= span.to && (!room || row.room == room))
			n = each(to, &row);
	}
	return n < 0 ? n : 0;
}

static int batches(void *context, struct source_span span, source_batch_fn each, void *to, struct error *e)
{
	struct central *c = context;
	int n = 0;
	for (int i = 0; n == 0 && i < c->files.count; i++) {
		struct source one = summary_source(&c->bases[i].summary);
		n = one.batches(one.context, span, each, to, e);
	}
	return n;
}

struct source central_source(struct central *c)
{
	return (struct source){.context = c, .cases = cases, .batches = batches};
}

int central_make(struct central *c, struct source_span span, json_t **doc, struct error *e)
{
	struct figures *f = NULL;
	struct source source = central_source(c);
	int32_t last = 0;
	for (int i = 0; i < c->files.count; i++)
		if (report_last_day(&c->bases[i]) > last)
			last = report_last_day(&c->bases[i]);
	int n = figures_make(&f, &source, &(struct figures_ask){.span = span, .last_day = last}, e);
	int cases = n == 0 ? f->cases : 0;
	if (n == 0 && !(*doc = report_document(&(struct report_source){.language = c->language,
	                                                               .figures = f,
	                                                               .settings = &c->together,
	                                                               .stations = c->stations,
	                                                               .n_stations = c->files.count})))
		n = no_memory(e);
	figures_free(f);
	return n < 0 ? n : cases;
}
