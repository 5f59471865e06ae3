/* Of an auditor's desk: each scan is answered, nothing is counted, and no slip becomes seen. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "decide/decide.h"

static struct station st;
static struct outcome out;

static int begin(void **state)
{
	(void)state;
	memset(&st, 0, sizeof st);
	st.rooms[0] = (struct room){.number = 1, .name = "Theatre 1"};
	st.rooms[1] = (struct room){.number = 2, .name = "Audit", .kind = ROOM_OF_AUDIT};
	st.n_rooms = 2;
	return 0;
}

/* What is said of it there, once it was seen that nothing but a refusal comes of it. */
static const char *at_desk(struct input in, enum verdict verdict)
{
	in.room = in.card_room = 2;
	in.at = (struct moment){.boot = 1, .boot_ms = 1000, .wall_ms = INT64_C(1795600800000)};
	decide(&st, &in, &out);
	assert_int_equal(out.reply.verdict, verdict);
	for (int i = 0; i < out.count; i++)
		assert_int_equal(out.events[i].kind, EV_REFUSED);
	assert_int_equal(out.count, verdict == VERDICT_REFUSED);
	assert_int_equal(out.sheet.case_no, 0);
	assert_true(out.reply.next.n_deeds > 0);
	return out.reply.said;
}

static void a_signed_summary_is_told_as_the_record_has_it(void **state)
{
	(void)state;
	struct input in = {.act = ACT_SIGNED};
	in.known.slip.number = 12;
	in.known.slip_case = 4;
	in.known.paper.copy = 2;
	in.known.signature = SIGNATURE_HELD;
	assert_string_equal(at_desk(in, VERDICT_ACCEPTED),
	                    "Slip 0000012, copy 2, of case 4: signed by this station, and the record holds "
	                    "what was signed.");
	in.known.signature = SIGNATURE_OTHER;
	assert_non_null(strstr(at_desk(in, VERDICT_REFUSED), "Slip 0000012 is signed, but the record holds"));
	in.known.signature = SIGNATURE_OF_NOBODY;
	assert_non_null(strstr(at_desk(in, VERDICT_REFUSED), "Not signed by any key of this station"));
	in.known.signature = SIGNATURE_HELD; /* what nobody could ask is not held */
	in.known.unasked = 1;
	assert_null(strstr(at_desk(in, VERDICT_REFUSED), "signed by this station"));
}

static void the_code_of_a_slip_says_where_it_was_made_and_makes_it_seen_by_nobody(void **state)
{
	(void)state;
	struct input in = {.act = ACT_SLIP, .number = 12, .copy = 1, .proof = 123456};
	in.known.slip = (struct slip){.number = 12, .case_no = 4, .room = 1};
	in.known.slip_case = 4;
	in.known.paper = (struct paper){.queued = 7, .copy = 1, .made = 1, .proof = 123456};
	assert_string_equal(
	    at_desk(in, VERDICT_ACCEPTED),
	    "Slip 0000012, copy 1, of case 4: this paper was made here. What was signed is in "
	    "its other code.");
	in.proof = 123457;
	assert_non_null(strstr(at_desk(in, VERDICT_REFUSED), "is not ours"));
}

static void nothing_else_is_taken_there(void **state)
{
	(void)state;
	static const enum act others[] = {ACT_CARD,    ACT_DIGIT,  ACT_BADGE,   ACT_CASE_LABEL, ACT_THING,
	                                  ACT_UNKNOWN, ACT_BROKEN, ACT_FOREIGN, ACT_TYPED,      ACT_HALF};
	for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
		struct input in = {.act = others[i], .card = CARD_NEW_CASE, .digit = 2, .number = 1};
		assert_non_null(strstr(at_desk(in, VERDICT_REFUSED), "only slips are read"));
	}
	assert_non_null(
	    strstr(at_desk((struct input){.act = ACT_PATIENT}, VERDICT_REFUSED), "nothing of it was kept"));
}

/* In a theatre it is no code of the count. */
static void a_room_with_cases_says_whom_a_signed_summary_is_for(void **state)
{
	(void)state;
	struct input in = {.act = ACT_SIGNED, .room = 1};
	decide(&st, &in, &out);
	assert_int_equal(out.reply.verdict, VERDICT_REFUSED);
	assert_non_null(strstr(out.reply.said, "for the auditor"));
}

static void a_room_with_a_case_is_no_desk_until_that_has_ended(void **state)
{
	(void)state;
	struct input in = {.act = ACT_DIGIT, .digit = 2, .room = 2, .card_room = 2};
	in.at = (struct moment){.boot = 1, .boot_ms = 1000, .wall_ms = INT64_C(1795600800000)};
	for (int suspended = 0; suspended < 2; suspended++) {
		st.sheets[3] = (struct sheet){.case_no = 7, .room = 2, .suspended = (uint8_t)suspended};
		assert_false(station_room_is(&st, 2, ROOM_OF_AUDIT));
		assert_true(station_room_is(&st, 2, ROOM_OF_CASES));
		decide(&st, &in, &out);
		assert_null(strstr(out.reply.said, "only slips are read"));
		assert_int_not_equal(out.sheet.n_digits, 0);
	}
	st.sheets[3] = (struct sheet){0};
	st.held[0] = (struct held){.room = 2};
	st.n_held = 1;
	assert_true(station_room_is(&st, 2, ROOM_OF_CASES));
	st.held[0].room = 1;
	assert_true(station_room_is(&st, 2, ROOM_OF_AUDIT));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test_setup(a_signed_summary_is_told_as_the_record_has_it, begin),
	    cmocka_unit_test_setup(the_code_of_a_slip_says_where_it_was_made_and_makes_it_seen_by_nobody,
	                           begin),
	    cmocka_unit_test_setup(nothing_else_is_taken_there, begin),
	    cmocka_unit_test_setup(a_room_with_cases_says_whom_a_signed_summary_is_for, begin),
	    cmocka_unit_test_setup(a_room_with_a_case_is_no_desk_until_that_has_ended, begin),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
