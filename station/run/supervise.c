#include "run/supervise.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"

#define FIRST_WAIT_MS 500
#define LAST_WAIT_MS 30000
#define STEADY_MS 60000
#define LAST_LINES_MS 200 /* for what it wrote before it ended; a grandchild may hold the pipe open */

struct child {
	struct loop *loop;
	char **argv;
	size_t line_max;
	int talks;
	const struct child_calls *calls;
	void *context;
	int (*wanted)(void *context, struct child *c);
	pid_t pid; /* 0 while it is not running */
	struct stream *stream;
	int64_t started_ms;
	int32_t wait_ms;
	int status; /* wait()'s, once it ended */
	int ending; /* it ended, and its last lines are still to come */
};

static void start_again(void *context);

static void put_away(struct child *c)
{
	for (char **a = c->argv; a && *a; a++)
		free(*a);
	free(c->argv);
	free(c);
}

static void on_line(void *context, const char *line, size_t size)
{
	struct child *c = context;
	c->calls->line(c->context, c, line, size);
}

/* It has ended and said all that it had to say. The callback comes last: it may free the child. */
static void ended(void *context)
{
	struct child *c = context;
	int32_t wait_ms = c->wait_ms;
	c->ending = 0;
	loop_after(c->loop, wait_ms, start_again, c);
	c->wait_ms = wait_ms * 2 > LAST_WAIT_MS ? LAST_WAIT_MS : wait_ms * 2;
	if (c->calls->ended)
		c->calls->ended(c->context, c, c->status);
}

static void on_end(void *context)
{
	struct child *c = context;
	stream_free(c->stream);
	c->stream = NULL;
	if (!c->ending)
		return; /* its exit is told by the pidfd */
	loop_cancel(c->loop, c);
	ended(c);
}

static void on_exit_of(void *context)
{
	struct child *c = context;
	waitpid(c->pid, &c->status, 0);
	c->pid = 0;
	if (clock_now().boot_ms - c->started_ms > STEADY_MS)
		c->wait_ms = FIRST_WAIT_MS;
	log_line("%s ended (%s %d)", c->argv[0], WIFSIGNALED(c->status) ? "signal" : "exit code",
	         WIFSIGNALED(c->status) ? WTERMSIG(c->status) : WEXITSTATUS(c->status));
	c->ending = c->stream != NULL;
	if (c->ending)
		loop_after(c->loop, LAST_LINES_MS, ended, c);
	else
		ended(c);
}

/* In the child: only stdin, stdout and stderr stay. */
static void become(const struct child *c, int fd, pid_t parent)
{
	int in = c->talks ? fd : open("/dev/null", O_RDONLY | O_CLOEXEC);
	sigset_t none;
	sigemptyset(&none);
	sigprocmask(SIG_SETMASK, &none, NULL);
	prctl(PR_SET_PDEATHSIG, SIGTERM);
	if (in < 0 || getppid() != parent || dup2(in, 0) < 0 || dup2(fd, 1) < 0)
		_exit(127);
	char path[PATH_MAX], self[PATH_MAX];
	ssize_t n = readlink("/proc/self/exe", self, sizeof self - 1);
	char *slash = n > 0 ? memrchr(self, '/', (size_t)n) : NULL;
	if (strchr(c->argv[0], '/') || !slash)
		snprintf(path, sizeof path, "%s", c->argv[0]);
	else
		snprintf(path, sizeof path, "%.*s/%s", (int)(slash - self), self, c->argv[0]);
	execv(path, c->argv);
	fprintf(stderr, "cannot start %s: %s: install it beside bandtallyd\n", path, strerror(errno));
	_exit(127);
}

static void start(struct child *c)
{
	int pair[2];
	stream_free(c->stream);
	c->stream = NULL;
	if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, pair) < 0) {
		loop_after(c->loop, LAST_WAIT_MS, start_again, c);
		return;
	}
	pid_t parent = getpid(), pid = fork();
	if (pid == 0)
		become(c, pair[1], parent);
	close(pair[1]);
	if (pid < 0) {
		close(pair[0]);
		loop_after(c->loop, LAST_WAIT_MS, start_again, c);
		return;
	}
	c->pid = pid;
	c->started_ms = clock_now().boot_ms;
	static const struct stream_calls stream_calls = {on_line, on_end};
	if (stream_new(&c->stream, c->loop, pair[0], c->line_max, &stream_calls, c) < 0)
		close(pair[0]);
	loop_on_exit(c->loop, pid, on_exit_of, c);
	if (c->calls->started)
		c->calls->started(c->context, c);
}

static void start_again(void *context)
{
	struct child *c = context;
	if (c->wanted && !c->wanted(c->context, c))
		return;
	log_line("%s is started again", c->argv[0]);
	start(c);
}

int child_start(struct child **out, struct loop *l, char *const *argv, size_t line_max, int talks,
                const struct child_calls *calls, void *context)
{
	size_t n = 0;
	while (argv[n])
		n++;
	struct child *c = calloc(1, sizeof *c);
	if (!c || !(c->argv = calloc(n + 1, sizeof *c->argv))) {
		free(c);
		return -ENOMEM;
	}
	c->loop = l;
	c->line_max = line_max;
	c->talks = talks;
	c->calls = calls;
	c->context = context;
	c->wait_ms = FIRST_WAIT_MS;
	for (size_t i = 0; i < n; i++)
		c->argv[i] = strdup(argv[i]);
	*out = c;
	start(c);
	return 0;
}

void child_ask(struct child *c, int (*wanted)(void *context, struct child *c))
{
	c->wanted = wanted;
}

void child_free(struct child *c)
{
	if (!c)
		return;
	loop_cancel(c->loop, c);
	stream_free(c->stream);
	c->stream = NULL;
	if (c->pid) {
		kill(c->pid, SIGTERM);
		int status, i = 0;
		while (waitpid(c->pid, &status, WNOHANG) == 0 && i++ < 200)
			nanosleep(&(struct timespec){.tv_nsec = 10000000}, NULL);
		if (i >= 200) {
			kill(c->pid, SIGKILL);
			waitpid(c->pid, &status, 0);
		}
		c->pid = 0;
	}
	put_away(c);
}

int child_send(struct child *c, const char *line, size_t size)
{
	return c && c->stream ? stream_send(c->stream, line, size) : -EPIPE;
}

int child_running(const struct child *c)
{
	return c && c->pid != 0;
}
