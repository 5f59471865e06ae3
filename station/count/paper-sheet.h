/* Paper count sheets of a room: which were entered, and which must have been used before them. They are numbered, and taken
 * from the top; the station does not see that one was taken. So a sheet is owed once one behind it was entered. One that was
 * not used, or was spoilt, is entered as well, and its case cancelled.
 *
 * A case that comes from a sheet bears it as its label ("paper-3"; a case label is seven digits), so that the record
 * needs nothing new. What is entered of it is late, whoever enters it (rule 17). Pure.
 */
#ifndef BANDTALLY_COUNT_PAPER_SHEET_H
#define BANDTALLY_COUNT_PAPER_SHEET_H

#include <stdint.h>

#define PAPER_SHEETS_BACK 32 /* so far back it is remembered which were entered */
#define PAPER_LABEL_MAX 24

struct paper_sheets {     /* of one room; all zero: none was entered */
	int32_t highest;  /* that was entered */
	uint32_t entered; /* bit i: highest - i was */
	int32_t case_no;  /* that the last of them opened */
};

void paper_sheet_label(int32_t number, char out[PAPER_LABEL_MAX]);
int32_t paper_sheet_of(const char *label); /* 0 where it is no such label */

void paper_sheets_enter(struct paper_sheets *p, int32_t number, int32_t case_no);
/* 1 it was, 0 it was not, or lies too far back to be known. */
int paper_sheets_has(const struct paper_sheets *p, int32_t number);
/* The lowest number above `after` that is owed, 0 none: for (n = 0; (n = paper_sheets_owed(p, n));). */
int32_t paper_sheets_owed(const struct paper_sheets *p, int32_t after);

#endif
