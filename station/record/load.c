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
	           *key = (const char *)sqlite3_column_text(s, 4);
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
	struct unfollowed u = {.seq = sqlite3_column_int64(s, 1), .case_no = sqlite3_column_int(s, 2)};
	const char *kind = (const char *)sqlite3_column_text(s, 3);
	snprintf(u.kind, sizeof u.kind, "%s", kind ? kind : "");
	keep_numbers(st, s, &room);
	station_not_followed(st, &u, room);
}

static int load_row(sqlite3_stmt *s, int counts, struct station *st, struct event *ev, struct error *e)
{
	int n = store_read_row(s, ev, e);
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

/* Rows in the order of their numbers. */
struct arm {
	sqlite3_stmt *s;
	int counts;  /* 0: only when it was */
	int64_t seq; /* of the row that it stands at; INT64_MAX at the end */
};

#define COLUMNS "SELECT payload, event.seq, case_no, kind, key "

static int step(struct record *r, struct arm *a, struct error *e)
{
	int code = sqlite3_step(a->s);
	a->seq = code == SQLITE_ROW ? sqlite3_column_int64(a->s, 1) : INT64_MAX;
	return code == SQLITE_ROW || code == SQLITE_DONE ? 0 : store_fault(r, code, "read the record", e);
}

static struct arm *next_of(struct arm *arms, int n)
{
	struct arm *first = arms;
	for (int i = 1; i < n; i++)
		if (arms[i].seq < first->seq)
			first = &arms[i];
	return first;
}

static int load_rows(struct record *r, struct arm *arms, int count, struct station *st, struct error *e)
{
	struct event *ev = malloc(sizeof *ev);
	int n = ev ? 0 : error_set(e, -ENOMEM, "cannot read the record: out of memory: try again");
	for (int i = 0; i < count && n == 0; i++)
		n = step(r, &arms[i], e);
	for (struct arm *a; n == 0 && (a = next_of(arms, count))->seq < INT64_MAX;) {
		n = load_row(a->s, a->counts, st, ev, e);
		if (n == 0)
			n = step(r, a, e);
	}
	free(ev);
	return n;
}

int record_load_from(struct record *r, int64_t after, struct station *st, struct error *e)
{
	struct arm all = {.counts = 1};
	int n = store_prepare(r, &all.s, COLUMNS "FROM event WHERE seq > ? ORDER BY seq", e);
	if (n == 0) {
		sqlite3_bind_int64(all.s, 1, after);
		n = load_rows(r, &all, 1, st, e);
	}
	sqlite3_finalize(all.s);
	return n;
}

/* Ended cases leave behind only their numbers, their slips and what is owed: the rest of their events is
 * skipped, which is what lets a station with twenty thousand cases start at once. But when they happened
 * counts: a power cut is measured from the last sign of life, in whatever case that was.
 * SQLite could merge the three, and would take as long for that as for reading them. */
int record_load(struct record *r, struct station *st, struct error *e)
{
	static const char *const of[] = {
	    COLUMNS "FROM event WHERE " LASTING " ORDER BY seq",
	    COLUMNS "FROM event WHERE case_no > 0 AND NOT " LASTING " AND case_no IN"
	            " (SELECT case_no FROM event WHERE kind = 'case-opened' EXCEPT"
	            " SELECT case_no FROM event WHERE kind = 'case-ended') ORDER BY seq",
	    COLUMNS "FROM (SELECT seq AS start FROM event WHERE kind = 'started'"
	            " UNION ALL SELECT max(seq) + 1 FROM event) CROSS JOIN event"
	            " ON event.seq BETWEEN start - " LAST_SIGNS " AND start - 1 WHERE NOT " LASTING
	            " ORDER BY event.seq",
	};
	struct arm arms[] = {{.counts = 1}, {.counts = 1}, {.counts = 0}};
	const int count = sizeof arms / sizeof *arms;
	int n = 0;
	for (int i = 0; i < count && n == 0; i++)
		n = store_prepare(r, &arms[i].s, of[i], e);
	if (n == 0)
		n = load_rows(r, arms, count, st, e);
	for (int i = 0; i < count; i++)
		sqlite3_finalize(arms[i].s);
	return n;
}
