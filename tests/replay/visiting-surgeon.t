# A visiting surgeon has no badge here: the circulating badge vouches at the beginning and is the witness of the sign-out, and
# the slip says so (rule 19).
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
> card VISITOR 1
question: Visitor 1.
next: Is the visitor the operating surgeon? Scan YES; NO if not.
  event: asked, case 1, visitor-is-surgeon, person visitor 1, first
> card YES
question: Visitor 1, operating surgeon.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NO to leave it as it is.
  event: asked, case 1, visitor, person visitor 1, n 3, first
> badge SCRUB-1
refused: The circulating badge vouches for a visitor: scan it, or NO.
next: Write the visitor's name on the paper sheet: scan the circulating badge; NO to leave it as it is.
  event: refused, case 1, "The circulating badge vouches for a visitor: scan it, or NO."
> badge CIRC-2
accepted: Visitor 1: operating surgeon.
next: Count in: scan each pack and instrument; CANCEL if there is no operation.
  event: asked, case 1, nothing more, first
  event: joined, case 1, surgeon, person visitor 1, "visitor 1"
> pack GREEN-M 514 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:514 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> card NEXT
accepted: Next.
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: next, case 1
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
> card NEXT
accepted: Next.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: next, case 1
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> digit left thumb
accepted: Tourniquet on, left thumb, from 10:00; no forceps on it. The clock runs.
next: When the tourniquet is off the left thumb: scan its digit card, then OFF.
  event: digit-on, case 1, digit left thumb, first
  event: item-on, case 1, item 1, digit left thumb
> digit left thumb
question: Tourniquet on the left thumb for 0 min.
next: Left thumb: Is it off? Scan OFF; NO if it is still on; ADD if a second one went on.
  event: asked, case 1, off, digit left thumb, first
> card OFF
accepted: Off, left thumb, at 10:00, after 0 min. Off is not yet accounted for.
next: Before the dressing: scan FINAL COUNT.
  event: item-off, case 1, item 1, digit left thumb, first
  event: asked, case 1, nothing more
  event: digit-off, case 1, digit left thumb
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
next: Look at the bare left thumb before the dressing: scan its digit card; NO if a tourniquet is on it.
  event: count-agreed, case 1, final, person SCRUB-1, other CIRC-2, n CIRC-2, first
> digit left thumb
accepted: Left thumb seen bare at 10:00.
next: Read the sign-out points aloud: scan VISITOR 1 if all are true; NO if one is not.
  event: digit-seen-bare, case 1, digit left thumb, person CIRC-2, first
> badge CIRC-2
refused: The badge of CIRC-2 is not asked for now.
next: Read the sign-out points aloud: scan VISITOR 1 if all are true; NO if one is not.
  event: refused, case 1, "The badge of CIRC-2 is not asked for now."
> card VISITOR 1
question: Visitor 1 signs out.
next: The visiting surgeon signs; the circulating badge is the witness: scan the circulating badge; NO to leave it as it is.
  event: asked, case 1, witness, person visitor 1, first
> badge SCRUB-1
refused: The circulating badge is the witness of a visiting surgeon: scan it, or NO.
next: The visiting surgeon signs; the circulating badge is the witness: scan the circulating badge; NO to leave it as it is.
  event: refused, case 1, "The circulating badge is the witness of a visiting surgeon: scan it, or NO."
> badge CIRC-2
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: left thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, case 1, nothing more, first
  event: signed-out, case 1, person visitor 1, other 2
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:514 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this paper came out.
next: Next patient: scan NEW CASE.
  event: slip-state, case 1, seen, copy 1, n 1
