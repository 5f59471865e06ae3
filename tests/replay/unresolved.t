# Never found: the surgeon ends the case unresolved, every step answered, the incident number owed (rule 16).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
> pack GREEN-M 141 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
> digit left great (big) toe
accepted: Tourniquet on, left great (big) toe, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left great (big) toe: scan its digit card, then OFF.
> digit left great (big) toe
question: Tourniquet on the left great (big) toe for 0 min.
next: Left great (big) toe: Is it off? If it is, scan OFF; NO if it is still on.
> card OFF
accepted: Off, left great (big) toe, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
> card PIECES MISSING
accepted: Finger tourniquet, green, M: 1 of 1 shown, pieces missing. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
prints: discrepancy slip 1
> card END UNRESOLVED
refused: The search is not complete. Next: say it aloud and stop closing. Scan STEP DONE or NOT DONE.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again, both together. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 2 done: count again, both together.
next: Search 3 of 11: look at and feel the digit, under the dressing too. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 3 done: look at and feel the digit, under the dressing too.
next: Search 4 of 11: drapes, floor, shoes. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 4 done: drapes, floor, shoes.
next: Search 5 of 11: bins and linen. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 5 done: bins and linen.
next: Search 6 of 11: under the patient. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 6 done: under the patient.
next: Search 7 of 11: tell the surgeon, who looks as well. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 7 done: tell the surgeon, who looks as well.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not. Scan STEP DONE, NOT DONE, or FOUND.
> card NOT DONE
accepted: Search step 8 not done: imaging, if the missing item shows on it: steel does, a tourniquet may not.
next: Search 9 of 11: tell the nurse in charge. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 9 done: tell the nurse in charge.
next: Search 10 of 11: incident report begun. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 10 done: incident report begun.
next: Search 11 of 11: patient told, or who will tell. Scan STEP DONE, NOT DONE, or FOUND.
> card STEP DONE
accepted: Search step 11 done: patient told, or who will tell.
next: The search is complete. FOUND, FINAL COUNT to count again, or END UNRESOLVED by the surgeon.
> card END UNRESOLVED
question: Every step of the search is answered.
next: The surgeon decides to end unresolved. Scan the surgeon's badge, or NO.
> badge CIRC-2
refused: Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching.
next: The surgeon decides to end unresolved. Scan the surgeon's badge, or NO.
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Type the incident number, or scan NOT DONE: number owed.
> card NOT DONE
accepted: Case 1 ended UNRESOLVED, incident number owed. Finger tourniquet, green, M: 1 of 1 shown with pieces missing.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: reconciliation slip 2
> typed INC-2026-0042
accepted: Incident number of case 1 entered.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
prints: addendum slip 3
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
