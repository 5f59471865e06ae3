/* audit report: what a month, quarter or year shows, or days that are named. */
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "base/clock.h"
#include "report/days.h"
#include "tool/audit-give.h"
#include "tool/audit-language.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/print.h"
#include "tool/report-central.h"
#include "tool/report-make.h"
#include "tool/report-page.h"
#include "tool/words.h"

static const char options[] =
    "file= central= summary= from= to= month= quarter= year= room= list= language= json csv pdf= svg= page=";
static const char usage[] =
    "usage: bandtally audit report (--month YYYY-MM | --quarter YYYY-Q | --year YYYY | --from DAY --to DAY)\n"
    "                              [--room N] [--list CSV] (--json | --csv | --pdf FILE | --svg FOLDER | "
    "--page FILE)\n"
    "What the cases of these days show, from one document: as JSON, as CSV, on paper, or its charts alone "
    "as\n"
    "pictures, or as a page for a browser, whole in one file. Quarters are 2026-1 to 2026-4; a DAY is as in "
    "2026-03-31, and both are within.\n"
    "  --list CSV      a theatre list, to set beside it what was planned: the heads date,room,slot,digit and "
    "no\n"
    "                  other. It is kept beneath ~/.local/share/bandtally for later reports; a later list "
    "takes "
    "the\n"
    "                  place of what was kept of its rooms and days; 'none' sets none beside it\n"
    "  --file RECORD   another record; without it a running station is asked for a copy\n"
    "  --central FOLDER  of all stations whose copies 'bandtally audit collect' keeps there, together; for "
    "one "
    "room or\n"
    "                  a theatre list take one of them: --file FOLDER/BC-01.db\n"
    "  --language CODE its words; without it those of the running station's site, else English\n"
    "  --summary FILE  where one row a case is kept for the next report (default: beneath "
    "~/.cache/bandtally);\n"
    "                  'none' keeps nothing\n"
    "How long the summary took, and the report, is said on stderr.\n"
    "Exit codes: 0 made, 1 failed, 2 wrong usage.\n";

/* --- which days ------------------------------------------------------------------------------------------------ */

static int32_t read_day(const char *text)
{
	int y, m, d, used = 0;
	if (!text || strlen(text) != 10 || sscanf(text, "%4d-%2d-%2d%n", &y, &m, &d, &used) != 3 ||
	    used != 10)
		return 0;
	int32_t day = y * 10000 + m * 100 + d;
	return day_exists(day) ? day : 0;
}

static int is_month(const char *text, int *y, int *n)
{
	int used = 0;
	return sscanf(text, "%4d-%2d%n", y, n, &used) == 2 && used == 7 && !text[7] && *n >= 1 && *n <= 12;
}

static int is_quarter(const char *text, int *y, int *n)
{
	int used = 0;
	return sscanf(text, "%4d-%1d%n", y, n, &used) == 2 && used == 6 && !text[6] && *n >= 1 && *n <= 4;
}

static int is_year(const char *text, int *y)
{
	int used = 0;
	return sscanf(text, "%4d%n", y, &used) == 1 && used == 4 && !text[4];
}

/* 0 and the days that are meant; else EXIT_USAGE after a sentence. */
static int read_span(const struct words *w, struct source_span *span)
{
	const char *month = words_value(w, options, "month"), *quarter = words_value(w, options, "quarter"),
	           *year = words_value(w, options, "year"), *from = words_value(w, options, "from"),
	           *to = words_value(w, options, "to");
	int y, n;
	if (!!month + !!quarter + !!year + (from || to) != 1 || !from != !to)
		return words_choose("give the days: one of --month, --quarter, --year, or --from with --to",
		                    usage);
	if (month && !is_month(month, &y, &n))
		return words_not("--month", month, "a month, as 2026-03", usage);
	if (quarter && !is_quarter(quarter, &y, &n))
		return words_not("--quarter", quarter, "a quarter, 2026-1 to 2026-4", usage);
	if (year && !is_year(year, &y))
		return words_not("--year", year, "a year, as 2026", usage);
	if (month)
		*span = days_of_months(y, n, n);
	else if (quarter)
		*span = days_of_months(y, 3 * n - 2, 3 * n);
	else if (year)
		*span = days_of_months(y, 1, 12);
	else
		*span = (struct source_span){read_day(from), read_day(to)};
	if (from && to && !span->from)
		return words_not("--from", from, "a day, as 2026-03-31", usage);
	if (from && to && !span->to)
		return words_not("--to", to, "a day, as 2026-03-31", usage);
	if (from && to && span->from > span->to)
		return words_not("--to", to, "no earlier than --from", usage);
	return 0;
}

/* --- all of it --------------------------------------------------------------------------------------------------------- */

/* Of few cases a report has no chart: then nothing would be written, and nobody told. */
static int give_pictures(const json_t *doc, const char *folder)
{
	size_t i, all = 0;
	json_t *section;
	struct stat is;
	if (stat(folder, &is) < 0 || !S_ISDIR(is.st_mode)) {
		fprintf(stderr, "bandtally: %s is no folder: make it, or give another\n", folder);
		return EXIT_FAILED;
	}
	json_array_foreach(json_object_get((json_t *)doc, "sections"), i, section) all +=
	    json_array_size(json_object_get(section, "charts"));
	if (!all) {
		fputs("bandtally: no picture was written: so few cases have no chart; give a longer time, or "
		      "no "
		      "--room\n",
		      stderr);
		return EXIT_OK;
	}
	return print_document(doc, "--svg", folder);
}

static int give(const struct words *w, const struct language *language, const json_t *doc)
{
	const char *svg = words_value(w, options, "svg");
	const char *page = words_value(w, options, "page");
	struct error e = {0};
	if (page)
		return report_page(doc, language, page, &e) < 0 ? client_fail(&e) : EXIT_OK;
	return svg ? give_pictures(doc, svg) : audit_give(doc, w, options);
}

static int make_central(const char *folder, const struct language *language, struct source_span span,
                        json_t **doc, struct error *e)
{
	struct central *c = NULL;
	int n = central_open(&c, folder, language, e);
	if (n == 0)
		n = central_make(c, span, doc, e);
	central_close(c);
	return n;
}

static int make_one(const struct words *w, const struct language *language, struct source_span span, int room,
                    json_t **doc, struct error *e)
{
	struct report_base base;
	int n = report_base_open(&base,
	                         &(struct report_from){.language = language,
	                                               .file = words_value(w, options, "file"),
	                                               .summary = words_value(w, options, "summary"),
	                                               .list = words_value(w, options, "list")},
	                         e);
	if (n == 0)
		n = report_make(&base, span, room, doc, e);
	report_base_close(&base);
	return n;
}

static int make(const struct words *w, const struct language *language, struct source_span span, int room,
                json_t **doc, struct error *e)
{
	const char *central = words_value(w, options, "central");
	int64_t from = clock_now().boot_ms;
	int n = central ? make_central(central, language, span, doc, e)
	                : make_one(w, language, span, room, doc, e);
	if (n >= 0)
		fprintf(stderr, "report: %d cases in %.2f s\n", n,
		        (double)(clock_now().boot_ms - from) / 1000);
	return n;
}

int audit_report(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct source_span span = {0};
	_cleanup_(json_drop) json_t *doc = NULL;
	int room = 0, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest)
		return words_beyond(w.rest[0], usage);
	if (words_number("--room", words_value(&w, options, "room"), 1, ROOM_NUMBER_MAX, &room, usage) < 0)
		return EXIT_USAGE;
	static const char *const of_one[] = {"file", "list", "summary", "room"};
	const char *central = words_value(&w, options, "central");
	for (size_t i = 0; central && i < sizeof of_one / sizeof *of_one; i++)
		if (words_given(&w, options, of_one[i]))
			return words_choose(
			    "--file, --list, --summary and --room are of one station's record, "
			    "and --central is of all: leave one out",
			    usage);
	if (read_span(&w, &span))
		return EXIT_USAGE;
	if (words_given(&w, options, "json") + words_given(&w, options, "csv") +
	        words_given(&w, options, "pdf") + words_given(&w, options, "svg") +
	        words_given(&w, options, "page") !=
	    1)
		return words_choose("give one of --json, --csv, --pdf, --svg and --page", usage);
	struct audit_language language;
	int n = audit_language(&language, words_value(&w, options, "language"),
	                       central ? central : words_value(&w, options, "file"), &e);
	if (n == 0)
		n = make(&w, language.is, span, room, &doc, &e);
	r = n < 0 ? client_fail(&e) : give(&w, language.is, doc);
	audit_language_end(&language);
	return r;
}
