/* One event as programs hand it to each other: a line of JSON, the event's text in it as the record has it.
 *
 *   {"event":TEXT,"hash":HEX,"seq":s}   TEXT to the byte, and not a space besides
 */
#ifndef BANDTALLY_BASE_EVENT_LINE_H
#define BANDTALLY_BASE_EVENT_LINE_H

#include <stddef.h>
#include <stdint.h>

#define LINE_HASH 64 /* letters of a hash in hex */

struct line_event { /* borrowed from the line */
	const char *text, *hash;
	size_t size; /* of the text */
	int64_t seq;
};

/* 1 where the line is an event, 0 where it is another one. Nothing of the text is read: its hash is checked by whoever keeps
 * it. */
int line_event(const char *line, size_t size, struct line_event *out);

#endif
