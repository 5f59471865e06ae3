/* What the tests of kept records begin with: the files below tests/kept, and a copy of one kept folder to work on. */
#ifndef BANDTALLY_TESTS_KEPT_KEPT_H
#define BANDTALLY_TESTS_KEPT_KEPT_H

#include <limits.h>

#include "record/store.h"
#include "tests/unit/record/folder.h"

/* Calls `check` with every file that matches below tests/kept; at least one must. How many. */
int kept_each(const char *pattern, void (*check)(const char *path));

void kept_folder(const char *path, int up, char out[PATH_MAX]); /* `up` folders above a path */
char *kept_text(const char *folder, const char *name);          /* the whole file; until the next call */

extern char kept_copy[FOLDER_MAX]; /* the folder of the copy; "" none */
void kept_copy_make(const char *kept);
void kept_copy_path(const char *name, char out[PATH_MAX]);
void kept_copy_drop(void);
struct record *kept_record_open(const char *kept); /* of a copy that it makes */

int kept_teardown(void **state); /* after a failure a copy is left */

/* The zone in which the records were made, and copies where no disk is waited for: durability is tested elsewhere. */
void kept_begin(void);

#endif
