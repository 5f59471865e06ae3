# SHOWN with a number that is too high enters what is too many as extra, and no more.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack SWAB-5 lot S1
accepted: Counted in: 5 swabs, small (lot S1).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, SWAB-5 "swabs, small" other lot S1 single-use, n 5, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay the swabs, small side by side: YES for all 5, or SHOWN and the number; NO for none.
  event: count-started, case 1, final, first
> card SHOWN 6
accepted: Accounted for: swabs, small: shown to both, 5 of 5. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
  event: extra-item, case 1, item 2, SWAB-5 "swabs, small" other lot S1 single-use, n 1, first
  event: item-shown, case 1, shown, item 1, n 5
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1
prints: discrepancy slip 1
> show
item 1: swabs, small, accounted, 5 of 5
item 2: swabs, small, extra, 0 of 1
> card NO
refused: Nothing is asked for now that could be missing.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
  event: refused, case 1, "Nothing is asked for now that could be missing."
