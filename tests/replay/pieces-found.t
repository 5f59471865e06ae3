# What was in pieces can be found whole: FOUND offers it.
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
> pack GREEN-M 430 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:430 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card PIECES MISSING
accepted: Finger tourniquet, green, M: shown, pieces missing; 0 of 1 accounted for. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-shown, case 1, shown, item 1, pieces missing, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card NEXT
accepted: Next.
next: Search 2 of 11: count again: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 2 done: count again.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 2, "count again", first
> card FOUND
question: Found.
next: Found: is it the finger tourniquet, green, M? Scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is something else.
  event: asked, case 1, found, item 1, first
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: asked, case 1, nothing more, first
  event: item-shown, case 1, shown, item 1, cut and complete, n 1
  event: discrepancy, case 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
