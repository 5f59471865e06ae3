/* What a scan costs on a large record: from the line at the socket to the reply, with everything on disk, beside a bare
 * durable commit of as many bytes through the same kind of socket, in turns. Then the same while others list cases, copy
 * the record, add to an old case or make a report of a copy, and what memory that takes.
 *   bench-station [--json] [--scans N] [--cases N] [--data FOLDER]       BANDTALLY_BIN: where bandtallyd is
 * 17,000 ordinary cases (1,000,000 events) unless said; BANDTALLY_SOURCE.
 * The reference is a process of its own with one table, one INSERT, WAL and synchronous=FULL.
 */
#include <errno.h>
#include <signal.h>
#include <sqlite3.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <unistd.h>

#include "asked.h"
#include "tests/unit/record/history.h"

#define PAYLOAD 190 /* bytes of one event of an ordinary scan, measured */

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

static int64_t make_record(const char *folder, int cases)
{
	struct record *r = NULL;
	static struct history h;
	struct error e = {0};
	if (record_open(&r, folder, &e) < 0 || history_init(&h, r, 1, 2000) < 0)
		die(e.text[0] ? e.text : h.error.text);
	for (int i = 0; i < cases; i++)
		if (history_case(&h, 1 + i % 2) < 0 || history_seen(&h) < 0)
			die(h.error.text);
	if (history_flush(&h) < 0)
		die(h.error.text);
	int64_t events = record_last(r, NULL);
	history_deinit(&h);
	record_close(r);
	return events;
}

/* --- what others ask meanwhile ------------------------------------------------------------------- */

static void list_for_ever(const char *path)
{
	static char answer[1 << 20];
	char line[100];
	int fd = reach(path);
	for (long long after = 0;;) {
		int n = snprintf(line, sizeof line, "{\"do\":\"cases\",\"after\":%lld}\n", after);
		round_trip(fd, line, (size_t)n, answer, sizeof answer);
		const char *next = strstr(answer, "\"after\":");
		after = next ? atoll(next + 8) : 0;
	}
}

static void copy_for_ever(const char *path)
{
	static const char line[] = "{\"do\":\"copy\"}\n";
	char answer[4096];
	for (;;) {
		int fd = reach(path);
		round_trip(fd, line, sizeof line - 1, answer, sizeof answer);
		if (!strstr(answer, "\"ok\":true"))
			die(answer);
		close(fd);
	}
}

/* Ten in a second: each is stored, and makes a slip. */
static void add_for_ever(const char *path)
{
	char answer[8192], line[100];
	int fd = reach(path);
	for (int i = 0;; i++) {
		int n =
		    snprintf(line, sizeof line,
		             "{\"do\":\"type\",\"room\":2,\"text\":\"case %d: seen by the ward\"}\n", 1 + i);
		round_trip(fd, line, (size_t)n, answer, sizeof answer);
		if (!strstr(answer, "\"verdict\":\"accepted\""))
			die(answer);
		usleep(100000);
	}
}

/* Of a copy that the station makes for each, from no summary: all that an auditor can ask at once. */
static void report_for_ever(const char *path)
{
	char program[400], folder[400];
	snprintf(program, sizeof program, "%s/bandtally", getenv("BANDTALLY_BIN"));
	snprintf(folder, sizeof folder, "%.*s", (int)(strrchr(path, '/') - path), path);
	for (;;) {
		int status = 1;
		pid_t pid = fork();
		if (pid == 0) {
			prctl(PR_SET_PDEATHSIG, SIGKILL);
			if (!freopen("/dev/null", "w", stdout) || !freopen("/dev/null", "w", stderr))
				_exit(1);
			execl(program, "bandtally", "--data", folder, "audit", "report", "--from",
			      "2026-01-01", "--to", "2199-12-31", "--summary", "none", "--json",
			      (char *)NULL);
			_exit(127);
		}
		if (waitpid(pid, &status, 0) != pid || status != 0)
			die("bandtally audit report");
	}
}

static const struct meanwhile {
	const char *name;
	void (*run)(const char *path);
} meanwhiles[] = {{"while cases are listed", list_for_ever},
                  {"while a copy is made", copy_for_ever},
                  {"while addenda are entered", add_for_ever},
                  {"while reports are made", report_for_ever}};
#define MEANWHILES (sizeof meanwhiles / sizeof *meanwhiles)

/* --- scans ---------------------------------------------------------------------------------------- */

struct bench {
	const char *bin;
	char folder[300], socket[400];
	char lines[2][512]; /* in turns: the same code twice would be one read, and not stored again */
	size_t sizes[2];
	int turn;
	int fd, ref;
	pid_t daemon, reference;
};

static void scan_once(struct bench *b, int64_t *took)
{
	static char answer[8192];
	b->turn = !b->turn;
	*took = round_trip(b->fd, b->lines[b->turn], b->sizes[b->turn], answer, sizeof answer);
	if (!strstr(answer, "\"verdict\":\"accepted\"")) {
		fprintf(stderr, "bench-station: not accepted: %s", answer);
		exit(1);
	}
}

/* The 99th percentile of scans that come every few ms, as people's do not, while another program asks. */
static double p99_meanwhile(struct bench *b, const struct meanwhile *m, int scans)
{
	int64_t *all = calloc((size_t)scans, sizeof *all);
	pid_t other = fork();
	if (other == 0) {
		m->run(b->socket);
		_exit(1);
	}
	usleep(200000);
	for (int i = 0; all && i < scans; i++) {
		scan_once(b, &all[i]);
		usleep(4000);
	}
	int status = 0;
	if (waitpid(other, &status, WNOHANG) != 0)
		die(m->name);
	kill(other, SIGKILL);
	waitpid(other, &status, 0);
	double p99 = all ? at_ms(all, scans, 99) : 0;
	free(all);
	return p99;
}

static void begin(struct bench *b)
{
	char path[400], answer[8192];
	snprintf(path, sizeof path, "%s/station.ini", b->folder);
	FILE *f = fopen(path, "we");
	if (!f ||
	    fputs("[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n", f) < 0 ||
	    fclose(f) != 0)
		die(path);
	b->reference = fork();
	if (b->reference == 0)
		serve_reference(b->folder);
	b->daemon = fork();
	if (b->daemon == 0) {
		snprintf(path, sizeof path, "%s/bandtallyd", b->bin);
		execl(path, "bandtallyd", "--data", b->folder, (char *)NULL);
		_exit(127);
	}
	snprintf(path, sizeof path, "%s/reference", b->folder);
	b->ref = reach(path);
	snprintf(b->socket, sizeof b->socket, "%s/socket", b->folder);
	b->fd = reach(b->socket);
	size_t n =
	    scan_line(answer, sizeof answer, (struct own_code){.kind = OWN_CARD, .meaning = CARD_NEW_CASE});
	round_trip(b->fd, answer, n, answer, sizeof answer);
	b->sizes[0] = scan_line(b->lines[0], sizeof b->lines[0],
	                        (struct own_code){.kind = OWN_CARD, .meaning = CARD_AWAKE_PATIENT});
	b->sizes[1] = scan_line(b->lines[1], sizeof b->lines[1],
	                        (struct own_code){.kind = OWN_CARD, .meaning = CARD_NEXT});
}

static void end(struct bench *b)
{
	char command[400];
	kill(b->daemon, SIGTERM);
	kill(b->reference, SIGTERM);
	while (wait(NULL) > 0)
		;
	snprintf(command, sizeof command, "rm -r '%s'", b->folder);
	if (system(command) != 0)
		die(b->folder);
}

static long long events_of(const struct bench *b)
{
	static const char line[] = "{\"do\":\"status\"}\n";
	static char answer[1 << 18];
	round_trip(b->fd, line, sizeof line - 1, answer, sizeof answer);
	const char *events = strstr(answer, "\"events\":");
	return events ? atoll(events + 9) : 0;
}

static void options(int argc, char **argv, struct bench *b, int *json, int *scans, int *cases)
{
	for (int i = 1; i < argc; i++) {
		if (strcmp(argv[i], "--json") == 0)
			*json = 1;
		else if (strcmp(argv[i], "--scans") == 0 && i + 1 < argc)
			*scans = atoi(argv[++i]);
		else if (strcmp(argv[i], "--cases") == 0 && i + 1 < argc)
			*cases = atoi(argv[++i]);
		else if (strcmp(argv[i], "--data") == 0 && i + 1 < argc)
			snprintf(b->folder, sizeof b->folder, "%.250s/bandtally-bench-XXXXXX", argv[++i]);
	}
	if (!b->bin || *scans < 2000 || *cases < 1 || !mkdtemp(b->folder))
		die("BANDTALLY_BIN, 2000 scans or more, a case or more, and a folder are needed");
}

int main(int argc, char **argv)
{
	int json = 0, scans = 20000, cases = 17000;
	char answer[8192], payload[PAYLOAD + 1], name[120];
	static struct bench b = {.folder = "/tmp/bandtally-bench-XXXXXX"};
	b.bin = getenv("BANDTALLY_BIN");
	options(argc, argv, &b, &json, &scans, &cases);
	signal(SIGPIPE, SIG_IGN);
	int64_t events = make_record(b.folder, cases);
	begin(&b);
	memset(payload, 'x', PAYLOAD);
	int64_t *ours = calloc((size_t)scans, sizeof *ours), *bare = calloc((size_t)scans, sizeof *bare),
	        early = 0;
	for (int i = 0; ours && bare && i < scans; i++) {
		scan_once(&b, &ours[i]);
		bare[i] = round_trip(b.ref, payload, PAYLOAD, answer, sizeof answer);
		if (i == scans / 4)
			early = memory_kib(b.daemon, "VmRSS");
	}
	int64_t late = memory_kib(b.daemon, "VmRSS");
	if (events_of(&b) - events < scans)
		die("not every scan was stored");
	double p99s[MEANWHILES];
	for (size_t i = 0; i < MEANWHILES; i++)
		p99s[i] = p99_meanwhile(&b, &meanwhiles[i], scans / 10);
	int64_t most = memory_kib(b.daemon, "VmHWM");
	end(&b);
	double median = at_ms(ours, scans, 50), p99 = at_ms(ours, scans, 99);
	double bare_median = at_ms(bare, scans, 50), bare_p99 = at_ms(bare, scans, 99);
	double growth = (double)(late - early) * 1024 / (scans - scans / 4 - 1);
	if (json)
		puts("[");
	snprintf(name, sizeof name, "scan to durable reply, %lld events, median", (long long)events);
	print_item(name, median, "ms", "a bare durable commit through a socket", median / bare_median, 1.2,
	           json, 0);
	snprintf(name, sizeof name, "scan to durable reply, %lld events, p99", (long long)events);
	print_item(name, p99, "ms", "a bare durable commit through a socket", p99 / bare_p99, 1.5, json, 0);
	for (size_t i = 0; i < MEANWHILES; i++) {
		snprintf(name, sizeof name, "scan to durable reply, p99, %s", meanwhiles[i].name);
		print_item(name, p99s[i], "ms", "20 ms", p99s[i] / 20, 1, json, 0);
	}
	print_item("resident memory of bandtallyd, at the most", (double)most, "KiB", "16 MiB",
	           (double)most / 16384, 1, json, 0);
	/* Over the last three quarters of the scans: 16 bytes would be 16 MB in a million. */
	print_item("growth of memory", growth, "B/scan", "one byte a scan", growth, 1, json, 1);
	if (json)
		puts("]");
	free(ours);
	free(bare);
	return 0;
}
