#include <string.h>

#include "code/gs1.h"

#define PREDEFINED true
#define SEPARATED false
#define ATTRIBUTE true
#define NOT_IN_QUERY false
#define SET_N 'N'
#define SET_X 'X'
#define SET_Y 'Y'
#define SET_Z 'Z'
#define PART(set, min, max, ...)                                                                             \
	{                                                                                                    \
		SET_##set, min, max, false,                                                                  \
		{                                                                                            \
			__VA_ARGS__                                                                          \
		}                                                                                            \
	}
#define MAY(set, min, max, ...)                                                                              \
	{                                                                                                    \
		SET_##set, min, max, true,                                                                   \
		{                                                                                            \
			__VA_ARGS__                                                                          \
		}                                                                                            \
	}
#define AI(first, last, predefined, attribute, title, needs, never, path, ...)                               \
	{first, last, predefined, attribute, title, {__VA_ARGS__}, needs, never, path},

static const struct gs1_ai table[] = {
#include "code/gs1-table.inc"
};

const struct gs1_ai *gs1_row(size_t n)
{
	return n < sizeof table / sizeof *table ? &table[n] : NULL;
}

/* No identifier is the beginning of another, so the first that fits is the one. */
const struct gs1_ai *gs1_find(const char *data, size_t size)
{
	const struct gs1_ai *ai;
	for (size_t n = 0; (ai = gs1_row(n)); n++) {
		size_t length = strlen(ai->first);
		if (size >= length && memcmp(data, ai->first, length) >= 0 &&
		    memcmp(data, ai->last, length) <= 0)
			return ai;
	}
	return NULL;
}

const struct gs1_ai *gs1_ai(const char *digits, size_t size)
{
	const struct gs1_ai *ai = gs1_find(digits, size);
	return ai && strlen(ai->first) == size ? ai : NULL;
}

size_t gs1_length_max(const struct gs1_ai *ai)
{
	size_t sum = 0;
	for (int i = 0; i < GS1_PARTS_MAX && ai->parts[i].max; i++)
		sum += ai->parts[i].max;
	return sum;
}
