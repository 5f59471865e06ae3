/* What is left to bandtally-forward: its three files, connections to the ports of its hosts, and the station's pipe. */
#ifndef BANDTALLY_FORWARD_FORWARD_CONFINED_H
#define BANDTALLY_FORWARD_FORWARD_CONFINED_H

#include "base/error.h"
#include "forward/hospital-store.h"

/* `from`: hosts that are read, none of a station. 0, or a negative errno with `e` filled: then the program must not go on. */
int confine_forward(const struct store_place *place, const struct store_place *from, struct error *e);

#endif
