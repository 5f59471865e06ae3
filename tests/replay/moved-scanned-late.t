# It was moved from one finger to the other, and both cards were scanned one after the other: it is one.
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
> pack GREEN-M 201 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:201 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left index finger
accepted: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit left index finger, first
  event: item-on, case 1, item 1, digit left index finger
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> digit left index finger
question: Tourniquet on the left index finger for 5 min.
next: Left index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left index finger, first
> card OFF
accepted: Off, left index finger, at 10:05, after 5 min. Off is not yet accounted for.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: item-off, case 1, item 1, digit left index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: asked, case 1, is-on, digit right index finger, n 1, first
> card YES
accepted: Tourniquet on, right index finger, from 10:05; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right index finger, is-on, first
  event: digit-on, case 1, digit right index finger
  event: item-on, case 1, item 1, digit right index finger
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
left index finger: off, now 5 min, total 5 min, longest 5 min
right index finger: on, now 0 min, total 0 min, longest 0 min
