/* One address at which pages are asked for: an HTTP server of the library with this house's limits. */
#ifndef BANDTALLY_BOARD_DOOR_H
#define BANDTALLY_BOARD_DOOR_H

#include "base/error.h"
#include "board/guard.h"
#include "board/tls.h"

struct evhttp;
struct evhttp_request;

#define DOOR_BODY_MAX 3072 /* bytes of a request's body */

struct door {
	struct guard_names names; /* `port` is filled in when it opens */
	struct tls *tls;          /* borrowed; NULL: plain HTTP */
	struct evhttp *http;      /* NULL while it is shut */
};

/* Listens at `address` (of this machine, in numbers), any free port for 0; or on `open`, a socket that listens already,
 * which is its own then, -1 none. Each request goes to `ask`. The port, or a negative errno with `e` filled; then it stays
 * shut. */
int door_open(struct door *door, struct event_base *base, int open, const char *address, int port,
              void (*ask)(struct evhttp_request *, void *), void *context, struct error *e);
void door_shut(struct door *door); /* ends its connections too; may be shut already */

#endif
