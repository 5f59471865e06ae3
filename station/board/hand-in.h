/* What is handed in at the page: a ticket in an address, a typed code, what stores ask. Each goes to the daemon, whose word is the answer;
 * what comes without a ticket or a cookie that it lets in is turned away here, and costs the daemon nothing.
 */
#ifndef BANDTALLY_BOARD_HAND_IN_H
#define BANDTALLY_BOARD_HAND_IN_H

#include "board/door.h"
#include "board/feed.h"
#include "board/hub.h"
#include "board/waiting.h"

#define TICKET_PATH "/ticket/" /* and the ticket behind it */

struct hand_in { /* where; all borrowed */
	struct hub *hub;
	struct feed *feed;
	struct waiting *waiting;
	const struct door *door;
	enum hub_place place;
};

/* Each answers `req`, now or when the daemon has. */
void hand_in_ticket(const struct hand_in *at, struct evhttp_request *req, const char *path);
void hand_in_code(const struct hand_in *at, struct evhttp_request *req);
void hand_in_ask(const struct hand_in *at, struct evhttp_request *req); /* of the stores' page */

#endif
