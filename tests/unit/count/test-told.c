/* What people are told until somebody has dealt with it: of the station's key and record, of paper sheets, and of events that a
 * start could not follow. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "count/paper-sheet.h"
#include "count/proof.h"
#include "count/unfollowed.h"

static char out[400];

static void a_key_that_is_another_is_told_until_it_is_settled(void **state)
{
	static const struct {
		int32_t how;
		const char *words;
	} facts[] = {{KEY_MADE, "was lost"},
	             {KEY_MADE | KEY_DAMAGED, "lies aside as station.key-damaged"},
	             {KEY_CHANGED, "is another than before"}};
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		struct proof p = {0};
		struct event key = {.kind = EV_KEY, .seq = 7, .n = facts[i].how | KEY_OTHERS | KEY_LINK};
		proof_apply(&p, &key);
		int at = proof_words(&p, NULL, 0, out, sizeof out);
		assert_non_null(strstr(out, facts[i].words));
		assert_non_null(strstr(out, "from event 7 on"));
		at = proof_words(&p, NULL, at, out, sizeof out);
		assert_non_null(strstr(out, "chmod 600"));
		at = proof_words(&p, NULL, at, out, sizeof out);
		assert_non_null(strstr(out, "symbolic link"));
		assert_int_equal(proof_words(&p, NULL, at, out, sizeof out), 0);
		assert_true(proof_waits(&p, 7));
		assert_false(proof_waits(&p, 0));
		key = (struct event){.kind = EV_KEY, .seq = 8}; /* the next start, as it should be */
		proof_apply(&p, &key);
		assert_true(proof_waits(&p, 7));
		proof_settle(&p, 7);
		assert_false(proof_waits(&p, 7));
		assert_int_equal(proof_words(&p, NULL, 0, out, sizeof out), 0);
	}
}

static void another_record_is_doubted_until_it_is_settled(void **state)
{
	static const struct {
		enum incarnation_why why;
		const char *words; /* "" none: the file that lies aside tells it */
	} facts[] = {
	    {INCARNATION_BEHIND, "An older record was put back"},
	    {INCARNATION_OTHER, "Another record was put in place"},
	    {INCARNATION_NO_HEAD, "its head file is gone"},
	    {INCARNATION_PAPER, "A paper is newer"},
	    {INCARNATION_ASIDE, ""},
	};
	char cut[30];
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		struct proof p = {0};
		struct event e = {.kind = EV_INCARNATION,
		                  .seq = 9,
		                  .n = 2,
		                  .what = (uint8_t)facts[i].why,
		                  .head = {.seq = 2345}};
		assert_int_equal(proof_doubt(&p, NULL, out, sizeof out), 0);
		proof_apply(&p, &e);
		assert_int_equal(proof_doubt(&p, NULL, out, sizeof out), *facts[i].words != 0);
		if (!strstr(out, facts[i].words) || !*out != !*facts[i].words)
			fail_msg("why %d: '%s'", (int)facts[i].why, out);
		assert_true(!*out || strstr(out, "The one before had come to event 2345"));
		assert_true(!*out || strstr(out, "'bandtally audit settle 9 WHAT'"));
		proof_doubt(&p, NULL, cut, sizeof cut);
		assert_memory_equal(cut, out, *out ? sizeof cut - 1 : 1);
		e.head.seq = 0;
		proof_apply(&p, &e);
		proof_doubt(&p, NULL, out, sizeof out);
		assert_null(strstr(out, "had come to"));
		assert_true(proof_waits(&p, 9));
		proof_settle(&p, 8);
		assert_true(proof_waits(&p, 9));
		proof_settle(&p, 9);
		assert_false(proof_waits(&p, 9));
		assert_int_equal(proof_doubt(&p, NULL, out, sizeof out), 0);
	}
}

static void a_paper_sheet_is_owed_once_one_behind_it_was_entered(void **state)
{
	static const char *const none[] = {"paper-",  "paper-x", "paper-1x", "paper-123456",
	                                   "4100017", "Paper-1", ""};
	struct paper_sheets p = {0};
	char label[PAPER_LABEL_MAX];
	(void)state;
	paper_sheet_label(12, label);
	assert_int_equal(paper_sheet_of(label), 12);
	for (size_t i = 0; i < sizeof none / sizeof *none; i++)
		assert_int_equal(paper_sheet_of(none[i]), 0);
	assert_int_equal(paper_sheets_owed(&p, 0), 0);
	paper_sheets_enter(&p, 4, 41);
	assert_int_equal(p.case_no, 41);
	assert_int_equal(paper_sheets_owed(&p, 0), 1);
	assert_int_equal(paper_sheets_owed(&p, 1), 2);
	assert_int_equal(paper_sheets_owed(&p, 3), 0);
	paper_sheets_enter(&p, 2, 42);
	assert_true(paper_sheets_has(&p, 2));
	assert_false(paper_sheets_has(&p, 3));
	assert_false(paper_sheets_has(&p, 5));
	assert_int_equal(paper_sheets_owed(&p, 1), 3);
	paper_sheets_enter(&p, 4 + PAPER_SHEETS_BACK, 43); /* the earlier ones lie too far back */
	assert_false(paper_sheets_has(&p, 4));
	assert_false(paper_sheets_has(&p, 2 + PAPER_SHEETS_BACK));
	assert_int_equal(paper_sheets_owed(&p, 0), 5);
	paper_sheets_enter(&p, 1, 44);
	assert_false(paper_sheets_has(&p, 1));
	assert_int_equal(p.highest, 4 + PAPER_SHEETS_BACK);
	assert_int_equal(p.case_no, 44);
}

static void events_that_were_not_followed_are_named_three_at_a_time(void **state)
{
	static struct station st;
	char cut[20];
	(void)state;
	memset(&st, 0, sizeof st);
	assert_int_equal(station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, out, sizeof out),
	                 0);
	assert_string_equal(out, "");
	station_not_followed(&st, &(struct unfollowed){.seq = 2, .kind = "alive"}, 0); /* changes nothing */
	assert_int_equal(st.n_unfollowed, 0);
	station_not_followed(&st, &(struct unfollowed){.seq = 3, .kind = "line-set"}, 0);
	station_not_followed(&st, &(struct unfollowed){.seq = 4, .case_no = 7, .kind = "case-opened"}, 1);
	assert_int_equal(station_sheet_of_case(&st, 7) >= 0, 1);
	assert_int_equal(st.last_case_no, 7);
	assert_int_equal(station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, out, sizeof out),
	                 2);
	assert_string_equal(out,
	                    "event 3 (line-set) and event 4 (case-opened) of case 7 could not be followed");
	assert_int_equal(station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, 0, out, sizeof out), 1);
	assert_string_equal(out, "event 3 (line-set) could not be followed");
	assert_int_equal(station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, 7, out, sizeof out), 1);
	assert_int_equal(
	    station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_OF_CASES, out, sizeof out), 1);
	for (int i = 0; i < UNFOLLOWED_MAX; i++)
		station_not_followed(&st, &(struct unfollowed){.seq = 10 + i, .kind = "staff-set"}, 0);
	assert_int_equal(st.more_unfollowed, 2);
	assert_int_equal(station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, out, sizeof out),
	                 UNFOLLOWED_MAX + 2);
	assert_non_null(strstr(out, ", event 10 (staff-set) and "));
	assert_null(strstr(out, "event 11 "));
	assert_non_null(strstr(out, " further could not be followed"));
	assert_int_equal(station_unfollowed_words(&st, NULL, SAY_UNFOLLOWED, UNFOLLOWED_ALL, cut, sizeof cut),
	                 UNFOLLOWED_MAX + 2);
	assert_memory_equal(cut, out, sizeof cut - 1);
	assert_true(unfollowed_has(&st, 3));
	assert_true(unfollowed_has(&st, 999)); /* it may be one that is only counted */
	st.more_unfollowed = 0;
	assert_false(unfollowed_has(&st, 999));
	station_not_followed(&st, &(struct unfollowed){.seq = 99, .case_no = 7, .kind = "case-ended"}, 1);
	assert_true(station_sheet_of_case(&st, 7) < 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_key_that_is_another_is_told_until_it_is_settled),
	    cmocka_unit_test(another_record_is_doubted_until_it_is_settled),
	    cmocka_unit_test(a_paper_sheet_is_owed_once_one_behind_it_was_entered),
	    cmocka_unit_test(events_that_were_not_followed_are_named_three_at_a_time),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
