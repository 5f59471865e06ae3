/* The line format between a driver and the daemon, and its reader.
 *
 * A driver writes one JSON object on a line, at most WIRE_LINE_MAX bytes with the newline (so that one
 * write() to a pipe is never mixed with another). It holds "v":1 and exactly one of
 *
 *   "hello"  {"driver": name, "device": path}      once, first, when the device is open
 *            and "uncertain": sentence             where the driver does not yet know how its device sends
 *   "scan"   {"aim": "]C1", "data": text}          one presentation of one code
 *            {"aim": "]C1", "hex": digits}         where the bytes are no UTF-8 or hold a NUL
 *   "fault"  {"code": word, "text": sentence}      what went wrong, for a person
 *            and "uncertain": sentence             at the end of a scanner check: what it does not know yet
 *                                                  The word "over": what was told is over, and nothing is wrong now
 *
 *   "picture" {"jpeg": base64, "codes": [[left, top, right, bottom, told], …]}   what a camera sees now, for people to aim
 *            by, small and grey, and where in it codes are, in thousandths of its width and height; "told": it was
 *            entered. Only where hello said "pictures": true, the station has asked for it by SIGUSR1, and less than
 *            WIRE_SHOW_MS ago; SIGUSR2 takes that back. A driver that did not say so is sent neither
 *
 * "aim" is the symbology identifier of ISO/IEC 15424, absent where the device does not send one. A scan that
 * was read from a picture also says "file". A scan may say "ms", the reading of CLOCK_BOOTTIME at its last key
 * or byte in whole milliseconds: a device that kept codes while nobody listened sends them in a burst, and the
 * difference of two readings shows it. Members that are not named here are passed over, so that a driver
 * may say more; everything that is named is checked.
 */
#ifndef BANDTALLY_BASE_WIRE_H
#define BANDTALLY_BASE_WIRE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/error.h"

#define WIRE_LINE_MAX 4096
#define WIRE_WORD_MAX 32 /* bytes of a driver's name or of a fault's code: a-z, 0-9 and '-' */
#define WIRE_DEVICE_MAX 255
#define WIRE_TEXT_MAX 511 /* bytes of a fault's sentence */
#define WIRE_AIM_SIZE 3   /* ']', a letter, a letter or digit */
#define WIRE_SHOW_MS 20000
#define WIRE_SEEN_MAX 4

enum wire_kind {
	WIRE_HELLO,
	WIRE_SCAN,
	WIRE_FAULT,
	WIRE_PICTURE,
};

struct wire_seen { /* a code in a picture, in thousandths of its width and height */
	int left, top, right, bottom;
	bool told; /* it was entered */
};

struct wire_line {
	enum wire_kind kind;
	char driver[WIRE_WORD_MAX + 1];    /* hello */
	char device[WIRE_DEVICE_MAX + 1];  /* hello; may be empty */
	char uncertain[WIRE_TEXT_MAX + 1]; /* hello, fault; empty where it knows how its device sends */
	bool pictures;                     /* hello; it sends pictures when it is asked */
	char aim[WIRE_AIM_SIZE + 1];       /* scan; empty where the device sends none */
	char data
	    [WIRE_LINE_MAX]; /* scan, and of a picture its base64; `data_size` bytes, 1 or more, followed by a NUL */
	size_t data_size;
	char file[WIRE_LINE_MAX];     /* scan; empty unless it was read from a picture */
	int64_t ms;                   /* scan; CLOCK_BOOTTIME of its last key, -1 where it is not said */
	char code[WIRE_WORD_MAX + 1]; /* fault */
	char text[WIRE_TEXT_MAX + 1]; /* fault */
	struct wire_seen seen[WIRE_SEEN_MAX]; /* picture; `n_seen` of them */
	size_t n_seen;
};

/* Reads one line of `size` bytes, with or without its newline, into `out`. Pure. 0, -EMSGSIZE where the line
 * is too long, -ENOMEM, or -EINVAL for every other thing that is wrong with it; then `e` says what, and `out`
 * is not to be used. */
int wire_read_line(const char *line, size_t size, struct wire_line *out, struct error *e);

/* True for a symbology identifier in form: ']', a letter, a letter or digit, and no more. */
bool wire_aim_valid(const char *aim);

#endif
