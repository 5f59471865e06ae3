# Each step of the search is done, and the forceps are still missing: what others begin from.
begins from forceps-missing
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card NEXT
accepted: Next.
next: Search 2 of 11: count again: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 2 done: count again.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 2, "count again", first
> card NEXT
accepted: Next.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 3 done: look at and feel the digit, under the dressing too.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 3, "look at and feel the digit, under the dressing too", first
> card NEXT
accepted: Next.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 4 done: drapes, floor, shoes.
next: Search 5 of 11: bins and linen: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 4, "drapes, floor, shoes", first
> card NEXT
accepted: Next.
next: Search 5 of 11: bins and linen: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 5 done: bins and linen.
next: Search 6 of 11: under the patient: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 5, "bins and linen", first
> card NEXT
accepted: Next.
next: Search 6 of 11: under the patient: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 6 done: under the patient.
next: Search 7 of 11: tell the surgeon, who looks as well: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 6, "under the patient", first
> card NEXT
accepted: Next.
next: Search 7 of 11: tell the surgeon, who looks as well: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 7 done: tell the surgeon, who looks as well.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 7, "tell the surgeon, who looks as well", first
> card NEXT
accepted: Next.
next: Search 8 of 11: imaging, if the missing item shows on it: steel does, a tourniquet may not: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 8 done: imaging, if the missing item shows on it: steel does, a tourniquet may not.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 8, "imaging, if the missing item shows on it: steel does, a tourniquet may not", first
> card NEXT
accepted: Next.
next: Search 9 of 11: tell the nurse in charge: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 9 done: tell the nurse in charge.
next: Search 10 of 11: incident report begun: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 9, "tell the nurse in charge", first
> card NEXT
accepted: Next.
next: Search 10 of 11: incident report begun: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 10 done: incident report begun.
next: Search 11 of 11: patient told, or who will tell: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 10, "incident report begun", first
> card NEXT
accepted: Next.
next: Search 11 of 11: patient told, or who will tell: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: next, case 1
> card STEP DONE
accepted: Search step 11 done: patient told, or who will tell.
next: Each step of the search is answered: scan FOUND when what is missing is in your hand; END UNRESOLVED when the surgeon decides to end; FINAL COUNT to count again.
  event: search-step, case 1, done, n 11, "patient told, or who will tell", first
