#include "count/paper-sheet.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define LABEL "paper-"

void paper_sheet_label(int32_t number, char out[PAPER_LABEL_MAX])
{
	snprintf(out, PAPER_LABEL_MAX, LABEL "%d", (int)number);
}

int32_t paper_sheet_of(const char *label)
{
	const char *digits = label + sizeof LABEL - 1;
	if (strncmp(label, LABEL, sizeof LABEL - 1) != 0 || !*digits || strlen(digits) > 5 ||
	    strspn(digits, "0123456789") != strlen(digits))
		return 0;
	return (int32_t)strtol(digits, NULL, 10);
}

void paper_sheets_enter(struct paper_sheets *p, int32_t number, int32_t case_no)
{
	if (number > p->highest) {
		int32_t on = number - p->highest;
		p->entered = on < PAPER_SHEETS_BACK ? p->entered << on : 0;
		p->highest = number;
	}
	if (p->highest - number < PAPER_SHEETS_BACK)
		p->entered |= 1u << (p->highest - number);
	p->case_no = case_no;
}

int paper_sheets_has(const struct paper_sheets *p, int32_t number)
{
	int32_t back = p->highest - number;
	return back >= 0 && back < PAPER_SHEETS_BACK && (p->entered >> back & 1);
}

int32_t paper_sheets_owed(const struct paper_sheets *p, int32_t after)
{
	int32_t first = p->highest - PAPER_SHEETS_BACK + 1;
	for (int32_t n = after + 1 > first ? after + 1 : first; n < p->highest; n++)
		if (n > 0 && !paper_sheets_has(p, n))
			return n;
	return 0;
}
