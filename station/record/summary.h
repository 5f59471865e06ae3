/* A summary of a record: one row a case, kept in a file of the auditor's own, so that a report need not go through every
 * event again. It answers what a report asks (report/source.h).
 *
 * The file bears the number and the hash of the last event that it covers, the fold that made its rows, and a hash of them.
 * Where any of that does not fit the record or this program it is thrown away and made anew; where the record has gone on
 * since, only the cases that had further events, or were open, are told again. Cases that left the record (archive.h) have no row. It is for the program that wrote it, on this
 * machine; nobody else reads it.
 */
#ifndef BANDTALLY_RECORD_SUMMARY_H
#define BANDTALLY_RECORD_SUMMARY_H

#include "record/store.h"
#include "report/source.h"

/* Who makes a row of a case's events: tell/outline.h, handed in because the record knows nothing of telling. Several work at
 * once, each with its own `begin`. */
struct summary_fold {
	uint32_t version;     /* of the rows */
	void *(*begin)(void); /* NULL without memory */
	void (*end)(void *own);
	int (*row)(void *own, const struct event *events, int count, struct moment now,
	           int first_reminder_min, struct case_row *row);
};

struct summary {
	struct record *record; /* borrowed */
	int64_t seq;           /* the last event that it covers */
	struct chain chain;    /* its hash */
	struct case_row *rows; /* in the order in which the cases were opened */
	size_t count;
	/* The numbers of the events by which things and badges were stopped or let go: quarantined, released,
	 * staff-withdrawn. In order; no index of the record has them. */
	int64_t *stops;
	size_t n_stops;
	int64_t told; /* how many events were gone through for it now */
	int kept;     /* how many rows stood in the file already */
	const char
	    *anew; /* why the file was not used, in words for a log; NULL where it was, or there was none */
};

/* The summary of the record in `file`, which `r` has open; `cache` is where it is kept ("" nowhere). 0 where it is whole, 1
 * where it is but could not be written to `cache`, with `e`; or a negative errno with `e`. */
int summary_get(struct summary *s, struct record *r, const char *file, const char *cache,
                const struct summary_fold *fold, struct error *e);
void summary_deinit(struct summary *s);

/* Each of its stops of one kind, in order. */
int summary_each_stop(struct summary *s, enum event_kind kind, record_event_fn each, void *context,
                      struct error *e);

/* Its answers to a report; valid as long as the summary. */
struct source summary_source(struct summary *s);

#endif
