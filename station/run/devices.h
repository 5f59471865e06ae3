/* What udev says of the devices of this machine. */
#ifndef BANDTALLY_RUN_DEVICES_H
#define BANDTALLY_RUN_DEVICES_H

#include <libudev.h>

#include "base/scanners.h"

/* Borrowed from `dev`. */
struct scanner_device device_about(struct udev_device *dev);

/* bandtallyd --devices: each that could be a scanner, a line of columns with tabs between them: its node, its mode, vendor,
 * product and serial, the name that `listed` has for it or "-", and what it calls itself. 0, -ENODEV where udev does not
 * answer, or another negative errno. */
int devices_tell(const struct scanners *listed, struct buf *out);

#endif
