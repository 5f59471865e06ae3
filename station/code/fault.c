#include "code/fault.h"

#include <errno.h>
#include <stdarg.h>
#include <stdio.h>

int fault_set(struct code_fault *fault, size_t at, const char *format, ...)
{
	if (!fault)
		return -EINVAL;
	va_list ap;
	va_start(ap, format);
	int n = vsnprintf(fault->why, sizeof fault->why, format, ap);
	va_end(ap);
	fault->at = at;
	if (n < 0)
		fault->why[0] = '\0';
	/* A sentence that was cut must not end inside a character. */
	if (n >= (int)sizeof fault->why) {
		size_t end = sizeof fault->why - 1;
		while (end > 0 && ((unsigned char)fault->why[end - 1] & 0xC0) == 0x80)
			end--;
		if (end > 0 && ((unsigned char)fault->why[end - 1] & 0x80))
			end--;
		fault->why[end] = '\0';
	}
	return -EINVAL;
}
