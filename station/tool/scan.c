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
    "Exit codes: 0 accepted, 3 refused, 4 the station asks something first, 1 failed, 2 wrong usage.\n"
    "example: bandtally scan --room 1 'PBC 0000 0000 0178'     a pack label that does not scan, typed as it "
    "is printed\n";

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
