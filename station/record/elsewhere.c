#include "record/elsewhere.h"

#include <errno.h>
#include <limits.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/log.h"
#include "record/disk.h"
#include "record/store.h"

struct elsewhere {
	sqlite3 *db;
	sqlite3_stmt *add, *find;
};

static const char schema[] = "PRAGMA journal_mode = WAL; PRAGMA synchronous = OFF;"
                             "CREATE TABLE IF NOT EXISTS used (identity TEXT PRIMARY KEY, station INTEGER "
                             "NOT NULL, case_no INTEGER NOT NULL,"
                             " day INTEGER NOT NULL) STRICT, WITHOUT ROWID;";

static int prepare(struct elsewhere *w)
{
	int code = sqlite3_exec(w->db, schema, NULL, NULL, NULL);
	if (code == SQLITE_OK)
		code = sqlite3_prepare_v2(w->db, "INSERT OR REPLACE INTO used VALUES (?, ?, ?, ?)", -1,
		                          &w->add, NULL);
	if (code == SQLITE_OK)
		code = sqlite3_prepare_v2(w->db, "SELECT station, case_no FROM used WHERE identity = ?", -1,
		                          &w->find, NULL);
	return code;
}

static void forget(struct elsewhere *w, int32_t before)
{
	char sql[64];
	snprintf(sql, sizeof sql, "DELETE FROM used WHERE day < %d", (int)before);
	sqlite3_exec(w->db, sql, NULL, NULL, NULL);
}

static int try_open(struct elsewhere **out, const char *file)
{
	struct elsewhere *w = calloc(1, sizeof *w);
	if (!w)
		return SQLITE_NOMEM;
	int code = sqlite3_open_v2(
	    file, &w->db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX, disk_vfs());
	if (code == SQLITE_OK)
		code = prepare(w);
	if (code == SQLITE_OK)
		*out = w;
	else
		elsewhere_close(w);
	return code;
}

static int is_damaged(int code)
{
	return code == SQLITE_CORRUPT || code == SQLITE_NOTADB || code == SQLITE_ERROR;
}

static void remove_file(const char *file)
{
	static const char *const ends[] = {"", "-wal", "-shm"};
	char name[PATH_MAX + 8];
	for (int i = 0; i < 3; i++) {
		snprintf(name, sizeof name, "%s%s", file, ends[i]);
		unlink(name);
	}
}

int elsewhere_open(struct elsewhere **out, const char *folder, int32_t today, struct error *e)
{
	char file[PATH_MAX];
	snprintf(file, sizeof file, "%s/" ELSEWHERE_FILE, folder);
	int code = try_open(out, file);
	if (is_damaged(code)) {
		log_warn(LOG_LISTS,
		         "%s cannot be read and is made anew: what the hospital said of items that were used "
		         "elsewhere is lost",
		         file);
		remove_file(file);
		code = try_open(out, file);
	}
	if (code != SQLITE_OK)
		return error_set(e, code == SQLITE_NOMEM ? -ENOMEM : -EIO,
		                 "cannot open %s: %s: check its owner and the space on the disk", file,
		                 sqlite3_errstr(code));
	forget(*out, today - ELSEWHERE_DAYS);
	return 0;
}

void elsewhere_close(struct elsewhere *w)
{
	if (!w)
		return;
	sqlite3_finalize(w->add);
	sqlite3_finalize(w->find);
	sqlite3_close(w->db);
	free(w);
}

int elsewhere_add(struct elsewhere *w, const char *identity, struct elsewhere_use use, int32_t today)
{
	sqlite3_bind_text(w->add, 1, identity, -1, SQLITE_STATIC);
	sqlite3_bind_int(w->add, 2, use.station);
	sqlite3_bind_int(w->add, 3, use.case_no);
	sqlite3_bind_int(w->add, 4, today);
	int code = sqlite3_step(w->add);
	sqlite3_reset(w->add);
	return code == SQLITE_DONE ? 0 : code == SQLITE_FULL ? -ENOSPC : -EIO;
}

int elsewhere_find(struct elsewhere *w, const char *identity, struct elsewhere_use *out)
{
	if (!w || !identity[0])
		return RECORD_HAS_NONE;
	sqlite3_bind_text(w->find, 1, identity, -1, SQLITE_STATIC);
	int code = sqlite3_step(w->find);
	if (code == SQLITE_ROW)
		*out = (struct elsewhere_use){sqlite3_column_int(w->find, 0), sqlite3_column_int(w->find, 1)};
	sqlite3_reset(w->find);
	return code == SQLITE_ROW ? RECORD_FOUND : code == SQLITE_DONE ? RECORD_HAS_NONE : -EIO;
}
