/* A program whose libraries open files as they please: what it may do inside, and what fails there and works
 * outside. The strict form has its test with the drivers (test-sandbox). */
#include <errno.h>
#include <fcntl.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ptrace.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/confine.h"

static char folder[] = "/tmp/confine-XXXXXX";

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

static int write_what_is_there(void)
{
	return result(open("/tmp", O_WRONLY | O_TMPFILE, 0600));
}

static int read_a_file(void)
{
	return result(open("/etc/passwd", O_RDONLY));
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

/* What `act` gives in a child, inside the walls or outside; 200 where they were refused. */
static int in_child(int (*act)(void), bool inside)
{
	struct error e;
	int status;
	pid_t child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		if (inside && confine_loosely(folder, &e) < 0)
			_exit(200);
		_exit(act());
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status));
	return WEXITSTATUS(status);
}

static void files_are_read_and_connections_made(void **state)
{
	(void)state;
	assert_int_equal(in_child(read_a_file, true), 0);
	assert_int_equal(in_child(connect_out, true), 0);
	assert_int_equal(in_child(write_beneath, true), 0);
}

static void no_program_is_started_and_nobody_else_touched(void **state)
{
	static int (*const acts[])(void) = {start_a_program, wait_for_connections, look_into_another,
	                                    signal_another};
	(void)state;
	for (size_t i = 0; i < sizeof acts / sizeof *acts; i++) {
		assert_int_equal(in_child(acts[i], false), 0);
		assert_int_equal(in_child(acts[i], true), EPERM);
	}
}

static void nothing_is_written_elsewhere(void **state)
{
	(void)state;
	assert_int_equal(in_child(write_elsewhere, false), 0);
	assert_int_equal(in_child(write_what_is_there, false), 0);
	if (!confine_landlock_abi())
		skip();
	assert_int_equal(in_child(write_elsewhere, true), EACCES);
	assert_int_equal(in_child(write_what_is_there, true), EACCES);
}

static void a_folder_that_is_not_there_is_told(void **state)
{
	struct error e = {0};
	(void)state;
	assert_int_equal(confine_loosely("/tmp/none/at-all", &e), -ENOENT);
	assert_non_null(strstr(e.text, "/tmp/none/at-all: No such file or directory: give one"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(files_are_read_and_connections_made),
	    cmocka_unit_test(no_program_is_started_and_nobody_else_touched),
	    cmocka_unit_test(nothing_is_written_elsewhere),
	    cmocka_unit_test(a_folder_that_is_not_there_is_told),
	};
	if (!mkdtemp(folder))
		return 1;
	int r = cmocka_run_group_tests(tests, NULL, NULL);
	rmdir(folder);
	return r;
}
