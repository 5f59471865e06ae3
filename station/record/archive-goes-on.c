/* The record that goes on: made of the archive, without what leaves. */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/file.h"
#include "record/archive-parts.h"
#include "record/backup-parts.h"
#include "record/store-internal.h"

static int run(struct record *r, const char *sql, struct error *e)
{
	int code = sqlite3_exec(r->db, sql, NULL, NULL, NULL);
	return code == SQLITE_OK ? 0 : store_fault(r, code, "make the record that goes on", e);
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
	char sql[200];
	snprintf(sql, sizeof sql, "PRAGMA user_version = %d", RECORD_SCHEMA);
	int n = attach(r, file, e);
	if (n == 0)
		n = run(r, "PRAGMA synchronous=OFF; PRAGMA journal_mode=OFF; BEGIN", e);
	if (n == 0)
		n = store_triggers_off(r, e);
	if (n == 0)
		n = run(r, "INSERT INTO left_case SELECT * FROM archive.left_case", e);
	if (n == 0)
		n = put_cases(r, a, seq, e);
	if (n == 0)
		n = put_stretches(r, gone, e);
	if (n == 0)
		n = run(r,
		        "INSERT INTO event SELECT * FROM archive.event WHERE case_no = 0 OR kind "
		        "IN " ARCHIVE_CASE_STAYS
		        " OR case_no NOT IN (SELECT case_no FROM left_case) ORDER BY seq",
		        e);
	if (n == 0)
		n = store_triggers_on(r, e);
	if (n == 0)
		n = run(r, sql, e);
	return n == 0 ? run(r, "COMMIT; DETACH archive; PRAGMA journal_mode=DELETE", e) : n;
}

static int make_goes_on(const char *path, const char *file, const struct archive *a,
                        const struct stretches *gone, int64_t seq, struct error *e)
{
	struct record *r = calloc(1, sizeof *r);
	if (!r)
		return error_set(e, -ENOMEM, ARCHIVE_NO_MEMORY);
	r->lock = -1;
	int n = store_open_db(r, path, SQLITE_OPEN_READWRITE, e);
	if (n == 0)
		n = store_make_schema_of(r->db, RECORD_SCHEMA) < 0 ? error_set(e, -EIO, ARCHIVE_NO_MEMORY)
		                                                   : 0;
	if (n == 0)
		n = fill(r, a, gone, file, seq, e);
	record_close(r);
	return n;
}

/* It ends as the archive does, and everything in it holds. */
int archive_goes_on(const char *path, const char *folder, const char *file, const struct archive *a,
                    const struct stretches *gone, const struct backup *of, struct error *e)
{
	struct backup now;
	int fd = backup_begin_new(path, e);
	int n = fd < 0 ? fd : backup_give_to_owner(fd, path, folder, e);
	if (n == 0)
		n = make_goes_on(path, file, a, gone, of->events - 1, e);
	if (n == 0 && (n = file_force(fd)) < 0)
		n = error_set(e, n, "cannot write %s: %s: check the disk", path, strerror(-n));
	if (fd >= 0)
		close(fd);
	if (n == 0)
		n = backup_check(path, &now, e);
	if (n == 0 && (now.events != of->events || memcmp(&now.chain, &of->chain, sizeof now.chain) != 0))
		n = error_set(e, -EUCLEAN,
		              "%s does not end as the archive does: check the disk, and try again", path);
	return n;
}
