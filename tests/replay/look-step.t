# The step of the search that looks at the digit is answered by its digit card: NO says that it was looked at and nothing is on
# it.
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
> digit right thumb
question: Right thumb: the clock runs as 'on?'. Look at it and feel it, under the dressing too.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card STEP DONE
accepted: Search step 3 done: look at and feel the digit, under the dressing too.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: search-step, case 1, done, n 3, "look at and feel the digit, under the dressing too", first
> card NO
accepted: Not on: right thumb.
next: Search 4 of 11: drapes, floor, shoes: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand.
  event: digit-not-on, case 1, digit right thumb, first
  event: paid, case 1, maybe-on, digit right thumb, not-on
  event: asked, case 1, nothing more
> card STEP DONE
accepted: Search step 4 done: drapes, floor, shoes.
next: Search 5 of 11: bins and linen: scan STEP DONE (NEXT first) or NOT DONE; FOUND when what is missing is in your hand.
  event: search-step, case 1, done, n 4, "drapes, floor, shoes", first
