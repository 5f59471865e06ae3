/* Plays a log of driver lines as a device would send them, for tests and for showing what happened.
 *
 * A log holds one driver line on each line; a recorded session puts the time before it, in whole milliseconds
 * from its beginning: "+1250 {"v":1,…}". Empty lines and lines that begin with '#' are passed over, and so is
 * the log's own hello, for this program has said one. Lines without a time follow the one before at once. */
#include <errno.h>
#include <getopt.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <time.h>

#include "base/clock.h"
#include "drivers/driver.h"

#define LOG_TIME_MAX_MS (7 * 24 * 3600 * INT64_C(1000))

enum { OPTION_SPEED = 256 };

static const struct option options[] = {{"speed", required_argument, NULL, OPTION_SPEED}, {0}};

struct replay {
	const char *path; /* borrowed from the command line */
	FILE *file;
	double speed; /* 0: as fast as it can be read */
	int64_t start_ms;
	int64_t last_ms; /* time of the line before, on the log's own clock */
	unsigned line;
};

static void free_text(char **text)
{
	free(*text);
}

static void *replay_new(void)
{
	struct replay *r = calloc(1, sizeof *r);
	if (r)
		r->speed = 1;
	return r;
}

static void replay_free(void *state)
{
	struct replay *r = state;
	if (r->file && r->file != stdin)
		fclose(r->file);
	free(r);
}

static int replay_option(void *state, int val, const char *argument, struct error *e)
{
	struct replay *r = state;
	char *end;
	(void)val; /* there is only --speed */
	double speed = strtod(argument, &end);
	if (end == argument || *end || !(speed >= 0) || speed > 1e6)
		return error_set(e, -EINVAL,
		                 "--speed %.60s: no number from 0 to 1000000: 1 is as recorded, 0 at once",
		                 argument);
	r->speed = speed;
	return 0;
}

static int replay_open(void *state, int count, char *const *words, struct error *e)
{
	struct replay *r = state;
	if (count != 1) {
		error_set(e, -EINVAL, "one log is needed: %d were named: name one file, or - for stdin",
		          count);
		return DRIVER_USAGE;
	}
	r->path = words[0];
	r->file = strcmp(r->path, "-") ? fopen(r->path, "re") : stdin;
	if (!r->file)
		return error_set(e, -errno, "%s: cannot be opened: %s: name a log that exists", r->path,
		                 strerror(errno));
	return 0;
}

static const char *replay_device(const void *state)
{
	return ((const struct replay *)state)->path;
}

/* Takes "+1250 " off the front of a line; -1 in `at_ms` where there is none. */
static int take_time(struct replay *r, const char **line, int64_t *at_ms, struct error *e)
{
	*at_ms = -1;
	if (**line != '+')
		return 0;
	char *end;
	errno = 0;
	long long ms = strtoll(*line + 1, &end, 10);
	if (end == *line + 1 || (*line)[1] == '-' || *end != ' ' || errno || ms > LOG_TIME_MAX_MS)
		return error_set(e, -EINVAL, "%s:%u: no time after '+': write whole milliseconds and a space",
		                 r->path, r->line);
	if (ms < r->last_ms)
		return error_set(e, -EINVAL, "%s:%u: the time goes back: keep the lines in order", r->path,
		                 r->line);
	*at_ms = r->last_ms = ms;
	*line = end + 1;
	return 0;
}

static void wait_until(const struct replay *r, int64_t at_ms)
{
	if (r->speed <= 0 || at_ms < 0)
		return;
	int64_t wait_ms = (int64_t)((double)at_ms / r->speed) - (clock_now().boot_ms - r->start_ms);
	struct timespec left = {.tv_sec = wait_ms / 1000, .tv_nsec = wait_ms % 1000 * 1000000};
	while (wait_ms > 0 && nanosleep(&left, &left) < 0 && errno == EINTR)
		;
}

static int play(struct replay *r, const char *line, struct wire *out, struct error *e)
{
	int64_t at_ms;
	struct wire_line seen;
	struct error why = {0};
	r->line++;
	if (*line == '\0' || *line == '#')
		return 0;
	int status = take_time(r, &line, &at_ms, e);
	if (status < 0)
		return status;
	status = wire_read_line(line, strlen(line), &seen, &why);
	if (status < 0)
		return error_set(e, status, "%s:%u: %s", r->path, r->line, why.text);
	if (seen.kind == WIRE_HELLO)
		return 0;
	wait_until(r, at_ms);
	status = wire_pass_on(out, line, strlen(line), &why);
	return status < 0 ? error_set(e, status, "%s:%u: %s", r->path, r->line, why.text) : 0;
}

static int replay_run(void *state, struct wire *out, struct error *e)
{
	struct replay *r = state;
	_cleanup_(free_text) char *line = NULL;
	size_t room = 0;
	ssize_t n;
	int status = 0;
	r->start_ms = clock_now().boot_ms;
	while (status == 0 && (n = getline(&line, &room, r->file)) >= 0) {
		if (n > 0 && line[n - 1] == '\n')
			line[--n] = '\0';
		/* A NUL would hide the rest of the line from the check. */
		status =
		    strlen(line) == (size_t)n
		        ? play(r, line, out, e)
		        : error_set(e, -EINVAL, "%s:%u: a NUL in the line: write text", r->path, r->line + 1);
	}
	if (status == 0 && ferror(r->file))
		return error_set(e, -EIO, "%s: cannot be read: %s: name a file", r->path, strerror(EIO));
	return status;
}

const struct driver this_driver = {
    .name = "replay",
    .usage = "[--speed N] FILE\n"
             "Sends the driver lines that FILE holds ('-': stdin), at the times that stand before them:\n"
             "  +1250 {\"v\":1,\"scan\":{\"aim\":\"]C1\",\"data\":\"…\"}}    1250 ms after the beginning\n"
             "A line without a time follows the one before at once; # begins a comment line.\n"
             "  --speed N    N times as fast as recorded; 0 without waiting (1 unless set)\n"
             "example: scan-replay --speed 10 morning.log\n",
    .options = options,
    .new = replay_new,
    .free = replay_free,
    .option = replay_option,
    .open = replay_open,
    .device = replay_device,
    .run = replay_run,
};
