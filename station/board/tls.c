#include "board/tls.h"

#include <arpa/inet.h>
#include <errno.h>
#include <event2/bufferevent.h>
#include <event2/bufferevent_ssl.h>
#include <event2/event.h>
#include <event2/listener.h>
#include <netinet/in.h>
#include <openssl/ssl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/time.h>

#include "base/clock.h"
#include "base/log.h"
#include "board/tls-context.h"

#define SAID_EVERY_MS 10000
#define NETWORK_BYTES 8 /* of an IPv6 address: within its network a machine has as many as it likes */

/* One that has come. It is the mark of its SSL, and goes with it. */
struct connection {
	struct connection *next; /* that came before it */
	struct tls *tls;
	SSL *ssl;
	struct bufferevent *stream;
	struct event *timer;
	struct in6_addr from; /* one of IPv4 as IPv6 writes it, so that both kinds of socket tell the same */
	bool placed;          /* `from` is known: the library gives a connection its socket late */
	bool dropped;
};

struct tls {
	SSL_CTX *context;
	int mark; /* index of the mark that each connection bears */
	/* The latest first. The library lets go of them late, so the last of them may put this away. */
	struct connection *connections;
	int open;
	int64_t said_ms; /* when the log was told last that somebody is turned away; 0 never */
	bool done;
	struct evconnlistener *door;
};

static void put_away(struct tls *t)
{
	SSL_CTX_free(t->context);
	free(t);
}

/* --- connections --------------------------------------------------------------------------------- */

static bool unfinished(const struct connection *c)
{
	return c->placed && !c->dropped && !SSL_is_init_finished(c->ssl);
}

static bool same_machine(const struct connection *a, const struct connection *b)
{
	size_t n = IN6_IS_ADDR_V4MAPPED(&b->from) ? sizeof b->from : NETWORK_BYTES;
	return memcmp(&a->from, &b->from, n) == 0;
}

/* shutdown, not close: the library still holds it, and hears of its end this way. */
static void drop(struct connection *c)
{
	c->dropped = true;
	shutdown(bufferevent_getfd(c->stream), SHUT_RDWR);
}

/* `of` NULL: of any address. */
static void drop_oldest(struct tls *t, const struct connection *of, int most)
{
	struct connection *oldest = NULL;
	int n = 0;
	for (struct connection *c = t->connections; c; c = c->next)
		if (unfinished(c) && (!of || same_machine(c, of))) {
			oldest = c;
			n++;
		}
	if (n > most)
		drop(oldest);
}

static void read_from(struct connection *c)
{
	union {
		struct sockaddr any;
		struct sockaddr_in four;
		struct sockaddr_in6 six;
	} at = {0};
	socklen_t size = sizeof at;
	if (getpeername(bufferevent_getfd(c->stream), &at.any, &size) < 0)
		return; /* it is gone already */
	if (at.any.sa_family == AF_INET6) {
		c->from = at.six.sin6_addr;
	} else {
		c->from.s6_addr32[2] = htonl(0xffff);
		c->from.s6_addr32[3] = at.four.sin_addr.s_addr;
	}
}

static void address_of(const struct connection *c, char out[INET6_ADDRSTRLEN])
{
	bool four = IN6_IS_ADDR_V4MAPPED(&c->from);
	out[0] = 0;
	inet_ntop(four ? AF_INET : AF_INET6, four ? (const void *)&c->from.s6_addr32[3] : &c->from, out,
	          INET6_ADDRSTRLEN);
}

/* In the log, now and then: whoever looks after a wall that stays dark finds out why. */
static void turned_away(const struct connection *c, long why)
{
	char address[INET6_ADDRSTRLEN];
	int64_t now = clock_now().boot_ms;
	if (c->tls->said_ms && now - c->tls->said_ms < SAID_EVERY_MS)
		return;
	c->tls->said_ms = now;
	address_of(c, address);
	log_warn(LOG_BOARD,
	         PEM_WHERE "a browser at %s is turned away: %s: if it is one of yours, have another "
	                   "certificate made for it",
	         address, X509_verify_cert_error_string(why));
}

/* At once, which is when it has its socket, and when its time for the handshake is over. */
static void on_time(evutil_socket_t none, short what, void *context)
{
	struct connection *c = context;
	(void)none;
	(void)what;
	if (unfinished(c))
		drop(c);
	if (c->placed || !c->stream)
		return;
	c->placed = true;
	read_from(c);
	drop_oldest(c->tls, c, TLS_UNFINISHED_OF_ONE);
	drop_oldest(c->tls, NULL, TLS_UNFINISHED_MAX);
	event_add(c->timer, &(struct timeval){.tv_sec = TLS_HANDSHAKE_MS / 1000});
}

static void connection_free(struct connection *c)
{
	struct connection **at = &c->tls->connections;
	while (*at && *at != c)
		at = &(*at)->next;
	if (*at)
		*at = c->next;
	if (c->timer)
		event_free(c->timer);
	free(c);
}

/* The connection is gone, and with it its mark. */
static void on_gone(void *parent, void *connection, CRYPTO_EX_DATA *data, int index, long number,
                    void *pointer)
{
	struct connection *c = connection;
	struct tls *t = c ? c->tls : NULL;
	(void)parent;
	(void)data;
	(void)index;
	(void)number;
	(void)pointer;
	if (!t)
		return;
	long why = SSL_get_verify_result(c->ssl);
	if (!SSL_is_init_finished(c->ssl) && why != X509_V_OK)
		turned_away(c, why);
	connection_free(c);
	t->open--;
	if (t->done && !t->open)
		put_away(t);
	else if (t->open < TLS_CONNECTIONS_MAX && t->door)
		evconnlistener_enable(t->door);
}

struct tls *tls_new(const struct pem_files *files, struct error *e)
{
	struct tls *t = calloc(1, sizeof *t);
	if (!t || (t->mark = SSL_get_ex_new_index(0, NULL, NULL, NULL, on_gone)) < 0) {
		error_set(e, -ENOMEM, PEM_WHERE "not started: no memory: close other programs");
		tls_free(t);
		return NULL;
	}
	t->context = tls_context_new(files, e);
	if (!t->context) {
		tls_free(t);
		return NULL;
	}
	return t;
}

static void judge_again(struct connection *c)
{
	char address[INET6_ADDRSTRLEN];
	int why = X509_V_OK;
	if (SSL_is_init_finished(c->ssl)) {
		why = tls_context_judge(c->tls->context, c->ssl);
		if (why == X509_V_OK)
			return;
		address_of(c, address);
		log_warn(LOG_BOARD, PEM_WHERE "a page at %s is closed: %s", address,
		         X509_verify_cert_error_string(why));
	}
	drop(c);
}

int tls_renew(struct tls *t, const struct pem_files *files, struct error *e)
{
	SSL_CTX *fresh = tls_context_new(files, e);
	if (!fresh)
		return e->code;
	SSL_CTX_free(t->context);
	t->context = fresh;
	for (struct connection *c = t->connections; c; c = c->next)
		if (c->stream && !c->dropped)
			judge_again(c);
	log_line(PEM_WHERE "its certificates were read again");
	return 0;
}

void tls_free(struct tls *t)
{
	if (!t)
		return;
	t->done = true;
	t->door = NULL;
	if (!t->open)
		put_away(t);
}

void tls_door(struct tls *t, struct evconnlistener *door)
{
	t->door = door;
}

static SSL *marked_new(struct tls *t, struct event_base *base)
{
	struct connection *c = calloc(1, sizeof *c);
	SSL *ssl = SSL_new(t->context);
	if (c)
		*c = (struct connection){.next = t->connections,
		                         .tls = t,
		                         .ssl = ssl,
		                         .timer = event_new(base, -1, 0, on_time, c)};
	if (ssl && c && c->timer && event_add(c->timer, &(struct timeval){0}) == 0 &&
	    SSL_set_ex_data(ssl, t->mark, c) == 1) {
		t->connections = c;
		return ssl;
	}
	if (c)
		connection_free(c);
	SSL_free(ssl);
	return NULL;
}

struct bufferevent *tls_connection(struct event_base *base, void *tls)
{
	struct tls *t = tls;
	SSL *ssl = marked_new(t, base);
	if (!ssl)
		return NULL;
	struct connection *c = t->connections;
	if (++t->open >= TLS_CONNECTIONS_MAX && t->door)
		evconnlistener_disable(t->door);
	struct bufferevent *b =
	    bufferevent_openssl_socket_new(base, -1, ssl, BUFFEREVENT_SSL_ACCEPTING, BEV_OPT_CLOSE_ON_FREE);
	if (b) /* else its mark may be gone */
		c->stream = b;
	return b;
}

bool tls_knows(struct bufferevent *b)
{
	SSL *ssl = bufferevent_openssl_get_ssl(b);
	return ssl && SSL_is_init_finished(ssl) && SSL_get0_peer_certificate(ssl) &&
	       SSL_get_verify_result(ssl) == X509_V_OK;
}
