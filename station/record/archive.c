#include "record/archive.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/clock.h"
#include "record/archive-parts.h"
#include "record/backup-parts.h"
#include "record/store-internal.h"

/* The archive: all there was, and what of it leaves. */

static int open_to_write(struct record **out, const char *file, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, ARCHIVE_NO_MEMORY);
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
	             sealed = {.kind = EV_SEALED}, last;
	int n = st ? record_load(r, st, e) : error_set(e, -ENOMEM, ARCHIVE_NO_MEMORY);
	if (n == 0 && (n = record_event_at(r, r->last_seq, &last)) < 0)
		error_set(e, n, "the end of the record cannot be read: %s: try again", strerror(-n));
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
		ev.station = sealed.station = last.station; /* its settings are not read here */
		ev.head.seq = a->events_leave;
		snprintf(ev.text, sizeof ev.text, "%.200s", name_of(name));
		n = archive_hash_to_be(gone, a, r, r->last_seq + 1, ev.head.hash);
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
	int n = fd < 0 ? fd : backup_give_to_owner(fd, file, folder, e);
	if (n == 0)
		n = backup_copy_whole(live, file, fd, out, e);
	if (fd >= 0)
		close(fd); /* later it would take SQLite's own locks with it */
	if (n == 0)
		n = open_to_write(&r, file, e);
	if (n == 0)
		n = add_events(r, a, gone, folder, name, now_ms, e);
	record_close(r);
	return n == 0 ? backup_check(file, out, e) : n;
}

/* --- and in the place of the old one ------------------------------------------------------------------------- */

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
		n = archive_goes_on(goes_on, folder, fresh, a, gone, out, e);
	if (n == 0)
		n = backup_in_place(fresh, file, e);
	if (n == 0)
		n = put_in_place(live, goes_on, record, e);
	if (n < 0) {
		unlink(fresh);
		if (unlink(goes_on) == 0)
			unlink(file); /* the record is as it was: nothing left it for the archive */
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
		n = archive_choose(a, live, folder, now_ms, e);
	if (n == 0 && a->leave) {
		n = archive_stretches(&gone, a, live, e);
		if (n == 0)
			n = replace(live, a, &gone, folder, file, now_ms, out, e);
	}
	free(gone.list);
	record_close(live);
	return n;
}

/* --- once more ------------------------------------------------------------------------------------------------- */

/* What is chosen of the archive now is what left, but for what the hospital's store was not known to keep then. */
static int judge_as_then(struct archive *a, struct record *live, const struct event *archived,
                         struct error *e)
{
	struct event left;
	a->leave = 0;
	for (int i = 0; i < a->n_cases; i++) {
		struct archive_case *c = &a->cases[i];
		int n = c->why == STAYS_LEFT ? RECORD_HAS_NONE : record_case_left(live, c->case_no, &left);
		if (n < 0)
			return error_set(e, n,
			                 "it cannot be read whether case %d left the record: %s: try again",
			                 (int)c->case_no, strerror(-n));
		if (n == RECORD_FOUND && left.seq == archived->seq)
			c->why = STAYS_NOT;
		else if (c->why == STAYS_NOT)
			c->why = STAYS_UNSENT;
		a->leave += c->why == STAYS_NOT;
	}
	a->events_leave = archived->head.seq;
	return 0;
}

int archive_again(struct archive *a, struct record *live, const struct event *archived, const char *folder,
                  const char *file, struct backup *out, struct error *e)
{
	struct record *r = NULL;
	*a = (struct archive){0};
	int n = backup_check(file, out, e);
	if (n == 0 && out->events != archived->seq + 1)
		n = error_set(
		    e, -EUCLEAN,
		    "%.300s does not end with what left the record: it is another file of that name", file);
	if (n == 0)
		n = record_open_copy(&r, file, e);
	if (n == 0)
		n = archive_choose(a, r, folder, archived->at.wall_ms, e);
	if (n == 0)
		n = judge_as_then(a, live, archived, e);
	record_close(r);
	return n;
}
