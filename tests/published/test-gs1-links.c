/* GS1 Digital Link addresses; against the literals of the unit tests of the GS1 Syntax Engine,
 * github gs1/gs1-syntax-engine, commit 50657dbd, dl.c (Apache-2.0). */
#include <stdio.h>
#include <string.h>

#include "shared.h"

static struct code code;
static struct code_fault fault;

/* Their verdict on some addresses depends on a setting, which the row does not name. */
static const char *by_setting(const char *uri, bool should)
{
	if (!strncmp(uri, "HtTp:", 5))
		return "a scheme in mixed case, which that engine refuses and RFC 3986 section 3.1 allows: "
		       "read here";
	if (strstr(uri, "/gtin/") || strstr(uri, "/sscc/"))
		return should ? "words in place of identifiers, allowed by a setting of that engine: not "
		                "read here"
		              : NULL;
	if (strstr(uri, "89=") || strstr(uri, "/89/"))
		return should
		           ? "identifier 89, which GS1 has not given out, allowed by a setting of that engine"
		           : NULL;
	if (!should &&
	    (strstr(uri, "2112345678900") || strstr(uri, "/416000336108") || strstr(uri, "02345673")))
		return "a GTIN without its leading zeros, refused by a setting of that engine: read here";
	return NULL;
}

static void row(const json_t *args, long line, const char *call)
{
	bool should = !strcmp(arg(args, 0), "true");
	const char *uri = arg(args, 1);
	char is[4096] = "", must[4096] = "";
	fault = (struct code_fault){0, ""};
	if (strcmp(call, "test_parseDLuri")) {
		tally_leave("making an address: this station makes none");
		return;
	}
	const char *group = by_setting(uri, should);
	if (group) {
		tally_leave(group);
		return;
	}
	bool is_gs1 = code_read(&code, "]Q1", uri, strlen(uri), TODAY, &fault) == 0 && code.kind == CODE_GS1;
	elements_text(&code, is);
	if (should != is_gs1)
		tally_fail("line %ld '%s': %s %s", line, uri, is_gs1 ? is : "not read", fault.why);
	else if (should && (!caret_elements(arg(args, 2), must) || strcmp(is, must)))
		tally_fail("line %ld '%s': '%s', should be '%s'", line, uri, is, must);
	else
		tally_pass();
}

int main(void)
{
	each_row("gs1/dl.jsonl", row);
	return tally_end("GS1 Digital Link");
}
