# Two tourniquets on one thumb, OFF read twice: one of the two is off.
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
> pack GREEN-M 503 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:503 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 504 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:504 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card ADD
accepted: A second tourniquet on the right thumb. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
+ 2 min
  event: alive, 2 times
> digit right thumb
question: Tourniquet on the right thumb for 2 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: One of the tourniquets is off the right thumb. Another is still on; the clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
>> card OFF
accepted: Read twice, entered once: OFF.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right thumb: on, now 2 min, total 2 min, longest 2 min
> digit right thumb
question: Tourniquet on the right thumb for 2 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:02, after 2 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 2 min, total 2 min, longest 2 min
