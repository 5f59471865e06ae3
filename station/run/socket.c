#include "run/socket.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include "base/log.h"
#include "run/board.h"
#include "run/peer.h"
#include "run/request.h"

#define REQUEST_MAX (2u << 20) /* a whole catalogue comes in one line */
#define REQUEST_SMALL_MAX (64u << 10)
#define CLIENTS_MAX 100
#define CLIENTS_OF_A_USER 8

/* --- who asks ----------------------------------------------------------------------------------- */

static unsigned rights_of_group(const struct daemon *d, gid_t gid)
{
	static const unsigned right[GROUPS] = {
	    [GROUP_COUNT] = RIGHT_COUNT, [GROUP_STORES] = RIGHT_STORES, [GROUP_AUDIT] = RIGHT_AUDIT};
	unsigned rights = 0;
	for (int i = 0; i < GROUPS; i++)
		if (d->groups.gid[i] == gid && gid != GROUP_NONE)
			rights |= right[i];
	return rights;
}

/* The groups that the peer's process has, as the kernel knows them. */
static unsigned rights_of_groups(const struct daemon *d, int fd, gid_t gid)
{
	static gid_t all[NGROUPS_MAX];
	socklen_t many = sizeof all;
	unsigned rights = rights_of_group(d, gid);
	if (getsockopt(fd, SOL_SOCKET, SO_PEERGROUPS, all, &many) == 0)
		for (size_t i = 0; i < many / sizeof *all; i++)
			rights |= rights_of_group(d, all[i]);
	return rights;
}

#define NOT_ALLOWED                                                                                          \
	"not allowed: your user is not in the group for this (bandtally-count, -stores, -audit): ask "       \
	"whoever looks after the station"

/* As a service it has a user of its own, as whom nobody works: whoever asks as that one has broken out of a program of
 * ours. By hand its user is whoever started it. systemd names the process that it started itself. */
static int is_service(void)
{
	const char *started = getenv("SYSTEMD_EXEC_PID");
	return started && atoi(started) == getpid();
}

static unsigned rights_of(const struct daemon *d, int fd, const struct ucred *peer)
{
	if (peer->uid == 0 || (peer->uid == geteuid() && !is_service()))
		return RIGHT_ALL | RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT;
	return peer->uid == geteuid() ? 0 : rights_of_groups(d, fd, peer->gid);
}

/* --- one client --------------------------------------------------------------------------------- */

static const struct {
	const char *name;
	unsigned rights;
	request *fn;
	unsigned at_bench; /* instead, where the room that is asked about is a stores bench; 0 the same */
} requests[] = {
    {"scan", RIGHT_COUNT, request_scan, RIGHT_STORES},
    {"type", RIGHT_COUNT, request_type, RIGHT_STORES},
    {"sheet", RIGHT_COUNT | RIGHT_AUDIT, request_sheet, RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT},
    {"board", RIGHT_COUNT | RIGHT_AUDIT, request_board, RIGHT_STORES | RIGHT_AUDIT},
    {"status", RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT, request_status, 0},
    {"case", RIGHT_COUNT | RIGHT_AUDIT, request_case, 0},
    {"cases", RIGHT_COUNT | RIGHT_AUDIT, request_cases, 0},
    {"lines", RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT, request_lines, 0},
    {"catalogue", RIGHT_STORES, request_catalogue, 0},
    {"staff", RIGHT_ALL, request_staff, 0},
    {"staff-file", RIGHT_ALL, request_staff_file, 0},
    {"withdraw", RIGHT_ALL, request_withdraw, 0},
    {"list-staff", RIGHT_COUNT | RIGHT_STORES | RIGHT_AUDIT, request_list_staff, 0},
    {"quarantine", RIGHT_STORES, request_quarantine, 0},
    {"release", RIGHT_STORES, request_quarantine, 0},
    {"stock", RIGHT_STORES | RIGHT_AUDIT, request_stock, 0},
    {"recall", RIGHT_STORES | RIGHT_AUDIT, request_recall, 0},
    {"used", RIGHT_STORES | RIGHT_AUDIT, request_used, 0},
    {"shortfalls", RIGHT_STORES | RIGHT_AUDIT, request_shortfalls, 0},
    {"bench", RIGHT_STORES, request_bench, 0},
    {"labels-write", RIGHT_STORES, request_labels_write, 0},
    {"labels-take", RIGHT_STORES, request_labels_take, 0},
    {"label", RIGHT_STORES, request_label, 0},
    {"settle", RIGHT_ALL, request_settle, 0},
    {"retry", RIGHT_COUNT | RIGHT_STORES, request_retry, 0},
    {"copy", RIGHT_AUDIT, request_copy, 0},
    {"backed-up", RIGHT_AUDIT, request_backed_up, 0},
    {"audited", RIGHT_AUDIT, request_audited, 0},
    {"keep", RIGHT_AUDIT, request_keep, 0},
    {"report", RIGHT_AUDIT, request_report, 0},
};

request *request_at_page(const char *name)
{
	static const char *const asked[] = {"lines", "stock", "recall", "used", "shortfalls"};
	for (size_t i = 0; i < sizeof asked / sizeof *asked; i++)
		for (size_t k = 0; strcmp(asked[i], name) == 0 && k < sizeof requests / sizeof *requests; k++)
			if (strcmp(requests[k].name, name) == 0)
				return requests[k].fn;
	return NULL;
}

static unsigned rights_needed(const struct client *c, size_t i, const json_t *q)
{
	const json_t *room = json_object_get(q, "room");
	int64_t number = json_truth(q, "stores") ? core_bench_room(&c->d->core)
	                 : room                  ? json_integer_value(room)
	                                         : c->d->core.station.rooms[0].number;
	int bench = requests[i].at_bench && number >= 1 && number <= ROOM_MAX &&
	            core_is_bench(&c->d->core, (int32_t)number);
	return bench ? requests[i].at_bench : requests[i].rights;
}

static json_t *handle(struct client *c, const char *line, size_t size)
{
	struct error e = {0};
	if (!line)
		return answer_no(c->rights & RIGHT_STORES
		                     ? "the request is longer than 2 MiB: send less at once"
		                     : "the request is longer than 64 KiB: send less at once");
	_cleanup_(json_drop) json_t *q = json_read(line, size, &e);
	if (!json_is_object(q))
		return answer_no(q ? "the request is not a JSON object: send one object on a line" : e.text);
	for (size_t i = 0; i < sizeof requests / sizeof *requests; i++) {
		if (strcmp(requests[i].name, json_text(q, "do")) != 0)
			continue;
		if (!(c->rights & rights_needed(c, i, q)))
			return answer_no(NOT_ALLOWED);
		return requests[i].fn(c, q);
	}
	return answer_no("the request asks for something unknown: use this version's 'bandtally'");
}

static void on_line(void *context, const char *line, size_t size)
{
	struct client *c = context;
	struct daemon *d = c->d;
	json_t *o = handle(c, line, size);
	if (o)
		request_answer(c, o);
	board_show(d);
}

static void on_end(void *context)
{
	request_leave(context);
}

static void on_unread(void *context)
{
	log_warn(LOG_ASKED, "a program at the socket does not take its answer: it is left");
	request_leave(context);
}

/* Connections cost descriptors, which drivers and printing need too, and no user may use up another's. Why `uid` gets
 * none now, or NULL. */
static const char *too_many(const struct daemon *d, uid_t uid)
{
	int all = 0, of_user = 0;
	for (const struct client *c = d->clients; c; c = c->next) {
		all++;
		of_user += c->uid == uid;
	}
	if (of_user >= CLIENTS_OF_A_USER)
		return "too many programs of your user talk to the station at once: end those that hang, and "
		       "try again";
	return all < CLIENTS_MAX ? NULL
	                         : "too many programs talk to the station at once: end those that hang, and "
	                           "try again";
}

static void turn_away(int fd, const char *why)
{
	char line[256];
	int n = snprintf(line, sizeof line, "{\"error\":\"%s\",\"ok\":false}\n", why);
	send(fd, line, (size_t)n, MSG_NOSIGNAL | MSG_DONTWAIT);
	close(fd);
}

static int let_in(struct daemon *d, int fd, uid_t uid, unsigned rights)
{
	static const struct stream_calls calls = {on_line, on_end};
	size_t line_max = rights & RIGHT_STORES ? REQUEST_MAX : REQUEST_SMALL_MAX;
	struct client *c = calloc(1, sizeof *c);
	if (!c)
		return -ENOMEM;
	*c = (struct client){.next = d->clients, .d = d, .uid = uid, .rights = rights};
	int n = stream_new(&c->stream, d->loop, fd, line_max, &calls, c);
	if (n < 0) {
		free(c);
		return n;
	}
	stream_guard(c->stream, on_unread);
	d->clients = c;
	return 0;
}

static void on_accept(void *context, int fd)
{
	struct daemon *d = context;
	struct ucred peer = {.uid = (uid_t)-1};
	socklen_t size = sizeof peer;
	unsigned rights =
	    getsockopt(fd, SOL_SOCKET, SO_PEERCRED, &peer, &size) < 0 ? 0 : rights_of(d, fd, &peer);
	const char *why = rights ? too_many(d, peer.uid) : NOT_ALLOWED;
	/* Last: it costs most, and whoever may ask for nothing could have it done again and again. */
	if (!why && peer_is_ours(fd, peer.pid))
		why = "not allowed: the station's own programs may ask it for nothing";
	if (why)
		turn_away(fd, why);
	else if (let_in(d, fd, peer.uid, rights) < 0)
		turn_away(fd, "the station is out of memory: try again");
}

int socket_open(struct daemon *d, struct error *e)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	int n = snprintf(a.sun_path, sizeof a.sun_path, "%s/socket", d->core.folder);
	if (n < 0 || (size_t)n >= sizeof a.sun_path)
		return error_set(e, -ENAMETOOLONG,
		                 "the path of the data folder is too long for a socket (%zu bytes at most): "
		                 "use a shorter one",
		                 sizeof a.sun_path - 8);
	request_copies_clear(d);
	unlink(a.sun_path); /* the folder's lock says that no other daemon uses it */
	int fd = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0);
	if (fd < 0 || bind(fd, (struct sockaddr *)&a, sizeof a) < 0 || chmod(a.sun_path, 0666) < 0 ||
	    listen(fd, 64) < 0) {
		n = -errno;
		if (fd >= 0)
			close(fd);
		return error_set(e, n, "cannot listen at %s: %s: check the data folder", a.sun_path,
		                 strerror(-n));
	}
	return loop_accept(d->loop, fd, on_accept, d);
}
