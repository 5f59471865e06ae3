/* bandtally-board: shows the count. It listens on the loopback address, and elsewhere by TLS where it is told
 * to; once it does it opens no file, keeps nothing, and ends when the daemon that started it does. */
#include <errno.h>
#include <event2/event.h>
#include <getopt.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

#include "base/log.h"
#include "board/board-confined.h"
#include "board/catalogues.h"
#include "board/server.h"

#define FDS_MAX 320

static const char help[] =
    "bandtally-board [--port N] [--no-keyed] [--closed]\n"
    "                                           serve the board's page on 127.0.0.1 (8417; 0: any free "
    "port)\n"
    "                [--socket N]               on this descriptor instead, which listens already\n"
    "                [--elsewhere ADDRESS --elsewhere-port N --host NAME… --certificate FILE --key FILE\n"
    "                 --clients FILE [--revoked FILE] [--elsewhere-keyed]]\n"
    "                                           serve it there as well, by TLS, to browsers that call it by "
    "one\n"
    "                                           of the names and show a certificate signed by one of "
    "--clients\n"
    "                                           and on no list of --revoked\n"
    "bandtally-board … --check                  only read certificate, key, clients and revoked, and say "
    "what is\n"
    "                                           wrong\n"
    "bandtally-board --help | --version\n"
    "\n"
    "bandtallyd starts it, with the words that station.ini asks for, and writes the rooms' state to its "
    "standard\n"
    "input as JSON lines (board/feed.h); codes that were typed on the page go to its standard output. "
    "--no-keyed\n"
    "switches typing off on this machine, --elsewhere-keyed on elsewhere; it needs a ticket that the station "
    "gave.\n"
    "--closed: on this machine nothing is shown without one either. What is wrong with the board elsewhere\n"
    "stands on the board here among the faults. It ends with its input. Exit 0: the input ended; 1: failed;\n"
    "2: wrong usage.\n"
    "example: bandtally-board --check --elsewhere 192.0.2.7 --elsewhere-port 8443 --host board.example \\\n"
    "             --certificate board.pem --key board.key --clients clients.pem\n";

struct wish {
	int port;
	struct hub_rules rules;
	int socket;
	bool check;
	struct elsewhere elsewhere;
};

static int read_port(int *out, const char *word, const char *text)
{
	char *end = NULL;
	long n = strtol(text, &end, 10);
	if (*end || !*text || n < 0 || n > 65535) {
		log_line("%s: '%s' is no number of 0 to 65535: give one, or leave it out", word, text);
		return EXIT_USAGE + 1;
	}
	*out = (int)n;
	return 0;
}

/* Each word's value goes where it belongs. 0, or an exit code plus one. */
static int read_word(struct wish *w, int c)
{
	struct elsewhere *e = &w->elsewhere;
	switch (c) {
	case 'p':
		return read_port(&w->port, "--port", optarg);
	case 's':
		return read_port(&w->socket, "--socket", optarg);
	case 'o':
		return read_port(&e->port, "--elsewhere-port", optarg);
	case 'k':
		w->rules.typing[HUB_HERE] = false;
		return 0;
	case 't':
		w->rules.typing[HUB_ELSEWHERE] = true;
		return 0;
	case 'l':
		w->rules.closed[HUB_HERE] = true;
		return 0;
	case 'e':
		e->address = optarg;
		return 0;
	case 'n':
		if (e->names.count == GUARD_NAMES_MAX) {
			log_line("--host: more than %d names: give fewer", GUARD_NAMES_MAX);
			return EXIT_USAGE + 1;
		}
		e->names.name[e->names.count++] = optarg;
		return 0;
	case 'c':
		e->files.path[PEM_CERTIFICATE] = optarg;
		return 0;
	case 'y':
		e->files.path[PEM_KEY] = optarg;
		return 0;
	case 'a':
		e->files.path[PEM_CLIENTS] = optarg;
		return 0;
	case 'r':
		e->files.path[PEM_REVOKED] = optarg;
		return 0;
	case 'x':
		w->check = true;
		return 0;
	case 'h':
	case 'v':
		fputs(c == 'h' ? help : "bandtally-board " BANDTALLY_VERSION "\n", stdout);
		return EXIT_OK + 1;
	default:
		return EXIT_USAGE + 1;
	}
}

/* 0, or an exit code plus one. */
static int read_words(int argc, char **argv, struct wish *w)
{
	static const struct option words[] = {{"port", required_argument, NULL, 'p'},
	                                      {"socket", required_argument, NULL, 's'},
	                                      {"no-keyed", no_argument, NULL, 'k'},
	                                      {"closed", no_argument, NULL, 'l'},
	                                      {"elsewhere", required_argument, NULL, 'e'},
	                                      {"elsewhere-port", required_argument, NULL, 'o'},
	                                      {"elsewhere-keyed", no_argument, NULL, 't'},
	                                      {"host", required_argument, NULL, 'n'},
	                                      {"certificate", required_argument, NULL, 'c'},
	                                      {"key", required_argument, NULL, 'y'},
	                                      {"clients", required_argument, NULL, 'a'},
	                                      {"revoked", required_argument, NULL, 'r'},
	                                      {"check", no_argument, NULL, 'x'},
	                                      {"help", no_argument, NULL, 'h'},
	                                      {"version", no_argument, NULL, 'v'},
	                                      {NULL, 0, NULL, 0}};
	const struct elsewhere *e = &w->elsewhere;
	for (int c, r; (c = getopt_long(argc, argv, "", words, NULL)) != -1;)
		if ((r = read_word(w, c)))
			return r;
	if (optind < argc) {
		log_line("'%s': not understood: see bandtally-board --help", argv[optind]);
		return EXIT_USAGE + 1;
	}
	const char *const *path = e->files.path;
	int given =
	    !!e->address + !!e->names.count + !!path[PEM_CERTIFICATE] + !!path[PEM_KEY] + !!path[PEM_CLIENTS];
	if (given == 5 || (given == 0 && !path[PEM_REVOKED] && !w->check))
		return 0;
	log_line("--elsewhere needs --host, --certificate, --key and --clients, and they need it: give all");
	return EXIT_USAGE + 1;
}

static void on_end(evutil_socket_t signal_number, short what, void *base)
{
	(void)signal_number;
	(void)what;
	event_base_loopexit(base, NULL);
}

static int serve_elsewhere(struct elsewhere *w, struct server *s, struct error *e)
{
	int port = w->address ? pem_read(&w->files, e) : 0;
	if (port == 0 && w->address)
		port = server_open_elsewhere(s, w, e);
	pem_forget(&w->files);
	return port;
}

/* The count goes on without the board elsewhere, so what is wrong there is told here and ends nothing. */
static void tell_amiss(struct server_parts *p, const struct error *e)
{
	if (e->text[0])
		log_warn(LOG_BOARD, "%s", e->text);
	hub_fault(p->hub, e->text);
	int r = feed_amiss(p->feed, e->text);
	if (r < 0)
		log_warn_errno(LOG_PROGRAM, r, "standard output: what is wrong cannot be told");
}

struct renewal {
	struct server_parts *parts;
	struct server *server;
	struct pem_files *files;
};

/* Of the board elsewhere, from the daemon. What is wrong is shown, and what was read before goes on. */
static void on_tls(void *context, const json_t *tls)
{
	struct renewal *x = context;
	struct error e = {0};
	const char *fault = json_text(tls, "fault");
	int r = 0;
	for (int i = 0; i < PEM_COUNT && r == 0; i++)
		r = buf_add_text(&x->files->text[i], json_text(tls, pem_word((enum pem)i)));
	if (r < 0)
		error_set(&e, r, PEM_WHERE "not read again: no memory: close other programs");
	else
		r = *fault ? error_set(&e, -EINVAL, "%s", fault)
		           : server_renew_elsewhere(x->server, x->files, &e);
	pem_forget(x->files);
	tell_amiss(x->parts, &e);
	if (r > 0) {
		log_line(PEM_WHERE "it can be opened now: started anew");
		event_base_loopexit(x->parts->base, NULL);
	}
}

static int serve(struct wish *w, struct server_parts *p)
{
	struct error e = {0}, amiss = {0};
	struct server *s = server_new(p, w->port, &e);
	int elsewhere = s ? serve_elsewhere(&w->elsewhere, s, &amiss) : 0;
	struct renewal renewal = {p, s, &w->elsewhere.files};
	int r = s ? confine_board(&e) : e.code;
	if (r < 0)
		log_warn(LOG_BOARD, "%s", e.text);
	else if ((r = feed_listening(p->feed, server_port(s), elsewhere)) < 0)
		log_warn_errno(LOG_PROGRAM, r, "standard output: the port cannot be told");
	else {
		if (elsewhere < 0)
			tell_amiss(p, &amiss);
		feed_on_tls(p->feed, w->elsewhere.address ? on_tls : NULL, &renewal);
		event_base_dispatch(p->base);
	}
	server_free(s);
	return r < 0 ? EXIT_FAILED : EXIT_OK;
}

static int check(struct pem_files *files)
{
	struct error e = {0};
	struct tls *tls = pem_read(files, &e) == 0 ? tls_new(files, &e) : NULL;
	pem_forget(files);
	if (!tls)
		log_warn(LOG_BOARD, "%s", e.text);
	tls_free(tls);
	return tls ? EXIT_OK : EXIT_FAILED;
}

int main(int argc, char **argv)
{
	struct wish w = {.port = 8417,
	                 .rules.typing = {[HUB_HERE] = true},
	                 .socket = -1,
	                 .elsewhere = {.port = 8418, .names = {.scheme = "https", .usual_port = 443}}};
	log_open("bandtally-board");
	int r = read_words(argc, argv, &w);
	if (r)
		return r - 1;
	if (w.check)
		return check(&w.elsewhere.files);
	signal(SIGPIPE, SIG_IGN);
	setrlimit(RLIMIT_NOFILE, &(struct rlimit){FDS_MAX, FDS_MAX});
	struct event_base *base = event_base_new();
	struct event *end = base ? evsignal_new(base, SIGTERM, on_end, base) : NULL;
	struct hub *hub = hub_new(&w.rules);
	struct waiting *waiting = waiting_new();
	struct reports *reports = reports_new();
	struct feed *feed =
	    base && hub && waiting && reports
	        ? feed_new(base, STDIN_FILENO, STDOUT_FILENO, &(struct feed_to){hub, waiting, reports})
	        : NULL;
	struct guard *guard = base ? guard_new(base, FDS_MAX) : NULL;
	int code = EXIT_FAILED;
	if (end && feed && guard && event_add(end, NULL) == 0) {
		struct catalogues catalogues;
		struct server_parts parts = {base, hub, feed, waiting, guard, &catalogues, reports, w.socket};
		catalogues_read(&catalogues);
		code = serve(&w, &parts);
		catalogues_free(&catalogues);
	} else {
		log_warn(LOG_PROGRAM,
		         "not started: standard input cannot be waited for, or no memory: give it a pipe");
	}
	guard_free(guard);
	feed_free(feed);
	waiting_free(waiting);
	reports_free(reports);
	hub_free(hub);
	if (end)
		event_free(end);
	if (base)
		event_base_free(base);
	return code;
}
