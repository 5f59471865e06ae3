# A surplus makes the count wrong as well.
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
> pack GREEN-M 142 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:142 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
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
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> pack FORCEPS 77
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 2, FORCEPS:77 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, extra, item 2
> card NO
accepted: Extra item, origin not known: isolate it, keep it in the room. A misread: scan MISREAD, then its code.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NEXT, then NO if it is not there; the digit card if it is on a digit.
  event: asked, case 1, nothing more, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, extra, 0 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
> card UNDO
accepted: Taken back: accounted for, finger tourniquet, green, M. The record keeps both.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NEXT, then NO if it is not there; the digit card if it is on a digit.
  event: undone, case 1, ref item-shown 4 before, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 2, "en"
prints: discrepancy slip 2
  event: slip-state, case 1, written, copy 1, n 2
> card FINAL COUNT
accepted: Counting again, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1. Still extra: artery forceps, curved.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 78
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 3, FORCEPS:78 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, extra, item 3
> card YES
accepted: Entered late: artery forceps, curved was opened in this case.
next: Show the artery forceps, curved: scan its mark; NEXT, then YES when both have seen it; NO if it is not there.
  event: asked, case 1, nothing more, first
  event: item-struck, case 1, item 3
  event: item-in, case 1, item 4, FORCEPS:78 "artery forceps, curved" forceps known by its mark, n 1
> pack FORCEPS 78
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1. Still extra: artery forceps, curved.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: item-shown, case 1, mark, item 4, n 1, first
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, extra, 0 of 1
item 3: artery forceps, curved, struck, 0 of 1
item 4: artery forceps, curved, accounted, 1 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
