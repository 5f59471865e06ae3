/* Text that somebody typed: an incident number, why a step was not done, the digit's circumference, a correction. */
#ifndef BANDTALLY_DECIDE_TYPED_H
#define BANDTALLY_DECIDE_TYPED_H

#include "decide/turn.h"

void typed_take(struct turn *t);

#endif
