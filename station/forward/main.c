/* bandtally-forward: the way to a hospital's PostgreSQL. */
#include <getopt.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/json.h"
#include "base/log.h"
#include "forward/copy.h"
#include "forward/forward-confined.h"
#include "forward/relay.h"
#include "forward/sender.h"

static const char usage[] =
    "usage: bandtally-forward --host NAME[:PORT] [--host …] --database NAME --user ROLE\n"
    "                         --certificate FILE --key FILE --authority FILE\n"
    "Sends a station's events to a hospital's PostgreSQL and brings its lists back. The station starts it, "
    "and speaks\n"
    "with it over standard input and output; see bandtallyd(8).\n"
    "  --host         one that takes writes is looked for among them, at most 8; [2001:db8::7]:5432 is an "
    "address\n"
    "  --certificate  names the role; --key has no pass phrase and is closed to other users; --authority "
    "signs the\n"
    "                 server's certificate, which must name the host\n"
    "Or, from a hospital's store to its region's, where --user may read the one and send to the other:\n"
    "       bandtally-forward --from NAME[:PORT] [--from …] [--once] and all of the above\n"
    "  --once         ends when all that is there was sent; else it looks again every five seconds\n"
    "Or, for copies of the records that --user may read ('bandtally audit collect' starts it so):\n"
    "       bandtally-forward --copy --from NAME[:PORT] [--from …] and --database … --authority\n"
    "Exit codes: 0 the station ended it, 1 failed (stderr says what, why, what to do), 2 wrong usage.\n"
    "example: bandtally-forward --host store.example --database counts --user station_01 \\\n"
    "             --certificate station.pem --key station.key --authority authority.pem\n";

#define RELAY_EVERY_MS 5000

struct wish {
	struct store_place to, from; /* from: only its hosts are its own */
	int once, copy;
};

static int add_host(struct store_place *p, const char *host)
{
	if (p->n_hosts == STORE_HOSTS)
		return -1;
	p->hosts[p->n_hosts++] = host;
	return 0;
}

static int wrong(void)
{
	fputs(usage, stderr);
	return EXIT_USAGE + 1;
}

/* 0 go on, else the exit code and 1. */
static int read_word(struct wish *w, int word)
{
	struct store_place *p = &w->to;
	switch (word) {
	case 'h':
		return add_host(p, optarg) < 0 ? wrong() : 0;
	case 'f':
		return add_host(&w->from, optarg) < 0 ? wrong() : 0;
	case 'd':
		p->database = optarg;
		return 0;
	case 'u':
		p->user = optarg;
		return 0;
	case 'c':
		p->certificate = optarg;
		return 0;
	case 'k':
		p->key = optarg;
		return 0;
	case 'a':
		p->authority = optarg;
		return 0;
	case 'o':
		w->once = 1;
		return 0;
	case 'y':
		w->copy = 1;
		return 0;
	case 'x':
	case 'v':
		fputs(word == 'x' ? usage : "bandtally-forward " BANDTALLY_VERSION "\n", stdout);
		return EXIT_OK + 1;
	default:
		return wrong();
	}
}

static int read_words(int argc, char **argv, struct wish *w)
{
	static const struct option options[] = {
	    {"host", required_argument, NULL, 'h'},
	    {"from", required_argument, NULL, 'f'},
	    {"database", required_argument, NULL, 'd'},
	    {"user", required_argument, NULL, 'u'},
	    {"certificate", required_argument, NULL, 'c'},
	    {"key", required_argument, NULL, 'k'},
	    {"authority", required_argument, NULL, 'a'},
	    {"once", no_argument, NULL, 'o'},
	    {"copy", no_argument, NULL, 'y'},
	    {"help", no_argument, NULL, 'x'},
	    {"version", no_argument, NULL, 'v'},
	    {0},
	};
	const struct store_place *p = &w->to;
	for (int o, r; (o = getopt_long(argc, argv, "", options, NULL)) >= 0;)
		if ((r = read_word(w, o)))
			return r;
	if (optind < argc || (w->copy ? !w->from.n_hosts || p->n_hosts : !p->n_hosts) || !p->database ||
	    !p->user || !p->certificate || !p->key || !p->authority)
		return wrong();
	struct store_place from = *p;
	memcpy(from.hosts, w->from.hosts, sizeof from.hosts);
	from.n_hosts = w->from.n_hosts;
	w->from = from;
	return 0;
}

/* What libpq would take from there is said by no setting of ours. */
static void forget_settings(void)
{
	extern char **environ;
	for (char **e = environ; *e;)
		if (strncmp(*e, "PG", 2) == 0) {
			char name[64];
			snprintf(name, sizeof name, "%.*s", (int)strcspn(*e, "="), *e);
			if (unsetenv(name) < 0 || getenv(name))
				e++; /* longer than any that libpq knows */
		} else {
			e++;
		}
}

int main(int argc, char **argv)
{
	struct wish w = {0};
	struct error e = {0};
	log_open("bandtally-forward");
	int r = read_words(argc, argv, &w);
	if (r)
		return r - 1;
	signal(SIGPIPE, SIG_IGN);
	json_watch_memory();
	forget_settings();
	if (confine_forward(&w.to, &w.from, &e) < 0) {
		log_warn(LOG_RIGHTS, "%s", e.text);
		return EXIT_FAILED;
	}
	if (w.copy)
		return copy_run(&w.from, STDIN_FILENO, STDOUT_FILENO) < 0 ? EXIT_FAILED : EXIT_OK;
	if (w.from.n_hosts)
		return relay_run(&w.from, &w.to, w.once ? 0 : RELAY_EVERY_MS) < 0 ? EXIT_FAILED : EXIT_OK;
	int n = sender_run(&w.to, STDIN_FILENO, STDOUT_FILENO);
	if (n < 0)
		log_warn_errno(LOG_PROGRAM, n, "the station's pipe cannot be read");
	return n < 0 ? EXIT_FAILED : EXIT_OK;
}
