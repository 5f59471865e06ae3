# Stored scans come while a case is suspended: which case they would go to is said by its number, and SUSPEND takes them
# to the other.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 291 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:291 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left thumb, first
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left thumb
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> stored 30 s: digit left thumb; 20 s card OFF; 10 s card FINAL COUNT
question: 3 stored scans came. Left thumb: the clock runs as 'on?' from 09:59. Case 2 is opened. Case 1 stays suspended.
next: 3 scans were stored: left thumb, OFF and FINAL COUNT (oldest 09:59). Made in this room, for case 2, not case 1? Scan YES to enter as late; NO to throw away.
  event: scan-held, digit, item 1, digit left thumb, other 1, no line, "hand-1", 30 s before, by wall clock 30 s before
  event: scan-held, card, item 2, other 1, no line, n 40, "hand-1", 20 s before, by wall clock 20 s before
  event: scan-held, card, item 3, other 1, no line, n 50, "hand-1", 10 s before, by wall clock 10 s before
  event: case-opened, case 2
  event: owed, case 2, team
  event: digit-maybe-on, case 2, digit left thumb, first, late, 30 s before, by wall clock 30 s before
  event: owed, case 2, maybe-on, digit left thumb, 30 s before, by wall clock 30 s before
  event: asked, case 2, stored
> card SUSPEND
accepted: Case 2 is suspended. A TOURNIQUET MAY BE ON: left thumb. Clocks and reminders go on. Case 1 goes on.
next: 3 scans were stored: left thumb, OFF and FINAL COUNT (oldest 09:59). Made in this room, for case 1, not case 2? Scan YES to enter as late; NO to throw away.
  event: suspended, case 2, first
  event: asked, case 2, nothing more
  event: resumed, case 1, first
  event: asked, case 1, stored
> card NO
accepted: 3 stored scans were thrown away: left thumb, OFF and FINAL COUNT. The record says so.
next: Before the dressing: scan FINAL COUNT.
  event: held-scan-answered, thrown away, ref scan-held 12 before, 3 times
  event: refused, case 1, "3 stored scans were thrown away"
  event: asked, case 1, nothing more
> card NEXT
accepted: Next.
next: Before the dressing: scan FINAL COUNT.
  event: next, case 1
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on. Case 2 goes on.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: suspended, case 1, first
  event: resumed, case 2, first
  event: asked, case 2, is-on, digit left thumb, n 1
> card NO
accepted: Not on: left thumb. Case 2 ended as cancelled; nothing was counted in.
next: Case 1 is suspended: scan SUSPEND to go on with it; NEW CASE for the next patient.
  event: digit-not-on, case 2, digit left thumb, first
  event: paid, case 2, maybe-on, digit left thumb, not-on
  event: asked, case 2, nothing more
  event: case-ended, case 2, cancelled, nothing-opened
> show
no case
