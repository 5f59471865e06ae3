#include "record/chain-parts.h"

#include <errno.h>
#include <inttypes.h>
#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "record/event-text.h"
#include "record/event.h"
#include "record/store-internal.h"

#define PARTS_MAX 8
#define PART_EVENTS 20000 /* fewer are not worth a thread */

struct part {
	struct record *r; /* a handle of its own, but for the first */
	int64_t from, to; /* the last goes to the end, whatever stands there */
	int last;
	struct chain chain;
	int64_t events;
	int64_t first_unreadable;
	int n_unreadable;
	struct marks marks;
	int result;
	struct error error;
	pthread_t thread;
};

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

static int note(struct marks *m, const struct event *ev)
{
	switch (ev->kind) {
	case EV_STARTED:
	case EV_STOPPED:
	case EV_CASE_ENDED:
	case EV_KEY:
	case EV_SEALED:
	case EV_INCARNATION:
		break;
	default:
		return 0;
	}
	if (m->count == m->room) {
		size_t room = m->room ? m->room * 2 : 256;
		struct mark *more = realloc(m->list, sizeof *more * room);
		if (!more)
			return -ENOMEM;
		m->list = more;
		m->room = room;
	}
	m->list[m->count++] =
	    (struct mark){ev->seq, ev->kind, ev->kind == EV_SEALED && ev->ref == ev->seq - 1};
	return 0;
}

static int is_wrong(struct part *p, int64_t seq, const char *fault)
{
	return error_set(&p->error, -EUCLEAN,
	                 "event %" PRId64
	                 ": %s: the record was changed or is damaged: keep the file, compare it "
	                 "with a backup",
	                 seq, fault);
}

static int take_row(struct part *p, sqlite3_stmt *s, struct chain_run *run, struct buf *again)
{
	struct event ev;
	int64_t seq = p->from + p->events;
	const char *fault = row_fault(s, seq, &ev, again);
	if (chain_run_add(run, &p->chain, (const char *)sqlite3_column_text(s, 3),
	                  (size_t)sqlite3_column_bytes(s, 3)) < 0)
		fault = "its hash could not be made: the computer's library failed";
	int holds = sqlite3_column_bytes(s, 4) == CHAIN_BYTES &&
	            memcmp(sqlite3_column_blob(s, 4), p->chain.hash, CHAIN_BYTES) == 0;
	if (!fault && !holds)
		fault = "its hash does not follow from its text and the hash before";
	if (fault && !(fault == unreadable && holds))
		return is_wrong(p, seq, fault);
	p->events++;
	if (!fault)
		return note(&p->marks, &ev);
	if (!p->n_unreadable++)
		p->first_unreadable = seq;
	return 0;
}

static int go_through(struct part *p, sqlite3_stmt *s, struct chain_run *run)
{
	_cleanup_(buf_free) struct buf again = {0};
	int n = 0, code = SQLITE_ROW;
	sqlite3_bind_int64(s, 1, p->from);
	sqlite3_bind_int64(s, 2, p->last ? INT64_MAX : p->to);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW)
		n = take_row(p, s, run, &again);
	if (n == 0 && code != SQLITE_DONE)
		return store_fault(p->r, code, "read the record", &p->error);
	if (n == 0 && !p->last && p->events != p->to - p->from + 1)
		return is_wrong(p, p->from + p->events, "its number does not follow the one before");
	return n;
}

static void *run_part(void *context)
{
	struct part *p = context;
	sqlite3_stmt *s = NULL;
	struct chain_run *run = chain_run_new();
	int code = sqlite3_prepare_v2(p->r->db,
	                              "SELECT seq,case_no,kind,payload,hash,key FROM event "
	                              "WHERE seq BETWEEN ? AND ? ORDER BY seq",
	                              -1, &s, NULL);
	p->result = !run                ? -ENOMEM
	            : code != SQLITE_OK ? store_fault(p->r, code, "read the record", &p->error)
	                                : go_through(p, s, run);
	if (p->result == -ENOMEM)
		error_set(&p->error, -ENOMEM, "cannot look through the record: out of memory: try again");
	sqlite3_finalize(s);
	chain_run_free(run);
	return NULL;
}

static int as_many_as_are_worth_it(int64_t events)
{
	int64_t n = events / PART_EVENTS, processors = sysconf(_SC_NPROCESSORS_ONLN);
	n = n < processors ? n : processors;
	return n < 1 ? 1 : n > PARTS_MAX ? PARTS_MAX : (int)n;
}

/* How many parts there are: one, where the file cannot be opened again. */
static int begin_parts(struct record *r, struct part *parts, int n, int64_t end)
{
	const char *file = sqlite3_db_filename(r->db, "main");
	for (int i = 0; i < n; i++) {
		struct part *p = &parts[i];
		*p = (struct part){
		    .r = r, .from = 1 + end * i / n, .to = end * (i + 1) / n, .last = i == n - 1};
		if (i && (record_open_copy(&p->r, file, NULL) < 0 ||
		          record_hash_at(p->r, p->from - 1, &p->chain) < 0)) {
			parts[0].last = 1;
			return 1;
		}
	}
	return n;
}

static void run_parts(struct part *parts, int n)
{
	int started = 1;
	while (started < n && pthread_create(&parts[started].thread, NULL, run_part, &parts[started]) == 0)
		started++;
	run_part(&parts[0]);
	for (int i = started; i < n; i++)
		run_part(&parts[i]);
	for (int i = 1; i < started; i++)
		pthread_join(parts[i].thread, NULL);
}

static int add_marks(struct marks *all, struct marks *more)
{
	if (!more->count)
		return 0;
	struct mark *list = realloc(all->list, sizeof *list * (all->count + more->count));
	if (!list)
		return -ENOMEM;
	memcpy(list + all->count, more->list, sizeof *list * more->count);
	all->list = list;
	all->count += more->count;
	all->room = all->count;
	return 0;
}

/* The first fault, in the order of the events; what stands behind it was not asked for. */
static int gather(struct part *parts, int n, int64_t *events, struct chain *chain, struct marks *marks,
                  struct error *e)
{
	int result = 0, n_unreadable = 0;
	int64_t first = 0;
	for (int i = 0; i < n && result == 0; i++) {
		struct part *p = &parts[i];
		*events += p->events;
		*chain = p->chain;
		first = n_unreadable ? first : p->first_unreadable;
		n_unreadable += p->n_unreadable;
		result = p->result < 0 ? error_set(e, p->result, "%s", p->error.text)
		                       : add_marks(marks, &p->marks);
	}
	if (result == 0 && n_unreadable)
		return error_set(e, -EBADMSG,
		                 "event %" PRId64
		                 ": its text cannot be read, though its hash holds%s: it was written so, and "
		                 "nothing was changed since: count what it was to say by hand",
		                 first, n_unreadable > 1 ? ", and that of others" : "");
	return result;
}

int chain_parts(struct record *r, int parts, int64_t *events, struct chain *chain, struct marks *marks,
                struct error *e)
{
	int64_t end = record_end(r);
	*events = 0;
	*chain = (struct chain){0};
	*marks = (struct marks){0};
	if (end < 0)
		return error_set(e, (int)end, "cannot read the record: %s: check the file",
		                 strerror((int)-end));
	int n = parts ? parts : as_many_as_are_worth_it(end);
	struct part *all = calloc((size_t)n, sizeof *all);
	if (!all)
		return error_set(e, -ENOMEM, "cannot look through the record: out of memory: try again");
	int used = begin_parts(r, all, n, end);
	run_parts(all, used);
	int result = gather(all, used, events, chain, marks, e);
	for (int i = 0; i < n; i++) {
		free(all[i].marks.list);
		if (i)
			record_close(all[i].r == r ? NULL : all[i].r);
	}
	free(all);
	return result;
}
