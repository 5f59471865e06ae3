/* A scanner in keyboard mode that umockdev plays, and scan-handheld on it: for the tests and the figures. The
 * program must run inside umockdev-wrapper. */
#ifndef BANDTALLY_TESTS_HANDHELD_RIG_H
#define BANDTALLY_TESTS_HANDHELD_RIG_H

#include <stdbool.h>
#include <stdio.h>
#include <sys/types.h>
#include <umockdev.h>

#include "base/wire.h"

#define RIG_SYSFS "/devices/pci0000:00/0000:00:14.0/usb1/1-1/1-1:1.0/0003:1209:B0C0.0001/input"

/* Plugs in /dev/input/event<number>, vendor 1209, product b0c0. The end to type at, or -1. */
int rig_plug(UMockdevTestbed *bed, int number);

/* Keys down and up: one by its code; digits and capitals as a US layout has them; the same and Enter. */
void rig_key(int fd, unsigned code);
void rig_type(int fd, const char *text);
void rig_code(int fd, const char *text);

struct rig_driver {
	pid_t pid;
	FILE *lines; /* what it writes */
};
struct rig_driver rig_start(const char *program, const char *node);
bool rig_next(struct rig_driver *d, struct wire_line *out); /* false where no line comes */
bool rig_is_scan(const struct wire_line *l, const char *data);

/* Types so many numbers one upon the other, and returns how many came whole and in order. Two codes are under
 * way at a time: umockdev's node is a terminal, which cuts events in pieces when its 4 KiB are full, as no
 * kernel's event node does. */
int rig_many(struct rig_driver *d, int fd, int codes, double *codes_per_s);

double rig_seconds(void); /* CLOCK_MONOTONIC */

#endif
