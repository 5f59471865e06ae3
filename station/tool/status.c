/* status: the station itself, for a terminal. */
#include <stdio.h>
#include <unistd.h>

#include "base/clock.h"
#include "tool/client.h"
#include "tool/status-metrics.h"
#include "tool/tool.h"
#include "tool/words.h"

#define FOLLOW_EVERY_S 1

static const char status_usage[] =
    "usage: bandtally status [--json | --prometheus | --idle [--follow]]\n"
    "The station: rooms, the board's address, scanners, slips that were not "
    "seen, numbers owed, printer, the age of the last\n"
    "backup, and what is wrong.\n"
    "  --idle   whether the station may be stopped or replaced now: exit code 3, and "
    "which, while a case is open\n"
    "  --follow   with it: goes on, and says it when nothing is open any more, and once a second while a "
    "case is; of a station that is not there it says nothing\n"
    "  --prometheus   numbers for a monitor, as text that Prometheus reads: no case and no person in it; "
    "bandtally_up 0, and exit code 1, where the station does not answer\n"
    "example: bandtally status\n"
    "         cd /var/lib/prometheus/node-exporter; bandtally status --prometheus >bandtally.new; mv "
    "bandtally.new bandtally.prom\n";

static void print_backup(const json_t *backup, int64_t events)
{
	char when[26];
	int64_t ms = json_number(backup, "ms", 0), min = (clock_now().wall_ms - ms) / 60000;
	if (!ms) {
		puts("backup: no backup was ever checked: see 'bandtally backup --help'");
		return;
	}
	clock_text_full(ms, clock_utc_min(ms), when);
	printf("backup: the last that was checked was made ");
	if (min < 0)
		printf("at %s, by a clock that was set since", when);
	else if (min < 120)
		printf("%d min ago", (int)min);
	else if (min < 48 * 60)
		printf("%d h ago", (int)(min / 60));
	else
		printf("%d days ago", (int)(min / 1440));
	printf(" (%s), with %lld of %lld events\n", when, (long long)json_number(backup, "events", 0),
	       (long long)events);
}

/* What the station does not list it counts. */
static void print_further(const json_t *s)
{
	int older = (int)json_number(s, "slips_older", 0), more = (int)json_number(s, "owed_more", 0);
	if (older)
		printf("and %d older slip%s, not seen yet\n", older, older > 1 ? "s" : "");
	if (more)
		printf("and %d further case%s: incident number owed\n", more, more > 1 ? "s" : "");
}

/* Where the page on the wall is. */
static void print_board(const json_t *s)
{
	int port = (int)json_number(s, "board_port", 0);
	if (port)
		printf("board: http://127.0.0.1:%d/ on this machine (to type there: 'bandtally board --room "
		       "N')\n",
		       port);
	else
		puts("board: does not run: see start in [board] of station.ini, and the station's messages");
}

static void print_scanners(const json_t *s)
{
	size_t i;
	const json_t *x;
	if (!json_array_size(json_object_get(s, "drivers")))
		puts("scanners: none is known: plug one in, or name it in scanners.ini (man 5 "
		     "bandtally-scanners)");
	json_array_foreach((json_t *)json_object_get(s, "drivers"), i, x)
	{
		const char *fault = json_text(x, "fault"), *device = json_text(x, "device");
		printf("scanner %s, room %d: %s%s%s\n", json_text(x, "name"), (int)json_number(x, "room", 0),
		       json_truth(x, "running") ? "running" : "not running", *fault ? ": " : "", fault);
		if (*device)
			printf("    %s\n", device);
	}
}

static void print_status(const json_t *s)
{
	size_t i;
	const json_t *x;
	printf("site %s, %s; %d events, last case %d, %d lines, %d badges\n", json_text(s, "site"),
	       json_text(s, "site_name"), (int)json_number(s, "events", 0),
	       (int)json_number(s, "last_case", 0), (int)json_number(s, "lines", 0),
	       (int)json_number(s, "staff", 0));
	json_array_foreach((json_t *)json_object_get(s, "rooms"), i, x)
	{
		int case_no = (int)json_number(x, "case", 0);
		int suspended = (int)json_number(x, "suspended_case", 0);
		printf("room %d, %s: ", (int)json_number(x, "number", 0), json_text(x, "name"));
		printf(case_no ? "case %d" : "no case", case_no);
		printf(suspended ? "; case %d suspended\n" : "\n", suspended);
	}
	print_elsewhere(s);
	print_board(s);
	print_scanners(s);
	json_array_foreach((json_t *)json_object_get(s, "slips"), i, x)
	    printf("slip %07d of case %d, %s: %s, not seen yet\n", (int)json_number(x, "number", 0),
	           (int)json_number(x, "case", 0), slip_made_for(x), json_text(x, "state"));
	json_array_foreach((json_t *)json_object_get(s, "owed"), i, x)
	    printf("case %d: incident number owed\n", (int)json_number(x, "case", 0));
	print_further(s);
	printf("printer: %s\n", json_text(s, "printer")[0]
	                            ? json_text(s, "printer")
	                            : "none; slips are written as PDF into the data folder");
	print_backup(json_object_get(s, "backup"), json_number(s, "events", 0));
	print_list("NOTE", json_object_get(s, "waits"));
	if (json_text(s, "clock")[0])
		printf("FAULT: %s\n", json_text(s, "clock"));
	print_list("FAULT", json_object_get(s, "faults"));
	if (json_text(s, "distrust")[0])
		printf("DO NOT TRUST THE STATION NOW: %s Count by hand on the paper sheet.\n",
		       json_text(s, "distrust"));
}

/* A case that is suspended is open, and in no room. */
static int print_idle(const json_t *s)
{
	size_t i;
	const json_t *x;
	int open = (int)json_number(s, "open_cases", 0);
	if (!open) {
		puts("no case is open");
		return EXIT_OK;
	}
	printf("%d case%s open", open, open > 1 ? "s are" : " is");
	json_array_foreach((json_t *)json_object_get(s, "rooms"), i, x)
	{
		if (json_number(x, "case", 0))
			printf(" (%s: case %d)", json_text(x, "name"), (int)json_number(x, "case", 0));
		if (json_number(x, "suspended_case", 0))
			printf(" (%s: case %d, suspended)", json_text(x, "name"),
			       (int)json_number(x, "suspended_case", 0));
	}
	puts(": the station is in use: wait until nothing is open");
	return EXIT_REFUSED;
}

/* The connection is kept: `fd`, -1 none. NULL: the station is not there now. */
static json_t *ask_again(int *fd)
{
	struct error e = {0};
	json_t *q = json_pack("{s:s}", "do", "status");
	json_t *a = *fd < 0 ? client_ask_holding(q, fd, &e) : client_ask_again(*fd, q, &e);
	if (!a && *fd >= 0) {
		close(*fd);
		*fd = -1;
	}
	return a;
}

/* For who holds something back while a case is open: what was said last is true until something else is. */
static int follow_idle(void)
{
	int fd = -1, was = EXIT_REFUSED;
	do {
		_cleanup_(json_drop) json_t *a = ask_again(&fd);
		const json_t *s = json_object_get(a, "status");
		if (s && (was != EXIT_OK || json_number(s, "open_cases", 0)))
			was = print_idle(s);
	} while (fflush(stdout) == 0 && sleep(FOLLOW_EVERY_S) == 0);
	return EXIT_FAILED;
}

int tool_status(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	static const char options[] = "json prometheus idle follow";
	int r = words_read(&w, argc, argv, options, status_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest)
		return words_beyond(w.rest[0], status_usage);
	if (words_given(&w, options, "idle") && words_given(&w, options, "follow"))
		return follow_idle();
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "status"), &e);
	if (!a && words_given(&w, options, "prometheus"))
		status_metrics(NULL);
	if (!a)
		return client_fail(&e);
	if (words_given(&w, options, "idle"))
		return print_idle(json_object_get(a, "status"));
	if (words_given(&w, options, "prometheus"))
		status_metrics(json_object_get(a, "status"));
	else if (words_given(&w, options, "json"))
		print_json(json_object_get(a, "status"));
	else
		print_status(json_object_get(a, "status"));
	return EXIT_OK;
}
