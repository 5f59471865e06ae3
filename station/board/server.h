/* The pages over HTTP: four kinds of answer and nothing else, at one door or two.
 *
 * One door is on the loopback address. The other, the board elsewhere, is opened only where station.ini says
 * so, and admits only browsers that show a certificate (tls.h). What is asked, checked and limited is the
 * same at both; a code is typed elsewhere only where that is switched on by itself.
 *
 *   GET /  /desk  /stores  and the files they name   embedded in the program (assets.h)
 *   GET /audit  /audit/NAME                 the auditor's pages (reports.h), with a cookie that opens them
 *   GET /words/CODE.json                    a language's sentences (words/page-catalogue.h); English is embedded
 *   GET /events?room=N | ?desk=1            server-sent events: hello, status, view, alive
 *   GET /ticket/TICKET                      once and within a minute: 303 to the room's page, with a cookie
 *   POST /keyed {"room":1,"code":"…"}       a typed code, with that cookie; answers 200 {"verdict":…,"said":…}
 *   POST /stores/ask {"room":9,"ask":{…}}  what the stores' page asks, with that cookie; answers 200 with the daemon's answer
 *   anything else                           a refusal in one plain sentence
 *
 * Every answer bears a policy that allows nothing from elsewhere and nothing inline; none but that to a ticket sets a
 * cookie.
 */
#ifndef BANDTALLY_BOARD_SERVER_H
#define BANDTALLY_BOARD_SERVER_H

#include "base/error.h"
#include "board/door.h"
#include "board/feed.h"
#include "board/hub.h"

struct server_parts { /* all borrowed */
	struct event_base *base;
	struct hub *hub;
	struct feed *feed;
	struct waiting *waiting;
	struct guard *guard;
	const struct catalogues *catalogues;
	const struct reports *reports;
	int socket; /* that listens on the loopback address, and is the server's then; -1: it opens its own */
};

struct elsewhere {           /* all borrowed */
	const char *address; /* of this machine, in numbers; NULL: no board elsewhere */
	int port;
	struct guard_names names; /* without the port */
	struct pem_files files;   /* with their texts */
};

struct server;

/* Listens on 127.0.0.1:`port`, any free port for 0, or on the socket that it is given. NULL with `e` filled. */
struct server *server_new(const struct server_parts *parts, int port, struct error *e);
int server_port(const struct server *server);
/* Opens the second door. Its port, or a negative errno with `e` filled; then the first one stays as it is. */
int server_open_elsewhere(struct server *server, const struct elsewhere *elsewhere, struct error *e);
/* Its files were read again. 0, 1 where that door is not open and could be with these: this process, which may open
 * nothing any more, must be started anew; or a negative errno with `e` filled, and the former stay. */
int server_renew_elsewhere(struct server *server, const struct pem_files *files, struct error *e);
void server_free(struct server *server); /* NULL is fine */

#endif
