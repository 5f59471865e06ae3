# While a line of the final count is open, END UNRESOLVED and the surgeon's badge say the same: which line is asked for.
begins from thumb-off
> card NO
accepted: NOT THERE: finger tourniquet, green, M, 0 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NEXT, then NO if it is not there.
  event: item-not-shown, case 1, item 1, n 1, first
> card END UNRESOLVED
refused: The count is not finished: answer for the artery forceps, curved first.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NEXT, then NO if it is not there.
  event: refused, case 1, "The count is not finished: answer for the artery forceps, curved first."
> badge SURG-3
accepted: SURG-3: operating surgeon.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
> card STEP DONE
refused: There is no search now.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: refused, case 1, "There is no search now."
> card NO
accepted: NOT THERE: artery forceps, curved, 0 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-not-shown, case 1, item 2, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> card NEXT
accepted: Next.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: next, case 1
> card NO
refused: Nothing is asked for now that could be missing.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: refused, case 1, "Nothing is asked for now that could be missing."
> card END UNRESOLVED
refused: A step of the search is not answered yet: say it aloud and stop closing. Scan STEP DONE or NOT DONE.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: refused, case 1, "A step of the search is not answered yet: say it aloud and stop closing. Scan STEP DONE or NOT DONE."
