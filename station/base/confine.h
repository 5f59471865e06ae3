/* Takes away from a process what its work does not need, in two walls: system calls (seccomp), and files
 * (Landlock, a second wall, used where the kernel has it; a kernel without seccomp is an error). There is no
 * way back, and children would inherit it. Forbidden calls fail with EPERM or EACCES.
 */
#ifndef BANDTALLY_BASE_CONFINE_H
#define BANDTALLY_BASE_CONFINE_H

#include <stddef.h>
#include <stdint.h>

#include "base/error.h"

struct confine_call {
	int number;    /* SYS_… */
	unsigned arg;  /* which of its arguments must hold … */
	uint64_t mask; /* … (argument & mask) == value; 0: it is allowed whatever its arguments */
	uint64_t value;
};

/* For a process whose descriptors are open: it can read, write and map what is open, wait, tell the time, use
 * memory and end, and make the `count` calls besides. No file can be opened, no program started, no memory
 * made executable, no signal sent but to itself. 0, or a negative errno with `e` filled: then the process
 * must not go on. */
int confine(const struct confine_call *calls, size_t count, struct error *e);

/* For a process whose libraries open files and connections as they please (fonts, names, printers): it can
 * read files, and write, make and remove them beneath the folder `writes` alone, but start no program, wait
 * for no connection, look into no other process, and change nothing of the system. Where the kernel has no
 * Landlock files stay as the user's rights leave them. 0, or a negative errno with `e` filled. */
int confine_loosely(const char *writes, struct error *e);

/* The Landlock version that the kernel offers, 0 where there is none. */
int confine_landlock_abi(void);

#endif
