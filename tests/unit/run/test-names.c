/* A record of an earlier version may hold names that would be refused today. Its case is counted, and each of its papers is
 * made, all the same. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "labels/paper.h"
#include "run/core.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

#define MARK "\xef\xbf\xbd" /* U+FFFD */
#define TURN "\xe2\x80\xae" /* U+202E */

static struct core core;
static char folder[FOLDER_MAX];

static void store(struct event e)
{
	struct error why = {0};
	if (core_store(&core, &e, 1, &why) < 0)
		fail_msg("%s", why.text);
}

static int setup(void **state)
{
	struct error e = {0};
	static const struct line band = {.key = "GREEN-M",
	                                 .name = "finger tourniquet\n" TURN "green",
	                                 .role = ROLE_TOURNIQUET,
	                                 .codes = {"09506000134352"},
	                                 .marked = 1,
	                                 .visible = 1,
	                                 .single_use = 1,
	                                 .identity = IDENTITY_PACK,
	                                 .per_pack = 1};
	static const struct person people[] = {{1, "SCRUB-1\xe2\x80\x8e", STAFF_PRACTITIONER, 1, 0},
	                                       {2, "CIRC-2\t", STAFF_PRACTITIONER, 1, 0},
	                                       {3, "SURG-3\xef\xbb\xbf", STAFF_SURGEON, 1, 0}};
	(void)state;
	folder_make(folder);
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
	store((struct event){.kind = EV_LINE_SET, .line = band});
	for (size_t i = 0; i < sizeof people / sizeof *people; i++)
		store((struct event){.kind = EV_STAFF_SET, .staff = people[i]});
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static const struct reply *scan(const char *text)
{
	return core_scan(
	    &core,
	    &(struct scan){.scanner = "hand-1", .room = 1, .aim = "", .data = text, .size = strlen(text)});
}

static const char *own(struct own_code code)
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, core.station.site, 3);
	code.room = code.kind == OWN_CARD;
	assert_int_equal(own_code_write(&code, text), 0);
	return scan(text)->said;
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

/* To a final count at which the one tourniquet is not there. */
static void play_to_the_discrepancy(void)
{
	card(CARD_NEW_CASE);
	badge(1);
	badge(2);
	scan("(01)09506000134352(17)330331(10)T26(21)S1");
	badge(2);
	must_say(card(CARD_FINAL_COUNT), "Final count");
	must_say(card(CARD_NO), "NOT THERE");
}

static char *slip(int32_t number, enum slip_kind kind)
{
	struct error e = {0};
	_cleanup_(json_drop) json_t *document = teller_slip(&core, 1, number, kind, 1, &e);
	if (!document || paper_check(document, &e) < 0)
		fail_msg("%s", e.text);
	return json_dumps(document, 0);
}

static void must_stand_there(char *json, const char *words)
{
	json_t *o = json_loads(json, 0, NULL);
	char *all = json_dumps(o, JSON_ENSURE_ASCII), *part = NULL;
	json_t *wanted = json_string(words);
	part = json_dumps(wanted, JSON_ENSURE_ASCII | JSON_ENCODE_ANY);
	part[strlen(part) - 1] = 0;
	if (!strstr(all, part + 1))
		fail_msg("no '%s' in %s", words, all);
	json_decref(o);
	json_decref(wanted);
	free(all);
	free(part);
	free(json);
}

static void the_discrepancy_slip_is_never_kept_back_for_a_name(void **state)
{
	(void)state;
	play_to_the_discrepancy();
	must_stand_there(slip(1, SLIP_DISCREPANCY), "finger tourniquet" MARK MARK "green");
	must_stand_there(slip(1, SLIP_DISCREPANCY), "CIRC-2" MARK);
}

static void the_page_shows_the_name_with_a_mark(void **state)
{
	(void)state;
	play_to_the_discrepancy();
	_cleanup_(json_drop) json_t *view = teller_room(&core, 1);
	must_stand_there(json_dumps(view, 0), "finger tourniquet" MARK MARK "green");
	must_stand_there(json_dumps(view, 0), "SCRUB-1" MARK);
}

/* 150 bytes of the reason stand on the slip, and the last of them begins a letter. */
static void a_reason_that_is_cut_within_a_letter_keeps_no_slip_back(void **state)
{
	char why[EVENT_TEXT_MAX] = "x";
	(void)state;
	play_to_the_discrepancy();
	for (size_t n = 1; n + 2 < sizeof why; n += 2)
		memcpy(why + n, "\xc3\xa9", 3);
	for (int i = 0; i < core.station.policy.n_search; i++) {
		must_say(card(CARD_NOT_DONE), "NOT done");
		must_say(core_typed(&core, 1, why)->said, "is entered");
		card(CARD_NEXT);
	}
	card(CARD_END_UNRESOLVED);
	badge(3);
	must_say(core_typed(&core, 1, "INC-1")->said, "UNRESOLVED");
	must_stand_there(slip(2, SLIP_RECONCILIATION), "because: x\xc3\xa9");
}

static void what_is_typed_is_no_name_with_a_control_character_and_asked_for_again(void **state)
{
	(void)state;
	play_to_the_discrepancy();
	must_say(card(CARD_NOT_DONE), "NOT done");
	const struct reply *r = core_typed(&core, 1, "bins are\nlocked");
	assert_int_equal(r->verdict, VERDICT_REFUSED);
	assert_string_equal(r->said,
	                    "What was typed holds U+000A, a line break, as its character 9: leave it out.");
	must_say(core_typed(&core, 1, "bins are locked")->said, "is entered");
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
	    TEST(the_discrepancy_slip_is_never_kept_back_for_a_name),
	    TEST(the_page_shows_the_name_with_a_mark),
	    TEST(a_reason_that_is_cut_within_a_letter_keeps_no_slip_back),
	    TEST(what_is_typed_is_no_name_with_a_control_character_and_asked_for_again),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
