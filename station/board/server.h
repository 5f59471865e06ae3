/* The pages over HTTP: four kinds of answer and nothing else.
 *
 *   GET /  /desk  and the files they name   embedded in the program (assets.h)
 *   GET /events?room=N | ?desk              server-sent events: hello, status, view, alive, reply
 *   POST /keyed {"room":1,"code":"…"}       a typed code; answers 202 {"id":"k1"}, the reply comes as an
 * event anything else                           a refusal in one plain sentence
 *
 * Every answer bears a policy that allows nothing from elsewhere and nothing inline, and sets no cookie.
 */
#ifndef BANDTALLY_BOARD_SERVER_H
#define BANDTALLY_BOARD_SERVER_H

#include "base/error.h"
#include "board/feed.h"
#include "board/guard.h"
#include "board/hub.h"

struct server_parts { /* all borrowed */
	struct event_base *base;
	struct hub *hub;
	struct feed *feed;
	struct guard *guard;
	bool keyed_entry;
};

struct server;

/* Listens on 127.0.0.1:`port`, any free port for 0. NULL with `e` filled. */
struct server *server_new(const struct server_parts *parts, int port, struct error *e);
int server_port(const struct server *server);
void server_free(struct server *server); /* NULL is fine */

#endif
