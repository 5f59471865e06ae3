# After a power cut the minutes by the wall clock bound how much earlier it came off, and not only those that were measured.
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
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 5 min
  event: alive, 5 times
+ boot 30 min
  event: started, n 2
+ 1 min
accepted: Reminder: tourniquet on the right index finger for at least 6 min; by wall clock 36 min.
next: Tourniquet on the right index finger for at least 6 min; by wall clock 36 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 36
> digit right index finger
question: Tourniquet on the right index finger for at least 6 min; by wall clock 36 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:36, after at least 6 min; by wall clock 36 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card 10 MINUTES AGO
accepted: Off 10 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 10, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 0 min; by wall clock 26 min, total 0 min, longest 0 min
> card 10 MINUTES AGO
accepted: Entered once already: 10 MINUTES AGO. If it is meant again: NEXT, then this.
next: Before the dressing: scan FINAL COUNT.
> card NEXT
accepted: Next.
next: Before the dressing: scan FINAL COUNT.
  event: next, case 1
> card 10 MINUTES AGO
accepted: Off 10 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 10, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 0 min; by wall clock 16 min, total 0 min, longest 0 min
> card NEXT
accepted: Next.
next: Before the dressing: scan FINAL COUNT.
  event: next, case 1
> card 10 MINUTES AGO
accepted: Off 10 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 10, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 0 min; by wall clock 6 min, total 0 min, longest 0 min
> card NEXT
accepted: Next.
next: Before the dressing: scan FINAL COUNT.
  event: next, case 1
> card 10 MINUTES AGO
refused: It was on the right index finger for 6 min: it cannot have come off 10 min earlier. Scan a smaller number.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "It was on the right index finger for 6 min: it cannot have come off 10 min earlier. Scan a smaller number."
> card 5 MINUTES AGO
accepted: Off 5 min earlier, right index finger.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right index finger, n 5, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now at least 0 min; by wall clock 1 min, total 0 min, longest 0 min
