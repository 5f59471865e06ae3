# After a power cut reminders go by the longer of both clocks, and come at once (rules 2, 14).
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
> pack GREEN-M 171 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:171 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 15 min
  event: alive, 15 times
+ boot 60 min
  event: started, n 2
+ 1 s
accepted: Reminder: tourniquet on the right index finger for at least 15 min; by wall clock 75 min.
next: Tourniquet on the right index finger for at least 15 min; by wall clock 75 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 75
> badge CIRC-2
accepted: Reminder for the right index finger acknowledged by CIRC-2.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: acknowledged, case 1, digit right index finger, person CIRC-2, first
+ 10 min
  event: alive, 9 times
accepted: Reminder: tourniquet on the right index finger for at least 25 min; by wall clock 85 min.
next: Tourniquet on the right index finger for at least 25 min; by wall clock 85 min. Tell the surgeon, then: scan NEXT.
  event: reminded, case 1, digit right index finger, n 85
> badge CIRC-2
accepted: Entered once already: CIRC-2. If it is meant again: NEXT, then this.
next: Tourniquet on the right index finger for at least 25 min; by wall clock 85 min. Tell the surgeon, then: scan NEXT.
> card OFF
accepted: Off, right index finger, at 11:25, after at least 25 min; by wall clock 85 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 25 min; by wall clock 85 min, total 25 min, longest 25 min
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."

# Off and not accounted for, it is the same: the time without power counts.
+ boot 30 min
  event: started, n 3
+ 1 s
accepted: Reminder: the tourniquet of the right index finger is off and not yet accounted for.
next: Account for the tourniquet of the right index finger. Heard: scan a badge.
  event: reminded, case 1, digit right index finger, n 115
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 25 min; by wall clock 85 min, total 25 min, longest 25 min
