# A second tourniquet was entered for the wrong finger, and the right one's own clock runs: it is told how the second is taken away.
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
> pack GREEN-M 881 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:881 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 882 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:882 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack GREEN-M 883 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, GREEN-M:883 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right ring finger
accepted: Tourniquet on, right ring finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right ring finger, first
  event: item-on, case 1, item 3, digit right ring finger
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: On: right ring finger and right index finger. When one is off: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 2, digit right index finger
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card ADD
accepted: A second tourniquet on the right index finger. The clock runs until the last is off; for each scan the digit card, then OFF. If none went on: UNDO.
next: On: right ring finger and right index finger. When one is off: scan its digit card, then OFF.
  event: item-on, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
> card MISREAD
question: Misread: the right index finger, or a pack.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: asked, case 1, move-to, digit right index finger, first
> digit right ring finger
refused: The clock of the right ring finger runs by its own card. If no second tourniquet went on where it was entered: scan NO, then the card of that digit, then OFF.
next: Right index finger: What was misread? Scan the card of the digit that it is really on; YES if no tourniquet went on at all; NO to leave it as it is.
  event: refused, case 1, "The clock of the right ring finger runs by its own card. If no second tourniquet went on where it was entered: scan NO, then the card of that digit, then OFF."
> card NO
accepted: Left as it is.
next: On: right ring finger and right index finger. When one is off: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: One of the tourniquets is off the right index finger. Another is still on; the clock runs.
next: On: right ring finger and right index finger. When one is off: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: finger tourniquet, green, M, off, 0 of 1
item 3: finger tourniquet, green, M, on, 0 of 1
right ring finger: on, now 0 min, total 0 min, longest 0 min
right index finger: on, now 0 min, total 0 min, longest 0 min
