# What an open case looks for is in a hand in another room: FOUND, its mark and the slip there say where it must go, whether or
# not a case is open there; nothing of it is entered there.
begins from forceps-missing
room 2
> card FOUND
question: Theatre 2: Found after the end of a case.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, found
> pack FORCEPS 53
refused: Theatre 2: Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now.
next: Next patient: scan NEW CASE.
  event: asked, nothing more
  event: refused, "Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now."
> pack FORCEPS 53
refused: Theatre 2: Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now.
next: Next patient: scan NEW CASE.
  event: refused, "Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now."
> card FOUND
question: Theatre 2: Found after the end of a case.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, found
> slip 1
refused: Theatre 2: Case 1 is still open: what was found is answered for in its own count, not by a slip. Take it to Theatre 1 now.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: refused, "Case 1 is still open: what was found is answered for in its own count, not by a slip."
> card NO
accepted: Theatre 2: Left as it is.
next: Next patient: scan NEW CASE.
  event: asked, nothing more
> card NEW CASE
accepted: Theatre 2: Case 2 opened in Theatre 2.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> card FOUND
question: Theatre 2: Nothing is missing in this case. It may be of an earlier one.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, case 2, found, first
> pack FORCEPS 53
refused: Theatre 2: Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: asked, case 2, nothing more, first
  event: refused, case 2, "Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now."
> pack FORCEPS 53
refused: Theatre 2: Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 2, "Not entered here: artery forceps, curved is on the open sheet of case 1 in Theatre 1, which looks for what is missing. Take it there now."
> show

room 1
> pack FORCEPS 53
accepted: Theatre 1: Found, artery forceps, curved: its mark was read, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, mark, item 2, n 1, "say it aloud and stop closing", first
  event: discrepancy, case 1
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, accounted, 1 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
