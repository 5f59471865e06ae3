/* Settings that can be read, and cannot be meant: the station would start with them, and a driver, a room or a label would be
 * missing. */
#ifndef BANDTALLY_RUN_SENSE_H
#define BANDTALLY_RUN_SENSE_H

#include "run/settings.h"

/* Whether the time zone is one that this computer has, each driver has a program that is there and a room that the file has, each
 * scanner of scanners.ini such a room too, no two rooms bear one name, and the labels' medium is described in `place`. 0 or a
 * negative errno with `e`: file, what is wrong and what to do. */
int sense_check(const struct settings *s, const struct station *st, const char *place, struct error *e);

#endif
