# Found after 2,880 and 5,760 minutes (PSNet 2020; Durrant 2006): nothing wraps.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 162 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit left great (big) toe
accepted: Tourniquet on, left great (big) toe, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left great (big) toe: scan its digit card, then OFF.
+ once 2880 min
accepted: Reminder: tourniquet on the left great (big) toe for 2880 min.
next: Tourniquet on the left great (big) toe for 2880 min: tell the surgeon. Scan any badge to acknowledge.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
left great (big) toe: on, now 2880 min, total 2880 min, longest 2880 min
+ once 2880 min
accepted: Reminder: tourniquet on the left great (big) toe for 5760 min.
next: Tourniquet on the left great (big) toe for 5760 min: tell the surgeon. Scan any badge to acknowledge.
> digit left great (big) toe
question: Tourniquet on the left great (big) toe for 5760 min.
next: Left great (big) toe: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, left great (big) toe, at 10:00, after 5760 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
left great (big) toe: off, now 5760 min, total 5760 min, longest 5760 min
