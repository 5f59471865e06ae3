/* The record's files as SQLite has them from the system, but for two things: what was written counts only where the file system
 * can still be written behind it (file_force()), and where the file still has a name: what was deleted is kept by nobody. Before the first write since then that is looked at as well, so that
 * the files of a disk that was made read-only stay what they were.
 */
#ifndef BANDTALLY_RECORD_DISK_H
#define BANDTALLY_RECORD_DISK_H

#include <sqlite3.h>

/* What a write and a sync of such a file give where it cannot be written any more, or was deleted; SQLite hands it on. */
#define DISK_IS_READ_ONLY (SQLITE_IOERR | 200 << 8)
#define DISK_LOST_THE_FILE (SQLITE_IOERR | 201 << 8)

/* What is written goes into the log beside the record's own file, which is looked at here: SQLITE_OK or DISK_LOST_THE_FILE. */
int disk_look(sqlite3 *db);

/* The name of the files' VFS, for sqlite3_open_v2(): over the one that is the default when it is first asked for. */
const char *disk_vfs(void);

#endif
