/* What a user without rights can do to the count: a scan's reply while he holds a hundred connections at the socket, each
 * made again as soon as it is lost, beside the same scans in the same run without him; and what memory that takes.
 *   bench-hostile [--json] [--scans N] [--data FOLDER]       BANDTALLY_BIN: where bandtallyd is; for root only, who can
 *                                                            take on another user
 * A quarter of them send bytes without a newline, a quarter lines whose answers they do not read, a quarter half a line and
 * then nothing, and a quarter come and go.
 */
#include <errno.h>
#include <grp.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <sys/wait.h>
#include <unistd.h>

#include "asked.h"

#define NOBODY 65534
#define EACH 25 /* connections of one kind */
#define PIECE 65536
#define SCAN_EVERY_US 4000
#define MADE_MIN 1000 /* fewer connections than that are no attack */
#define P99_GOAL 4    /* times the quiet run's */
#define MEMORY_GOAL 1.25

/* --- who means harm ------------------------------------------------------------------------------ */

struct kind {
	const char *text;
	int again; /* it is sent again and again, as fast as it is taken */
	int goes;  /* at once */
};

static const struct kind kinds[] = {
    {"no newline in this, and none behind it. ", 1, 0},
    {"{}\n", 1, 0},
    {"{\"do\":\"scan\",\"co", 0, 0},
    {"", 0, 1},
};
#define KINDS (sizeof kinds / sizeof *kinds)

static int come(const char *path)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	int fd = socket(AF_UNIX, SOCK_STREAM | SOCK_NONBLOCK, 0);
	snprintf(a.sun_path, sizeof a.sun_path, "%.100s", path);
	if (fd >= 0 && connect(fd, (struct sockaddr *)&a, sizeof a) == 0)
		return fd;
	if (fd >= 0)
		close(fd);
	return -1;
}

/* The connection, or -1 where it is lost: also of nothing one hears that, and what was said meanwhile stays unread. */
static int send_on(int fd, const struct kind *k, const char *piece, size_t size, int fresh)
{
	ssize_t n = send(fd, piece, k->again || fresh ? size : 0, MSG_NOSIGNAL);
	if (!k->goes && (n >= 0 || errno == EAGAIN))
		return fd;
	close(fd);
	return -1;
}

struct hostile {
	struct kind kind;
	int fd; /* -1 while it is lost */
};

static void attack_for_ever(const char *path, volatile long *made)
{
	static char pieces[KINDS][PIECE];
	size_t sizes[KINDS] = {0};
	struct hostile all[KINDS * EACH];
	for (size_t k = 0; k < KINDS; k++) {
		size_t length = strlen(kinds[k].text), most = kinds[k].again ? PIECE - 1 : length;
		while (length && sizes[k] + length <= most) {
			memcpy(pieces[k] + sizes[k], kinds[k].text, length);
			sizes[k] += length;
		}
	}
	for (size_t i = 0; i < KINDS * EACH; i++)
		all[i] = (struct hostile){.kind = kinds[i % KINDS], .fd = -1};
	for (size_t i = 0;; i = (i + 1) % (KINDS * EACH)) {
		struct hostile *h = &all[i];
		int fresh = h->fd < 0;
		if (fresh && (h->fd = come(path)) >= 0)
			++*made;
		if (h->fd >= 0)
			h->fd = send_on(h->fd, &h->kind, pieces[i % KINDS], sizes[i % KINDS], fresh);
	}
}

struct hostile_user {
	pid_t pid;
	volatile long *made; /* connections, as his process counts them */
};

static void attack_begin(struct hostile_user *u, const char *path)
{
	u->made = mmap(NULL, sizeof *u->made, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
	if (u->made == MAP_FAILED)
		die("memory");
	u->pid = fork();
	if (u->pid != 0)
		return;
	if (setgroups(0, NULL) == 0 && setresgid(NOBODY, NOBODY, NOBODY) == 0 &&
	    setresuid(NOBODY, NOBODY, NOBODY) == 0)
		attack_for_ever(path, u->made);
	_exit(1);
}

static long attack_end(struct hostile_user *u)
{
	if (waitpid(u->pid, NULL, WNOHANG) != 0)
		die("the hostile process has ended by itself");
	kill(u->pid, SIGKILL);
	waitpid(u->pid, NULL, 0);
	return *u->made;
}

/* --- scans --------------------------------------------------------------------------------------- */

struct bench {
	const char *bin;
	char folder[300], socket[400];
	char lines[2][512]; /* in turns: the same code twice would be one read, and not stored again */
	size_t sizes[2];
	int fd;
	pid_t daemon;
};

static void begin(struct bench *b)
{
	char path[400], answer[8192];
	if (!mkdtemp(b->folder) || chmod(b->folder, 0711) < 0)
		die(b->folder);
	b->daemon = fork();
	if (b->daemon == 0) {
		snprintf(path, sizeof path, "%s/bandtallyd", b->bin);
		execl(path, "bandtallyd", "--data", b->folder, (char *)NULL);
		_exit(127);
	}
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
	waitpid(b->daemon, NULL, 0);
	snprintf(command, sizeof command, "rm -r '%s'", b->folder);
	if (system(command) != 0)
		die(b->folder);
}

static void scan_all(const struct bench *b, int64_t *took, int scans)
{
	static char answer[8192];
	for (int i = 0; i < scans; i++) {
		took[i] = round_trip(b->fd, b->lines[i % 2], b->sizes[i % 2], answer, sizeof answer);
		if (!strstr(answer, "\"verdict\":\"accepted\""))
			die(answer);
		usleep(SCAN_EVERY_US);
	}
}

static void options(int argc, char **argv, struct bench *b, int *json, int *scans)
{
	b->bin = getenv("BANDTALLY_BIN");
	for (int i = 1; i < argc; i++) {
		if (strcmp(argv[i], "--json") == 0)
			*json = 1;
		else if (strcmp(argv[i], "--scans") == 0 && i + 1 < argc)
			*scans = atoi(argv[++i]);
		else if (strcmp(argv[i], "--data") == 0 && i + 1 < argc)
			snprintf(b->folder, sizeof b->folder, "%.250s/bandtally-hostile-XXXXXX", argv[++i]);
	}
	if (!b->bin || *scans < 500)
		die("BANDTALLY_BIN and 500 scans or more are needed");
	if (geteuid() == 0)
		return;
	puts("bench-hostile: skipped: another user can be taken on by root only");
	exit(77);
}

struct run {
	double p99_ms, kib;
	long made;
};

static void measure(struct run *r, struct bench *b, int scans, int attacked)
{
	struct hostile_user u = {0};
	int64_t *took = calloc((size_t)scans, sizeof *took);
	if (!took)
		die("memory");
	if (attacked)
		attack_begin(&u, b->socket);
	scan_all(b, took, scans);
	r->kib = (double)memory_kib(b->daemon, "VmHWM");
	if (attacked)
		r->made = attack_end(&u);
	r->p99_ms = at_ms(took, scans, 99);
	free(took);
}

static void tell(const struct run *alone, const struct run *attacked, int json)
{
	char name[120], reference[120];
	double p99 = attacked->p99_ms, kib = attacked->kib;
	if (json)
		puts("[");
	snprintf(name, sizeof name, "scan to reply, p99, %zu hostile connections (%ld made)", KINDS * EACH,
	         attacked->made);
	print_item(name, p99, "ms", "10 ms", p99 / 10, 1, json, 0);
	snprintf(reference, sizeof reference, "%.4g ms without them", alone->p99_ms);
	print_item("the same beside the quiet run", p99, "ms", reference, p99 / alone->p99_ms, P99_GOAL, json,
	           0);
	print_item("memory of bandtallyd then, at the most", kib, "KiB", "32 MiB", kib / 32768, 1, json, 0);
	snprintf(reference, sizeof reference, "%.0f KiB without them", alone->kib);
	print_item("the same beside the quiet run", kib, "KiB", reference, kib / alone->kib, MEMORY_GOAL,
	           json, 1);
	if (json)
		puts("]");
}

int main(int argc, char **argv)
{
	int json = 0, scans = 3000;
	static struct bench b = {.folder = "/tmp/bandtally-hostile-XXXXXX"};
	struct run alone = {0}, attacked = {0};
	options(argc, argv, &b, &json, &scans);
	signal(SIGPIPE, SIG_IGN);
	begin(&b);
	measure(&alone, &b, scans, 0);
	measure(&attacked, &b, scans, 1);
	end(&b);
	if (attacked.made < MADE_MIN)
		die("too few connections were made for an attack");
	tell(&alone, &attacked, json);
	return 0;
}
