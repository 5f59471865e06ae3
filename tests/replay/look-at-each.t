# Each digit of a case that ended unresolved is looked at and entered by itself, and stays on the board until then (rule 16).
begins from two-off
> card MISSING
accepted: NOT THERE: finger tourniquet, green, M, 0 of 2. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-not-shown, case 1, item 1, n 1, first
  event: item-not-shown, case 1, item 2, n 1
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
> card END UNRESOLVED
question: Each step of the search is answered.
next: The surgeon decides to end unresolved: scan the surgeon's badge; VISITOR 1 for a visitor without a badge; NO to go on.
  event: asked, case 1, surgeon-ends, first
> badge SURG-3
question: SURG-3 decides to end this case unresolved.
next: Incident report: type the incident number; NOT DONE if there is no number yet.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: asked, case 1, incident, person SURG-3
> card NOT DONE
accepted: Case 1 ended UNRESOLVED; its incident number is owed. Finger tourniquet, green, M: NOT accounted for, 0 of 2 shown.
next: Case 1: look at that patient's right index finger now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: owed, case 1, incident-number
  event: signed-out, case 1, person SURG-3
  event: item-used, case 1, item 1, GREEN-M:501 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: item-used, case 1, item 2, GREEN-M:502 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use
  event: case-ended, case 1, unresolved, number-owed
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: owed, case 1, digit-seen-bare, digit right index finger
  event: owed, case 1, digit-seen-bare, digit left ring finger
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2
> card STEP DONE
accepted: Case 1: right index finger seen bare, entered.
next: Case 1: look at that patient's left ring finger now: scan NEXT, then STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, digit-seen-bare, digit right index finger, entered-after
> card NEXT
accepted: Next.
next: Case 1: look at that patient's left ring finger now: scan STEP DONE when it was seen bare; NO if a tourniquet is on it; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: left ring finger seen bare, entered.
next: Case 1: tell the ward now: scan NEXT, then STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, digit-seen-bare, digit left ring finger, entered-after
> card NEXT
accepted: Next.
next: Case 1: tell the ward now: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: next
> card STEP DONE
accepted: Case 1: ward told, entered.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: paid, case 1, ward-told, entered-after
