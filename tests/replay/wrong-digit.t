# A tourniquet on a digit that is not a marked one is asked about with the clock running; MISREAD moves it.
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
> pack GREEN-M 113 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:113 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> card NO
accepted: Marked digit: right index finger.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: digit-not-on, case 1, digit right index finger, first
  event: paid, case 1, maybe-on, digit right index finger, not-on
  event: asked, case 1, nothing more
  event: digit-marked, case 1, digit right index finger
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left index finger
question: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES; NO if not.
  event: digit-on, case 1, digit left index finger, first
  event: item-on, case 1, item 1, digit left index finger
  event: owed, case 1, marked-digit, digit left index finger
  event: asked, case 1, right-digit, digit left index finger
> card NO
question: Not the left index finger.
next: Left index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NEXT, then NO to leave it as it is.
  event: asked, case 1, move-to, digit left index finger, first
+ 1 min
  event: alive
> digit right index finger
accepted: Moved from the left index finger to the right index finger; the time is kept.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-moved, case 1, digit left index finger, other right index finger, first
  event: paid, case 1, marked-digit, digit right index finger, moved
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, marked, now 1 min, total 1 min, longest 1 min
left index finger: bare, now 0 min, total 0 min, longest 0 min
> card MISREAD
question: Misread: the right index finger, or a pack.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right index finger, first
> digit right middle finger
accepted: Moved from the right index finger to the right middle finger; the time is kept.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
  event: digit-moved, case 1, digit right index finger, other right middle finger, first
  event: paid, case 1, marked-digit, digit right middle finger, moved
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: bare, now 0 min, total 0 min, longest 0 min
right middle finger: on, now 1 min, total 1 min, longest 1 min
