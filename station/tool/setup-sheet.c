/* setup: the scanner-check sheet, which teaches the station how a scanner types. The running station learns; here it is
 * printed, and waited for. */
#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

#include "tool/client.h"
#include "tool/label.h"
#include "tool/setup-ask.h"
#include "tool/setup.h"
#include "tool/tool.h"

#define PATIENCE_MS 600000 /* as long as it takes to fetch a paper and to scan it twice */
#define A_LOOK_MS 200
#define FILE_OF_SHEET "scanner-check.pdf"

static int take_sheet(struct setup *s, const void *context, const char *value, struct error *e)
{
	static const struct {
		const char *word;
		enum setup_sheet sheet;
	} all[] = {{"print", SHEET_PRINT}, {"have", SHEET_AT_HAND}, {"later", SHEET_LATER}};
	(void)context;
	for (size_t i = 0; i < sizeof all / sizeof *all; i++)
		if (strcmp(value, all[i].word) == 0) {
			s->sheet = all[i].sheet;
			return 0;
		}
	return error_set(e, -EINVAL, "'%.40s' is none of print, have and later: give one of those", value);
}

int setup_sheet(struct setup *s)
{
	static const char asks[] = "The scanner-check sheet teaches the station how this scanner types: "
	                           "print it when the station runs "
	                           "(print), it is at hand (have), or later";
	if (!s->scanner[0] || (!s->asks && !words_given(&s->words, SETUP_OPTIONS, "sheet")))
		return EXIT_OK;
	return setup_answer(s, &(struct setup_question){"sheet", asks, take_sheet, NULL}, "print");
}

/* It is A4: on a printer that has other paper its codes would not be scanned in the right size. */
static int print_sheet(const struct setup *s)
{
	char printer[200], paper[16];
	setup_value(&s->files, "printer", "queue", printer, sizeof printer);
	setup_value(&s->files, "printer", "paper", paper, sizeof paper);
	bool prints = *printer && strcmp(paper, "a4") == 0;
	char *argv[] = {"label", "scanner-check", prints ? "--printer" : "--pdf",
	                prints ? printer : FILE_OF_SHEET, NULL};
	int n = tool_label(4, argv);
	if (n == EXIT_OK && !prints)
		puts(FILE_OF_SHEET ", in this folder: print it on A4, as large as it is.");
	return n;
}

/* Whether a profile was written since: a check that taught nothing leaves none. */
static bool learned_since(const struct timespec *begun)
{
	char path[4300];
	struct stat is;
	const struct dirent *x;
	bool learned = false;
	snprintf(path, sizeof path, "%.4000s/profiles", client_folder);
	DIR *folder = opendir(path);
	while (folder && (x = readdir(folder))) {
		const char *end = strrchr(x->d_name, '.');
		if (!end || strcmp(end, ".ini") != 0)
			continue;
		snprintf(path, sizeof path, "%.4000s/profiles/%.255s", client_folder, x->d_name);
		learned |= stat(path, &is) == 0 &&
		           (is.st_mtim.tv_sec > begun->tv_sec ||
		            (is.st_mtim.tv_sec == begun->tv_sec && is.st_mtim.tv_nsec >= begun->tv_nsec));
	}
	if (folder)
		closedir(folder);
	return learned;
}

/* Whether it runs, as the station says; what is wrong then in `fault`. */
static bool look(const char *scanner, char fault[400])
{
	struct error e;
	size_t i;
	const json_t *x;
	_cleanup_(json_drop) json_t *status = label_status(&e);
	fault[0] = 0;
	json_array_foreach(json_object_get(status, "drivers"), i, x)
	{
		if (strcmp(json_text(x, "name"), scanner) != 0)
			continue;
		snprintf(fault, 400, "%.399s", json_text(x, "fault"));
		return json_truth(x, "running");
	}
	return false;
}

/* Says once what changes. */
static void tell(const char *scanner, bool runs, const char *fault)
{
	static char told[480];
	char now[480];
	if (!runs)
		snprintf(now, sizeof now, "Plug scanner %s in.", scanner);
	else
		snprintf(now, sizeof now,
		         "%s%sScan the sheet with scanner %s, from its first code to its last.", fault,
		         *fault ? "\n" : "", scanner);
	if (strcmp(now, told) != 0)
		puts(now);
	snprintf(told, sizeof told, "%s", now);
	fflush(stdout);
}

/* Whether it is learned. */
static bool wait_for_sheet(const char *scanner)
{
	struct timespec begun;
	char fault[400];
	clock_gettime(CLOCK_REALTIME_COARSE, &begun); /* the clock of files */
	for (int ms = 0; ms < PATIENCE_MS && !ask_stopped(); ms += A_LOOK_MS) {
		bool runs = look(scanner, fault);
		if (runs && !*fault && learned_since(&begun)) {
			printf("scanner %s is learned\n", scanner);
			return true;
		}
		tell(scanner, runs, fault);
		nanosleep(&(struct timespec){.tv_nsec = A_LOOK_MS * 1000000L}, NULL);
	}
	return false;
}

int setup_teach(const struct setup *s)
{
	if (!s->scanner[0])
		return EXIT_OK;
	if (s->sheet == SHEET_LATER) {
		puts("'bandtally label scanner-check --pdf " FILE_OF_SHEET
		     "' is the sheet that teaches the station how "
		     "the scanner types: scan it when no case is open.");
		return EXIT_OK;
	}
	int n = setup_wait_for_station(s, "the scanner-check sheet", "sheet");
	if (n == EXIT_OK && s->sheet == SHEET_PRINT)
		n = print_sheet(s);
	if (n != EXIT_OK || wait_for_sheet(s->scanner))
		return n;
	fprintf(
	    stderr,
	    "bandtally: the sheet was not scanned to its end: the station is set up, and scanner %s is not "
	    "learned: scan the sheet when no case is open\n",
	    s->scanner);
	return EXIT_FAILED;
}
