# Swabs in fives and needles beside the tourniquet: accounted for as a number, laid side by side.
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
> pack SWAB-5
accepted: Counted in: 5 × swab, small.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, SWAB-5 "swab, small" other single-use, n 5, first
> pack NEEDLE
accepted: Counted in: 1 needle.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, NEEDLE "needle" other single-use, n 1, first
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack NEEDLE
accepted: Counted in: 1 needle.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use, n 1, first
  event: asked, case 1, nothing more
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 4, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 5, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 6, NEEDLE "needle" other single-use on-xray, n 3
> show
item 1: swab, small, here, 0 of 5
item 2: needle, here, 0 of 1
item 3: needle, here, 0 of 1
item 4: artery forceps, curved, here, 0 of 1
item 5: artery forceps, curved, here, 0 of 1
item 6: needle, here, 0 of 3
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 5 × swab, small side by side: scan SHOWN 5 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 4
accepted: Swab, small: 4 of 5 shown.
next: Lay 5 × needle side by side: scan SHOWN 5 if all are there; NEXT, then SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 1, n 4, first
> card YES
accepted: Accounted for: needle: shown to both, 5 of 5.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 2, n 1, first
  event: item-shown, case 1, shown, item 3, n 1
  event: item-shown, case 1, shown, item 6, n 3
> card NEXT
accepted: Next.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: next, case 1
> card YES
accepted: Accounted for: artery forceps, curved: shown to both, 2 of 2. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: item-shown, case 1, shown, item 4, n 1, first
  event: item-shown, case 1, shown, item 5, n 1
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card NEXT
accepted: Next.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card YES
refused: Nothing is asked for now: when what is missing is in your hand, scan FOUND.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: refused, case 1, "Nothing is asked for now: when what is missing is in your hand, scan FOUND."
> card FOUND
question: Found.
next: Found: is it the swab, small? Scan YES when both have seen it; NO if it is something else.
  event: asked, case 1, found, item 1, first
> card YES
accepted: Found, swab, small: shown to both, 5 of 5.
next: Agree the final count aloud: scan the circulating badge.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 1, n 5, "say it aloud and stop closing"
  event: discrepancy, case 1
> show
item 1: swab, small, accounted, 5 of 5
item 2: needle, accounted, 1 of 1
item 3: needle, accounted, 1 of 1
item 4: artery forceps, curved, accounted, 1 of 1
item 5: artery forceps, curved, accounted, 1 of 1
item 6: needle, accounted, 3 of 3
