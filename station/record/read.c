#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "record/event-json.h"
#include "record/event-text.h"
#include "record/store-internal.h"

/* How many events a start stores at most with its own. */
#define START_EVENTS "3"

/* -EPROTO where it is of a later format, -EINVAL where it cannot be read. */
int store_read_row(sqlite3_stmt *s, struct event *ev, struct error *e)
{
	const char *text = (const char *)sqlite3_column_text(s, 0);
	size_t size = (size_t)sqlite3_column_bytes(s, 0);
	if (!text && sqlite3_errcode(sqlite3_db_handle(s)) == SQLITE_NOMEM)
		return error_set(e, -ENOMEM, "cannot read the record: out of memory: try again");
	int n = event_read(ev, text ? text : "", size, e);
	if (n == 0 && ev->format == 1) /* which did not say: as it has been read on this computer until now */
		ev->at.utc_min = clock_utc_min(ev->at.wall_ms);
	return n < 0 && text && event_format(text, size) > FORMAT_VERSION ? -EPROTO : n;
}

int record_event_at(struct record *r, int64_t seq, struct event *ev)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "SELECT payload FROM event WHERE seq = ?", NULL);
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, seq);
	int code = sqlite3_step(s);
	n = code == SQLITE_ROW    ? store_read_row(s, ev, NULL)
	    : code == SQLITE_DONE ? -ENOENT
	                          : store_fault(r, code, "read the record", NULL);
	sqlite3_finalize(s);
	return n;
}

/* Columns: the payload; its seq and its case where they are asked for. */
static void unreadable(sqlite3_stmt *s, struct event *ev)
{
	int columns = sqlite3_column_count(s);
	memset(ev, 0, sizeof *ev);
	ev->kind = EV_UNREADABLE;
	ev->seq = columns > 1 ? sqlite3_column_int64(s, 1) : 0;
	ev->case_no = columns > 2 ? sqlite3_column_int(s, 2) : 0;
}

int store_each_row(struct record *r, sqlite3_stmt *s, record_event_fn each, void *context, struct error *e)
{
	struct event *ev = malloc(sizeof *ev);
	int n = ev ? 0 : error_set(e, -ENOMEM, "cannot read the record: out of memory: try again"),
	    code = SQLITE_OK;
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		n = store_read_row(s, ev, e);
		if (n == -EINVAL) {
			unreadable(s, ev);
			n = 0;
		}
		if (n == 0)
			n = each(context, ev);
	}
	free(ev);
	sqlite3_reset(s);
	if (n == 0 && code != SQLITE_DONE && code != SQLITE_OK)
		return store_fault(r, code, "read the record", e);
	return n < 0 ? n : 0;
}

int record_each(struct record *r, int32_t case_no, record_event_fn each, void *context, struct error *e)
{
	if (case_no) {
		sqlite3_bind_int(r->of_case, 1, case_no);
		return store_each_row(r, r->of_case, each, context, e);
	}
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "SELECT payload, seq FROM event ORDER BY seq", e);
	if (n == 0)
		n = store_each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_read_through(struct record *r, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = SQLITE_ROW, n = store_prepare(r, &s, "SELECT sum(length(payload)) FROM event", e);
	if (n == 0)
		code = sqlite3_step(s);
	sqlite3_finalize(s);
	return code == SQLITE_ROW ? n : store_fault(r, code, "read the record", e);
}

int record_each_station(struct record *r, enum event_kind kind, record_event_fn each, void *context,
                        struct error *e)
{
	char sql[160];
	sqlite3_stmt *s = NULL;
	/* The kind's name is part of the text, not bound: else the index of kinds could not be used. */
	snprintf(sql, sizeof sql,
	         "SELECT payload, seq FROM event WHERE case_no = 0 AND kind = '%s' ORDER BY seq",
	         event_name(kind));
	int n = store_prepare(r, &s, sql, e);
	if (n == 0)
		n = store_each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_each_of_kinds(struct record *r, int64_t after, const enum event_kind *kinds, int count,
                         record_event_fn each, void *context, struct error *e)
{
	_cleanup_(buf_free) struct buf sql = {0};
	sqlite3_stmt *s = NULL;
	int n =
	    buf_printf(&sql, "SELECT payload, seq FROM event WHERE case_no = 0 AND seq > ? AND kind IN (");
	for (int i = 0; i < count && n == 0; i++)
		n = buf_printf(&sql, "%s'%s'", i ? "," : "", event_name(kinds[i]));
	if (n == 0)
		n = buf_add_text(&sql, ") ORDER BY seq");
	if (n < 0)
		return error_set(e, n, "cannot read the record: out of memory: try again");
	n = store_prepare(r, &s, sql.data, e);
	if (n == 0) {
		sqlite3_bind_int64(s, 1, after);
		n = store_each_row(r, s, each, context, e);
	}
	sqlite3_finalize(s);
	return n;
}

int record_each_key(struct record *r, record_event_fn each, void *context, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s,
	                      "SELECT k.payload, k.seq FROM event AS s CROSS JOIN event AS k"
	                      " ON k.seq BETWEEN s.seq + 1 AND s.seq + " START_EVENTS
	                      " WHERE s.kind = 'started' AND k.kind = 'key' ORDER BY s.seq, k.seq",
	                      e);
	if (n == 0)
		n = store_each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_each_setting(struct record *r, record_event_fn each, void *context, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "SELECT payload, seq FROM event WHERE " OF_THE_PAST " ORDER BY seq", e);
	if (n == 0)
		n = store_each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int64_t record_end(struct record *r)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "SELECT coalesce(max(seq), 0) FROM event", NULL);
	if (n < 0)
		return n;
	int code = sqlite3_step(s);
	int64_t end = sqlite3_column_int64(s, 0);
	sqlite3_finalize(s);
	return code == SQLITE_ROW ? end : store_fault(r, code, "read the record", NULL);
}

/* Of a stretch that left the hash of its last event is known, which is what the next one follows from. */
int record_hash_at(struct record *r, int64_t seq, struct chain *chain)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s,
	                      r->schema < SCHEMA_GONE ? "SELECT hash FROM event WHERE seq = ?1"
	                                              : "SELECT hash FROM event WHERE seq = ?1 UNION ALL"
	                                                " SELECT hash FROM gone WHERE last = ?1",
	                      NULL);
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, seq);
	int code = sqlite3_step(s);
	if (code == SQLITE_ROW && sqlite3_column_bytes(s, 0) == CHAIN_BYTES)
		memcpy(chain->hash, sqlite3_column_blob(s, 0), CHAIN_BYTES);
	else if (code == SQLITE_ROW)
		memset(chain, 0, sizeof *chain);
	sqlite3_finalize(s);
	return code == SQLITE_ROW    ? RECORD_FOUND
	       : code == SQLITE_DONE ? RECORD_HAS_NONE
	                             : store_fault(r, code, "read the record", NULL);
}

int record_case_left(struct record *r, int32_t case_no, struct event *out)
{
	sqlite3_stmt *s = NULL;
	if (r->schema < SCHEMA_GONE)
		return RECORD_HAS_NONE;
	int n = store_prepare(r, &s,
	                      "SELECT e.payload FROM left_case AS l JOIN event AS e ON e.seq = l.seq"
	                      " WHERE l.case_no = ?",
	                      NULL);
	if (n < 0)
		return n;
	sqlite3_bind_int(s, 1, case_no);
	int code = sqlite3_step(s);
	n = code == SQLITE_ROW    ? store_read_row(s, out, NULL)
	    : code == SQLITE_DONE ? 0
	                          : store_fault(r, code, "read the record", NULL);
	sqlite3_finalize(s);
	return n < 0 ? n : code == SQLITE_ROW ? RECORD_FOUND : RECORD_HAS_NONE;
}

int record_chain_at(struct record *r, int64_t seq, struct chain *chain, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "SELECT hash FROM event WHERE seq = ?", e), code = SQLITE_OK;
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, seq);
	code = sqlite3_step(s);
	if (code == SQLITE_ROW && sqlite3_column_bytes(s, 0) == CHAIN_BYTES)
		memcpy(chain->hash, sqlite3_column_blob(s, 0), CHAIN_BYTES);
	else if (code == SQLITE_ROW || code == SQLITE_DONE)
		n = error_set(e, -ENOENT,
		              "there is no event %" PRId64 " in the record: see 'bandtally audit'", seq);
	else
		n = store_fault(r, code, "read the record", e);
	sqlite3_finalize(s);
	return n;
}

int record_each_case_edge(struct record *r, record_event_fn each, void *context, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s,
	                      "SELECT payload, seq FROM event WHERE kind = 'case-opened' UNION ALL"
	                      " SELECT payload, seq FROM event WHERE kind = 'case-ended' ORDER BY 2",
	                      e);
	if (n == 0)
		n = store_each_row(r, s, each, context, e);
	sqlite3_finalize(s);
	return n;
}

int record_left(struct record *r, int *cases, struct event *last)
{
	sqlite3_stmt *s = NULL;
	*cases = 0;
	if (r->schema < SCHEMA_GONE)
		return 0;
	int n = store_prepare(r, &s, "SELECT count(*), coalesce(max(seq), 0) FROM left_case", NULL);
	if (n < 0)
		return n;
	int code = sqlite3_step(s);
	int64_t seq = 0;
	if (code == SQLITE_ROW) {
		*cases = sqlite3_column_int(s, 0);
		seq = sqlite3_column_int64(s, 1);
	}
	sqlite3_finalize(s);
	if (code != SQLITE_ROW)
		return store_fault(r, code, "read the record", NULL);
	return seq ? record_event_at(r, seq, last) : 0;
}

/* --- the cases, page by page ---------------------------------------------------------------------- */

/* The end stands among the last events of its case. One that cannot be read is no good end. */
static int end_of(struct record *r, sqlite3_stmt *ended, int32_t case_no, struct event *ev, struct error *e)
{
	int end = 0;
	sqlite3_bind_int(ended, 1, case_no);
	int code = sqlite3_step(ended);
	int n = code == SQLITE_ROW ? store_read_row(ended, ev, e) : 0;
	if (code == SQLITE_ROW)
		end = n == 0 ? ev->what : END_UNRESOLVED;
	sqlite3_reset(ended);
	if (n == -ENOMEM) /* which says nothing of the case */
		return n;
	return code == SQLITE_ROW || code == SQLITE_DONE ? end : store_fault(r, code, "read the record", e);
}

/* Its slips stand among its events; a further copy is queued again under the same number. */
static int slips_of(struct record *r, sqlite3_stmt *queued, struct case_edges *c, struct event *ev,
                    struct error *e)
{
	int code, n = 0;
	sqlite3_bind_int(queued, 1, c->case_no);
	while ((code = sqlite3_step(queued)) == SQLITE_ROW &&
	       (n = store_read_row(queued, ev, e)) != -ENOMEM) {
		if (n < 0 || ev->other != 1)
			continue;
		if (c->n_slips < CASE_SLIPS_MAX)
			c->slips[c->n_slips] = (int32_t)ev->n;
		c->n_slips++;
	}
	sqlite3_reset(queued);
	if (n == -ENOMEM)
		return n;
	return code == SQLITE_DONE ? 0 : store_fault(r, code, "read the record", e);
}

struct case_reading {
	sqlite3_stmt *opened, *ended, *queued;
};

/* One that cannot be read is listed with what stands beside its text. */
static int one_case(struct record *r, const struct case_reading *s, struct event *ev, struct case_edges *c,
                    struct error *e)
{
	int n = store_read_row(s->opened, ev, e);
	if (n < 0 && n != -EINVAL)
		return n;
	*c = (struct case_edges){.case_no = sqlite3_column_int(s->opened, 2)};
	if (n == 0) {
		c->room = ev->room;
		c->opened_ms = ev->at.wall_ms;
		c->opened_day = clock_date_number(ev->at.wall_ms, ev->at.utc_min);
	}
	n = end_of(r, s->ended, c->case_no, ev, e);
	c->end = n;
	c->ended_ms = n > 0 && ev->kind == EV_CASE_ENDED ? ev->at.wall_ms : 0;
	return n < 0 ? n : slips_of(r, s->queued, c, ev, e);
}

int record_each_case(struct record *r, int64_t after, int limit, record_case_fn each, void *context,
                     int64_t *last, struct error *e)
{
	struct case_reading s = {0};
	struct event *ev = malloc(sizeof *ev);
	struct case_edges c;
	int code = SQLITE_DONE, given = 0;
	int n = ev ? 0 : error_set(e, -ENOMEM, "cannot read the record: out of memory: try again");
	*last = 0;
	if (n == 0)
		n = store_prepare(
		    r, &s.opened,
		    "SELECT payload, seq, case_no FROM event WHERE kind = 'case-opened' AND seq > ?"
		    " ORDER BY seq",
		    e);
	if (n == 0)
		n = store_prepare(
		    r, &s.ended,
		    "SELECT payload FROM event WHERE case_no = ? AND case_no > 0 AND kind || '' = "
		    "'case-ended' ORDER BY seq DESC LIMIT 1",
		    e);
	if (n == 0)
		n = store_prepare(
		    r, &s.queued,
		    "SELECT payload FROM event WHERE case_no = ? AND case_no > 0 AND kind || '' = "
		    "'slip-queued' ORDER BY seq",
		    e);
	if (n == 0)
		sqlite3_bind_int64(s.opened, 1, after);
	while (n == 0 && given < limit && (code = sqlite3_step(s.opened)) == SQLITE_ROW) {
		n = one_case(r, &s, ev, &c, e);
		if (n == 0)
			n = each(context, &c);
		*last = ++given == limit ? sqlite3_column_int64(s.opened, 1) : 0;
	}
	free(ev);
	sqlite3_finalize(s.opened);
	sqlite3_finalize(s.ended);
	sqlite3_finalize(s.queued);
	if (n == 0 && code != SQLITE_DONE && code != SQLITE_ROW)
		return store_fault(r, code, "read the record", e);
	return n < 0 ? n : 0;
}
