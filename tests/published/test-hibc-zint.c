/* HIBC text as an encoder writes it, check character included: github zint/zint, encoder tests, commit
 * 6ac010af (BSD-3-Clause). The encoder takes any text, so here only the check character is compared. */
#include <string.h>

#include "code/check-digit.h"
#include "shared.h"

static void row(const json_t *args, long line, const char *call)
{
	(void)call;
	bool any = false;
	for (size_t i = 0; i < json_array_size(args); i++) {
		const char *text = arg(args, i);
		size_t size = strlen(text);
		if (text[0] == '*' && text[1] == '+' &&
		    text[size - 1] == '*') { /* start and stop of Code 39 */
			text++;
			size -= 2;
		}
		if (text[0] != '+' || size < 3)
			continue;
		any = true;
		if (check_mod43(text, size - 1) == text[size - 1])
			tally_pass();
		else
			tally_fail("line %ld '%s': check character", line, text);
	}
	if (!any)
		tally_leave("no text with its check character in the row: about sizes and pictures");
}

int main(void)
{
	each_row("hibc/zint_hibc.jsonl", row);
	return tally_end("HIBC check characters");
}
