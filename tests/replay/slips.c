#include "slips.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "record/chain.h"
#include "record/event-json.h"
#include "tell/slip.h"
#include "tell/view.h"

#define WIDTH 110 /* a value that fits is written on one line */

/* --- making -------------------------------------------------------------------------------------- */

/* What record_each() gives of one case up to event `to`: its own events, and the starts and marks in time between. */
static struct story *story_of(const struct slips_source *from, int32_t case_no, int64_t to, struct moment now)
{
	struct event *of_case = calloc((size_t)from->count, sizeof *of_case);
	struct story *story = NULL;
	int first = 0, last = (int)to, n = 0;
	while (first < from->count && from->events[first].case_no != case_no)
		first++;
	while (last > first && from->events[last - 1].case_no != case_no)
		last--;
	for (int i = first; i < last; i++) {
		const struct event *e = &from->events[i];
		if (e->case_no == case_no || e->kind == EV_STARTED || e->kind == EV_ALIVE)
			of_case[n++] = *e;
	}
	if (story_make(&story, from->language, of_case, n, now) < 0) {
		fprintf(stderr, "replay: case %d cannot be told\n", (int)case_no);
		exit(1);
	}
	free(of_case);
	return story;
}

static int64_t first_queued(const struct slips_source *from, int32_t slip)
{
	for (int i = 0; i < from->count; i++)
		if (from->events[i].kind == EV_SLIP_QUEUED && from->events[i].n == slip)
			return i + 1;
	return from->count;
}

/* The hash of event `to`, as a record of these events would have it. */
static json_t *hash_of(const struct slips_source *from, int64_t to)
{
	struct chain chain = {0};
	char hex[2 * CHAIN_BYTES + 1];
	for (int64_t i = 0; i < to; i++) {
		_cleanup_(buf_free) struct buf text = {0};
		if (event_write(&from->events[i], &text) < 0) {
			fprintf(stderr, "replay: event %d cannot be written\n", (int)i + 1);
			exit(1);
		}
		chain_add(&chain, text.data, text.size);
	}
	chain_hex(&chain, hex);
	return json_string(hex);
}

/* As the teller does: of a slip up to its own event, of a case as it is now (slip 0). */
static json_t *made(const struct slips_source *from, const struct event *queued, int32_t slip_no,
                    const char *title)
{
	char time[26];
	struct past past;
	int64_t to = slip_no ? first_queued(from, slip_no) : from->count;
	struct moment now = slip_no ? from->events[to - 1].at : from->now;
	struct story *story = story_of(from, queued->case_no, to, now);
	past_init(&past, to, from->station);
	for (int i = 0; i < from->count; i++)
		past_take(&past, &from->events[i]);
	clock_text_full(from->now.wall_ms, from->now.utc_min, time);
	const struct slip_source slip = {.story = story,
	                                 .language = from->language,
	                                 .kind = (enum slip_kind)queued->what,
	                                 .number = queued->n,
	                                 .copy = queued->other,
	                                 .proof = queued->proof,
	                                 .station = queued->station,
	                                 .past = &past,
	                                 .now = now,
	                                 .paper = "a5",
	                                 .dpi = 300,
	                                 .time = time,
	                                 .version = "<version>",
	                                 .seq = to,
	                                 .chain = "<hash>"};
	json_t *document = slip_document(&slip);
	json_object_set_new(document, "jws", json_string("<signature>"));
	json_t *all = json_pack("{s:s,s:o,s:o,s:o}", "title", title, "document", document, "signed",
	                        slip_summary(&slip), "chain", hash_of(from, to));
	past_deinit(&past);
	free(story);
	return all;
}

json_t *slips_queued(const struct slips_source *from, const struct event *queued)
{
	char title[80];
	snprintf(title, sizeof title, "slip %d copy %d of case %d: %s", (int)queued->n, (int)queued->other,
	         (int)queued->case_no, slip_kind_name((enum slip_kind)queued->what));
	return made(from, queued, queued->n, title);
}

json_t *slips_case(const struct slips_source *from, int32_t case_no)
{
	const struct event none = {.case_no = case_no, .what = SLIP_RECONCILIATION, .n = 1, .other = 1};
	char title[80];
	snprintf(title, sizeof title, "case %d at the end of the script, without a slip", (int)case_no);
	json_t *all = made(from, &none, 0, title), *document = json_object_get(all, "document");
	static const char *const of_a_slip[] = {"slip", "copy", "code", "jws"};
	for (size_t i = 0; i < sizeof of_a_slip / sizeof *of_a_slip; i++)
		json_object_del(document, of_a_slip[i]);
	json_object_del(all, "signed");
	return all;
}

/* --- writing ------------------------------------------------------------------------------------- */

static void line(struct buf *out, int depth, const char *key)
{
	buf_printf(out, "%*s", depth, "");
	if (key)
		buf_printf(out, "\"%s\": ", key);
}

static int by_name(const void *a, const void *b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static void write_value(const json_t *value, int depth, const char *key, struct buf *out);

static void write_fields(const json_t *object, int depth, struct buf *out)
{
	const char *keys[64] = {NULL}, *key;
	json_t *value;
	size_t n = 0;
	json_object_foreach((json_t *)object, key, value) if (n < 64) keys[n++] = key;
	qsort(keys, n, sizeof *keys, by_name);
	for (size_t i = 0; i < n; i++) {
		write_value(json_object_get(object, keys[i]), depth, keys[i], out);
		buf_add_text(out, i + 1 < n ? ",\n" : "\n");
	}
}

/* Sorted by name; what is short stands on one line. */
static void write_value(const json_t *value, int depth, const char *key, struct buf *out)
{
	_cleanup_(buf_free) struct buf flat = {0};
	size_t n = json_array_size(value);
	json_write_canonical(value, &flat);
	line(out, depth, key);
	if (flat.size + (size_t)depth < WIDTH || !(json_is_object(value) || n)) {
		buf_add(out, flat.data, flat.size);
		return;
	}
	buf_add_text(out, json_is_object(value) ? "{\n" : "[\n");
	if (json_is_object(value))
		write_fields(value, depth + 1, out);
	for (size_t i = 0; i < n; i++) {
		write_value(json_array_get(value, i), depth + 1, NULL, out);
		buf_add_text(out, i + 1 < n ? ",\n" : "\n");
	}
	line(out, depth, NULL);
	buf_add_text(out, json_is_object(value) ? "}" : "]");
}

/* Each value of `there` that is not what it is here, by the way to it: counts[0].when: "23:10". */
static void write_differences(const json_t *here, const json_t *there, const char *way, struct buf *out)
{
	char further[300];
	const char *key;
	json_t *value;
	if (json_equal(here, there))
		return;
	if (json_is_object(there) && json_is_object(here)) {
		json_object_foreach((json_t *)there, key, value)
		{
			snprintf(further, sizeof further, "%s%s%s", way, *way ? "." : "", key);
			write_differences(json_object_get(here, key), value, further, out);
		}
	} else if (json_is_array(there) && json_array_size(here) == json_array_size(there)) {
		for (size_t i = 0; i < json_array_size(there); i++) {
			snprintf(further, sizeof further, "%s[%zu]", way, i);
			write_differences(json_array_get(here, i), json_array_get(there, i), further, out);
		}
	} else {
		buf_printf(out, " %s: ", way);
		json_write_canonical(there, out);
		buf_add_text(out, "\n");
	}
}

void slips_write(const json_t *list, const json_t *elsewhere, const char *where, struct buf *out)
{
	for (size_t i = 0; i < json_array_size(list); i++) {
		const json_t *here = json_array_get(list, i), *there = json_array_get(elsewhere, i);
		const json_t *sign = json_object_get(here, "signed");
		buf_printf(out, "%s%s\n", i ? "\n" : "", json_text(here, "title"));
		write_value(json_object_get(here, "document"), 0, NULL, out);
		if (sign) {
			buf_add_text(out, "\nsigned: ");
			write_value(sign, 0, NULL, out);
		}
		buf_printf(out, "\n%s:\n", where);
		write_differences(json_object_get(here, "document"), json_object_get(there, "document"),
		                  "document", out);
		write_differences(sign, json_object_get(there, "signed"), "signed", out);
	}
}
