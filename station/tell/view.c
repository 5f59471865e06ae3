#include "tell/view.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "base/name.h"
#include "count/unanswered.h"
#include "count/wall.h"

/* Names are for programs, which compare them; words are for people, who read them. */
static const struct {
	const char *name;
	enum saying words;
} places[] = {
    [0] = {"", SAY_NONE},
    [ITEM_HERE] = {"here", SAY_B_COUNTED_IN},
    [ITEM_ON] = {"on", SAY_B_IS_ON_NOWHERE},
    [ITEM_OFF] = {"off", SAY_B_IS_OFF},
    [ITEM_ACCOUNTED] = {"accounted", SAY_B_ACCOUNTED_FOR},
    [ITEM_RETURNED] = {"returned", SAY_B_IS_RETURNED},
    [ITEM_ISOLATED] = {"isolated", SAY_B_AT_ISOLATED},
    [ITEM_STRUCK] = {"struck", SAY_B_AT_STRUCK},
    [ITEM_EXTRA] = {"extra", SAY_B_AT_EXTRA},
};

static void put(json_t *o, const char *key, const char *s)
{
	json_object_set_new(o, key, name_told(s, strlen(s)));
}

static void put_n(json_t *o, const char *key, int64_t n)
{
	json_object_set_new(o, key, json_integer(n));
}

static void put_words(json_t *o, const char *key, const struct view_source *from, enum saying words)
{
	put(o, key, words ? saying_text_in(from->language, words) : "");
}

static json_t *items(const struct view_source *from, const struct sheet *s)
{
	static const char *const conditions[] = {"", "intact", "cut-complete", "pieces-missing"};
	json_t *list = json_array();
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		json_t *o = json_object();
		put_n(o, "number", i + 1);
		put(o, "name", thing_text_in(from->language, it->thing.name));
		put(o, "lot", it->thing.lot);
		put(o, "identity", it->thing.identity);
		put(o, "role", role_name((enum role)it->thing.role));
		int place = it->place <= ITEM_EXTRA ? it->place : 0;
		put(o, "place", places[place].name);
		put_words(o, "place_words", from, places[place].words);
		put(o, "condition", conditions[it->condition & 3]);
		put_n(o, "pieces", it->pieces);
		put_n(o, "shown", item_accounted(it)); /* rule 10 */
		put_n(o, "missing", it->missing);
		put_n(o, "digit", it->digit);
		json_object_set_new(o, "dropped", json_boolean(it->dropped));
		json_object_set_new(o, "unlisted", json_boolean(it->thing.unlisted));
		json_object_set_new(o, "added", json_boolean(it->added));
		json_array_append_new(list, o);
	}
	return list;
}

#define WALL_TEXT_MAX 64

/* "10:12", with its date where that is not today's; "" for none. */
static void wall_text(const struct view_source *from, int64_t wall_ms, char out[WALL_TEXT_MAX])
{
	int16_t zone = from->now.utc_min;
	int32_t day = clock_date_number(wall_ms, zone);
	out[0] = 0;
	if (wall_ms && day != clock_date_number(from->now.wall_ms, zone))
		say_part_in(from->language,
		            SAY(DAY_AND_TIME, .date = day, .time = clock_minute_of_day(wall_ms, zone)), out,
		            WALL_TEXT_MAX);
	else if (wall_ms)
		clock_text_hm(wall_ms, zone, out);
}

/* The minutes at which a reminder of it comes next; 0 none will. */
static int32_t next_reminder(const struct policy *p, const struct digit *d)
{
	if (!digit_is_on(d) || !p->first_reminder_min)
		return 0;
	if (!d->reminded_min)
		return p->first_reminder_min;
	return p->next_reminder_min ? d->reminded_min + p->next_reminder_min : 0;
}

static json_t *digits(const struct view_source *from, const struct sheet *s)
{
	static const char *const states[] = {"bare", "maybe-on", "on", "off"};
	const struct moment now = from->now;
	json_t *list = json_array();
	for (int i = 0; i < s->n_digits; i++) {
		const struct digit *d = &s->digits[i];
		char text[80], at[WALL_TEXT_MAX];
		json_t *o = json_object();
		struct say ran = {0};
		ran.saying = digit_minutes(d, now, &ran.minutes, &ran.most);
		say_part_in(from->language, &ran, text, sizeof text);
		wall_text(from, d->doubted ? d->doubt_wall_ms : d->on_wall_ms, at);
		put_n(o, "number", d->number);
		put_words(o, "name", from, saying_of_digit(d->number));
		put(o, "state", states[d->doubted ? DIGIT_MAYBE_ON : d->state]);
		put(o, "text", text);
		put(o, "on_at", at);
		put_n(o, "stretch_ms", digit_stretch_ms(d, now));
		put_n(o, "by_wall_ms", digit_by_wall_ms(d, now));
		put_n(o, "total_ms", digit_total_ms(d, now));
		put_n(o, "longest_ms", digit_longest_ms(d, now));
		put_n(o, "next_reminder_min", next_reminder(&from->station->policy, d));
		json_object_set_new(o, "marked", json_boolean(d->marked));
		json_object_set_new(o, "seen_bare", json_boolean(d->seen_bare));
		json_object_set_new(o, "reminded", json_boolean(d->reminded));
		json_object_set_new(o, "gap", json_boolean(digit_is_on(d) ? d->gap : d->by_wall.gaps));
		json_object_set_new(o, "forceps",
		                    json_boolean(sheet_item_on(s, d->number, TRAIT_CLAMPS) != 0));
		json_array_append_new(list, o);
	}
	return list;
}

static const char *called(const struct view_source *from, int32_t number)
{
	return person_text_in(from->language, staff_name(&from->station->staff, number));
}

static json_t *team(const struct view_source *from, const struct sheet *s)
{
	json_t *list = json_array();
	for (int p = PLACE_FIELD; p < TEAM_PLACES; p++) {
		if (!s->team.at[p])
			continue;
		int alone = s->single && p == PLACE_FIELD;
		json_t *o = json_object();
		put(o, "place", alone ? "operator" : place_name((enum team_place)p));
		put_words(o, "place_words", from,
		          alone ? SAY_PLACE_OPERATOR : place_saying((enum team_place)p));
		put(o, "name", called(from, s->team.at[p]));
		json_array_append_new(list, o);
	}
	return list;
}

/* What was agreed and still holds: a final count that was voided does not. */
static json_t *agreed(const struct view_source *from, const struct sheet *s)
{
	static const char *const kinds[] = {"", "initial", "final", "handover", "added"};
	json_t *list = json_array();
	const struct day_case *d = s->case_no ? day_case(from->day, s->case_no) : NULL;
	for (int i = 0; d && i < d->n_counts; i++) {
		const struct day_count *k = &d->counts[i];
		char at[6];
		if (k->kind < COUNT_INITIAL || k->kind > COUNT_ADDED ||
		    (k->kind == COUNT_FINAL && s->final != FINAL_AGREED))
			continue;
		json_t *o = json_object();
		clock_text_hm(k->at_ms, from->now.utc_min, at);
		put(o, "count", kinds[k->kind]);
		put(o, "at", at);
		put(o, "field", called(from, k->field));
		put(o, "circulating", k->circulating ? called(from, k->circulating) : "");
		put(o, "recorded", called(from, k->recorded_by));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *cases_of_day(const struct view_source *from)
{
	json_t *list = json_array();
	for (int i = from->day->n; i-- > 0;) {
		const struct day_case *d = &from->day->cases[i];
		char opened[6], ended[6] = "";
		if (!day_shows(d, wall_latest_ms(from->station, from->now), from->now.utc_min))
			continue;
		json_t *o = json_object();
		clock_text_hm(d->opened_ms, from->now.utc_min, opened);
		if (d->end)
			clock_text_hm(d->ended_ms, from->now.utc_min, ended);
		put_n(o, "case", d->case_no);
		put(o, "room", station_room_name(from->station, d->room));
		put(o, "opened", opened);
		put(o, "ended", ended);
		put(o, "outcome", case_end_name(d->end));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *debt(const struct view_source *from, enum saying what, enum saying next)
{
	json_t *o = json_object();
	put(o, "name", saying_key(what));
	put_words(o, "words", from, what);
	json_object_set_new(o, "next", json_boolean(what == next));
	return o;
}

/* `next`: what the head of what comes next says is owed. */
static json_t *debts(const struct view_source *from, const struct sheet *s, enum saying next)
{
	json_t *list = json_array();
	if (s->unfollowed)
		json_array_append_new(list, debt(from, SAY_DEBT_UNFOLLOWED, next));
	for (int i = 0; i < s->debts.count; i++)
		json_array_append_new(list,
		                      debt(from, debt_saying((enum debt_kind)s->debts.list[i].kind), next));
	return list;
}

static json_t *search(const struct view_source *from, const struct sheet *s)
{
	json_t *list = json_array();
	const struct policy *p = &from->station->policy;
	const struct day_case *d = s->case_no ? day_case(from->day, s->case_no) : NULL;
	for (int i = 0; s->discrepancy && i < p->n_search; i++) {
		json_t *o = json_object();
		put(o, "text", shipped_text_in(from->language, p->search[i]));
		put(o, "state",
		    i >= s->search_done           ? "open"
		    : d && day_not_done(d, i + 1) ? "not-done"
		                                  : "done");
		json_array_append_new(list, o);
	}
	return list;
}

/* Where a tourniquet that is missing may be: each digit that had it, or one that nobody can tell from it. */
static json_t *may_be_on(const struct sheet *s)
{
	json_t *list = json_array();
	for (int d = 1; d <= DIGIT_NUMBER_MAX; d++) {
		int may = 0;
		for (int i = 1; i <= s->n_items && !may; i++)
			may = item_open(&s->items[i - 1]) && s->items[i - 1].missing &&
			      sheet_may_be_on(s, i, d);
		if (may)
			json_array_append_new(list, json_integer(d));
	}
	return list;
}

static const char *card_name(const struct language *l, int card)
{
	return saying_text_in(l, saying_of_card(card));
}

static json_t *cards(const struct next *next, const struct language *l)
{
	json_t *list = json_array();
	for (int i = 0; i < next->n_deeds; i++) {
		if (next->deeds[i].kind != DEED_CARD)
			continue;
		json_t *o = json_object();
		put_n(o, "number", next->deeds[i].n);
		put(o, "words", card_name(l, next->deeds[i].n));
		json_array_append_new(list, o);
	}
	return list;
}

json_t *view_deeds(const struct next *next, const struct language *l)
{
	json_t *list = json_array();
	for (int i = 0; i < next->n_deeds; i++) {
		const struct deed *d = &next->deeds[i];
		json_t *o = json_object();
		put(o, "kind", deed_kind_name((enum deed_kind)d->kind));
		put(o, "truth", truth_name((enum truth)d->truth));
		put(o, "words", saying_text_in(l, truth_saying((enum truth)d->truth)));
		if (d->kind == DEED_CARD)
			put(o, "card", card_name(l, d->n));
		if (deed_card_behind(d))
			put(o, "then", card_name(l, deed_card_behind(d)));
		if (d->kind == DEED_BADGE)
			put(o, "place", d->n ? place_name((enum team_place)d->n) : "");
		if (d->digit)
			put(o, "digit", saying_text_in(l, saying_of_digit(d->digit)));
		if (d->item)
			put_n(o, "item", d->item);
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *recent(const struct view_room_source *room, struct moment now)
{
	json_t *list = json_array();
	for (int i = 0; i < room->n_recent; i++) {
		const struct view_scan *r = &room->recent[i];
		json_t *o = json_object();
		put_n(o, "ago_ms", moment_between_ms(r->at, now));
		put(o, "verdict", r->verdict);
		put(o, "said", r->said);
		json_array_append_new(list, o);
	}
	return list;
}

/* How long ago something was scanned here, whatever became of it; null where nothing was. */
static json_t *last_scan(const struct view_source *from, int32_t room)
{
	struct moment last = station_last_scan(from->station, room);
	int64_t ms = moment_between_ms(last, from->now);
	return last.boot ? json_integer(ms > 0 ? ms : 0) : json_null();
}

/* Reminders that nobody answers in other rooms, and what is on in a suspended case of this one; 0: of all. */
static json_t *elsewhere(const struct view_source *from, int32_t room)
{
	struct unanswered found[UNANSWERED_MAX];
	json_t *list = json_array();
	int n = station_unanswered(from->station, from->now, found);
	for (int i = 0; i < n; i++) {
		if (room && (found[i].room == room ? !found[i].case_no : !found[i].nobody))
			continue;
		json_t *o = json_object();
		char text[300];
		say_sentence_in(from->language, &found[i].say, text, sizeof text);
		put_n(o, "room", found[i].room);
		put_n(o, "case", found[i].case_no);
		json_object_set_new(o, "reminded", json_boolean(found[i].reminded));
		json_object_set_new(o, "nobody", json_boolean(found[i].nobody));
		put(o, "text", text);
		json_array_append_new(list, o);
	}
	return list;
}

/* The last word is true until there is another. */
static void put_machine(json_t *o, const struct view_source *from)
{
	json_t *list = json_array();
	for (const enum saying *w = from->waits; w && *w; w++)
		json_array_append_new(list, json_string(saying_text_in(from->language, *w)));
	json_object_set_new(o, "waits", list);
	json_object_set_new(o, "stopped", json_boolean(from->stopped));
}

static void put_clock(json_t *o, const struct view_source *from)
{
	char words[400];
	const struct say says = wall_says(from->station, from->now);
	say_sentence_in(from->language, &says, words, sizeof words);
	put(o, "clock", words);
}

static json_t *slips(const struct station *st)
{
	json_t *list = json_array();
	for (int i = 0; i < st->n_unseen; i++) {
		const struct slip *s = &st->unseen[i];
		json_t *o = json_object();
		put_n(o, "number", s->number);
		put_n(o, "case", s->case_no);
		put_n(o, "room", s->room);
		put_n(o, "copy", s->copy);
		put(o, "kind", slip_kind_name((enum slip_kind)s->kind));
		put(o, "state", slip_state_name((enum slip_state)s->state));
		put_n(o, "since_ms", s->wall_ms);
		json_array_append_new(list, o);
	}
	return list;
}

/* What the lists cannot show. */
static void put_further(json_t *o, const struct station *st)
{
	put_n(o, "slips_older", st->older_unseen);
	put_n(o, "owed_more", st->more_owed);
}

static json_t *owed(const struct station *st)
{
	json_t *list = json_array();
	for (int i = 0; i < st->n_owed; i++) {
		json_t *o = json_object();
		put_n(o, "case", st->owed[i].case_no);
		put_n(o, "since_ms", st->owed[i].wall_ms);
		json_array_append_new(list, o);
	}
	return list;
}

/* What is owed to patients of ended cases, that of the case that waits longest first, as it is to be done. */
static json_t *after_end(const struct view_source *from, int32_t room)
{
	json_t *list = json_array();
	const struct station *st = from->station;
	for (int i = 0; i < st->n_after; i++) {
		const struct after_end *a = &st->after[i];
		char at[WALL_TEXT_MAX];
		if (room && a->room != room)
			continue;
		json_t *o = json_object();
		wall_text(from, a->wall_ms, at);
		put_n(o, "case", a->case_no);
		put(o, "what", debt_name((enum debt_kind)a->what));
		put_n(o, "digit", a->digit);
		put(o, "at", at);
		json_array_append_new(list, o);
	}
	return list;
}

/* The case that ended last in a room, of those that are kept; null none. */
static json_t *ended(const struct view_source *from, int32_t room)
{
	for (int i = from->day->n; i-- > 0;) {
		const struct day_case *d = &from->day->cases[i];
		char at[WALL_TEXT_MAX];
		if (d->room != room || !d->end)
			continue;
		json_t *o = json_object();
		wall_text(from, d->ended_ms, at);
		put_n(o, "case", d->case_no);
		put(o, "outcome", case_end_name(d->end));
		put(o, "at", at);
		put_n(o, "ago_ms", from->now.wall_ms > d->ended_ms ? from->now.wall_ms - d->ended_ms : 0);
		return o;
	}
	return json_null();
}

static json_t *points(const struct policy *p, const struct language *l)
{
	json_t *list = json_array();
	for (int i = 0; i < p->n_points; i++)
		json_array_append_new(list, name_told(shipped_text_in(l, p->points[i]), POLICY_TEXT_MAX));
	return list;
}

static json_t *case_of(const struct sheet *s, int sign_out)
{
	static const char *const finals[] = {
	    [FINAL_NONE] = "none", [FINAL_ASKING] = "asking", [FINAL_AGREED] = "agreed"};
	if (!s->case_no)
		return json_null();
	json_t *o = json_object();
	put_n(o, "number", s->case_no);
	json_object_set_new(o, "single", json_boolean(s->single));
	json_object_set_new(o, "initial_agreed", json_boolean(s->initial_agreed));
	put(o, "final", finals[s->final]);
	json_object_set_new(o, "discrepancy", json_boolean(s->discrepancy));
	json_object_set_new(o, "cancelled", json_boolean(s->cancelled));
	json_object_set_new(o, "patient_left", json_boolean(s->patient_left));
	json_object_set_new(o, "dressing_on", json_boolean(s->dressing_on));
	json_object_set_new(o, "sign_out", json_boolean(sign_out));
	put_n(o, "points_yes", s->points_yes);
	put_n(o, "point_no", s->point_no);
	return o;
}

static json_t *sound(const struct view_sound *s)
{
	json_t *o = json_object();
	put_n(o, "volume", s->volume);
	json_object_set_new(o, "quiet", json_boolean(s->quiet));
	json_object_set_new(o, "speech", json_boolean(s->speech));
	return o;
}

static json_t *room_of(const struct room *room)
{
	json_t *o = json_object();
	put_n(o, "number", room->number);
	put(o, "name", room->name);
	json_object_set_new(o, "single", json_boolean(room->single));
	return o;
}

static void put_sheet(json_t *o, const struct view_source *from, const struct sheet *s,
                      const struct next *next)
{
	put(o, "question", s->asked.what ? question_name((enum question)s->asked.what) : "");
	put_n(o, "asked_digit", s->asked.digit);
	put_n(o, "asked_item", s->final == FINAL_ASKING ? sheet_next_open(s) : 0);
	json_object_set_new(o, "items", items(from, s));
	json_object_set_new(o, "digits", digits(from, s));
	json_object_set_new(o, "team", team(from, s));
	json_object_set_new(o, "agreed", agreed(from, s));
	json_object_set_new(o, "debts", debts(from, s, next->head.what));
	json_object_set_new(o, "may_be_on", may_be_on(s));
	json_object_set_new(o, "search", search(from, s));
	json_object_set_new(o, "awake", json_boolean(s->awake));
}

json_t *view_room(const struct view_source *from, const struct view_room_source *room)
{
	struct sheet idle;
	const struct station *st = from->station;
	const struct room *of = station_room(st, room->room);
	if (!of)
		return NULL;
	int suspended = station_suspended_in(st, room->room);
	const struct sheet *s = station_shown(st, room->room, &idle);
	char words[NEXT_MAX];
	json_t *o = json_object();
	put_n(o, "v", 1);
	put(o, "language", language_code(from->language));
	put_n(o, "at_ms", from->now.wall_ms);
	put_n(o, "utc_min", from->now.utc_min);
	json_object_set_new(o, "room", room_of(of));
	put(o, "site", st->site_name);
	put(o, "distrust", from->distrust);
	put_machine(o, from);
	json_object_set_new(o, "practice", json_boolean(st->practice));
	json_object_set_new(o, "case", case_of(s, room->sign_out));
	put_n(o, "suspended_case", suspended >= 0 ? st->sheets[suspended].case_no : 0);
	json_object_set_new(o, "ended", ended(from, room->room));
	json_object_set_new(o, "after", after_end(from, room->room));
	next_words_in(room->next, from->language, words);
	put(o, "next", from->distrust[0] ? saying_text_in(from->language, SAY_BY_HAND) : words);
	json_object_set_new(o, "cards", cards(room->next, from->language));
	json_object_set_new(o, "deeds", view_deeds(room->next, from->language));
	put_sheet(o, from, s, room->next);
	json_object_set_new(o, "points", points(&st->policy, from->language));
	json_object_set_new(o, "recent", recent(room, from->now));
	json_object_set_new(o, "last_scan_ms", last_scan(from, room->room));
	json_object_set_new(o, "elsewhere", elsewhere(from, room->room));
	put_clock(o, from);
	json_object_set_new(o, "slips", slips(st));
	json_object_set_new(o, "owed", owed(st));
	put_further(o, st);
	json_object_set_new(o, "sound", sound(&room->sound));
	return o;
}

static json_t *rooms(const struct station *st)
{
	json_t *list = json_array();
	for (int i = 0; i < st->n_rooms; i++) {
		int index = station_sheet_of_room(st, st->rooms[i].number);
		int suspended = station_suspended_in(st, st->rooms[i].number);
		json_t *o = json_object();
		put_n(o, "number", st->rooms[i].number);
		put(o, "name", st->rooms[i].name);
		put(o, "language", station_language(st, st->rooms[i].number));
		put_n(o, "case", index >= 0 ? st->sheets[index].case_no : 0);
		put_n(o, "suspended_case", suspended >= 0 ? st->sheets[suspended].case_no : 0);
		json_object_set_new(o, "single", json_boolean(st->rooms[i].single));
		json_object_set_new(o, "stores",
		                    json_boolean(station_room_is(st, st->rooms[i].number, ROOM_OF_STORES)));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *backup(const struct station *st)
{
	json_t *o = st->backup_ms ? json_object() : json_null();
	if (st->backup_ms) {
		put_n(o, "ms", st->backup_ms);
		put_n(o, "events", st->backup_seq);
	}
	return o;
}

json_t *view_status(const struct view_source *from, const struct view_status_source *status)
{
	const struct station *st = from->station;
	json_t *o = json_object();
	int open = 0;
	for (int i = 0; i < SHEETS_MAX; i++)
		open += st->sheets[i].case_no != 0;
	put_n(o, "v", 1);
	put(o, "language", language_code(from->language));
	put(o, "site", st->site);
	put(o, "site_name", st->site_name);
	put_n(o, "events", status->events);
	put_n(o, "open_cases", open);
	put_n(o, "last_case", st->last_case_no);
	put_n(o, "lines", (int64_t)st->catalogue.count);
	put_n(o, "staff", (int64_t)st->staff.count);
	put(o, "distrust", from->distrust);
	put_machine(o, from);
	put(o, "printer", status->printer);
	json_object_set_new(o, "rooms", rooms(st));
	json_object_set_new(o, "cases", cases_of_day(from));
	json_object_set_new(o, "elsewhere", elsewhere(from, 0));
	json_object_set_new(o, "after", after_end(from, 0));
	put_clock(o, from);
	json_object_set_new(o, "backup", backup(st));
	json_object_set_new(o, "slips", slips(st));
	json_object_set_new(o, "owed", owed(st));
	put_further(o, st);
	return o;
}
