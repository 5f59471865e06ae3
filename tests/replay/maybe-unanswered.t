# Unanswered, the clock runs as 'on?' and is owed.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 112 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> digit right index finger
question: Right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
+ 2 min
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: maybe on, now 2 min, total 2 min, longest 2 min
owed: maybe-on
> card FINAL COUNT
refused: A tourniquet is on the right index finger: take it off first, scan its digit card and OFF.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
> digit right index finger
question: Right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
> card NO
accepted: Marked digit: right index finger.
next: When the tourniquet is on: scan the digit card.
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
