/* bandtallyd: the station. */
#include <errno.h>
#include <getopt.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/log.h"
#include "run/activated.h"
#include "run/board-program.h"
#include "run/board.h"
#include "run/check.h"
#include "run/daemon-confined.h"
#include "run/devices.h"
#include "run/driver-children.h"
#include "run/hospital.h"
#include "run/hotplug.h"
#include "run/label-jobs.h"
#include "run/machine.h"
#include "run/outbox.h"
#include "run/practice-slips.h"
#include "run/practice.h"
#include "run/socket.h"
#include "run/typing.h"
#include "run/watchdog.h"

#define GROUPS_PATIENCE_MS 1000
#define LAST_WORD_MS 500

static const char usage[] =
    "usage: bandtallyd [--data DIR] [--head DIR] [--check | --devices] [--settings PLACE]\n"
    "       bandtallyd --messages\n"
    "The count station. Works until SIGTERM or SIGINT. SIGHUP: reads the certificates of the board "
    "elsewhere, "
    "and\n"
    "which are revoked, and the numbers of the groups, again.\n"
    "  --data DIR   the data folder (default /var/lib/bandtally); made where it is absent\n"
    "  --head DIR   where to note how far the record has come, so that an older one that is put back is "
    "noticed;\n"
    "               station.ini may name another ([station] head). Default: beside the data folder, as "
    "DIR-head, where\n"
    "               that folder is there, as the service has it; else head/ in the data folder, which is a "
    "weak place:\n"
    "               it goes back together with the record\n"
    "  --check      read the settings and the whole record, each event and page of it, say whether they are "
    "sound, and\n"
    "               end; nothing is written. Of a record of some years it takes seconds\n"
    "  --devices    the devices of this machine that could be scanners, a line each: node, mode, vendor, "
    "product,\n"
    "               serial, the name that scanners.ini has for it or -, what it calls itself\n"
    "  --settings PLACE   with these two: read the settings files of the folder PLACE, and nothing else\n"
    "  --messages   each id that a message at warning or above bears, for a monitor: id, priority, what it "
    "means, what to do\n"
    "Settings: DIR/station.ini and DIR/policy.ini; both may be absent.\n"
    "Exit codes: 0 ended in order, 1 failed (stderr says what, why, what to do), 2 wrong usage.\n"
    "example: bandtallyd --data /var/lib/bandtally --check\n";

static void on_stored(void *context, const struct event *events, int count)
{
	outbox_stored(context, events, count);
	label_jobs_stored(context, events, count);
	hospital_stored(context);
}

static void on_snapshot(void *context)
{
	struct daemon *d = context;
	int32_t ms = core_snapshot(&d->core);
	d->snapping = ms && loop_after(d->loop, ms, on_snapshot, d) == 0;
}

static void on_second(void *context)
{
	struct daemon *d = context;
	if (!d->snapping)
		on_snapshot(d);
	while (core_tick(&d->core))
		;
	practice_tick(&d->core);
	practice_slips_look(d);
	core_look_aside(&d->core);
	if (d->core.labels_fault[0] || d->core.sense_fault[0])
		core_settings_look(&d->core);
	hotplug_look(d);
	machine_look(&d->core);
	outbox_look(d);
	hospital_look(d);
	drivers_look(d);
	children_look(&d->children);
	if (d->groups.fd < 0) /* who looks them up is waited for there */
		children_bury(&d->children);
	typing_look(d);
	board_show(d);
	board_alive(d);
	watchdog_alive();
}

static void on_signal(void *context, int signal)
{
	struct daemon *d = context;
	(void)signal;
	loop_stop(d->loop);
}

static void on_hangup(void *context, int signal)
{
	struct daemon *d = context;
	(void)signal;
	groups_ask(&d->groups, 0);
	board_renew(d);
}

static void take_socket(struct daemon *d)
{
	int port, wanted = d->core.settings.board_port;
	d->board_socket = activated_socket(&port);
	if (d->board_socket >= 0 && wanted && port != wanted)
		log_warn(
		    LOG_SETTINGS,
		    "the board's port is %d, as bandtallyd.socket says, and not %d, as station.ini says: "
		    "change one of them (systemctl edit bandtallyd.socket)",
		    port, wanted);
}

static int start(struct daemon *d, struct error *e)
{
	int n = loop_new(&d->loop);
	if (n < 0)
		return error_set(e, n, "out of memory: try again");
	d->children.loop = d->loop;
	children_adopt();
	take_socket(d);
	watchdog_open();
	d->core.stored = on_stored;
	d->core.context = d;
	groups_init(&d->groups, d->loop);
	groups_ask(&d->groups, GROUPS_PATIENCE_MS);
	n = socket_open(d, e);
	if (n < 0)
		return n;
	n = loop_every(d->loop, 1000, on_second, d);
	if (n == 0)
		n = loop_on_signal(d->loop, SIGTERM, on_signal, d);
	if (n == 0)
		n = loop_on_signal(d->loop, SIGINT, on_signal, d);
	if (n == 0)
		n = loop_on_signal(d->loop, SIGHUP, on_hangup, d);
	if (n == 0) {
		confine_station(d->core.folder, d->core.head);
		label_jobs_start(d);
		n = outbox_start(d);
	}
	if (n == 0)
		n = board_start(d);
	if (n == 0)
		n = drivers_start(d);
	if (n == 0)
		n = hospital_start(d);
	if (n == 0 && hotplug_start(d, e) < 0)
		return e->code;
	return n < 0 ? error_set(e, n, "cannot start the station's programs: %s: check the installation",
	                         strerror(-n))
	             : 0;
}

static void on_said(void *context)
{
	loop_stop(context);
}

/* Whoever looks at the board must read it there, and not find out by its silence: pages get it before their server ends. */
static void say_last_word(struct daemon *d)
{
	if (!machine_stops(&d->core))
		return;
	board_show(d);
	if (child_running(d->board) && loop_after(d->loop, LAST_WORD_MS, on_said, d->loop) == 0)
		loop_run(d->loop);
}

/* `told`: 1 it was told to, 0 it could not start. */
static void stop(struct daemon *d, int told)
{
	struct event stopped = {.kind = EV_STOPPED};
	char path[300];
	hotplug_stop(d);
	drivers_stop(d);
	if (told)
		say_last_word(d);
	outbox_stop(d);
	board_stop(d);
	hospital_stop(d);
	d->core.stored = NULL;
	children_wait(&d->children);
	core_store(&d->core, &stopped, 1, NULL);
	core_snapshot_last(&d->core);
	snprintf(path, sizeof path, "%s/socket", d->core.folder);
	remove(path);
	groups_deinit(&d->groups);
	loop_free(d->loop);
	practice_end_all(&d->core);
	core_close(&d->core);
}

/* Whoever leaves it out looks at what the service looks at: the folder beside the data folder, where there is one. NULL: none. */
static const char *head_beside(const char *folder)
{
	static char path[PATH_MAX];
	struct stat is;
	size_t size = strlen(folder);
	while (size > 1 && folder[size - 1] == '/')
		size--;
	int n = snprintf(path, sizeof path, "%.*s-head", (int)size, folder);
	return n < (int)sizeof path && stat(path, &is) == 0 && S_ISDIR(is.st_mode) ? path : NULL;
}

/* `place`: the folder of settings that are to be tried, or NULL for the station as it is. */
static int check_all(const char *folder, const char *head, const char *place)
{
	static struct settings settings;
	const char *said = "settings are sound";
	struct error e = {0};
	struct stat is;
	if (place && (stat(place, &is) < 0 || !S_ISDIR(is.st_mode))) {
		log_line("nothing was checked: %s is no folder: give the one that the settings files lie in",
		         place);
		return EXIT_FAILED;
	}
	if ((place ? check_settings(folder, place, &settings, &e)
	           : check_folder(folder, head, &settings, &said, &e)) < 0) {
		log_line("not sound: %s", e.text);
		return EXIT_FAILED;
	}
	if (board_check(&settings) < 0) {
		log_line(
		    "the board elsewhere cannot be started as it is set: the rest is sound, and would run");
		return EXIT_FAILED;
	}
	puts(said);
	if (!place)
		check_languages();
	return EXIT_OK;
}

/* By the scanners.ini of that place, which may be absent. */
static int tell_devices(const char *place)
{
	static struct scanners listed; /* 25 kB; one thread */
	_cleanup_(buf_free) struct buf out = {0};
	char path[PATH_MAX];
	struct error e = {0};
	snprintf(path, sizeof path, "%s/scanners.ini", place);
	int n = scanners_read(path, &listed, &e);
	if (n < 0 && n != -ENOENT) {
		log_line("%s", e.text);
		return EXIT_FAILED;
	}
	n = devices_tell(&listed, &out);
	if (n < 0) {
		log_line("cannot tell the devices: udev does not answer: %s", strerror(-n));
		return EXIT_FAILED;
	}
	fputs(out.data ? out.data : "", stdout);
	return EXIT_OK;
}

static void tell_messages(void)
{
	for (int i = 0; i < LOG_ID_COUNT; i++)
		printf("%s\t<%d>\t%s\t%s\n", log_rows[i].id, log_rows[i].priority, log_rows[i].means,
		       log_rows[i].todo);
}

int main(int argc, char **argv)
{
	static const struct option options[] = {
	    {"data", required_argument, NULL, 'd'},
	    {"head", required_argument, NULL, 'n'},
	    {"check", no_argument, NULL, 'c'},
	    {"help", no_argument, NULL, 'h'},
	    {"version", no_argument, NULL, 'v'},
	    {"settings", required_argument, NULL, 's'},
	    {"messages", no_argument, NULL, 'm'},
	    {"devices", no_argument, NULL, 'l'},
	    {0},
	};
	static struct daemon d; /* half a megabyte */
	struct error e = {0};
	const char *folder = "/var/lib/bandtally", *head = NULL, *place = NULL;
	int check = 0, devices = 0, messages = 0, o;
	log_open("bandtallyd");
	while ((o = getopt_long(argc, argv, "", options, NULL)) >= 0)
		switch (o) {
		case 'd':
			folder = optarg;
			break;
		case 'n':
			head = optarg;
			break;
		case 'c':
			check = 1;
			break;
		case 'l':
			devices = 1;
			break;
		case 's':
			place = optarg;
			break;
		case 'h':
			fputs(usage, stdout);
			return EXIT_OK;
		case 'm':
			messages = 1;
			break;
		case 'v':
			puts("bandtallyd " BANDTALLY_VERSION);
			return EXIT_OK;
		default: /* of getopt_long(), which has said what */
			fputs(usage, stderr);
			return EXIT_USAGE;
		}
	if (optind < argc) {
		fprintf(stderr, "bandtallyd: '%.40s' is a word too many: see below\n%s", argv[optind], usage);
		return EXIT_USAGE;
	}
	if (check + devices + messages > 1 || (place && !check && !devices)) {
		fprintf(
		    stderr,
		    "bandtallyd: --check, --devices and --messages stand alone, and --settings goes with one "
		    "of the first two: see below\n%s",
		    usage);
		return EXIT_USAGE;
	}
	if (messages) {
		tell_messages();
		return EXIT_OK;
	}
	if (devices)
		return tell_devices(place ? place : folder);
	signal(SIGPIPE, SIG_IGN);
	json_watch_memory();
	umask(0027); /* what is kept here is the station's and its group's, whoever starts it */
	head = head ? head : head_beside(folder);
	if (check)
		return check_all(folder, head, place);
	int n = core_open_noting(&d.core, folder, head, &e);
	if (n < 0) {
		log_warn(LOG_START, "cannot start: %s", e.text);
		return EXIT_FAILED;
	}
	n = start(&d, &e);
	if (n < 0)
		log_warn(LOG_START, "cannot start: %s", e.text);
	else
		loop_run(d.loop);
	stop(&d, n == 0);
	return n < 0 ? EXIT_FAILED : EXIT_OK;
}
