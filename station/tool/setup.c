/* setup: a first start without a manual. What was settled is not asked again. */
#include "tool/setup.h"

#include <stdio.h>
#include <unistd.h>

#include "tool/client.h"
#include "tool/setup-ask.h"
#include "tool/tool.h"

static const char setup_usage[] =
    "usage: bandtally setup [--site XY] [--name NAME] [--station N] [--room NAME]… [--printer QUEUE] "
    "[--paper SIZE]\n"
    "                       [--scanner DEVICE] [--sheet print | have | later] [--badges KIND=N,…] [--yes] "
    "[--again]\n"
    "                       [--new-letters]\n"
    "Makes a fresh installation a station that works: asks for what is not settled yet, and writes it "
    "into station.ini once\n"
    "all is answered. What is given here is not asked. Ctrl-C, or the end of the input, leaves everything as "
    "it was.\n"
    "  --site XY     the hospital's two letters: they stand in every code that it prints\n"
    "  --name NAME   what the site is called on board, slips and cards\n"
    "  --station N   which of the hospital's stations this is, 0 to 99\n"
    "  --room NAME   a room; each once. One that is not there yet gets the next number; none is taken away\n"
    "  --printer QUEUE   of the slips: a queue of CUPS, an address (ipp://…), or none. At a terminal a page "
    "with "
    "a code is printed,\n"
    "                and what stands on it is asked for\n"
    "  --paper SIZE  what lies in it: roll80, a6, a5 or a4\n"
    "  --scanner DEVICE   what is plugged in (/dev/input/event7), or VENDOR:PRODUCT[:SERIAL] as 1209:b0c0, "
    "or "
    "none: listed in\n"
    "                scanners.ini for the first room. At a terminal: plug it in when it is asked for\n"
    "  --sheet WORD  how that scanner is taught: print prints the scanner-check sheet once the station runs "
    "(as "
    "scanner-check.pdf where\n"
    "                the printer has no A4), have: it is at hand; both wait until it was scanned, ten "
    "minutes "
    "at most. later: not now,\n"
    "                as without a terminal where this is not given\n"
    "  --badges KIND=N,…   the first badges, by role codes alone: registered=4 (practitioners), "
    "practitioner=1 "
    "(not registered),\n"
    "                surgeon=2, nurse-in-charge=1; or none. The station must run for them\n"
    "  --yes         asks nothing, and takes what the settings have where an answer is not given\n"
    "  --again       asks what was settled as well, and offers what was answered then\n"
    "  --new-letters   the site's letters may become other ones, though badges, cards, digit cards and "
    "labels "
    "with the old ones were given\n"
    "                out: all of them are refused then, and must be printed anew. At a terminal it is asked; "
    "--yes does not say it\n"
    "Without a terminal nothing is asked either: where an answer is missing then, one sentence says which, "
    "nothing is written,\n"
    "and the exit code is 4.\n"
    "example: sudo bandtally setup\n"
    "         sudo bandtally setup --site HU --name 'Hand unit' --station 1 --room 'Theatre 1' --printer "
    "slips "
    "--paper a5 \\\n"
    "             --scanner 1209:b0c0 --badges registered=4,surgeon=2 --yes\n";

/* All that is asked before anything is written. */
static int answer_all(struct setup *s)
{
	static int (*const steps[])(struct setup *) = {setup_site, setup_rooms, setup_printer, setup_scanner,
	                                               setup_badges};
	int n = EXIT_OK;
	for (size_t i = 0; i < sizeof steps / sizeof *steps && n == EXIT_OK; i++)
		n = steps[i](s);
	return n == EXIT_OK && ask_stopped() ? setup_stopped() : n;
}

static int set_up(struct setup *s)
{
	struct error e = {0};
	if (setup_files_open(&s->files, &e) < 0)
		return client_fail(&e);
	int n = answer_all(s);
	if (n != EXIT_OK)
		return n;
	int wrote = setup_write(&s->files, &e);
	if (wrote < 0)
		return client_fail(&e);
	if (!wrote && !setup_wants_badges(s))
		puts("nothing is left to settle (--again asks it anew)");
	n = wrote ? setup_renew(s) : EXIT_OK;
	if (n == EXIT_OK)
		n = setup_make_badges(s);
	return n == EXIT_OK ? setup_teach(s) : n;
}

int tool_setup(int argc, char **argv)
{
	struct setup s = {0};
	int r = words_read(&s.words, argc, argv, SETUP_OPTIONS, setup_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (s.words.n_rest)
		return words_beyond(s.words.rest[0], setup_usage);
	s.takes = words_given(&s.words, SETUP_OPTIONS, "yes");
	s.again = words_given(&s.words, SETUP_OPTIONS, "again");
	s.asks = !s.takes && isatty(STDIN_FILENO) && isatty(STDOUT_FILENO);
	ask_begin();
	r = set_up(&s);
	setup_files_close(&s.files);
	return r;
}
