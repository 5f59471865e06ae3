/* What a sheet waits for, how that is asked, and which reads are one: want.h, deed.h, reads.h. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "decide/reads.h"
#include "decide/turn.h"
#include "decide/want.h"
#include "tests/states/known.h"
#include "tests/states/walk.h"

#define PLAN                                                                                                 \
	.tourniquets = 2, .forceps = 1, .others = 1, .rolls_on = 1, .refused = 1, .digits = 2, .people = 4

static const struct room_plan two_people = {"next", PLAN};
static const struct room_plan one_person = {"next, one person", PLAN, .single = 1};

static struct world w;
static struct outcome out;

static void lay(const struct room_plan *plan)
{
	if (w.n_inputs)
		world_deinit(&w);
	world_init(&w, plan);
}

static void take(const struct input *in)
{
	static int64_t seq = 1000;
	decide_known(&w.station, in, &out);
	for (int i = 0; i < out.count; i++) {
		out.events[i].seq = ++seq;
		assert_int_equal(station_apply(&w.station, &out.events[i]), 0);
	}
}

static const struct input *input(const char *name)
{
	for (int i = 0; i < w.n_inputs; i++)
		if (strcmp(w.inputs[i].name, name) == 0)
			return &w.inputs[i].in;
	fail_msg("no scan '%s'", name);
	return NULL;
}

/* --- the sentence and the deeds ----------------------------------------------------------------- */

static const char *card_said(const struct deed *d)
{
	int card = d->then > 0 ? d->then : d->n;
	int number = d->truth == TRUTH_SOME_INTACT || d->truth == TRUTH_SOME_SHOWN;
	const char *name = own_card_name(card), *colon = strstr(name, ": ");
	return number ? "SHOWN and their number" : colon ? colon + 2 : name;
}

static const char *badge_said(int place, int single)
{
	return place == PLACE_FIELD ? (single ? "the operator's badge" : "the badge of the one at the field")
	       : place == PLACE_CIRCULATING ? "the circulating badge"
	       : place == PLACE_SURGEON     ? "the surgeon's badge"
	       : place == PLACE_CHARGE      ? "the badge of the nurse in charge"
	                                    : "a badge";
}

/* What each deed is called; the words here are those that people know it by. */
static const char *deed_said(const struct deed *d, int single)
{
	if (d->then < 0)
		return badge_said(-d->then, single);
	switch ((enum deed_kind)d->kind) {
	case DEED_CARD:
		return card_said(d);
	case DEED_BADGE:
		return badge_said(d->n, single);
	case DEED_DIGIT:
		return d->truth == TRUTH_OTHER_DIGIT ? "the card of the digit" : "digit card";
	case DEED_MARK:
		return d->item                   ? "its mark"
		       : d->truth == TRUTH_FOUND ? "the mark on it"
		                                 : "its pack or its mark";
	case DEED_PACK:
		return "pack";
	case DEED_SLIP:
		return "the code on the slip";
	case DEED_TYPE:
		return "type";
	case DEED_NONE:
		break;
	}
	fail_msg("a deed of no kind");
	return "";
}

static void says_its_deeds(const struct next *n, int single)
{
	assert_in_range(n->n_deeds, 1, DEEDS_MAX);
	assert_true(strlen(n->words) < NEXT_MAX - 1); /* nothing of it was cut */
	for (int i = 0; i < n->n_deeds; i++) {
		const struct deed *d = &n->deeds[i];
		const char *said = deed_said(d, single),
		           *why = saying_text(truth_saying((enum truth)d->truth));
		if (!strstr(n->words, said) || !strstr(n->words, why))
			fail_msg("'%s' does not say '%s %s'", n->words, said, why);
		if (d->then && !strstr(n->words, "(NEXT first)") && !strstr(n->words, "NEXT, then "))
			fail_msg("'%s' does not name NEXT", n->words);
		assert_true(!d->then || (d->kind == DEED_CARD && d->n == CARD_NEXT));
		for (int k = 0; k < i; k++)
			assert_memory_not_equal(d, &n->deeds[k], sizeof *d);
	}
}

static uint32_t lot(uint32_t *state)
{
	*state = *state * 1664525U + 1013904223U;
	return *state >> 16;
}

static void people_who_scan_whatever(const struct room_plan *plan, int scans, uint32_t state)
{
	lay(plan);
	for (int i = 0; i < scans; i++) {
		const struct input *in = &w.inputs[lot(&state) % (uint32_t)w.n_inputs].in;
		take(in);
		if (out.reply.said[0])
			says_its_deeds(&out.reply.next, plan->single);
	}
}

static void each_deed_stands_in_the_sentence_whatever_is_scanned(void **state)
{
	(void)state;
	for (uint32_t seed = 1; seed <= 40; seed++) {
		people_who_scan_whatever(&two_people, 500, seed);
		people_who_scan_whatever(&one_person, 500, seed);
	}
}

static void a_deed_that_would_repeat_the_last_scan_becomes_next(void **state)
{
	(void)state;
	struct sheet s = {.case_no = 1, .last_answer = CARD_YES};
	struct next n;
	next_say(&n, SAY(HEAD_FOUND_IS, .item = "needle"));
	next_add(&n, (struct deed){.kind = DEED_CARD, .n = CARD_YES, .truth = TRUTH_YES});
	next_add(&n, (struct deed){.kind = DEED_CARD, .n = CARD_NO, .truth = TRUTH_NO});
	next_word(&n, &s, 0);
	assert_string_equal(n.words, "Found: is it the needle? Scan NEXT, then YES; NO if not.");
	assert_int_equal(n.deeds[0].n, CARD_NEXT);
	assert_int_equal(n.deeds[0].then, CARD_YES);
	assert_int_equal(n.deeds[1].n, CARD_NO);
	assert_int_equal(n.deeds[1].then, 0);
}

static void a_badge_that_would_repeat_becomes_next_and_keeps_its_place(void **state)
{
	(void)state;
	struct sheet s = {.case_no = 1, .last_answer = -3};
	struct next n;
	s.team.at[PLACE_CIRCULATING] = 3;
	next_say(&n, SAY(HEAD_AGREE_FINAL));
	next_add(&n, (struct deed){.kind = DEED_BADGE, .n = PLACE_CIRCULATING, .truth = TRUTH_SO});
	next_word(&n, &s, 0);
	assert_string_equal(n.words, "Agree the final count aloud: scan NEXT, then the circulating badge.");
	assert_int_equal(n.deeds[0].n, CARD_NEXT);
	assert_int_equal(n.deeds[0].then, -PLACE_CIRCULATING);
}

static void more_deeds_than_there_is_room_for_are_left_out(void **state)
{
	(void)state;
	struct sheet s = {0};
	struct next n;
	next_say(&n, SAY(HEAD_FINAL));
	for (int d = 1; d <= DEEDS_MAX + 3; d++)
		next_add(&n, (struct deed){.kind = DEED_DIGIT, .digit = (uint8_t)d, .truth = TRUTH_OFF});
	next_word(&n, &s, 0);
	assert_int_equal(n.n_deeds, DEEDS_MAX);
	assert_string_equal(n.words,
	                    "Before the dressing: scan its digit card, then OFF."); /* once for all */
}

/* --- what is wanted ----------------------------------------------------------------------------- */

static void wants(const char *after, enum want_kind kind)
{
	take(input(after));
	struct want want = sheet_wants(&w.station, &w.station.sheets[0]);
	if (want.kind != kind)
		fail_msg("after '%s' %d is wanted, not %d: %s", after, (int)want.kind, (int)kind,
		         out.reply.next.words);
}

static void one_thing_after_another_is_wanted(void **state)
{
	(void)state;
	lay(&two_people);
	wants("NEW CASE", WANT_TEAM);
	wants("SCRUB", WANT_TEAM);
	wants("CIRC", WANT_COUNT_IN);
	wants("pack T T:1", WANT_COUNT_IN);
	wants("CIRC", WANT_ON);
	wants("right index finger", WANT_OFF);
	wants("half an hour passes", WANT_REMINDER);
	wants("CIRC", WANT_OFF);
	wants("right index finger", WANT_ANSWER);
	wants("OFF", WANT_FINAL);
	wants("SUSPEND", WANT_RESUME);
	wants("NEXT", WANT_RESUME);
	wants("SUSPEND", WANT_FINAL);
	wants("FINAL COUNT", WANT_ITEM);
	wants("NO", WANT_SEARCH);
	wants("STEP DONE", WANT_SEARCH);
	wants("NOT DONE", WANT_SEARCH_END);
	wants("FOUND", WANT_ANSWER);
	wants("INTACT", WANT_FINAL_AGREED);
	wants("CIRC", WANT_LOOK);
	wants("right index finger", WANT_SIGN_OUT);
	wants("SURG", WANT_NOTHING);
}

static void an_empty_sheet_waits_for_packs_after_its_count_too(void **state)
{
	(void)state;
	lay(&two_people);
	wants("NEW CASE", WANT_TEAM);
	wants("SCRUB", WANT_TEAM);
	wants("CIRC", WANT_COUNT_IN);
	wants("pack T T:1", WANT_COUNT_IN);
	wants("CIRC", WANT_ON);
	wants("RETURNED UNOPENED", WANT_ANSWER);
	wants("pack T T:1", WANT_COUNT_IN);
	assert_non_null(strstr(out.reply.next.words, "CANCEL if there is no operation"));
}

static void the_operator_pays_every_debt_alone(void **state)
{
	(void)state;
	static const enum debt_kind by_badge[] = {DEBT_REASON, DEBT_SURGEON, DEBT_COUNT,   DEBT_LISTING,
	                                          DEBT_ADDED,  DEBT_NAME,    DEBT_HANDOVER};
	struct sheet two = {0}, one = {.single = 1};
	for (size_t i = 0; i < sizeof by_badge / sizeof *by_badge; i++) {
		int surgeon = by_badge[i] == DEBT_REASON || by_badge[i] == DEBT_SURGEON;
		assert_int_equal(debt_payer(&one, by_badge[i]), PLACE_FIELD);
		assert_int_equal(debt_payer(&two, by_badge[i]), surgeon ? PLACE_SURGEON : PLACE_CIRCULATING);
	}
	assert_int_equal(debt_payer(&two, DEBT_ON), 0); /* a card answers it */
}

/* --- one read ----------------------------------------------------------------------------------- */

static struct input read_at(int card, const char *scanner, int64_t ms)
{
	struct input in = {.act = ACT_CARD, .card = card, .card_room = 1, .room = 1};
	in.at = (struct moment){.boot = 1, .boot_ms = 10000 + ms, .wall_ms = 10000 + ms};
	snprintf(in.scanner, sizeof in.scanner, "%s", scanner);
	return in;
}

/* Whether this read is one with another; it is noted as entered unless it was refused. */
static int is_repeated(struct reads *r, struct input in, enum verdict verdict)
{
	reads_look(r, &in, 2000);
	reads_note(r, &in, verdict);
	return in.repeated;
}

static void the_same_card_within_the_time_is_one_read(void **state)
{
	(void)state;
	struct reads r = {0};
	assert_false(is_repeated(&r, read_at(CARD_OFF, "hand", 0), VERDICT_ACCEPTED));
	assert_true(is_repeated(&r, read_at(CARD_OFF, "hand", 1999), VERDICT_ACCEPTED));
	assert_true(is_repeated(&r, read_at(CARD_OFF, "hand", 3900), VERDICT_ACCEPTED)); /* held before it */
	assert_false(is_repeated(&r, read_at(CARD_OFF, "hand", 5900), VERDICT_ACCEPTED));
}

static void another_scanner_of_the_room_reads_the_same_card(void **state)
{
	(void)state;
	struct reads r = {0};
	struct input elsewhere = read_at(CARD_OFF, "hand-2", 200);
	elsewhere.room = 2;
	assert_false(is_repeated(&r, read_at(CARD_OFF, "hand", 0), VERDICT_ACCEPTED));
	assert_true(is_repeated(&r, read_at(CARD_OFF, "camera", 100), VERDICT_ACCEPTED));
	assert_false(is_repeated(&r, elsewhere, VERDICT_ACCEPTED));
	assert_false(is_repeated(&r, read_at(CARD_NO, "camera", 300), VERDICT_ACCEPTED));
	/* The camera read OFF before NO; the handheld still read nothing else since. */
	assert_true(is_repeated(&r, read_at(CARD_OFF, "hand", 400), VERDICT_ACCEPTED));
}

static void one_scanner_that_reads_another_card_between_meant_it(void **state)
{
	(void)state;
	struct reads r = {0};
	assert_false(is_repeated(&r, read_at(CARD_YES, "hand", 0), VERDICT_ACCEPTED));
	assert_false(is_repeated(&r, read_at(CARD_NEXT, "hand", 300), VERDICT_ACCEPTED));
	assert_false(is_repeated(&r, read_at(CARD_YES, "hand", 600), VERDICT_ACCEPTED));
}

static void what_was_refused_is_looked_at_anew(void **state)
{
	(void)state;
	struct reads r = {0};
	struct input typed = {.act = ACT_TYPED, .text = "INC-1", .room = 1};
	assert_false(is_repeated(&r, read_at(CARD_OFF, "hand", 0), VERDICT_REFUSED));
	assert_false(is_repeated(&r, read_at(CARD_OFF, "hand", 100), VERDICT_ACCEPTED));
	assert_true(is_repeated(&r, read_at(CARD_OFF, "hand", 200), VERDICT_QUESTION));
	assert_false(is_repeated(&r, typed, VERDICT_ACCEPTED));
	assert_false(is_repeated(&r, typed, VERDICT_ACCEPTED)); /* never entered as a code */
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(each_deed_stands_in_the_sentence_whatever_is_scanned),
	    cmocka_unit_test(a_deed_that_would_repeat_the_last_scan_becomes_next),
	    cmocka_unit_test(a_badge_that_would_repeat_becomes_next_and_keeps_its_place),
	    cmocka_unit_test(more_deeds_than_there_is_room_for_are_left_out),
	    cmocka_unit_test(one_thing_after_another_is_wanted),
	    cmocka_unit_test(an_empty_sheet_waits_for_packs_after_its_count_too),
	    cmocka_unit_test(the_operator_pays_every_debt_alone),
	    cmocka_unit_test(the_same_card_within_the_time_is_one_read),
	    cmocka_unit_test(another_scanner_of_the_room_reads_the_same_card),
	    cmocka_unit_test(one_scanner_that_reads_another_card_between_meant_it),
	    cmocka_unit_test(what_was_refused_is_looked_at_anew),
	};
	int failed = cmocka_run_group_tests(tests, NULL, NULL);
	world_deinit(&w);
	return failed;
}
