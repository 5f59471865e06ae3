# Two bands that nobody can tell apart are miscounted. INTERRUPTED asks for both again, and what was one too many goes with it.
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
> pack GREEN-M 102 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, GREEN-M:102 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> pack FORCEPS 7
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, FORCEPS:7 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 2, digit right thumb
  event: forceps-on, case 1, item 3, digit right thumb
+ 12 min
  event: alive, 12 times
> digit right thumb
question: Tourniquet on the right thumb for 12 min.
next: Right thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:12, after 12 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 2, digit right thumb, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 3
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 1
accepted: Finger tourniquet, green, M: 1 of 2 shown.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-not-shown, case 1, item 2, n 1
> card INTERRUPTED
accepted: Interrupted: finger tourniquet, green, M is counted again.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-again, case 1, item 1, first
  event: count-again, case 1, item 2
> card SHOWN 3
accepted: Finger tourniquet, green, M: 3 shown, 1 more than are on the sheet.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
  event: extra-item, case 1, item 4, GREEN-M "finger tourniquet, green, M" tourniquet single-use, n 1
> card INTERRUPTED
accepted: Interrupted: finger tourniquet, green, M is counted again.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-again, case 1, item 1, first
  event: count-again, case 1, item 2
  event: item-struck, case 1, item 4
> card NEXT
accepted: Next.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: next, case 1
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 2.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NEXT, then NO if it is not there.
  event: item-not-shown, case 1, item 1, n 1, first
  event: item-not-shown, case 1, item 2, n 1
> card INTERRUPTED
accepted: Interrupted: finger tourniquet, green, M is counted again.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-again, case 1, item 1, first
  event: count-again, case 1, item 2
> card SHOWN 2
accepted: Accounted for: finger tourniquet, green, M: shown intact, 2 of 2.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-shown, case 1, shown, item 2, intact, n 1
> pack FORCEPS 7
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 3, n 1, first
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: finger tourniquet, green, M, accounted, 1 of 1
item 3: artery forceps, curved, accounted, 1 of 1
item 4: finger tourniquet, green, M, struck, 0 of 1
right thumb: off, now 12 min, total 12 min, longest 12 min
