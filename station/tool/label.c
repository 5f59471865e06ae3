/* label: everything that stores and administration put on paper. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/date.h"
#include "tell/pack-labels.h"
#include "tool/client.h"
#include "tool/label.h"
#include "tool/print.h"
#include "tool/tool.h"

static int32_t expiry_number(const char *text)
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
	return date_make(y, m, d);
}

static json_t *pack_document(const struct words *w, const json_t *a, int count, int32_t expiry)
{
	int dpi = 0;
	const char *lot = words_value(w, LABEL_OPTIONS, "lot");
	json_t *doc = label_document("pack-labels", json_text(a, "site_name"));
	_cleanup_(json_drop) json_t *labels =
	    pack_labels_document(&(struct pack_labels){.time = json_text(doc, "time"),
	                                               .site = json_text(a, "site"),
	                                               .site_name = json_text(a, "site_name"),
	                                               .station = (int)json_number(a, "station", 0),
	                                               .name = json_text(a, "name"),
	                                               .lot = lot ? lot : "",
	                                               .language = json_text(a, "language"),
	                                               .expiry = expiry,
	                                               .first = (int32_t)json_number(a, "first", 0),
	                                               .count = count});
	json_object_update(doc, labels);
	json_object_update(doc, json_object_get(a, "medium"));
	if (words_number("--dpi", words_value(w, LABEL_OPTIONS, "dpi"), 203, 600, &dpi, label_usage) == 0 &&
	    dpi)
		json_object_set_new(doc, "dpi", json_integer(dpi));
	return doc;
}

/* `only_try`: what would be numbered. NULL with `e`. */
static json_t *ask_numbers(const struct words *w, int32_t expiry, int count, int only_try, struct error *e)
{
	const char *lot = words_value(w, LABEL_OPTIONS, "lot"),
	           *medium = words_value(w, LABEL_OPTIONS, "media");
	json_t *q = json_pack("{s:s,s:s,s:s,s:i,s:i,s:b}", "do", "label", "line",
	                      words_value(w, LABEL_OPTIONS, "line"), "lot", lot ? lot : "", "expiry",
	                      (int)expiry, "count", count, "try", only_try);
	if (q && medium)
		json_object_set_new(q, "medium", json_string(medium));
	return client_ask(q, e);
}

/* First whether they can be printed at all: numbers that were given out are never given out again. */
static int label_numbers(const struct words *w, int32_t expiry, int count)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *try = ask_numbers(w, expiry, count, 1, &e);
	if (!try)
		return client_fail(&e);
	_cleanup_(json_drop) json_t *trial = pack_document(w, try, count, expiry);
	const char *pdf = words_value(w, LABEL_OPTIONS, "pdf");
	int r = print_check(trial, pdf ? "--pdf" : "--printer",
	                    pdf ? pdf : words_value(w, LABEL_OPTIONS, "printer"));
	if (r != EXIT_OK)
		return r;
	_cleanup_(json_drop) json_t *a = ask_numbers(w, expiry, count, 0, &e);
	if (!a)
		return client_fail(&e);
	int first = (int)json_number(a, "first", 0);
	printf("item numbers %08d to %08d; on the pack: %s; %s sterilising\n", first, first + count - 1,
	       json_text(a, "place"), json_truth(a, "before") ? "before" : "after");
	fflush(stdout);
	return label_print(w, pack_document(w, a, count, expiry));
}

static int label_pack(const struct words *w)
{
	const char *line = words_value(w, LABEL_OPTIONS, "line");
	int32_t expiry = expiry_number(words_value(w, LABEL_OPTIONS, "expiry"));
	int count = 0, dpi = 300;
	if (words_only(w, LABEL_OPTIONS, "line lot expiry count media dpi pdf printer", label_usage) ||
	    expiry < 0 ||
	    words_number("--count", words_value(w, LABEL_OPTIONS, "count"), 1, 500, &count, label_usage) <
	        0 ||
	    words_number("--dpi", words_value(w, LABEL_OPTIONS, "dpi"), 203, 600, &dpi, label_usage) < 0)
		return EXIT_USAGE;
	if (!line || !count)
		return words_missing(line ? "--count" : "--line", label_usage);
	return label_numbers(w, expiry, count);
}

static int label_paper(const struct words *w, const char *what, int number)
{
	static const struct {
		int (*print)(const struct words *w, const json_t *status, const struct label_room *room);
		const char *name;
		bool of_room;
		const char *options;
	} papers[] = {
#define X(print, name, of_room, options, line) {print, name, of_room, options},
	    LABEL_PAPERS(X)
#undef X
	};
	struct error e = {0};
	struct label_room room;
	size_t i = 0, count = sizeof papers / sizeof *papers;
	while (i < count && strcmp(papers[i].name, what) != 0)
		i++;
	if (i == count)
		return words_beyond(what, label_usage);
	if (words_only(w, LABEL_OPTIONS, papers[i].options, label_usage))
		return EXIT_USAGE;
	_cleanup_(json_drop) json_t *status = label_status(&e);
	if (!status || (papers[i].of_room && label_room_of(status, number, &room, &e) < 0))
		return client_fail(&e);
	return papers[i].print(w, status, papers[i].of_room ? &room : NULL);
}

int tool_label(int argc, char **argv)
{
	struct words w;
	int r = words_read(&w, argc, argv, LABEL_OPTIONS, label_usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	int ways = words_given(&w, LABEL_OPTIONS, "list") + words_given(&w, LABEL_OPTIONS, "pdf") +
	           words_given(&w, LABEL_OPTIONS, "printer");
	if (!w.n_rest)
		return words_missing("what to print", label_usage);
	if (w.n_rest > 1)
		return words_beyond(w.rest[1], label_usage);
	if (!ways)
		return words_missing("--pdf, --printer or --list", label_usage);
	if (ways > 1)
		return words_choose("give one of --list, --pdf and --printer", label_usage);
	const char *what = w.rest[0];
	int given = 0;
	if (words_number("--room", words_value(&w, LABEL_OPTIONS, "room"), 1, ROOM_NUMBER_MAX, &given,
	                 label_usage) < 0)
		return EXIT_USAGE;
	if (strcmp(what, "pack") == 0)
		return label_pack(&w);
	return label_paper(&w, what, given);
}
