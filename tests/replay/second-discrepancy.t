# A second discrepancy is searched for from the first step on: what was done for the first one is not done for it.
begins from searched-in-vain
> card FOUND
question: Found.
next: Found: is it the finger tourniquet, green, M? Scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is something else.
  event: asked, case 1, found, item 1, first
> card INTACT
accepted: Found, finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 1, intact, n 1
  event: discrepancy, case 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack NEEDLE lot N1
accepted: Added: 1 needle (lot N1).
next: Still to do: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 3, NEEDLE "needle" other lot N1 single-use, n 1, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
  event: count-agreed, case 1, added, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Show the needle: scan YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, mark, item 2, n 1, first
> card NO
accepted: NOT THERE: needle, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: item-not-shown, case 1, item 3, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 2, "en"
prints: discrepancy slip 2
  event: slip-state, case 1, written, copy 1, n 2
> card END UNRESOLVED
refused: A step of the search is not answered yet: say it aloud and stop closing. Scan STEP DONE or NOT DONE.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: refused, case 1, "A step of the search is not answered yet: say it aloud and stop closing. Scan STEP DONE or NOT DONE."
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
