# The digit card just after OFF asks, and the clock runs as 'on?': NO takes it back, and nothing of it is a reapplication.
begins from asked-after-off
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 0 min, total 12 min, longest 12 min
owed: maybe-on
> card OFF
refused: OFF was entered for the right thumb already: NO if none went on again; YES if one did, then its digit card and OFF.
next: Right thumb: Is a tourniquet on it now? Scan YES if one went on again; NO if none is on it; MISREAD if it never came off.
  event: refused, case 1, "OFF was entered for the right thumb already: NO if none went on again; YES if one did, then its digit card and OFF."
> card NO
accepted: Not on: right thumb.
next: Before the dressing: scan FINAL COUNT.
  event: digit-not-on, case 1, digit right thumb, first
  event: paid, case 1, maybe-on, digit right thumb, not-on
  event: asked, case 1, nothing more
> show
item 1: finger tourniquet, green, M, off, 0 of 1
right thumb: off, now 12 min, total 12 min, longest 12 min
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 1, final, first
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 1, shown, item 1, intact, n 1, first
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Right thumb seen bare at 10:13.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right thumb, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: right thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:512 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
