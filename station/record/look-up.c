#include <errno.h>
#include <stdio.h>

#include "record/store-internal.h"

static int keep_one(void *context, const struct event *ev)
{
	*(struct event *)context = *ev;
	return 1;
}

static int by_key(struct record *r, const char *key, struct event *ev)
{
	sqlite3_bind_text(r->by_key, 1, key, -1, SQLITE_STATIC);
	ev->seq = 0;
	ev->case_no = ev->n = 0;
	ev->kind = EV_STOPPED;
	int n = store_each_row(r, r->by_key, keep_one, ev, NULL);
	return n < 0 ? n : ev->kind == EV_UNREADABLE ? -EUCLEAN : ev->seq ? RECORD_FOUND : RECORD_HAS_NONE;
}

int record_item_used(struct record *r, const char *identity, int32_t *case_no, uint8_t *back)
{
	struct event ev;
	int n = identity[0] ? by_key(r, identity, &ev) : RECORD_HAS_NONE;
	if (n == RECORD_FOUND) {
		*case_no = ev.case_no;
		*back = ev.n == 1;
	}
	return n;
}

int record_label_last(struct record *r, int64_t item_number, struct event *out)
{
	char key[24];
	snprintf(key, sizeof key, "label:%08d", (int)item_number);
	return by_key(r, key, out);
}

/* That of the end; before there is one, the first. */
static int keep_of_end(void *context, const struct event *e)
{
	struct event *kept = context;
	if (kept->kind != EV_SLIP_QUEUED ||
	    (e->what == SLIP_RECONCILIATION && kept->what != SLIP_RECONCILIATION))
		*kept = *e;
	return 0;
}

int record_slip_of_case(struct record *r, int32_t case_no, int32_t *slip)
{
	struct event ev = {.kind = EV_STOPPED};
	sqlite3_stmt *s = NULL;
	int n = store_prepare(
	    r, &s,
	    "SELECT payload, seq FROM event WHERE case_no = ? AND case_no > 0 AND kind = 'slip-queued'"
	    " ORDER BY seq",
	    NULL);
	if (n == 0) {
		sqlite3_bind_int(s, 1, case_no);
		n = store_each_row(r, s, keep_of_end, &ev, NULL);
	}
	sqlite3_finalize(s);
	if (n < 0 || ev.kind != EV_SLIP_QUEUED)
		return n < 0 ? n : RECORD_HAS_NONE;
	*slip = ev.n;
	return RECORD_FOUND;
}

struct slip_search {
	struct slip *slip;
	struct paper *paper;
};

/* The events of one slip, in order, among those of its case. */
static int follow_slip(void *context, const struct event *ev)
{
	struct slip_search *s = context;
	paper_follow(s->slip, s->paper, ev);
	return 0;
}

int record_slip_of(struct record *r, int32_t slip, int32_t copy, struct slip *out, struct paper *paper)
{
	struct event ev;
	char key[24];
	snprintf(key, sizeof key, "slip:%d", (int)slip);
	*out = (struct slip){0};
	*paper = (struct paper){.copy = copy};
	int n = by_key(r, key, &ev);
	if (n != RECORD_FOUND)
		return n;
	*out = (struct slip){.number = slip, .case_no = ev.case_no, .room = ev.room};
	sqlite3_bind_int(r->slips_of, 1, ev.case_no);
	n = store_each_row(r, r->slips_of, follow_slip, &(struct slip_search){out, paper}, NULL);
	return n < 0 ? n : RECORD_FOUND;
}

int record_last_slip(struct record *r, int32_t *slip)
{
	sqlite3_stmt *s = NULL;
	*slip = 0;
	int n = store_prepare(r, &s,
	                      "SELECT max(CAST(substr(key, 6) AS INTEGER)) FROM event"
	                      " WHERE key <> '' AND key >= 'slip:' AND key < 'slip;'",
	                      NULL);
	if (n < 0)
		return n;
	int code = sqlite3_step(s);
	if (code == SQLITE_ROW)
		*slip = sqlite3_column_int(s, 0);
	sqlite3_finalize(s);
	return code == SQLITE_ROW ? 0 : store_fault(r, code, "read the record", NULL);
}

struct batch_search {
	int64_t number;
	int32_t station; /* that gave it out; -1 this one */
	struct batch *out;
	int found, unreadable;
};

static int match_batch(void *context, const struct event *ev)
{
	struct batch_search *b = context;
	b->unreadable |= ev->kind == EV_UNREADABLE;
	int of_it =
	    b->station < 0 ? ev->kind == EV_LABELLED : ev->kind == EV_LABELS_TAKEN && ev->other == b->station;
	if (of_it && ev->batch.first <= b->number && b->number <= ev->batch.last) {
		*b->out = ev->batch;
		b->found = 1;
		return 1;
	}
	return 0;
}

int record_batch_of(struct record *r, int64_t number, struct batch *out)
{
	struct batch_search b = {.number = number, .station = -1, .out = out};
	int n = store_each_row(r, r->batches, match_batch, &b, NULL);
	return n < 0 ? n : !b.found && b.unreadable ? -EUCLEAN : b.found ? RECORD_FOUND : RECORD_HAS_NONE;
}

int record_batch_of_station(struct record *r, int32_t station, int64_t number, struct batch *out)
{
	struct batch_search b = {.number = number, .station = station, .out = out};
	char key[24];
	snprintf(key, sizeof key, "labels-of:%d", (int)station);
	sqlite3_bind_text(r->taken, 1, key, -1, SQLITE_TRANSIENT);
	int n = store_each_row(r, r->taken, match_batch, &b, NULL);
	return n < 0 ? n : !b.found && b.unreadable ? -EUCLEAN : b.found;
}
