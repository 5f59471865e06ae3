/* audit case: one case in time order, every event of it, and what was due and not done. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "code/own-codes.h"
#include "count/debt.h"
#include "tell/story.h"
#include "tool/audit-give.h"
#include "tool/audit-language.h"
#include "tool/audit-record.h"
#include "tool/audit.h"
#include "tool/client.h"
#include "tool/document.h"
#include "tool/words.h"

#define DETAIL_MAX 640 /* a digit, an item, a state and a whole reply */
#define PLACES_MAX 64

static const char options[] = "file= people= language= json csv pdf=";
static const char usage[] =
    "usage: bandtally audit case CASE [--people REASON] (--json | --csv | --pdf FILE) [--file RECORD]\n"
    "One case in time order: every scan, refusal, question, reminder, print and gap, and what was due and "
    "not\n"
    "done. People stand by their place; with --people their names are given, and the running station "
    "records\n"
    "that somebody asked, and why.\n"
    "  --language CODE  its words; without it those of the running station's site, else English\n"
    "Exit codes: 0 made, 1 failed, 2 wrong usage.\n";

/* Who is where, and what each item is called, as far as the case has come. */
struct known {
	const struct language *language;
	int people; /* names are given */
	struct {
		int32_t number;
		uint8_t place;
		char name[EVENT_TEXT_MAX];
	} places[PLACES_MAX];
	int n_places;
	char items[ITEMS_MAX + 1][LINE_NAME_MAX];
};

static void learn(struct known *k, const struct event *e)
{
	if (e->kind == EV_JOINED && k->n_places < PLACES_MAX) {
		k->places[k->n_places].number = e->person;
		k->places[k->n_places].place = e->what;
		snprintf(k->places[k->n_places++].name, EVENT_TEXT_MAX, "%s", e->text);
	}
	if (event_fields(e->kind) & F_THING && e->item && e->item <= ITEMS_MAX)
		snprintf(k->items[e->item], LINE_NAME_MAX, "%s", e->thing.name);
}

static const char *place_in(const struct known *k, uint8_t place)
{
	return saying_text_in(k->language, place_saying((enum team_place)place));
}

/* All of it, or nothing: half a sentence would say something else. */
static void add(char *out, const char *text)
{
	size_t used = strlen(out), room = DETAIL_MAX - used;
	if (*text && snprintf(out + used, room, "%s%s", used ? ", " : "", text) >= (int)room)
		out[used] = 0;
}

static void add_person(const struct known *k, int32_t number, char *out)
{
	for (int i = k->n_places; number && i-- > 0;)
		if (k->places[i].number == number) {
			add(out, k->people ? k->places[i].name : place_in(k, k->places[i].place));
			return;
		}
	if (number)
		add(out, "?");
}

static void tell_who(const struct known *k, const struct event *e, char *out)
{
	uint32_t f = event_fields(e->kind);
	out[0] = 0;
	if (f & F_PERSON)
		add_person(k, e->person, out);
	if (e->kind == EV_COUNT_AGREED || e->kind == EV_SIGNED_OUT)
		add_person(k, e->other, out);
	if (!*out && e->flags & EVENT_FIRST && e->answer < 0)
		add_person(k, -e->answer, out);
}

/* A name in a sentence, by its place where that is known. */
static const char *without_name(const struct known *k, const char *name)
{
	if (k->people || !name || !*name)
		return name;
	for (int i = k->n_places; i-- > 0;)
		if (strcmp(k->places[i].name, name) == 0)
			return place_in(k, k->places[i].place);
	return saying_text_in(k->language, SAY_RW_CASE_SOMEBODY);
}

static void add_said(const struct known *k, const struct event *e, char *out)
{
	char text[DETAIL_MAX];
	struct say say = said_say(&e->said);
	say.person = without_name(k, say.person);
	say.other_person = without_name(k, say.other_person);
	say_part_in(k->language, &say, text, sizeof text);
	add(out, text);
}

static void tell_of_what(const struct known *k, const struct event *e, char *out)
{
	uint32_t f = event_fields(e->kind);
	char text[DETAIL_MAX] = "";
	const char *name = event_list_name((enum event_list)(f >> F_LIST_OF_WHAT & 63), e->what);
	out[0] = 0;
	if (e->digit)
		add(out, saying_text_in(k->language, saying_of_digit(e->digit)));
	if (e->item && e->item <= ITEMS_MAX)
		add(out, thing_text_in(k->language, k->items[e->item]));
	add(out, name ? name : "");
	if (f & F_N && e->n && e->kind != EV_COUNT_AGREED) {
		snprintf(text, sizeof text, "%d", (int)e->n);
		add(out, text);
	}
	if (f & F_SAID && e->said.saying)
		add_said(k, e, out);
	else if (e->kind == EV_REFUSED && !k->people && *e->text) /* in words that may name somebody */
		add(out, saying_text_in(k->language, SAY_RW_CASE_OLD_WORDS));
	else if (f & F_TEXT && e->kind != EV_JOINED)
		add(out, e->text);
}

static int is_undone(const struct case_events *all, int at)
{
	for (int i = at + 1; i < all->count; i++)
		if (all->list[i].kind == EV_UNDONE && all->list[i].ref == all->list[at].seq)
			return 1;
	return 0;
}

static void tell_how(const struct known *k, const struct case_events *all, int at, char *out)
{
	const struct event *e = &all->list[at];
	out[0] = 0;
	if (e->flags & EVENT_KEYED)
		add(out, saying_text_in(k->language, SAY_RW_CASE_KEYED));
	if (e->flags & EVENT_LATE)
		add(out, saying_text_in(k->language, SAY_RW_CASE_LATE));
	if (is_undone(all, at))
		add(out, saying_text_in(k->language, SAY_RW_CASE_UNDONE));
}

/* The same hour comes twice where clocks are put back. */
static int clocks_change(const struct case_events *all)
{
	for (int i = 1; i < all->count; i++)
		if (all->list[i].at.utc_min != all->list[0].at.utc_min)
			return 1;
	return 0;
}

static void tell_when(struct moment at, int with_zone, char out[26])
{
	clock_text_full(at.wall_ms, at.utc_min, out);
	out[10] = ' ';
	if (!with_zone)
		out[19] = 0;
}

static void tell_events(struct document *d, const struct case_events *all, struct known *k, int rows_max)
{
	char when[26], who[DETAIL_MAX], what[DETAIL_MAX], how[DETAIL_MAX];
	int with_zone = clocks_change(all);
	document_section(d, "events", SAY(RW_CASE_EVENTS));
	if (all->count > rows_max)
		document_says(d, SAY(RW_CASE_MORE, .n = all->count - rows_max));
	json_t *rows = document_table(
	    d, "events",
	    HEADS(SAY_RW_CASE_TIME, SAY_RW_CASE_WHAT, SAY_RW_CASE_WHO, SAY_RW_CASE_OF_WHAT, SAY_RW_CASE_HOW));
	for (int i = 0; i < all->count && i < rows_max; i++) {
		const struct event *e = &all->list[i];
		learn(k, e);
		tell_when(e->at, with_zone, when);
		tell_who(k, e, who);
		tell_of_what(k, e, what);
		tell_how(k, all, i, how);
		json_t *cells = document_row(rows);
		document_cell(cells, when);
		document_cell(cells, event_name(e->kind));
		document_cell(cells, e->case_no ? who : saying_text_in(k->language, SAY_RW_CASE_STATION));
		document_cell(cells, what);
		document_cell(cells, how);
	}
}

/* --- what was due ---------------------------------------------------------------------------------------------- */

static void due(const struct document *d, json_t *rows, const struct say *say)
{
	if (json_array_size(rows) < DOCUMENT_ROWS_MAX)
		document_said(d, document_row(rows), say);
}

static void tell_digit(const struct document *d, json_t *rows, const struct story_digit *digit)
{
	if (digit->n_stretches && !time_is_set(digit->bare))
		due(d, rows, SAY(RW_CASE_DUE_LOOK, .digit = digit->number));
	for (int i = 0; i < digit->n_reminders; i++) {
		const struct moment *at = &digit->reminders[i].at;
		if (!time_is_set(digit->reminders[i].acknowledged))
			due(d, rows,
			    SAY(RW_CASE_DUE_REMINDER, .digit = digit->number,
			        .time = clock_minute_of_day(at->wall_ms, at->utc_min)));
	}
}

static int slip_was_seen(const struct case_events *all, int32_t slip)
{
	for (int i = 0; i < all->count; i++)
		if (all->list[i].kind == EV_SLIP_STATE && all->list[i].n == slip &&
		    all->list[i].what == SLIP_SEEN)
			return 1;
	return 0;
}

static void tell_due(struct document *d, const struct case_events *all, const struct story *s)
{
	document_section(d, "due", SAY(RW_CASE_DUE));
	json_t *rows = document_table(d, "due", HEADS(SAY_RW_CASE_WHAT));
	for (int i = 0; i < s->n_debts; i++)
		if (!time_is_set(s->debts[i].paid))
			due(d, rows,
			    SAY(RW_CASE_DUE_DEBT,
			        .words = saying_text_in(d->language, debt_saying(s->debts[i].debt.kind))));
	for (int i = 0; i < s->n_digits; i++)
		tell_digit(d, rows, &s->digits[i]);
	for (int i = 0; i < all->count; i++)
		if (all->list[i].kind == EV_SLIP_QUEUED && all->list[i].other <= 1 &&
		    !slip_was_seen(all, all->list[i].n))
			due(d, rows, SAY(RW_CASE_DUE_SLIP, .slip = all->list[i].n));
	if (!s->ended)
		due(d, rows, SAY(RW_CASE_DUE_END));
	if (!json_array_size(rows))
		due(d, rows, SAY(RW_CASE_DUE_NONE));
}

/* What was due is told from all events, of which only some are here. */
static void tell_left(struct document *d, const struct event *archived)
{
	char day[11];
	clock_text_date(archived->at.wall_ms, archived->at.utc_min, day);
	document_about(d, SAY(RW_CASE_LEFT, .text = archived->text, .first = day));
}

/* --- all of it ------------------------------------------------------------------------------------------------------ */

static int write_case(struct record *r, const struct words *w, const struct language *language,
                      int32_t case_no, const struct case_events *all, json_t **doc, struct error *e)
{
	const char *why = words_value(w, options, "people");
	struct recorded *settings = calloc(1, sizeof *settings);
	struct known *k = calloc(1, sizeof *k);
	struct story *story = NULL;
	struct document d = {0};
	struct event archived;
	int n = settings && k ? story_make(&story, NULL, all->list, all->count, all->list[all->count - 1].at)
	                      : -ENOMEM;
	if (n == 0)
		n = audit_settings(r, settings, e);
	int left = n == 0 ? record_case_left(r, case_no, &archived) : 0;
	if (left < 0)
		n = error_set(e, left, "it cannot be read whether case %d left the record: %s: try again",
		              (int)case_no, strerror(-left));
	if (n == 0)
		n = document_begin(
		    &d, &(struct document_of){language,
		                              *settings->site_name ? settings->site_name : settings->site,
		                              SAY_RW_CASE_TITLE, SAY(RW_CASE_OF, .case_no = case_no)});
	if (n == 0) {
		k->people = why != NULL;
		k->language = language;
		if (why)
			document_about(&d, SAY(RW_CASE_PEOPLE_NAMES, .reason = why));
		else
			document_about(&d, SAY(RW_CASE_PEOPLE_PLACES));
		if (left)
			tell_left(&d, &archived);
		else
			tell_due(&d, all, story);
		tell_events(&d, all, k, words_given(w, options, "pdf") ? DOCUMENT_ROWS_MAX : all->count);
		*doc = d.whole;
	}
	free(story);
	free(settings);
	free(k);
	return n == -ENOMEM ? error_set(e, n, "cannot tell the case: out of memory: close other programs")
	                    : n;
}

int audit_case(int argc, char **argv)
{
	struct words w;
	struct error e = {0};
	struct record *record = NULL;
	struct case_events all = {0};
	struct audit_language language;
	_cleanup_(json_drop) json_t *doc = NULL;
	char path[PATH_MAX];
	int held = -1, case_no = 0, r = words_read(&w, argc, argv, options, usage);
	if (r)
		return r > 0 ? EXIT_OK : EXIT_USAGE;
	if (w.n_rest != 1)
		return w.n_rest ? words_beyond(w.rest[1], usage) : words_missing("CASE, its number,", usage);
	if (words_number("CASE", w.rest[0], 1, SLIP_NUMBER_MAX, &case_no, usage) < 0)
		return EXIT_USAGE;
	const char *why = words_value(&w, options, "people");
	r = audit_give_read(&w, options, usage);
	if (r)
		return r;
	int n = audit_language(&language, words_value(&w, options, "language"),
	                       words_value(&w, options, "file"), &e);
	if (n == 0 && why)
		n = audit_record_look("case", case_no, why, &e);
	if (n == 0)
		n = audit_record(&record, words_value(&w, options, "file"), path, &held, &e);
	if (n == 0)
		n = case_events_read(&all, record, case_no, &e);
	if (n == 0 && !all.count)
		n = error_set(&e, -ENOENT,
		              "case %d: the record has none of that number: see 'bandtally case list'",
		              case_no);
	if (n == 0)
		n = write_case(record, &w, language.is, case_no, &all, &doc, &e);
	audit_done(record, held);
	case_events_deinit(&all);
	audit_language_end(&language);
	return n < 0 ? client_fail(&e) : audit_give(doc, &w, options);
}
