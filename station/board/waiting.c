#include "board/waiting.h"

#include <errno.h>
#include <event2/http.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/secret.h"
#include "board/cookies.h"
#include "board/http-answer.h"
#include "board/reports.h"

struct one {
	struct waiting *all;
	struct evhttp_request *req; /* NULL: this place is free */
	char id[WAITING_ID_BYTES];
	int port;
	bool tls;
};

struct waiting {
	struct one list[WAITING_MAX];
};

struct waiting *waiting_new(void)
{
	struct waiting *w = calloc(1, sizeof *w);
	for (int i = 0; w && i < WAITING_MAX; i++)
		w->list[i].all = w;
	return w;
}

void waiting_free(struct waiting *w)
{
	free(w);
}

/* The connection ends before the answer. Where its peer ended it, the request has lost it and is ours to end; else the
 * request goes with it. */
static void on_close(struct evhttp_connection *c, void *context)
{
	struct one *o = context;
	struct evhttp_request *req = o->req;
	(void)c;
	o->req = NULL;
	if (req && !evhttp_request_get_connection(req))
		evhttp_request_free(req);
}

int waiting_add(struct waiting *w, struct evhttp_request *req, const char *id, int port, bool tls)
{
	for (int i = 0; i < WAITING_MAX; i++) {
		struct one *o = &w->list[i];
		if (o->req)
			continue;
		o->req = req;
		o->port = port;
		o->tls = tls;
		snprintf(o->id, sizeof o->id, "%s", id);
		evhttp_connection_set_closecb(evhttp_request_get_connection(req), on_close, o);
		return 0;
	}
	return -EBUSY;
}

static struct one *find(struct waiting *w, const char *id)
{
	for (int i = 0; i < WAITING_MAX; i++)
		if (w->list[i].req && strcmp(w->list[i].id, id) == 0)
			return &w->list[i];
	return NULL;
}

static struct evhttp_request *let_go(struct one *o)
{
	struct evhttp_request *req = o->req;
	evhttp_connection_set_closecb(evhttp_request_get_connection(req), NULL, NULL);
	o->req = NULL;
	return req;
}

struct evhttp_request *waiting_take(struct waiting *w, const char *id)
{
	struct one *o = find(w, id);
	return o ? let_go(o) : NULL;
}

static void answer_json(struct evhttp_request *req, const char *text)
{
	answer(req, 200, "OK", "application/json", text);
}

static void refuse_code(struct evhttp_request *req, const char *why)
{
	if (strcmp(why, "often") == 0)
		answer_refusal(
		    req, 429, "Too Many Requests",
		    "More than five codes came within a second, and this one was not entered: wait a "
		    "moment and type it again.\n");
	else
		answer_refusal(req, 403, "Forbidden", SAYS_CLOSED);
}

int waiting_reply(struct waiting *w, const json_t *reply)
{
	_cleanup_(buf_free) struct buf text = {0};
	const char *id = json_text(reply, "id"), *why = json_text(reply, "refused");
	int n = *id && (*why || *json_text(reply, "verdict")) ? json_write_canonical(reply, &text) : -EINVAL;
	struct one *o = n == 0 ? find(w, id) : NULL;
	if (!o)
		return n;
	if (*why)
		refuse_code(let_go(o), why);
	else
		answer_json(let_go(o), text.data);
	return 0;
}

int waiting_answer(struct waiting *w, const json_t *answer)
{
	_cleanup_(buf_free) struct buf text = {0};
	const char *id = json_text(answer, "id"), *why = json_text(answer, "refused");
	const json_t *said = json_object_get(answer, "answer");
	int n = *id && (*why || json_is_object(said)) ? 0 : -EINVAL;
	if (n == 0 && !*why)
		n = json_write_canonical(said, &text);
	struct one *o = n == 0 ? find(w, id) : NULL;
	if (!o)
		return n;
	if (*why)
		refuse_code(let_go(o), why);
	else
		answer_json(let_go(o), text.data);
	return 0;
}

/* The ticket leaves the address at once. The browser keeps the cookie until it is closed; how long it works is the daemon's
 * to say. */
static void enter(const struct one *o, struct evhttp_request *req, int room, const char *page,
                  const char *cookie)
{
	char set[160], to[24] = "/desk";
	struct evkeyvalq *out = evhttp_request_get_output_headers(req);
	if (strcmp(page, "audit") == 0)
		snprintf(to, sizeof to, "%s", REPORTS_PATH);
	else if (room != COOKIE_DESK)
		snprintf(to, sizeof to, "/%s?room=%d", strcmp(page, "stores") == 0 ? page : "", room);
	snprintf(set, sizeof set, "bandtally-%d-%d=%s; Path=/; HttpOnly; SameSite=Strict%s", o->port, room,
	         cookie, o->tls ? "; Secure" : "");
	evhttp_add_header(out, "Location", to);
	evhttp_add_header(out, "Set-Cookie", set);
	answer(req, 303, "See Other", "text/plain; charset=utf-8", "");
}

int waiting_entry(struct waiting *w, const json_t *entry)
{
	const char *id = json_text(entry, "id"), *cookie = json_text(entry, "cookie");
	int64_t room = json_number(entry, "room", -1);
	if (!*id || (*cookie && (!secret_has_form(cookie) || room < COOKIE_DESK || room > 99)))
		return -EINVAL;
	struct one *o = find(w, id);
	if (!o)
		return 0;
	struct evhttp_request *req = let_go(o);
	if (*cookie)
		enter(o, req, (int)room, json_text(entry, "page"), cookie);
	else
		answer_refusal(req, 403, "Forbidden", SAYS_USED_UP);
	return 0;
}
