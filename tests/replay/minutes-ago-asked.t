# N MINUTES AGO while a digit is asked about, or while two are on it, moves no other time than people speak of.
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
> pack GREEN-M 740 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:740 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 741 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:741 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
+ 10 min
  event: alive, 10 times
> digit right ring finger
accepted: Tourniquet on, right ring finger, from 10:10; no forceps on it. The clock runs.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 1, digit right ring finger
+ 10 min
  event: alive, 9 times
accepted: Reminder: tourniquet on the right index finger for 20 min.
next: Tourniquet on the right index finger for 20 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 20
> digit right index finger
question: Tourniquet on the right index finger for 20 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card 5 MINUTES AGO
refused: First say whether it is off the right index finger: OFF, then 5 MINUTES AGO; NO if it is still on.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: refused, case 1, "First say whether it is off the right index finger: OFF, then 5 MINUTES AGO; NO if it is still on."
> card OFF
accepted: Off, right index finger, at 10:20, after 20 min. Off is not yet accounted for.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card 5 MINUTES AGO
accepted: Off 5 min earlier, right index finger.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: digit-earlier, case 1, off, digit right index finger, n 5, first
+ 6 min
  event: alive, 6 times
> digit right index finger
question: Right index finger: the clock runs as 'on?'.
next: Right index finger: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right index finger, first
  event: owed, case 1, maybe-on, digit right index finger
  event: asked, case 1, is-on, digit right index finger, n 1
> card 3 MINUTES AGO
refused: First say whether one is on the right index finger: YES or NO, then 3 MINUTES AGO.
next: Right index finger: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: refused, case 1, "First say whether one is on the right index finger: YES or NO, then 3 MINUTES AGO."
> card YES
accepted: Tourniquet on, right index finger, from 10:26; no forceps on it. The clock runs.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right index finger, is-on, first
  event: digit-on, case 1, digit right index finger
  event: item-on, case 1, item 2, digit right index finger
  event: asked, case 1, nothing more
> card 3 MINUTES AGO
accepted: On 3 min earlier, right index finger.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right index finger, n 3, first
> card OFF
question: More than one digit had a tourniquet in this case.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: asked, case 1, which-off, first
> card 2 MINUTES AGO
refused: First scan the digit card of the one that is off, then 2 MINUTES AGO.
next: Which digit is it off? Scan its digit card; NO to leave it as it is.
  event: refused, case 1, "First scan the digit card of the one that is off, then 2 MINUTES AGO."
> digit right index finger
accepted: Off, right index finger, at 10:26, after 3 min. Off is not yet accounted for.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 3 min, total 18 min, longest 15 min
right ring finger: on, now 16 min, total 16 min, longest 16 min
> digit right ring finger
question: Tourniquet on the right ring finger for 16 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card ADD
accepted: A second tourniquet on the right ring finger. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: item-on, case 1, item 2, digit right ring finger, first
  event: asked, case 1, nothing more
> card 3 MINUTES AGO
refused: More than one tourniquet is on the right ring finger, and its clock runs from the first: no number of minutes is taken for them.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: refused, case 1, "More than one tourniquet is on the right ring finger, and its clock runs from the first: no number of minutes is taken for them."
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
right index finger: off, now 3 min, total 18 min, longest 15 min
right ring finger: on, now 16 min, total 16 min, longest 16 min

