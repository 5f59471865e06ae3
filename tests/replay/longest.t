# Each time on a digit is told, and the longest: MINUTES AGO takes from a short one what is its own.
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
> pack GREEN-M 330 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:330 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
+ 30 min
  event: alive, 19 times
accepted: Reminder: tourniquet on the right thumb for 20 min.
next: Tourniquet on the right thumb for 20 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right thumb, n 20
  event: alive, 9 times
accepted: Reminder: tourniquet on the right thumb for 30 min.
next: Tourniquet on the right thumb for 30 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right thumb, n 30
> digit right thumb
question: Tourniquet on the right thumb for 30 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:30, after 30 min. Off is not yet accounted for.
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
+ 10 min
  event: alive, 10 times
> digit right thumb
question: Tourniquet on the right thumb for 10 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:40, after 10 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 10 min, total 40 min, longest 30 min
> card 5 MINUTES AGO
accepted: Off 5 min earlier, right thumb.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right thumb, n 5, first
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 5 min, total 35 min, longest 30 min
