# What the handheld and the camera of a room read of one card within the repeat time is entered once (rule 22): card, digit
# card, badge and pack. One scanner that reads another code between was meant.
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
> pack GREEN-M 505 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:505 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
>> camera pack GREEN-M 505 lot T26 expiry 20280331
accepted: Read twice, entered once: finger tourniquet, green, M.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
>> camera badge CIRC-2
accepted: Read twice, entered once: CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
>> camera digit right thumb
accepted: Read twice, entered once: right thumb.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
+ 3 min
  event: alive, 3 times
> camera digit right thumb
question: Tourniquet on the right thumb for 3 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
>> digit right thumb
accepted: Read twice, entered once: right thumb.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
> card OFF
accepted: Off, right thumb, at 10:03, after 3 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
>> camera card OFF
accepted: Read twice, entered once: OFF.
next: Before the dressing: scan FINAL COUNT.
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 3 min, total 3 min, longest 3 min
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
>> camera card FINAL COUNT
accepted: Read twice, entered once: FINAL COUNT.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
>> camera card INTACT
accepted: Read twice, entered once: INTACT.
next: Agree the final count aloud: scan the circulating badge.
