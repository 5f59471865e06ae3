# OFF is not moved to before somebody said that the tourniquet is still on.
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
> pack GREEN-M 781 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:781 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 10 min
  event: alive, 10 times
> digit right index finger
question: Tourniquet on the right index finger for 10 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card NO
accepted: Still on. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: digit-seen-on, case 1, digit right index finger, n 2
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Tourniquet on the right index finger for 15 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:15, after 15 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card 10 MINUTES AGO
refused: 5 min before OFF it was known to be still on the right index finger: it cannot have come off 10 min earlier. If that was wrong, write the time on the slip.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "5 min before OFF it was known to be still on the right index finger: it cannot have come off 10 min earlier. If that was wrong, write the time on the slip."
> card 3 MINUTES AGO
accepted: Off 3 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 3, first
> card 3 MINUTES AGO
accepted: Entered once already: 3 MINUTES AGO. If it is meant again: NEXT, then this.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 12 min, total 12 min, longest 12 min
