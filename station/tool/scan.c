/* scan, sheet, status, case: what the people in the room and whoever helps them need. */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char scan_options[] = "room= scanner= late text json";
static const char scan_usage[] =
    "usage: bandtally scan [--room N] [--scanner NAME] [--late] [--json] CODE\n"
    "       bandtally scan --text [--room N] TEXT      answers a question that asks for typed text\n"
    "As if CODE had been scanned in that room (default: the first); the sheet and the slip say that it was "
    "keyed.\n"
    "--json: the whole answer: verdict, said, next, and deeds, what is asked for as values.\n"
    "--late: it happened earlier and is entered from the paper sheet. '<GS>' in CODE stands for the "
    "separator.\n"
    "Exit codes: 0 accepted, 3 refused, 4 the station asks something first, 1 failed, 2 wrong usage.\n";

/* '<GS>' as people can type it. */
static json_t *code_json(const char *typed)
{
	struct buf b = {0};
	for (const char *p = typed; *p;) {
		if (strncmp(p, "<GS>", 4) == 0) {
			buf_add(&b, "\x1d", 1);
			p += 4;
		} else {
			buf_add(&b, p++, 1);
		}
	}
	json_t *s = json_stringn(b.data ? b.data : "", b.size);
	buf_free(&b);
	return s;
}

static int say_reply(json_t *a, int as_json)
{
	const char *verdict = json_text(a, "verdict");
	if (as_json) {
		json_object_del(a, "ok");
		json_dumpf(a, stdout, JSON_INDENT(2) | JSON_SORT_KEYS);
		putchar('\n');
	} else {
		printf("%s: %s\nnext: %s\n", verdict, json_text(a, "said"), json_text(a, "next"));
	}
	return strcmp(verdict, "accepted") == 0  ? EXIT_OK
	       : strcmp(verdict, "refused") == 0 ? EXIT_REFUSED
	                                         : EXIT_QUESTION;
}

int tool_scan(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, scan_options, scan_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	int text = words_given(&w, scan_options, "text"), room = 0;
	if (w.n_rest < 1 || !*w.rest[0])
		return words_missing(text ? "TEXT" : "CODE", scan_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], scan_usage);
	const char *scanner = words_value(&w, scan_options, "scanner");
	if (words_number("--room", words_value(&w, scan_options, "room"), 1, ROOM_NUMBER_MAX, &room,
	                 scan_usage) < 0)
		return EXIT_USAGE;
	json_t *code = text ? json_string(w.rest[0]) : code_json(w.rest[0]);
	if (!code) {
		fprintf(stderr,
		        "bandtally: the code is not UTF-8 text: type what stands under the barcode\n");
		return EXIT_FAILED;
	}
	json_t *q = json_object();
	json_object_set_new(q, "do", json_string(text ? "type" : "scan"));
	json_object_set_new(q, text ? "text" : "code", code);
	if (room)
		json_object_set_new(q, "room", json_integer(room));
	if (scanner)
		json_object_set_new(q, "scanner", json_string(scanner));
	if (words_given(&w, scan_options, "late"))
		json_object_set_new(q, "late", json_true());
	_cleanup_(json_drop) json_t *a = client_ask(q, &e);
	return a ? say_reply(a, words_given(&w, scan_options, "json")) : client_fail(&e);
}

/* --- sheet -------------------------------------------------------------------------------------- */

static const char sheet_options[] = "room= json";
static const char sheet_usage[] =
    "usage: bandtally sheet [--room N] [--json]\n"
    "The open case of a room: items, digits, team, what is owed, what comes next.\n";

static void print_json(const json_t *v)
{
	struct buf b = {0};
	if (json_write_canonical(v, &b) == 0)
		puts(b.data);
	buf_free(&b);
}

static void print_items(const json_t *view)
{
	size_t i;
	const json_t *it;
	json_array_foreach((json_t *)json_object_get(view, "items"), i, it)
	{
		printf("  %2d  %-40s %d of %d   %s", (int)json_number(it, "number", 0), json_text(it, "name"),
		       (int)json_number(it, "shown", 0), (int)json_number(it, "pieces", 0),
		       json_text(it, "place_words"));
		if (json_text(it, "lot")[0])
			printf("   lot %s", json_text(it, "lot"));
		puts("");
	}
}

static void print_digits(const json_t *view)
{
	size_t i;
	const json_t *d;
	json_array_foreach((json_t *)json_object_get(view, "digits"), i, d)
	    printf("  %-24s %s%s%s%s\n", json_text(d, "name"), json_text(d, "state"),
	           strcmp(json_text(d, "state"), "on") == 0 ? ", " : "",
	           strcmp(json_text(d, "state"), "on") == 0 ? json_text(d, "text") : "",
	           json_truth(d, "seen_bare") ? ", seen bare" : "");
}

static void print_list(const char *title, const json_t *list)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)list, i, x) printf("%s: %s\n", title, json_string_value(x));
}

static void print_view(const json_t *view)
{
	size_t i;
	const json_t *x, *c = json_object_get(view, "case");
	printf("%s", json_text(json_object_get(view, "room"), "name"));
	if (json_is_object(c))
		printf(", case %d%s\n", (int)json_number(c, "number", 0),
		       json_truth(c, "single") ? ", single-person count" : "");
	else
		puts(", no case");
	json_array_foreach((json_t *)json_object_get(view, "team"), i, x)
	    printf("  %s: %s\n", json_text(x, "place"), json_text(x, "name"));
	print_items(view);
	print_digits(view);
	print_list("owed", json_object_get(view, "debts"));
	if (json_text(view, "distrust")[0])
		printf("DO NOT TRUST THE STATION NOW: %s\n", json_text(view, "distrust"));
	printf("next: %s\n", json_text(view, "next"));
}

int tool_sheet(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, sheet_options, sheet_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	int room = 0;
	if (w.n_rest)
		return words_beyond(w.rest[0], sheet_usage);
	if (words_number("--room", words_value(&w, sheet_options, "room"), 1, ROOM_NUMBER_MAX, &room,
	                 sheet_usage) < 0)
		return EXIT_USAGE;
	json_t *q = json_object();
	json_object_set_new(q, "do", json_string("sheet"));
	if (room)
		json_object_set_new(q, "room", json_integer(room));
	_cleanup_(json_drop) json_t *a = client_ask(q, &e);
	if (!a)
		return client_fail(&e);
	if (words_given(&w, sheet_options, "json"))
		print_json(json_object_get(a, "view"));
	else
		print_view(json_object_get(a, "view"));
	return EXIT_OK;
}

/* --- status ------------------------------------------------------------------------------------- */

static const char status_usage[] =
    "usage: bandtally status [--json]\n"
    "The station: rooms, scanners, slips that were not seen, numbers owed, the age of the last backup.\n";

static void print_backup(const json_t *backup, int64_t events)
{
	char when[26];
	int64_t ms = json_number(backup, "ms", 0), min = (clock_now().wall_ms - ms) / 60000;
	if (!ms) {
		puts("backup: no backup was ever checked: see 'bandtally backup --help'");
		return;
	}
	clock_text_full(ms, clock_utc_min(ms), when);
	printf("backup: the last that was checked was made ");
	if (min < 0)
		printf("at %s, by a clock that was set since", when);
	else if (min < 120)
		printf("%d min ago", (int)min);
	else if (min < 48 * 60)
		printf("%d h ago", (int)(min / 60));
	else
		printf("%d days ago", (int)(min / 1440));
	printf(" (%s), with %lld of %lld events\n", when, (long long)json_number(backup, "events", 0),
	       (long long)events);
}

/* What the station does not list it counts. */
static void print_further(const json_t *s)
{
	int older = (int)json_number(s, "slips_older", 0), more = (int)json_number(s, "owed_more", 0);
	if (older)
		printf("and %d older slip%s, not seen yet\n", older, older > 1 ? "s" : "");
	if (more)
		printf("and %d further case%s: incident number owed\n", more, more > 1 ? "s" : "");
}

static void print_status(const json_t *s)
{
	size_t i;
	const json_t *x;
	printf("site %s, %s; %d events, last case %d, %d lines, %d badges\n", json_text(s, "site"),
	       json_text(s, "site_name"), (int)json_number(s, "events", 0),
	       (int)json_number(s, "last_case", 0), (int)json_number(s, "lines", 0),
	       (int)json_number(s, "staff", 0));
	json_array_foreach((json_t *)json_object_get(s, "rooms"), i, x)
	{
		int case_no = (int)json_number(x, "case", 0);
		printf("room %d, %s: ", (int)json_number(x, "number", 0), json_text(x, "name"));
		printf(case_no ? "case %d\n" : "no case\n", case_no);
	}
	json_array_foreach((json_t *)json_object_get(s, "drivers"), i, x)
	    printf("scanner %s, room %d: %s%s%s\n", json_text(x, "name"), (int)json_number(x, "room", 0),
	           json_truth(x, "running") ? "running" : "not running", json_text(x, "fault")[0] ? ": " : "",
	           json_text(x, "fault"));
	json_array_foreach((json_t *)json_object_get(s, "slips"), i, x)
	    printf("slip %07d of case %d, %s: %s, not seen yet\n", (int)json_number(x, "number", 0),
	           (int)json_number(x, "case", 0), json_text(x, "kind"), json_text(x, "state"));
	json_array_foreach((json_t *)json_object_get(s, "owed"), i, x)
	    printf("case %d: incident number owed\n", (int)json_number(x, "case", 0));
	print_further(s);
	printf("printer: %s\n", json_text(s, "printer")[0]
	                            ? json_text(s, "printer")
	                            : "none; slips are written as PDF into the data folder");
	print_backup(json_object_get(s, "backup"), json_number(s, "events", 0));
	print_list("FAULT", json_object_get(s, "faults"));
	if (json_text(s, "distrust")[0])
		printf("DO NOT TRUST THE STATION NOW: %s\n", json_text(s, "distrust"));
}

int tool_status(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, "json", status_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "status"), &e);
	if (!a)
		return client_fail(&e);
	if (words_given(&w, "json", "json"))
		print_json(json_object_get(a, "status"));
	else
		print_status(json_object_get(a, "status"));
	return EXIT_OK;
}

/* --- case --------------------------------------------------------------------------------------- */

static const char case_usage[] = "usage: bandtally case list [--json]\n"
                                 "       bandtally case show CASE [--json]\n"
                                 "The cases in the record, and what one of them says.\n";

static void print_cases(const json_t *page, int as_json, int first)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)page, i, x)
	{
		char when[26];
		int64_t opened = json_number(x, "opened_ms", 0);
		if (as_json) {
			fputs(first && !i ? "[\n" : ",\n", stdout);
			json_dumpf(x, stdout, JSON_SORT_KEYS | JSON_COMPACT);
			continue;
		}
		clock_text_full(opened, clock_utc_min(opened), when);
		printf("case %d  room %d  %s  %s\n", (int)json_number(x, "case", 0),
		       (int)json_number(x, "room", 0), when, json_text(x, "state"));
	}
	if (as_json && first && !json_array_size(page))
		fputs("[", stdout);
}

/* Page by page: there may be more than one answer, or the memory of this program, holds. */
static int case_list(int as_json)
{
	struct error e = {0};
	int64_t after = 0;
	int first = 1;
	do {
		_cleanup_(json_drop) json_t *a =
		    client_ask(json_pack("{s:s,s:I}", "do", "cases", "after", (json_int_t)after), &e);
		if (!a)
			return client_fail(&e);
		print_cases(json_object_get(a, "cases"), as_json, first);
		after = json_number(a, "after", 0);
		first = 0;
	} while (after);
	if (as_json)
		puts("\n]");
	return EXIT_OK;
}

static void print_case(const json_t *c)
{
	size_t i;
	const json_t *x;
	printf("case %d, %s, opened %s%s%s: %s\n", (int)json_number(c, "case_number", 0),
	       json_text(c, "room"), json_text(c, "opened"), json_text(c, "ended")[0] ? ", ended " : ", open",
	       json_text(c, "ended"), json_text(c, "outcome"));
	json_array_foreach((json_t *)json_object_get(c, "items"), i, x)
	    printf("  %s: in %d, out %d, %s %s %s\n", json_text(x, "line"), (int)json_number(x, "in", 0),
	           (int)json_number(x, "out", 0), json_text(x, "evidence"), json_text(x, "condition"),
	           json_text(x, "note"));
	json_array_foreach((json_t *)json_object_get(c, "digits"), i, x)
	{
		const json_t *bare = json_object_get(x, "bare");
		printf("  %s: longest %s, %s %s\n", json_text(x, "name"), json_text(x, "longest"),
		       bare ? "seen bare" : "NOT SEEN BARE", json_text(bare, "when"));
	}
	json_array_foreach((json_t *)json_object_get(c, "counts"), i, x)
	    printf("  %s count %s, recorded by %s\n", json_text(x, "kind"), json_text(x, "when"),
	           json_text(x, "recorded_by"));
}

int tool_case(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, "json", case_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	int as_json = words_given(&w, "json", "json");
	if (w.n_rest == 1 && strcmp(w.rest[0], "list") == 0)
		return case_list(as_json);
	if (!w.n_rest || strcmp(w.rest[0], "show") != 0)
		return words_missing("list or show", case_usage);
	if (w.n_rest < 2)
		return words_missing("CASE, the number of the case,", case_usage);
	if (w.n_rest > 2)
		return words_beyond(w.rest[2], case_usage);
	int case_no = 0;
	if (words_number("CASE", w.rest[1], 1, SLIP_NUMBER_MAX, &case_no, case_usage) < 0)
		return EXIT_USAGE;
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i}", "do", "case", "case", case_no), &e);
	if (!a)
		return client_fail(&e);
	if (as_json)
		print_json(json_object_get(a, "case"));
	else
		print_case(json_object_get(a, "case"));
	return EXIT_OK;
}
