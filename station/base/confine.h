/* Takes away from a process what its work does not need, in two walls: system calls (seccomp), and files
 * (Landlock, a second wall, used where the kernel has it; a kernel without seccomp is an error). There is no
 * way back, and children inherit it. Forbidden calls fail with EPERM or EACCES.
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

enum confine_use {
	CONFINE_READ,  /* read files, list folders */
	CONFINE_RUN,   /* and start what is a program */
	CONFINE_OPEN,  /* and write to what is there: devices */
	CONFINE_WRITE, /* read, write, make, move and remove files and folders */
};

/* What may be used of the files, with all that lies beneath; a path that is not there counts for nothing. It is meant as
 * what it is now: whatever takes its place later is not, so name the folder where files are replaced. */
struct confine_place {
	const char *path;
	enum confine_use use;
};

/* For a process whose libraries open files and connections as they please (fonts, names, printers): it can make threads,
 * but no process, start no program, wait for no connection, look into or signal no other process, change nothing of the
 * system, and type into no terminal. Of the files it has the `count` places; a file keeps its only name and its rights.
 * Where the kernel has no Landlock files stay as the user's rights leave them.
 * 0, or a negative errno with `e` filled: then the process must not go on. */
int confine_loosely(const struct confine_place *places, size_t count, struct error *e);

/* From now on it can open TCP connections to these ports alone, and wait for none, where the kernel can say so (Landlock,
 * version 4, Linux 6.7; before that nothing changes). Before confine_loosely(), which it goes with. 1 where it holds, 0 where the
 * kernel cannot, or a negative errno with `e`. */
int confine_ports(const uint16_t *ports, size_t count, struct error *e);

/* For a process that starts others, which inherit it, and may confine themselves further: it may do what it could before,
 * but look into no other process, change nothing of the system, and type into no terminal. Of the files it has the
 * `count` places. Programs of another architecture do not run any more. 0, or a negative errno with `e` filled: then it
 * keeps what it had, or a part of it. */
int confine_parent(const struct confine_place *places, size_t count, struct error *e);

/* 1 where the kernel has the second wall: Landlock, version 2 or later (Linux 5.19), since with the first nothing can be
 * moved from one folder to another. */
int confine_has_landlock(void);

#endif
