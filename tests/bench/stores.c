/* What stores wait for on a large stock: 100,000 packs in 2,000 lots, all labelled, and 10,000 cases that took one. From the
 * line at the socket to the whole answer, with everything on disk.
 *   bench-stores [--json] [--lots N] [--cases N]       BANDTALLY_BIN: where bandtallyd is
 */
#include <dirent.h>
#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "asked.h"
#include "base/file.h"
#include "run/core.h"

#define LINES 20
#define PACKS 50 /* of a lot */
#define TIMES 60
#define GOAL_MS 50.0

static struct core core;
static char folder[64];
static char answer[8 << 20];
static pid_t daemon_pid;

static void store(struct event *events, int n)
{
	struct error e = {0};
	if (core_store(&core, events, n, &e) < 0)
		die(e.text);
}

static void write_settings(void)
{
	static const char text[] =
	    "[site]\nletters = BC\n[room 1]\nname = Theatre 1\n[room 9]\nname = Stores\nkind = stores\n"
	    "[board]\nstart = no\n";
	char path[100];
	snprintf(path, sizeof path, "%s/station.ini", folder);
	if (file_replace(path, 0644, text, sizeof text - 1) < 0)
		die(path);
}

static struct batch lot_of(int lot)
{
	struct batch b = {.expiry = 20330101 + lot % 28};
	snprintf(b.line, sizeof b.line, "LINE-%d", lot % LINES);
	snprintf(b.lot, sizeof b.lot, "T%d", lot);
	return b;
}

static void add_lines(void)
{
	store(&(struct event){.kind = EV_STAFF_SET, .staff = {1, "STORES-1", STAFF_PRACTITIONER, 1, 0}}, 1);
	for (int i = 0; i < LINES; i++) {
		struct event ev = {
		    .kind = EV_LINE_SET,
		    .line = {
		        .role = ROLE_TOURNIQUET, .marked = 1, .visible = 1, .single_use = 1, .per_pack = 1}};
		snprintf(ev.line.key, sizeof ev.line.key, "LINE-%d", i);
		snprintf(ev.line.name, sizeof ev.line.name, "finger tourniquet %d", i);
		store(&ev, 1);
	}
}

/* Labels that are not to be read back: those would stay open. */
static void add_lots(int lots)
{
	for (int i = 0; i < lots; i++) {
		struct event all[3] = {{.kind = EV_RECEIVED, .room = 9, .what = RECEIVED_CODED, .n = PACKS},
		                       {.kind = EV_LABELLED, .room = 9},
		                       {.kind = EV_ISSUED, .room = 9, .n = 5, .other = 1}};
		for (int k = 0; k < 3; k++)
			all[k].batch = lot_of(i);
		all[1].batch.first = 1 + (int64_t)i * PACKS;
		all[1].batch.last = (int64_t)(i + 1) * PACKS;
		store(all, 3);
	}
}

static void add_cases(int lots, int cases)
{
	for (int i = 0; i < cases; i++) {
		struct event ev = {.kind = EV_CASE_TOOK,
		                   .room = 1,
		                   .batch = lot_of(i % lots),
		                   .n = 1,
		                   .what = TOOK_OPENED,
		                   .other = i + 1};
		store(&ev, 1);
		if (i % 10 == 0) { /* one that came back later */
			ev.what = TOOK_FOUND;
			store(&ev, 1);
		}
	}
}

static void make_stock(int lots, int cases)
{
	struct error e = {0};
	strcpy(folder, "/tmp/bandtally-stores-XXXXXX");
	if (!mkdtemp(folder))
		die(folder);
	write_settings();
	if (core_open(&core, folder, &e) < 0)
		die(e.text);
	add_lines();
	add_lots(lots);
	add_cases(lots, cases);
	core_close(&core);
}

static pid_t start(const char *bin)
{
	char program[300];
	snprintf(program, sizeof program, "%s/bandtallyd", bin);
	pid_t pid = fork();
	if (pid == 0) {
		if (!freopen("/dev/null", "w", stderr))
			_exit(1);
		execl(program, "bandtallyd", "--data", folder, (char *)NULL);
		_exit(127);
	}
	return pid;
}

/* --- what is asked --------------------------------------------------------------------------------- */

static void measure(int fd, const char *name, const char *line, int json, int last)
{
	static int64_t took[TIMES];
	for (int i = 0; i < TIMES; i++) {
		took[i] = round_trip(fd, line, strlen(line), answer, sizeof answer);
		if (!strstr(answer, "\"ok\":true") || strstr(answer, "\"verdict\":\"refused\"")) {
			kill(daemon_pid, SIGTERM);
			die(answer);
		}
	}
	double half = at_ms(took, TIMES, 50), most = at_ms(took, TIMES, 99);
	char all[100];
	snprintf(all, sizeof all, "stores: %s, median", name);
	print_item(all, half, "ms", "50 ms", half / GOAL_MS, 1, json, 0);
	snprintf(all, sizeof all, "stores: %s, p99", name);
	print_item(all, most, "ms", "50 ms", most / GOAL_MS, 1, json, last);
}

static void ask(int fd, pid_t pid, int json)
{
	measure(
	    fd, "receive (four steps, each on disk)",
	    "{\"do\":\"bench\",\"steps\":[{\"card\":\"RECEIVE\"},{\"text\":\"LINE-3/T3\"},{\"at\":\"expiry\","
	    "\"text\":\"2033-01-04\"},{\"at\":\"how-many\",\"text\":\"4\"},{\"at\":\"typed-by\",\"badge\":1},"
	    "{"
	    "\"at\":\"second\",\"card\":\"NOBODY TO CONFIRM\"}]}\n",
	    json, 0);
	measure(fd, "earliest first, of all lots", "{\"do\":\"stock\"}\n", json, 0);
	measure(fd, "earliest first, of one line", "{\"do\":\"stock\",\"line\":\"LINE-3\"}\n", json, 0);
	measure(fd, "recall list of one lot", "{\"do\":\"recall\",\"line\":\"LINE-3\",\"lot\":\"T3\"}\n",
	        json, 0);
	measure(fd, "recall list of a line, all lots", "{\"do\":\"recall\",\"line\":\"LINE-3\"}\n", json, 0);
	measure(fd, "trays that are short, and what was found", "{\"do\":\"shortfalls\"}\n", json, 0);
	double mib = (double)memory_kib(pid, "VmHWM") / 1024;
	print_item("stores: memory at the most", mib, "MiB", "40 MiB", mib / 40, 1, json, 1);
}

static void tidy(void)
{
	char path[400];
	DIR *d = opendir(folder);
	for (struct dirent *x = d ? readdir(d) : NULL; x; x = readdir(d)) {
		snprintf(path, sizeof path, "%s/%s", folder, x->d_name);
		unlink(path);
		rmdir(path);
	}
	if (d)
		closedir(d);
	rmdir(folder);
}

int main(int count, char **words)
{
	int json = 0, lots = 2000, cases = 10000;
	const char *bin = getenv("BANDTALLY_BIN");
	for (int i = 1; i < count; i++) {
		json |= strcmp(words[i], "--json") == 0;
		if (strcmp(words[i], "--lots") == 0 && i + 1 < count)
			lots = atoi(words[++i]);
		else if (strcmp(words[i], "--cases") == 0 && i + 1 < count)
			cases = atoi(words[++i]);
	}
	make_stock(lots, cases);
	pid_t pid = daemon_pid = start(bin ? bin : "build/release/bin");
	char socket[100];
	snprintf(socket, sizeof socket, "%s/socket", folder);
	int fd = reach(socket);
	if (json)
		puts("[");
	ask(fd, pid, json);
	if (json)
		puts("]");
	kill(pid, SIGTERM);
	waitpid(pid, NULL, 0);
	tidy();
	return 0;
}
