# OFF is moved to no moment before one at which the tourniquet was on for certain: a second one, one of two off, its forceps moved, the patient leaving with it.
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
> pack GREEN-M 868 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:868 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 869 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:869 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 86
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, FORCEPS:86 "artery forceps, curved" forceps known by its mark, n 1, first
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
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Tourniquet on the right index finger for 5 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card ADD
accepted: A second tourniquet on the right index finger. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
+ 2 min
  event: alive, 2 times
> digit right index finger
question: Tourniquet on the right index finger for 7 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: One of the tourniquets is off the right index finger. Another is still on; the clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
+ 2 min
  event: alive, 2 times
> digit right index finger
question: Tourniquet on the right index finger for 9 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:09, after 9 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 3
  event: digit-off, case 1, digit right index finger
> card 3 MINUTES AGO
refused: 2 min before OFF it was known to be still on the right index finger: it cannot have come off 3 min earlier. If that was wrong, write the time on the slip.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "2 min before OFF it was known to be still on the right index finger: it cannot have come off 3 min earlier. If that was wrong, write the time on the slip."
> card 2 MINUTES AGO
accepted: Off 2 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 2, first
> digit right ring finger
question: Right ring finger: the clock runs as 'on?'.
next: Right ring finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right ring finger, first
  event: owed, case 1, maybe-on, digit right ring finger
  event: asked, case 1, is-on, digit right ring finger, n 1
+ 5 min
  event: alive, 5 times
> card FORCEPS MOVED
refused: No forceps is on a tourniquet now.
next: Right ring finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: refused, case 1, "No forceps is on a tourniquet now."
+ 3 min
  event: alive, 3 times
> digit right ring finger
question: Right ring finger: the clock runs as 'on?'.
next: Right ring finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: asked, case 1, is-on, digit right ring finger, n 1, first
> card OFF
accepted: Off, right ring finger, at 10:18, after 8 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 2, digit right ring finger
  event: forceps-on, case 1, item 3, digit right ring finger
  event: paid, case 1, maybe-on, digit right ring finger, was-on
  event: item-off, case 1, item 2, digit right ring finger
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 3
  event: digit-off, case 1, digit right ring finger
> card 5 MINUTES AGO
accepted: Off 5 min earlier, right ring finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right ring finger, n 5, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
item 3: artery forceps, curved, here, 0 of 1
right index finger: off, now 7 min, total 7 min, longest 7 min
right ring finger: off, now 3 min, total 3 min, longest 3 min
