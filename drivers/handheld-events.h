/* Key events as text, one on a line: a recording that a scanner's owner can send in, and that is played
 * again.
 *
 *     1250 1 30 1          time in ms, type, code and value of linux/input.h (EV_KEY 30 is KEY_A, 1 is down)
 *
 * Lines that begin with '#' are passed over. Only EV_KEY, and EV_SYN with SYN_DROPPED (code 3), mean
 * something when played; a recording holds everything that came.
 */
#ifndef BANDTALLY_DRIVERS_HANDHELD_EVENTS_H
#define BANDTALLY_DRIVERS_HANDHELD_EVENTS_H

#include <stdint.h>

#include "base/error.h"

struct key_event {
	int64_t ms;
	unsigned type, code;
	int value;
};

enum { KEY_EVENT_READ = 0, KEY_EVENT_NONE = 1 /* a comment or an empty line */ };

/* Reads a line without its newline: KEY_EVENT_READ and `out`, KEY_EVENT_NONE, or -EINVAL and `e` ("why: what to do"). Times
 * go up from `last_ms`. */
int key_event_read(const char *line, int64_t last_ms, struct key_event *out, struct error *e);

/* Writes a line to `fd`. 0 or negative errno. */
int key_event_write(int fd, const struct key_event *event);

#endif
