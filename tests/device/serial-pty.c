/* scan-serial on a pseudo-terminal: the kernel's own line discipline, bytes as a scanner sends them. */
#include <errno.h>
#include <fcntl.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/wire.h"

static int master;
static pid_t pid;
static FILE *lines;
static struct wire_line l;
static char node[128];
static uid_t user; /* who runs the driver */

static FILE *run(const char *const *words, pid_t *out)
{
	int ends[2];
	char program[4096];
	const char *argv[16] = {program, "--device", node};
	snprintf(program, sizeof program, "%s/scan-serial", getenv("BANDTALLY_BIN"));
	for (int i = 0; words && words[i]; i++)
		argv[i + 3] = words[i];
	assert_int_equal(pipe(ends), 0);
	*out = fork();
	if (*out == 0) {
		if (user != geteuid() && setuid(user) < 0)
			_exit(126);
		dup2(ends[1], 1);
		close(ends[0]);
		close(ends[1]);
		execv(program, (char *const *)argv);
		_exit(127);
	}
	close(ends[1]);
	return fdopen(ends[0], "r");
}

static void next_line(FILE *from)
{
	char line[WIRE_LINE_MAX + 2];
	alarm(10);
	assert_non_null(fgets(line, sizeof line, from));
	alarm(0);
	assert_int_equal(wire_read_line(line, strlen(line), &l, NULL), 0);
}

static void start(const char *const *words)
{
	master = posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
	assert_true(master >= 0 && grantpt(master) == 0 && unlockpt(master) == 0);
	assert_int_equal(ptsname_r(master, node, sizeof node), 0);
	lines = run(words, &pid);
	next_line(lines);
	assert_int_equal(l.kind, WIRE_HELLO);
	usleep(350000); /* more than SERIAL_SETTLE_MS */
}

static void put(const char *bytes, size_t size)
{
	assert_int_equal(write(master, bytes, size), size);
}

#define PUT(text) put(text, sizeof text - 1)

static int stop(void)
{
	int status;
	close(master);
	waitpid(pid, &status, 0);
	fclose(lines);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static void a_code_comes_with_its_identifier_and_separators(void **state)
{
	(void)state;
	start(NULL);
	PUT("]C110AB12\x1d"
	    "21C\r\n");
	next_line(lines);
	assert_string_equal(l.aim, "]C1");
	assert_string_equal(l.data, "10AB12\x1d"
	                            "21C");
	assert_true(l.ms > 0);
	PUT("9506000");
	usleep(50000);
	PUT("134352\r"); /* one code in two pieces */
	next_line(lines);
	assert_string_equal(l.data, "9506000134352");
	/* What is no text goes as hexadecimal digits; a real 0xff is no error mark. */
	PUT("\xff\x00"
	    "A\r");
	next_line(lines);
	assert_int_equal(l.kind, WIRE_SCAN);
	assert_memory_equal(l.data,
	                    "\xff\x00"
	                    "A",
	                    3);
	stop();
}

static void a_line_that_goes_away_in_mid_code_is_said(void **state)
{
	(void)state;
	start(NULL);
	PUT("95060");
	usleep(50000);
	close(master);
	next_line(lines);
	assert_string_equal(l.code, "partial");
	next_line(lines);
	assert_string_equal(l.code, "lost");
	int status;
	waitpid(pid, &status, 0);
	assert_int_equal(WEXITSTATUS(status), 1);
	fclose(lines);
}

static void prefix_and_suffix_as_they_are_set(void **state)
{
	(void)state;
	static const char *const words[] = {"--prefix", "02", "--suffix", "03", "--baud", "115200", NULL};
	start(words);
	PUT("\x02"
	    "BTBC10104051\x03");
	next_line(lines);
	assert_string_equal(l.data, "BTBC10104051");
	PUT("cut\x03");
	next_line(lines);
	assert_string_equal(l.code, "partial");
	stop();
}

static void two_thousand_codes_at_once_and_none_lost(void **state)
{
	(void)state;
	char text[32];
	start(NULL);
	pid_t typist = fork();
	if (typist == 0) {
		for (int i = 0; i < 2000; i++) {
			int n = snprintf(text, sizeof text, "95060%08d\r", i);
			if (write(master, text, (size_t)n) != n)
				_exit(1);
		}
		_exit(0);
	}
	for (int i = 0; i < 2000; i++) {
		next_line(lines);
		snprintf(text, sizeof text, "95060%08d", i);
		assert_string_equal(l.data, text);
	}
	waitpid(typist, NULL, 0);
	stop();
}

static void a_line_that_another_has_is_told(void **state)
{
	(void)state;
	start(NULL);
	/* The kernel lets root in all the same, so the second one is nobody. */
	assert_int_equal(chmod(node, 0666), 0);
	user = geteuid() == 0 ? 65534 : geteuid();
	pid_t second;
	FILE *said = run(NULL, &second);
	next_line(said);
	assert_string_equal(l.code, "open");
	assert_non_null(strstr(l.text, "another program has it"));
	waitpid(second, NULL, 0);
	fclose(said);
	user = geteuid();
	stop();
}

int main(void)
{
	user = geteuid();
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_code_comes_with_its_identifier_and_separators),
	    cmocka_unit_test(a_line_that_goes_away_in_mid_code_is_said),
	    cmocka_unit_test(prefix_and_suffix_as_they_are_set),
	    cmocka_unit_test(two_thousand_codes_at_once_and_none_lost),
	    cmocka_unit_test(a_line_that_another_has_is_told),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
