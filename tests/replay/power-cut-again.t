# A clean time after a power cut is told as it is. What is off and not accounted for is reminded of by the clock that no
# one can set, over a power cut too (rule 14). MINUTES AGO moves the time on the wall as well.
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
> pack GREEN-M 340 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:340 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
> card 5 MINUTES AGO
accepted: On 5 min earlier, right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right thumb, n 5, first
+ boot 30 min
  event: started, n 2
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now at least 5 min; by wall clock 35 min, total 5 min, longest 5 min
> digit right thumb
question: Tourniquet on the right thumb for at least 5 min; by wall clock 35 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:30, after at least 5 min; by wall clock 35 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> digit right thumb
question: Right thumb: the clock runs as 'on?'.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:30; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 1, digit right thumb
  event: asked, case 1, nothing more
+ 5 min
  event: alive, 5 times
> show
item 1: finger tourniquet, green, M, on, 0 of 1
right thumb: on, now 5 min, total 10 min, longest 5 min
> digit right thumb
question: Tourniquet on the right thumb for 5 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:35, after 5 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
+ boot 2 min
  event: started, n 3
+ wall -600 min
+ 30 min
  event: clock-wrong, n 1
  event: clock-wrong, case 1, n 1
accepted: Reminder: the tourniquet of the right thumb is off and not yet accounted for.
next: Account for the tourniquet of the right thumb. Heard: scan a badge.
  event: reminded, case 1, digit right thumb, n 20
accepted: Reminder: the tourniquet of the right thumb is off and not yet accounted for.
next: Account for the tourniquet of the right thumb. Heard: scan a badge.
  event: reminded, case 1, digit right thumb, n 30
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 5 min, total 10 min, longest 5 min
