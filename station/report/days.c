#include "report/days.h"

#include <stdio.h>

static int leap(int year)
{
	return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

static int month_days(int year, int month)
{
	static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	return month == 2 && leap(year) ? 29 : days[month - 1];
}

/* Days before the first of the year 1970 is none: years of 365 days and the leap days between. */
static int64_t before_year(int year)
{
	int64_t y = year - 1;
	return 365 * y + y / 4 - y / 100 + y / 400 - 719162;
}

int day_exists(int32_t day)
{
	int year = day / 10000, month = day / 100 % 100, d = day % 100;
	return year >= 1 && year <= 9999 && month >= 1 && month <= 12 && d >= 1 &&
	       d <= month_days(year, month);
}

int64_t day_number(int32_t day)
{
	int year = day / 10000, month = day / 100 % 100;
	int64_t n = before_year(year) + day % 100 - 1;
	for (int m = 1; m < month; m++)
		n += month_days(year, m);
	return n;
}

int32_t day_of_number(int64_t number)
{
	int year = (int)(1969 + number / (number < 0 ? 365 : 366)), month = 1; /* or before it */
	while (before_year(year + 1) <= number)
		year++;
	int64_t left = number - before_year(year);
	for (; left >= month_days(year, month); month++)
		left -= month_days(year, month);
	return (int32_t)(year * 10000 + month * 100 + left + 1);
}

int32_t day_week(int32_t day)
{
	int64_t n = day_number(day); /* 1970-01-01 was a Thursday */
	return day_of_number(n - ((n + 3) % 7 + 7) % 7);
}

void day_text(int32_t day, char out[11])
{
	snprintf(out, 11, "%04u-%02u-%02u", (unsigned)day / 10000 % 10000, (unsigned)day / 100 % 100,
	         (unsigned)day % 100);
}

struct source_span days_of_months(int year, int first, int last)
{
	int32_t next = last == 12 ? (year + 1) * 10000 + 101 : year * 10000 + (last + 1) * 100 + 1;
	return (struct source_span){year * 10000 + first * 100 + 1, day_of_number(day_number(next) - 1)};
}
