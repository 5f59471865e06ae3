# What was missing when its case ended turns up: its code alone says whose it is, with no case open (rule 21). Forceps
# that come back to another patient are counted in; what is found then is of the last one.
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
> pack GREEN-M 250 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 2028-03-31).
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 1, GREEN-M:250 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> pack FORCEPS 25
accepted: Counted in: 1 artery forceps, curved.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 1, item 2, FORCEPS:25 "artery forceps, curved" forceps known by its mark, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: forceps-on, case 1, item 2, digit right thumb
> digit right thumb
question: Tourniquet on the right thumb for 0 min.
next: Right thumb: Is it off? If it is, scan OFF; NO if it is still on.
  event: asked, case 1, off, digit right thumb, first
> card OFF
accepted: Off, right thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right thumb, first
  event: asked, case 1, nothing more
  event: forceps-moved, case 1, item 2
  event: digit-off, case 1, digit right thumb
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there.
  event: count-started, case 1, final, first
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 1.
next: Show the artery forceps, curved: scan its mark, or YES when both have seen it; NO if it is not there.
  event: item-not-shown, case 1, item 1, n 1, first
> pack FORCEPS 25
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing. Scan STEP DONE, NOT DONE, or FOUND.
  event: item-shown, case 1, mark, item 2, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1
prints: discrepancy slip 1
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again, both together. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card STEP DONE
accepted: Search step 2 done: count again, both together.
next: Search 3 of 11: look at and feel the digit, under the dressing too. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 2, "count again, both together", first
> card STEP DONE
accepted: Search step 3 done: look at and feel the digit, under the dressing too.
next: Search 4 of 11: drapes, floor, shoes. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 3, "look at and feel the digit, under the dressing too", first
> card STEP DONE
accepted: Search step 4 done: drapes, floor, shoes.
next: Search 5 of 11: bins and linen. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 4, "drapes, floor, shoes", first
> card STEP DONE
accepted: Search step 5 done: bins and linen.
next: Search 6 of 11: under the patient. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 5, "bins and linen", first
> card STEP DONE
accepted: Search step 6 done: under the patient.
next: Search 7 of 11: tell the surgeon, who looks as well. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 6, "under the patient", first
> card STEP DONE
accepted: Search step 7 done: tell the surgeon, who looks as well.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 7, "tell the surgeon, who looks as well", first
> card STEP DONE
accepted: Search step 8 done: imaging, if the missing item shows on it: steel does, a tourniquet may not.
next: Search 9 of 11: tell the nurse in charge. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 8, "imaging, if the missing item shows on it: steel does, a tourniquet may not", first
> card STEP DONE
accepted: Search step 9 done: tell the nurse in charge.
next: Search 10 of 11: incident report begun. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 9, "tell the nurse in charge", first
> card STEP DONE
accepted: Search step 10 done: incident report begun.
next: Search 11 of 11: patient told, or who will tell. Scan STEP DONE, NOT DONE, or FOUND.
  event: search-step, case 1, done, n 10, "incident report begun", first
> card STEP DONE
accepted: Search step 11 done: patient told, or who will tell.
next: The search is complete. FOUND, FINAL COUNT to count again, or END UNRESOLVED by the surgeon.
  event: search-step, case 1, done, n 11, "patient told, or who will tell", first
> card END UNRESOLVED
question: Every step of the search is answered.
next: The surgeon decides to end unresolved. Scan the surgeon's badge, or NO.
  event: asked, case 1, surgeon-ends, first
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Type the incident number, or scan NOT DONE: number owed.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: asked, case 1, incident, person SURG-3
> typed INC-25
accepted: Case 1 ended UNRESOLVED, incident number INC-25. Finger tourniquet, green, M: 0 of 1 not accounted for; artery forceps, curved: 1 of 1 mark read.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: paid, case 1, incident-number, "INC-25"
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:250 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: item-used, case 1, item 2, FORCEPS:25 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, unresolved, "INC-25"
  event: slip-queued, case 1, reconciliation, copy 1, n 2
prints: reconciliation slip 2
> pack GREEN-M 250 lot T26 expiry 20280331
accepted: Found after the end: finger tourniquet, green, M comes from case 1, where it was missing. Look at that patient's digit now and tell the surgeon.
next: When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.
  event: asked, nothing more
  event: found-after, case 1, GREEN-M:250 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3
prints: addendum slip 3
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Scan the badge of the one at the field, before scrubbing.
  event: case-opened, case 2
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Scan the badge of the circulating practitioner.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Scan each pack and instrument as it is counted in.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first
> pack FORCEPS 25
accepted: Counted in: 1 artery forceps, curved.
next: Scan further packs and instruments. When both have counted aloud: scan the circulating badge.
  event: item-in, case 2, item 1, FORCEPS:25 "artery forceps, curved" forceps known by its mark, n 1, first
