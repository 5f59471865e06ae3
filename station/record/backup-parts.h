/* How a record comes whole into its place, or not at all: what backup.c and archive.c share. Nobody else includes this. */
#ifndef BANDTALLY_RECORD_BACKUP_PARTS_H
#define BANDTALLY_RECORD_BACKUP_PARTS_H

#include "record/backup.h"
#include "record/store.h"

#define BACKUP_NEW ".new" /* behind the name of what is being written */

/* An empty file that nobody else writes. A descriptor, or negative errno with `e`. */
int backup_begin_new(const char *path, struct error *e);
/* Copies the record to `path`, which is `fd`, and reads it back. */
int backup_copy_whole(struct record *from, const char *path, int fd, struct backup *out, struct error *e);
/* Renames it, and waits until its folder is on disk. */
int backup_in_place(const char *fresh, const char *path, struct error *e);
/* Whether a backup may go there: not into the data folder, and over nothing that is no record. */
int backup_may_replace(const char *to, const char *live, struct error *e);
/* Gives a file that root made, `path`, to whoever owns the folder. 0 or a negative errno with `e`. */
int backup_give_to_owner(int fd, const char *path, const char *folder, struct error *e);

#endif
