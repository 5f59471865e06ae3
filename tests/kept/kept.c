#include "tests/kept/kept.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>
#include <glob.h>

static struct error e;
char kept_copy[FOLDER_MAX];

int kept_each(const char *pattern, void (*check)(const char *path))
{
	char whole[PATH_MAX + 64];
	const char *source = getenv("BANDTALLY_SOURCE");
	glob_t found;
	snprintf(whole, sizeof whole, "%s/tests/kept/%s", source ? source : ".", pattern);
	if (glob(whole, GLOB_ERR, NULL, &found) != 0)
		fail_msg("nothing matches %s", whole);
	int n = (int)found.gl_pathc;
	for (int i = 0; i < n; i++)
		check(found.gl_pathv[i]);
	globfree(&found);
	return n;
}

void kept_folder(const char *path, int up, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s", path);
	while (up--)
		*strrchr(out, '/') = 0;
}

char *kept_text(const char *folder, const char *name)
{
	static char text[65536];
	char path[PATH_MAX + 64];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *f = fopen(path, "re");
	if (!f)
		fail_msg("cannot read %s", path);
	size_t n = fread(text, 1, sizeof text - 1, f);
	assert_true(feof(f));
	fclose(f);
	text[n] = 0;
	return text;
}

/* What git keeps has its own modes; a key is its owner's. */
void kept_copy_make(const char *kept)
{
	char path[FOLDER_MAX + 32];
	folder_make(kept_copy);
	folder_copy(kept, kept_copy);
	snprintf(path, sizeof path, "%s/station.key", kept_copy);
	assert_int_equal(chmod(path, 0600), 0);
}

void kept_copy_path(const char *name, char out[PATH_MAX])
{
	snprintf(out, PATH_MAX, "%s/%s", kept_copy, name);
}

void kept_copy_drop(void)
{
	folder_remove(kept_copy);
	kept_copy[0] = 0;
}

int kept_teardown(void **state)
{
	(void)state;
	if (kept_copy[0])
		kept_copy_drop();
	return 0;
}

struct record *kept_record_open(const char *kept)
{
	char path[PATH_MAX];
	struct record *r;
	kept_copy_make(kept);
	kept_copy_path(RECORD_FILE, path);
	if (record_open_copy(&r, path, &e) < 0)
		fail_msg("%s: %s", kept, e.text);
	return r;
}

void kept_begin(void)
{
	setenv("TZ", "UTC", 1);
	if (access("/dev/shm", W_OK) == 0)
		setenv("TMPDIR", "/dev/shm", 0);
}
