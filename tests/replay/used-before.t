# A single-use item is used once; an item found after the end acts on the case it came from (rules 4 and 21).
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
> pack GREEN-M 130 lot T26 expiry 20280331
accepted: Counted in: 1 finger tourniquet, green, M (lot T26, expires 31 Mar 2028).
next: Count in: scan each pack and instrument; the circulating badge when both have counted aloud.
  event: item-in, case 1, item 1, GREEN-M:130 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1, first
> badge CIRC-2
accepted: Initial count agreed aloud by SCRUB-1 and CIRC-2, recorded by CIRC-2.
next: When the tourniquet is on: scan the digit card; FINAL COUNT if no tourniquet will go on.
  event: count-agreed, case 1, initial, person SCRUB-1, other CIRC-2, n CIRC-2, first
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
next: Read the sign-out points aloud: scan the surgeon's badge if all are true; NO if one is not; VISITOR 1 for a visitor without a badge.
  event: digit-seen-bare, case 1, digit left thumb, person CIRC-2, first
> badge SURG-3
accepted: Case 1 ended reconciled. Finger tourniquet, green, M: 1 of 1 shown intact. Seen bare: left thumb.
next: The paper: scan the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: joined, case 1, surgeon, person SURG-3, "SURG-3", first
  event: signed-out, case 1, person SURG-3
  event: sign-out-point, case 1, yes, n 1, "The name of the procedure is recorded."
  event: sign-out-point, case 1, yes, n 2, "Tourniquets, forceps and all other items are accounted for, or not applicable."
  event: sign-out-point, case 1, yes, n 3, "Each specimen is labelled with the patient's name, or there is none."
  event: sign-out-point, case 1, yes, n 4, "Equipment problems have been reported, or there are none."
  event: sign-out-point, case 1, yes, n 5, "Concerns for recovery have been handed over, colour and warmth of the digit among them."
  event: item-used, case 1, item 1, GREEN-M:130 "finger tourniquet, green, M" tourniquet known by its pack lot T26 expiry 20280331 single-use, n 1
  event: case-ended, case 1, reconciled
  event: slip-queued, case 1, reconciliation, copy 1, n 1, "en"
prints: reconciliation slip 1
  event: slip-state, case 1, written, copy 1, n 1
> slip 1
accepted: Slip 0000001 of case 1, copy 1, seen: this paper came out.
next: Next patient: scan NEW CASE.
  event: slip-state, case 1, seen, copy 1, n 1
> card FOUND
question: Found after the end of a case.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, found
> pack GREEN-M 130 lot T26 expiry 20280331
refused: That is the wrapper or bag of the finger tourniquet, green, M of case 1, which is accounted for there. Is one of it in your hand all the same? Then scan FOUND and the slip of case 1.
next: Next patient: scan NEW CASE.
  event: asked, nothing more
  event: refused, "That is the wrapper or bag of the finger tourniquet, green, M of case 1, which is accounted for there. Is one of it in your hand all the same? Then scan FOUND and the slip of case 1."
> card FOUND
question: Found after the end of a case.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, found
> pack PLAIN-M lot P1
refused: This code does not tell which case finger tourniquet, orange, M comes from: scan FOUND, then the slip of the case you think of.
next: Next patient: scan NEW CASE.
  event: asked, nothing more
  event: refused, "This code does not tell which case finger tourniquet, orange, M comes from: scan FOUND, then the slip of the case you think of."
> card FOUND
question: Found after the end of a case.
next: What was found? Scan the mark on it when what is missing is in your hand; the code on the slip of the case it comes from, if it bears no number; NO to leave it as it is.
  event: asked, found
> slip 1
accepted: Found after the end: entered for case 1. Look at that patient's digit now and tell the surgeon.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; the code on the slip when it is in your hand; NEW CASE for the next patient.
  event: asked, nothing more
  event: found-after, case 1, no line "an item without a number"
addendum: case 1
  event: slip-queued, case 1, addendum, copy 1, n 2, "en"
prints: addendum slip 2
  event: owed, case 1, patient-called-back
  event: owed, case 1, digit-seen-bare
  event: owed, case 1, ward-told
  event: slip-state, case 1, written, copy 1, n 2
> slip 2
accepted: Slip 0000002 of case 1, copy 1, seen: this paper came out.
next: Case 1: call that patient back now, if not here any more: scan STEP DONE when it was done; NEW CASE for the next patient.
  event: slip-state, case 1, seen, copy 1, n 2
> card NEW CASE
accepted: Case 2 opened in Theatre 1.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: case-opened, case 2
> pack GREEN-M 130 lot T26 expiry 20280331
refused: Not counted in: this finger tourniquet, green, M was used before, in case 1, and is used once only. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET.
next: Before scrubbing: scan the badge of the one at the field; VISITOR 1 for a visitor without a badge.
  event: refused, case 2, "Not counted in: this finger tourniquet, green, M was used before, in case 1, and is used once only. Take it off the field and use another. If it is on a digit already, scan UNLISTED TOURNIQUET."
