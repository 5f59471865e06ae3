#include "run/aside.h"

#include <dirent.h>
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "base/log.h"
#include "record/store.h"

#define BEFORE "record-damaged-"
#define BEHIND ".db"

int aside_put(const char *folder, struct error *e)
{
	static const char *const parts[] = {"-wal", "-shm",
	                                    ""}; /* the record itself last: until then it is there */
	char from[PATH_MAX], to[PATH_MAX], when[32];
	time_t now = time(NULL);
	struct tm utc;
	gmtime_r(&now, &utc);
	strftime(when, sizeof when, "%Y%m%dT%H%M%SZ", &utc);
	for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
		snprintf(from, sizeof from, "%.3800s/" RECORD_FILE "%s", folder, parts[i]);
		snprintf(to, sizeof to, "%.3800s/" BEFORE "%s" BEHIND "%s", folder, when, parts[i]);
		if (rename(from, to) < 0 && (errno != ENOENT || !parts[i][0]))
			return error_set(
			    e, -errno,
			    "cannot keep the damaged record %.400s aside: %s: check the data folder", from,
			    strerror(errno));
	}
	log_warn(LOG_ASIDE, "the record could not be read: it lies, unchanged, in %s", to);
	return 0;
}

int aside_find(const char *folder, char *path, size_t size)
{
	const size_t n = strlen(BEHIND);
	int found = 0;
	DIR *dir = opendir(folder);
	for (struct dirent *x = dir ? readdir(dir) : NULL; x && !found; x = readdir(dir)) {
		size_t length = strlen(x->d_name);
		found = strncmp(x->d_name, BEFORE, strlen(BEFORE)) == 0 && length > n &&
		        strcmp(x->d_name + length - n, BEHIND) == 0;
		if (found)
			snprintf(path, size, "%.200s/%.100s", folder, x->d_name);
	}
	if (dir)
		closedir(dir);
	return found;
}
