/* A document is checked against tables of fields: nothing unknown, nothing of the wrong type, too long or out
 * of range. The tables are the contract: `bandtally-print --fields` prints them. What a table cannot say (one field
 * depends on another) is checked by the paper (sheets.h). */
#ifndef BANDTALLY_LABELS_SCHEMA_H
#define BANDTALLY_LABELS_SCHEMA_H

#include <stdbool.h>

#include "base/buf.h"
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
	const char *says; /* what the field means, in the words of the contract; "" where its name says it */
};

#define REQUIRED true
#define OPTIONAL false

/* A row each: name, whether it is required, limits, and at the end what it means. */
/* clang-format off */
#define FIELD(n, t, r, ...) {.name = (n), .type = FIELD_##t, .required = (r), __VA_ARGS__}
#define TEXT(name, required, low, high, means) FIELD(name, TEXT, required, .min = (low), .max = (high), .says = (means))
#define INT(name, required, low, high, means) FIELD(name, INT, required, .min = (low), .max = (high), .says = (means))
#define BOOL(name, required, means) FIELD(name, BOOL, required, .says = (means))
#define CODE(name, required, kind, means) FIELD(name, CODE, required, .max = (kind), .says = (means))
#define WORD(name, required, list, means) FIELD(name, WORD, required, .words = (list), .says = (means))
#define OBJECT(name, required, of, means) FIELD(name, OBJECT, required, .fields = (of), .says = (means))
#define TEXTS(name, required, low, high, longest, means) \
	FIELD(name, TEXTS, required, .min = (low), .max = (high), .each = (longest), .says = (means))
#define OBJECTS(name, required, low, high, of, means) \
	FIELD(name, OBJECTS, required, .min = (low), .max = (high), .fields = (of), .says = (means))
#define MOMENT(name, required, means) TEXT(name, required, 1, 40, means) /* a time as it is to be read */
#define END {.name = NULL}
/* clang-format on */

extern const char *const schema_a4_only[]; /* {"a4", NULL}: the paper of sheets that are cut out */

/* 0, or -EINVAL with one sentence that names the field as 'items[3].line'. */
int schema_check(const json_t *object, const struct field *fields, struct error *e);

/* Appends the table, a line a field, those of objects below them and further in. 0 or -ENOMEM. */
int schema_tell(const struct field *fields, int depth, struct buf *out);

#endif
