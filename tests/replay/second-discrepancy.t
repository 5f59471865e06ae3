# A second discrepancy is searched for from the first step on: what was done for the first one is not done for it.
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
> pack GREEN-M 290 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:290 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 29
accepted: Counted in: 1 artery forceps, curved.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 2, FORCEPS:29 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NEXT, then NO if it is not there.
  event: item-not-shown, case 1, item 1, n 1, first
> pack FORCEPS 29
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-shown, case 1, mark, item 2, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again, both together: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card NEXT
accepted: Next.
next: Search 2 of 11: count again, both together: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 2 done: count again, both together.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 2, "count again, both together", first
> card NEXT
accepted: Next.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 3 done: look at and feel the digit, under the dressing too.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 3, "look at and feel the digit, under the dressing too", first
> card NEXT
accepted: Next.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 4 done: drapes, floor, shoes.
next: Search 5 of 11: bins and linen: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 4, "drapes, floor, shoes", first
> card NEXT
accepted: Next.
next: Search 5 of 11: bins and linen: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 5 done: bins and linen.
next: Search 6 of 11: under the patient: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 5, "bins and linen", first
> card NEXT
accepted: Next.
next: Search 6 of 11: under the patient: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 6 done: under the patient.
next: Search 7 of 11: tell the surgeon, who looks as well: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 6, "under the patient", first
> card NEXT
accepted: Next.
next: Search 7 of 11: tell the surgeon, who looks as well: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 7 done: tell the surgeon, who looks as well.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 7, "tell the surgeon, who looks as well", first
> card NEXT
accepted: Next.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 8 done: imaging, if the missing item shows on it: steel does, a tourniquet may not.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 8, "imaging, if the missing item shows on it: steel does, a tourniquet may not", first
> card NEXT
accepted: Next.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 9 done: tell the nurse in charge.
next: Search 10 of 11: incident report begun: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 9, "tell the nurse in charge", first
> card NEXT
accepted: Next.
next: Search 10 of 11: incident report begun: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 10 done: incident report begun.
next: Search 11 of 11: patient told, or who will tell: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 10, "incident report begun", first
> card NEXT
accepted: Next.
next: Search 11 of 11: patient told, or who will tell: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card STEP DONE
accepted: Search step 11 done: patient told, or who will tell.
next: Each step of the search is answered: scan FOUND when what is missing is in your hand; the digit card if it is on a digit; END UNRESOLVED when the surgeon decides to end; FINAL COUNT to count again.
  event: search-step, case 1, done, n 11, "patient told, or who will tell", first
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
next: Read the sign-out points aloud: scan the surgeon's badge if all are so; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack NEEDLE lot N1
accepted: Added: 1 needle (lot N1).
next: Owed: the count of what was added: scan the circulating badge when it was counted aloud.
  event: item-in, case 1, item 3, NEEDLE "needle" other lot N1 single-use, n 1, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> badge CIRC-2
accepted: What was added agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
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
> pack FORCEPS 29
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
next: Search 2 of 11: count again, both together: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
