/* A slip's own code was scanned: the paper proves itself, so it exists (DESIGN section 8). */
#ifndef BANDTALLY_DECIDE_SLIP_READ_H
#define BANDTALLY_DECIDE_SLIP_READ_H

#include "decide/turn.h"

void slip_take(struct turn *t);

/* Whether the paper's own code fits what the record holds of it. 0: it does not, or that cannot be told, and it was refused
 * with why. */
int slip_is_proven(struct turn *t);

/* Whether a slip that is newer than the record has a number which that has left out: after an older record was put back,
 * numbers go on past those that may have been given out. */
int input_is_lost(const struct station *st, const struct input *in);

#endif
