# A code is refused while a tourniquet is on, and UNDO is meant for that: no question is left which the card of a second
# tourniquet would answer by moving the first (rules 3 and 13).
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
> pack GREEN-M 591 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:591 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 592 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:592 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 2, digit left thumb
> unknown rubbish
refused: Not in the catalogue: rubbish. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: refused, case 1, "Not in the catalogue: rubbish. Not counted. Use a listed item, or NO CODE to count it; a tourniquet that is on: UNLISTED TOURNIQUET."
> card UNDO
refused: The clock of the left thumb runs on: UNDO does not stop it. Wrong digit: scan MISREAD.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: refused, case 1, "The clock of the left thumb runs on: UNDO does not stop it. Wrong digit: scan MISREAD."
> digit left index finger
accepted: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: On: left thumb and left index finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit left index finger, first
  event: item-on, case 1, item 1, digit left index finger
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
left thumb: on, now 0 min, total 0 min, longest 0 min
left index finger: on, now 0 min, total 0 min, longest 0 min
