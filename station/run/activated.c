#include "run/activated.h"

#include <fcntl.h>
#include <netinet/in.h>
#include <stdlib.h>
#include <sys/socket.h>
#include <unistd.h>

#define FIRST 3 /* of the descriptors that are handed over */

static int number(const char *name)
{
	const char *text = getenv(name);
	return text ? atoi(text) : -1;
}

static int port_of(int fd)
{
	union {
		struct sockaddr any;
		struct sockaddr_in four;
		struct sockaddr_in6 six;
	} at = {0};
	int listens = 0;
	socklen_t size = sizeof at, one = sizeof listens;
	if (getsockopt(fd, SOL_SOCKET, SO_ACCEPTCONN, &listens, &one) < 0 || !listens ||
	    getsockname(fd, &at.any, &size) < 0)
		return -1;
	return at.any.sa_family == AF_INET    ? ntohs(at.four.sin_port)
	       : at.any.sa_family == AF_INET6 ? ntohs(at.six.sin6_port)
	                                      : -1;
}

int activated_socket(int *port)
{
	int is_mine = number("LISTEN_PID") == getpid() && number("LISTEN_FDS") >= 1;
	unsetenv("LISTEN_PID");
	unsetenv("LISTEN_FDS");
	unsetenv("LISTEN_FDNAMES");
	*port = is_mine ? port_of(FIRST) : -1;
	if (*port < 0 || fcntl(FIRST, F_SETFD, FD_CLOEXEC) < 0 || fcntl(FIRST, F_SETFL, O_NONBLOCK) < 0)
		return -1;
	return FIRST;
}
