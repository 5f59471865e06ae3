# A wall clock that was set back while the power was off: nothing that it says is said as true, and the reminder comes at once.
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
> pack GREEN-M 172 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:172 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 9 min
  event: alive, 9 times
+ wall -180 min
+ boot 2 min
  event: started, n 2
+ 1 s
  event: clock-wrong, n 1
  event: clock-wrong, case 1, n 1
accepted: Reminder: tourniquet on the right index finger for at least 9 min; the wall clock cannot be trusted.
next: Tourniquet on the right index finger for at least 9 min; the wall clock cannot be trusted. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 9
> badge CIRC-2
accepted: Reminder for the right index finger acknowledged by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: acknowledged, case 1, digit right index finger, person CIRC-2, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now at least 9 min; the wall clock cannot be trusted, total 9 min, longest 9 min
> digit right index finger
question: Tourniquet on the right index finger for at least 9 min; the wall clock cannot be trusted.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, after at least 9 min; the wall clock cannot be trusted. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 9 min; the wall clock cannot be trusted, total 9 min, longest 9 min
> digit right middle finger
question: Right middle finger: the clock runs as 'on?'.
next: Right middle finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right middle finger, first
  event: owed, case 1, maybe-on, digit right middle finger
  event: asked, case 1, is-on, digit right middle finger, n 1
> card YES
accepted: Tourniquet on, right middle finger, from 07:11; no forceps on it. The clock runs.
next: When the tourniquet is off the right middle finger: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right middle finger, is-on, first
  event: digit-on, case 1, digit right middle finger
  event: item-on, case 1, item 1, digit right middle finger
  event: asked, case 1, nothing more
+ 5 min
  event: alive, 5 times
+ wall -180 min
+ boot 2 min
  event: started, n 3
+ 1 s
accepted: Reminder: tourniquet on the right middle finger for at least 5 min; the wall clock cannot be trusted.
next: Tourniquet on the right middle finger for at least 5 min; the wall clock cannot be trusted. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right middle finger, n 5
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: off, now at least 9 min; the wall clock cannot be trusted, total 9 min, longest 9 min
right middle finger: on, now at least 5 min; the wall clock cannot be trusted, total 5 min, longest 5 min
+ wall 180 min
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right index finger: off, now at least 9 min; the wall clock cannot be trusted, total 9 min, longest 9 min
right middle finger: on, now at least 5 min; by wall clock 7 min, total 5 min, longest 5 min
