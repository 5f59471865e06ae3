#include "run/sense.h"

#include <errno.h>
#include <limits.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/clock.h"
#include "base/own.h"
#include "base/scanners.h"
#include "run/media.h"

#define FILE_OF "%.200s/station.ini: "

/* As it would be started: one of ours by its name, another by its path. */
static bool is_there(const char *program)
{
	char path[PATH_MAX];
	if (strchr(program, '/') || own_path(path, sizeof path, program) < 0)
		snprintf(path, sizeof path, "%s", program);
	return access(path, X_OK) == 0;
}

static int check_driver(const struct driver_setting *d, const struct station *st, const char *place,
                        struct error *e)
{
	char program[sizeof d->command];
	const char *command = d->command + strspn(d->command, " ");
	snprintf(program, sizeof program, "%.*s", (int)strcspn(command, " "), command);
	if (!program[0])
		return error_set(e, -EINVAL,
		                 FILE_OF "[driver %s] has no command, and would not be started: give its "
		                         "program, or take the section out",
		                 place, d->name);
	if (!is_there(program))
		return error_set(e, -ENOENT,
		                 FILE_OF "[driver %s] command: %.150s is no program that can be started: "
		                         "give the name of one of this station's, or a whole path",
		                 place, d->name, program);
	if (station_room(st, d->room))
		return 0;
	return error_set(e, -EINVAL,
	                 FILE_OF "[driver %s] room = %d: there is no [room %d]: its scans would be entered "
	                         "nowhere",
	                 place, d->name, (int)d->room, (int)d->room);
}

/* One that cannot be read at all is told where it is read. */
static int check_scanners(const struct station *st, const char *place, struct error *e)
{
	static struct scanners scanners; /* 25 kB; one thread */
	char path[PATH_MAX];
	struct error unread = {0};
	snprintf(path, sizeof path, "%.3800s/scanners.ini", place);
	int count = scanners_read(path, &scanners, &unread) == 0 ? scanners.count : 0;
	for (int i = 0; i < count; i++)
		if (!station_room(st, scanners.list[i].room))
			return error_set(
			    e, -EINVAL,
			    "%.200s/scanners.ini: [scanner %s] room = %d: there is no [room %d] in "
			    "station.ini: its scans would be entered nowhere",
			    place, scanners.list[i].name, (int)scanners.list[i].room,
			    (int)scanners.list[i].room);
	return 0;
}

static int check_rooms(const struct station *st, const char *place, struct error *e)
{
	for (int i = 0; i < st->n_rooms; i++)
		for (int k = 0; k < i; k++)
			if (strcmp(st->rooms[i].name, st->rooms[k].name) == 0)
				return error_set(e, -EEXIST,
				                 FILE_OF
				                 "rooms %d and %d are both called %s: nobody could tell "
				                 "which one a board or a slip speaks of",
				                 place, (int)st->rooms[k].number, (int)st->rooms[i].number,
				                 st->rooms[i].name);
	return 0;
}

static int check_labels(const struct settings *s, const char *place, struct error *e)
{
	struct error why = {0};
	json_t *found = *s->labels_medium ? media_find(place, s->labels_medium, &why) : NULL;
	json_decref(found);
	if (found || !*s->labels_medium)
		return 0;
	return error_set(e, -ENOENT,
	                 FILE_OF "[labels] media = %s: there is no [medium %s] in labels.ini of that folder: "
	                         "describe what lies in the printer there, or take the line out",
	                 place, s->labels_medium, s->labels_medium);
}

static int check_zone(struct error *e)
{
	if (clock_zone_is_known())
		return 0;
	return error_set(e, -EINVAL,
	                 "TZ is '%.60s', a time zone that this computer does not have: every time would be "
	                 "printed in UTC: name one below /usr/share/zoneinfo, as Europe/Berlin",
	                 getenv("TZ"));
}

int sense_check(const struct settings *s, const struct station *st, const char *place, struct error *e)
{
	int n = check_zone(e);
	if (n == 0)
		n = check_rooms(st, place, e);
	for (int i = 0; n == 0 && i < s->n_drivers; i++)
		n = check_driver(&s->drivers[i], st, place, e);
	if (n == 0)
		n = check_scanners(st, place, e);
	return n == 0 ? check_labels(s, place, e) : n;
}
