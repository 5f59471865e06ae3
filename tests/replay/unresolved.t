# Never found: the surgeon ends the case unresolved, every step answered, the incident number owed (rule 16).
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
> pack GREEN-M 141 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:141 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left great (big) toe
accepted: Tourniquet on, left great (big) toe, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left great (big) toe: scan its digit card, then OFF.
  event: digit-on, case 1, digit left great (big) toe, first
  event: item-on, case 1, item 1, digit left great (big) toe
> digit left great (big) toe
question: Tourniquet on the left great (big) toe for 0 min.
next: Left great (big) toe: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left great (big) toe, first
> card OFF
accepted: Off, left great (big) toe, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left great (big) toe, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left great (big) toe
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
> card END UNRESOLVED
refused: A step of the search is not answered yet: say it aloud and stop closing. Scan STEP DONE or NOT DONE.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: refused, case 1, "A step of the search is not answered yet: say it aloud and stop closing. Scan STEP DONE or NOT DONE."
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
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, done, n 2, "count again", first
> card NEXT
accepted: Next.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
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
> card NOT DONE
accepted: Entered as NOT done: search step 8, imaging, if the missing item shows on it: steel does, a tourniquet may not. Type why, or write it on the slip.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 8, "imaging, if the missing item shows on it: steel does, a tourniquet may not", first
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
> card END UNRESOLVED
question: Each step of the search is answered.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: asked, case 1, surgeon-ends, first
> badge CIRC-2
refused: Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: refused, case 1, "Only the surgeon's badge ends a case unresolved. Scan it, or NO to go on searching."
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Incident report: type the incident number; NOT DONE if there is no number yet.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: asked, case 1, incident, person SURG-3
> card NOT DONE
accepted: Case 1 ended UNRESOLVED; its incident number is owed. Finger tourniquet, green, M: shown, pieces missing; 0 of 1 accounted for.
next: Case 1: look at that patient's left great (big) toe now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:141 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: case-ended, case 1, unresolved, number-owed
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: owed, case 1, digit-seen-bare, digit left great (big) toe
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2
