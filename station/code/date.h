/* Calendar dates as barcodes have them: two-digit years, day 00, days of the year. Gregorian; a date is
 * yyyymmdd in an int32_t, 0 for none. */
#ifndef BANDTALLY_CODE_DATE_H
#define BANDTALLY_CODE_DATE_H

#include <stddef.h>
#include <stdint.h>

int date_days_in_month(int year, int month); /* 0 where there is no such month */

/* yyyymmdd, 0 where there is no such day. Day 0 is none either: see date_month_end. */
int32_t date_make(int year, int month, int day);
int32_t date_month_end(int year, int month);     /* last day of that month, 0 where no such month */
int32_t date_of_year(int year, int day_of_year); /* day 1 to 365 or 366, 0 otherwise */

/* The century of a two-digit year, GS1 General Specifications section 7.12: of the years that end in `yy`,
 * the one from 49 years before to 50 years after today's. `today` yyyymmdd; 0 or less: 2000 to 2099. */
int date_year(int yy, int32_t today);

/* The number that `size` digits spell, -1 where one is no digit. At most 9 digits. */
int32_t date_digits(const char *digits, size_t size);

#endif
