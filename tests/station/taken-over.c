/* A program of the station that was taken over: loaded into one of them (LD_PRELOAD), it waits until that says its first word
 * to the station, which is after it confined itself, and then tries what would hurt. One line is written to the file
 * $REPORT for each, opened before: "what done", or "what" and why not.
 *   DATA    the station's data folder     SLIP  the file of a slip in it     OTHER  a file that is none of its business */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <linux/sched.h>
#include <pthread.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/ptrace.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <unistd.h>

static int report = -1;
static char data[200], slip[300], other[300];

static void say(const char *what, const char *why)
{
	char line[600];
	int n = snprintf(line, sizeof line, "%s %s\n", what, why);
	syscall(SYS_write, report, line, (size_t)n);
}

static void tell(const char *what, long r)
{
	say(what, r < 0 ? strerrorname_np(errno) : "done");
}

static const char *in_data(const char *name)
{
	static char path[400];
	snprintf(path, sizeof path, "%s/%s", data, name);
	return path;
}

static void read_of(const char *what, const char *path)
{
	char byte;
	int fd = open(path, O_RDONLY);
	tell(what, fd < 0 ? fd : read(fd, &byte, 1));
}

static void files(void)
{
	read_of("key", in_data("station.key"));
	read_of("settings", in_data("station.ini"));
	read_of("other", other);
	tell("record", open(in_data("record.db"), O_RDWR));
	tell("folder", opendir(data) ? 0 : -1);
	tell("make", open(in_data("made"), O_WRONLY | O_CREAT, 0600));
	tell("overwrite", open(slip, O_WRONLY | O_TRUNC));
	tell("second-name", link(slip, in_data("slips/.unfinished/second")));
	tell("put-aside", rename(slip, in_data("slips/.unfinished/aside")));
	rename(in_data("slips/.unfinished/aside"), slip);
	tell("unlink", unlink(slip));
}

static void ask_station(void)
{
	static const char request[] =
	    "{\"do\":\"staff\",\"kind\":2,\"name\":\"GHOST-1\",\"registered\":true}\n";
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	char answer[512] = "";
	int fd = socket(AF_UNIX, SOCK_STREAM, 0);
	memcpy(a.sun_path, in_data("socket"), sizeof a.sun_path - 1);
	if (fd < 0 || connect(fd, (struct sockaddr *)&a, sizeof a) < 0) {
		tell("socket", -1);
		return;
	}
	send(fd, request, sizeof request - 1, MSG_NOSIGNAL);
	ssize_t n = recv(fd, answer, sizeof answer - 1, 0);
	say("socket", n <= 0 ? "nothing" : strstr(answer, "not allowed") ? "refused" : "done");
}

static void *nothing(void *context)
{
	return context;
}

static void end_of(pid_t pid)
{
	if (pid == 0)
		_exit(0);
	if (pid > 0)
		waitpid(pid, NULL, 0);
}

static void processes(void)
{
	struct clone_args args = {.exit_signal = SIGCHLD};
	static char *const none[] = {NULL};
	pthread_t t;
	pid_t pid;
#ifdef SYS_fork /* arm64 has no such call */
	pid = (pid_t)syscall(SYS_fork);
	end_of(pid);
	tell("fork", pid);
#endif
	pid = vfork();
	if (pid == 0)
		_exit(0);
	end_of(pid);
	tell("vfork", pid);
	pid = (pid_t)syscall(SYS_clone, SIGCHLD, 0, 0, 0, 0);
	end_of(pid);
	tell("clone", pid);
	pid = (pid_t)syscall(SYS_clone3, &args, sizeof args);
	end_of(pid);
	tell("clone3", pid);
	/* A program that is not there: whoever may start one is told so. */
	execve("/none/at/all", none, none);
	say("exec", errno == ENOENT ? "done" : strerrorname_np(errno));
	syscall(SYS_execveat, AT_FDCWD, "/none/at/all", none, none, 0);
	say("execveat", errno == ENOENT ? "done" : strerrorname_np(errno));
	errno = pthread_create(&t, NULL, nothing, NULL);
	tell("thread", errno ? -1 : pthread_join(t, NULL));
}

static void others(void)
{
	struct rlimit limit;
	char memory[32];
	tell("signal", kill(getppid(), 0));
	tell("signal-thread", syscall(SYS_tgkill, getppid(), getppid(), 0));
	tell("limit", prlimit(getppid(), RLIMIT_NOFILE, NULL, &limit));
	ptrace(PTRACE_DETACH, getppid(), NULL, NULL); /* which it does not hold */
	say("trace", errno == ESRCH ? "done" : strerrorname_np(errno));
	snprintf(memory, sizeof memory, "/proc/%d/mem", (int)getppid());
	tell("memory", open(memory, O_RDWR));
	/* No terminal: the kernel's own answer is that it is none. */
	ioctl(report, TIOCSTI, "x");
	say("type", errno == ENOTTY || errno == EIO ? "done" : strerrorname_np(errno));
}

static void attack(void)
{
	int fd = report;
	static int done;
	if (done++ || fd < 0)
		return;
	others();
	processes();
	ask_station();
	files();
	say("end", "done");
}

__attribute__((constructor)) static void begin(void)
{
	const char *file = getenv("REPORT");
	snprintf(data, sizeof data, "%s", getenv("DATA") ? getenv("DATA") : "");
	snprintf(slip, sizeof slip, "%s", getenv("SLIP") ? getenv("SLIP") : "");
	snprintf(other, sizeof other, "%s", getenv("OTHER") ? getenv("OTHER") : "");
	if (file)
		report = open(file, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0666);
}

ssize_t write(int fd, const void *bytes, size_t size)
{
	if (fd == STDOUT_FILENO)
		attack();
	return syscall(SYS_write, fd, bytes, size);
}

ssize_t writev(int fd, const struct iovec *parts, int count)
{
	if (fd == STDOUT_FILENO)
		attack();
	return syscall(SYS_writev, fd, parts, count);
}
