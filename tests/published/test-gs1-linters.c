/* Every rule for a part of a GS1 value, against the literals of the unit tests of GS1's own linters:
 * github gs1/gs1-syntax-dictionary, commit ff2eb4bf (Apache-2.0). Not the verdict alone: the place too. */
#include <stdio.h>
#include <string.h>

#include "code/gs1-rules.h"
#include "code/gs1-sets.h"
#include "shared.h"

static const struct {
	const char *name;
	enum gs1_rule rule;
} rules[] = {
    {"csum", RULE_CHECK_DIGIT},
    {"csumalpha", RULE_CHECK_PAIR},
    {"gcppos1", RULE_PREFIX},
    {"gcppos2", RULE_PREFIX_SECOND},
    {"yymmdd", RULE_DATE},
    {"yymmd0", RULE_DATE_0},
    {"yyyymmdd", RULE_DATE_LONG},
    {"yyyymmd0", RULE_DATE_LONG_0},
    {"hh", RULE_HOUR},
    {"hhmi", RULE_HOUR_MINUTE},
    {"mi", RULE_MINUTE},
    {"ss", RULE_SECOND},
    {"hyphen", RULE_HYPHEN},
    {"iban", RULE_IBAN},
    {"importeridx", RULE_IMPORTER},
    {"iso3166", RULE_COUNTRY},
    {"iso3166999", RULE_COUNTRY_OR_999},
    {"iso3166alpha2", RULE_COUNTRY_LETTERS},
    {"iso4217", RULE_CURRENCY},
    {"iso5218", RULE_SEX},
    {"latitude", RULE_LATITUDE},
    {"longitude", RULE_LONGITUDE},
    {"mediatype", RULE_MEDIUM},
    {"nonzero", RULE_NOT_ZERO},
    {"nozeroprefix", RULE_NO_ZERO_FIRST},
    {"packagetype", RULE_PACKAGE},
    {"pcenc", RULE_PERCENT},
    {"pieceoftotal", RULE_PIECE},
    {"posinseqslash", RULE_PLACE_IN_ORDER},
    {"winding", RULE_WINDING},
    {"yesno", RULE_YES_NO},
    {"zero", RULE_ZERO},
    {"hasnondigit", RULE_SOME_LETTER},
    {"couponcode", RULE_COUPON},
    {"couponposoffer", RULE_COUPON_OFFER},
};

/* 0, -EINVAL, or 1 for a linter that nobody here knows. */
static int judge(const char *linter, const char *value, size_t size, struct code_fault *f)
{
	static const char *const sets[] = {"csetnumeric", "N",      "cset82", "X", "cset39",
	                                   "Y",           "cset64", "Z",      NULL};
	for (int i = 0; sets[i]; i += 2)
		if (!strcmp(linter, sets[i]))
			return gs1_set_check(sets[i + 1][0], value, size, f);
	for (size_t i = 0; i < sizeof rules / sizeof *rules; i++)
		if (!strcmp(linter, rules[i].name))
			return gs1_rule_check(rules[i].rule, value, size, TODAY, f);
	return 1;
}

/* "12*x*4": the mark begins at 2. A mark round the whole value names no place. */
static bool place_agrees(const char *marked, size_t at, size_t size)
{
	const char *first = strchr(marked, '*'), *last = strrchr(marked, '*');
	if (first == marked && last == marked + strlen(marked) - 1)
		return at <= size;
	return at == (size_t)(first - marked);
}

static void row(const json_t *args, long line, const char *call)
{
	const char *linter = arg(args, 0) + strlen("gs1_lint_"), *value = arg(args, 1);
	struct code_fault f = {0, ""};
	if (strstr(arg(args, 2), "GCP_DATASOURCE") || strstr(arg(args, 2), "INVALID_GCP_PREFIX")) {
		tally_leave("looks a company prefix up in a source that the test sets up");
		return;
	}
	if (!strcmp(value, "data")) {
		tally_leave("the value is a variable in the published test");
		return;
	}
	int r = judge(linter, value, strlen(value), &f);
	if (r > 0)
		tally_fail("line %ld: no rule for %s", line, linter);
	else if (!strcmp(call, "UNIT_TEST_PASS") && r < 0)
		tally_fail("line %ld %s '%s': refused: %s", line, linter, value, f.why);
	else if (!strcmp(call, "UNIT_TEST_FAIL") && r == 0)
		tally_fail("line %ld %s '%s': accepted, should be %s", line, linter, value, arg(args, 2));
	else if (r < 0 && !place_agrees(arg(args, 3), f.at, strlen(value)))
		tally_fail("line %ld %s '%s': place %zu, should be %s (%s)", line, linter, value, f.at,
		           arg(args, 3), f.why);
	else
		tally_pass();
}

int main(void)
{
	each_row("gs1/linters.jsonl", row);
	return tally_end("rules of GS1 values");
}
