# A step of the search that was not done: the reason is typed, and stands on the slip (rule 16).
begins from forceps-missing
> card STEP DONE
accepted: Search step 1 done: say it aloud and stop closing.
next: Search 2 of 11: count again: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 1, "say it aloud and stop closing", first
> card NOT DONE
accepted: Entered as NOT done: search step 2, count again. Type why, or write it on the slip.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE (NEXT first); FOUND when what is missing is in your hand.
  event: search-step, case 1, not done, n 2, "count again", first
> typed nobody is free to count
accepted: Why step 2 of the search was not done is entered.
next: Search 3 of 11: look at and feel the digit, under the dressing too: scan its digit card or NOT DONE; FOUND when what is missing is in your hand.
  event: search-why, case 1, n 2, "nobody is free to count", first
> card STEP DONE
accepted: Search step 3 done: look at and feel the digit, under the dressing too.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 3, "look at and feel the digit, under the dressing too", first
> card NOT DONE
accepted: Entered as NOT done: search step 4, drapes, floor, shoes. Type why, or write it on the slip.
next: Search 5 of 11: bins and linen: scan STEP DONE or NOT DONE (NEXT first); FOUND when what is missing is in your hand.
  event: search-step, case 1, not done, n 4, "drapes, floor, shoes", first
> card STEP DONE
accepted: Search step 5 done: bins and linen.
next: Search 6 of 11: under the patient: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 5, "bins and linen", first
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, here, 0 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
