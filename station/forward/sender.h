/* Sends the station's events to the hospital's store, and its lists back.
 *
 * Nothing is kept here: where to go on the store says at each connection, and the station has every event. So this program may
 * be ended at any moment. An event is told to the station as kept when, and only when, the append function has answered so. */
#ifndef BANDTALLY_FORWARD_SENDER_H
#define BANDTALLY_FORWARD_SENDER_H

#include "forward/hospital-store.h"

/* Works until the station's end of `in` is closed. Returns 0 then, or a negative errno. */
int sender_run(const struct store_place *place, int in, int out);

#endif
