# Two tourniquets alike came off two digits, and the final count begins: what others begin from.
begins from two-on
> digit right index finger
question: Tourniquet on the right index finger for 0 min.
next: Right index finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right index finger, first
> card OFF
accepted: Off, right index finger, at 10:00, after 0 min. Off is not yet accounted for.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
  event: item-off, case 1, item 2, digit right index finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right index finger
> digit left ring finger
question: Tourniquet on the left ring finger for 0 min.
next: Left ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left ring finger, first
> card OFF
accepted: Off, left ring finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left ring finger
> card FINAL COUNT
accepted: Final count, line by line.
next: Lay 2 × finger tourniquet, green, M side by side: scan SHOWN 2 if all are intact; CUT AND COMPLETE for one that is cut; PIECES MISSING for one not whole; the digit card if it is on a digit; SHOWN and their number for as many as are; NO if none is there.
  event: count-started, case 1, final, first
