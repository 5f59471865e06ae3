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
#ifndef BANDTALLY_TELL_VIEW_H
#define BANDTALLY_TELL_VIEW_H

#include "base/json.h"
#include "count/station.h"
#include "tell/day.h"

/* What comes next in a room, as values: it is decided elsewhere. */
struct view_next {
	const char *words;
	const int *cards; /* that fit now, by their numbers (enum own_card) */
	int n_cards;
	int sign_out; /* 1: the sign-out has been reached */
};

struct view_scan { /* one of the last scans of a room */
	struct moment at;
	const char *verdict, *said;
};

struct view_sound {
	int volume; /* 0 to 100 */
	int quiet;  /* 1: it is now within the quiet hours */
	int speech; /* 1: replies are spoken */
};

/* What a view is made from; everything that is pointed to is borrowed. */
struct view_source {
	const struct station *station;
	const struct day *day;
	struct moment now;
	const char *distrust; /* why the station is not to be trusted; "" it is */
};

struct view_room_source { /* of one room besides */
	int32_t room;
	struct view_next next;
	const struct view_scan *recent; /* newest first */
	int n_recent;
	struct view_sound sound;
};

struct view_status_source {  /* of the whole station besides */
	int64_t events;      /* in the record */
	const char *printer; /* "" none */
};

/* A new reference; NULL where there is no such room. */
json_t *view_room(const struct view_source *from, const struct view_room_source *room);
json_t *view_status(const struct view_source *from, const struct view_status_source *status);

const char *item_place_name(enum item_place place);
const char *slip_state_name(enum slip_state state);
const char *slip_kind_name(enum slip_kind kind);
const char *case_end_name(int end); /* enum case_end; 0 open */

#endif
