#include "tool/setup-run.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/own.h"

#define SAID_MAX (256 << 10)
#define CANNOT_START 127

static void child(const char *path, char *const argv[], int faults, int out)
{
	int null = open("/dev/null", O_RDWR | O_CLOEXEC);
	dup2(null, 0);
	dup2(out, 1);
	dup2(faults ? out : null, 2);
	execvp(path, argv);
	_exit(CANNOT_START);
}

static int read_all(int fd, struct buf *out)
{
	char part[4096];
	for (;;) {
		ssize_t n = read(fd, part, sizeof part);
		if (n < 0 && errno == EINTR)
			continue;
		if (n <= 0)
			return n < 0 ? -errno : 0;
		if (out->size < SAID_MAX && buf_add(out, part, (size_t)n) < 0)
			return -ENOMEM;
	}
}

static int run(const char *path, char *const argv[], int faults, struct buf *out)
{
	int ends[2], status = 0;
	if (pipe2(ends, O_CLOEXEC) < 0)
		return -errno;
	pid_t pid = fork();
	if (pid == 0)
		child(path, argv, faults, ends[1]);
	int n = pid < 0 ? -errno : 0;
	close(ends[1]);
	if (pid > 0)
		n = read_all(ends[0], out);
	close(ends[0]);
	while (pid > 0 && waitpid(pid, &status, 0) < 0 && errno == EINTR)
		;
	if (n < 0)
		return n;
	return !WIFEXITED(status)                    ? -EIO
	       : WEXITSTATUS(status) == CANNOT_START ? -ENOENT
	                                             : WEXITSTATUS(status);
}

int run_own(const char *program, char *const argv[], int faults, struct buf *out)
{
	char path[PATH_MAX];
	int n = own_path(path, sizeof path, program);
	return n < 0 ? n : run(path, argv, faults, out);
}

int run_found(const char *program, char *const argv[], struct buf *out)
{
	return run(program, argv, 0, out);
}
