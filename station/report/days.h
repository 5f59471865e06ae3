/* Civil days as numbers, for figures by week and month; nothing here knows hours or zones. A day is yyyymmdd, as the record's
 * rows have it; its number counts days from 1970-01-01 on (proleptic Gregorian calendar). */
#ifndef BANDTALLY_REPORT_DAYS_H
#define BANDTALLY_REPORT_DAYS_H

#include <stdint.h>

#include "report/source.h"

int64_t day_number(int32_t day);
int32_t day_of_number(int64_t number);
int day_exists(int32_t day);                 /* 1 where the calendar has it; years 1 to 9999 */
int32_t day_week(int32_t day);               /* the Monday of its week */
static inline int32_t day_month(int32_t day) /* yyyymm */
{
	return day / 100;
}

/* From the first day of a month to the last of another of that year, 1 to 12. */
struct source_span days_of_months(int year, int first, int last);

void day_text(int32_t day, char out[11]); /* "2026-11-25" */

#endif
