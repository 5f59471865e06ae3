#include "tool/stock-bench.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/date.h"
#include "count/team.h"
#include "tool/client.h"

#define STEPS_MAX 500
#define PACKS_MAX 100000 /* at once */
#define LABEL_NUMBER_MAX 99999999

struct asked {
	const struct words *w;
	const char *options, *usage;
	json_t *steps;
	int took_line; /* the word after the deed is its line */
	int comes_in;
	const char *line, *lot;
	int packs, room, by, and, first, last;
};

static const char *value(const struct asked *a, const char *name)
{
	return words_value(a->w, a->options, name);
}

/* --- steps ----------------------------------------------------------------------------------------- */

static void put(struct asked *a, const char *kind, json_t *what, const char *at)
{
	json_t *o = json_object();
	json_object_set_new(o, kind, what);
	if (at)
		json_object_set_new(o, "at", json_string(at));
	json_array_append_new(a->steps, o);
}

static void card(struct asked *a, const char *name, const char *at)
{
	put(a, "card", json_string(name), at);
}

static void text(struct asked *a, const char *what, const char *at)
{
	if (what)
		put(a, "text", json_string(what), at);
}

static void number(struct asked *a, int n, const char *at)
{
	char digits[12];
	snprintf(digits, sizeof digits, "%d", n);
	if (n >= 0)
		text(a, digits, at);
}

static void badge(struct asked *a, int n, const char *at)
{
	if (n)
		put(a, "badge", json_integer(n), at);
}

static int is_none(const char *text)
{
	return text && strcmp(text, "none") == 0;
}

/* What a code leaves open may be given beside it where something comes in, and nowhere else. */
static int is_said_twice(const struct asked *a)
{
	return value(a, "code") && !a->comes_in && (a->lot || value(a, "expiry"));
}

/* A day as in 2028-03-31, or none. */
static int is_day(const char *text)
{
	int y, m, d, used = 0;
	return is_none(text) ||
	       (strlen(text) == 10 && sscanf(text, "%4d-%2d-%2d%n", &y, &m, &d, &used) == 3 && used == 10 &&
	        date_make(y, m, d));
}

/* KEY, KEY/LOT, KEY/LOT/EXPIRY or a code as it was printed; -1 after a sentence where none is given. */
static int thing_as(struct asked *a, const char *kind)
{
	char key_lot[200];
	const char *code = value(a, "code"), *expiry = a->comes_in ? NULL : value(a, "expiry");
	if (is_said_twice(a)) {
		words_choose("give LINE with --lot and --expiry, or --code, which says them itself",
		             a->usage);
		return -1;
	}
	if (code) {
		put(a, kind, json_string(code), NULL);
		return 0;
	}
	if (!a->line) {
		words_missing("LINE, its key in the catalogue,", a->usage);
		return -1;
	}
	if (expiry && !is_day(expiry)) {
		words_not("--expiry", expiry, "a day as in 2028-03-31, or none", a->usage);
		return -1;
	}
	a->took_line = 1;
	const char *lot = a->comes_in && is_none(a->lot) ? NULL : a->lot;
	snprintf(key_lot, sizeof key_lot, "%s%s%s%s%s", a->line, lot || expiry ? "/" : "", lot ? lot : "",
	         expiry ? "/" : "", expiry ? expiry : "");
	put(a, kind, json_string(key_lot), NULL);
	return 0;
}

static int thing(struct asked *a)
{
	return thing_as(a, "text");
}

static int missing(struct asked *a, int is_missing, const char *what)
{
	if (is_missing)
		words_missing(what, a->usage);
	return is_missing ? -1 : 0;
}

/* --- each ------------------------------------------------------------------------------------------ */

/* -1 after a sentence where no number of packs is given, or nought, which is nothing to do. */
static int some_packs(struct asked *a)
{
	if (missing(a, a->packs < 0, "--packs") < 0)
		return -1;
	return words_number("--packs", value(a, "packs"), 1, PACKS_MAX, &a->packs, a->usage);
}

/* What is not given stays a question: nobody said that the pack has no lot or expiry. */
static int receive(struct asked *a)
{
	if (some_packs(a) < 0)
		return -1;
	a->comes_in = 1;
	badge(a, a->by, NULL); /* before what is typed: else it is of whose badge stood there before */
	card(a, "RECEIVE", NULL);
	if (thing(a) < 0)
		return -1;
	text(a, a->lot, "lot");
	text(a, value(a, "expiry"), "expiry");
	number(a, a->packs, "how-many");
	if (words_given(a->w, a->options, "sure"))
		card(a, "YES", "so-many");
	if (a->and)
		badge(a, a->and, "second");
	else
		card(a, "NOBODY TO CONFIRM", "second");
	return 0;
}

static int confirm(struct asked *a)
{
	if (missing(a, !a->and, "--and, the badge of whoever compared it,") < 0)
		return -1;
	card(a, "CONFIRM", NULL);
	if (thing(a) < 0)
		return -1;
	badge(a, a->and, "second");
	return 0;
}

static int issue(struct asked *a)
{
	if (missing(a, !a->room, "--room") < 0 || (a->packs >= 0 && some_packs(a) < 0))
		return -1;
	put(a, "to_room", json_integer(a->room), NULL);
	for (int n = a->first; a->first && n <= a->last; n++)
		put(a, "label", json_integer(n), NULL);
	for (int i = 0; !a->first && i < (a->packs < 0 ? 1 : a->packs); i++)
		if (thing(a) < 0)
			return -1;
	card(a, "DONE", "issue");
	return 0;
}

static int give_back(struct asked *a)
{
	const char *sealed = value(a, "sealed");
	int yes = sealed && strcmp(sealed, "yes") == 0;
	if (missing(a, !sealed || (!yes && strcmp(sealed, "no") != 0), "--sealed yes or no") < 0)
		return -1;
	if (a->first) {
		for (int n = a->first; n <= a->last; n++) {
			card(a, "RETURNED PACK", NULL);
			put(a, "label", json_integer(n), NULL);
			card(a, yes ? "YES" : "NO", "sealed");
		}
		return 0;
	}
	if (missing(a, !a->room, "--room, where it lay,") < 0)
		return -1;
	card(a, "RETURNED PACK", NULL);
	if (thing(a) < 0)
		return -1;
	put(a, "to_room", json_integer(a->room), "return-from");
	card(a, yes ? "YES" : "NO", "sealed");
	return 0;
}

static int count(struct asked *a)
{
	if (missing(a, a->packs < 0, "--packs") < 0)
		return -1;
	card(a, "COUNT SHELF", NULL);
	if (thing(a) < 0)
		return -1;
	number(a, a->packs, "count-many");
	return 0;
}

static int write_off(struct asked *a)
{
	const char *why = value(a, "why");
	if (some_packs(a) < 0 || missing(a, !why, "--why") < 0)
		return -1;
	card(a, "WRITE OFF", NULL);
	if (thing(a) < 0)
		return -1;
	number(a, a->packs, "write-many");
	text(a, why, "write-why");
	return 0;
}

static int labels(struct asked *a, const char *name)
{
	char range[40];
	if (missing(a, !a->first, "--labels") < 0)
		return -1;
	snprintf(range, sizeof range, "%d-%d", a->first, a->last);
	card(a, name, NULL);
	text(a, range, "label-which");
	return 0;
}

static int spoilt(struct asked *a)
{
	return labels(a, "SPOILT LABEL");
}

static int destroyed(struct asked *a)
{
	return labels(a, "DESTROYED LABEL");
}

static int print_again(struct asked *a)
{
	card(a, "PRINT LABELS", NULL);
	card(a, "YES", "print-again");
	return 0;
}

static int close_labels(struct asked *a)
{
	return thing_as(a, "box");
}

/* The slip says the case, and what that misses; else the line does, where one case alone misses it. */
static int came_back(struct asked *a)
{
	const char *slip = value(a, "slip");
	if (slip && (a->line || value(a, "code") || a->lot)) {
		words_choose("give LINE or --slip: the slip names the case, and what it misses", a->usage);
		return -1;
	}
	card(a, "FOUND", NULL);
	if (slip)
		text(a, slip, NULL);
	return slip ? 0 : thing(a);
}

static const struct {
	const char *word;
	int (*steps)(struct asked *a);
	const char *options, *done;
} deeds[] = {
    {"receive", receive, "bench json code lot expiry packs by and sure", "received"},
    {"confirm", confirm, "bench json code lot expiry and", "confirmed"},
    {"issue", issue, "bench json code lot expiry room packs labels", "issued"},
    {"return", give_back, "bench json code lot expiry room sealed labels", "put back or written off"},
    {"count", count, "bench json code lot expiry packs", "counted"},
    {"write-off", write_off, "bench json code lot expiry packs why", "written off"},
    {"spoilt", spoilt, "bench json labels", "entered"},
    {"destroyed", destroyed, "bench json labels", "entered"},
    {"close", close_labels, "bench json code lot expiry", "closed"},
    {"came-back", came_back, "bench json code lot slip", "entered"},
    {"print-again", print_again, "bench json", "printed"},
};

int stock_bench_knows(const char *word)
{
	for (size_t i = 0; i < sizeof deeds / sizeof *deeds; i++)
		if (strcmp(deeds[i].word, word) == 0)
			return 1;
	return 0;
}

/* --- the words, and the answer --------------------------------------------------------------------- */

/* "41" or "41-44" */
static int read_labels(struct asked *a)
{
	const char *range = value(a, "labels");
	char *end;
	if (!range)
		return 0;
	long first = strtol(range, &end, 10), last = *end == '-' ? strtol(end + 1, &end, 10) : first;
	if (*end || first < 1 || last < first || last > LABEL_NUMBER_MAX || last - first >= STEPS_MAX / 3) {
		fprintf(
		    stderr,
		    "bandtally: --labels is '%.40s': it must be a number or a range of at most %d, as 41-44: "
		    "see below\n%s",
		    range, STEPS_MAX / 3, a->usage);
		return -1;
	}
	a->first = (int)first;
	a->last = (int)last;
	return 0;
}

static int read_words(struct asked *a)
{
	a->packs = -1;
	return words_number("--packs", value(a, "packs"), 0, PACKS_MAX, &a->packs, a->usage) < 0 ||
	               words_number("--room", value(a, "room"), 1, ROOM_NUMBER_MAX, &a->room, a->usage) < 0 ||
	               words_number("--by", value(a, "by"), 1, BADGE_NUMBER_MAX, &a->by, a->usage) < 0 ||
	               words_number("--and", value(a, "and"), 1, BADGE_NUMBER_MAX, &a->and, a->usage) < 0 ||
	               read_labels(a) < 0
	           ? -1
	           : 0;
}

static int exit_of(const json_t *answer)
{
	if (strcmp(json_text(answer, "verdict"), "refused") == 0)
		return EXIT_REFUSED;
	return *json_text(answer, "asked") ? EXIT_QUESTION : EXIT_OK;
}

/* Whoever reads that it was refused, or left, must not have to guess what is in the record. */
static int tell(const json_t *answer, const char *done)
{
	size_t i;
	json_t *x;
	int code = exit_of(answer);
	json_array_foreach(json_object_get(answer, "said"), i, x) puts(json_string_value(x));
	if (strcmp(json_text(answer, "why"), "stock-which-expiry") == 0)
		puts("here: --expiry, with that day or none");
	if (code == EXIT_QUESTION)
		printf("left, since nothing answers this: %s\n", json_text(answer, "asked"));
	if (code != EXIT_OK && json_number(answer, "entered", 0))
		puts("what is said before that is entered");
	else if (code != EXIT_OK)
		printf("nothing was %s\n", done);
	return code;
}

int stock_bench(const struct words *w, const char *options, const char *usage)
{
	struct error e = {0};
	struct asked a = {.w = w, .options = options, .usage = usage};
	int bench = 0;
	a.line = w->n_rest > 1 ? w->rest[1] : NULL;
	a.lot = value(&a, "lot");
	if (read_words(&a) < 0 ||
	    words_number("--bench", value(&a, "bench"), 1, ROOM_NUMBER_MAX, &bench, usage) < 0)
		return EXIT_USAGE;
	a.steps = json_array();
	int r = -1;
	const char *done = "";
	for (size_t i = 0; i < sizeof deeds / sizeof *deeds; i++)
		if (strcmp(deeds[i].word, w->rest[0]) == 0) {
			r = words_only(w, options, deeds[i].options, usage) ? -1 : deeds[i].steps(&a);
			done = deeds[i].done;
		}
	if (r == 0 && w->n_rest > 1 + a.took_line)
		r = -words_beyond(w->rest[1 + a.took_line], usage);
	if (r < 0) {
		json_decref(a.steps);
		return EXIT_USAGE;
	}
	json_t *q = json_pack("{s:s,s:o}", "do", "bench", "steps", a.steps);
	if (bench)
		json_object_set_new(q, "room", json_integer(bench));
	_cleanup_(json_drop) json_t *answer = client_ask(q, &e);
	if (!answer)
		return client_fail(&e);
	if (!words_given(w, options, "json"))
		return tell(answer, done);
	print_json(answer);
	return exit_of(answer);
}
