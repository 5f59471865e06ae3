/* A pack, an instrument or a tray's list was scanned, with or without a case. */
#ifndef BANDTALLY_DECIDE_PACK_H
#define BANDTALLY_DECIDE_PACK_H

#include "decide/turn.h"

void thing_take(struct turn *t);

#endif
