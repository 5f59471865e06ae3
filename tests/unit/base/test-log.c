/* A message that somebody must act on can be matched by its id, and the journal keeps its priority. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#include "base/log.h"

/* What the three kinds of message look like where the journal is said to be `named`. */
static void said(const char *named, char *out, size_t size)
{
	FILE *to = tmpfile();
	struct stat file;
	char own[60];
	int before = dup(STDERR_FILENO);
	assert_non_null(to);
	assert_int_equal(fstat(fileno(to), &file), 0);
	snprintf(own, sizeof own, "%ju:%ju", (uintmax_t)file.st_dev, (uintmax_t)file.st_ino);
	if (named)
		setenv("JOURNAL_STREAM", *named ? named : own, 1);
	else
		unsetenv("JOURNAL_STREAM");
	dup2(fileno(to), STDERR_FILENO);
	log_open("a-test");
	log_line("%d slips", 2);
	log_warn(LOG_SCANNER, "lost\n<0>a-test: bt-start: %s", "never");
	log_warn_errno(LOG_DISTRUST, -28, "it is not kept");
	fflush(stderr);
	dup2(before, STDERR_FILENO);
	close(before);
	rewind(to);
	out[fread(out, 1, size - 1, to)] = 0;
	fclose(to);
}

static void a_message_bears_its_id_behind_the_program(void **state)
{
	char text[400];
	(void)state;
	said(NULL, text, sizeof text);
	assert_string_equal(text, "a-test: 2 slips\na-test: bt-scanner: lost?<0>a-test: bt-start: never\n"
	                          "a-test: bt-distrust: it is not kept: No space left on device\n");
}

static void the_journal_is_told_how_grave_it_is(void **state)
{
	char text[400];
	(void)state;
	said("", text, sizeof text);
	assert_string_equal(text,
	                    "<6>a-test: 2 slips\n<4>a-test: bt-scanner: lost?<0>a-test: bt-start: never\n"
	                    "<2>a-test: bt-distrust: it is not kept: No space left on device\n");
	said("1:1", text, sizeof text); /* another stream is the journal's */
	assert_int_equal(strncmp(text, "a-test: ", 8), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_message_bears_its_id_behind_the_program),
	    cmocka_unit_test(the_journal_is_told_how_grave_it_is),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
