/* From a hospital's store to its region's, by the same append function: each event checked again on arrival. A station whose
 * events the region refuses stops none of the others. */
#ifndef BANDTALLY_FORWARD_RELAY_H
#define BANDTALLY_FORWARD_RELAY_H

#include "forward/hospital-store.h"

#define RELAY_STATIONS 400 /* incarnations of all stations of a hospital */

/* Works until SIGTERM, looking every `every_ms`; 0: once, and returns when all was looked at. 0, or with `every_ms` 0 a
 * negative errno where a store was not reached or refused something. */
int relay_run(const struct store_place *from, const struct store_place *to, int every_ms);

#endif
