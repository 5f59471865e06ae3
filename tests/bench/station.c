/* Figures of the station: a scan from the socket to the disk and back, beside one bare durable commit of as
 * many bytes through the same kind of socket, both in one run and in turns; and the daemon's memory.
 *   bench-station [--json] [--scans N] [--data FOLDER]       BANDTALLY_BIN: where bandtallyd is
 * The reference is a process of its own with one table, one INSERT, WAL and synchronous=FULL.
 */
#include <errno.h>
#include <signal.h>
#include <sqlite3.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "code/own-codes.h"

#define PAYLOAD 190 /* bytes of one event of an ordinary scan, measured */

static void die(const char *what)
{
	fprintf(stderr, "bench-station: %s: %s\n", what, strerror(errno));
	exit(1);
}

static int64_t now_ns(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (int64_t)t.tv_sec * 1000000000 + t.tv_nsec;
}

static int reach(const char *path)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	int fd = socket(AF_UNIX, SOCK_STREAM, 0);
	snprintf(a.sun_path, sizeof a.sun_path, "%.100s", path);
	for (int i = 0; i < 200; i++) {
		if (connect(fd, (struct sockaddr *)&a, sizeof a) == 0)
			return fd;
		usleep(20000);
	}
	die(path);
	return -1;
}

/* One line there, one line back; the time between. */
static int64_t round_trip(int fd, const char *line, size_t size, char *answer, size_t room)
{
	int64_t from = now_ns();
	size_t got = 0;
	if (write(fd, line, size) != (ssize_t)size)
		die("write");
	do {
		ssize_t n = read(fd, answer + got, room - 1 - got);
		if (n <= 0)
			die("read");
		got += (size_t)n;
	} while (answer[got - 1] != '\n');
	answer[got] = 0;
	return now_ns() - from;
}

static void must(int code, sqlite3 *db)
{
	if (code != SQLITE_OK && code != SQLITE_DONE && code != SQLITE_ROW) {
		fprintf(stderr, "bench-station: reference: %s\n", sqlite3_errmsg(db));
		_exit(1);
	}
}

static void serve_reference(const char *folder)
{
	char path[400];
	sqlite3 *db;
	sqlite3_stmt *insert;
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	snprintf(path, sizeof path, "%s/reference.db", folder);
	must(sqlite3_open(path, &db), db);
	must(sqlite3_exec(db,
	                  "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; CREATE TABLE t(n INTEGER "
	                  "PRIMARY KEY, b TEXT)",
	                  NULL, NULL, NULL),
	     db);
	must(sqlite3_prepare_v2(db, "INSERT INTO t(b) VALUES(?)", -1, &insert, NULL), db);
	snprintf(a.sun_path, sizeof a.sun_path, "%.90s/reference", folder);
	int listening = socket(AF_UNIX, SOCK_STREAM, 0);
	if (bind(listening, (struct sockaddr *)&a, sizeof a) < 0 || listen(listening, 1) < 0)
		die("reference");
	int fd = accept(listening, NULL, NULL);
	char line[1024];
	ssize_t n;
	while ((n = read(fd, line, sizeof line)) > 0) {
		must(sqlite3_bind_text(insert, 1, line, (int)n, SQLITE_STATIC), db);
		must(sqlite3_step(insert), db);
		must(sqlite3_reset(insert), db);
		if (write(fd, "ok\n", 3) != 3)
			break;
	}
	_exit(0);
}

static int by_size(const void *a, const void *b)
{
	int64_t x = *(const int64_t *)a, y = *(const int64_t *)b;
	return (x > y) - (x < y);
}

static int64_t resident_kib(pid_t pid)
{
	char path[64], line[256];
	long long kib = 0;
	snprintf(path, sizeof path, "/proc/%d/status", (int)pid);
	FILE *f = fopen(path, "re");
	while (f && fgets(line, sizeof line, f))
		if (sscanf(line, "VmRSS: %lld kB", &kib) == 1)
			break;
	if (f)
		fclose(f);
	return kib;
}

static size_t scan_line(char *out, size_t room, struct own_code code)
{
	char text[OWN_CODE_MAX];
	snprintf(code.site, sizeof code.site, "BC");
	code.room = 1;
	if (own_code_write(&code, text) < 0)
		die("code");
	return (size_t)snprintf(out, room, "{\"do\":\"scan\",\"room\":1,\"code\":\"%s\"}\n", text);
}

static void print_item(const char *name, double value, const char *unit, const char *reference, double ratio,
                       double goal, int json, int last)
{
	int met = ratio <= goal;
	if (json)
		printf("{\"name\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"reference\":\"%s\",\"ratio\":%.4g,"
		       "\"goal\":%.4g,"
		       "\"met\":%s}%s\n",
		       name, value, unit, reference, ratio, goal, met ? "true" : "false", last ? "" : ",");
	else
		printf("%-52s %9.4g %-6s ratio %6.3f (goal %.4g, %s) to %s\n", name, value, unit, ratio, goal,
		       met ? "met" : "NOT met", reference);
}

int main(int argc, char **argv)
{
	int json = 0, scans = 20000;
	char folder[300] = "/tmp/bandtally-bench-XXXXXX", path[400], line[512], answer[8192],
	     payload[PAYLOAD + 1];
	const char *bin = getenv("BANDTALLY_BIN");
	for (int i = 1; i < argc; i++) {
		if (strcmp(argv[i], "--json") == 0)
			json = 1;
		else if (strcmp(argv[i], "--scans") == 0 && i + 1 < argc)
			scans = atoi(argv[++i]);
		else if (strcmp(argv[i], "--data") == 0 && i + 1 < argc)
			snprintf(folder, sizeof folder, "%.250s/bandtally-bench-XXXXXX", argv[++i]);
	}
	if (!bin || scans < 2000 || !mkdtemp(folder))
		die("BANDTALLY_BIN, 2000 scans or more, and a folder are needed");
	signal(SIGPIPE, SIG_IGN);
	pid_t reference = fork();
	if (reference == 0)
		serve_reference(folder);
	pid_t daemon = fork();
	if (daemon == 0) {
		snprintf(path, sizeof path, "%s/bandtallyd", bin);
		execl(path, "bandtallyd", "--data", folder, (char *)NULL);
		_exit(127);
	}
	snprintf(path, sizeof path, "%s/reference", folder);
	int ref = reach(path);
	snprintf(path, sizeof path, "%s/socket", folder);
	int fd = reach(path);
	size_t n =
	    scan_line(line, sizeof line, (struct own_code){.kind = OWN_CARD, .meaning = CARD_NEW_CASE});
	round_trip(fd, line, n, answer, sizeof answer);
	n = scan_line(line, sizeof line, (struct own_code){.kind = OWN_CARD, .meaning = CARD_AWAKE_PATIENT});
	memset(payload, 'x', PAYLOAD);
	int64_t *ours = calloc((size_t)scans, sizeof *ours), *bare = calloc((size_t)scans, sizeof *bare),
	        early = 0;
	for (int i = 0; ours && bare && i < scans; i++) {
		ours[i] = round_trip(fd, line, n, answer, sizeof answer);
		if (!strstr(answer, "\"verdict\":\"accepted\"")) {
			fprintf(stderr, "bench-station: not accepted: %s", answer);
			return 1;
		}
		bare[i] = round_trip(ref, payload, PAYLOAD, answer, sizeof answer);
		if (i == scans / 4)
			early = resident_kib(daemon);
	}
	int64_t late = resident_kib(daemon);
	kill(daemon, SIGTERM);
	kill(reference, SIGTERM);
	while (wait(NULL) > 0)
		;
	qsort(ours, (size_t)scans, sizeof *ours, by_size);
	qsort(bare, (size_t)scans, sizeof *bare, by_size);
	double median = (double)ours[scans / 2] / 1e6, p99 = (double)ours[scans - 1 - scans / 100] / 1e6;
	double bare_median = (double)bare[scans / 2] / 1e6,
	       bare_p99 = (double)bare[scans - 1 - scans / 100] / 1e6;
	if (json)
		puts("[");
	print_item("scan to durable reply, median", median, "ms", "a bare durable commit through a socket",
	           median / bare_median, 1.5, json, 0);
	print_item("scan to durable reply, p99", p99, "ms", "a bare durable commit through a socket",
	           p99 / bare_p99, 2.5, json, 0);
	print_item("resident memory of bandtallyd", (double)late, "KiB", "16 MiB", (double)late / 16384, 1,
	           json, 0);
	/* Growth over the last three quarters of the scans, as a share of the memory at the first. */
	print_item("growth of memory while scanning", (double)(late - early), "KiB",
	           "memory after a quarter of the scans", (double)late / (double)(early ? early : 1), 1.02,
	           json, 1);
	if (json)
		puts("]");
	snprintf(path, sizeof path, "rm -r '%s'", folder);
	return system(path) != 0;
}
