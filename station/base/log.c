#include "base/log.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/name.h"

const struct log_row log_rows[LOG_ID_COUNT] = {
#define X(name, id, priority, means, todo) [LOG_##name] = {id, priority, means, todo},
    LOG_IDS(X)
#undef X
};

#define NEWS_PRIORITY 6 /* LOG_INFO of syslog(3) */
static const char *program_name = "bandtally";
static int to_journal;

/* systemd.exec(5): the device and inode of the stream that is connected to the journal. */
static int is_journal(void)
{
	struct stat file;
	char named[60];
	const char *stream = getenv("JOURNAL_STREAM");
	if (!stream || fstat(STDERR_FILENO, &file) < 0)
		return 0;
	snprintf(named, sizeof named, "%ju:%ju", (uintmax_t)file.st_dev, (uintmax_t)file.st_ino);
	return strcmp(named, stream) == 0;
}

void log_open(const char *program)
{
	program_name = program;
	to_journal = is_journal();
}

static void log_write(const struct log_row *row, const char *reason, const char *format, va_list args)
{
	char text[1024], priority[12] = "";
	vsnprintf(text, sizeof text, format, args);
	name_mend(text); /* what devices and programs say is in it, and a line is one line */
	if (to_journal)
		snprintf(priority, sizeof priority, "<%d>", row ? row->priority : NEWS_PRIORITY);
	fprintf(stderr, "%s%s: %s%s%s%s%s\n", priority, program_name, row ? row->id : "", row ? ": " : "",
	        text, reason ? ": " : "", reason ? reason : "");
}

void log_line(const char *format, ...)
{
	va_list args;
	va_start(args, format);
	log_write(NULL, NULL, format, args);
	va_end(args);
}

void log_warn(enum log_id id, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	log_write(&log_rows[id], NULL, format, args);
	va_end(args);
}

void log_warn_errno(enum log_id id, int negative_errno, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	log_write(&log_rows[id], strerror(-negative_errno), format, args);
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

void log_error(enum log_id id, const struct error *e)
{
	const char *name = strerrorname_np(-e->code);
	log_warn(id, "%s (%s at %s:%d)", e->text, name ? name : "no error", e->at.file ? e->at.file : "?",
	         e->at.line);
}
