/* The contract of a driver.
 *
 * A driver is a program of its own that the daemon starts as a child: stdin is /dev/null, stdout a pipe to
 * the daemon, stderr the daemon's. It reads one device, which it opens first; then main.c takes away
 * everything that reading needs no more (sandbox.h), says hello, and run() writes lines (wire-writer.h) until the
 * device ends. Which scanner is whose is the daemon's knowledge, never the line's.
 *
 * One file a device family defines `this_driver`; main.c is linked with it (house_driver in CMakeLists.txt).
 * template.c is the smallest one, and is built and run in a test.
 *
 * Exit codes: 0 ended in order, 1 failed (a fault line and a sentence on stderr say why), 2 wrong usage.
 */
#ifndef BANDTALLY_DRIVERS_DRIVER_H
#define BANDTALLY_DRIVERS_DRIVER_H

#include <stdbool.h>

#include "base/error.h"
#include "drivers/wire-writer.h"

struct option; /* <getopt.h> */

/* A positive result of open(): the words of the command are wrong, `e` says how. */
#define DRIVER_USAGE 1
/* A positive result of run(): it went on to the end, but wrote fault lines on the way. Exit code 1. */
#define DRIVER_FAULTS 1

struct driver {
	const char *name;  /* "camera": the word of hello, and the program is scan-camera */
	const char *usage; /* what --help prints after "usage: scan-NAME ", with newlines */

	/* The driver's own long options, ended by an all-zero one, each with `flag` NULL and `val` above 255;
	 * NULL where there are none. --help and --version are main.c's. */
	const struct option *options;

	/* What the process may still do once its device is open, besides reading and writing what is open,
	 * waiting and telling the time: ioctl() of this type letter ('V' V4L2, 'E' evdev), 0 none. */
	char ioctl_type;

	bool
	    pictures; /* it hears the signals by which the station asks for pictures (wire.h), from open() on */

	/* The driver's state; main.c passes it to every call below. NULL only when memory is out. */
	void *(*new)(void);
	void (*free)(void *state);

	/* Called for each of `options` in the order of the command line; `argument` is NULL where it takes
	 * none. 0, or a negative errno with `e` filled (wrong usage). May be NULL where `options` is. */
	int (*option)(void *state, int val, const char *argument, struct error *e);

	/* Opens everything that run() will need; `words` are the `count` words after the options. Nothing
	 * that a device or file holds is parsed here: that is run()'s, inside the sandbox. 0, DRIVER_USAGE or
	 * a negative errno, the last two with `e` filled. */
	int (*open)(void *state, int count, char *const *words, struct error *e);

	/* What hello calls the device; called after open(). Borrowed from the state. */
	const char *(*device)(const void *state);

	/* What the driver does not know yet about how its device sends, in words, for hello; NULL where
	 * nothing. Called after open(); borrowed from the state. May be NULL. */
	const char *(*uncertain)(const void *state);

	/* Reads until the device ends. 0, DRIVER_FAULTS, or a negative errno with `e` filled, which main.c
	 * writes as the fault "lost"; -ETIMEDOUT, the device is there and gives nothing, as "stalled". While it waits it watches for wire_reader_gone(). */
	int (*run)(void *state, struct wire *out, struct error *e);
};

extern const struct driver this_driver;

#endif
