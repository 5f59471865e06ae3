/* Cases in rooms that are in station.ini no more: their clocks run, and no board is theirs, so every board says so. And in
 * rooms that are of another kind there since: they go on as rooms of cases (station_room_is()), which nobody meant. */
#ifndef BANDTALLY_TELL_ROOMS_H
#define BANDTALLY_TELL_ROOMS_H

#include "count/station.h"

/* "Room 2 is not in station.ini, but case 1 is open there, with a tourniquet on: left thumb, 24 min. …" of the first such sheet from
 * `from` on. The place behind it, to go on from; 0 and "" none. */
int rooms_gone_words(const struct station *st, const struct language *language, int from, struct moment now,
                     char *out, size_t size);

#endif
