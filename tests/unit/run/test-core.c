/* What the daemon alone joins to a scan: the two codes of one pack, what the record knows of an item, and that
 * a word was typed. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "run/core.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

#define GREEN "(01)09506000134352"
#define PACK GREEN "(17)330331(10)T26(21)S"

static struct core core;
static char folder[FOLDER_MAX];
static struct event kept[64]; /* of the last scan */
static int n_kept;

static void keep(void *context, const struct event *events, int count)
{
	(void)context;
	for (int i = 0; i < count && n_kept < 64; i++)
		kept[n_kept++] = events[i];
}

static const struct event *kept_of(enum event_kind kind)
{
	for (int i = 0; i < n_kept; i++)
		if (kept[i].kind == kind)
			return &kept[i];
	fail_msg("no event %s: %s", event_name(kind), core.outcome.reply.said);
	return NULL;
}

static void set_up_station(void)
{
	static const char csv[] =
	    "key,name,role,codes,marked,visible,single_use,identity\n"
	    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,yes,pack\n"
	    "PLAIN-M,\"finger tourniquet, orange, M\",tourniquet,09506000134369,yes,yes,yes,none\n";
	static const struct person people[] = {{1, "SCRUB-1", STAFF_PRACTITIONER, 1, 0},
	                                       {2, "CIRC-2", STAFF_PRACTITIONER, 1, 0},
	                                       {3, "SURG-3", STAFF_SURGEON, 1, 0}};
	struct line *lines = NULL;
	size_t count = 0;
	struct error e;
	assert_int_equal(catalogue_read_csv(csv, sizeof csv - 1, &lines, &count, &e), 0);
	for (size_t i = 0; i < count; i++)
		assert_int_equal(
		    core_store(&core, &(struct event){.kind = EV_LINE_SET, .line = lines[i]}, 1, &e), 0);
	free(lines);
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		assert_int_equal(
		    core_store(&core, &(struct event){.kind = EV_STAFF_SET, .staff = people[i]}, 1, &e), 0);
}

static int setup(void **state)
{
	struct error e = {0};
	(void)state;
	folder_make(folder);
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
	core.stored = keep;
	set_up_station();
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static const char *by(const char *scanner, const char *text)
{
	n_kept = 0;
	return core_scan(&core,
	                 &(struct scan){
	                     .scanner = scanner, .room = 1, .aim = "", .data = text, .size = strlen(text)})
	    ->said;
}

static const char *scan(const char *text)
{
	return by("hand-1", text);
}

static const char *own(struct own_code code)
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, core.station.site, 3);
	code.room = code.kind == OWN_CARD || code.kind == OWN_DIGIT;
	if (code.kind == OWN_SLIP && !code.old && !code.proof)
		code.proof =
		    slip_proof(core.seal, core.station.site, core.station.number, code.number, code.copy);
	assert_int_equal(own_code_write(&code, text), 0);
	return scan(text);
}

static const char *card(int meaning)
{
	return own((struct own_code){.kind = OWN_CARD, .meaning = meaning});
}

static const char *badge(int number)
{
	return own((struct own_code){.kind = OWN_BADGE, .number = number});
}

static void must_say(const char *said, const char *words)
{
	if (!strstr(said, words))
		fail_msg("not '%s': %s", words, said);
}

static void slip_is_written(int32_t slip)
{
	struct event e = {
	    .kind = EV_SLIP_STATE, .room = 1, .case_no = 1, .n = slip, .what = SLIP_WRITTEN, .other = 1};
	assert_int_equal(core_store(&core, &e, 1, NULL), 0);
}

static void begin_case(void)
{
	card(CARD_NEW_CASE);
	badge(1);
	must_say(badge(2), "circulating");
}

/* To the end of a case with one pack, which comes back or does not. */
static void end_case(int shown)
{
	badge(2);
	must_say(card(CARD_FINAL_COUNT), "Final count");
	must_say(card(shown ? CARD_INTACT : CARD_NO), shown ? "Accounted for" : "NOT THERE");
	if (shown) {
		badge(2);
		must_say(badge(3), "ended reconciled");
		return;
	}
	for (int i = 0; i < core.station.policy.n_search; i++) {
		must_say(card(CARD_STEP_DONE), "done");
		card(CARD_NEXT);
	}
	card(CARD_END_UNRESOLVED);
	badge(3);
	must_say(core_typed(&core, 1, "INC-1")->said, "UNRESOLVED");
}

/* --- two codes of one pack --------------------------------------------------------------------- */

static void two_codes_of_one_pack_are_one_pack(void **state)
{
	(void)state;
	begin_case();
	must_say(scan("(17)330331(10)T26"), "Half of a pack's data");
	must_say(scan(GREEN), "Counted in");
	assert_string_equal(kept_of(EV_ITEM_IN)->thing.lot, "T26");
	assert_int_equal(kept_of(EV_ITEM_IN)->thing.expiry, 20330331);
}

static void the_halves_of_two_scanners_are_not_one_pack(void **state)
{
	(void)state;
	begin_case();
	by("hand-2", "(17)330331(10)T26");
	must_say(scan(GREEN), "Counted in");
	assert_string_equal(kept_of(EV_ITEM_IN)->thing.lot, "");
}

static void a_half_is_forgotten_after_half_a_minute(void **state)
{
	(void)state;
	begin_case();
	scan("(17)330331(10)T26");
	core.halves.list[0].at.boot_ms -= 30001;
	must_say(scan(GREEN), "Counted in");
	assert_string_equal(kept_of(EV_ITEM_IN)->thing.lot, "");
}

static void a_half_that_gives_way_to_others_is_told(void **state)
{
	char name[16];
	int told = 0;
	(void)state;
	begin_case();
	for (int i = 0; i <= HALVES_MAX; i++) {
		snprintf(name, sizeof name, "s%d", i);
		by(name, "(17)330331(10)T26");
		if (i < HALVES_MAX)
			core.halves.list[i].at.boot_ms -= HALVES_MAX - i; /* s0 waits longest */
	}
	for (int i = 0; i < RECENT_MAX; i++)
		told += strstr(core.recent[0][i].said, "scanner s0 read is forgotten") != NULL;
	assert_int_equal(told, 1);
	must_say(by("s1", GREEN), "Counted in"); /* each other has its own still */
	assert_string_equal(kept_of(EV_ITEM_IN)->thing.lot, "T26");
}

/* --- what the record knows --------------------------------------------------------------------- */

static void a_pack_of_an_earlier_case_is_refused(void **state)
{
	(void)state;
	begin_case();
	must_say(scan(PACK "1"), "Counted in");
	end_case(1);
	begin_case();
	must_say(scan(PACK "1"), "was used before, in case 1");
}

static void what_was_missing_is_of_its_patient_when_it_is_found(void **state)
{
	(void)state;
	begin_case();
	must_say(scan(PACK "1"), "Counted in");
	end_case(0);
	must_say(scan(PACK "1"),
	         "the wrapper or bag of the finger tourniquet, green, M that case 1 did not account for");
	card(CARD_FOUND);
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = 1}), "entered for case 1");
	assert_int_equal(kept_of(EV_FOUND_AFTER)->case_no, 1);
}

static const char *slip(int copy)
{
	core.reads = (struct reads){0};
	return own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = copy});
}

static const char *slip_with(int number, int copy, int32_t proof)
{
	return own((struct own_code){
	    .kind = OWN_SLIP, .number = number, .copy = copy, .proof = proof, .old = !proof});
}

static void case_with_its_slip(void)
{
	begin_case();
	scan(PACK "1");
	end_case(1);
}

static void print_again(int copy)
{
	struct event e = {.kind = EV_SLIP_QUEUED,
	                  .case_no = 1,
	                  .room = 1,
	                  .n = 1,
	                  .what = SLIP_RECONCILIATION,
	                  .other = copy};
	assert_int_equal(core_store(&core, &e, 1, NULL), 0);
}

static void a_slip_is_seen_once_its_paper_was_made(void **state)
{
	(void)state;
	case_with_its_slip();
	must_say(slip(1), "was not printed yet");
	slip_is_written(1);
	must_say(slip(1), "Slip 0000001 of case 1, copy 1, seen: this paper came out.");
	assert_int_equal(kept_of(EV_SLIP_STATE)->other, 1);
	must_say(slip(1),
	         "copy 1, was seen before. If two papers of it lie here, only one goes into the notes");
}

/* That a second copy was asked for makes no paper of the first. */
static void each_copy_is_seen_only_once_it_was_made_itself(void **state)
{
	(void)state;
	case_with_its_slip();
	print_again(2);
	must_say(slip(1), "copy 1, was not printed yet");
	must_say(slip(2), "copy 2, was not printed yet");
	struct event made = {
	    .kind = EV_SLIP_STATE, .room = 1, .case_no = 1, .n = 1, .what = SLIP_SENT, .other = 2};
	assert_int_equal(core_store(&core, &made, 1, NULL), 0);
	made.what = SLIP_WAITING; /* it may lie half printed before whoever fills in paper */
	assert_int_equal(core_store(&core, &made, 1, NULL), 0);
	must_say(slip(1), "copy 1, was not printed yet");
	must_say(slip(2), "copy 2, seen");
}

static void of_two_papers_of_a_slip_only_one_goes_into_the_notes(void **state)
{
	(void)state;
	case_with_its_slip();
	slip_is_written(1);
	print_again(2);
	struct event made = {
	    .kind = EV_SLIP_STATE, .room = 1, .case_no = 1, .n = 1, .what = SLIP_DONE, .other = 2};
	assert_int_equal(core_store(&core, &made, 1, NULL), 0);
	must_say(slip(2), "copy 2, seen");
	must_say(slip(1),
	         "copy 1: copy 2 of it was seen before. Only one goes into the notes: destroy this one.");
}

static void a_paper_that_the_key_did_not_prove_is_not_ours(void **state)
{
	(void)state;
	int32_t right = slip_proof(core.seal, core.station.site, core.station.number, 1, 1);
	case_with_its_slip();
	slip_is_written(1);
	must_say(slip_with(1, 1, right % 999999 + 1), "copy 1, is not ours");
	must_say(slip_with(1, 1, 0), "bears a longer code");
	must_say(slip_with(9, 1, 1), "Slip 0000009, copy 1, is not ours");
	must_say(slip_with(9, 1, 0), "is not in this record");
	core.guesses = (struct guesses){0};
	must_say(slip_with(1, 2, 1), "Slip 0000001 has no copy 2: this paper is not ours");
	must_say(slip(1), "seen: this paper came out");
}

/* Both places went back together, say: the record knows nothing of it, the key does. */
static void a_paper_that_is_newer_than_the_record_is_never_foreign(void **state)
{
	(void)state;
	case_with_its_slip();
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 9, .copy = 1}),
	         "Slip 0000009, copy 1, is of this station and newer than this record");
	must_say(core.distrust, "A paper is newer than the record: an older one was put back");
	assert_int_equal(station_incarnation(&core.station), 2);
	assert_int_equal(core.station.last_slip_no, 10009); /* behind it, and behind others that were lost */
	must_say(slip(2), "Slip 0000001, copy 2, is of this station and newer than this record");
	assert_int_equal(station_incarnation(&core.station), 2);
	assert_int_equal(guesses_words(&core.guesses, NULL, core_now(&core), NULL), 0);
	core.station.number = 7;
	must_say(own((struct own_code){.kind = OWN_SLIP,
	                               .number = 9,
	                               .copy = 1,
	                               .proof = slip_proof(core.seal, core.station.site, 0, 9, 1),
	                               .station = 7}),
	         "is not ours");
	core.station.number = 0;
}

/* It is known then that an older record was put back, and numbers have gone on past those that it lacks. */
static void a_paper_of_a_number_that_was_left_out_is_kept_and_no_further_doubt(void **state)
{
	(void)state;
	struct event e = {
	    .kind = EV_SLIP_QUEUED, .case_no = 1, .room = 1, .n = 10001, .what = SLIP_ADDENDUM, .other = 1};
	case_with_its_slip();
	assert_int_equal(core_store(&core, &e, 1, NULL), 0);
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 9, .copy = 1}),
	         "was made before an older record was put back: this record lacks it");
	assert_string_equal(core.distrust, "");
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 10002, .copy = 1}),
	         "newer than this record");
	must_say(core.distrust, "A paper is newer than the record");
	assert_int_equal(core.station.last_slip_no, 20002);
}

static const char *typed(const char *name, struct own_code code)
{
	char text[OWN_CODE_MAX];
	n_kept = 0;
	memcpy(code.site, core.station.site, 3);
	assert_int_equal(own_code_write(&code, text), 0);
	return core_scan(&core, &(struct scan){.scanner = name,
	                                       .room = 1,
	                                       .aim = "",
	                                       .data = text,
	                                       .size = strlen(text),
	                                       .flags = EVENT_KEYED})
	    ->said;
}

static void a_slip_whose_code_is_typed_says_so(void **state)
{
	(void)state;
	struct own_code code = {.kind = OWN_SLIP, .number = 1, .copy = 1};
	case_with_its_slip();
	slip_is_written(1);
	code.proof = slip_proof(core.seal, core.station.site, core.station.number, 1, 1);
	must_say(typed("keyed", code), "copy 1, typed: somebody read the code of this paper, no scanner did");
	assert_int_equal(kept_of(EV_SLIP_STATE)->flags & EVENT_KEYED, EVENT_KEYED);
}

static void who_types_guesses_under_many_names_is_one(void **state)
{
	(void)state;
	struct own_code code = {.kind = OWN_SLIP, .number = 9, .copy = 1};
	char name[8];
	for (int i = 0; i < GUESSES_IN_A_MINUTE; i++) {
		snprintf(name, sizeof name, "me-%d", i);
		code.proof = i + 1;
		must_say(typed(name, code), "is not ours");
	}
	must_say(typed("me", code), "no slip is answered for a minute");
	must_say(own(code), "is not ours"); /* a scanner's reads are another's */
}

/* As a record of format 1 has it. */
static void a_paper_of_an_earlier_version_is_taken_as_such(void **state)
{
	(void)state;
	struct event e = {.kind = EV_SLIP_QUEUED,
	                  .case_no = 1,
	                  .room = 1,
	                  .at = core_now(&core),
	                  .n = 5,
	                  .what = SLIP_RECONCILIATION,
	                  .other = 1};
	case_with_its_slip();
	assert_int_equal(record_append(core.record, &e, 1, NULL), 0);
	assert_int_equal(station_apply(&core.station, &e), 0);
	slip_is_written(5);
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 5, .copy = 1}), "is not ours");
	must_say(slip_with(5, 1, 0), "seen: this paper came out. Its code is of an earlier version");
}

static void who_guesses_is_not_answered_for_a_minute(void **state)
{
	(void)state;
	_cleanup_(json_drop) json_t *faults = json_array();
	case_with_its_slip();
	slip_is_written(1);
	for (int i = 1; i <= GUESSES_IN_A_MINUTE; i++) {
		assert_int_equal(guesses_words(&core.guesses, NULL, core_now(&core), NULL), 0);
		must_say(slip_with(9, 1, i), "is not ours");
	}
	must_say(slip(1), "no slip is answered for a minute");
	assert_non_null(kept_of(EV_REFUSED));
	must_say(slip_with(9, 1, 9), "no slip is answered for a minute");
	must_say(card(CARD_NEW_CASE), "opened"); /* everything else goes on */
	teller_faults(&core, NULL, faults);
	must_say(json_string_value(json_array_get(faults, 0)), "Scanner hand-1: five slip codes");
	card(CARD_CANCEL);
	core.reads = (struct reads){0};
	core.guesses.list[0].silenced.boot_ms -= 60000;
	must_say(card(CARD_YES), "ended as cancelled");
	must_say(slip(1), "seen: this paper came out");
}

static void what_is_typed_is_marked_as_typed(void **state)
{
	(void)state;
	begin_case();
	scan(PACK "1");
	end_case(0);
	assert_int_equal(kept_of(EV_CASE_ENDED)->flags & EVENT_KEYED, EVENT_KEYED);
}

static int refused(const char *code)
{
	must_say(scan(code), "nothing was entered");
	return n_kept;
}

static void the_same_refusal_within_a_second_is_stored_once(void **state)
{
	(void)state;
	begin_case();
	assert_int_equal(refused("BTBC999"), 1);
	for (int i = 0; i < 20; i++)
		assert_int_equal(refused("BTBC999"), 0);
	must_say(core.recent[0][0].said, "nothing was entered");
	must_say(core.recent[0][1].said, "CIRC-2"); /* the others still stand there */
	core.refused[0].at.boot_ms -= 1000;
	assert_int_equal(refused("BTBC999"), 1);
	must_say(card(CARD_OFF), "No tourniquet"); /* something else between */
	assert_int_equal(refused("BTBC999"), 1);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
	    TEST(two_codes_of_one_pack_are_one_pack),
	    TEST(the_halves_of_two_scanners_are_not_one_pack),
	    TEST(a_half_is_forgotten_after_half_a_minute),
	    TEST(a_half_that_gives_way_to_others_is_told),
	    TEST(a_pack_of_an_earlier_case_is_refused),
	    TEST(what_was_missing_is_of_its_patient_when_it_is_found),
	    TEST(a_slip_is_seen_once_its_paper_was_made),
	    TEST(each_copy_is_seen_only_once_it_was_made_itself),
	    TEST(of_two_papers_of_a_slip_only_one_goes_into_the_notes),
	    TEST(a_paper_that_the_key_did_not_prove_is_not_ours),
	    TEST(a_paper_that_is_newer_than_the_record_is_never_foreign),
	    TEST(a_paper_of_a_number_that_was_left_out_is_kept_and_no_further_doubt),
	    TEST(a_slip_whose_code_is_typed_says_so),
	    TEST(who_types_guesses_under_many_names_is_one),
	    TEST(a_paper_of_an_earlier_version_is_taken_as_such),
	    TEST(who_guesses_is_not_answered_for_a_minute),
	    TEST(what_is_typed_is_marked_as_typed),
	    TEST(the_same_refusal_within_a_second_is_stored_once),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
