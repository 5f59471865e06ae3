#include "tool/central-files.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int central_name_read(const char *name, char site[3], int32_t *number)
{
	int used = 0, n = 0;
	char letters[3] = "";
	if (sscanf(name, "%2[A-Z]-%2d%n", letters, &n, &used) != 2 || used != 5 || strlen(letters) != 2)
		return 0;
	memcpy(site, letters, 3);
	*number = n;
	return name[used] == 0 || strcmp(name + used, ".db") == 0;
}

static int by_name(const void *a, const void *b)
{
	return strcmp(((const struct central_file *)a)->name, ((const struct central_file *)b)->name);
}

static int add(struct central_files *all, const char *folder, const char *name)
{
	struct central_file one = {0}, *more;
	if (!strstr(name, ".db") || !central_name_read(name, one.site, &one.number))
		return 0;
	more = realloc(all->list, ((size_t)all->count + 1) * sizeof *more);
	if (!more)
		return -ENOMEM;
	snprintf(one.path, sizeof one.path, "%.4000s/%s", folder, name);
	snprintf(one.name, sizeof one.name, "%.5s", name);
	all->list = more;
	all->list[all->count++] = one;
	return 0;
}

int central_files_list(struct central_files *all, const char *folder, struct error *e)
{
	*all = (struct central_files){0};
	DIR *d = opendir(folder);
	int n = d ? 0 : -errno;
	for (struct dirent *x; n == 0 && (x = readdir(d));)
		n = add(all, folder, x->d_name);
	if (d)
		closedir(d);
	if (n < 0)
		return error_set(e, n,
		                 "the folder %.300s cannot be read: %s: 'bandtally audit collect' makes it",
		                 folder, strerror(-n));
	if (!all->count)
		return error_set(
		    e, -ENOENT,
		    "there is no copy of a station's record in %.300s: make them with 'bandtally "
		    "audit collect'",
		    folder);
	qsort(all->list, (size_t)all->count, sizeof *all->list, by_name);
	return 0;
}

void central_files_free(struct central_files *all)
{
	free(all->list);
	*all = (struct central_files){0};
}
