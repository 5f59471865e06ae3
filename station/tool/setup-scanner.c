/* setup: the scanner. It is plugged in while it is asked for, or named; a keyboard is never taken for one by its looks. */
#include <ctype.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/scanners.h"
#include "tool/client.h"
#include "tool/setup-ask.h"
#include "tool/setup-run.h"
#include "tool/setup.h"

#define NONE "none"
#define DEVICES_MAX 40
#define COLUMNS 7

/* A device as bandtallyd tells it; the columns lie in `line`. */
struct device {
	char line[400];
	const char *node, *mode, *vendor, *product, *serial, *listed, *name;
};

struct devices {
	struct device list[DEVICES_MAX];
	int n;
};

static bool split(struct device *d, const char *line, size_t size)
{
	const char **columns[COLUMNS] = {&d->node,   &d->mode,   &d->vendor, &d->product,
	                                 &d->serial, &d->listed, &d->name};
	char *at = d->line;
	if (size >= sizeof d->line)
		return false;
	memcpy(d->line, line, size);
	d->line[size] = 0;
	for (int i = 0; i < COLUMNS; i++) {
		*columns[i] = strsep(&at, "\t");
		if (!*columns[i])
			return false;
	}
	return true;
}

/* As the station knows them, with the candidate's scanners.ini. */
static void read_devices(const struct setup *s, struct devices *d)
{
	char *argv[] = {"bandtallyd", "--devices", "--settings", (char *)s->files.place, NULL};
	_cleanup_(buf_free) struct buf said = {0};
	d->n = 0;
	if (run_own("bandtallyd", argv, 0, &said) != 0 || !said.size)
		return;
	for (const char *at = said.data; *at && d->n < DEVICES_MAX;
	     at += strcspn(at, "\n"), at += *at == '\n')
		d->n += split(&d->list[d->n], at, strcspn(at, "\n"));
}

static const struct device *device_at(const struct devices *d, const char *node)
{
	for (int i = 0; i < d->n; i++)
		if (strcmp(d->list[i].node, node) == 0)
			return &d->list[i];
	return NULL;
}

static void list_devices(const struct devices *d)
{
	puts(d->n ? "What is plugged in and could be one (keyboards are among them: one that is chosen types "
	            "nothing "
	            "else any more):"
	          : "Nothing is plugged in that could be one.");
	for (int i = 0; i < d->n; i++)
		printf("  %d  %s:%s %s, %s%s%s\n", i + 1, d->list[i].vendor, d->list[i].product,
		       d->list[i].name, d->list[i].node, *d->list[i].listed == '-' ? "" : ": listed as ",
		       *d->list[i].listed == '-' ? "" : d->list[i].listed);
}

static int on_name(void *context, const char *section, const char *name, const char *value, struct error *e)
{
	int *highest = context;
	(void)name, (void)value, (void)e;
	if (strncmp(section, "scanner hand-", 13) == 0 && atoi(section + 13) > *highest)
		*highest = atoi(section + 13);
	return 0;
}

/* Lists it for the first room that station.ini has. */
static int add_scanner(struct setup *s, const struct scanner_device *d, struct error *e)
{
	int highest = 0;
	char name[33];
	struct error none;
	_cleanup_(buf_free) struct buf section = {0};
	setup_each(&s->files, SETUP_SCANNERS, on_name, &highest, &none);
	snprintf(name, sizeof name, "hand-%d", highest + 1);
	int n = scanners_section(d, name, setup_first_room(s), &section);
	if (strcmp(d->subsystem, "input") == 0)
		snprintf(s->scanner, sizeof s->scanner, "%s", name);
	if (n == -ENODATA)
		return error_set(e, n, "it has no vendor and product: it cannot be told from a keyboard");
	return n < 0 ? error_set(e, n, "out of memory: try again")
	             : setup_add(&s->files, SETUP_SCANNERS, section.data, e);
}

static int take_device(struct setup *s, const struct device *d, struct error *e)
{
	if (*d->listed != '-' && strcmp(d->mode, "serial") != 0)
		snprintf(s->scanner, sizeof s->scanner, "%.127s", d->listed);
	if (*d->listed != '-')
		return 0;
	printf("%s:%s %s\n", d->vendor, d->product, d->name);
	return add_scanner(
	    s,
	    &(struct scanner_device){.subsystem = strcmp(d->mode, "serial") == 0 ? "tty" : "input",
	                             .vendor = d->vendor,
	                             .product = d->product,
	                             .serial = d->serial},
	    e);
}

/* Whether a section has it already: a second one would fit it as well, and neither would be taken. */
static bool is_listed(struct setup *s, struct scanner_device d)
{
	static struct scanners all; /* 25 kB; one thread */
	struct scanner_found found;
	char path[PATH_MAX];
	struct error e;
	snprintf(path, sizeof path, "%s/scanners.ini", s->files.place);
	d.node = "/dev/input/event0";
	d.has_keys = "1";
	if (scanners_read(path, &all, &e) < 0 || scanners_decide(&all, &d, &found, &e) == SCANNER_NO)
		return false;
	snprintf(s->scanner, sizeof s->scanner, "%s", found.name);
	return true;
}

/* "1209:b0c0", or with the serial behind it. */
static int take_ids(struct setup *s, const char *value, struct error *e)
{
	char vendor[5], product[5];
	const char *serial = strlen(value) > 9 && value[9] == ':' ? value + 10 : "";
	if (strlen(value) < 9 || value[4] != ':' || (value[9] && value[9] != ':'))
		return error_set(
		    e, -EINVAL,
		    "'%.60s' is no device that is plugged in, and no VENDOR:PRODUCT: give one, as "
		    "1209:b0c0, or " NONE,
		    value);
	for (int i = 0; i < 5; i++) {
		vendor[i] = i < 4 ? (char)tolower((unsigned char)value[i]) : 0;
		product[i] = i < 4 ? (char)tolower((unsigned char)value[5 + i]) : 0;
	}
	struct scanner_device d = {
	    .subsystem = "input", .vendor = vendor, .product = product, .serial = serial};
	return is_listed(s, d) ? 0 : add_scanner(s, &d, e);
}

/* What came since the question was first put. */
static int take_new(struct setup *s, const struct devices *before, const struct devices *now, struct error *e)
{
	const struct device *found = NULL;
	int many = 0;
	for (int i = 0; i < now->n; i++)
		if (!device_at(before, now->list[i].node)) {
			found = &now->list[i];
			many++;
		}
	if (many == 1)
		return take_device(s, found, e);
	list_devices(now);
	return error_set(e, -ENODEV, "%s: plug it in and press Enter, or name it",
	                 many ? "More than one came" : "Nothing came");
}

static int take_scanner(struct setup *s, const void *context, const char *value, struct error *e)
{
	static struct devices now; /* 17 kB; one thread */
	const struct devices *before = context;
	s->scanner[0] = 0;
	if (strcmp(value, NONE) == 0)
		return 0;
	read_devices(s, &now);
	if (!*value)
		return take_new(s, before, &now, e);
	int number = strspn(value, "0123456789") == strlen(value) && strlen(value) < 3 ? atoi(value) : 0;
	if (s->asks && number >= 1 && number <= now.n)
		return take_device(s, &now.list[number - 1], e);
	const struct device *named = device_at(&now, value);
	return named ? take_device(s, named, e) : take_ids(s, value, e);
}

int setup_scanner(struct setup *s)
{
	static struct devices before;
	static const char asks[] =
	    "The scanner: plug it in now and press Enter, or give its number, its device or "
	    "VENDOR:PRODUCT, or " NONE;
	struct error e = {0};
	if (!setup_due(s, "scanner", "scanner"))
		return EXIT_OK;
	read_devices(s, &before);
	bool listed = false;
	for (int i = 0; i < before.n; i++)
		listed |= *before.list[i].listed != '-';
	if (s->asks && !words_given(&s->words, SETUP_OPTIONS, "scanner"))
		list_devices(&before);
	int n = setup_answer(s, &(struct setup_question){"scanner", asks, take_scanner, &before},
	                     listed || s->takes ? NONE : "");
	if (n == EXIT_OK)
		n = setup_sheet(s);
	if (n != EXIT_OK)
		return n;
	return setup_settle(&s->files, "scanner", &e) < 0 ? client_fail(&e) : EXIT_OK;
}
