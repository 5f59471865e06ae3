# Two extra items: the second pushes the question about the first away. The code of the first asks it again, also once the search
# goes on, and also where NO was the answer.
begins from counted-in
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack GREEN-M 778 lot T26 expiry 20280331
question: Extra item: finger tourniquet, green, M, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 3, GREEN-M:778 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: asked, case 1, extra, item 3
> pack FORCEPS 77
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 4, FORCEPS:77 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, extra, item 4
> card NO
accepted: Extra item, origin not known: isolate it, keep it in the room. A misread: scan MISREAD, then its code.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NEXT, then NO if it is not there.
  event: asked, case 1, nothing more, first
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1. DISCREPANCY: say it aloud. The discrepancy slip prints now.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; MISREAD if the extra item was read by mistake; FOUND if it is known which case it comes from.
  event: item-shown, case 1, mark, item 2, n 1, first
  event: discrepancy, case 1, n 1
  event: slip-queued, case 1, discrepancy, copy 1, n 1, "en"
prints: discrepancy slip 1
  event: slip-state, case 1, written, copy 1, n 1
> pack GREEN-M 778 lot T26 expiry 20280331
question: Extra item: finger tourniquet, green, M, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: asked, case 1, extra, item 3, first
> card YES
accepted: Entered late: finger tourniquet, green, M was opened in this case.
next: Show the finger tourniquet, green, M, 2 of 2, beside the first: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: asked, case 1, nothing more, first
  event: item-struck, case 1, item 3
  event: item-in, case 1, item 5, GREEN-M:778 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
> pack FORCEPS 77
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: asked, case 1, extra, item 4, first
> card YES
accepted: Entered late: artery forceps, curved was opened in this case.
next: Show the finger tourniquet, green, M, 2 of 2, beside the first: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: asked, case 1, nothing more, first
  event: item-struck, case 1, item 4
  event: item-in, case 1, item 6, FORCEPS:77 "artery forceps, curved" forceps known by its mark, n 1
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 5, intact, n 1, first
> pack FORCEPS 77
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 6, n 1, first
  event: discrepancy, case 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, accounted, 1 of 1
item 3: finger tourniquet, green, M, struck, 0 of 1
item 4: artery forceps, curved, struck, 0 of 1
item 5: finger tourniquet, green, M, accounted, 1 of 1
item 6: artery forceps, curved, accounted, 1 of 1
