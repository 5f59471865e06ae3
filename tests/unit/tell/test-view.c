/* What the board and `status` get to see of a station in which as much as possible is out of the ordinary, and of one in which
 * nothing is. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "tell/rooms.h"
#include "tell/view.h"
#include "words/page-catalogue.h"

#define MIN INT64_C(60000)
#define TEN INT64_C(1795600800000) /* 2026-11-25, ten o'clock UTC */
#define DAY (24 * 60 * MIN)

static struct station st;
static struct day day;
static struct next next;
static struct view_source from;
static const struct moment now = {.boot = 1, .boot_ms = 100 * MIN, .wall_ms = TEN};

static struct moment ago(int minutes)
{
	return (struct moment){
	    .boot = 1, .boot_ms = now.boot_ms - minutes * MIN, .wall_ms = TEN - minutes * MIN};
}

static int begin(void **state)
{
	(void)state;
	memset(&st, 0, sizeof st);
	memset(&day, 0, sizeof day);
	memset(&next, 0, sizeof next);
	st.rooms[0] = (struct room){.number = 1, .name = "Theatre 1"};
	st.rooms[1] = (struct room){.number = 2, .name = "Minor injuries", .single = 1};
	st.n_rooms = 2;
	policy_default(&st.policy);
	from = (struct view_source){.station = &st, .day = &day, .now = now, .distrust = ""};
	return 0;
}

static json_t *seen(int32_t room)
{
	const struct view_room_source of = {.room = room, .next = &next};
	json_t *o = view_room(&from, &of);
	assert_non_null(o);
	return o;
}

/* The value at keys and places like "digits.0.state". */
static const json_t *at(const json_t *o, const char *path)
{
	char key[80];
	for (const char *p = path; *p; p += strlen(key) + (p[strlen(key)] == '.')) {
		snprintf(key, sizeof key, "%.*s", (int)strcspn(p, "."), p);
		o = json_is_array(o) ? json_array_get(o, (size_t)atoi(key)) : json_object_get(o, key);
	}
	if (!o)
		fail_msg("there is no %s", path);
	return o;
}

struct shown {
	const char *path, *text; /* text NULL: the number, or 1 and 0 for true and false */
	int64_t number;
};

static void must_show(const json_t *o, const struct shown *all, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		const json_t *v = at(o, all[i].path);
		int64_t number = json_is_boolean(v) ? json_is_true(v) : json_integer_value(v);
		if (all[i].text ? !json_is_string(v) || strcmp(json_string_value(v), all[i].text) != 0
		                : json_is_string(v) || number != all[i].number)
			fail_msg("%s is '%s' or %lld", all[i].path,
			         json_is_string(v) ? json_string_value(v) : "", (long long)number);
	}
}
#define MUST_SHOW(o, all) must_show(o, all, sizeof(all) / sizeof *(all))

static void a_room_without_a_case_shows_nothing(void **state)
{
	static const struct shown all[] = {
	    {"room.number", NULL, 1}, {"room.single", NULL, 0}, {"question", "", 0},      {"distrust", "", 0},
	    {"slips_older", NULL, 0}, {"owed_more", NULL, 0},   {"sound.quiet", NULL, 0},
	};
	static const char *const none[] = {"items",     "digits", "team", "agreed",    "debts", "search",
	                                   "may_be_on", "slips",  "owed", "elsewhere", "after", "recent"};
	(void)state;
	_cleanup_(json_drop) json_t *o = seen(1);
	MUST_SHOW(o, all);
	for (size_t i = 0; i < sizeof none / sizeof *none; i++)
		assert_int_equal(json_array_size(at(o, none[i])), 0);
	assert_true(json_is_null(at(o, "case")));
	assert_true(json_is_null(at(o, "ended")));
	assert_true(json_is_null(at(o, "last_scan_ms")));
	assert_null(view_room(&from, &(struct view_room_source){.room = 3, .next = &next}));
}

static struct sheet *a_case(int32_t room)
{
	struct sheet *s = &st.sheets[0];
	s->case_no = 41;
	s->room = room;
	return s;
}

static void each_mark_of_an_item_and_a_digit_is_shown(void **state)
{
	static const struct shown all[] = {
	    {"items.0.dropped", NULL, 1},
	    {"items.0.unlisted", NULL, 0},
	    {"items.0.place", "isolated", 0},
	    {"items.0.condition", "", 0},
	    {"items.1.unlisted", NULL, 1},
	    {"items.1.added", NULL, 1},
	    {"items.1.condition", "intact", 0},
	    {"items.1.dropped", NULL, 0},
	    {"digits.0.state", "maybe-on", 0},
	    {"digits.0.on_at", "09:58", 0},
	    {"digits.0.marked", NULL, 1},
	    {"digits.0.next_reminder_min", NULL, 0},
	    {"digits.0.gap", NULL, 1},
	    {"digits.1.state", "on", 0},
	    {"digits.1.on_at", "24 Nov 2026 10:00", 0},
	    {"digits.1.next_reminder_min", NULL, 30},
	    {"digits.1.reminded", NULL, 1},
	    {"digits.1.gap", NULL, 1},
	    {"digits.1.forceps", NULL, 1},
	    {"digits.2.state", "off", 0},
	    {"digits.2.seen_bare", NULL, 1},
	    {"digits.2.forceps", NULL, 0},
	    {"digits.2.on_at", "", 0},
	    {"digits.3.next_reminder_min", NULL, 20},
	};
	(void)state;
	struct sheet *s = a_case(1);
	s->items[0] = (struct item){.place = ITEM_ISOLATED, .dropped = 1, .thing = {.role = ROLE_OTHER}};
	s->items[1] = (struct item){.place = ITEM_ON,
	                            .digit = 7,
	                            .added = 1,
	                            .condition = 1,
	                            .thing = {.role = ROLE_FORCEPS, .unlisted = 1}};
	s->n_items = 2;
	s->digits[0] = (struct digit){.number = 2,
	                              .state = DIGIT_OFF,
	                              .doubted = 1,
	                              .marked = 1,
	                              .doubt_since = ago(2),
	                              .doubt_wall_ms = TEN - 2 * MIN,
	                              .by_wall = {.gaps = 1}};
	s->digits[1] = (struct digit){.number = 7,
	                              .state = DIGIT_ON,
	                              .since = ago(20),
	                              .gap = 1,
	                              .reminded = 1,
	                              .reminded_min = 20,
	                              .on_wall_ms = TEN - DAY};
	s->digits[2] = (struct digit){.number = 8, .state = DIGIT_OFF, .seen_bare = 1};
	s->digits[3] =
	    (struct digit){.number = 9, .state = DIGIT_ON, .since = ago(1), .on_wall_ms = TEN - MIN};
	s->n_digits = 4;
	st.policy.first_reminder_min = 20;
	st.policy.next_reminder_min = 10;
	_cleanup_(json_drop) json_t *o = seen(1);
	MUST_SHOW(o, all);
	st.policy.next_reminder_min = 0;
	_cleanup_(json_drop) json_t *once = seen(1);
	assert_int_equal(json_integer_value(at(once, "digits.1.next_reminder_min")), 0);
	st.policy.first_reminder_min = 0;
	_cleanup_(json_drop) json_t *never = seen(1);
	assert_int_equal(json_integer_value(at(never, "digits.3.next_reminder_min")), 0);
}

static void counts_that_hold_are_shown_and_steps_of_a_search(void **state)
{
	static const struct shown open[] = {
	    {"agreed.0.count", "initial", 0}, {"agreed.0.at", "09:00", 0},
	    {"agreed.0.circulating", "", 0},  {"agreed.1.count", "handover", 0},
	    {"search.0.state", "done", 0},    {"search.1.state", "not-done", 0},
	    {"search.2.state", "open", 0},    {"case.discrepancy", NULL, 1},
	    {"case.patient_left", NULL, 1},   {"case.cancelled", NULL, 1},
	    {"case.dressing_on", NULL, 1},    {"case.sign_out", NULL, 0},
	};
	static const struct shown agreed[] = {{"agreed.1.count", "final", 0},
	                                      {"case.single", NULL, 1},
	                                      {"team.0.place", "operator", 0},
	                                      {"awake", NULL, 1}};
	(void)state;
	struct sheet *s = a_case(2);
	s->discrepancy = s->patient_left = s->cancelled = s->dressing_on = s->unfollowed = 1;
	s->search_done = 2;
	day.n = 1;
	day.cases[0] = (struct day_case){
	    .case_no = 41, .room = 2, .opened_ms = TEN - 70 * MIN, .n_counts = 4, .n_steps = 2};
	struct day_case *d = &day.cases[0];
	d->counts[0] =
	    (struct day_count){.kind = COUNT_INITIAL, .at_ms = TEN - 60 * MIN, .field = 1, .recorded_by = 1};
	d->counts[1] = (struct day_count){.kind = COUNT_FINAL, .at_ms = TEN, .field = 1, .recorded_by = 1};
	d->counts[2] = (struct day_count){.at_ms = TEN, .field = 1, .recorded_by = 1};
	d->counts[3] = (struct day_count){
	    .kind = COUNT_HANDOVER, .at_ms = TEN, .field = 1, .circulating = 2, .recorded_by = 2};
	d->steps[0] = (struct day_step){.step = 1};
	d->steps[1] = (struct day_step){.step = 2, .not_done = 1};
	_cleanup_(json_drop) json_t *o = seen(2);
	MUST_SHOW(o, open);
	assert_int_equal(json_array_size(at(o, "agreed")), 2); /* a voided final count does not hold */
	assert_non_null(strstr(json_string_value(at(o, "debts.0.words")), "count by hand"));
	s->final = FINAL_AGREED;
	s->single = s->awake = 1;
	s->team.at[PLACE_FIELD] = 1;
	d->n_counts = 2;
	_cleanup_(json_drop) json_t *after = seen(2);
	MUST_SHOW(after, agreed);
}

static void a_missing_band_may_be_on_each_digit_that_had_it(void **state)
{
	(void)state;
	struct sheet *s = a_case(1);
	s->items[0] = (struct item){
	    .place = ITEM_OFF, .digit = 2, .missing = 1, .pieces = 1, .thing = {.role = ROLE_TOURNIQUET}};
	s->n_items = 1;
	_cleanup_(json_drop) json_t *one = seen(1);
	assert_int_equal(json_array_size(at(one, "may_be_on")), 1);
	assert_int_equal(json_integer_value(at(one, "may_be_on.0")), 2);
	s->items[1] =
	    (struct item){.place = ITEM_OFF, .digit = 3, .pieces = 1, .thing = {.role = ROLE_TOURNIQUET}};
	s->n_items = 2; /* nobody can tell it from the first */
	_cleanup_(json_drop) json_t *alike = seen(1);
	assert_int_equal(json_array_size(at(alike, "may_be_on")), 2);
	s->items[0].missing = 0;
	_cleanup_(json_drop) json_t *none = seen(1);
	assert_int_equal(json_array_size(at(none, "may_be_on")), 0);
}

static void what_is_owed_is_shown_in_its_room_and_of_all_rooms(void **state)
{
	static const struct shown mine[] = {
	    {"owed.0.case", NULL, 12},
	    {"owed.0.since_ms", NULL, TEN - DAY},
	    {"owed_more", NULL, 3},
	    {"after.0.case", NULL, 38},
	    {"after.0.what", "digit-seen-bare", 0},
	    {"after.0.at", "24 Nov 2026 10:00", 0},
	    {"ended.case", NULL, 40},
	    {"ended.outcome", "unresolved", 0},
	    {"ended.at", "09:30", 0},
	    {"ended.ago_ms", NULL, 30 * MIN},
	};
	(void)state;
	st.owed[0] = (struct owed_number){.case_no = 12, .room = 1, .wall_ms = TEN - DAY};
	st.n_owed = 1;
	st.more_owed = 3;
	st.after[0] =
	    (struct after_end){.case_no = 38, .room = 1, .wall_ms = TEN - DAY, .what = DEBT_LOOK, .digit = 2};
	st.after[1] = (struct after_end){.case_no = 39, .room = 2, .wall_ms = TEN, .what = DEBT_LOOK};
	st.n_after = 2;
	day.n = 3;
	day.cases[0] = (struct day_case){.case_no = 9,
	                                 .room = 1,
	                                 .opened_ms = TEN - 2 * DAY,
	                                 .ended_ms = TEN - 2 * DAY + MIN,
	                                 .end = END_CANCELLED};
	day.cases[1] = (struct day_case){.case_no = 40,
	                                 .room = 1,
	                                 .opened_ms = TEN - 60 * MIN,
	                                 .ended_ms = TEN - 30 * MIN,
	                                 .end = END_UNRESOLVED};
	day.cases[2] = (struct day_case){.case_no = 41, .room = 1, .opened_ms = TEN};
	_cleanup_(json_drop) json_t *o = seen(1);
	MUST_SHOW(o, mine);
	assert_int_equal(json_array_size(at(o, "after")), 1);
	assert_int_equal(json_integer_value(at(o, "after.0.digit")), 2);
	day.cases[1].ended_ms = TEN + MIN; /* the clock was set back since */
	_cleanup_(json_drop) json_t *back = seen(1);
	assert_int_equal(json_integer_value(at(back, "ended.ago_ms")), 0);
	_cleanup_(json_drop) json_t *all = view_status(&from, &(struct view_status_source){.printer = ""});
	assert_int_equal(json_array_size(at(all, "after")), 2);
	assert_int_equal(json_integer_value(at(all, "after.1.digit")), 0);
	assert_int_equal(json_array_size(at(all, "cases")), 2); /* of today */
	assert_string_equal(json_string_value(at(all, "cases.0.ended")), "");
	assert_string_equal(json_string_value(at(all, "cases.1.ended")), "10:01");
	assert_true(json_is_null(at(all, "backup")));
	st.backup_ms = TEN;
	st.backup_seq = 77;
	_cleanup_(json_drop) json_t *kept = view_status(&from, &(struct view_status_source){.printer = ""});
	assert_int_equal(json_integer_value(at(kept, "backup.events")), 77);
	assert_true(json_is_true(at(kept, "rooms.1.single")));
}

static void a_deed_shows_what_it_asks_for(void **state)
{
	static const struct shown all[] = {
	    {"deeds.0.kind", "card", 0},    {"cards.0.number", NULL, CARD_YES}, {"deeds.1.item", NULL, 3},
	    {"sound.quiet", NULL, 1},       {"sound.speech", NULL, 1},          {"recent.0.said", "ok", 0},
	    {"recent.0.ago_ms", NULL, MIN}, {"case.sign_out", NULL, 1},         {"suspended_case", NULL, 43},
	    {"question", "off", 0},         {"deeds.2.then", "OFF", 0},
	};
	const struct view_scan scan = {.at = ago(1), .verdict = "accepted", .said = "ok"};
	(void)state;
	a_case(1)->asked.what = Q_OFF;
	st.sheets[1] = (struct sheet){.case_no = 43, .room = 1, .suspended = 1};
	next.n_deeds = 3;
	next.deeds[0] = (struct deed){.kind = DEED_CARD, .n = CARD_YES, .then = CARD_NO};
	next.deeds[1] = (struct deed){.kind = DEED_MARK, .item = 3};
	next.deeds[2] = (struct deed){.kind = DEED_DIGIT, .truth = TRUTH_OFF, .digit = 2};
	from.distrust = "the scanner is gone";
	_cleanup_(json_drop) json_t *o = view_room(&from, &(struct view_room_source){.room = 1,
	                                                                             .next = &next,
	                                                                             .sign_out = 1,
	                                                                             .recent = &scan,
	                                                                             .n_recent = 1,
	                                                                             .sound = {50, 1, 1}});
	assert_non_null(o);
	assert_true(strlen(json_string_value(at(o, "deeds.0.then"))) > 0);
	assert_string_equal(json_string_value(at(o, "deeds.2.digit")), own_digit_name(2));
	assert_non_null(strstr(json_string_value(at(o, "next")), "by hand"));
	MUST_SHOW(o, all);
}

/* A room that was taken out of station.ini: its case is told on every board. */
static void a_case_of_a_room_that_is_gone_is_told(void **state)
{
	char out[400];
	(void)state;
	struct sheet *s = a_case(2);
	st.sheets[2] = (struct sheet){.case_no = 43, .room = 7};
	st.sheets[4] = (struct sheet){.case_no = 44, .room = 8};
	assert_int_equal(rooms_gone_words(&st, NULL, 0, now, out, sizeof out), 3);
	assert_non_null(
	    strstr(out, "Room 7 is not in station.ini, but case 43 is open there: count by hand there"));
	assert_int_equal(rooms_gone_words(&st, NULL, 3, now, out, sizeof out), 5);
	assert_non_null(strstr(out, "Room 8"));
	assert_int_equal(rooms_gone_words(&st, NULL, 5, now, out, sizeof out), 0);
	assert_string_equal(out, "");
	s->room = 9;
	s->digits[0] = (struct digit){.number = 2, .state = DIGIT_OFF, .since = ago(1)};
	s->digits[1] =
	    (struct digit){.number = 7, .state = DIGIT_ON, .since = ago(24), .on_wall_ms = TEN - 24 * MIN};
	s->n_digits = 2;
	assert_int_equal(rooms_gone_words(&st, NULL, 0, now, out, sizeof out), 1);
	assert_non_null(strstr(out, "with a tourniquet on: "));
	assert_null(strstr(out, own_digit_name(2)));
	st.rooms[st.n_rooms++] = (struct room){.number = 9, .name = "Stores", .kind = ROOM_OF_STORES};
	assert_int_equal(rooms_gone_words(&st, NULL, 0, now, out, sizeof out), 1);
	assert_non_null(strstr(out, "Room 9 is a stores bench in station.ini, but case"));
	assert_non_null(strstr(out, "with a tourniquet on: "));
	st.rooms[st.n_rooms++] = (struct room){.number = 7, .name = "Desk", .kind = ROOM_OF_AUDIT};
	assert_int_equal(rooms_gone_words(&st, NULL, 1, now, out, sizeof out), 3);
	assert_non_null(strstr(out, "Room 7 is an auditor's desk in station.ini, but case 43 is open there"));
	st.rooms[st.n_rooms - 1].kind = ROOM_OF_CASES;
	assert_int_equal(rooms_gone_words(&st, NULL, 1, now, out, sizeof out), 5);
	assert_non_null(strstr(out, "Room 8 is not in"));
}

/* Of a number that no list has, as a record of a later version may bring it. */
static void what_is_on_in_a_suspended_case_is_shown_in_its_own_room(void **state)
{
	static const struct shown all[] = {
	    {"suspended_case", NULL, 41},
	    {"elsewhere.0.room", NULL, 1},
	    {"elsewhere.0.case", NULL, 41},
	    {"elsewhere.0.reminded", NULL, 1},
	    {"elsewhere.0.nobody", NULL, 0},
	    {"elsewhere.0.text", "Theatre 1: right index finger 25 min, TOURNIQUET ON, case 41, suspended",
	     0},
	};
	static const struct shown everywhere[] = {
	    {"rooms.0.case", NULL, 0},
	    {"rooms.0.suspended_case", NULL, 41},
	    {"elsewhere.0.case", NULL, 41},
	};
	(void)state;
	struct sheet *s = a_case(1);
	s->suspended = 1;
	s->digits[s->n_digits++] = (struct digit){
	    .number = 2, .state = DIGIT_ON, .had = 1, .reminded = 1, .reminded_min = 20, .since = ago(25)};
	_cleanup_(json_drop) json_t *o = seen(1);
	MUST_SHOW(o, all);
	_cleanup_(json_drop) json_t *other = seen(2);
	assert_int_equal(json_array_size(at(other, "elsewhere")), 0);
	_cleanup_(json_drop) json_t *desk = view_status(&from, &(struct view_status_source){.printer = ""});
	MUST_SHOW(desk, everywhere);
	st.heard[0].of_suspended = ago(5);
	_cleanup_(json_drop) json_t *then = seen(2);
	assert_int_equal(json_array_size(at(then, "elsewhere")), 1);
}

static void a_state_without_a_name_is_none(void **state)
{
	(void)state;
	assert_string_equal(slip_state_name(SLIP_SEEN), "seen");
	assert_string_equal(slip_state_name((enum slip_state)(SLIP_SEEN + 1)), "");
	assert_string_equal(slip_kind_name(SLIP_ADDENDUM), "addendum");
	assert_string_equal(slip_kind_name((enum slip_kind)(SLIP_ADDENDUM + 1)), "");
	assert_string_equal(case_end_name(0), "open");
	assert_string_equal(case_end_name(END_CANCELLED), "cancelled");
	assert_string_equal(case_end_name(END_CANCELLED + 1), "ended");
	assert_string_equal(case_end_name(-1), "ended");
}

/* The view names them; the page, which may speak another language than the room, looks for their words there. */
static void the_page_has_words_for_each_name_that_the_view_gives(void **state)
{
	(void)state;
	json_t *catalogue = language_catalogue(NULL), *words = json_object_get(catalogue, "words");
	for (int d = DEBT_NONE + 1; d < DEBT_KINDS; d++)
		assert_non_null(json_object_get(words, saying_key(debt_saying((enum debt_kind)d))));
	for (int p = 0; p < TEAM_PLACES; p++)
		assert_non_null(json_object_get(words, saying_key(place_saying((enum team_place)p))));
	assert_non_null(json_object_get(words, saying_key(SAY_PLACE_OPERATOR)));
	assert_non_null(json_object_get(words, saying_key(saying_of_digit(1))));
	json_decref(catalogue);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(a_room_without_a_case_shows_nothing, begin),
	    cmocka_unit_test_setup(each_mark_of_an_item_and_a_digit_is_shown, begin),
	    cmocka_unit_test_setup(counts_that_hold_are_shown_and_steps_of_a_search, begin),
	    cmocka_unit_test_setup(a_missing_band_may_be_on_each_digit_that_had_it, begin),
	    cmocka_unit_test_setup(what_is_owed_is_shown_in_its_room_and_of_all_rooms, begin),
	    cmocka_unit_test_setup(a_deed_shows_what_it_asks_for, begin),
	    cmocka_unit_test_setup(a_case_of_a_room_that_is_gone_is_told, begin),
	    cmocka_unit_test_setup(what_is_on_in_a_suspended_case_is_shown_in_its_own_room, begin),
	    cmocka_unit_test(a_state_without_a_name_is_none),
	    cmocka_unit_test(the_page_has_words_for_each_name_that_the_view_gives),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
