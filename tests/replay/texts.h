/* No event holds a sentence of the program's own: what is text in it was typed or scanned, or a setting, a catalogue or a
 * card says it. A text without a blank (a code, a lot, a number) is no sentence. */
#ifndef BANDTALLY_TESTS_TEXTS_H
#define BANDTALLY_TESTS_TEXTS_H

#include "base/buf.h"
#include "count/station.h"

/* Adds what the station's settings, staff, visitors' cards and lines say. Whatever people type is added by the caller. */
void texts_of_station(struct buf *known, const struct station *st);

/* The first text of the event that stands nowhere in `known`; NULL none. */
const char *texts_unknown(const struct buf *known, const struct event *e);

#endif
