/* Element strings with square brackets, good and bad, one for nearly every identifier; against the literals
 * of zint's tests: github zint/zint, backend/tests/test_gs1.c, commit 6ac010af (BSD-3-Clause). The generator
 * splits its verdict into 'invalid' and 'not compliant'; both are wrong here. */
#include <stdio.h>
#include <string.h>

#include "shared.h"

static struct code code;
static struct code_fault fault;

/* [01]… -> (01)…, and a bracket of the value as \(. False for text without an identifier in brackets. */
static bool with_round_brackets(const char *in, char *out)
{
	size_t n = 0;
	for (const char *p = in; *p; p++) {
		if (*p == '(')
			out[n++] = '\\';
		out[n++] = *p == '[' ? '(' : *p == ']' ? ')' : *p;
	}
	out[n] = '\0';
	return in[0] == '[';
}

static bool is_verdict(const char *s)
{
	return !strcmp(s, "0") || !strcmp(s, "ZINT_ERROR_INVALID_DATA") ||
	       !strcmp(s, "ZINT_WARN_NONCOMPLIANT");
}

static void row(const json_t *args, long line, const char *call)
{
	(void)call;
	char text[4096];
	const char *verdict = arg(args, 2), *in = arg(args, 1);
	fault = (struct code_fault){0, ""};
	bool raw = !strcmp(arg(args, 0), "GS1RAW_MODE"); /* as a scanner sends it, behind ]C1 */
	if ((!raw && strcmp(arg(args, 0), "-1")) || !is_verdict(verdict)) {
		tally_leave("about symbols, options and other ways of writing element strings, not about "
		            "their content");
		return;
	}
	if (!strcmp(in, "[8011]0")) {
		tally_leave("(8011) 0, right there and wrong by the linters of GS1, which count here");
		return;
	}
	if (raw ? snprintf(text, sizeof text, "%s", in) < 0 : !with_round_brackets(in, text)) {
		tally_leave("text without square brackets: about that generator's input");
		return;
	}
	bool should = !strcmp(verdict, "0");
	bool is = code_read(&code, raw ? "]C1" : "", text, strlen(text), TODAY, &fault) == 0 &&
	          code.kind == CODE_GS1;
	if (is == should)
		tally_pass();
	else
		tally_fail("line %ld %s: %s, should be %s: %s%s", line, text, is ? "accepted" : "refused",
		           verdict, fault.why, arg(args, 4));
}

int main(void)
{
	each_row("gs1/zint_gs1.jsonl", row);
	return tally_end("GS1 element strings in brackets");
}
