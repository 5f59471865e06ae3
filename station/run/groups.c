#include "run/groups.h"

#include <errno.h>
#include <fcntl.h>
#include <grp.h>
#include <poll.h>
#include <stdlib.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"

#define LOOK_UP_S 60         /* then whoever looks one up ends */
#define ENTRY_MAX (4u << 20) /* bytes of a group with all its members */

static const char *const names[GROUPS] = {[GROUP_COUNT] = "bandtally-count",
                                          [GROUP_STORES] = "bandtally-stores",
                                          [GROUP_AUDIT] = "bandtally-audit"};

struct found {
	enum asking which;
	gid_t gid;
};

/* 0, with GROUP_NONE where there is no such group, or the errno of a directory that cannot be asked. */
static int look_up(const char *name, gid_t *gid)
{
	int why = ERANGE;
	for (size_t room = 4096; why == ERANGE && room <= ENTRY_MAX; room *= 4) {
		struct group entry, *g = NULL;
		char *texts = malloc(room);
		why = texts ? getgrnam_r(name, &entry, texts, room, &g) : ENOMEM;
		*gid = g ? g->gr_gid : GROUP_NONE;
		free(texts);
	}
	return why;
}

/* A process with nothing open but where its answer goes: it may outlive this one, and what that holds must be free then. */
static void be_asked(enum asking which, int to)
{
	struct found f = {.which = which};
	if (dup2(to, 0) < 0 || close_range(1, ~0u, 0) < 0)
		_exit(1);
	alarm(LOOK_UP_S);
	_exit(look_up(names[which], &f.gid) == 0 && write(0, &f, sizeof f) == sizeof f ? 0 : 1);
}

static void stop(struct groups *g)
{
	loop_cancel(g->loop, g);
	if (g->fd >= 0)
		close(g->fd);
	g->fd = -1;
}

/* What is there by now. */
static void take(void *context)
{
	struct groups *g = context;
	struct found f;
	ssize_t n;
	while ((n = read(g->fd, &f, sizeof f)) == sizeof f) {
		if ((unsigned)f.which >= GROUPS)
			continue;
		g->gid[f.which] = f.gid;
		g->asked[f.which] = 0;
	}
	if (n < 0 && errno == EAGAIN)
		return;
	for (int i = 0; i < GROUPS; i++)
		if (g->asked[i])
			log_warn(LOG_ASKED,
			         "the group %s could not be looked up: the directory service does not "
			         "answer: what was known of it stays: ask again with SIGHUP",
			         names[i]);
	stop(g);
}

static void wait_a_while(struct groups *g, int patience_ms)
{
	int64_t until_ms = clock_now().boot_ms + patience_ms;
	for (int left_ms = patience_ms; g->fd >= 0 && left_ms > 0;
	     left_ms = (int)(until_ms - clock_now().boot_ms)) {
		if (poll(&(struct pollfd){.fd = g->fd, .events = POLLIN}, 1, left_ms) <= 0)
			return;
		take(g);
	}
}

void groups_init(struct groups *g, struct loop *loop)
{
	*g = (struct groups){.gid = {GROUP_NONE, GROUP_NONE, GROUP_NONE}, .loop = loop, .fd = -1};
}

int groups_ask(struct groups *g, int patience_ms)
{
	int both[2];
	stop(g);
	if (pipe2(both, O_CLOEXEC) < 0)
		return -errno;
	g->fd = both[0];
	fcntl(g->fd, F_SETFL, O_NONBLOCK);
	for (int i = 0; i < GROUPS; i++) {
		g->asked[i] = 1;
		if (fork() == 0) /* buried like whatever a program of ours leaves behind (children_bury()) */
			be_asked((enum asking)i, both[1]);
	}
	close(both[1]);
	wait_a_while(g, patience_ms);
	return g->fd < 0 ? 0 : loop_on_readable(g->loop, g->fd, take, g);
}

void groups_deinit(struct groups *g)
{
	if (g->loop)
		stop(g);
}
