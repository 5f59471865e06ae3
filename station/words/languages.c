#include "words/languages.h"

#include <dirent.h>
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/own.h"

#define MO_NAME_MAX (LANGUAGE_CODE_MAX - 1 + 3)

const char *languages_folder(void)
{
	static char built[PATH_MAX]; /* the same each time */
	return own_file("BANDTALLY_WORDS", BANDTALLY_WORDS_INSTALLED, "../words", built, sizeof built);
}

static int is_catalogue(const struct dirent *d)
{
	size_t length = strlen(d->d_name);
	return length > 3 && length <= MO_NAME_MAX && strcmp(d->d_name + length - 3, ".mo") == 0;
}

static int read_one(struct languages *out, const char *folder, const char *name, struct error *e)
{
	char path[PATH_MAX], code[LANGUAGE_CODE_MAX];
	struct language *l;
	if (out->n == LANGUAGES_MAX)
		return error_set(e, -ENOSPC, "%s: more than %d languages: take some away", folder,
		                 LANGUAGES_MAX);
	snprintf(path, sizeof path, "%s/%s", folder, name);
	snprintf(code, sizeof code, "%.*s", (int)strlen(name) - 3, name);
	int n = language_read(path, code, &l, NULL, NULL, e);
	if (n == 0)
		out->list[out->n++] = l;
	return n;
}

int languages_read(struct languages *out, const char *folder, struct error *e)
{
	struct dirent **names;
	*out = (struct languages){0};
	int count = scandir(folder, &names, is_catalogue, alphasort), n = 0;
	if (count < 0)
		return error_set(e, -errno, "%s: its languages cannot be read: %s: install the station again",
		                 folder, strerror(errno));
	for (int i = 0; i < count; i++) {
		int r = read_one(out, folder, names[i]->d_name, e);
		n = r < 0 ? r : n;
		free(names[i]);
	}
	free(names);
	return n;
}

void languages_free(struct languages *l)
{
	while (l->n)
		language_free(l->list[--l->n]);
}

const struct language *languages_find(const struct languages *l, const char *code)
{
	for (int i = 0; i < l->n; i++)
		if (strcmp(language_code(l->list[i]), code) == 0)
			return l->list[i];
	return NULL;
}

bool language_is_installed(const char *code)
{
	char path[PATH_MAX];
	if (strspn(code, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") != strlen(code) ||
	    strlen(code) < 2 || strlen(code) >= LANGUAGE_CODE_MAX)
		return false;
	snprintf(path, sizeof path, "%s/%s.mo", languages_folder(), code);
	return strcmp(code, "en") == 0 || access(path, R_OK) == 0;
}
