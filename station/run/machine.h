/* What befalls the machine that the station runs on while a case is open: it is told to stop, it is there again, an update or
 * a restart waits.
 *
 * Who holds an update or a restart back is no part of the daemon (config/debian/may-stop, config/systemd/hold): it runs as
 * root, and says what it holds by a file in /run, where nobody else can write and which a restart of the machine empties.
 */
#ifndef BANDTALLY_RUN_MACHINE_H
#define BANDTALLY_RUN_MACHINE_H

#include "run/core.h"

#define MACHINE_ANYWAY "/run/bandtally-stop-anyway" /* somebody said that nothing is to wait */
#define MACHINE_UPDATE "/run/bandtally-update-waits"
#define MACHINE_RESTART "/run/bandtally-restart-waits"

/* The station is told to stop. While a case is open each of them gets an event that says so, whether it was forced, and from
 * now on the station is not to be trusted. 1 then, 0 nothing is open. */
int machine_stops(struct core *c);

/* The station has started: each case that is open gets an event that says so, and its room is told. */
void machine_is_back(struct core *c);

/* Looks what waits; once a second will do. */
void machine_look(struct core *c);

/* What waits now, as sentences, SAY_NONE behind the last. */
const enum saying *machine_waits(const struct core *c);

#endif
