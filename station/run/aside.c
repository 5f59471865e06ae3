#include "run/aside.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "base/log.h"
#include "record/store.h"

#define BEFORE "record-damaged-"
#define BEHIND ".db"
#define WANTED "record-refuses"

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

static void wanted_path(const char *folder, char path[PATH_MAX])
{
	snprintf(path, PATH_MAX, "%.3800s/" WANTED, folder);
}

void aside_want(const char *folder)
{
	char path[PATH_MAX];
	wanted_path(folder, path);
	int fd = open(path, O_WRONLY | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0640);
	if (fd < 0)
		log_warn_errno(LOG_RECORD, -errno, "cannot note that the record is damaged");
	else
		close(fd);
}

int aside_wanted(const char *folder)
{
	char path[PATH_MAX];
	wanted_path(folder, path);
	return access(path, F_OK) == 0;
}

void aside_over(const char *folder)
{
	char path[PATH_MAX];
	wanted_path(folder, path);
	unlink(path);
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
