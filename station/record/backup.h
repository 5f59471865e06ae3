/* Backups: a record in one plain file, proven whole before it is called one; and the way back.
 *
 * What is written is written beside its place, synced, read back from its first event to its last, and only then renamed
 * to where it belongs, mode 0640: a power cut, a full disk or a fault in the copy leaves what was there before.
 */
#ifndef BANDTALLY_RECORD_BACKUP_H
#define BANDTALLY_RECORD_BACKUP_H

#include <limits.h>

#include "base/error.h"
#include "record/chain.h"

struct backup {
	int64_t events;     /* which is the number of the last */
	int64_t last_ms;    /* when that happened, by the wall clock; 0 where it cannot be read */
	struct chain chain; /* its hash */
	struct error
	    odd; /* code -EBADMSG: the text of some event cannot be read, though its hash holds; else 0 */
};

/* Reads the whole of a record that no station holds. 0, or negative errno with `e`: -EUCLEAN where it is damaged. */
int backup_check(const char *file, struct backup *out, struct error *e);

/* Copies the record `from` to `to`, in another folder than `from` and instead of a backup of the same name, and checks the
 * copy. `live` is the data folder, into which and below which no backup goes. `aside`: where the backup of that name lies from
 * now on, unchanged, where it holds what this record does not; "" else. 0 or negative errno with `e`; what was at `to` is then there still, or at `aside`. */
int backup_write(const char *from, const char *to, const char *live, struct backup *out, char aside[PATH_MAX],
                 struct error *e);

/* Puts the record in `file` in the place of that of a data folder. `aside`: where the one that was there lies from now on,
 * unchanged, "" there was none. 0, or with `e` and everything as it was
 *   -EBUSY    a station works in the folder
 *   -EUCLEAN  the file is damaged
 *   or another negative errno. */
int backup_restore(const char *file, const char *folder, struct backup *out, char aside[PATH_MAX],
                   struct error *e);

#endif
