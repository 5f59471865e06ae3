# An extra item whose question was pushed away is asked about again, and the count is not agreed before that.
begins from counted-in
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 2, n 1, first
> pack FORCEPS 77
question: Extra item: artery forceps, curved, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 3, FORCEPS:77 "artery forceps, curved" forceps known by its mark, n 1, first
  event: asked, case 1, extra, item 3
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> card NO
accepted: Left as it is.
next: Was it opened in this case? Scan YES; NEXT, then NO if not.
  event: asked, case 1, nothing more, first
  event: asked, case 1, extra, item 3
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: Was it opened in this case? Scan YES; NEXT, then NO if not.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> card NO
accepted: Entered once already: NO. If it is meant again: NEXT, then this.
next: Was it opened in this case? Scan YES; NEXT, then NO if not.
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, accounted, 1 of 1
item 3: artery forceps, curved, extra, 0 of 1
