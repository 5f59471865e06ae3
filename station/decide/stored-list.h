/* Scans that a scanner had stored and that are held for a room: which, what they are called, what is asked about them
 * (rules 17 and 19). They are held in the station's state, so `out` says what a turn has made of them; NULL nothing.
 *
 * 'Stored' is what a scanner did, 'held' is what the station does until somebody has answered. They are state like any other:
 * station.held, made of EV_HELD and EV_HELD_ANSWERED (count/held.h), in the snapshot and over a restart; Q_STORED and Q_TWICE
 * are questions of the sheet or the room with rows of their own (answer.c). What is theirs alone:
 * - They come together, as one input (stored-come.h): a batch is held whole before anything is asked, but each digit card
 *   starts its clock at once.
 * - They are asked about wherever the room looks, so every turn ends with stored_ask() (stored-answer.h): the question moves
 *   from the room to a sheet that is opened there, and back.
 * - After YES each is entered as an input of its own, because the record is asked about each by then (stored-enter.h): the
 *   outcome says how many (`enter`), whoever called decide() enters them one after another, and nothing else is asked until
 *   the last one (`more`). Where the station ends in between, what is still held is asked about at its start.
 */
#ifndef BANDTALLY_DECIDE_STORED_LIST_H
#define BANDTALLY_DECIDE_STORED_LIST_H

#include "decide/outcome.h"

/* Of a room, oldest first. How many. */
int stored_list(const struct station *st, int32_t room, const struct outcome *out,
                struct held list[HELD_ROOM_MAX]);
/* The question of the room while no case runs in it. */
enum question stored_idle_question(const struct station *st, int32_t room, const struct outcome *out);
/* The first scans that came in a row and are the same, and nobody has said yet that it was meant: list[*from]
 * and those behind it. How many; 0 none. */
int stored_first_row(const struct held *list, int n, int *from);
/* Whether one of them would be refused because no case is open when its turn comes. */
int stored_wants_case(const struct held *list, int n);

struct say stored_scan(const struct station *st,
                       const struct held *h); /* texts are the station's and the scan's */

/* What a sentence lists of them: the first ones by name, and how many besides. How many things. */
int stored_named(const struct station *st, const struct held *list, int n, struct say out[SAID_LISTED_MAX]);

/* What comes next at Q_STORED or Q_TWICE, after `out`, which may be NULL. How many scans are held; 0: nothing is asked. */
int stored_question(const struct station *st, int32_t room, const struct outcome *out, enum question q,
                    int32_t in_case, struct next *next);

#endif
