#include "tool/stock-print.h"

#include <stdio.h>

#include "tool/client.h"

static const char *shown(const char *text)
{
	return *text ? text : "-";
}

static const char *day(int64_t yyyymmdd, char out[11])
{
	unsigned n = (unsigned)yyyymmdd;
	if (n)
		snprintf(out, 11, "%04u-%02u-%02u", n / 10000 % 10000, n / 100 % 100, n % 100);
	else
		snprintf(out, 11, "-");
	return out;
}

static int as_it_came(const json_t *value)
{
	_cleanup_(buf_free) struct buf b = {0};
	if (json_write_canonical(value, &b) == 0)
		puts(b.data);
	return EXIT_OK;
}

static int number(const json_t *o, const char *key)
{
	return (int)json_number(o, key, 0);
}

/* --- what there is --------------------------------------------------------------------------------- */

static int in_rooms(const json_t *lot)
{
	size_t i;
	int n = 0;
	const json_t *x;
	json_array_foreach(json_object_get(lot, "rooms"), i, x) n += number(x, "packs");
	return n;
}

static void print_lots(const json_t *list)
{
	size_t i;
	const json_t *x;
	char expiry[11];
	printf("%-24s %-20s %-10s %5s %5s %5s %6s %6s %5s %6s  %s\n", "line", "lot", "expiry", "shelf",
	       "waits", "rooms", "opened", "return", "off", "unacc.", "");
	json_array_foreach(list, i, x)
	    printf("%-24s %-20s %-10s %5d %5d %5d %6d %6d %5d %6d  %s\n", json_text(x, "key"),
	           shown(json_text(x, "lot")), day(json_number(x, "expiry", 0), expiry), number(x, "shelf"),
	           number(x, "waits"), in_rooms(x), number(x, "opened"), number(x, "returned"),
	           number(x, "written_off"), number(x, "unaccounted"), json_text(x, "why"));
}

static json_t *ask_stock(const char *line, const char *lot, struct error *e)
{
	return client_ask(
	    json_pack("{s:s,s:s,s:s}", "do", "stock", "line", line ? line : "", "lot", lot ? lot : ""), e);
}

int stock_print_list(const char *line, const char *lot, int as_json)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *a = ask_stock(line, lot, &e);
	if (!a)
		return client_fail(&e);
	if (as_json)
		return as_it_came(json_object_get(a, "stock"));
	print_lots(json_object_get(a, "stock"));
	return EXIT_OK;
}

/* The daemon lists what expires first at the top. */
int stock_print_earliest(const char *line, int as_json)
{
	size_t i;
	json_t *x;
	struct error e = {0};
	_cleanup_(json_drop) json_t *a = ask_stock(line, NULL, &e), *usable = json_array();
	if (!a)
		return client_fail(&e);
	json_array_foreach(json_object_get(a, "stock"), i, x)
	{
		if (number(x, "shelf") > 0 && !*json_text(x, "why"))
			json_array_append(usable, x);
	}
	if (as_json)
		return as_it_came(usable);
	print_lots(usable);
	return EXIT_OK;
}

/* --- recall, and what is found --------------------------------------------------------------------- */

static void print_cases(const json_t *used)
{
	size_t i;
	const json_t *x, *list = json_object_get(used, "cases");
	char when[11];
	json_array_foreach(list, i, x)
	{
		printf("  case %-7d %-20s %s  lot %-20s packs %d  ", number(x, "case"), json_text(x, "name"),
		       day(json_number(x, "day", 0), when), shown(json_text(x, "lot")), number(x, "packs"));
		if (number(x, "slip"))
			printf("slip %07d\n", number(x, "slip"));
		else
			puts("no slip");
	}
	if (!json_array_size(list))
		puts("  none that ended and told stores");
	if (number(used, "told_since"))
		printf("  cases have told stores what they took since %s\n",
		       day(number(used, "told_since"), when));
	else
		puts("  no case has told stores what it took: it is kept where a room of kind stores is in "
		     "station.ini");
}

static void print_rooms(const json_t *recall)
{
	size_t i;
	const json_t *x;
	char when[11];
	json_array_foreach(json_object_get(recall, "open"), i, x)
	    printf("  open now: case %d in %s: tell the surgeon\n", number(x, "case"), json_text(x, "name"));
	json_array_foreach(json_object_get(recall, "near"), i, x)
	    printf("  reads alike, a person must judge: lot %s\n", json_string_value(x));
	json_array_foreach(json_object_get(recall, "silent"), i, x)
	    printf("  nothing scanned since then in %s, last on %s: go and ask\n", json_text(x, "name"),
	           day(json_number(x, "day", 0), when));
}

int stock_print_recall(const char *line, const char *lot, int as_json)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:s,s:s}", "do", "recall", "line", line, "lot", lot ? lot : ""), &e);
	const json_t *recall = json_object_get(a, "recall");
	if (!a)
		return client_fail(&e);
	if (as_json)
		return as_it_came(recall);
	printf("%s%s%s: %s\n", line, lot ? ", lot " : "", lot ? lot : "",
	       json_truth(recall, "held") ? "in quarantine" : "not in quarantine");
	print_rooms(recall);
	puts("where it lies:");
	print_lots(json_object_get(recall, "stock"));
	puts("cases that used one:");
	print_cases(recall);
	return EXIT_OK;
}

static void print_short(const json_t *list)
{
	size_t i, k;
	const json_t *x, *tray;
	json_array_foreach(list, i, x)
	{
		printf("  %-24s %3d  case %-7d %-20s", json_text(x, "key"), number(x, "n"), number(x, "case"),
		       json_text(x, "room"));
		json_array_foreach(json_object_get(x, "trays"), k, tray) printf(
		    "%s %s (its list has %d)", k ? "," : "", json_text(tray, "key"), number(tray, "n"));
		puts("");
	}
	if (!json_array_size(list))
		puts("  none that the station knows of");
}

static void print_missing(const json_t *list)
{
	size_t i;
	const json_t *x;
	json_array_foreach(list, i, x)
	    printf("  case %-7d %-20s %-24s lot %-20s %3d\n", number(x, "case"), json_text(x, "room"),
	           json_text(x, "key"), shown(json_text(x, "lot")), number(x, "n"));
	if (!json_array_size(list))
		puts("  none that the station knows of");
}

static void print_came_back(const json_t *list)
{
	size_t i;
	const json_t *x;
	char when[11];
	json_array_foreach(list, i, x)
	{
		printf("  %s  %-20s %-24s ", day(json_number(x, "day", 0), when), json_text(x, "room"),
		       json_text(x, "key"));
		if (!number(x, "case"))
			printf("no case missed one: bandtally stock found %s\n", json_text(x, "key"));
		else if (number(x, "slip"))
			printf("case %d, slip %07d\n", number(x, "case"), number(x, "slip"));
		else
			printf("case %d, no slip\n", number(x, "case"));
	}
	if (!json_array_size(list))
		puts("  nothing was entered as found");
}

int stock_print_shortfalls(int since, int as_json)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i}", "do", "shortfalls", "since", since), &e);
	if (!a)
		return client_fail(&e);
	json_object_del(a, "ok");
	if (as_json)
		return as_it_came(a);
	puts("Instruments that a case ended without, and the trays that each may come from:");
	print_short(json_object_get(a, "short"));
	puts("Ended cases that miss one:");
	print_missing(json_object_get(a, "missing"));
	puts("What was found, the last first:");
	print_came_back(json_object_get(a, "found"));
	return EXIT_OK;
}

int stock_print_found(const char *line, int since, int as_json)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:s,s:i}", "do", "used", "line", line, "since", since), &e);
	if (!a)
		return client_fail(&e);
	if (as_json)
		return as_it_came(json_object_get(a, "used"));
	printf("Cases that had %s; none of them is charged. For the nurse in charge:\n", line);
	print_cases(json_object_get(a, "used"));
	return EXIT_OK;
}
