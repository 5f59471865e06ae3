/* What befalls the machine that the station runs on while a case is open: it is told to stop, or it is there
 * again. Who forced a stop says so by a file in /run, where root alone can write (config/debian/may-stop). */
#ifndef BANDTALLY_RUN_MACHINE_H
#define BANDTALLY_RUN_MACHINE_H

#include "run/core.h"

#define MACHINE_ANYWAY "/run/bandtally-stop-anyway" /* somebody said that nothing is to wait */

/* The station is told to stop. While a case is open each of them gets an event that says so, whether it was forced, and from
 * now on the station is not to be trusted. 1 then, 0 nothing is open. */
int machine_stops(struct core *c);

/* The station has started: each case that is open gets an event that says so, and its room is told. */
void machine_is_back(struct core *c);

#endif
