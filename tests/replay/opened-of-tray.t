# A needle of the tray was looked for: the tray does not go back unopened by its code, nor is it struck, also where all is counted
# again.
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
> tray TRAY-HAND
accepted: Counted in: hand tray, 5 instruments from its list.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, FORCEPS "artery forceps, curved" forceps on-xray, n 1, first
  event: item-in, case 1, item 2, FORCEPS "artery forceps, curved" forceps on-xray, n 1
  event: item-in, case 1, item 3, NEEDLE "needle" other single-use on-xray, n 3
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 2
accepted: Accounted for: artery forceps, curved: shown to both, 2 of 2.
next: Lay 3 × needle side by side: scan SHOWN 3 if all are there; NEXT, then SHOWN and their number for as many as are; NO if none is there.
  event: item-shown, case 1, shown, item 1, n 1, first
  event: item-shown, case 1, shown, item 2, n 1
> card SHOWN 1
accepted: Needle: 1 of 3 shown. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: item-shown, case 1, shown, item 3, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card FINAL COUNT
accepted: Counting again, line by line.
next: Lay 2 × artery forceps, curved side by side: scan SHOWN 2 if all are there; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card RETURNED UNOPENED
question: Returned unopened.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: asked, case 1, returned, first
> tray TRAY-HAND
refused: Hand tray: not each thing of it lies here as counted in: it stays in the count, and each is counted by itself.
next: What goes back unopened? Scan the pack; NO to leave it as it is.
  event: refused, case 1, "Hand tray: not each thing of it lies here as counted in: it stays in the count, and each is counted by itself."
> show
item 1: artery forceps, curved, here, 0 of 1
item 2: artery forceps, curved, here, 0 of 1
item 3: needle, here, 0 of 3
