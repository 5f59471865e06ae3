/* A folder of the target's own, in memory where there is such a place, removed at the end. */
#ifndef BANDTALLY_TESTS_FUZZ_FOLDER_H
#define BANDTALLY_TESTS_FUZZ_FOLDER_H

#include "tests/fuzz/fuzz.h"

static char folder[64];

static inline void folder_remove(void)
{
	char command[128];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	must(system(command) == 0, command);
}

static inline void folder_make(void)
{
	if (folder[0])
		return;
	snprintf(folder, sizeof folder, "%s/bandtally-fuzz-XXXXXX",
	         access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp");
	must(mkdtemp(folder) != NULL, "no folder");
	atexit(folder_remove);
}

/* The file's path, until the next call. */
static inline const char *folder_write(const char *name, const void *data, size_t size)
{
	static char path[160];
	folder_make();
	snprintf(path, sizeof path, "%s/%s", folder, name);
	int fd = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
	must(fd >= 0 && write(fd, data, size) == (ssize_t)size, "a file cannot be written");
	close(fd);
	return path;
}

#endif
