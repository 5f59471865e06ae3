/* A slip is a function of the record: whatever became of settings, people and the case since, a further copy says what the
 * first said (rule 25). */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>

#include "code/own-codes.h"
#include "record/keys.h"
#include "run/core.h"
#include "run/teller.h"
#include "tests/unit/record/folder.h"

#define PACK "(01)09506000134352(17)330331(10)T26(21)S1"

static struct core core;
static char folder[FOLDER_MAX];

static void write_file(const char *name, const char *text)
{
	char path[FOLDER_MAX + 32];
	snprintf(path, sizeof path, "%s/%s", folder, name);
	FILE *f = fopen(path, "we");
	assert_non_null(f);
	assert_true(fputs(text, f) >= 0);
	assert_int_equal(fclose(f), 0);
}

static void start(void)
{
	struct error e = {0};
	if (core_open(&core, folder, &e) < 0)
		fail_msg("%s", e.text);
	assert_string_equal(core.settings_fault, "");
}

static void store(struct event e)
{
	struct error why = {0};
	if (core_store(&core, &e, 1, &why) < 0)
		fail_msg("%s", why.text);
}

static void set_up_people(const char *scrub, const char *circulating, const char *surgeon)
{
	const struct {
		int number;
		const char *name;
		enum staff_kind kind;
	} people[] = {{1, scrub, STAFF_PRACTITIONER},
	              {2, circulating, STAFF_PRACTITIONER},
	              {3, surgeon, STAFF_SURGEON}};
	for (size_t i = 0; i < sizeof people / sizeof *people; i++) {
		struct event e = {
		    .kind = EV_STAFF_SET,
		    .staff = {.number = people[i].number, .kind = (uint8_t)people[i].kind, .registered = 1}};
		snprintf(e.staff.name, sizeof e.staff.name, "%s", people[i].name);
		store(e);
	}
}

static int setup(void **state)
{
	struct event line = {.kind = EV_LINE_SET,
	                     .line = {.key = "GREEN-M",
	                              .name = "finger tourniquet, green, M",
	                              .role = ROLE_TOURNIQUET,
	                              .identity = IDENTITY_PACK,
	                              .marked = 1,
	                              .visible = 1,
	                              .single_use = 1,
	                              .per_pack = 1,
	                              .codes = {"09506000134352"}}};
	(void)state;
	folder_make(folder);
	write_file("station.ini",
	           "[site]\nletters = BC\nname = Example Hand Unit\n[room 1]\nname = Theatre 1\n");
	write_file("policy.ini", "[scans]\nrepeat_ms = 0\n");
	start();
	store(line);
	set_up_people("SCRUB-1", "CIRC-2", "SURG-3");
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	core_close(&core);
	folder_remove(folder);
	return 0;
}

static void scan(const char *text, const char *must_say)
{
	const char *said =
	    core_scan(
	        &core,
	        &(struct scan){.scanner = "hand-1", .room = 1, .aim = "", .data = text, .size = strlen(text)})
	        ->said;
	if (!strstr(said, must_say))
		fail_msg("not '%s': %s", must_say, said);
}

static void own(struct own_code code, const char *must_say)
{
	char text[OWN_CODE_MAX];
	memcpy(code.site, core.station.site, 3);
	code.room = code.kind == OWN_CARD || code.kind == OWN_DIGIT;
	assert_int_equal(own_code_write(&code, text), 0);
	scan(text, must_say);
}

static void card(int meaning, const char *must_say)
{
	own((struct own_code){.kind = OWN_CARD, .meaning = meaning}, must_say);
}

static void badge(int number, const char *must_say)
{
	own((struct own_code){.kind = OWN_BADGE, .number = number}, must_say);
}

static void digit(const char *must_say)
{
	own((struct own_code){.kind = OWN_DIGIT, .digit = 2}, must_say);
}

static json_t *copy_of(int32_t slip, enum slip_kind kind, int copy)
{
	struct error e = {0};
	json_t *document = teller_slip(&core, 1, slip, kind, copy, &e);
	if (!document)
		fail_msg("%s", e.text);
	return document;
}

/* --- a case, and what became of everything ---------------------------------------------------------------- */

static json_t *first[4]; /* the first copy of each slip, at the moment at which it was queued */
static const enum slip_kind kinds[] = {0, SLIP_DISCREPANCY, SLIP_RECONCILIATION, SLIP_ADDENDUM};

static void note(int32_t slip)
{
	assert_int_equal(core.station.last_slip_no, slip);
	first[slip] = copy_of(slip, kinds[slip], 1);
}

static void play_a_case(void)
{
	card(CARD_NEW_CASE, "opened");
	badge(1, "at the field");
	badge(2, "circulating");
	scan(PACK, "Counted in");
	badge(2, "agreed aloud");
	digit("Tourniquet on");
	card(CARD_OFF, "Off");
	card(CARD_FINAL_COUNT, "Final count");
	card(CARD_NO, "NOT THERE");
	note(1);
	card(CARD_STEP_DONE, "done");
	card(CARD_FOUND, "");
	card(CARD_INTACT, "");
	badge(2, "agreed aloud");
	digit("seen bare");
	badge(3, "ended reconciled");
	note(2);
	assert_non_null(strstr(core_typed(&core, 1, "case 1: it was the left hand")->said, "Correction"));
	note(3);
}

static void drop(void)
{
	for (size_t i = 0; i < sizeof first / sizeof *first; i++) {
		json_decref(first[i]);
		first[i] = NULL;
	}
}

/* What a further copy may say otherwise. */
static char *in_words(const json_t *document)
{
	static const char *const of_the_copy[] = {"copy", "code", "time", "version", "jws"};
	_cleanup_(json_drop) json_t *rest = json_deep_copy(document);
	for (size_t i = 0; i < sizeof of_the_copy / sizeof *of_the_copy; i++)
		json_object_del(rest, of_the_copy[i]);
	return json_dumps(rest, JSON_SORT_KEYS | JSON_COMPACT);
}

static void must_be_the_same_but_for_its_copy(int32_t slip)
{
	_cleanup_(json_drop) json_t *again = copy_of(slip, kinds[slip], 2);
	char *then = in_words(first[slip]), *now = in_words(again);
	assert_string_equal(then, now);
	free(then);
	free(now);
	assert_int_equal(json_number(again, "copy", 0), 2);
}

static void all_must_be_the_same_but_for_their_copy(void)
{
	for (int32_t slip = 1; slip <= 3; slip++)
		must_be_the_same_but_for_its_copy(slip);
}

/* What is signed names the slip's own event, and its hash. */
static void must_be_signed_under_its_own_event(int32_t slip, int copy)
{
	char key[FOLDER_MAX + 32], hex[2 * CHAIN_BYTES + 1];
	struct error e = {0};
	struct chain chain;
	_cleanup_(json_drop) json_t *document = copy_of(slip, kinds[slip], copy), *payload = NULL;
	snprintf(key, sizeof key, "%s/station.pub.json", folder);
	assert_int_equal(seal_check(key, json_text(document, "jws"), &payload, &e), 1);
	int64_t seq = json_number(payload, "seq", 0);
	assert_int_equal(record_chain_at(core.record, seq, &chain, &e), 0);
	chain_hex(&chain, hex);
	assert_string_equal(json_text(payload, "chain"), hex);
	assert_int_equal(json_number(payload, "slip", 0), slip);
	assert_int_equal(json_number(payload, "copy", 0), copy);
	assert_true(seq < record_last(core.record, NULL));
}

/* What a row of the paper says, "" without it. */
static const char *row(const json_t *slip, const char *label)
{
	size_t i;
	const json_t *r;
	json_array_foreach(json_object_get(slip, "rows"), i, r)
	{
		if (strcmp(json_text(r, "label"), label) == 0)
			return json_text(r, "says");
	}
	return "";
}

static void what_came_later_is_on_no_earlier_paper(void **state)
{
	(void)state;
	play_a_case();
	assert_string_equal(row(first[1], "Corrected"), "");
	all_must_be_the_same_but_for_their_copy();
	core_typed(&core, 1, "case 1: once more");
	store((struct event){
	    .kind = EV_SLIP_STATE, .case_no = 1, .room = 1, .n = 2, .what = SLIP_SEEN, .other = 1});
	all_must_be_the_same_but_for_their_copy();
	for (int32_t slip = 1; slip <= 3; slip++)
		for (int copy = 1; copy <= 2; copy++)
			must_be_signed_under_its_own_event(slip, copy);
	drop();
}

static void other_people_and_settings_change_no_paper(void **state)
{
	(void)state;
	play_a_case();
	set_up_people("NEW-1", "NEW-2", "NEW-3");
	store((struct event){.kind = EV_STAFF_WITHDRAWN, .person = 3});
	all_must_be_the_same_but_for_their_copy();
	core_close(&core);
	write_file("station.ini", "[site]\nletters = BC\nname = Another Unit\n[room 1]\nname = Bay 7\n");
	write_file("policy.ini", "[scans]\nrepeat_ms = 0\n"
	                         "[sign-out points]\n1 = The relatives were telephoned.\n"
	                         "[search]\n1 = look everywhere\n");
	start();
	all_must_be_the_same_but_for_their_copy();
	core_close(&core);
	write_file("station.ini", "[site]\nletters = BC\nname = A third\n[room 4]\nname = Bay 4\n");
	start();
	all_must_be_the_same_but_for_their_copy();
	drop();
}

/* So that the tests above compare something: what stood then is on the paper, and what stands now on the next. */
static void what_stood_then_is_on_the_paper(void **state)
{
	(void)state;
	play_a_case();
	assert_non_null(strstr(row(first[2], "Sign-out"), "all 5 points yes, SURG-3"));
	assert_true(*json_text(first[1], "version"));
	assert_string_equal(json_text(first[1], "room"), "Theatre 1");
	assert_string_equal(json_text(first[1], "site"), "Example Hand Unit");
	const json_t *search = json_object_get(first[1], "search");
	assert_int_equal(json_array_size(json_object_get(search, "steps")), core.station.policy.n_search);
	core_close(&core);
	write_file("station.ini", "[site]\nletters = BC\nname = Another Unit\n[room 1]\nname = Bay 7\n");
	start();
	set_up_people("NEW-1", "NEW-2", "NEW-3");
	core_typed(&core, 1, "case 1: once more");
	_cleanup_(json_drop) json_t *next = copy_of(4, SLIP_ADDENDUM, 1);
	assert_string_equal(json_text(next, "room"), "Bay 7");
	assert_string_equal(json_text(next, "site"), "Another Unit");
	assert_non_null(
	    strstr(json_text(json_array_get(json_object_get(next, "amiss"), 1), "text"), "once more"));
	drop();
}

static int is_setting(void *context, const struct event *e)
{
	*(int *)context += e->kind == EV_SETTING;
	return 0;
}

static int settings_recorded(void)
{
	struct error e = {0};
	int n = 0;
	assert_int_equal(record_each_setting(core.record, is_setting, &n, &e), 0);
	return n;
}

static void each_start_records_what_is_otherwise(void **state)
{
	(void)state;
	int at_first = settings_recorded();
	assert_true(at_first > 30);
	core_close(&core);
	start();
	assert_int_equal(settings_recorded(), at_first);
	core_close(&core);
	write_file("policy.ini", "[scans]\nrepeat_ms = 0\n[reminders]\nfirst_reminder_min = 15\n");
	start();
	assert_int_equal(settings_recorded(), at_first + 1);
}

static void a_slip_of_another_case_is_not_told_of_this_one(void **state)
{
	struct error e = {0};
	(void)state;
	play_a_case();
	assert_null(teller_slip(&core, 1, 9, SLIP_ADDENDUM, 1, &e));
	assert_non_null(strstr(e.text, "slip 9 is not of case 1: "));
	_cleanup_(json_drop) json_t *shown = teller_case(&core, 1, &e);
	assert_non_null(shown);
	assert_null(json_object_get(shown, "slip"));
	assert_null(json_object_get(shown, "jws"));
	assert_non_null(strstr(row(shown, "Corrected"), "it was the left hand"));
	drop();
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, setup, teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
	    TEST(what_came_later_is_on_no_earlier_paper),
	    TEST(other_people_and_settings_change_no_paper),
	    TEST(what_stood_then_is_on_the_paper),
	    TEST(each_start_records_what_is_otherwise),
	    TEST(a_slip_of_another_case_is_not_told_of_this_one),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
