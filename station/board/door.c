#include "board/door.h"

#include <errno.h>
#include <event2/event.h>
#include <event2/http.h>
#include <event2/listener.h>
#include <netinet/in.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/time.h>

#define HEADERS_MAX 8192
#define IDLE_PATIENCE_S 5
#define NO_ROOM_US 100000

static int port_of(struct evhttp_bound_socket *socket)
{
	union {
		struct sockaddr any;
		struct sockaddr_in four;
		struct sockaddr_in6 six;
	} at = {0};
	socklen_t size = sizeof at;
	getsockname(evhttp_bound_socket_get_fd(socket), &at.any, &size);
	return ntohs(at.any.sa_family == AF_INET6 ? at.six.sin6_port : at.four.sin_port);
}

static void listen_again(evutil_socket_t none, short what, void *listener)
{
	(void)none;
	(void)what;
	evconnlistener_enable(listener);
}

/* No descriptor is left. The waiting connection would be told of again and again: look away for a while. */
static void on_no_room(struct evconnlistener *listener, void *http)
{
	struct event_base *base = evconnlistener_get_base(listener);
	(void)http;
	if (event_base_once(base, -1, EV_TIMEOUT, listen_again, listener,
	                    &(struct timeval){.tv_usec = NO_ROOM_US}) == 0)
		evconnlistener_disable(listener);
}

static struct evhttp *http_new(struct event_base *base, struct tls *tls)
{
	struct evhttp *http = evhttp_new(base);
	if (!http)
		return NULL;
	evhttp_set_max_headers_size(http, HEADERS_MAX);
	evhttp_set_max_body_size(http, DOOR_BODY_MAX);
	evhttp_set_timeout(http, IDLE_PATIENCE_S);
	evhttp_set_allowed_methods(http, EVHTTP_REQ_GET | EVHTTP_REQ_HEAD | EVHTTP_REQ_POST | EVHTTP_REQ_PUT |
	                                     EVHTTP_REQ_DELETE | EVHTTP_REQ_OPTIONS);
	if (tls)
		evhttp_set_bevcb(http, tls_connection, tls);
	return http;
}

int door_open(struct door *d, struct event_base *base, int open, const char *address, int port,
              void (*ask)(struct evhttp_request *, void *), void *context, struct error *e)
{
	const char *whose = d->tls ? "board elsewhere" : "page server";
	d->http = http_new(base, d->tls);
	if (!d->http)
		return error_set(e, -ENOMEM, "%s: not started: no memory: close other programs", whose);
	evhttp_set_gencb(d->http, ask, context);
	errno = 0;
	struct evhttp_bound_socket *socket =
	    open >= 0 ? evhttp_accept_socket_with_handle(d->http, open)
	              : evhttp_bind_socket_with_handle(d->http, address, (ev_uint16_t)port);
	if (!socket) {
		int why = errno ? errno : EADDRNOTAVAIL;
		door_shut(d);
		return error_set(e, -why,
		                 "%s: %s port %d: %s: end the program that uses it, or set another%s", whose,
		                 address, port, strerror(why), d->tls ? " address or port" : " port");
	}
	evconnlistener_set_error_cb(evhttp_bound_socket_get_listener(socket), on_no_room);
	if (d->tls)
		tls_door(d->tls, evhttp_bound_socket_get_listener(socket));
	d->names.port = port_of(socket);
	return d->names.port;
}

void door_shut(struct door *d)
{
	if (d->tls)
		tls_door(d->tls, NULL); /* before its connections go, which would open it again */
	if (d->http)
		evhttp_free(d->http);
	d->http = NULL;
}
