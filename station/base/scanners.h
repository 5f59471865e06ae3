/* Which devices of this machine are scanners, and whose: scanners.ini, and the decision for one device. Pure
 * but for reading the file.
 *
 * A scanner in keyboard mode looks like a keyboard in every respect, and a keyboard that is grabbed by
 * mistake is dead to its owner. So nothing is concluded from how a device looks or how fast it types. It is a
 * scanner only where somebody said so:
 *   - a section of scanners.ini that names its vendor and product, and whatever else it gives (serial, port),
 *     matches; a section with a port alone is refused, for it would take whatever is plugged in there; or
 *   - udev says ID_BANDTALLY_SCANNER=1 (config/udev has the rule), with ID_BANDTALLY_ROOM=n for a room other
 * than the station's first. The section with the most fields wins; two that match equally well are an error
 * to be told, not a choice. For a device that is not recognised `scanners_section()` writes the lines to put
 * into the file, which the daemon logs when it is plugged in.
 *
 *     [scanner hand-1]                 a name of a-z, 0-9 and '-'
 *     vendor = 1209                    four hexadecimal digits, as udev's ID_VENDOR_ID
 *     product = b0c0
 *     serial = SN0001                  optional: udev's ID_SERIAL_SHORT
 *     port = pci-0000:00:14.0-usb-0:1.2   optional: udev's ID_PATH up to the interface ("…-usb-0:1.2:1.0")
 *     room = 1                         1 to 99
 *     mode = keyboard                  optional: keyboard (event node) or serial (tty)
 *     layout = de                      optional, keyboard without a learned profile: what it is set to
 *     baud = 9600                      optional, serial, and so are the rest:
 *     bits = 8                         7 or 8
 *     parity = none                    none, even or odd
 *     stop = 1                         1 or 2
 *     prefix = 02                      what it sends before each code, 1 to 8 bytes as hexadecimal digits
 *     suffix = 0d0a                    and behind it; none: silence ends a code; else CR or LF does
 */
#ifndef BANDTALLY_BASE_SCANNERS_H
#define BANDTALLY_BASE_SCANNERS_H

#include <stdbool.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"

#define SCANNERS_MAX 64
#define SCANNERS_TEXT_MAX 127

enum scanner_mode {
	SCANNER_KEYBOARD, /* an event node: scan-handheld */
	SCANNER_SERIAL,   /* a tty: scan-serial */
};

struct scanner_setting {
	char name[33];
	char vendor[5], product[5];
	char serial[SCANNERS_TEXT_MAX + 1], port[SCANNERS_TEXT_MAX + 1]; /* "" any */
	int32_t room;
	enum scanner_mode mode;
	char layout[3];              /* "" not said */
	int32_t baud, bits, stop;    /* 0 not said */
	char parity[5];              /* "" not said */
	char prefix[17], suffix[17]; /* hexadecimal; suffix "none": silence ends a code; "" not said */
};

struct scanners {
	struct scanner_setting list[SCANNERS_MAX];
	int count;
};

/* 0; -ENOENT where the file is absent; -EINVAL and `e` with file and line. */
int scanners_read(const char *path, struct scanners *out, struct error *e);

/* What udev says about a device. Borrowed; NULL or "" where it says nothing. */
struct scanner_device {
	const char *subsystem; /* "input" or "tty" */
	const char *node;      /* DEVNAME, "/dev/input/event7" */
	const char *vendor, *product, *serial,
	    *path; /* ID_VENDOR_ID, ID_MODEL_ID, ID_SERIAL_SHORT, ID_PATH; what is not on USB has the
	              input device's id/vendor, id/product and uniq instead */
	const char *has_keys;   /* ID_INPUT_KEY: a scanner often has further nodes without keys */
	const char *tag, *room; /* ID_BANDTALLY_SCANNER, ID_BANDTALLY_ROOM */
};

enum scanner_decision {
	SCANNER_NO,   /* leave it alone */
	SCANNER_YES,  /* start a driver */
	SCANNER_TELL, /* it is one, but settings contradict each other: `e` says how, `out` has a name for it,
	                 and the room where they agree on that, else 0 */
};

struct scanner_found {
	char name[SCANNERS_TEXT_MAX + 1]; /* the section's, or "usb-1209-b0c0" where there is not just one */
	int32_t room;
	enum scanner_mode mode;
	const struct scanner_setting *setting; /* NULL by udev alone */
};

enum scanner_decision scanners_decide(const struct scanners *s, const struct scanner_device *d,
                                      struct scanner_found *out, struct error *e);

/* The name of a scanner's profile file: "1209-b0c0-SN0001.ini"; what is no letter, digit, '.', '_' or '-'
 * becomes '_'. */
#define SCANNER_PROFILE_NAME_MAX 160
void scanner_profile_name(const struct scanner_device *d, char out[SCANNER_PROFILE_NAME_MAX]);

/* Appends the section that would make this device a scanner of that room. 0, -ENOMEM, or -ENODATA where it
 * has no vendor and product. */
int scanners_section(const struct scanner_device *d, const char *name, int32_t room, struct buf *out);

#endif
