/* Scanners as they come and go. udev tells of devices, scanners.ini and a udev rule say which of them are
 * scanners and whose (base/scanners.h), and each gets one child. A lost message of the kernel's is made good
 * by looking at all devices again. */
#include <errno.h>
#include <libudev.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/log.h"
#include "base/scanners.h"
#include "run/daemon.h"

struct hotplug {
	struct daemon *daemon;
	struct udev *udev;
	struct udev_monitor *monitor;
	struct scanners scanners;
};

static struct scanner_device about(struct udev_device *dev)
{
	return (struct scanner_device){
	    .subsystem = udev_device_get_subsystem(dev),
	    .node = udev_device_get_devnode(dev),
	    .vendor = udev_device_get_property_value(dev, "ID_VENDOR_ID"),
	    .product = udev_device_get_property_value(dev, "ID_MODEL_ID"),
	    .serial = udev_device_get_property_value(dev, "ID_SERIAL_SHORT"),
	    .path = udev_device_get_property_value(dev, "ID_PATH"),
	    .has_keys = udev_device_get_property_value(dev, "ID_INPUT_KEY"),
	    .tag = udev_device_get_property_value(dev, "ID_BANDTALLY_SCANNER"),
	    .room = udev_device_get_property_value(dev, "ID_BANDTALLY_ROOM"),
	};
}

/* The driver's command for this device. */
static int start_driver(struct hotplug *h, const struct scanner_device *dev, const struct scanner_found *f,
                        int learn)
{
	char profile_name[SCANNER_PROFILE_NAME_MAX], folder[300], profile[320], baud[12], bits[12], stop[12];
	char *words[16];
	int n = 0;
	const struct scanner_setting *s = f->setting;
	scanner_profile_name(dev, profile_name);
	snprintf(folder, sizeof folder, "%.200s/profiles", h->daemon->core.folder);
	mkdir(folder, 0750);
	snprintf(profile, sizeof profile, "%.200s/profiles/%.90s", h->daemon->core.folder, profile_name);
	words[n++] = f->mode == SCANNER_SERIAL ? "scan-serial" : "scan-handheld";
	words[n++] = "--device";
	words[n++] = (char *)dev->node;
	if (f->mode == SCANNER_KEYBOARD && learn) {
		words[n++] = "--learn";
		words[n++] = profile;
	} else if (f->mode == SCANNER_KEYBOARD && access(profile, R_OK) == 0) {
		words[n++] = "--profile";
		words[n++] = profile;
	} else if (f->mode == SCANNER_KEYBOARD && s && s->layout[0]) {
		words[n++] = "--layout";
		words[n++] = (char *)s->layout;
	}
#define NUMBER(option, value, text)                                                                          \
	if (f->mode == SCANNER_SERIAL && s && (value)) {                                                     \
		snprintf(text, sizeof text, "%d", (int)(value));                                             \
		words[n++] = option;                                                                         \
		words[n++] = text;                                                                           \
	}
	NUMBER("--baud", s->baud, baud)
	NUMBER("--bits", s->bits, bits)
	NUMBER("--stop", s->stop, stop)
#undef NUMBER
	if (f->mode == SCANNER_SERIAL && s && s->parity[0]) {
		words[n++] = "--parity";
		words[n++] = (char *)s->parity;
	}
	words[n] = NULL;
	return driver_add(h->daemon, f->name, dev->node, f->room, words,
	                  f->mode == SCANNER_KEYBOARD ? profile : "");
}

static void consider(struct hotplug *h, struct udev_device *dev, int learn)
{
	struct scanner_device d = about(dev);
	struct scanner_found f;
	struct error e;
	if (!d.node || (!learn && driver_by_node(h->daemon, d.node)))
		return;
	switch (scanners_decide(&h->scanners, &d, &f, &e)) {
	case SCANNER_NO:
		return;
	case SCANNER_TELL:
		log_line("%s", e.text);
		return;
	case SCANNER_YES:
		break;
	}
	if (!f.room)
		f.room = h->daemon->core.station.rooms[0].number;
	int n = start_driver(h, &d, &f, learn);
	if (n < 0)
		log_errno(n, "cannot start the driver of %s", d.node);
	board_show(h->daemon);
}

static void look_at_all(struct hotplug *h)
{
	struct udev_enumerate *all = udev_enumerate_new(h->udev);
	struct udev_list_entry *entry;
	udev_enumerate_add_match_subsystem(all, "input");
	udev_enumerate_add_match_subsystem(all, "tty");
	udev_enumerate_scan_devices(all);
	udev_list_entry_foreach(entry, udev_enumerate_get_list_entry(all))
	{
		struct udev_device *dev =
		    udev_device_new_from_syspath(h->udev, udev_list_entry_get_name(entry));
		if (dev)
			consider(h, dev, 0);
		udev_device_unref(dev);
	}
	udev_enumerate_unref(all);
}

static void on_message(void *context)
{
	struct hotplug *h = context;
	errno = 0;
	struct udev_device *dev = udev_monitor_receive_device(h->monitor);
	if (!dev) {
		if (errno == ENOBUFS) /* the kernel had more to say than was read in time */
			look_at_all(h);
		return;
	}
	const char *action = udev_device_get_action(dev), *node = udev_device_get_devnode(dev);
	if (node && action && strcmp(action, "remove") == 0) {
		driver_remove(h->daemon, node);
		board_show(h->daemon);
	} else if (node && action) {
		consider(h, dev, 0);
	}
	udev_device_unref(dev);
}

static struct udev_device *device_of(struct hotplug *h, const char *node)
{
	struct stat st;
	return stat(node, &st) == 0 && S_ISCHR(st.st_mode)
	           ? udev_device_new_from_devnum(h->udev, 'c', st.st_rdev)
	           : NULL;
}

int hotplug_restart(struct daemon *d, struct driver_child *dc, int learn)
{
	struct udev_device *dev = d->hotplug && dc->node[0] ? device_of(d->hotplug, dc->node) : NULL;
	if (!dev)
		return -ENODEV;
	child_free(dc->child);
	dc->child = NULL;
	consider(d->hotplug, dev, learn);
	dc->learning = learn;
	udev_device_unref(dev);
	return 0;
}

int hotplug_start(struct daemon *d, struct error *e)
{
	char path[PATH_MAX];
	struct hotplug *h = calloc(1, sizeof *h);
	if (!h)
		return error_set(e, -ENOMEM, "out of memory: try again");
	h->daemon = d;
	snprintf(path, sizeof path, "%s/scanners.ini", d->core.folder);
	int n = scanners_read(path, &h->scanners, e);
	if (n < 0 && n != -ENOENT) {
		free(h);
		return n;
	}
	h->udev = udev_new();
	h->monitor = h->udev ? udev_monitor_new_from_netlink(h->udev, "udev") : NULL;
	d->hotplug = h;
	if (!h->monitor || udev_monitor_filter_add_match_subsystem_devtype(h->monitor, "input", NULL) < 0 ||
	    udev_monitor_filter_add_match_subsystem_devtype(h->monitor, "tty", NULL) < 0 ||
	    udev_monitor_enable_receiving(h->monitor) < 0) {
		/* Without udev (a container, a rescue system) scanners come from [driver …] in station.ini
		 * alone. */
		log_line("udev does not answer: scanners are not found by themselves: use [driver NAME] in "
		         "station.ini");
		return 0;
	}
	n = loop_on_readable(d->loop, udev_monitor_get_fd(h->monitor), on_message, h);
	if (n < 0)
		return error_set(e, n, "out of memory: try again");
	look_at_all(h);
	return 0;
}

void hotplug_stop(struct daemon *d)
{
	struct hotplug *h = d->hotplug;
	if (!h)
		return;
	loop_cancel(d->loop, h);
	udev_monitor_unref(h->monitor);
	udev_unref(h->udev);
	free(h);
	d->hotplug = NULL;
}
