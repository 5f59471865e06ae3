/* A batch of stored scans comes: what can be held is held, and digit cards start their clocks at once (rules 3, 17). */
#ifndef BANDTALLY_DECIDE_STORED_COME_H
#define BANDTALLY_DECIDE_STORED_COME_H

#include "decide/turn.h"

void stored_take(struct turn *t);

#endif
