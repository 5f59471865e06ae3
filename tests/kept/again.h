/* A slip's document, made again from a kept record by the program as it is now.
 *
 * The record is cut after the event up to which the kept document was made, as its signed summary says, so
 * that what came later does not matter. All that these tests know of how a document is made is in this file's
 * .c. */
#ifndef BANDTALLY_TESTS_KEPT_AGAIN_H
#define BANDTALLY_TESTS_KEPT_AGAIN_H

#include "base/error.h"
#include "base/json.h"
#include "record/chain.h"
#include "record/store.h"

/* `folder` has the settings and the key of the kept folder, and no record: it is made there, event by event,
 * up to `seq`. `last` becomes its last hash. A new reference, or NULL with `e`. */
json_t *document_again(const char *folder, struct record *kept, int64_t seq, const json_t *document,
                       struct chain *last, struct error *e);

/* A station on a folder as it stands, one at a time. 0 or a negative errno with `e`. */
int station_open(const char *folder, struct error *e);
void station_close(void);

/* A further copy of a kept document's slip, by that station. A new reference, or NULL with `e`. */
json_t *further_copy(const json_t *document, struct error *e);

#endif
