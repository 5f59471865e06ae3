/* What of a text goes to somebody outside. It is let through by what is known to be harmless, not cut by what is known to be
 * secret: a word passes where the programs' own sentences hold it, letter for letter, capitals too (make-vocabulary), or the
 * system's words for an error; a number where the word before it says that it is of an event, a signal, a line of the
 * source. Whatever else stands there becomes "…". Words of people's names never pass.
 */
#ifndef BANDTALLY_TOOL_MASK_H
#define BANDTALLY_TOOL_MASK_H

#include <jansson.h>
#include <stddef.h>

#include "base/buf.h"

extern const char *const vocabulary[]; /* sorted by bytes */
extern const size_t vocabulary_size;

struct mask {
	json_t *system; /* the words of errors */
	json_t *names;  /* of people and cases */
};

int mask_init(struct mask *m); /* 0 or -ENOMEM */
void mask_deinit(struct mask *m);
int mask_name(struct mask *m, const char *name); /* each word of it is kept back. 0 or -ENOMEM */
int mask_text(const struct mask *m, const char *text, struct buf *out); /* 0 or -ENOMEM */

#endif
