/* A code that is nothing here: unknown, misread, of another site, a patient's, half of a pack's data (rules 5, 20). */
#ifndef BANDTALLY_DECIDE_UNREADABLE_H
#define BANDTALLY_DECIDE_UNREADABLE_H

#include "decide/turn.h"

void unreadable_take(struct turn *t);

/* What is unknown of it, as far as it may be repeated. */
struct say input_unknown_code(const struct input *in);

#endif
