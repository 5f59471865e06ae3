/* The formats of the record: what stands in one is never read otherwise. Texts and lists here are golden: where one of
 * them no longer holds, records would be told otherwise than they were written, and it is the change that is wrong. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "count/held.h"
#include "count/recorded.h"
#include "count/station.h"
#include "record/event-json.h"
#include "record/event-text.h"

/* --- lists ------------------------------------------------------------------------------------------------- */

/* Names in the order of their numbers, from 1. What is new is added at the end. */
static const struct {
	enum event_list list;
	const char *names;
} golden[] = {
    {LIST_BOUND, "spare"},
    {LIST_SLIP_KIND, "reconciliation discrepancy addendum"},
    {LIST_SLIP_STATE, "queued written sent done waiting failed seen"},
    {LIST_CASE_END, "reconciled unresolved cancelled"},
    {LIST_PLACE, "field circulating surgeon charge visitor"},
    {LIST_EVIDENCE, "mark shown"},
    {LIST_CONDITION, "intact cut-complete pieces-missing"},
    {LIST_ON_OFF, "on off"},
    {LIST_LOOKED, "team patient carer colleague nobody"},
    {LIST_COUNT, "initial final handover added"},
    {LIST_DONE, "done not-done"},
    {LIST_YES_NO, "yes no"},
    {LIST_DEBT,
     "count team listing reason maybe-on surgeon-decision added marked-digit visitor-name incident-number "
     "handover expiry-read patient-called-back digit-seen-bare ward-told stores-asked-of-recalls rolls-on"},
    {LIST_QUESTION,
     "off is-on which-off rolls-on right-digit move-to add returned isolate dropped no-code extra found "
     "cancel "
     "who-looked point handover-out handover-in handover-seen handover-agree surgeon-ends incident visitor "
     "leaves field-too visitor-is-surgeon witness counted-in slip-here stored twice listed-already here-now "
     "handover-stays"},
    {LIST_HELD, "card digit badge case-label slip thing tray"},
    {LIST_HELD_ANSWER, "entered thrown meant"},
    {LIST_ROLE, "tourniquet forceps other tray refused needle blade"},
    {LIST_IDENTITY, "pack mark"},
    {LIST_STAFF, "practitioner surgeon charge"},
    {LIST_SETTING,
     "site site-name zone room point search-step first-reminder-min next-reminder-min nobody-min repeat-ms "
     "room-hold-min gap-s burst-ms alive-s look-step both-badges one-by-one earlier-first keep-years "
     "ask-stores"},
    {LIST_HOW, "agreed-aloud agreed-aloud-late named-aloud was-on moved never-here never-on "
               "never-off not-on is-on right-digit other-digit read-aloud improvised "
               "pack-scanned badged-in by-operator by-operator-late surgeon-decided "
               "surgeon-answers name-written entered-after stores-asked no-wound wound not-used"},
    {LIST_END_WHY, "nothing-opened sheet-empty number-owed not-followed"},
    {LIST_INCARNATION, "behind other no-head aside paper"},
    {LIST_RECEIVED, "coded confirmed not-confirmed"},
    {LIST_LABEL, "read spoilt destroyed opened"},
    {LIST_TOOK, "opened returned isolated missing found"},
    {LIST_WRITTEN, "said not-sealed"},
    {LIST_BENCH,
     "receive-what lot expiry how-many so-many typed-by second confirm-what print-what print-many "
     "label-which "
     "box-again issue return-what return-from sealed count-what count-many write-what write-many write-why "
     "quarantine-what quarantine-lot quarantine-why notice release-what release-first release-second found "
     "found-of print-again"},
    {LIST_AWAY, "stopped forced back back-unstopped"},
    {LIST_COUNTED, "with-waiting"},
};

static void every_name_keeps_its_number(void **state)
{
	(void)state;
	assert_int_equal(sizeof golden / sizeof *golden,
	                 LIST_SAYING - 1); /* tests/kept/sayings.txt has those */
	assert_int_equal(LIST_SAYING, EVENT_LISTS - 1);
	for (size_t i = 0; i < sizeof golden / sizeof *golden; i++) {
		char name[40];
		int number = 0, used;
		assert_int_equal(golden[i].list, i + 1);
		for (const char *at = golden[i].names; sscanf(at, "%39s%n", name, &used) == 1; at += used) {
			const char *is = event_list_name(golden[i].list, ++number);
			if (!is || strcmp(is, name) != 0)
				fail_msg("number %d was '%s', is now '%s'", number, name, is ? is : "none");
			assert_int_equal(event_list_number(golden[i].list, name), number);
		}
		if (event_list_name(golden[i].list, number + 1))
			fail_msg("'%s' is new: add it to the list here",
			         event_list_name(golden[i].list, number + 1));
		assert_null(event_list_name(golden[i].list, 0));
		assert_null(event_list_name(golden[i].list, -1));
		assert_int_equal(event_list_number(golden[i].list, ""), -EINVAL);
	}
}

/* The enums themselves, which records of format 1 hold as numbers. */
static void every_enum_keeps_its_numbers(void **state)
{
	(void)state;
#define IS(list, name, value) assert_int_equal(event_list_number(LIST_##list, name), value)
	IS(SLIP_KIND, "addendum", SLIP_ADDENDUM);
	IS(SLIP_STATE, "queued", SLIP_QUEUED);
	IS(SLIP_STATE, "seen", SLIP_SEEN);
	IS(CASE_END, "cancelled", END_CANCELLED);
	IS(PLACE, "visitor", PLACE_VISITOR);
	IS(EVIDENCE, "shown", EVIDENCE_SHOWN);
	IS(CONDITION, "pieces-missing", CONDITION_PIECES_MISSING);
	IS(LOOKED, "nobody", LOOKED_NOBODY);
	IS(COUNT, "added", COUNT_ADDED);
	IS(DEBT, "count", DEBT_COUNT);
	IS(DEBT, "incident-number", DEBT_INCIDENT);
	IS(DEBT, "expiry-read", DEBT_EXPIRY_READ);
	IS(QUESTION, "off", Q_OFF);
	IS(QUESTION, "point", Q_POINT);
	IS(QUESTION, "here-now", Q_HERE_NOW);
	IS(QUESTION, "handover-stays", Q_HANDOVER_STAYS);
	IS(HELD, "tray", HELD_TRAY);
	IS(HELD_ANSWER, "meant", HELD_MEANT);
	IS(ROLE, "refused", ROLE_REFUSED);
	IS(ROLE, "blade", ROLE_BLADE);
	IS(IDENTITY, "mark", IDENTITY_MARK);
	IS(STAFF, "charge", STAFF_CHARGE);
	IS(INCARNATION, "behind", INCARNATION_BEHIND);
	IS(INCARNATION, "aside", INCARNATION_ASIDE);
#undef IS
}

/* Whoever adds a kind says of which enum its fields are, where they are of one. */
static void every_what_is_of_a_list(void **state)
{
	(void)state;
	for (int k = 0; k < EV_KINDS; k++) {
		uint32_t f = event_fields((enum event_kind)k);
		if (f & F_WHAT && !(f >> F_LIST_OF_WHAT & 63))
			fail_msg("%s: what is its 'what'? WHAT_IS(list)", event_name((enum event_kind)k));
	}
}

/* --- texts ------------------------------------------------------------------------------------------------- */

/* As a station of version 0.1.0 wrote them, and the same in format 2. */
static const struct {
	struct event e;
	const char *in_1, *in_2;
} texts[] = {
    {{.kind = EV_OWED, .seq = 7, .case_no = 2, .room = 1, .what = DEBT_EXPIRY_READ, .item = 1},
     "{\"case\":2,\"item\":1,\"kind\":\"owed\",\"room\":1,\"seq\":7,\"v\":1,\"what\":12}",
     "{\"case\":2,\"item\":1,\"kind\":\"owed\",\"room\":1,\"seq\":7,\"v\":2,\"what\":\"expiry-read\"}"},
    {{.kind = EV_ASKED, .seq = 8, .case_no = 2, .what = Q_POINT, .n = 1},
     "{\"case\":2,\"kind\":\"asked\",\"n\":1,\"seq\":8,\"v\":1,\"what\":16}",
     "{\"case\":2,\"kind\":\"asked\",\"n\":1,\"seq\":8,\"v\":2,\"what\":\"point\"}"},
    {{.kind = EV_ASKED, .seq = 8, .case_no = 2},
     "{\"case\":2,\"kind\":\"asked\",\"seq\":8,\"v\":1}",
     "{\"case\":2,\"kind\":\"asked\",\"seq\":8,\"v\":2}"},
    {{.kind = EV_ITEM_SHOWN,
      .seq = 9,
      .item = 1,
      .n = 1,
      .what = EVIDENCE_SHOWN,
      .other = CONDITION_CUT_COMPLETE},
     "{\"item\":1,\"kind\":\"item-shown\",\"n\":1,\"other\":2,\"seq\":9,\"v\":1,\"what\":2}",
     "{\"item\":1,\"kind\":\"item-shown\",\"n\":1,\"other\":\"cut-complete\",\"seq\":9,\"v\":2,"
     "\"what\":\"shown\"}"},
    {{.kind = EV_SLIP_STATE, .seq = 10, .n = 3, .what = SLIP_SEEN, .other = 1},
     "{\"kind\":\"slip-state\",\"n\":3,\"other\":1,\"seq\":10,\"v\":1,\"what\":7}",
     "{\"kind\":\"slip-state\",\"n\":3,\"other\":1,\"seq\":10,\"v\":2,\"what\":\"seen\"}"},
    {{.kind = EV_STAFF_SET, .seq = 11, .staff = {.number = 3, .kind = STAFF_SURGEON, .name = "SURG-3"}},
     "{\"kind\":\"staff-set\",\"seq\":11,\"staff\":{\"kind\":2,\"name\":\"SURG-3\",\"number\":3},\"v\":1}",
     "{\"kind\":\"staff-set\",\"seq\":11,\"staff\":{\"kind\":\"surgeon\",\"name\":\"SURG-3\",\"number\":3},"
     "\"v\":2}"},
    {{.kind = EV_EXTRA, .seq = 12, .thing = {.role = ROLE_FORCEPS, .identity_kind = IDENTITY_MARK}},
     "{\"kind\":\"extra-item\",\"seq\":12,\"thing\":{\"identity_kind\":2,\"role\":2},\"v\":1}",
     "{\"kind\":\"extra-item\",\"seq\":12,\"thing\":{\"identity_kind\":\"mark\",\"role\":\"forceps\"},\"v\":"
     "2}"},
};

static void is_read_and_written(const struct event *e, int format, const char *text)
{
	struct buf out = {0};
	struct event expected = *e, quick, strict;
	struct error why = {0};
	expected.format = (uint8_t)format;
	assert_int_equal(event_read_canonical(&quick, text, strlen(text)), 1);
	if (event_read_strict(&strict, text, strlen(text), &why) < 0)
		fail_msg("%s: %s", text, why.text);
	assert_memory_equal(&quick, &expected, sizeof expected);
	assert_memory_equal(&strict, &expected, sizeof expected);
	assert_int_equal(event_write(&expected, &out), 0);
	assert_string_equal(out.data, text);
	buf_free(&out);
}

static void each_format_is_read_as_what_it_says_and_written_in_its_own(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		is_read_and_written(&texts[i].e, 1, texts[i].in_1);
		is_read_and_written(&texts[i].e, 2, texts[i].in_2);
	}
}

static void what_is_new_is_written_in_the_latest_format(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		struct buf out = {0};
		assert_int_equal(event_write(&texts[i].e, &out), 0);
		assert_string_equal(out.data, texts[i].in_2);
		buf_free(&out);
	}
}

static void a_value_without_a_name_is_read_by_nobody(void **state)
{
	static const struct {
		struct event e;
		const char *field;
	} bad[] = {{{.kind = EV_OWED, .seq = 1, .what = DEBT_KINDS}, "'what'"},
	           {{.kind = EV_ITEM_SHOWN, .seq = 1, .other = -1}, "'other'"},
	           {{.kind = EV_EXTRA, .seq = 1, .thing = {.role = 200}}, "'thing.role'"}};
	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct buf out = {0};
		struct event back;
		struct error why = {0};
		assert_int_equal(event_write(&bad[i].e, &out), 0);
		assert_int_equal(event_read(&back, out.data, out.size, &why), -EINVAL);
		assert_non_null(strstr(why.text, bad[i].field));
		buf_free(&out);
	}
}

/* "v" in a text is no format, nor is what only looks like the key. */
static void only_the_key_says_the_format(void **state)
{
	struct event e = {.kind = EV_REFUSED, .seq = 1}, back;
	struct buf out = {0};
	(void)state;
	snprintf(e.text, sizeof e.text, "%s", ",\"v\":1,v:1,");
	assert_int_equal(event_write(&e, &out), 0);
	assert_int_equal(event_read(&back, out.data, out.size, NULL), 0);
	assert_int_equal(back.format, FORMAT_VERSION);
	assert_string_equal(back.text, e.text);
	buf_free(&out);
}

/* What a kind got later was never written in the first format: there it is no field of its own. */
static void the_first_format_has_only_the_fields_that_it_had(void **state)
{
	static const char text[] =
	    "{\"kind\":\"sign-out-point\",\"n\":1,\"seq\":1,\"text\":\"x\",\"v\":1,\"what\":1}";
	static const char later[] =
	    "{\"kind\":\"sign-out-point\",\"n\":1,\"seq\":1,\"text\":\"x\",\"v\":2,\"what\":\"yes\"}";
	struct event e;
	struct buf again = {0};
	(void)state;
	assert_int_equal(event_read_canonical(&e, text, sizeof text - 1), 0);
	assert_int_equal(event_read_exactly(&e, text, sizeof text - 1, &again, NULL), -EILSEQ);
	assert_int_equal(event_read_exactly(&e, later, sizeof later - 1, &again, NULL), 0);
	assert_string_equal(e.text, "x");
	buf_free(&again);
}

/* A refusal is a name with values. Where it stands in words, as every version before wrote it, those are kept. */
static void a_refusal_is_read_in_words_and_by_name(void **state)
{
	static const char words[] =
	    "{\"kind\":\"refused\",\"seq\":1,\"text\":\"There is no search now.\",\"v\":1}";
	static const char named[] =
	    "{\"kind\":\"refused\",\"said\":{\"case\":41,\"room\":\"Bay 7\",\"saying\":\"case-is-open\"},"
	    "\"seq\":1,\"v\":2}";
	struct event e = {.kind = EV_REFUSED, .seq = 1};
	(void)state;
	snprintf(e.text, sizeof e.text, "There is no search now.");
	is_read_and_written(&e, 1, words);
	e = (struct event){.kind = EV_REFUSED, .seq = 1};
	said_keep(&e.said, SAY(CASE_IS_OPEN, .case_no = 41, .room = "Bay 7"));
	is_read_and_written(&e, 2, named);
}

/* A part that says nothing is not written, so no text with one is canonical; in format 1 there was none. */
static void a_sentence_without_a_name_is_not_canonical(void **state)
{
	static const char *const bad[] = {
	    "{\"kind\":\"refused\",\"said\":{},\"seq\":1,\"v\":2}",
	    "{\"kind\":\"refused\",\"said\":{\"case\":41},\"seq\":1,\"v\":2}",
	    "{\"kind\":\"refused\",\"said\":{\"saying\":\"no-search\"},\"seq\":1,\"v\":1}",
	    "{\"kind\":\"refused\",\"said\":{\"saying\":\"never-heard-of\"},\"seq\":1,\"v\":2}",
	    "{\"kind\":\"stopped\",\"said\":{\"saying\":\"no-search\"},\"seq\":1,\"v\":2}",
	};
	struct buf again = {0};
	struct event e;
	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		assert_int_equal(event_read_canonical(&e, bad[i], strlen(bad[i])), 0);
		assert_true(event_read_exactly(&e, bad[i], strlen(bad[i]), &again, NULL) < 0);
	}
	buf_free(&again);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(every_name_keeps_its_number),
	    cmocka_unit_test(every_enum_keeps_its_numbers),
	    cmocka_unit_test(every_what_is_of_a_list),
	    cmocka_unit_test(each_format_is_read_as_what_it_says_and_written_in_its_own),
	    cmocka_unit_test(what_is_new_is_written_in_the_latest_format),
	    cmocka_unit_test(a_value_without_a_name_is_read_by_nobody),
	    cmocka_unit_test(a_refusal_is_read_in_words_and_by_name),
	    cmocka_unit_test(a_sentence_without_a_name_is_not_canonical),
	    cmocka_unit_test(only_the_key_says_the_format),
	    cmocka_unit_test(the_first_format_has_only_the_fields_that_it_had),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
