# An extra item at the end that belongs to nobody here is a discrepancy of its own, with its slip.
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
> pack GREEN-M 420 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:420 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 99
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 2, FORCEPS:99 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, extra, item 2
> card NO
accepted: Extra item, origin not known: isolate it, keep it in the room. A misread: scan MISREAD, then its code. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: asked, case 1, nothing more, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, extra, 0 of 1
