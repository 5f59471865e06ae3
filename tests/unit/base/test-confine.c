/* A program whose libraries open files as they please, and one that starts others: what they may do inside, and what fails
 * there and works outside. The strict form has its test with the drivers (test-sandbox). */
#include <arpa/inet.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ptrace.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/confine.h"

static char folder[] = "/tmp/confine-XXXXXX", other[] = "/tmp/confine-not-XXXXXX";

static int result(long r)
{
	return r < 0 ? errno : 0;
}

static int make(const char *where)
{
	char path[80];
	snprintf(path, sizeof path, "%s/made", where);
	int r = result(open(path, O_WRONLY | O_CREAT | O_TRUNC, 0600));
	if (r == 0)
		r = result(unlink(path));
	return r;
}

static int write_beneath(void)
{
	return make(folder);
}

static int write_elsewhere(void)
{
	return make("/tmp");
}

static int write_without_a_name(void)
{
	return result(open("/tmp", O_WRONLY | O_TMPFILE, 0600));
}

static int read_a_file(void)
{
	return result(open("/etc/passwd", O_RDONLY));
}

static int read_elsewhere(void)
{
	return result(open(other, O_RDONLY));
}

static int open_a_device(void)
{
	return result(open("/dev/null", O_RDWR));
}

static int move_beneath(void)
{
	char from[80], to[80];
	snprintf(from, sizeof from, "%s/from", folder);
	snprintf(to, sizeof to, "%s/in/to", folder);
	int r = result(open(from, O_WRONLY | O_CREAT, 0600));
	if (r == 0)
		r = result(rename(from, to));
	return r ? r : result(unlink(to));
}

static int connect_out(void)
{
	return result(socket(AF_INET, SOCK_STREAM, 0));
}

static int start_a_program(void)
{
	execl("/bin/true", "true", (char *)NULL);
	return errno;
}

static int wait_for_connections(void)
{
	return result(listen(socket(AF_INET, SOCK_STREAM, 0), 1));
}

static int look_into_another(void)
{
	return result(ptrace(PTRACE_TRACEME, 0, NULL, NULL));
}

static int signal_another(void)
{
	return result(kill(getppid(), 0));
}

static int end_of(pid_t pid)
{
	if (pid == 0)
		_exit(0);
	return pid < 0 ? errno : waitpid(pid, NULL, 0) == pid ? 0 : 201;
}

static int make_a_process(void)
{
	return end_of(fork());
}

static int make_a_process_the_old_way(void)
{
	return end_of((pid_t)syscall(SYS_clone, SIGCHLD, 0, 0, 0, 0));
}

static void *nothing(void *context)
{
	return context;
}

static int make_a_thread(void)
{
	pthread_t t;
	int r = pthread_create(&t, NULL, nothing, NULL);
	return r ? r : pthread_join(t, NULL);
}

enum walls { OUTSIDE, LOOSE, PARENT };

static int confined(enum walls walls)
{
	const struct confine_place loose[] = {
	    {"/etc", CONFINE_READ}, {folder, CONFINE_WRITE}, {"/nowhere/at/all", CONFINE_READ}};
	const struct confine_place parent[] = {
	    {"/", CONFINE_RUN}, {"/dev", CONFINE_OPEN}, {folder, CONFINE_WRITE}};
	struct error e;
	switch (walls) {
	case OUTSIDE:
		return 0;
	case LOOSE:
		return confine_loosely(loose, sizeof loose / sizeof *loose, &e);
	case PARENT:
		return confine_parent(parent, sizeof parent / sizeof *parent, &e);
	}
	return -EINVAL;
}

/* What `act` gives in a child, within these walls; 200 where they were refused. */
static int in_child(int (*act)(void), enum walls walls)
{
	int status;
	pid_t child = fork();
	assert_true(child >= 0);
	if (child == 0)
		_exit(confined(walls) < 0 ? 200 : act());
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status));
	return WEXITSTATUS(status);
}

static void files_are_read_and_connections_and_threads_made(void **state)
{
	(void)state;
	assert_int_equal(in_child(read_a_file, LOOSE), 0);
	assert_int_equal(in_child(connect_out, LOOSE), 0);
	assert_int_equal(in_child(write_beneath, LOOSE), 0);
	assert_int_equal(in_child(move_beneath, LOOSE), 0);
	assert_int_equal(in_child(make_a_thread, LOOSE), 0);
}

static void nothing_is_started_and_nobody_else_touched(void **state)
{
	static int (*const acts[])(void) = {
	    start_a_program,      make_a_process,    make_a_process_the_old_way,
	    wait_for_connections, look_into_another, signal_another,
	};
	(void)state;
	for (size_t i = 0; i < sizeof acts / sizeof *acts; i++) {
		assert_int_equal(in_child(acts[i], OUTSIDE), 0);
		assert_int_equal(in_child(acts[i], LOOSE), EPERM);
	}
}

static void nothing_is_read_or_written_elsewhere(void **state)
{
	static int (*const acts[])(void) = {write_elsewhere, write_without_a_name, read_elsewhere};
	(void)state;
	if (!confine_has_landlock())
		skip();
	for (size_t i = 0; i < sizeof acts / sizeof *acts; i++) {
		assert_int_equal(in_child(acts[i], OUTSIDE), 0);
		assert_int_equal(in_child(acts[i], LOOSE), EACCES);
	}
}

static void a_parent_starts_programs_that_open_devices_and_its_own_files(void **state)
{
	static int (*const acts[])(void) = {
	    start_a_program, make_a_process, wait_for_connections, signal_another, read_a_file,
	    read_elsewhere,  open_a_device,  write_beneath,        move_beneath,
	};
	(void)state;
	for (size_t i = 0; i < sizeof acts / sizeof *acts; i++)
		assert_int_equal(in_child(acts[i], PARENT), 0);
}

static void a_parent_touches_nobody_else_and_writes_nowhere_else(void **state)
{
	(void)state;
	assert_int_equal(in_child(look_into_another, PARENT), EPERM);
	if (!confine_has_landlock())
		skip();
	assert_int_equal(in_child(write_elsewhere, PARENT), EACCES);
	assert_int_equal(in_child(write_without_a_name, PARENT), EACCES);
}

/* What a parent gave up its children cannot have either, and what they give up is less. */
static int confine_again(void)
{
	return confined(LOOSE) < 0 ? 200 : write_beneath() ? 201 : read_elsewhere();
}

static void a_child_confines_itself_further(void **state)
{
	(void)state;
	assert_int_equal(in_child(confine_again, PARENT), confine_has_landlock() ? EACCES : 0);
}

static int port_of(int listening)
{
	struct sockaddr_in is;
	socklen_t size = sizeof is;
	return getsockname(listening, (struct sockaddr *)&is, &size) < 0 ? 0 : ntohs(is.sin_port);
}

static int open_port(void)
{
	struct sockaddr_in at = {.sin_family = AF_INET, .sin_addr.s_addr = htonl(INADDR_LOOPBACK)};
	int fd = socket(AF_INET, SOCK_STREAM, 0);
	if (bind(fd, (struct sockaddr *)&at, sizeof at) < 0 || listen(fd, 1) < 0)
		fail_msg("no port: %s", strerror(errno));
	return fd;
}

static int connect_to(int port)
{
	struct sockaddr_in at = {.sin_family = AF_INET,
	                         .sin_addr.s_addr = htonl(INADDR_LOOPBACK),
	                         .sin_port = htons((uint16_t)port)};
	int fd = socket(AF_INET, SOCK_STREAM, 0);
	int r = connect(fd, (struct sockaddr *)&at, sizeof at) < 0 ? errno : 0;
	close(fd);
	return r;
}

/* 0 as it must be, 1 where a port is open that must not be, 2 where one is closed, 77 where the kernel cannot. */
static int try_ports(int mine, int others)
{
	uint16_t ports[] = {(uint16_t)mine};
	if (connect_to(mine) != 0 || connect_to(others) != 0)
		return 3;
	int r = confine_ports(ports, 1, NULL);
	if (r == 0)
		return 77;
	return r < 0 || connect_to(mine) != 0 ? 2 : connect_to(others) != EACCES;
}

static void connections_go_to_the_given_ports_alone(void **state)
{
	int a = open_port(), b = open_port(), status;
	(void)state;
	pid_t pid = fork();
	if (pid == 0)
		_exit(try_ports(port_of(a), port_of(b)));
	assert_int_equal(waitpid(pid, &status, 0), pid);
	close(a);
	close(b);
	assert_true(WIFEXITED(status));
	if (WEXITSTATUS(status) == 77)
		skip();
	assert_int_equal(WEXITSTATUS(status), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(files_are_read_and_connections_and_threads_made),
	    cmocka_unit_test(nothing_is_started_and_nobody_else_touched),
	    cmocka_unit_test(nothing_is_read_or_written_elsewhere),
	    cmocka_unit_test(a_parent_starts_programs_that_open_devices_and_its_own_files),
	    cmocka_unit_test(a_parent_touches_nobody_else_and_writes_nowhere_else),
	    cmocka_unit_test(a_child_confines_itself_further),
	    cmocka_unit_test(connections_go_to_the_given_ports_alone),
	};
	char in[80];
	if (!mkdtemp(folder))
		return 1;
	snprintf(in, sizeof in, "%s/in", folder);
	mkdir(in, 0700);
	int fd = mkstemp(other);
	int r = fd < 0 ? 1 : cmocka_run_group_tests(tests, NULL, NULL);
	unlink(other);
	rmdir(in);
	rmdir(folder);
	return r;
}
