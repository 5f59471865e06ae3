#include "code/code.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/aim.h"
#include "code/check-digit.h"
#include "code/date.h"
#include "code/gs1.h"
#include "code/hibc.h"

/* One scan while it is read: the data behind its AIM identifier. */
struct scan {
	const char *data;
	size_t size;
	struct aim aim;
	int32_t today;
	struct code_fault *fault;
};

const char *code_kind_name(enum code_kind kind)
{
	switch (kind) {
	case CODE_PLAIN:
		return "plain";
	case CODE_GS1:
		return "gs1";
	case CODE_HIBC:
		return "hibc";
	case CODE_TRADE_ITEM:
		return "trade item";
	case CODE_OWN:
		return "own";
	}
	return "";
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static size_t leading_digits(const char *s, size_t size)
{
	size_t n = 0;
	while (n < size && is_digit(s[n]))
		n++;
	return n;
}

static void copy(char *to, size_t room, const char *from)
{
	snprintf(to, room, "%s", from);
}

/* YYMMDD, day 00 the last of the month. The value was judged before. */
static int32_t date_of(const char *v, int32_t today)
{
	int year = date_year(date_digits(v, 2), today), month = date_digits(v + 2, 2),
	    day = date_digits(v + 4, 2);
	return day ? date_make(year, month, day) : date_month_end(year, month);
}

static void field_of(struct code *c, const struct code_element *e, int32_t today)
{
	const char *ai = e->ai, *v = e->value;
	if (!strcmp(ai, "01") || !strcmp(ai, "03"))
		copy(c->product, sizeof c->product, v);
	else if (!strcmp(ai, "8006"))
		snprintf(c->product, sizeof c->product, "%.14s", v);
	else if (!strcmp(ai, "10"))
		copy(c->lot, sizeof c->lot, v);
	else if (!strcmp(ai, "21"))
		copy(c->serial, sizeof c->serial, v);
	else if (!strcmp(ai, "17"))
		c->expiry = date_of(v, today);
	else if (!strcmp(ai, "11"))
		c->made = date_of(v, today);
	else if (!strcmp(ai, "30"))
		c->quantity = date_digits(v, strlen(v));
	else if (!strcmp(ai, "8003"))
		copy(c->grai, sizeof c->grai, v + 1);
	else if (!strcmp(ai, "8004"))
		copy(c->giai, sizeof c->giai, v);
	else if (!strcmp(ai, "8017"))
		copy(c->gsrn, sizeof c->gsrn, v);
}

/* Everything that follows from the elements; also after two symbols were joined. */
static void fill_gs1(struct code *c, int32_t today)
{
	c->kind = CODE_GS1;
	for (int i = 0; i < c->count; i++) {
		const struct code_element *e = &c->elements[i];
		field_of(c, e, today);
		c->patient = c->patient || code_is_patient(e->ai);
		if (!strcmp(e->ai, "7003") && !c->expiry) {
			c->expiry = date_of(e->value, today);
			c->expiry_hh = (uint8_t)date_digits(e->value + 6, 2);
		}
	}
	gs1_wants(c, c->wants, sizeof c->wants);
}

/* A lone (91) is ours when its value has our shape; then its check digits must be right. */
static int own_item(struct code *out, struct code_fault *fault)
{
	struct own_code own;
	const struct code_element *e = &out->elements[0];
	if (out->count != 1 || strcmp(e->ai, "91"))
		return 0;
	int r = own_code_read(e->value, strlen(e->value), &own, fault);
	if (r == -ENOENT || (r == 0 && own.kind != OWN_ITEM))
		return 0;
	if (r < 0) {
		if (fault)
			fault->at += e->at;
		return r;
	}
	out->kind = CODE_OWN;
	out->own = own;
	return 0;
}

/* `split` is one of the ways in which element strings are written. */
static int read_gs1(struct code *out, const struct scan *s,
                    int (*split)(struct code *, const char *, size_t, int32_t, struct code_fault *))
{
	int r = split(out, s->data, s->size, s->today, s->fault);
	if (r == 0)
		r = gs1_pairs(out, s->fault);
	if (r < 0)
		return r;
	fill_gs1(out, s->today);
	return own_item(out, s->fault);
}

/* `size` digits with a right check digit become a GTIN. */
static int read_gtin(struct code *out, const char *digits, size_t size, struct code_fault *fault)
{
	char should = check_mod10(digits, size - 1);
	if (digits[size - 1] != should)
		return fault_set(
		    fault, size - 1,
		    "the check digit of this trade item number is %c and should be %c: scan it again, or "
		    "look for a typing error",
		    digits[size - 1], should);
	out->kind = CODE_TRADE_ITEM;
	memset(out->product, '0', 14);
	memcpy(out->product + 14 - size, digits, size);
	struct code_element *e = &out->elements[out->count++];
	*e = (struct code_element){.ai = "01", .title = "GTIN", .kept = true};
	copy(e->value, sizeof e->value, out->product);
	return 0;
}

/* A symbology that carries nothing but trade item numbers: 13 digits (12 by scanners that strip the zero of
 * UPC-A), or 8, and `add_on` digits behind them, which are not read. */
static int read_ean(struct code *out, const struct scan *s, bool eight, bool add_on)
{
	size_t digits = leading_digits(s->data, s->size), size = s->size;
	if (digits < size)
		return fault_set(
		    s->fault, digits,
		    "only digits can stand in an EAN or UPC symbol: check the scanner with its check sheet");
	if (add_on)
		size = size == 18 || size == 17 ? size - 5 : size - (size > 2 ? 2 : 0);
	if (eight ? size != 8 : size != 13 && size != 12)
		return fault_set(
		    s->fault, s->size,
		    "an EAN or UPC symbol has %s digits, this %zu: scan it again, and check the scanner",
		    eight ? "8" : "13", size);
	return read_gtin(out, s->data, size, s->fault);
}

static int read_itf_cut(struct code *out, const struct scan *s)
{
	char digits[14];
	if (s->size != 13 || leading_digits(s->data, s->size) != 13)
		return -ENOENT;
	memcpy(digits, s->data, 13);
	digits[13] = check_mod10(digits, 13);
	return read_gtin(out, digits, 14, s->fault);
}

static bool carrier_unknown(const struct scan *s)
{
	return s->aim.meaning == AIM_NONE || s->aim.meaning == AIM_KEYBOARD;
}

static int read_digits(struct code *out, const struct scan *s)
{
	size_t n = s->size;
	if (leading_digits(s->data, n) != n || (n != 8 && n != 12 && n != 13 && n != 14))
		return -ENOENT;
	int r = read_gtin(out, s->data, n, NULL);
	if (r == 0)
		return 0;
	/* 8 and 12 digits are too often somebody's own number to be called a misread one. */
	bool surely = n >= 13 && carrier_unknown(s);
	return surely ? read_gtin(out, s->data, n, s->fault) : -ENOENT;
}

static bool announces_gs1(const struct scan *s)
{
	const struct gs1_ai *ai = gs1_find(s->data, s->size);
	if (memchr(s->data, GS1_SEPARATOR, s->size))
		return true;
	return ai && ai->first[0] == '0' && ai->first[1] <= '2' &&
	       leading_digits(s->data, s->size) >= 2 + gs1_length_max(ai);
}

/* Step 5 of code.h: the shapes that are hardly anything else. */
static bool looks_like_gs1(const struct scan *s)
{
	const struct gs1_ai *ai = gs1_find(s->data, s->size);
	if (!ai || !carrier_unknown(s))
		return false;
	size_t head = strlen(ai->first), rest = s->size - head;
	struct own_code own;
	if (!strcmp(ai->first, "11") || !strcmp(ai->first, "17"))
		return rest > 6;
	if (!strcmp(ai->first, "8004"))
		return rest >= 12;
	if (!memcmp(s->data, "91", 2))
		return own_code_read(s->data + 2, rest, &own, NULL) != -ENOENT;
	return !strcmp(ai->first, "8003") || !strcmp(ai->first, "8017");
}

static int read_likely_gs1(struct code *out, const struct scan *s)
{
	if (!looks_like_gs1(s))
		return -ENOENT;
	struct scan quiet = *s;
	quiet.fault = memcmp(s->data, "91", 2) ? NULL : s->fault;
	int r = read_gs1(out, &quiet, gs1_split);
	if (r < 0 && !memcmp(s->data, "91", 2))
		return r; /* one of our labels, misread */
	if (r < 0)
		*out = (struct code){0};
	return r < 0 ? -ENOENT : 0;
}

/* Length of the UTF-8 character that begins here, 0 where none does. */
static size_t utf8(const unsigned char *p, size_t left)
{
	static const unsigned least[] = {0, 0, 0x80, 0x800, 0x10000};
	size_t n = p[0] < 0x80 ? 1 : p[0] >= 0xC2 && p[0] < 0xE0 ? 2 : (p[0] & 0xF0) == 0xE0 ? 3 : 0;
	if ((p[0] & 0xF8) == 0xF0 && p[0] <= 0xF4)
		n = 4;
	if (n < 2 || n > left)
		return n == 1 ? 1 : 0;
	unsigned c = p[0] & (0x7Fu >> n);
	for (size_t i = 1; i < n; i++) {
		if ((p[i] & 0xC0) != 0x80)
			return 0;
		c = c << 6 | (p[i] & 0x3Fu);
	}
	return c < least[n] || (c >= 0xD800 && c < 0xE000) || c > 0x10FFFF ? 0 : n;
}

/* ISO/IEC 15434 wraps other data in control characters that belong there: "[)>" RS … EOT. */
static bool is_envelope(const struct scan *s)
{
	return s->size > 4 && !memcmp(s->data, "[)>\x1e", 4);
}

static int read_plain(struct code *out, const struct scan *s)
{
	size_t to = 0;
	bool full = false;
	for (size_t i = 0, n; i < s->size; i += n) {
		unsigned char c = (unsigned char)s->data[i];
		bool control = c < 0x20 || c == 0x7f;
		n = utf8((const unsigned char *)s->data + i, s->size - i);
		if (!n)
			return fault_set(
			    s->fault, i,
			    "byte 0x%02x is no text in UTF-8: check the scanner with its check sheet", c);
		if (control && (c == 0 || !is_envelope(s)))
			return fault_set(
			    s->fault, i,
			    "a control character, 0x%02x, stands in a code without a known form: check the "
			    "scanner with its check sheet",
			    c);
		full = full || to + (control ? 4 : n) > CODE_PLAIN_MAX - 4;
		if (full)
			continue;
		if (control)
			to += (size_t)snprintf(out->plain + to, 5, "\\x%02x", c);
		else
			memcpy(out->plain + to, s->data + i, n), to += n;
	}
	copy(out->plain + to, CODE_PLAIN_MAX - to, full ? "…" : "");
	return 0;
}

/* Where in a text character `at` stands, spaces not counted. */
static size_t with_spaces(const struct scan *s, size_t at)
{
	size_t i = 0;
	for (; i < s->size && (s->data[i] == ' ' || at > 0); i++)
		at -= s->data[i] != ' ';
	return i;
}

/* One of ours as it stands on paper: in groups, and an item label's with or without its identifier. */
static int read_grouped(struct code *out, const struct scan *s)
{
	char t[OWN_CODE_MAX + 4];
	size_t n = 0;
	if (!memchr(s->data, ' ', s->size))
		return -ENOENT;
	for (size_t i = 0; i < s->size; i++) {
		if (s->data[i] == ' ')
			continue;
		if (n == sizeof t)
			return -ENOENT;
		t[n++] = s->data[i];
	}
	size_t head = n > 4 && !memcmp(t, "(91)", 4) ? 4 : n > 2 && !memcmp(t, "91", 2) ? 2 : 0;
	int r = own_code_read(t + head, n - head, &out->own, s->fault);
	if (r < 0 && r != -ENOENT && s->fault)
		s->fault->at = with_spaces(s, s->fault->at + head);
	return r;
}

/* The order that code.h states. */
static int decide(struct code *out, const struct scan *s)
{
	int r = own_code_read(s->data, s->size, &out->own, s->fault);
	if (r == -ENOENT)
		r = read_grouped(out, s);
	if (r == 0)
		out->kind = CODE_OWN;
	if (r != -ENOENT)
		return r;
	if (s->data[0] == '+')
		return hibc_read(out, s->data, s->size, s->today, s->fault);
	r = read_digits(out, s);
	if (r == -ENOENT && s->size > 3 && s->data[0] == '(' && is_digit(s->data[1]))
		return read_gs1(out, s, gs1_split_bracketed);
	if (r == -ENOENT && !is_envelope(s) && announces_gs1(s))
		return read_gs1(out, s, gs1_split);
	if (r == -ENOENT)
		r = read_gs1(out, s, gs1_split_link);
	if (r == -ENOENT)
		r = read_likely_gs1(out, s);
	return r == -ENOENT ? read_plain(out, s) : r;
}

static int by_carrier(struct code *out, const struct scan *s)
{
	int r = -ENOENT;
	switch (s->aim.meaning) {
	case AIM_GS1:
		return read_gs1(out, s, gs1_split);
	case AIM_EAN:
		return read_ean(out, s, false, false);
	case AIM_EAN_8:
		return read_ean(out, s, true, false);
	case AIM_EAN_ADD_ON:
		return read_ean(out, s, false, true);
	case AIM_ADD_ON:
		return fault_set(
		    s->fault, 0,
		    "this is only the add-on beside a code: scan the large code, and switch add-ons off");
	case AIM_ITF_CUT:
		r = read_itf_cut(out, s);
		break;
	case AIM_FULL_ASCII:
		if (s->data[0] >= 'a' && s->data[0] <= 'z')
			return fault_set(s->fault, 0,
			                 "the scanner reads Code 39 as Full ASCII, which spoils HIBC codes: "
			                 "switch Full ASCII "
			                 "off in it, then scan again");
		break;
	case AIM_ITF:
	case AIM_ANY:
	case AIM_NONE:
	case AIM_KEYBOARD:
		break;
	}
	return r == -ENOENT ? decide(out, s) : r;
}

static enum code_carrier carrier_of(const struct scan *s)
{
	if (carrier_unknown(s))
		return CARRIER_UNKNOWN;
	return s->aim.meaning == AIM_GS1 ? CARRIER_GS1 : CARRIER_OTHER;
}

int code_read(struct code *out, const char *aim, const void *data, size_t size, int32_t today,
              struct code_fault *fault)
{
	struct scan s = {data, size, {AIM_NONE, ""}, today, fault};
	struct aim inside;
	size_t skipped = 0;
	*out = (struct code){0};
	aim_read(aim, strlen(aim), &s.aim);
	if (aim_read(data, size, &inside)) {
		if (s.aim.meaning == AIM_NONE)
			s.aim = inside;
		skipped = 3;
		s.data += skipped;
		s.size -= skipped;
	}
	if (!s.size)
		return fault_set(fault, skipped, "the code is empty: scan it again, and check the scanner");
	if (size > CODE_BYTES_MAX)
		return fault_set(fault, CODE_BYTES_MAX,
		                 "the code has %zu bytes and no pack bears more than %d: this is no code for "
		                 "a count sheet, "
		                 "scan another",
		                 size, CODE_BYTES_MAX);
	int r = by_carrier(out, &s);
	if (r < 0) {
		*out = (struct code){0};
		if (fault)
			fault->at += skipped;
		return r;
	}
	for (int i = 0; i < out->count; i++)
		out->elements[i].at += skipped;
	out->carrier = carrier_of(&s);
	if (out->carrier == CARRIER_UNKNOWN && memchr(s.data, GS1_SEPARATOR, s.size) && out->kind == CODE_GS1)
		out->carrier = CARRIER_GS1;
	return 0;
}
