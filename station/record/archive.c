#include "record/archive.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "base/clock.h"
#include "record/backup-parts.h"
#include "record/gone.h"
#include "record/store-internal.h"

#define NO_MEMORY "cannot choose what leaves the record: out of memory: close other programs"

/* What stays of a case that leaves. */
#define OF_CASE_STAYS "('case-opened', 'case-ended', 'sealed', 'slip-queued', 'slip-state', 'item-used')"

/* --- which cases ------------------------------------------------------------------------------------------- */

struct judging {
	struct station *st;
	struct record *r;
	int64_t before_ms;
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
	if (e->kind != EV_KEPT_FOR && e->at.wall_ms > j->c->last_ms)
		j->c->last_ms = e->at.wall_ms;
	switch (e->kind) {
	case EV_CASE_OPENED:
		j->c->opened_ms = e->at.wall_ms;
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
	return j->c->last_ms >= j->before_ms ? STAYS_YOUNG : STAYS_NOT;
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
				n = error_set(e, -ENOMEM, NO_MEMORY);
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
	                      "NOT IN " OF_CASE_STAYS,
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
	struct judging j = {.st = st, .r = r, .before_ms = a->before_ms};
	int n = list_cases(a, r, e);
	for (int i = 0; i < a->n_cases && n == 0; i++) {
		j.c = &a->cases[i];
		n = judge(&j, e);
	}
	free(j.slips);
	return n == 0 ? count_events(a, r, e) : n;
}

int archive_choose(struct archive *a, struct record *r, int64_t now_ms, struct error *e)
{
	*a = (struct archive){0};
	int n = record_each_setting(r, take_period, &a->years, e);
	if (n == 0 && !a->years)
		return error_set(e, -ENOTSUP,
		                 "nothing leaves the record: no period is set for it: set keep_years in "
		                 "policy.ini, and start the station once");
	a->before_ms = years_before(now_ms, a->years);
	struct station *st = n == 0 ? calloc(1, sizeof *st) : NULL;
	if (n == 0 && !st)
		n = error_set(e, -ENOMEM, NO_MEMORY);
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

/* --- what leaves, as stretches ------------------------------------------------------------------------------ */

static int by_number(const void *key, const void *of)
{
	int32_t a = *(const int32_t *)key, b = ((const struct archive_case *)of)->case_no;
	return a < b ? -1 : a > b;
}

static int leaves(const struct archive *a, int32_t case_no)
{
	const struct archive_case *c =
	    case_no ? bsearch(&case_no, a->cases, (size_t)a->n_cases, sizeof *a->cases, by_number) : NULL;
	return c && c->why == STAYS_NOT;
}

/* Goes along all that is there: what leaves now, and the numbers that are missing already. */
struct along {
	const struct archive *a;
	struct stretches *out;
	int64_t kept, seen; /* the last number that stays, and the last that was passed */
	struct chain kept_hash, seen_hash;
};

static int pass_kept(struct along *g, int64_t seq, struct chain hash)
{
	int n = seq > g->kept + 1
	            ? gone_add(g->out, (struct stretch){g->kept + 1, seq - 1, g->kept_hash, g->seen_hash})
	            : 0;
	g->kept = seq;
	g->kept_hash = hash;
	return n;
}

static int pass_row(struct along *g, struct record *r, sqlite3_stmt *s)
{
	int64_t seq = sqlite3_column_int64(s, 0);
	struct chain hash = {0};
	int n = 0;
	if (sqlite3_column_bytes(s, 1) == CHAIN_BYTES)
		memcpy(hash.hash, sqlite3_column_blob(s, 1), CHAIN_BYTES);
	if (seq > g->seen + 1)
		n = record_hash_at(r, seq - 1, &g->seen_hash);
	if (n >= 0)
		n = sqlite3_column_int(s, 3) || !leaves(g->a, sqlite3_column_int(s, 2))
		        ? pass_kept(g, seq, hash)
		        : 0;
	g->seen = seq;
	g->seen_hash = hash;
	return n;
}

static int find_stretches(struct stretches *out, const struct archive *a, struct record *r, struct error *e)
{
	struct along g = {.a = a, .out = out};
	sqlite3_stmt *s = NULL;
	int code = SQLITE_DONE,
	    n = store_prepare(
	        r, &s, "SELECT seq, hash, case_no, kind IN " OF_CASE_STAYS " FROM event ORDER BY seq", e);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		n = pass_row(&g, r, s);
		if (n < 0)
			error_set(e, n, NO_MEMORY);
	}
	if (n == 0 && code != SQLITE_DONE)
		n = store_fault(r, code, "read the record", e);
	sqlite3_finalize(s);
	return n;
}

/* As the tables will be, once the event of number `seq` says so. */
static int hash_to_be(const struct stretches *all, const struct archive *a, struct record *r, int64_t seq,
                      char hex[2 * CHAIN_BYTES + 1])
{
	struct chain c = {0};
	int n = 0;
	for (size_t i = 0; i < all->count; i++)
		gone_hash_stretch(&c, &all->list[i]);
	for (int i = 0; i < a->n_cases && n >= 0; i++) {
		struct event left = {.seq = seq};
		if (a->cases[i].why == STAYS_LEFT)
			n = record_case_left(r, a->cases[i].case_no, &left);
		if (a->cases[i].why == STAYS_LEFT || !a->cases[i].why)
			gone_hash_case(&c, a->cases[i].case_no, left.seq);
	}
	chain_hex(&c, hex);
	return n < 0 ? n : 0;
}

/* --- the archive: all there was, and what of it leaves ------------------------------------------------------- */

static int open_to_write(struct record **out, const char *file, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, NO_MEMORY);
	r->lock = -1;
	int n = store_open_db(r, file, SQLITE_OPEN_READWRITE, e);
	if (n == 0)
		n = store_version(r, &r->schema, e);
	if (n == 0)
		n = store_prepare_all(r, e);
	if (n == 0)
		n = store_check_tail(r, e);
	if (n < 0) {
		record_close(r);
		return n;
	}
	*out = r;
	return 0;
}

static const char *name_of(const char *path)
{
	const char *end = strrchr(path, '/');
	return end ? end + 1 : path;
}

/* No clock of the station runs while it is down: the time that is told is the wall's alone. */
static int add_events(struct record *r, const struct archive *a, const struct stretches *gone,
                      const char *folder, const char *name, int64_t now_ms, struct error *e)
{
	struct seal *seal = NULL;
	struct station *st = calloc(1, sizeof *st);
	struct event ev = {.kind = EV_ARCHIVED, .n = a->leave, .other = a->years},
	             sealed = {.kind = EV_SEALED};
	int n = st ? record_load(r, st, e) : error_set(e, -ENOMEM, NO_MEMORY);
	if (n == 0)
		n = seal_open_still(&seal, folder, e);
	if (n == 0 && strcmp(seal_key(seal)->kid, st->proof.kid) != 0)
		n = error_set(
		    e, -EKEYREJECTED,
		    "the record cannot be sealed: station.key is not the key that it names: start the "
		    "station with the right one first");
	if (n == 0) {
		ev.at = (struct moment){.boot = st->last.boot,
		                        .boot_ms = st->last.boot_ms,
		                        .wall_ms = now_ms,
		                        .utc_min = clock_utc_min(now_ms)};
		sealed.at = ev.at;
		ev.station = sealed.station = st->number;
		ev.head.seq = a->events_leave;
		snprintf(ev.text, sizeof ev.text, "%.200s", name_of(name));
		n = hash_to_be(gone, a, r, r->last_seq + 1, ev.head.hash);
		if (n < 0)
			error_set(e, n, "what left before cannot be read: %s: try again", strerror(-n));
	}
	struct seal_signing by = {seal, st ? station_incarnation(st) : 1};
	if (n == 0)
		n = record_append_sealed(r, &ev, 1, &sealed, seal_sign_head, &by, e);
	seal_close(seal);
	if (st)
		station_deinit(st);
	free(st);
	return n;
}

/* `name`: under which it will lie. */
static int write_archive(struct record *live, const struct archive *a, const struct stretches *gone,
                         const char *folder, const char *file, const char *name, int64_t now_ms,
                         struct backup *out, struct error *e)
{
	struct record *r = NULL;
	int fd = backup_begin_new(file, e);
	int n = fd < 0 ? fd : backup_copy_whole(live, file, fd, out, e);
	if (fd >= 0) { /* a descriptor that is closed later takes SQLite's own locks with it */
		backup_give_to_owner(fd, folder);
		close(fd);
	}
	if (n == 0)
		n = open_to_write(&r, file, e);
	if (n == 0)
		n = add_events(r, a, gone, folder, name, now_ms, e);
	record_close(r);
	return n == 0 ? backup_check(file, out, e) : n;
}

/* --- the record that goes on --------------------------------------------------------------------------------- */

static int run(struct record *r, const char *sql, struct error *e)
{
	int code = sqlite3_exec(r->db, sql, NULL, NULL, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "make the record that goes on", e);
}

/* Its triggers let nothing in but the next event; they come back as they were, letter for letter. */
static int take_triggers(struct record *r, struct buf *drop, struct buf *make, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int code = SQLITE_DONE,
	    n = store_prepare(r, &s,
	                      "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' ORDER BY rowid", e);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		n = buf_printf(drop, "DROP TRIGGER %s;", (const char *)sqlite3_column_text(s, 0));
		if (n == 0)
			n = buf_printf(make, "%s;", (const char *)sqlite3_column_text(s, 1));
		if (n < 0)
			error_set(e, n, NO_MEMORY);
	}
	sqlite3_finalize(s);
	return n == 0 && code != SQLITE_DONE ? store_fault(r, code, "make the record that goes on", e) : n;
}

static int put_stretches(struct record *r, const struct stretches *all, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "INSERT INTO gone VALUES (?,?,?,?)", e);
	for (size_t i = 0; i < all->count && n == 0; i++) {
		const struct stretch *x = &all->list[i];
		sqlite3_bind_int64(s, 1, x->first);
		sqlite3_bind_int64(s, 2, x->last);
		sqlite3_bind_blob(s, 3, x->before.hash, CHAIN_BYTES, SQLITE_STATIC);
		sqlite3_bind_blob(s, 4, x->hash.hash, CHAIN_BYTES, SQLITE_STATIC);
		int code = sqlite3_step(s);
		if (code != SQLITE_DONE)
			n = store_fault(r, code, "make the record that goes on", e);
		sqlite3_reset(s);
	}
	sqlite3_finalize(s);
	return n;
}

static int put_cases(struct record *r, const struct archive *a, int64_t seq, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "INSERT INTO left_case VALUES (?,?)", e);
	for (int i = 0; i < a->n_cases && n == 0; i++) {
		if (a->cases[i].why)
			continue;
		sqlite3_bind_int(s, 1, a->cases[i].case_no);
		sqlite3_bind_int64(s, 2, seq);
		int code = sqlite3_step(s);
		if (code != SQLITE_DONE)
			n = store_fault(r, code, "make the record that goes on", e);
		sqlite3_reset(s);
	}
	sqlite3_finalize(s);
	return n;
}

static int attach(struct record *r, const char *file, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = store_prepare(r, &s, "ATTACH ? AS archive", e);
	if (n == 0)
		sqlite3_bind_text(s, 1, file, -1, SQLITE_STATIC);
	int code = n == 0 ? sqlite3_step(s) : SQLITE_DONE;
	sqlite3_finalize(s);
	return n == 0 && code != SQLITE_DONE ? store_fault(r, code, "read the archive", e) : n;
}

static int fill(struct record *r, const struct archive *a, const struct stretches *gone, const char *file,
                int64_t seq, struct error *e)
{
	_cleanup_(buf_free) struct buf drop = {0}, make = {0};
	char sql[200];
	snprintf(sql, sizeof sql, "PRAGMA user_version = %d", RECORD_SCHEMA);
	int n = attach(r, file, e);
	if (n == 0)
		n = run(r, "PRAGMA synchronous=OFF; PRAGMA journal_mode=OFF; BEGIN", e);
	if (n == 0)
		n = take_triggers(r, &drop, &make, e);
	if (n == 0)
		n = run(r, drop.data, e);
	if (n == 0)
		n = run(r, "INSERT INTO left_case SELECT * FROM archive.left_case", e);
	if (n == 0)
		n = put_cases(r, a, seq, e);
	if (n == 0)
		n = put_stretches(r, gone, e);
	if (n == 0)
		n = run(r,
		        "INSERT INTO event SELECT * FROM archive.event WHERE case_no = 0 OR kind "
		        "IN " OF_CASE_STAYS " OR case_no NOT IN (SELECT case_no FROM left_case) ORDER BY seq",
		        e);
	if (n == 0)
		n = run(r, make.data, e);
	if (n == 0)
		n = run(r, sql, e);
	return n == 0 ? run(r, "COMMIT; DETACH archive; PRAGMA journal_mode=DELETE", e) : n;
}

static int make_goes_on(const char *path, const char *file, const struct archive *a,
                        const struct stretches *gone, int64_t seq, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, NO_MEMORY);
	r->lock = -1;
	int n = store_open_db(r, path, SQLITE_OPEN_READWRITE, e);
	if (n == 0)
		n = store_make_schema_of(r->db, RECORD_SCHEMA) < 0 ? error_set(e, -EIO, NO_MEMORY) : 0;
	if (n == 0)
		n = fill(r, a, gone, file, seq, e);
	record_close(r);
	return n;
}

/* It ends as the archive does, and everything in it holds. */
static int write_goes_on(const char *path, const char *folder, const char *file, const struct archive *a,
                         const struct stretches *gone, const struct backup *of, struct error *e)
{
	struct backup now;
	int fd = backup_begin_new(path, e);
	int n = fd < 0 ? fd : backup_give_to_owner(fd, folder);
	if (n == 0)
		n = make_goes_on(path, file, a, gone, of->events - 1, e);
	if (n == 0 && fsync(fd) < 0)
		n = error_set(e, -errno, "cannot write %s: %s: check the disk", path, strerror(errno));
	if (fd >= 0)
		close(fd);
	if (n == 0)
		n = backup_check(path, &now, e);
	if (n == 0 && (now.events != of->events || memcmp(&now.chain, &of->chain, sizeof now.chain) != 0))
		n = error_set(e, -EUCLEAN,
		              "%s does not end as the archive does: check the disk, and try again", path);
	return n;
}

/* The log of the old one would be applied to the new: it is empty once its last handle is closed, or nothing is replaced. */
static int put_in_place(struct record *live, const char *path, const char *record, struct error *e)
{
	char log[PATH_MAX];
	struct stat st;
	record_close_file(live);
	snprintf(log, sizeof log, "%.4080s-wal", record);
	if (stat(log, &st) == 0)
		return error_set(e, -EBUSY, "%s is still there: start the station, end it, and try again",
		                 log);
	return backup_in_place(path, record, e);
}

static int replace(struct record *live, struct archive *a, const struct stretches *gone, const char *folder,
                   const char *file, int64_t now_ms, struct backup *out, struct error *e)
{
	char fresh[PATH_MAX], record[PATH_MAX], goes_on[PATH_MAX];
	snprintf(fresh, sizeof fresh, "%.4079s" BACKUP_NEW, file);
	snprintf(record, sizeof record, "%.3900s/" RECORD_FILE, folder);
	snprintf(goes_on, sizeof goes_on, "%.4079s" BACKUP_NEW, record);
	int n = write_archive(live, a, gone, folder, fresh, file, now_ms, out, e);
	if (n == 0)
		n = write_goes_on(goes_on, folder, fresh, a, gone, out, e);
	if (n == 0)
		n = backup_in_place(fresh, file, e);
	if (n == 0)
		n = put_in_place(live, goes_on, record, e);
	if (n < 0) {
		unlink(fresh);
		unlink(goes_on);
	}
	return n;
}

int archive_make(struct archive *a, const char *folder, const char *file, int64_t now_ms, struct backup *out,
                 struct error *e)
{
	struct record *live = NULL;
	struct stretches gone = {0};
	char record[PATH_MAX];
	*a = (struct archive){0};
	snprintf(record, sizeof record, "%.3900s/" RECORD_FILE, folder);
	if (access(record, F_OK) < 0)
		return error_set(e, -errno,
		                 "there is no record in %.300s: %s: give its data folder with --data", folder,
		                 strerror(errno));
	if (access(file, F_OK) == 0)
		return error_set(e, -EEXIST, "%.300s is there already: give another name", file);
	int n = backup_may_replace(file, folder, e);
	if (n == 0)
		n = record_open(&live, folder, e);
	if (n == 0)
		n = archive_choose(a, live, now_ms, e);
	if (n == 0 && a->leave) {
		n = find_stretches(&gone, a, live, e);
		if (n == 0)
			n = replace(live, a, &gone, folder, file, now_ms, out, e);
	}
	free(gone.list);
	record_close(live);
	return n;
}
