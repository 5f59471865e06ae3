/* Device identifiers of a public register, real ones with their real mistakes: github FDA/openfda, test
 * extract of 2016-08, commit 2c152208 (CC0-1.0), 57,953 rows; and the carrier texts of HL7 FHIR's device
 * examples (CC0). Twelve of the GS1 identifiers are wrong in the register: 2 have 13 digits, 10 a wrong check
 * digit. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "code/check-digit.h"
#include "shared.h"

#define KNOWN_BAD 12

static struct code code;
static struct code_fault fault;
static long bad_gtins;

static void gtin(const char *id)
{
	bool ok = strlen(id) == 14 && code_read(&code, "", id, 14, TODAY, &fault) == 0 &&
	          code.kind == CODE_TRADE_ITEM && !strcmp(code.product, id);
	if (ok)
		tally_pass();
	else
		bad_gtins++;
}

/* The register has the primary without '+', with its check character or without it. */
static void labeler_and_product(const char *id)
{
	char text[64];
	int n = snprintf(text, sizeof text, "+%s", id);
	if (id[0] == '0') {
		tally_leave("a GTIN that is filed under HIBC");
		return;
	}
	char last = id[strlen(id) - 1];
	bool has_check = (last < '0' || last > '9') || check_mod43(text, (size_t)n - 1) == last;
	if (!has_check) {
		text[n] = check_mod43(text, (size_t)n);
		n++;
	}
	if (code_read(&code, "", text, (size_t)n, TODAY, &fault) == 0 && code.kind == CODE_HIBC &&
	    code.product[0])
		tally_pass();
	else if (last < '0' || last > '9')
		tally_leave("HIBC in the register whose last character is neither unit of measure nor check "
		            "character");
	else
		tally_fail("%s (%s): %s", id, text, fault.why);
}

static void examples(void)
{
	/* {01}… is that example's way to write brackets. Expected: the element list that stands beside it. */
	const char *gs1 = "(01)00844588003288(17)141120(10)7654321D(21)10987654d321";
	const char *hibc =
	    "+H123PARTNO1234567890120/$$420020216LOT123456789012345/SXYZ456789012345678/16D20130202H";
	char wrong[128];
	if (code_read(&code, "", gs1, strlen(gs1), TODAY, &fault) == 0 && code.expiry == 20141120 &&
	    !strcmp(code.product, "00844588003288") && !strcmp(code.lot, "7654321D") &&
	    !strcmp(code.serial, "10987654d321"))
		tally_pass();
	else
		tally_fail("%s: %s", gs1, fault.why);
	if (code_read(&code, "", hibc, strlen(hibc), TODAY, &fault) == 0 && code.expiry == 20200202 &&
	    code.expiry_hh == 16 && code.made == 20130202 && !strcmp(code.lot, "LOT123456789012345") &&
	    !strcmp(code.serial, "XYZ456789012345678"))
		tally_pass();
	else
		tally_fail("%s: %s", hibc, fault.why);
	/* The published example ends in C where modulo 43 gives H. */
	snprintf(wrong, sizeof wrong, "%s", hibc);
	wrong[strlen(wrong) - 1] = 'C';
	if (code_read(&code, "", wrong, strlen(wrong), TODAY, &fault) < 0)
		tally_pass();
	else
		tally_fail("%s: accepted", wrong);
}

int main(void)
{
	char line[256];
	FILE *f = shared_open("udi/gudid_ids.tsv");
	while (fgets(line, sizeof line, f)) {
		line[strcspn(line, "\r\n")] = '\0';
		const char *id = strrchr(line, '\t');
		if (!id || !strncmp(line, "issuer", 6))
			continue;
		if (!strncmp(line, "GS1\t", 4))
			gtin(id + 1);
		else
			labeler_and_product(id + 1);
	}
	fclose(f);
	if (bad_gtins != KNOWN_BAD)
		tally_fail("%ld GS1 identifiers are wrong, %d are known to be", bad_gtins, KNOWN_BAD);
	printf("%ld wrong GS1 identifiers found, as known\n", bad_gtins);
	examples();
	return tally_end("device identifiers");
}
