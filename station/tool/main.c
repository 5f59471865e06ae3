/* bandtally: the command for stores, audit and administration, and for whoever must type a code. */
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

#include "base/error.h"
#include "base/log.h"
#include "tool/client.h"
#include "tool/tool.h"

static const struct {
	const char *name;
	int (*run)(int argc, char **argv);
	const char *what;
} commands[] = {
#define X(name, what) {#name, tool_##name, what},
    COMMANDS(X)
#undef X
};

static int is_called(const char *name, const char *given)
{
	for (; *name && *given == (*name == '_' ? '-' : *name); name++)
		given++;
	return !*name && !*given;
}

static void print_command(FILE *out, const char *name, const char *what)
{
	char called[20];
	snprintf(called, sizeof called, "%s", name);
	for (char *c = called; *c; c++)
		*c = *c == '_' ? '-' : *c;
	fprintf(out, "  %-12s %s\n", called, what);
}

static void usage(FILE *out)
{
	fprintf(out, "usage: bandtally [--data DIR] COMMAND …     'bandtally COMMAND --help' says more\n");
	for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
		print_command(out, commands[i].name, commands[i].what);
	fprintf(
	    out,
	    "First steps: setup, catalogue import, staff add, label badges, label digits, label cards, label "
	    "paper-sheet.\n"
	    "example: bandtally label cards --room 1 --pdf cards.pdf\n"
	    "DIR is the station's data folder (default %s).\n"
	    "Exit codes: 0 done or accepted, 1 failed, 2 wrong usage, 3 the station refused, 4 it asks "
	    "something first, or setup lacks an answer.\n",
	    client_folder);
}

/* Half of an answer is none, but whoever reads it through a pipe may have enough before its end. */
static int told_whole(int code)
{
	struct pollfd out = {.fd = 1, .events = POLLOUT};
	int failed = fflush(stdout) != 0 || ferror(stdout);
	if (!failed || code != EXIT_OK || (poll(&out, 1, 0) == 1 && out.revents & POLLERR))
		return code;
	fputs("bandtally: not all of it could be written: make room where it goes. What was to be entered is "
	      "entered: look "
	      "at it before the command is given again\n",
	      stderr);
	return EXIT_FAILED;
}

int main(int argc, char **argv)
{
	int at = 1;
	log_open("bandtally");
	signal(SIGPIPE, SIG_IGN);
	if (argc > 1 && strcmp(argv[1], "--data") == 0) {
		client_folder = argc > 2 ? argv[2] : "";
		at = 3;
	} else if (argc > 1 && strncmp(argv[1], "--data=", 7) == 0) {
		client_folder = argv[1] + 7;
		at = 2;
	}
	if (!*client_folder) {
		fprintf(
		    stderr,
		    "bandtally: DIR, the data folder behind --data, is missing: see 'bandtally --help'\n");
		return EXIT_USAGE;
	}
	if (at < argc && (strcmp(argv[at], "--help") == 0 || strcmp(argv[at], "--version") == 0)) {
		if (argv[at][2] == 'h')
			usage(stdout);
		else
			puts("bandtally " BANDTALLY_VERSION);
		return EXIT_OK;
	}
	for (size_t i = 0; at < argc && i < sizeof commands / sizeof *commands; i++)
		if (is_called(commands[i].name, argv[at]))
			return told_whole(commands[i].run(argc - at, argv + at));
	if (at < argc)
		fprintf(stderr, "bandtally: '%s' is no command: see below\n", argv[at]);
	else
		fprintf(stderr, "bandtally: COMMAND is missing: see below\n");
	usage(stderr);
	return EXIT_USAGE;
}
