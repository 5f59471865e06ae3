# OFF was entered for the wrong one of two digits: the first has its tourniquet still, and the other is off since then.
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
> pack GREEN-M 863 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:863 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 864 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:864 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
+ 2 min
  event: alive, 2 times
> digit right ring finger
accepted: Tourniquet on, right ring finger, from 10:02; no forceps on it. The clock runs.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 1, digit right ring finger
+ 3 min
  event: alive, 3 times
> digit right index finger
question: Tourniquet on the right index finger for 5 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:05, after 5 min. Off is not yet accounted for.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
+ 1 min
  event: alive
> card MISREAD
question: Misread: the right index finger, or a pack.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right index finger, first
> digit right ring finger
accepted: Off, right ring finger, at 10:05, after 3 min. Off is not yet accounted for. On the right index finger it is still on; its clock runs on.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-still-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
  event: item-off, case 1, item 1, digit right ring finger, late, 66 s before, by wall clock 66 s before
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger, late, 66 s before, by wall clock 66 s before
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 6 min, total 6 min, longest 6 min
right ring finger: off, now 3 min, total 3 min, longest 3 min
+ 4 min
  event: alive, 4 times
> digit right index finger
question: Tourniquet on the right index finger for 10 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:10, after 10 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 10 min, total 10 min, longest 10 min
right ring finger: off, now 3 min, total 3 min, longest 3 min
