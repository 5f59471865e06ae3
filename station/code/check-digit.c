#include "code/check-digit.h"

#include <string.h>

static const char set43[] = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%";
static const char set82[] =
    "!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz";
static const char set32[] = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"; /* without 0 O 1 I, which people confuse */

/* -1 for a character outside the set, NUL included (strchr would find the terminator). */
static int value_in(const char *set, char c)
{
	const char *p = c ? strchr(set, c) : NULL;
	return p ? (int)(p - set) : -1;
}

char check_mod10(const char *digits, size_t size)
{
	unsigned sum = 0;
	for (size_t i = 0; i < size; i++) {
		char c = digits[size - 1 - i];
		if (c < '0' || c > '9')
			return 0;
		sum = (sum + (unsigned)(c - '0') * (i % 2 ? 1 : 3)) % 10;
	}
	return (char)('0' + (10 - sum) % 10);
}

char check_mod43(const char *text, size_t size)
{
	int sum = 0;
	for (size_t i = 0; i < size; i++) {
		int v = value_in(set43, text[i]);
		if (v < 0)
			return 0;
		sum = (sum + v) % 43;
	}
	return set43[sum];
}

int check_mod97(const char *text, size_t size)
{
	int rest = 0;
	for (size_t i = 0; i < size; i++) {
		char c = text[i];
		if (c >= '0' && c <= '9')
			rest = (rest * 10 + (c - '0')) % 97;
		else if (c >= 'A' && c <= 'Z')
			rest = (rest * 100 + (c - 'A' + 10)) % 97;
		else
			return -1;
	}
	return size ? rest : -1;
}

static unsigned next_prime(unsigned after)
{
	for (unsigned n = after + 1;; n++) {
		unsigned d = 2;
		while (d * d <= n && n % d)
			d++;
		if (d * d > n)
			return n;
	}
}

bool check_pair(const char *text, size_t size, char pair[2])
{
	unsigned sum = 0, weight = 1;
	if (size > 97)
		return false;
	for (size_t i = 0; i < size; i++) {
		int v = value_in(set82, text[size - 1 - i]);
		if (v < 0)
			return false;
		weight = next_prime(weight);
		sum = (sum + (unsigned)v * weight) % 1021;
	}
	pair[0] = set32[sum / 32];
	pair[1] = set32[sum % 32];
	return true;
}
