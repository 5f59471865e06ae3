#include "words/english.h"

#include <errno.h>
#include <string.h>

#include "words/values.h"

static const struct {
	const char *name, *one, *many;
	int counts;
} sayings[SAYING_KINDS] = {[SAY_NONE] = {"", "", "", 0},
#define X(name, key, text) [SAY_##name] = {key, text, text, 0},
#define N(name, key, one, many) [SAY_##name] = {key, one, many, 1},
                           SAYINGS(X, N) SENTENCES(X, N)
#undef N
#undef X
};

const char *saying_text(enum saying saying)
{
	return sayings[saying].many;
}

const char *saying_english(enum saying saying, int many)
{
	return many ? sayings[saying].many : sayings[saying].one;
}

int saying_counts(enum saying saying)
{
	return sayings[saying].counts;
}

const char *saying_key(int64_t saying)
{
	return saying > 0 && saying < SAYING_KINDS ? sayings[saying].name : NULL;
}

const char *saying_name(int64_t saying)
{
	return saying < SAYINGS_KEPT ? saying_key(saying) : NULL;
}

int saying_from_name(const char *name)
{
	for (int i = 1; i < SAYINGS_KEPT; i++)
		if (strcmp(sayings[i].name, name) == 0)
			return i;
	return -EINVAL;
}

/* --- values --------------------------------------------------------------------------------------- */

static const struct {
	const char *name;
	size_t length;
} value_names[] = {
#define X(type, member, name, size) {name, sizeof name - 1},
    VALUES(X) LOOSE_VALUES(X)
#undef X
};

int saying_value(const char *at, size_t *size)
{
	const char *name = at + 1, *end = at[0] == '{' ? strchr(name, '}') : NULL;
	size_t length = end ? (size_t)(end - name) : 0;
	*size = length ? length + 2 : 0;
	for (size_t i = 0; length && i < sizeof value_names / sizeof *value_names; i++)
		if (value_names[i].length == length && value_names[i].name[0] == name[0] &&
		    memcmp(value_names[i].name, name, length) == 0)
			return (int)i;
	*size = 0;
	return -ENOENT;
}
