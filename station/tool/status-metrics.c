#include "tool/status-metrics.h"

#include <math.h>
#include <stdio.h>

#include "base/clock.h"

static void head(const char *name, const char *kind, const char *help)
{
	printf("# HELP bandtally_%s %s\n# TYPE bandtally_%s %s\n", name, help, name, kind);
}

static void gauge(const char *name, const char *help, double value)
{
	head(name, "gauge", help);
	if (isinf(value))
		printf("bandtally_%s +Inf\n", name);
	else
		printf("bandtally_%s %.15g\n", name, value);
}

/* What stands between quotes, with what would end it escaped. */
static void label(const char *name, const char *text)
{
	printf("%s=\"", name);
	for (; *text; text++) {
		if (*text == '"' || *text == '\\')
			putchar('\\');
		putchar(*text == '\n' ? ' ' : *text);
	}
	putchar('"');
}

static void rooms(const json_t *s)
{
	size_t i;
	const json_t *x;
	head("case_open", "gauge", "1 while a case is open in the room.");
	json_array_foreach((json_t *)json_object_get(s, "rooms"), i, x)
	    printf("bandtally_case_open{room=\"%d\"} %d\n", (int)json_number(x, "number", 0),
	           json_number(x, "case", 0) != 0);
}

static void scanners(const json_t *s)
{
	size_t i;
	const json_t *x;
	head("scanner_running", "gauge", "1 while the scanner's driver runs.");
	json_array_foreach((json_t *)json_object_get(s, "drivers"), i, x)
	{
		printf("bandtally_scanner_running{room=\"%d\",", (int)json_number(x, "room", 0));
		label("name", json_text(x, "name"));
		printf("} %d\n", json_truth(x, "running"));
	}
}

static double length(const json_t *s, const char *list, const char *further)
{
	return (double)json_array_size(json_object_get(s, list)) + (double)json_number(s, further, 0);
}

void status_metrics(const json_t *s)
{
	gauge("up", "1 while the station answers.", s != NULL);
	if (!s)
		return;
	const json_t *backup = json_object_get(s, "backup");
	int64_t made = json_number(backup, "ms", 0), events = json_number(s, "events", 0);
	head("events_total", "counter", "Events in the record.");
	printf("bandtally_events_total %lld\n", (long long)events);
	gauge("open_cases", "Cases that are open or suspended.", (double)json_number(s, "open_cases", 0));
	rooms(s);
	scanners(s);
	gauge("faults", "What the station says is wrong now.", length(s, "faults", ""));
	gauge("distrusted", "1 while it says: do not trust the station now, count by hand.",
	      json_text(s, "distrust")[0] != 0);
	gauge("clock_wrong", "1 while it says that the wall clock is wrong.", json_text(s, "clock")[0] != 0);
	gauge("slips_not_seen", "Slips whose code was not scanned back.", length(s, "slips", "slips_older"));
	gauge("incident_numbers_owed", "Unresolved cases without an incident number.",
	      length(s, "owed", "owed_more"));
	gauge("backup_age_seconds",
	      "Since the last backup that was read back whole; +Inf where there was none.",
	      made ? (double)(clock_now().wall_ms - made) / 1000 : INFINITY);
	gauge("events_not_in_backup", "Events behind that backup.",
	      (double)(events - json_number(backup, "events", 0)));
}
