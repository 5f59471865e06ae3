#include "board/guard.h"

#include <errno.h>
#include <event2/event.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/socket.h>
#include <sys/time.h>

#include "base/clock.h"

#define NAME_MAX_BYTES 253 /* of a host name (RFC 1035) */

static bool same(const struct guard_names *n, const char *name, const char *text)
{
	char wanted[NAME_MAX_BYTES + 8];
	if (strlen(name) > NAME_MAX_BYTES)
		return false;
	snprintf(wanted, sizeof wanted, "%s:%d", name, n->port);
	return strcasecmp(text, wanted) == 0 || (n->port == n->usual_port && strcasecmp(text, name) == 0);
}

bool guard_host(const struct guard_names *n, const char *host)
{
	for (int i = 0; host && i < n->count; i++)
		if (same(n, n->name[i], host))
			return true;
	return false;
}

bool guard_origin(const struct guard_names *n, const char *origin)
{
	size_t size = strlen(n->scheme);
	return origin && strncasecmp(origin, n->scheme, size) == 0 && strncmp(origin + size, "://", 3) == 0 &&
	       guard_host(n, origin + size + 3);
}

struct seen {
	uint64_t cookie; /* the kernel's number of this socket, never used twice: a descriptor is */
	int64_t since_ms;
	bool stream;
};

struct guard {
	struct event *timer;
	int n;
	struct seen seen[];
};

static bool is_connection(int fd, uint64_t *cookie)
{
	int listens = 1;
	socklen_t size = sizeof listens, cookie_size = sizeof *cookie;
	return getsockopt(fd, SOL_SOCKET, SO_ACCEPTCONN, &listens, &size) == 0 && !listens &&
	       getsockopt(fd, SOL_SOCKET, SO_COOKIE, cookie, &cookie_size) == 0;
}

static bool is_inet(int fd)
{
	int domain = 0;
	socklen_t size = sizeof domain;
	return getsockopt(fd, SOL_SOCKET, SO_DOMAIN, &domain, &size) == 0 &&
	       (domain == AF_INET || domain == AF_INET6);
}

static void look(evutil_socket_t none, short what, void *context)
{
	struct guard *g = context;
	int64_t now = clock_now().boot_ms;
	(void)none;
	(void)what;
	for (int fd = 3; fd < g->n; fd++) {
		struct seen *s = &g->seen[fd];
		uint64_t cookie;
		if (!is_inet(fd) || !is_connection(fd, &cookie))
			continue;
		if (s->cookie != cookie)
			*s = (struct seen){.cookie = cookie, .since_ms = now};
		/* shutdown, not close: the library still holds it, and hears of its end this way. */
		if (!s->stream && now - s->since_ms >= GUARD_PATIENCE_MS)
			shutdown(fd, SHUT_RDWR);
	}
}

struct guard *guard_new(struct event_base *base, int most_fds)
{
	struct guard *g = calloc(1, sizeof *g + sizeof(struct seen) * (size_t)most_fds);
	if (!g)
		return NULL;
	g->n = most_fds;
	g->timer = event_new(base, -1, EV_PERSIST, look, g);
	if (!g->timer || event_add(g->timer, &(struct timeval){.tv_sec = 1}) < 0) {
		guard_free(g);
		return NULL;
	}
	return g;
}

void guard_free(struct guard *g)
{
	if (!g)
		return;
	if (g->timer)
		event_free(g->timer);
	free(g);
}

void guard_stream(struct guard *g, int fd)
{
	uint64_t cookie;
	if (fd >= 0 && fd < g->n && is_connection(fd, &cookie))
		g->seen[fd] = (struct seen){.cookie = cookie, .stream = true};
}
