/* Time passing: reminders until the tourniquet itself is accounted for, and marks in time (rules 2, 14). */
#ifndef BANDTALLY_DECIDE_TICK_H
#define BANDTALLY_DECIDE_TICK_H

#include "decide/input.h"
#include "decide/outcome.h"

/* No turn, since it may be about any room's case; what is due goes into `out`. One thing at a time: the caller ticks again
 * until nothing is due. */
void tick_take(const struct station *st, const struct input *in, struct outcome *out);

#endif
