#include "record/collect.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/json.h"
#include "record/archive-parts.h"
#include "record/event-json.h"
#include "record/store-internal.h"

static int run(struct record *r, const char *sql, struct error *e)
{
	int code = sqlite3_exec(r->db, sql, NULL, NULL, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "keep the copy", e);
}

static int make_empty(struct record *r, struct error *e)
{
	char version[64];
	snprintf(version, sizeof version, "PRAGMA user_version = %d; COMMIT", RECORD_SCHEMA);
	int n = run(r, "BEGIN IMMEDIATE", e);
	if (n == 0 && store_make_schema_of(r->db, RECORD_SCHEMA) < 0)
		n = store_fault(r, sqlite3_extended_errcode(r->db), "keep the copy", e);
	return n == 0 ? run(r, version, e) : n;
}

static int read_incarnation(struct record *r, int32_t *out, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "PRAGMA application_id", e);
	if (n == 0 && sqlite3_step(s) == SQLITE_ROW)
		*out = sqlite3_column_int(s, 0);
	sqlite3_finalize(s);
	return n;
}

static int prepare(struct record *r, int32_t *incarnation, struct error *e)
{
	int n = store_version(r, &r->schema, e);
	if (n == 0 && r->schema == 0)
		n = make_empty(r, e);
	if (n == 0 && r->schema && r->schema != RECORD_SCHEMA)
		n = error_set(e, -EUCLEAN, "it was made by another version: it is made anew");
	r->schema = RECORD_SCHEMA;
	if (n == 0)
		n = store_prepare_all(r, e);
	if (n == 0)
		n = store_check_tail(r, e);
	return n == 0 ? read_incarnation(r, incarnation, e) : n;
}

int collect_open(struct record **out, const char *file, int32_t *incarnation, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, "out of memory: try again");
	r->lock = -1;
	*incarnation = 0;
	int n = store_open_db(r, file, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, e);
	if (n == 0)
		n = prepare(r, incarnation, e);
	if (n < 0) {
		record_close(r);
		return n;
	}
	*out = r;
	return 0;
}

static int begin(struct record *r, struct error *e)
{
	if (!sqlite3_get_autocommit(r->db))
		return 0;
	int n = run(r, "BEGIN IMMEDIATE", e);
	return n == 0 ? store_triggers_off(r, e) : n;
}

static int does_not_follow(int64_t seq, struct error *e)
{
	return error_set(e, -EBADMSG,
	                 "event %" PRId64
	                 " of the store does not follow from the one before it: nothing behind "
	                 "it is copied: see bt.broken() there",
	                 seq);
}

/* What this program cannot read is kept as it is, as the station keeps it. */
static int put(struct record *r, const struct line_event *line, struct chain *chain, struct error *e)
{
	char room[24];
	struct event ev;
	int n = event_read(&ev, line->text, line->size, NULL);
	if (n == 0)
		return store_insert(
		    r, &(struct store_row){line->seq, ev.case_no, event_name(ev.kind), event_key(&ev, room)},
		    chain, e);
	_cleanup_(json_drop) json_t *o = json_loadb(line->text, line->size, 0, NULL);
	return store_insert(
	    r, &(struct store_row){line->seq, (int32_t)json_number(o, "case", 0), json_text(o, "kind"), ""},
	    chain, e);
}

int collect_add(struct record *r, const struct line_event *line, struct error *e)
{
	char hex[2 * CHAIN_BYTES + 1];
	struct chain chain = r->chain;
	if (line->seq != r->last_seq + 1)
		return does_not_follow(line->seq, e);
	buf_clear(&r->text);
	int n = buf_add(&r->text, line->text, line->size);
	if (n < 0)
		return error_set(e, n, "out of memory: try again");
	n = begin(r, e);
	if (n == 0)
		n = put(r, line, &chain, e);
	if (n < 0)
		return n;
	chain_hex(&chain, hex);
	if (memcmp(hex, line->hash, LINE_HASH) != 0)
		return does_not_follow(line->seq, e);
	r->chain = chain;
	r->last_seq = line->seq;
	return 0;
}

int collect_gone(struct record *r, int64_t last, const char *hash, struct error *e)
{
	sqlite3_stmt *s = NULL;
	struct chain chain;
	if (last <= r->last_seq || !chain_from_hex(&chain, hash))
		return does_not_follow(last, e);
	int n = begin(r, e);
	if (n == 0)
		n = store_prepare(r, &s, "INSERT INTO gone VALUES (?,?,?,?)", e);
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, r->last_seq + 1);
	sqlite3_bind_int64(s, 2, last);
	sqlite3_bind_blob(s, 3, r->chain.hash, CHAIN_BYTES, SQLITE_STATIC);
	sqlite3_bind_blob(s, 4, chain.hash, CHAIN_BYTES, SQLITE_STATIC);
	int code = sqlite3_step(s);
	if (code != SQLITE_DONE)
		n = store_fault(r, code, "keep the copy", e);
	sqlite3_finalize(s);
	if (n == 0) {
		r->chain = chain;
		r->last_seq = last;
	}
	return n;
}

/* The cases that left, which no store is told: they have ended, numbers are missing before their end, and nothing stayed of them but
 * what stays of a case that leaves. They left in the order of their ends, as many each time as the record says (n). */
static const char left_cases[] =
    "INSERT INTO left_case"
    " WITH case_is AS (SELECT case_no, min(seq) AS opened, min(seq) FILTER (WHERE kind = 'case-ended') AS "
    "ended"
    "  FROM event WHERE case_no > 0 GROUP BY case_no"
    "  HAVING count(*) FILTER (WHERE kind NOT IN " ARCHIVE_CASE_STAYS ") = 0),"
    " left_one AS (SELECT case_no, row_number() OVER (ORDER BY ended) AS nth FROM case_is AS c"
    "  WHERE EXISTS (SELECT 1 FROM gone WHERE first > c.opened AND first < c.ended)),"
    " leave AS (SELECT seq, sum(json_extract(payload, '$.n')) OVER (ORDER BY seq) AS so_far"
    "  FROM event WHERE kind = 'archived')"
    " SELECT case_no, (SELECT min(seq) FROM leave WHERE so_far >= nth) FROM left_one WHERE nth <="
    "  (SELECT max(so_far) FROM leave)";

/* That nothing else is missing than what the record says that left, by its own hash. */
static int left_is_said(struct record *r, struct error *e)
{
	struct event ev = {0};
	char hex[2 * CHAIN_BYTES + 1];
	int64_t rows = 0;
	int n = gone_hash(r, hex, &rows), found = rows == 0;
	sqlite3_stmt *s = NULL;
	if (n == 0)
		n = store_prepare(r, &s, "SELECT payload FROM event WHERE kind = 'archived'", e);
	while (n == 0 && !found && sqlite3_step(s) == SQLITE_ROW)
		found = store_read_row(s, &ev, NULL) == 0 && strcmp(ev.head.hash, hex) == 0;
	sqlite3_finalize(s);
	return n < 0 || found ? n
	                      : error_set(e, -EBADMSG,
	                                  "events are missing, and they are not what its record says that "
	                                  "left it for an archive: audit "
	                                  "it by its own record");
}

int collect_end(struct record *r, int32_t incarnation, struct error *e)
{
	int n = begin(r, e);
	if (n == 0)
		n = run(r, "DELETE FROM left_case", e);
	if (n == 0)
		n = run(r, left_cases, e);
	if (n == 0)
		n = left_is_said(r, e);
	return n == 0 ? collect_commit(r, incarnation, e) : n;
}

int collect_commit(struct record *r, int32_t incarnation, struct error *e)
{
	char sql[80];
	snprintf(sql, sizeof sql, "PRAGMA application_id = %d; COMMIT", (int)incarnation);
	int n = begin(r, e);
	if (n == 0)
		n = store_triggers_on(r, e);
	return n == 0 ? run(r, sql, e) : n;
}
