#include "forward/hospital-connection.h"

#include <arpa/inet.h>
#include <errno.h>
#include <inttypes.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"

#define CONNECT_SECONDS "4" /* a host */

/* --- what is wrong ---------------------------------------------------------------------------------- */

/* One line, without what stands before the first colon where that is only the word ERROR. */
int store_fault_set(struct store_fault *f, enum forward_word word, int code, const char *why)
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
			store_fault_set(f, word, 0, why ? why + 8 : at);
	}
	return f->word ? -EHOSTUNREACH
	               : store_fault_set(f, FORWARD_UNREACHABLE, -EHOSTUNREACH, "no reason is given");
}

static int fault_of_result(struct store *s, const PGresult *r, struct store_fault *f)
{
	const char *state = r ? PQresultErrorField(r, PG_DIAG_SQLSTATE) : NULL;
	const char *text = r ? PQresultErrorField(r, PG_DIAG_MESSAGE_PRIMARY) : NULL;
	if (PQstatus(s->c) != CONNECTION_OK && !state)
		return store_fault_set(f, FORWARD_UNREACHABLE, -ECONNRESET,
		                       text ? text : PQerrorMessage(s->c));
	return store_fault_set(f, word_of(state), -EREMOTEIO, text ? text : PQerrorMessage(s->c));
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

void statement_value(struct statement *w, Oid type, const char *value, int length, int binary)
{
	w->types[w->n] = type;
	w->values[w->n] = value;
	w->lengths[w->n] = length;
	w->formats[w->n++] = binary;
}

void statement_number(struct statement *w, Oid type, int64_t n)
{
	snprintf(w->numbers[w->n], sizeof w->numbers[0], "%" PRId64, n);
	statement_value(w, type, w->numbers[w->n], 0, 0);
}

static int push(struct store *s, struct store_fault *f)
{
	int n = PQflush(s->c);
	s->writing = n > 0;
	return n < 0 ? store_fault_set(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c)) : 0;
}

int store_ask(struct store *s, const char *sql, const struct statement *w, struct store_fault *f)
{
	s->warned = 0;
	if (!PQsendQueryParams(s->c, sql, w->n, w->types, w->values, w->lengths, w->formats, 0))
		return store_fault_set(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	return push(s, f);
}

int store_take(struct store *s, struct store_fault *f)
{
	if (s->writing && push(s, f) < 0)
		return -ECONNRESET;
	if (!PQconsumeInput(s->c))
		return store_fault_set(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
	return PQisBusy(s->c) ? STORE_NOT_YET : STORE_CAME;
}

/* Its row may come although the transaction fails as it ends, and the error behind it: only when
 * nothing else comes the answer holds. */
PGresult *store_result(struct store *s, struct store_fault *f)
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
	int n = store_take(s, f);
	while (n == STORE_NOT_YET && (left = end - clock_now().boot_ms) > 0) {
		struct pollfd p = {.fd = PQsocket(s->c),
		                   .events = (short)(POLLIN | (s->writing ? POLLOUT : 0))};
		if (poll(&p, 1, (int)left) < 0 && errno != EINTR)
			return store_fault_set(f, FORWARD_OTHER, -errno, strerror(errno));
		n = store_take(s, f);
	}
	return n == STORE_NOT_YET ? store_fault_set(f, FORWARD_SLOW, -ETIMEDOUT, "no answer within 10 s") : n;
}

PGresult *store_ask_and_wait(struct store *s, const char *sql, const struct statement *w,
                             struct store_fault *f)
{
	if (store_ask(s, sql, w, f) < 0 || wait_for(s, f) < 0)
		return NULL;
	return store_result(s, f);
}

/* Before the lists are read: what comes in between is read or told, perhaps both. */
static int hear_of_lists(struct store *s, struct store_fault *f)
{
	if (!PQsendQuery(s->c, "LISTEN bt_list") || push(s, f) < 0)
		return store_fault_set(f, FORWARD_UNREACHABLE, -ECONNRESET, PQerrorMessage(s->c));
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
		return store_fault_set(f, FORWARD_OTHER, -ENOMEM, "out of memory");
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
