# ADD in a final count counts a further pack in and asks for it; the wrapper of what stands there already proves nothing, with ADD as well.
begins from counted-in
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card ADD
question: Adding.
next: What is added? Scan the pack; NO to leave it as it is.
  event: asked, case 1, add, first
> pack FORCEPS 54
accepted: Added: 1 artery forceps, curved.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-in, case 1, item 3, FORCEPS:54 "artery forceps, curved" forceps known by its mark, n 1, first
  event: owed, case 1, added
  event: asked, case 1, nothing more
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, mark, item 2, n 1, first
> pack FORCEPS 54
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 3, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
  event: paid, case 1, added, person CIRC-2, agreed-aloud
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, accounted, 1 of 1
item 3: artery forceps, curved, accounted, 1 of 1
