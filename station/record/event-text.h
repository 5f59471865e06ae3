/* What event-json.c, event-write.c, event-canonical.c, store.c and verify.c share. Nobody else includes it. */
#ifndef BANDTALLY_RECORD_EVENT_TEXT_H
#define BANDTALLY_RECORD_EVENT_TEXT_H

#include <stddef.h>

#include "base/buf.h"
#include "base/error.h"
#include "count/event.h"

#define FORMAT_VERSION 2 /* the latest, which is what is written */

/* Reads a text that is exactly what event_write() would make of it, quickly: the record holds nothing else. 1
 * where `e` is filled, as the strict reader would have filled it. 0 where the text is anything else, or is
 * rare (an escaped letter): then event_read_strict() and event_write() must look. */
int event_read_canonical(struct event *e, const char *text, size_t size);

/* As event_read(): takes the keys in any order, and says what is wrong. */
int event_read_strict(struct event *e, const char *text, size_t size, struct error *why);

/* Reads a text that must be what event_write() makes of what it says; `again` is room for that. 0; -EINVAL where it
 * cannot be read, -EILSEQ where it could be written otherwise, -ENOMEM; with `why`. */
int event_read_exactly(struct event *e, const char *text, size_t size, struct buf *again, struct error *why);

/* The number of the format that a text says it has; 0 where it says none. */
int64_t event_format(const char *text, size_t size);

/* Length of the UTF-8 sequence at `at`, 1 to 4; 0 where there is none (RFC 3629: no overlong forms, no
 * surrogates). */
size_t utf8_length(const unsigned char *at, size_t size);

/* Which of two keys comes first: RFC 8785 sorts by UTF-16 units, so that U+E000 to U+FFFF come after the rest. */
int key_before(const char *a, const char *b);

#endif
