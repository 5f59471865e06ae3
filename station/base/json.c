#include "base/json.h"

#include <errno.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

static uint64_t failed; /* jansson's allocator has no context */

static void *watched_malloc(size_t size)
{
	void *p = malloc(size);
	failed += !p;
	return p;
}

void json_watch_memory(void)
{
	json_set_alloc_funcs(watched_malloc, free);
}

uint64_t json_memory_failed(void)
{
	return failed;
}

json_t *json_read(const char *text, size_t size, struct error *e)
{
	json_error_t why;
	json_t *v = json_loadb(text, size, JSON_REJECT_DUPLICATES | JSON_DECODE_ANY, &why);
	if (!v)
		error_set(e, json_error_code(&why) == json_error_out_of_memory ? -ENOMEM : -EINVAL,
		          "not valid JSON at byte %d: %s: send one JSON value on one line", why.position,
		          why.text);
	return v;
}

static int write_string(const char *s, size_t n, struct buf *out)
{
	static const char *const named[32] = {
	    [8] = "\\b", [9] = "\\t", [10] = "\\n", [12] = "\\f", [13] = "\\r",
	};
	int r = buf_add(out, "\"", 1);
	for (size_t i = 0; i < n && r == 0; i++) {
		size_t from = i;
		while (i < n && (unsigned char)s[i] >= 32 && s[i] != '"' && s[i] != '\\')
			i++;
		r = buf_add(out, s + from, i - from);
		if (r < 0 || i == n)
			break;
		unsigned char c = (unsigned char)s[i];
		if (c == '"' || c == '\\')
			r = buf_printf(out, "\\%c", c);
		else if (named[c])
			r = buf_add_text(out, named[c]);
		else
			r = buf_printf(out, "\\u%04x", c);
	}
	return r ? r : buf_add(out, "\"", 1);
}

/* Every event and every answer has a dozen, and printf takes ten times as long. */
static int write_integer(json_int_t n, struct buf *out)
{
	char digits[20];
	size_t at = sizeof digits;
	if (n > JSON_INTEGER_MAX || n < -JSON_INTEGER_MAX)
		return -EINVAL;
	json_int_t left = n < 0 ? -n : n;
	do {
		digits[--at] = (char)('0' + left % 10);
		left /= 10;
	} while (left);
	if (n < 0)
		digits[--at] = '-';
	return buf_add(out, digits + at, sizeof digits - at);
}

struct member {
	const char *key;
	const json_t *value;
};

/* RFC 8785 sorts by UTF-16 code units. Bytes of UTF-8 sort the same way except that U+E000..U+FFFF come
 * after the surrogate pairs (U+10000 and up); a first byte of F0-F4 marks those. */
static int key_order(const void *a, const void *b)
{
	const unsigned char *x = (const unsigned char *)((const struct member *)a)->key,
	                    *y = (const unsigned char *)((const struct member *)b)->key;
	while (*x && *x == *y)
		x++, y++;
	int high_x = *x >= 0xf0, high_y = *y >= 0xf0;
	if (high_x != high_y && *x >= 0xee && *y >= 0xee)
		return high_x ? -1 : 1;
	return *x - *y;
}

static int write_object(const json_t *object, struct buf *out)
{
	size_t n = json_object_size(object), i = 0;
	if (!n)
		return buf_add_text(out, "{}");
	struct member *members = calloc(n, sizeof *members);
	if (!members)
		return -ENOMEM;
	const char *key;
	json_t *value;
	json_object_foreach((json_t *)object, key, value) members[i++] = (struct member){key, value};
	qsort(members, n, sizeof *members, key_order);
	int r = 0;
	for (i = 0; i < n && r == 0; i++) {
		r = buf_add(out, i ? "," : "{", 1);
		if (r == 0)
			r = write_string(members[i].key, strlen(members[i].key), out);
		if (r == 0)
			r = buf_add(out, ":", 1);
		if (r == 0)
			r = json_write_canonical(members[i].value, out);
	}
	free(members);
	return r ? r : buf_add_text(out, "}");
}

static int write_array(const json_t *array, struct buf *out)
{
	int r = buf_add_text(out, "[");
	for (size_t i = 0; i < json_array_size(array) && r == 0; i++) {
		if (i)
			r = buf_add_text(out, ",");
		if (r == 0)
			r = json_write_canonical(json_array_get(array, i), out);
	}
	return r ? r : buf_add_text(out, "]");
}

int json_write_canonical(const json_t *value, struct buf *out)
{
	if (!value)
		return -ENOMEM;
	switch (json_typeof(value)) {
	case JSON_OBJECT:
		return write_object(value, out);
	case JSON_ARRAY:
		return write_array(value, out);
	case JSON_STRING:
		return write_string(json_string_value(value), json_string_length(value), out);
	case JSON_INTEGER:
		return write_integer(json_integer_value(value), out);
	case JSON_TRUE:
		return buf_add_text(out, "true");
	case JSON_FALSE:
		return buf_add_text(out, "false");
	case JSON_NULL:
		return buf_add_text(out, "null");
	case JSON_REAL:
		return -EINVAL;
	}
	return -EINVAL;
}

const char *json_text(const json_t *object, const char *key)
{
	const char *s = json_string_value(json_object_get(object, key));
	return s ? s : "";
}

int64_t json_number(const json_t *object, const char *key, int64_t otherwise)
{
	const json_t *v = json_object_get(object, key);
	return json_is_integer(v) ? json_integer_value(v) : otherwise;
}

int json_truth(const json_t *object, const char *key)
{
	return json_is_true(json_object_get(object, key));
}
