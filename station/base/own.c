#include "base/own.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

int own_path(char *out, size_t size, const char *name)
{
	char self[PATH_MAX];
	ssize_t n = readlink("/proc/self/exe", self, sizeof self);
	int why = n < 0 ? -errno : -ENAMETOOLONG;
	*out = 0;
	if (n < 0 || n == sizeof self) /* cut off, perhaps */
		return why;
	const char *slash = memrchr(self, '/', (size_t)n);
	int folder = slash ? (int)(slash - self) : 0,
	    length = snprintf(out, size, "%.*s/%s", folder, self, name);
	if (length < 0 || (size_t)length >= size) {
		*out = 0;
		return -ENAMETOOLONG;
	}
	return 0;
}

const char *own_file(const char *variable, const char *installed, const char *built, char *out, size_t size)
{
	const char *named = getenv(variable);
	if (named)
		return named;
	if (access(installed, R_OK) == 0 || own_path(out, size, built) < 0)
		return installed;
	return out;
}
