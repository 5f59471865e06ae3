/* What a case's events are folded into. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "base/json.h"
#include "tell/slip.h"
#include "tell/story.h"
#include "words/languages.h"

#define MIN 60000
#define TEN INT64_C(1795600800000) /* 2026-11-25, ten o'clock UTC */

static struct event events[160];
static int n_events;

static void happened(int minute, int16_t utc_min, struct event e)
{
	e.seq = n_events + 1;
	e.case_no = 1;
	e.room = 1;
	e.at = (struct moment){
	    .boot = 1, .boot_ms = minute * MIN, .wall_ms = TEN + minute * MIN, .utc_min = utc_min};
	events[n_events++] = e;
}

static const struct language *language; /* of the slips; NULL English */

static struct story *told(void)
{
	struct story *s = NULL;
	assert_int_equal(story_make(&s, language, events, n_events, events[n_events - 1].at), 0);
	return s;
}

static json_t *made(json_t *(*make)(const struct slip_source *), enum slip_kind kind)
{
	static struct station none;
	struct past past;
	struct story *s = told();
	past_init(&past, n_events, &none);
	const struct slip_source from = {.story = s,
	                                 .kind = kind,
	                                 .number = 1,
	                                 .copy = 1,
	                                 .language = language,
	                                 .past = &past,
	                                 .paper = "a5",
	                                 .dpi = 300,
	                                 .time = "",
	                                 .version = "1",
	                                 .chain = ""};
	json_t *of = make(&from);
	past_deinit(&past);
	free(s);
	assert_non_null(of);
	return of;
}

static json_t *on_slip(enum slip_kind kind)
{
	return made(slip_document, kind);
}

static json_t *on_summary(void)
{
	return made(slip_summary, SLIP_RECONCILIATION);
}

static json_t *on_paper(void)
{
	return on_slip(SLIP_RECONCILIATION);
}

/* Of the first digit on the paper, before whether it was seen bare. */
static void times_must_be(const char *words)
{
	char detail[200];
	_cleanup_(json_drop) json_t *document = on_paper();
	const json_t *digit = json_array_get(json_object_get(document, "digits"), 0);
	snprintf(detail, sizeof detail, "%s, not yet seen bare", words);
	assert_string_equal(json_text(digit, "detail"), detail);
}

/* How often the rows of that name say it. */
static int said(const json_t *document, const char *label, const char *words)
{
	int n = 0;
	size_t i;
	json_t *row;
	json_array_foreach(json_object_get(document, "rows"), i, row)
	{
		const char *at = json_text(row, "says");
		for (; strcmp(json_text(row, "label"), label) == 0 && (at = strstr(at, words)); at++)
			n++;
	}
	return n;
}

static void what_finds_no_place_on_the_paper_is_counted_there(void **state)
{
	(void)state;
	for (int i = 0; i < STORY_ENTRIES; i++)
		happened(3, 60, (struct event){.kind = EV_CORRECTION, .text = "the time was read wrongly"});
	_cleanup_(json_drop) json_t *all = on_paper();
	assert_int_equal(said(all, "Corrected", "the time was read wrongly"), STORY_ENTRIES);
	assert_int_equal(said(all, "Notes", "further entries"), 0);
	for (int i = 0; i < 7; i++)
		happened(4, 60, (struct event){.kind = EV_CORRECTION, .text = "and once more"});
	_cleanup_(json_drop) json_t *more = on_paper();
	assert_int_equal(said(more, "Corrected", "11:03 the time was read wrongly"), STORY_ENTRIES);
	assert_int_equal(said(more, "Corrected", "and once more"), 0);
	assert_int_equal(said(more, "Notes", "7 further entries of this case"), 1);
}

static int setup(void **state)
{
	(void)state;
	n_events = 0;
	happened(0, 60, (struct event){.kind = EV_CASE_OPENED});
	happened(1, 60, (struct event){.kind = EV_DIGIT_ON, .digit = 2});
	return 0;
}

static void each_time_is_told_as_the_clock_in_the_room_showed_it(void **state)
{
	(void)state;
	happened(15, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	times_must_be("11:01 to 11:15");
}

/* A version that did not refuse it wrote records in which off was moved to before on. */
static void off_stands_no_earlier_than_on(void **state)
{
	(void)state;
	happened(15, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	happened(15, 60, (struct event){.kind = EV_DIGIT_EARLIER, .digit = 2, .n = 30, .what = 2});
	times_must_be("11:01 to 11:01");
}

static void where_the_clocks_went_back_that_is_said(void **state)
{
	(void)state;
	happened(15, 0, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	times_must_be("11:01 to 10:15 (the clocks went back)");
}

static void past_midnight_is_not_before(void **state)
{
	(void)state;
	happened(14 * 60 + 5, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	times_must_be("11:01 to 01:05");
}

static void a_wall_clock_that_was_set_back_gives_no_time(void **state)
{
	(void)state;
	happened(15, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	events[n_events - 1].at.wall_ms -= 60 * MIN;
	times_must_be("from 11:01 (the wall clock was set back)");
}

/* Format 1 kept the sentence; its name in format 2 says the same. */
static void how_a_debt_was_paid_is_told_alike_in_both_formats(void **state)
{
	(void)state;
	for (int typed = 0; typed < 2; typed++) {
		struct event paid = {
		    .kind = EV_PAID, .what = DEBT_ON, .digit = 2, .other = typed ? 0 : PAID_IS_ON};
		struct event ended = {
		    .kind = EV_CASE_ENDED, .what = END_CANCELLED, .other = typed ? 0 : END_NOTHING_OPENED};
		setup(NULL);
		happened(2, 60, (struct event){.kind = EV_OWED, .what = DEBT_ON, .digit = 2});
		if (typed) {
			snprintf(paid.text, sizeof paid.text, "it is on");
			snprintf(ended.text, sizeof ended.text, "nothing was opened");
		}
		happened(3, 60, paid);
		happened(4, 60, ended);
		struct story *s = told();
		assert_string_equal(s->debts[0].how, "it is on");
		assert_string_equal(s->end_text, "nothing was opened");
		free(s);
	}
}

/* One after the other until a list is full, and one more: that is counted, and the record has it. */
static void a_list_that_is_full_counts_what_it_leaves_out(void **state)
{
	static const struct {
		struct event first, then; /* then: kind EV_STARTED, none */
		int room;
		size_t count; /* its place in the story */
		int each;     /* another each time: 1 the digit, 2 the number, 3 the person */
	} lists[] = {
	    {{.kind = EV_JOINED, .what = PLACE_FIELD},
	     {0},
	     STORY_PEOPLE,
	     offsetof(struct story, n_people),
	     3},
	    {{.kind = EV_COUNT_AGREED, .what = COUNT_ADDED},
	     {0},
	     STORY_COUNTS,
	     offsetof(struct story, n_counts),
	     0},
	    {{.kind = EV_OWED, .what = DEBT_ON, .digit = 2},
	     {.kind = EV_PAID, .what = DEBT_ON, .digit = 2, .other = PAID_IS_ON},
	     STORY_DEBTS,
	     offsetof(struct story, n_debts),
	     0},
	    {{.kind = EV_SEARCH_STEP, .what = 1}, {0}, STORY_STEPS, offsetof(struct story, n_steps), 0},
	    {{.kind = EV_DISCREPANCY, .n = 1},
	     {.kind = EV_DISCREPANCY},
	     STORY_DISCREPANCIES,
	     offsetof(struct story, n_discrepancies),
	     0},
	    {{.kind = EV_FOUND_AFTER}, {0}, STORY_FOUND, offsetof(struct story, n_found), 0},
	    {{.kind = EV_SLIP_QUEUED, .what = SLIP_RECONCILIATION, .other = 1},
	     {0},
	     STORY_SLIPS,
	     offsetof(struct story, n_slips),
	     2},
	    {{.kind = EV_DIGIT_MAYBE_ON}, {0}, DIGITS_MAX, offsetof(struct story, n_digits), 1},
	    {{.kind = EV_UNREADABLE}, {0}, STORY_NOTES, offsetof(struct story, n_notes), 0},
	};
	(void)state;
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
		int left_out = 0;
		n_events = 0;
		happened(0, 60, (struct event){.kind = EV_CASE_OPENED});
		for (int n = 1; n <= lists[i].room + 1; n++) {
			struct event e = lists[i].first;
			e.digit = lists[i].each == 1 ? (uint8_t)n : e.digit;
			e.n = lists[i].each == 2 ? n : e.n;
			e.person = lists[i].each == 3 ? n : e.person;
			happened(n, 60, e);
			struct story *s = told();
			int stand = *(const int *)(const void *)((const char *)s + lists[i].count);
			if (stand != (n <= lists[i].room ? n : lists[i].room))
				fail_msg("list %d: %d of %d stand", (int)i, stand, n);
			if (n > lists[i].room && s->left_out <= left_out)
				fail_msg("list %d: the %dth is not counted", (int)i, n);
			left_out = s->left_out;
			free(s);
			if (lists[i].then.kind != EV_STARTED)
				happened(n, 60, lists[i].then);
		}
	}
}

static void a_digit_keeps_its_first_stretches_and_reminders(void **state)
{
	(void)state;
	for (int i = 0; i < STORY_STRETCHES; i++) {
		happened(2 + 2 * i, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
		happened(3 + 2 * i, 60, (struct event){.kind = EV_DIGIT_ON, .digit = 2});
	}
	for (int i = 0; i <= STORY_REMINDERS; i++)
		happened(60, 60, (struct event){.kind = EV_REMINDED, .digit = 2, .n = i});
	happened(61, 60, (struct event){.kind = EV_ACKNOWLEDGED, .digit = 2, .person = 3});
	struct story *s = told();
	assert_int_equal(s->digits[0].n_stretches, STORY_STRETCHES);
	assert_int_equal(s->digits[0].n_reminders, STORY_REMINDERS);
	assert_int_equal(s->digits[0].reminders[STORY_REMINDERS - 1].by, 3);
	assert_int_equal(s->left_out, 2); /* a stretch and a reminder */
	free(s);
}

/* A record that was damaged before this event: it has nothing to act on, and makes nothing up. */
static void what_acts_on_nothing_tells_nothing(void **state)
{
	static const struct event alone[] = {
	    {.kind = EV_DIGIT_NOT_ON, .digit = 3},
	    {.kind = EV_DIGIT_NEVER_ON, .digit = 3},
	    {.kind = EV_DIGIT_STILL_ON, .digit = 3},
	    {.kind = EV_DIGIT_OFF, .digit = 3},
	    {.kind = EV_ACKNOWLEDGED, .digit = 3},
	    {.kind = EV_DIGIT_EARLIER, .digit = 3, .n = 5, .what = 1},
	    {.kind = EV_DISCREPANCY, .n = 0},
	    {.kind = EV_SEARCH_WHY, .n = 1, .text = "because"},
	    {.kind = EV_ITEM_SHOWN, .item = 0},
	    {.kind = EV_ITEM_SHOWN, .item = ITEMS_MAX + 1},
	    {.kind = EV_POINT, .n = 0, .what = 1},
	    {.kind = EV_POINT, .n = POLICY_LIST_MAX + 1, .what = 1},
	    {.kind = EV_LEFT, .person = 9},
	    {.kind = EV_PAID, .what = DEBT_ON, .digit = 3},
	};
	(void)state;
	for (size_t i = 0; i < sizeof alone / sizeof *alone; i++) {
		n_events = 0;
		happened(0, 60, (struct event){.kind = EV_CASE_OPENED});
		happened(1, 60, alone[i]);
		struct story *s = told();
		if ((s->n_digits && (s->digits[0].n_stretches || s->digits[0].n_reminders)) ||
		    s->n_discrepancies || s->n_steps || s->n_points || s->n_people || s->n_debts ||
		    s->left_out)
			fail_msg("event %d made something up", (int)i);
		for (int k = 0; k < ITEMS_MAX; k++)
			assert_false(time_is_set(s->items[k].shown));
		free(s);
	}
	struct story *none = NULL;
	assert_int_equal(story_make(&none, NULL, events, 0, events[0].at), -ENOENT);
	assert_null(none);
	/* of another case's station nothing is told; of this one which event is not in it */
	n_events = 0;
	happened(0, 60, (struct event){.kind = EV_UNREADABLE});
	happened(1, 60, (struct event){.kind = EV_UNREADABLE});
	events[1].case_no = 0;
	struct story *s = told();
	assert_int_equal(s->case_no, 1);
	assert_int_equal(s->n_notes, 1);
	assert_non_null(strstr(s->notes[0], "1"));
	free(s);
}

/* As many bands on as many digits from the right index finger on; off, and shown, where that is asked for. */
static void bands(int n, int off, int shown)
{
	n_events = 0;
	happened(0, 60, (struct event){.kind = EV_CASE_OPENED});
	for (uint8_t i = 1; i <= n; i++) {
		struct event in = {.kind = EV_ITEM_IN, .item = i, .n = 1};
		in.thing = (struct thing){.line = "L", .name = "finger tourniquet", .role = ROLE_TOURNIQUET};
		happened(1, 60, in);
		happened(5, 60, (struct event){.kind = EV_DIGIT_ON, .digit = (uint8_t)(i + 1)});
		happened(5, 60, (struct event){.kind = EV_ITEM_ON, .item = i, .digit = (uint8_t)(i + 1)});
		if (off) {
			happened(9, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = (uint8_t)(i + 1)});
			happened(9, 60,
			         (struct event){.kind = EV_ITEM_OFF, .item = i, .digit = (uint8_t)(i + 1)});
		}
		if (shown)
			happened(10, 60,
			         (struct event){.kind = EV_ITEM_SHOWN,
			                        .item = i,
			                        .n = 1,
			                        .what = EVIDENCE_SHOWN,
			                        .other = CONDITION_INTACT});
	}
}

/* The row of that name, of those that say at the top what is not as it should be, says all these words. */
static void amiss_must_say(enum slip_kind kind, const char *label, const char *words, const char *more)
{
	_cleanup_(json_drop) json_t *document = on_slip(kind);
	const char *text = "";
	size_t i;
	json_t *row;
	json_array_foreach(json_object_get(document, "amiss"), i, row)
	{
		if (strcmp(json_text(row, "label"), label) == 0)
			text = json_text(row, "text");
	}
	if (!strstr(text, words) || !strstr(text, more) || !*text)
		fail_msg("%s: '%s' without '%s' or '%s'", label, text, words, more);
}

static void ends_unresolved(enum end_why why)
{
	happened(13, 60,
	         (struct event){.kind = EV_CASE_ENDED, .what = END_UNRESOLVED, .other = (int32_t)why});
}

/* What people must do now stands at the top, with the digits by name, or by number where they are many. */
static void the_paper_of_an_unresolved_case_says_what_to_do_now(void **state)
{
	static const struct {
		int digits, off, shown;
		const char *label, *says, *now, *where;
	} facts[] = {
	    {1, 0, 0, "ON now", "the right index finger", "Call the surgeon now", "right index finger"},
	    {2, 0, 0, "ON now", " and the right middle finger", "Call the surgeon now", "both digits"},
	    {3, 0, 0, "ON now", " and the right ring finger", "Call the surgeon now", "3 digits"},
	    {1, 1, 1, "Not bare", "the right index finger", "Take the dressing down", "right index finger"},
	    {3, 1, 1, "Not bare", " and the right ring finger", "Take the dressing down", "3 digits"},
	    {2, 1, 0, "Not shown", "2 × finger tourniquet", "Call the surgeon", "both digits"},
	    {2, 1, 0, "May be on", " or the right middle finger", "", ""},
	};
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		bands(facts[i].digits, facts[i].off, facts[i].shown);
		ends_unresolved(END_NUMBER_OWED);
		amiss_must_say(SLIP_RECONCILIATION, facts[i].label, facts[i].says, "");
		if (*facts[i].where)
			amiss_must_say(SLIP_RECONCILIATION, "Now", facts[i].now, facts[i].where);
	}
}

static void the_paper_of_what_was_found_names_the_digits_that_had_one(void **state)
{
	static const char *const which[] = {"digits that were operated on", "right index finger",
	                                    "two digits", "3 digits"};
	(void)state;
	for (int n = 0; n < 4; n++) {
		bands(n, 1, 1);
		ends_unresolved(END_NUMBER_OWED);
		happened(14, 60,
		         (struct event){.kind = EV_FOUND_AFTER,
		                        .thing = {.name = "band", .role = ROLE_TOURNIQUET},
		                        .text = "in the bin"});
		amiss_must_say(SLIP_ADDENDUM, "Found", "band", "in the bin");
		amiss_must_say(SLIP_ADDENDUM, "Now", "Look at this patient's", which[n]);
		if (n)
			amiss_must_say(SLIP_ADDENDUM, "Was on", "the right index finger", "");
	}
}

/* A slip is told up to its own event; `bandtally case show` is no slip, and tells all. */
static void a_case_that_is_shown_says_what_was_found_after_its_end(void **state)
{
	(void)state;
	for (int unresolved = 0; unresolved < 2; unresolved++) {
		bands(1, 1, 1);
		if (unresolved)
			ends_unresolved(END_NUMBER_OWED);
		else
			happened(13, 60, (struct event){.kind = EV_CASE_ENDED, .what = END_RECONCILED});
		happened(14, 60,
		         (struct event){.kind = EV_FOUND_AFTER,
		                        .thing = {.name = "band", .role = ROLE_TOURNIQUET},
		                        .text = "in the bin"});
		amiss_must_say(SLIP_RECONCILIATION, "Found", "band", "in the bin");
		_cleanup_(json_drop) json_t *document = on_slip(SLIP_RECONCILIATION);
		assert_string_equal(json_text(document, "shout"), unresolved ? "UNRESOLVED" : "FOUND LATER");
	}
}

static void the_paper_of_a_search_names_where_a_band_may_be(void **state)
{
	(void)state;
	bands(3, 1, 0);
	happened(10, 60, (struct event){.kind = EV_COUNT_STARTED, .what = COUNT_FINAL});
	happened(11, 60, (struct event){.kind = EV_ITEM_NOT_SHOWN, .item = 1, .n = 1});
	happened(12, 60, (struct event){.kind = EV_DISCREPANCY, .n = 1});
	amiss_must_say(SLIP_DISCREPANCY, "Not found", "1 finger tourniquet", "");
	amiss_must_say(SLIP_DISCREPANCY, "May be on", "the right index finger", " or the right ring finger");
	amiss_must_say(SLIP_DISCREPANCY, "Now", "No dressing yet", "each of the 3 digits");
	happened(13, 60, (struct event){.kind = EV_CASE_ENDED, .what = END_UNRESOLVED, .text = "INC-1"});
	amiss_must_say(SLIP_DISCREPANCY, "Now", "Take the dressing down", "each of the 3 digits");
	_cleanup_(json_drop) json_t *document = on_slip(SLIP_DISCREPANCY);
	assert_string_equal(json_text(json_object_get(document, "search"), "incident"),
	                    "Incident number INC-1");
}

static void a_slip_speaks_the_language_that_its_event_holds(void **state)
{
	(void)state;
	struct languages all;
	struct error e = {0};
	assert_int_equal(languages_read(&all, languages_folder(), &e), 0);
	language = languages_find(&all, "de");
	assert_non_null(language);
	happened(15, 60, (struct event){.kind = EV_DIGIT_OFF, .digit = 2});
	happened(16, 60, (struct event){.kind = EV_DIGIT_EARLIER, .digit = 2, .n = 3, .what = 2});
	happened(17, 60, (struct event){.kind = EV_SUSPENDED});
	_cleanup_(json_drop) json_t *document = on_paper(), *summary = on_summary();
	language = NULL;
	languages_free(&all);
	const json_t *digit = json_array_get(json_object_get(document, "digits"), 0);
	assert_string_equal(json_text(document, "language"), "de");
	assert_string_equal(json_text(document, "day"), "25. Nov. 2026");
	assert_string_equal(json_text(document, "heading_words"), "Noch nicht beendet.");
	assert_string_equal(json_text(digit, "says"), "Rechter Zeigefinger: Tourniquet 11 min, berichtigt");
	assert_string_equal(json_text(digit, "detail"), "11:01 bis 11:12, noch nicht bloß gesehen");
	assert_int_equal(said(document, "Zählungen", "keine Zählung wurde bestätigt"), 1);
	assert_int_equal(said(document, "Berichtigt", "rechter Zeigefinger: ab war 3 min früher"), 1);
	assert_int_equal(said(document, "Vermerke", "Um 11:17 unterbrochen"), 1);
	assert_string_equal(json_text(summary, "outcome"),
	                    "Rechter Zeigefinger: Tourniquet 11 min, NICHT BLOSS GESEHEN");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(each_time_is_told_as_the_clock_in_the_room_showed_it, setup),
	    cmocka_unit_test_setup(off_stands_no_earlier_than_on, setup),
	    cmocka_unit_test_setup(where_the_clocks_went_back_that_is_said, setup),
	    cmocka_unit_test_setup(past_midnight_is_not_before, setup),
	    cmocka_unit_test_setup(a_wall_clock_that_was_set_back_gives_no_time, setup),
	    cmocka_unit_test_setup(what_finds_no_place_on_the_paper_is_counted_there, setup),
	    cmocka_unit_test(how_a_debt_was_paid_is_told_alike_in_both_formats),
	    cmocka_unit_test(a_list_that_is_full_counts_what_it_leaves_out),
	    cmocka_unit_test_setup(a_digit_keeps_its_first_stretches_and_reminders, setup),
	    cmocka_unit_test(what_acts_on_nothing_tells_nothing),
	    cmocka_unit_test(the_paper_of_an_unresolved_case_says_what_to_do_now),
	    cmocka_unit_test(the_paper_of_what_was_found_names_the_digits_that_had_one),
	    cmocka_unit_test(a_case_that_is_shown_says_what_was_found_after_its_end),
	    cmocka_unit_test(the_paper_of_a_search_names_where_a_band_may_be),
	    cmocka_unit_test_setup(a_slip_speaks_the_language_that_its_event_holds, setup),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
