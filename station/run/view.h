/* What a person may see, as JSON: one room for the board and for `bandtally sheet`; the station for `status`.
 *
 * room view: { v 1, at_ms wall clock, room {number, name, single}, distrust "" or why not to trust the station,
 *   case {number, label, opened…} or null, next "the next thing to do", question "" or its name,
 *   cards [{number, words}] that fit now,
 *   items [{number, name, lot, identity, place, pieces, shown, missing, digit, dropped, unlisted, added,
 *           condition}],
 *   digits [{number, name, state, stretch_ms, text, total_ms, longest_ms, on_at "10:12" wall clock, with its
 *            date if not today, marked, seen_bare, reminded, tourniquet, forceps, gap}]
 *            stretch_ms as of at_ms; the clock runs on where state is "on" or "maybe-on"
 *   team [{place, name}],
 *   agreed [{count, at "10:05", field, circulating ("" alone), recorded}] the counts that hold, in their order,
 *   debts [words], search [{text, answered}] while a discrepancy is open,
 *   points [text] and points_yes at the sign-out, recent [{ago_ms, verdict, said}] newest first,
 *   slips [{number, case, kind, state}] not seen yet, owed [case numbers with an incident number owed], awake,
 *   sound {volume 0 to 100, quiet: it is now within the quiet hours, speech: replies are spoken} }
 *
 * status: { …, rooms, cases of the day [{case, room, opened "10:05", ended ("" open), outcome}] newest first,
 *   slips and owed as above }
 */
#ifndef BANDTALLY_RUN_VIEW_H
#define BANDTALLY_RUN_VIEW_H

#include "run/core.h"

json_t *view_room(const struct core *c, int32_t room); /* new reference; NULL where there is no such room */
json_t *view_status(const struct core *c);

const char *item_place_name(enum item_place place);
const char *slip_state_name(enum slip_state state);
const char *slip_kind_name(enum slip_kind kind);
const char *verdict_name(enum verdict verdict);
const char *case_end_name(int end); /* enum case_end; 0 open */

#endif
