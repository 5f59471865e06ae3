# A digit card before the initial count is agreed asks; YES keeps the time of the scan, NO makes it the marked digit.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 111 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> digit right index finger
question: Right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
> card NO
accepted: Marked digit: right index finger.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
> digit left index finger
question: Left index finger.
next: Left index finger: Is a tourniquet on it now? Scan YES or NO.
+ 3 min
> card YES
question: Tourniquet on, left index finger, from 10:03; no forceps on it. The clock runs.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES or NO.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: on, now 3 min, total 3 min, longest 3 min
owed: count
owed: marked-digit
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES or NO.
> digit left index finger
question: Tourniquet on the left index finger for 3 min.
next: Left index finger: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, left index finger, at 10:03, after 3 min. Off is not yet accounted for.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES or NO.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: off, now 3 min, total 3 min, longest 3 min
owed: marked-digit
