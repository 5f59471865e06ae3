/* The front: which kind a scan is, what counting gets from it, what is refused and what is never kept. */
#include "cmocka-all.h"

#include <errno.h>
#include <stdio.h>

#include "code/check-digit.h"
#include "code/code.h"

static struct code code;
static struct code_fault fault;

static void reads_bytes(const char *aim, const void *data, size_t size)
{
	fault = (struct code_fault){0, ""};
	if (code_read(&code, aim, data, size, TODAY, &fault) < 0)
		fail_msg("'%s' refused at %zu: %s", (const char *)data, fault.at, fault.why);
}

static void reads(const char *aim, const char *text)
{
	reads_bytes(aim, text, strlen(text));
}

static void refuses_bytes(const char *aim, const void *data, size_t size, size_t at, const char *word)
{
	fault = (struct code_fault){0, ""};
	if (code_read(&code, aim, data, size, TODAY, &fault) == 0)
		fail_msg("accepted as %s", code_kind_name(code.kind));
	assert_int_equal(fault.at, at);
	if (!strstr(fault.why, word))
		fail_msg("'%s' does not say '%s'", fault.why, word);
	assert_non_null(strstr(fault.why, ": ")); /* why: what to do */
	assert_int_equal(code.count, 0);          /* nothing half-read is left for counting */
	assert_string_equal(code.product, "");
}

static void refuses(const char *aim, const char *text, size_t at, const char *word)
{
	refuses_bytes(aim, text, strlen(text), at, word);
}

static void a_pack_with_everything_in_one_symbol(void **state)
{
	(void)state;
	reads("]d2", "010950600013435217270300"
	             "10ABC123\x1d"
	             "21S-1");
	assert_int_equal(code.kind, CODE_GS1);
	assert_int_equal(code.carrier, CARRIER_GS1);
	assert_string_equal(code.product, "09506000134352");
	assert_string_equal(code.lot, "ABC123");
	assert_string_equal(code.serial, "S-1");
	assert_int_equal(code.expiry, 20270331); /* day 00: the last day of the month */
	assert_string_equal(code.wants, "");
	assert_int_equal(code.elements[2].at, 26);
	/* HL7 FHIR's device example, as its carrier has it */
	reads("", "(01)00844588003288(17)141120(10)7654321D(21)10987654d321");
	assert_string_equal(code.product, "00844588003288");
	assert_int_equal(code.expiry, 20141120);
	assert_string_equal(code.serial, "10987654d321");
}

static void the_last_day_of_february_knows_leap_years(void **state)
{
	(void)state;
	reads("]C1", "17280200");
	assert_int_equal(code.expiry, 20280229);
	reads("]C1", "17270200");
	assert_int_equal(code.expiry, 20270228);
	refuses("]C1", "17270229", 6, "no day 29");
	refuses("]C1", "17271301", 4, "no month 13");
}

/* GS1 General Specifications, century: 51 or more ahead is the last century, 50 or more behind the next. */
static void the_century_is_the_nearest(void **state)
{
	(void)state;
	static const struct {
		int32_t today;
		const char *text;
		int32_t expiry;
	} facts[] = {
	    {20260101, "17760101", 20760101}, {20260101, "17770101", 19770101},
	    {20260101, "17990101", 19990101}, {20600101, "17100101", 21100101},
	    {20600101, "17110101", 20110101}, {19990101, "17030101", 20030101},
	};
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		assert_int_equal(code_read(&code, "]C1", facts[i].text, 8, facts[i].today, NULL), 0);
		assert_int_equal(code.expiry, facts[i].expiry);
	}
}

static void trade_items_are_fourteen_digits_whatever_the_symbol(void **state)
{
	(void)state;
	static const struct {
		const char *aim, *text, *gtin;
	} facts[] = {
	    {"]E0", "4006381333931", "04006381333931"}, {"]E0", "036000291452", "00036000291452"},
	    {"]E4", "96385074", "00000096385074"},      {"]I1", "10614141123459", "10614141123459"},
	    {"]I3", "1061414112345", "10614141123459"}, {"]E3", "400638133393112", "04006381333931"},
	    {"", "9506000134352", "09506000134352"},    {"", "]E09506000134352", "09506000134352"},
	};
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		reads(facts[i].aim, facts[i].text);
		assert_int_equal(code.kind, CODE_TRADE_ITEM);
		assert_string_equal(code.product, facts[i].gtin);
	}
	refuses("]E0", "4006381333932", 12, "should be 1");
	refuses("]E4", "9638507", 7, "8 digits");
	refuses("", "]E04006381333932", 15, "should be 1");
	refuses("", "9506000134351", 12, "should be 2");
	/* Eight digits with a wrong check digit may be anybody's number, and so may 13 in a Code 128. */
	reads("", "12345678");
	assert_int_equal(code.kind, CODE_PLAIN);
	reads("", "036000291453");
	assert_int_equal(code.kind, CODE_PLAIN);
	reads("]C0", "9506000134351");
	assert_int_equal(code.kind, CODE_PLAIN);
}

static void without_an_aim_identifier_the_kind_is_found_with_care(void **state)
{
	(void)state;
	static const struct {
		const char *text;
		enum code_kind kind;
	} facts[] = {
	    {"BTBC10104051", CODE_OWN},
	    {"+A999123457", CODE_HIBC},
	    {"01095060001343521727033110ABC", CODE_GS1},
	    {"(01)09506000134352", CODE_GS1},
	    {"10ABC\x1d"
	     "17270331",
	     CODE_GS1},
	    {"1727033110ABC", CODE_GS1},       /* second symbol of a pack */
	    {"8004061414112345400", CODE_GS1}, /* EPC Tag Data Standard's GIAI example */
	    {"8017061414112345678902", CODE_GS1},
	    {"91PBC0000000157", CODE_OWN},
	    {"PBC0000000157", CODE_OWN}, /* keyed from the text beside the symbol */
	    {"10ABC123", CODE_PLAIN},    /* could be anybody's own number */
	    {"2112345", CODE_PLAIN},
	    {"FORCEPS 12", CODE_PLAIN},
	    {"https://example.com/packs/12", CODE_PLAIN},
	    {"https://id.gs1.org/01/09506000134352/10/ABC?17=270331", CODE_GS1},
	};
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++) {
		reads("", facts[i].text);
		if (code.kind != facts[i].kind)
			fail_msg("'%s' is %s", facts[i].text, code_kind_name(code.kind));
	}
}

static void ours_may_be_typed_as_it_stands_on_paper(void **state)
{
	(void)state;
	static const char *const typed[] = {"PBC0 0000 0015 7",    "PBC 0000 0001 57",
	                                    "91 PBC 0000 0001 57", "(91) pbc 0000 0001 57",
	                                    "91PBC0000000157",     " PBC0000000157 "};
	char shown[OWN_CODE_SHOWN_MAX];
	for (size_t i = 0; i < sizeof typed / sizeof *typed; i++) {
		reads("", typed[i]);
		assert_int_equal(code.kind, CODE_OWN);
		assert_int_equal(code.own.number, 1);
	}
	own_code_shown("BTBC10104051", shown);
	assert_string_equal(shown, "BTBC 1010 4051");
	reads("", shown);
	assert_int_equal(code.own.meaning, CARD_OFF);
	own_code_shown("FORCEPS 12", shown);
	assert_string_equal(shown, "");
	refuses("", "PBC 0000 0001 58", 14, "check digits"); /* where it is wrong as it was typed */
	reads("", "FORCEPS 12 BTBC10104051");                /* words with a code behind them are words */
	assert_int_equal(code.kind, CODE_PLAIN);
}

static void what_announces_itself_and_is_wrong_is_an_error(void **state)
{
	(void)state;
	refuses("]d2", "010950600013435110ABC", 15, "check digit");
	refuses("", "(01)09506000134351", 17, "check digit");
	refuses("", "010950600013435110ABC", 15, "check digit");
	refuses("", "91PBC0000000158", 13, "check digits");
	refuses("", "+A999123458", 10, "should be '7'");
	refuses("", "+A123BJC5D6E71H", 14, "should be 'G'"); /* public test suite's negative */
	refuses("]C1", "01095060001343", 14, "cut short");
	refuses("]C1", "", 0, "empty");
	refuses("", "]C1", 3, "empty");
	refuses("]C1", "HELLO", 0, "identifier");
	refuses("]C1",
	        "0109506000134352"
	        "89X",
	        16, "89");
	refuses("]C1",
	        "0109506000134352"
	        "1",
	        16, "inside");
	refuses("]d2",
	        "0109506000134352\x1d"
	        "10A(01)09506000134352 ",
	        38, "byte 0x20");
	refuses("]C1",
	        "0109506000134352"
	        "0209506000134352",
	        18, "exclude");
	refuses("]C1",
	        "0109506000134352"
	        "10A\x1d"
	        "10B",
	        22, "twice");
	refuses("]E1", "12", 0, "add-on");
	refuses("]A4", "a123BJC5D6E71G", 0, "Full ASCII"); /* +A123… as a scanner in that mode sends it */
}

static void a_lost_separator_is_named_as_what_it_is(void **state)
{
	(void)state;
	/* 10ABC123 and 2100000000000047 without the GS between them: a 'lot' of 24. */
	refuses("]C1",
	        "0109506000134352"
	        "10ABC123"
	        "210000000000004711",
	        38, "drop separators");
}

static void hostile_bytes_get_one_sentence(void **state)
{
	(void)state;
	static char big[5000];
	memset(big, '1', sizeof big);
	refuses_bytes("", big, sizeof big, CODE_BYTES_MAX, "5000 bytes");
	refuses_bytes("]C1", big, sizeof big, CODE_BYTES_MAX, "5000 bytes");
	refuses_bytes("", "AB\0CD", 5, 2, "0x00");
	refuses_bytes("]C1", "10AB\0CD", 7, 4, "0x00");
	refuses_bytes("", "A\x07", 2, 1, "0x07");
	refuses_bytes("", "caf\xe9", 4, 3, "0xe9");
	refuses_bytes("", "\xc0\xaf", 2, 0, "0xc0");         /* '/' in two bytes */
	refuses_bytes("", "\xed\xa0\x80", 3, 0, "0xed");     /* half of a surrogate */
	refuses_bytes("", "\xf4\x90\x80\x80", 4, 0, "0xf4"); /* above U+10FFFF */
	refuses_bytes("", "+A99912345\0", 11, 10, "no such character");
	refuses("", "+a999123457", 1, "Caps Lock");
	/* ISO/IEC 15434's envelope has control characters by right. */
	reads_bytes("]d1",
	            "[)>\x1e"
	            "06\x1d"
	            "25S1\x1e\x04",
	            13);
	assert_int_equal(code.kind, CODE_PLAIN);
	assert_string_equal(code.plain, "[)>\\x1e06\\x1d25S1\\x1e\\x04");
	refuses_bytes("]d1", "[)>\x1e\0", 5, 4, "0x00");
	/* Long text that is no code: what is shown of it is short and whole characters. */
	memset(big, 'x', sizeof big);
	for (int i = 0; i < 600; i++)
		memcpy(big + i * 2, "\xc3\xb6", 2);
	reads_bytes("", big, 1200);
	assert_int_equal(code.kind, CODE_PLAIN);
	assert_true(strlen(code.plain) < CODE_PLAIN_MAX);
	assert_string_equal(code.plain + strlen(code.plain) - 3, "…");
}

static void two_symbols_of_one_pack_are_joined(void **state)
{
	(void)state;
	struct code gtin, rest, both;
	char text[128];
	reads("]E0", "9506000134352");
	gtin = code;
	reads("]C1", "1727033110ABC");
	rest = code;
	assert_non_null(strstr(rest.wants, "(17) needs (01)"));
	for (int order = 0; order < 2; order++) {
		both = order ? rest : gtin;
		assert_int_equal(code_join(&both, order ? &gtin : &rest, &fault), 0);
		assert_int_equal(both.kind, CODE_GS1);
		assert_string_equal(both.product, "09506000134352");
		assert_string_equal(both.lot, "ABC");
		assert_int_equal(both.expiry, 20270331);
		assert_string_equal(both.wants, "");
		assert_int_equal(both.count, 3);
	}
	assert_true(code_kept_text(&both, text, sizeof text) > 0);
	assert_string_equal(text, "(17)270331(10)ABC(01)09506000134352");
}

static void half_of_a_wristband_makes_the_whole_one_a_wristband(void **state)
{
	(void)state;
	struct code pack, patient;
	reads("]C1", "10ABC");
	pack = code;
	reads("]d2", "8018061414112345678902");
	patient = code;
	for (int order = 0; order < 2; order++) {
		struct code both = order ? patient : pack;
		assert_int_equal(code_join(&both, order ? &pack : &patient, &fault), 0);
		assert_true(both.patient);
	}
}

/* Eight digits are too often a date or somebody's own number. */
static void eight_digits_alone_are_no_date(void **state)
{
	(void)state;
	reads("", "17280630");
	assert_int_equal(code.expiry, 0);
	reads("", "1728063010ABC");
	assert_int_equal(code.expiry, 20280630);
}

static void nothing_of_a_plain_text_is_kept(void **state)
{
	(void)state;
	reads("]Q1", "MARY LAMB 1950");
	assert_int_equal(code.kind, CODE_PLAIN);
	code_reduce(&code);
	for (size_t i = 0; i < sizeof code.plain; i++)
		assert_int_equal(code.plain[i], 0);
}

static void two_packs_are_not_joined(void **state)
{
	(void)state;
	struct code first, before;
	reads("]C1", "0109506000134352"
	             "10ABC");
	first = before = code;
	reads("]C1", "010061414112345210ABC");
	assert_int_equal(code_join(&first, &code, &fault), -EINVAL);
	assert_non_null(strstr(fault.why, "products"));
	reads("]C1", "10ABD");
	assert_int_equal(code_join(&first, &code, &fault), -EINVAL);
	assert_non_null(strstr(fault.why, "lots"));
	reads("]C1", "37"
	             "5");
	assert_int_equal(code_join(&first, &code, &fault), -EINVAL); /* (01) and (37) exclude each other */
	reads("", "BTBC10104051");
	assert_int_equal(code_join(&first, &code, &fault), -EINVAL);
	assert_memory_equal(&first, &before, sizeof first);
}

static void hibc_halves_find_each_other_by_the_link(void **state)
{
	(void)state;
	struct code primary, secondary;
	reads("]C0", "+A123BJC5D6E71G"); /* ANSI/HIBC 2.6 figure 1 */
	primary = code;
	assert_string_equal(primary.product, "+A123BJC5D6E71");
	reads("]C0", "+$$52001510X3GD");
	secondary = code;
	assert_non_null(strstr(secondary.wants, "link G"));
	assert_int_equal(code_join(&secondary, &primary, &fault), 0); /* scanned the wrong way round */
	assert_string_equal(secondary.product, "+A123BJC5D6E71");
	assert_string_equal(secondary.lot, "10X3");
	assert_int_equal(secondary.expiry, 20200115);
	assert_string_equal(secondary.wants, "");
	reads("", "+A999123457");
	struct code other = code;
	reads("]C0", "+$$52001510X3GD");
	assert_int_equal(code_join(&other, &code, &fault), -EINVAL);
	assert_non_null(strstr(fault.why, "link character is 'G' and should be '7'"));
}

static void hibc_quantities_and_dates_in_all_their_forms(void **state)
{
	(void)state;
	static const struct {
		const char *text; /* without its check character */
		const char *lot, *serial;
		int32_t expiry;
		int hour;
		long long quantity;
	} forms[] = {
	    {"+A99912345/20015L", "L", "", 20200115, 0, 0},
	    {"+A99912345/$L", "L", "", 0, 0, 0},
	    {"+A99912345/$+S", "", "S", 0, 0, 0},
	    {"+A99912345/$$0228L", "L", "", 20280229, 0, 0},
	    {"+A99912345/$$2013120L", "L", "", 20200131, 0, 0},
	    {"+A99912345/$$3200131L", "L", "", 20200131, 0, 0},
	    {"+A99912345/$$420013116L", "L", "", 20200131, 16, 0},
	    {"+A99912345/$$520366L", "L", "", 20201231, 0, 0},
	    {"+A99912345/$$62036623L", "L", "", 20201231, 23, 0},
	    {"+A99912345/$$7L", "L", "", 0, 0, 0},
	    {"+A99912345/$$+3200131S", "", "S", 20200131, 0, 0},
	    {"+A99912345/$$8243200131L", "L", "", 20200131, 0, 24},
	    {"+A99912345/$$902345710X3", "10X3", "", 0, 0, 2345},
	    {"+A99912345/$$900100", "", "", 0, 0, 100},
	    {"+A99912345/$L/SS/14D20270331/Q500", "L", "S", 20270331, 0, 500},
	};
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		char text[64];

		size_t n = strlen(forms[i].text);
		memcpy(text, forms[i].text, n);
		text[n] = check_mod43(text, n);
		text[n + 1] = '\0';
		reads("]d1", text);
		assert_string_equal(code.product, "+A99912345");
		assert_string_equal(code.lot, forms[i].lot);
		assert_string_equal(code.serial, forms[i].serial);
		assert_int_equal(code.expiry, forms[i].expiry);
		assert_int_equal(code.expiry_hh, forms[i].hour);
		assert_int_equal(code.quantity, forms[i].quantity);
	}
}

static void hibc_dates_that_do_not_exist_are_refused(void **state)
{
	(void)state;

	static const char *const wrong[] = {"+A99912345/$$521366L",   "+A99912345/$$3200230L",
	                                    "+A99912345/$$1328L",     "+A99912345/$$420013124L",
	                                    "+A99912345/16D20201301", "+A99912345/$$1L"};
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
		char text[64];
		size_t n = strlen(wrong[i]);
		memcpy(text, wrong[i], n);
		text[n] = check_mod43(text, n);
		fault = (struct code_fault){0, ""};
		assert_int_equal(code_read(&code, "", text, n + 1, TODAY, &fault), -EINVAL);
		assert_true(fault.at >= 11 && fault.at < n);
	}
}

static void hibc_primaries_with_the_wrong_shape_are_refused(void **state)
{
	(void)state;
	static const struct {
		const char *text; /* without its check character */
		size_t at;
		const char *word;
	} wrong[] = {
	    {"+A999123X", 8, "unit of measure"},
	    {"+A9995", 1, "6 to 23 characters"},
	    {"+A99912345678901234567895", 1, "6 to 23 characters"},
	    {"+A99.12345", 4, "capital letters and digits"},
	    {"+A123BJC5D6E71G+$$52001510X3G", 15, "one code at a time"}, /* two symbols glued */
	    {"+A99912345/$1234567890123456789", 30, "of at most 18"},
	    {"+A99912345/X", 11, "begins so"},
	    {"+A99912345/14D20270331Z", 14, "YYYYMMDD"},
	    {"+A99912345/14D01161216", 14, "YYYYMMDD"},
	    {"+A99912345/16D18991231", 14, "YYYYMMDD"},
	};
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
		char text[64];
		size_t n = strlen(wrong[i].text);
		memcpy(text, wrong[i].text, n);
		text[n] = check_mod43(text, n);
		refuses_bytes("", text, n + 1, wrong[i].at, wrong[i].word);
	}
}

static void a_wristband_is_told_apart_and_nothing_of_it_is_kept(void **state)
{
	(void)state;
	char text[256];
	/* The elements that a patient's wristband carries in England (DCB1077); the numbers are GS1's
	 * examples. */
	reads("]d2", "8018061414112345678902\x1d"
	             "7250"
	             "19800229\x1d"
	             "7253M%C3%BCller\x1d"
	             "7254Eva\x1d"
	             "8019123");
	assert_true(code.patient);
	assert_string_equal(code.gsrn, "");
	assert_int_equal(code_kept_text(&code, text, sizeof text), 0);
	code_reduce(&code);
	assert_int_equal(code.count, 0);
	for (size_t i = 0; i + 6 <= sizeof code; i++)
		assert_int_not_equal(memcmp((const char *)&code + i, "M%C3%B", 6), 0);
	/* The number alone is enough. */
	reads("]d2", "8018061414112345678902");
	assert_true(code.patient);
	/* A badge of staff is another thing. */
	reads("]d2", "8017061414112345678902");
	assert_false(code.patient);
	assert_string_equal(code.gsrn, "061414112345678902");
	/* HIBC's Provider Applications, patient number (public test suite) */
	static const char pas[] = "+/ACMRN123456/V200912190833T";

	memcpy(text, pas, sizeof pas);
	text[sizeof pas - 2] = check_mod43(pas, sizeof pas - 2);
	reads("]d1", text);
	assert_true(code.patient);
	assert_int_equal(code.count, 0);
	assert_int_equal(code_kept_text(&code, text, sizeof text), 0);
}

static void what_is_kept_is_a_list_and_can_be_read_again(void **state)
{
	(void)state;
	char text[256];
	reads("]d2", "0109506000134352"
	             "17270300"
	             "10A(B\x1d"
	             "99HOSP-4711\x1d"
	             "4109506000134352");
	assert_true(code_kept_text(&code, text, sizeof text) > 0);
	assert_string_equal(text, "(01)09506000134352(17)270300(10)A\\(B");
	reads("", text);
	assert_string_equal(code.lot, "A(B");
	reads("", "+A99912345/$$52001510X3/16D20111212/S77DEFG457");
	assert_true(code_kept_text(&code, text, sizeof text) > 0);
	assert_string_equal(text, "+A99912345/14D20200115/$10X3/16D20111212/S77DEFG45");
	reads("", "HOSPITAL 4711");
	assert_int_equal(code_kept_text(&code, text, sizeof text), 0);
	reads("", "BTBC10104051");
	assert_true(code_kept_text(&code, text, sizeof text) > 0);
	assert_string_equal(text, "BTBC10104051");
	assert_int_equal(code_kept_text(&code, text, 12), -ENOSPC);
	for (const char *const *ai = (const char *const[]){"00", "02", "90", "92", "99", "410", "7253",
	                                                   "7250", "8018", "8019", "8008", "1", "", NULL};
	     *ai; ai++)
		assert_false(code_keep(*ai));
}

static void a_code_says_at_most_so_much(void **state)
{
	(void)state;
	char data[4096] = "";
	for (int i = 0; i < 40; i++)
		strcat(data, "90A\x1d");
	refuses("]d2", data, 32 * 4 + 2, "more than 32 elements");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(a_pack_with_everything_in_one_symbol),
	    cmocka_unit_test(the_last_day_of_february_knows_leap_years),
	    cmocka_unit_test(the_century_is_the_nearest),
	    cmocka_unit_test(trade_items_are_fourteen_digits_whatever_the_symbol),
	    cmocka_unit_test(without_an_aim_identifier_the_kind_is_found_with_care),
	    cmocka_unit_test(ours_may_be_typed_as_it_stands_on_paper),
	    cmocka_unit_test(what_announces_itself_and_is_wrong_is_an_error),
	    cmocka_unit_test(a_lost_separator_is_named_as_what_it_is),
	    cmocka_unit_test(hostile_bytes_get_one_sentence),
	    cmocka_unit_test(two_symbols_of_one_pack_are_joined),
	    cmocka_unit_test(half_of_a_wristband_makes_the_whole_one_a_wristband),
	    cmocka_unit_test(eight_digits_alone_are_no_date),
	    cmocka_unit_test(nothing_of_a_plain_text_is_kept),
	    cmocka_unit_test(two_packs_are_not_joined),
	    cmocka_unit_test(hibc_halves_find_each_other_by_the_link),
	    cmocka_unit_test(hibc_quantities_and_dates_in_all_their_forms),
	    cmocka_unit_test(hibc_dates_that_do_not_exist_are_refused),
	    cmocka_unit_test(hibc_primaries_with_the_wrong_shape_are_refused),
	    cmocka_unit_test(a_wristband_is_told_apart_and_nothing_of_it_is_kept),
	    cmocka_unit_test(what_is_kept_is_a_list_and_can_be_read_again),
	    cmocka_unit_test(a_code_says_at_most_so_much),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
