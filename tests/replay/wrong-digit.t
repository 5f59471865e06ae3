# A tourniquet on a digit that is not a marked one is asked about with the clock running; MISREAD moves it.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 113 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> digit right index finger
question: Right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
> card NO
accepted: Marked digit: right index finger.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit left index finger
question: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES or NO.
> card NO
question: Not the left index finger.
next: Left index finger: Which digit is the right one? Scan its digit card.
+ 1 min
> digit right index finger
accepted: Moved from the left index finger to the right index finger; the time is kept.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, marked, now 1 min, total 1 min, longest 1 min
left index finger: bare, now 0 min, total 0 min, longest 0 min
> card MISREAD
question: Misread: the right index finger is wrong.
next: Right index finger: Which digit is the right one? Scan its digit card.
> digit right middle finger
accepted: Moved from the right index finger to the right middle finger; the time is kept.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: bare, now 0 min, total 0 min, longest 0 min
right middle finger: on, now 1 min, total 1 min, longest 1 min
