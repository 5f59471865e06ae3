/* Figures of a large record: how long a station takes to start on it, and how fast `bandtally audit verify`
 * goes through it beside reading the same rows with SQLite and hashing the same bytes. bench-record [--json]
 * [--long] [--cases N]     BANDTALLY_BIN, BANDTALLY_SOURCE; 17,000 ordinary cases (1,000,000 events) unless said; --long:
 * 150,000 (9,000,000). A start is measured with the snapshot that the stop before wrote, and without one.
 */
#include <errno.h>
#include <openssl/evp.h>
#include <signal.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "record/snapshot.h"
#include "tests/unit/record/folder.h"
#include "tests/unit/record/history.h"

static void die(const char *what, const char *why)
{
	fprintf(stderr, "bench-record: %s: %s\n", what, why);
	exit(1);
}

static double now_s(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static int64_t make_record(const char *folder, int cases)
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
	int64_t events = record_last(r, NULL);
	if (h.st.last_case_no != cases)
		die("the cases", "they did not all begin");
	history_deinit(&h);
	record_close(r);
	return events;
}

/* From the start of the program to its first answer at the socket. */
static double start_s(const char *folder, const char *bin)
{
	char program[512];
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	snprintf(program, sizeof program, "%s/bandtallyd", bin);
	snprintf(a.sun_path, sizeof a.sun_path, "%s/socket", folder);
	unlink(a.sun_path);
	double from = now_s();
	pid_t pid = fork();
	if (pid == 0) {
		execl(program, "bandtallyd", "--data", folder, (char *)NULL);
		_exit(127);
	}
	int fd = socket(AF_UNIX, SOCK_STREAM, 0);
	while (connect(fd, (struct sockaddr *)&a, sizeof a) < 0) {
		if (now_s() - from > 60)
			die(program, "it does not start");
		usleep(500);
	}
	static const char ask[] = "{\"do\":\"status\"}\n";
	char part[4096];
	if (write(fd, ask, sizeof ask - 1) < 0 || read(fd, part, sizeof part) <= 0)
		die(program, "it does not answer");
	double took = now_s() - from;
	close(fd);
	kill(pid, SIGTERM);
	int status = 0;
	waitpid(pid, &status, 0);
	if (!WIFEXITED(status) || WEXITSTATUS(status))
		die(program, "it did not end in order");
	return took;
}

static double command_s(const char *what, const char *command)
{
	double from = now_s();
	if (system(command) != 0)
		die(what, "it failed");
	return now_s() - from;
}

static double verify_s(const char *file, const char *bin)
{
	char command[1024];
	snprintf(command, sizeof command, "'%s/bandtally' audit verify --file '%s' >/dev/null", bin, file);
	return command_s("audit verify", command);
}

static double check_s(const char *folder, const char *bin)
{
	char command[1024];
	snprintf(command, sizeof command, "'%s/bandtallyd' --data '%s' --check >/dev/null", bin, folder);
	return command_s("--check", command);
}

/* The reference, in this process and one thread: every row in order by SQLite, every text through the fastest SHA-256 of
 * Debian's libraries. */
static double read_and_hash_s(const char *file, int64_t *bytes)
{
	sqlite3 *db;
	sqlite3_stmt *s = NULL;
	EVP_MD_CTX *h = EVP_MD_CTX_new();
	unsigned char hash[32];
	double from = now_s();
	*bytes = 0;
	if (!h || !EVP_DigestInit_ex(h, EVP_sha256(), NULL))
		die("SHA-256", "it cannot be had");
	if (sqlite3_open_v2(file, &db, SQLITE_OPEN_READONLY, NULL) != SQLITE_OK ||
	    sqlite3_prepare_v2(db, "SELECT seq,case_no,kind,payload,hash,key FROM event ORDER BY seq", -1, &s,
	                       NULL) != SQLITE_OK)
		die(file, sqlite3_errmsg(db));
	while (sqlite3_step(s) == SQLITE_ROW) {
		if (!EVP_DigestUpdate(h, sqlite3_column_text(s, 3), (size_t)sqlite3_column_bytes(s, 3)))
			die("SHA-256", "it failed");
		*bytes += sqlite3_column_bytes(s, 3);
	}
	if (!EVP_DigestFinal_ex(h, hash, NULL))
		die("SHA-256", "it failed");
	EVP_MD_CTX_free(h);
	sqlite3_finalize(s);
	sqlite3_close(db);
	return now_s() - from;
}

static void print_item(const char *name, double value, const char *unit, const char *reference, double ratio,
                       double goal, int met, int json, int last)
{
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
	int json = 0, cases = 17000;
	char folder[FOLDER_MAX], file[FOLDER_MAX + 16], snapshot[FOLDER_MAX + 16], name[100];
	const char *bin = getenv("BANDTALLY_BIN");
	for (int i = 1; i < argc; i++) {
		json |= strcmp(argv[i], "--json") == 0;
		if (strcmp(argv[i], "--long") == 0)
			cases = 150000;
		if (strcmp(argv[i], "--cases") == 0 && i + 1 < argc)
			cases = atoi(argv[++i]);
	}
	if (!bin || cases < 1)
		die("usage", "bench-record [--json] [--long] [--cases N]; BANDTALLY_BIN names the folder of "
		             "the programs");
	folder_make(folder);
	snprintf(file, sizeof file, "%s/" RECORD_FILE, folder);
	snprintf(snapshot, sizeof snapshot, "%s/" SNAPSHOT_FILE, folder);
	int64_t events = make_record(folder, cases), bytes = 0;
	double with = 1e9, without = 1e9, check = 1e9, verify = 1e9, reference = 1e9;
	for (int round = 0; round < 5; round++) { /* in turns, the best of each */
		unlink(snapshot);
		double s = start_s(folder, bin), v = verify_s(file, bin), r = read_and_hash_s(file, &bytes);
		without = s < without ? s : without;
		if (access(snapshot, R_OK) < 0)
			die(snapshot, "a stop wrote none");
		s = start_s(folder, bin);
		with = s < with ? s : with;
		s = check_s(folder, bin);
		check = s < check ? s : check;
		verify = v < verify ? v : verify;
		reference = r < reference ? r : reference;
	}
	folder_remove(folder);
	if (json)
		puts("[");
	snprintf(name, sizeof name, "start from a snapshot, %lld events, %d cases", (long long)events, cases);
	print_item(name, with, "s", "1 s", with, 1, with <= 1, json, 0);
	snprintf(name, sizeof name, "bandtallyd --check, %lld events, %d cases", (long long)events, cases);
	print_item(name, check, "s", "5 s for each 17,000 cases", check * 17000 / cases / 5, 1,
	           check * 17000 / cases <= 5, json, 0);
	snprintf(name, sizeof name, "start without one, %lld events, %d cases", (long long)events, cases);
	print_item(name, without, "s", "3 s for each 17,000 cases", without * 17000 / cases / 3, 1,
	           without * 17000 / cases <= 3, json, 0);
	snprintf(name, sizeof name, "audit verify, %lld events, %lld MB", (long long)events,
	         (long long)bytes / 1000000);
	print_item(name, (double)bytes / verify / 1e6, "MB/s",
	           "SQLite reading and SHA-256 of the same bytes, one thread", reference / verify, 0.8,
	           reference / verify >= 0.8, json, 1);
	if (json)
		puts("]");
	return 0;
}
