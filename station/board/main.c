/* bandtally-board: shows the count. It listens on the loopback address, opens no file, keeps nothing, and
 * ends when the daemon that started it does. */
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
#include "board/confine.h"
#include "board/server.h"

#define FDS_MAX 320

static const char help[] = "bandtally-board [--port N] [--no-keyed]    serve the board's page on 127.0.0.1 "
                           "(8417; 0: any free port)\n"
                           "bandtally-board --help | --version\n"
                           "\n"
                           "bandtallyd starts it and writes the rooms' state to its standard input as JSON "
                           "lines (board/feed.h); codes\n"
                           "that were typed on the page go to its standard output. --no-keyed switches "
                           "typing off. It ends with its\n"
                           "input. Exit 0: the input ended; 1: failed; 2: wrong usage.\n";

#if defined(__SANITIZE_ADDRESS__)
#define WATCHED_MEMORY 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define WATCHED_MEMORY 1
#endif
#endif
#ifdef WATCHED_MEMORY
/* The search for leaks at the end starts a thread, which the sandbox forbids. */
const char *__asan_default_options(void);
const char *__asan_default_options(void)
{
	return "detect_leaks=0";
}
#endif

struct wish {
	int port;
	bool keyed_entry;
};

/* 0, or an exit code plus one. */
static int read_words(int argc, char **argv, struct wish *w)
{
	static const struct option words[] = {{"port", required_argument, NULL, 'p'},
	                                      {"no-keyed", no_argument, NULL, 'k'},
	                                      {"help", no_argument, NULL, 'h'},
	                                      {"version", no_argument, NULL, 'v'},
	                                      {NULL, 0, NULL, 0}};
	for (int c; (c = getopt_long(argc, argv, "", words, NULL)) != -1;) {
		char *end = NULL;
		if (c == 'k') {
			w->keyed_entry = false;
		} else if (c == 'h' || c == 'v') {
			fputs(c == 'h' ? help : "bandtally-board " BANDTALLY_VERSION "\n", stdout);
			return EXIT_OK + 1;
		} else if (c == 'p') {
			long n = strtol(optarg, &end, 10);
			if (*end || !*optarg || n < 0 || n > 65535) {
				log_line("--port: '%s' is no number of 0 to 65535: give one, or leave it out",
				         optarg);
				return EXIT_USAGE + 1;
			}
			w->port = (int)n;
		} else {
			return EXIT_USAGE + 1;
		}
	}
	if (optind == argc)
		return 0;
	log_line("'%s': not understood: see bandtally-board --help", argv[optind]);
	return EXIT_USAGE + 1;
}

static void on_end(evutil_socket_t signal_number, short what, void *base)
{
	(void)signal_number;
	(void)what;
	event_base_loopexit(base, NULL);
}

static int serve(const struct wish *w, struct event_base *base, struct server_parts *p)
{
	struct error e = {0};
	struct server *s = server_new(p, w->port, &e);
	int r = s ? confine(&e) : e.code;
	if (r < 0)
		log_line("%s", e.text);
	else if ((r = feed_listening(p->feed, server_port(s))) < 0)
		log_errno(r, "standard output: the port cannot be told");
	else
		event_base_dispatch(base);
	server_free(s);
	return r < 0 ? EXIT_FAILED : EXIT_OK;
}

int main(int argc, char **argv)
{
	struct wish w = {.port = 8417, .keyed_entry = true};
	log_open("bandtally-board");
	int r = read_words(argc, argv, &w);
	if (r)
		return r - 1;
	signal(SIGPIPE, SIG_IGN);
	setrlimit(RLIMIT_NOFILE, &(struct rlimit){FDS_MAX, FDS_MAX});
	struct event_base *base = event_base_new();
	struct event *end = base ? evsignal_new(base, SIGTERM, on_end, base) : NULL;
	struct hub *hub = hub_new(w.keyed_entry);
	struct feed *feed = base && hub ? feed_new(base, STDIN_FILENO, STDOUT_FILENO, hub) : NULL;
	struct guard *guard = base ? guard_new(base, FDS_MAX) : NULL;
	int code = EXIT_FAILED;
	if (end && feed && guard && event_add(end, NULL) == 0) {
		struct server_parts parts = {base, hub, feed, guard, w.keyed_entry};
		code = serve(&w, base, &parts);
	} else {
		log_line("not started: standard input cannot be waited for, or no memory: give it a pipe");
	}
	guard_free(guard);
	feed_free(feed);
	hub_free(hub);
	if (end)
		event_free(end);
	if (base)
		event_base_free(base);
	return code;
}
