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
 *     mode = keyboard                  optional: of SCANNER_FAMILIES below; keyboard where it is left out
 *     layout = de                      optional, as are all of SCANNER_OPTIONS below: each is for one mode
 */
#ifndef BANDTALLY_BASE_SCANNERS_H
#define BANDTALLY_BASE_SCANNERS_H

#include <stdbool.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"

#define SCANNERS_MAX 64
#define SCANNERS_TEXT_MAX 127

/* The families that are found as they are plugged in. A further one is a row here, rows of its options, and its driver.
 * X(NAME, "its mode in scanners.ini", "udev's subsystem", "how its node begins", with keys only, "driver", learns): whether
 * udev must say that it has keys, and whether the sheet of the scanner check teaches it a profile. */
/* clang-format off */
#define SCANNER_FAMILIES(X) \
	X(KEYBOARD, "keyboard", "input", "event", true, "scan-handheld", true) \
	X(SERIAL, "serial", "tty", "", false, "scan-serial", false)

/* What a section may say, and its driver is told as "--KEY VALUE": X(NAME, FAMILY, "key", form, lowest, highest, words) */
#define SCANNER_OPTIONS(X) \
	X(LAYOUT, KEYBOARD, "layout", WORD, 0, 0, "us gb de fr ch es it se no dk fi pt") /* it is set to this; no profile yet */ \
	X(BAUD, SERIAL, "baud", NUMBER, 300, 921600, "") \
	X(BITS, SERIAL, "bits", NUMBER, 7, 8, "") \
	X(PARITY, SERIAL, "parity", WORD, 0, 0, "none even odd") \
	X(STOP, SERIAL, "stop", NUMBER, 1, 2, "") \
	X(PREFIX, SERIAL, "prefix", BYTES, 0, 0, "")     /* before each code, 1 to 8 bytes as hexadecimal digits: 02 */ \
	X(SUFFIX, SERIAL, "suffix", BYTES, 0, 0, "none") /* behind it: 0d0a; none: silence ends a code; else CR or LF does */
/* clang-format on */

enum scanner_mode {
#define X(name, ...) SCANNER_##name,
	SCANNER_FAMILIES(X)
#undef X
	    SCANNER_MODES
};

enum scanner_option {
#define X(name, ...) SCANNER_OPTION_##name,
	SCANNER_OPTIONS(X)
#undef X
	    SCANNER_OPTION_KINDS
};
#define SCANNER_OPTION_MAX 17

struct scanner_family {
	const char *mode, *subsystem, *node;
	bool with_keys;
	const char *driver;
	bool learns;
};
extern const struct scanner_family scanner_families[SCANNER_MODES];
const char *scanner_option_key(enum scanner_option option);

struct scanner_setting {
	char name[33];
	char vendor[5], product[5];
	char serial[SCANNERS_TEXT_MAX + 1], port[SCANNERS_TEXT_MAX + 1]; /* "" any */
	int32_t room;
	enum scanner_mode mode;
	char options[SCANNER_OPTION_KINDS][SCANNER_OPTION_MAX]; /* "" not said; only those of its mode */
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

/* Whether a device is of one of the families at all, and of which. */
bool scanners_could_be(const struct scanner_device *d, enum scanner_mode *mode);

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
