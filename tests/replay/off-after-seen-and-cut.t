# The tourniquet is seen on the digit after a power cut: no OFF is moved to before that, though by the wall clock it was on longer
# than this station measured.
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
> pack GREEN-M 101 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
+ 12 min
  event: alive, 12 times
+ boot 20 min
  event: started, n 2
> digit right thumb
question: Tourniquet on the right thumb for at least 12 min; by wall clock 32 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card NO
accepted: Still on. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: digit-seen-on, case 1, digit right thumb, n 2
+ 3 min
accepted: Reminder: tourniquet on the right thumb for at least 13 min; by wall clock 33 min.
next: Tourniquet on the right thumb for at least 13 min; by wall clock 33 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right thumb, n 33
  event: alive, 2 times
> digit right thumb
question: Tourniquet on the right thumb for at least 15 min; by wall clock 35 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:35, after at least 15 min; by wall clock 35 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card 5 MINUTES AGO
refused: 3 min before OFF it was known to be still on the right thumb: it cannot have come off 5 min earlier. If that was wrong, write the time on the slip.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "3 min before OFF it was known to be still on the right thumb: it cannot have come off 5 min earlier. If that was wrong, write the time on the slip."
> card 2 MINUTES AGO
accepted: Off 2 min earlier, right thumb.
next: Before the dressing: scan FINAL COUNT.
  event: digit-earlier, case 1, off, digit right thumb, n 2, first
