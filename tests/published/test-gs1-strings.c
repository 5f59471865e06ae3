/* Element strings: splitting, formats, pairs; against the literals of the unit tests of the GS1 Syntax
 * Engine, github gs1/gs1-syntax-engine, commit 50657dbd, ai.c (Apache-2.0). */
#include <stdio.h>
#include <string.h>

#include "shared.h"

static struct code code;
static struct code_fault fault;

static bool is_true(const json_t *args)
{
	return !strcmp(arg(args, 0), "true");
}

static int read_as(const char *aim, const char *text)
{
	char data[4096];
	size_t size = strlen(text);
	memcpy(data, text, size);
	for (size_t i = 0; i < size; i++)
		if (data[i] == '^')
			data[i] = '\x1d';
	return code_read(&code, aim, data, size, TODAY, &fault);
}

static void verdict(bool should, bool is, long line, const char *text)
{
	if (should == is)
		tally_pass();
	else
		tally_fail("line %ld '%s': %s, should be %s (%s)", line, text, is ? "accepted" : "refused",
		           should ? "accepted" : "refused", fault.why);
}

static void bracketed(const json_t *args, long line)
{
	char is[4096] = "", should[4096] = "";
	bool ok = code_read(&code, "", arg(args, 1), strlen(arg(args, 1)), TODAY, &fault) == 0 &&
	          code.kind == CODE_GS1;
	verdict(is_true(args), ok, line, arg(args, 1));
	if (!ok || !is_true(args))
		return;
	elements_text(&code, is);
	if (!caret_elements(arg(args, 2), should) || strcmp(is, should))
		tally_fail("line %ld: '%s' and '%s' differ", line, is, should);
}

static void raw(const json_t *args, long line)
{
	const char *text = arg(args, 1);
	bool fnc1 = text[0] == '^';
	bool ok = read_as(fnc1 ? "]C1" : "", fnc1 ? text + 1 : text) == 0 && code.kind == CODE_GS1;
	verdict(is_true(args), ok, line, text);
}

static void pairs(const json_t *args, long line)
{
	const char *rule = arg(args, 1), *text = arg(args, 2);
	if (strstr(text, "(89)")) {
		tally_leave(
		    "identifier 89, which GS1 has not given out, allowed by a setting of that engine");
		return;
	}
	bool ok = code_read(&code, "", text, strlen(text), TODAY, &fault) == 0;
	if (!strcmp(rule, "validateAIrequisites")) {
		snprintf(fault.why, sizeof fault.why, "%s", code.wants);
		ok = ok && !code.wants[0];
	}
	verdict(is_true(args), ok, line, text);
}

/* (8001)1|X|34: the mark is round the wrong character. */
static void place(const json_t *args, long line)
{
	const char *text = arg(args, 0), *marked = arg(args, 1);
	size_t at = (size_t)(strchr(marked, '|') - marked);
	if (code_read(&code, "", text, strlen(text), TODAY, &fault) == 0)
		tally_fail("line %ld '%s': accepted", line, text);
	else if (fault.at != at)
		tally_fail("line %ld '%s': place %zu, should be %zu", line, text, fault.at, at);
	else
		tally_pass();
}

static void row(const json_t *args, long line, const char *call)
{
	fault = (struct code_fault){0, ""};
	if (!strcmp(call, "test_errMarkup"))
		place(args, line);
	else if (!strcmp(call, "test_validateAIs"))
		pairs(args, line);
	else if (strstr(arg(args, 1), "buf") || !strcmp(arg(args, 0), "ctx"))
		tally_leave("the text is a variable in the published test");
	else if (!strcmp(call, "test_parseAIdata"))
		bracketed(args, line);
	else if (!strcmp(call, "test_processAIdata"))
		raw(args, line);
	else
		tally_fail("line %ld: unknown test %s", line, call);
}

int main(void)
{
	each_row("gs1/ai.jsonl", row);
	return tally_end("GS1 element strings");
}
