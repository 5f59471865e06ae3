/* The programs of the station: nothing that they do, or do not, keeps the loop. */
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
#include <unistd.h>

#include <cmocka.h>

#include "base/clock.h"
#include "run/supervise.h"

#define TURN_MS 10

struct scene {
	struct loop *loop;
	struct children all;
	int turns, started, ended, lines;
	int64_t last_ms, longest_ms; /* between two turns of the loop */
	pid_t pid;
	int64_t until_ms;
	int handed;
};

static int64_t now_ms(void)
{
	return clock_now().boot_ms;
}

static void on_turn(void *context)
{
	struct scene *s = context;
	int64_t now = now_ms();
	if (s->turns++ && now - s->last_ms > s->longest_ms)
		s->longest_ms = now - s->last_ms;
	s->last_ms = now;
	if (now >= s->until_ms)
		loop_stop(s->loop);
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	struct scene *s = context;
	(void)c;
	(void)size;
	s->lines++;
	s->pid = line ? atoi(line) : 0;
	loop_stop(s->loop);
}

static void on_started(void *context, struct child *c)
{
	(void)c;
	((struct scene *)context)->started++;
}

static void on_ended(void *context, struct child *c, int status)
{
	(void)c;
	(void)status;
	((struct scene *)context)->ended++;
}

static const struct child_calls calls = {on_line, on_started, on_ended};

static void begin(struct scene *s)
{
	memset(s, 0, sizeof *s);
	assert_int_equal(loop_new(&s->loop), 0);
	s->all.loop = s->loop;
	s->handed = -1;
	s->until_ms = now_ms() + 20000;
	assert_int_equal(loop_every(s->loop, TURN_MS, on_turn, s), 0);
}

static void run_for(struct scene *s, int32_t ms)
{
	s->until_ms = now_ms() + ms;
	loop_run(s->loop);
}

static struct child *start_shell(struct scene *s, const char *script, int talks)
{
	struct child *c = NULL;
	char *const argv[] = {"/bin/sh", "-c", (char *)script, NULL};
	assert_int_equal(child_start(&c, &s->all, argv, 4096, talks, s->handed, &calls, s), 0);
	return c;
}

static int lives(pid_t pid)
{
	return kill(pid, 0) == 0;
}

static const char stubborn[] = "trap '' TERM; echo $$; while :; do read x || sleep 0.1; done";

static void a_program_that_does_not_end_keeps_nobody(void **state)
{
	struct scene s;
	(void)state;
	begin(&s);
	struct child *c = start_shell(&s, stubborn, 0);
	loop_run(s.loop);
	assert_int_equal(s.lines, 1);
	int64_t from = now_ms();
	child_free(c);
	assert_in_range(now_ms() - from, 0, 100);
	run_for(&s, 1000);
	assert_true(lives(s.pid));
	children_wait(&s.all);
	assert_false(lives(s.pid));
	assert_in_range(now_ms() - from, 1900, 6000);
	assert_in_range(s.longest_ms, 0, 500);
	assert_int_equal(s.ended, 0); /* it is heard of no more */
	loop_free(s.loop);
}

/* A scanner that is started anew: the one before still holds its device. */
static void the_next_on_a_place_begins_when_the_one_before_has_ended(void **state)
{
	struct scene s;
	(void)state;
	begin(&s);
	child_free(start_shell(&s, stubborn, 0));
	int64_t from = now_ms();
	struct child *next = start_shell(&s, "echo $$; exec sleep 60", 0);
	assert_false(child_running(next));
	assert_int_equal(s.started, 1);
	loop_run(s.loop);
	assert_int_equal(s.lines, 1);
	assert_int_equal(s.started, 2);
	assert_true(child_running(next));
	assert_in_range(now_ms() - from, 0, 6000);
	child_free(next);
	children_wait(&s.all);
	assert_null(s.all.first);
	loop_free(s.loop);
}

static int no_more_watches;
int __real_loop_on_exit(struct loop *l, pid_t pid, loop_fn fn, void *context);
int __wrap_loop_on_exit(struct loop *l, pid_t pid, loop_fn fn, void *context);
int __wrap_loop_on_exit(struct loop *l, pid_t pid, loop_fn fn, void *context)
{
	return no_more_watches ? -EMFILE : __real_loop_on_exit(l, pid, fn, context);
}

/* Its exit could not be told, so it must not run. */
static void a_program_that_cannot_be_watched_is_not_left_running(void **state)
{
	struct scene s;
	(void)state;
	begin(&s);
	no_more_watches = 1;
	struct child *c = start_shell(&s, "echo $$; exec sleep 60", 0);
	assert_false(child_running(c));
	assert_int_equal(s.started, 0);
	run_for(&s, 300);
	assert_int_equal(s.lines, 0);
	child_free(c);
	assert_null(s.all.first);
	/* Nor is one left that is to end. */
	no_more_watches = 0;
	c = start_shell(&s, stubborn, 0);
	loop_run(s.loop);
	no_more_watches = 1;
	child_free(c);
	assert_false(lives(s.pid));
	assert_null(s.all.first);
	no_more_watches = 0;
	loop_free(s.loop);
}

/* What it was not sent it would never hear of. */
static void a_program_that_does_not_read_is_started_anew(void **state)
{
	struct scene s;
	static char part[1 << 20];
	int n = 0, parts = 0;
	(void)state;
	begin(&s);
	struct child *c = start_shell(&s, "echo $$; exec sleep 60", 1);
	loop_run(s.loop);
	memset(part, 'x', sizeof part);
	while (n == 0 && parts < 12) {
		n = child_send(c, part, sizeof part);
		parts += n == 0;
	}
	assert_int_equal(n, -ENOBUFS);
	assert_in_range(parts, 7, 9);
	loop_run(s.loop); /* until the next one says something */
	assert_int_equal(s.ended, 1);
	assert_int_equal(s.started, 2);
	assert_int_equal(s.lines, 2);
	child_free(c);
	children_wait(&s.all);
	loop_free(s.loop);
}

/* A second after the first has said that it is there: who stops a program is no fault of it. */
static void look(void *context)
{
	struct scene *s = context;
	children_look(&s->all);
}

static void a_program_that_was_stopped_is_started_anew(void **state)
{
	struct scene s;
	(void)state;
	begin(&s);
	struct child *c = start_shell(&s, "echo $$; exec sleep 60", 0);
	loop_run(s.loop);
	child_signal(c, SIGSTOP);
	assert_int_equal(loop_after(s.loop, 200, look, &s), 0);
	loop_run(s.loop); /* until the next one says something */
	assert_int_equal(s.ended, 1);
	assert_int_equal(s.started, 2);
	look(&s); /* one that works is left alone */
	assert_int_equal(child_running(c), 1);
	child_free(c);
	children_wait(&s.all);
	loop_free(s.loop);
}

/* A pipe's end: what its program reads from there it says, and another program has nothing there. */
static void a_program_gets_what_it_is_handed_and_no_other_does(void **state)
{
	struct scene s;
	int pipe_of[2];
	(void)state;
	begin(&s);
	assert_int_equal(pipe2(pipe_of, O_CLOEXEC), 0);
	assert_int_equal(write(pipe_of[1], "4711\n", 5), 5);
	s.handed = pipe_of[0];
	struct child *c = start_shell(&s, "read x <&3; echo $x; exec sleep 60", 0);
	loop_run(s.loop);
	assert_int_equal(s.pid, 4711);
	child_free(c);
	children_wait(&s.all);
	s.handed = -1;
	c = start_shell(&s, "if (: <&3) 2>/dev/null; then echo 1; else echo 2; fi; exec sleep 60", 0);
	loop_run(s.loop);
	assert_int_equal(s.pid, 2);
	child_free(c);
	children_wait(&s.all);
	close(pipe_of[0]);
	close(pipe_of[1]);
	loop_free(s.loop);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_program_that_does_not_end_keeps_nobody),
	    cmocka_unit_test(the_next_on_a_place_begins_when_the_one_before_has_ended),
	    cmocka_unit_test(a_program_that_cannot_be_watched_is_not_left_running),
	    cmocka_unit_test(a_program_that_does_not_read_is_started_anew),
	    cmocka_unit_test(a_program_that_was_stopped_is_started_anew),
	    cmocka_unit_test(a_program_gets_what_it_is_handed_and_no_other_does),
	};
	signal(SIGPIPE, SIG_IGN);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
