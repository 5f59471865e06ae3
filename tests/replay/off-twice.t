# OFF is read twice while two digits have a tourniquet: one comes off, and the other clock runs on (rule 22). OFF after that
# needs its digit card, since two digits had one.
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
> pack GREEN-M 501 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:501 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 502 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:502 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
> digit left ring finger
accepted: Tourniquet on, left ring finger, from 10:00; no forceps on it. The clock runs.
next: On: right index finger and left ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit left ring finger, first
  event: item-on, case 1, item 1, digit left ring finger
+ 4 min
  event: alive, 4 times
> digit right index finger
question: Tourniquet on the right index finger for 4 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:04, after 4 min. Off is not yet accounted for.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
>> card OFF
accepted: Read twice, entered once: OFF.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 4 min, total 4 min, longest 4 min
left ring finger: on, now 4 min, total 4 min, longest 4 min
> card OFF
accepted: Entered once already: OFF. If it is meant again: NEXT, then this.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
> digit left ring finger
question: Tourniquet on the left ring finger for 4 min.
next: Left ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left ring finger, first
> card OFF
accepted: Off, left ring finger, at 10:04, after 4 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left ring finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 4 min, total 4 min, longest 4 min
left ring finger: off, now 4 min, total 4 min, longest 4 min
