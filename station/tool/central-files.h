/* The folder in which an auditor keeps copies of several stations' records: "BC-01.db" is that of the station with the letters BC
 * and the number 1. */
#ifndef BANDTALLY_TOOL_CENTRAL_FILES_H
#define BANDTALLY_TOOL_CENTRAL_FILES_H

#include <limits.h>
#include <stdint.h>

#include "base/error.h"

struct central_file {
	char path[PATH_MAX], name[8]; /* without its ending */
	char site[3];
	int32_t number;
};

struct central_files { /* in the order of their names */
	struct central_file *list;
	int count;
};

/* 0, or a negative errno with `e`: -ENOENT where there is no such folder, or no copy in it. Either way the caller's. */
int central_files_list(struct central_files *all, const char *folder, struct error *e);
void central_files_free(struct central_files *all);

/* 1 where it is such a name, with its letters and number; "BC-01" or "BC-01.db". */
int central_name_read(const char *name, char site[3], int32_t *number);

#endif
