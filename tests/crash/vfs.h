/* A disk that fails when it is told to. A SQLite VFS over the default one: files are real, and beside each
 * stands what a power cut would leave of it.
 *
 * Every write, truncation, deletion and sync is one point. At the point `die_at` the machine dies: from there
 * on nothing is done any more and every call fails. crash_after() then leaves on the disk what the kind of
 * death would leave; a write that is not synced may be there, not be there, or be there in part (a sector of
 * 512 bytes is whole or absent). The disk can also be full for a while, or give I/O errors, or be read-only for a while as
 * Linux has it after a forced remount (each call succeeds, syncs do nothing, fstatvfs() tells), or lie (say 'synced' without
 * syncing: the negative control).
 */
#ifndef BANDTALLY_TESTS_CRASH_VFS_H
#define BANDTALLY_TESTS_CRASH_VFS_H

#include <stdint.h>

enum death {
	DEATH_KILLED = 1, /* the process only: all that was written is there */
	DEATH_POWER,      /* only what was synced is there */
	DEATH_TORN,       /* of what was not synced, any sector may be there or not */
	DEATHS
};

struct crash {
	int64_t points;             /* so far */
	int64_t written_back;       /* writes to a file that is no log */
	int64_t die_at;             /* 0 never */
	int64_t fail_from, fail_to; /* points from … to below this fail with `fail_code` */
	int fail_code;              /* SQLITE_FULL, SQLITE_IOERR_WRITE, SQLITE_IOERR_FSYNC, SQLITE_READONLY */
	int lies;                   /* xSync says yes and does nothing */
	int dead;
	uint64_t random;
};

extern struct crash crash;

void crash_install(void); /* as the default VFS, once */
void crash_fresh(void); /* nothing open, nothing remembered, no plan: a new machine with the disk as it is */
void crash_after(enum death death); /* every connection is closed by now */

#endif
