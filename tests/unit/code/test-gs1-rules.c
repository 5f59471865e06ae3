/* Each rule of a GS1 value, from both sides: what it lets pass, and what it refuses, where and why. The rules and the coupon's
 * fields are those of the General Specifications; the numbers are examples. */
#include "cmocka-all.h"

#include <errno.h>
#include <stdio.h>

#include "code/date.h"
#include "code/gs1-rules.h"

struct fact {
	enum gs1_rule rule;
	const char *value;
	int at;           /* of the fault; -1 it passes */
	const char *word; /* of the reason */
};

static void hold(const struct fact *facts, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		const struct fact *x = &facts[i];
		struct code_fault fault = {0, ""};
		int r = gs1_rule_check(x->rule, x->value, strlen(x->value), TODAY, &fault);
		if (r != (x->at < 0 ? 0 : -EINVAL))
			fail_msg("rule %d of '%s': %d '%s'", (int)x->rule, x->value, r, fault.why);
		if (x->at >= 0 && (fault.at != (size_t)x->at || !strstr(fault.why, x->word)))
			fail_msg("rule %d of '%s': at %zu: '%s'", (int)x->rule, x->value, fault.at,
			         fault.why);
		/* whoever needs no reason gets the same answer */
		assert_int_equal(gs1_rule_check(x->rule, x->value, strlen(x->value), TODAY, NULL), r);
	}
}
#define HOLD(facts) hold(facts, sizeof(facts) / sizeof *(facts))

static void numbers_and_their_check_digits(void **state)
{
	static const struct fact facts[] = {
	    {RULE_NONE, "anything", -1, ""},
	    {RULE_CHECK_DIGIT, "9506000134352", -1, ""},
	    {RULE_CHECK_DIGIT, "9506000134353", 12, "should be 2"},
	    {RULE_CHECK_DIGIT, "", 0, "no check digit"},
	    {RULE_CHECK_DIGIT, "95060a0134352", 5, ""},
	    {RULE_CHECK_PAIR, "1987654Ad4X4bL5ttr2310c2K", -1, ""},
	    {RULE_CHECK_PAIR, "1987654Ad4X4bL5ttr2310c2L", 23, "should be 2K"},
	    {RULE_CHECK_PAIR, "1", 0, "no pair"},
	    {RULE_CHECK_PAIR, "1 872K", 1, ""},
	    {RULE_PREFIX, "9506", -1, ""},
	    {RULE_PREFIX, "950", 0, "too short"},
	    {RULE_PREFIX, "95A6", 2, "digits"},
	    {RULE_PREFIX_SECOND, "A9506", -1, ""},
	    {RULE_PREFIX_SECOND, "9506", 0, "too short"},
	    {RULE_NOT_ZERO, "0010", -1, ""},
	    {RULE_NOT_ZERO, "0000", 0, "must not be zero"},
	    {RULE_NOT_ZERO, "00x0", 2, ""},
	    {RULE_NO_ZERO_FIRST, "10", -1, ""},
	    {RULE_NO_ZERO_FIRST, "", -1, ""},
	    {RULE_NO_ZERO_FIRST, "01", 0, "begin with zero"},
	    {RULE_NO_ZERO_FIRST, "x", 0, ""},
	    {RULE_ZERO, "000", -1, ""},
	    {RULE_ZERO, "001", 0, "must be zero"},
	    {RULE_ZERO, "", 0, "must be zero"},
	    {RULE_SOME_LETTER, "12a", -1, ""},
	    {RULE_SOME_LETTER, "123", 0, "no digit"},
	    {RULE_PIECE, "0203", -1, ""},
	    {RULE_PIECE, "0302", 0, "piece 03 of only 02"},
	    {RULE_PIECE, "0003", 0, "no piece 0"},
	    {RULE_PIECE, "0200", 2, "0 pieces"},
	    {RULE_PIECE, "020", 0, "same number of digits"},
	    {RULE_PIECE, "", 0, "same number of digits"},
	    {RULE_PIECE, "0a03", 1, ""},
	    {RULE_PLACE_IN_ORDER, "2/3", -1, ""},
	    {RULE_PLACE_IN_ORDER, "9/10", -1, ""},
	    {RULE_PLACE_IN_ORDER, "3/2", 0, "beyond the total"},
	    {RULE_PLACE_IN_ORDER, "10/9", 0, "beyond the total"},
	    {RULE_PLACE_IN_ORDER, "23", 0, "2/3"},
	    {RULE_PLACE_IN_ORDER, "/3", 0, "2/3"},
	    {RULE_PLACE_IN_ORDER, "2/", 0, "2/3"},
	    {RULE_PLACE_IN_ORDER, "a/3", 0, "2/3"},
	    {RULE_PLACE_IN_ORDER, "02/3", 0, "begin with zero"},
	    {RULE_PLACE_IN_ORDER, "2/03", 2, "begin with zero"},
	    {RULE_PERCENT, "a%2Fb%aF", -1, ""},
	    {RULE_PERCENT, "a%2", 1, "hexadecimal"},
	    {RULE_PERCENT, "%g0", 0, "hexadecimal"},
	    {RULE_PERCENT, "%0G", 0, "hexadecimal"},
	    {RULE_PERCENT, "%0[", 0, "hexadecimal"},
	};
	char long_one[121];
	struct code_fault fault = {0, ""};
	(void)state;
	HOLD(facts);
	memset(long_one, 'A', sizeof long_one);
	assert_int_equal(gs1_rule_check(RULE_CHECK_PAIR, long_one, sizeof long_one, TODAY, &fault), -EINVAL);
	assert_non_null(strstr(fault.why, "too long"));
}

static void times_places_and_kinds(void **state)
{
	static const struct fact facts[] = {
	    {RULE_DATE, "260228", -1, ""},
	    {RULE_DATE, "260229", 4, "no day 29"},
	    {RULE_DATE, "260200", 4, "no day 00"},
	    {RULE_DATE, "26022", 0, "6 characters"},
	    {RULE_DATE, "26o228", 2, ""},
	    {RULE_DATE_0, "260200", -1, ""},
	    {RULE_DATE_0, "260000", 2, "no month 00"},
	    {RULE_DATE_LONG, "20000229", -1, ""},
	    {RULE_DATE_LONG, "19000229", 6, "no day 29"},
	    {RULE_DATE_LONG, "20241301", 4, "no month 13"},
	    {RULE_DATE_LONG_0, "20240200", -1, ""},
	    {RULE_DATE_LONG, "20240200", 6, "no day 00"},
	    {RULE_HOUR, "23", -1, ""},
	    {RULE_HOUR, "24", 0, "no hour 24"},
	    {RULE_HOUR_MINUTE, "2359", -1, ""},
	    {RULE_HOUR_MINUTE, "2360", 2, "no minute 60"},
	    {RULE_HOUR_MINUTE, "2400", 0, "no hour 24"},
	    {RULE_HOUR_MINUTE, "235", 0, "4 characters"},
	    {RULE_MINUTE, "60", 0, "no minute 60"},
	    {RULE_SECOND, "59", -1, ""},
	    {RULE_SECOND, "60", 0, "no second 60"},
	    {RULE_HYPHEN, "-", -1, ""},
	    {RULE_HYPHEN, "", 0, "missing"},
	    {RULE_HYPHEN, "+", 0, "only a hyphen"},
	    {RULE_LATITUDE, "1800000000", -1, ""},
	    {RULE_LATITUDE, "1800000001", 0, "at most"},
	    {RULE_LATITUDE, "180000000", 0, "10 characters"},
	    {RULE_LONGITUDE, "3600000000", -1, ""},
	    {RULE_LONGITUDE, "3600000001", 0, "at most"},
	    {RULE_COUNTRY, "826", -1, ""},
	    {RULE_COUNTRY, "999", 0, "ISO 3166"},
	    {RULE_COUNTRY, "000", 0, "ISO 3166"},
	    {RULE_COUNTRY, "82", 0, "ISO 3166"},
	    {RULE_COUNTRY, "8:6", 0, "ISO 3166"},
	    {RULE_COUNTRY, "x26", 0, "ISO 3166"},
	    {RULE_COUNTRY, "82x", 0, "ISO 3166"},
	    {RULE_COUNTRY_OR_999, "999", -1, ""},
	    {RULE_COUNTRY_OR_999, "276", -1, ""},
	    {RULE_COUNTRY_OR_999, "998", 0, "ISO 3166"},
	    {RULE_COUNTRY_LETTERS, "GB", -1, ""},
	    {RULE_COUNTRY_LETTERS, "UK", 0, "ISO 3166"},
	    {RULE_COUNTRY_LETTERS, "GBR", 0, "ISO 3166"},
	    {RULE_CURRENCY, "978", -1, ""},
	    {RULE_CURRENCY, "000", 0, "ISO 4217"},
	    {RULE_CURRENCY, "EUR", 0, "ISO 4217"},
	    {RULE_IBAN, "GB82WEST12345698765432", -1, ""},
	    {RULE_IBAN, "GB83WEST12345698765432", 2, "check digits"},
	    {RULE_IBAN, "XK051212012345678906", -1, ""},
	    {RULE_IBAN, "UK82WEST12345698765432", 0, "no country"},
	    {RULE_IBAN, "GB8", 0, "longer"},
	    {RULE_IBAN, "GB82WEST12345698765432123456789012345", 0, "34"},
	    {RULE_IBAN, "GB82west", 4, "IBAN"},
	    {RULE_MEDIUM, "01", -1, ""},
	    {RULE_MEDIUM, "10", -1, ""},
	    {RULE_MEDIUM, "80", -1, ""},
	    {RULE_MEDIUM, "11", 0, "data carrier"},
	    {RULE_MEDIUM, "00", 0, "data carrier"},
	    {RULE_MEDIUM, "9", 0, "data carrier"},
	    {RULE_MEDIUM, "x1", 0, "data carrier"},
	    {RULE_PACKAGE, "BX", -1, ""},
	    {RULE_PACKAGE, "9", -1, ""},
	    {RULE_PACKAGE, "X20", -1, ""},
	    {RULE_PACKAGE, "B0", 0, "Recommendation 21"},
	    {RULE_PACKAGE, "X21", 0, "Recommendation 21"},
	    {RULE_PACKAGE, "", 0, "Recommendation 21"},
	    {RULE_PACKAGE, "PALET", 0, "Recommendation 21"},
	    {RULE_SEX, "9", -1, ""},
	    {RULE_SEX, "3", 0, "ISO 5218"},
	    {RULE_WINDING, "9", -1, ""},
	    {RULE_WINDING, "2", 0, "winding"},
	    {RULE_YES_NO, "1", -1, ""},
	    {RULE_YES_NO, "2", 0, "yes"},
	    {RULE_YES_NO, "01", 0, "yes"},
	    {RULE_IMPORTER, "_", -1, ""},
	    {RULE_IMPORTER, "+", 0, "one letter or digit"},
	};
	(void)state;
	HOLD(facts);
}

/* Most begin with company prefix, offer, a saving of 1, and 1 of unit 0 in family 000 to buy, which is 21 digits. */
static void coupons_say_what_they_are_good_for(void **state)
{
	static const struct fact facts[] = {
	    {RULE_COUPON, "095060012345611110000", -1, ""},
	    {RULE_COUPON, "7", 0, "company prefix cannot be 7"},
	    {RULE_COUPON, "0950", 1, "company prefix is cut short"},
	    {RULE_COUPON, "x", 0, ""},
	    {RULE_COUPON, "095060012345611115000", 17, "what must be bought"},
	    {RULE_COUPON, "09506001234560", 13, "value cannot be 0"},
	    {RULE_COUPON, "095060012345611110000101100009", -1, ""},       /* the same company */
	    {RULE_COUPON, "095060012345611110000101100000950600", -1, ""}, /* another */
	    {RULE_COUPON, "09506001234561111000010110000", 29, "second company is cut short"},
	    {RULE_COUPON, "095060012345611110000141100009", 22, "no such rule"},
	    {RULE_COUPON, "0950600123456111100001", 22, "further purchases is cut short"},
	    {RULE_COUPON, "09506001234561111000021100009", -1, ""},
	    {RULE_COUPON, "095060012345611110000211000", 25, "family code is cut short"},
	    {RULE_COUPON, "0950600123456111100003261231", -1, ""},
	    {RULE_COUPON, "0950600123456111100003261301", 22, "does not exist"},
	    {RULE_COUPON, "095060012345611110000326", 22, "last day is cut short"},
	    {RULE_COUPON, "09506001234561111000032612314261230", -1, ""},
	    {RULE_COUPON, "09506001234561111000032612314261231", -1, ""},
	    {RULE_COUPON, "09506001234561111000032612314270101", 21, "ends before it starts"},
	    {RULE_COUPON, "0950600123456111100004270101", -1, ""},
	    {RULE_COUPON, "0950600123456111100003261231427010193", 36,
	     "no such kind of saving"},                                                 /* the first fault */
	    {RULE_COUPON, "09506001234561111000042701013261231", 28, "behind its end"}, /* in order */
	    {RULE_COUPON, "09506001234561111000050123456", -1, ""},
	    {RULE_COUPON, "095060012345611110000611234567", -1, ""},
	    {RULE_COUPON, "0950600123456111100007", 21, "behind its end"},
	    {RULE_COUPON, "0950600123456111100008", 21, "behind its end"},
	    {RULE_COUPON, "09506001234561111000090000", -1, ""},
	    {RULE_COUPON, "09506001234561111000095000", -1, ""},
	    {RULE_COUPON, "09506001234561111000096291", -1, ""},
	    {RULE_COUPON, "09506001234561111000097000", 22, "no such kind of saving"},
	    {RULE_COUPON, "09506001234561111000090300", 23, "applies to cannot be 3"},
	    {RULE_COUPON_OFFER, "009506001234560123456", -1, ""},
	    {RULE_COUPON_OFFER, "2", 0, "format cannot be 2"},
	    {RULE_COUPON_OFFER, "0095060012345601234567", 21, "behind its end"},
	    {RULE_COUPON_OFFER, "009506001234561123456", 15, "serial number is cut short"},
	};
	(void)state;
	HOLD(facts);
}

static void days_of_the_calendar(void **state)
{
	static const struct {
		int year, month, days;
	} facts[] = {{2024, 2, 29}, {2023, 2, 28}, {1900, 2, 28}, {2000, 2, 29},
	             {2023, 0, 0},  {2023, 13, 0}, {2023, 12, 31}};
	(void)state;
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++)
		assert_int_equal(date_days_in_month(facts[i].year, facts[i].month), facts[i].days);
	assert_int_equal(date_make(-1, 1, 1), 0);
	assert_int_equal(date_make(10000, 1, 1), 0);
	assert_int_equal(date_make(9999, 12, 31), 99991231);
	assert_int_equal(date_make(2026, 1, 0), 0);
	assert_int_equal(date_of_year(2024, 366), 20241231);
	assert_int_equal(date_of_year(2023, 366), 0);
	assert_int_equal(date_year(31, 0), 2031); /* today is not known */
	assert_int_equal(date_digits("1/", 2), -1);
	assert_int_equal(date_digits("1:", 2), -1);
}

/* A sentence that is cut is cut between characters, whatever the byte that is the last. */
static void a_long_reason_ends_with_a_whole_character(void **state)
{
	static const char *const letters[] = {"x", "\xc3\xa9", "\xe2\x82\xac"};
	(void)state;
	for (size_t i = 0; i < sizeof letters / sizeof *letters; i++)
		for (int before = 0; before < 4; before++) {
			char text[1000];
			struct code_fault fault = {0, ""};
			size_t n = (size_t)snprintf(text, sizeof text, "%.*s", before, "abc"),
			       one = strlen(letters[i]);
			for (; n + one < sizeof text; n += one)
				memcpy(text + n, letters[i], one + 1);
			assert_int_equal(fault_set(&fault, 7, "%s", text), -EINVAL);
			size_t kept = strlen(fault.why);
			assert_int_equal(fault.at, 7);
			assert_memory_equal(fault.why, text, kept);
			assert_int_equal((kept - (size_t)before) % one, 0);
			assert_true(kept + one >= sizeof fault.why - 1);
		}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(numbers_and_their_check_digits),
	    cmocka_unit_test(times_places_and_kinds),
	    cmocka_unit_test(coupons_say_what_they_are_good_for),
	    cmocka_unit_test(days_of_the_calendar),
	    cmocka_unit_test(a_long_reason_ends_with_a_whole_character),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
