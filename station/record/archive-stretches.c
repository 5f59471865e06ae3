/* What leaves the record, as stretches of numbers without an event. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "record/archive-parts.h"
#include "record/store-internal.h"

static int by_number(const void *key, const void *of)
{
	int32_t a = *(const int32_t *)key, b = ((const struct archive_case *)of)->case_no;
	return a < b ? -1 : a > b;
}

static int leaves(const struct archive *a, int32_t case_no)
{
	const struct archive_case *c =
	    case_no ? bsearch(&case_no, a->cases, (size_t)a->n_cases, sizeof *a->cases, by_number) : NULL;
	return c && c->why == STAYS_NOT;
}

/* Goes along all that is there: what leaves now, and the numbers that are missing already. */
struct along {
	const struct archive *a;
	struct stretches *out;
	int64_t kept, seen; /* the last number that stays, and the last that was passed */
	struct chain kept_hash, seen_hash;
};

static int pass_kept(struct along *g, int64_t seq, struct chain hash)
{
	int n = seq > g->kept + 1
	            ? gone_add(g->out, (struct stretch){g->kept + 1, seq - 1, g->kept_hash, g->seen_hash})
	            : 0;
	g->kept = seq;
	g->kept_hash = hash;
	return n;
}

static int pass_row(struct along *g, struct record *r, sqlite3_stmt *s)
{
	int64_t seq = sqlite3_column_int64(s, 0);
	struct chain hash = {0};
	int n = 0;
	if (sqlite3_column_bytes(s, 1) == CHAIN_BYTES)
		memcpy(hash.hash, sqlite3_column_blob(s, 1), CHAIN_BYTES);
	if (seq > g->seen + 1)
		n = record_hash_at(r, seq - 1, &g->seen_hash);
	if (n >= 0)
		n = sqlite3_column_int(s, 3) || !leaves(g->a, sqlite3_column_int(s, 2))
		        ? pass_kept(g, seq, hash)
		        : 0;
	g->seen = seq;
	g->seen_hash = hash;
	return n;
}

int archive_stretches(struct stretches *out, const struct archive *a, struct record *r, struct error *e)
{
	struct along g = {.a = a, .out = out};
	sqlite3_stmt *s = NULL;
	int code = SQLITE_DONE, n = store_prepare(r, &s,
	                                          "SELECT seq, hash, case_no, kind IN " ARCHIVE_CASE_STAYS
	                                          " FROM event ORDER BY seq",
	                                          e);
	while (n == 0 && (code = sqlite3_step(s)) == SQLITE_ROW) {
		n = pass_row(&g, r, s);
		if (n < 0)
			error_set(e, n, ARCHIVE_NO_MEMORY);
	}
	if (n == 0 && code != SQLITE_DONE)
		n = store_fault(r, code, "read the record", e);
	sqlite3_finalize(s);
	return n;
}

/* As the tables will be, once the event of number `seq` says so. */
int archive_hash_to_be(const struct stretches *all, const struct archive *a, struct record *r, int64_t seq,
                       char hex[2 * CHAIN_BYTES + 1])
{
	struct chain c = {0};
	int n = 0;
	for (size_t i = 0; i < all->count; i++)
		gone_hash_stretch(&c, &all->list[i]);
	for (int i = 0; i < a->n_cases && n >= 0; i++) {
		struct event left = {.seq = seq};
		if (a->cases[i].why == STAYS_LEFT)
			n = record_case_left(r, a->cases[i].case_no, &left);
		if (a->cases[i].why == STAYS_LEFT || !a->cases[i].why)
			gone_hash_case(&c, a->cases[i].case_no, left.seq);
	}
	chain_hex(&c, hex);
	return n < 0 ? n : 0;
}
