/* A record that cannot be read is kept aside, unchanged, and the station starts on a new one (rule 26). As long as such a
 * file lies in the data folder, nobody has dealt with it, and the station says: count by hand. */
#ifndef BANDTALLY_RUN_ASIDE_H
#define BANDTALLY_RUN_ASIDE_H

#include <stddef.h>

#include "base/error.h"

/* Renames the record of a folder, and what SQLite keeps beside it, to record-damaged-TIME.db …; nobody may hold it. 0 or a
 * negative errno with `e`. */
int aside_put(const char *folder, struct error *e);

/* Notes in the folder that the record, being damaged, could not be stored to, or not be asked what each scan asks; the next start then
 * looks through it before it works on it, and could else not count either. It is gone once a start has done so (`over`), or the record was put aside. */
void aside_want(const char *folder);
int aside_wanted(const char *folder);
void aside_over(const char *folder);

/* The path of such a file. 1 there is one (any of several), 0 none. */
int aside_find(const char *folder, char *path, size_t size);

#endif
