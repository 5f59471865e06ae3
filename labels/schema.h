/* A document is checked against tables of fields: nothing unknown, nothing of the wrong type, too long or out
 * of range. What a table cannot say (one field depends on another) is in paper.c. */
#ifndef BANDTALLY_LABELS_SCHEMA_H
#define BANDTALLY_LABELS_SCHEMA_H

#include <stdbool.h>

#include "base/error.h"
#include "base/json.h"

enum field_type {
	FIELD_TEXT = 1, /* min to max characters, each of which a name may hold (base/name.h) */
	FIELD_JWS,      /* the same of A-Z a-z 0-9 - _ . only */
	FIELD_TIME,     /* RFC 3339 with seconds */
	FIELD_CODE,     /* one of our own codes, whole; `max` is its enum own_kind */
	FIELD_INT,      /* min to max */
	FIELD_BOOL,
	FIELD_WORD,    /* one of `words` */
	FIELD_OBJECT,  /* by `fields` */
	FIELD_TEXTS,   /* array of min to max texts of at most `each` characters */
	FIELD_OBJECTS, /* array of min to max objects by `fields` */
};

struct field {
	const char *name;
	enum field_type type;
	bool required;
	int min, max, each;
	const char *const *words;   /* ends in NULL */
	const struct field *fields; /* ends in a NULL name */
};

/* 0, or -EINVAL with one sentence that names the field as 'items[3].line'. */
int schema_check(const json_t *object, const struct field *fields, struct error *e);

#endif
