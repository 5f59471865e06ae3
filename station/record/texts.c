#include "record/texts.h"

#include <errno.h>
#include <string.h>

#include "record/store-internal.h"

int record_each_text(struct record *r, int64_t after, int64_t to, int limit, record_text_fn each,
                     void *context)
{
	sqlite3_stmt *s = NULL;
	int told = 0, code = SQLITE_DONE;
	int n = store_prepare(
	    r, &s, "SELECT seq, payload, hash FROM event WHERE seq > ? AND seq <= ? ORDER BY seq LIMIT ?",
	    NULL);
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, after);
	sqlite3_bind_int64(s, 2, to);
	sqlite3_bind_int(s, 3, limit);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		struct chain hash = {0};
		const char *text = (const char *)sqlite3_column_text(s, 1);
		size_t size = (size_t)sqlite3_column_bytes(s, 1);
		if (sqlite3_column_bytes(s, 2) == CHAIN_BYTES)
			memcpy(hash.hash, sqlite3_column_blob(s, 2), CHAIN_BYTES);
		n = text ? each(context, sqlite3_column_int64(s, 0), text, size, &hash) : -ENOMEM;
		told += n == 0;
	}
	sqlite3_finalize(s);
	if (n == 0 && code != SQLITE_DONE)
		n = store_fault(r, code, "read the record", NULL);
	return n < 0 ? n : told;
}

int record_gone_before(struct record *r, int64_t seq, struct chain *hash)
{
	sqlite3_stmt *s = NULL;
	if (r->schema < SCHEMA_GONE)
		return RECORD_HAS_NONE;
	int n = store_prepare(r, &s, "SELECT hash FROM gone WHERE last = ?", NULL);
	if (n < 0)
		return n;
	sqlite3_bind_int64(s, 1, seq - 1);
	int code = sqlite3_step(s);
	int found = code == SQLITE_ROW && sqlite3_column_bytes(s, 0) == CHAIN_BYTES;
	if (found)
		memcpy(hash->hash, sqlite3_column_blob(s, 0), CHAIN_BYTES);
	else if (code != SQLITE_ROW && code != SQLITE_DONE)
		n = store_fault(r, code, "read the record", NULL);
	sqlite3_finalize(s);
	return n < 0 ? n : found ? RECORD_FOUND : RECORD_HAS_NONE;
}
