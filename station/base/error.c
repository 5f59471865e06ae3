#include "base/error.h"

#include <stdarg.h>
#include <stdio.h>

int error_set(struct error *e, int code, const char *format, ...)
{
	if (!e)
		return code;
	e->code = code;
	va_list args;
	va_start(args, format);
	vsnprintf(e->text, sizeof e->text, format, args);
	va_end(args);
	return code;
}
