/* label, print: everything that stores and administration put on paper. The document goes to bandtally-print,
 * which stands beside this program. */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/clock.h"
#include "code/date.h"
#include "code/own-codes.h"
#include "tool/client.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char label_options[] = "pdf= printer= room= line= lot= expiry= count= list width= height= dpi=";
static const char label_usage[] =
    "usage: bandtally label pack --line KEY [--lot LOT] [--expiry YYYY-MM-DD] --count N  (--pdf FILE | "
    "--printer NAME)\n"
    "       bandtally label digits [--room N] (--list | --pdf FILE | --printer NAME)\n"
    "       bandtally label cards [--room N] (--list | --pdf FILE | --printer NAME)\n"
    "       bandtally label badges (--list | --pdf FILE | --printer NAME)\n"
    "       bandtally label scanner-check (--pdf FILE | --printer NAME)\n"
    "pack takes N new item numbers from the station and prints two labels an item, one for the pack and one "
    "for the\n"
    "paper or return bag. --list prints code, room and meaning as tab-separated text.\n";

static json_t *document(const char *kind, const char *site)
{
	char when[26];
	int64_t now = clock_now().wall_ms;
	clock_text_full(now, clock_utc_min(now), when);
	return json_pack("{s:i,s:s,s:s,s:s}", "v", 1, "kind", kind, "time", when, "site", site);
}

/* Hands the document to bandtally-print and returns its exit code. */
static int print_document(const json_t *doc, const char *to, const char *where)
{
	char self[PATH_MAX], path[PATH_MAX + 20];
	_cleanup_(buf_free) struct buf text = {0};
	int pipes[2];
	ssize_t n = readlink("/proc/self/exe", self, sizeof self - 1);
	if (json_write_canonical(doc, &text) < 0 || n < 0 || pipe(pipes) < 0) {
		fprintf(stderr, "bandtally: cannot print: %s: try again\n", strerror(errno));
		return EXIT_FAILED;
	}
	self[n] = 0;
	char *slash = strrchr(self, '/');
	snprintf(path, sizeof path, "%.*s/bandtally-print", (int)(slash - self), self);
	pid_t pid = fork();
	if (pid == 0) {
		dup2(pipes[0], 0);
		close(pipes[0]);
		close(pipes[1]);
		execl(path, "bandtally-print", to, where, (char *)NULL);
		fprintf(stderr, "bandtally: cannot start %s: %s: install it beside bandtally\n", path,
		        strerror(errno));
		_exit(EXIT_FAILED);
	}
	close(pipes[0]);
	for (size_t at = 0; pid > 0 && at < text.size;) {
		ssize_t wrote = write(pipes[1], text.data + at, text.size - at);
		if (wrote <= 0)
			break;
		at += (size_t)wrote;
	}
	close(pipes[1]);
	int status = 1 << 8;
	if (pid > 0)
		waitpid(pid, &status, 0);
	return WIFEXITED(status) ? WEXITSTATUS(status) : EXIT_FAILED;
}

static int put_on_paper(const struct words *w, json_t *doc)
{
	_cleanup_(json_drop) json_t *d = doc;
	const char *pdf = words_value(w, label_options, "pdf"),
	           *printer = words_value(w, label_options, "printer");
	return print_document(d, pdf ? "--pdf" : "--printer", pdf ? pdf : printer);
}

/* The station's site and rooms. */
static json_t *ask_status(struct error *e)
{
	json_t *a = client_ask(json_pack("{s:s}", "do", "status"), e);
	json_t *status = a ? json_incref(json_object_get(a, "status")) : NULL;
	json_decref(a);
	return status;
}

static void own(char out[OWN_CODE_MAX], const char *site, struct own_code code)
{
	snprintf(code.site, sizeof code.site, "%.2s", site);
	if (own_code_write(&code, out) < 0)
		out[0] = 0;
}

static int32_t expiry_number(const char *text, char shown[20])
{
	int y, m, d, used = 0;
	if (!text)
		return 0;
	if (strlen(text) != 10 || sscanf(text, "%4d-%2d-%2d%n", &y, &m, &d, &used) != 3 || used != 10 ||
	    !date_make(y, m, d)) {
		fprintf(stderr,
		        "bandtally: --expiry is '%.40s': it must be a day as in 2028-03-31: see below\n%s",
		        text, label_usage);
		return -EINVAL;
	}
	snprintf(shown, 20, "%.10s", text);
	return date_make(y, m, d);
}

static int label_pack(const struct words *w)
{
	struct error e = {0};
	char shown[20] = "";
	const char *line = words_value(w, label_options, "line"), *lot = words_value(w, label_options, "lot");
	int32_t expiry = expiry_number(words_value(w, label_options, "expiry"), shown);
	int count = 0, dpi = 300;
	/* Before numbers are given out, which are never given out again. */
	if (expiry < 0 ||
	    words_number("--count", words_value(w, label_options, "count"), 1, 500, &count, label_usage) <
	        0 ||
	    words_number("--dpi", words_value(w, label_options, "dpi"), 203, 600, &dpi, label_usage) < 0)
		return EXIT_USAGE;
	if (!line || !count)
		return words_missing(line ? "--count" : "--line", label_usage);
	if (words_given(w, label_options, "list"))
		return words_missing("--pdf or --printer", label_usage);
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:s,s:s,s:i,s:i}", "do", "label", "line", line, "lot", lot ? lot : "",
	                         "expiry", (int)expiry, "count", count),
	               &e);
	if (!a)
		return client_fail(&e);
	json_t *doc = document("pack-labels", json_text(a, "site_name")), *items = json_array();
	int64_t first = json_number(a, "first", 0);
	int station = (int)json_number(a, "station", 0);
	for (int i = 0; i < count; i++) {
		char pack[OWN_CODE_MAX], bag[OWN_CODE_MAX], number[12];
		snprintf(number, sizeof number, "%08d", (int)(first + i));
		own(pack, json_text(a, "site"),
		    (struct own_code){
		        .kind = OWN_ITEM, .role = 'P', .station = station, .number = (int32_t)(first + i)});
		own(bag, json_text(a, "site"),
		    (struct own_code){
		        .kind = OWN_ITEM, .role = 'R', .station = station, .number = (int32_t)(first + i)});
		json_t *x = json_pack("{s:s,s:s,s:s,s:s}", "line", json_text(a, "name"), "number", number,
		                      "pack", pack, "bag", bag);
		if (lot)
			json_object_set_new(x, "lot", json_string(lot));
		if (shown[0])
			json_object_set_new(x, "expiry", json_string(shown));
		json_array_append_new(items, x);
	}
	json_object_set_new(doc, "items", items);
	if (words_value(w, label_options, "dpi"))
		json_object_set_new(doc, "dpi", json_integer(dpi));
	printf("item numbers %08d to %08d\n", (int)first, (int)(first + count - 1));
	return put_on_paper(w, doc);
}

static const char *room_name(const json_t *status, int room)
{
	size_t i;
	const json_t *x;
	json_array_foreach((json_t *)json_object_get(status, "rooms"), i,
	                   x) if (json_number(x, "number", 0) == room) return json_text(x, "name");
	return NULL;
}

static int label_digits(const struct words *w, const json_t *status, int room, const char *name)
{
	int list = words_given(w, label_options, "list");
	json_t *doc = document("digit-cards", json_text(status, "site_name")), *cards = json_array();
	for (int d = 1; d <= OWN_DIGITS; d++) {
		char code[OWN_CODE_MAX];
		own(code, json_text(status, "site"),
		    (struct own_code){.kind = OWN_DIGIT, .room = room, .digit = d});
		if (list)
			printf("%s\t%d\t%s\n", code, room, own_digit_name(d));
		json_array_append_new(
		    cards, json_pack("{s:i,s:s,s:s}", "digit", d, "name", own_digit_name(d), "code", code));
	}
	json_object_set_new(doc, "room", json_string(name));
	json_object_set_new(doc, "cards", cards);
	if (list) {
		json_decref(doc);
		return EXIT_OK;
	}
	return put_on_paper(w, doc);
}

static int label_cards(const struct words *w, const json_t *status, int room, const char *name)
{
	int list = words_given(w, label_options, "list");
	json_t *doc = document("cards", json_text(status, "site_name")), *all = json_array();
	for (int g = CARDS_NONE + 1; g < CARDS_GROUPS; g++) {
		json_t *cards = json_array();
		for (int m = own_card_next(0); m; m = own_card_next(m)) {
			char code[OWN_CODE_MAX];
			if ((int)own_card_group(m) != g)
				continue;
			own(code, json_text(status, "site"),
			    (struct own_code){.kind = OWN_CARD, .room = room, .meaning = m});
			if (list)
				printf("%s\t%d\t%s\n", code, room, own_card_name(m));
			json_array_append_new(cards, json_pack("{s:s,s:s,s:s}", "words", own_card_name(m),
			                                       "use", own_card_use(m), "code", code));
		}
		json_array_append_new(all, json_pack("{s:s,s:o}", "title",
		                                     own_card_group_title((enum own_card_group)g), "cards",
		                                     cards));
	}
	json_object_set_new(doc, "room", json_string(name));
	json_object_set_new(doc, "groups", all);
	if (list) {
		json_decref(doc);
		return EXIT_OK;
	}
	return put_on_paper(w, doc);
}

static int label_badges(const struct words *w, const json_t *status)
{
	static const char *const kinds[] = {"", "scrub or circulating practitioner", "surgeon or operator",
	                                    "nurse in charge"};
	struct error e = {0};
	size_t i;
	json_t *x;
	int list = words_given(w, label_options, "list");
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "list-staff"), &e);
	if (!a)
		return client_fail(&e);
	json_t *doc = document("badges", json_text(status, "site_name")), *badges = json_array();
	json_array_foreach(json_object_get(a, "staff"), i, x)
	{
		char code[OWN_CODE_MAX];
		int kind = (int)json_number(x, "kind", 1);
		if (json_truth(x, "withdrawn"))
			continue;
		own(code, json_text(status, "site"),
		    (struct own_code){.kind = OWN_BADGE, .number = (int32_t)json_number(x, "number", 0)});
		if (list)
			printf("%s\t0\t%s\n", code, json_text(x, "name"));
		json_array_append_new(badges,
		                      json_pack("{s:s,s:s,s:b,s:s}", "name", json_text(x, "name"), "role",
		                                kinds[kind >= 1 && kind <= 3 ? kind : 0], "registered",
		                                json_truth(x, "registered"), "code", code));
	}
	json_object_set_new(doc, "badges", badges);
	if (list) {
		json_decref(doc);
		return EXIT_OK;
	}
	return put_on_paper(w, doc);
}

static int label_scanner_check(const struct words *w, const json_t *status)
{
	char start[OWN_CODE_MAX], end[OWN_CODE_MAX];
	json_t *doc = document("scanner-check", json_text(status, "site_name"));
	own(start, json_text(status, "site"),
	    (struct own_code){.kind = OWN_SCANNER_CHECK, .number = OWN_CHECK_START});
	own(end, json_text(status, "site"),
	    (struct own_code){.kind = OWN_SCANNER_CHECK, .number = OWN_CHECK_END});
	json_object_set_new(doc, "start", json_string(start));
	json_object_set_new(doc, "end", json_string(end));
	return put_on_paper(w, doc);
}

int tool_label(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, label_options, label_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	int ways = words_given(&w, label_options, "list") + words_given(&w, label_options, "pdf") +
	           words_given(&w, label_options, "printer");
	if (!w.n_rest)
		return words_missing("pack, digits, cards, badges or scanner-check", label_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], label_usage);
	if (!ways)
		return words_missing("--pdf, --printer or --list", label_usage);
	if (ways > 1)
		return words_beyond("--list, --pdf and --printer: one of them", label_usage);
	const char *what = w.rest[0];
	int given = 0;
	if (words_number("--room", words_value(&w, label_options, "room"), 1, ROOM_NUMBER_MAX, &given,
	                 label_usage) < 0)
		return EXIT_USAGE;
	if (strcmp(what, "pack") == 0)
		return label_pack(&w);
	_cleanup_(json_drop) json_t *status = ask_status(&e);
	if (!status)
		return client_fail(&e);
	if (strcmp(what, "badges") == 0)
		return label_badges(&w, status);
	if (strcmp(what, "scanner-check") == 0)
		return label_scanner_check(&w, status);
	int room = given ? given
	                 : (int)json_number(json_array_get(json_object_get(status, "rooms"), 0), "number", 1);
	const char *name = room_name(status, room);
	if (!name) {
		error_set(&e, -ENOENT, "room %d is not in station.ini: see 'bandtally status'", room);
		return client_fail(&e);
	}
	if (strcmp(what, "digits") == 0)
		return label_digits(&w, status, room, name);
	if (strcmp(what, "cards") == 0)
		return label_cards(&w, status, room, name);
	fputs(label_usage, stderr);
	return EXIT_USAGE;
}

/* --- print -------------------------------------------------------------------------------------- */

static const char print_usage[] =
    "usage: bandtally print list\n"
    "       bandtally print retry SLIP      prints a further copy of a slip that was not seen\n";

int tool_print(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	size_t i;
	json_t *x;
	int r = words_read(&w, argc, argv, "", print_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest && strcmp(w.rest[0], "retry") == 0) {
		int slip = 0;
		if (w.n_rest < 2)
			return words_missing("SLIP, its number,", print_usage);
		if (w.n_rest > 2)
			return words_beyond(w.rest[2], print_usage);
		if (words_number("SLIP", w.rest[1], 1, SLIP_NUMBER_MAX, &slip, print_usage) < 0)
			return EXIT_USAGE;
		_cleanup_(json_drop) json_t *a =
		    client_ask(json_pack("{s:s,s:i}", "do", "retry", "slip", slip), &e);
		return a ? EXIT_OK : client_fail(&e);
	}
	if (!w.n_rest || strcmp(w.rest[0], "list") != 0)
		return words_missing("list or retry", print_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], print_usage);
	_cleanup_(json_drop) json_t *status = ask_status(&e);
	if (!status)
		return client_fail(&e);
	json_array_foreach(json_object_get(status, "slips"), i, x)
	    printf("slip %07d copy %d, case %d, %s: %s, not seen yet\n", (int)json_number(x, "number", 0),
	           (int)json_number(x, "copy", 1), (int)json_number(x, "case", 0), json_text(x, "kind"),
	           json_text(x, "state"));
	if (json_number(status, "slips_older", 0))
		printf("and %d older, not seen yet\n", (int)json_number(status, "slips_older", 0));
	return EXIT_OK;
}
