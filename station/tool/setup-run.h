/* Another program, run to its end, and what it said. */
#ifndef BANDTALLY_TOOL_SETUP_RUN_H
#define BANDTALLY_TOOL_SETUP_RUN_H

#include "base/buf.h"

/* One that is installed beside this one (base/own.h), or, where it is none, of PATH. What it says on standard output, and with
 * `faults` on standard error, goes to `out`. Its exit code, or negative errno. */
int run_own(const char *program, char *const argv[], int faults, struct buf *out);
int run_found(const char *program, char *const argv[], struct buf *out);

#endif
