# The tourniquet that is missing is seen on another digit: it is that one and no second one, and the case ends reconciled.
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
> card 10 MINUTES AGO
accepted: On 10 min earlier, right ring finger.
next: When the tourniquet is off the right ring finger: scan its digit card, then OFF.
  event: digit-earlier, case 1, on, digit right ring finger, n 10, first
> show
item 1: finger tourniquet, green, M, on, 0 of 1
item 2: artery forceps, curved, accounted, 1 of 1
right thumb: off, now 0 min, total 0 min, longest 0 min
right ring finger: on, now 10 min, total 10 min, longest 10 min
> digit right ring finger
question: Tourniquet on the right ring finger for 10 min.
next: Right ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit right ring finger, first
> card OFF
accepted: Off, right ring finger, at 10:00, after 10 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit right ring finger, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit right ring finger
> card FINAL COUNT
accepted: Counting again, line by line.
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
  event: discrepancy, case 1
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare right thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit right thumb
accepted: Right thumb seen bare at 10:01.
next: Look at the bare right ring finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: digit-seen-bare, case 1, digit right thumb, person CIRC-2, first
> digit right ring finger
accepted: Right ring finger seen bare at 10:01.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit right ring finger, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Artery forceps, curved: 1 of 1, mark read. Seen bare: right thumb and right ring finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:519 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: item-used, case 1, item 2, FORCEPS:53 "artery forceps, curved" forceps known by its mark, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 2, "en"
prints: reconciliation slip 2
  event: slip-state, case 1, written, copy 1, n 2
