# N MINUTES AGO for on and for off; nothing comes off before it went on.
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
> pack GREEN-M 153 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:153 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card 5 MINUTES AGO
refused: Nothing has been timed yet: scan the digit card or OFF first, then 5 MINUTES AGO.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: refused, case 1, "Nothing has been timed yet: scan the digit card or OFF first, then 5 MINUTES AGO."
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
> card 5 MINUTES AGO
accepted: On 5 min earlier, right index finger.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right index finger, n 5, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 5 min, total 5 min, longest 5 min
+ 10 min
  event: alive, 10 times
> card OFF
accepted: Off, right index finger, at 10:10, after 15 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: digit-off, case 1, digit right index finger
> card 2 MINUTES AGO
accepted: Off 2 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 2, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 13 min, total 13 min, longest 13 min
> card 10 MINUTES AGO
accepted: Off 10 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 10, first
> card NEXT
accepted: Next.
next: Before the dressing: scan FINAL COUNT.
  event: next, case 1
> card 10 MINUTES AGO
refused: It was on the right index finger for 3 min: it cannot have come off 10 min earlier. Scan a smaller number.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "It was on the right index finger for 3 min: it cannot have come off 10 min earlier. Scan a smaller number."
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 3 min, total 3 min, longest 3 min
