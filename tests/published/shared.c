#include "shared.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SKIP 77

static long passed, failed;
static struct {
	const char *reason;
	long count;
} groups[32];

FILE *shared_open(const char *name)
{
	char path[4096];
	const char *shared = getenv("BANDTALLY_SHARED"), *source = getenv("BANDTALLY_SOURCE");
	if (shared)
		snprintf(path, sizeof path, "%s/data/%s", shared, name);
	else
		snprintf(path, sizeof path, "%s/../shared/data/%s", source ? source : ".", name);
	FILE *f = fopen(path, "r");
	if (!f) {
		printf("skipped: %s is not there; set BANDTALLY_SHARED to the folder that holds data/\n",
		       path);
		exit(SKIP);
	}
	return f;
}

void tally_pass(void)
{
	passed++;
}

void tally_fail(const char *format, ...)
{
	va_list ap;
	va_start(ap, format);
	printf("FAILED ");
	vprintf(format, ap);
	printf("\n");
	va_end(ap);
	failed++;
}

void tally_leave(const char *group)
{
	size_t i = 0;
	while (groups[i].reason && strcmp(groups[i].reason, group))
		i++;
	groups[i].reason = group;
	groups[i].count++;
}

int tally_end(const char *name)
{
	long left = 0;
	for (size_t i = 0; groups[i].reason; i++)
		left += groups[i].count;
	printf("%s: %ld passed, %ld failed, %ld left out\n", name, passed, failed, left);
	for (size_t i = 0; groups[i].reason; i++)
		printf("  left out %4ld: %s\n", groups[i].count, groups[i].reason);
	return failed || !passed;
}

void each_row(const char *name, void (*row)(const json_t *args, long line, const char *call))
{
	char *text = NULL;
	size_t room = 0;
	FILE *f = shared_open(name);
	while (getline(&text, &room, f) > 0) {
		json_t *v = json_loads(text, 0, NULL);
		const char *call = json_string_value(json_object_get(v, "call"));
		row(json_object_get(v, "args"), (long)json_integer_value(json_object_get(v, "line")),
		    call ? call : "");
		json_decref(v);
	}
	free(text);
	fclose(f);
}

const char *arg(const json_t *args, size_t n)
{
	const char *s = json_string_value(json_array_get(args, n));
	return s ? s : "";
}

void elements_text(const struct code *code, char *out)
{
	size_t n = 0;
	out[0] = '\0';
	for (int i = 0; i < code->count; i++)
		n += (size_t)snprintf(out + n, 4096 - n, "(%s)%s", code->elements[i].ai,
		                      code->elements[i].value);
}

bool caret_elements(const char *caret, char *out)
{
	static struct code code;
	char data[4096];
	size_t size = strlen(caret);
	snprintf(data, sizeof data, "%s", caret);
	for (char *p = data; *p; p++)
		if (*p == '^')
			*p = '\x1d';
	if (code_read(&code, "]C1", data, size, TODAY, NULL) < 0)
		return false;
	elements_text(&code, out);
	return true;
}
