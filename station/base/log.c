#include "base/log.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"

static const char *program_name = "bandtally";

void log_open(const char *program)
{
	program_name = program;
}

static void log_write(const char *format, va_list args, const char *reason)
{
	char text[1024];
	vsnprintf(text, sizeof text, format, args);
	name_mend(text); /* what devices and programs say is in it, and a line is one line */
	if (reason)
		fprintf(stderr, "%s: %s: %s\n", program_name, text, reason);
	else
		fprintf(stderr, "%s: %s\n", program_name, text);
}

void log_line(const char *format, ...)
{
	va_list args;
	va_start(args, format);
	log_write(format, args, NULL);
	va_end(args);
}

void log_errno(int negative_errno, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	log_write(format, args, strerror(-negative_errno));
	va_end(args);
}

void log_block(const char *lines)
{
	char line[256];
	for (size_t n; *lines; lines += n + (lines[n] == '\n')) {
		n = strcspn(lines, "\n");
		snprintf(line, sizeof line, "%.*s", (int)n, lines);
		name_mend(line);
		fprintf(stderr, "%s\n", line);
	}
	fputc('\n', stderr);
}

void log_error(const struct error *e)
{
	const char *name = strerrorname_np(-e->code);
	log_line("%s (%s at %s:%d)", e->text, name ? name : "no error", e->at.file ? e->at.file : "?",
	         e->at.line);
}
