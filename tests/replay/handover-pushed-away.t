# A badge is no answer to whether the visitor operates; a fact in the middle of a handover says that it is not entered.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 1, first
> badge CIRC-2
refused: First whether visitor 1 is the operating surgeon: scan YES or NO, then the badge of CIRC-2.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: refused, case 1, "First whether visitor 1 is the operating surgeon: scan YES or NO, then the badge of CIRC-2."
> card NO
question: Visitor 1.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NEXT, then NO to leave it as it is.
  event: asked, case 1, visitor, person visitor 1, first
> badge CIRC-2
accepted: Visitor 1: at the field. CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
  event: asked, case 1, nothing more
  event: joined, case 1, field, person visitor 1, "visitor 1"
> pack GREEN-M 873 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:873 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by visitor 1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person visitor 1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 1 min
  event: alive
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge SCRUB-5
question: SCRUB-5 takes over.
next: Who stays, of the two who count? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-stays, person SCRUB-5, first
> digit right index finger
question: Tourniquet on the right index finger for 1 min. The handover is not entered: scan HANDOVER again after this.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card NO
accepted: Still on. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: digit-seen-on, case 1, digit right index finger, n 2
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> pack GREEN-M 873 lot T26 expiry 20280331
accepted: Dropped: finger tourniquet, green, M. It stays in the room and in the count.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: item-dropped, case 1, item 1, first
  event: asked, case 1, nothing more
