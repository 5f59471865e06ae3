/* What keeps a record append-only, away while a file is made of another, and back. */
#include <errno.h>

#include "record/store-internal.h"

/* What `sql` gives of each trigger, as statements. */
static int each_trigger(sqlite3 *db, const char *sql, const char *before, struct buf *out)
{
	sqlite3_stmt *s = NULL;
	int n = 0, code = sqlite3_prepare_v2(db, sql, -1, &s, NULL);
	while (n == 0 && s && (code = sqlite3_step(s)) == SQLITE_ROW)
		n = buf_printf(out, "%s%s;", before, (const char *)sqlite3_column_text(s, 0));
	sqlite3_finalize(s);
	return n == 0 && code != SQLITE_DONE ? -EIO : n;
}

static int run_all(struct record *r, const struct buf *sql, struct error *e)
{
	int code = sql->data ? sqlite3_exec(r->db, sql->data, NULL, NULL, NULL) : SQLITE_OK;
	return code == SQLITE_OK ? 0 : store_fault(r, code, "make this record", e);
}

int store_triggers_off(struct record *r, struct error *e)
{
	_cleanup_(buf_free) struct buf drop = {0};
	int n = each_trigger(r->db, "SELECT name FROM sqlite_master WHERE type = 'trigger'", "DROP TRIGGER ",
	                     &drop);
	return n == 0 ? run_all(r, &drop, e)
	              : error_set(e, n, "this record cannot be made: it has no triggers to read: try again");
}

int store_triggers_on(struct record *r, struct error *e)
{
	_cleanup_(buf_free) struct buf make = {0};
	sqlite3 *pattern = NULL;
	int n = sqlite3_open_v2(":memory:", &pattern, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL) ==
	                SQLITE_OK
	            ? store_make_schema_of(pattern, RECORD_SCHEMA)
	            : -ENOMEM;
	if (n == 0)
		n = each_trigger(pattern,
		                 "SELECT sql FROM sqlite_master WHERE type = 'trigger' ORDER BY rowid", "",
		                 &make);
	sqlite3_close(pattern);
	return n == 0 ? run_all(r, &make, e)
	              : error_set(e, n, "this record cannot be made: out of memory: close other programs");
}
