# A case ended unresolved, its band not found. The look at the digit finds it there: that is entered and printed at once, and the
# digit is looked at again once it is off.
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
> pack GREEN-M 101 lot T26 expiry 20310331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2031).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right index finger
accepted: Tourniquet on, right index finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right index finger: scan its digit card, then OFF.
  event: digit-on, case 1, digit right index finger, first
  event: item-on, case 1, item 1, digit right index finger
+ 12 min
  event: alive, 12 times
> digit right index finger
question: Tourniquet on the right index finger for 12 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:12, after 12 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-not-shown, case 1, item 1, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card NOT DONE
accepted: Entered as NOT done: search step 1, say it aloud and stop closing. Type why, or write it on the slip.
next: Search 2 of 11: count again: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 1, "say it aloud and stop closing", first
> card NEXT
accepted: Next.
next: Search 2 of 11: count again: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 2, count again. Type why, or write it on the slip.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 2, "count again", first
> card NEXT
accepted: Next.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 3, look at and feel the digit, under the dressing too. Type why, or write it on the slip.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 3, "look at and feel the digit, under the dressing too", first
> card NEXT
accepted: Next.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 4, drapes, floor, shoes. Type why, or write it on the slip.
next: Search 5 of 11: bins and linen: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 4, "drapes, floor, shoes", first
> card NEXT
accepted: Next.
next: Search 5 of 11: bins and linen: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 5, bins and linen. Type why, or write it on the slip.
next: Search 6 of 11: under the patient: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 5, "bins and linen", first
> card NEXT
accepted: Next.
next: Search 6 of 11: under the patient: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 6, under the patient. Type why, or write it on the slip.
next: Search 7 of 11: tell the surgeon, who looks as well: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 6, "under the patient", first
> card NEXT
accepted: Next.
next: Search 7 of 11: tell the surgeon, who looks as well: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 7, tell the surgeon, who looks as well. Type why, or write it on the slip.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 7, "tell the surgeon, who looks as well", first
> card NEXT
accepted: Next.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 8, imaging, if the missing item shows on it: steel does, a tourniquet may not. Type why, or write it on the slip.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 8, "imaging, if the missing item shows on it: steel does, a tourniquet may not", first
> card NEXT
accepted: Next.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 9, tell the nurse in charge. Type why, or write it on the slip.
next: Search 10 of 11: incident report begun: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 9, "tell the nurse in charge", first
> card NEXT
accepted: Next.
next: Search 10 of 11: incident report begun: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 10, incident report begun. Type why, or write it on the slip.
next: Search 11 of 11: patient told, or who will tell: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: search-step, case 1, not done, n 10, "incident report begun", first
> card NEXT
accepted: Next.
next: Search 11 of 11: patient told, or who will tell: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NOT DONE
accepted: Entered as NOT done: search step 11, patient told, or who will tell. Type why, or write it on the slip.
next: Each step of the search is answered: scan FOUND when what is missing is in your hand; the digit card if it is on a digit; END UNRESOLVED when the surgeon decides to end; FINAL COUNT to count again.
  event: search-step, case 1, not done, n 11, "patient told, or who will tell", first
> card NEXT
accepted: Next.
next: Each step of the search is answered: scan FOUND when what is missing is in your hand; the digit card if it is on a digit; END UNRESOLVED when the surgeon decides to end; FINAL COUNT to count again.
  event: next, case 1
> card END UNRESOLVED
question: Each step of the search is answered.
next: The surgeon decides to end unresolved: scan the surgeon's badge; NO to go on.
  event: asked, case 1, surgeon-ends, first
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Incident report: type the incident number; NOT DONE if there is no number yet.
  event: asked, case 1, incident, person SURG-3, first
> card NOT DONE
accepted: Case 1 ended UNRESOLVED; its incident number is owed. Finger tourniquet, green, M: NOT accounted for, 0 of 1 shown.
next: Case 1: look at that patient's right index finger now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20310331 single-use
  event: case-ended, case 1, unresolved, number-owed
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: owed, case 1, digit-seen-bare, digit right index finger
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2

# the look
+ 20 min
> card NO
accepted: Case 1: a tourniquet is ON the right index finger, entered. Call the surgeon now, to take it off. The slip prints.
next: Case 1: look at that patient's right index finger now: scan STEP DONE when it was seen bare; NEXT, then NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: found-after, case 1, digit right index finger, no line "tourniquet left on" tourniquet
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 3, "en"
prints: addendum slip 3
  event: paid, case 1, digit-seen-bare, digit right index finger, was-on
  event: owed, case 1, digit-seen-bare, digit right index finger
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 3
> card NO
accepted: Entered once already: NO. If it is meant again: NEXT, then this.
next: Case 1: look at that patient's right index finger now: scan STEP DONE when it was seen bare; NEXT, then NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
> card NEXT
accepted: Next.
next: Case 1: look at that patient's right index finger now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: right index finger seen bare, entered.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, digit-seen-bare, digit right index finger, entered-after
> card STEP DONE
accepted: Entered once already: STEP DONE. If it is meant again: NEXT, then this.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
> card NO
refused: No case is open in Theatre 1: NO has nothing to act on.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "No case is open in Theatre 1: NO has nothing to act on."
> card NEXT
accepted: Next.
next: Case 1: tell the ward now: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: ward told, entered.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, ward-told, entered-after
> card NO
refused: No case is open in Theatre 1: NO has nothing to act on.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "No case is open in Theatre 1: NO has nothing to act on."
