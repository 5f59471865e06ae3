/* Each rule of count/rule.h as sentences of the trade, through the real decisions. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "tests/states/known.h"
#include "walk.h"

struct table {
	struct world w;
	struct outcome out;
	int64_t seq;
};

static const struct room_plan two_people = {"rules",     .tourniquets = 2, .forceps = 1,
                                            .others = 1, .rolls_on = 1,    .refused = 1,
                                            .digits = 2, .people = 4,      .later = 1};

static void decide_and_apply(struct table *t, const struct input *in)
{
	decide_known(&t->w.station, in, &t->out);
	for (int i = 0; i < t->out.count; i++) {
		t->out.events[i].seq = ++t->seq;
		assert_int_equal(station_apply(&t->w.station, &t->out.events[i]), 0);
	}
	assert_int_equal(rule_check_all(&t->w.station), 0);
}

/* One scan by the words that the walk gives it. */
static enum verdict scan(struct table *t, const char *name)
{
	for (int i = 0; i < t->w.n_inputs; i++)
		if (strcmp(t->w.inputs[i].name, name) == 0) {
			decide_and_apply(t, &t->w.inputs[i].in);
			return t->out.reply.verdict;
		}
	fail_msg("no scan '%s'", name);
	return VERDICT_REFUSED;
}

static void scans(struct table *t, const char *const *names)
{
	for (; *names; names++)
		scan(t, *names);
}
#define SCANS(t, ...) scans(t, (const char *const[]){__VA_ARGS__, NULL})
#define COUNTED "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "pack F F:1", "CIRC"
#define OFF COUNTED, "right index finger", "right index finger", "OFF"
#define AGREED OFF, "FINAL COUNT", "INTACT", "pack F F:1", "CIRC"

static struct table *lay(const struct room_plan *plan)
{
	static struct table t;
	if (t.w.n_inputs)
		world_deinit(&t.w);
	memset(&t, 0, sizeof t);
	t.seq = 1000;
	world_init(&t.w, plan);
	return &t;
}

static const struct sheet *sheet(const struct table *t)
{
	return &t->w.station.sheets[0];
}

static int happened(const struct table *t, enum event_kind kind)
{
	int n = 0;
	for (int i = 0; i < t->out.count; i++)
		n += t->out.events[i].kind == kind;
	return n;
}

static int says(const struct table *t, const char *words)
{
	return strstr(t->out.reply.said, words) != NULL || strstr(t->out.reply.next.words, words) != NULL;
}

#define RULE(name) static void name(void **state)

RULE(rule_1_a_case_does_not_end_reconciled_while_anything_is_owed)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF);
	assert_int_equal(scan(t, "SURG"), VERDICT_ACCEPTED); /* joins */
	scan(t, "NEXT");
	assert_int_equal(scan(t, "SURG"), VERDICT_REFUSED);
	assert_true(says(t, "final count is not agreed"));
	SCANS(t, "FINAL COUNT", "INTACT", "pack F F:1", "CIRC");
	assert_int_equal(scan(t, "SURG"), VERDICT_REFUSED);
	assert_true(says(t, "has not been looked at"));
	scan(t, "right index finger");
	assert_int_equal(scan(t, "SURG"), VERDICT_ACCEPTED);
	assert_int_equal(happened(t, EV_CASE_ENDED), 1);
	assert_int_equal(sheet(t)->case_no, 0);
}

RULE(rule_2_a_tourniquet_that_is_off_is_reminded_of_until_it_is_accounted_for)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF);
	assert_true(says(t, "not yet accounted for"));
	scan(t, "half an hour passes");
	assert_int_equal(happened(t, EV_REMINDED), 1);
	SCANS(t, "FINAL COUNT", "INTACT");
	scan(t, "half an hour passes");
	assert_int_equal(happened(t, EV_REMINDED), 0);
}

RULE(rule_3_a_digit_card_starts_the_clock_whatever_is_missing)
{
	(void)state;
	struct table *t = lay(&two_people);
	assert_int_equal(scan(t, "right index finger"), VERDICT_QUESTION);
	assert_int_equal(happened(t, EV_CASE_OPENED), 1);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_MAYBE_ON);
	assert_true(debts_has(&sheet(t)->debts, DEBT_ON) && debts_has(&sheet(t)->debts, DEBT_TEAM));
	struct moment from = sheet_digit_const(sheet(t), 2)->since;
	SCANS(t, "an answer later"); /* YES, three minutes on: from the card all the same */
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_ON);
	assert_memory_equal(&sheet_digit_const(sheet(t), 2)->since, &from, sizeof from);
	assert_true(debts_has(&sheet(t)->debts, DEBT_TEAM) && debts_has(&sheet(t)->debts, DEBT_COUNT) &&
	            debts_has(&sheet(t)->debts, DEBT_LISTING));
	/* An expired pack is listed as what it is, because it is on already; the reason is owed. */
	assert_int_equal(scan(t, "pack T T:9 expired"), VERDICT_ACCEPTED);
	assert_true(debts_has(&sheet(t)->debts, DEBT_REASON));
}

RULE(rule_4_an_item_is_on_one_open_sheet_and_a_single_use_item_is_used_once)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "pack T T:1");
	struct input other = t->w.inputs[0].in, pack = {0};
	for (int i = 0; i < t->w.n_inputs; i++) {
		if (strcmp(t->w.inputs[i].name, "NEW CASE") == 0)
			other = t->w.inputs[i].in;
		if (strcmp(t->w.inputs[i].name, "pack T T:1") == 0)
			pack = t->w.inputs[i].in;
	}
	other.room = other.card_room = pack.room = 2;
	decide_and_apply(t, &other);
	decide_and_apply(t, &pack); /* a person says where it is */
	assert_int_equal(t->out.reply.verdict, VERDICT_QUESTION);
	assert_true(says(t, "open sheet of case 1"));
	assert_int_equal(t->w.station.sheets[1].n_items, 0);
	assert_int_equal(scan(t, "pack T T:8 used before"), VERDICT_REFUSED);
	assert_true(says(t, "used before, in case 4"));
}

RULE(rule_5_what_is_expired_in_quarantine_unknown_or_not_a_device_is_refused_by_name)
{
	(void)state;
	struct table *t = lay(&two_people);
	struct event q = {.kind = EV_QUARANTINED, .text = "recalled", .thing = {.line = "T"}};
	SCANS(t, "NEW CASE", "SCRUB", "CIRC");
	assert_int_equal(scan(t, "pack T T:9 expired"), VERDICT_REFUSED);
	assert_true(says(t, "expired on 1 Jan 2019"));
	assert_int_equal(scan(t, "pack G "), VERDICT_REFUSED);
	assert_true(says(t, "use a listed one"));
	assert_int_equal(scan(t, "unknown code"), VERDICT_REFUSED);
	assert_int_equal(station_apply(&t->w.station, &q), 0);
	assert_int_equal(scan(t, "pack T T:2"), VERDICT_REFUSED);
	assert_true(says(t, "in quarantine (recalled)"));
	assert_int_equal(sheet(t)->n_items, 0);
	struct line plain = {
	    .key = "X", .name = "plain band", .role = ROLE_TOURNIQUET, .per_pack = 1, .marked = 1};
	assert_true(catalogue_set(&t->w.station.catalogue, &plain, NULL) < 0); /* not visible */
	plain.visible = 1;
	plain.marked = 0;
	assert_true(catalogue_set(&t->w.station.catalogue, &plain, NULL) < 0); /* not marked */
}

RULE(rule_6_the_forceps_can_come_back_while_the_tourniquet_stays)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, COUNTED, "right index finger");
	assert_int_equal(scan(t, "FORCEPS MOVED"), VERDICT_ACCEPTED);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_ON);
	SCANS(t, "right index finger", "OFF", "FINAL COUNT");
	scan(t, "pack F F:1");
	assert_int_equal(sheet_item_const(sheet(t), 2)->place, ITEM_ACCOUNTED);
	assert_int_equal(sheet_item_const(sheet(t), 1)->place, ITEM_OFF);
	assert_int_equal(scan(t, "CIRC"), VERDICT_REFUSED);
}

RULE(rule_7_a_roll_on_tourniquet_is_asked_about_and_yes_needs_the_surgeon)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC");
	assert_int_equal(scan(t, "pack R R:1"), VERDICT_QUESTION);
	assert_true(says(t, "infection or tumour"));
	scan(t, "YES");
	assert_true(debts_has(&sheet(t)->debts, DEBT_SURGEON));
	SCANS(t, "CIRC", "SURG"); /* the count first, then what is owed */
	assert_false(debts_has(&sheet(t)->debts, DEBT_SURGEON));
}

RULE(rule_8_two_people_agree_one_registered_and_the_circulating_badge_records)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "CIRC", "pack T T:1");
	assert_int_equal(scan(t, "RELIEF"), VERDICT_REFUSED);
	assert_true(says(t, "Neither RELIEF nor the one who is here is registered"));
	t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1");
	assert_int_equal(scan(t, "SCRUB"), VERDICT_REFUSED);
	assert_int_equal(scan(t, "CIRC"), VERDICT_ACCEPTED);
	assert_true(says(t, "agreed aloud by SCRUB and CIRC, recorded by CIRC"));
}

RULE(rule_9_the_look_comes_after_the_count_and_going_on_again_voids_both)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT");
	assert_int_equal(scan(t, "right index finger"), VERDICT_QUESTION);
	assert_true(says(t, "the clock runs as 'on?'"));
	SCANS(t, "NO", "INTACT", "pack F F:1", "CIRC", "right index finger");
	assert_true(sheet_digit_const(sheet(t), 2)->seen_bare);
	SCANS(t, "right index finger", "YES");
	assert_int_equal(sheet(t)->final, FINAL_NONE);
	assert_false(sheet_digit_const(sheet(t), 2)->seen_bare);
}

RULE(rule_10_each_tourniquet_is_declared_intact_complete_or_in_pieces)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT");
	assert_int_equal(scan(t, "YES"), VERDICT_REFUSED);
	SCANS(t, "PIECES MISSING", "pack F F:1");
	assert_true(sheet(t)->discrepancy);
	assert_int_equal(scan(t, "CIRC"), VERDICT_REFUSED);
}

RULE(rule_11_a_wrapper_proves_only_that_a_pack_was_opened)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT");
	assert_int_equal(scan(t, "pack T T:1"), VERDICT_REFUSED);
	assert_true(says(t, "That is the wrapper"));
	assert_int_equal(sheet_item_const(sheet(t), 1)->place, ITEM_OFF);
	scan(t, "INTACT");
	assert_int_equal(scan(t, "pack F F:1"), VERDICT_ACCEPTED); /* the mark on the forceps themselves */
	assert_int_equal(sheet_item_const(sheet(t), 2)->evidence, EVIDENCE_MARK);
}

RULE(rule_12_whatever_is_answered_leaves_an_event_to_be_stored)
{
	(void)state;
	struct table *t = lay(&two_people);
	for (int i = 0; i < t->w.n_inputs; i++)
		if (t->w.inputs[i].in.act != ACT_TICK) {
			decide_known(&t->w.station, &t->w.inputs[i].in, &t->out);
			assert_true(t->out.count > 0);
			assert_true(t->out.reply.said[0] && t->out.reply.next.words[0]);
		}
}

RULE(rule_13_taking_back_is_a_further_event_that_names_the_first)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, COUNTED, "right index finger");
	/* UNDO stops no clock: it asks. */
	assert_int_equal(scan(t, "UNDO"), VERDICT_QUESTION);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_ON);
	assert_int_equal(scan(t, "YES"), VERDICT_ACCEPTED);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->had, 0);
	SCANS(t, "FINAL COUNT");
	int64_t first = t->out.events[0].seq;
	assert_int_equal(scan(t, "UNDO"), VERDICT_ACCEPTED);
	assert_int_equal(t->out.events[0].kind, EV_UNDONE);
	assert_int_equal(t->out.events[0].ref, first);
	assert_int_equal(sheet(t)->final, FINAL_NONE);
	/* MISREAD moves the entry and keeps its time. */
	SCANS(t, "right index finger", "5 MINUTES AGO", "MISREAD", "right middle finger");
	assert_int_equal(happened(t, EV_DIGIT_MOVED), 1);
	const struct digit *d = sheet_digit_const(sheet(t), 3);
	assert_int_equal(d->state, DIGIT_ON);
	assert_int_equal(digit_stretch_ms(d, d->since), 5 * 60000);
}

RULE(rule_13_a_wrong_card_is_moved_before_it_is_known_whether_one_is_on)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "right index finger");
	assert_true(says(t, "Case 1 is opened"));
	assert_int_equal(scan(t, "UNDO"), VERDICT_REFUSED);
	assert_true(says(t, "scan MISREAD"));
	SCANS(t, "MISREAD", "right middle finger");
	assert_int_equal(happened(t, EV_DIGIT_MOVED), 1);
	assert_int_equal(sheet_digit_const(sheet(t), 3)->state, DIGIT_MAYBE_ON);
	assert_int_equal(sheet(t)->asked.what, Q_IS_ON);
	assert_int_equal(sheet(t)->asked.digit, 3);
	SCANS(t, "YES");
	assert_int_equal(sheet_digit_const(sheet(t), 3)->state, DIGIT_ON);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->marked, 0);
}

RULE(rule_11_a_look_is_of_one_digit_and_does_not_move_to_another)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, AGREED, "right index finger");
	assert_int_equal(sheet_digit_const(sheet(t), 2)->seen_bare, 1);
	SCANS(t, "MISREAD", "right middle finger");
	assert_int_equal(sheet_digit_const(sheet(t), 3)->had, 1);
	assert_int_equal(sheet_digit_const(sheet(t), 3)->seen_bare, 0);
	assert_int_equal(sheet_next_look(sheet(t)), 3);
	assert_int_equal(scan(t, "SURG"), VERDICT_ACCEPTED); /* joins */
	scan(t, "NEXT");
	assert_int_equal(scan(t, "SURG"), VERDICT_REFUSED);
	SCANS(t, "right middle finger");
	assert_int_equal(scan(t, "SURG"), VERDICT_ACCEPTED);
	assert_true(says(t, "Seen bare: right middle finger."));
}

RULE(rule_10_a_piece_that_lacks_or_turns_up_after_the_agreement_begins_the_count_again)
{
	(void)state;
	static const char *const cards[] = {"PIECES MISSING", "OFFCUT"};
	for (int seen = 0; seen < 2; seen++)
		for (int k = 0; k < 2; k++) {
			struct table *t = lay(&two_people);
			SCANS(t, AGREED);
			if (seen)
				scan(t, "right index finger");
			assert_int_equal(scan(t, cards[k]), VERDICT_ACCEPTED);
			assert_int_equal(sheet(t)->final, FINAL_ASKING);
			assert_int_equal(sheet_digit_const(sheet(t), 2)->seen_bare, 0);
			assert_int_equal(sheet_item_const(sheet(t), 1)->place, ITEM_OFF);
			assert_int_equal(sheet_item_const(sheet(t), 1)->pieces, k ? 2 : 1);
			assert_int_equal(sheet_item_const(sheet(t), 1)->condition,
			                 k ? CONDITION_NONE : CONDITION_PIECES_MISSING);
		}
	/* In the count, of one that was shown already. */
	struct table *t = lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT", "INTACT", "PIECES MISSING");
	assert_int_equal(sheet_item_const(sheet(t), 1)->condition, CONDITION_PIECES_MISSING);
	SCANS(t, "pack F F:1");
	assert_int_equal(sheet(t)->discrepancy, 1);
}

RULE(rule_5_what_turns_up_and_would_have_been_refused_is_answered_for_by_the_surgeon)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "CIRC", "FINAL COUNT");
	assert_int_equal(scan(t, "pack T T:9 expired"), VERDICT_QUESTION);
	assert_true(says(t, "beyond what is on the sheet") && says(t, "expired on 1 Jan 2019"));
	SCANS(t, "YES");
	assert_true(says(t, "the surgeon answers for it"));
	assert_int_equal(debts_has(&sheet(t)->debts, DEBT_REASON), 1);
}

RULE(rule_3_off_goes_on_with_the_case_that_is_suspended_while_it_was_on)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, COUNTED, "right index finger", "SUSPEND");
	assert_true(says(t, "A TOURNIQUET IS ON: right index finger."));
	assert_int_equal(scan(t, "FINAL COUNT"), VERDICT_REFUSED);
	assert_true(says(t, "Case 1 is suspended"));
	assert_int_equal(scan(t, "OFF"), VERDICT_ACCEPTED);
	assert_int_equal(sheet(t)->suspended, 0);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_OFF);
	t = lay(&two_people);
	SCANS(t, COUNTED, "right index finger", "SUSPEND", "NEW CASE");
	assert_int_equal(scan(t, "OFF"), VERDICT_REFUSED);
	assert_true(says(t, "Case 1, suspended, has one on the right index finger"));
}

RULE(rule_16_who_takes_the_patient_away_is_told_what_is_open)
{
	(void)state;
	static const char *const cards[] = {"PATIENT LEAVES", "CANCEL"};
	for (int k = 0; k < 2; k++) {
		struct table *t = lay(&two_people);
		SCANS(t, OFF, cards[k]);
		assert_true(says(t, "NOT ACCOUNTED FOR: tourniquet and forceps. NOT SEEN BARE: right index "
		                    "finger."));
		SCANS(t, "YES");
		assert_true(says(t, "NOT SEEN BARE: right index finger."));
		assert_true(says(t, k ? "A count is still owed" : "Tell the surgeon and the ward now."));
		assert_int_equal(says(t, "The patient has left, and the count is owed"), !k);
	}
}

RULE(rule_16_a_lone_operator_who_has_not_badged_in_yet_may_end_unresolved)
{
	(void)state;
	struct room_plan alone = two_people;
	alone.single = 1;
	struct table *t = lay(&alone);
	SCANS(t, "right index finger", "YES", "right index finger", "OFF", "PIECES MISSING", "STEP DONE",
	      "right index finger", "NO", "END UNRESOLVED");
	assert_int_equal(scan(t, "SURG"), VERDICT_QUESTION);
	assert_true(sheet(t)->team.at[PLACE_FIELD] != 0);
	assert_int_equal(scan(t, "typed number"), VERDICT_ACCEPTED);
	assert_int_equal(happened(t, EV_CASE_ENDED), 1);
}

RULE(rule_14_minutes_come_from_a_clock_that_no_one_can_set)
{
	(void)state;
	struct digit d = {.state = DIGIT_ON,
	                  .since = {.boot = 1, .boot_ms = 1000, .wall_ms = 5000000},
	                  .on_wall_ms = 5000000};
	struct moment now = {.boot = 1, .boot_ms = 1000 + 90 * 60000, .wall_ms = 0}; /* set back by years */
	char text[80];
	assert_int_equal(digit_stretch_ms(&d, now), 90 * 60000);
	now.boot_ms = 1000 + (int64_t)5760 * 60000; /* four days: Durrant 2006 */
	digit_minutes_text(&d, now, text, sizeof text);
	assert_string_equal(text, "5760 min");
	/* A power cut: known until the last mark, then from the new start; the wall clock spans the gap. */
	d = (struct digit){.state = DIGIT_ON, .since = {.boot = 1, .boot_ms = 0, .wall_ms = 0}};
	digit_cross_boot(&d, (struct moment){.boot = 1, .boot_ms = 95 * 60000, .wall_ms = 95 * 60000},
	                 (struct moment){.boot = 2, .boot_ms = 7000, .wall_ms = 140 * 60000});
	digit_minutes_text(&d, (struct moment){.boot = 2, .boot_ms = 7000, .wall_ms = 140 * 60000}, text,
	                   sizeof text);
	assert_string_equal(text, "at least 95 min; by wall clock 140 min");
}

RULE(rule_15_the_end_says_what_was_counted_and_seen_and_no_more)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, AGREED, "right index finger", "SURG");
	assert_true(says(
	    t,
	    "Tourniquet: 1 of 1 shown intact. Forceps: 1 of 1, mark read. Seen bare: right index finger."));
	assert_false(says(t, "safe") || says(t, "clear") || says(t, "OK"));
}

RULE(rule_16_a_case_ends_unresolved_only_by_the_surgeon_after_the_whole_search)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT", "INTACT", "NO");
	assert_int_equal(scan(t, "END UNRESOLVED"), VERDICT_REFUSED);
	SCANS(t, "STEP DONE", "NOT DONE");
	assert_int_equal(scan(t, "END UNRESOLVED"), VERDICT_QUESTION);
	assert_int_equal(scan(t, "CIRC"), VERDICT_REFUSED);
	scan(t, "SURG");
	assert_int_equal(scan(t, "NOT DONE"), VERDICT_ACCEPTED); /* number owed */
	assert_int_equal(happened(t, EV_CASE_ENDED), 1);
	assert_int_equal(t->w.station.n_owed, 1);
	scan(t, "typed number");
	assert_int_equal(t->w.station.n_owed, 0);
}

RULE(rule_17_what_cannot_be_entered_is_said_with_count_by_hand)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "pack T T:2",
	      "pack F F:1"); /* three items: this sheet is full */
	assert_int_equal(scan(t, "pack O "), VERDICT_REFUSED);
	assert_true(says(t, "NOT entered") && says(t, "count by hand"));
	assert_int_equal(sheet(t)->n_items, 3);
}

RULE(rule_18_another_rooms_card_is_announced_and_enters_nothing)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, COUNTED, "right index finger");
	assert_int_equal(scan(t, "OFF of room 2"), VERDICT_REFUSED);
	assert_true(says(t, "a card of Room 2"));
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_ON);
}

static int32_t carried_to(struct table *t, int card, int32_t room, int64_t minutes)
{
	struct input in = {.act = ACT_CARD, .card = card, .card_room = room, .room = 1};
	snprintf(in.scanner, sizeof in.scanner, "hand-1");
	in.at = (struct moment){.boot = 1, .boot_ms = 1000000, .wall_ms = 1000000};
	decide_and_apply(t, &in);
	assert_int_equal(t->out.reply.verdict, VERDICT_ACCEPTED);
	in.at.boot_ms += minutes * 60000;
	in.at.wall_ms += minutes * 60000;
	return station_scanner_room(&t->w.station, "hand-1", 1, in.at);
}

RULE(rule_18_a_scanner_follows_a_room_card_for_a_while_and_as_a_spare_until_a_further_card)
{
	(void)state;
	struct table *t = lay(&two_people);
	int32_t hold = t->w.station.policy.room_hold_min;
	assert_int_equal(carried_to(t, CARD_THIS_ROOM, 2, hold - 1), 2);
	assert_int_equal(carried_to(t, CARD_THIS_ROOM, 2, hold), 1);
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, hold), 2);
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, 100000), 2);
	assert_true(says(t, "spare of Room 2"));
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 1, 100000), 1);
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, 1), 2);
	assert_int_equal(carried_to(t, CARD_THIS_ROOM, 1, hold), 1);
	/* A room that the station has no more binds nobody. */
	assert_int_equal(carried_to(t, CARD_SPARE_SCANNER, 2, 1), 2);
	t->w.station.n_rooms = 1;
	assert_int_equal(station_scanner_room(&t->w.station, "hand-1", 1, t->out.events[0].at), 1);
}

RULE(rule_19_a_badge_answers_only_what_is_asked)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, COUNTED, "NEXT");
	assert_int_equal(scan(t, "CIRC"), VERDICT_REFUSED);
	assert_int_equal(scan(t, "SCRUB"), VERDICT_REFUSED);
	SCANS(t, "right index finger", "right index finger"); /* is it off? */
	assert_int_equal(scan(t, "CIRC"), VERDICT_REFUSED);
	assert_int_equal(sheet_digit_const(sheet(t), 2)->state, DIGIT_ON);
}

RULE(rule_20_nothing_of_a_wristband_is_kept)
{
	(void)state;
	struct table *t = lay(&two_people);
	scan(t, "NEW CASE");
	struct sheet before = *sheet(t);
	assert_int_equal(scan(t, "wristband"), VERDICT_REFUSED);
	assert_int_equal(t->out.count, 1);
	assert_int_equal(t->out.events[0].kind, EV_REFUSED);
	assert_memory_equal(&before, sheet(t), sizeof before);
}

/* The scan of a thing that an ended case used. */
static struct input used_before(const struct table *t, const char *name, int back)
{
	struct input in = {0};
	for (int i = 0; i < t->w.n_inputs; i++)
		if (strcmp(t->w.inputs[i].name, name) == 0)
			in = t->w.inputs[i].in;
	assert_int_equal(in.act, ACT_THING);
	in.known.used_in = 4;
	in.known.used_back = (uint8_t)back;
	return in;
}

RULE(rule_21_a_found_item_acts_on_the_case_that_it_came_from_whatever_is_open)
{
	(void)state;
	struct table *t = lay(&two_people);
	for (int open = 0; open < 2; open++) {
		struct input forceps = used_before(t, "pack F F:1", 0);
		if (open)
			SCANS(t, "NEW CASE", "SCRUB", "CIRC");
		decide_and_apply(t, &forceps);
		assert_int_equal(t->out.reply.verdict, VERDICT_ACCEPTED);
		assert_int_equal(happened(t, EV_FOUND_AFTER), 1);
		assert_int_equal(happened(t, EV_SLIP_QUEUED), 1); /* the addendum */
		assert_true(says(t, "case 4") && says(t, "Look at that patient's digit now"));
		assert_int_equal(sheet(t)->n_items, 0);
	}
	/* Accounted for there, it may be used again. */
	struct input back = used_before(t, "pack F F:1", 1);
	decide_and_apply(t, &back);
	assert_int_equal(happened(t, EV_FOUND_AFTER), 0);
	assert_int_equal(sheet(t)->n_items, 1);
}

RULE(rule_21_a_label_of_what_is_missing_proves_only_itself)
{
	(void)state;
	struct table *t = lay(&two_people);
	struct input label = used_before(t, "pack T T:8 used before", 0);
	scan(t, "FOUND");
	decide_and_apply(t, &label);
	assert_int_equal(t->out.reply.verdict, VERDICT_REFUSED);
	assert_int_equal(happened(t, EV_FOUND_AFTER), 0);
	assert_true(says(t, "slip of case 4"));
}

RULE(rule_22_the_same_card_right_after_itself_is_entered_once_however_late)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, OFF, "FINAL COUNT", "INTACT", "NO"); /* no forceps: a search of two steps */
	scan(t, "STEP DONE");
	assert_int_equal(sheet(t)->search_done, 1);
	assert_int_equal(scan(t, "STEP DONE"), VERDICT_ACCEPTED);
	assert_int_equal(t->out.count, 0);
	assert_true(says(t, "Entered once already: STEP DONE"));
	SCANS(t, "NEXT", "STEP DONE");
	assert_int_equal(sheet(t)->search_done, 2);
}

RULE(rule_22_things_alike_are_answered_by_their_number_alone)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "pack T T:2", "CIRC", "FINAL COUNT");
	assert_int_equal(scan(t, "INTACT"), VERDICT_REFUSED);
	assert_int_equal(scan(t, "YES"), VERDICT_REFUSED);
	assert_true(says(t, "side by side"));
	assert_int_equal(scan(t, "SHOWN 2"), VERDICT_ACCEPTED);
	assert_int_equal(happened(t, EV_ITEM_SHOWN), 2);
	assert_int_equal(sheet_open_items(sheet(t)), 0);
}

RULE(rule_24_nothing_of_another_case_is_entered_on_this_sheet)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1", "CIRC", "FINAL COUNT");
	struct input forceps = used_before(t, "pack F F:1", 0);
	decide_and_apply(t, &forceps);
	assert_int_equal(sheet(t)->n_items, 1);
	assert_int_equal(sheet(t)->asked.what, Q_NONE);
	for (int i = 0; i < t->out.count; i++)
		assert_int_not_equal(t->out.events[i].kind, EV_EXTRA);
}

RULE(rule_4_over_all_rooms_one_identity_on_two_open_sheets_is_seen)
{
	(void)state;
	struct table *t = lay(&two_people);
	SCANS(t, "NEW CASE", "SCRUB", "CIRC", "pack T T:1");
	struct sheet *second = &t->w.station.sheets[1];
	*second = *sheet(t);
	second->case_no++;
	second->room = 2;
	assert_int_equal(rule_check(second), 0);
	assert_true(rule_check_all(&t->w.station) >> RULE_ONE_SHEET & 1);
	second->items[0].place = ITEM_RETURNED;
	assert_int_equal(rule_check_all(&t->w.station), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(rule_1_a_case_does_not_end_reconciled_while_anything_is_owed),
	    cmocka_unit_test(rule_2_a_tourniquet_that_is_off_is_reminded_of_until_it_is_accounted_for),
	    cmocka_unit_test(rule_3_a_digit_card_starts_the_clock_whatever_is_missing),
	    cmocka_unit_test(rule_4_an_item_is_on_one_open_sheet_and_a_single_use_item_is_used_once),
	    cmocka_unit_test(rule_5_what_is_expired_in_quarantine_unknown_or_not_a_device_is_refused_by_name),
	    cmocka_unit_test(rule_6_the_forceps_can_come_back_while_the_tourniquet_stays),
	    cmocka_unit_test(rule_7_a_roll_on_tourniquet_is_asked_about_and_yes_needs_the_surgeon),
	    cmocka_unit_test(rule_8_two_people_agree_one_registered_and_the_circulating_badge_records),
	    cmocka_unit_test(rule_9_the_look_comes_after_the_count_and_going_on_again_voids_both),
	    cmocka_unit_test(rule_10_each_tourniquet_is_declared_intact_complete_or_in_pieces),
	    cmocka_unit_test(rule_11_a_wrapper_proves_only_that_a_pack_was_opened),
	    cmocka_unit_test(rule_12_whatever_is_answered_leaves_an_event_to_be_stored),
	    cmocka_unit_test(rule_13_taking_back_is_a_further_event_that_names_the_first),
	    cmocka_unit_test(rule_13_a_wrong_card_is_moved_before_it_is_known_whether_one_is_on),
	    cmocka_unit_test(rule_11_a_look_is_of_one_digit_and_does_not_move_to_another),
	    cmocka_unit_test(
	        rule_10_a_piece_that_lacks_or_turns_up_after_the_agreement_begins_the_count_again),
	    cmocka_unit_test(rule_5_what_turns_up_and_would_have_been_refused_is_answered_for_by_the_surgeon),
	    cmocka_unit_test(rule_3_off_goes_on_with_the_case_that_is_suspended_while_it_was_on),
	    cmocka_unit_test(rule_16_who_takes_the_patient_away_is_told_what_is_open),
	    cmocka_unit_test(rule_16_a_lone_operator_who_has_not_badged_in_yet_may_end_unresolved),
	    cmocka_unit_test(rule_14_minutes_come_from_a_clock_that_no_one_can_set),
	    cmocka_unit_test(rule_15_the_end_says_what_was_counted_and_seen_and_no_more),
	    cmocka_unit_test(rule_16_a_case_ends_unresolved_only_by_the_surgeon_after_the_whole_search),
	    cmocka_unit_test(rule_17_what_cannot_be_entered_is_said_with_count_by_hand),
	    cmocka_unit_test(rule_18_another_rooms_card_is_announced_and_enters_nothing),
	    cmocka_unit_test(
	        rule_18_a_scanner_follows_a_room_card_for_a_while_and_as_a_spare_until_a_further_card),
	    cmocka_unit_test(rule_19_a_badge_answers_only_what_is_asked),
	    cmocka_unit_test(rule_20_nothing_of_a_wristband_is_kept),
	    cmocka_unit_test(rule_21_a_found_item_acts_on_the_case_that_it_came_from_whatever_is_open),
	    cmocka_unit_test(rule_21_a_label_of_what_is_missing_proves_only_itself),
	    cmocka_unit_test(rule_22_the_same_card_right_after_itself_is_entered_once_however_late),
	    cmocka_unit_test(rule_22_things_alike_are_answered_by_their_number_alone),
	    cmocka_unit_test(rule_24_nothing_of_another_case_is_entered_on_this_sheet),
	    cmocka_unit_test(rule_4_over_all_rooms_one_identity_on_two_open_sheets_is_seen),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
