#include "forward/hospital-connection.h"

#include <arpa/inet.h>
#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/error.h"

#define OID_INT4 23
#define OID_INT8 20
#define OID_TEXT 25
#define OID_BYTEA 17
#define OID_TEXTS 1009
#define OID_BYTEAS 1001
#define OID_INT8S 1016
#define LISTS_AT_ONCE 200

/* --- what it says ----------------------------------------------------------------------------------- */

static int status_of(const char *text)
{
	static const char *const names[] = {"", "ok", "gap", "fork", "changed", "begin", "behind"};
	for (int i = 1; i < (int)(sizeof names / sizeof *names); i++)
		if (strcmp(names[i], text) == 0)
			return i;
	return 0;
}

static int64_t number_of(const PGresult *r, int row, int column)
{
	return PQgetisnull(r, row, column) ? 0 : strtoll(PQgetvalue(r, row, column), NULL, 10);
}

/* status, last_seq, last_hash stand first. 0, or -EPROTO. */
static int read_status(struct store *s, const PGresult *r, enum store_status *status, struct store_at *last,
                       struct store_fault *f)
{
	int n = PQntuples(r) == 1 && PQnfields(r) >= 3 ? status_of(PQgetvalue(r, 0, 0)) : 0;
	const char *hash = n ? PQgetvalue(r, 0, 2) : "";
	if (!n)
		return store_fault_set(f, FORWARD_SCHEMA, -EPROTO, "its answer is none that is known here");
	*status = (enum store_status)n;
	*last = (struct store_at){.seq = number_of(r, 0, 1), .timeline = s->timeline};
	if (strlen(hash) == 2 + LINE_HASH)
		memcpy(last->hash, hash + 2, LINE_HASH);
	memcpy(last->server, s->server, sizeof s->server);
	return 0;
}

int store_say_hello(struct store *s, const struct store_station *who, struct store_hello *out,
                    struct store_fault *f)
{
	struct statement w = {0};
	statement_number(&w, OID_INT4, who->number);
	statement_number(&w, OID_INT4, who->incarnation);
	statement_number(&w, OID_INT8, who->seq);
	statement_number(&w, OID_INT8, clock_now().wall_ms);
	statement_value(&w, OID_TEXT, who->rooms, 0, 0);
	PGresult *r =
	    store_ask_and_wait(s,
	                       "SELECT status, last_seq, last_hash, clock_off_ms, incident, server, timeline"
	                       " FROM bt.hello($1, $2, $3, $4, $5)",
	                       &w, f);
	if (!r)
		return -EREMOTEIO;
	int n = PQnfields(r) == 7
	            ? 0
	            : store_fault_set(f, FORWARD_SCHEMA, -EPROTO, "its hello is none that is known here");
	if (n == 0) {
		snprintf(s->server, sizeof s->server, "%s", PQgetvalue(r, 0, 5));
		s->timeline = (int32_t)number_of(r, 0, 6);
		n = read_status(s, r, &out->status, &out->last, f);
	}
	if (n == 0) {
		out->clock_off_ms = number_of(r, 0, 3);
		snprintf(out->incident, sizeof out->incident, "%s", PQgetvalue(r, 0, 4));
	}
	PQclear(r);
	return n;
}

/* As PostgreSQL reads an array from text. */
static int write_arrays(struct buf *seqs, struct buf *hashes, const int64_t *seq,
                        const char (*hash)[LINE_HASH + 1], int count)
{
	int n = 0;
	for (int i = 0; n == 0 && i < count; i++) {
		n = buf_printf(seqs, "%s%" PRId64, i ? "," : "{", seq[i]);
		if (n == 0)
			n = buf_printf(hashes, "%s\"\\\\x%s\"", i ? "," : "{", hash[i]);
	}
	if (n == 0)
		n = buf_add_text(seqs, count ? "}" : "{}");
	return n == 0 ? buf_add_text(hashes, count ? "}" : "{}") : n;
}

int store_common(struct store *s, int32_t number, const int64_t *seqs, const char (*hashes)[LINE_HASH + 1],
                 int count, int64_t *found, struct store_fault *f)
{
	_cleanup_(buf_free) struct buf a = {0}, b = {0};
	struct statement w = {0};
	if (write_arrays(&a, &b, seqs, hashes, count) < 0)
		return store_fault_set(f, FORWARD_OTHER, -ENOMEM, "out of memory");
	statement_number(&w, OID_INT4, number);
	statement_value(&w, OID_INT8S, a.data, 0, 0);
	statement_value(&w, OID_BYTEAS, b.data, 0, 0);
	PGresult *r = store_ask_and_wait(s, "SELECT bt.common($1, $2, $3)", &w, f);
	if (!r)
		return -EREMOTEIO;
	*found = number_of(r, 0, 0);
	PQclear(r);
	return 0;
}

static int ask_of(struct store *s, const char *sql, const struct store_station *who, int64_t seq,
                  const char *hash, PGresult **out, struct store_fault *f)
{
	char bytes[LINE_HASH + 3];
	struct statement w = {0};
	snprintf(bytes, sizeof bytes, "\\x%.64s", hash);
	statement_number(&w, OID_INT4, who->number);
	statement_number(&w, OID_INT4, who->incarnation);
	statement_number(&w, OID_INT8, seq);
	statement_value(&w, OID_BYTEA, bytes, 0, 0);
	*out = store_ask_and_wait(s, sql, &w, f);
	return *out ? 0 : -EREMOTEIO;
}

int store_begin(struct store *s, const struct store_station *who, int64_t seq, const char *hash,
                enum store_status *status, struct store_fault *f)
{
	PGresult *r;
	int n = ask_of(s, "SELECT bt.begin($1, $2, $3, $4)", who, seq, hash, &r, f);
	if (n < 0)
		return n;
	*status = (enum store_status)status_of(PQgetvalue(r, 0, 0));
	PQclear(r);
	return *status ? 0
	               : store_fault_set(f, FORWARD_SCHEMA, -EPROTO, "its answer is none that is known here");
}

int store_tell_lost(struct store *s, const struct store_station *who, const struct store_at *kept,
                    struct store_fault *f)
{
	PGresult *r;
	int n = ask_of(s, "SELECT bt.lost($1, $2, $3, $4)", who, kept->seq, kept->hash, &r, f);
	if (n == 0)
		PQclear(r);
	return n;
}

/* --- appending -------------------------------------------------------------------------------------- */

/* An array of one dimension, in binary: dimensions, no NULL, type, length, lower bound; then each with its length. */
static int write_array(struct buf *out, uint32_t type, size_t count, const char *entries, size_t size)
{
	const uint32_t head[] = {htonl(1), htonl(0), htonl(type), htonl((uint32_t)count), htonl(1)};
	int n = buf_add(out, head, sizeof head);
	return n == 0 ? buf_add(out, entries, size) : n;
}

int store_append(struct store *s, const struct store_station *who, const struct queue *q, size_t count,
                 size_t texts, size_t hashes, struct store_fault *f)
{
	_cleanup_(buf_free) struct buf a = {0}, b = {0};
	struct statement w = {0};
	if (write_array(&a, OID_TEXT, count, q->texts.data, texts) < 0 ||
	    write_array(&b, OID_BYTEA, count, q->hashes.data, hashes) < 0)
		return store_fault_set(f, FORWARD_OTHER, -ENOMEM, "out of memory");
	statement_number(&w, OID_INT4, who->number);
	statement_number(&w, OID_INT4, who->incarnation);
	statement_number(&w, OID_INT8, q->after + 1);
	statement_value(&w, OID_TEXTS, a.data, (int)a.size, 1);
	statement_value(&w, OID_BYTEAS, b.data, (int)b.size, 1);
	return store_ask(s, "SELECT status, last_seq, last_hash FROM bt.append($1, $2, $3, $4, $5)", &w, f);
}

int store_answer(struct store *s, struct store_append *out, struct store_fault *f)
{
	int n = store_take(s, f);
	if (n != STORE_CAME)
		return n;
	PGresult *r = store_result(s, f);
	if (!r)
		return -EREMOTEIO;
	/* Somebody ended the wait for the standby: it is kept on one machine alone, which a warning says, and no error. */
	n = s->warned ? store_fault_set(f, FORWARD_STANDBY, -EAGAIN, "")
	              : read_status(s, r, &out->status, &out->last, f);
	PQclear(r);
	return n < 0 ? n : STORE_CAME;
}

int store_skip(struct store *s, const struct store_station *who, int64_t after, const struct store_at *to,
               struct store_append *out, struct store_fault *f)
{
	char bytes[LINE_HASH + 3];
	struct statement w = {0};
	snprintf(bytes, sizeof bytes, "\\x%.64s", to->hash);
	statement_number(&w, OID_INT4, who->number);
	statement_number(&w, OID_INT4, who->incarnation);
	statement_number(&w, OID_INT8, after);
	statement_number(&w, OID_INT8, to->seq);
	statement_value(&w, OID_BYTEA, bytes, 0, 0);
	PGresult *r = store_ask_and_wait(
	    s, "SELECT status, last_seq, last_hash FROM bt.skip($1, $2, $3, $4, $5)", &w, f);
	if (!r)
		return -EREMOTEIO;
	int n = read_status(s, r, &out->status, &out->last, f);
	PQclear(r);
	return n;
}

enum forward_word store_why_slow(struct store *s, const struct store_place *place)
{
	struct store_fault f;
	struct statement w = {0};
	struct store *other = NULL;
	int waits = 0;
	statement_number(&w, OID_INT4, PQbackendPID(s->c));
	if (store_open(&other, place, &f) == 0) {
		PGresult *r = store_ask_and_wait(
		    other, "SELECT wait_event = 'SyncRep' FROM pg_stat_activity WHERE pid = $1", &w, &f);
		waits = r && PQntuples(r) == 1 && strcmp(PQgetvalue(r, 0, 0), "t") == 0;
		PQclear(r);
	}
	store_close(other);
	return waits ? FORWARD_STANDBY : FORWARD_SLOW;
}

/* --- the lists -------------------------------------------------------------------------------------- */

int store_lists(struct store *s, int32_t number, int64_t after, store_entry_fn each, void *context,
                int64_t *last, struct store_fault *f)
{
	struct statement w = {0};
	statement_number(&w, OID_INT4, number);
	statement_number(&w, OID_INT8, after);
	statement_number(&w, OID_INT4, LISTS_AT_ONCE);
	PGresult *r = store_ask_and_wait(
	    s, "SELECT version, origin, kind, body, last FROM bt.lists($1, $2, $3)", &w, f);
	if (!r)
		return -EREMOTEIO;
	int n = PQntuples(r);
	*last = n ? number_of(r, 0, 4) : 0;
	for (int i = 0; i < n; i++)
		if (!PQgetisnull(r, i, 0)) {
			struct store_entry e = {number_of(r, i, 0), PQgetvalue(r, i, 1), PQgetvalue(r, i, 2),
			                        PQgetvalue(r, i, 3)};
			each(context, &e);
		}
	n = n && PQgetisnull(r, 0, 0) ? 0 : n;
	PQclear(r);
	return n;
}

int store_took(struct store *s, int32_t number, int64_t version, struct store_fault *f)
{
	struct statement w = {0};
	statement_number(&w, OID_INT4, number);
	statement_number(&w, OID_INT8, version);
	PGresult *r = store_ask_and_wait(s, "SELECT bt.took($1, $2)", &w, f);
	int n = r ? 0 : -EREMOTEIO;
	PQclear(r);
	return n;
}

int store_has_news(struct store *s, struct store_fault *f)
{
	int any = 0;
	if (!PQconsumeInput(s->c))
		return store_fault_set(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	for (PGnotify *n; (n = PQnotifies(s->c)); PQfreemem(n))
		any |= strncmp(PQuser(s->c), n->extra, strlen(n->extra)) == 0;
	return any;
}

/* --- from a store that is read ---------------------------------------------------------------------- */

static void take_hash(char out[LINE_HASH + 1], const char *text)
{
	memset(out, '0', LINE_HASH);
	out[LINE_HASH] = 0;
	if (strlen(text) == 2 + LINE_HASH)
		memcpy(out, text + 2, LINE_HASH);
}

int store_heads(struct store *s, struct store_head *out, int most, struct store_fault *f)
{
	struct statement w = {0};
	statement_number(&w, OID_INT4, most);
	PGresult *r = store_ask_and_wait(
	    s,
	    "SELECT s.number, h.incarnation, h.base_seq, h.last_seq, h.last_hash,"
	    " (SELECT e.hash FROM bt.event e WHERE e.station = h.station AND e.seq = h.base_seq"
	    " AND e.incarnation < h.incarnation ORDER BY e.incarnation DESC LIMIT 1), s.id, s.site"
	    " FROM bt.head h JOIN bt.station s ON s.id = h.station"
	    " ORDER BY s.site, s.number, h.incarnation LIMIT $1",
	    &w, f);
	if (!r)
		return -EREMOTEIO;
	int n = PQntuples(r);
	for (int i = 0; i < n; i++) {
		out[i] = (struct store_head){.number = (int32_t)number_of(r, i, 0),
		                             .incarnation = (int32_t)number_of(r, i, 1),
		                             .base_seq = number_of(r, i, 2),
		                             .last_seq = number_of(r, i, 3)};
		take_hash(out[i].last_hash, PQgetvalue(r, i, 4));
		take_hash(out[i].base_hash, PQgetvalue(r, i, 5));
		out[i].id = (int32_t)number_of(r, i, 6);
		snprintf(out[i].site, sizeof out[i].site, "%s", PQgetvalue(r, i, 7));
	}
	PQclear(r);
	return n;
}

int store_each(struct store *s, const struct store_head *of, int64_t *at, int64_t to, int most,
               store_event_fn each, void *context, struct store_fault *f)
{
	struct statement w = {0};
	statement_number(&w, OID_INT4, of->id);
	statement_number(&w, OID_INT4, of->incarnation);
	statement_number(&w, OID_INT8, *at);
	statement_number(&w, OID_INT8, to);
	statement_number(&w, OID_INT4, most);
	PGresult *r = store_ask_and_wait(
	    s,
	    "SELECT e.payload, encode(e.hash, 'hex'), e.seq FROM bt.event e WHERE e.station = $1"
	    " AND e.incarnation = $2 AND e.seq > $3 AND e.seq <= $4 ORDER BY e.seq LIMIT $5",
	    &w, f);
	if (!r)
		return -EREMOTEIO;
	int rows = PQntuples(r), n = 0;
	for (; n < rows && number_of(r, n, 2) == *at + 1; n++, ++*at)
		each(context, &(struct line_event){.text = PQgetvalue(r, n, 0),
		                                   .size = (size_t)PQgetlength(r, n, 0),
		                                   .hash = PQgetvalue(r, n, 1),
		                                   .seq = number_of(r, n, 2)});
	PQclear(r);
	return n ? n
	         : store_fault_set(f, FORWARD_CHANGED, -EBADMSG,
	                           "an event is missing in the store that is read");
}

struct into_queue {
	struct queue *q;
	int bad; /* negative errno */
};

static void add_to_queue(void *context, const struct line_event *e)
{
	struct into_queue *to = context;
	if (to->bad == 0)
		to->bad = queue_add(to->q, e);
}

int store_read(struct store *s, const struct store_head *of, struct queue *q, int most, struct store_fault *f)
{
	struct into_queue to = {q, 0};
	int64_t at = q->after + (int64_t)q->count;
	if (at >= of->last_seq)
		return 0;
	int n = store_each(s, of, &at, of->last_seq, most, add_to_queue, &to, f);
	return to.bad < 0
	           ? store_fault_set(f, FORWARD_CHANGED, to.bad, "an event of the store cannot be sent")
	           : n;
}

int store_gone(struct store *s, const struct store_head *of, int64_t after, struct store_at *to,
               struct store_fault *f)
{
	struct statement w = {0};
	statement_number(&w, OID_INT4, of->id);
	statement_number(&w, OID_INT4, of->incarnation);
	statement_number(&w, OID_INT8, after + 1);
	PGresult *r = store_ask_and_wait(
	    s,
	    "SELECT last_seq, hash FROM bt.gone WHERE station = $1 AND incarnation = $2 AND first_seq = $3",
	    &w, f);
	if (!r)
		return -EREMOTEIO;
	int n = PQntuples(r) > 0;
	if (n) {
		to->seq = number_of(r, 0, 0);
		take_hash(to->hash, PQgetvalue(r, 0, 1));
	}
	PQclear(r);
	return n;
}
