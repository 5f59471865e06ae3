# The right thumb is a digit like any other: with a tourniquet on it the case does not end unresolved.
begins from searched-for-forceps
> digit right thumb
question: Right thumb: the clock runs as 'on?'.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: digit-doubted, case 1, digit right thumb, first
  event: owed, case 1, maybe-on, digit right thumb
  event: asked, case 1, is-on, digit right thumb, n 1
> card YES
accepted: Tourniquet on, right thumb, from 10:01; no forceps on it. The clock runs. It is taken for the finger tourniquet, green, M that was shown: if that one lies there as well, this is another: scan its pack; UNLISTED TOURNIQUET if there is none. The final count starts again.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right thumb, is-on, first
  event: digit-on, case 1, digit right thumb
  event: item-on, case 1, item 1, digit right thumb
  event: asked, case 1, nothing more
> card END UNRESOLVED
refused: The count is not finished: answer for the finger tourniquet, green, M first.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: refused, case 1, "The count is not finished: answer for the finger tourniquet, green, M first."
