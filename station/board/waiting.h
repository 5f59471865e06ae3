/* Requests that only the daemon can answer, for the moment until it does.
 *
 * Each waits under the name that its line to the daemon bears. That a browser has left shows when it is answered.
 */
#ifndef BANDTALLY_BOARD_WAITING_H
#define BANDTALLY_BOARD_WAITING_H

#include <stdbool.h>

#include "base/json.h"

struct evhttp_request;
struct waiting;

#define WAITING_MAX 32
#define WAITING_ID_BYTES 16

struct waiting *waiting_new(void); /* NULL: no memory */
void waiting_free(
    struct waiting *waiting); /* NULL is fine; its requests must be gone (evhttp_free() first) */

/* `req` is this module's from now on. `port`: the board's, which stands in the cookie's name; `tls`: it came that way.
 * 0, or -EBUSY where as many wait as may: then the request is still the caller's. */
int waiting_add(struct waiting *waiting, struct evhttp_request *req, const char *id, int port, bool tls);
/* Gives it back, unanswered: its line did not reach the daemon. NULL where it has left. */
struct evhttp_request *waiting_take(struct waiting *waiting, const char *id);

/* The daemon's words (feed.h). 0, or -EINVAL where they are none; that nobody waits for them any more is no fault. */
int waiting_reply(struct waiting *waiting, const json_t *reply);   /* to a typed code */
int waiting_answer(struct waiting *waiting, const json_t *answer); /* to what a page asked */
int waiting_entry(struct waiting *waiting, const json_t *entry);   /* to a ticket */

#define SAYS_CLOSED                                                                                          \
	"Typing is closed: ask for a new ticket. Whoever looks after the station gets one with 'bandtally "  \
	"board' "                                                                                            \
	"and opens its address here within a minute.\n"
#define SAYS_USED_UP                                                                                         \
	"This address does not work any more: it works once, and within a minute. Ask for a new one with "   \
	"'bandtally board'.\n"

#endif
