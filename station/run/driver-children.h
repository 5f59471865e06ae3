/* Scanners: the children of [driver …] in station.ini, and of the devices that were found (run/hotplug.h); what their lines
 * say, and what is wrong with them. */
#ifndef BANDTALLY_RUN_DRIVER_CHILDREN_H
#define BANDTALLY_RUN_DRIVER_CHILDREN_H

#include "run/daemon.h"

int drivers_start(struct daemon *d);
void drivers_stop(struct daemon *d);
void drivers_look(struct daemon *d); /* each second: a scanner check gives way to a case */

/* Starts one scanner, or ends it because its device has gone. `words` is the command. A name that is known
 * keeps its place; one that another device has now gets "-2", "-3"… behind it. 0 or negative errno. */
struct driver_place {
	const char *name, *node, *syspath, *profile; /* the last three "" where it has none */
	int32_t room;
	int learning;
};
int driver_add(struct daemon *d, const struct driver_place *at, char *const *words);
/* A device that is listed as a scanner but cannot be given to one room, until it is removed or added: a
 * fault, which the record has once for each plugging in. Room 0: not known. 0, or -ENOSPC. */
int driver_unplaced(struct daemon *d, const struct driver_place *at, const char *why);
void driver_remove(struct daemon *d, const char *node);
struct driver_child *driver_by_node(struct daemon *d, const char *node);

#endif
