/* catalogue, staff, stock: what is counted and who counts. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "count/catalogue-import.h"
#include "count/catalogue.h"
#include "count/event.h"
#include "count/team.h"
#include "tool/client.h"
#include "tool/import.h"
#include "tool/stock-bench.h"
#include "tool/stock-labels.h"
#include "tool/stock-print.h"
#include "tool/tool.h"
#include "tool/words.h"

static const char catalogue_options[] = "whole preview json";
static const char catalogue_usage[] =
    "usage: bandtally catalogue import [--preview] [--whole] [--json] FILE\n"
    "       bandtally catalogue export\n"
    "       bandtally catalogue check FILE\n"
    "FILE is CSV with a head line: "
    "key,name,role,codes,marked,visible,single_use,identity,rolls_on,xray,per_pack,\n"
    "size_mm,contents,instead,label,label_place,minimum. role:" ROLE_NAMES
    ";\nidentity: none pack mark; yes or no for the flags; codes separated by spaces; label: no, before or "
    "after sterilising. import takes all lines or none; --preview\n"
    "says what it would change, line by line, and takes nothing; --whole: the file is the whole catalogue, "
    "and what it lacks is removed.\n"
    "example: bandtally catalogue import --preview catalogue.csv\n";

/* What a station that runs here has; none where none does, or does not say it to this user. */
static void catalogue_there(struct catalogue *there)
{
	struct error none = {0};
	struct csv places;
	int *numbers = NULL;
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "lines"), &none);
	const char *csv = json_text(a, "csv");
	*there = (struct catalogue){0};
	if (a)
		catalogue_read_lines(csv, strlen(csv), there, &numbers, &places, &none);
	free(numbers);
}

/* As an import would take it. How many lines, or a negative errno. */
static int catalogue_sound(const struct buf *text, char beside[LINE_KEY_MAX], struct error *e)
{
	struct catalogue there;
	struct catalogue_import im;
	const struct line *needs = NULL;
	catalogue_there(&there);
	int n = catalogue_import_init(&im, &there, text->data ? text->data : "", text->size, 0, e);
	if (n == 0) {
		n = catalogue_import_lists(&im, &there, &needs, e);
		n = n < 0 ? n : (int)im.file.count;
		snprintf(beside, LINE_KEY_MAX, "%s", needs ? needs->key : "");
		catalogue_import_deinit(&im);
	}
	catalogue_deinit(&there);
	return n;
}

static int fail_of_file(const char *path, const struct error *why)
{
	struct error e = {0};
	error_set(&e, why->code, "%s: %.400s", path, why->text);
	return client_fail(&e);
}

static int catalogue_check(const char *path, const struct buf *text)
{
	struct error why = {0};
	char beside[LINE_KEY_MAX] = "";
	int n = catalogue_sound(text, beside, &why);
	if (n < 0)
		return fail_of_file(path, &why);
	printf("%d lines, all sound\n", n);
	if (*beside)
		printf("'%s' holds what is in the station's catalogue and not in this file: it is no whole "
		       "catalogue, and 'import --whole' refuses it\n",
		       beside);
	return EXIT_OK;
}

static int catalogue_export(void)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "lines"), &e);
	if (!a)
		return client_fail(&e);
	fputs(json_text(a, "csv"), stdout);
	return EXIT_OK;
}

static int catalogue_import(const struct words *w, const char *path, const struct buf *text)
{
	struct error e = {0};
	struct line *lines = NULL;
	size_t count;
	int preview = words_given(w, catalogue_options, "preview");
	/* Here first: bytes that are no text do not come as far as the station. */
	if (catalogue_read_csv(text->data ? text->data : "", text->size, &lines, &count, &e) < 0)
		return fail_of_file(path, &e);
	free(lines);
	_cleanup_(json_drop) json_t *a =
	    import_send(json_pack("{s:s,s:b,s:b}", "do", "catalogue", "whole",
	                          words_given(w, catalogue_options, "whole"), "preview", preview),
	                path, text, &e);
	if (!a)
		return client_fail(&e);
	if (words_given(w, catalogue_options, "json"))
		print_json(a);
	else
		import_print_lines(a, preview);
	return EXIT_OK;
}

int tool_catalogue(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	_cleanup_(buf_free) struct buf text = {0};
	int r = words_read(&w, argc, argv, catalogue_options, catalogue_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest && words_only(&w, catalogue_options,
	                           strcmp(w.rest[0], "import") == 0  ? "whole preview json"
	                           : strcmp(w.rest[0], "check") == 0 ? "json"
	                                                             : "",
	                           catalogue_usage))
		return EXIT_USAGE;
	if (w.n_rest == 1 && strcmp(w.rest[0], "export") == 0)
		return catalogue_export();
	int import = w.n_rest && strcmp(w.rest[0], "import") == 0;
	if (!import && !(w.n_rest && strcmp(w.rest[0], "check") == 0))
		return w.n_rest ? words_beyond(w.rest[0], catalogue_usage)
		                : words_missing("import, export or check", catalogue_usage);
	if (w.n_rest < 2)
		return words_missing("FILE", catalogue_usage);
	if (w.n_rest > 2)
		return words_beyond(w.rest[2], catalogue_usage);
	if (import_read_file(w.rest[1], &text, &e) < 0)
		return client_fail(&e);
	return import ? catalogue_import(&w, w.rest[1], &text) : catalogue_check(w.rest[1], &text);
}

/* --- staff -------------------------------------------------------------------------------------- */

static const char staff_options[] = "registered number= json preview";
static const char staff_usage[] =
    "usage: bandtally staff add [--registered] [--number N] practitioner|surgeon|nurse-in-charge NAME\n"
    "       bandtally staff list [--json]\n"
    "       bandtally staff withdraw NUMBER\n"
    "       bandtally staff import [--preview] [--json] FILE\n"
    "       bandtally staff export\n"
    "FILE is CSV with a head line: name,kind,number,registered. It is the whole list: who is not in it has "
    "left, "
    "and is withdrawn; a person\n"
    "without a number is new. --preview says what it would change and takes nothing.\n"
    "NAME is what board and slip show: a role code or a name, as the site wants it. A number, once given, is "
    "that person's for ever:\n"
    "--number is for a badge that is printed already, and for somebody who has come back.\n"
    "example: bandtally staff add --registered practitioner SCRUB-1\n";
static int staff_list(int as_json)
{
	struct error e = {0};
	size_t i;
	json_t *x;
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "list-staff"), &e);
	if (!a)
		return client_fail(&e);
	if (as_json) {
		_cleanup_(buf_free) struct buf b = {0};
		if (json_write_canonical(json_object_get(a, "staff"), &b) == 0)
			puts(b.data);
		return EXIT_OK;
	}
	json_array_foreach(json_object_get(a, "staff"), i, x)
	{
		enum staff_kind kind = (enum staff_kind)json_number(x, "kind", 0);
		printf("%06d  %-32s %s%s%s\n", (int)json_number(x, "number", 0), json_text(x, "name"),
		       staff_kind_name(kind), json_truth(x, "registered") ? ", registered" : "",
		       json_truth(x, "withdrawn") ? ", withdrawn" : "");
	}
	return EXIT_OK;
}

static int staff_add(const struct words *w)
{
	struct error e = {0};
	int number = 0, kind = staff_kind_from_name(w->rest[1]);
	if (words_number("--number", words_value(w, staff_options, "number"), 1, BADGE_NUMBER_MAX, &number,
	                 staff_usage) < 0)
		return EXIT_USAGE;
	if (kind < 0) {
		fprintf(stderr,
		        "bandtally: '%.40s' is no kind of badge: it must be practitioner, surgeon or "
		        "nurse-in-charge: see "
		        "below\n%s",
		        w->rest[1], staff_usage);
		return EXIT_USAGE;
	}
	json_t *q = json_pack("{s:s,s:s,s:i,s:b}", "do", "staff", "name", w->rest[2], "kind", kind,
	                      "registered", words_given(w, staff_options, "registered"));
	if (!q) {
		error_set(&e, -EINVAL, "the name is not UTF-8: type it again");
		return client_fail(&e);
	}
	if (number)
		json_object_set_new(q, "number", json_integer(number));
	_cleanup_(json_drop) json_t *a = client_ask(q, &e);
	if (!a)
		return client_fail(&e);
	printf("badge %06d: %s\n", (int)json_number(a, "number", 0), w->rest[2]);
	return EXIT_OK;
}

/* Those who are not withdrawn, as import takes them. */
static int staff_export(void)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s}", "do", "list-staff"), &e);
	if (!a)
		return client_fail(&e);
	fputs(json_text(a, "csv"), stdout);
	return EXIT_OK;
}

static int staff_import(const struct words *w, const char *path)
{
	struct error e = {0};
	_cleanup_(buf_free) struct buf text = {0};
	int preview = words_given(w, staff_options, "preview");
	if (import_read_file(path, &text, &e) < 0)
		return client_fail(&e);
	_cleanup_(json_drop) json_t *a =
	    import_send(json_pack("{s:s,s:b}", "do", "staff-file", "preview", preview), path, &text, &e);
	if (!a)
		return client_fail(&e);
	if (words_given(w, staff_options, "json"))
		print_json(a);
	else
		import_print_people(a, preview);
	return EXIT_OK;
}

int tool_staff(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	int r = words_read(&w, argc, argv, staff_options, staff_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest && words_only(&w, staff_options,
	                           strcmp(w.rest[0], "add") == 0      ? "registered number"
	                           : strcmp(w.rest[0], "list") == 0   ? "json"
	                           : strcmp(w.rest[0], "import") == 0 ? "preview json"
	                                                              : "",
	                           staff_usage))
		return EXIT_USAGE;
	if (w.n_rest == 1 && strcmp(w.rest[0], "list") == 0)
		return staff_list(words_given(&w, staff_options, "json"));
	if (w.n_rest && strcmp(w.rest[0], "add") == 0)
		return w.n_rest < 3 ? words_missing(w.n_rest < 2 ? "the kind of badge" : "NAME", staff_usage)
		       : w.n_rest > 3 ? words_beyond(w.rest[3], staff_usage)
		                      : staff_add(&w);
	if (w.n_rest == 1 && strcmp(w.rest[0], "export") == 0)
		return staff_export();
	int import = w.n_rest && strcmp(w.rest[0], "import") == 0;
	if (!import && !(w.n_rest && strcmp(w.rest[0], "withdraw") == 0))
		return w.n_rest ? words_beyond(w.rest[0], staff_usage)
		                : words_missing("add, list, withdraw, import or export", staff_usage);
	if (w.n_rest < 2)
		return words_missing(import ? "FILE" : "NUMBER, that of the badge,", staff_usage);
	if (w.n_rest > 2)
		return words_beyond(w.rest[2], staff_usage);
	if (import)
		return staff_import(&w, w.rest[1]);
	int number = 0;
	if (words_number("NUMBER", w.rest[1], 1, BADGE_NUMBER_MAX, &number, staff_usage) < 0)
		return EXIT_USAGE;
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:i}", "do", "withdraw", "number", number), &e);
	return a ? EXIT_OK : client_fail(&e);
}

/* --- stock -------------------------------------------------------------------------------------- */

static const char stock_options[] = "lot= why= since= by= and= json code= expiry= packs= room= sealed= "
                                    "labels= sure bench= slip= write= take= key=";
static const char stock_usage[] =
    "usage: bandtally stock list [LINE] [--lot LOT] [--json]\n"
    "       bandtally stock earliest [LINE] [--json]\n"
    "       bandtally stock recall LINE [--lot LOT] [--json]\n"
    "       bandtally stock shortfalls [--since YYYYMMDD] [--json]\n"
    "       bandtally stock found LINE [--since YYYYMMDD] [--json]\n"
    "       bandtally stock quarantine LINE [--lot LOT] --why TEXT\n"
    "       bandtally stock release LINE [--lot LOT] --by BADGE --and BADGE\n"
    "       bandtally stock labels --write FILE | --take FILE --key THUMBPRINT\n" STOCK_BENCH_USAGE
    "list says what lies where; earliest what may be used, first what expires first; recall where a line or "
    "a "
    "lot\n"
    "lies, which cases used it and which rooms have not scanned since; shortfalls which trays lack an "
    "instrument,\n"
    "which ended cases miss one, and what was found; found which cases had a line, for what came back in a "
    "tray\n"
    "and no case misses. A line in quarantine, or one lot of it, may not be counted in until "
    "it is\n"
    "released. labels writes the numbers that this station gave out as a signed list, or takes another "
    "station's.\n"
    "The others do what is scanned and typed at a stores bench (--bench ROOM; the first, where it "
    "is "
    "left out),\n"
    "marked keyed; exit codes 3 refused, 4 something is asked that was not given. What the code of a pack "
    "says is not "
    "given\n"
    "besides; none says that a pack bears no lot or no expiry. Where stores have one lot with several "
    "expiries, --expiry "
    "names\n"
    "which.\n"
    "example: bandtally stock receive GREEN-M --lot T26 --expiry 2028-03-31 --packs 40 --by 1 --and 2\n";

static int stock_quarantine(const char *line, const char *lot, const char *why)
{
	struct error e = {0};
	if (!why || !*why)
		return words_missing("--why", stock_usage);
	_cleanup_(json_drop) json_t *a = client_ask(json_pack("{s:s,s:s,s:s,s:s}", "do", "quarantine", "line",
	                                                      line, "lot", lot ? lot : "", "why", why),
	                                            &e);
	if (!a)
		return client_fail(&e);
	printf("in quarantine: %s%s%s\n", line, lot ? ", lot " : "", lot ? lot : "");
	return EXIT_OK;
}

static int stock_release(const struct words *w, const char *line, const char *lot)
{
	struct error e = {0};
	int by = 0, and = 0;
	if (words_number("--by", words_value(w, stock_options, "by"), 1, BADGE_NUMBER_MAX, &by, stock_usage) <
	        0 ||
	    words_number("--and", words_value(w, stock_options, "and"), 1, BADGE_NUMBER_MAX, &and,
	                 stock_usage) < 0)
		return EXIT_USAGE;
	if (!by || !and)
		return words_missing("--by and --and, the badges of two people,", stock_usage);
	_cleanup_(json_drop) json_t *a =
	    client_ask(json_pack("{s:s,s:s,s:s,s:i,s:i}", "do", "release", "line", line, "lot",
	                         lot ? lot : "", "by", by, "and", and),
	               &e);
	if (!a)
		return client_fail(&e);
	printf("released: %s%s%s\n", line, lot ? ", lot " : "", lot ? lot : "");
	if (*json_text(a, "still"))
		printf("it stays in quarantine all the same, with the whole of %s: %s\n", line,
		       json_text(a, "still"));
	return EXIT_OK;
}

/* What needs no line; -1 none of them. */
static int stock_of_all(const char *what, const char *line, const char *lot, int since, int as_json)
{
	if (strcmp(what, "list") == 0)
		return stock_print_list(line, lot, as_json);
	if (strcmp(what, "shortfalls") == 0)
		return line ? words_beyond(line, stock_usage) : stock_print_shortfalls(since, as_json);
	return strcmp(what, "earliest") == 0 ? stock_print_earliest(line, as_json) : -1;
}

static int stock_labels_of(const struct words *w)
{
	const char *write = words_value(w, stock_options, "write"),
	           *take = words_value(w, stock_options, "take"), *key = words_value(w, stock_options, "key");
	if (!write == !take)
		return words_choose("give one of --write FILE and --take FILE", stock_usage);
	if (take && !key)
		return words_missing("--key, as the station that wrote the list named it,", stock_usage);
	return w->n_rest > 1 ? words_beyond(w->rest[1], stock_usage) : stock_labels(write, take, key);
}

int tool_stock(int argc, char **argv)
{
	static const struct {
		const char *word, *options;
	} known[] = {{"list", "lot json"},         {"earliest", "json"},        {"recall", "lot json"},
	             {"shortfalls", "since json"}, {"found", "since json"},     {"quarantine", "lot why"},
	             {"release", "lot by and"},    {"labels", "write take key"}};
	const int n_known = sizeof known / sizeof *known;
	struct words w;
	int since = 0, n = 0, r = words_read(&w, argc, argv, stock_options, stock_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	const char *what = w.n_rest ? w.rest[0] : "", *line = w.n_rest > 1 ? w.rest[1] : NULL;
	const char *lot = words_value(&w, stock_options, "lot"), *why = words_value(&w, stock_options, "why");
	int as_json = words_given(&w, stock_options, "json");
	if (stock_bench_knows(what))
		return w.n_rest > 2 ? words_beyond(w.rest[2], stock_usage)
		                    : stock_bench(&w, stock_options, stock_usage);
	while (n < n_known && strcmp(known[n].word, what) != 0)
		n++;
	if (n == n_known)
		return *what ? words_beyond(what, stock_usage)
		             : words_missing("what to do with the stock", stock_usage);
	if (words_only(&w, stock_options, known[n].options, stock_usage))
		return EXIT_USAGE;
	if (strcmp(what, "labels") == 0)
		return stock_labels_of(&w);
	if (w.n_rest > 2)
		return words_beyond(w.rest[2], stock_usage);
	if (words_number("--since", words_value(&w, stock_options, "since"), 19000101, 99991231, &since,
	                 stock_usage) < 0)
		return EXIT_USAGE;
	r = stock_of_all(what, line, lot, since, as_json);
	if (r >= 0)
		return r;
	if (!line)
		return words_missing("LINE, its key in the catalogue,", stock_usage);
	if (lot && !*lot)
		return words_missing("the lot behind --lot (left out, it is the whole line)", stock_usage);
	if (strcmp(what, "recall") == 0)
		return stock_print_recall(line, lot, as_json);
	if (strcmp(what, "found") == 0)
		return stock_print_found(line, since, as_json);
	return strcmp(what, "release") == 0 ? stock_release(&w, line, lot) : stock_quarantine(line, lot, why);
}
