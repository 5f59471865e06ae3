#include "run/teller.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"
#include "code/own-codes.h"
#include "decide/next.h"
#include "record/case-events.h"
#include "run/doubt.h"
#include "run/machine.h"
#include "run/practice.h"
#include "stock/bench-view.h"
#include "tell/rooms.h"
#include "tell/slip.h"
#include "tell/view.h"

/* --- stories and slips -------------------------------------------------------------------------- */

/* The event that first queued the slip: up to it the paper is told. NULL where the slip is not of this case. */
static const struct event *first_queued(const struct case_events *all, int32_t slip)
{
	for (int i = 0; i < all->count; i++)
		if (all->list[i].kind == EV_SLIP_QUEUED && all->list[i].n == slip)
			return &all->list[i];
	return NULL;
}

int teller_language(const struct core *c, int32_t case_no, int32_t slip, char *out, size_t size,
                    struct error *e)
{
	struct case_events all = {0};
	int n = case_events_read(&all, c->record, case_no, e);
	const struct event *own = first_queued(&all, slip);
	snprintf(out, size, "%s", own ? own->text : "");
	case_events_deinit(&all);
	return n == -ENOMEM ? error_set(e, n, "slip %d: out of memory: try again", (int)slip) : n;
}

/* Its events left the record: what is told of it is what stayed. */
static int note_archive(struct record *r, int32_t case_no, struct story *story, struct error *e)
{
	struct event *left = calloc(1, sizeof *left);
	int n = left ? record_case_left(r, case_no, left) : -ENOMEM;
	if (n == RECORD_FOUND)
		snprintf(story->archive, sizeof story->archive, "%s", left->text);
	free(left);
	return n < 0 ? error_set(e, n, "the record could not be asked about case %d: %s: try again",
	                         (int)case_no, strerror(-n))
	             : 0;
}

/* Up to the slip's own event, whose number `*seq` becomes, and its time `*at`; of slip 0 as the record stands now. */
static int read_story(struct story **out, const struct core *c, int32_t case_no, int32_t slip, int64_t *seq,
                      struct moment *at, const struct language **language, struct error *e)
{
	struct case_events all = {0};
	int n = case_events_read(&all, c->record, case_no, e);
	const struct event *own = n == 0 && slip ? first_queued(&all, slip) : NULL;
	if (n == 0 && all.count && slip && !own)
		n = error_set(e, -ENODATA, "slip %d is not of case %d: see 'bandtally print list'", (int)slip,
		              (int)case_no);
	*seq = own ? own->seq : record_last(c->record, NULL);
	*language = own ? languages_find(&c->languages, own->text) : NULL;
	*at = own ? own->at : core_now(c);
	if (n == 0)
		n = story_make(out, *language, all.list, own ? (int)(own - all.list) + 1 : all.count, *at);
	case_events_deinit(&all);
	if (n == 0)
		n = note_archive(c->record, case_no, *out, e);
	if (n == -ENOENT)
		return error_set(e, n, "there is no case %d in the record: see 'bandtally case list'",
		                 (int)case_no);
	if (n == -ENOMEM)
		return error_set(e, n, "there is no memory to tell case %d: close other programs",
		                 (int)case_no);
	return n;
}

static int read_past(struct past *p, const struct core *c, int64_t to, struct error *e)
{
	past_init(p, to, &c->station);
	int n = record_each_setting(c->record, past_take, p, e);
	return n == -ENOMEM ? error_set(e, n, "the record cannot be read: out of memory: try again") : n;
}

static int sign(const void *seal, const json_t *summary, struct buf *jws)
{
	return seal_jws(seal, summary, jws);
}

/* Everything of a slip's copy; what is made is freed by drop(). */
struct told {
	struct story *story;
	struct past past;
	int64_t seq;
	struct moment at;
	struct chain chain;
	struct paper paper;
	const struct language *language;
};

/* What this copy's own event says of it. */
static int read_paper(struct paper *p, const struct core *c, int32_t slip, int copy, struct error *e)
{
	struct slip known;
	int n = slip ? record_slip_of(c->record, slip, copy, &known, p) : 0;
	return n < 0 ? error_set(e, n, "the record could not be asked about slip %d: %s: try again",
	                         (int)slip, strerror(-n))
	             : 0;
}

static int tell(struct told *t, const struct core *c, int32_t case_no, int32_t slip, int copy,
                struct error *e)
{
	int n = read_story(&t->story, c, case_no, slip, &t->seq, &t->at, &t->language, e);
	if (n == 0)
		n = record_chain_at(c->record, t->seq, &t->chain, e);
	if (n == 0)
		n = read_past(&t->past, c, t->seq, e);
	return n == 0 ? read_paper(&t->paper, c, slip, copy, e) : n;
}

static void drop(struct told *t)
{
	free(t->story);
	past_deinit(&t->past);
}

/* Slip 0: the case as it is now, which nothing seals. */
static json_t *make(const struct core *c, int32_t case_no, int32_t slip, enum slip_kind kind, int copy,
                    struct error *e)
{
	struct told told = {0};
	char when[26], hex[2 * CHAIN_BYTES + 1];
	uint64_t failed = json_memory_failed();
	struct moment now = core_now(c);
	if (tell(&told, c, case_no, slip, copy, e) < 0) {
		drop(&told);
		return NULL;
	}
	chain_hex(&told.chain, hex);
	clock_text_full(now.wall_ms, now.utc_min, when);
	const struct slip_source from = {.story = told.story,
	                                 .kind = kind,
	                                 .number = slip,
	                                 .copy = copy,
	                                 .proof = told.paper.proof,
	                                 .station = told.paper.station,
	                                 .practice = c->station.practice,
	                                 .past = &told.past,
	                                 .language = told.language,
	                                 .now = told.at,
	                                 .paper = c->settings.paper,
	                                 .dpi = c->settings.dpi,
	                                 .label_width_mm = c->settings.label_width_mm,
	                                 .label_height_mm = c->settings.label_height_mm,
	                                 .time = when,
	                                 .version = BANDTALLY_VERSION,
	                                 .seq = told.seq,
	                                 .chain = hex};
	json_t *document = slip_document(&from);
	int n = !document ? -ENOMEM
	        : slip && !c->station.practice
	            ? slip_sign(&from, station_incarnation(&c->station), sign, c->seal, document)
	            : 0;
	drop(&told);
	if (n == -ENOMEM || json_memory_failed() != failed) { /* no paper that lacks something */
		json_decref(document);
		error_set(e, -ENOMEM, "the slip of case %d cannot be made: out of memory: try again",
		          (int)case_no);
		return NULL;
	}
	return document;
}

json_t *teller_slip(const struct core *c, int32_t case_no, int32_t slip, enum slip_kind kind, int copy,
                    struct error *e)
{
	return make(c, case_no, slip, kind, copy, e);
}

json_t *teller_case(const struct core *c, int32_t case_no, struct error *e)
{
	static const char *const of_a_slip[] = {"slip", "copy", "code"};
	json_t *document = make(c, case_no, 0, SLIP_RECONCILIATION, 0, e);
	for (size_t i = 0; document && i < sizeof of_a_slip / sizeof *of_a_slip; i++)
		json_object_del(document, of_a_slip[i]);
	return document;
}

/* --- views -------------------------------------------------------------------------------------- */

/* `distrust` is filled in. */
static struct view_source source_of(const struct core *c, const struct language *language, int32_t case_no,
                                    char distrust[DISTRUST_MAX])
{
	core_distrust_in(c, language, case_no, distrust);
	return (struct view_source){.station = &c->station,
	                            .day = &c->day,
	                            .now = core_now(c),
	                            .distrust = distrust,
	                            .stopped = c->doubt.stopped,
	                            .waits = machine_waits(c),
	                            .language = language};
}

static int last_scans(const struct core *c, int32_t room, const struct language *language,
                      struct view_scan out[RECENT_MAX])
{
	int n = 0, index = core_room_index(c, room);
	for (; index >= 0 && n < RECENT_MAX && c->recent[index][n].said[0]; n++) {
		const struct recent *r = &c->recent[index][n];
		out[n] = (struct view_scan){
		    .at = r->at, .verdict = verdict_name(r->verdict), .said = language ? r->told : r->said};
	}
	return n;
}

static struct view_sound sound_of(const struct core *c)
{
	const struct sound_setting *s = &c->settings.sound;
	return (struct view_sound){.volume = s->volume, .quiet = core_quiet(c), .speech = s->speech};
}

static void put_fault(json_t *list, const struct language *language, const struct say *what)
{
	char words[700];
	say_sentence_in(language, what, words, sizeof words);
	json_array_append_new(list, name_told(words, sizeof words));
}

/* Paper count sheets that must have been taken before one that was entered. */
static void put_papers(const struct station *st, const struct language *language, json_t *list)
{
	for (int i = 0; i < st->n_rooms; i++)
		for (int32_t n = 0; (n = paper_sheets_owed(&st->papers[i], n));)
			put_fault(
			    list, language,
			    SAY(FAULT_PAPER_OWED, .n = n, .room = st->rooms[i].name, .card = CARD_CANCEL));
}

void teller_faults(const struct core *c, const struct language *language, json_t *list)
{
	char words[700];
	struct say what;
	for (int i = 0; (i = core_settings_say(c, i, &what));)
		put_fault(list, language, &what);
	if (c->head_fault)
		put_fault(list, language,
		          SAY(FAULT_HEAD, .text = c->head, .fault = strerror(-c->head_fault)));
	if (c->hospital_says)
		put_fault(list, language,
		          &(const struct say){.saying = c->hospital_says, .fault = c->hospital_why});
	if (c->lists_say)
		put_fault(list, language, &(const struct say){.saying = c->lists_say, .n = c->lists_hours});
	for (int i = 0; (i = proof_words(&c->station.proof, language, i, words, sizeof words));)
		json_array_append_new(list, json_string(words));
	put_papers(&c->station, language, list);
	guesses_words(&c->guesses, language, core_now(c), list);
	for (int i = 0; (i = rooms_gone_words(&c->station, language, i, core_now(c), words, sizeof words));)
		json_array_append_new(list, json_string(words));
}

static void put_card(json_t *list, int meaning, const struct language *language)
{
	char words[OWN_CODE_SHOWN_MAX + 40];
	json_t *o = json_object();
	say_part_in(language, &(struct say){.saying = saying_of_card(meaning)}, words, sizeof words);
	json_object_set_new(o, "number", json_integer(meaning));
	json_object_set_new(o, "words", name_told(words, sizeof words));
	json_array_append_new(list, o);
}

/* Those that begin something, by number and in the room's words; FOUND, which cases have too, is the last. */
static json_t *bench_cards(const struct language *language)
{
	json_t *list = json_array();
	for (int m = own_stores_card_next(0); m; m = own_stores_card_next(m))
		if (own_card_group(m) != CARDS_NUMBERS)
			put_card(list, m, language);
	put_card(list, CARD_FOUND, language);
	return list;
}

static json_t *stores_told(const struct core *c, int32_t room, const struct language *language)
{
	json_t *o = stock_view(&c->stock, &c->station, room, core_today(c));
	json_object_set_new(o, "cards", bench_cards(language));
	json_object_set_new(o, "typed", json_boolean(bench_wants_text(&c->stock, room)));
	return o;
}

static json_t *told_of(const struct core *c, int32_t number, const struct language *language)
{
	struct sheet idle;
	char distrust[DISTRUST_MAX];
	const struct sheet *s = station_shown(&c->station, number, &idle);
	struct view_source from = source_of(c, language, s->case_no, distrust);
	struct view_scan recent[RECENT_MAX];
	struct next next;
	if (core_is_bench(c, number))
		core_bench_next(c, number, &next);
	else
		next_step(&c->station, s, number, from.now, &next);
	const struct view_room_source room = {.room = number,
	                                      .next = &next,
	                                      .sign_out = ready_to_sign_out(s),
	                                      .recent = recent,
	                                      .n_recent = last_scans(c, number, language, recent),
	                                      .sound = sound_of(c)};
	json_t *view = view_room(&from, &room);
	if (view && core_is_bench(c, number))
		json_object_set_new(view, "stores", stores_told(c, number, language));
	return view;
}

/* Of what is practised here; patients of other rooms are shown all the same. */
json_t *teller_room_in(const struct core *c, int32_t number, const struct language *language)
{
	const struct core *practice = practice_in(c, number);
	json_t *view = told_of(c, number, language);
	if (!practice || !view)
		return view;
	json_t *told = told_of(practice, number, language);
	json_object_set(told, "elsewhere", json_object_get(view, "elsewhere"));
	json_decref(view);
	return told;
}

json_t *teller_room(const struct core *c, int32_t number)
{
	return teller_room_in(c, number, NULL);
}

json_t *teller_status(const struct core *c, const struct language *language)
{
	char distrust[DISTRUST_MAX];
	struct view_source from = source_of(c, language, UNFOLLOWED_OF_CASES, distrust);
	const struct view_status_source status = {.events = record_last(c->record, NULL),
	                                          .printer = c->settings.printer};
	json_t *o = view_status(&from, &status), *faults = json_array();
	teller_faults(c, language, faults);
	json_object_set_new(o, "faults", faults);
	return o;
}

/* --- the day ------------------------------------------------------------------------------------ */
