# A case is suspended for another; one in which nothing was opened is cancelled; one with a pack owes a count.
> card NEW CASE
accepted: Case 1 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 1
> badge SCRUB-1
accepted: SCRUB-1: at the field.
next: Who circulates: scan the circulating badge.
  event: joined, case 1, field, person SCRUB-1, "SCRUB-1", first
> badge CIRC-2
accepted: CIRC-2: circulating.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: joined, case 1, circulating, person CIRC-2, "CIRC-2", first
> pack GREEN-M 180 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:180 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> card SUSPEND
accepted: Case 1 is suspended. Clocks and reminders go on.
next: Case 1 is suspended: scan NEXT, then SUSPEND to go on with it; NEW CASE for the next patient.
  event: suspended, case 1, first
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> card CANCEL
question: Case 2.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 2, cancel, first
> card YES
accepted: Case 2 ended as cancelled; nothing was counted in.
next: Case 1 is suspended: scan SUSPEND to go on with it; NEW CASE for the next patient.
  event: asked, case 2, nothing more, first
  event: case-ended, case 2, cancelled, nothing-opened
> card SUSPEND
accepted: Case 1 goes on.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: resumed, case 1, first
> card CANCEL
question: Case 1. NOT ACCOUNTED FOR: finger tourniquet, green, M.
next: Cancel this case? Scan YES; NO if not.
  event: asked, case 1, cancel, first
> card YES
accepted: Case 1: the operation is cancelled. NOT ACCOUNTED FOR: finger tourniquet, green, M. A count is still owed.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: asked, case 1, nothing more, first
  event: cancelled, case 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: Before the dressing: scan FINAL COUNT.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
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
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> badge SURG-3
accepted: Case 1 ended as cancelled. Finger tourniquet, green, M: 1 of 1 shown intact.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:180 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, cancelled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
