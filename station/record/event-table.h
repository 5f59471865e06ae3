/* The fields of an event's text, once for each format: the writer and both readers are driven by these tables, so that
 * what one of them writes the others take. Only event*.c include this.
 *
 * The table of a format that was ever shipped is never changed: what is to stand otherwise gets a format of its own, whose
 * number is FORMAT_VERSION and raises RECORD_SCHEMA (store.h). Each table is in the order of the canonical form (RFC 8785 sorts keys by UTF-16 units, for these: by bytes) and
 * ends with an entry without a name.
 */
#ifndef BANDTALLY_RECORD_EVENT_TABLE_H
#define BANDTALLY_RECORD_EVENT_TABLE_H

#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include "count/event.h"

enum form {
	FORM_NUMBER,   /* low to high; 0 is left out */
	FORM_TEXT,     /* shorter than `size`; "" is left out */
	FORM_FLAG,     /* low: the bit of event.flags; true, or left out */
	FORM_KIND,     /* event_name() */
	FORM_VERSION,  /* low: the number */
	FORM_PART,     /* an object whose fields are `part`; what they say lies from `at` on */
	FORM_ROLE,     /* role_name(); must be there */
	FORM_IDENTITY, /* identity_name() */
	FORM_CODES,    /* line.codes: an array of texts, empty ones included */
	FORM_CONTENTS, /* line.contents: an object, how many by key */
	FORM_SAID,     /* as FORM_PART, of a struct said; left out where that says nothing */
	FORM_ENUM,     /* by its name in field_list(); where that is none, as FORM_NUMBER; 0 is left out */
};

struct field {
	const char *name;
	const char *key; /* as it is written: the name in quotes, and a colon */
	uint64_t head,
	    mask; /* of the key behind its first quote: event_text_head(), FIELD_HEAD(); how much of it that is */
	uint8_t length;  /* of the name */
	uint8_t form;    /* enum form */
	uint8_t list;    /* FORM_ENUM: enum event_list */
	uint8_t list_at; /* FORM_ENUM: where the kind's fields say which list it is; 0: `list` */
	uint16_t at;     /* where its value lies */
	uint16_t size;   /* bytes of a number, or of a text with its NUL */
	int64_t low, high;
	uint32_t only; /* enum event_field: kinds that do not name it do not have it; 0 all have it */
	const struct field *part;
};

/* Of the format 1 to FORMAT_VERSION. */
const struct field *event_table(int format);

/* event_fields(), as they were in that format. */
uint32_t event_fields_in(int format, enum event_kind kind);

/* Which list a FORM_ENUM is of in events of a kind with these fields. */
static inline enum event_list field_list(const struct field *f, uint32_t fields)
{
	return f->list_at ? (enum event_list)(fields >> f->list_at & 63) : (enum event_list)f->list;
}

/* Whether events of a kind with these fields (event_fields()) have this one. */
static inline int field_is_of(const struct field *f, uint32_t fields)
{
	return !f->only || f->only & fields;
}

/* Puts a number where the field lies; nowhere, where it has no place (the format's version). */
static inline void field_put(void *out, const struct field *f, int64_t n)
{
	int16_t n2 = (int16_t)n;
	int32_t n4 = (int32_t)n;
	if (f->size == 1)
		*(uint8_t *)out = (uint8_t)n;
	else if (f->size == 2)
		memcpy(out, &n2, sizeof n2);
	else if (f->size == 4)
		memcpy(out, &n4, sizeof n4);
	else if (f->size == 8)
		memcpy(out, &n, sizeof n);
}

#endif
