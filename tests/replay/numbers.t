# Swabs in fives and needles beside the tourniquet: accounted for as a number, laid side by side.
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
> pack SWAB-5
accepted: Counted in: 5 swabs, small.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, SWAB-5 "swabs, small" other single-use, n 5, first
> pack NEEDLE
accepted: Counted in: 1 needle.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 2, NEEDLE "needle" other single-use, n 1, first
> card ADD
question: Adding.
next: Scan the pack that is added.
  event: asked, case 1, add, first
> pack NEEDLE
accepted: Counted in: 1 needle.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use, n 1, first
  event: asked, case 1, nothing more
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 4, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 5, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 6, NEEDLE "needle" other single-use on-xray, n 3
> show
item 1: swabs, small, here, 0 of 5
item 2: needle, here, 0 of 1
item 3: needle, here, 0 of 1
item 4: artery forceps, curved, here, 0 of 1
item 5: artery forceps, curved, here, 0 of 1
item 6: needle, here, 0 of 3
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay the swabs, small side by side: YES for all 5, or SHOWN and the number; NO for none.
  event: count-started, case 1, final, first
> card SHOWN 4
accepted: Swabs, small: 4 of 5 shown.
next: Show the needle: YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, n 4, first
> card YES
accepted: Accounted for: needle: shown to both, 1 of 1.
next: Show the needle: YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 2, n 1, first
> card YES
accepted: Accounted for: needle: shown to both, 1 of 1.
next: Show the artery forceps, curved: YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 3, n 1, first
> card YES
accepted: Accounted for: artery forceps, curved: shown to both, 1 of 1.
next: Show the artery forceps, curved: YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 4, n 1, first
> card YES
accepted: Accounted for: artery forceps, curved: shown to both, 1 of 1.
next: Lay the needle side by side: YES for all 3, or SHOWN and the number; NO for none.
  event: item-shown, case 1, shown, item 5, n 1, first
> card NO
accepted: NOT THERE: needle, 0 of 3. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
  event: item-not-shown, case 1, item 6, n 3, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1
prints: discrepancy slip 1
> card FOUND
question: Found.
next: Is it the swabs, small? Scan its mark, or YES; NO if it is something else.
  event: asked, case 1, found, item 1, first
> card YES
accepted: Found, swabs, small: shown to both, 5 of 5. Still not accounted for: the search goes on.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 1, n 5, "say it aloud and stop closing"
> show
item 1: swabs, small, accounted, 5 of 5
item 2: needle, accounted, 1 of 1
item 3: needle, accounted, 1 of 1
item 4: artery forceps, curved, accounted, 1 of 1
item 5: artery forceps, curved, accounted, 1 of 1
item 6: needle, here, 0 of 3
