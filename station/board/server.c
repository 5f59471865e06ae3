#include "board/server.h"

#include <arpa/inet.h>
#include <ctype.h>
#include <errno.h>
#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <event2/event.h>
#include <event2/http.h>
#include <event2/http_struct.h>
#include <event2/keyvalq_struct.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>

#include "board/assets.h"

#define HEADERS_MAX 8192
#define BODY_MAX 1024
#define IDLE_PATIENCE_S 5

struct server {
	struct server_parts parts;
	struct evhttp *http;
	int port;
};

static void put_headers(struct evhttp_request *req, const char *type)
{
	static const char *const always[][2] = {
	    {"Content-Security-Policy",
	     "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
	     "connect-src 'self'; base-uri 'none'; form-action 'none'; "
	     "frame-ancestors 'none'"},
	    {"X-Content-Type-Options", "nosniff"},
	    {"X-Frame-Options", "DENY"},
	    {"Referrer-Policy", "no-referrer"},
	    {"Cross-Origin-Opener-Policy", "same-origin"},
	    {"Cross-Origin-Resource-Policy", "same-origin"},
	    {"Permissions-Policy", "camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()"},
	    {"Cache-Control", "no-store"},
	    {"Connection", "close"},
	};
	struct evkeyvalq *out = evhttp_request_get_output_headers(req);
	evhttp_add_header(out, "Content-Type", type);
	for (size_t i = 0; i < sizeof always / sizeof *always; i++)
		evhttp_add_header(out, always[i][0], always[i][1]);
}

static void answer(struct evhttp_request *req, int status, const char *reason, const char *type,
                   const char *text)
{
	struct evbuffer *body = evbuffer_new();
	if (body)
		evbuffer_add(body, text, strlen(text));
	put_headers(req, type);
	evhttp_send_reply(req, status, reason, body);
	if (body)
		evbuffer_free(body);
}

static void refuse(struct evhttp_request *req, int status, const char *reason, const char *sentence)
{
	answer(req, status, reason, "text/plain; charset=utf-8", sentence);
}

static const char *type_of(const char *name)
{
	const char *dot = strrchr(name, '.');
	if (dot && strcmp(dot, ".css") == 0)
		return "text/css; charset=utf-8";
	if (dot && strcmp(dot, ".js") == 0)
		return "text/javascript; charset=utf-8";
	if (dot && strcmp(dot, ".svg") == 0)
		return "image/svg+xml";
	return "text/html; charset=utf-8";
}

static void send_asset(struct evhttp_request *req, const char *name)
{
	for (size_t i = 0; i < assets_count; i++) {
		struct evbuffer *body;
		if (strcmp(assets[i].name, name) != 0)
			continue;
		body = evbuffer_new();
		if (body)
			evbuffer_add_reference(body, assets[i].bytes, assets[i].size, NULL, NULL);
		put_headers(req, type_of(name));
		evhttp_send_reply(req, 200, "OK", body);
		if (body)
			evbuffer_free(body);
		return;
	}
	refuse(req, 404, "Not Found",
	       "There is no such page: the board is at /, the desk's view at /desk.\n");
}

/* A whole number of 1 to HUB_ROOM_MAX in digits, or 0. */
static int room_of(const char *text)
{
	size_t n = strlen(text);
	if (n < 1 || n > 2 || !isdigit((unsigned char)text[0]) ||
	    (n == 2 && !isdigit((unsigned char)text[1])))
		return 0;
	return n == 2 ? (text[0] - '0') * 10 + text[1] - '0' : text[0] - '0';
}

static void send_events(struct server *s, struct evhttp_request *req, const char *query)
{
	struct evkeyvalq asked = {0};
	int room = HUB_ROOM_FIRST;
	if (evhttp_parse_query_str(query ? query : "", &asked) < 0) {
		refuse(req, 400, "Bad Request", "The address cannot be read: ask for /events?room=1.\n");
		return;
	}
	const char *number = evhttp_find_header(&asked, "room");
	if (evhttp_find_header(&asked, "desk"))
		room = HUB_ROOM_EACH;
	else if (number)
		room = room_of(number);
	bool wrong = number && room == 0;
	evhttp_clear_headers(&asked);
	if (wrong) {
		refuse(req, 400, "Bad Request",
		       "The room is no number of 1 to 99: ask for /events?room=1.\n");
		return;
	}
	put_headers(req, "text/event-stream");
	evutil_socket_t fd =
	    bufferevent_getfd(evhttp_connection_get_bufferevent(evhttp_request_get_connection(req)));
	if (hub_follow(s->parts.hub, req, room) < 0) {
		evhttp_clear_headers(evhttp_request_get_output_headers(req));
		refuse(req, 503, "Service Unavailable",
		       "Too many pages follow this board: close one of them.\n");
		return;
	}
	guard_stream(s->parts.guard, fd);
}

static bool code_is_plain(const char *code)
{
	size_t n = strlen(code);
	for (size_t i = 0; i < n; i++)
		if (!isprint((unsigned char)code[i]))
			return false;
	return n >= 1 && n <= FEED_CODE_MAX;
}

static void take_keyed(struct server *s, struct evhttp_request *req)
{
	struct evkeyvalq *in = evhttp_request_get_input_headers(req);
	const char *type = evhttp_find_header(in, "Content-Type");
	if (!s->parts.keyed_entry) {
		refuse(req, 403, "Forbidden", "Typing codes is switched off on this station: scan them.\n");
		return;
	}
	if (!guard_origin(evhttp_find_header(in, "Origin"), s->port)) {
		refuse(req, 403, "Forbidden", "A code is typed only on the board's own page.\n");
		return;
	}
	if (!type || strcmp(type, "application/json") != 0) {
		refuse(req, 415, "Unsupported Media Type", "A typed code comes as application/json.\n");
		return;
	}
	struct evbuffer *body = evhttp_request_get_input_buffer(req);
	size_t size = evbuffer_get_length(body);
	char text[BODY_MAX + 1], id[16], reply[40];
	if (size > BODY_MAX || evbuffer_copyout(body, text, size) != (ev_ssize_t)size) {
		refuse(req, 413, "Payload Too Large", "A code has at most 128 characters.\n");
		return;
	}
	_cleanup_(json_drop) json_t *o = json_read(text, size, NULL);
	int64_t room = json_number(o, "room", 0);
	const char *code = json_text(o, "code");
	if (room < 1 || room > HUB_ROOM_MAX || !hub_knows_room(s->parts.hub, (int)room) ||
	    !code_is_plain(code)) {
		refuse(req, 400, "Bad Request",
		       "A typed code needs a room of this station and 1 to 128 plain characters.\n");
		return;
	}
	if (feed_keyed(s->parts.feed, (int)room, code, id) < 0) {
		refuse(
		    req, 503, "Service Unavailable",
		    "The station does not take it: it was not counted: count by hand on the paper sheet.\n");
		return;
	}
	snprintf(reply, sizeof reply, "{\"id\":\"%s\"}\n", id);
	answer(req, 202, "Accepted", "application/json", reply);
}

static bool may_ask(const struct server *s, struct evhttp_request *req)
{
	struct evkeyvalq *in = evhttp_request_get_input_headers(req);
	const char *origin = evhttp_find_header(in, "Origin");
	int hosts = 0;
	struct evkeyval *h;
	for (h = in->tqh_first; h; h = h->next.tqe_next)
		hosts += strcasecmp(h->key, "Host") == 0;
	return hosts == 1 && guard_host(evhttp_find_header(in, "Host"), s->port) &&
	       (!origin || guard_origin(origin, s->port));
}

static void on_get(struct server *s, struct evhttp_request *req, const char *path, const char *query)
{
	if (strcmp(path, "/") == 0)
		send_asset(req, "index.html");
	else if (strcmp(path, "/desk") == 0)
		send_asset(req, "desk.html");
	else if (strcmp(path, "/events") == 0)
		send_events(s, req, query);
	else
		send_asset(req, path + 1);
}

static void on_request(struct evhttp_request *req, void *context)
{
	struct server *s = context;
	const struct evhttp_uri *uri = evhttp_request_get_evhttp_uri(req);
	const char *path = uri ? evhttp_uri_get_path(uri) : NULL;
	enum evhttp_cmd_type how = evhttp_request_get_command(req);
	if (!path || path[0] != '/' || evhttp_uri_get_host(uri))
		refuse(req, 400, "Bad Request", "The address cannot be read: the board is at /.\n");
	else if (!may_ask(s, req))
		refuse(req, 403, "Forbidden",
		       "This board answers only to its own address: open it as http://127.0.0.1 with its "
		       "port.\n");
	else if (how == EVHTTP_REQ_POST && strcmp(path, "/keyed") == 0)
		take_keyed(s, req);
	else if (how == EVHTTP_REQ_GET || how == EVHTTP_REQ_HEAD)
		on_get(s, req, path, evhttp_uri_get_query(uri));
	else
		refuse(req, 405, "Method Not Allowed",
		       "The board is for looking at: nothing can be sent here.\n");
}

static int port_of(struct evhttp_bound_socket *socket)
{
	struct sockaddr_in at = {0};
	socklen_t size = sizeof at;
	getsockname(evhttp_bound_socket_get_fd(socket), (struct sockaddr *)&at, &size);
	return ntohs(at.sin_port);
}

struct server *server_new(const struct server_parts *parts, int port, struct error *e)
{
	struct server *s = calloc(1, sizeof *s);
	if (!s || !(s->http = evhttp_new(parts->base))) {
		free(s);
		error_set(e, -ENOMEM, "page server: not started: no memory: close other programs");
		return NULL;
	}
	s->parts = *parts;
	evhttp_set_max_headers_size(s->http, HEADERS_MAX);
	evhttp_set_max_body_size(s->http, BODY_MAX);
	evhttp_set_timeout(s->http, IDLE_PATIENCE_S);
	evhttp_set_allowed_methods(s->http, EVHTTP_REQ_GET | EVHTTP_REQ_HEAD | EVHTTP_REQ_POST |
	                                        EVHTTP_REQ_PUT | EVHTTP_REQ_DELETE | EVHTTP_REQ_OPTIONS);
	evhttp_set_gencb(s->http, on_request, s);
	errno = 0;
	struct evhttp_bound_socket *socket =
	    evhttp_bind_socket_with_handle(s->http, "127.0.0.1", (ev_uint16_t)port);
	if (!socket) {
		int why = errno ? errno : EADDRNOTAVAIL;
		error_set(e, -why,
		          "page server: port %d: %s: end the program that uses it, or set another port", port,
		          strerror(why));
		server_free(s);
		return NULL;
	}
	s->port = port_of(socket);
	return s;
}

int server_port(const struct server *s)
{
	return s->port;
}

void server_free(struct server *s)
{
	if (!s)
		return;
	evhttp_free(s->http);
	free(s);
}
