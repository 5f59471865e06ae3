#include "code/gs1-coupon.h"

#include <errno.h>
#include <stdbool.h>
#include <string.h>

#include "code/date.h"
#include "code/gs1-sets.h"

/* A reader that walks the digits; the first fault stays. */
struct walk {
	const char *v;
	size_t n, at;
	struct code_fault *f;
	int result;
};

static size_t left(const struct walk *w)
{
	return w->n - w->at;
}

static void refuse(struct walk *w, size_t at, const char *why)
{
	if (w->result == 0)
		w->result = fault_set(w->f, at, "%s", why);
}

/* Steps over `size` digits. False, and a fault, where they are not there. */
static bool take(struct walk *w, size_t size, const char *what)
{
	if (w->result < 0)
		return false;
	if (left(w) < size) {
		w->result = fault_set(w->f, w->at, "the coupon's %s is cut short", what);
		return false;
	}
	w->at += size;
	return true;
}

/* One digit, -1 where it is not there or is above `most`. */
static int digit(struct walk *w, int least, int most, const char *what)
{
	if (!take(w, 1, what))
		return -1;
	int d = w->v[w->at - 1] - '0';
	if (d >= least && d <= most)
		return d;
	w->result = fault_set(w->f, w->at - 1, "the coupon's %s cannot be %d", what, d);
	return -1;
}

/* A length of `least` to `most`, then as many digits and `more`. */
static bool counted(struct walk *w, int least, int most, int more, const char *what)
{
	int length = digit(w, least, most, what);
	return length >= 0 && take(w, (size_t)(length + more), what);
}

static bool company(struct walk *w, bool or_9, const char *what)
{
	if (or_9 && w->result == 0 && left(w) && w->v[w->at] == '9') { /* the same company as the first */
		w->at++;
		return true;
	}
	return counted(w, 0, 6, 6, what);
}

/* What must be bought: how much, in which unit (0-4, 9), of which family. */
static bool purchase(struct walk *w, const char *what)
{
	if (!counted(w, 1, 5, 0, what))
		return false;
	int unit = digit(w, 0, 9, what);
	if (unit > 4 && unit < 9)
		refuse(w, w->at - 1, "there is no such code for what must be bought");
	return unit >= 0 && take(w, 3, "family code");
}

/* YYMMDD of field 3 or 4, as yyyymmdd. */
static int32_t a_day(struct walk *w, int32_t today, const char *what)
{
	if (!take(w, 6, what))
		return 0;
	const char *d = w->v + w->at - 6;
	int32_t day =
	    date_make(date_year(date_digits(d, 2), today), date_digits(d + 2, 2), date_digits(d + 4, 2));
	if (!day)
		refuse(w, w->at - 6, "the coupon's date does not exist");
	return day;
}

static void second_purchase(struct walk *w)
{
	int rule = digit(w, 0, 9, "rule for further purchases");
	if (rule > 3)
		refuse(w, w->at - 1, "there is no such rule for further purchases");
	if (rule >= 0 && purchase(w, "second purchase"))
		company(w, true, "second company");
}

static void last_field(struct walk *w)
{
	int kind = digit(w, 0, 9, "kind of saving");
	if (kind > 2 && kind != 5 && kind != 6)
		refuse(w, w->at - 1, "there is no such kind of saving");
	digit(w, 0, 2, "item that the saving applies to");
	digit(w, 0, 9, "store coupon flag");
	digit(w, 0, 1, "flag against multiplying");
}

static int digits_only(const char *value, size_t size, struct code_fault *fault)
{
	return gs1_set_check('N', value, size, fault);
}

/* The optional fields come in the order of their numbers: 1, 2, 3, 4, 5, 6, 9. */
static void optional_fields(struct walk *w, int32_t today)
{
	int32_t ends = 0, starts = 0;
	size_t dates = 0;
	for (char last = '0'; w->result == 0 && left(w);) {
		char field = w->v[w->at];
		if (field <= last || field == '7' || field == '8') {
			refuse(w, w->at, "the coupon has digits behind its end");
			return;
		}
		if (field == '3')
			dates = w->at;
		last = field;
		w->at++;
		if (field == '1')
			second_purchase(w);
		else if (field == '2' && purchase(w, "third purchase"))
			company(w, true, "third company");
		else if (field == '3')
			ends = a_day(w, today, "last day");
		else if (field == '4')
			starts = a_day(w, today, "first day");
		else if (field == '5')
			counted(w, 0, 9, 6, "serial number");
		else if (field == '6')
			counted(w, 1, 7, 6, "retailer");
		else if (field == '9')
			last_field(w);
	}
	if (ends && starts && ends < starts)
		refuse(w, dates, "the coupon ends before it starts");
}

int gs1_coupon(const char *value, size_t size, int32_t today, struct code_fault *fault)
{
	struct walk w = {value, size, 0, fault, digits_only(value, size, fault)};
	company(&w, false, "company prefix");
	take(&w, 6, "offer code");
	counted(&w, 1, 5, 0, "value");
	purchase(&w, "purchase");
	if (w.result == 0)
		optional_fields(&w, today);
	return w.result;
}

int gs1_coupon_offer(const char *value, size_t size, struct code_fault *fault)
{
	struct walk w = {value, size, 0, fault, digits_only(value, size, fault)};
	digit(&w, 0, 1, "format");
	company(&w, false, "funder");
	take(&w, 6, "offer code");
	counted(&w, 0, 9, 6, "serial number");
	if (w.result == 0 && left(&w))
		refuse(&w, w.at, "the coupon has digits behind its end");
	return w.result;
}
