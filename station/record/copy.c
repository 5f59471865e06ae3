#include <errno.h>
#include <sqlite3.h>

#include "record/store-internal.h"

int record_copy_start(struct record *r, const char *file, struct error *e)
{
	if (r->copy)
		return error_set(e, -EBUSY,
		                 "a copy of the record is being made already: wait for it and try again");
	int code = sqlite3_open_v2(file, &r->copy_db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);
	/* One sync of all of it at the end would hold up the count, and half a copy is thrown away in any case. */
	if (code == SQLITE_OK)
		code = sqlite3_exec(r->copy_db, "PRAGMA synchronous=OFF; PRAGMA journal_mode=OFF", NULL, NULL,
		                    NULL);
	if (code == SQLITE_OK)
		r->copy = sqlite3_backup_init(r->copy_db, "main", r->db, "main");
	if (!r->copy) {
		error_set(e, -EIO, "cannot make a copy at %s: %s: check the path and the space", file,
		          sqlite3_errmsg(r->copy_db));
		sqlite3_close(r->copy_db);
		r->copy_db = NULL;
		return -EIO;
	}
	return 0;
}

int record_copy_step(struct record *r, int pages, struct error *e)
{
	int code = sqlite3_backup_step(r->copy, pages);
	if (code == SQLITE_OK)
		return RECORD_COPY_GOES_ON;
	int n = sqlite3_backup_finish(r->copy);
	r->copy = NULL;
	/* The copy is a plain file that needs no -wal beside it. */
	if (code == SQLITE_DONE && n == SQLITE_OK)
		sqlite3_exec(r->copy_db, "PRAGMA journal_mode=DELETE", NULL, NULL, NULL);
	sqlite3_close(r->copy_db);
	r->copy_db = NULL;
	if (code == SQLITE_DONE && n == SQLITE_OK)
		return RECORD_COPIED;
	if (code == SQLITE_FULL || n == SQLITE_FULL)
		return error_set(e, -ENOSPC,
		                 "the copy of the record failed: the disk is full: free some space, or give "
		                 "another place");
	return error_set(e, -EIO, "the copy of the record failed: %s: try again",
	                 sqlite3_errstr(code == SQLITE_DONE ? n : code));
}

void record_copy_stop(struct record *r)
{
	if (!r->copy)
		return;
	sqlite3_backup_finish(r->copy);
	sqlite3_close(r->copy_db);
	r->copy = NULL;
	r->copy_db = NULL;
}
