#include "record/chain-parts.h"

#include <errno.h>
#include <inttypes.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "record/event-json.h"
#include "record/event-text.h"
#include "record/store-internal.h"

#define THREADS_MAX 8
#define PART_EVENTS 20000 /* few enough that no thread is done long before the others */
#define PARTS_MAX 1000

struct part {
	int64_t from, to; /* the last goes to the end, whatever stands there */
	int last;
	int64_t next; /* the number that comes */
	struct chain chain;
	int64_t first_unreadable;
	int n_unreadable;
	struct marks marks;
	int result;
	struct error error;
};

/* Whoever has time takes the next part. */
struct parts {
	struct part *list;
	int count;
	atomic_int next;
};

struct looker {
	struct parts *parts;
	struct part *p;   /* that is being gone through */
	struct record *r; /* a handle of its own, but for the first */
	struct buf again;
	sqlite3_stmt *gone;
	pthread_t thread;
};

/* What stands in a row. */
struct row {
	int64_t seq;
	int case_no;
	const char *kind, *text, *key;
	size_t size; /* of the text */
	const void *hash;
	int hash_size;
};

/* Where its hash holds all the same, it stands as it was written, by a version that did not read it back. */
static const char unreadable[] = "its text cannot be read";

/* Where there is none, as somebody may have made the file, it is one that no event has. NULL: out of memory. */
static const char *text_in(sqlite3_value *v)
{
	const char *text = (const char *)sqlite3_value_text(v);
	int type = text ? 0 : sqlite3_value_type(v);
	return type == SQLITE_NULL || type == SQLITE_BLOB ? "\001" : text;
}

/* 0, or -ENOMEM. */
static int read_row(sqlite3_value **columns, struct row *row)
{
	row->seq = sqlite3_value_int64(columns[0]);
	row->case_no = sqlite3_value_int(columns[1]);
	row->kind = text_in(columns[2]);
	row->text = text_in(columns[3]);
	row->size = (size_t)sqlite3_value_bytes(columns[3]);
	row->hash = sqlite3_value_blob(columns[4]);
	row->hash_size = sqlite3_value_bytes(columns[4]);
	row->key = text_in(columns[5]);
	return row->kind && row->text && row->key ? 0 : -ENOMEM;
}

/* The text must be what this program would write for what it says, and the columns must say the same. */
static const char *row_fault(const struct row *row, int64_t seq, struct event *ev, struct buf *again)
{
	char room[24];
	if (row->seq != seq)
		return "its number does not follow the one before";
	int n = event_read_exactly(ev, row->text, row->size, again, NULL);
	if (n < 0)
		return n == -EILSEQ ? "its text is not in canonical form" : unreadable;
	if (ev->seq != seq || ev->case_no != row->case_no || strcmp(event_name(ev->kind), row->kind) != 0 ||
	    strcmp(event_key(ev, room), row->key) != 0)
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
	case EV_ARCHIVED:
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

/* Where numbers are missing, a stretch that left has exactly these, and began behind the hash that stands before them. */
static int step_over(struct part *p, sqlite3_stmt *gone, int64_t seq)
{
	int fits = 0;
	if (!gone || seq <= p->next)
		return 0;
	sqlite3_bind_int64(gone, 1, p->next);
	if (sqlite3_step(gone) == SQLITE_ROW && sqlite3_column_int64(gone, 0) == seq - 1 &&
	    sqlite3_column_bytes(gone, 1) == CHAIN_BYTES && sqlite3_column_bytes(gone, 2) == CHAIN_BYTES &&
	    memcmp(sqlite3_column_blob(gone, 1), p->chain.hash, CHAIN_BYTES) == 0) {
		memcpy(p->chain.hash, sqlite3_column_blob(gone, 2), CHAIN_BYTES);
		p->next = seq;
		fits = 1;
	}
	sqlite3_reset(gone);
	return fits;
}

static int take_row(struct part *p, const struct row *row, sqlite3_stmt *gone, struct buf *again)
{
	struct event ev;
	if (step_over(p, gone, row->seq) && !p->last && row->seq > p->to)
		return 0;
	int64_t seq = p->next;
	const char *fault = row_fault(row, seq, &ev, again);
	chain_run_add(&p->chain, row->text, row->size);
	int holds = row->hash_size == CHAIN_BYTES && memcmp(row->hash, p->chain.hash, CHAIN_BYTES) == 0;
	if (!fault && !holds)
		fault = "its hash does not follow from its text and the hash before";
	if (fault && !(fault == unreadable && holds))
		return is_wrong(p, seq, fault);
	p->next++;
	if (!fault)
		return note(&p->marks, &ev);
	if (!p->n_unreadable++)
		p->first_unreadable = seq;
	return 0;
}

/* looked_at(): SQLite hands the columns over together, which takes half of what asking it for each of them would. 1 where
 * the part ends. */
static void look_at_row(sqlite3_context *context, int n, sqlite3_value **columns)
{
	(void)n;
	struct looker *l = sqlite3_user_data(context);
	struct part *p = l->p;
	struct row row;
	p->result = read_row(columns, &row);
	if (p->result == 0)
		p->result = take_row(p, &row, l->gone, &l->again);
	sqlite3_result_int(context, p->result < 0 || (!p->last && p->next > p->to));
}

/* It begins behind what left, where that reaches into it. */
static int begin_part(struct part *p, struct record *r)
{
	sqlite3_stmt *s = NULL;
	p->next = p->from;
	if (p->from > 1 && r->schema >= SCHEMA_GONE) {
		int n = store_prepare(r, &s, "SELECT last FROM gone WHERE first < ?1 AND last >= ?1", NULL);
		if (n < 0)
			return n;
		sqlite3_bind_int64(s, 1, p->from);
		if (sqlite3_step(s) == SQLITE_ROW)
			p->next = sqlite3_column_int64(s, 0) + 1;
		sqlite3_finalize(s);
	}
	return p->next > 1 ? record_hash_at(r, p->next - 1, &p->chain) : 0;
}

static int go_through(struct part *p, struct looker *l, sqlite3_stmt *s)
{
	int n = begin_part(p, l->r);
	if (n < 0)
		return error_set(&p->error, n, "cannot read the record: %s: check the file", strerror(-n));
	l->p = p;
	sqlite3_bind_int64(s, 1, p->next);
	int code = p->next > p->to && !p->last ? SQLITE_ROW : sqlite3_step(s);
	if (p->result == -ENOMEM)
		return error_set(&p->error, p->result,
		                 "cannot look through the record: out of memory: try again");
	if (p->result == 0 && code != SQLITE_DONE && code != SQLITE_ROW)
		return store_fault(l->r, code, "read the record", &p->error);
	if (p->result == 0 && code == SQLITE_DONE && !p->last)
		return is_wrong(p, p->next, "its number does not follow the one before");
	return p->result;
}

static int prepare(struct looker *l, sqlite3_stmt **s, struct error *e)
{
	int code = sqlite3_create_function(l->r->db, "looked_at", 6, SQLITE_UTF8, l, look_at_row, NULL, NULL);
	if (code == SQLITE_OK && l->r->schema >= SCHEMA_GONE)
		code = sqlite3_prepare_v2(l->r->db, "SELECT last, before, hash FROM gone WHERE first = ?", -1,
		                          &l->gone, NULL);
	return code != SQLITE_OK
	           ? store_fault(l->r, code, "read the record", e)
	           : store_prepare(l->r, s,
	                           "SELECT 1 FROM event WHERE seq >= ? AND "
	                           "looked_at(seq, case_no, kind, payload, hash, key) ORDER BY seq",
	                           e);
}

static void *look(void *context)
{
	struct looker *l = context;
	struct parts *all = l->parts;
	for (int i; (i = atomic_fetch_add(&all->next, 1)) < all->count;) {
		struct part *p = &all->list[i];
		sqlite3_stmt *s = NULL;
		p->result = prepare(l, &s, &p->error);
		if (p->result == 0)
			p->result = go_through(p, l, s);
		sqlite3_finalize(s);
		sqlite3_finalize(l->gone);
		l->gone = NULL;
	}
	return NULL;
}

static int threads_for(int parts)
{
	long n = sysconf(_SC_NPROCESSORS_ONLN);
	n = n < parts ? n : parts;
	return n < 1 ? 1 : n > THREADS_MAX ? THREADS_MAX : (int)n;
}

/* Where the file cannot be opened again, or no thread is to be had, fewer do it all. */
static void look_at_all(struct record *r, struct parts *all)
{
	struct looker list[THREADS_MAX] = {{.parts = all, .r = r}};
	int n = 1, wanted = threads_for(all->count);
	for (; n < wanted; n++) {
		struct looker *l = &list[n];
		l->parts = all;
		if (store_open_again(&l->r, r) < 0)
			break;
		if (pthread_create(&l->thread, NULL, look, l) != 0) {
			record_close(l->r);
			break;
		}
	}
	look(&list[0]);
	for (int i = 0; i < n; i++) {
		if (i) {
			pthread_join(list[i].thread, NULL);
			record_close(list[i].r);
		}
		buf_free(&list[i].again);
	}
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
static int gather(struct parts *all, int64_t *events, struct chain *chain, struct marks *marks,
                  struct error *e)
{
	int result = 0, n_unreadable = 0;
	int64_t first = 0;
	for (int i = 0; i < all->count && result == 0; i++) {
		struct part *p = &all->list[i];
		*events = p->next - 1;
		*chain = p->chain;
		first = n_unreadable ? first : p->first_unreadable;
		n_unreadable += p->n_unreadable;
		if (p->result < 0)
			result = error_set(e, p->result, "%s", p->error.text);
		else if (add_marks(marks, &p->marks) < 0)
			result =
			    error_set(e, -ENOMEM, "cannot look through the record: out of memory: try again");
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
	int n = parts ? parts : end / PART_EVENTS < PARTS_MAX ? (int)(end / PART_EVENTS) + 1 : PARTS_MAX;
	struct parts all = {.list = calloc((size_t)n, sizeof *all.list), .count = n};
	if (!all.list)
		return error_set(e, -ENOMEM, "cannot look through the record: out of memory: try again");
	for (int i = 0; i < n; i++) {
		all.list[i].from = 1 + end / n * i;
		all.list[i].to = end / n * (i + 1);
	}
	all.list[n - 1].last = 1;
	look_at_all(r, &all);
	int result = gather(&all, events, chain, marks, e);
	for (int i = 0; i < n; i++)
		free(all.list[i].marks.list);
	free(all.list);
	return result;
}
