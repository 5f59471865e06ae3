/* audit trace: where a line, a lot or one item was used, and where it came from; what a badge did after it was withdrawn;
 * every override, late entry and correction. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "count/team.h"
#include "record/summary.h"
#include "report/days.h"
#include "tell/story.h"
#include "tool/audit-give.h"
#include "tool/audit-language.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/document.h"
#include "tool/words.h"

#define TEXT_MAX 200

static const char options[] = "file= summary= language= line= lot= item= badge= why= overrides json csv pdf=";
static const char usage[] =
    "usage: bandtally audit trace (--line KEY | --lot LOT | --line KEY --lot LOT | --item NUMBER)\n"
    "       bandtally audit trace --badge NUMBER --why REASON\n"
    "       bandtally audit trace --overrides\n"
    "                             each with (--json | --csv | --pdf FILE) [--file RECORD] [--summary FILE]\n"
    "Forward: the cases in which it was scanned, their slips, where it is now, and when each room was last "
    "heard\n"
    "of; back: the numbers that stores gave out, quarantine and release. NUMBER is a stores' item number, "
    "or\n"
    "an identity as the record has it.\n"
    "  --badge      what it did after it was withdrawn; the running station records that somebody asked, and "
    "why\n"
    "  --overrides  every case with an override, a late entry or a correction\n"
    "  --summary    where one row a case is kept (default: beneath ~/.cache/bandtally); 'none' keeps "
    "nothing\n"
    "  --language   its words; without it those of the running station's site, else English\n"
    "Exit codes: 0 made, also where nothing was found; 1 failed, 2 wrong usage.\n";

/* What is looked for; "" and 0: not that. */
struct tracing {
	const char *line, *lot;
	char identity[IDENTITY_MAX];
	int badge, overrides;
	const struct language *language;
	struct record *record;
	struct summary summary;
	const struct recorded *settings;
	struct document d;
	struct case_events events; /* of the case that is being told */
	int further;               /* rows that found no place */
};

static int has_room(const json_t *rows, struct tracing *t)
{
	if (json_array_size(rows) < DOCUMENT_ROWS_MAX)
		return 1;
	t->further++;
	return 0;
}

static const char *room_of(const struct tracing *t, int32_t number, char out[TEXT_MAX])
{
	const struct room *r = recorded_room(t->settings, number);
	snprintf(out, TEXT_MAX, "%d", (int)number);
	return r && *r->name ? r->name : out;
}

static void add_case(struct tracing *t, json_t *cells, const struct case_row *row)
{
	char text[TEXT_MAX];
	snprintf(text, sizeof text, "%d", (int)row->case_no);
	document_cell(cells, text);
	day_text(row->day, text);
	document_cell(cells, text);
	document_cell(cells, room_of(t, row->room, text));
}

/* --- a line, a lot, an item: forward ------------------------------------------------------------------------- */

/* 1 where a case may hold it: the case itself tells. */
static int may_hold(const struct tracing *t, const struct case_row *row)
{
	uint32_t line = case_thing_mark(t->line), lot = case_thing_mark(t->lot),
	         identity = case_thing_mark(t->identity);
	for (int i = 0; i < row->n_things; i++)
		if ((!*t->line || row->lines[i] == line) && (!*t->lot || row->lots[i] == lot) &&
		    (!*t->identity || row->identities[i] == identity))
			return 1;
	return row->things_left_out;
}

static int is_meant(const struct tracing *t, const struct thing *th)
{
	return (!*t->line || strcmp(t->line, th->line) == 0) && (!*t->lot || strcmp(t->lot, th->lot) == 0) &&
	       (!*t->identity || strcmp(t->identity, th->identity) == 0);
}

static enum saying place_of(const struct item *it)
{
	switch ((enum item_place)it->place) {
	case ITEM_HERE:
		return SAY_RW_TRACE_PLACE_HERE;
	case ITEM_ON:
		return SAY_RW_TRACE_PLACE_ON;
	case ITEM_OFF:
		return SAY_RW_TRACE_PLACE_OFF;
	case ITEM_ACCOUNTED:
		return SAY_RW_TRACE_PLACE_ACCOUNTED;
	case ITEM_RETURNED:
		return SAY_RW_TRACE_PLACE_RETURNED;
	case ITEM_ISOLATED:
		return SAY_RW_TRACE_PLACE_ISOLATED;
	case ITEM_STRUCK:
		return SAY_RW_TRACE_PLACE_STRUCK;
	case ITEM_EXTRA:
		return SAY_RW_TRACE_PLACE_EXTRA;
	}
	return SAY_RW_NOT_KNOWN;
}

static void slips_of(const struct tracing *t, char out[TEXT_MAX])
{
	out[0] = 0;
	for (int i = 0; i < t->events.count; i++) {
		const struct event *e = &t->events.list[i];
		size_t used = strlen(out);
		if (e->kind == EV_SLIP_QUEUED && e->other <= 1)
			snprintf(out + used, TEXT_MAX - used, "%s%07d", used ? ", " : "", (int)e->n);
	}
}

static void add_item(struct tracing *t, json_t *rows, const struct case_row *row, const struct item *it,
                     const char *slips)
{
	char text[TEXT_MAX];
	if (!has_room(rows, t))
		return;
	json_t *cells = document_row(rows);
	add_case(t, cells, row);
	snprintf(text, sizeof text, "%s%s%s%s%s", it->thing.name, *it->thing.lot ? ", " : "", it->thing.lot,
	         *it->thing.identity ? ", " : "", it->thing.identity);
	document_cell(cells, text);
	document_word(&t->d, cells, place_of(it));
	document_cell(cells, slips);
}

static int tell_case(struct tracing *t, json_t *rows, const struct case_row *row, struct error *e)
{
	struct story *story = NULL;
	char slips[TEXT_MAX];
	int n = case_events_read(&t->events, t->record, row->case_no, e);
	if (n == 0 && t->events.count)
		n = story_make(&story, NULL, t->events.list, t->events.count,
		               t->events.list[t->events.count - 1].at);
	if (n < 0)
		return n;
	slips_of(t, slips);
	for (int i = 0; story && i < story->sheet.n_items; i++)
		if (is_meant(t, &story->sheet.items[i].thing))
			add_item(t, rows, row, &story->sheet.items[i], slips);
	free(story);
	return 0;
}

/* None of them is passed over as if it had nothing. */
static void tell_unread(struct tracing *t)
{
	char numbers[TEXT_MAX] = "", number[16];
	int cases = 0;
	for (size_t i = 0; i < t->summary.count; i++) {
		size_t used = strlen(numbers);
		if (!(t->summary.rows[i].marks & CASE_UNFOLLOWED))
			continue;
		snprintf(number, sizeof number, "%d", (int)t->summary.rows[i].case_no);
		if (used + sizeof number + 5 < sizeof numbers)
			snprintf(numbers + used, sizeof numbers - used, "%s%s", cases ? ", " : "", number);
		else if (numbers[used - 1] != '.')
			strcat(numbers, " ...");
		cases++;
	}
	if (cases)
		document_says(&t->d, SAY(RW_TRACE_UNREAD, .n = cases, .list = numbers));
}

static int tell_forward(struct tracing *t, struct error *e)
{
	int n = 0;
	document_section(&t->d, "forward", SAY(RW_TRACE_FORWARD));
	json_t *rows = document_table(&t->d, "forward",
	                              HEADS(SAY_RW_TRACE_CASE, SAY_RW_TRACE_DAY, SAY_RW_TRACE_ROOM,
	                                    SAY_RW_TRACE_THING, SAY_RW_TRACE_NOW, SAY_RW_TRACE_SLIPS));
	for (size_t i = 0; n == 0 && i < t->summary.count; i++) {
		const struct case_row *row = &t->summary.rows[i];
		if (!may_hold(t, row))
			continue;
		if (json_array_size(rows) < DOCUMENT_ROWS_MAX)
			n = tell_case(t, rows, row, e);
		else
			t->further++;
	}
	if (!json_array_size(rows))
		document_says(&t->d, SAY(RW_TRACE_NONE));
	tell_unread(t);
	if (t->further)
		document_says(&t->d, SAY(RW_TRACE_LATER, .n = t->further));
	return n;
}

static void tell_heard(struct tracing *t)
{
	char text[TEXT_MAX];
	document_section(&t->d, "heard", SAY(RW_TRACE_HEARD));
	document_says(&t->d, SAY(RW_TRACE_HEARD_MIND));
	json_t *rows = document_table(&t->d, "heard", HEADS(SAY_RW_TRACE_ROOM, SAY_RW_TRACE_HEARD_LAST));
	for (int i = 0; i < t->settings->n_rooms; i++) {
		const struct room *room = &t->settings->rooms[i];
		int32_t last = 0;
		for (size_t k = 0; k < t->summary.count; k++)
			if (t->summary.rows[k].room == room->number && t->summary.rows[k].day > last)
				last = t->summary.rows[k].day;
		json_t *cells = document_row(rows);
		document_cell(cells, room_of(t, room->number, text));
		day_text(last, text);
		document_cell(cells, last ? text : saying_text_in(t->d.language, SAY_RW_TRACE_NEVER));
	}
}

/* --- and back ----------------------------------------------------------------------------------------------------- */

struct back {
	struct tracing *t;
	json_t *rows;
	int64_t number; /* of a stores' item, 0 none */
};

static void add_back(struct back *b, const struct event *e, const struct say *what)
{
	char day[11];
	if (!has_room(b->rows, b->t))
		return;
	json_t *cells = document_row(b->rows);
	clock_text_date(e->at.wall_ms, e->at.utc_min, day);
	document_cell(cells, day);
	document_said(&b->t->d, cells, what);
}

static int take_batch(void *context, const struct event *e)
{
	struct back *b = context;
	int of_number = b->number && e->batch.first <= b->number && b->number <= e->batch.last;
	int of_lot = !*b->t->identity && (!*b->t->line || strcmp(b->t->line, e->batch.line) == 0) &&
	             (!*b->t->lot || strcmp(b->t->lot, e->batch.lot) == 0);
	if (e->kind == EV_LABELLED && (of_number || of_lot))
		add_back(b, e,
		         SAY(RW_TRACE_LABELLED, .item_number = (int32_t)e->batch.first,
		             .last_number = (int32_t)e->batch.last));
	return 0;
}

/* A whole line in quarantine is each lot of it. */
static int take_quarantine(void *context, const struct event *e)
{
	struct back *b = context;
	int meant = !*b->t->identity && (!*b->t->line || strcmp(b->t->line, e->thing.line) == 0) &&
	            (!*b->t->lot || !*e->thing.lot || strcmp(b->t->lot, e->thing.lot) == 0);
	if (meant && e->kind == EV_QUARANTINED)
		add_back(b, e, SAY(RW_TRACE_QUARANTINED, .reason = e->text));
	if (meant && e->kind == EV_RELEASED)
		add_back(b, e, SAY(RW_TRACE_RELEASED, .reason = e->text));
	return 0;
}

static int tell_back(struct tracing *t, struct error *e)
{
	struct back b = {.t = t};
	if (strncmp(t->identity, "item:", 5) == 0)
		b.number = atoll(t->identity + 5);
	document_section(&t->d, "back", SAY(RW_TRACE_BACK));
	b.rows = document_table(&t->d, "back", HEADS(SAY_RW_TRACE_DAY, SAY_RW_TRACE_WHAT));
	int n = record_each_station(t->record, EV_LABELLED, take_batch, &b, e);
	if (n == 0)
		n = summary_each_stop(&t->summary, EV_QUARANTINED, take_quarantine, &b, e);
	if (n == 0)
		n = summary_each_stop(&t->summary, EV_RELEASED, take_quarantine, &b, e);
	return n;
}

static int trace_thing(struct tracing *t, struct error *e)
{
	document_about(&t->d, SAY(RW_TRACE_COMPARED));
	int n = tell_forward(t, e);
	if (n == 0)
		n = tell_back(t, e);
	if (n == 0)
		tell_heard(t);
	return n;
}

/* --- a badge ------------------------------------------------------------------------------------------------------- */

struct withdrawn {
	int badge;
	int64_t seq;
	int given; /* out, ever */
	char day[11];
};

static int take_given(void *context, const struct event *e)
{
	struct withdrawn *w = context;
	w->given |= e->staff.number == w->badge;
	return 0;
}

static int take_withdrawn(void *context, const struct event *e)
{
	struct withdrawn *w = context;
	if (e->kind != EV_STAFF_WITHDRAWN || e->person != w->badge)
		return 0;
	w->seq = e->seq;
	clock_text_date(e->at.wall_ms, e->at.utc_min, w->day);
	return 0;
}

/* Every event that names the badge, or that its scan made. */
static void tell_uses(struct tracing *t, json_t *rows, const struct case_row *row, int64_t after)
{
	for (int i = 0; i < t->events.count; i++) {
		const struct event *e = &t->events.list[i];
		int named = event_fields(e->kind) & F_PERSON && e->person == t->badge;
		if (e->seq <= after || (!named && e->answer != -t->badge) || !has_room(rows, t))
			continue;
		json_t *cells = document_row(rows);
		add_case(t, cells, row);
		document_cell(cells, event_name(e->kind));
	}
}

/* A badge that was refused stands in no row, so that each case since is looked at. */
static int trace_badge(struct tracing *t, struct error *e)
{
	struct withdrawn w = {.badge = t->badge};
	int n = summary_each_stop(&t->summary, EV_STAFF_WITHDRAWN, take_withdrawn, &w, e);
	if (n == 0 && !w.seq)
		n = record_each_station(t->record, EV_STAFF_SET, take_given, &w, e);
	document_about(&t->d, SAY(RW_TRACE_SCANNERS));
	document_section(&t->d, "badge",
	                 w.seq ? SAY(RW_TRACE_WITHDRAWN, .first = w.day) : SAY(RW_TRACE_TITLE));
	if (n < 0 || !w.seq) {
		document_says(&t->d, w.given ? SAY(RW_TRACE_NOT_WITHDRAWN) : SAY(RW_TRACE_NEVER_GIVEN));
		return n;
	}
	json_t *rows = document_table(
	    &t->d, "badge", HEADS(SAY_RW_TRACE_CASE, SAY_RW_TRACE_DAY, SAY_RW_TRACE_ROOM, SAY_RW_TRACE_WHAT));
	for (size_t i = 0; n == 0 && i < t->summary.count; i++) {
		const struct case_row *row = &t->summary.rows[i];
		if (row->end != CASE_OPEN && row->last_seq <= w.seq)
			continue;
		n = case_events_read(&t->events, t->record, row->case_no, e);
		if (n == 0)
			tell_uses(t, rows, row, w.seq);
	}
	if (!json_array_size(rows))
		document_says(&t->d, SAY(RW_TRACE_NONE));
	if (t->further)
		document_says(&t->d, SAY(RW_TRACE_LATER, .n = t->further));
	return n;
}

/* --- overrides ------------------------------------------------------------------------------------------------------- */

static void trace_overrides(struct tracing *t)
{
	char text[TEXT_MAX];
	document_section(&t->d, "overrides", SAY(RW_TRACE_OF_OVERRIDES));
	json_t *rows =
	    document_table(&t->d, "overrides",
	                   HEADS(SAY_RW_TRACE_CASE, SAY_RW_TRACE_DAY, SAY_RW_TRACE_ROOM,
	                         SAY_RW_TRACE_OVERRIDDEN, SAY_RW_TRACE_LATE, SAY_RW_TRACE_CORRECTED));
	for (size_t i = 0; i < t->summary.count; i++) {
		const struct case_row *row = &t->summary.rows[i];
		if ((!(row->marks & CASE_OVERRIDDEN) && !row->late && !row->corrected) || !has_room(rows, t))
			continue;
		json_t *cells = document_row(rows);
		add_case(t, cells, row);
		document_word(&t->d, cells, row->marks & CASE_OVERRIDDEN ? SAY_RW_TRACE_YES : SAY_NONE);
		snprintf(text, sizeof text, "%d", row->late);
		document_cell(cells, row->late ? text : "");
		snprintf(text, sizeof text, "%d", row->corrected);
		document_cell(cells, row->corrected ? text : "");
	}
	if (!json_array_size(rows))
		document_says(&t->d, SAY(RW_TRACE_NONE));
	if (t->further)
		document_says(&t->d, SAY(RW_TRACE_LATER, .n = t->further));
}

/* --- all of it --------------------------------------------------------------------------------------------------------- */

static struct say what_is_traced(const struct tracing *t)
{
	if (t->overrides)
		return *SAY(RW_TRACE_OF_OVERRIDES);
	if (t->badge)
		return *SAY(RW_TRACE_OF_BADGE, .badge = t->badge);
	if (*t->identity)
		return *SAY(RW_TRACE_OF_ITEM, .identity = t->identity);
	if (*t->line && *t->lot)
		return *SAY(RW_TRACE_OF_LINE_LOT, .key = t->line, .lot = t->lot);
	return *t->line ? *SAY(RW_TRACE_OF_LINE, .key = t->line) : *SAY(RW_TRACE_OF_LOT, .lot = t->lot);
}

static int tell_left(struct tracing *t, struct error *e)
{
	struct event archived;
	int left = 0, n = audit_left(t->record, &left, &archived, e);
	if (n == 0)
		document_about_left(&t->d, left, &archived);
	return n;
}

static int trace(struct tracing *t, const char *path, const char *kept, struct error *e)
{
	struct recorded *settings = calloc(1, sizeof *settings);
	int n = settings ? audit_settings(t->record, settings, e) : -ENOMEM;
	if (n == 0)
		n = audit_summary(&t->summary, t->record, path, kept, e);
	int64_t from = clock_now().boot_ms;
	t->settings = settings;
	const struct say of = what_is_traced(t);
	if (n == 0)
		n = document_begin(
		    &t->d, &(struct document_of){t->language,
		                                 *settings->site_name ? settings->site_name : settings->site,
		                                 SAY_RW_TRACE_TITLE, &of});
	if (n == 0)
		n = tell_left(t, e);
	if (n == 0 && t->overrides)
		trace_overrides(t);
	else if (n == 0)
		n = t->badge ? trace_badge(t, e) : trace_thing(t, e);
	if (n == 0)
		fprintf(stderr, "trace: %.3f s\n", (double)(clock_now().boot_ms - from) / 1000);
	summary_deinit(&t->summary);
	free(settings);
	case_events_deinit(&t->events);
	return n == -ENOMEM ? error_set(e, n, "cannot trace: out of memory: close other programs") : n;
}

/* A stores' number as people read it, or an identity as the record has it. */
static void read_item(struct tracing *t, const char *given)
{
	size_t digits = strspn(given, "0123456789");
	if (digits && digits <= 8 && !given[digits])
		snprintf(t->identity, sizeof t->identity, "item:%08d", atoi(given));
	else
		snprintf(t->identity, sizeof t->identity, "%s", given);
}

/* 0, or EXIT_USAGE after a sentence. */
static int read_words(const struct words *w, struct tracing *t)
{
	const char *line = words_value(w, options, "line"), *lot = words_value(w, options, "lot"),
	           *item = words_value(w, options, "item"), *badge = words_value(w, options, "badge");
	t->line = line ? line : "";
	t->lot = lot ? lot : "";
	if (item)
		read_item(t, item);
	t->overrides = words_given(w, options, "overrides");
	if (words_number("--badge", badge, 1, BADGE_NUMBER_MAX, &t->badge, usage) < 0)
		return EXIT_USAGE;
	if (w->n_rest)
		return words_beyond(w->rest[0], usage);
	if (((*t->line || *t->lot) != 0) + (*t->identity != 0) + (t->badge != 0) + t->overrides != 1)
		return words_choose("give one of --line, --lot, --item, --badge and --overrides", usage);
	if (t->badge && !words_given(w, options, "why"))
		return words_missing("--why, a reason, which is recorded,", usage);
	return audit_give_read(w, options, usage);
}

int audit_trace(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct tracing t = {0};
	char path[PATH_MAX];
	int held = -1, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	r = read_words(&w, &t);
	if (r)
		return r;
	struct audit_language language;
	int n = audit_language(&language, words_value(&w, options, "language"),
	                       words_value(&w, options, "file"), &e);
	t.language = language.is;
	if (n == 0 && t.badge)
		n = audit_record_look("person", t.badge, words_value(&w, options, "why"), &e);
	if (n == 0)
		n = audit_record(&t.record, words_value(&w, options, "file"), path, &held, &e);
	if (n == 0)
		n = trace(&t, path, words_value(&w, options, "summary"), &e);
	audit_done(t.record, held);
	audit_language_end(&language);
	_cleanup_(json_drop) json_t *doc = t.d.whole;
	return n < 0 ? client_fail(&e) : audit_give(doc, &w, options);
}
