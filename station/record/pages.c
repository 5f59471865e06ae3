#include <errno.h>
#include <stdbool.h>
#include <string.h>

#include "record/store-internal.h"

/* SQLite reads a file of a later version of its own, and writes nothing to it. */
static bool is_of_no_version(struct record *r)
{
	enum { AT = 18, LATEST = 2 };
	sqlite3_file *f = NULL;
	unsigned char version[2];
	return sqlite3_file_control(r->db, "main", SQLITE_FCNTL_FILE_POINTER, (void *)&f) == SQLITE_OK && f &&
	       f->pMethods && f->pMethods->xRead(f, version, sizeof version, AT) == SQLITE_OK &&
	       (version[0] > LATEST || version[1] > LATEST);
}

int record_check_pages(struct record *r, enum pages_how how, struct error *e)
{
	sqlite3_stmt *s = NULL;
	int n = 0, code = sqlite3_prepare_v2(r->db,
	                                     how == PAGES_AND_INDEXES ? "PRAGMA integrity_check(1)"
	                                                              : "PRAGMA quick_check(1)",
	                                     -1, &s, NULL);
	if (code == SQLITE_OK && (code = sqlite3_step(s)) == SQLITE_ROW) {
		const char *said = (const char *)sqlite3_column_text(s, 0),
		           *last = said ? strrchr(said, '\n') : NULL;
		code = said ? SQLITE_OK : sqlite3_errcode(r->db);
		if (!said || strcmp(said, "ok") != 0)
			n = error_set(e, -EUCLEAN,
			              "the file is damaged or cut short (%.150s): keep it, and use a backup",
			              last   ? last + 1
			              : said ? said
			                     : "it cannot be read");
	}
	sqlite3_finalize(s);
	if (n == 0 && code == SQLITE_OK && is_of_no_version(r))
		n = error_set(
		    e, -EUCLEAN,
		    "the file is damaged (its first bytes are not a record's): keep it, and use a backup");
	if (n < 0)
		store_leave_as_it_is(r);
	return code == SQLITE_OK || n < 0 ? n : store_fault(r, code, "read the record", e);
}
