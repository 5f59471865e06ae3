#include "base/settings-told.h"

#include <string.h>

static const struct {
	const char *file, *section, *key;
	enum setting_told told;
} rows[] = {
#define X(file, section, key, told) {file, section, key, SETTING_##told},
    SETTINGS_TOLD(X)
#undef X
};

/* "room 1" is of "room", "board elsewhere" of itself and not of "board", which takes no name. */
static int is_section(const char *section, const char *row)
{
	static const char *const named[] = {"room", "driver", "scanner", "medium"};
	size_t n = strlen(row);
	for (size_t i = 0; i < sizeof named / sizeof *named; i++)
		if (strcmp(row, named[i]) == 0)
			return strncmp(section, row, n) == 0 && section[n] == ' ';
	return strcmp(section, row) == 0;
}

enum setting_told setting_told(const char *file, const char *section, const char *key)
{
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (strcmp(rows[i].file, file) == 0 && strcmp(rows[i].key, key) == 0 &&
		    is_section(section, rows[i].section))
			return rows[i].told;
	return SETTING_UNKNOWN;
}

int setting_fits(enum setting_told told, const char *value)
{
	size_t n = strlen(value);
	switch (told) {
	case SETTING_NUMBER:
		return (n <= 15 && strspn(value, "0123456789 x.:-") == n) || strcmp(value, "no") == 0 ||
		       strcmp(value, "yes") == 0;
	case SETTING_WORD:
		return n <= 8 && strspn(value, "abcdefghijklmnopqrstuvwxyz0123456789") == n;
	case SETTING_UNKNOWN:
	case SETTING_WITHHELD:
		return 0;
	}
	return 0;
}
