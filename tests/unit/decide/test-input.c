/* What a barcode is to the count: an item with what is known of it, a tray, one of our own codes, or nothing that is
 * known here. And the catalogue file that says which, line by line. */
#include <errno.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "decide/input.h"

static const char file[] =
    "key,name,role,codes,marked,visible,single_use,identity,rolls_on,xray,per_pack,size_mm,contents,instead\n"
    "GREEN-M,\"finger tourniquet, green, M\",tourniquet,09506000134352,yes,yes,yes,pack,no,no,1,45-60,,\n"
    "ROLL-S,\"roll-on, S\",tourniquet,09506000134376,yes,yes,yes,none,yes,no,1,,,\n"
    "FORCEPS,artery forceps,forceps,8004:9506000FC*,no,no,no,mark,no,yes,1,,,\n"
    "TRAY-HAND,hand tray,tray,tray:000001,no,no,no,none,no,no,1,,FORCEPS*2 ROLL-S*1,\n";

static struct station st;

static int setup(void **state)
{
	struct line *lines = NULL;
	size_t count = 0;
	struct error e = {0};
	(void)state;
	snprintf(st.site, sizeof st.site, "BC");
	if (catalogue_read_csv(file, sizeof file - 1, &lines, &count, &e) < 0)
		fail_msg("%s", e.text);
	for (size_t i = 0; i < count; i++)
		assert_int_equal(catalogue_set(&st.catalogue, &lines[i], &e), 0);
	free(lines);
	return 0;
}

static int teardown(void **state)
{
	(void)state;
	station_deinit(&st);
	return 0;
}

static struct input of(const char *aim, const char *text, const struct batch *batch)
{
	struct input in = {0};
	struct code code;
	struct code_fault fault;
	if (code_read(&code, aim, text, strlen(text), 20261125, &fault) < 0)
		input_from_fault(&in, &fault);
	else
		input_from_code(&in, &st, &code, batch);
	return in;
}

static struct input of_own(struct own_code own, const struct batch *batch)
{
	char text[OWN_CODE_MAX];
	if (!own.site[0])
		memcpy(own.site, "BC", 3);
	assert_int_equal(own_code_write(&own, text), 0);
	if (own.kind != OWN_ITEM)
		return of("", text, batch);
	char whole[OWN_CODE_MAX + 2];
	snprintf(whole, sizeof whole, "91%s", text);
	return of("]d2", whole, batch);
}

static void a_pack_is_its_line_with_lot_date_and_number(void **state)
{
	(void)state;
	struct input in = of("", "(01)09506000134352(17)280331(10)T26(21)S1", NULL);
	assert_int_equal(in.act, ACT_THING);
	assert_ptr_equal(in.line, catalogue_by_key(&st.catalogue, "GREEN-M"));
	assert_string_equal(in.thing.line, "GREEN-M");
	assert_string_equal(in.thing.name, "finger tourniquet, green, M");
	assert_string_equal(in.thing.identity, "09506000134352:S1");
	assert_string_equal(in.thing.lot, "T26");
	assert_int_equal(in.thing.expiry, 20280331);
	assert_int_equal(in.thing.role, ROLE_TOURNIQUET);
	assert_int_equal(in.thing.identity_kind, IDENTITY_PACK);
	assert_int_equal(in.thing.single_use, 1);
	assert_int_equal(in.thing.rolls_on, 0);
	assert_int_equal(in.thing.shows_on_xray, 0);
}

static void what_bears_no_number_has_no_identity_and_a_number_is_one(void **state)
{
	(void)state;
	struct input in = of("", "(01)09506000134352(10)T26", NULL);
	assert_string_equal(in.thing.identity, "");
	assert_int_equal(in.thing.identity_kind, IDENTITY_NONE);
	in = of("", "(01)09506000134376(21)7", NULL); /* the catalogue does not speak of it */
	assert_string_equal(in.thing.identity, "09506000134376:7");
	assert_int_equal(in.thing.identity_kind, IDENTITY_PACK);
	assert_int_equal(in.thing.rolls_on, 1);
}

static void a_mark_is_the_item_itself(void **state)
{
	(void)state;
	struct input in = of("", "(8004)9506000FC7", NULL);
	assert_int_equal(in.act, ACT_THING);
	assert_string_equal(in.thing.identity, "8004:9506000FC7");
	assert_int_equal(in.thing.identity_kind, IDENTITY_MARK);
	assert_int_equal(in.thing.single_use, 0);
	assert_int_equal(in.thing.shows_on_xray, 1);
}

static void a_tray_is_its_list(void **state)
{
	(void)state;
	struct input in = of_own((struct own_code){.kind = OWN_TRAY, .number = 1}, NULL);
	assert_int_equal(in.act, ACT_TRAY);
	assert_ptr_equal(in.parts[0], catalogue_by_key(&st.catalogue, "FORCEPS"));
	assert_ptr_equal(in.parts[1], catalogue_by_key(&st.catalogue, "ROLL-S"));
	assert_null(in.parts[2]);
	in = of_own((struct own_code){.kind = OWN_TRAY, .number = 2}, NULL);
	assert_int_equal(in.act, ACT_UNKNOWN);
	assert_int_equal(in.what, SAY_CODE_OF_TRAY);
	assert_int_equal(in.number, 2);
}

static void a_label_of_stores_is_what_its_batch_says(void **state)
{
	(void)state;
	static const struct batch batch = {
	    .line = "FORCEPS", .lot = "L9", .expiry = 20270101, .first = 1, .last = 9};
	struct own_code label = {.kind = OWN_ITEM, .role = 'P', .number = 5};
	struct input in = of_own(label, &batch);
	assert_int_equal(in.act, ACT_THING);
	assert_string_equal(in.thing.identity, "item:00000005");
	assert_string_equal(in.thing.lot, "L9");
	assert_int_equal(in.thing.expiry, 20270101);
	assert_int_equal(in.thing.identity_kind, IDENTITY_PACK); /* the label is on the wrapper */
	in = of_own(label, NULL);
	assert_int_equal(in.act, ACT_UNKNOWN);
	assert_int_equal(in.what, SAY_CODE_OF_STORES);
	assert_int_equal(in.number, 5);
}

static void our_own_codes_are_what_they_say(void **state)
{
	(void)state;
	struct input in = of_own((struct own_code){.kind = OWN_CARD, .room = 2, .meaning = CARD_OFF}, NULL);
	assert_int_equal(in.act, ACT_CARD);
	assert_int_equal(in.card, CARD_OFF);
	assert_int_equal(in.card_room, 2);
	in = of_own((struct own_code){.kind = OWN_CARD, .room = 2, .meaning = 999}, NULL);
	assert_int_equal(in.act, ACT_UNKNOWN);
	assert_int_equal(in.what, SAY_CODE_OF_NO_CARD);
	assert_int_equal(in.card, 999);
	in = of_own((struct own_code){.kind = OWN_DIGIT, .room = 1, .digit = 24}, NULL);
	assert_int_equal(in.act, ACT_DIGIT);
	assert_int_equal(in.digit, 24);
	in = of_own((struct own_code){.kind = OWN_BADGE, .number = 7}, NULL);
	assert_int_equal(in.act, ACT_BADGE);
	assert_int_equal(in.number, 7);
	in = of_own((struct own_code){.kind = OWN_SLIP, .number = 41, .copy = 2, .old = true}, NULL);
	assert_int_equal(in.act, ACT_SLIP);
	assert_int_equal(in.number, 41);
	assert_int_equal(in.copy, 2);
	in = of_own((struct own_code){.kind = OWN_CASE, .number = 9}, NULL);
	assert_int_equal(in.act, ACT_CASE_LABEL);
	in = of_own((struct own_code){.kind = OWN_SCANNER_CHECK, .number = 1}, NULL);
	assert_int_equal(in.act, ACT_UNKNOWN);
	assert_int_equal(in.what, SAY_CODE_OF_CHECK);
}

static void what_is_not_of_here_is_told_apart(void **state)
{
	(void)state;
	struct own_code other = {.kind = OWN_BADGE, .site = "CD", .number = 7};
	struct input in = of_own(other, NULL);
	assert_int_equal(in.act, ACT_FOREIGN);
	assert_string_equal(in.text, "CD");
	in = of("", "(01)00614141123452", NULL);
	assert_int_equal(in.act, ACT_UNKNOWN);
	assert_int_equal(in.what, SAY_NONE);
	assert_string_equal(in.text, "(01)00614141123452");
	in = of("", "(17)280331(10)T26", NULL);
	assert_int_equal(in.act, ACT_HALF);
	assert_non_null(strstr(in.text, "needs (01)"));
	in = of("]d2", "8018061414112345678902", NULL);
	assert_int_equal(in.act, ACT_PATIENT);
	assert_string_equal(in.text, "");
	in = of("", "(01)09506000134353", NULL);
	assert_int_equal(in.act, ACT_BROKEN);
	assert_string_not_equal(in.text, "");
}

/* Whatever it stands for: nothing of it is looked up, and no card of the room is meant. */
static void a_code_of_the_practice_set_is_none_of_this_rooms(void **state)
{
	(void)state;
	static const struct own_code set[] = {
	    {.kind = OWN_CARD, .practice = true, .room = 1, .meaning = CARD_OFF},
	    {.kind = OWN_DIGIT, .practice = true, .room = 1, .digit = 2},
	    {.kind = OWN_BADGE, .practice = true, .number = 7},
	    {.kind = OWN_TRAY, .practice = true, .number = 1}};
	for (size_t i = 0; i < sizeof set / sizeof *set; i++) {
		struct input in = of_own(set[i], NULL);
		assert_int_equal(in.act, ACT_FOREIGN);
		assert_int_equal(in.what, SAY_SCAN_OF_PRACTICE);
		assert_string_equal(in.text, "");
		assert_int_equal(in.card, 0);
		assert_int_equal(in.digit, 0);
		assert_null(in.line);
	}
}

/* Its number may be another thing here: it is named, and not looked up. */
static void a_label_of_another_station_is_not_ours(void **state)
{
	(void)state;
	static const struct batch batch = {.line = "FORCEPS", .lot = "L9", .first = 1, .last = 9};
	struct own_code labels[] = {{.kind = OWN_ITEM, .role = 'P', .number = 5, .station = 7},
	                            {.kind = OWN_CASE, .number = 9, .station = 7},
	                            {.kind = OWN_SLIP, .number = 41, .copy = 1, .proof = 1, .station = 7}};
	struct own_code old = {.kind = OWN_ITEM, .role = 'P', .number = 5, .old = true};
	for (size_t i = 0; i < sizeof labels / sizeof *labels; i++) {
		struct input in = of_own(labels[i], i ? &batch : NULL);
		assert_int_equal(in.act, ACT_FOREIGN);
		assert_string_equal(in.text, "");
		assert_int_equal(in.number, 7);
		assert_string_equal(in.thing.identity, "");
	}
	/* but a label that its station's list names is what that says, and not the one of that number here */
	struct input listed = of_own(labels[0], &batch);
	assert_int_equal(listed.act, ACT_THING);
	assert_string_equal(listed.thing.lot, "L9");
	assert_string_equal(listed.thing.identity, "item-of-07:00000005");
	assert_int_equal(of_own(old, &batch).act, ACT_THING);
	st.number = 7;
	for (size_t i = 0; i < sizeof labels / sizeof *labels; i++)
		assert_int_not_equal(of_own(labels[i], &batch).act, ACT_FOREIGN);
	struct input in = of_own(old, NULL); /* without a number it is of the first */
	assert_string_equal(in.text, "");
	assert_int_equal(in.number, 0);
	in = of_own((struct own_code){.kind = OWN_BADGE, .number = 7},
	            NULL); /* of the hospital, as cards are */
	assert_int_equal(in.act, ACT_BADGE);
	st.number = 0;
}

/* --- the file ---------------------------------------------------------------------------------- */

static void a_catalogue_reads_back_as_it_was_written(void **state)
{
	(void)state;
	struct buf out = {0};
	assert_int_equal(catalogue_write_csv(&st.catalogue, &out), 0);
	struct line *lines = NULL;
	size_t count = 0;
	struct error e = {0};
	assert_int_equal(catalogue_read_csv(out.data, out.size, &lines, &count, &e), 0);
	assert_int_equal(count, st.catalogue.count);
	for (size_t i = 0; i < count; i++)
		assert_memory_equal(&lines[i], &st.catalogue.lines[i], sizeof *lines);
	free(lines);
	buf_free(&out);
}

static void a_file_that_is_not_right_is_refused_by_its_line(void **state)
{
	(void)state;
	static const struct {
		const char *text, *line;
	} bad[] = {
	    {"key,name\nA,a\n", ""}, /* a column is missing */
	    {"key,name,role,nothing\nA,a,other,1\n", ""},
	    {"key,name,role,codes\nA,a,other,1\nA,b,other,2\n", "3"},
	    {"key,name,role,codes\nA,a,nonsense,1\n", "2"},
	    {"key,name,role,codes,per_pack\nA,a,other,1,0\n", "2"},
	    {"key,name,role,codes,per_pack\nA,a,other,1,501\n", "2"},
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct line *lines = NULL;
		size_t count = 0;
		struct error e = {0};
		if (catalogue_read_csv(bad[i].text, strlen(bad[i].text), &lines, &count, &e) >= 0)
			fail_msg("taken: %s", bad[i].text);
		if (!strstr(e.text, bad[i].line))
			fail_msg("line %s is not named: %s", bad[i].line, e.text);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_pack_is_its_line_with_lot_date_and_number),
	    cmocka_unit_test(what_bears_no_number_has_no_identity_and_a_number_is_one),
	    cmocka_unit_test(a_mark_is_the_item_itself),
	    cmocka_unit_test(a_tray_is_its_list),
	    cmocka_unit_test(a_label_of_stores_is_what_its_batch_says),
	    cmocka_unit_test(our_own_codes_are_what_they_say),
	    cmocka_unit_test(what_is_not_of_here_is_told_apart),
	    cmocka_unit_test(a_code_of_the_practice_set_is_none_of_this_rooms),
	    cmocka_unit_test(a_label_of_another_station_is_not_ours),
	    cmocka_unit_test(a_catalogue_reads_back_as_it_was_written),
	    cmocka_unit_test(a_file_that_is_not_right_is_refused_by_its_line),
	};
	return cmocka_run_group_tests(tests, setup, teardown);
}
