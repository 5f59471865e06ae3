#include "tool/code-command.h"

#include <errno.h>
#include <getopt.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/buf.h"
#include "base/clock.h"
#include "base/error.h"
#include "base/hex.h"
#include "base/json.h"
#include "code/code.h"
#include "code/date.h"
#include "code/gs1.h"

static const char help[] =
    "usage: bandtally code TEXT [--json]\n"
    "       bandtally code --file FILE [--json]\n"
    "\n"
    "Says what a barcode says, element by element, or where and why it is wrong.\n"
    "\n"
    "  TEXT         as a scanner sends it, with or without its AIM identifier in front (]d2, ]C1 …),\n"
    "               or as it is printed, with brackets: '(01)09506000134352(17)270331(10)ABC'\n"
    "  --file FILE  answers each line of FILE; '-' reads standard input\n"
    "  --json       one JSON object for each code, on a line: \"ok\" true or false\n"
    "  --           what follows is TEXT, even if it begins with '-'\n"
    "\n"
    "Write the separator (GS, byte 0x1D) as <GS> or \\x1d; any other byte as \\xHH. In a file the bytes\n"
    "may also stand there as they are. Identifiers that a station never keeps are marked 'not kept'.\n"
    "\n"
    "Exit: 0 done, 1 TEXT is wrong or FILE cannot be read, 2 wrong usage.\n"
    "example: bandtally code '(01)09506000134352(17)280331(10)T26'\n";

/* A line as it was given, and as a scanner would send it. */
struct line {
	const char *given;
	size_t given_size;
	struct buf data;
	size_t *place; /* of each byte of data in `given`, and of its end */
};

static void line_deinit(struct line *l)
{
	buf_free(&l->data);
	free(l->place);
}

/* The byte that an escape at `p` stands for, and how long it is written; -1 where none is. */
static int escape(const char *p, size_t left, size_t *written)
{
	if (left >= 4 && !memcmp(p, "<GS>", 4)) {
		*written = 4;
		return GS1_SEPARATOR;
	}
	if (left < 4 || p[0] != '\\' || p[1] != 'x' || hex_value(p[2]) < 0 || hex_value(p[3]) < 0)
		return -1;
	*written = 4;
	return hex_value(p[2]) * 16 + hex_value(p[3]);
}

static int line_init(struct line *l, const char *given, size_t size)
{
	*l = (struct line){.given = given, .given_size = size, .place = calloc(size + 1, sizeof *l->place)};
	if (!l->place)
		return -ENOMEM;
	for (size_t i = 0, n; i < size; i += n) {
		n = 1;
		int byte = escape(given + i, size - i, &n);
		char c = byte < 0 ? given[i] : (char)byte;
		l->place[l->data.size] = i;
		int r = buf_add(&l->data, &c, 1);
		if (r < 0)
			return r;
	}
	l->place[l->data.size] = size;
	return 0;
}

/* "2027-03-31" for an element that is a date and nothing else, "" for others. */
static void date_text(const struct code *c, const struct code_element *e, int32_t today, char out[24])
{
	const struct gs1_ai *ai = gs1_ai(e->ai, strlen(e->ai));
	int32_t date = 0;
	out[0] = '\0';
	if (c->kind == CODE_HIBC) {
		date = !strcmp(e->ai, "EXP") ? c->expiry : !strcmp(e->ai, "MFG") ? c->made : 0;
	} else if (ai && !ai->parts[1].max && strlen(e->value) == 6 &&
	           (ai->parts[0].rules[0] == RULE_DATE || ai->parts[0].rules[0] == RULE_DATE_0)) {
		int year = date_year(date_digits(e->value, 2), today), month = date_digits(e->value + 2, 2);
		int day = date_digits(e->value + 4, 2);
		date = day ? date_make(year, month, day) : date_month_end(year, month);
	}
	if (date)
		snprintf(out, 24, "%04d-%02d-%02d", date / 10000, date / 100 % 100, date % 100);
}

static const char *own_kind_name(enum own_kind kind)
{
	switch (kind) {
	case OWN_NONE:
		return "";
	case OWN_CARD:
		return "card";
	case OWN_DIGIT:
		return "digit card";
	case OWN_BADGE:
		return "badge";
	case OWN_SLIP:
		return "slip";
	case OWN_CASE:
		return "case label";
	case OWN_SCANNER_CHECK:
		return "scanner check";
	case OWN_TRAY:
		return "tray";
	case OWN_ITEM:
		return "item label";
	case OWN_PAPER_SHEET:
		return "paper count sheet";
	}
	return "";
}

/* "card: OFF, room 1, site BC" */
static void own_text(const struct own_code *o, char *out, size_t room)
{
	const char *kind = own_kind_name(o->kind);
	switch (o->kind) {
	case OWN_CARD:
		snprintf(out, room, "%s: %s, room %d, site %s", kind,
		         own_card_name(o->meaning)[0] ? own_card_name(o->meaning)
		                                      : "a meaning unknown to this version",
		         o->room, o->site);
		return;
	case OWN_DIGIT:
		snprintf(out, room, "%s: %s, room %d, site %s", kind, own_digit_name(o->digit), o->room,
		         o->site);
		return;
	case OWN_SLIP:
		if (o->old)
			snprintf(
			    out, room,
			    "%s %d, copy %d, site %s, station 0; of an earlier version: no digits prove the "
			    "paper",
			    kind, o->number, o->copy, o->site);
		else
			snprintf(out, room, "%s %d, copy %d, site %s, station %d; its six digits are %06d",
			         kind, o->number, o->copy, o->site, o->station, (int)o->proof);
		return;
	case OWN_ITEM:
		snprintf(out, room, "%s %d, for the %s, site %s, station %d", kind, o->number,
		         o->role == 'P' ? "pack" : "paper or return bag", o->site, o->station);
		return;
	case OWN_CASE:
		snprintf(out, room, "%s %d, site %s, station %d", kind, o->number, o->site, o->station);
		return;
	case OWN_PAPER_SHEET:
		snprintf(out, room, "%s %d, room %d, site %s", kind, o->number, o->room, o->site);
		return;
	case OWN_BADGE:
	case OWN_TRAY:
		snprintf(out, room, "%s %d, site %s", kind, o->number, o->site);
		return;
	case OWN_SCANNER_CHECK:
		snprintf(out, room, "%s, step %d, site %s", kind, o->number, o->site);
		return;
	case OWN_NONE:
		snprintf(out, room, "nothing");
	}
}

static const char *kind_title(enum code_kind kind)
{
	switch (kind) {
	case CODE_PLAIN:
		return "plain text";
	case CODE_GS1:
		return "GS1 element strings";
	case CODE_HIBC:
		return "HIBC";
	case CODE_TRADE_ITEM:
		return "trade item number";
	case CODE_OWN:
		return "printed by a station";
	}
	return "";
}

static void print_code(const struct code *c, int32_t today)
{
	char date[24], own[160];
	printf("%s\n", kind_title(c->kind));
	if (c->kind == CODE_PLAIN)
		printf("  %s\n", c->plain);
	if (c->kind == CODE_OWN) {
		own_text(&c->own, own, sizeof own);
		printf("  %s%s\n", c->own.practice ? "practice set: " : "", own);
	}
	for (int i = 0; i < c->count; i++) {
		const struct code_element *e = &c->elements[i];
		char ai[CODE_AI_MAX + 2];
		date_text(c, e, today, date);
		snprintf(ai, sizeof ai, c->kind == CODE_HIBC ? "%s" : "(%s)", e->ai);
		printf("  %-6s  %-20s  %s%s\n", ai, e->title, date[0] ? date : e->value,
		       e->kept ? "" : "   [not kept]");
	}
	if (c->wants[0])
		printf("  half of a pair: %s; scan the other code of this pack too\n", c->wants);
	if (c->patient)
		printf("  it can identify a patient: a station keeps none of that\n");
}

/* The given text with nothing that a terminal would act on; one column for each character. */
static void print_harmless(FILE *f, const char *text, size_t size)
{
	for (size_t i = 0; i < size; i++) {
		unsigned char c = (unsigned char)text[i];
		fputc(c < 0x20 || c > 0x7e ? '?' : c, f);
	}
	fputc('\n', f);
}

#define WINDOW 72

static void print_fault(FILE *f, const struct line *l, const struct code_fault *fault)
{
	size_t at = l->place[fault->at < l->data.size ? fault->at : l->data.size];
	size_t from = at > WINDOW / 2 ? at - WINDOW / 2 : 0, size = l->given_size - from;
	fprintf(f, "bandtally: this code is wrong at character %zu: %s\n  ", at + 1, fault->why);
	print_harmless(f, l->given + from, size > WINDOW ? WINDOW : size);
	fprintf(f, "  %*s^\n", (int)(at - from), "");
}

static void set_text(json_t *o, const char *key, const char *text)
{
	if (text[0])
		json_object_set_new(o, key, json_string(text));
}

static void set_date(json_t *o, const char *key, int32_t date)
{
	char text[24];
	snprintf(text, sizeof text, "%04d-%02d-%02d", date / 10000, date / 100 % 100, date % 100);
	if (date)
		json_object_set_new(o, key, json_string(text));
}

static json_t *own_json(const struct own_code *o)
{
	json_t *v = json_object();
	char text[OWN_CODE_MAX], role[2] = {o->role, '\0'};
	own_code_write(o, text);
	set_text(v, "kind", own_kind_name(o->kind));
	if (o->practice)
		json_object_set_new(v, "practice", json_true());
	set_text(v, "site", o->site);
	set_text(v, "role", role);
	set_text(v, "code", text);
	if (o->kind == OWN_CARD || o->kind == OWN_DIGIT)
		json_object_set_new(v, "room", json_integer(o->room));
	if (o->kind == OWN_CARD) {
		json_object_set_new(v, "meaning", json_integer(o->meaning));
		set_text(v, "name", own_card_name(o->meaning));
	} else if (o->kind == OWN_DIGIT) {
		json_object_set_new(v, "digit", json_integer(o->digit));
		set_text(v, "name", own_digit_name(o->digit));
	} else {
		json_object_set_new(v, "number", json_integer(o->number));
	}
	if (o->kind == OWN_SLIP || o->kind == OWN_CASE || o->kind == OWN_ITEM)
		json_object_set_new(v, "station", json_integer(o->station));
	if (o->kind == OWN_SLIP)
		json_object_set_new(v, "copy", json_integer(o->copy));
	if (o->proof)
		json_object_set_new(v, "proof", json_sprintf("%06d", (int)o->proof));
	return v;
}

static json_t *elements_json(const struct code *c, int32_t today)
{
	json_t *list = json_array();
	for (int i = 0; i < c->count; i++) {
		const struct code_element *e = &c->elements[i];
		json_t *v = json_object();
		char date[24];
		date_text(c, e, today, date);
		json_object_set_new(v, "ai", json_string(e->ai));
		json_object_set_new(v, "title", json_string(e->title));
		json_object_set_new(v, "value", json_string(e->value));
		json_object_set_new(v, "kept", json_boolean(e->kept));
		set_text(v, "date", date);
		json_array_append_new(list, v);
	}
	return list;
}

static json_t *code_json(const struct code *c, int32_t today)
{
	static const char *const carriers[] = {"unknown", "gs1", "other"};
	json_t *v = json_object();
	char kept[4096];
	json_object_set_new(v, "ok", json_true());
	json_object_set_new(v, "kind", json_string(code_kind_name(c->kind)));
	json_object_set_new(v, "carrier", json_string(carriers[c->carrier]));
	json_object_set_new(v, "elements", elements_json(c, today));
	set_text(v, "product", c->product);
	set_text(v, "lot", c->lot);
	set_text(v, "serial", c->serial);
	set_date(v, "expiry", c->expiry);
	set_date(v, "made", c->made);
	set_text(v, "giai", c->giai);
	set_text(v, "grai", c->grai);
	set_text(v, "gsrn", c->gsrn);
	set_text(v, "plain", c->plain);
	set_text(v, "wants", c->wants);
	if (c->quantity)
		json_object_set_new(v, "quantity", json_integer(c->quantity));
	if (c->patient)
		json_object_set_new(v, "patient", json_true());
	if (c->kind == CODE_OWN)
		json_object_set_new(v, "own", own_json(&c->own));
	if (code_kept_text(c, kept, sizeof kept) > 0)
		set_text(v, "kept", kept);
	return v;
}

static json_t *fault_json(const struct line *l, const struct code_fault *fault)
{
	size_t at = l->place[fault->at < l->data.size ? fault->at : l->data.size];
	json_t *v = json_object();
	json_object_set_new(v, "ok", json_false());
	json_object_set_new(v, "at", json_integer((json_int_t)at));
	json_object_set_new(v, "why", json_string(fault->why));
	return v;
}

static int print_json(json_t *value)
{
	_cleanup_(buf_free) struct buf text = {0};
	int r = json_write_canonical(value, &text);
	json_decref(value);
	if (r == 0)
		printf("%s\n", text.data);
	return r;
}

/* Answers one code. 0 right, 1 wrong, negative errno where the answer could not be given. `faults` is where
 * the sentence goes when it is not JSON. */
static int answer(const char *text, size_t size, int32_t today, bool json, FILE *faults)
{
	_cleanup_(line_deinit) struct line l = {0};
	struct code_fault fault = {0, ""};
	struct code code;
	int r = line_init(&l, text, size);
	if (r < 0)
		return r;
	int wrong = code_read(&code, "", l.data.data ? l.data.data : "", l.data.size, today, &fault) < 0;
	if (json)
		r = print_json(wrong ? fault_json(&l, &fault) : code_json(&code, today));
	else if (wrong)
		print_fault(faults, &l, &fault);
	else
		print_code(&code, today);
	return r < 0 ? r : wrong;
}

static int failed(const char *what, int negative_errno)
{
	fprintf(stderr, "bandtally: %s: %s: look at the name and the rights, then try again\n", what,
	        strerror(-negative_errno));
	return EXIT_FAILED;
}

static void close_unless_stdin(FILE **f)
{
	if (*f && *f != stdin)
		fclose(*f);
}

static void free_text(char **text)
{
	free(*text);
}

static int answer_file(const char *name, int32_t today, bool json)
{
	_cleanup_(free_text) char *text = NULL;
	_cleanup_(close_unless_stdin) FILE *f = strcmp(name, "-") ? fopen(name, "r") : stdin;
	size_t room = 0;
	ssize_t n;
	if (!f)
		return failed(name, -errno);
	while ((n = getline(&text, &room, f)) >= 0) {
		if (n > 0 && text[n - 1] == '\n')
			n--;
		if (n > 0 && text[n - 1] == '\r')
			n--;
		int r = answer(text, (size_t)n, today, json, stdout);
		if (r < 0)
			return failed(name, r);
	}
	if (ferror(f))
		return failed(name, -EIO);
	return EXIT_OK;
}

static int usage(const char *what)
{
	fprintf(stderr, "bandtally: code: %s: see 'bandtally code --help'\n", what);
	return EXIT_USAGE;
}

int tool_code(int argc, char **argv)
{
	static const struct option options[] = {{"file", required_argument, NULL, 'f'},
	                                        {"json", no_argument, NULL, 'j'},
	                                        {"help", no_argument, NULL, 'h'},
	                                        {NULL, 0, NULL, 0}};
	const char *file = NULL;
	bool json = false;
	int64_t now = clock_now().wall_ms;
	int32_t today = clock_date_number(now, clock_utc_min(now));
	optind = 0;
	for (int c; (c = getopt_long(argc, argv, ":", options, NULL)) != -1;) {
		switch (c) {
		case 'f':
			file = optarg;
			break;
		case 'j':
			json = true;
			break;
		case 'h':
			fputs(help, stdout);
			return EXIT_OK;
		case ':':
			return usage("--file needs the name of a file");
		default:
			return usage("there is no such option");
		}
	}
	int texts = argc - optind;
	if (file && texts)
		return usage("either TEXT or --file, not both");
	if (file)
		return answer_file(file, today, json);
	if (texts != 1)
		return usage(texts ? "one TEXT at a time; put it between quotes"
		                   : "a TEXT or --file is missing");
	int r = answer(argv[optind], strlen(argv[optind]), today, json, stderr);
	return r < 0 ? failed("the answer could not be given", r) : r ? EXIT_FAILED : EXIT_OK;
}
