# The station was silent, and the room counted on paper sheet 2. Its code opens the late entry: what is entered stays marked
# late on the slip. The same sheet is not entered twice; not while another case is open; sheet 1, which was not used, is entered
# as cancelled (rule 17).
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> paper 2
refused: Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 1, "Case 1 is open in Theatre 1: end it, or scan SUSPEND or CANCEL."
> card CANCEL
question: Case 1.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1 ended as cancelled; nothing was counted in.
next: Next patient: scan NEW CASE.
  event: asked, case 1, nothing more, first
  event: case-ended, case 1, cancelled, nothing-opened
> paper 2
accepted: Case 2 opened in Theatre 1, from paper sheet 2: enter it from top to bottom. Each line is marked late.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2, "paper-2", late
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 2, field, person SCRUB-1, "SCRUB-1", first, late
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 2, circulating, person CIRC-2, "CIRC-2", first, late
> pack GREEN-M 181 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 2, item 1, GREEN-M:181 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first, late
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 2, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first, late
> digit left ring finger
accepted: Tourniquet on, left ring finger, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left ring finger: scan its digit card, then OFF.
  event: digit-on, case 2, digit left ring finger, first, late
  event: item-on, case 2, item 1, digit left ring finger, late
> digit left ring finger
question: Tourniquet on the left ring finger for 0 min.
next: Left ring finger: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 2, off, digit left ring finger, first, late
> card OFF
accepted: Off, left ring finger, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 2, item 1, digit left ring finger, first, late
  event: asked, case 2, nothing more, late
  event: digit-off, case 2, digit left ring finger, late
> card FINAL COUNT
accepted: Final count, line by line.
next: Show the finger tourniquet, green, M: scan INTACT, CUT AND COMPLETE or PIECES MISSING; NO if it is not there; the digit card if it is on a digit.
  event: count-started, case 2, final, first, late
> card INTACT
accepted: Accounted for: finger tourniquet, green, M: shown intact, 1 of 1.
next: Agree the final count aloud: scan the circulating badge.
  event: item-shown, case 2, shown, item 1, intact, n 1, first, late
> badge CIRC-2
accepted: Final count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Look at the bare left ring finger before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 2, final, person SCRUB-1, other CIRC-2, n CIRC-2, first, late
> digit left ring finger
accepted: Left ring finger seen bare at 10:00.
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 2, digit left ring finger, person CIRC-2, first, late
> badge SURG-3
accepted: Case 2 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: left ring finger.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 2, surgeon, person SURG-3, "SURG-3", first, late
  event: signed-out, case 2, person SURG-3, late
  event: sign-out-point, case 2, yes, n 1, "The name of the procedure is recorded.", late
  event: sign-out-point, case 2, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable.", late
  event: sign-out-point, case 2, yes, n 3, "Each specimen is labelled with the patient's name, or there is none.", late
  event: sign-out-point, case 2, yes, n 4, "Equipment problems have been reported, or there are none.", late
  event: sign-out-point, case 2, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them.", late
  event: item-used, case 2, item 1, GREEN-M:181 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, late
  event: case-ended, case 2, reconciled, late
  event: slip-queued, case 2, reconciliation, copy 1, n 1, "en", late
prints: reconciliation slip 1
  event: slip-state, case 2, written, copy 1, n 1
> paper 2
refused: Paper sheet 2 of Theatre 1 was entered already: scan the code of the sheet that is in your hand.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: refused, "Paper sheet 2 of Theatre 1 was entered already: scan the code of the sheet that is in your hand."
> paper 1
accepted: Case 3 opened in Theatre 1, from paper sheet 1: enter it from top to bottom. Each line is marked late.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 3, "paper-1", late
> card CANCEL
question: Case 3.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 3, cancel, first, late
> card YES
accepted: Case 3 ended as cancelled; nothing was counted in.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 3, nothing more, first, late
  event: case-ended, case 3, cancelled, nothing-opened, late
