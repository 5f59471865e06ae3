#include "run/sound.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/file.h"

static const char *const names[] = {"station.ini", "policy.ini"};

static void begin_anew(struct station *st)
{
	int32_t released = st->released;
	memset(st, 0, sizeof *st);
	st->released = released;
}

enum saying sound_read(struct settings *s, struct station *st, const char *folder,
                       char fault[SOUND_FAULT_MAX])
{
	struct error e = {0}, kept = {0};
	char place[PATH_MAX];
	struct stat file;
	fault[0] = 0;
	if (settings_read(s, st, folder, &e) == 0)
		return SAY_NONE;
	snprintf(fault, SOUND_FAULT_MAX, "%.*s", SOUND_FAULT_MAX - 1, e.text);
	begin_anew(st);
	snprintf(place, sizeof place, "%.3800s/" SOUND_FOLDER, folder);
	int there = stat(place, &file) == 0;
	if (there && settings_read_from(s, st, folder, place, &kept) == 0)
		return SAY_FAULT_SETTINGS_KEPT;
	begin_anew(st);
	settings_default(s, st);
	return SAY_FAULT_SETTINGS_NONE;
}

static int keep_file(const char *folder, const char *name)
{
	char from[PATH_MAX], to[PATH_MAX];
	_cleanup_(buf_free) struct buf now = {0}, kept = {0};
	snprintf(from, sizeof from, "%.3800s/%s", folder, name);
	snprintf(to, sizeof to, "%.3800s/" SOUND_FOLDER "/%s", folder, name);
	int n = file_read(from, &now);
	if (n == -ENOENT) /* without it the defaults hold, and so they do then */
		return unlink(to) < 0 && errno != ENOENT ? -errno : 0;
	if (n < 0)
		return n;
	if (file_read(to, &kept) == 0 && kept.size == now.size &&
	    (!now.size || memcmp(kept.data, now.data, now.size) == 0))
		return 0;
	return file_replace(to, 0640, now.data, now.size);
}

int sound_keep(const char *folder, struct error *e)
{
	char place[PATH_MAX];
	int n = 0;
	snprintf(place, sizeof place, "%.3800s/" SOUND_FOLDER, folder);
	if (mkdir(place, 0750) < 0 && errno != EEXIST)
		n = -errno;
	for (size_t i = 0; n == 0 && i < sizeof names / sizeof *names; i++)
		n = keep_file(folder, names[i]);
	return n < 0 ? error_set(e, n, "cannot keep the settings in %.400s: %s: check the data folder", place,
	                         strerror(-n))
	             : 0;
}
