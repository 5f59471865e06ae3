/* The arithmetic, against worked examples that others published. */
#include "cmocka-all.h"

#include "code/check-digit.h"

static void gs1_check_digits_are_those_of_published_numbers(void **state)
{
	(void)state;
	static const char *const right[] = {
	    "6291041500213",      /* GS1's own example, as IBM's documentation has it */
	    "40987650000223",     /* the same */
	    "8904000210037",      /* GS1 India */
	    "7300011000017",      /* GS1 Sweden */
	    "5012345678900",      /* GS1 UK's input; the sum is 90, so the digit is 0 */
	    "10614141123459",     /* EPC Tag Data Standard examples */
	    "00614141123452",     /* the same */
	    "0614141123452",      /* GLN of the same */
	    "061414112345678902", /* GSRN of the same */
	    "012345678901012342", /* GSRN in public test code */
	    "123456789012345675", /* GS1 Syntax Engine's test data */
	    "00844588003288",     /* HL7 FHIR, device example */
	    "96385074",           /* GTIN-8, public test vector */
	    "036000291452",       /* UPC-A, the same */
	    "4006381333931",      /* EAN-13, the same */
	    "09506000134352",     /* GS1's demonstration prefix (from memory) */
	};
	for (size_t i = 0; i < sizeof right / sizeof *right; i++) {
		size_t n = strlen(right[i]);
		assert_int_equal(check_mod10(right[i], n - 1), right[i][n - 1]);
	}
	assert_int_equal(check_mod10("12a", 3), 0);
}

static void a_single_wrong_digit_never_passes_mod_10(void **state)
{
	(void)state;
	char text[] = "09506000134352";
	for (size_t i = 0; i < 13; i++)
		for (char d = '0'; d <= '9'; d++) {
			char right = text[i];
			text[i] = d;
			assert_int_equal(check_mod10(text, 13) == '2', d == right);
			text[i] = right;
		}
	/* What it cannot see, so that nobody relies on it: neighbours that differ by 5 change places. */
	assert_int_equal(check_mod10("0161", 4), check_mod10("0611", 4));
}

static void hibc_check_characters_are_those_of_the_standard(void **state)
{
	(void)state;
	static const struct {
		const char *text;
		char check;
	} facts[] = {
	    {"+A123BJC5D6E71", 'G'},              /* ANSI/HIBC 2.6 (2016) figures 1 and 2 */
	    {"+A1234BJC5D6E71", 'K'},             /* a scanner maker's page */
	    {"07000503", 'F'},                    /* the same */
	    {"+A99912345", '7'},                  /* public test suite */
	    {"+A99912345/$$52001510X3", '3'},     /* the same */
	    {"+A123BJC5D6E71/$$52001510X3", 'C'}, /* computed by hand: 313 mod 43 = 12 */
	    {"+123456789", '0'},                  /* public test suite: 86 mod 43 = 0 */
	    {"+FOOBAR", 'N'},                     /* the same */
	};
	for (size_t i = 0; i < sizeof facts / sizeof *facts; i++)
		assert_int_equal(check_mod43(facts[i].text, strlen(facts[i].text)), facts[i].check);
	assert_int_equal(check_mod43("+a", 2), 0);
	assert_int_equal(check_mod43("\0", 1), 0);
}

static void mod_97_10_is_that_of_iban_and_lei(void **state)
{
	(void)state;
	/* ISO 13616: country and check digits go to the end. GB82 WEST 1234 5698 7654 32 is its usual
	 * example. */
	assert_int_equal(check_mod97("WEST12345698765432GB82", 22), 1);
	/* ISO 17442 needs no turning: the Legal Entity Identifier of the LEI foundation itself (from memory).
	 */
	assert_int_equal(check_mod97("506700GE1G29325QX363", 20), 1);
	assert_int_equal(check_mod97("506700GE1G29325QX336", 20) == 1, 0);
	assert_int_equal(check_mod97("a1", 2), -1);
	assert_int_equal(check_mod97("", 0), -1);
}

static void gs1_check_pairs_are_those_of_the_general_specifications(void **state)
{
	(void)state;
	char pair[2];
	/* The worked example of (8013): 1987654Ad4X4bL5ttr2310c and 2K. */
	assert_true(check_pair("1987654Ad4X4bL5ttr2310c", 23, pair));
	assert_memory_equal(pair, "2K", 2);
	assert_false(check_pair("white space", 11, pair));
	/* What it protects is at most 97 letters long. */
	char text[98];
	memset(text, 'A', sizeof text);
	assert_true(check_pair(text, 97, pair));
	assert_false(check_pair(text, 98, pair));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
	    cmocka_unit_test(gs1_check_digits_are_those_of_published_numbers),
	    cmocka_unit_test(a_single_wrong_digit_never_passes_mod_10),
	    cmocka_unit_test(hibc_check_characters_are_those_of_the_standard),
	    cmocka_unit_test(mod_97_10_is_that_of_iban_and_lei),
	    cmocka_unit_test(gs1_check_pairs_are_those_of_the_general_specifications),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
