# A lone operator hands over: only the one who counts now agrees it.
room 3
> badge SCRUB-1
accepted: Case 1 opened in Minor injuries. SCRUB-1 works alone: single-person count.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: case-opened, case 1, n 1
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1"
> pack GREEN-M 101
accepted: Counted in: 1 finger tourniquet, green, M.
next: When the tourniquet goes on, before gloving: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: item-in, case 1, item 1, GREEN-M:101 "finger tourniquet, green, M" tourniquet known by its pack single-use, n 1, first
> digit right thumb
accepted: Tourniquet on, right thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit right thumb, first
  event: item-on, case 1, item 1, digit right thumb
  event: count-agreed, case 1, initial, person SCRUB-1, n SCRUB-1
+ 5 min
  event: alive, 5 times
> card HANDOVER
question: Handover.
next: Who hands over? Scan a badge; NO to leave it as it is.
  event: asked, case 1, handover-out, first
> badge CIRC-2
question: CIRC-2 takes over from SCRUB-1, at the field.
next: Right thumb: See the tourniquet on it: scan its digit card; WITHOUT FULL SIGHT if it cannot be seen.
  event: left, case 1, field, person SCRUB-1, n 1, first
  event: joined, case 1, field, person CIRC-2, "CIRC-2"
  event: count-started, case 1, handover
  event: owed, case 1, handover
  event: asked, case 1, handover-seen, digit right thumb, person SCRUB-1, n 2
> digit right thumb
accepted: Tourniquet seen on the right thumb.
next: Count aloud together what is on the sheet: scan the operator's badge.
  event: digit-seen-on, case 1, digit right thumb, n 1, first
  event: asked, case 1, handover-agree, person SCRUB-1, n 2
> badge SCRUB-1
refused: CIRC-2 works alone now and counts. If SCRUB-1 takes over, scan HANDOVER, then this badge.
next: Count aloud together what is on the sheet: scan the operator's badge.
  event: refused, case 1, "CIRC-2 works alone now and counts. If SCRUB-1 takes over, scan HANDOVER, then this badge."
> badge CIRC-2
accepted: CIRC-2 counted: the handover count, single-person count.
next: When the tourniquet is off the right thumb: scan its digit card, then OFF.
  event: asked, case 1, nothing more, first
  event: count-agreed, case 1, handover, person CIRC-2, n CIRC-2
  event: paid, case 1, handover, person CIRC-2, by-operator
