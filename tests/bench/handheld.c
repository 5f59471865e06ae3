/* Figures of handheld scanners: codes lost of 10,000; the time from the last key to the driver's line; and
 * from the last key to the reply at the board's pipe, through a real bandtallyd and its driver, beside bare
 * durable commits of as many bytes in the same run and in turns. bench-handheld [--json] [--scans N]
 * BANDTALLY_BIN: where bandtallyd is The scanner is played by umockdev, which this program starts itself in.
 * In the board's place the daemon starts this program once more, which tells when it was sent something.
 */
#include <errno.h>
#include <fcntl.h>
#include <linux/input-event-codes.h>
#include <poll.h>
#include <signal.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "code/own-codes.h"
#include "handheld-rig.h"

#define CODES 10000
#define LATENCIES 500
#define PAYLOAD 190 /* bytes of one event of an ordinary scan, as in bench-station */
#define GOAL_MS 5.0 /* over the commit */
#define PIPE "BANDTALLY_BENCH_PIPE"

static void die(const char *what)
{
	fprintf(stderr, "bench-handheld: %s: %s\n", what, strerror(errno));
	exit(1);
}

/* In the board's place: each view of a room that the daemon sends is a byte in the pipe; {"alive":… each
 * second is not. */
static int stand_in_for_board(void)
{
	static char bytes[65536];
	ssize_t n;
	size_t column = 0;
	int out = open(getenv(PIPE), O_WRONLY | O_CLOEXEC);
	while ((n = read(0, bytes, sizeof bytes)) > 0)
		for (ssize_t i = 0; i < n; i++) {
			if (column == 2 && bytes[i] == 's' && write(out, "l", 1) != 1) /* {"seq":… */
				return 1;
			column = bytes[i] == '\n' ? 0 : column + 1;
		}
	return 0;
}

/* --- a folder with the daemon, the driver and the stand-in side by side */

static void copy(const char *from, const char *folder, const char *name)
{
	static char bytes[65536];
	char path[400];
	ssize_t n;
	snprintf(path, sizeof path, "%s/%s", folder, name);
	int in = open(from, O_RDONLY | O_CLOEXEC), out = open(path, O_WRONLY | O_CREAT | O_CLOEXEC, 0755);
	while (in >= 0 && out >= 0 && (n = read(in, bytes, sizeof bytes)) > 0)
		if (write(out, bytes, (size_t)n) != n)
			die(path);
	if (in < 0 || out < 0)
		die(from);
	close(in);
	close(out);
}

static void put(const char *folder, const char *name, const char *text)
{
	char path[400];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *f = fopen(path, "we");
	if (!f || fputs(text, f) < 0 || fclose(f) != 0)
		die(path);
}

static void furnish(const char *folder)
{
	char path[400];
	const char *bin = getenv("BANDTALLY_BIN");
	snprintf(path, sizeof path, "%s/bandtallyd", bin ? bin : ".");
	copy(path, folder, "bandtallyd");
	copy(BARE_DRIVER, folder, "scan-handheld");
	copy("/proc/self/exe", folder, "bandtally-board");
	put(folder, "station.ini",
	    "[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[board]\nstart = yes\nport = 0\n");
	put(folder, "policy.ini", "[scans]\nburst_ms = 0\n");
	put(folder, "scanners.ini",
	    "[scanner hand-1]\nvendor = 1209\nproduct = b0c0\nroom = 1\nlayout = us\n");
	snprintf(path, sizeof path, "%s/pipe", folder);
	if (mkfifo(path, 0600) < 0 || setenv(PIPE, path, 1) < 0)
		die(path);
}

/* --- measuring */

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

static double at(const double *sorted, int count, int percent)
{
	return sorted[(count - 1) * percent / 100];
}

/* From the last key's writing to the line at this end of the driver's pipe. */
static void to_line(struct rig_driver *d, int fd, double ms[LATENCIES])
{
	static struct wire_line l;
	for (int i = 0; i < LATENCIES; i++) {
		rig_type(fd, "9506000134352");
		usleep(2000);
		double from = rig_seconds();
		rig_key(fd, KEY_ENTER);
		if (!rig_next(d, &l) || !rig_is_scan(&l, "9506000134352"))
			die("a code was lost");
		ms[i] = (rig_seconds() - from) * 1000;
	}
	qsort(ms, LATENCIES, sizeof *ms, by_size);
}

static void drain(int pipe)
{
	char bytes[4096];
	while (poll(&(struct pollfd){.fd = pipe, .events = POLLIN}, 1, 30) > 0 &&
	       read(pipe, bytes, sizeof bytes) > 0)
		;
}

/* Types a card; the milliseconds from its last key until the board's pipe has something. */
static double to_board(int fd, int pipe, const char *card)
{
	rig_type(fd, card);
	usleep(2000);
	drain(pipe);
	double from = rig_seconds();
	rig_key(fd, KEY_ENTER);
	if (poll(&(struct pollfd){.fd = pipe, .events = POLLIN}, 1, 5000) != 1)
		die("no reply to a card");
	return (rig_seconds() - from) * 1000;
}

struct bare {
	sqlite3 *db;
	sqlite3_stmt *insert;
};

static void must(struct bare *b, int code)
{
	if (code != SQLITE_OK && code != SQLITE_DONE) {
		fprintf(stderr, "bench-handheld: reference: %s\n", sqlite3_errmsg(b->db));
		exit(1);
	}
}

static void open_bare(struct bare *b, const char *folder)
{
	char path[400];
	snprintf(path, sizeof path, "%s/reference.db", folder);
	must(b, sqlite3_open(path, &b->db));
	must(b, sqlite3_exec(b->db,
	                     "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;"
	                     "CREATE TABLE t(n INTEGER PRIMARY KEY, b TEXT)",
	                     NULL, NULL, NULL));
	must(b, sqlite3_prepare_v2(b->db, "INSERT INTO t(b) VALUES(?)", -1, &b->insert, NULL));
}

static double commit(struct bare *b)
{
	static char payload[PAYLOAD];
	memset(payload, 'x', sizeof payload);
	double from = rig_seconds();
	must(b, sqlite3_bind_text(b->insert, 1, payload, PAYLOAD, SQLITE_STATIC));
	must(b, sqlite3_step(b->insert));
	must(b, sqlite3_reset(b->insert));
	return (rig_seconds() - from) * 1000;
}

static void card_text(int meaning, char out[OWN_CODE_MAX])
{
	struct own_code c = {.kind = OWN_CARD, .site = "BC", .room = 1, .meaning = meaning};
	if (own_code_write(&c, out) < 0)
		die("card");
}

static pid_t start_daemon(const char *folder)
{
	char path[400];
	snprintf(path, sizeof path, "%s/bandtallyd", folder);
	pid_t pid = fork();
	if (pid == 0) {
		int log = open("/dev/null", O_WRONLY);
		if (!getenv("VERBOSE"))
			dup2(log, 2);
		close_range(3, ~0u, 0);
		execl(path, path, "--data", folder, (char *)NULL);
		_exit(127);
	}
	return pid;
}

static void through_daemon(const char *folder, int fd, int scans, double *ours, double *bare)
{
	char path[400], open_case[OWN_CODE_MAX], awake[OWN_CODE_MAX];
	struct bare b;
	snprintf(path, sizeof path, "%s/pipe", folder);
	int pipe = open(path, O_RDWR | O_CLOEXEC);
	pid_t daemon = start_daemon(folder);
	open_bare(&b, folder);
	card_text(CARD_NEW_CASE, open_case);
	card_text(CARD_AWAKE_PATIENT, awake);
	sleep(2); /* more than the driver's settling */
	to_board(fd, pipe, open_case);
	for (int i = 0; i < scans; i++) {
		ours[i] = to_board(fd, pipe, awake);
		bare[i] = commit(&b);
	}
	kill(daemon, SIGTERM);
	waitpid(daemon, NULL, 0);
	sqlite3_finalize(b.insert);
	sqlite3_close(b.db);
	qsort(ours, (size_t)scans, sizeof *ours, by_size);
	qsort(bare, (size_t)scans, sizeof *bare, by_size);
}

/* --- telling */

/* What is to be met: nothing, at least the reference, or at most. */
enum goal { FIGURE, AT_LEAST, AT_MOST };

static void item(bool json, enum goal goal, const char *name, double value, const char *unit,
                 double reference, const char *words)
{
	static int told;
	double ratio = value / reference;
	bool met = goal == AT_LEAST ? ratio >= 1 : ratio <= 1;
	const char *word = goal == FIGURE ? "null" : met ? "true" : "false";
	if (json)
		printf(
		    "%s{\"name\":\"%s\",\"value\":%.4g,\"unit\":\"%s\",\"reference\":\"%s\",\"ratio\":%.4g,"
		    "\"goal\":%s,\"met\":%s}",
		    told++ ? ",\n" : "[\n", name, value, unit, words, ratio, goal == FIGURE ? "null" : "1",
		    word);
	else
		printf("%-52s %9.4g %-6s ratio %6.3f (%s) to %s\n", name, value, unit, ratio,
		       goal == FIGURE ? "a figure"
		       : met          ? "goal 1, met"
		                      : "goal 1, NOT met",
		       words);
}

static void measure(bool json, int scans, const char *folder)
{
	static double line[LATENCIES];
	static struct wire_line l;
	UMockdevTestbed *bed = umockdev_testbed_new();
	int fd = rig_plug(bed, 7), second = rig_plug(bed, 8);
	double *ours = calloc((size_t)scans, sizeof *ours), *bare = calloc((size_t)scans, sizeof *bare), rate;
	struct rig_driver d = rig_start(BARE_DRIVER, "/dev/input/event7");
	if (fd < 0 || second < 0 || !ours || !bare || !rig_next(&d, &l) || l.kind != WIRE_HELLO)
		die("no scanner");
	usleep(350000); /* more than TYPING_SETTLE_MS */
	int right = rig_many(&d, fd, CODES, &rate);
	to_line(&d, fd, line);
	kill(d.pid, SIGTERM);
	waitpid(d.pid, NULL, 0);
	through_daemon(folder, second, scans, ours, bare);
	double disk = at(bare, scans, 50);
	char over[160];
	item(json, AT_LEAST, "handheld codes right of 10000", right, "codes", CODES, "10000 codes typed");
	item(json, FIGURE, "handheld codes a second", rate, "1/s", 20, "20 codes a second");
	item(json, AT_MOST, "handheld last key to line, median", at(line, LATENCIES, 50), "ms", GOAL_MS,
	     "5 ms");
	item(json, FIGURE, "handheld last key to line, p99", at(line, LATENCIES, 99), "ms", GOAL_MS, "5 ms");
	snprintf(over, sizeof over, "a bare durable commit (%.3f ms) and 5 ms", disk);
	item(json, AT_MOST, "handheld last key to reply at the board, median", at(ours, scans, 50), "ms",
	     disk + GOAL_MS, over);
	item(json, FIGURE, "handheld last key to reply at the board, p99", at(ours, scans, 99), "ms",
	     disk + GOAL_MS, over);
	if (json)
		puts("\n]");
	free(ours);
	free(bare);
	g_object_unref(bed);
}

int main(int argc, char **argv)
{
	bool json = false;
	int scans = 500;
	char folder[] = "/tmp/bandtally-bench-XXXXXX", command[60];
	if (getenv(PIPE))
		return stand_in_for_board();
	if (!getenv("UMOCKDEV_DIR") && !getenv("BANDTALLY_BENCH_INSIDE")) {
		char *words[argc + 2];
		words[0] = "umockdev-wrapper";
		memcpy(words + 1, argv, sizeof *argv * (size_t)(argc + 1));
		setenv("BANDTALLY_BENCH_INSIDE", "1", 1);
		execvp(words[0], words);
		die("umockdev-wrapper: install the package umockdev");
	}
	for (int i = 1; i < argc; i++) {
		json |= strcmp(argv[i], "--json") == 0;
		if (strcmp(argv[i], "--scans") == 0 && i + 1 < argc)
			scans = atoi(argv[++i]);
	}
	if (scans < 100 || !mkdtemp(folder))
		die("100 scans or more, and a folder in /tmp are needed");
	signal(SIGPIPE, SIG_IGN);
	furnish(folder);
	measure(json, scans, folder);
	snprintf(command, sizeof command, "rm -r '%s'", folder);
	return system(command) != 0;
}
