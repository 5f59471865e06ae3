# A second tourniquet was entered for the wrong digit: it alone moves to the right one, from when it was entered.
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
> pack GREEN-M 861 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:861 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 862 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:862 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
+ 4 min
  event: alive, 4 times
> digit right index finger
question: Tourniquet on the right index finger for 4 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card ADD
accepted: A second tourniquet on the right index finger. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
+ 1 min
  event: alive
> card MISREAD
question: Misread: the right index finger, or a pack.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right index finger, first
> card YES
refused: Two tourniquets are entered on the right index finger. If the second never went on: scan NO, then the card of the right index finger, then OFF.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: refused, case 1, "Two tourniquets are entered on the right index finger. If the second never went on: scan NO, then the card of the right index finger, then OFF."
> digit right ring finger
accepted: The second tourniquet moved from the right index finger to the right ring finger, from 10:04 on. The first is still on the right index finger.
next: On: right index finger and right ring finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first, 69 s before, by wall clock 69 s before
  event: item-on, case 1, item 1, digit right ring finger
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, on, 0 of 1
right index finger: on, now 5 min, total 5 min, longest 5 min
right ring finger: on, now 1 min, total 1 min, longest 1 min
+ 5 min
  event: alive, 5 times
> digit right ring finger
question: Tourniquet on the right ring finger for 6 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card OFF
accepted: Off, right ring finger, at 10:10, after 6 min. Off is not yet accounted for.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-off, case 1, item 1, digit right ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger
> digit right index finger
question: Tourniquet on the right index finger for 10 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:10, after 10 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 1
accepted: Finger tourniquet, green, M: 1 of 2 shown. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-not-shown, case 1, item 2, n 1
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
