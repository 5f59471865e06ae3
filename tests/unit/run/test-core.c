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
	core.halves[0].at.boot_ms -= 30001;
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
			core.halves[i].at.boot_ms -= HALVES_MAX - i; /* s0 waits longest */
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
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = 1, .old = true}),
	         "entered for case 1");
	assert_int_equal(kept_of(EV_FOUND_AFTER)->case_no, 1);
}

static void a_slip_is_found_again_in_the_record(void **state)
{
	(void)state;
	begin_case();
	scan(PACK "1");
	end_case(1);
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = 1, .old = true}),
	         "was not printed yet");
	slip_is_written(1);
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = 2, .old = true}),
	         "has no copy 2");
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = 1, .old = true}), "of case 1");
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 1, .copy = 2, .old = true}),
	         "was seen before");
	must_say(own((struct own_code){.kind = OWN_SLIP, .number = 9, .copy = 1, .old = true}),
	         "not of this station");
}

static void what_is_typed_is_marked_as_typed(void **state)
{
	(void)state;
	begin_case();
	scan(PACK "1");
	end_case(0);
	assert_int_equal(kept_of(EV_CASE_ENDED)->flags & EVENT_KEYED, EVENT_KEYED);
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
	    TEST(a_slip_is_found_again_in_the_record),
	    TEST(what_is_typed_is_marked_as_typed),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
