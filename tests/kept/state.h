/* A station's state as text, in the trade's words: cases in the order of their numbers, whatever place they
 * have in memory. What stands beside a kept record was written by the program that made the record. */
#ifndef BANDTALLY_TESTS_KEPT_STATE_H
#define BANDTALLY_TESTS_KEPT_STATE_H

#include "base/buf.h"
#include "count/station.h"

/* Appends it. Durations are those at the station's last event, so that the text does not depend on today. */
void state_text(const struct station *st, struct buf *out);

#endif
