#include "run/sound.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/file.h"
#include "base/ini.h"
#include "base/log.h"

#define STATION "station.ini"
#define POLICY "policy.ini"
#define SCANNERS "scanners.ini"

static void begin_anew(struct station *st)
{
	int32_t released = st->released;
	memset(st, 0, sizeof *st);
	st->released = released;
}

static void kept_path(char out[PATH_MAX], const char *folder, const char *name)
{
	snprintf(out, PATH_MAX, "%.3800s/" SOUND_FOLDER "/%s", folder, name);
}

/* --- what was there ----------------------------------------------------------------------------------------- */

static bool is_blank(const struct buf *text)
{
	for (size_t i = 0; i < text->size; i++)
		if (!strchr(" \t\r\n", text->data[i]) || !text->data[i])
			return false;
	return true;
}

/* A file of which nothing is there now, though a copy of it was kept. */
static int gone(const char *folder, const char *name, struct error *e)
{
	char path[PATH_MAX], kept[PATH_MAX];
	_cleanup_(buf_free) struct buf now = {0}, was = {0};
	snprintf(path, sizeof path, "%.3800s/%s", folder, name);
	kept_path(kept, folder, name);
	int n = file_read_regular(path, &now);
	if ((n < 0 && n != -ENOENT) || !is_blank(&now) || file_read_regular(kept, &was) < 0 || is_blank(&was))
		return 0;
	const char *how = n < 0 ? "gone" : "empty";
	if (strcmp(name, STATION) != 0)
		return error_set(
		    e, -ENOENT,
		    "%.200s is %s, and was not at the last start: put it back (a copy is in " SOUND_FOLDER
		    "), or, if that is meant, write one that holds a comment (#) alone",
		    path, how);
	return error_set(
	    e, -ENOENT,
	    "%.200s is %s, and was not at the last start: put it back (a copy is in " SOUND_FOLDER
	    "), or, if that is meant, write one that says [site] letters and [station] number",
	    path, how);
}

struct identity {
	char site[SITE_MAX];
	int number;
};

static int on_identity(void *context, const char *section, const char *name, const char *value,
                       struct error *e)
{
	struct identity *id = context;
	(void)e;
	if (strcmp(section, "site") == 0 && strcmp(name, "letters") == 0)
		snprintf(id->site, sizeof id->site, "%.2s", value);
	if (strcmp(section, "station") == 0 && strcmp(name, "number") == 0)
		id->number = atoi(value);
	return 0;
}

/* Of the copy that was kept; a setting that it does not say is as begin() in settings.c has it. */
static int identity_of(const char *folder, struct identity *id)
{
	char path[PATH_MAX];
	struct error none = {0};
	*id = (struct identity){.site = "BC"};
	kept_path(path, folder, STATION);
	return ini_read(path, on_identity, id, &none);
}

int sound_number(const char *folder)
{
	struct identity was;
	return identity_of(folder, &was) < 0 ? -1 : was.number;
}

int sound_check(const struct settings *s, const struct station *st, const char *folder, struct error *e)
{
	struct identity was;
	int n = gone(folder, STATION, e);
	if (n == 0)
		n = gone(folder, POLICY, e);
	if (n < 0 || identity_of(folder, &was) < 0)
		return n;
	if (!s->site_said && strcmp(was.site, st->site) != 0)
		return error_set(e, -EUCLEAN,
		                 "%.200s/" STATION " does not say [site] letters, which were %s at the last "
		                 "start: it may be cut off: put back what is missing, or write the letters "
		                 "that are meant",
		                 folder, was.site);
	if (!s->number_said && was.number != st->number)
		return error_set(e, -EUCLEAN,
		                 "%.200s/" STATION " does not say [station] number, which was %d at the last "
		                 "start: it may be cut off: put back what is missing, or write the number "
		                 "that is meant",
		                 folder, was.number);
	return 0;
}

int sound_site_check(const struct settings *s, const struct station *st, const char *folder, struct error *e)
{
	const struct recorded *is = &st->recorded;
	if (s->site_said || !(is->known >> SETTING_SITE & 1) || strcmp(is->site, st->site) == 0)
		return 0;
	return error_set(e, -EUCLEAN,
	                 "%.200s/" STATION " does not say [site] letters, which were %s when the record was "
	                 "written: write them, or those that are meant",
	                 folder, is->site);
}

/* --- reading ------------------------------------------------------------------------------------------------- */

static void say_why(const struct error *e, char fault[SOUND_FAULT_MAX])
{
	snprintf(fault, SOUND_FAULT_MAX, "%.*s", SOUND_FAULT_MAX - 1, e->text);
}

enum saying sound_read(struct settings *s, struct station *st, const char *folder,
                       char fault[SOUND_FAULT_MAX])
{
	struct error e = {0}, kept = {0};
	char place[PATH_MAX];
	struct stat file;
	fault[0] = 0;
	if (settings_read(s, st, folder, &e) == 0 && sound_check(s, st, folder, &e) == 0)
		return SAY_NONE;
	say_why(&e, fault);
	begin_anew(st);
	snprintf(place, sizeof place, "%.3800s/" SOUND_FOLDER, folder);
	int there = stat(place, &file) == 0;
	if (there && settings_read_from(s, st, folder, place, &kept) == 0)
		return SAY_FAULT_SETTINGS_KEPT;
	begin_anew(st);
	settings_default(s, st);
	return SAY_FAULT_SETTINGS_NONE;
}

/* --- keeping ------------------------------------------------------------------------------------------------- */

static int keep_file(const char *folder, const char *name)
{
	char from[PATH_MAX], to[PATH_MAX];
	_cleanup_(buf_free) struct buf now = {0}, kept = {0};
	snprintf(from, sizeof from, "%.3800s/%s", folder, name);
	kept_path(to, folder, name);
	int n = file_read_regular(from, &now);
	if (n == -ENOENT || (n == 0 && is_blank(&now)))
		return 0;
	if (n < 0)
		return n;
	if (file_read_regular(to, &kept) == 0 && kept.size == now.size &&
	    memcmp(kept.data, now.data, now.size) == 0)
		return 0;
	return file_replace(to, 0640, now.data, now.size);
}

static int keep(const char *folder, const char *const names[], size_t count, struct error *e)
{
	char place[PATH_MAX];
	int n = 0;
	snprintf(place, sizeof place, "%.3800s/" SOUND_FOLDER, folder);
	if (mkdir(place, 0750) < 0 && errno != EEXIST)
		n = -errno;
	for (size_t i = 0; n == 0 && i < count; i++)
		n = keep_file(folder, names[i]);
	return n < 0 ? error_set(e, n, "cannot keep the settings in %.400s: %s: check the data folder", place,
	                         strerror(-n))
	             : 0;
}

int sound_keep(const char *folder, struct error *e)
{
	static const char *const names[] = {STATION, POLICY};
	return keep(folder, names, 2, e);
}

/* --- the scanners -------------------------------------------------------------------------------------------- */

static int read_scanners(struct scanners *out, const char *folder, const char *place, struct error *e)
{
	char path[PATH_MAX];
	snprintf(path, sizeof path, "%.3800s/" SCANNERS, place);
	int n = scanners_read(path, out, e);
	if (n == -ENOENT || n == -ENOTDIR)
		n = 0;
	return n == 0 && place == folder ? gone(folder, SCANNERS, e) : n;
}

int sound_scanners_check(const char *folder, const char *place, struct error *e)
{
	static struct scanners scanners; /* 25 kB; one thread */
	return read_scanners(&scanners, folder, place, e);
}

enum saying sound_scanners(struct scanners *out, const char *folder, char fault[SOUND_FAULT_MAX])
{
	static const char *const names[] = {SCANNERS};
	char path[PATH_MAX];
	struct error e = {0};
	fault[0] = 0;
	if (read_scanners(out, folder, folder, &e) == 0) {
		if (keep(folder, names, 1, &e) < 0)
			log_warn(LOG_SETTINGS, "%s", e.text);
		return SAY_NONE;
	}
	say_why(&e, fault);
	kept_path(path, folder, SCANNERS);
	if (scanners_read(path, out, &e) == 0)
		return SAY_FAULT_SETTINGS_KEPT;
	*out = (struct scanners){0};
	return SAY_FAULT_SCANNERS_NONE;
}
