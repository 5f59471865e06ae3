# N MINUTES AGO for on and for off; nothing comes off before it went on.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 153 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> card 5 MINUTES AGO
refused: Nothing has been timed yet: scan the digit card or OFF first, then 5 MINUTES AGO.
next: When the tourniquet is on: scan the digit card.
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
> card 5 MINUTES AGO
accepted: On 5 min earlier, right index finger.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 5 min, total 5 min, longest 5 min
+ 10 min
> card OFF
accepted: Off, right index finger, at 10:10, after 15 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> card 2 MINUTES AGO
accepted: Off 2 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 13 min, total 13 min, longest 13 min
> card 10 MINUTES AGO
accepted: Off 10 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
> card 10 MINUTES AGO
accepted: Off 10 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
