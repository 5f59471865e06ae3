#include "board/hand-in.h"

#include <ctype.h>
#include <event2/buffer.h>
#include <event2/http.h>
#include <stdio.h>
#include <string.h>

#include "board/http-answer.h"

#define NOT_TAKEN "The station does not take it: it was not counted: count by hand on the paper sheet.\n"

static const char *header(struct evhttp_request *req, const char *name)
{
	return evhttp_find_header(evhttp_request_get_input_headers(req), name);
}

static bool code_is_plain(const char *code)
{
	size_t n = strlen(code);
	for (size_t i = 0; i < n; i++)
		if (!isprint((unsigned char)code[i]))
			return false;
	return n >= 1 && n <= FEED_CODE_MAX;
}

/* It waits before the daemon is told: the answer must find it. */
static bool waits(const struct hand_in *at, struct evhttp_request *req, char id[WAITING_ID_BYTES])
{
	feed_id(at->feed, id);
	if (waiting_add(at->waiting, req, id, at->door->names.port, at->door->tls != NULL) == 0)
		return true;
	answer_refusal(req, 503, "Service Unavailable", NOT_TAKEN);
	return false;
}

static void not_told(const struct hand_in *at, const char *id)
{
	struct evhttp_request *req = waiting_take(at->waiting, id);
	if (req)
		answer_refusal(req, 503, "Service Unavailable", NOT_TAKEN);
}

void hand_in_ticket(const struct hand_in *at, struct evhttp_request *req, const char *path)
{
	const char *ticket = path + strlen(TICKET_PATH);
	char id[WAITING_ID_BYTES];
	if (!secret_has_form(ticket) || !let_in_ticket(hub_lets_in(at->hub), ticket)) {
		answer_refusal(req, 403, "Forbidden", SAYS_USED_UP);
		return;
	}
	if (waits(at, req, id) && feed_ticket(at->feed, id, ticket) < 0)
		not_told(at, id);
}

/* The body as an object, a new reference; NULL where a refusal was answered. */
static json_t *read_body(struct evhttp_request *req, const char *too_long)
{
	struct evbuffer *body = evhttp_request_get_input_buffer(req);
	size_t size = evbuffer_get_length(body);
	char text[DOOR_BODY_MAX + 1];
	if (size > DOOR_BODY_MAX || evbuffer_copyout(body, text, size) != (ev_ssize_t)size) {
		answer_refusal(req, 413, "Payload Too Large", too_long);
		return NULL;
	}
	json_t *o = json_read(text, size, NULL);
	return o ? o : json_object(); /* in which nothing is found */
}

static int room_of(const struct hand_in *at, const json_t *o)
{
	int64_t room = json_number(o, "room", 0);
	return room >= 1 && room <= HUB_ROOM_MAX && hub_knows_room(at->hub, (int)room) ? (int)room : 0;
}

/* What came as a code and its room, or a refusal is answered and the room is 0. */
static int read_code(const struct hand_in *at, struct evhttp_request *req, char code[FEED_CODE_MAX + 1])
{
	_cleanup_(json_drop) json_t *o = read_body(req, "A code has at most 128 characters.\n");
	int room = room_of(at, o);
	if (!o)
		return 0;
	if (!room || !code_is_plain(json_text(o, "code"))) {
		answer_refusal(req, 400, "Bad Request",
		               "A typed code needs a room of this station and 1 to 128 plain characters.\n");
		return 0;
	}
	snprintf(code, FEED_CODE_MAX + 1, "%s", json_text(o, "code"));
	return room;
}

/* True where it comes from a page of this board, where typing is not switched off. */
static bool may_come(const struct hand_in *at, struct evhttp_request *req)
{
	const char *type = header(req, "Content-Type");
	if (!hub_typing(at->hub, at->place))
		answer_refusal(req, 403, "Forbidden",
		               "Typing codes is switched off at this board: scan them.\n");
	else if (!guard_origin(&at->door->names, header(req, "Origin")))
		answer_refusal(req, 403, "Forbidden", "A code is typed only on the board's own page.\n");
	else if (!type || strcmp(type, "application/json") != 0)
		answer_refusal(req, 415, "Unsupported Media Type",
		               "A typed code comes as application/json.\n");
	else
		return true;
	return false;
}

/* The cookie with which it may be typed in that room; a refusal is answered where there is none. */
static bool has_cookie(const struct hand_in *at, struct evhttp_request *req, int room,
                       char cookie[SECRET_LETTERS + 1])
{
	if (shown_typing(hub_lets_in(at->hub), header(req, "Cookie"), at->door->names.port, room, cookie))
		return true;
	answer_refusal(req, 403, "Forbidden", SAYS_CLOSED);
	return false;
}

void hand_in_code(const struct hand_in *at, struct evhttp_request *req)
{
	char id[WAITING_ID_BYTES], code[FEED_CODE_MAX + 1], cookie[SECRET_LETTERS + 1];
	int room = may_come(at, req) ? read_code(at, req, code) : 0;
	if (!room || !has_cookie(at, req, room, cookie))
		return;
	if (waits(at, req, id) && feed_keyed(at->feed, id, room, code, cookie) < 0)
		not_told(at, id);
}

void hand_in_ask(const struct hand_in *at, struct evhttp_request *req)
{
	char id[WAITING_ID_BYTES], cookie[SECRET_LETTERS + 1];
	if (!may_come(at, req))
		return;
	_cleanup_(json_drop) json_t *o = read_body(req, "That is too long to be asked at once.\n");
	const json_t *ask = json_object_get(o, "ask");
	int room = room_of(at, o);
	if (!o)
		return;
	if (!room || !json_is_object(ask))
		answer_refusal(req, 400, "Bad Request", "What is asked needs a room of this station.\n");
	else if (has_cookie(at, req, room, cookie) && waits(at, req, id) &&
	         feed_ask(at->feed, id, room, ask, cookie) < 0)
		not_told(at, id);
}
