#include "record/backup.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "base/file.h"
#include "record/backup-parts.h"
#include "record/event-json.h"
#include "record/store-internal.h"

#define PAGES_AT_ONCE 1024

/* --- is it whole? ------------------------------------------------------------------------------- */

/* When its last event happened; 0 where that cannot be read. */
static int last_time(struct record *r, int64_t *wall_ms, struct error *e)
{
	sqlite3_stmt *s = NULL;
	struct event ev = {0};
	int code =
	    sqlite3_prepare_v2(r->db, "SELECT payload FROM event ORDER BY seq DESC LIMIT 1", -1, &s, NULL);
	if (code == SQLITE_OK && (code = sqlite3_step(s)) == SQLITE_ROW) {
		const char *text = (const char *)sqlite3_column_text(s, 0);
		if (text && event_read(&ev, text, (size_t)sqlite3_column_bytes(s, 0), NULL) == 0)
			*wall_ms = ev.at.wall_ms;
		code = SQLITE_OK;
	}
	sqlite3_finalize(s);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "read the record", e);
}

static int check_open(struct record *r, struct backup *out, struct error *e)
{
	struct error odd = {0};
	*out = (struct backup){0};
	int n = record_verify(r, &out->events, &out->chain, &odd);
	if (n == -EBADMSG)
		out->odd = odd;
	else if (n < 0)
		return error_set(e, n, "%s", odd.text);
	if (!out->events)
		return error_set(e, -EUCLEAN,
		                 "it holds no event at all: it is no record of a station: give another file");
	/* The events may all be there and the file be cut short all the same: what they are looked up by lies behind them. */
	n = record_check_pages(r, PAGES_AND_INDEXES, e);
	return n < 0 ? n : last_time(r, &out->last_ms, e);
}

/* A sentence about a file begins with its name, unless it names it itself. */
static int of_file(int n, const char *file, const struct error *why, struct error *e)
{
	return strstr(why->text, file) ? error_set(e, n, "%s", why->text)
	                               : error_set(e, n, "%.250s: %.250s", file, why->text);
}

int backup_check(const char *file, struct backup *out, struct error *e)
{
	struct record *r = NULL;
	struct error why = {0};
	int n = record_open_still(&r, file, &why);
	if (n == 0)
		n = check_open(r, out, &why);
	record_close(r);
	return n < 0 ? of_file(n, file, &why, e) : 0;
}

/* --- beside its place, then renamed ------------------------------------------------------------- */

/* For a name of a file, in UTC. */
static void time_text(char out[32])
{
	time_t now = time(NULL);
	struct tm utc;
	gmtime_r(&now, &utc);
	strftime(out, 32, "%Y%m%dT%H%M%SZ", &utc);
}

static void folder_of(const char *path, char out[PATH_MAX])
{
	const char *end = strrchr(path, '/');
	if (!end)
		snprintf(out, PATH_MAX, ".");
	else if (end == path)
		snprintf(out, PATH_MAX, "/");
	else
		snprintf(out, PATH_MAX, "%.*s", (int)(end - path), path);
}

static int sync_folder(const char *folder)
{
	int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	int n = fd < 0 ? -errno : file_force(fd);
	if (fd >= 0)
		close(fd);
	return n;
}

/* The name of another file of mine is not what I hold: who held it before has just put it in its place. */
static int is_still(int fd, const char *path)
{
	struct stat mine, there;
	return fstat(fd, &mine) == 0 && lstat(path, &there) == 0 && mine.st_ino == there.st_ino &&
	       mine.st_dev == there.st_dev;
}

/* An empty file that nobody else writes, or what one that was killed left. A descriptor, or negative errno with `e`. */
int backup_begin_new(const char *path, struct error *e)
{
	char journal[PATH_MAX];
	int fd = open(path, O_RDWR | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0640);
	if (fd < 0)
		return error_set(e, -errno,
		                 "cannot write %s: %s: check the folder, its owner and its permissions", path,
		                 strerror(errno));
	snprintf(journal, sizeof journal, "%.4080s-journal", path);
	if (flock(fd, LOCK_EX | LOCK_NB) < 0 || !is_still(fd, path)) {
		close(fd);
		return error_set(e, -EBUSY, "another program writes %s just now: wait for it and try again",
		                 path);
	}
	unlink(journal);
	if (ftruncate(fd, 0) < 0 || fchmod(fd, 0640) < 0) {
		int n = -errno;
		close(fd);
		return error_set(e, n, "cannot write %s: %s: check its owner", path, strerror(-n));
	}
	return fd;
}

static int copy_pages(struct record *from, const char *path, struct error *e)
{
	int n = record_copy_start(from, path, e);
	while (n == 0 && (n = record_copy_step(from, PAGES_AT_ONCE, e)) == RECORD_COPY_GOES_ON)
		n = 0;
	return n;
}

/* Copies the record to `path`, which is `fd`, and reads it back. */
int backup_copy_whole(struct record *from, const char *path, int fd, struct backup *out, struct error *e)
{
	struct chain last;
	int64_t events = record_last(from, &last);
	int n = copy_pages(from, path, e);
	if (n == 0 && (n = file_force(fd)) < 0)
		n = error_set(e, n, "cannot write %s: %s: check the disk", path, strerror(-n));
	if (n == 0)
		n = backup_check(path, out, e);
	if (n == 0 && (out->events != events || memcmp(&out->chain, &last, sizeof last) != 0))
		n = error_set(e, -EUCLEAN,
		              "%s is not the copy that was made: it ends at event %lld instead of %lld: "
		              "check the disk, and try again",
		              path, (long long)out->events, (long long)events);
	return n;
}

int backup_in_place(const char *fresh, const char *path, struct error *e)
{
	char folder[PATH_MAX];
	folder_of(path, folder);
	int n = rename(fresh, path) < 0 ? -errno : sync_folder(folder);
	return n < 0 ? error_set(e, n, "cannot put %s in its place: %s: check the folder", path, strerror(-n))
	             : 0;
}

/* --- a backup ----------------------------------------------------------------------------------- */

/* The folder itself, or one at any depth below it: 1 or 0, or negative errno. */
static int is_within(const char *folder, const char *of)
{
	char path[PATH_MAX], root[PATH_MAX];
	if (!realpath(folder, path))
		return -errno;
	if (!realpath(of, root))
		return 0;
	size_t size = strlen(root);
	return strncmp(path, root, size) == 0 && (path[size] == '/' || !path[size] || root[size - 1] == '/');
}

/* Who backs up to the wrong name must not lose what lies there. */
int backup_may_replace(const char *to, const char *live, struct error *e)
{
	static const char sqlite[] = "SQLite format 3";
	char folder[PATH_MAX], head[sizeof sqlite] = "";
	folder_of(to, folder);
	int within = is_within(folder, live);
	if (within < 0)
		return error_set(e, within, "cannot write in %s: %s: make the folder, or give another",
		                 folder, strerror(-within));
	if (within)
		return error_set(e, -EINVAL,
		                 "%s is in the data folder: what happens to that happens to the backup: give "
		                 "another place, best on another disk",
		                 to);
	int fd = open(to, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
	if (fd < 0 && errno == ENOENT)
		return 0;
	int fits = fd >= 0 && read(fd, head, sizeof head) == (ssize_t)sizeof head &&
	           memcmp(head, sqlite, sizeof head) == 0;
	if (fd >= 0)
		close(fd);
	return fits ? 0
	            : error_set(e, -EEXIST, "%s is there, and is no backup: give another name, or move it",
	                        to);
}

/* Whether all of the backup at `path` is in this record too: else it may be the only one that holds it. */
static int holds_all_of(struct record *now, const char *path)
{
	struct record *earlier = NULL;
	struct error why = {0};
	struct chain last, same;
	int64_t seq = record_open_still(&earlier, path, &why) == 0 ? record_last(earlier, &last) : -1;
	record_close(earlier);
	return seq == 0 || (seq > 0 && record_hash_at(now, seq, &same) == RECORD_FOUND &&
	                    memcmp(&last, &same, sizeof last) == 0);
}

/* A backup of another station, of a record that was better than this one, or that cannot be read, is not lost either. By its
 * name alone: a stick may have no second one for a file. */
static int keep_other(struct record *now, const char *to, char aside[PATH_MAX], struct error *e)
{
	char when[32];
	aside[0] = 0;
	if (access(to, F_OK) < 0 || holds_all_of(now, to))
		return 0;
	time_text(when);
	snprintf(aside, PATH_MAX, "%.4000s-other-%s", to, when);
	return rename(to, aside) < 0
	           ? error_set(e, -errno,
	                       "cannot keep %s, which holds what this record does not, as %s: "
	                       "%s: check the folder, or give another name",
	                       to, aside, strerror(errno))
	           : 0;
}

int backup_write(const char *from, const char *to, const char *live, struct backup *out, char aside[PATH_MAX],
                 struct error *e)
{
	char fresh[PATH_MAX];
	struct record *r = NULL;
	if (strlen(to) + sizeof BACKUP_NEW > PATH_MAX - 16)
		return error_set(e, -ENAMETOOLONG, "the name of the backup is too long: give a shorter one");
	int n = backup_may_replace(to, live, e);
	if (n < 0)
		return n;
	n = record_open_still(&r, from, e);
	if (n < 0)
		return n;
	snprintf(fresh, sizeof fresh, "%.4079s" BACKUP_NEW, to);
	int fd = backup_begin_new(fresh, e);
	n = fd < 0 ? fd : backup_copy_whole(r, fresh, fd, out, e);
	if (n == 0)
		n = keep_other(r, to, aside, e);
	record_close(r);
	if (n == 0)
		n = backup_in_place(fresh, to, e);
	if (n < 0 && fd >= 0)
		unlink(fresh);
	if (fd >= 0)
		close(fd);
	return n;
}

/* --- the way back ------------------------------------------------------------------------------- */

static int no_right(const char *folder, int why, struct error *e)
{
	return error_set(e, -why, "cannot restore into %s: %s: do it as the owner of the folder, or as root",
	                 folder, strerror(why));
}

/* Whoever makes a file here may be root; the station must be able to use it. */
int backup_give_to_owner(int fd, const char *path, const char *folder, struct error *e)
{
	struct stat st;
	int n = stat(folder, &st) < 0 ? -errno : 0;
	if (n == 0 && geteuid() == 0 && fchown(fd, st.st_uid, st.st_gid) < 0)
		n = -errno;
	return n < 0 ? error_set(e, n, "cannot give %s to the station's user: %s: do it as root", path,
	                         strerror(-n))
	             : 0;
}

/* The lock that a station holds while it works. A descriptor, or negative errno with `e`. */
static int lock_folder(const char *folder, struct error *e)
{
	char path[PATH_MAX];
	struct stat st;
	if (stat(folder, &st) < 0 || !S_ISDIR(st.st_mode))
		return error_set(
		    e, -ENOTDIR,
		    "%s is no folder: make it, owned by the station's user, or give another with "
		    "--data",
		    folder);
	if (access(folder, W_OK | X_OK) < 0)
		return no_right(folder, errno, e);
	snprintf(path, sizeof path, "%.4000s/lock", folder);
	int fd = open(path, O_RDWR | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0640);
	int n = fd < 0 ? -errno : backup_give_to_owner(fd, path, folder, e);
	if (n == 0 && flock(fd, LOCK_EX | LOCK_NB) < 0)
		n = -EBUSY;
	if (n == 0)
		return fd;
	if (fd >= 0)
		close(fd);
	if (n == -EBUSY)
		return error_set(e, n,
		                 "a station works in %s: nothing was touched: end it first (systemctl stop "
		                 "bandtallyd), and count by hand meanwhile",
		                 folder);
	return no_right(folder, -n, e);
}

static int keep_name(const char *from, const char *to)
{
	return link(from, to) < 0 && errno != ENOENT ? -errno : 0;
}

/* What was there gets a second name first, the log that belongs to it too: whenever the power goes, it is all there under
 * that name. The log's old name must go before the new record comes, which it would be applied to. */
static int keep_aside(const char *record, const char *aside)
{
	char log[PATH_MAX], index[PATH_MAX], aside_log[PATH_MAX], folder[PATH_MAX];
	snprintf(log, sizeof log, "%.4080s-wal", record);
	snprintf(index, sizeof index, "%.4080s-shm", record);
	snprintf(aside_log, sizeof aside_log, "%.4080s-wal", aside);
	folder_of(record, folder);
	int n = keep_name(record, aside);
	if (n == 0)
		n = keep_name(log, aside_log);
	if (n == 0)
		n = sync_folder(folder);
	if (n == 0 && ((unlink(log) < 0 && errno != ENOENT) || (unlink(index) < 0 && errno != ENOENT)))
		n = -errno;
	return n;
}

static void name_aside(const char *folder, char out[PATH_MAX])
{
	char when[32];
	time_text(when);
	snprintf(out, PATH_MAX, "%.3900s/record-replaced-%s.db", folder, when);
}

static int put_there(const char *fresh, const char *folder, char aside[PATH_MAX], struct error *e)
{
	char record[PATH_MAX];
	struct stat st;
	snprintf(record, sizeof record, "%.3900s/" RECORD_FILE, folder);
	aside[0] = 0;
	int there = lstat(record, &st) == 0;
	if (!there && errno != ENOENT)
		return error_set(e, -errno, "cannot look whether %s is there: %s: check the folder", record,
		                 strerror(errno));
	if (there) {
		name_aside(folder, aside);
		int n = keep_aside(record, aside);
		if (n < 0)
			return error_set(e, n, "cannot keep %s as %s: %s: check the folder", record, aside,
			                 strerror(-n));
	}
	return backup_in_place(fresh, record, e);
}

static int restore_locked(struct record *from, const char *folder, struct backup *out, char aside[PATH_MAX],
                          struct error *e)
{
	char fresh[PATH_MAX];
	snprintf(fresh, sizeof fresh, "%.3900s/" RECORD_FILE BACKUP_NEW, folder);
	int fd = backup_begin_new(fresh, e);
	if (fd < 0)
		return fd;
	int n = backup_give_to_owner(fd, fresh, folder, e);
	if (n == 0)
		n = backup_copy_whole(from, fresh, fd, out, e);
	if (n == 0)
		n = put_there(fresh, folder, aside, e);
	if (n < 0)
		unlink(fresh);
	close(fd);
	return n;
}

int backup_restore(const char *file, const char *folder, struct backup *out, char aside[PATH_MAX],
                   struct error *e)
{
	struct record *r = NULL;
	aside[0] = 0;
	int n = backup_check(file, out, e);
	if (n < 0)
		return n;
	int lock = lock_folder(folder, e);
	if (lock < 0)
		return lock;
	n = record_open_still(&r, file, e);
	if (n == 0)
		n = restore_locked(r, folder, out, aside, e);
	record_close(r);
	close(lock);
	return n;
}
