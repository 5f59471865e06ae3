#include "forward/hospital-store.h"

#include <arpa/inet.h>
#include <errno.h>
#include <inttypes.h>
#include <libpq-fe.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/error.h"

#define CONNECT_SECONDS "4" /* a host */
#define OID_INT4 23
#define OID_INT8 20
#define OID_TEXT 25
#define OID_BYTEA 17
#define OID_TEXTS 1009
#define OID_BYTEAS 1001
#define OID_INT8S 1016
#define LISTS_AT_ONCE 200

struct store {
	PGconn *c;
	int warned;  /* the server had something to say of the statement that runs */
	int writing; /* not all of it is sent */
	char server[STORE_NAME];
	int32_t timeline;
};

/* --- what is wrong ---------------------------------------------------------------------------------- */

/* One line, without what stands before the first colon where that is only the word ERROR. */
static int fault(struct store_fault *f, enum forward_word word, int code, const char *why)
{
	size_t n = strcspn(why, "\n");
	f->word = word;
	snprintf(f->why, sizeof f->why, "%.*s", (int)(n < sizeof f->why ? n : sizeof f->why - 1), why);
	return code;
}

/* Classes and codes of appendix A of PostgreSQL's manual. */
static enum forward_word word_of(const char *state)
{
	static const struct {
		const char *state;
		enum forward_word word;
	} words[] = {{"53", FORWARD_FULL},       {"57P", FORWARD_DOWN},      {"25006", FORWARD_DOWN},
	             {"28", FORWARD_REFUSED},    {"42501", FORWARD_REFUSED}, {"3D", FORWARD_SCHEMA},
	             {"3F", FORWARD_SCHEMA},     {"42", FORWARD_SCHEMA},     {"22", FORWARD_CHANGED},
	             {"08", FORWARD_UNREACHABLE}};
	for (size_t i = 0; state && i < sizeof words / sizeof *words; i++)
		if (strncmp(state, words[i].state, strlen(words[i].state)) == 0)
			return words[i].word;
	return FORWARD_OTHER;
}

/* libpq gives a text alone of a connection that could not be made. */
static enum forward_word word_of_connecting(const char *text, size_t size)
{
	static const struct {
		const char *part;
		enum forward_word word;
	} words[] = {{"certificate", FORWARD_CERTIFICATE}, {"SSL error", FORWARD_CERTIFICATE},
	             {"private key", FORWARD_CERTIFICATE}, {"pg_hba.conf", FORWARD_REFUSED},
	             {"role \"", FORWARD_REFUSED},         {"too many connections", FORWARD_REFUSED},
	             {"database \"", FORWARD_SCHEMA},      {"starting up", FORWARD_DOWN},
	             {"shutting down", FORWARD_DOWN},      {"in recovery", FORWARD_DOWN},
	             {"read-only", FORWARD_DOWN}};
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (memmem(text, size, words[i].part, strlen(words[i].part)))
			return words[i].word;
	return FORWARD_UNREACHABLE;
}

/* A line a host, or more; behind "failed: " it says why. Of several that one counts that answered, whatever it said. */
static int fault_of_connecting(const char *text, struct store_fault *f)
{
	f->word = FORWARD_NOTHING;
	for (const char *at = text, *end; *at; at = *end ? end + 1 : end) {
		end = at + strcspn(at, "\n");
		const char *why = memmem(at, (size_t)(end - at), "failed: ", 8);
		enum forward_word word = word_of_connecting(at, (size_t)(end - at));
		if (f->word == FORWARD_NOTHING ||
		    (f->word == FORWARD_UNREACHABLE && word != FORWARD_UNREACHABLE))
			fault(f, word, 0, why ? why + 8 : at);
	}
	return f->word ? -EHOSTUNREACH : fault(f, FORWARD_UNREACHABLE, -EHOSTUNREACH, "no reason is given");
}

static int fault_of_result(struct store *s, const PGresult *r, struct store_fault *f)
{
	const char *state = r ? PQresultErrorField(r, PG_DIAG_SQLSTATE) : NULL;
	const char *text = r ? PQresultErrorField(r, PG_DIAG_MESSAGE_PRIMARY) : NULL;
	if (PQstatus(s->c) != CONNECTION_OK && !state)
		return fault(f, FORWARD_UNREACHABLE, -ECONNRESET, text ? text : PQerrorMessage(s->c));
	return fault(f, word_of(state), -EREMOTEIO, text ? text : PQerrorMessage(s->c));
}

/* --- the connection --------------------------------------------------------------------------------- */

static void on_notice(void *context, const PGresult *r)
{
	struct store *s = context;
	const char *severity = PQresultErrorField(r, PG_DIAG_SEVERITY_NONLOCALIZED);
	s->warned |= severity && strcmp(severity, "WARNING") == 0;
}

/* "name:port", "[address]:port" or without a port, as two lists with commas. */
static int add_host(char hosts[512], char ports[64], const char *host)
{
	const char *end = host[0] == '[' ? strchr(host, ']') : NULL;
	const char *name = end ? host + 1 : host;
	const char *colon = strchr(end ? end : host, ':');
	size_t size = end ? (size_t)(end - name) : colon ? (size_t)(colon - host) : strlen(host);
	size_t h = strlen(hosts), p = strlen(ports);
	int a = snprintf(hosts + h, 512 - h, "%s%.*s", h ? "," : "", (int)size, name);
	int b = snprintf(ports + p, 64 - p, "%s%s", h ? "," : "", colon ? colon + 1 : "5432");
	return a < 0 || b < 0 || (size_t)a >= 512 - h || (size_t)b >= 64 - p ? -EINVAL : 0;
}

static PGconn *connect_to(const struct store_place *place)
{
	char hosts[512] = "", ports[64] = "";
	for (int i = 0; i < place->n_hosts; i++)
		if (add_host(hosts, ports, place->hosts[(place->first + i) % place->n_hosts]) < 0)
			return NULL;
	const char *const names[] = {"host",
	                             "port",
	                             "dbname",
	                             "user",
	                             "sslmode",
	                             "ssl_min_protocol_version",
	                             "sslcert",
	                             "sslkey",
	                             "sslrootcert",
	                             "target_session_attrs",
	                             "connect_timeout",
	                             "tcp_user_timeout",
	                             "keepalives_idle",
	                             "keepalives_interval",
	                             "keepalives_count",
	                             "application_name",
	                             "client_encoding",
	                             "gssencmode",
	                             "passfile",
	                             NULL};
	const char *const values[] = {hosts,
	                              ports,
	                              place->database,
	                              place->user,
	                              "verify-full",
	                              "TLSv1.3",
	                              place->certificate,
	                              place->key,
	                              place->authority,
	                              "read-write",
	                              CONNECT_SECONDS,
	                              "10000",
	                              "10",
	                              "3",
	                              "3",
	                              "bandtally-forward",
	                              "UTF8",
	                              "disable",
	                              "/nowhere/none",
	                              NULL};
	return PQconnectdbParams(names, values, 0);
}

void store_close(struct store *s)
{
	if (!s)
		return;
	PQfinish(s->c);
	free(s);
}

int store_socket(const struct store *s)
{
	return PQsocket(s->c);
}

int store_writing(const struct store *s)
{
	return s->writing;
}

/* --- asking ----------------------------------------------------------------------------------------- */

struct words { /* the arguments of a statement; numbers are written here */
	int n;
	Oid types[6];
	const char *values[6];
	int lengths[6], formats[6];
	char numbers[6][24];
};

static void say(struct words *w, Oid type, const char *value, int length, int binary)
{
	w->types[w->n] = type;
	w->values[w->n] = value;
	w->lengths[w->n] = length;
	w->formats[w->n++] = binary;
}

static void say_number(struct words *w, Oid type, int64_t n)
{
	snprintf(w->numbers[w->n], sizeof w->numbers[0], "%" PRId64, n);
	say(w, type, w->numbers[w->n], 0, 0);
}

static int push(struct store *s, struct store_fault *f)
{
	int n = PQflush(s->c);
	s->writing = n > 0;
	return n < 0 ? fault(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c)) : 0;
}

static int ask(struct store *s, const char *sql, const struct words *w, struct store_fault *f)
{
	s->warned = 0;
	if (!PQsendQueryParams(s->c, sql, w->n, w->types, w->values, w->lengths, w->formats, 0))
		return fault(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	return push(s, f);
}

/* 1 where the answer is there, 0 where it is not yet. */
static int take(struct store *s, struct store_fault *f)
{
	if (s->writing && push(s, f) < 0)
		return -ECONNRESET;
	if (!PQconsumeInput(s->c))
		return fault(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	return !PQisBusy(s->c);
}

/* The answer, or NULL with `f`. Its row may come although the transaction fails as it ends, and the error behind it: only when
 * nothing else comes the answer holds. */
static PGresult *result_of(struct store *s, struct store_fault *f)
{
	PGresult *r = PQgetResult(s->c);
	for (PGresult *more; (more = PQgetResult(s->c));) {
		PQclear(r);
		r = more;
	}
	if (r && PQresultStatus(r) == PGRES_TUPLES_OK && PQstatus(s->c) == CONNECTION_OK)
		return r;
	fault_of_result(s, r, f);
	PQclear(r);
	return NULL;
}

static int wait_for(struct store *s, struct store_fault *f)
{
	int64_t end = clock_now().boot_ms + STORE_PATIENCE_MS, left;
	int n = take(s, f);
	while (n == 0 && (left = end - clock_now().boot_ms) > 0) {
		struct pollfd p = {.fd = PQsocket(s->c),
		                   .events = (short)(POLLIN | (s->writing ? POLLOUT : 0))};
		if (poll(&p, 1, (int)left) < 0 && errno != EINTR)
			return fault(f, FORWARD_OTHER, -errno, strerror(errno));
		n = take(s, f);
	}
	return n == 0 ? fault(f, FORWARD_SLOW, -ETIMEDOUT, "no answer within 10 s") : n;
}

/* NULL with `f`. */
static PGresult *answer(struct store *s, const char *sql, const struct words *w, struct store_fault *f)
{
	if (ask(s, sql, w, f) < 0 || wait_for(s, f) < 0)
		return NULL;
	return result_of(s, f);
}

/* Before the lists are read: what comes in between is read or told, perhaps both. */
static int hear_of_lists(struct store *s, struct store_fault *f)
{
	if (!PQsendQuery(s->c, "LISTEN bt_list") || push(s, f) < 0)
		return fault(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	int n = wait_for(s, f);
	for (PGresult *r; n > 0 && (r = PQgetResult(s->c)); PQclear(r))
		if (PQresultStatus(r) != PGRES_COMMAND_OK)
			n = fault_of_result(s, r, f);
	return n < 0 ? n : 0;
}

int store_open(struct store **out, const struct store_place *place, struct store_fault *f)
{
	struct store *s = calloc(1, sizeof *s);
	if (!s)
		return fault(f, FORWARD_OTHER, -ENOMEM, "out of memory");
	s->c = connect_to(place);
	if (!s->c || PQstatus(s->c) != CONNECTION_OK) {
		int n = fault_of_connecting(s->c ? PQerrorMessage(s->c) : "its hosts cannot be read", f);
		store_close(s);
		return n;
	}
	PQsetNoticeReceiver(s->c, on_notice, s);
	int n = hear_of_lists(s, f);
	if (n < 0)
		store_close(s);
	else
		*out = s;
	return n;
}

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
		return fault(f, FORWARD_SCHEMA, -EPROTO, "its answer is none that is known here");
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
	struct words w = {0};
	say_number(&w, OID_INT4, who->number);
	say_number(&w, OID_INT4, who->incarnation);
	say_number(&w, OID_INT8, who->seq);
	say_number(&w, OID_INT8, clock_now().wall_ms);
	say(&w, OID_TEXT, who->rooms, 0, 0);
	PGresult *r = answer(s,
	                     "SELECT status, last_seq, last_hash, clock_off_ms, incident, server, timeline"
	                     " FROM bt.hello($1, $2, $3, $4, $5)",
	                     &w, f);
	if (!r)
		return -EREMOTEIO;
	int n =
	    PQnfields(r) == 7 ? 0 : fault(f, FORWARD_SCHEMA, -EPROTO, "its hello is none that is known here");
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
	struct words w = {0};
	if (write_arrays(&a, &b, seqs, hashes, count) < 0)
		return fault(f, FORWARD_OTHER, -ENOMEM, "out of memory");
	say_number(&w, OID_INT4, number);
	say(&w, OID_INT8S, a.data, 0, 0);
	say(&w, OID_BYTEAS, b.data, 0, 0);
	PGresult *r = answer(s, "SELECT bt.common($1, $2, $3)", &w, f);
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
	struct words w = {0};
	snprintf(bytes, sizeof bytes, "\\x%.64s", hash);
	say_number(&w, OID_INT4, who->number);
	say_number(&w, OID_INT4, who->incarnation);
	say_number(&w, OID_INT8, seq);
	say(&w, OID_BYTEA, bytes, 0, 0);
	*out = answer(s, sql, &w, f);
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
	return *status ? 0 : fault(f, FORWARD_SCHEMA, -EPROTO, "its answer is none that is known here");
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
	struct words w = {0};
	if (write_array(&a, OID_TEXT, count, q->texts.data, texts) < 0 ||
	    write_array(&b, OID_BYTEA, count, q->hashes.data, hashes) < 0)
		return fault(f, FORWARD_OTHER, -ENOMEM, "out of memory");
	say_number(&w, OID_INT4, who->number);
	say_number(&w, OID_INT4, who->incarnation);
	say_number(&w, OID_INT8, q->after + 1);
	say(&w, OID_TEXTS, a.data, (int)a.size, 1);
	say(&w, OID_BYTEAS, b.data, (int)b.size, 1);
	return ask(s, "SELECT status, last_seq, last_hash FROM bt.append($1, $2, $3, $4, $5)", &w, f);
}

int store_answer(struct store *s, struct store_append *out, struct store_fault *f)
{
	int n = take(s, f);
	if (n <= 0)
		return n;
	PGresult *r = result_of(s, f);
	if (!r)
		return -EREMOTEIO;
	/* Somebody ended the wait for the standby: it is kept on one machine alone, which a warning says, and no error. */
	n = s->warned ? fault(f, FORWARD_STANDBY, -EAGAIN, "")
	              : read_status(s, r, &out->status, &out->last, f);
	PQclear(r);
	return n < 0 ? n : 1;
}

enum forward_word store_why_slow(struct store *s, const struct store_place *place)
{
	struct store_fault f;
	struct words w = {0};
	struct store *other = NULL;
	int waits = 0;
	say_number(&w, OID_INT4, PQbackendPID(s->c));
	if (store_open(&other, place, &f) == 0) {
		PGresult *r = answer(
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
	struct words w = {0};
	say_number(&w, OID_INT4, number);
	say_number(&w, OID_INT8, after);
	say_number(&w, OID_INT4, LISTS_AT_ONCE);
	PGresult *r = answer(s, "SELECT version, origin, kind, body, last FROM bt.lists($1, $2, $3)", &w, f);
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
	struct words w = {0};
	say_number(&w, OID_INT4, number);
	say_number(&w, OID_INT8, version);
	PGresult *r = answer(s, "SELECT bt.took($1, $2)", &w, f);
	int n = r ? 0 : -EREMOTEIO;
	PQclear(r);
	return n;
}

int store_has_news(struct store *s, struct store_fault *f)
{
	int any = 0;
	if (!PQconsumeInput(s->c))
		return fault(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	for (PGnotify *n; (n = PQnotifies(s->c)); any = 1)
		PQfreemem(n);
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
	struct words w = {0};
	say_number(&w, OID_INT4, most);
	PGresult *r =
	    answer(s,
	           "SELECT s.number, h.incarnation, h.base_seq, h.last_seq, h.last_hash,"
	           " (SELECT e.hash FROM bt.event e WHERE e.station = h.station AND e.seq = h.base_seq"
	           " AND e.incarnation < h.incarnation ORDER BY e.incarnation DESC LIMIT 1)"
	           " FROM bt.head h JOIN bt.station s ON s.id = h.station"
	           " ORDER BY s.number, h.incarnation LIMIT $1",
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
	}
	PQclear(r);
	return n;
}

int store_read(struct store *s, const struct store_head *of, struct queue *q, int most, struct store_fault *f)
{
	struct words w = {0};
	say_number(&w, OID_INT4, of->number);
	say_number(&w, OID_INT4, of->incarnation);
	say_number(&w, OID_INT8, q->after + (int64_t)q->count);
	say_number(&w, OID_INT4, most);
	PGresult *r =
	    answer(s,
	           "SELECT e.payload, encode(e.hash, 'hex'), e.seq FROM bt.event e"
	           " WHERE e.station = (SELECT id FROM bt.station WHERE number = $1) AND e.incarnation = $2"
	           " AND e.seq > $3 ORDER BY e.seq LIMIT $4",
	           &w, f);
	if (!r)
		return -EREMOTEIO;
	int rows = PQntuples(r), n = 0;
	for (int i = 0; i < rows && n == 0; i++) {
		struct line_event e = {.text = PQgetvalue(r, i, 0),
		                       .size = (size_t)PQgetlength(r, i, 0),
		                       .hash = PQgetvalue(r, i, 1),
		                       .seq = number_of(r, i, 2)};
		n = e.seq == q->after + (int64_t)q->count + 1 ? queue_add(q, &e) : -EBADMSG;
	}
	PQclear(r);
	return n < 0 ? fault(f, FORWARD_CHANGED, n, "an event is missing in the store that is read") : rows;
}
