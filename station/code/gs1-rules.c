#include "code/gs1-rules.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/hex.h"
#include "code/check-digit.h"
#include "code/date.h"
#include "code/gs1-coupon.h"
#include "code/gs1-sets.h"

/* One part of a value, while it is judged. */
struct part {
	const char *v;
	size_t n;
	int32_t today;
	struct code_fault *f;
};

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_in(const char *set, char c)
{
	return c && strchr(set, c);
}

static int not_digit(const struct part *p)
{
	return gs1_set_check('N', p->v, p->n, p->f);
}

static int must_be_long(const struct part *p, size_t n, const char *what)
{
	if (p->n != n)
		return fault_set(p->f, 0, "%s has %zu characters, not %zu", what, n, p->n);
	return not_digit(p);
}

static int character_of(const struct part *p, const char *set, const char *of)
{
	return gs1_only(p->v, p->n, set, of, p->f);
}

static int check_digit(const struct part *p)
{
	if (p->n < 1)
		return fault_set(p->f, 0, "there is no check digit");
	int r = not_digit(p);
	if (r < 0)
		return r;
	char should = check_mod10(p->v, p->n - 1);
	if (p->v[p->n - 1] != should)
		return fault_set(p->f, p->n - 1, "the check digit is %c and should be %c", p->v[p->n - 1],
		                 should);
	return 0;
}

static int check_two(const struct part *p)
{
	char should[2];
	if (p->n < 2)
		return fault_set(p->f, 0, "there is no pair of check characters");
	const struct part body = {p->v, p->n - 2, p->today, p->f};
	int r = gs1_set_check('X', body.v, body.n, p->f);
	if (r < 0)
		return r;
	if (!check_pair(body.v, body.n, should))
		return fault_set(p->f, 0, "it is too long for a pair of check characters");
	if (memcmp(p->v + body.n, should, 2))
		return fault_set(p->f, body.n, "the check characters should be %.2s", should);
	return 0;
}

static int prefix(const struct part *p, size_t skip)
{
	if (p->n < skip + 4)
		return fault_set(p->f, 0, "it is too short for a GS1 company prefix");
	for (size_t i = skip; i < skip + 4; i++)
		if (!is_digit(p->v[i]))
			return fault_set(p->f, i, "it must begin with a GS1 company prefix, which is digits");
	return 0;
}

/* `years` digits of year (2 or 4), month, day. */
static int a_date(const struct part *p, size_t years, bool day_0)
{
	int r = must_be_long(p, years + 4, "a date");
	if (r < 0)
		return r;
	int year = date_digits(p->v, years);
	int month = date_digits(p->v + years, 2), day = date_digits(p->v + years + 2, 2);
	if (years == 2)
		year = date_year(year, p->today);
	if (month < 1 || month > 12)
		return fault_set(p->f, years, "there is no month %02d", month);
	if (day_0 && day == 0)
		return 0;
	if (!date_make(year, month, day))
		return fault_set(p->f, years + 2, "%04d-%02d has no day %02d", year, month, day);
	return 0;
}

static int a_number_below(const struct part *p, size_t at, int limit, const char *what)
{
	int n = date_digits(p->v + at, 2);
	return n < limit ? 0 : fault_set(p->f, at, "there is no %s %d", what, n);
}

static int a_time(const struct part *p, size_t size, const char *first, int limit)
{
	int r = must_be_long(p, size, first);
	if (r == 0)
		r = a_number_below(p, 0, limit, first);
	if (r == 0 && size == 4)
		r = a_number_below(p, 2, 60, "minute");
	return r;
}

static int hyphen(const struct part *p)
{
	for (size_t i = 0; i < p->n; i++)
		if (p->v[i] != '-')
			return fault_set(p->f, 0, "only a hyphen may stand here, for minus");
	return p->n ? 0 : fault_set(p->f, 0, "a hyphen is missing, for minus");
}

static int iban(const struct part *p)
{
	char turned[40];
	if (p->n < 5)
		return fault_set(p->f, 0, "an IBAN is longer");
	if (p->n > 34)
		return fault_set(p->f, 0, "an IBAN has 34 characters at most");
	int r = character_of(p, GS1_DIGITS GS1_LETTERS, "the capital letters and digits of an IBAN");
	if (r < 0)
		return r;
	/* Kosovo has IBANs, but no code of ISO 3166. */
	if (memcmp(p->v, "XK", 2) && !gs1_is_country_letters(p->v))
		return fault_set(p->f, 0, "no country has the letters %.2s", p->v);
	memcpy(turned, p->v + 4, p->n - 4);
	memcpy(turned + p->n - 4, p->v, 4);
	if (check_mod97(turned, p->n) != 1)
		return fault_set(p->f, 2, "the check digits of this IBAN are wrong");
	return 0;
}

static int one_of(const struct part *p, const char *set, const char *what)
{
	if (p->n != 1 || !is_in(set, p->v[0]))
		return fault_set(p->f, 0, "%s", what);
	return 0;
}

static bool is_three_digits(const struct part *p)
{
	return p->n == 3 && is_digit(p->v[0]) && is_digit(p->v[1]) && is_digit(p->v[2]);
}

static int country(const struct part *p, bool or_999)
{
	if (is_three_digits(p) && (gs1_is_country(p->v) || (or_999 && !memcmp(p->v, "999", 3))))
		return 0;
	return fault_set(p->f, 0, "no country of ISO 3166 has this number");
}

static int country_letters(const struct part *p)
{
	if (p->n == 2 && gs1_is_country_letters(p->v))
		return 0;
	return fault_set(p->f, 0, "no country of ISO 3166 has these letters");
}

static int currency(const struct part *p)
{
	if (is_three_digits(p) && gs1_is_currency(p->v))
		return 0;
	return fault_set(p->f, 0, "no currency of ISO 4217 has this number");
}

static int degrees(const struct part *p, const char *most, const char *what)
{
	int r = must_be_long(p, 10, what);
	if (r < 0)
		return r;
	return memcmp(p->v, most, 10) <= 0 ? 0 : fault_set(p->f, 0, "a %s is %s at most", what, most);
}

static int medium(const struct part *p)
{
	int n = p->n == 2 ? date_digits(p->v, 2) : -1;
	if ((n >= 1 && n <= 10) || (n >= 80 && n <= 99))
		return 0;
	return fault_set(p->f, 0, "no kind of data carrier has this number");
}

static bool all_zero(const char *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (v[i] != '0')
			return false;
	return true;
}

static int not_zero(const struct part *p)
{
	int r = not_digit(p);
	if (r == 0 && all_zero(p->v, p->n))
		return fault_set(p->f, 0, "it must not be zero");
	return r;
}

static int no_zero_first(const struct part *p)
{
	int r = not_digit(p);
	if (r == 0 && p->n && p->v[0] == '0')
		return fault_set(p->f, 0, "it must not begin with zero");
	return r;
}

static int percent(const struct part *p)
{
	for (size_t i = 0; i < p->n; i++)
		if (p->v[i] == '%' &&
		    (i + 2 >= p->n || hex_value(p->v[i + 1]) < 0 || hex_value(p->v[i + 2]) < 0))
			return fault_set(p->f, i, "'%%' must stand before two hexadecimal digits");
	return 0;
}

static int piece(const struct part *p)
{
	if (p->n == 0 || p->n % 2)
		return fault_set(p->f, 0, "piece and total have the same number of digits");
	int r = not_digit(p);
	if (r < 0)
		return r;
	size_t half = p->n / 2;
	if (all_zero(p->v, half))
		return fault_set(p->f, 0, "there is no piece 0");
	if (all_zero(p->v + half, half))
		return fault_set(p->f, half, "there is no set of 0 pieces");
	if (memcmp(p->v, p->v + half, half) > 0)
		return fault_set(p->f, 0, "it is piece %.*s of only %.*s", (int)half, p->v, (int)half,
		                 p->v + half);
	return 0;
}

static int place_in_order(const struct part *p)
{
	const char *slash = memchr(p->v, '/', p->n);
	size_t place = slash ? (size_t)(slash - p->v) : 0, all = slash ? p->n - place - 1 : 0;
	if (!place || !all)
		return fault_set(p->f, 0, "it should read like 2/3, the second of three");
	for (size_t i = 0; i < p->n; i++)
		if (i != place && !is_digit(p->v[i]))
			return fault_set(p->f, 0, "it should read like 2/3, the second of three");
	if (p->v[0] == '0')
		return fault_set(p->f, 0, "the place must not begin with zero");
	if (slash[1] == '0')
		return fault_set(p->f, place + 1, "the total must not begin with zero");
	if (place > all || (place == all && memcmp(p->v, slash + 1, place) > 0))
		return fault_set(p->f, 0, "the place is beyond the total");
	return 0;
}

static int all_zeros(const struct part *p)
{
	if (!p->n || !all_zero(p->v, p->n))
		return fault_set(p->f, 0, "it must be zero");
	return 0;
}

static int some_letter(const struct part *p)
{
	for (size_t i = 0; i < p->n; i++)
		if (!is_digit(p->v[i]))
			return 0;
	return fault_set(p->f, 0, "it needs a character that is no digit");
}

static int package(const struct part *p)
{
	if (gs1_is_package(p->v, p->n))
		return 0;
	return fault_set(p->f, 0, "no kind of package of UNECE Recommendation 21 has this code");
}

int gs1_rule_check(enum gs1_rule rule, const char *value, size_t size, int32_t today,
                   struct code_fault *fault)
{
	const struct part p = {value, size, today, fault};
	switch (rule) {
	case RULE_NONE:
		return 0;
	case RULE_CHECK_DIGIT:
		return check_digit(&p);
	case RULE_CHECK_PAIR:
		return check_two(&p);
	case RULE_PREFIX:
		return prefix(&p, 0);
	case RULE_PREFIX_SECOND:
		return prefix(&p, 1);
	case RULE_DATE:
		return a_date(&p, 2, false);
	case RULE_DATE_0:
		return a_date(&p, 2, true);
	case RULE_DATE_LONG:
		return a_date(&p, 4, false);
	case RULE_DATE_LONG_0:
		return a_date(&p, 4, true);
	case RULE_HOUR:
		return a_time(&p, 2, "hour", 24);
	case RULE_HOUR_MINUTE:
		return a_time(&p, 4, "hour", 24);
	case RULE_MINUTE:
		return a_time(&p, 2, "minute", 60);
	case RULE_SECOND:
		return a_time(&p, 2, "second", 60);
	case RULE_HYPHEN:
		return hyphen(&p);
	case RULE_IBAN:
		return iban(&p);
	case RULE_IMPORTER:
		return one_of(&p, GS1_LETTERS GS1_LETTERS_SMALL GS1_DIGITS "-_",
		              "the importer's index is one letter or digit");
	case RULE_COUNTRY:
		return country(&p, false);
	case RULE_COUNTRY_OR_999:
		return country(&p, true);
	case RULE_COUNTRY_LETTERS:
		return country_letters(&p);
	case RULE_CURRENCY:
		return currency(&p);
	case RULE_SEX:
		return one_of(&p, "0129", "ISO 5218 knows 0, 1, 2 and 9");
	case RULE_LATITUDE:
		return degrees(&p, "1800000000", "latitude");
	case RULE_LONGITUDE:
		return degrees(&p, "3600000000", "longitude");
	case RULE_MEDIUM:
		return medium(&p);
	case RULE_NOT_ZERO:
		return not_zero(&p);
	case RULE_NO_ZERO_FIRST:
		return no_zero_first(&p);
	case RULE_PACKAGE:
		return package(&p);
	case RULE_PERCENT:
		return percent(&p);
	case RULE_PIECE:
		return piece(&p);
	case RULE_PLACE_IN_ORDER:
		return place_in_order(&p);
	case RULE_WINDING:
		return one_of(&p, "019", "a winding direction is 0, 1 or 9");
	case RULE_YES_NO:
		return one_of(&p, "01", "it is 0 for no or 1 for yes");
	case RULE_ZERO:
		return all_zeros(&p);
	case RULE_SOME_LETTER:
		return some_letter(&p);
	case RULE_COUPON:
		return gs1_coupon(value, size, today, fault);
	case RULE_COUPON_OFFER:
		return gs1_coupon_offer(value, size, fault);
	}
	return 0;
}
