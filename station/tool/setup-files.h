/* station.ini and scanners.ini as `bandtally setup` changes them: candidates in a folder of their own, which bandtallyd itself
 * looks at (bandtallyd --check --settings), and which take the place of the files, each in one step, once all is answered.
 */
#ifndef BANDTALLY_TOOL_SETUP_FILES_H
#define BANDTALLY_TOOL_SETUP_FILES_H

#include <limits.h>
#include <stdbool.h>
#include <sys/types.h>

#include "base/buf.h"
#include "base/error.h"
#include "base/ini.h"

enum setup_which { SETUP_STATION, SETUP_SCANNERS, SETUP_FILES };

struct setup_file {
	char path[PATH_MAX]; /* where it lies, behind links */
	mode_t mode;
	uid_t owner;
	gid_t group;
	struct buf before, text; /* as it was found, and as it is to be */
};

struct setup_files {
	char place[64]; /* of the candidates */
	struct setup_file list[SETUP_FILES];
};

/* The files of the station's data folder, which may be absent. 0 or negative errno with `e`: they cannot be read or written by
 * whoever this is, or the station would not take them as they are. */
int setup_files_open(struct setup_files *f, struct error *e);
void setup_files_close(struct setup_files *f); /* takes the candidates away */

/* Of the candidate: each value, as ini_read() has it, and one, "" where there is none. */
int setup_each(const struct setup_files *f, enum setup_which which, ini_value_fn each, void *context,
               struct error *e);
void setup_value(const struct setup_files *f, const char *section, const char *name, char *out, size_t size);
/* The same of station.ini as the station that ran last had it. */
void setup_value_was(const char *section, const char *name, char *out, size_t size);

/* Puts a value of station.ini into the candidate where the station would take it; else -EINVAL with its sentence, and the
 * candidate is as it was. */
int setup_put(struct setup_files *f, const char *section, const char *name, const char *value,
              struct error *e);
/* Takes a value of station.ini out of the candidate, in the same way. */
int setup_drop(struct setup_files *f, const char *section, const char *name, struct error *e);
/* The same for a whole further section, as it stands, of either file. */
int setup_add(struct setup_files *f, enum setup_which which, const char *lines, struct error *e);

/* Which parts were settled: station.ini bears it in a comment. */
bool setup_settled(const struct setup_files *f, const char *part);
int setup_settle(struct setup_files *f, const char *part, struct error *e);

/* Puts the candidates that differ in the place of the files: 1, or 0 where none does; or negative errno with `e`. */
int setup_write(struct setup_files *f, struct error *e);

#endif
