#include "code/hibc.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/check-digit.h"
#include "code/date.h"

#define AGAIN "scan it again; if it stays so, put this pack aside"
#define LOT_MAX 18 /* lot and serial: at most 18 characters each */
#define PCN_MAX 18
#define YEAR_MIN 1900 /* ours: no pack is older, and an earlier year is no year that was meant */

/* The text without its check character, while it is read. */
struct reader {
	const char *text;
	size_t size, at;
	int32_t today;
	struct code *out;
	struct code_fault *fault;
};

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return c >= 'A' && c <= 'Z';
}

static int digits_here(const struct reader *r, size_t most)
{
	size_t n = 0;
	while (n < most && r->at + n < r->size && is_digit(r->text[r->at + n]))
		n++;
	return (int)n;
}

static int add(struct reader *r, const char *ai, const char *title, size_t at, size_t size)
{
	if (r->out->count == CODE_ELEMENTS_MAX)
		return fault_set(r->fault, at, "it has more than %d parts: " AGAIN, CODE_ELEMENTS_MAX);
	struct code_element *e = &r->out->elements[r->out->count++];
	*e = (struct code_element){.title = title, .at = at, .kept = true};
	snprintf(e->ai, sizeof e->ai, "%s", ai);
	memcpy(e->value, r->text + at, size);
	return 0;
}

/* The rest of this part, up to '/' or the end. */
static size_t rest_of_part(const struct reader *r)
{
	const char *slash = memchr(r->text + r->at, '/', r->size - r->at);
	return slash ? (size_t)(slash - r->text) - r->at : r->size - r->at;
}

static int take_lot(struct reader *r, bool serial, bool may_be_empty)
{
	size_t size = rest_of_part(r), at = r->at;
	const char *what = serial ? "serial number" : "lot";
	if (!size)
		return may_be_empty ? 0 : fault_set(r->fault, at, "the %s is missing: " AGAIN, what);
	if (size > LOT_MAX)
		return fault_set(r->fault, at + LOT_MAX, "the %s has %zu characters of at most %d: " AGAIN,
		                 what, size, LOT_MAX);
	snprintf(serial ? r->out->serial : r->out->lot, 31, "%.*s", (int)size, r->text + at);
	r->at += size;
	return serial ? add(r, "SER", "serial number", at, size) : add(r, "LOT", "lot", at, size);
}

static int take_quantity(struct reader *r, size_t least, size_t most)
{
	size_t at = r->at;
	int n = digits_here(r, most);
	if (n < (int)least)
		return fault_set(r->fault, at, "a quantity of %zu digits should stand here: " AGAIN, least);
	r->out->quantity = date_digits(r->text + at, (size_t)n);
	r->at += (size_t)n;
	return add(r, "QTY", "quantity", at, (size_t)n);
}

/* How the digits of a date are laid out: where year, month, day and hour stand, -1 for none. `ddd` is the day
 * of the year. A month without a day means its last. */
struct form {
	char flag; /* after '$$'; '0' stands for both of MMYY's first digits */
	int size, year, month, day, ddd, hour;
};
static const struct form forms[] = {
    {'0', 4, 2, 0, -1, -1, -1}, {'2', 6, 4, 0, 2, -1, -1},  {'3', 6, 0, 2, 4, -1, -1},
    {'4', 8, 0, 2, 4, -1, 6},   {'5', 5, 0, -1, -1, 2, -1}, {'6', 7, 0, -1, -1, 2, 5},
};

static int take_date(struct reader *r, const struct form *form)
{
	const char *d = r->text + r->at;
	size_t at = r->at, size = (size_t)form->size;
	if (digits_here(r, size) < form->size)
		return fault_set(r->fault, at, "a date of %d digits should stand here: " AGAIN, form->size);
	int year = date_year(date_digits(d + form->year, 2), r->today);
	int32_t date;
	if (form->ddd >= 0)
		date = date_of_year(year, date_digits(d + form->ddd, 3));
	else if (form->day >= 0)
		date = date_make(year, date_digits(d + form->month, 2), date_digits(d + form->day, 2));
	else
		date = date_month_end(year, date_digits(d + form->month, 2));
	int hour = form->hour >= 0 ? date_digits(d + form->hour, 2) : 0;
	if (!date || hour > 23)
		return fault_set(r->fault, at, "%.*s is no date: " AGAIN, form->size, d);
	r->out->expiry = date;
	r->out->expiry_hh = (uint8_t)hour;
	r->at += size;
	return add(r, "EXP", "use by", at, size);
}

/* Behind '$$' and '$$+': an optional quantity, a date or '7' for none, then lot or serial. */
static int take_dollars(struct reader *r)
{
	bool serial = r->at < r->size && r->text[r->at] == '+';
	r->at += serial;
	char flag = r->at < r->size ? r->text[r->at] : '\0';
	if (flag == '8' || flag == '9') {
		r->at++;
		int e = take_quantity(r, flag == '8' ? 2 : 5, flag == '8' ? 2 : 5);
		if (e < 0)
			return e;
		flag = r->at < r->size ? r->text[r->at] : '\0';
		if (!rest_of_part(r))
			return 0;
	}
	if (flag == '7') {
		r->at++;
		return take_lot(r, serial, true);
	}
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		const struct form *form = &forms[i];
		if (form->flag != flag && !(form->flag == '0' && flag == '1'))
			continue;
		r->at += form->flag != '0';
		int e = take_date(r, form);
		return e < 0 ? e : take_lot(r, serial, true);
	}
	return fault_set(r->fault, r->at, "behind $$ a date should follow, or 7 for none: " AGAIN);
}

static int take_long_date(struct reader *r, bool made)
{
	size_t at = r->at, size = rest_of_part(r);
	const char *d = r->text + at;
	int32_t date = 0;
	if (size == 8 && digits_here(r, 8) == 8 && date_digits(d, 4) >= YEAR_MIN)
		date = date_make(date_digits(d, 4), date_digits(d + 4, 2), date_digits(d + 6, 2));
	else if (size == 6 && digits_here(r, 6) == 6)
		date = date_make(date_year(date_digits(d, 2), r->today), date_digits(d + 2, 2),
		                 date_digits(d + 4, 2));
	if (!date)
		return fault_set(r->fault, at, "a date as YYYYMMDD should stand here: " AGAIN);
	if (made)
		r->out->made = date;
	else
		r->out->expiry = date;
	r->at += size;
	return made ? add(r, "MFG", "made", at, size) : add(r, "EXP", "use by", at, size);
}

static bool begins(struct reader *r, const char *with)
{
	size_t n = strlen(with);
	if (r->size - r->at < n || memcmp(r->text + r->at, with, n))
		return false;
	r->at += n;
	return true;
}

static int take_part(struct reader *r)
{
	if (begins(r, "$$"))
		return take_dollars(r);
	if (begins(r, "$+"))
		return take_lot(r, true, true);
	if (begins(r, "$"))
		return take_lot(r, false, true);
	if (begins(r, "S"))
		return take_lot(r, true, false);
	if (begins(r, "14D"))
		return take_long_date(r, false);
	if (begins(r, "16D"))
		return take_long_date(r, true);
	if (begins(r, "Q"))
		return take_quantity(r, 1, 9);
	if (digits_here(r, 5) == 5) {
		int e = take_date(r, &forms[4]);
		return e < 0 ? e : take_lot(r, false, true);
	}
	return fault_set(r->fault, r->at, "no part of a HIBC code begins so: " AGAIN);
}

static int take_parts(struct reader *r)
{
	for (;;) {
		int e = take_part(r);
		if (e < 0)
			return e;
		if (r->at == r->size)
			return 0;
		if (r->text[r->at] != '/')
			return fault_set(r->fault, r->at, "the next part should begin with '/': " AGAIN);
		r->at++;
	}
}

/* Labeler, product and unit, up to '/' or the end. */
static int take_primary(struct reader *r)
{
	size_t size = rest_of_part(r), at = r->at;
	for (size_t i = at; i < at + size; i++) {
		if (r->text[i] == '+')
			return fault_set(
			    r->fault, i,
			    "a second HIBC code begins here: set the scanner to send one code at a time");
		if (!is_digit(r->text[i]) && !is_letter(r->text[i]))
			return fault_set(r->fault, i,
			                 "labeler and product are capital letters and digits: " AGAIN);
	}
	if (size < 6 || size > 4 + PCN_MAX + 1)
		return fault_set(r->fault, at,
		                 "labeler, product and unit have 6 to %d characters, these %zu: " AGAIN,
		                 4 + PCN_MAX + 1, size);
	if (!is_digit(r->text[at + size - 1]))
		return fault_set(r->fault, at + size - 1, "the unit of measure is a digit: " AGAIN);
	snprintf(r->out->product, sizeof r->out->product, "+%.*s", (int)size, r->text + at);
	r->at += size;
	int e = add(r, "LIC", "labeler", at, 4);
	if (e == 0)
		e = add(r, "PCN", "product", at + 4, size - 5);
	return e < 0 ? e : add(r, "U", "unit of measure", at + size - 1, 1);
}

/* The last character before the check is the link; what stands before it are parts. */
static int take_secondary(struct reader *r)
{
	if (r->size - r->at < 2)
		return fault_set(r->fault, r->at, "the code is cut short: " AGAIN);
	r->out->link = r->text[--r->size];
	snprintf(r->out->wants, sizeof r->out->wants, "the secondary with link %c needs its primary",
	         r->out->link);
	return take_parts(r);
}

static int check_all(const char *text, size_t size, struct code_fault *f)
{
	for (size_t i = 0; i < size; i++)
		if (!check_mod43(text + i, 1)) {
			bool small = text[i] >= 'a' && text[i] <= 'z';
			return fault_set(
			    f, i,
			    small ? "HIBC has no small letters: switch Caps Lock off, or check the "
			            "scanner with its check sheet"
			          : "HIBC has no such character: " AGAIN);
		}
	if (size < 4)
		return fault_set(f, size, "the code is cut short: " AGAIN);
	char should = check_mod43(text, size - 1);
	if (text[size - 1] != should)
		return fault_set(f, size - 1, "the check character is '%c' and should be '%c': " AGAIN,
		                 text[size - 1], should);
	return 0;
}

/* A primary begins with the letter of its labeler and ends with the digit of its unit. A secondary that
 * carries a serial or a quantity alone begins with a letter too, and has its link where a primary has the
 * digit. */
static bool is_secondary(const char *text, size_t size)
{
	if (!is_letter(text[1]))
		return true;
	return (text[1] == 'S' || text[1] == 'Q') && !is_digit(text[size - 2]) &&
	       !memchr(text, '/', size - 2);
}

int hibc_read(struct code *out, const char *text, size_t size, int32_t today, struct code_fault *fault)
{
	struct reader r = {text, size ? size - 1 : 0, 1, today, out, fault};
	int e = check_all(text, size, fault);
	if (e < 0)
		return e;
	*out = (struct code){.kind = CODE_HIBC};
	if (text[1] == '/') {
		out->patient = true; /* Provider Applications: may be one, so is treated as one */
		return 0;
	}
	if (is_secondary(text, size))
		return take_secondary(&r);
	out->check = text[size - 1];
	e = take_primary(&r);
	if (e < 0 || r.at == r.size)
		return e;
	out->check = '\0'; /* combined: the check is over everything and links to nothing */
	r.at++;
	return take_parts(&r);
}
