/* Writes driver lines (base/wire.h has the format).
 *
 * Each line goes out in one write and is read back by the daemon's own reader before it leaves, so that
 * nothing is sent that the daemon would refuse.
 */
#ifndef BANDTALLY_DRIVERS_WIRE_WRITER_H
#define BANDTALLY_DRIVERS_WIRE_WRITER_H

#include <stdbool.h>
#include <stddef.h>

#include "base/wire.h"

struct wire {
	int fd; /* the caller's; usually 1 */
};

struct wire_scan {
	const char *aim;  /* "]C1", or NULL or "" where the device sends none */
	const char *data; /* `size` bytes, any */
	size_t size;
	const char *file; /* NULL unless it was read from a picture */
	int64_t ms; /* CLOCK_BOOTTIME of its last key, byte or frame; 0 where the driver does not know */
};

/* A code that is too long for a line is not sent in part: a fault line "too-long" is written instead. */
#define WIRE_TOO_LONG 1

/* Each returns 0, or a negative errno (-EPIPE: the reader has gone, -EINVAL: what was to be said has no
 * form). Bytes that are no UTF-8 become '?' in names and sentences; in a scan they make it "hex". */
int wire_hello(struct wire *w, const char *driver, const char *device);
struct wire_hello {
	const char *driver, *device;
	const char
	    *uncertain; /* what the driver does not know yet about how its device sends; NULL where nothing */
	bool pictures;  /* it sends pictures when it is asked */
};
int wire_hello_whole(struct wire *w, const struct wire_hello *hello);
int wire_scan(struct wire *w, const struct wire_scan *scan); /* also WIRE_TOO_LONG */
int wire_fault(struct wire *w, const char *code, const char *sentence);
/* The same, and what the driver still does not know; NULL where nothing. */
int wire_fault_uncertain(struct wire *w, const char *code, const char *sentence, const char *uncertain);

/* A JPEG, and where `count` codes are in it. Not before wire_has_room() said so: then neither this nor a scan behind it waits
 * for the reader. */
int wire_picture(struct wire *w, const void *jpeg, size_t size, const struct wire_seen *codes, size_t count);

/* True where the reader has taken nearly all that was sent to it. */
bool wire_has_room(const struct wire *w);

/* Sends a line that someone else wrote, when the reader accepts it; otherwise -EINVAL and `e`. */
int wire_pass_on(struct wire *w, const char *line, size_t size, struct error *e);

/* True once nobody can read the lines any more. To wait for it with a device, poll `fd` for 0 events. */
bool wire_reader_gone(const struct wire *w);

#endif
