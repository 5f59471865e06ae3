#include "tests/unit/record/folder.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

static void must(int holds, const char *what)
{
	if (holds)
		return;
	perror(what);
	exit(1);
}

void folder_make(char folder[FOLDER_MAX])
{
	const char *tmp = getenv("TMPDIR");
	snprintf(folder, FOLDER_MAX, "%.30s/bandtally-XXXXXX", tmp ? tmp : "/tmp");
	must(mkdtemp(folder) != NULL, folder);
}

void folder_remove(const char *folder)
{
	char path[1024];
	DIR *d = opendir(folder);
	must(d != NULL, folder);
	for (struct dirent *x; (x = readdir(d));) {
		if (x->d_name[0] == '.')
			continue;
		snprintf(path, sizeof path, "%s/%s", folder, x->d_name);
		if (remove(path) < 0)
			folder_remove(path);
	}
	closedir(d);
	rmdir(folder);
}

static void copy_file(const char *from, const char *to)
{
	static char part[65536];
	FILE *in = fopen(from, "re"), *out = fopen(to, "we");
	size_t n;
	must(in && out, from);
	while ((n = fread(part, 1, sizeof part, in)) > 0)
		must(fwrite(part, 1, n, out) == n, to);
	fclose(in);
	must(fclose(out) == 0, to);
}

void folder_copy(const char *from, const char *to)
{
	char a[1024], b[1024];
	struct stat st;
	DIR *d = opendir(from);
	must(d != NULL, from);
	for (struct dirent *x; (x = readdir(d));) {
		snprintf(a, sizeof a, "%s/%s", from, x->d_name);
		snprintf(b, sizeof b, "%s/%s", to, x->d_name);
		if (stat(a, &st) == 0 && S_ISREG(st.st_mode))
			copy_file(a, b);
	}
	closedir(d);
}
