/* Children, and the order in which one ends.
 *
 * A child ends twice: its process exits, which its pidfd tells, and its pipe comes to its end, which the stream tells;
 * either may be first, and what it wrote last is still in the pipe when it is gone. So on_exit_of() only notes the status
 * and waits LAST_LINES_MS for the pipe (`ending`), because a grandchild may hold that open for ever; on_end() or that time
 * leads to ended(), once, which plans the next start and then tells the owner, who may free the child there: nothing of it
 * is touched afterwards.
 *
 * child_free() does not wait: it takes the child from its owner (`freed`), sends SIGTERM, plans SIGKILL, and the child
 * lives on in the list until its process is gone. One that its owner starts anew meanwhile would want the same device or
 * folder, so it waits (`waits`) until the freed one of its context has ended.
 */
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
#include <unistd.h>

#include "base/clock.h"
#include "base/log.h"
#include "base/own.h"

#define FIRST_WAIT_MS 500
#define LAST_WAIT_MS 30000
#define STEADY_MS 60000
#define PATIENCE_MS 2000  /* from SIGTERM to SIGKILL */
#define LAST_LINES_MS 200 /* for what it wrote before it ended; a grandchild may hold the pipe open */

struct child {
	struct children *all;
	struct child *next;
	struct loop *loop;
	char **argv;
	size_t line_max;
	int talks;
	int handed; /* -1 none */
	const struct child_calls *calls;
	void *context;
	int (*wanted)(void *context, struct child *c);
	pid_t pid; /* 0 while it is not running */
	struct stream *stream;
	int64_t started_ms;
	int32_t wait_ms;
	int status; /* wait()'s, once it ended */
	int ending; /* it ended, and its last lines are still to come */
	int freed;  /* nobody has it any more, but its program still runs */
	int waits;  /* for a freed one of its context to end */
};

static void start_again(void *context);

static void put_away(struct child *c)
{
	struct child **at = &c->all->first;
	while (*at && *at != c)
		at = &(*at)->next;
	if (*at)
		*at = c->next;
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

static void again_in(struct child *c, int32_t ms)
{
	if (loop_after(c->loop, ms, start_again, c) < 0)
		log_warn(LOG_PROGRAM,
		         "%s is not started again: out of memory: restart the station when no case is open",
		         c->argv[0]);
}

/* It has ended and said all that it had to say. The callback comes last: it may free the child. */
static void ended(void *context)
{
	struct child *c = context;
	int32_t wait_ms = c->wait_ms;
	c->ending = 0;
	again_in(c, wait_ms);
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

static void tell_end(const struct child *c)
{
	int by_signal = WIFSIGNALED(c->status);
	int how = by_signal ? WTERMSIG(c->status) : WEXITSTATUS(c->status);
	if (how == (by_signal ? SIGTERM : 0)) /* in order, or it was told to */
		log_line("%s ended (%s %d)", c->argv[0], by_signal ? "signal" : "exit code", how);
	else
		log_warn(LOG_PROGRAM, "%s ended (%s %d)", c->argv[0], by_signal ? "signal" : "exit code",
		         how);
}

static void on_exit_of(void *context)
{
	struct child *c = context;
	waitpid(c->pid, &c->status, 0);
	c->pid = 0;
	if (clock_now().boot_ms - c->started_ms > STEADY_MS)
		c->wait_ms = FIRST_WAIT_MS;
	tell_end(c);
	c->ending = c->stream != NULL && loop_after(c->loop, LAST_LINES_MS, ended, c) == 0;
	if (!c->ending)
		ended(c);
}

/* All others are closed as its program begins, also those that whoever started the station had left open. */
static int keep_handed(int handed)
{
	int first = handed < 0 ? CHILD_HANDED : CHILD_HANDED + 1;
	if (handed == CHILD_HANDED && fcntl(handed, F_SETFD, 0) < 0)
		return -1;
	if (handed >= 0 && handed != CHILD_HANDED && dup2(handed, CHILD_HANDED) < 0)
		return -1;
	return close_range((unsigned)first, ~0u, CLOSE_RANGE_CLOEXEC);
}

/* In the child: only stdin, stdout, stderr and what it is handed stay. */
static void become(const struct child *c, int fd, pid_t parent)
{
	int in = c->talks ? fd : open("/dev/null", O_RDONLY | O_CLOEXEC);
	sigset_t none;
	sigemptyset(&none);
	sigprocmask(SIG_SETMASK, &none, NULL);
	prctl(PR_SET_PDEATHSIG, SIGTERM);
	if (in < 0 || getppid() != parent || dup2(in, 0) < 0 || dup2(fd, 1) < 0 || keep_handed(c->handed) < 0)
		_exit(127);
	char path[PATH_MAX];
	if (strchr(c->argv[0], '/') || own_path(path, sizeof path, c->argv[0]) < 0)
		snprintf(path, sizeof path, "%s", c->argv[0]);
	execv(path, c->argv);
	log_warn(LOG_PROGRAM, "cannot start %s: %s: install it beside bandtallyd", path, strerror(errno));
	_exit(127);
}

/* A program whose lines or whose end nobody would hear of must not run. */
static void not_watched(struct child *c, int why)
{
	log_warn(LOG_PROGRAM, "%s cannot be watched: %s: it is ended, and started again later", c->argv[0],
	         strerror(-why));
	loop_cancel(c->loop, c);
	stream_free(c->stream);
	c->stream = NULL;
	kill(c->pid, SIGKILL);
	waitpid(c->pid, &c->status, 0); /* which comes at once: nothing was asked of it */
	c->pid = 0;
	again_in(c, LAST_WAIT_MS);
}

static int watch(struct child *c, int fd)
{
	static const struct stream_calls stream_calls = {on_line, on_end};
	int n = stream_new(&c->stream, c->loop, fd, c->line_max, &stream_calls, c);
	if (n < 0)
		close(fd);
	return n < 0 ? n : loop_on_exit(c->loop, c->pid, on_exit_of, c);
}

static int place_is_taken(const struct child *c)
{
	for (const struct child *x = c->all->first; x; x = x->next)
		if (x->freed && x->context == c->context)
			return 1;
	return 0;
}

static void start(struct child *c)
{
	int pair[2], n;
	stream_free(c->stream);
	c->stream = NULL;
	c->waits = place_is_taken(c);
	if (c->waits)
		return;
	if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, pair) < 0) {
		again_in(c, LAST_WAIT_MS);
		return;
	}
	pid_t parent = getpid(), pid = fork();
	if (pid == 0)
		become(c, pair[1], parent);
	close(pair[1]);
	if (pid < 0) {
		close(pair[0]);
		again_in(c, LAST_WAIT_MS);
		return;
	}
	c->pid = pid;
	c->started_ms = clock_now().boot_ms;
	if ((n = watch(c, pair[0])) < 0)
		not_watched(c, n);
	else if (c->calls->started)
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

static char **words_dup(char *const *argv)
{
	size_t n = 0, i = 0;
	while (argv[n])
		n++;
	char **all = calloc(n + 1, sizeof *all);
	while (all && i < n && (all[i] = strdup(argv[i])))
		i++;
	if (!all || i == n)
		return all;
	while (i)
		free(all[--i]);
	free(all);
	return NULL;
}

int child_start(struct child **out, struct children *all, char *const *argv, size_t line_max, int talks,
                int handed, const struct child_calls *calls, void *context)
{
	struct child *c = calloc(1, sizeof *c);
	if (!c || !(c->argv = words_dup(argv))) {
		free(c);
		return -ENOMEM;
	}
	c->all = all;
	c->next = all->first;
	all->first = c;
	c->loop = all->loop;
	c->line_max = line_max;
	c->talks = talks;
	c->handed = handed;
	c->calls = calls;
	c->context = context;
	c->wait_ms = FIRST_WAIT_MS;
	*out = c;
	start(c);
	return 0;
}

void child_ask(struct child *c, int (*wanted)(void *context, struct child *c))
{
	c->wanted = wanted;
}

/* Whoever waited for its place may have it. */
static void buried(void *context)
{
	struct child *c = context, *next;
	struct children *all = c->all;
	int status;
	waitpid(c->pid, &status, 0);
	loop_cancel(c->loop, c);
	put_away(c);
	for (c = all->first; c; c = next) {
		next = c->next;
		if (c->waits)
			start(c);
	}
	if (all->waited_for)
		loop_stop(all->loop);
}

static void kill_it(void *context)
{
	struct child *c = context;
	log_warn(LOG_PROGRAM, "%s does not end: it is killed", c->argv[0]);
	kill(c->pid, SIGKILL);
}

void child_free(struct child *c)
{
	if (!c)
		return;
	loop_cancel(c->loop, c);
	stream_free(c->stream);
	c->stream = NULL;
	c->freed = 1;
	if (!c->pid) {
		put_away(c);
		return;
	}
	kill(c->pid, SIGTERM);
	if (loop_after(c->loop, PATIENCE_MS, kill_it, c) < 0)
		kill(c->pid, SIGKILL);
	if (loop_on_exit(c->loop, c->pid, buried, c) < 0) {
		kill(c->pid, SIGKILL);
		buried(c);
	}
}

static int any_freed(const struct children *all)
{
	for (const struct child *c = all->first; c; c = c->next)
		if (c->freed)
			return 1;
	return 0;
}

void children_wait(struct children *all)
{
	all->waited_for = 1;
	while (any_freed(all))
		loop_run(all->loop);
	all->waited_for = 0;
}

void children_adopt(void)
{
	prctl(PR_SET_CHILD_SUBREAPER, 1, 0, 0, 0);
}

static int is_child(const struct children *all, pid_t pid)
{
	const struct child *c = all->first;
	while (c && c->pid != pid)
		c = c->next;
	return c != NULL;
}

/* The end of a child is told by its pidfd: until then no other is looked for behind it. */
void children_bury(const struct children *all)
{
	siginfo_t one = {0};
	while (waitid(P_ALL, 0, &one, WEXITED | WNOHANG | WNOWAIT) == 0 && one.si_pid &&
	       !is_child(all, one.si_pid)) {
		waitpid(one.si_pid, NULL, 0);
		one.si_pid = 0;
	}
}

/* It would neither work nor end, and nobody would be told. */
void children_look(const struct children *all)
{
	for (const struct child *c = all->first; c; c = c->next) {
		siginfo_t one = {0};
		if (!c->pid || c->freed ||
		    waitid(P_PID, (id_t)c->pid, &one, WSTOPPED | WNOHANG | WNOWAIT) != 0 || !one.si_pid)
			continue;
		log_warn(LOG_PROGRAM, "%s was stopped, and does nothing: it is ended, and started again",
		         c->argv[0]);
		kill(c->pid, SIGKILL);
	}
}

/* One that does not read would miss what it was not sent: it begins anew, and is told all. */
int child_send(struct child *c, const char *line, size_t size)
{
	int n = c && c->stream ? stream_send(c->stream, line, size) : -EPIPE;
	if (n < 0 && n != -EPIPE && c->pid) {
		log_warn(LOG_PROGRAM, "%s cannot be told anything: %s: it is ended, and started again",
		         c->argv[0], strerror(-n));
		kill(c->pid, SIGKILL);
	}
	return n;
}

size_t child_unsent(const struct child *c)
{
	return c && c->stream ? stream_unsent(c->stream) : 0;
}

int child_running(const struct child *c)
{
	return c && c->pid != 0;
}

void child_signal(const struct child *c, int signal_number)
{
	if (child_running(c))
		kill(c->pid, signal_number);
}
