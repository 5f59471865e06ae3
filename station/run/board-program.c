#include "run/board-program.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/log.h"
#include "base/own.h"
#include "run/asked.h"
#include "run/board.h"
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

static void tell_where(struct daemon *d, const json_t *listening)
{
	int64_t port = json_number(listening, "port", 0), elsewhere = json_number(listening, "elsewhere", 0);
	if (port < 1 || port > PORT_MAX || elsewhere < 0 || elsewhere > PORT_MAX) {
		log_warn(LOG_PROGRAM,
		         "the board's program says that it listens at %lld and %lld, which are no ports: "
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

/* The pages have it from the board itself; this is for status and those who watch. */
static void take_amiss(struct daemon *d, const json_t *text)
{
	snprintf(d->board_amiss, sizeof d->board_amiss, "%s",
	         json_is_string(text) ? json_string_value(text) : "");
}

static void on_line(void *context, struct child *c, const char *line, size_t size)
{
	static const struct {
		const char *key;
		void (*take)(struct daemon *d, const json_t *value);
	} kinds[] = {{"listening", tell_where}, {"amiss", take_amiss},  {"keyed", typing_keyed},
	             {"ticket", typing_ticket}, {"ask", asked_at_page}, {"open", typing_open}};
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
	d->board_amiss[0] = 0;
	d->reports.from = NULL; /* what it had of them is gone */
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
	char path[PATH_MAX];
	if (own_path(path, sizeof path, "bandtally-board") == 0)
		execv(path, (char *const *)w->word);
	log_warn_errno(LOG_PROGRAM, -errno, "bandtally-board: not started: install it beside bandtallyd");
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
