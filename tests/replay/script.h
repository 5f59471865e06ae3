/* The lines of a script: what is scanned, typed and set in a room, as people say it.
 *
 * A script is text. Lines that begin with '>' or '+' are input; the lines after each are what the station
 * must say, as "accepted|refused|question: …" and "next: …", and behind that what was decided, one line an event:
 * "  event: …" (event-words.h), and how often where the same comes several times running. An empty line ends an
 * expectation; '#' is a comment.
 *   begins from NAME           the first line of a script that goes on where NAME.t, played whole, ends: what the station
 *                              says to that, and the slips that it prints, stand there
 *   begin 2027-04-03T13:50Z    or the first line: the station's wall clock then, else 2026-11-25T10:00Z
 *   > card OFF                 a card of the present room by its printed words
 *   > card OFF of room 2       one of another room; a digit card likewise
 *   > digit right index finger
 *   > badge CIRC-2
 *   > pack GREEN-M 101 lot A expiry 20270331      identity and the rest are optional
 *   > tray TRAY-HAND
 *   > slip 1 | slip 1 copy 2 | slip 1 digits 123456 | slip 1 old | case 41 | typed TEXT | unknown TEXT
 *   > practice                 a code of the practice set, whichever
 *   > late card OFF | > keyed digit right thumb    entered later than it happened; typed, not scanned
 *   > camera card OFF          read by the room's camera, not its handheld
 *   > print again 1            a further copy of slip 1, as `bandtally print retry 1` asks for
 *   > stored 640 s: card OFF; 20 s badge CIRC-2       stored scans that come at once, and how old each is;
 *                              without an age: one second younger than the one before
 *   > show                     sheet: items, digits, debts
 *   >> card OFF                the same, a tenth of a second after the scan before; else 3 s after it
 *   + 5 min | + 3 s | + once 2880 min (one tick at the end) | + boot 30 min (a power cut as long)
 *   + wall 60 min (somebody sets the clock)
 *   room 2                     the scanner works for room 2 from here on
 *   catalogue BLADE-15,blade,blade      stores list a further line: key, name and role, one of each pack
 *   quarantine GREEN-M A why
 *   withdrawn SURG-3
 *   policy one_by_one | policy repeat_ms 500     a number of policy.ini by its key; yes where none follows
 *   lists old | lists fresh    of the hospital: whether they are older than it wants
 *   used elsewhere GREEN-M:190 case 7 of station 2      as the hospital says of this item
 *   printer off | printer on   slips are queued and not written
 */
#ifndef BANDTALLY_TESTS_SCRIPT_H
#define BANDTALLY_TESTS_SCRIPT_H

#include "play.h"

/* Plays one line but "begins from": `said` of the play holds what the station says to it. The line is cut up. Ends the
 * program where it cannot be followed. */
void script_line(struct play *p, char *line);

#endif
