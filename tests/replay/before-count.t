# A digit card before the initial count is agreed asks; YES keeps the time of the scan, NO makes it the marked digit.
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
> pack GREEN-M 111 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:111 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
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
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
> digit left index finger
question: Left index finger: the clock runs as 'on?'.
next: Left index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit left index finger, first
  event: owed, case 1, maybe-on, digit left index finger
  event: asked, case 1, is-on, digit left index finger, n 1
+ 3 min
  event: alive, 3 times
> card YES
question: Tourniquet on, left index finger, from 10:00; no forceps on it. The clock runs.
next: Left index finger: Not the marked digit. Is this the right digit? Scan NEXT, then YES; NO if not.
  event: paid, case 1, maybe-on, digit left index finger, is-on, first
  event: digit-on, case 1, digit left index finger
  event: item-on, case 1, item 1, digit left index finger
  event: owed, case 1, count
  event: owed, case 1, marked-digit, digit left index finger
  event: asked, case 1, right-digit, digit left index finger
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: on, now 3 min, total 3 min, longest 3 min
owed: count
owed: marked-digit
> card NEXT
accepted: Next.
next: Left index finger: Not the marked digit. Is this the right digit? Scan YES; NO if not.
  event: next, case 1
> card YES
accepted: The left index finger is right, says the team.
next: Still to do: the initial count, not agreed before the tourniquet went on: scan the circulating badge when it was counted aloud.
  event: paid, case 1, marked-digit, digit left index finger, right-digit, first
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is off the left index finger: scan its digit card, then OFF.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, count, person CIRC-2, agreed-aloud-late
> digit left index finger
question: Tourniquet on the left index finger for 3 min.
next: Left index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left index finger, first
> card OFF
accepted: Off, left index finger, at 10:03, after 3 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: bare, marked, now 0 min, total 0 min, longest 0 min
left index finger: off, now 3 min, total 3 min, longest 3 min
