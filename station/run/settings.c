#include "run/settings.h"

#include <arpa/inet.h>
#include <ctype.h>
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "base/ini.h"
#include "base/name.h"
#include "base/settings-told.h"
#include "code/own-codes.h"
#include "words/languages.h"

struct reading {
	struct settings *s;
	struct station *st;
	const char *folder;
	char rooms[ROOMS_MAX][INI_LINE_MAX + 1]; /* the section in which each was begun */
};

static int copy(char *out, size_t size, const char *name, const char *value, struct error *e)
{
	if (!*value || strlen(value) >= size)
		return error_set(e, -EINVAL, "%s must have 1 to %zu bytes: give another", name, size - 1);
	memcpy(out, value, strlen(value) + 1);
	return 0;
}

/* What stands on page and paper. */
static int copy_name(char *out, size_t size, const char *name, const char *value, struct error *e)
{
	int n = name_check(name, value, size - 1, e);
	return n < 0 ? n : copy(out, size, name, value, e);
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

/* Of board and papers: one that is installed. */
static int set_language(char out[LANGUAGE_CODE_MAX], const char *value, struct error *e)
{
	if (!language_is_installed(value))
		return error_set(
		    e, -EINVAL,
		    "language is '%.40s', which is not in %.200s: give one of those there (de for "
		    "de.mo), or en",
		    value, languages_folder());
	snprintf(out, LANGUAGE_CODE_MAX, "%s", value);
	return 0;
}

static int set_site(struct settings *s, struct station *st, const char *name, const char *value,
                    struct error *e)
{
	if (strcmp(name, "name") == 0)
		return copy_name(st->site_name, sizeof st->site_name, name, value, e);
	if (strcmp(name, "language") == 0)
		return set_language(st->language, value, e);
	if (strcmp(name, "telephone") == 0)
		return copy_name(s->telephone, sizeof s->telephone, name, value, e);
	if (strcmp(name, "letters") != 0)
		return error_set(
		    e, -EINVAL,
		    "[site] has no setting '%.40s': letters, name, language and telephone are known", name);
	if (strlen(value) != 2 || strspn(value, OWN_SITE_LETTERS) != 2)
		return error_set(e, -EINVAL, "letters is '%.20s': it must be two of " OWN_SITE_LETTERS,
		                 value);
	s->site_said = 1;
	return copy(st->site, sizeof st->site, name, value, e);
}

/* Which of the hospital's stations this is. */
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

static int set_kind(struct room *r, const char *value, struct error *e)
{
	static const char *const kinds[] = {
	    [ROOM_OF_CASES] = "cases", [ROOM_OF_STORES] = "stores", [ROOM_OF_AUDIT] = "audit"};
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (strcmp(value, kinds[i]) == 0) {
			r->kind = (uint8_t)i;
			return 0;
		}
	return error_set(
	    e, -EINVAL,
	    "kind is '%.40s': it must be cases, where operations are, stores, a stores bench, or "
	    "audit, an auditor's desk",
	    value);
}

/* "[room 01]" is no further room beside "[room 1]". */
static int is_one_section(struct reading *r, const struct room *room, const char *section, struct error *e)
{
	char *first = r->rooms[room - r->st->rooms];
	if (!*first)
		snprintf(first, sizeof *r->rooms, "%s", section);
	if (strcmp(first, section) == 0)
		return 0;
	return error_set(e, -EINVAL, "[%.40s] and [%.40s] are one room, given twice: remove one", first,
	                 section);
}

static int set_room(struct reading *reading, const char *section, const char *name, const char *value,
                    struct error *e)
{
	int number = 0, single = 0;
	if (whole(&number, "the room's number", section + 5, 1, 99, e) < 0)
		return -EINVAL;
	struct room *r = room_make(reading->st, number);
	if (!r)
		return error_set(e, -ENOSPC, "more than %d rooms: one station serves at most as many",
		                 ROOMS_MAX);
	if (is_one_section(reading, r, section, e) < 0)
		return -EINVAL;
	if (strcmp(name, "name") == 0)
		return copy_name(r->name, sizeof r->name, name, value, e);
	if (strcmp(name, "language") == 0)
		return set_language(r->language, value, e);
	if (strcmp(name, "kind") == 0)
		return set_kind(r, value, e);
	if (strcmp(name, "single_operator") != 0)
		return error_set(
		    e, -EINVAL,
		    "[room] has no setting '%.40s': name, kind, language and single_operator are known",
		    name);
	if (yes_no(&single, name, value, e) < 0)
		return -EINVAL;
	r->single = (uint8_t)single;
	return 0;
}

/* "70 x 33": millimetres. */
static int patient_label(struct settings *s, const char *value, struct error *e)
{
	char width[40], height[40];
	const char *cross = strchr(value, 'x');
	if (!cross || strlen(value) >= sizeof width)
		return error_set(e, -EINVAL,
		                 "patient_label is '%.40s': give width x height in mm, as in 70 x 33", value);
	snprintf(width, sizeof width, "%.*s", (int)(cross - value), value);
	snprintf(height, sizeof height, "%s", cross + 1 + strspn(cross + 1, " "));
	for (size_t n = strlen(width); n && width[n - 1] == ' '; n--)
		width[n - 1] = 0;
	int r = whole(&s->label_width_mm, "the width of patient_label", width, 20, 180, e);
	return r < 0 ? r : whole(&s->label_height_mm, "the height of patient_label", height, 10, 120, e);
}

static int set_printer(struct settings *s, const char *name, const char *value, struct error *e)
{
	static const char *const papers[] = {"roll80", "a6", "a5", "a4"};
	if (strcmp(name, "queue") == 0)
		return copy_name(s->printer, sizeof s->printer, name, value, e);
	if (strcmp(name, "dpi") == 0) {
		if (whole(&s->dpi, name, value, 203, 600, e) < 0)
			return -EINVAL;
		return s->dpi == 203 || s->dpi == 300 || s->dpi == 600
		           ? 0
		           : error_set(e, -EINVAL, "dpi must be 203, 300 or 600");
	}
	if (strcmp(name, "patient_label") == 0)
		return patient_label(s, value, e);
	for (size_t i = 0; strcmp(name, "paper") == 0 && i < sizeof papers / sizeof *papers; i++)
		if (strcmp(value, papers[i]) == 0)
			return copy(s->paper, sizeof s->paper, name, value, e);
	return error_set(
	    e, -EINVAL,
	    "[printer] %.40s = %.40s: queue, dpi, patient_label and paper (roll80, a6, a5, a4) are known",
	    name, value);
}

static int set_labels(struct settings *s, const char *name, const char *value, struct error *e)
{
	if (strcmp(name, "queue") == 0)
		return copy_name(s->labels_printer, sizeof s->labels_printer, name, value, e);
	if (strcmp(name, "media") == 0)
		return copy_name(s->labels_medium, sizeof s->labels_medium, name, value, e);
	return error_set(e, -EINVAL, "[labels] has no setting '%.40s': queue and media are known", name);
}

static int set_driver(struct settings *s, const char *section, const char *name, const char *value,
                      struct error *e)
{
	struct driver_setting *d = NULL;
	int room = 0;
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
		if (copy_name(d->name, sizeof d->name, "the driver's name", section + 7, e) < 0)
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

/* The minute of the day at "22:00", -1 where it is none. */
static int minute_of(const char *text)
{
	static const char form[] = "00:00";
	for (int i = 0; form[i]; i++)
		if (form[i] == '0' ? !isdigit((unsigned char)text[i]) : text[i] != form[i])
			return -1;
	int hour = (text[0] - '0') * 10 + text[1] - '0', minute = (text[3] - '0') * 10 + text[4] - '0';
	return hour < 24 && minute < 60 ? hour * 60 + minute : -1;
}

static int set_quiet(struct sound_setting *s, const char *value, struct error *e)
{
	int from = -1, to = -1;
	if (strlen(value) == 11 && value[5] == '-') {
		from = minute_of(value);
		to = minute_of(value + 6);
	}
	if (strcmp(value, "no") != 0 && (from < 0 || to < 0 || from == to))
		return error_set(e, -EINVAL,
		                 "quiet is '%.40s': it must be no, or from when to when, as 22:00-07:00",
		                 value);
	s->quiet_from = from;
	s->quiet_to = to;
	return 0;
}

static int set_board(struct settings *s, const char *name, const char *value, struct error *e)
{
	if (strcmp(name, "start") == 0)
		return yes_no(&s->board, name, value, e);
	if (strcmp(name, "port") == 0)
		return whole(&s->board_port, name, value, 0, 65535, e);
	if (strcmp(name, "volume") == 0)
		return whole(&s->sound.volume, name, value, 0, 100, e);
	if (strcmp(name, "quiet") == 0)
		return set_quiet(&s->sound, value, e);
	if (strcmp(name, "typing") == 0)
		return yes_no(&s->board_typing, name, value, e);
	if (strcmp(name, "open") == 0)
		return yes_no(&s->board_open, name, value, e);
	if (strcmp(name, "speech") == 0)
		return yes_no(&s->sound.speech, name, value, e);
	return error_set(
	    e, -EINVAL,
	    "[board] has no setting '%.40s': start, port, open, typing, volume, quiet and speech "
	    "are known",
	    name);
}

static int set_address(char out[46], const char *value, struct error *e)
{
	struct in6_addr number;
	if (strlen(value) >= 46 ||
	    (inet_pton(AF_INET, value, &number) != 1 && inet_pton(AF_INET6, value, &number) != 1))
		return error_set(
		    e, -EINVAL,
		    "address is '%.60s': it must be an address of this machine in numbers, as 192.0.2.7",
		    value);
	snprintf(out, 46, "%s", value);
	return 0;
}

/* Names without a scheme and without a port, separated by spaces. */
static int set_hosts(struct elsewhere_setting *w, const char *value, struct error *e)
{
	w->n_hosts = 0;
	for (const char *at = value; *(at += strspn(at, " "));) {
		size_t n = strcspn(at, " "), fit = 0;
		int address = at[0] == '[';
		while (fit < n &&
		       (isalnum((unsigned char)at[fit]) || strchr(address ? "[:.]" : ".-", at[fit])))
			fit++;
		if (fit < n || n >= sizeof *w->hosts || w->n_hosts == HOSTS_MAX)
			return error_set(
			    e, -EINVAL,
			    "hosts at '%.60s': 1 to %d names of at most %zu letters are taken, without "
			    "https:// and without port, as board.example.org [2001:db8::7]",
			    at, HOSTS_MAX, sizeof *w->hosts - 1);
		snprintf(w->hosts[w->n_hosts++], sizeof *w->hosts, "%.*s", (int)n, at);
		at += n;
	}
	return w->n_hosts ? 0 : error_set(e, -EINVAL, "hosts names none: give one, as board.example.org");
}

/* Where it does not begin at the root it lies in the data folder. */
static int set_path(char *out, size_t size, const char *folder, const char *name, const char *value,
                    struct error *e)
{
	int n = snprintf(out, size, "%s%s%s", *value == '/' ? "" : folder, *value == '/' ? "" : "/", value);
	if (*value && n > 0 && (size_t)n < size)
		return 0;
	out[0] = 0;
	return error_set(e, -EINVAL, "%s is no path of 1 to %zu bytes: give a shorter one", name, size - 1);
}

/* Names with or without a port, separated by spaces. */
static int set_hospital_hosts(struct hospital_setting *w, const char *value, struct error *e)
{
	w->n_hosts = 0;
	for (const char *at = value; *(at += strspn(at, " "));) {
		size_t n = strcspn(at, " "), fit = 0;
		while (fit < n && (isalnum((unsigned char)at[fit]) || strchr("[]:.-", at[fit])))
			fit++;
		if (fit < n || n >= sizeof *w->hosts || w->n_hosts == HOSTS_MAX)
			return error_set(
			    e, -EINVAL,
			    "hosts at '%.60s': 1 to %d names of at most %zu letters are taken, with or "
			    "without a port, as db1.example.org:5432 [2001:db8::7]",
			    at, HOSTS_MAX, sizeof *w->hosts - 1);
		snprintf(w->hosts[w->n_hosts++], sizeof *w->hosts, "%.*s", (int)n, at);
		at += n;
	}
	return w->n_hosts ? 0 : error_set(e, -EINVAL, "hosts names none: give one, as db1.example.org");
}

static int set_hospital(struct reading *r, const char *name, const char *value, struct error *e)
{
	struct hospital_setting *w = &r->s->hospital;
	if (strcmp(name, "start") == 0)
		return yes_no(&w->start, name, value, e);
	if (strcmp(name, "hosts") == 0)
		return set_hospital_hosts(w, value, e);
	if (strcmp(name, "database") == 0)
		return copy(w->database, sizeof w->database, name, value, e);
	if (strcmp(name, "certificate") == 0)
		return set_path(w->certificate, sizeof w->certificate, r->folder, name, value, e);
	if (strcmp(name, "key") == 0)
		return set_path(w->key, sizeof w->key, r->folder, name, value, e);
	if (strcmp(name, "authority") == 0)
		return set_path(w->authority, sizeof w->authority, r->folder, name, value, e);
	if (strcmp(name, "lists_hours") == 0)
		return whole(&w->lists_hours, name, value, 1, 8760, e);
	return error_set(
	    e, -EINVAL,
	    "[hospital] has no setting '%.40s': start, hosts, database, certificate, key, authority "
	    "and lists_hours are known",
	    name);
}

/* What only shows once the whole file is read. */
static int hospital_whole(const struct settings *s, const char *path, struct error *e)
{
	const struct hospital_setting *w = &s->hospital;
	const char *lacks = !w->n_hosts          ? "hosts"
	                    : !w->certificate[0] ? "certificate"
	                    : !w->key[0]         ? "key"
	                    : !w->authority[0]   ? "authority"
	                                         : NULL;
	if (!w->start || !lacks)
		return 0;
	return error_set(e, -EINVAL, "%s: [hospital] is started but lacks %s: give it, or say start = no",
	                 path, lacks);
}

static int set_elsewhere(struct reading *r, const char *name, const char *value, struct error *e)
{
	struct elsewhere_setting *w = &r->s->elsewhere;
	if (strcmp(name, "start") == 0)
		return yes_no(&w->start, name, value, e);
	if (strcmp(name, "address") == 0)
		return set_address(w->address, value, e);
	if (strcmp(name, "port") == 0)
		return whole(&w->port, name, value, 0, 65535, e);
	if (strcmp(name, "hosts") == 0)
		return set_hosts(w, value, e);
	if (strcmp(name, "certificate") == 0)
		return set_path(w->certificate, sizeof w->certificate, r->folder, name, value, e);
	if (strcmp(name, "key") == 0)
		return set_path(w->key, sizeof w->key, r->folder, name, value, e);
	if (strcmp(name, "clients") == 0)
		return set_path(w->clients, sizeof w->clients, r->folder, name, value, e);
	if (strcmp(name, "revoked") == 0)
		return set_path(w->revoked, sizeof w->revoked, r->folder, name, value, e);
	if (strcmp(name, "typing") == 0)
		return yes_no(&w->typing, name, value, e);
	return error_set(
	    e, -EINVAL,
	    "[board elsewhere] has no setting '%.40s': start, address, port, hosts, certificate, "
	    "key, clients, revoked and typing are known",
	    name);
}

/* What only shows once the whole file is read. */
static int elsewhere_whole(const struct settings *s, const char *path, struct error *e)
{
	const struct elsewhere_setting *w = &s->elsewhere;
	const char *lacks = !s->board            ? "[board] start = yes"
	                    : !w->address[0]     ? "address"
	                    : !w->n_hosts        ? "hosts"
	                    : !w->certificate[0] ? "certificate"
	                    : !w->key[0]         ? "key"
	                    : !w->clients[0]     ? "clients"
	                                         : NULL;
	if (!w->start || !lacks)
		return 0;
	return error_set(e, -EINVAL,
	                 "%s: [board elsewhere] is started but lacks %s: give it, or say start = no", path,
	                 lacks);
}

static int set_station(struct reading *r, const char *name, const char *value, struct error *e)
{
	int number = 0;
	if (strcmp(name, "head") == 0)
		return set_path(r->s->head, sizeof r->s->head, r->folder, name, value, e);
	if (strcmp(name, "number") != 0)
		return error_set(e, -EINVAL, "[station] has no setting '%.40s': number and head are known",
		                 name);
	if (whole(&number, name, value, 0, OWN_STATIONS - 1, e) < 0)
		return -EINVAL;
	r->s->number_said = 1;
	r->st->number = (uint8_t)number;
	return 0;
}

static int set_one(struct reading *r, const char *section, const char *name, const char *value,
                   struct error *e)
{
	if (strcmp(section, "site") == 0)
		return set_site(r->s, r->st, name, value, e);
	if (strcmp(section, "station") == 0)
		return set_station(r, name, value, e);
	if (strncmp(section, "room ", 5) == 0)
		return set_room(r, section, name, value, e);
	if (strcmp(section, "printer") == 0)
		return set_printer(r->s, name, value, e);
	if (strcmp(section, "labels") == 0)
		return set_labels(r->s, name, value, e);
	if (strncmp(section, "driver ", 7) == 0)
		return set_driver(r->s, section, name, value, e);
	if (strcmp(section, "board") == 0)
		return set_board(r->s, name, value, e);
	if (strcmp(section, "board elsewhere") == 0)
		return set_elsewhere(r, name, value, e);
	if (strcmp(section, "hospital") == 0)
		return set_hospital(r, name, value, e);
	return error_set(e, -EINVAL, "[%.40s] %.40s is not a setting: 'man bandtally-station' tells each",
	                 section, name);
}

static int set(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	int n = set_one(context, section, name, value, e);
	if (n < 0 || setting_told("station", section, name) != SETTING_UNKNOWN)
		return n;
	return error_set(e, -EINVAL,
	                 "[%.40s] %.40s has no row in settings-told.h, which says whether a report of a "
	                 "fault may show it: give it one",
	                 section, name);
}

static void begin(struct settings *s, struct station *st)
{
	*s = (struct settings){.paper = "a5",
	                       .dpi = 300,
	                       .board_port = 8417,
	                       .board_typing = 1,
	                       .board_open = 1,
	                       .elsewhere.port = 8418,
	                       .hospital = {.database = "bt", .lists_hours = 24},
	                       .sound = {.volume = 60, .quiet_from = -1, .quiet_to = -1}};
	snprintf(st->site, sizeof st->site, "BC");
	st->number = 0;
	st->language[0] = 0;
	snprintf(st->site_name, sizeof st->site_name, "site not named in station.ini");
	policy_default(&st->policy);
}

void settings_default(struct settings *s, struct station *st)
{
	begin(s, st);
	if (!st->n_rooms)
		room_make(st, 1);
}

int settings_read_from(struct settings *s, struct station *st, const char *folder, const char *place,
                       struct error *e)
{
	char path[PATH_MAX];
	struct reading r = {.s = s, .st = st, .folder = folder};
	begin(s, st);
	snprintf(path, sizeof path, "%s/station.ini", place);
	int n = ini_read(path, set, &r, e);
	if (n < 0 && n != -ENOENT && n != -ENOTDIR) /* a folder that is none is told by whoever opens it */
		return n;
	n = elsewhere_whole(s, path, e);
	if (n == 0)
		n = hospital_whole(s, path, e);
	if (n < 0)
		return n;
	if (!st->n_rooms)
		room_make(st, 1);
	snprintf(path, sizeof path, "%s/policy.ini", place);
	n = policy_read(&st->policy, path, e);
	return n == -ENOENT || n == -ENOTDIR ? 0 : n;
}

int settings_read(struct settings *s, struct station *st, const char *folder, struct error *e)
{
	return settings_read_from(s, st, folder, folder, e);
}

int settings_quiet(const struct sound_setting *s, int64_t wall_ms)
{
	time_t seconds = (time_t)(wall_ms / 1000);
	struct tm local;
	if (s->quiet_from < 0 || !localtime_r(&seconds, &local))
		return 0;
	int minute = local.tm_hour * 60 + local.tm_min;
	return s->quiet_from < s->quiet_to ? minute >= s->quiet_from && minute < s->quiet_to
	                                   : minute >= s->quiet_from || minute < s->quiet_to;
}
