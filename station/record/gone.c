#include "record/gone.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "record/store-internal.h"

int gone_add(struct stretches *all, struct stretch one)
{
	if (all->count == all->room) {
		size_t room = all->room ? 2 * all->room : 1024;
		struct stretch *more = realloc(all->list, room * sizeof *more);
		if (!more)
			return -ENOMEM;
		all->list = more;
		all->room = room;
	}
	all->list[all->count++] = one;
	return 0;
}

void gone_hash_stretch(struct chain *all, const struct stretch *one)
{
	char text[200], before[2 * CHAIN_BYTES + 1], hash[2 * CHAIN_BYTES + 1];
	chain_hex(&one->before, before);
	chain_hex(&one->hash, hash);
	int n = snprintf(text, sizeof text, "%" PRId64 " %" PRId64 " %s %s\n", one->first, one->last, before,
	                 hash);
	chain_add(all, text, (size_t)n);
}

void gone_hash_case(struct chain *all, int32_t case_no, int64_t seq)
{
	char text[60];
	int n = snprintf(text, sizeof text, "%" PRId32 " %" PRId64 "\n", case_no, seq);
	chain_add(all, text, (size_t)n);
}

static int each(struct record *r, const char *sql, void (*take)(struct chain *, sqlite3_stmt *),
                struct chain *all, int64_t *count)
{
	sqlite3_stmt *s = NULL;
	int code, n = store_prepare(r, &s, sql, NULL);
	if (n < 0)
		return n;
	while ((code = sqlite3_step(s)) == SQLITE_ROW) {
		take(all, s);
		++*count;
	}
	sqlite3_finalize(s);
	return code == SQLITE_DONE ? 0 : store_fault(r, code, "read the record", NULL);
}

static void take_stretch(struct chain *all, sqlite3_stmt *s)
{
	struct stretch one = {.first = sqlite3_column_int64(s, 0), .last = sqlite3_column_int64(s, 1)};
	if (sqlite3_column_bytes(s, 2) == CHAIN_BYTES)
		memcpy(one.before.hash, sqlite3_column_blob(s, 2), CHAIN_BYTES);
	if (sqlite3_column_bytes(s, 3) == CHAIN_BYTES)
		memcpy(one.hash.hash, sqlite3_column_blob(s, 3), CHAIN_BYTES);
	gone_hash_stretch(all, &one);
}

static void take_case(struct chain *all, sqlite3_stmt *s)
{
	gone_hash_case(all, sqlite3_column_int(s, 0), sqlite3_column_int64(s, 1));
}

int gone_hash(struct record *r, char hex[2 * CHAIN_BYTES + 1], int64_t *stretches)
{
	struct chain all = {0};
	int64_t cases = 0;
	*stretches = 0;
	int n = r->schema < SCHEMA_GONE ? 0
	                                : each(r, "SELECT first, last, before, hash FROM gone ORDER BY first",
	                                       take_stretch, &all, stretches);
	if (n == 0 && r->schema >= SCHEMA_GONE)
		n = each(r, "SELECT case_no, seq FROM left_case ORDER BY case_no", take_case, &all, &cases);
	*stretches += cases;
	chain_hex(&all, hex);
	return n;
}
