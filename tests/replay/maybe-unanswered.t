# Unanswered, the clock runs as 'on?' and is owed.
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
> pack GREEN-M 112 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:112 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: digit-maybe-on, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
+ 2 min
  event: alive, 2 times
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> show
item 1: finger tourniquet, green, M, here, 0 of 1
right index finger: maybe on, now 2 min, total 2 min, longest 2 min
owed: maybe-on
> card FINAL COUNT
refused: First say whether a tourniquet is on the right index finger: scan its digit card, then YES or NO.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: refused, case 1, "First say whether a tourniquet is on the right index finger: scan its digit card, then YES or NO."
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES; NO if none is on it: then it is the marked digit.
  event: asked, case 1, is-on, digit right index finger, n 1, first
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
