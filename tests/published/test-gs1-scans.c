/* What a scanner sends, AIM identifier and all; against the literals of the unit tests of the GS1 Syntax
 * Engine, github gs1/gs1-syntax-engine, commit 50657dbd, scandata.c (Apache-2.0). */
#include <stdio.h>
#include <string.h>

#include "shared.h"

static struct code code;
static struct code_fault fault;

/* What the published test expects, as elements: '^…' is GS1, digits of an EAN symbol are a trade item number.
 */
static bool expected_elements(const char *symbol, const char *data, char *out)
{
	static const char *const trade[] = {"EAN13",       "EAN8",           "UPCA", "UPCE",
	                                    "DataBarOmni", "DataBarLimited", NULL};
	size_t digits = strspn(data, "0123456789");
	if (data[0] == '^')
		return caret_elements(data, out);
	for (int i = 0; trade[i]; i++)
		if (!strcmp(symbol, trade[i]) && digits == strlen(data) && digits <= 14) {
			snprintf(out, sizeof "(01)" + 14, "(01)%.*s%s", 14 - (int)digits, "00000000000000",
			         data);
			return true;
		}
	return false;
}

static void good_scan(const char *scan, const char *symbol, const char *data, long line)
{
	char is[4096] = "", should[4096] = "";
	if (code_read(&code, "", scan, strlen(scan), TODAY, &fault) < 0) {
		tally_fail("line %ld '%s': refused: %s", line, scan, fault.why);
		return;
	}
	elements_text(&code, is);
	bool elements = expected_elements(symbol, data, should);
	if (!elements && strstr(data, "://"))
		elements = caret_elements("^011231231231233399TEST", should);
	/* Their data has a backslash before a '^' that is no FNC1. */
	const char *plain = data[0] == '\\' ? data + 1 : data;
	if (elements ? strcmp(is, should) : code.kind != CODE_PLAIN || strcmp(code.plain, plain))
		tally_fail("line %ld '%s': '%s%s', should be '%s%s'", line, scan, is, code.plain, should,
		           elements ? "" : plain);
	else
		tally_pass();
}

static void processed(const json_t *args, long line)
{
	const char *scan = arg(args, 1);
	bool should = !strcmp(arg(args, 0), "true");
	if (strstr(scan, "|]e0")) {
		tally_leave(
		    "a composite in one string with '|': scanners send its two halves as two messages");
	} else if (should && strlen(scan) == 3) {
		tally_leave("an empty symbol, which that engine allows and a count sheet has no use for");
	} else if (!strcmp(scan, "]E0123456789012")) {
		tally_leave("UPC-A sent in 12 digits: not the standard's way, but that of many scanners");
	} else if (should) {
		good_scan(scan, arg(args, 2), arg(args, 3), line);
	} else if (code_read(&code, "", scan, strlen(scan), TODAY, &fault) == 0 && code.kind != CODE_PLAIN) {
		tally_fail("line %ld '%s': read as %s", line, scan, code_kind_name(code.kind));
	} else {
		tally_pass(); /* refused, or text without a meaning: never a product */
	}
}

/* Symbol, data, and what a scanner sends for it. A composite's halves are read as one string of elements. */
static void generated(const json_t *args, long line)
{
	const char *symbol = arg(args, 0), *data = arg(args, 1), *scan = arg(args, 2);
	const char *bar = data[0] == '^' || strspn(data, "0123456789") > 7 ? strchr(data, '|') : NULL;
	char is[4096] = "", should[4096] = "", rest[4096] = "", head[4096] = "";
	if (!strcmp(scan, "NULL")) {
		tally_leave("data that cannot be put into the symbol: about making symbols");
	} else if (strstr(scan, "|]e0")) {
		tally_leave(
		    "a composite in one string with '|': scanners send its two halves as two messages");
	} else if (!bar) {
		good_scan(scan, symbol, !strcmp(data, "211234567890") ? "2112345678900" : data, line);
	} else {
		snprintf(head, sizeof head, "%.*s", (int)(bar - data), data);
		if (code_read(&code, "", scan, strlen(scan), TODAY, &fault) < 0 ||
		    !expected_elements(symbol, head, should) || !caret_elements(bar + 1, rest))
			tally_fail("line %ld '%s': refused: %s", line, scan, fault.why);
		elements_text(&code, is);
		size_t n = strlen(should);
		if (strncmp(is, should, n) || strcmp(is + n, rest))
			tally_fail("line %ld '%s': '%s', should be '%s%s'", line, scan, is, should, rest);
		else
			tally_pass();
	}
}

static void row(const json_t *args, long line, const char *call)
{
	fault = (struct code_fault){0, ""};
	if (!strcmp(call, "test_testProcessScanData"))
		processed(args, line);
	else
		generated(args, line);
}

int main(void)
{
	each_row("gs1/scandata.jsonl", row);
	return tally_end("scans with AIM identifiers");
}
