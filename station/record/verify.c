#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "record/chain-parts.h"
#include "record/store-internal.h"
#include "record/verify.h"
#include "record/watch.h"

/* What a record of this schema is made of, as SQLite notes it, is what ours is made of. */
static int each_part(sqlite3 *db, struct buf *out)
{
	sqlite3_stmt *s = NULL;
	int n = 0,
	    code = sqlite3_prepare_v2(db,
	                              "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_master "
	                              "WHERE name NOT LIKE 'sqlite_stat%' ORDER BY type, name",
	                              -1, &s, NULL);
	while (code == SQLITE_OK && n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		code = SQLITE_OK;
		for (int i = 0; n == 0 && i < 4; i++)
			n = buf_printf(out, "%s\n", (const char *)sqlite3_column_text(s, i));
	}
	sqlite3_finalize(s);
	return n < 0 ? n : code == SQLITE_DONE ? 0 : -EIO;
}

static int check_parts(struct record *r, struct watch *w)
{
	sqlite3 *fresh = NULL;
	_cleanup_(buf_free) struct buf ours = {0}, theirs = {0};
	int n = sqlite3_open(":memory:", &fresh) == SQLITE_OK ? store_make_schema(r, fresh) : -ENOMEM;
	if (n == 0)
		n = each_part(fresh, &ours);
	if (n == 0)
		n = each_part(r->db, &theirs);
	sqlite3_close(fresh);
	if (n == 0 && (ours.size != theirs.size || memcmp(ours.data, theirs.data, ours.size) != 0))
		watch_found(
		    w,
		    "the file's tables, indexes and triggers are not those of a record: somebody had it in "
		    "hands who wanted to change it");
	return n;
}

/* The station cannot read a record whose pages are not sound, though each event may still be had. */
static int check_pages(struct record *r, struct watch *w, struct error *e)
{
	int n = record_check_pages(r, w->how->indexes ? PAGES_AND_INDEXES : PAGES_ALONE, e);
	if (n == -EUCLEAN)
		watch_found(w, "%s", e->text);
	return n == -EUCLEAN ? 0 : n;
}

int record_verify(struct record *r, int64_t *events, struct chain *chain, struct error *e)
{
	struct marks marks;
	int n = chain_parts(r, 0, events, chain, &marks, e);
	free(marks.list);
	return n;
}

int record_verify_all(struct record *r, const struct verify_how *how, struct verified *v, struct error *e)
{
	struct marks marks = {0};
	*v = (struct verified){0};
	struct watch *w = malloc(sizeof *w);
	if (!w)
		return error_set(e, -ENOMEM, "cannot look through the record: out of memory: try again");
	watch_begin(w, how, v, r);
	int n = check_parts(r, w);
	if (n < 0)
		error_set(e, n, "cannot read what the record is made of: %s: try again", strerror(-n));
	if (n == 0)
		n = check_pages(r, w, e);
	if (n == 0)
		n = chain_parts(r, how->parts, &v->events, &v->chain, &marks, e);
	if (n == 0 || n == -EBADMSG) {
		int seen = 0;
		for (size_t i = 0; seen == 0 && i < marks.count; i++)
			seen = watch_mark(w, &marks.list[i]);
		seen = seen == 0 ? watch_end(w) : seen;
		if (seen < 0)
			n = error_set(e, seen, "the record could not be asked about its seals: %s: try again",
			              strerror(-seen));
	}
	free(marks.list);
	free(w);
	return n;
}
