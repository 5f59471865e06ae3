#include <errno.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/json.h"
#include "record/store-internal.h"

/* How far back a start looks for the last sign of life before it; more than one scan's events. */
#define LAST_SIGNS "16"

/* Numbers that must not be given out again, and where a case is, stand in a text that cannot be used as a whole. */
static void keep_numbers(struct station *st, sqlite3_stmt *s, int32_t *room)
{
	const char *text = (const char *)sqlite3_column_text(s, 0),
	           *key = (const char *)sqlite3_column_text(s, 5);
	_cleanup_(json_drop) json_t *o =
	    text ? json_read(text, (size_t)sqlite3_column_bytes(s, 0), NULL) : NULL;
	int64_t in = json_number(o, "room", 0), last = json_number(json_object_get(o, "batch"), "last", 0);
	int slip = 0;
	*room = in > 0 && in <= INT32_MAX ? (int32_t)in : 0;
	if (last > st->last_item_no && last <= 99999999)
		st->last_item_no = last;
	if (key && sscanf(key, "slip:%9d", &slip) == 1 && slip > st->last_slip_no)
		st->last_slip_no = slip;
}

static void not_followed(struct station *st, sqlite3_stmt *s)
{
	int32_t room;
	struct unfollowed u = {.seq = sqlite3_column_int64(s, 1), .case_no = sqlite3_column_int(s, 3)};
	const char *kind = (const char *)sqlite3_column_text(s, 4);
	snprintf(u.kind, sizeof u.kind, "%s", kind ? kind : "");
	keep_numbers(st, s, &room);
	station_not_followed(st, &u, room);
}

static int load_row(sqlite3_stmt *s, struct station *st, struct event *ev, struct error *e)
{
	int counts = sqlite3_column_int(s, 2), n = store_read_row(s, ev, e);
	if (n == 0) {
		struct event alive = {.kind = EV_ALIVE, .at = ev->at};
		n = station_apply(st, counts ? ev : &alive);
	}
	if (n == -ENOMEM)
		return error_set(e, n, "cannot read the record: out of memory: try again");
	if (n == -EPROTO)
		return n;
	if (n < 0 && counts)
		not_followed(st, s);
	return 0;
}

static int load_rows(struct record *r, sqlite3_stmt *s, struct station *st, struct error *e)
{
	int code = SQLITE_OK;
	struct event *ev = malloc(sizeof *ev);
	int n = ev ? 0 : error_set(e, -ENOMEM, "cannot read the record: out of memory: try again");
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW)
		n = load_row(s, st, ev, e);
	free(ev);
	if (n == 0 && code != SQLITE_DONE)
		return store_fault(r, code, "read the record", e);
	return n < 0 ? n : 0;
}

int record_load_from(struct record *r, int64_t after, struct station *st, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(
	    r, &s, "SELECT payload, seq, 1, case_no, kind, key FROM event WHERE seq > ? ORDER BY seq", e);
	if (n == 0) {
		sqlite3_bind_int64(s, 1, after);
		n = load_rows(r, s, st, e);
	}
	sqlite3_finalize(s);
	return n;
}

/* Ended cases leave behind only their numbers, their slips and what is owed: the rest of their events is
 * skipped, which is what lets a station with twenty thousand cases start at once. But when they happened
 * counts: a power cut is measured from the last sign of life, in whatever case that was. */
int record_load(struct record *r, struct station *st, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(
	    r, &s,
	    "SELECT payload, seq, 1, case_no, kind, key FROM event WHERE " LASTING " UNION ALL"
	    " SELECT payload, seq, 1, case_no, kind, key FROM event WHERE case_no > 0 AND "
	    "NOT " LASTING " AND case_no IN"
	    " (SELECT case_no FROM event WHERE kind = 'case-opened' EXCEPT"
	    " SELECT case_no FROM event WHERE kind = 'case-ended') UNION ALL"
	    " SELECT payload, event.seq, 0, case_no, kind, key FROM (SELECT seq AS start "
	    "FROM event WHERE kind = "
	    "'started'"
	    " UNION ALL SELECT max(seq) + 1 FROM event) CROSS JOIN event"
	    " ON event.seq BETWEEN start - " LAST_SIGNS " AND start - 1 WHERE NOT " LASTING " ORDER BY 2",
	    e);
	if (n == 0)
		n = load_rows(r, s, st, e);
	sqlite3_finalize(s);
	return n;
}
