# Offcuts of a strip are counted; dropped items stay in the count; a pack with the wrong number is isolated.
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
> pack GREEN-M 190 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:190 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 3
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:3 "artery forceps, curved" forceps known by its mark, n 1, first
> card WRONG NUMBER IN PACK
question: Wrong number in the pack.
next: Do not top it up. Which pack is it? Scan the pack; NO to leave it as it is.
  event: asked, case 1, isolate, first
> pack SWAB-5
accepted: Isolated, not in the count: swab, small. Still counted in: nothing of it. Keep the whole pack in the room, tell stores.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, SWAB-5 "swab, small" other single-use, n 1, first
  event: item-isolated, case 1, item 3
  event: asked, case 1, nothing more
> card OFFCUT
accepted: Offcut counted: finger tourniquet, green, M, now 2 pieces.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-more, case 1, item 1, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: forceps-on, case 1, item 2, digit right thumb
> card FORCEPS MOVED
accepted: Forceps moved away: tourniquet without forceps on the right thumb. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: forceps-moved, case 1, item 2, first
> card DROPPED
question: Dropped.
next: What was dropped? Scan its pack or its mark; NO to leave it as it is.
  event: asked, case 1, dropped, first
> pack FORCEPS 3
accepted: Dropped: artery forceps, curved. It stays in the room and in the count.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: item-dropped, case 1, item 2, first
  event: asked, case 1, nothing more
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Show all 2 pieces of the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 2 of 2.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, cut and complete, n 2, first
> card MARK UNREADABLE
accepted: Accounted for: artery forceps, curved: shown to both, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 2, n 1, "mark unreadable", first
> card INTERRUPTED
accepted: Interrupted: artery forceps, curved is counted again.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: count-again, case 1, item 2, first
> card YES
accepted: Accounted for: artery forceps, curved: shown to both, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 2, n 1, first
> show
item 1: finger tourniquet, green, M, accounted, 2 of 2
item 2: artery forceps, curved, accounted, 1 of 1, dropped
item 3: swab, small, isolated, 0 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
