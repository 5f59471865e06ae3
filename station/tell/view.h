/* What a person may see, as JSON: one room for the board and for `bandtally sheet`; the station for `status`.
 *
 * room view: { v 1, language "en" of the room's sentences, at_ms wall clock, utc_min how far the civil time here is ahead of UTC,
 *   room {number, name, single}, site its name, distrust "" or why not to trust the station, in sentences behind which who
 *   shows them says to count by hand,
 *   stopped: true in the last word of a station that was told to stop while a case is open, waits [text] what of its machine
 *   waits until none is,
 *   practice: true where nothing of it is real (run/practice.h),
 *   case {number, label, opened, single, initial_agreed, final none asking agreed, discrepancy, cancelled, patient_left,
 *         dressing_on, sign_out: it has been reached, points_yes how many, point_no the one that was answered NO or 0} or null,
 *   suspended_case its number or 0, ended {case, outcome, at "10:43", ago_ms} the case that ended here last or null,
 *   after [{case, what, digit name or "", at "10:43"}] what is owed to patients of cases that ended (count/after-end.h), what by
 *   its name as a debt, next "the next thing to do",
 *   question "" or its name, asked_digit its number or 0, asked_item the line that the final count asks for or 0,
 *   deeds [{kind, truth, words, card, then the card behind it, digit, place, item}] what is asked for, the ordinary one first:
 *   kind and truth by their names (count/deed.h), the rest where the kind has it, cards [{number, words}] those among them,
 *   items [{number, name, role by its name, lot, identity, place here on off accounted returned isolated struck extra, and in
 *           words place_words, pieces, shown, missing, digit, dropped, unlisted, added,
 *           condition "" intact cut-complete pieces-missing}],
 *   digits [{number, name, state, stretch_ms, by_wall_ms, text, total_ms, longest_ms, on_at "10:12" wall clock, with its
 *            date if not today, next_reminder_min 0 none, marked, seen_bare, reminded, tourniquet,
 *            forceps, gap}]
 *            stretch_ms as of at_ms; the clock runs on where state is "on" or "maybe-on". With gap it is the least, and
 *            by_wall_ms is the same stretch by the wall clock; 0 where there is no gap or that cannot be trusted
 *   team [{place by its name, operator: of one who works alone, place_words, name}],
 *   agreed [{count initial final handover added, at "10:05", field, circulating ("" alone), recorded}] the counts that hold,
 *   in their order, debts [{name of its sentence, words, next: what comes next says it already}],
 *   search [{text, state open done not-done}] while a discrepancy is open, may_be_on [numbers of digits] where what is missing
 *   may be, points [text] of the sign-out, recent [{ago_ms, verdict, said}] replies to scans, newest first,
 *   last_scan_ms how long ago something was scanned here, refused and typed too; null never,
 *   elsewhere [{room, text, case suspended or 0, reminded, nobody: nobody answers it}] reminders in other rooms that nobody
 *   answers, and what is on in a case that is suspended in this room: shown and, where reminded, heard here, holding nothing,
 *   clock "" or what is wrong with the wall clock,
 *   slips [{number, copy, case, room, kind, state, since_ms wall clock}] not seen yet, the latest, and slips_older how many
 *   before them, owed [{case, since_ms wall clock}] with an incident number owed and owed_more how many besides, awake,
 *   sound {volume 0 to 100, quiet: it is now within the quiet hours, speech: replies are spoken} }
 *
 * status: { v 1, language of the site, site its letters, site_name, events how many the record has, open_cases how many,
 *   last_case its number, lines and staff how many there are, distrust, stopped and waits as above, printer "" none,
 *   rooms [{number, name, language, case, suspended_case or 0, single, stores: it is a bench}],
 *   cases of the day [{case, room, opened "10:05", ended ("" open), outcome}] newest first,
 *   backup {ms, events} of the last one that was read back whole, or null,
 *   slips, slips_older, owed, owed_more, after, clock and elsewhere as above, after and elsewhere of all rooms }
 */
#ifndef BANDTALLY_TELL_VIEW_H
#define BANDTALLY_TELL_VIEW_H

#include "base/json.h"
#include "count/deed.h"
#include "count/station.h"
#include "tell/day.h"
#include "words/language.h"

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
	const char *distrust;     /* why the station is not to be trusted; "" it is */
	int stopped;              /* 1: it was told to stop while a case is open: this is its last word */
	const enum saying *waits; /* what waits until no case is open, SAY_NONE behind it; NULL nothing */
	const struct language *language; /* of the room, or the site; NULL English */
};

struct view_room_source { /* of one room besides */
	int32_t room;
	const struct next *next;        /* what comes next: it is decided elsewhere */
	int sign_out;                   /* 1: the sign-out has been reached */
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

json_t *view_deeds(const struct next *next, const struct language *language); /* as above, a new reference */

const char *slip_state_name(enum slip_state state);
const char *slip_kind_name(enum slip_kind kind);
const char *case_end_name(int end); /* enum case_end; 0 open */

#endif
