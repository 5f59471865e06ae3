#include "board/server.h"

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

#include "board/assets.h"
#include "board/catalogues.h"
#include "board/hand-in.h"
#include "board/http-answer.h"

struct entrance {
	struct server *server;
	enum hub_place place;
	struct door door;
};

struct server {
	struct server_parts parts;
	struct entrance in[HUB_PLACES];
	struct tls *tls;
};

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
		answer_headers(req, type_of(name));
		evhttp_send_reply(req, 200, "OK", body);
		if (body)
			evbuffer_free(body);
		return;
	}
	answer_refusal(req, 404, "Not Found",
	               "There is no such page: the board is at /, the desk's view at /desk, stores at "
	               "/stores, reports at /audit.\n");
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

static void refuse_page(struct evhttp_request *req, int why)
{
	if (why == -EACCES)
		answer_refusal(
		    req, 403, "Forbidden",
		    "This board shows nothing without a ticket: whoever looks after the station gets one "
		    "with 'bandtally board'.\n");
	else
		answer_refusal(req, 503, "Service Unavailable",
		               "Too many pages follow this board: close one of them.\n");
}

/* What is shown with a request. */
static void shown_with(const struct entrance *at, struct evhttp_request *req, struct shown *shown)
{
	shown_read(shown, evhttp_find_header(evhttp_request_get_input_headers(req), "Cookie"),
	           at->door.names.port);
}

static void send_events(struct entrance *at, struct evhttp_request *req, const char *query)
{
	const struct server_parts *parts = &at->server->parts;
	struct evkeyvalq asked = {0};
	int room = HUB_ROOM_FIRST;
	if (evhttp_parse_query_str(query ? query : "", &asked) < 0) {
		answer_refusal(req, 400, "Bad Request",
		               "The address cannot be read: ask for /events?room=1.\n");
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
		answer_refusal(req, 400, "Bad Request",
		               "The room is no number of 1 to 99: ask for /events?room=1.\n");
		return;
	}
	answer_headers(req, "text/event-stream");
	evutil_socket_t fd =
	    bufferevent_getfd(evhttp_connection_get_bufferevent(evhttp_request_get_connection(req)));
	struct shown shown;
	shown_with(at, req, &shown);
	int r = hub_follow(parts->hub, req, room, at->place, &shown);
	if (r < 0) {
		evhttp_clear_headers(evhttp_request_get_output_headers(req));
		refuse_page(req, r);
		return;
	}
	guard_stream(parts->guard, fd);
	for (int i = 0; i < shown.n; i++)
		if (shown_pass(&shown, hub_lets_in(parts->hub), shown.cookies[i].room) >= PASS_SEES)
			feed_open(parts->feed, &shown.cookies[i].hash);
}

/* The page is of somebody's making who may read the record and nothing else: it runs no script, and its pictures are in it. */
static void send_report(const struct entrance *at, struct evhttp_request *req, const char *path)
{
	static const char policy[] = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri "
	                             "'none'; form-action 'none'; frame-ancestors 'none'";
	const struct server_parts *parts = &at->server->parts;
	const struct buf *text = reports_text(parts->reports, path);
	struct shown shown;
	shown_with(at, req, &shown);
	if (!shown_reports(&shown, hub_lets_in(parts->hub)))
		answer_refusal(
		    req, 403, "Forbidden",
		    "The auditor's pages are shown with a ticket: a member of bandtally-audit gets "
		    "one with 'bandtally board audit'.\n");
	else if (!text)
		answer_refusal(req, 404, "Not Found",
		               "There is no such report here: reports are handed over with 'bandtally board "
		               "audit', and stay until the board starts anew. Those that are there are at "
		               "/audit.\n");
	else
		answer_page(req, policy, text);
}

static int count(const struct evkeyvalq *headers, const char *name)
{
	int n = 0;
	for (const struct evkeyval *h = headers->tqh_first; h; h = h->next.tqe_next)
		n += strcasecmp(h->key, name) == 0;
	return n;
}

static struct hand_in hand_in_at(const struct entrance *at)
{
	const struct server_parts *p = &at->server->parts;
	return (struct hand_in){p->hub, p->feed, p->waiting, &at->door, at->place};
}

static bool may_ask(const struct entrance *at, struct evhttp_request *req)
{
	const struct evkeyvalq *in = evhttp_request_get_input_headers(req);
	int origins = count(in, "Origin");
	return count(in, "Host") == 1 && guard_host(&at->door.names, evhttp_find_header(in, "Host")) &&
	       origins <= 1 && (!origins || guard_origin(&at->door.names, evhttp_find_header(in, "Origin")));
}

/* The second wall: this connection was checked, whatever became of the first (tls_connection()). */
static bool is_known(const struct entrance *at, struct evhttp_request *req)
{
	return at->place == HUB_HERE ||
	       tls_knows(evhttp_connection_get_bufferevent(evhttp_request_get_connection(req)));
}

static void on_get(struct entrance *at, struct evhttp_request *req, const char *path, const char *query)
{
	const struct told_text *told = catalogues_text(at->server->parts.catalogues, path);
	if (told)
		answer(req, 200, "OK", told->type, told->text.data);
	else if (reports_path(path))
		send_report(at, req, path);
	else if (strcmp(path, "/events") == 0)
		send_events(at, req, query);
	else
		send_asset(req, path + 1);
}

static void on_request(struct evhttp_request *req, void *context)
{
	struct entrance *at = context;
	const struct evhttp_uri *uri = evhttp_request_get_evhttp_uri(req);
	const char *path = uri ? evhttp_uri_get_path(uri) : NULL;
	enum evhttp_cmd_type how = evhttp_request_get_command(req);
	const struct hand_in where = hand_in_at(at);
	if (!is_known(at, req))
		answer_refusal(req, 403, "Forbidden",
		               "This board answers only to browsers with a certificate.\n");
	else if (!path || path[0] != '/' || evhttp_uri_get_host(uri))
		answer_refusal(req, 400, "Bad Request", "The address cannot be read: the board is at /.\n");
	else if (!may_ask(at, req))
		answer_refusal(req, 403, "Forbidden",
		               at->place == HUB_HERE
		                   ? "This board answers only to its own address: open it as "
		                     "http://127.0.0.1 with its port.\n"
		                   : "This board answers only to the names that station.ini gives it: "
		                     "open it by one of them.\n");
	else if (how == EVHTTP_REQ_POST && strcmp(path, "/keyed") == 0)
		hand_in_code(&where, req);
	else if (how == EVHTTP_REQ_POST && strcmp(path, "/stores/ask") == 0)
		hand_in_ask(&where, req);
	else if (how == EVHTTP_REQ_GET && strncmp(path, TICKET_PATH, strlen(TICKET_PATH)) == 0)
		hand_in_ticket(&where, req, path);
	else if (how == EVHTTP_REQ_GET || (how == EVHTTP_REQ_HEAD && strcmp(path, "/events") != 0))
		on_get(at, req, path, evhttp_uri_get_query(uri));
	else
		answer_refusal(req, 405, "Method Not Allowed",
		               "The board is for looking at: nothing can be sent here.\n");
}

struct server *server_new(const struct server_parts *parts, int port, struct error *e)
{
	static const struct guard_names here = {
	    .scheme = "http", .usual_port = 80, .count = 2, .name = {"127.0.0.1", "localhost"}};
	struct server *s = calloc(1, sizeof *s);
	if (!s) {
		error_set(e, -ENOMEM, "page server: not started: no memory: close other programs");
		return NULL;
	}
	s->parts = *parts;
	s->in[HUB_HERE] = (struct entrance){.server = s, .place = HUB_HERE, .door.names = here};
	s->in[HUB_ELSEWHERE] = (struct entrance){.server = s, .place = HUB_ELSEWHERE};
	if (door_open(&s->in[HUB_HERE].door, parts->base, parts->socket, "127.0.0.1", port, on_request,
	              &s->in[HUB_HERE], e) < 0) {
		server_free(s);
		return NULL;
	}
	return s;
}

int server_open_elsewhere(struct server *s, const struct elsewhere *w, struct error *e)
{
	struct entrance *at = &s->in[HUB_ELSEWHERE];
	s->tls = tls_new(&w->files, e);
	if (!s->tls)
		return e->code;
	at->door.names = w->names;
	at->door.tls = s->tls;
	return door_open(&at->door, s->parts.base, -1, w->address, w->port, on_request, at, e);
}

int server_renew_elsewhere(struct server *s, const struct pem_files *files, struct error *e)
{
	if (s->in[HUB_ELSEWHERE].door.http)
		return tls_renew(s->tls, files, e);
	struct tls *could = tls_new(files, e);
	tls_free(could);
	return could ? 1 : e->code;
}

int server_port(const struct server *s)
{
	return s->in[HUB_HERE].door.names.port;
}

void server_free(struct server *s)
{
	if (!s)
		return;
	for (int i = 0; i < HUB_PLACES; i++)
		door_shut(&s->in[i].door);
	tls_free(s->tls);
	free(s);
}
