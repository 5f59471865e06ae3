/* Each forbidden thing is tried: it works in a child without the sandbox, and fails in one inside it. */
#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/mman.h>
#include <sys/ptrace.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/confine.h"
#include "drivers/sandbox.h"

/* Each gives 0 where it could be done and an errno where not. */

static int result(long r)
{
	return r < 0 ? errno : 0;
}

static int open_a_file(void)
{
	return result(open("/etc/passwd", O_RDONLY));
}

static int write_a_file(void)
{
	return result(open("/tmp/bandtally-sandbox-test", O_WRONLY | O_CREAT, 0600));
}

static int make_a_folder(void)
{
	int r = result(mkdir("/tmp/bandtally-sandbox-folder", 0700));
	rmdir("/tmp/bandtally-sandbox-folder");
	return r;
}

static int remove_a_file(void)
{
	int r = result(unlink("/tmp/bandtally-sandbox-none"));
	return r == ENOENT ? 0 : r;
}

static int network(void)
{
	return result(socket(AF_INET, SOCK_STREAM, 0));
}

static int local_socket(void)
{
	return result(socket(AF_UNIX, SOCK_STREAM, 0));
}

static int new_process(void)
{
	pid_t pid = fork();
	if (pid == 0)
		_exit(0);
	return result(pid);
}

static int program(void)
{
	char *words[] = {(char *)(size_t) "/bin/true", NULL};
	execv("/bin/true", words);
	return errno;
}

static int signal_another(void)
{
	return result(kill(getppid(), 0));
}

static int trace(void)
{
	return result(ptrace(PTRACE_TRACEME, 0, NULL, NULL));
}

static int code_memory(void)
{
	return mmap(NULL, 4096, PROT_READ | PROT_EXEC, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0) == MAP_FAILED
	           ? errno
	           : 0;
}

/* Not the device's: a terminal's ioctl() could type commands. No such descriptor is the kernel's own answer.
 */
static int other_ioctl(void)
{
	int n;
	return ioctl(100, FIONREAD, &n) < 0 && errno == EBADF ? 0 : errno;
}

static int tried_in_child(int (*thing)(void), bool inside)
{
	int status;
	pid_t pid = fork();
	if (pid == 0) {
		if (inside && sandbox_enter('V', NULL) < 0)
			_exit(200);
		_exit(thing());
	}
	waitpid(pid, &status, 0);
	return WIFEXITED(status) ? WEXITSTATUS(status) : 201;
}

static void what_reading_a_device_does_not_need_fails_inside_and_works_outside(void **state)
{
	(void)state;
	static const struct {
		const char *name;
		int (*thing)(void);
	} forbidden[] = {
	    {"open a file", open_a_file},       {"write a file", write_a_file},
	    {"make a folder", make_a_folder},   {"remove a file", remove_a_file},
	    {"use the network", network},       {"use a local socket", local_socket},
	    {"start a process", new_process},   {"start a program", program},
	    {"signal another", signal_another}, {"be traced", trace},
	    {"make code", code_memory},         {"another ioctl", other_ioctl},
	};
	for (size_t i = 0; i < sizeof forbidden / sizeof *forbidden; i++) {
		int outside = tried_in_child(forbidden[i].thing, false);
		int inside = tried_in_child(forbidden[i].thing, true);
		if (outside != 0)
			fail_msg("%s: fails without the sandbox too (%s): proves nothing", forbidden[i].name,
			         strerror(outside));
		if (inside != EPERM && inside != EACCES)
			fail_msg("%s: not forbidden inside: %d", forbidden[i].name, inside);
	}
	unlink("/tmp/bandtally-sandbox-test");
}

static int needed(void)
{
	struct timespec t;
	struct pollfd p = {.fd = 1, .events = POLLOUT};
	char *m = malloc(4 << 20);
	if (!m)
		return 1;
	memset(m, 1, 4 << 20);
	free(m);
	if (clock_gettime(CLOCK_BOOTTIME, &t) < 0 || poll(&p, 1, 0) < 0)
		return 2;
	if (nanosleep(&(struct timespec){.tv_nsec = 1000000}, NULL) < 0)
		return 3;
	/* The device's own ioctl() reaches the kernel, which knows no such descriptor. */
	return ioctl(100, _IOR('V', 0, int), &t) < 0 && errno == EBADF ? 0 : 4;
}

static void reading_waiting_time_and_memory_still_work(void **state)
{
	(void)state;
	assert_int_equal(tried_in_child(needed, true), 0);
}

static int abort_itself(void)
{
	abort();
}

static void a_decoder_that_aborts_ends_its_process_only(void **state)
{
	(void)state;
	assert_int_equal(tried_in_child(abort_itself, true), 201);
}

int main(void)
{
	printf("Landlock: %s\n", confine_has_landlock() ? "here" : "not in this kernel");
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(what_reading_a_device_does_not_need_fails_inside_and_works_outside),
	    cmocka_unit_test(reading_waiting_time_and_memory_still_work),
	    cmocka_unit_test(a_decoder_that_aborts_ends_its_process_only),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
