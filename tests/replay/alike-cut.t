# Of two alike one is cut: it is answered alone, and the other is shown beside it.
begins from two-off
> card CUT AND COMPLETE
accepted: Accounted for: finger tourniquet, green, M: shown cut and complete, 1 of 1.
next: Show the finger tourniquet, green, M, 2 of 2, beside the first: scan INTACT, CUT AND COMPLETE (NEXT first) or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: item-shown, case 1, shown, item 1, cut and complete, n 1, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 2, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right index finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> show
item 1: finger tourniquet, green, M, accounted, 1 of 1
item 2: finger tourniquet, green, M, accounted, 1 of 1
right index finger: off, now 0 min, total 0 min, longest 0 min
left ring finger: off, now 0 min, total 0 min, longest 0 min
