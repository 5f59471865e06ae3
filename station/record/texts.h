/* Events as they stand in the record, for whoever sends them elsewhere: the text to the byte, and its hash. */
#ifndef BANDTALLY_RECORD_TEXTS_H
#define BANDTALLY_RECORD_TEXTS_H

#include "record/store.h"

/* Both are valid in the callback, which returns 0 to go on. */
typedef int (*record_text_fn)(void *context, int64_t seq, const char *text, size_t size,
                              const struct chain *hash);

/* The events after + 1 to `to`, at most `limit` of them, in order. How many were told, or a negative errno. */
int record_each_text(struct record *r, int64_t after, int64_t to, int limit, record_text_fn each,
                     void *context);

/* The hash of the event before `seq`, where that one left the record. RECORD_FOUND, RECORD_HAS_NONE or a negative errno. */
int record_gone_before(struct record *r, int64_t seq, struct chain *hash);

#endif
