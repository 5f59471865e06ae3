#include "run/view.h"

#include <stdio.h>
#include <string.h>

#include "base/clock.h"
#include "code/own-codes.h"

const char *item_place_name(enum item_place place)
{
	static const char *const names[] = {"",
	                                    "counted in",
	                                    "on a digit",
	                                    "off, not yet accounted for",
	                                    "accounted for",
	                                    "returned unopened",
	                                    "isolated",
	                                    "struck",
	                                    "extra"};
	return place <= ITEM_EXTRA ? names[place] : "";
}

const char *slip_state_name(enum slip_state state)
{
	static const char *const names[] = {
	    "", "queued", "written as PDF", "sent", "reported done", "waiting", "failed", "seen"};
	return state <= SLIP_SEEN ? names[state] : "";
}

const char *slip_kind_name(enum slip_kind kind)
{
	static const char *const names[] = {"", "reconciliation", "discrepancy", "addendum"};
	return kind <= SLIP_ADDENDUM ? names[kind] : "";
}

const char *verdict_name(enum verdict verdict)
{
	static const char *const names[] = {"accepted", "refused", "question"};
	return names[verdict];
}

const char *case_end_name(int end)
{
	static const char *const names[] = {"open", "reconciled", "unresolved", "cancelled"};
	return end >= 0 && end <= END_CANCELLED ? names[end] : "ended";
}

static void put(json_t *o, const char *key, const char *s)
{
	json_object_set_new(o, key, json_string(s));
}

static void put_n(json_t *o, const char *key, int64_t n)
{
	json_object_set_new(o, key, json_integer(n));
}

static json_t *items(const struct sheet *s)
{
	static const char *const conditions[] = {"", "intact", "cut and complete", "pieces missing"};
	json_t *list = json_array();
	for (int i = 0; i < s->n_items; i++) {
		const struct item *it = &s->items[i];
		json_t *o = json_object();
		put_n(o, "number", i + 1);
		put(o, "name", it->thing.name);
		put(o, "lot", it->thing.lot);
		put(o, "identity", it->thing.identity);
		put(o, "role", role_name((enum role)it->thing.role));
		put(o, "place", item_place_name((enum item_place)it->place));
		put(o, "condition", conditions[it->condition & 3]);
		put_n(o, "pieces", it->pieces);
		put_n(o, "shown", it->shown);
		put_n(o, "missing", it->missing);
		put_n(o, "digit", it->digit);
		json_object_set_new(o, "dropped", json_boolean(it->dropped));
		json_object_set_new(o, "unlisted", json_boolean(it->thing.unlisted));
		json_object_set_new(o, "added", json_boolean(it->added));
		json_array_append_new(list, o);
	}
	return list;
}

/* "10:12", with its date where that is not today's; "" for none. */
static void wall_text(int64_t wall_ms, struct moment now, char out[18])
{
	char date[11] = "", hm[6] = "";
	if (wall_ms)
		clock_text_hm(wall_ms, hm);
	if (wall_ms && clock_date_number(wall_ms) != clock_date_number(now.wall_ms))
		clock_text_date(wall_ms, date);
	snprintf(out, 18, "%s%s%s", date, *date ? " " : "", hm);
}

static json_t *digits(const struct sheet *s, struct moment now)
{
	static const char *const states[] = {"bare", "maybe-on", "on", "off"};
	json_t *list = json_array();
	for (int i = 0; i < s->n_digits; i++) {
		const struct digit *d = &s->digits[i];
		char text[80], at[18];
		json_t *o = json_object();
		digit_minutes_text(d, now, text, sizeof text);
		wall_text(d->on_wall_ms, now, at);
		put_n(o, "number", d->number);
		put(o, "name", own_digit_name(d->number));
		put(o, "state", states[d->state]);
		put(o, "text", text);
		put(o, "on_at", at);
		put_n(o, "stretch_ms", digit_stretch_ms(d, now));
		put_n(o, "total_ms", digit_total_ms(d, now));
		put_n(o, "longest_ms", digit_longest_ms(d, now));
		json_object_set_new(o, "marked", json_boolean(d->marked));
		json_object_set_new(o, "seen_bare", json_boolean(d->seen_bare));
		json_object_set_new(o, "reminded", json_boolean(d->reminded));
		json_object_set_new(o, "gap", json_boolean(d->gap));
		json_object_set_new(o, "forceps",
		                    json_boolean(sheet_item_on(s, d->number, ROLE_FORCEPS) != 0));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *team(const struct core *c, const struct sheet *s)
{
	json_t *list = json_array();
	for (int p = PLACE_FIELD; p < TEAM_PLACES; p++) {
		if (!s->team.at[p])
			continue;
		json_t *o = json_object();
		put(o, "place",
		    s->single && p == PLACE_FIELD ? "operator, alone" : place_words((enum team_place)p));
		put(o, "name", staff_name(&c->station.staff, s->team.at[p]));
		json_array_append_new(list, o);
	}
	return list;
}

/* What was agreed and still holds: a final count that was voided does not. */
static json_t *agreed(const struct core *c, const struct sheet *s)
{
	static const char *const kinds[] = {"", "initial count", "final count", "handover count",
	                                    "count of what was added"};
	json_t *list = json_array();
	const struct day_case *d = s->case_no ? day_case(&c->day, s->case_no) : NULL;
	for (int i = 0; d && i < d->n_counts; i++) {
		const struct day_count *k = &d->counts[i];
		char at[6];
		if (k->kind < COUNT_INITIAL || k->kind > COUNT_ADDED ||
		    (k->kind == COUNT_FINAL && s->final != FINAL_AGREED))
			continue;
		json_t *o = json_object();
		clock_text_hm(k->at_ms, at);
		put(o, "count", kinds[k->kind]);
		put(o, "at", at);
		put(o, "field", staff_name(&c->station.staff, k->field));
		put(o, "circulating", k->circulating ? staff_name(&c->station.staff, k->circulating) : "");
		put(o, "recorded", staff_name(&c->station.staff, k->recorded_by));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *cases_of_day(const struct core *c)
{
	json_t *list = json_array();
	int64_t now = core_now(c).wall_ms;
	for (int i = c->day.n; i-- > 0;) {
		const struct day_case *d = &c->day.cases[i];
		char opened[6], ended[6] = "";
		if (!day_shows(d, now))
			continue;
		json_t *o = json_object();
		clock_text_hm(d->opened_ms, opened);
		if (d->end)
			clock_text_hm(d->ended_ms, ended);
		put_n(o, "case", d->case_no);
		put(o, "room", station_room_name(&c->station, d->room));
		put(o, "opened", opened);
		put(o, "ended", ended);
		put(o, "outcome", case_end_name(d->end));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *debts(const struct sheet *s)
{
	json_t *list = json_array();
	for (int i = 0; i < s->debts.count; i++)
		json_array_append_new(list, json_string(debt_words((enum debt_kind)s->debts.list[i].kind)));
	return list;
}

static json_t *search(const struct core *c, const struct sheet *s)
{
	json_t *list = json_array();
	for (int i = 0; s->discrepancy && i < c->station.policy.n_search; i++) {
		json_t *o = json_object();
		put(o, "text", c->station.policy.search[i]);
		json_object_set_new(o, "answered", json_boolean(i < s->search_done));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *cards(const struct core *c, const struct sheet *s)
{
	int fit[FITTING_MAX], n = fitting_cards(&c->station, s, fit);
	json_t *list = json_array();
	for (int i = 0; i < n; i++) {
		json_t *o = json_object();
		put_n(o, "number", fit[i]);
		put(o, "words", own_card_name(fit[i]));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *recent(const struct core *c, int index, struct moment now)
{
	json_t *list = json_array();
	for (int i = 0; i < RECENT_MAX && c->recent[index][i].said[0]; i++) {
		const struct recent *r = &c->recent[index][i];
		json_t *o = json_object();
		put_n(o, "ago_ms", moment_between_ms(r->at, now));
		put(o, "verdict", verdict_name(r->verdict));
		put(o, "said", r->said);
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *slips(const struct core *c)
{
	json_t *list = json_array();
	for (int i = 0; i < c->station.n_unseen; i++) {
		const struct slip *s = &c->station.unseen[i];
		json_t *o = json_object();
		put_n(o, "number", s->number);
		put_n(o, "case", s->case_no);
		put_n(o, "room", s->room);
		put_n(o, "copy", s->copy);
		put(o, "kind", slip_kind_name((enum slip_kind)s->kind));
		put(o, "state", slip_state_name((enum slip_state)s->state));
		json_array_append_new(list, o);
	}
	return list;
}

static json_t *owed(const struct core *c)
{
	json_t *list = json_array();
	for (int i = 0; i < c->station.n_owed; i++)
		json_array_append_new(list, json_integer(c->station.owed[i].case_no));
	return list;
}

static json_t *points(const struct core *c)
{
	json_t *list = json_array();
	for (int i = 0; i < c->station.policy.n_points; i++)
		json_array_append_new(list, json_string(c->station.policy.points[i]));
	return list;
}

static json_t *case_of(const struct sheet *s)
{
	static const char *const finals[] = {"not begun", "going on", "agreed"};
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
	json_object_set_new(o, "sign_out", json_boolean(ready_to_sign_out(s)));
	put_n(o, "points_yes", s->points_yes);
	put_n(o, "point_no", s->point_no);
	return o;
}

static json_t *sound(const struct sound_setting *s, struct moment now)
{
	json_t *o = json_object();
	put_n(o, "volume", s->volume);
	json_object_set_new(o, "quiet", json_boolean(settings_quiet(s, now.wall_ms)));
	json_object_set_new(o, "speech", json_boolean(s->speech));
	return o;
}

json_t *view_room(const struct core *c, int32_t number)
{
	static const struct sheet none;
	const struct room *room = station_room(&c->station, number);
	if (!room)
		return NULL;
	int index = station_sheet_of_room(&c->station, number),
	    suspended = station_suspended_in(&c->station, number);
	const struct sheet *s = index >= 0 ? &c->station.sheets[index] : &none;
	struct moment now = core_now(c);
	char next[NEXT_MAX];
	json_t *o = json_object(), *r = json_object();
	next_step(&c->station, s, now, next);
	put_n(o, "v", 1);
	put_n(o, "at_ms", now.wall_ms);
	put_n(r, "number", room->number);
	put(r, "name", room->name);
	json_object_set_new(r, "single", json_boolean(room->single));
	json_object_set_new(o, "room", r);
	put(o, "site", c->station.site_name);
	put(o, "distrust", c->distrust);
	json_object_set_new(o, "case", case_of(s));
	put_n(o, "suspended_case", suspended >= 0 ? c->station.sheets[suspended].case_no : 0);
	put(o, "next", c->distrust[0] ? "Count by hand on the paper sheet." : next);
	put(o, "question", s->asked.what ? question_name((enum question)s->asked.what) : "");
	put_n(o, "asked_digit", s->asked.digit);
	json_object_set_new(o, "cards", cards(c, s));
	json_object_set_new(o, "items", items(s));
	put_n(o, "asked_item", s->final == FINAL_ASKING ? sheet_next_open(s) : 0);
	json_object_set_new(o, "digits", digits(s, now));
	json_object_set_new(o, "team", team(c, s));
	json_object_set_new(o, "agreed", agreed(c, s));
	json_object_set_new(o, "debts", debts(s));
	json_object_set_new(o, "search", search(c, s));
	json_object_set_new(o, "points", points(c));
	json_object_set_new(o, "recent", recent(c, core_room_index(c, number), now));
	json_object_set_new(o, "slips", slips(c));
	json_object_set_new(o, "owed", owed(c));
	json_object_set_new(o, "awake", json_boolean(s->awake));
	json_object_set_new(o, "sound", sound(&c->settings.sound, now));
	return o;
}

json_t *view_status(const struct core *c)
{
	json_t *o = json_object(), *rooms = json_array();
	int open = 0;
	for (int i = 0; i < SHEETS_MAX; i++)
		open += c->station.sheets[i].case_no != 0;
	for (int i = 0; i < c->station.n_rooms; i++) {
		json_t *r = json_object();
		int index = station_sheet_of_room(&c->station, c->station.rooms[i].number);
		put_n(r, "number", c->station.rooms[i].number);
		put(r, "name", c->station.rooms[i].name);
		put_n(r, "case", index >= 0 ? c->station.sheets[index].case_no : 0);
		json_array_append_new(rooms, r);
	}
	put_n(o, "v", 1);
	put(o, "site", c->station.site);
	put(o, "site_name", c->station.site_name);
	put_n(o, "events", record_last(c->record, NULL));
	put_n(o, "open_cases", open);
	put_n(o, "last_case", c->station.last_case_no);
	put_n(o, "lines", (int64_t)c->station.catalogue.count);
	put_n(o, "staff", (int64_t)c->station.staff.count);
	put(o, "distrust", c->distrust);
	put(o, "printer", c->settings.printer);
	json_object_set_new(o, "rooms", rooms);
	json_object_set_new(o, "cases", cases_of_day(c));
	json_object_set_new(o, "slips", slips(c));
	json_object_set_new(o, "owed", owed(c));
	return o;
}
