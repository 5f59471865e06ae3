#include "record/hospital-file.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "base/file.h"
#include "base/json.h"

static void path_of(char path[PATH_MAX], const char *folder)
{
	snprintf(path, PATH_MAX, "%.3000s/hospital.json", folder);
}

/* What is not in its range was not said. */
static int64_t number_of(const json_t *o, const char *key, int64_t most)
{
	int64_t n = json_number(o, key, 0);
	return n < 0 || n > most ? 0 : n;
}

/* Nor what is too long: cut within a letter it could not be written again. */
static void text_of(char *out, size_t size, const json_t *o, const char *key)
{
	const char *text = json_text(o, key);
	snprintf(out, size, "%s", strlen(text) < size ? text : "");
}

int hospital_read(struct hospital_noted *out, const char *folder)
{
	char path[PATH_MAX];
	_cleanup_(buf_free) struct buf text = {0};
	path_of(path, folder);
	*out = (struct hospital_noted){0};
	int n = file_read(path, &text);
	_cleanup_(json_drop) json_t *o =
	    n == 0 ? json_read(text.data ? text.data : "", text.size, NULL) : NULL;
	if (!o)
		return n < 0 ? n : -EINVAL;
	out->kept = number_of(o, "kept", JSON_INTEGER_MAX);
	out->timeline = (int32_t)number_of(o, "timeline", INT32_MAX);
	out->lists = number_of(o, "lists", JSON_INTEGER_MAX);
	out->contact_ms = number_of(o, "contact", JSON_INTEGER_MAX);
	text_of(out->hash, sizeof out->hash, o, "hash");
	text_of(out->server, sizeof out->server, o, "server");
	return 0;
}

int hospital_write(const struct hospital_noted *n, const char *folder)
{
	char path[PATH_MAX];
	_cleanup_(buf_free) struct buf text = {0};
	_cleanup_(json_drop) json_t *o =
	    json_pack("{s:I,s:s,s:s,s:i,s:I,s:I}", "kept", (json_int_t)n->kept, "hash", n->hash, "server",
	              n->server, "timeline", (int)n->timeline, "lists", (json_int_t)n->lists, "contact",
	              (json_int_t)n->contact_ms);
	path_of(path, folder);
	int r = json_write_canonical(o, &text);
	return r < 0 ? r : file_replace_soon(path, 0640, text.data, text.size);
}
