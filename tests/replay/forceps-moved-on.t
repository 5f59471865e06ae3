# Forceps that moved away and onto the next tourniquet: the slip does not say that they are on both.
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
> pack GREEN-M 875 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:875 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 876 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:876 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 88
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, FORCEPS:88 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
  event: forceps-on, case 1, item 3, digit right index finger
+ 1 min
  event: alive
> card FORCEPS MOVED
accepted: Forceps moved away: tourniquet without forceps on the right index finger. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: forceps-moved, case 1, item 3, first
> digit right ring finger
accepted: Tourniquet on, right ring finger, from 10:01; forceps on it. The clock runs.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 1, digit right ring finger
  event: forceps-on, case 1, item 3, digit right ring finger
+ 1 min
  event: alive
> digit right ring finger
question: Tourniquet on the right ring finger for 1 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card OFF
accepted: Off, right ring finger, at 10:02, after 1 min. Off is not yet accounted for.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-off, case 1, item 1, digit right ring finger, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 3
  event: digit-off, case 1, digit right ring finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: artery forceps, curved, here, 0 of 1
right index finger: on, now 2 min, total 2 min, longest 2 min
right ring finger: off, now 1 min, total 1 min, longest 1 min
