# SHOWN with a number that is too high enters what is too many as extra, and no more.
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
> pack SWAB-5 lot S1
accepted: Counted in: 5 × swab, small (lot S1).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, SWAB-5 "swab, small" other lot S1 single-use, n 5, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 6
accepted: Swab, small: 6 shown, 1 more than are on the sheet. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: item-shown, case 1, shown, item 1, n 5, first
  event: extra-item, case 1, item 2, SWAB-5 "swab, small" other single-use, n 1
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> show
item 1: swab, small, accounted, 5 of 5
item 2: swab, small, extra, 0 of 1
> card NO
refused: Nothing is asked for now that could be missing.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: refused, case 1, "Nothing is asked for now that could be missing."
