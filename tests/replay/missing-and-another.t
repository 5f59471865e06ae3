# What is seen on a digit is taken for the tourniquet that is missing, and is another: its pack says that, and one is missing still.
begins from tourniquet-missing
> digit right ring finger
question: Right ring finger: the clock runs as 'on?'. The final count starts again.
next: Right ring finger: Is a tourniquet on it now? Scan YES; NO if none is on it.
  event: digit-maybe-on, case 1, digit right ring finger, first
  event: owed, case 1, maybe-on, digit right ring finger
  event: asked, case 1, is-on, digit right ring finger, n 1
> card YES
accepted: Tourniquet on, right ring finger, from 10:00; no forceps on it. The clock runs. It is taken for the finger tourniquet, green, M that was missing: if it is another one, scan its pack; if it went on earlier, scan how many MINUTES AGO.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: paid, case 1, maybe-on, digit right ring finger, is-on, first
  event: digit-on, case 1, digit right ring finger
  event: item-on, case 1, item 1, digit right ring finger
  event: asked, case 1, nothing more
> pack GREEN-M 777 lot T26 expiry 20280331
question: Extra item: finger tourniquet, green, M, beyond what is on the sheet.
next: Was it opened in this case? Scan YES; NO if not.
  event: extra-item, case 1, item 3, GREEN-M:777 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
  event: asked, case 1, extra, item 3
> card YES
accepted: Entered late: finger tourniquet, green, M was opened in this case.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: item-struck, case 1, item 3
  event: item-in, case 1, item 4, GREEN-M:777 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
> digit right ring finger
question: Tourniquet on the right ring finger for 0 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card OFF
accepted: Off, right ring finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: Before the dressing: scan FINAL COUNT.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> card FINAL COUNT
accepted: Counting again, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
> card SHOWN 1
accepted: Finger tourniquet, green, M: 1 of 2 shown.
next: Show the artery forceps, curved: scan its mark; YES when both have seen it; NO if it is not there.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
  event: item-not-shown, case 1, item 4, n 1
> pack FORCEPS 53
accepted: Accounted for: artery forceps, curved: its mark was read, 1 of 1. Still missing: finger tourniquet, green, M.
next: Search 1 of 11: say it aloud and stop closing: scan STEP DONE or NOT DONE; FOUND when what is missing is in your hand; the digit card if it is on a digit.
  event: item-shown, case 1, mark, item 2, n 1, first
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: artery forceps, curved, accounted, 1 of 1
item 3: finger tourniquet, green, M, struck, 0 of 1
item 4: finger tourniquet, green, M, here, 0 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
right ring finger: off, now 0 min, total 0 min, longest 0 min
