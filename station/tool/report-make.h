/* The reports of one record: it is opened once, with its summary and theatre list, and any number of days is made of it. */
#ifndef BANDTALLY_TOOL_REPORT_MAKE_H
#define BANDTALLY_TOOL_REPORT_MAKE_H

#include <limits.h>

#include "base/json.h"
#include "record/summary.h"
#include "report/plan.h"

struct report_from {                     /* each may be NULL, and borrowed */
	const struct language *language; /* NULL: English */
	const char *file, *summary;      /* tool/audit-record.h, tool/audit.h */
	const char *list;                /* a theatre list, or "none" */
};

struct report_base {
	struct record *record;
	const struct language *language;
	char path[PATH_MAX];
	int held; /* the connection for which the station keeps the copy, -1 none */
	struct recorded *settings;
	struct plan plan;
	int planned; /* 1 where there is a theatre list */
	struct summary summary;
	struct event last, archived; /* the last event of all, and the last that says that cases left */
	int left;                    /* how many did */
};

/* What it took is said on stderr. 0 or a negative errno with `e`; the caller's through report_base_close() whatever comes
 * back. */
int report_base_open(struct report_base *b, const struct report_from *from, struct error *e);
void report_base_close(struct report_base *b);

/* The civil day of the last event, yyyymmdd; 19700101 where nothing was recorded. */
int32_t report_last_day(const struct report_base *b);

/* One report, of all rooms (0) or one; the document is a new reference. How many cases it is of, or a negative errno with
 * `e`. */
int report_make(struct report_base *b, struct source_span span, int room, json_t **doc, struct error *e);

#endif
