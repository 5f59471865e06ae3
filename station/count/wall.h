/* The wall clock: whether it can be right. Nothing is ordered by it; people read it, and expiry is judged by it.
 *
 * It is wrong where it stands before what the record already holds, before the program itself was made, or 30 years after.
 * A tick says so with a clock-wrong event, and says so again when it is right (EV_CLOCK_WRONG); `clock_wrong` is what was
 * said last.
 */
#ifndef BANDTALLY_COUNT_WALL_H
#define BANDTALLY_COUNT_WALL_H

#include <stddef.h>
#include <stdint.h>

#include "count/station.h"

/* As a tick would say it now. A minute's lag of the record is no error: clocks are put right by seconds all the time;
 * but once it was said, the clock is right again only where it has caught up. */
int wall_is_wrong(const struct station *st, struct moment now);

/* 30 years or more after the program was made: the record does not take that for its latest time, else a clock that is set
 * right would stand before it for as long. */
int wall_is_beyond(const struct station *st, struct moment at);

/* The latest wall clock that is known and can be: its own, or the record's. For what must have a day though the clock is wrong: the
 * century of a year of two digits, the cases of the day. */
int64_t wall_latest_ms(const struct station *st, struct moment now);

/* By how much the wall clock was turned from one moment to a later one of the same boot, forward above 0: the clock that no
 * one can set passed less, or more. 0 within a minute, and over a power cut, which only the wall clock spans. */
int64_t wall_turned_ms(struct moment from, struct moment to);

/* What the board says of it, and what to do; SAY_NONE where nothing was said. */
struct say wall_says(const struct station *st, struct moment now);

#endif
