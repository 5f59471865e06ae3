#include "labels/schema.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "base/name.h"
#include "code/own-codes.h"

#define PATH_MAX_LENGTH 160

const char *const schema_a4_only[] = {"a4", NULL};

static int refuse(const char *path, const char *why, const char *todo, struct error *e)
{
	return error_set(e, -EINVAL, "document field '%s': %s: %s", path, why, todo);
}

static int check_text(const char *text, int min, int max, const char *path, struct error *e)
{
	int n = 0;
	const char *end = text + strlen(text);
	bool isolates = name_isolates(text, end);
	for (const char *p = text; p < end; n++) {
		int32_t c = name_next(&p, end);
		if (!name_may_hold(c) && !(isolates && name_is_isolate(c)))
			return refuse(path, "it holds a control or text-direction character",
			              "leave that out", e);
	}
	char todo[40];
	snprintf(todo, sizeof todo, "give %d to %d characters", min, max);
	if (n < min)
		return refuse(path, "it is too short", todo, e);
	if (n > max)
		return refuse(path, "it is too long", todo, e);
	return 0;
}

static int check_jws(const char *text, int max, const char *path, struct error *e)
{
	size_t n = strlen(text);
	if (n == 0 || strspn(text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.") != n)
		return refuse(path, "it is no compact JWS", "give letters, digits, '-', '_' and '.' only", e);
	return check_text(text, 1, max, path, e);
}

static int check_time(const char *text, const char *path, struct error *e)
{
	static const char shape[] = "dddd-dd-ddTdd:dd:dd";
	size_t i = 0;
	for (; shape[i]; i++)
		if (shape[i] == 'd' ? text[i] < '0' || text[i] > '9' : text[i] != shape[i])
			break;
	const char *zone = text + i;
	bool ok = !shape[i] && (strcmp(zone, "Z") == 0 ||
	                        (strlen(zone) == 6 && (*zone == '+' || *zone == '-') && zone[3] == ':' &&
	                         strspn(zone + 1, "0123456789") == 2 && strspn(zone + 4, "0123456789") == 2));
	return ok ? 0 : refuse(path, "it is no time", "write it as 2026-11-25T10:41:07+00:00", e);
}

static int check_code(const char *text, int kind, const char *path, struct error *e)
{
	struct own_code code;
	struct code_fault fault = {0};
	int r = own_code_read(text, strlen(text), &code, &fault);
	if (r == -ENOENT)
		return refuse(path, "it is not one of our own codes", "give the code that the station made",
		              e);
	if (r < 0)
		return refuse(path, "the code is not whole", "give the code that the station made", e);
	if ((int)code.kind != kind)
		return refuse(path, "the code is one of another kind", "give the code that belongs here", e);
	for (const char *p = text; *p; p++)
		if (*p >= 'a' && *p <= 'z')
			return refuse(path, "the code has small letters", "write it in capitals", e);
	return 0;
}

static int check_word(const char *text, const char *const *words, const char *path, struct error *e)
{
	char list[200] = "give one of";
	for (; *words; words++) {
		if (strcmp(*words, text) == 0)
			return 0;
		strncat(list, " ", sizeof list - strlen(list) - 1);
		strncat(list, *words, sizeof list - strlen(list) - 1);
	}
	return refuse(path, "it is none of the words that it may be", list, e);
}

static int check_int(const json_t *value, const struct field *f, const char *path, struct error *e)
{
	json_int_t n = json_integer_value(value);
	char todo[60];
	snprintf(todo, sizeof todo, "give a whole number of %d to %d", f->min, f->max);
	if (!json_is_integer(value))
		return refuse(path, "it is no whole number", todo, e);
	return n < f->min || n > f->max ? refuse(path, "it is out of range", todo, e) : 0;
}

static int check_object(const json_t *object, const struct field *fields, const char *prefix,
                        struct error *e);

static int check_array(const json_t *value, const struct field *f, const char *path, struct error *e)
{
	char todo[60];
	snprintf(todo, sizeof todo, "give %d to %d of them", f->min, f->max);
	if (!json_is_array(value))
		return refuse(path, "it is no list", "give a list in square brackets", e);
	size_t n = json_array_size(value);
	if (n < (size_t)f->min || n > (size_t)f->max)
		return refuse(path, n < (size_t)f->min ? "there are too few" : "there are too many", todo, e);
	for (size_t i = 0; i < n; i++) {
		const json_t *one = json_array_get(value, i);
		char here[PATH_MAX_LENGTH];
		snprintf(here, sizeof here, "%.120s[%zu]", path, i);
		if (f->type == FIELD_TEXTS && !json_is_string(one))
			return refuse(here, "it is no text", "give a text in quotes", e);
		int r = f->type == FIELD_TEXTS ? check_text(json_string_value(one), 1, f->each, here, e)
		                               : check_object(one, f->fields, here, e);
		if (r < 0)
			return r;
	}
	return 0;
}

static int check_value(const json_t *value, const struct field *f, const char *path, struct error *e)
{
	const char *text = json_string_value(value);
	switch (f->type) {
	case FIELD_INT:
		return check_int(value, f, path, e);
	case FIELD_BOOL:
		return json_is_boolean(value) ? 0
		                              : refuse(path, "it is neither true nor false", "give one", e);
	case FIELD_OBJECT:
		return check_object(value, f->fields, path, e);
	case FIELD_TEXTS:
	case FIELD_OBJECTS:
		return check_array(value, f, path, e);
	case FIELD_TEXT:
	case FIELD_JWS:
	case FIELD_TIME:
	case FIELD_CODE:
	case FIELD_WORD:
		break;
	}
	if (!text)
		return refuse(path, "it is no text", "give a text in quotes", e);
	if (f->type == FIELD_WORD)
		return check_word(text, f->words, path, e);
	if (f->type == FIELD_CODE)
		return check_code(text, f->max, path, e);
	if (f->type == FIELD_TIME)
		return check_time(text, path, e);
	return f->type == FIELD_JWS ? check_jws(text, f->max, path, e)
	                            : check_text(text, f->min, f->max, path, e);
}

static const struct field *find(const struct field *fields, const char *name)
{
	for (; fields->name; fields++)
		if (strcmp(fields->name, name) == 0)
			return fields;
	return NULL;
}

static int check_object(const json_t *object, const struct field *fields, const char *prefix, struct error *e)
{
	char path[PATH_MAX_LENGTH];
	const char *dot = *prefix ? "." : "", *key;
	const json_t *value;
	if (!json_is_object(object))
		return refuse(*prefix ? prefix : "document", "it is no object", "give one in braces", e);
	json_object_foreach((json_t *)object, key, value)
	{
		const struct field *f = find(fields, key);
		snprintf(path, sizeof path, "%s%s%.60s", prefix, dot, key);
		if (!f)
			return refuse(path, "no such field in this kind of document",
			              "leave it out, or install the version that knows it", e);
		int r = check_value(value, f, path, e);
		if (r < 0)
			return r;
	}
	for (const struct field *f = fields; f->name; f++)
		if (f->required && !json_object_get(object, f->name)) {
			snprintf(path, sizeof path, "%s%s%s", prefix, dot, f->name);
			return refuse(path, "it is missing", "give it", e);
		}
	return 0;
}

int schema_check(const json_t *object, const struct field *fields, struct error *e)
{
	return check_object(object, fields, "", e);
}

/* "text 1-60", "[object] 1-24": what may stand there, in few words. */
static void type_words(const struct field *f, char *out, size_t size)
{
	size_t used = 0;
	switch (f->type) {
	case FIELD_TEXT:
	case FIELD_JWS:
		snprintf(out, size, "text %d-%d", f->min, f->max);
		return;
	case FIELD_TIME:
		snprintf(out, size, "time");
		return;
	case FIELD_CODE:
		snprintf(out, size, "code");
		return;
	case FIELD_INT:
		snprintf(out, size, "int %d-%d", f->min, f->max);
		return;
	case FIELD_BOOL:
		snprintf(out, size, "bool");
		return;
	case FIELD_OBJECT:
		snprintf(out, size, "object");
		return;
	case FIELD_TEXTS:
		snprintf(out, size, "[text 1-%d] %d-%d", f->each, f->min, f->max);
		return;
	case FIELD_OBJECTS:
		snprintf(out, size, "[object] %d-%d", f->min, f->max);
		return;
	case FIELD_WORD:
		for (const char *const *w = f->words; *w && used < size; w++)
			used += (size_t)snprintf(out + used, size - used, "%s%s", used ? " or " : "", *w);
		return;
	}
}

int schema_tell(const struct field *fields, int depth, struct buf *out)
{
	int r = 0;
	for (const struct field *f = fields; f->name && r == 0; f++) {
		char type[120] = "", name[40];
		type_words(f, type, sizeof type);
		snprintf(name, sizeof name, "%s%s", f->name, f->required ? " *" : "");
		r = buf_printf(out, "%*s%-*s %-*s%s%s\n", depth * 2, "", 24 - depth * 2, name,
		               *f->says ? 18 : 0, type, *f->says ? "  " : "", f->says);
		if (r == 0 && f->fields)
			r = schema_tell(f->fields, depth + 1, out);
	}
	return r;
}
