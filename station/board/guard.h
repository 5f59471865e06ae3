/* Who may ask, and for how long.
 *
 * The board listens on the loopback address, where any page in any browser of this machine could still reach
 * it by a name that points there. So a request must name this board as its host, and one that changes
 * anything must come from this board's own page. The board elsewhere is held to the names that station.ini
 * gives it in the same way.
 */
#ifndef BANDTALLY_BOARD_GUARD_H
#define BANDTALLY_BOARD_GUARD_H

#include <stdbool.h>

struct event_base;
struct guard;

#define GUARD_PATIENCE_MS 10000 /* from a connection's first byte to the end of its request and answer */
#define GUARD_NAMES_MAX 8

struct guard_names {        /* how a board is called by browsers */
	const char *scheme; /* "http" or "https" */
	int usual_port;     /* the port that a browser leaves out: 80 or 443 */
	int port;
	int count;
	const char *name[GUARD_NAMES_MAX]; /* borrowed; the case of letters does not matter */
};

/* True for "NAME:PORT" of one of the names, the port left out where it is the usual one. NULL is false. */
bool guard_host(const struct guard_names *names, const char *host);
/* The same with "SCHEME://" before it, as the Origin of a page of ours. NULL is false. */
bool guard_origin(const struct guard_names *names, const char *origin);

/* The HTTP library's own timer begins anew with each byte that comes, so a client that sends a byte now and
 * then would stay for ever. This one looks once a second at each connection of the process, and closes those
 * that are open for GUARD_PATIENCE_MS without being an event stream. NULL: no memory. */
struct guard *guard_new(struct event_base *base, int most_fds);
void guard_free(struct guard *guard);
void guard_stream(struct guard *guard, int fd); /* this connection is an event stream: it may stay */

#endif
