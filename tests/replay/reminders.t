# Reminders go on until the tourniquet itself is accounted for (rule 2), on a clock that nobody can set (rule 14).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 160 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
+ 20 min
accepted: Reminder: tourniquet on the right index finger for 20 min.
next: Tourniquet on the right index finger for 20 min: tell the surgeon. Scan any badge to acknowledge.
> badge CIRC-2
accepted: Reminder for the right index finger acknowledged by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
+ wall 300 min
+ 10 min
accepted: Reminder: tourniquet on the right index finger for 30 min.
next: Tourniquet on the right index finger for 30 min: tell the surgeon. Scan any badge to acknowledge.
> badge SCRUB-1
accepted: Reminder for the right index finger acknowledged by SCRUB-1.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
> card OFF
accepted: Off, right index finger, at 15:30, after 30 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
+ 12 min
accepted: Reminder: the tourniquet of the right index finger is off and not yet accounted for.
next: Account for the tourniquet of the right index finger. Scan any badge to acknowledge.
> badge CIRC-2
accepted: Reminder for the right index finger acknowledged by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 30 min, total 30 min, longest 30 min
