# Found after 2,880 and 5,760 minutes (PSNet 2020; Durrant 2006): nothing wraps.
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
> pack GREEN-M 162 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:162 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left great (big) toe
accepted: Tourniquet on, left great (big) toe, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left great (big) toe: scan its digit card, then OFF.
  event: digit-on, case 1, digit left great (big) toe, first
  event: item-on, case 1, item 1, digit left great (big) toe
+ once 2880 min
accepted: Reminder: tourniquet on the left great (big) toe for 2880 min.
next: Tourniquet on the left great (big) toe for 2880 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit left great (big) toe, n 2880
> show
item 1: finger tourniquet, green, M, on, 0 of 1
left great (big) toe: on, now 2880 min, total 2880 min, longest 2880 min
+ once 2880 min
accepted: Reminder: tourniquet on the left great (big) toe for 5760 min.
next: Tourniquet on the left great (big) toe for 5760 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit left great (big) toe, n 5760
> digit left great (big) toe
question: Tourniquet on the left great (big) toe for 5760 min.
next: Left great (big) toe: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left great (big) toe, first
> card OFF
accepted: Off, left great (big) toe, at 10:00, after 5760 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left great (big) toe, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left great (big) toe
> show
item 1: finger tourniquet, green, M, off, 0 of 1
left great (big) toe: off, now 5760 min, total 5760 min, longest 5760 min
