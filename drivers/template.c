/* The smallest driver: each line of a file is a code. A new driver can begin as a copy of this file. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>

#include "drivers/driver.h"

struct lines {
	const char *path; /* borrowed from the command line */
	FILE *file;
};

static void *lines_new(void)
{
	return calloc(1, sizeof(struct lines));
}

static void lines_free(void *state)
{
	struct lines *l = state;
	if (l->file)
		fclose(l->file);
	free(l);
}

static int lines_open(void *state, int count, char *const *words, struct error *e)
{
	struct lines *l = state;
	if (count != 1) {
		error_set(e, -EINVAL, "no file: one is needed: name a file with one code on each line");
		return DRIVER_USAGE;
	}
	l->path = words[0];
	l->file = fopen(l->path, "re");
	if (!l->file)
		return error_set(e, -errno, "%s: cannot be opened: %s: name a file that exists", l->path,
		                 strerror(errno));
	return 0;
}

static const char *lines_device(const void *state)
{
	return ((const struct lines *)state)->path;
}

static void free_text(char **text)
{
	free(*text);
}

static int lines_run(void *state, struct wire *out, struct error *e)
{
	struct lines *l = state;
	_cleanup_(free_text) char *line = NULL;
	size_t room = 0;
	ssize_t n;
	while ((n = getline(&line, &room, l->file)) >= 0) {
		if (n > 0 && line[n - 1] == '\n')
			n--;
		if (n == 0)
			continue;
		int r = wire_scan(out, &(struct wire_scan){.data = line, .size = (size_t)n});
		if (r < 0)
			return error_set(e, r, "%s: a code was not sent: %s: start the driver again", l->path,
			                 strerror(-r));
	}
	if (ferror(l->file))
		return error_set(e, -EIO, "%s: cannot be read: %s: look at the device", l->path,
		                 strerror(EIO));
	return 0;
}

const struct driver this_driver = {
    .name = "template",
    .usage = "FILE\nSends each line of FILE as a code. A pattern for new drivers.\n",
    .new = lines_new,
    .free = lines_free,
    .open = lines_open,
    .device = lines_device,
    .run = lines_run,
};
