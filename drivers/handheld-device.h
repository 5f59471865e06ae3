/* One scanner's event node: opened, grabbed, and read event by event.
 *
 * Once grabbed, nothing else on the machine gets its keys: no text console, no desktop, no second driver.
 * What was typed before the grab is read and thrown away.
 */
#ifndef BANDTALLY_DRIVERS_HANDHELD_DEVICE_H
#define BANDTALLY_DRIVERS_HANDHELD_DEVICE_H

#include "base/error.h"
#include "drivers/handheld-events.h"

struct handheld_device;

/* Opens the node and grabs it. 0; -EBUSY where another program has grabbed it; -ENOTTY where it is no event
 * node; another negative errno. `e` in every case. */
int handheld_device_open(const char *path, struct handheld_device **out, struct error *e);
void handheld_device_free(struct handheld_device *d);

int handheld_device_fd(const struct handheld_device *d); /* for poll(); borrowed */

/* The next event: 0 nothing more now; HANDHELD_EVENT `out`; HANDHELD_LOST events were lost (the kernel's
 * buffer was full) and the state of the device has been read anew; -ENODEV the device has gone; another
 * negative errno. Times are of CLOCK_BOOTTIME. */
#define HANDHELD_EVENT 1
#define HANDHELD_LOST 2
int handheld_device_next(struct handheld_device *d, struct key_event *out);

#endif
