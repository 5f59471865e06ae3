#include "run/devices.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"

/* udev names vendor and product of what hangs on USB. Bluetooth has them in the input device itself. */
static const char *or_attribute(const char *value, struct udev_device *dev, const char *attribute)
{
	struct udev_device *input = value ? NULL : udev_device_get_parent(dev); /* owned by `dev` */
	return input ? udev_device_get_sysattr_value(input, attribute) : value;
}

struct scanner_device device_about(struct udev_device *dev)
{
	struct scanner_device d = {
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
	if (!d.vendor && d.subsystem && strcmp(d.subsystem, "input") == 0) {
		d.vendor = or_attribute(NULL, dev, "id/vendor");
		d.product = or_attribute(d.product, dev, "id/product");
		d.serial = or_attribute(d.serial, dev, "uniq");
	}
	return d;
}

static const char *or_empty(const char *text)
{
	return text ? text : "";
}

/* A column of a line. */
static int tell_text(const char *text, const char *behind, struct buf *out)
{
	char column[SCANNERS_TEXT_MAX + 1];
	snprintf(column, sizeof column, "%s", text);
	name_mend(column); /* a device calls itself what it likes */
	return buf_printf(out, "%s%s", column, behind);
}

static int tell_device(const struct scanners *listed, struct udev_device *dev, struct buf *out)
{
	struct scanner_device d = device_about(dev);
	struct udev_device *parent = udev_device_get_parent(dev); /* owned by `dev` */
	struct scanner_found f;
	struct error e;
	enum scanner_mode mode;
	if (!scanners_could_be(&d, &mode) || !d.vendor || !d.product)
		return 0;
	enum scanner_decision is = scanners_decide(listed, &d, &f, &e);
	const char *name = udev_device_get_property_value(dev, "ID_MODEL");
	if (mode == SCANNER_KEYBOARD && parent && udev_device_get_sysattr_value(parent, "name"))
		name = udev_device_get_sysattr_value(parent, "name");
	int r =
	    buf_printf(out, "%s\t%s\t%.4s\t%.4s\t", d.node, scanner_families[mode].mode, d.vendor, d.product);
	if (r == 0)
		r = tell_text(or_empty(d.serial), "\t", out);
	if (r == 0)
		r = tell_text(is == SCANNER_NO ? "-" : f.name, "\t", out);
	return r == 0 ? tell_text(or_empty(name), "\n", out) : r;
}

int devices_tell(const struct scanners *listed, struct buf *out)
{
	struct udev *udev = udev_new();
	struct udev_enumerate *all = udev ? udev_enumerate_new(udev) : NULL;
	struct udev_list_entry *entry;
	int r = all ? 0 : -ENODEV;
	for (int m = 0; m < SCANNER_MODES && r == 0; m++)
		r = udev_enumerate_add_match_subsystem(all, scanner_families[m].subsystem);
	if (r == 0)
		r = udev_enumerate_scan_devices(all);
	udev_list_entry_foreach(entry, r >= 0 ? udev_enumerate_get_list_entry(all) : NULL)
	{
		struct udev_device *dev = udev_device_new_from_syspath(udev, udev_list_entry_get_name(entry));
		if (dev && r >= 0)
			r = tell_device(listed, dev, out);
		udev_device_unref(dev);
	}
	udev_enumerate_unref(all);
	udev_unref(udev);
	return r < 0 ? r : 0;
}
