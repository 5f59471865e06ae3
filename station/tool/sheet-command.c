/* sheet: the open case of a room, for a terminal. */
#include <stdio.h>
#include <string.h>

#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char sheet_options[] = "room= json";
static const char sheet_usage[] =
    "usage: bandtally sheet [--room N] [--json]\n"
    "The open case of a room: what is missing, items, digits, team, what is owed, what comes next.\n"
    "Without --room: the first room of station.ini.\n"
    "example: bandtally sheet --room 2\n";

/* What must be read first where something is missing. */
static void print_discrepancy(const json_t *view)
{
	const json_t *c = json_object_get(view, "case"), *steps = json_object_get(view, "search");
	size_t i, done = 0;
	const json_t *x;
	if (!json_truth(c, "discrepancy"))
		return;
	json_array_foreach((json_t *)steps, i, x) done += strcmp(json_text(x, "state"), "open") != 0;
	x = json_array_get(steps, done); /* they are answered in their order */
	printf("DISCREPANCY, search: %zu of %zu steps answered%s%s\n", done, json_array_size(steps),
	       x ? "; next: " : "", json_text(x, "text"));
}

static const char *digit_name(const json_t *view, int number)
{
	size_t i;
	const json_t *d;
	json_array_foreach((json_t *)json_object_get(view, "digits"), i, d)
	{
		if (number && json_number(d, "number", 0) == number)
			return json_text(d, "name");
	}
	return "";
}

static void item_name(const json_t *it, char *out, size_t size)
{
	const char *lot = json_text(it, "lot");
	snprintf(out, size, "%s%s%s", json_text(it, "name"), *lot ? ", lot " : "", lot);
}

/* As wide as the longest name: numbers stand below their words. */
static int names_width(const json_t *items)
{
	size_t i;
	const json_t *it;
	int width = 24;
	json_array_foreach((json_t *)items, i, it)
	{
		char name[120];
		item_name(it, name, sizeof name);
		width = print_letters(name) > width ? print_letters(name) : width;
	}
	return width;
}

static void print_items(const json_t *view)
{
	size_t i;
	const json_t *it, *items = json_object_get(view, "items");
	int width = names_width(items);
	if (json_array_size(items))
		printf("  no.  %-*s counted in  accounted for\n", width, "item");
	json_array_foreach((json_t *)items, i, it)
	{
		int missing = (int)json_number(it, "missing", 0);
		const char *on = digit_name(view, (int)json_number(it, "digit", 0));
		char name[120];
		item_name(it, name, sizeof name);
		printf("  %3d  ", (int)json_number(it, "number", 0));
		print_column(name, width);
		printf("%10d  %13d  ", (int)json_number(it, "pieces", 0), (int)json_number(it, "shown", 0));
		if (missing)
			printf("MISSING: %d%s%s\n", missing, *on ? ", was on the " : "", on);
		else if (strcmp(json_text(it, "condition"), "pieces-missing") == 0)
			printf("PIECES MISSING%s%s\n", *on ? ", was on the " : "", on);
		else
			printf("%s%s%s\n", json_text(it, "place_words"), *on ? ", " : "", on);
	}
}

static void print_digits(const json_t *view)
{
	size_t i;
	const json_t *d;
	json_array_foreach((json_t *)json_object_get(view, "digits"), i, d)
	{
		const char *state = json_text(d, "state");
		fputs("  ", stdout);
		print_column(json_text(d, "name"), 24);
		if (strcmp(state, "on") == 0 || strcmp(state, "maybe-on") == 0)
			printf("%s since %s, %s", strcmp(state, "on") == 0 ? "tourniquet ON" : "on?",
			       json_text(d, "on_at"), json_text(d, "text"));
		else if (strcmp(state, "off") == 0)
			printf("off, was on %lld min from %s",
			       (long long)json_number(d, "total_ms", 0) / 60000, json_text(d, "on_at"));
		else
			printf(json_truth(d, "marked") ? "marked, no tourniquet yet" : "no tourniquet");
		printf("%s\n", json_truth(d, "seen_bare") ? ", seen bare" : "");
	}
}

static void print_view(const json_t *view)
{
	size_t i;
	const json_t *x, *c = json_object_get(view, "case");
	print_discrepancy(view);
	if (json_truth(view, "practice"))
		printf("PRACTICE, nothing of this is real\n");
	printf("%s", json_text(json_object_get(view, "room"), "name"));
	if (json_is_object(c))
		printf(", case %d%s\n", (int)json_number(c, "number", 0),
		       json_truth(c, "single") ? ", single-person count" : "");
	else
		puts(", no case");
	json_array_foreach((json_t *)json_object_get(view, "team"), i, x)
	    printf("  %s: %s\n", json_text(x, "place_words"), json_text(x, "name"));
	print_items(view);
	print_digits(view);
	print_elsewhere(view);
	json_array_foreach((json_t *)json_object_get(view, "debts"), i, x)
	    printf("owed: %s\n", json_text(x, "words"));
	if (json_text(view, "distrust")[0])
		printf("DO NOT TRUST THE STATION NOW: %s Count by hand on the paper sheet.\n",
		       json_text(view, "distrust"));
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
