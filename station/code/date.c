#include "code/date.h"

int date_days_in_month(int year, int month)
{
	static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	if (month < 1 || month > 12)
		return 0;
	int leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
	return month == 2 && leap ? 29 : days[month - 1];
}

int32_t date_make(int year, int month, int day)
{
	if (year < 0 || year > 9999 || day < 1 || day > date_days_in_month(year, month))
		return 0;
	return year * 10000 + month * 100 + day;
}

int32_t date_month_end(int year, int month)
{
	return date_make(year, month, date_days_in_month(year, month));
}

int32_t date_of_year(int year, int day_of_year)
{
	for (int month = 1; month <= 12; month++) {
		int days = date_days_in_month(year, month);
		if (day_of_year <= days)
			return date_make(year, month, day_of_year);
		day_of_year -= days;
	}
	return 0;
}

int date_year(int yy, int32_t today)
{
	if (today <= 0)
		return 2000 + yy;
	int now = today / 10000;
	int year = now - now % 100 + yy;
	if (year - now >= 51)
		return year - 100;
	if (year - now <= -50)
		return year + 100;
	return year;
}

int32_t date_digits(const char *digits, size_t size)
{
	int32_t n = 0;
	for (size_t i = 0; i < size; i++) {
		if (digits[i] < '0' || digits[i] > '9')
			return -1;
		n = n * 10 + (digits[i] - '0');
	}
	return n;
}
