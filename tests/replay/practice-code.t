# A code of the practice set counts nothing: neither in a room without a case nor in a real one, nor among stored scans.
> practice
refused: This is a practice code: it counts nothing here. Use this room's own cards, badges and packs.
next: Next patient: scan NEW CASE.
  event: refused, "This is a practice code: it counts nothing here. Use this room's own cards, badges and packs."
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
> pack GREEN-M 101
accepted: Counted in: 1 finger tourniquet, green, M.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first
> practice
refused: This is a practice code: nothing of it was entered in case 1, which is real. Scan this room's own code.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: refused, case 1, "This is a practice code: nothing of it was entered in case 1, which is real. Scan this room's own code."
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> practice
refused: This is a practice code: nothing of it was entered in case 1, which is real. Scan this room's own code.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "This is a practice code: nothing of it was entered in case 1, which is real. Scan this room's own code."
> stored 100 s: practice; 90 s digit left thumb
question: 2 stored scans came. NOT held: a practice code, which counts nothing. Enter it from the paper sheet. Left thumb: the clock runs as 'on?' from 09:58.
next: A scan was stored: left thumb (made 09:58). Made in this room, for this case? Scan YES to enter as late; NO to throw away.
  event: refused, case 1, "A stored scan was NOT held: a practice code, which counts nothing"
  event: scan-held, digit, item 2, digit left thumb, other 1, no line, "hand-1", 90 s before, by wall clock 90 s before
  event: digit-maybe-on, case 1, digit left thumb, first, late, 90 s before, by wall clock 90 s before
  event: owed, case 1, maybe-on, digit left thumb, 90 s before, by wall clock 90 s before
  event: asked, case 1, stored
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
left thumb: maybe on, now 1 min, total 1 min, longest 1 min
owed: maybe-on
