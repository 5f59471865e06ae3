/* The charts of a report, from rows in the order of their opening. Only figures.c includes this. */
#ifndef BANDTALLY_REPORT_CHARTS_H
#define BANDTALLY_REPORT_CHARTS_H

#include <stddef.h>

#include "report/figures.h"

struct rows {
	const struct case_row *list;
	size_t count;
};

/* The mean logarithm of groups of as many tourniquets each, one after another, of a part of hand or foot (0: all). What is
 * still on, or at least so long, has no logarithm yet. 0 or -ENOMEM. */
int chart_minutes(struct chart *c, struct rows rows, int part);

/* Cases between those with a discrepancy. */
int chart_between_cases(struct chart *c, struct rows rows);

/* Days between cases that ended unresolved, by `days` (with parts of a day) in order; `end`: until when. */
int chart_between_days(struct chart *c, const double *days, int n, double end, double *chance);

/* Slips that no scanner read back, by month, or by week where the span is short. */
void chart_slips(struct chart *c, struct rows rows, int by_week);

/* Whether it ended with a count: neither cancelled nor open. */
int row_counted(const struct case_row *row);

#endif
