# Unanswered, the clock runs as 'on?' and is owed.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 112 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:112 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit right index finger
question: Right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
+ 2 min
  event: alive, 2 times
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: asked, case 1, nothing more
  event: asked, case 1, is-on, digit right index finger, n 1
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: maybe on, now 2 min, total 2 min, longest 2 min
owed: maybe-on
> card FINAL COUNT
refused: A tourniquet is on the right index finger: take it off first, scan its digit card and OFF.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
  event: refused, case 1, "A tourniquet is on the right index finger: take it off first, scan its digit card and OFF."
> digit right index finger
question: Right index finger.
next: Right index finger: Is a tourniquet on it now? Scan YES or NO.
  event: asked, case 1, is-on, digit right index finger, n 1, first
> card NO
accepted: Marked digit: right index finger.
next: When the tourniquet is on: scan the digit card.
  event: digit-not-on, case 1, digit right index finger, first
  event: paid, case 1, maybe-on, digit right index finger, "not on"
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
