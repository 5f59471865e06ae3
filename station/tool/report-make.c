#include "tool/report-make.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/clock.h"
#include "report/figures.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/report-document.h"

static int no_memory(struct error *e)
{
	return error_set(e, -ENOMEM, "cannot make the report: out of memory: close other programs");
}

int report_base_open(struct report_base *b, const struct report_from *from, struct error *e)
{
	*b = (struct report_base){
	    .held = -1, .language = from->language, .settings = calloc(1, sizeof *b->settings)};
	if (!b->settings)
		return no_memory(e);
	int n = audit_record(&b->record, from->file, b->path, &b->held, e);
	if (n == 0)
		n = audit_settings(b->record, b->settings, e);
	if (n == 0)
		n = b->planned = audit_plan(&b->plan, b->record, from->list, b->settings, e);
	if (n >= 0)
		n = audit_summary(&b->summary, b->record, b->path, from->summary, e);
	if (n == 0 && b->summary.seq && record_event_at(b->record, b->summary.seq, &b->last) < 0)
		b->last.at = (struct moment){0};
	return n == 0 ? audit_left(b->record, &b->left, &b->archived, e) : n;
}

void report_base_close(struct report_base *b)
{
	summary_deinit(&b->summary);
	plan_deinit(&b->plan);
	audit_done(b->record, b->held);
	free(b->settings);
	*b = (struct report_base){.held = -1};
}

int32_t report_last_day(const struct report_base *b)
{
	return clock_date_number(b->last.at.wall_ms, b->last.at.utc_min);
}

/* A room that is no more may have had cases then. */
static int no_such_room(const struct report_base *b, int room, struct error *e)
{
	char rooms[300] = "none";
	size_t used = 0;
	for (int i = 0; i < b->settings->n_rooms && used < sizeof rooms - 80; i++) {
		const struct room *r = &b->settings->rooms[i];
		used += (size_t)snprintf(rooms + used, sizeof rooms - used, "%s%d %s", i ? ", " : "",
		                         (int)r->number, r->name);
	}
	return error_set(e, -ENOENT,
	                 "no report: this record has no room %d, and no case of one; its rooms: %s", room,
	                 rooms);
}

int report_make(struct report_base *b, struct source_span span, int room, json_t **doc, struct error *e)
{
	struct figures *f = NULL;
	struct source source = summary_source(&b->summary);
	int n = figures_make(&f, &source,
	                     &(struct figures_ask){.span = span,
	                                           .room = room,
	                                           .last_day = report_last_day(b),
	                                           .plan = b->planned > 0 ? &b->plan : NULL},
	                     e);
	int cases = n == 0 ? f->cases : 0;
	if (n == 0 && room && !cases && !recorded_room(b->settings, room))
		n = no_such_room(b, room, e);
	if (n == 0)
		*doc = report_document(&(struct report_source){.language = b->language,
		                                               .figures = f,
		                                               .settings = b->settings,
		                                               .left = b->left,
		                                               .archived = &b->archived,
		                                               .seq = b->summary.seq,
		                                               .chain = b->summary.chain});
	figures_free(f);
	if (n == 0 && !*doc)
		n = no_memory(e);
	return n < 0 ? n : cases;
}
