# Forceps that clamp the tourniquet fall on the floor: they are off the digit at once, others may clamp it, and its clock runs.
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
> pack GREEN-M 874 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:874 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack FORCEPS 12
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:12 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
  event: forceps-on, case 1, item 2, digit right index finger
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> pack FORCEPS 12
accepted: Dropped: artery forceps, curved. It stays in the room and in the count. Forceps moved away: tourniquet without forceps on the right index finger. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-dropped, case 1, item 2, first
  event: forceps-moved, case 1, item 2
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, here, 0 of 1, dropped
right index finger: on, now 0 min, total 0 min, longest 0 min
> card 2 MINUTES AGO
refused: 2 MINUTES AGO is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, 2 MINUTES AGO, then that scan again.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "2 MINUTES AGO is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, 2 MINUTES AGO, then that scan again."
> card UNDO
accepted: Taken back: the last scan, artery forceps, curved. The record keeps both.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: undone, case 1, ref item-dropped 4 before, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, on, 0 of 1
right index finger: on, now 0 min, total 0 min, longest 0 min
> card DROPPED
accepted: Entered once already: DROPPED. If it is meant again: NEXT, then this.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
> pack FORCEPS 12
accepted: Dropped: artery forceps, curved. It stays in the room and in the count. Forceps moved away: tourniquet without forceps on the right index finger. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-dropped, case 1, item 2, first
  event: forceps-moved, case 1, item 2
  event: asked, case 1, nothing more
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: artery forceps, curved, here, 0 of 1, dropped
right index finger: off, now 0 min, total 0 min, longest 0 min
