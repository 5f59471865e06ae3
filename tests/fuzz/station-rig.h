/* A whole station in a folder of its own, in this very process: all of the daemon but its beginning, its confinement and
 * who its peer is. People, a catalogue and an open case wait in it, and each input gets a copy of that.
 */
#ifndef BANDTALLY_TESTS_FUZZ_STATION_RIG_H
#define BANDTALLY_TESTS_FUZZ_STATION_RIG_H

#include <stddef.h>
#include <stdint.h>

#include "run/daemon.h"

/* As fuzz.h's, where stderr may be the station's log. */
void rig_must(int holds, const char *what);

/* What the target lets run in the station beside its socket; each function may be NULL. */
struct rig_parts {
	const char *settings; /* station.ini */
	void (*begin)(struct daemon *d);
	void (*end)(struct daemon *d);
	void (*second)(struct daemon *d); /* what it looks at each second besides */
	int may_be_doubted; /* the hospital's program may say that this record is not the station's */
};

/* Runs one input: `each` gets every line of it, without its newline, and the socket's other end. Then the station starts
 * again on what it stored, and must have lost nothing and be able to follow all of it (rule 26). Between the lines "\x01"
 * is a second. */
typedef void (*rig_line_fn)(struct daemon *d, int fd, const char *line, size_t size);
void rig_run(const struct rig_parts *parts, rig_line_fn each, const char *text, size_t size);

/* One turn of its loop. */
void rig_turn(struct daemon *d);
/* A request at its socket, which must get one answer: JSON that says whether it was taken, and else why not. */
void rig_ask(struct daemon *d, int fd, const char *line, size_t size);

#endif
