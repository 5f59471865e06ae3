#include "tests/fuzz/station-rig.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include "base/json.h"
#include "run/hospital.h"
#include "run/label-jobs.h"
#include "run/outbox.h"
#include "run/peer.h"
#include "run/socket.h"

#define ROUNDS_MAX 400

/* The station asks, and the peer is this very process. */
int peer_is_ours(int fd, pid_t pid)
{
	(void)fd;
	(void)pid;
	return 0;
}

static struct {
	char clean[64], used[80]; /* folders */
	int quiet, told;          /* where the station's log goes, and this program's own words */
	const struct rig_parts *parts;
} rig;

void rig_must(int holds, const char *what)
{
	if (holds)
		return;
	dprintf(rig.told > 0 ? rig.told : 2, "fuzz: %s\n", what);
	abort();
}

static void on_stored(void *context, const struct event *events, int count)
{
	outbox_stored(context, events, count);
	label_jobs_stored(context, events, count);
	hospital_stored(context);
}

static void on_turn(void *context)
{
	loop_stop(context);
}

void rig_turn(struct daemon *d)
{
	rig_must(loop_after(d->loop, 0, on_turn, d->loop) == 0, "no turn of the loop");
	loop_run(d->loop);
}

static int64_t open_station(struct daemon *d, const char *folder)
{
	struct error e = {0};
	memset(d, 0, sizeof *d);
	rig_must(core_open(&d->core, folder, &e) == 0, e.text);
	rig_must(rig.parts->may_be_doubted || !d->core.distrust[0], d->core.distrust);
	rig_must(loop_new(&d->loop) == 0, "no loop");
	d->children.loop = d->loop;
	d->core.stored = on_stored;
	d->core.context = d;
	groups_init(&d->groups, d->loop);
	rig_must(socket_open(d, &e) == 0, e.text);
	int64_t last = record_last(d->core.record, NULL);
	if (rig.parts->begin)
		rig.parts->begin(d);
	return last;
}

static void close_station(struct daemon *d)
{
	if (rig.parts->end)
		rig.parts->end(d);
	while (d->clients) /* each leaves as its end is told */
		rig_turn(d);
	loop_free(d->loop);
	core_close(&d->core);
}

static int connected(const char *folder)
{
	struct sockaddr_un a = {.sun_family = AF_UNIX};
	snprintf(a.sun_path, sizeof a.sun_path, "%s/socket", folder);
	int fd = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
	rig_must(fd >= 0 && connect(fd, (struct sockaddr *)&a, sizeof a) == 0, "no connection");
	return fd;
}

static void look_at_answer(const char *line, size_t size)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *o = json_read(line, size, &e);
	rig_must(json_is_object(o), "an answer that is no JSON object");
	rig_must(json_is_boolean(json_object_get(o, "ok")),
	         "an answer that does not say whether it was taken");
	rig_must(json_truth(o, "ok") || *json_text(o, "error"), "a refusal without a reason");
}

/* Waits for so many answers. */
static void listen_for(struct daemon *d, int fd, int wanted)
{
	static struct buf got;
	char part[65536], *end;
	for (int round = 0; wanted > 0; round++) {
		rig_must(round < ROUNDS_MAX, "a line without an answer");
		rig_turn(d);
		ssize_t n = recv(fd, part, sizeof part, MSG_DONTWAIT);
		rig_must(n > 0 || (n < 0 && errno == EAGAIN), "the station left");
		rig_must(buf_add(&got, part, n > 0 ? (size_t)n : 0) == 0, "no memory");
		while (got.size && (end = memchr(got.data, '\n', got.size))) {
			look_at_answer(got.data, (size_t)(end - got.data));
			buf_drop(&got, (size_t)(end - got.data) + 1);
			wanted--;
		}
		if (n < 0)
			usleep(round < 5 ? 0 : 1000); /* a copy of the record is made in steps of time */
	}
	rig_must(wanted == 0 && got.size == 0, "more answers than lines");
}

void rig_ask(struct daemon *d, int fd, const char *line, size_t size)
{
	rig_must(send(fd, line, size, MSG_NOSIGNAL) == (ssize_t)size && send(fd, "\n", 1, MSG_NOSIGNAL) == 1,
	         "the station does not listen");
	listen_for(d, fd, 1);
}

static void second(struct daemon *d)
{
	while (core_tick(&d->core))
		;
	outbox_look(d);
	hospital_look(d);
	if (rig.parts->second)
		rig.parts->second(d);
}

static void say_all(struct daemon *d, int fd, rig_line_fn each, const char *text, size_t size)
{
	for (const char *end = text + size; text < end;) {
		const char *stop = memchr(text, '\n', (size_t)(end - text));
		size_t n = (size_t)((stop ? stop : end) - text);
		if (n == 1 && *text == 1)
			second(d);
		else
			each(d, fd, text, n);
		text += n + (stop != NULL);
	}
}

static void run_lines(struct daemon *d, const char *in, rig_line_fn each, const char *text, size_t size)
{
	open_station(d, in);
	int fd = connected(in);
	say_all(d, fd, each, text, size);
	close(fd);
	int64_t last = record_last(d->core.record, NULL);
	close_station(d);
	rig_must(open_station(d, in) > last, "the record lost events");
	rig_must(d->core.station.n_unfollowed == 0, "the station cannot follow what it stored");
	close_station(d);
}

static void shell(const char *command)
{
	rig_must(system(command) == 0, command);
}

static void put_away(void)
{
	char command[256];
	snprintf(command, sizeof command, "rm -rf %s %s", rig.clean, rig.used);
	shell(command);
}

static void start(struct daemon *d)
{
	static const char first[] =
	    "{\"do\":\"catalogue\",\"csv\":\"key,name,role,codes,marked,visible,single_use,identity\\n"
	    "BAND,green M,tourniquet,09506000134352,yes,yes,yes,pack\\n"
	    "CLAMP,mosquito,forceps,,no,no,no,none\\n\"}\n"
	    "{\"do\":\"staff\",\"number\":1,\"name\":\"SCRUB-1\",\"kind\":1,\"registered\":true}\n"
	    "{\"do\":\"staff\",\"number\":2,\"name\":\"CIRC-2\",\"kind\":1,\"registered\":true}\n"
	    "{\"do\":\"staff\",\"number\":3,\"name\":\"SURGEON-3\",\"kind\":2}\n";
	char path[128];
	rig.quiet = open("/dev/null", O_WRONLY | O_CLOEXEC);
	rig.told = dup(2);
	const char *place = access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp";
	snprintf(rig.clean, sizeof rig.clean, "%s/bandtally-fuzz-XXXXXX", place);
	rig_must(mkdtemp(rig.clean) != NULL, "no folder");
	snprintf(rig.used, sizeof rig.used, "%s-used", rig.clean);
	atexit(put_away);
	snprintf(path, sizeof path, "%s/station.ini", rig.clean);
	FILE *f = fopen(path, "w");
	rig_must(f && fputs(rig.parts->settings, f) >= 0 && fclose(f) == 0, "no settings");
	dup2(rig.quiet, 2);
	run_lines(d, rig.clean, rig_ask, first, sizeof first - 1);
	open_station(d, rig.clean);
	rig_must(d->core.station.staff.count == 3 && d->core.station.catalogue.count == 2,
	         "what is to wait there does not");
	close_station(d);
	dup2(rig.told, 2);
}

void rig_run(const struct rig_parts *parts, rig_line_fn each, const char *text, size_t size)
{
	static struct daemon d; /* half a megabyte */
	char again[256];
	rig.parts = parts;
	if (!rig.quiet)
		start(&d);
	snprintf(again, sizeof again, "rm -rf %s && cp -r %s %s", rig.used, rig.clean, rig.used);
	shell(again);
	dup2(rig.quiet, 2);
	run_lines(&d, rig.used, each, text, size);
	dup2(rig.told, 2);
}
