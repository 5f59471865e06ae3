/* What only the record knows of what was scanned. It is asked before anything is decided, and nothing below looks anything up;
 * where it cannot be asked, that is said, and never counts as 'not known' (decide/input.h: unasked). */
#ifndef BANDTALLY_RUN_KNOWN_H
#define BANDTALLY_RUN_KNOWN_H

#include "run/core.h"

/* The batch of a stores' item label of this station. 1 `*batch`, 0 it is none, or the record has none or could not be asked
 * (then in->known says so). */
int known_batch(struct core *c, const struct code *code, struct batch *batch, struct input *in);

/* Fills in->known of what the input says: again whenever a scan that was held is entered, for the record has gone on. A slip
 * code that is not ours counts as a guess of its scanner (decide/slip-read.h). */
void known_ask(struct core *c, struct input *in);

/* What the record says of a slip's signed summary, which is scanned at an auditor's desk. */
void known_ask_signed(struct core *c, const struct scan *s, struct input *in);

#endif
