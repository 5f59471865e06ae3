#include "run/hotplug.h"

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
#include "run/board.h"
#include "run/devices.h"
#include "run/driver-children.h"
#include "run/sound.h"

#define UNREAD_MAX                                                                                           \
	(256 << 10) /* bytes of messages that the kernel keeps for us; libudev's own choice is 128 MiB */

struct hotplug {
	struct daemon *daemon;
	struct udev *udev;
	struct udev_monitor *monitor;
	struct scanners scanners;
};

/* The driver's command for this device. */
static int start_driver(struct hotplug *h, const struct scanner_device *dev, const char *syspath,
                        const struct scanner_found *f, int learn)
{
	char profile_name[SCANNER_PROFILE_NAME_MAX], folder[300], profile[296], fresh[304];
	char keys[SCANNER_OPTION_KINDS][24];
	char *words[5 + 2 * SCANNER_OPTION_KINDS + 1];
	const struct scanner_family *family = &scanner_families[f->mode];
	int n = 0;
	const struct scanner_setting *s = f->setting;
	scanner_profile_name(dev, profile_name);
	snprintf(folder, sizeof folder, "%.200s/profiles", h->daemon->core.folder);
	mkdir(folder, 0750);
	snprintf(profile, sizeof profile, "%.200s/profiles/%.80s", h->daemon->core.folder, profile_name);
	snprintf(fresh, sizeof fresh, "%s.new", profile);
	words[n++] = (char *)family->driver;
	words[n++] = "--device";
	words[n++] = (char *)dev->node;
	int learned = family->learns && !learn && access(profile, R_OK) == 0;
	if (family->learns && learn) {
		words[n++] = "--learn";
		words[n++] = fresh;
	} else if (learned) {
		words[n++] = "--profile";
		words[n++] = profile;
	}
	for (int i = 0; i < SCANNER_OPTION_KINDS && s && !learned && !(family->learns && learn); i++)
		if (s->options[i][0]) {
			snprintf(keys[i], sizeof keys[i], "--%.20s",
			         scanner_option_key((enum scanner_option)i));
			words[n++] = keys[i];
			words[n++] = (char *)s->options[i];
		}
	words[n] = NULL;
	return driver_add(h->daemon,
	                  &(struct driver_place){.name = f->name,
	                                         .node = dev->node,
	                                         .syspath = syspath,
	                                         .profile = family->learns ? profile : "",
	                                         .room = f->room,
	                                         .learning = learn},
	                  words);
}

static int is_of_a_family(const struct scanner_device *d)
{
	for (int m = 0; m < SCANNER_MODES; m++)
		if (strcmp(d->subsystem, scanner_families[m].subsystem) == 0 &&
		    (!scanner_families[m].with_keys || d->has_keys))
			return 1;
	return 0;
}

/* What was just plugged in and is not taken: what to write so that it is. */
static void tell_unlisted(const struct scanner_device *d, const char *action, int32_t room)
{
	_cleanup_(buf_free) struct buf section = {0};
	char name[33];
	if (!action || strcmp(action, "add") != 0 || !is_of_a_family(d))
		return;
	snprintf(name, sizeof name, "usb-%.4s-%.4s", d->vendor ? d->vendor : "",
	         d->product ? d->product : "");
	if (scanners_section(d, name, room, &section) < 0)
		return;
	log_line(
	    "%s is left alone: no scanner of this vendor and product is listed. If it is one, add this to "
	    "scanners.ini and plug it in again:",
	    d->node);
	log_block(section.data);
}

/* It is a scanner, and whose is not clear. */
static void no_place(struct hotplug *h, const struct scanner_device *dev, const char *syspath,
                     const struct scanner_found *f, const char *why)
{
	int n = driver_unplaced(
	    h->daemon,
	    &(struct driver_place){
	        .name = f->name, .node = dev->node, .syspath = syspath, .profile = "", .room = f->room},
	    why);
	if (n < 0)
		log_warn_errno(LOG_SCANNER, n, "%s; the board does not show it", why);
	board_show(h->daemon);
}

static void consider(struct hotplug *h, struct udev_device *dev, int learn)
{
	struct scanner_device d = device_about(dev);
	struct scanner_found f;
	struct error e = {0};
	if (!d.node)
		return;
	const char *syspath = udev_device_get_syspath(dev);
	const struct driver_child *dc = driver_by_node(h->daemon, d.node);
	if (dc && strcmp(dc->syspath, syspath) == 0)
		return;
	if (dc) /* its node is another device's now */
		driver_remove(h->daemon, d.node);
	switch (scanners_decide(&h->scanners, &d, &f, &e)) {
	case SCANNER_NO:
		driver_remove(h->daemon, d.node); /* it may have been listed before */
		tell_unlisted(&d, udev_device_get_action(dev), h->daemon->core.station.rooms[0].number);
		return;
	case SCANNER_TELL:
		no_place(h, &d, syspath, &f, e.text);
		return;
	case SCANNER_YES:
		break;
	}
	if (!f.room)
		f.room = h->daemon->core.station.rooms[0].number;
	if (!station_room(&h->daemon->core.station, f.room)) {
		error_set(
		    &e, -EINVAL,
		    "%s: scanner %s is for room %d, which station.ini does not have: change one of them",
		    d.node, f.name, (int)f.room);
		no_place(h, &d, syspath, &f, e.text);
		return;
	}
	int n = start_driver(h, &d, syspath, &f, learn);
	if (n < 0)
		log_warn_errno(LOG_SCANNER, n, "cannot start the driver of %s", d.node);
	board_show(h->daemon);
}

static struct udev_device *device_of(struct hotplug *h, const char *node)
{
	struct stat st;
	return stat(node, &st) == 0 && S_ISCHR(st.st_mode)
	           ? udev_device_new_from_devnum(h->udev, 'c', st.st_rdev)
	           : NULL;
}

static int has(struct daemon *d, const struct driver_child *dc)
{
	struct udev_device *dev = d->hotplug ? device_of(d->hotplug, dc->node) : NULL;
	int same = dev && strcmp(udev_device_get_syspath(dev), dc->syspath) == 0;
	udev_device_unref(dev);
	return same;
}

static void look_at_all(struct hotplug *h)
{
	struct daemon *d = h->daemon;
	for (int i = d->n_drivers - 1; i >= 0; i--) { /* backwards: what has no place leaves the list */
		const struct driver_child *dc = &d->drivers[i];
		if ((dc->child || dc->unplaced) && dc->node[0] && !has(d, dc))
			driver_remove(d, dc->node);
	}
	struct udev_enumerate *all = udev_enumerate_new(h->udev);
	struct udev_list_entry *entry;
	for (int m = 0; m < SCANNER_MODES; m++)
		udev_enumerate_add_match_subsystem(all, scanner_families[m].subsystem);
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

/* A scanner that was listed since is known when it is plugged in. */
static void read_settings_again(struct hotplug *h)
{
	static struct scanners fresh; /* 25 kB; one thread */
	struct core *c = &h->daemon->core;
	c->scanners_used = sound_scanners(&fresh, c->folder, c->scanners_fault);
	if (c->scanners_used)
		log_warn(LOG_SETTINGS, "%s; the scanners stay as they were listed before", c->scanners_fault);
	else
		h->scanners = fresh;
	core_settings_look(c); /* their rooms */
	c->changes++;
}

/* Where a fault stands, it goes once the file is mended, without a scanner being plugged in. */
void hotplug_look(struct daemon *d)
{
	static struct scanners fresh; /* 25 kB; one thread */
	char fault[SOUND_FAULT_MAX];
	if (!d->hotplug || !d->core.scanners_used ||
	    sound_scanners(&fresh, d->core.folder, fault) != SAY_NONE)
		return;
	read_settings_again(d->hotplug);
	if (d->hotplug->monitor)
		look_at_all(d->hotplug);
}

static void on_message(void *context)
{
	struct hotplug *h = context;
	errno = 0;
	struct udev_device *dev = udev_monitor_receive_device(h->monitor);
	if (!dev) {
		if (errno == ENOBUFS) {
			log_line(
			    "udev had more to say than was read in time: all devices are looked at again");
			look_at_all(h);
			board_show(h->daemon);
		}
		return;
	}
	const char *action = udev_device_get_action(dev), *node = udev_device_get_devnode(dev);
	if (node && action && strcmp(action, "remove") == 0) {
		driver_remove(h->daemon, node);
		board_show(h->daemon);
	} else if (node && action) {
		if (strcmp(action, "add") == 0)
			read_settings_again(h);
		consider(h, dev, 0);
	}
	udev_device_unref(dev);
}

static int restart(struct daemon *d, struct driver_child *dc, int learn)
{
	struct udev_device *dev = d->hotplug && dc->node[0] ? device_of(d->hotplug, dc->node) : NULL;
	if (!dev)
		return -ENODEV;
	child_free(dc->child);
	dc->child = NULL;
	consider(d->hotplug, dev, learn);
	udev_device_unref(dev);
	return 0;
}

static bool follow_families(struct udev_monitor *monitor)
{
	for (int m = 0; m < SCANNER_MODES; m++)
		if (udev_monitor_filter_add_match_subsystem_devtype(monitor, scanner_families[m].subsystem,
		                                                    NULL) < 0)
			return false;
	return true;
}

static const struct finder finder = {has, restart};

int hotplug_start(struct daemon *d, struct error *e)
{
	struct core *c = &d->core;
	struct hotplug *h = calloc(1, sizeof *h);
	if (!h)
		return error_set(e, -ENOMEM, "out of memory: try again");
	h->daemon = d;
	c->scanners_used = sound_scanners(&h->scanners, c->folder, c->scanners_fault);
	if (c->scanners_used) {
		char words[900];
		say_sentence(&(const struct say){.saying = c->scanners_used, .fault = c->scanners_fault},
		             words, sizeof words);
		log_warn(LOG_SETTINGS, "%s", words);
	}
	h->udev = udev_new();
	h->monitor = h->udev ? udev_monitor_new_from_netlink(h->udev, "udev") : NULL;
	d->hotplug = h;
	d->finder = &finder;
	if (!h->monitor || !follow_families(h->monitor) || udev_monitor_enable_receiving(h->monitor) < 0) {
		/* Without udev (a container, a rescue system) scanners come from [driver …] in station.ini
		 * alone. */
		log_warn(LOG_SCANNER,
		         "udev does not answer: scanners are not found by themselves: use [driver NAME] in "
		         "station.ini");
		return 0;
	}
	udev_monitor_set_receive_buffer_size(h->monitor, UNREAD_MAX); /* the kernel's own limit is as good */
	int n = loop_on_readable(d->loop, udev_monitor_get_fd(h->monitor), on_message, h);
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
	d->finder = NULL;
}
