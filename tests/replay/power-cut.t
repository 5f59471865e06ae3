# Through a power cut only the wall clock spans the gap, and the sheet says so (rule 14).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 161 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
+ 9 min
> digit right index finger
question: Tourniquet on the right index finger for 9 min.
next: Right index finger: Is it off? If it is, scan OFF; NO if it is still on.
+ boot 45 min
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now at least 9 min; by wall clock 54 min, total 9 min, longest 9 min
> card UNDO
refused: Nothing can be taken back now. To move an entry to the right digit scan MISREAD.
next: Right index finger: Is it off? If it is, scan OFF; NO if it is still on.
+ 6 min
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now at least 15 min; by wall clock 60 min, total 15 min, longest 15 min
> digit right index finger
question: Tourniquet on the right index finger for at least 15 min; by wall clock 60 min.
next: Right index finger: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, right index finger, at 11:00, after at least 15 min; by wall clock 60 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 15 min; by wall clock 60 min, total 15 min, longest 15 min
