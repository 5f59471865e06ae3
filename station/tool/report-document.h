/* A report as one document: what `bandtally audit report` gives as JSON and CSV, and bandtally-print draws as PDF and SVG
 * (labels/report.c has the table of its fields). */
#ifndef BANDTALLY_TOOL_REPORT_DOCUMENT_H
#define BANDTALLY_TOOL_REPORT_DOCUMENT_H

#include "base/json.h"
#include "count/recorded.h"
#include "record/store.h"
#include "report/figures.h"

struct report_station { /* one of several */
	char name[8];   /* "BC-01" */
	int64_t seq;    /* its last event, when that was, and its hash */
	struct moment last;
	struct chain chain;
	int64_t cases; /* in its record, of all days */
	const struct recorded *settings;
};
#define ROOMS_OF_A_STATION                                                                                   \
	100 /* a room of several stations is the station's place in the list times this, and its own number */

struct report_source {
	const struct language *language; /* of its words; NULL: English */
	const struct figures *figures;
	const struct recorded *settings; /* as the record has them last: names of site, rooms, search steps */
	int left;                        /* cases that left the record, and the last event that says so */
	const struct event *archived;
	int64_t seq; /* the last event, and its hash */
	struct chain chain;
	const struct report_station
	    *stations; /* of which the figures are together; NULL: of one record, as above */
	int n_stations;
};

/* A new reference, NULL without memory. */
json_t *report_document(const struct report_source *from);

#endif
