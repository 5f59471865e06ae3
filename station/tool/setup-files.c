#include "tool/setup-files.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"
#include "base/ini-edit.h"
#include "tool/client.h"
#include "tool/setup-run.h"

#define SETTLED "# Settled by 'bandtally setup':"

/* What the station reads of a place; the first SETUP_FILES may be changed. */
static const char *const names[] = {
    [SETUP_STATION] = "station.ini", [SETUP_SCANNERS] = "scanners.ini", "policy.ini", "labels.ini"};
#define N_NAMES ((int)(sizeof names / sizeof *names))

static void place_path(const struct setup_files *f, int which, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s/%s", f->place, names[which]);
}

/* Where a file of the data folder lies in truth; what is not there will lie in the data folder. */
static int find_file(const char *name, char out[PATH_MAX], struct error *e)
{
	char path[PATH_MAX], folder[PATH_MAX];
	snprintf(path, sizeof path, "%.3000s/%s", client_folder, name);
	if (realpath(path, out))
		return 0;
	if (errno != ENOENT)
		return error_set(e, -errno,
		                 "cannot read %.300s: %s: run it as root, or as the station's user", path,
		                 strerror(errno));
	ssize_t n = readlink(path, out, PATH_MAX - 1);
	if (n > 0) {
		out[n] = 0;
		return 0;
	}
	if (!realpath(client_folder, folder))
		return error_set(e, -errno,
		                 "cannot look into %.300s: %s: install the station first, or give its folder "
		                 "with --data",
		                 client_folder, strerror(errno));
	snprintf(out, PATH_MAX, "%.3000s/%s", folder, name);
	return 0;
}

static int may_write(const char *path, struct error *e)
{
	char folder[PATH_MAX];
	snprintf(folder, sizeof folder, "%.*s", (int)(strrchr(path, '/') - path + 1), path);
	if (access(folder, W_OK) == 0)
		return 0;
	return error_set(e, -errno,
	                 "cannot change %.300s: %s: run it as root (sudo bandtally setup), or as the "
	                 "station's user",
	                 path, strerror(errno));
}

static int open_file(struct setup_files *f, int which, struct error *e)
{
	struct setup_file *one = &f->list[which];
	struct stat st;
	int n = find_file(names[which], one->path, e);
	if (n == 0)
		n = may_write(one->path, e);
	if (n < 0)
		return n;
	bool there = stat(one->path, &st) == 0;
	one->mode = there ? st.st_mode & 0777 : 0644;
	one->owner = there ? st.st_uid : geteuid();
	one->group = there ? st.st_gid : getegid();
	n = file_read_regular(one->path, &one->before);
	if (n == -ENOENT)
		n = 0;
	if (n == 0)
		n = buf_add(&one->text, one->before.data ? one->before.data : "", one->before.size);
	return n < 0 ? error_set(e, n, "cannot read %.300s: %s: run it as root, or as the station's user",
	                         one->path, strerror(-n))
	             : 0;
}

/* The candidate as a file, for whoever reads it. */
static int lay_down(const struct setup_files *f, int which, struct error *e)
{
	char path[PATH_MAX];
	const struct buf *text = &f->list[which].text;
	place_path(f, which, path);
	int n = file_replace_soon(path, 0600, text->data ? text->data : "", text->size);
	return n < 0
	           ? error_set(e, n, "cannot write %s: %s: make room in its folder, or set TMPDIR to another",
	                       path, strerror(-n))
	           : 0;
}

/* bandtallyd's own sentence, without the folder that nobody knows. */
static int check(const struct setup_files *f, struct error *e)
{
	_cleanup_(buf_free) struct buf said = {0};
	char *argv[] = {"bandtallyd",     "--data", (char *)client_folder, "--check", "--settings",
	                (char *)f->place, NULL};
	int n = run_own("bandtallyd", argv, 1, &said);
	if (n == 0)
		return 0;
	if (n < 0 || !said.size)
		return error_set(e, n < 0 ? n : -EIO,
		                 "cannot start bandtallyd, which checks the settings: %s: install it beside "
		                 "bandtally",
		                 n < 0 ? strerror(-n) : "it said nothing");
	const char *why = strstr(said.data, "not sound: "), *inside;
	why = why ? why + strlen("not sound: ") : said.data;
	inside = strstr(why, f->place);
	why = inside ? inside + strlen(f->place) + 1 : why;
	return error_set(e, -EINVAL, "%.*s", (int)strcspn(why, "\n"), why);
}

int setup_files_open(struct setup_files *f, struct error *e)
{
	const char *temporary = getenv("TMPDIR");
	char there[PATH_MAX], path[PATH_MAX];
	*f = (struct setup_files){0};
	for (int i = 0; i < SETUP_FILES; i++) {
		int n = open_file(f, i, e);
		if (n < 0)
			return n;
	}
	snprintf(f->place, sizeof f->place, "%.38s/bandtally-setup-XXXXXX",
	         temporary && strlen(temporary) <= 38 ? temporary : "/tmp");
	if (!mkdtemp(f->place)) {
		int n = -errno;
		f->place[0] = 0;
		return error_set(e, n,
		                 "cannot make a folder for a while: %s: set TMPDIR to a place with room",
		                 strerror(-n));
	}
	for (int i = 0; i < N_NAMES; i++) {
		place_path(f, i, path);
		int n = i < SETUP_FILES ? lay_down(f, i, e) : find_file(names[i], there, e);
		if (n == 0 && i >= SETUP_FILES && symlink(there, path) < 0)
			n = error_set(e, -errno, "cannot write %s: %s: set TMPDIR to another folder", path,
			              strerror(errno));
		if (n < 0)
			return n;
	}
	char why[ERROR_TEXT_MAX];
	int n = check(f, e);
	snprintf(why, sizeof why, "%s", n < 0 ? e->text : "");
	return n < 0 ? error_set(e, n, "the settings are not sound as they are: %.400s: mend that first", why)
	             : 0;
}

void setup_files_close(struct setup_files *f)
{
	char path[PATH_MAX];
	for (int i = 0; i < N_NAMES && f->place[0]; i++) {
		place_path(f, i, path);
		unlink(path);
	}
	if (f->place[0])
		rmdir(f->place);
	for (int i = 0; i < SETUP_FILES; i++) {
		buf_free(&f->list[i].before);
		buf_free(&f->list[i].text);
	}
}

int setup_each(const struct setup_files *f, enum setup_which which, ini_value_fn each, void *context,
               struct error *e)
{
	char path[PATH_MAX];
	place_path(f, (int)which, path);
	return ini_read(path, each, context, e);
}

struct wanted {
	const char *section, *name;
	char *out;
	size_t size;
};

static int on_value(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct wanted *w = context;
	(void)e;
	if (strcmp(section, w->section) == 0 && strcmp(name, w->name) == 0)
		snprintf(w->out, w->size, "%s", value);
	return 0;
}

void setup_value(const struct setup_files *f, const char *section, const char *name, char *out, size_t size)
{
	struct wanted w = {section, name, out, size};
	struct error e;
	out[0] = 0;
	setup_each(f, SETUP_STATION, on_value, &w, &e);
}

void setup_value_was(const char *section, const char *name, char *out, size_t size)
{
	struct wanted w = {section, name, out, size};
	struct error e;
	char path[PATH_MAX];
	out[0] = 0;
	snprintf(path, sizeof path, "%.3000s/settings-sound/station.ini", client_folder);
	ini_read(path, on_value, &w, &e);
}

/* Takes `fresh`, which is used up, for the candidate where the station would; else all is as it was. */
static int try(struct setup_files *f, enum setup_which which, struct buf *fresh, struct error *e)
{
	struct buf *text = &f->list[which].text, old = *text;
	struct error again;
	*text = *fresh;
	*fresh = (struct buf){0};
	int n = lay_down(f, (int)which, e);
	if (n == 0)
		n = check(f, e);
	if (n == 0) {
		buf_free(&old);
		return 0;
	}
	buf_free(text);
	*text = old;
	lay_down(f, (int)which, &again);
	return n;
}

/* What a file cannot hold as it is. */
static int can_stand(const char *value, struct error *e)
{
	if (strpbrk(value, "\r\n") || value[0] == ' ' || (value[0] && value[strlen(value) - 1] == ' '))
		return error_set(
		    e, -EINVAL,
		    "'%.60s' cannot stand in a settings file: leave out line breaks and spaces round it",
		    value);
	return 0;
}

int setup_put(struct setup_files *f, const char *section, const char *name, const char *value,
              struct error *e)
{
	const struct buf *text = &f->list[SETUP_STATION].text;
	struct buf fresh = {0};
	int n = can_stand(value, e);
	if (n < 0)
		return n;
	n = buf_add(&fresh, text->data ? text->data : "", text->size);
	if (n == 0)
		n = ini_put(&fresh, section, name, value);
	n = n < 0 ? error_set(e, n, "out of memory: try again") : try(f, SETUP_STATION, &fresh, e);
	buf_free(&fresh);
	return n;
}

int setup_drop(struct setup_files *f, const char *section, const char *name, struct error *e)
{
	const struct buf *text = &f->list[SETUP_STATION].text;
	struct buf fresh = {0};
	int n = buf_add(&fresh, text->data ? text->data : "", text->size);
	if (n == 0)
		ini_drop(&fresh, section, name);
	n = n < 0 ? error_set(e, n, "out of memory: try again") : try(f, SETUP_STATION, &fresh, e);
	buf_free(&fresh);
	return n;
}

int setup_add(struct setup_files *f, enum setup_which which, const char *lines, struct error *e)
{
	const struct buf *text = &f->list[which].text;
	struct buf fresh = {0};
	int n = buf_add(&fresh, text->data ? text->data : "", text->size);
	if (n == 0 && fresh.size && fresh.data[fresh.size - 1] != '\n')
		n = buf_add_text(&fresh, "\n");
	if (n == 0)
		n = buf_printf(&fresh, "%s%s", fresh.size ? "\n" : "", lines);
	n = n < 0 ? error_set(e, n, "out of memory: try again") : try(f, which, &fresh, e);
	buf_free(&fresh);
	return n;
}

/* The comment's line in station.ini, NULL where it has none. */
static const char *settled_line(const struct setup_files *f)
{
	const char *text = f->list[SETUP_STATION].text.data, *at = text ? strstr(text, SETTLED) : NULL;
	return at && (at == text || at[-1] == '\n') ? at : NULL;
}

bool setup_settled(const struct setup_files *f, const char *part)
{
	const char *at = settled_line(f), *end = at ? at + strcspn(at, "\n") : NULL;
	size_t n = strlen(part);
	for (at = at ? at + strlen(SETTLED) : NULL; at && at < end; at += strcspn(at, " \n")) {
		at += *at == ' ';
		if (strncmp(at, part, n) == 0 && strchr(" \n", at[n]))
			return true;
	}
	return false;
}

int setup_settle(struct setup_files *f, const char *part, struct error *e)
{
	struct buf fresh = {0}, *text = &f->list[SETUP_STATION].text;
	const char *at = settled_line(f);
	if (setup_settled(f, part))
		return 0;
	size_t before = at ? (size_t)(at - text->data) + strcspn(at, "\n") : 0;
	int n = buf_add(&fresh, text->data ? text->data : "", before);
	if (n == 0)
		n = at ? buf_printf(&fresh, " %s", part) : buf_printf(&fresh, SETTLED " %s\n", part);
	if (n == 0 && before < text->size)
		n = buf_add(&fresh, text->data + before, text->size - before);
	if (n < 0) {
		buf_free(&fresh);
		return error_set(e, n, "out of memory: try again");
	}
	buf_free(text);
	*text = fresh;
	return lay_down(f, SETUP_STATION, e);
}

static bool differs(const struct setup_file *one)
{
	return one->text.size != one->before.size ||
	       (one->text.size && memcmp(one->text.data, one->before.data, one->text.size) != 0);
}

/* As root it is not to be taken from the user whose file it is. */
static int put_in_place(const struct setup_file *one)
{
	int n = file_replace(one->path, one->mode, one->text.data, one->text.size);
	return n == 0 && chown(one->path, one->owner, one->group) < 0 ? -errno : n;
}

int setup_write(struct setup_files *f, struct error *e)
{
	int written = 0;
	/* station.ini last: it says what is settled. */
	for (int i = SETUP_FILES - 1; i >= 0; i--) {
		struct setup_file *one = &f->list[i];
		if (!differs(one))
			continue;
		int n = put_in_place(one);
		if (n < 0)
			return error_set(e, n,
			                 "cannot write %.300s: %s: it is as it was: make room, and again",
			                 one->path, strerror(-n));
		buf_clear(&one->before);
		if (buf_add(&one->before, one->text.data, one->text.size) < 0)
			return error_set(e, -ENOMEM, "out of memory: try again");
		printf("written: %s\n", one->path);
		written = 1;
	}
	return written;
}
