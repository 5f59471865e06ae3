/* Feeding the board: a whole view of a room at each change, the station's status, and a heartbeat. It is
 * given views and gives back typed codes; it knows nothing else. */
#include "run/board.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/log.h"
#include "base/name.h"
#include "base/pem.h"
#include "count/unanswered.h"
#include "run/daemon.h"
#include "run/teller.h"
#include "run/typing.h"

#define BOARD_LINE_MAX 8192
#define PORT_MAX 65535
#define WORDS_MAX (25 + 2 * HOSTS_MAX)

/* The words that the settings ask for; texts are borrowed from the settings and from `ports`. */
struct words {
	char ports[2][12];
	const char *word[WORDS_MAX];
	int n;
};

static void say_words(struct words *w, const char *name, const char *value)
{
	w->word[w->n++] = name;
	if (value)
		w->word[w->n++] = value;
	w->word[w->n] = NULL;
}

static void say_elsewhere(struct words *w, const struct elsewhere_setting *s)
{
	snprintf(w->ports[1], sizeof w->ports[1], "%d", s->port);
	say_words(w, "--elsewhere", s->address);
	say_words(w, "--elsewhere-port", w->ports[1]);
	for (int i = 0; i < s->n_hosts; i++)
		say_words(w, "--host", s->hosts[i]);
	say_words(w, "--certificate", s->certificate);
	say_words(w, "--key", s->key);
	say_words(w, "--clients", s->clients);
	if (s->revoked[0])
		say_words(w, "--revoked", s->revoked);
	if (s->typing)
		say_words(w, "--elsewhere-keyed", NULL);
}

static void words_of(struct words *w, const struct settings *s)
{
	*w = (struct words){.n = 0};
	snprintf(w->ports[0], sizeof w->ports[0], "%d", s->board_port);
	say_words(w, "bandtally-board", NULL);
	say_words(w, "--port", w->ports[0]);
	if (!s->board_typing)
		say_words(w, "--no-keyed", NULL);
	if (!s->board_open)
		say_words(w, "--closed", NULL);
	if (s->elsewhere.start)
		say_elsewhere(w, &s->elsewhere);
}

/* `value` goes as it is; send_object() is for what people read. */
static int send_line(struct daemon *d, const char *key, json_t *value)
{
	_cleanup_(json_drop) json_t *o = json_object();
	_cleanup_(buf_free) struct buf line = {0};
	json_object_set_new(o, "v", json_integer(1));
	json_object_set_new(o, "seq", json_integer(++d->board_seq));
	json_object_set_new(o, key, value);
	int n = json_write_canonical(o, &line);
	if (n == 0)
		n = buf_add_text(&line, "\n");
	return n < 0 ? n : child_send(d->board, line.data, line.size);
}

static int send_object(struct daemon *d, const char *key, json_t *value)
{
	name_tell_all(value);
	return send_line(d, key, value);
}

static void put_faults(const struct daemon *d, json_t *view, int32_t room)
{
	json_t *list = json_array();
	teller_faults(&d->core, list);
	for (int i = 0; i < d->n_drivers; i++) {
		const struct driver_child *dc = &d->drivers[i];
		char text[300];
		const struct room *of = station_room(&d->core.station, dc->room);
		if (!dc->fault[0] || (room && of && of->number != room))
			continue;
		snprintf(text, sizeof text, "Scanner %s%s%s: %s", dc->name, of ? " of " : "",
		         of ? of->name : "", dc->fault);
		json_array_append_new(list, name_told(text, sizeof text));
	}
	for (int i = 0; i < UNSEEN_MAX; i++) {
		const struct outbox_entry *x = &d->outbox[i];
		if (x->slip && x->trouble[0] && (!room || x->room == room))
			json_array_append_new(list,
			                      json_sprintf("Printing slip %d: %s", (int)x->slip, x->trouble));
	}
	json_object_set_new(view, "faults", list);
}

/* What a page could see: the changes, whether it is within the quiet hours, and the minutes of reminders that nobody
 * answers. */
static uint64_t to_show(const struct daemon *d)
{
	static struct unanswered list[UNANSWERED_MAX];
	struct moment now = core_now(&d->core);
	uint64_t minute =
	    station_unanswered(&d->core.station, now, list) ? (uint64_t)now.boot_ms / 60000 + 1 : 0;
	return (minute << 40) + d->core.changes * 2 + (uint64_t)core_quiet(&d->core);
}

void board_show(struct daemon *d)
{
	uint64_t now = to_show(d);
	if (!d->board || d->shown == now)
		return;
	int failed = 0;
	for (int i = 0; i < d->core.station.n_rooms; i++) {
		json_t *view = teller_room_in(&d->core, d->core.station.rooms[i].number,
		                              core_language(&d->core, d->core.station.rooms[i].number));
		put_faults(d, view, d->core.station.rooms[i].number);
		failed |= send_object(d, "view", view) < 0;
	}
	json_t *status = teller_status(&d->core);
	put_faults(d, status, 0);
	failed |= send_object(d, "status", status) < 0;
	/* Where its program does not run it is shown all when it starts. */
	if (!failed || !child_running(d->board))
		d->shown = now;
}

void board_say(struct daemon *d, const char *key, json_t *value)
{
	if (d->board)
		send_line(d, key, value);
	else
		json_decref(value);
}

void board_alive(struct daemon *d)
{
	if (d->board)
		send_object(d, "alive", json_true());
}

/* The board's program may open no file by now. */
void board_renew(struct daemon *d)
{
	const struct elsewhere_setting *s = &d->core.settings.elsewhere;
	struct pem_files files = {
	    .path = {s->certificate, s->key, s->clients, s->revoked[0] ? s->revoked : NULL}};
	struct error e = {0};
	if (!d->board || !s->start)
		return;
	json_t *texts = json_object();
	if (pem_read(&files, &e) < 0)
		json_object_set_new(texts, "fault", json_string(e.text));
	for (int i = 0; i < PEM_COUNT && !e.code; i++)
		if (files.text[i].data)
			json_object_set_new(texts, pem_word((enum pem)i), json_string(files.text[i].data));
	pem_forget(&files);
	send_line(d, "tls", texts);
	d->core.changes++; /* what is wrong with them stands among the faults of a view */
	board_show(d);
}

static void tell_where(struct daemon *d, const json_t *listening)
{
	int64_t port = json_number(listening, "port", 0), elsewhere = json_number(listening, "elsewhere", 0);
	if (port < 1 || port > PORT_MAX || elsewhere < 0 || elsewhere > PORT_MAX) {
		log_line("the board's program says that it listens at %lld and %lld, which are no ports: "
		         "that is passed over",
		         (long long)port, (long long)elsewhere);
		return;
	}
	d->board_port = (int)port;
	d->elsewhere_port = (int)elsewhere;
	log_line("the board is at http://127.0.0.1:%d/", d->board_port);
	if (d->elsewhere_port)
		log_line("the board elsewhere is at https://%s:%d/, for browsers with a certificate",
		         d->core.settings.elsewhere.hosts[0], d->elsewhere_port);
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	static const struct {
		const char *key;
		void (*take)(struct daemon *d, const json_t *value);
	} kinds[] = {{"listening", tell_where},
	             {"keyed", typing_keyed},
	             {"ticket", typing_ticket},
	             {"open", typing_open}};
	struct daemon *d = context;
	_cleanup_(json_drop) json_t *o = line ? json_read(line, size, NULL) : NULL;
	(void)c;
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (json_object_get(o, kinds[i].key))
			kinds[i].take(d, json_object_get(o, kinds[i].key));
}

static void on_started(void *context, struct child *c)
{
	struct daemon *d = context;
	(void)c;
	d->shown = 0;
	d->core.changes++;
	typing_tell(d);
	board_show(d);
}

int board_start(struct daemon *d)
{
	static const struct child_calls calls = {on_line, on_started, NULL};
	struct words w;
	if (!d->core.settings.board)
		return 0;
	words_of(&w, &d->core.settings);
	typing_start(d);
	if (d->board_socket >= 0)
		say_words(&w, "--socket", CHILD_HANDED_TEXT);
	return child_start(&d->board, &d->children, (char *const *)w.word, BOARD_LINE_MAX, 1, d->board_socket,
	                   &calls, d);
}

void board_stop(struct daemon *d)
{
	child_free(d->board);
	d->board = NULL;
}

static void become_check(const struct words *w)
{
	char self[PATH_MAX], path[PATH_MAX];
	ssize_t n = readlink("/proc/self/exe", self, sizeof self - 1);
	char *slash = n > 0 ? memrchr(self, '/', (size_t)n) : NULL;
	if (slash && snprintf(path, sizeof path, "%.*s/bandtally-board", (int)(slash - self), self) > 0)
		execv(path, (char *const *)w->word);
	log_errno(-errno, "bandtally-board: not started: install it beside bandtallyd");
	_exit(EXIT_FAILED);
}

int board_check(const struct settings *s)
{
	struct words w;
	int status;
	if (!s->elsewhere.start)
		return 0;
	words_of(&w, s);
	say_words(&w, "--check", NULL);
	pid_t pid = fork();
	if (pid == 0)
		become_check(&w);
	if (pid < 0 || waitpid(pid, &status, 0) < 0)
		return -errno;
	return WIFEXITED(status) && WEXITSTATUS(status) == EXIT_OK ? 0 : -EINVAL;
}
