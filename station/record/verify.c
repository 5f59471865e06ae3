#include <errno.h>
#include <inttypes.h>
#include <string.h>

#include "base/json.h"
#include "record/event-text.h"
#include "record/event.h"
#include "record/store-internal.h"

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

int record_verify(struct record *r, int64_t *events, struct chain *chain, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = sqlite3_prepare_v2(
	    r->db, "SELECT seq,case_no,kind,payload,hash,key FROM event ORDER BY seq", -1, &s, NULL);
	_cleanup_(buf_free) struct buf again = {0};
	struct event ev;
	int result = 0, n_unreadable = 0;
	int64_t first_unreadable = 0;
	*chain = (struct chain){0};
	*events = 0;
	while (code == SQLITE_OK && result == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		code = SQLITE_OK;
		const char *fault = row_fault(s, *events + 1, &ev, &again);
		chain_add(chain, (const char *)sqlite3_column_text(s, 3), (size_t)sqlite3_column_bytes(s, 3));
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
	}
	sqlite3_finalize(s);
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
