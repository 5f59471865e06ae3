/* board: an address that opens a page with what its user may do there. */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "tool/audit-pages.h"
#include "tool/board-page.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char options[] = "room= desk elsewhere file= year= waiting";
static const char usage[] =
    "usage: bandtally board [--room N | --desk | stores] [--elsewhere] [--file FILE]\n"
    "       bandtally board --waiting --file FILE\n"
    "       bandtally board audit [--year YYYY] [--room N] [--elsewhere] [--file FILE]\n"
    "An address that opens the board of that room (default: the first) with the key for typing codes. It "
    "works once,\n"
    "and within a minute. The browser may type in that room from then on, until it is closed, this machine "
    "starts\n"
    "anew, or no page of it was open for a day.\n"
    "stores       the page of the stores bench (of a room of kind stores, --room N opens its page as well)\n"
    "audit        the reports of a year, its quarters and months and of each room, made now and shown "
    "until\n"
    "             the board starts anew: for members of bandtally-audit (default: the year of the last "
    "event)\n"
    "--desk       all rooms at a glance; only where station.ini closes the view\n"
    "--elsewhere  of the board elsewhere, by its first name\n"
    "--file FILE  writes a page (.html) that goes there, for nobody else to read, and prints the address of "
    "that page:\n"
    "             what a program is started with can be read by every user of this machine\n"
    "--waiting    a page that says that the station is awaited, and looks each second whether FILE has "
    "become "
    "another page:\n"
    "             what a wall shows until there is a ticket\n"
    "For members of bandtally-count, of a stores bench bandtally-stores; of bandtally-audit where the view "
    "is closed, to "
    "look.\n"
    "example: chromium --kiosk \"$(bandtally board --room 1 --file ~/board.html)\"\n";

/* A browser shows what is called otherwise as text. */
static int is_page(const char *file)
{
	size_t n = strlen(file);
	return n > 5 && strcmp(file + n - 5, ".html") == 0;
}

/* As it stands in an address (RFC 3986). */
static void print_file_address(const char *path)
{
	static const char plain[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~/";
	fputs("file://", stdout);
	for (const char *c = path; *c; c++)
		printf(strchr(plain, *c) ? "%c" : "%%%02X", (unsigned char)*c);
	putchar('\n');
}

/* Without an address: the page that waits for one. */
static int hand_out(const char *file, const char *address)
{
	char whole[PATH_MAX];
	struct error e = {0};
	if (!file) {
		puts(address);
		return EXIT_OK;
	}
	int n = address ? board_page_leads(file, address) : board_page_waits(file);
	if (n == 0 && !realpath(file, whole))
		n = -errno;
	if (n < 0) {
		error_set(&e, n, "cannot write %.200s: %s: give another file", file, strerror(-n));
		return client_fail(&e);
	}
	print_file_address(whole);
	return EXIT_OK;
}

enum board_page { PAGE_OF_ROOM, PAGE_OF_STORES, PAGE_OF_AUDIT, PAGE_OF_DESK, PAGE_UNKNOWN };

static enum board_page page_meant(const struct words *w)
{
	const char *word = w->n_rest ? w->rest[0] : "";
	if (words_given(w, options, "desk"))
		return *word ? PAGE_UNKNOWN : PAGE_OF_DESK;
	return !*word                        ? PAGE_OF_ROOM
	       : strcmp(word, "stores") == 0 ? PAGE_OF_STORES
	       : strcmp(word, "audit") == 0  ? PAGE_OF_AUDIT
	                                     : PAGE_UNKNOWN;
}

/* 0, or an exit code. */
static int read_wish(const struct words *w, int *room, int *year)
{
	enum board_page page = page_meant(w);
	int named = w->n_rest && page != PAGE_UNKNOWN;
	if (w->n_rest > named)
		return words_beyond(w->rest[named], usage);
	if (words_number("--room", words_value(w, options, "room"), 1, ROOM_NUMBER_MAX, room, usage) < 0 ||
	    words_number("--year", words_value(w, options, "year"), 2000, 9998, year, usage) < 0)
		return EXIT_USAGE;
	if (*room && page == PAGE_OF_DESK)
		return words_beyond("--desk", usage);
	if (*room && page == PAGE_OF_STORES)
		return words_beyond("stores", usage);
	if (*year && page != PAGE_OF_AUDIT)
		return words_beyond("--year", usage);
	const char *file = words_value(w, options, "file");
	if (!file && words_given(w, options, "waiting"))
		return words_missing("--file", usage);
	if (!file || is_page(file))
		return 0;
	fprintf(stderr,
	        "bandtally: --file: '%s' does not end in .html, and a browser would show it as text: give "
	        "another name\n",
	        file);
	return EXIT_USAGE;
}

static json_t *question(enum board_page page, int room)
{
	if (page == PAGE_OF_AUDIT)
		return json_pack("{s:s,s:b}", "do", "report", "address", 1);
	json_t *q = json_pack("{s:s}", "do", "board");
	if (room)
		json_object_set_new(q, "room", json_integer(room));
	if (page == PAGE_OF_STORES)
		json_object_set_new(q, "stores", json_true());
	if (page == PAGE_OF_DESK)
		json_object_set_new(q, "desk", json_true());
	return q;
}

int tool_board(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int room = 0, year = 0, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	r = read_wish(&w, &room, &year);
	if (r)
		return r;
	if (words_given(&w, options, "waiting"))
		return hand_out(words_value(&w, options, "file"), NULL);
	enum board_page page = page_meant(&w);
	if (page == PAGE_OF_AUDIT && audit_pages_show(year, room, &e) < 0)
		return client_fail(&e);
	json_t *q = question(page, room);
	if (words_given(&w, options, "elsewhere"))
		json_object_set_new(q, "elsewhere", json_true());
	_cleanup_(json_drop) json_t *a = client_ask(q, &e);
	return a ? hand_out(words_value(&w, options, "file"), json_text(a, "address")) : client_fail(&e);
}
