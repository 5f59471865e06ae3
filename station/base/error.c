#include "base/error.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>

int origin_note(struct origin *at, int code, const char *file, int line)
{
	if (at)
		*at = (struct origin){file, line};
	return code;
}

int error_set_at(struct error *e, int code, const char *file, int line, const char *format, ...)
{
	if (!e)
		return code;
	e->code = code;
	e->at = (struct origin){file, line};
	va_list args;
	va_start(args, format);
	vsnprintf(e->text, sizeof e->text, format, args);
	va_end(args);
	return code;
}
