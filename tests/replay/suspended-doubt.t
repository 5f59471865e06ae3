# A clock of the suspended case runs as 'on?': a digit card of it, scanned now or stored, is of that case and opens no other.
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
> pack GREEN-M 295 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:295 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
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
> digit left thumb
question: Left thumb: the clock runs as 'on?'.
next: Left thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit left thumb, first
  event: owed, case 1, maybe-on, digit left thumb
  event: asked, case 1, is-on, digit left thumb, n 1
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> stored 30 s: digit left thumb; 20 s badge CIRC-2
question: 2 stored scans came.
next: 2 scans were stored: left thumb and CIRC-2 (oldest 10:00). Made in this room? Scan YES to enter as late; NO to throw away.
  event: scan-held, digit, item 1, digit left thumb, other 1, no line, "hand-1", 30 s before, by wall clock 30 s before
  event: scan-held, badge, item 2, other 1, no line, n 2, "hand-1", 20 s before, by wall clock 20 s before
  event: asked, stored
> card NO
accepted: 2 stored scans were thrown away: left thumb and CIRC-2. The record says so.
next: Case 1 is suspended: scan SUSPEND to go on with it; NEW CASE for the next patient.
  event: held-scan-answered, thrown away, ref scan-held 3 before, 2 times
  event: refused, "2 stored scans were thrown away"
  event: asked, nothing more
> digit left thumb
question: Left thumb: the clock runs as 'on?'. Case 1, which was suspended, goes on with this. If this is the next patient: SUSPEND, then NEW CASE.
next: Left thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: resumed, case 1, first
  event: asked, case 1, is-on, digit left thumb, n 1
> card NO
accepted: Not on: left thumb.
next: Before the dressing: scan FINAL COUNT.
  event: digit-not-on, case 1, digit left thumb, first
  event: paid, case 1, maybe-on, digit left thumb, not-on
  event: asked, case 1, nothing more
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> digit left thumb
question: Left thumb: the clock runs as 'on?'. Case 2 is opened. Case 1 stays suspended.
next: Left thumb: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: case-opened, case 2
  event: owed, case 2, team
  event: digit-maybe-on, case 2, digit left thumb
  event: owed, case 2, maybe-on, digit left thumb
  event: asked, case 2, is-on, digit left thumb, n 1
