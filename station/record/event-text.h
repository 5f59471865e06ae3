/* What event.c, event-write.c and event-canonical.c share. Nobody else includes it. */
#ifndef BANDTALLY_RECORD_EVENT_TEXT_H
#define BANDTALLY_RECORD_EVENT_TEXT_H

#include <stddef.h>

#include "base/error.h"
#include "count/event.h"

#define FORMAT_VERSION 1

/* Reads a text that is exactly what event_write() would make of it, quickly: the record holds nothing else. 1
 * where `e` is filled, as the strict reader would have filled it. 0 where the text is anything else, or is
 * rare (a line, a batch, an escaped letter): then event_read_strict() and event_write() must look. */
int event_read_canonical(struct event *e, const char *text, size_t size);

/* As event_read(): takes the keys in any order, and says what is wrong. */
int event_read_strict(struct event *e, const char *text, size_t size, struct error *why);

/* Length of the UTF-8 sequence at `at`, 1 to 4; 0 where there is none (RFC 3629: no overlong forms, no
 * surrogates). */
size_t utf8_length(const unsigned char *at, size_t size);

#endif
