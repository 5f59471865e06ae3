#include "run/settings.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/ini.h"
#include "code/own-codes.h"

struct reading {
	struct settings *s;
	struct station *st;
};

static int copy(char *out, size_t size, const char *name, const char *value, struct error *e)
{
	if (!*value || strlen(value) >= size)
		return error_set(e, -EINVAL, "%s must have 1 to %zu bytes: give another", name, size - 1);
	memcpy(out, value, strlen(value) + 1);
	return 0;
}

static int whole(int *out, const char *name, const char *value, int low, int high, struct error *e)
{
	char *end;
	long n = strtol(value, &end, 10);
	if (!*value || *end || n < low || n > high)
		return error_set(e, -EINVAL, "%s is '%.40s': it must be a whole number from %d to %d", name,
		                 value, low, high);
	*out = (int)n;
	return 0;
}

static int yes_no(int *out, const char *name, const char *value, struct error *e)
{
	if (strcmp(value, "yes") != 0 && strcmp(value, "no") != 0)
		return error_set(e, -EINVAL, "%s is '%.40s': it must be yes or no", name, value);
	*out = value[0] == 'y';
	return 0;
}

static int set_site(struct station *st, const char *name, const char *value, struct error *e)
{
	if (strcmp(name, "name") == 0)
		return copy(st->site_name, sizeof st->site_name, name, value, e);
	if (strcmp(name, "letters") != 0)
		return error_set(e, -EINVAL, "[site] has no setting '%.40s': letters and name are known",
		                 name);
	if (strlen(value) != 2 || strspn(value, OWN_SITE_LETTERS) != 2)
		return error_set(e, -EINVAL, "letters is '%.20s': it must be two of " OWN_SITE_LETTERS,
		                 value);
	return copy(st->site, sizeof st->site, name, value, e);
}

static struct room *room_make(struct station *st, int number)
{
	for (int i = 0; i < st->n_rooms; i++)
		if (st->rooms[i].number == number)
			return &st->rooms[i];
	if (st->n_rooms == ROOMS_MAX)
		return NULL;
	struct room *r = &st->rooms[st->n_rooms++];
	*r = (struct room){.number = number};
	snprintf(r->name, sizeof r->name, "Room %d", number);
	return r;
}

static int set_room(struct station *st, const char *section, const char *name, const char *value,
                    struct error *e)
{
	int number, flag;
	if (whole(&number, "the room's number", section + 5, 1, 99, e) < 0)
		return -EINVAL;
	struct room *r = room_make(st, number);
	if (!r)
		return error_set(e, -ENOSPC, "more than %d rooms: one station serves at most as many",
		                 ROOMS_MAX);
	if (strcmp(name, "name") == 0)
		return copy(r->name, sizeof r->name, name, value, e);
	if (strcmp(name, "single_operator") == 0 && yes_no(&flag, name, value, e) == 0) {
		r->single = (uint8_t)flag;
		return 0;
	}
	return e->code ? e->code
	               : error_set(e, -EINVAL,
	                           "[room] has no setting '%.40s': name and single_operator are "
	                           "known",
	                           name);
}

static int set_printer(struct settings *s, const char *name, const char *value, struct error *e)
{
	static const char *const papers[] = {"roll80", "a6", "a5", "a4"};
	if (strcmp(name, "queue") == 0)
		return copy(s->printer, sizeof s->printer, name, value, e);
	if (strcmp(name, "dpi") == 0) {
		if (whole(&s->dpi, name, value, 203, 600, e) < 0)
			return -EINVAL;
		return s->dpi == 203 || s->dpi == 300 || s->dpi == 600
		           ? 0
		           : error_set(e, -EINVAL, "dpi must be 203, 300 or 600");
	}
	for (size_t i = 0; strcmp(name, "paper") == 0 && i < sizeof papers / sizeof *papers; i++)
		if (strcmp(value, papers[i]) == 0)
			return copy(s->paper, sizeof s->paper, name, value, e);
	return error_set(e, -EINVAL,
	                 "[printer] %.40s = %.40s: queue, dpi and paper (roll80, a6, a5, a4) are known", name,
	                 value);
}

static int set_driver(struct settings *s, const char *section, const char *name, const char *value,
                      struct error *e)
{
	struct driver_setting *d = NULL;
	int room;
	for (int i = 0; i < s->n_drivers; i++)
		if (strcmp(s->drivers[i].name, section + 7) == 0)
			d = &s->drivers[i];
	if (!d) {
		if (s->n_drivers == DRIVERS_MAX)
			return error_set(e, -ENOSPC,
			                 "more than %d drivers: one station serves at most as many",
			                 DRIVERS_MAX);
		d = &s->drivers[s->n_drivers++];
		*d = (struct driver_setting){.room = 1};
		if (copy(d->name, sizeof d->name, "the driver's name", section + 7, e) < 0)
			return -EINVAL;
	}
	if (strcmp(name, "command") == 0)
		return copy(d->command, sizeof d->command, name, value, e);
	if (strcmp(name, "room") == 0 && whole(&room, name, value, 1, 99, e) == 0) {
		d->room = room;
		return 0;
	}
	return error_set(e, -EINVAL, "[driver] %.40s = %.60s: command and room (1 to 99) are known", name,
	                 value);
}

static int set(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	struct reading *r = context;
	e->code = 0;
	if (strcmp(section, "site") == 0)
		return set_site(r->st, name, value, e);
	if (strncmp(section, "room ", 5) == 0)
		return set_room(r->st, section, name, value, e);
	if (strcmp(section, "printer") == 0)
		return set_printer(r->s, name, value, e);
	if (strncmp(section, "driver ", 7) == 0)
		return set_driver(r->s, section, name, value, e);
	if (strcmp(section, "board") == 0 && strcmp(name, "start") == 0)
		return yes_no(&r->s->board, name, value, e);
	if (strcmp(section, "board") == 0 && strcmp(name, "port") == 0)
		return whole(&r->s->board_port, name, value, 0, 65535, e);
	return error_set(e, -EINVAL, "[%.40s] %.40s is not a setting: see the comments in config/station.ini",
	                 section, name);
}

int settings_read(struct settings *s, struct station *st, const char *folder, struct error *e)
{
	char path[PATH_MAX];
	struct reading r = {s, st};
	*s = (struct settings){.paper = "a5", .dpi = 300, .board_port = 8417};
	snprintf(st->site, sizeof st->site, "BC");
	snprintf(st->site_name, sizeof st->site_name, "site not named in station.ini");
	snprintf(path, sizeof path, "%s/station.ini", folder);
	int n = ini_read(path, set, &r, e);
	if (n < 0 && n != -ENOENT && n != -ENOTDIR) /* a folder that is none is told by whoever opens it */
		return n;
	if (!st->n_rooms)
		room_make(st, 1);
	snprintf(path, sizeof path, "%s/policy.ini", folder);
	n = policy_read(&st->policy, path, e);
	return n == -ENOENT || n == -ENOTDIR ? 0 : n;
}
