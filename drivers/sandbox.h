/* Takes away from a process what reading an open device does not need.
 *
 * Afterwards it can read, write and map what is already open, wait, tell the time, use memory and end; no
 * file can be opened, made, changed or removed, no program started, no process or thread made, nothing
 * connected, no memory made executable, and no signal sent but to itself. Forbidden calls fail with EPERM (or
 * EACCES). There is no way back, and children would inherit it.
 *
 * base/confine.h says how; a kernel without Landlock is no error, one without seccomp is.
 */
#ifndef BANDTALLY_DRIVERS_SANDBOX_H
#define BANDTALLY_DRIVERS_SANDBOX_H

#include "base/error.h"

/* `ioctl_type`: the type letter of the only ioctl()s that stay allowed, 0 for none. 0, or a negative errno
 * with `e` filled: then the process must not go on. */
int sandbox_enter(char ioctl_type, struct error *e);

#endif
