/* A report of several stations: the copies of their records that `bandtally audit collect` keeps in a folder, each with its own
 * summary. Rooms stand in it as report-document.h numbers those of several stations. */
#ifndef BANDTALLY_TOOL_REPORT_CENTRAL_H
#define BANDTALLY_TOOL_REPORT_CENTRAL_H

#include "tool/report-make.h"

struct central;

/* Each *.db of the folder that is named as a station is, "BC-01.db". 0 or a negative errno with `e`; the caller's through
 * central_close() whatever comes back. */
int central_open(struct central **out, const char *folder, const struct language *language, struct error *e);
void central_close(struct central *c); /* NULL is fine */

/* As report_make(), of all rooms. */
int central_make(struct central *c, struct source_span span, json_t **doc, struct error *e);

/* Their answers to a report, together: cases in the order of their opening. Valid as long as `c`. */
struct source central_source(struct central *c);

#endif
