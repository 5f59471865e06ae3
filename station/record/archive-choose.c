/* Which cases leave the record, and why others stay. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "base/clock.h"
#include "record/archive-parts.h"
#include "record/hospital-file.h"
#include "record/store-internal.h"

struct judging {
	struct station *st;
	struct record *r;
	int64_t before_ms, sent_to;
	struct archive_case *c;
	/* of this case */
	int ended, found, named, unread, owed;
	int32_t *slips; /* that were queued and not seen */
	int n_slips, room;
};

static int slip_waits(struct judging *j, int32_t slip)
{
	for (int i = 0; i < j->n_slips; i++)
		if (j->slips[i] == slip)
			return 0;
	if (j->n_slips == j->room) {
		int room = j->room ? 2 * j->room : 16;
		int32_t *more = realloc(j->slips, (size_t)room * sizeof *more);
		if (!more)
			return -ENOMEM;
		j->slips = more;
		j->room = room;
	}
	j->slips[j->n_slips++] = slip;
	j->c->n_slips++;
	return 0;
}

static void slip_came(struct judging *j, int32_t slip)
{
	for (int i = 0; i < j->n_slips; i++)
		if (j->slips[i] == slip)
			j->slips[i--] = j->slips[--j->n_slips];
}

static int judge_event(void *context, const struct event *e)
{
	struct judging *j = context;
	if (e->kind == EV_UNREADABLE)
		j->unread = 1;
	if (e->case_no != j->c->case_no)
		return 0;
	j->c->last_seq = e->seq;
	if (e->kind != EV_KEPT_FOR && e->at.wall_ms > j->c->last_ms)
		j->c->last_ms = e->at.wall_ms;
	switch (e->kind) {
	case EV_CASE_OPENED:
		j->c->opened_day = clock_date_number(e->at.wall_ms, e->at.utc_min);
		return 0;
	case EV_CASE_ENDED:
		j->ended = e->what;
		return 0;
	case EV_OWED:
		j->owed++;
		return 0;
	case EV_PAID:
		j->owed -= j->owed > 0;
		return 0;
	case EV_FOUND_AFTER:
		j->found = 1;
		return 0;
	case EV_KEPT_FOR:
		j->named = e->n == 1;
		return 0;
	case EV_SLIP_QUEUED:
		return slip_waits(j, e->n);
	case EV_SLIP_STATE:
		if (e->what == SLIP_SEEN)
			slip_came(j, e->n);
		return 0;
	default:
		return 0;
	}
}

/* What the station still holds against a case: its places for that may be full, and then it holds against all. */
static int station_holds(const struct station *st, int32_t case_no)
{
	int holds = st->more_owed || st->more_after || st->more_unfollowed;
	for (int i = 0; i < st->n_owed && !holds; i++)
		holds = st->owed[i].case_no == case_no;
	for (int i = 0; i < st->n_after && !holds; i++)
		holds = st->after[i].case_no == case_no;
	for (int i = 0; i < st->n_unseen && !holds; i++)
		holds = st->unseen[i].case_no == case_no;
	return holds;
}

static int is_followed(const struct station *st, int32_t case_no)
{
	for (int i = 0; i < st->n_unfollowed; i++)
		if (st->unfollowed[i].case_no == case_no)
			return 0;
	return 1;
}

static enum stays_why judgement(const struct judging *j)
{
	if (!j->ended)
		return STAYS_OPEN;
	if (j->ended == END_UNRESOLVED)
		return STAYS_UNRESOLVED;
	if (j->named)
		return STAYS_NAMED;
	if (j->unread || !is_followed(j->st, j->c->case_no))
		return STAYS_UNREAD;
	if (j->found)
		return STAYS_FOUND;
	if (j->owed || j->n_slips || station_holds(j->st, j->c->case_no))
		return STAYS_OWED;
	if (j->c->last_ms >= j->before_ms)
		return STAYS_YOUNG;
	return j->c->last_seq > j->sent_to ? STAYS_UNSENT : STAYS_NOT;
}

static int judge(struct judging *j, struct error *e)
{
	struct event left;
	int n = record_case_left(j->r, j->c->case_no, &left);
	j->ended = j->found = j->named = j->unread = j->owed = j->n_slips = 0;
	if (n == 0)
		n = record_each(j->r, j->c->case_no, judge_event, j, e);
	else if (n == RECORD_FOUND)
		j->c->why = STAYS_LEFT;
	if (n == 0)
		j->c->why = judgement(j);
	return n < 0 ? error_set(e, n, "case %d cannot be read: %s: try again", (int)j->c->case_no,
	                         strerror(-n))
	             : 0;
}

static int list_cases(struct archive *a, struct record *r, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int room = 0, code = SQLITE_DONE,
	    n = store_prepare(r, &s, "SELECT DISTINCT case_no FROM event WHERE case_no > 0 ORDER BY case_no",
	                      e);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		if (a->n_cases == room) {
			room = room ? 2 * room : 1024;
			struct archive_case *more = realloc(a->cases, (size_t)room * sizeof *more);
			if (!more) {
				n = error_set(e, -ENOMEM, ARCHIVE_NO_MEMORY);
				break;
			}
			a->cases = more;
		}
		a->cases[a->n_cases++] = (struct archive_case){.case_no = sqlite3_column_int(s, 0)};
	}
	if (n == 0 && code != SQLITE_DONE)
		n = store_fault(r, code, "read the record", e);
	sqlite3_finalize(s);
	return n;
}

static int take_period(void *context, const struct event *e)
{
	if (e->kind == EV_SETTING && e->what == SETTING_KEEP)
		*(int32_t *)context = e->n;
	return 0;
}

/* So many years before, the same day and hour; 29 February becomes 1 March. */
static int64_t years_before(int64_t now_ms, int32_t years)
{
	time_t t = (time_t)(now_ms / 1000);
	struct tm day;
	gmtime_r(&t, &day);
	day.tm_year -= years;
	return (int64_t)timegm(&day) * 1000;
}

static int count_events(struct archive *a, struct record *r, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s,
	                      "SELECT count(*) FROM event WHERE case_no = ? AND case_no > 0 AND kind || '' "
	                      "NOT IN " ARCHIVE_CASE_STAYS,
	                      e);
	for (int i = 0; i < a->n_cases && n == 0; i++) {
		if (a->cases[i].why)
			continue;
		sqlite3_bind_int(s, 1, a->cases[i].case_no);
		int code = sqlite3_step(s);
		if (code == SQLITE_ROW)
			a->events_leave += sqlite3_column_int64(s, 0);
		else
			n = store_fault(r, code, "read the record", e);
		sqlite3_reset(s);
		a->leave++;
	}
	sqlite3_finalize(s);
	return n;
}

static int choose(struct archive *a, struct record *r, struct station *st, struct error *e)
{
	struct judging j = {.st = st, .r = r, .before_ms = a->before_ms, .sent_to = a->sent_to};
	int n = list_cases(a, r, e);
	for (int i = 0; i < a->n_cases && n == 0; i++) {
		j.c = &a->cases[i];
		n = judge(&j, e);
	}
	free(j.slips);
	return n == 0 ? count_events(a, r, e) : n;
}

/* Where its file is there, there is a store. */
static int read_sent(struct archive *a, const char *folder, struct error *e)
{
	struct hospital_noted noted;
	int n = hospital_read(&noted, folder);
	a->sent_to = n == -ENOENT ? INT64_MAX : noted.kept;
	return n == 0 || n == -ENOENT
	           ? 0
	           : error_set(
	                 e, n,
	                 "it is not known what the hospital's store keeps: hospital.json in %.300s cannot be "
	                 "read: %s: start the station once, or remove the file where there is no such store",
	                 folder, strerror(-n));
}

int archive_choose(struct archive *a, struct record *r, const char *folder, int64_t now_ms, struct error *e)
{
	*a = (struct archive){0};
	int n = record_each_setting(r, take_period, &a->years, e);
	if (n == 0 && !a->years)
		return error_set(e, -ENOTSUP,
		                 "nothing leaves the record: no period is set for it: set keep_years in "
		                 "policy.ini, and start the station once");
	a->before_ms = years_before(now_ms, a->years);
	if (n == 0)
		n = read_sent(a, folder, e);
	struct station *st = n == 0 ? calloc(1, sizeof *st) : NULL;
	if (n == 0 && !st)
		n = error_set(e, -ENOMEM, ARCHIVE_NO_MEMORY);
	if (n == 0)
		n = record_load(r, st, e);
	if (n == 0)
		n = choose(a, r, st, e);
	if (st)
		station_deinit(st);
	free(st);
	return n;
}

void archive_deinit(struct archive *a)
{
	free(a->cases);
	*a = (struct archive){0};
}
