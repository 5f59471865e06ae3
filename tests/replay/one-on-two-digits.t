# The one tourniquet of this case was on the left index finger when a clock of the right one began: one is not on two digits, so
# there is another.
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
> card OFF
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, first
+ 2 min
  event: alive, 2 times
> digit left index finger
accepted: Off, left index finger, at 10:07, after 7 min. Off is not yet accounted for.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: item-off, case 1, item 1, digit left index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> card OFF
accepted: Off, right index finger, at 10:07, after 2 min. Off is not yet accounted for.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
  event: digit-on, case 1, digit right index finger, first
  event: item-in, case 1, item 2, no line "tourniquet, not listed yet" tourniquet unlisted, n 1
  event: owed, case 1, listing, item 2
  event: owed, case 1, added
  event: item-on, case 1, item 2, digit right index finger
  event: paid, case 1, maybe-on, digit right index finger, was-on
  event: item-off, case 1, item 2, digit right index finger
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: tourniquet, not listed yet, off, 0 of 1
left index finger: off, now 7 min, total 7 min, longest 7 min
right index finger: off, now 2 min, total 2 min, longest 2 min
owed: listing
owed: added
> card OFF
accepted: Entered once already: OFF. If it is meant again: NEXT, then this.
next: Still to do: which tourniquet it is, not listed: scan its pack; the circulating badge when it was said aloud which it is.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: tourniquet, not listed yet, off, 0 of 1
left index finger: off, now 7 min, total 7 min, longest 7 min
right index finger: off, now 2 min, total 2 min, longest 2 min
owed: listing
owed: added
