#include <errno.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "base/json.h"
#include "record/event-text.h"
#include "record/event.h"
#include "record/store-internal.h"
#include "record/verify.h"
#include "record/watch.h"

/* Where its hash holds all the same, it stands as it was written, by a version that did not read it back. */
static const char unreadable[] = "its text cannot be read";

/* The text must be what this program would write for what it says, and the columns must say the same. */
static const char *row_fault(sqlite3_stmt *s, int64_t seq, struct event *ev, struct buf *again)
{
	char room[24];
	const char *text = (const char *)sqlite3_column_text(s, 3);
	size_t size = (size_t)sqlite3_column_bytes(s, 3);
	if (sqlite3_column_int64(s, 0) != seq)
		return "its number does not follow the one before";
	int n = event_read_exactly(ev, text ? text : "", size, again, NULL);
	if (n < 0)
		return n == -EILSEQ ? "its text is not in canonical form" : unreadable;
	if (ev->seq != seq || ev->case_no != sqlite3_column_int(s, 1) ||
	    strcmp(event_name(ev->kind), (const char *)sqlite3_column_text(s, 2)) != 0 ||
	    strcmp(event_key(ev, room), (const char *)sqlite3_column_text(s, 5)) != 0)
		return "its columns do not agree with its text";
	return NULL;
}

/* What a record of this schema is made of, as SQLite notes it, is what ours is made of. */
static int each_part(sqlite3 *db, struct buf *out)
{
	sqlite3_stmt *s = NULL;
	int n = 0,
	    code = sqlite3_prepare_v2(db,
	                              "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_master "
	                              "WHERE name NOT LIKE 'sqlite_stat%' ORDER BY type, name",
	                              -1, &s, NULL);
	while (code == SQLITE_OK && n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		code = SQLITE_OK;
		for (int i = 0; n == 0 && i < 4; i++)
			n = buf_printf(out, "%s\n", (const char *)sqlite3_column_text(s, i));
	}
	sqlite3_finalize(s);
	return n < 0 ? n : code == SQLITE_DONE ? 0 : -EIO;
}

static int check_parts(struct record *r, struct watch *w)
{
	sqlite3 *fresh = NULL;
	_cleanup_(buf_free) struct buf ours = {0}, theirs = {0};
	int n = sqlite3_open(":memory:", &fresh) == SQLITE_OK ? store_make_schema(r, fresh) : -ENOMEM;
	if (n == 0)
		n = each_part(fresh, &ours);
	if (n == 0)
		n = each_part(r->db, &theirs);
	sqlite3_close(fresh);
	if (n == 0 && (ours.size != theirs.size || memcmp(ours.data, theirs.data, ours.size) != 0))
		watch_found(
		    w,
		    "the file's tables, indexes and triggers are not those of a record: somebody had it in "
		    "hands who wanted to change it");
	return n;
}

static void check_indexes(struct record *r, struct watch *w)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(r->db, "PRAGMA integrity_check(1)", -1, &s, NULL);
	const char *said = code == SQLITE_OK && sqlite3_step(s) == SQLITE_ROW
	                       ? (const char *)sqlite3_column_text(s, 0)
	                       : NULL;
	if (!said || strcmp(said, "ok") != 0)
		watch_found(
		    w,
		    "the file's indexes and pages are not sound (%.200s): what is looked up in it may not be "
		    "what its events say",
		    said ? said : sqlite3_errmsg(r->db));
	sqlite3_finalize(s);
}

/* `w` NULL: the chain alone. */
static int go_through(struct record *r, struct watch *w, int64_t *events, struct chain *chain,
                      struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(
	    r->db, "SELECT seq,case_no,kind,payload,hash,key FROM event ORDER BY seq", -1, &s, NULL);
	_cleanup_(buf_free) struct buf again = {0};
	struct event ev;
	struct chain_run *run = chain_run_new();
	if (!run)
		code = SQLITE_NOMEM;
	int result = 0, n_unreadable = 0;
	int64_t first_unreadable = 0;
	*chain = (struct chain){0};
	*events = 0;
	while (code == SQLITE_OK && result == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		code = SQLITE_OK;
		struct chain before = *chain;
		const char *fault = row_fault(s, *events + 1, &ev, &again);
		if (chain_run_add(run, chain, (const char *)sqlite3_column_text(s, 3),
		                  (size_t)sqlite3_column_bytes(s, 3)) < 0)
			fault = "its hash could not be made: the computer's library failed";
		int holds = sqlite3_column_bytes(s, 4) == CHAIN_BYTES &&
		            memcmp(sqlite3_column_blob(s, 4), chain->hash, CHAIN_BYTES) == 0;
		if (!fault && !holds)
			fault = "its hash does not follow from its text and the hash before";
		if (fault == unreadable && holds) {
			if (!n_unreadable++)
				first_unreadable = *events + 1;
			fault = NULL;
		}
		if (fault)
			result =
			    error_set(e, -EUCLEAN,
			              "event %" PRId64 ": %s: the record was changed or is damaged: keep the "
			              "file, compare it with a backup",
			              *events + 1, fault);
		else
			++*events;
		if (w && result == 0 && ev.seq == *events)
			watch_event(w, &ev, &before);
	}
	sqlite3_finalize(s);
	chain_run_free(run);
	if (result == 0 && code != SQLITE_DONE)
		return store_fault(r, code, "read the record", e);
	if (result == 0 && n_unreadable)
		return error_set(e, -EBADMSG,
		                 "event %" PRId64
		                 ": its text cannot be read, though its hash holds%s: it was written so, and "
		                 "nothing was changed since: count what it was to say by hand",
		                 first_unreadable, n_unreadable > 1 ? ", and that of others" : "");
	return result;
}

int record_verify(struct record *r, int64_t *events, struct chain *chain, struct error *e)
{
	return go_through(r, NULL, events, chain, e);
}

int record_verify_all(struct record *r, const struct verify_how *how, struct verified *v, struct error *e)
{
	*v = (struct verified){0};
	struct watch *w = malloc(sizeof *w);
	if (!w)
		return error_set(e, -ENOMEM, "cannot look through the record: out of memory: try again");
	watch_begin(w, how, v);
	int n = check_parts(r, w);
	if (n == 0 && how->indexes)
		check_indexes(r, w);
	n = n < 0 ? error_set(e, n, "cannot read what the record is made of: %s: try again", strerror(-n))
	          : go_through(r, w, &v->events, &v->chain, e);
	if (n == 0 || n == -EBADMSG)
		watch_end(w);
	free(w);
	return n;
}
