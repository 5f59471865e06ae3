/* JSON as this house uses it: jansson's values, read strictly and written in one canonical form.
 *
 * Canonical form is RFC 8785 (JSON Canonicalization Scheme) for the values that occur here: objects, arrays,
 * strings, true, false, null and integers within ±(2^53 - 1). A real number is refused: nothing here needs
 * one, and its text form is where canonical forms go wrong.
 */
#ifndef BANDTALLY_BASE_JSON_H
#define BANDTALLY_BASE_JSON_H

#include <jansson.h>
#include <stdint.h>

#include "base/buf.h"
#include "base/error.h"

#define JSON_INTEGER_MAX 9007199254740991 /* 2^53 - 1, RFC 8785 section 3.2.2.3 by way of ECMAScript */

/* Reads one value that fills `size` bytes; duplicate keys, bad UTF-8, NUL and trailing text are refused.
 * Returns a new reference, or NULL with `e` filled (e->code is -EINVAL, or -ENOMEM). */
json_t *json_read(const char *text, size_t size, struct error *e);

/* Appends the canonical text of `value`; NULL is one that could not be made. 0, -ENOMEM, or -EINVAL where a value has no canonical form here. */
int json_write_canonical(const json_t *value, struct buf *out);

/* A value that could not be made is left out of its object without a word. So who must hand out a whole one asks before and
 * after how often memory has failed since json_watch_memory(), which is called before any value is made. */
void json_watch_memory(void);
uint64_t json_memory_failed(void);

/* Fields of an object. Absent or of another type: the text is "" and the number is `otherwise`. Borrowed. */
const char *json_text(const json_t *object, const char *key);
int64_t json_number(const json_t *object, const char *key, int64_t otherwise);
int json_truth(const json_t *object, const char *key); /* 1 only for true */

static inline void json_drop(json_t **value) /* for _cleanup_(json_drop) */
{
	json_decref(*value);
}

#endif
