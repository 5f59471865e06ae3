#include "code/gs1-sets.h"

#include <string.h>

static int digits(const char *value, size_t size, struct code_fault *fault)
{
	for (size_t i = 0; i < size; i++)
		if (value[i] < '0' || value[i] > '9')
			return fault_set(fault, i, "only digits are allowed here");
	return 0;
}

int gs1_only(const char *value, size_t size, const char *set, const char *of, struct code_fault *fault)
{
	for (size_t i = 0; i < size; i++) {
		unsigned char c = (unsigned char)value[i];
		if (value[i] && strchr(set, value[i]))
			continue;
		if (c > ' ' && c < 0x7f)
			return fault_set(fault, i, "'%c' is not one of %s", c, of);
		return fault_set(fault, i, "byte 0x%02x is not one of %s", c, of);
	}
	return 0;
}

/* base64url ends in '=' so that its length is a multiple of 3, in three lengths of remainder. */
static int base64(const char *value, size_t size, struct code_fault *fault)
{
	size_t body = size;
	while (body && value[body - 1] == '=')
		body--;
	size_t pads = size - body;
	int r = gs1_only(value, body, GS1_LETTERS GS1_LETTERS_SMALL GS1_DIGITS "-_",
	                 "the characters of base64url", fault);
	if (r < 0)
		return r;
	if (pads > 2 || (pads && size % 3))
		return fault_set(fault, body, "'=' does not fill the length up to a multiple of 3");
	return 0;
}

int gs1_set_check(char set, const char *value, size_t size, struct code_fault *fault)
{
	switch (set) {
	case 'N':
		return digits(value, size, fault);
	case 'X':
		return gs1_only(value, size,
		                "!\"%&'()*+,-./" GS1_DIGITS ":;<=>?" GS1_LETTERS "_" GS1_LETTERS_SMALL,
		                "the 82 characters of GS1", fault);
	case 'Y':
		return gs1_only(value, size, "#-/" GS1_DIGITS GS1_LETTERS, "the 39 characters allowed here",
		                fault);
	case 'Z':
		return base64(value, size, fault);
	}
	return fault_set(fault, 0, "there is no character set %c", set);
}
