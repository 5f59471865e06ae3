#include "record/collect.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/json.h"
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
	return sqlite3_get_autocommit(r->db) ? run(r, "BEGIN IMMEDIATE", e) : 0;
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

int collect_commit(struct record *r, int32_t incarnation, struct error *e)
{
	char sql[80];
	snprintf(sql, sizeof sql, "PRAGMA application_id = %d; COMMIT", (int)incarnation);
	int n = begin(r, e);
	return n == 0 ? run(r, sql, e) : n;
}
