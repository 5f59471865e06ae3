/* Figures of the auditor's commands on a large record: how fast a summary is made of it, and how long a year's report and
 * a trace take from that, and 200 slips.   bench-report [--json] [--long] [--cases N] [--data FOLDER]     BANDTALLY_BIN, BANDTALLY_SOURCE; 17,000
 * ordinary cases (1,000,000 events) unless said; --long: 150,000 (9,000,000). A FOLDER is kept, and used again as it is.
 */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "base/clock.h"
#include "record/keys.h"
#include "record/seal.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

static const char *bin, *folder;

static void die(const char *what, const char *why)
{
	fprintf(stderr, "bench-report: %s: %s\n", what, why);
	exit(1);
}

static void make_record(int cases)
{
	struct record *r = NULL;
	struct history h;
	struct error e = {0};
	if (record_open(&r, folder, &e) < 0 || history_init(&h, r, 1, 2000) < 0)
		die("cannot begin", e.text[0] ? e.text : h.error.text);
	for (int i = 0; i < cases; i++)
		if (history_case(&h, 1 + i % 2) < 0 || history_seen(&h) < 0)
			die("a case", h.error.text);
	if (history_flush(&h) < 0)
		die("the last cases", h.error.text);
	history_deinit(&h);
	record_close(r);
}

/* An item that was counted in halfway through the record. */
static void look_for_item(struct record *r, char identity[IDENTITY_MAX])
{
	struct event e;
	for (int64_t seq = record_end(r) / 2; record_event_at(r, seq, &e) == 0; seq++)
		if (e.kind == EV_ITEM_IN && *e.thing.identity) {
			snprintf(identity, IDENTITY_MAX, "%s", e.thing.identity);
			return;
		}
	die("the record", "it has no item");
}

/* The record's last event, and the year before the one in which it lies, which is whole. */
static int64_t look(int *year, char identity[IDENTITY_MAX])
{
	char file[512];
	struct record *r = NULL;
	struct error e = {0};
	struct event last;
	snprintf(file, sizeof file, "%s/" RECORD_FILE, folder);
	if (record_open_copy(&r, file, &e) < 0 || record_event_at(r, record_end(r), &last) < 0)
		die(file, e.text);
	*year = clock_date_number(last.at.wall_ms, 0) / 10000 - 1;
	int64_t events = record_end(r);
	look_for_item(r, identity);
	record_close(r);
	return events;
}

/* What stands in the QR of as many slips, from one end of the record to the other, a line each; and the keys beside the record. */
#define SLIPS 200

static int sign_slip(struct record *r, const struct seal *seal, int32_t number, int64_t seq, FILE *out)
{
	char hex[2 * CHAIN_BYTES + 1];
	struct slip slip;
	struct paper paper;
	struct chain chain;
	_cleanup_(buf_free) struct buf jws = {0};
	if (record_slip_of(r, number, 1, &slip, &paper) != RECORD_FOUND ||
	    record_hash_at(r, seq, &chain) != RECORD_FOUND)
		return -1;
	chain_hex(&chain, hex);
	_cleanup_(json_drop) json_t *payload =
	    json_pack("{s:i,s:i,s:s,s:i,s:i,s:i,s:s,s:I,s:I,s:s,s:i}", "slip", (int)number, "copy", 1, "site",
	              "BC", "station", 1, "room", (int)slip.room, "case", (int)slip.case_no, "outcome",
	              "1 finger tourniquet of 1 shown intact", "ended_ms", (json_int_t)0, "seq",
	              (json_int_t)seq, "chain", hex, "incarnation", 1);
	int n = payload ? seal_jws(seal, payload, &jws) : -1;
	return n == 0 && fprintf(out, "%s\n", jws.data) > 0 ? 0 : -1;
}

static void sign_slips(void)
{
	static struct keys keys;
	char file[512];
	struct record *r = NULL;
	struct seal *seal = NULL;
	struct error e = {0};
	int32_t last = 0;
	snprintf(file, sizeof file, "%s/" RECORD_FILE, folder);
	if (record_open_copy(&r, file, &e) < 0 || seal_open(&seal, folder, &e) < 0)
		die(file, e.text);
	snprintf(file, sizeof file, "%s/" KEYS_FILE, folder);
	if (record_last_slip(r, &last) < 0 || keys_add(&keys, seal_key(seal)) < 0 ||
	    keys_write(&keys, file) < 0)
		die(file, "cannot be written");
	snprintf(file, sizeof file, "%s/slips", folder);
	FILE *out = fopen(file, "we");
	for (int i = 1; out && i <= SLIPS; i++)
		if (sign_slip(r, seal, 1 + (int32_t)((int64_t)(last - 1) * i / SLIPS),
		              record_end(r) * i / SLIPS, out) < 0)
			die(file, "a slip cannot be signed");
	if (!out || fclose(out) != 0)
		die(file, "cannot be written");
	seal_close(seal);
	record_close(r);
}

/* Seconds of a command of the program, whole. */
static double run_s(const char *words)
{
	char command[2048];
	struct timespec from, to;
	snprintf(command, sizeof command, "'%s/bandtally' --data '%s' %s >/dev/null 2>'%s/said'", bin, folder,
	         words, folder);
	clock_gettime(CLOCK_MONOTONIC, &from);
	if (system(command) != 0)
		die(command, "it failed");
	clock_gettime(CLOCK_MONOTONIC, &to);
	return (double)(to.tv_sec - from.tv_sec) + (double)(to.tv_nsec - from.tv_nsec) / 1e9;
}

static void print_item(const char *name, double value, const char *unit, double goal, int least, int json,
                       int last)
{
	int met = least ? value >= goal : value <= goal;
	if (json)
		printf("{\"name\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"reference\":\"the "
		       "goal\",\"ratio\":%.4g,"
		       "\"goal\":%.4g,\"met\":%s}%s\n",
		       name, value, unit, value / goal, goal, met ? "true" : "false", last ? "" : ",");
	else
		printf("%-60s %9.4g %-8s (goal %s %.4g, %s)\n", name, value, unit, least ? ">=" : "<=", goal,
		       met ? "met" : "NOT met");
}

int main(int argc, char **argv)
{
	int json = 0, cases = 17000, year = 0;
	char own[FOLDER_MAX], file[512], words[1024], name[100];
	bin = getenv("BANDTALLY_BIN");
	for (int i = 1; i < argc; i++) {
		json |= strcmp(argv[i], "--json") == 0;
		if (strcmp(argv[i], "--long") == 0)
			cases = 150000;
		if (strcmp(argv[i], "--cases") == 0 && i + 1 < argc)
			cases = atoi(argv[++i]);
		if (strcmp(argv[i], "--data") == 0 && i + 1 < argc)
			folder = argv[++i];
	}
	if (!bin || cases < 1)
		die("usage",
		    "bench-report [--json] [--long] [--cases N] [--data FOLDER]; BANDTALLY_BIN names the "
		    "folder of the programs");
	int keep = folder != NULL;
	if (!keep)
		folder_make(own);
	folder = keep ? folder : own;
	snprintf(file, sizeof file, "%s/" RECORD_FILE, folder);
	if (access(file, F_OK) < 0)
		make_record(cases);
	char identity[IDENTITY_MAX], trace[1024];
	int64_t events = look(&year, identity);
	snprintf(trace, sizeof trace, "audit trace --item '%s' --json --summary '%s/summary'", identity,
	         folder);
	snprintf(words, sizeof words, "audit report --year %d --json --summary '%s/summary'", year, folder);
	double anew = 1e9, again = 1e9, traced = 1e9, checked = 1e9;
	char slips[600];
	sign_slips();
	snprintf(slips, sizeof slips, "audit slip --file - <'%s/slips'", folder);
	for (int round = 0; round < 3; round++) {
		snprintf(file, sizeof file, "%s/summary", folder);
		unlink(file);
		double s = run_s(words);
		anew = s < anew ? s : anew;
		s = run_s(words);
		again = s < again ? s : again;
		s = run_s(trace);
		traced = s < traced ? s : traced;
		s = run_s(slips);
		checked = s < checked ? s : checked;
	}
	if (!keep)
		folder_remove(folder);
	if (json)
		puts("[");
	snprintf(name, sizeof name, "summary of %lld events, and a year's report", (long long)events);
	print_item(name, (double)events / anew, "events/s", 300000, 1, json, 0);
	snprintf(name, sizeof name, "a year's report from the summary, %lld events", (long long)events);
	print_item(name, again, "s", 2, 0, json, 0);
	snprintf(name, sizeof name, "a trace of one item, %lld events", (long long)events);
	print_item(name, traced, "s", 0.1, 0, json, 0);
	snprintf(name, sizeof name, "%d slips checked, %lld events", SLIPS, (long long)events);
	print_item(name, checked, "s", 3, 0, json, 1);
	if (json)
		puts("]");
	return 0;
}
