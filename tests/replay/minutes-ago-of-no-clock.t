# A number of minutes is of the scan before it. Where that started and stopped no clock no other time moves; UNDO leads back to it.
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
> pack GREEN-M 202 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:202 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack FORCEPS 7
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, FORCEPS:7 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
  event: forceps-on, case 1, item 3, digit right index finger
+ 8 min
  event: alive, 8 times
> card FORCEPS MOVED
accepted: Forceps moved away: tourniquet without forceps on the right index finger. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: forceps-moved, case 1, item 3, first
> card 5 MINUTES AGO
refused: 5 MINUTES AGO is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, 5 MINUTES AGO, then that scan again.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: refused, case 1, "5 MINUTES AGO is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, 5 MINUTES AGO, then that scan again."
> digit right middle finger
accepted: Tourniquet on, right middle finger, from 10:08; forceps on it. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right middle finger, first
  event: item-on, case 1, item 1, digit right middle finger
  event: forceps-on, case 1, item 3, digit right middle finger
+ 6 min
  event: alive, 6 times
> digit right index finger
question: Tourniquet on the right index finger for 14 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card NO
accepted: Still on. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: digit-seen-on, case 1, digit right index finger, n 2
> card 3 MINUTES AGO
refused: 3 MINUTES AGO would move the right middle finger, and another was spoken of last: no time was moved. If the right middle finger is meant: its digit card, NO, then 3 MINUTES AGO.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: refused, case 1, "3 MINUTES AGO would move the right middle finger, and another was spoken of last: no time was moved. If the right middle finger is meant: its digit card, NO, then 3 MINUTES AGO."
> digit right middle finger
question: Tourniquet on the right middle finger for 6 min.
next: Right middle finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right middle finger, first
> card NO
accepted: Still on. The clock runs.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: digit-seen-on, case 1, digit right middle finger, n 2
> card 3 MINUTES AGO
accepted: On 3 min earlier, right middle finger.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right middle finger, n 3, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: artery forceps, curved, on, 0 of 1
right index finger: on, now 14 min, total 14 min, longest 14 min
right middle finger: on, now 9 min, total 9 min, longest 9 min
> card PATIENT LEAVES
question: Patient leaves. A TOURNIQUET IS ON: right index finger and right middle finger.
next: Does the patient leave the room now? Scan YES; NO if not.
  event: asked, case 1, leaves, first
> card YES
accepted: The patient has left the room. A TOURNIQUET IS ON: right index finger and right middle finger. Tell the surgeon and the ward now.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: patient-left, case 1, first
  event: asked, case 1, nothing more
> card 3 MINUTES AGO
refused: 3 MINUTES AGO is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, 3 MINUTES AGO, then that scan again.
next: On: right index finger and right middle finger. When one is off: scan its digit card, then OFF.
  event: refused, case 1, "3 MINUTES AGO is of the scan before it, which started and stopped no clock: no time was moved. If an earlier start or end is meant: UNDO, 3 MINUTES AGO, then that scan again."
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: artery forceps, curved, on, 0 of 1
right index finger: on, now 14 min, total 14 min, longest 14 min
right middle finger: on, now 9 min, total 9 min, longest 9 min

