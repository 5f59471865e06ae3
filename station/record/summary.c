#include "record/summary.h"

#include <errno.h>
#include <inttypes.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/file.h"
#include "record/store-internal.h"

#define SUMMARY_MARK "btsum-2"
#define PARTS_MAX 4

struct head_of_file {
	char mark[8];
	uint32_t fold, row_size;
	int64_t seq, count, stops;
	struct chain chain, rows; /* of the event; over the rows */
};

static struct chain hash_all(const struct summary *s)
{
	struct chain c = {0};
	chain_run_add(&c, (const char *)s->rows, s->count * sizeof *s->rows);
	if (s->n_stops)
		chain_run_add(&c, (const char *)s->stops, s->n_stops * sizeof *s->stops);
	return c;
}

/* --- the file --------------------------------------------------------------------------------------------- */

static int read_whole(const char *path, void *out, size_t size, size_t at)
{
	FILE *f = fopen(path, "re");
	if (!f)
		return -errno;
	int n = fseeko(f, (off_t)at, SEEK_SET) == 0 && fread(out, 1, size, f) == size ? 0 : -EILSEQ;
	fclose(f);
	return n;
}

static int rows_of(struct summary *s, const char *cache, const struct head_of_file *h)
{
	struct stat st;
	size_t rows = (size_t)h->count * sizeof *s->rows, stops = (size_t)h->stops * sizeof *s->stops;
	/* A number that was changed asks for no memory that the file could not fill. */
	if (stat(cache, &st) < 0 || (size_t)st.st_size != sizeof *h + rows + stops)
		return -EILSEQ;
	s->rows = malloc(rows + sizeof *s->rows);
	s->stops = malloc(stops + sizeof *s->stops);
	if (!s->rows || !s->stops)
		return -ENOMEM;
	int n = read_whole(cache, s->rows, rows, sizeof *h);
	if (n == 0)
		n = read_whole(cache, s->stops, stops, sizeof *h + rows);
	if (n < 0)
		return n;
	s->count = (size_t)h->count;
	s->n_stops = (size_t)h->stops;
	struct chain c = hash_all(s);
	return memcmp(&c, &h->rows, sizeof c) != 0 ? -EILSEQ : 0;
}

/* Where it cannot be asked, it is as if they had. */
static int left_since(struct record *r, int64_t seq)
{
	sqlite3_stmt *s = NULL;
	if (r->schema < SCHEMA_GONE)
		return 0;
	if (store_prepare(r, &s, "SELECT 1 FROM left_case WHERE seq > ? LIMIT 1", NULL) < 0)
		return 1;
	sqlite3_bind_int64(s, 1, seq);
	int code = sqlite3_step(s);
	sqlite3_finalize(s);
	return code != SQLITE_DONE;
}

/* Why it is not used; NULL where it is, or where there is none. */
static const char *read_cache(struct summary *s, const char *cache, const struct summary_fold *fold)
{
	struct head_of_file h;
	struct chain now;
	if (!*cache || access(cache, F_OK) < 0)
		return NULL;
	if (read_whole(cache, &h, sizeof h, 0) < 0 || strncmp(h.mark, SUMMARY_MARK, sizeof h.mark) != 0 ||
	    h.count < 0 || h.count > INT32_MAX || h.stops < 0 || h.stops > INT32_MAX)
		return "it is no summary";
	if (h.fold != fold->version || h.row_size != sizeof(struct case_row))
		return "another version made it";
	if (record_hash_at(s->record, h.seq, &now) != RECORD_FOUND || memcmp(&now, &h.chain, sizeof now) != 0)
		return "it is of another record, or of what this one was before";
	if (left_since(s->record, h.seq))
		return "cases have left the record since";
	if (rows_of(s, cache, &h) < 0) {
		summary_deinit(s);
		return "it is damaged";
	}
	s->seq = h.seq;
	return NULL;
}

static int write_cache(const struct summary *s, const char *cache, const struct summary_fold *fold,
                       struct error *e)
{
	struct head_of_file h = {.mark = SUMMARY_MARK,
	                         .fold = fold->version,
	                         .row_size = sizeof(struct case_row),
	                         .seq = s->seq,
	                         .count = (int64_t)s->count,
	                         .stops = (int64_t)s->n_stops,
	                         .chain = s->chain,
	                         .rows = hash_all(s)};
	_cleanup_(buf_free) struct buf all = {0};
	int n = buf_add(&all, &h, sizeof h);
	if (n == 0)
		n = buf_add(&all, s->rows, s->count * sizeof *s->rows);
	if (n == 0 && s->n_stops)
		n = buf_add(&all, s->stops, s->n_stops * sizeof *s->stops);
	if (n == 0)
		n = file_is_ours(cache, "btsum-");
	if (n == 0)
		n = file_replace_soon(cache, 0600, all.data, all.size);
	if (n == 0)
		return 0;
	error_set(e, n, "the summary cannot be kept in %.300s: %s: the next report makes it again", cache,
	          file_words(n));
	return 1;
}

/* --- which cases are to be told ----------------------------------------------------------------------------- */

struct list {
	int32_t *cases;
	size_t count, room;
};

static int list_add(struct list *l, int32_t case_no)
{
	if (l->count == l->room) {
		size_t room = l->room ? 2 * l->room : 1024;
		int32_t *more = realloc(l->cases, room * sizeof *more);
		if (!more)
			return -ENOMEM;
		l->cases = more;
		l->room = room;
	}
	l->cases[l->count++] = case_no;
	return 0;
}

/* By the index of openings; behind an event every further one is looked at. */
static const char all_cases[] =
    "SELECT case_no FROM event WHERE kind = 'case-opened' AND ?1 = 0 ORDER BY seq";
static const char later_cases[] = "SELECT DISTINCT case_no FROM event WHERE seq > ?1 AND +case_no > 0";

/* What stays of a case that left would be told as a case in which nothing happened. */
static int take_out_left(struct record *r, struct list *l)
{
	struct event left;
	size_t kept = 0;
	for (size_t i = 0; i < l->count; i++) {
		int n = record_case_left(r, l->cases[i], &left);
		if (n < 0)
			return n;
		if (n == RECORD_HAS_NONE)
			l->cases[kept++] = l->cases[i];
	}
	l->count = kept;
	return 0;
}

static int list_cases(struct summary *s, struct list *l, struct error *e)
{
	sqlite3_stmt *st = NULL;
	int n = store_prepare(s->record, &st, s->seq ? later_cases : all_cases, e), code = SQLITE_DONE;
	if (n < 0)
		return n;
	sqlite3_bind_int64(st, 1, s->seq);
	while (n == 0 && (code = sqlite3_step(st)) == SQLITE_ROW)
		n = list_add(l, sqlite3_column_int(st, 0));
	sqlite3_finalize(st);
	if (n == 0 && code != SQLITE_DONE)
		return store_fault(s->record, code, "read the record", e);
	if (n == 0 && left_since(s->record, 0) && (n = take_out_left(s->record, l)) < 0)
		return error_set(e, n, "it cannot be read which cases left the record: %s: try again",
		                 strerror(-n));
	return n == 0 ? 0 : error_set(e, n, "cannot make the summary: out of memory: close other programs");
}

static int by_number(const void *a, const void *b)
{
	const int32_t *x = a, *y = b;
	return *x < *y ? -1 : *x > *y;
}

/* Rows that will be told again are taken out, those of open cases too: their clocks run. */
static int take_out(struct summary *s, struct list *l, struct error *e)
{
	size_t kept = 0, later = l->count;
	if (later)
		qsort(l->cases, later, sizeof *l->cases, by_number);
	for (size_t i = 0; i < s->count; i++) {
		struct case_row *row = &s->rows[i];
		int again = later && bsearch(&row->case_no, l->cases, later, sizeof *l->cases, by_number);
		if (!again && row->end == CASE_OPEN) {
			again = 1;
			if (list_add(l, row->case_no) < 0)
				return error_set(
				    e, -ENOMEM,
				    "cannot make the summary: out of memory: close other programs");
		}
		if (!again)
			s->rows[kept++] = *row;
	}
	s->count = kept;
	s->kept = (int)kept;
	return 0;
}

/* --- telling them, several at once ---------------------------------------------------------------------------- */

struct reminder {
	int64_t seq;
	int minutes;
};

struct work {
	const char *file;
	const struct summary_fold *fold;
	const struct list *list;
	struct case_row *rows; /* one for each of the list */
	struct moment now;
	const struct reminder *reminders;
	size_t n_reminders;
};

struct part {
	const struct work *work;
	size_t first, step;
	struct event *events;
	int count, room;
	int64_t told;
	int result;
	struct error error;
	pthread_t thread;
	int runs;
};

static int keep(void *context, const struct event *e)
{
	struct part *p = context;
	if (p->count == p->room) {
		int room = p->room ? 2 * p->room : 128;
		struct event *more = realloc(p->events, (size_t)room * sizeof *more);
		if (!more)
			return -ENOMEM;
		p->events = more;
		p->room = room;
	}
	p->events[p->count++] = *e;
	return 0;
}

/* By the policy of its day; before the record first says it, by what it first says. */
static int first_reminder(const struct work *w, int64_t seq)
{
	int minutes = w->n_reminders ? w->reminders[0].minutes : 0;
	for (size_t i = 0; i < w->n_reminders && w->reminders[i].seq < seq; i++)
		minutes = w->reminders[i].minutes;
	return minutes;
}

static int tell_part(struct part *p, struct record *r, void *own)
{
	const struct work *w = p->work;
	int n = 0;
	for (size_t i = p->first; n == 0 && i < w->list->count; i += p->step) {
		p->count = 0;
		n = record_each(r, w->list->cases[i], keep, p, &p->error);
		if (n == 0 && p->count)
			n = w->fold->row(own, p->events, p->count, w->now,
			                 first_reminder(w, p->events[0].seq), &w->rows[i]);
		p->told += p->count;
	}
	return n;
}

static void *work_part(void *context)
{
	struct part *p = context;
	struct record *r = NULL;
	void *own = p->work->fold->begin();
	p->result = own ? record_open_copy(&r, p->work->file, &p->error) : -ENOMEM;
	if (p->result == 0)
		p->result = tell_part(p, r, own);
	record_close(r);
	if (own)
		p->work->fold->end(own);
	free(p->events);
	return NULL;
}

static int work_all(struct summary *s, const struct work *w, struct error *e)
{
	struct part parts[PARTS_MAX] = {0};
	long processors = sysconf(_SC_NPROCESSORS_ONLN);
	size_t count = w->list->count < 64      ? 1
	               : processors < 1         ? 1
	               : processors > PARTS_MAX ? PARTS_MAX
	                                        : (size_t)processors;
	int n = 0;
	for (size_t i = 0; i < count; i++) {
		parts[i] = (struct part){.work = w, .first = i, .step = count};
		parts[i].runs = pthread_create(&parts[i].thread, NULL, work_part, &parts[i]) == 0;
		if (!parts[i].runs)
			work_part(&parts[i]);
	}
	for (size_t i = 0; i < count; i++) {
		if (parts[i].runs)
			pthread_join(parts[i].thread, NULL);
		s->told += parts[i].told;
		if (parts[i].result < 0 && n == 0)
			n = error_set(e, parts[i].result, "%s",
			              *parts[i].error.text
			                  ? parts[i].error.text
			                  : "cannot make the summary: out of memory: close other programs");
	}
	return n;
}

/* --- what was stopped --------------------------------------------------------------------------------------- */

/* By the index of what outlives its case, which has these and leaves out the marks in time. */
static const char later_stops[] =
    "SELECT seq FROM event WHERE seq > ?1 AND " LASTING
    " AND +case_no = 0 AND +kind IN ('quarantined', 'released', 'staff-withdrawn')"
    " ORDER BY seq";

static int list_stops(struct summary *s, struct error *e)
{
	sqlite3_stmt *st = NULL;
	int n = store_prepare(s->record, &st, later_stops, e), code = SQLITE_DONE;
	if (n < 0)
		return n;
	sqlite3_bind_int64(st, 1, s->seq);
	while (n == 0 && (code = sqlite3_step(st)) == SQLITE_ROW) {
		int64_t *more = realloc(s->stops, (s->n_stops + 1) * sizeof *more);
		if (!more) {
			n = error_set(e, -ENOMEM,
			              "cannot make the summary: out of memory: close other programs");
			break;
		}
		s->stops = more;
		s->stops[s->n_stops++] = sqlite3_column_int64(st, 0);
	}
	sqlite3_finalize(st);
	return n == 0 && code != SQLITE_DONE ? store_fault(s->record, code, "read the record", e) : n;
}

int summary_each_stop(struct summary *s, enum event_kind kind, record_event_fn each, void *context,
                      struct error *e)
{
	struct event ev;
	int n = 0;
	for (size_t i = 0; n == 0 && i < s->n_stops; i++) {
		n = record_event_at(s->record, s->stops[i], &ev);
		if (n == -EINVAL) /* it cannot be read: what it stopped is not known */
			n = 0;
		else if (n < 0)
			return error_set(e, n,
			                 "event %" PRId64 " cannot be read: %s: see 'bandtally audit verify'",
			                 s->stops[i], strerror(-n));
		else if (ev.kind == kind)
			n = each(context, &ev);
	}
	return n < 0 ? n : 0;
}

/* --- all of it -------------------------------------------------------------------------------------------------- */

struct reminders {
	struct reminder *list;
	size_t count, room;
};

static int keep_reminder(void *context, const struct event *e)
{
	struct reminders *all = context;
	if (e->kind != EV_SETTING || e->what != SETTING_FIRST_REMINDER)
		return 0;
	if (all->count == all->room) {
		size_t room = all->room ? 2 * all->room : 16;
		struct reminder *more = realloc(all->list, room * sizeof *more);
		if (!more)
			return -ENOMEM;
		all->list = more;
		all->room = room;
	}
	all->list[all->count++] = (struct reminder){e->seq, e->n};
	return 0;
}

static int by_opening(const void *a, const void *b)
{
	const struct case_row *x = a, *y = b;
	return x->first_seq < y->first_seq ? -1 : x->first_seq > y->first_seq;
}

static int tell_cases(struct summary *s, const char *file, const struct summary_fold *fold,
                      const struct list *list, struct error *e)
{
	struct reminders reminders = {0};
	struct event last;
	struct work w = {.file = file, .fold = fold, .list = list};
	if (!list->count)
		return 0;
	int n = record_event_at(s->record, record_end(s->record), &last);
	if (n < 0 && n != -EINVAL)
		return error_set(e, n,
		                 "the end of the record cannot be read: %s: see 'bandtally audit verify'",
		                 strerror(-n));
	w.now = n == 0 ? last.at : (struct moment){0};
	struct case_row *rows = realloc(s->rows, (s->count + list->count + 1) * sizeof *rows);
	if (!rows)
		return error_set(e, -ENOMEM, "cannot make the summary: out of memory: close other programs");
	s->rows = rows;
	w.rows = rows + s->count;
	memset(w.rows, 0, list->count * sizeof *rows);
	n = record_each_setting(s->record, keep_reminder, &reminders, e);
	w.reminders = reminders.list;
	w.n_reminders = reminders.count;
	if (n == -ENOMEM)
		error_set(e, n, "cannot make the summary: out of memory: close other programs");
	if (n == 0)
		n = work_all(s, &w, e);
	free(reminders.list);
	if (n < 0)
		return n;
	s->count += list->count;
	qsort(s->rows, s->count, sizeof *s->rows, by_opening);
	return 0;
}

int summary_get(struct summary *s, struct record *r, const char *file, const char *cache,
                const struct summary_fold *fold, struct error *e)
{
	struct list list = {0};
	*s = (struct summary){.record = r};
	s->anew = read_cache(s, cache, fold);
	int64_t end = record_end(r);
	int n = end < 0
	            ? error_set(e, (int)end, "the record cannot be read: %s: try again", strerror((int)-end))
	            : list_cases(s, &list, e);
	if (n == 0)
		n = take_out(s, &list, e);
	if (n == 0 && end > 0)
		n = list_stops(s, e);
	if (n == 0 && end > 0)
		n = tell_cases(s, file, fold, &list, e);
	free(list.cases);
	if (n == 0 && end > 0)
		n = record_chain_at(r, end, &s->chain, e);
	if (n < 0)
		return n;
	int changed = s->seq != end;
	s->seq = end;
	return *cache && changed ? write_cache(s, cache, fold, e) : 0;
}

void summary_deinit(struct summary *s)
{
	free(s->rows);
	free(s->stops);
	*s = (struct summary){.record = s->record};
}

/* --- its answers ---------------------------------------------------------------------------------------------------- */

static int cases(void *context, struct source_span span, int32_t room, source_case_fn each, void *to,
                 struct error *e)
{
	const struct summary *s = context;
	int n = 0;
	(void)e;
	for (size_t i = 0; n == 0 && i < s->count; i++) {
		const struct case_row *row = &s->rows[i];
		if (row->day >= span.from && row->day <= span.to && (!room || row->room == room))
			n = each(to, row);
	}
	return n < 0 ? n : 0;
}

struct batch_query {
	struct source_span span;
	source_batch_fn each;
	void *to;
};

static int one_batch(void *context, const struct event *e)
{
	const struct batch_query *q = context;
	int32_t day = clock_date_number(e->at.wall_ms, e->at.utc_min);
	if (e->kind != EV_LABELLED || day < q->span.from || day > q->span.to)
		return 0;
	return q->each(q->to, &(struct pack_batch){.at_ms = e->at.wall_ms,
	                                           .count = (int32_t)(e->batch.last - e->batch.first + 1)});
}

static int batches(void *context, struct source_span span, source_batch_fn each, void *to, struct error *e)
{
	const struct summary *s = context;
	struct batch_query q = {span, each, to};
	return record_each_station(s->record, EV_LABELLED, one_batch, &q, e);
}

struct source summary_source(struct summary *s)
{
	return (struct source){.context = s, .cases = cases, .batches = batches};
}
