/* case: the cases in the record, for a terminal. */
#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char case_usage[] =
    "usage: bandtally case list [--json]\n"
    "       bandtally case show CASE [--json]\n"
    "The cases in the record, and what one of them says. Times are this machine's local time.\n"
    "example: bandtally case list | grep -v '^reconciled'\n"
    "         bandtally case show 41\n";

#define ROOM_WIDE 18 /* letters */

static void print_slips(const json_t *x)
{
	size_t i;
	const json_t *n;
	int more = (int)json_number(x, "slips_more", 0);
	json_array_foreach((json_t *)json_object_get(x, "slips"), i, n)
	    printf("%s%07d", i ? " " : "", (int)json_integer_value(n));
	if (more)
		printf(" and %d more", more);
}

/* As station.ini calls it now; a room that it has no longer, by its number. */
static void print_room(const json_t *rooms, int number)
{
	size_t i;
	const json_t *room;
	char name[120];
	snprintf(name, sizeof name, "room %d", number);
	json_array_foreach((json_t *)rooms, i, room)
	{
		if (json_number(room, "number", 0) == number)
			snprintf(name, sizeof name, "%s", json_text(room, "name"));
	}
	print_column(name, ROOM_WIDE);
}

/* How it ended comes first, so that a list can be looked through, and sorted, by it. */
static void print_row(const json_t *x, const json_t *rooms)
{
	char day[11], from[6], to[6] = "";
	int64_t opened = json_number(x, "opened_ms", 0), ended = json_number(x, "ended_ms", 0);
	int16_t zone = clock_utc_min(opened);
	clock_text_date(opened, zone, day);
	clock_text_hm(opened, zone, from);
	if (ended)
		clock_text_hm(ended, clock_utc_min(ended), to);
	printf("%-12s %7d  ", json_text(x, "state"), (int)json_number(x, "case", 0));
	print_room(rooms, (int)json_number(x, "room", 0));
	printf("%s  %5s  %5s  ", day, from, to);
	print_slips(x);
	puts("");
}

static void print_cases(const json_t *page, const json_t *rooms, int as_json, int first)
{
	size_t i;
	const json_t *x;
	if (!as_json && first)
		printf("%-12s %7s  %-*s %-10s  %5s  %5s  %s\n", "outcome", "case", ROOM_WIDE, "room", "day",
		       "from", "to", "slips");
	json_array_foreach((json_t *)page, i, x)
	{
		if (!as_json) {
			print_row(x, rooms);
			continue;
		}
		fputs(first && !i ? "[\n" : ",\n", stdout);
		json_dumpf(x, stdout, JSON_SORT_KEYS | JSON_COMPACT);
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
	_cleanup_(json_drop) json_t *status = client_ask(json_pack("{s:s}", "do", "status"), &e);
	if (!status)
		return client_fail(&e);
	const json_t *rooms = json_object_get(json_object_get(status, "status"), "rooms");
	do {
		_cleanup_(json_drop) json_t *a =
		    client_ask(json_pack("{s:s,s:I}", "do", "cases", "after", (json_int_t)after), &e);
		if (!a)
			return client_fail(&e);
		print_cases(json_object_get(a, "cases"), rooms, as_json, first);
		after = json_number(a, "after", 0);
		first = 0;
	} while (after);
	if (as_json)
		puts("\n]");
	return EXIT_OK;
}

static void print_line_of(const json_t *o, const char *name)
{
	if (*json_text(o, name))
		printf("  %s\n", json_text(o, name));
}

/* The steps that were taken, why one was not, and the incident's number. */
static void print_search(const json_t *search)
{
	size_t i;
	const json_t *x;
	print_line_of(search, "title");
	json_array_foreach((json_t *)json_object_get(search, "steps"), i, x)
	    printf("    %s: %s%s%s\n", json_text(x, "text"), json_text(x, "state"),
	           *json_text(x, "says") ? ", " : "", json_text(x, "says"));
	print_line_of(search, "incident");
	print_line_of(search, "write");
}

/* As the paper says it. */
static void print_case(const json_t *c)
{
	size_t i, k;
	const json_t *x, *fact;
	printf("%s %s\ncase %d, %s, %s, %s\n",
	       json_text(c, json_text(c, "shout")[0] ? "shout" : "heading_words"), json_text(c, "outcome"),
	       (int)json_number(c, "case_number", 0), json_text(c, "room"), json_text(c, "day"),
	       json_text(c, "hours"));
	print_line_of(c, "shout_note");
	json_array_foreach((json_t *)json_object_get(c, "amiss"), i, x)
	    printf("  %s: %s%s%s\n", json_text(x, "label"), json_text(x, "text"),
	           json_text(x, "note")[0] ? ", " : "", json_text(x, "note"));
	json_array_foreach((json_t *)json_object_get(c, "after"), i, x)
	    printf("  %s\n", json_string_value(x));
	json_array_foreach((json_t *)json_object_get(c, "digits"), i, x)
	    printf("  %s, %s\n", json_text(x, "says"), json_text(x, "detail"));
	print_line_of(c, "single");
	if (json_array_size(json_object_get(c, "items")))
		printf("  %-44s %10s  %13s  evidence\n", "item", "counted in", "accounted for");
	json_array_foreach((json_t *)json_object_get(c, "items"), i, x)
	{
		const char *amiss = json_text(x, "amiss"), *evidence = json_text(x, "evidence");
		fputs("  ", stdout);
		print_column(json_text(x, "line"), 44);
		printf("%10d  %13d  %s%s%s", (int)json_number(x, "in", 0), (int)json_number(x, "out", 0),
		       amiss, *amiss && *evidence ? ", " : "", evidence);
		json_array_foreach((json_t *)json_object_get(x, "facts"), k, fact)
		    printf("; %s", json_string_value(fact));
		puts("");
	}
	json_array_foreach((json_t *)json_object_get(c, "rows"), i, x)
	    printf("  %s: %s\n", json_text(x, "label"), json_text(x, "says"));
	print_line_of(c, "elsewhere");
	print_search(json_object_get(c, "search"));
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
		return w.n_rest ? words_beyond(w.rest[0], case_usage)
		                : words_missing("list or show", case_usage);
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
