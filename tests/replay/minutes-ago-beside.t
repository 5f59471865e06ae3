# A second tourniquet on one digit, after another digit was timed: a number of minutes moves neither digit's time, and not the
# start of the one that is left when one of the two came off.
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
> pack GREEN-M 761 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:761 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 762 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:762 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 763 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, GREEN-M:763 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 3, digit right index finger
+ 10 min
  event: alive, 10 times
> digit right ring finger
accepted: Tourniquet on, right ring finger, from 10:10; no forceps on it. The clock runs.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 2, digit right ring finger
+ 5 min
  event: alive, 5 times
> digit right index finger
question: Tourniquet on the right index finger for 15 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card ADD
accepted: A second tourniquet on the right index finger. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
> card 3 MINUTES AGO
refused: More than one tourniquet is on the right index finger, and its clock runs from the first: no number of minutes is taken for them.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: refused, case 1, "More than one tourniquet is on the right index finger, and its clock runs from the first: no number of minutes is taken for them."
+ 5 min
  event: alive, 4 times
accepted: Reminder: tourniquet on the right index finger for 20 min.
next: Tourniquet on the right index finger for 20 min. Tell the surgeon, then: scan a badge.
  event: reminded, case 1, digit right index finger, n 20
> digit right index finger
question: Tourniquet on the right index finger for 20 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: One of the tourniquets is off the right index finger. Another is still on; the clock runs.
next: Tourniquet on the right index finger for 20 min. Tell the surgeon, then: scan a badge.
  event: item-off, case 1, item 3, digit right index finger, first
  event: asked, case 1, nothing more
> card 2 MINUTES AGO
refused: What was entered last for the right index finger neither starts nor stops its clock: no number of minutes is taken for it.
next: Tourniquet on the right index finger for 20 min. Tell the surgeon, then: scan a badge.
  event: refused, case 1, "What was entered last for the right index finger neither starts nor stops its clock: no number of minutes is taken for it."
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: finger tourniquet, green, M, off, 0 of 1
right index finger: on, now 20 min, total 20 min, longest 20 min
right ring finger: on, now 10 min, total 10 min, longest 10 min
> digit right index finger
question: Tourniquet on the right index finger for 20 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:20, after 20 min. Off is not yet accounted for.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card 2 MINUTES AGO
refused: Less than a minute before OFF it was known to be still on the right index finger: it cannot have come off 2 min earlier. If that was wrong, write the time on the slip.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: refused, case 1, "Less than a minute before OFF it was known to be still on the right index finger: it cannot have come off 2 min earlier. If that was wrong, write the time on the slip."
> show
item 1: finger tourniquet, green, M, off, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
item 3: finger tourniquet, green, M, off, 0 of 1
right index finger: off, now 20 min, total 20 min, longest 20 min
right ring finger: on, now 10 min, total 10 min, longest 10 min
