/* The program round every driver: options, device, sandbox, hello, and how it ends. */
#include <errno.h>
#include <getopt.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/log.h"
#include "drivers/driver.h"
#include "drivers/sandbox.h"

#define OPTIONS_MAX 32

enum {
	OPTION_HELP = 1,
	OPTION_VERSION,
};

static void join_options(struct option all[OPTIONS_MAX])
{
	size_t n = 0;
	all[n++] = (struct option){"help", no_argument, NULL, OPTION_HELP};
	all[n++] = (struct option){"version", no_argument, NULL, OPTION_VERSION};
	for (const struct option *o = this_driver.options; o && o->name && n < OPTIONS_MAX - 1; o++)
		all[n++] = *o;
	all[n] = (struct option){0};
}

static int usage_error(const char *sentence)
{
	log_line("%s", sentence);
	log_line("try --help");
	return EXIT_USAGE;
}

/* -1 to go on, or the exit code. */
static int read_options(void *state, int argc, char **argv)
{
	struct option all[OPTIONS_MAX];
	struct error e = {0};
	int val;
	join_options(all);
	while ((val = getopt_long(argc, argv, "", all, NULL)) != -1) {
		switch (val) {
		case OPTION_HELP:
			printf("usage: scan-%s %s", this_driver.name, this_driver.usage);
			return EXIT_OK;
		case OPTION_VERSION:
			printf("scan-%s %s\n", this_driver.name, BANDTALLY_VERSION);
			return EXIT_OK;
		case '?':
			log_line("try --help");
			return EXIT_USAGE;
		default:
			if (this_driver.option(state, val, optarg, &e) < 0)
				return usage_error(e.text);
		}
	}
	return -1;
}

/* The sentence goes both ways: to the daemon for the board, and to whoever runs the machine. */
static int failed(struct wire *out, const char *code, const struct error *e)
{
	wire_fault(out, code, e->text);
	log_warn(LOG_SCANNER, "%s", e->text);
	return EXIT_FAILED;
}

static int drive(void *state, int count, char *const *words)
{
	struct wire out = {.fd = STDOUT_FILENO};
	struct error e = {0};
	int r = this_driver.open(state, count, words, &e);
	if (r == DRIVER_USAGE)
		return usage_error(e.text);
	if (r < 0)
		return failed(&out, "open", &e);
	if (sandbox_enter(this_driver.ioctl_type, &e) < 0)
		return failed(&out, "sandbox", &e);
	r = wire_hello_whole(
	    &out,
	    &(struct wire_hello){.driver = this_driver.name,
	                         .device = this_driver.device(state),
	                         .uncertain = this_driver.uncertain ? this_driver.uncertain(state) : NULL,
	                         .pictures = this_driver.pictures});
	if (r == 0)
		r = this_driver.run(state, &out, &e);
	else
		error_set(&e, r, "the first line was not sent: %s: start the driver again", strerror(-r));
	if (r == -EPIPE || wire_reader_gone(&out)) {
		log_line("nobody reads the lines any more: ended");
		return EXIT_FAILED;
	}
	if (r < 0)
		return failed(&out, r == -ETIMEDOUT ? "stalled" : "lost", &e);
	return r == DRIVER_FAULTS ? EXIT_FAILED : EXIT_OK;
}

int main(int argc, char **argv)
{
	char name[64];
	snprintf(name, sizeof name, "scan-%s", this_driver.name);
	log_open(name);
	/* A daemon that has gone is an answer of write(), not a death without a word. */
	signal(SIGPIPE, SIG_IGN);
	void *state = this_driver.new();
	if (!state) {
		log_warn(LOG_SCANNER, "no memory: end other programs");
		return EXIT_FAILED;
	}
	int r = read_options(state, argc, argv);
	if (r < 0)
		r = drive(state, argc - optind, argv + optind);
	this_driver.free(state);
	return r;
}
