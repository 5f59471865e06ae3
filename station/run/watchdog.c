#include "run/watchdog.h"

#include <errno.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include "base/log.h"

static int manager = -1; /* -1 none */

/* A name that begins with '@' is an abstract one: its first byte is 0. */
static int reach(const char *name)
{
	struct sockaddr_un at = {.sun_family = AF_UNIX};
	size_t size = strlen(name);
	if ((name[0] != '/' && name[0] != '@') || !name[1] || size >= sizeof at.sun_path)
		return -EINVAL;
	memcpy(at.sun_path, name, size);
	if (name[0] == '@')
		at.sun_path[0] = 0;
	int fd = socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0);
	if (fd < 0)
		return -errno;
	if (connect(fd, (struct sockaddr *)&at, (socklen_t)(offsetof(struct sockaddr_un, sun_path) + size)) ==
	    0)
		return fd;
	int n = -errno;
	close(fd);
	return n;
}

static void say(const char *what)
{
	/* One that is not taken is said again in a second. */
	ssize_t n = manager < 0 ? 0 : send(manager, what, strlen(what), MSG_NOSIGNAL);
	(void)n;
}

void watchdog_open(void)
{
	const char *name = getenv("NOTIFY_SOCKET");
	if (!name)
		return;
	manager = reach(name);
	if (manager < 0)
		log_warn_errno(
		    LOG_PROGRAM, manager,
		    "the service manager cannot be told that the station works: if it hangs, nobody "
		    "starts it again");
	unsetenv("NOTIFY_SOCKET");
}

void watchdog_alive(void)
{
	char text[60];
	snprintf(text, sizeof text, "WATCHDOG_USEC=%d000000\nWATCHDOG=1", WATCHDOG_S);
	say(text); /* each time: the manager itself may have begun anew (systemctl daemon-reexec) */
}
