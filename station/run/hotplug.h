/* Scanners as they come and go. udev tells of devices, scanners.ini and a udev rule say which of them are
 * scanners and whose (base/scanners.h), and each gets one child. A lost message of the kernel's is made good
 * by looking at all devices again. */
#ifndef BANDTALLY_RUN_HOTPLUG_H
#define BANDTALLY_RUN_HOTPLUG_H

#include "run/daemon.h"

/* 0 also where udev does not answer: then scanners come from station.ini alone. Else negative errno with `e`. */
int hotplug_start(struct daemon *d, struct error *e);
/* Takes a scanners.ini that was wrong, once it is mended. */
void hotplug_look(struct daemon *d);
void hotplug_stop(struct daemon *d);

#endif
