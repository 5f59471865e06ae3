#include "base/ini.h"

#include <ctype.h>
#include <errno.h>
#include <ini.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/file.h"

#define NAMES_MAX 512

struct reading {
	const char *path;
	ini_value_fn each;
	void *context;
	struct error *e;
	char *names[NAMES_MAX]; /* "section\nname" of what was seen */
	int n_names;
	int result;
};

/* The library leaves out what stands behind the bracket: a setting there would be none. */
static int ends_at_bracket(const char *line)
{
	const char *end = line[0] == '[' ? strchr(line, ']') : NULL;
	if (!end)
		return 1;
	end += 1 + strspn(end + 1, " \t\r\n\f\v");
	return !*end || *end == ';' || *end == '#';
}

/* Such a file is one line to the library, and a comment as a whole. */
static int has_bare_return(const char *line)
{
	const char *r = strchr(line, '\r');
	return r && r[1] && r[1] != '\n';
}

/* The lines are looked at before the library sees them: it would join, cut or accept what we refuse. */
static int check_lines(struct reading *r, FILE *f)
{
	char line[INI_LINE_MAX + 3];
	memset(line, 1, sizeof line);
	for (int number = 1; fgets(line, sizeof line, f); number++, memset(line, 1, sizeof line)) {
		size_t n = strlen(line);
		if (line + n !=
		    (char *)memrchr(line, 0, sizeof line)) /* the library sees nothing behind the first */
			return error_set(
			    r->e, -EINVAL,
			    "%s line %d: holds a byte that is no letter: write the file anew, as plain text",
			    r->path, number);
		if (n && line[n - 1] == '\n')
			n--;
		else if (!feof(f))
			return error_set(r->e, -EINVAL, "%s line %d: longer than %d bytes: shorten it",
			                 r->path, number, INI_LINE_MAX);
		/* A byte order mark, which it passes over as well. */
		const char *first = number == 1 && strncmp(line, "\xef\xbb\xbf", 3) == 0 ? line + 3 : line;
		size_t blank = strspn(first, " \t\r\n\f\v"); /* what the library takes for space */
		if (blank && first[blank])
			return error_set(
			    r->e, -EINVAL,
			    "%s line %d: begins with a space, which would make it part of the line "
			    "above: begin it in the first column",
			    r->path, number);
		if (!ends_at_bracket(first))
			return error_set(
			    r->e, -EINVAL,
			    "%s line %d: something stands behind the [section]: put it on a line of its own",
			    r->path, number);
		if (has_bare_return(first))
			return error_set(r->e, -EINVAL,
			                 "%s line %d: its lines end as in no text of this machine (CR "
			                 "alone): save it with LF",
			                 r->path, number);
	}
	return ferror(f)
	           ? error_set(r->e, -EIO, "%s: cannot be read to its end: put a copy in its place", r->path)
	           : 0;
}

/* What is no regular file would be taken for an empty one (a folder), or be waited for (a pipe). */
static int open_regular(const char *path, FILE **f, struct error *e)
{
	int fd = file_open(path);
	if (fd == -EISDIR || fd == -ENXIO)
		return error_set(e, fd, "%s: is no file, but %s: put the settings file in its place", path,
		                 fd == -EISDIR ? "a folder" : "a pipe or a device");
	if (fd < 0)
		return error_set(e, fd, "%s: %s: check the path and its permissions", path, strerror(-fd));
	*f = fdopen(fd, "r");
	if (*f)
		return 0;
	close(fd);
	return error_set(e, -ENOMEM, "out of memory: try again");
}

static int on_value(void *user, const char *section, const char *name, const char *value)
{
	struct reading *r = user;
	char key[INI_LINE_MAX * 2 + 2];
	if (r->result < 0) /* the library reads on behind a fault, which it remembers by its line alone */
		return 0;
	snprintf(key, sizeof key, "%s\n%s", section, name);
	for (int i = 0; i < r->n_names; i++)
		if (strcmp(r->names[i], key) == 0) {
			r->result = error_set(r->e, -EINVAL, "given twice: remove one");
			return 0;
		}
	if (r->n_names == NAMES_MAX || !(r->names[r->n_names] = strdup(key))) {
		r->result = error_set(r->e, -ENOMEM, "too many settings: remove some");
		return 0;
	}
	r->n_names++;
	r->result = r->each(r->context, section, name, value ? value : "", r->e);
	return r->result < 0 ? 0 : 1;
}

int ini_read(const char *path, ini_value_fn each, void *context, struct error *e)
{
	struct error own = {0};
	struct reading r = {.path = path, .each = each, .context = context, .e = e ? e : &own};
	FILE *f;
	int result = open_regular(path, &f, e);
	if (result < 0)
		return result;
	result = check_lines(&r, f);
	if (result == 0) {
		rewind(f);
		ini_allow_inline_comments = false; /* it would leave out the rest of a sentence behind " ;" */
		int line = ini_parse_file(f, on_value, &r);
		if (r.result < 0) {
			char why[ERROR_TEXT_MAX];
			snprintf(why, sizeof why, "%s", r.e->text);
			result = error_set(e, r.result, "%s line %d: %.300s", path, line, why);
		} else if (line > 0) {
			result =
			    error_set(e, -EINVAL, "%s line %d: not a [section] and not name = value: mend it",
			              path, line);
		}
	}
	fclose(f);
	for (int i = 0; i < r.n_names; i++)
		free(r.names[i]);
	return result;
}
