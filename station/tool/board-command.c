/* board: an address that opens a page with what its user may do there. */
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char options[] = "room= desk elsewhere file=";
static const char usage[] =
    "usage: bandtally board [--room N | --desk | stores] [--elsewhere] [--file FILE]\n"
    "An address that opens the board of that room (default: the first) with the key for typing codes. It "
    "works once,\n"
    "and within a minute. The browser may type in that room from then on, until it is closed, this machine "
    "starts\n"
    "anew, or no page of it was open for a day.\n"
    "stores       the page of the stores bench (of a room of kind stores, --room N opens its page as well)\n"
    "--desk       all rooms at a glance; only where station.ini closes the view\n"
    "--elsewhere  of the board elsewhere, by its first name\n"
    "--file FILE  writes a page (.html) that goes there, for nobody else to read, and prints the address of "
    "that page:\n"
    "             what a program is started with can be read by every user of this machine\n"
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

/* Anew each time, so that nobody holds it open or laid a link in its place. */
static int write_page(const char *file, const char *address)
{
	unlink(file);
	int fd = open(file, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0600);
	if (fd < 0)
		return -errno;
	int n = dprintf(
	    fd,
	    "<!doctype html>\n<meta charset=\"utf-8\">\n<meta name=\"referrer\" content=\"no-referrer\">\n"
	    "<meta http-equiv=\"refresh\" content=\"0;url=%s\">\n<title>Count board</title>\n",
	    address);
	if (n < 0 || fsync(fd) < 0)
		n = -errno;
	close(fd);
	return n < 0 ? n : 0;
}

static int hand_out(const char *file, const char *address)
{
	char whole[PATH_MAX];
	struct error e = {0};
	if (!file) {
		puts(address);
		return EXIT_OK;
	}
	int n = write_page(file, address);
	if (n == 0 && !realpath(file, whole))
		n = -errno;
	if (n < 0) {
		error_set(&e, n, "cannot write %.200s: %s: give another file", file, strerror(-n));
		return client_fail(&e);
	}
	print_file_address(whole);
	return EXIT_OK;
}

int tool_board(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int room = 0, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	int stores = w.n_rest && strcmp(w.rest[0], "stores") == 0;
	if (w.n_rest > stores)
		return words_beyond(w.rest[stores], usage);
	if (words_number("--room", words_value(&w, options, "room"), 1, ROOM_NUMBER_MAX, &room, usage) < 0)
		return EXIT_USAGE;
	if ((room || stores) && words_given(&w, options, "desk"))
		return words_beyond("--desk", usage);
	if (room && stores)
		return words_beyond("stores", usage);
	const char *file = words_value(&w, options, "file");
	if (file && !is_page(file)) {
		fprintf(stderr,
		        "bandtally: --file: '%s' does not end in .html, and a browser would show it as text: "
		        "give "
		        "another name\n",
		        file);
		return EXIT_USAGE;
	}
	json_t *q = json_pack("{s:s}", "do", "board");
	if (room)
		json_object_set_new(q, "room", json_integer(room));
	if (stores)
		json_object_set_new(q, "stores", json_true());
	if (words_given(&w, options, "desk"))
		json_object_set_new(q, "desk", json_true());
	if (words_given(&w, options, "elsewhere"))
		json_object_set_new(q, "elsewhere", json_true());
	_cleanup_(json_drop) json_t *a = client_ask(q, &e);
	return a ? hand_out(file, json_text(a, "address")) : client_fail(&e);
}
